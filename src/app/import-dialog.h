/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlImportDialog: what of a table of shots comes into the plan, and what does not, before any of
 * it does. Nothing has changed until "brought-in". */

#include <adwaita.h>

#include "plan/shot-table.h"

#define DRAWL_TYPE_IMPORT_DIALOG (drawl_import_dialog_get_type ())
G_DECLARE_FINAL_TYPE (DrawlImportDialog, drawl_import_dialog, DRAWL, IMPORT_DIALOG, AdwWindow)

/* Signal "brought-in" (position, number of shots; both guint): they are on the plan. */

/* Takes over @table. The shots go to @position; @source_name is where they come from, as a person
 * knows it; @label names the step of undo. */
DrawlImportDialog *drawl_import_dialog_new (GtkWindow *parent, DrawlPlan *plan,
                                            DrawlShotTable *table, guint position,
                                            const char *source_name, const char *label);

/* Brings the good rows in and closes; FALSE, with a message, when the plan takes none. */
gboolean drawl_import_dialog_bring_in (DrawlImportDialog *dialog);

/* TRUE when a person should see it before it comes in: a row is rejected, or something was taken
 * for granted. */
gboolean drawl_import_is_doubtful (const DrawlShotTable *table);
