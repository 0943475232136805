/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlDocument: a plan and the file it belongs to: where it was read from or saved to, and how
 * that file looked then, so that what someone else wrote meanwhile is never overwritten unasked. */

#include "plan/plan.h"

#define DRAWL_TYPE_DOCUMENT (drawl_document_get_type ())
G_DECLARE_FINAL_TYPE (DrawlDocument, drawl_document, DRAWL, DOCUMENT, GObject)

#define DRAWL_DOCUMENT_ERROR (drawl_document_error_quark ())
typedef enum {
  DRAWL_DOCUMENT_ERROR_CHANGED, /* the file is not as this document last saw it */
} DrawlDocumentError;
GQuark drawl_document_error_quark (void);

/* Properties, read-only, notified: "title" (the plan's, or a word for a plan without one), "name"
 * (of the file, or words that there is none yet), "modified" (boolean). */

/* A new plan with nothing on it, for that mains frequency. */
DrawlDocument *drawl_document_new (gint64 mains_hz);
/* Errors: those of drawl_plan_load(). */
DrawlDocument *drawl_document_open (GFile *file, GError **error);
/* The plan of @file, but belonging to no file yet: saving asks where to. */
DrawlDocument *drawl_document_open_copy (GFile *file, GError **error);

DrawlPlan *drawl_document_get_plan (DrawlDocument *document);
GFile *drawl_document_get_file (DrawlDocument *document); /* or NULL */
char *drawl_document_dup_title (DrawlDocument *document);
char *drawl_document_dup_name (DrawlDocument *document);
gboolean drawl_document_get_modified (DrawlDocument *document);

/* Saves to the document's own file, which must be there. Unless @force, errors:
 * DRAWL_DOCUMENT_ERROR_CHANGED, with nothing written; and those of drawl_plan_save(). */
gboolean drawl_document_save (DrawlDocument *document, gboolean force, GError **error);
/* Saves to @file, which becomes the document's own. */
gboolean drawl_document_save_as (DrawlDocument *document, GFile *file, GError **error);
