/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Frames a second, exactly: 0 < rate ≤ 10,000,000. The rates of the 1000/1001 family are
 * customarily written as decimals cut to two or three places; which decimals those are is worked
 * out here from the family itself, so that the list can neither lack one nor hold a wrong one. */

#include "core/rate.h"

#include "core/error.h"
#include "core/text.h"

#include <string.h>

#define CUSTOMARY_MAX 240 /* the highest whole rate whose 1000/1001 has customary spellings */
#define CUSTOMARY_PLACES_MIN 2
#define CUSTOMARY_PLACES_MAX 3

static const gint64 customary_bases[] = {24, 30};
static const char *const rate_units[] = {"fps", NULL};

gboolean
drawl_rate_valid (DrawlRate rate)
{
  DrawlRational common;
  return rate.den > 0 && rate.num > 0 && rate.num / rate.den <= DRAWL_RATE_MAX &&
         drawl_rational_compare (rate, drawl_rational_whole (DRAWL_RATE_MAX)) <= 0 &&
         drawl_rational_make (rate.num, rate.den, &common) && drawl_rational_equal (rate, common);
}

static gint64
ten_to (gsize places)
{
  return places == 0 ? 1 : 10 * ten_to (places - 1);
}

/* TRUE when @written is @exact cut or rounded to @places. */
static gboolean
stands_for (DrawlRational written, DrawlRational exact, gsize places)
{
  DrawlRational scale = drawl_rational_whole (ten_to (places)), exact_scaled, written_scaled;

  return drawl_rational_mul (exact, scale, &exact_scaled) &&
         drawl_rational_mul (written, scale, &written_scaled) &&
         (written_scaled.num == drawl_rational_floor (exact_scaled) ||
          written_scaled.num == drawl_rational_round (exact_scaled));
}

/* The fewest places in which @written can be written, but no fewer than are customary: trailing
 * zeros do not count. One more than are customary when it takes more. */
static gsize
count_places (DrawlRational written)
{
  gsize places = CUSTOMARY_PLACES_MIN;

  while (places <= CUSTOMARY_PLACES_MAX && ten_to (places) % written.den != 0)
    places++;
  return places;
}

/* The member of the 1000/1001 family that the decimal @written customarily stands for, or @written
 * itself. */
static DrawlRate
resolve_customary (DrawlRate written)
{
  gsize places = count_places (written);

  if (places > CUSTOMARY_PLACES_MAX || written.den == 1)
    return written;

  for (gsize i = 0; i < G_N_ELEMENTS (customary_bases); i++)
    for (gint64 n = customary_bases[i]; n <= CUSTOMARY_MAX; n += customary_bases[i]) {
      DrawlRational exact;
      if (drawl_rational_make (n * 1000, 1001, &exact) && stands_for (written, exact, places))
        return exact;
    }
  return written;
}

static gboolean
check_range (DrawlRate rate, GError **error)
{
  if (rate.num > 0 && drawl_rate_valid (rate))
    return TRUE;

  char text[DRAWL_RATIONAL_TEXT_SIZE];
  drawl_rational_text (rate, text);
  if (rate.num <= 0)
    g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_RANGE,
                 _ ("a rate of %s is too low; a rate above 0 is expected"), text);
  else
    g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_RANGE,
                 _ ("a rate of %s is too high; at most %d is expected"), text, (int)DRAWL_RATE_MAX);
  return FALSE;
}

gboolean
drawl_rate_parse (const char *text, DrawlRate *out, GError **error)
{
  DrawlRate written;

  if (!drawl_rational_parse_unit (text, rate_units, &written, error) ||
      !check_range (written, error))
    return FALSE;
  *out = strpbrk (text, ".,") != NULL ? resolve_customary (written) : written;
  return TRUE;
}

const char *
drawl_rate_text (DrawlRate rate, char buffer[DRAWL_RATIONAL_TEXT_SIZE])
{
  if (rate.den == 1)
    g_snprintf (buffer, DRAWL_RATIONAL_TEXT_SIZE, "%" G_GINT64_FORMAT, rate.num);
  else
    g_snprintf (buffer, DRAWL_RATIONAL_TEXT_SIZE, "%" G_GINT64_FORMAT "/%" G_GINT64_FORMAT,
                rate.num, rate.den);
  return buffer;
}

gint64
drawl_rate_nominal (DrawlRate rate)
{
  DrawlRational whole;

  if (!drawl_rate_valid (rate))
    return 0;
  if (rate.den == 1)
    return rate.num;
  if (!drawl_rational_mul (rate, DRAWL_RATIONAL_INIT (1001, 1000), &whole) || whole.den != 1)
    return 0;
  return whole.num;
}
