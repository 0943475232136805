/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlBodyCell: a cell of a body draft: an entry, a choice or a picker, as its column asks. What
 * is typed goes to the draft at once; the cell is marked when the draft finds it wrong. */

#include <gtk/gtk.h>

#include "plan/body-draft.h"

#define DRAWL_TYPE_BODY_CELL (drawl_body_cell_get_type ())
G_DECLARE_FINAL_TYPE (DrawlBodyCell, drawl_body_cell, DRAWL, BODY_CELL, GtkWidget)

/* @label: its accessible name. @draft outlives it, or the row's removal removes it. */
GtkWidget *drawl_body_cell_new (DrawlBodyDraft *draft, DrawlDraftRow *row, guint column,
                                const char *label);
/* Shows what the draft has. @strict: what is only missing counts as wrong, too. */
void drawl_body_cell_refresh (DrawlBodyCell *cell, gboolean strict);
/* Why it is marked, as a sentence; NULL: it is not. */
const char *drawl_body_cell_get_reason (DrawlBodyCell *cell);
/* The title of a column without the mark of its mnemonic. New string. */
char *drawl_body_cell_title (const DrawlDraftColumn *column);
