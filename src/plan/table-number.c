/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Numbers in cells, by their signs only: what they are worth is read by core. */

#include "plan/table-number.h"

#include <string.h>

#include "core/error.h"
#include "core/rational.h"
#include "core/text.h"
#include "plan/error.h"

#define DIGITS "0123456789"
#define THOUSANDS_PLACES 3

static const char *const units[] = {"fps", "s", "x", "%", NULL};

gboolean
drawl_table_number_is (const char *cell)
{
  DrawlRational number;
  return drawl_rational_parse_unit (cell, units, &number, NULL);
}

/* Digits, @sign and digits at the beginning of @cell; TRUE when they are there. @grouping: the sign
 * could stand between thousands. */
static gboolean
find_sign (const char *cell, char sign, gboolean *grouping)
{
  const char *whole = cell + (*cell == '-');
  gsize n_whole = strspn (whole, DIGITS);
  const char *places = whole + n_whole + 1;

  if (whole[n_whole] != sign || strspn (places, DIGITS) == 0)
    return FALSE;
  *grouping = strspn (whole, "0") < n_whole && strspn (places, DIGITS) == THOUSANDS_PLACES &&
              places[THOUSANDS_PLACES - 1] == '0';
  return TRUE;
}

gboolean
drawl_table_number_shows_comma (const char *cell)
{
  gboolean grouping;
  return find_sign (cell, ',', &grouping) && !grouping;
}

char *
drawl_table_number_plain (const char *cell, GError **error)
{
  gboolean grouping;

  if (find_sign (cell, '.', &grouping) && grouping) {
    g_autofree char *quote = drawl_core_quote (cell);
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE,
                 _ ("“%s” could be thousands or a decimal, in a table with decimal commas; a "
                    "number without points is expected"),
                 quote);
    return NULL;
  }
  return g_strdelimit (g_strdup (cell), ",", '.');
}
