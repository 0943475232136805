/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Cells of a table of text that a spreadsheet would run as a formula: a text that begins with one
 * of = + - @. They are written with an apostrophe before them, which spreadsheets take for the mark
 * of a text, and read without it; so no note of a shot runs on somebody's machine, and what was
 * written is read back unchanged. */

#include <glib.h>

/* @text as it is written. New string. */
char *drawl_table_cell_guard (const char *text);
/* What a guarded cell says, within @cell; anything else as it stands. */
const char *drawl_table_cell_bare (const char *cell);
