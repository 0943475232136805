/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlBodyCellRow: a cell of a body draft as a row of a list: title, the cell, and beneath the
 * title what is expected or what is wrong. */

#include <adwaita.h>

#include "plan/body-draft.h"

#define DRAWL_TYPE_BODY_CELL_ROW (drawl_body_cell_row_get_type ())
G_DECLARE_FINAL_TYPE (DrawlBodyCellRow, drawl_body_cell_row, DRAWL, BODY_CELL_ROW, AdwActionRow)

GtkWidget *drawl_body_cell_row_new (DrawlBodyDraft *draft, DrawlDraftRow *row, guint column);
/* Shown only while the draft has the cell. */
void drawl_body_cell_row_refresh (DrawlBodyCellRow *row, gboolean strict);
/* It is marked. */
gboolean drawl_body_cell_row_is_wrong (DrawlBodyCellRow *row);
