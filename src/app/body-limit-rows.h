/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlBodyLimitRows: the limits of a body draft as a table, a row of the maker's a line. Rows are
 * typed, pasted from a spreadsheet or read from a file of text. */

#include <adwaita.h>

#include "plan/body-draft.h"

#define DRAWL_TYPE_BODY_LIMIT_ROWS (drawl_body_limit_rows_get_type ())
G_DECLARE_FINAL_TYPE (DrawlBodyLimitRows, drawl_body_limit_rows, DRAWL, BODY_LIMIT_ROWS,
                      AdwPreferencesGroup)

GtkWidget *drawl_body_limit_rows_new (DrawlBodyDraft *draft);
void drawl_body_limit_rows_refresh (DrawlBodyLimitRows *rows, gboolean strict);
gboolean drawl_body_limit_rows_focus_mistake (DrawlBodyLimitRows *rows);

/* Asks what to do with the rows of a table of text: how many can be taken, which not and why; then
 * adds them, or puts them in place of the present ones. */
void drawl_body_limit_import (DrawlBodyDraft *draft, GtkWindow *parent, const char *data,
                              gsize length);
