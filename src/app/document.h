/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlDocument: a plan and the file it belongs to: where it was read from or saved to, and how
 * that file looked then, so that what someone else wrote meanwhile is never overwritten unasked;
 * and the journal that keeps what is not saved yet. Any number of windows show one document. */

#include "plan/journal.h"
#include "plan/plan.h"

#define DRAWL_TYPE_DOCUMENT (drawl_document_get_type ())
G_DECLARE_FINAL_TYPE (DrawlDocument, drawl_document, DRAWL, DOCUMENT, GObject)

/* Properties, notified, read-only but for the last: "title" (the plan's, or a word for a plan
 * without one), "name" (of the file, or words that there is none yet), "modified" (boolean),
 * "changed" (boolean: another program has changed the file; notified anew when it does so again),
 * "problem" (why unsaved work is not kept safe, a sentence, or NULL), "saves-itself" (boolean: save
 * to the file, where there is one, some seconds after the last edit).
 * Signal "save-failed" (GError): it could not save by itself; once, until a save succeeds. */

/* A new plan with nothing on it, for that mains frequency. */
DrawlDocument *drawl_document_new (gint64 mains_hz);
/* Errors: those of drawl_plan_load(). */
DrawlDocument *drawl_document_open (GFile *file, GError **error);
/* The plan of @file, but belonging to no file yet: saving asks where to. */
DrawlDocument *drawl_document_open_copy (GFile *file, GError **error);
/* What a lost program left behind: modified, with the file that it belonged to. Errors: those of
 * drawl_journal_entry_recover(). */
DrawlDocument *drawl_document_recover (DrawlJournalEntry *entry, GError **error);
/* The work is saved or given up, and nothing is kept of it. A document that is only unreferenced
 * leaves its unsaved work behind for the next start. */
void drawl_document_close (DrawlDocument *document);

DrawlPlan *drawl_document_get_plan (DrawlDocument *document);
GFile *drawl_document_get_file (DrawlDocument *document); /* or NULL */
/* Whether the document's file is @file, by whatever way that is spelled. */
gboolean drawl_document_is_of (DrawlDocument *document, GFile *file);
char *drawl_document_dup_title (DrawlDocument *document);
char *drawl_document_dup_name (DrawlDocument *document);
gboolean drawl_document_get_modified (DrawlDocument *document);
gboolean drawl_document_get_changed (DrawlDocument *document);
const char *drawl_document_get_problem (DrawlDocument *document);

/* Saves to the document's own file, which must be there; @force: whatever stands there. Errors:
 * those of drawl_journal_save(). */
gboolean drawl_document_save (DrawlDocument *document, gboolean force, GError **error);
/* Saves to @file, which becomes the document's own. */
gboolean drawl_document_save_as (DrawlDocument *document, GFile *file, GError **error);
/* Takes the plan from its file again, as a step of undo: what was here is one step back; *@news:
 * whether there was anything else in it. Errors: those of drawl_plan_load(), with nothing changed.
 */
gboolean drawl_document_reload (DrawlDocument *document, gboolean *news, GError **error);

/* Saves now what would be saved by itself a little later. */
void drawl_document_save_soon (DrawlDocument *document);
/* Time from the last edit until then; for tests. */
void drawl_document_set_save_delay (DrawlDocument *document, guint delay_ms);
/* Asks whether the file has been changed, where the system does not tell. */
void drawl_document_look_at_file (DrawlDocument *document);
/* Writes unsaved work into the journal and waits for it: there may be no other second. */
void drawl_document_flush (DrawlDocument *document);
