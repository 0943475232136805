/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlRecoveryDialog: offers the unsaved work that lost programs left behind, a row for each. What
 * is neither recovered nor discarded when it closes stays and is offered again. */

#include <adwaita.h>

#define DRAWL_TYPE_RECOVERY_DIALOG (drawl_recovery_dialog_get_type ())
G_DECLARE_FINAL_TYPE (DrawlRecoveryDialog, drawl_recovery_dialog, DRAWL, RECOVERY_DIALOG, AdwWindow)

/* What is recovered opens in a window of @parent's program. */
DrawlRecoveryDialog *drawl_recovery_dialog_new (GtkWindow *parent);
/* Adds @entries, of DrawlJournalEntry. */
void drawl_recovery_dialog_add (DrawlRecoveryDialog *dialog, GPtrArray *entries);
