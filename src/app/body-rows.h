/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlBodyRows: a table of a body draft as a group of rows that open to their cells, to which rows
 * can be added and from which they can be removed. */

#include <adwaita.h>

#include "plan/body-draft.h"

#define DRAWL_TYPE_BODY_ROWS (drawl_body_rows_get_type ())
G_DECLARE_FINAL_TYPE (DrawlBodyRows, drawl_body_rows, DRAWL, BODY_ROWS, AdwPreferencesGroup)

/* @add: the label of the button, with a mnemonic. */
GtkWidget *drawl_body_rows_new (DrawlBodyDraft *draft, DrawlDraftTable table, const char *title,
                                const char *add);
void drawl_body_rows_refresh (DrawlBodyRows *rows, gboolean strict);
/* Puts the focus into the first cell that is marked, opening its row; FALSE when there is none. */
gboolean drawl_body_rows_focus_mistake (DrawlBodyRows *rows);
