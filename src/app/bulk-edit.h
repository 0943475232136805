/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlBulkEdit: one change to many shots, worked out before anything is done: which shots take it,
 * and which do not and why. */

#include "app/bulk-field.h"

typedef struct {
  DrawlShot *shot;
  char *reason; /* a sentence without its end */
} DrawlBulkRefusal;

typedef struct {
  DrawlBulkFieldId field;
  GPtrArray *shots;    /* of DrawlShot: those that take it */
  GPtrArray *fields;   /* of DrawlShotFields: what they get */
  GPtrArray *refusals; /* of DrawlBulkRefusal */
} DrawlBulkEdit;

/* Shots that are not on @plan any more are passed over. */
DrawlBulkEdit *drawl_bulk_edit_new (DrawlPlan *plan, const GPtrArray *shots, DrawlBulkFieldId field,
                                    const char *text);
void drawl_bulk_edit_free (DrawlBulkEdit *edit);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (DrawlBulkEdit, drawl_bulk_edit_free)

/* The reason that no shot at all takes it, if it is the same for each; or NULL. */
const char *drawl_bulk_edit_common_reason (const DrawlBulkEdit *edit);
/* "12A: …" a line for each of the first few that do not take it, and how many more there are. New
 * string. */
char *drawl_bulk_edit_refusals_text (const DrawlBulkEdit *edit);

/* Changes those that take it, in one step of undo. Errors as drawl_plan_set_all(). */
gboolean drawl_bulk_edit_apply (const DrawlBulkEdit *edit, DrawlPlan *plan, GError **error);
