/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Film in feet or metres. A unit is a row of the table: what its number is to a foot, and how fine
 * it is shown. */

#include "plan/length-unit.h"

#include "core/text.h"
#include "plan/figure.h"

typedef struct {
  const char *id;
  DrawlRational foot; /* in that unit */
  int places;         /* shown */
  const char *format; /* marked for translation */
} Unit;

static const Unit units[DRAWL_N_LENGTHS] = {
    [DRAWL_LENGTH_FEET] = {"feet", DRAWL_RATIONAL_INIT (1, 1), 0, N_ ("%s\u00a0ft")},
    [DRAWL_LENGTH_METRIC] = {"metric", DRAWL_RATIONAL_INIT (3048, 10000), 1, N_ ("%s\u00a0m")},
};

const char *
drawl_length_unit_id (DrawlLengthUnit unit)
{
  return units[unit].id;
}

gboolean
drawl_length_unit_find (const char *id, DrawlLengthUnit *unit)
{
  for (guint i = 0; i < DRAWL_N_LENGTHS; i++)
    if (g_str_equal (units[i].id, id)) {
      *unit = (DrawlLengthUnit)i;
      return TRUE;
    }
  return FALSE;
}

static char *
with_unit (DrawlRational length, DrawlLengthUnit unit)
{
  g_autofree char *number = drawl_figure_number (length, units[unit].places);
  GString *text = g_string_new (_ (units[unit].format));

  g_string_replace (text, "%s", number, 1);
  return g_string_free (text, FALSE);
}

char *
drawl_length_film (DrawlRational feet, DrawlLengthUnit unit)
{
  DrawlRational length = feet;

  if (!drawl_rational_mul (feet, units[unit].foot, &length))
    return with_unit (feet, DRAWL_LENGTH_FEET);
  return with_unit (length, unit);
}

char *
drawl_length_film_left (DrawlRational feet, DrawlLengthUnit unit)
{
  gint64 parts = units[unit].places > 0 ? 10 : 1;
  DrawlRational length, fine;

  if (!drawl_rational_mul (feet, units[unit].foot, &length) ||
      !drawl_rational_mul (length, drawl_rational_whole (parts), &fine) ||
      !drawl_rational_make (drawl_rational_floor (fine), parts, &length))
    return with_unit (drawl_rational_whole (drawl_rational_floor (feet)), DRAWL_LENGTH_FEET);
  return with_unit (length, unit);
}
