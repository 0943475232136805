/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The guard of cells. Invariant: guarding then baring gives the same text, for any text; so a text
 * that begins as a guarded one does is guarded as well. */

#include "plan/table-cell.h"

#include <string.h>

#define GUARD '\''
#define FORMULA_SIGNS "=+-@"

/* TRUE for any number of apostrophes and a sign that begins a formula. */
static gboolean
looks_guarded (const char *text)
{
  while (*text == GUARD)
    text++;
  return *text != '\0' && strchr (FORMULA_SIGNS, *text) != NULL;
}

char *
drawl_table_cell_guard (const char *text)
{
  return looks_guarded (text) ? g_strdup_printf ("%c%s", GUARD, text) : g_strdup (text);
}

const char *
drawl_table_cell_bare (const char *cell)
{
  return *cell == GUARD && looks_guarded (cell) ? cell + 1 : cell;
}
