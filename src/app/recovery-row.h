/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlRecoveryRow: one piece of unsaved work: what it is, whether anything is wrong with it, and
 * the choice to recover it or to discard it. What is discarded can be kept after all until whoever
 * shows the row does away with it. */

#include <adwaita.h>

#include "plan/journal-entry.h"

#define DRAWL_TYPE_RECOVERY_ROW (drawl_recovery_row_get_type ())
G_DECLARE_FINAL_TYPE (DrawlRecoveryRow, drawl_recovery_row, DRAWL, RECOVERY_ROW, GtkListBoxRow)

/* Signal "recover". Property "discarded" (boolean, read-only, notified). */

DrawlRecoveryRow *drawl_recovery_row_new (DrawlJournalEntry *entry);
DrawlJournalEntry *drawl_recovery_row_get_entry (DrawlRecoveryRow *row);
gboolean drawl_recovery_row_get_discarded (DrawlRecoveryRow *row);
/* Puts the keyboard focus on what is most likely wanted. */
void drawl_recovery_row_focus (DrawlRecoveryRow *row);
/* It was tried and did not work. */
void drawl_recovery_row_refuse (DrawlRecoveryRow *row, const GError *error);
