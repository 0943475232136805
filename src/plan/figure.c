/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Figures as text. Rounding is exact, half away from zero, on the rational; only a value too large
 * to be scaled within 64 bits goes through a double. A no-break space stands before each unit. */

#include "plan/figure.h"

#include <langinfo.h>

#include "core/text.h"

#define PLACES_MAX 9
#define RATE_PLACES 3
#define TIME_PLACES 3
#define FACTOR_PLACES 3
#define PERCENT_PLACES 2
#define SHORTEST 100 /* a small figure gets so many places that its digits come to this */

static gint64
ten_to (int places)
{
  gint64 power = 1;
  while (places-- > 0)
    power *= 10;
  return power;
}

/* @value · 10^places, rounded; FALSE when that does not fit. */
static gboolean
scale (DrawlRational value, int places, gint64 *scaled)
{
  DrawlRational product;

  if (!drawl_rational_mul (value, drawl_rational_whole (ten_to (places)), &product))
    return FALSE;
  *scaled = drawl_rational_round (product);
  return TRUE;
}

/* A number with @places decimals at most: whole part as it is or grouped, zeros at the end dropped.
 */
static char *
format (gint64 scaled, int places, gboolean keep_zeros, gboolean grouped)
{
  guint64 magnitude = scaled < 0 ? -(guint64)scaled : (guint64)scaled;
  guint64 unit = (guint64)ten_to (places), whole = magnitude / unit, rest = magnitude % unit;
  const char *sign = scaled < 0 ? "-" : "";

  while (!keep_zeros && places > 0 && rest % 10 == 0) {
    rest /= 10;
    places--;
  }
  g_autofree char *digits = grouped ? g_strdup_printf ("%'" G_GUINT64_FORMAT, whole)
                                    : g_strdup_printf ("%" G_GUINT64_FORMAT, whole);
  if (places == 0)
    return g_strconcat (sign, digits, NULL);
  return g_strdup_printf ("%s%s%s%0*" G_GUINT64_FORMAT, sign, digits, nl_langinfo (RADIXCHAR),
                          places, rest);
}

char *
drawl_figure_number (DrawlRational value, int places)
{
  gint64 scaled;

  places = CLAMP (places, 0, PLACES_MAX);
  if (scale (value, places, &scaled))
    return format (scaled, places, FALSE, FALSE);
  return g_strdup_printf ("%.0f", drawl_rational_to_double (value));
}

/* Places that show a small figure to three digits, others to @places. */
static int
places_for (DrawlRational value, int places)
{
  gint64 scaled = 0;

  while (value.num != 0 && places < PLACES_MAX && scale (value, places, &scaled) &&
         ABS (scaled) < SHORTEST)
    places++;
  return places;
}

char *
drawl_figure_rate_number (DrawlRate rate)
{
  return drawl_figure_number (rate, places_for (rate, RATE_PLACES));
}

char *
drawl_figure_rate (DrawlRate rate)
{
  g_autofree char *number = drawl_figure_rate_number (rate);
  return g_strdup_printf (_ ("%s\u00a0fps"), number);
}

char *
drawl_figure_seconds_number (DrawlRational seconds)
{
  return drawl_figure_number (seconds, places_for (seconds, TIME_PLACES));
}

char *
drawl_figure_time (DrawlRational seconds)
{
  gint64 thousandths, whole = drawl_rational_round (seconds);

  if (whole < 3600 && scale (seconds, TIME_PLACES, &thousandths) && thousandths < 60000) {
    g_autofree char *number = drawl_figure_seconds_number (seconds);
    return g_strdup_printf (_ ("%s\u00a0s"), number);
  }
  if (whole < 3600)
    return g_strdup_printf (_ ("%d\u00a0min\u00a0%02d\u00a0s"), (int)(whole / 60),
                            (int)(whole % 60));
  gint64 minutes = whole / 60 + (whole % 60 >= 30 ? 1 : 0);
  g_autofree char *hours = drawl_figure_count (minutes / 60);
  return g_strdup_printf (_ ("%s\u00a0h\u00a0%02d\u00a0min"), hours, (int)(minutes % 60));
}

/* What the figure of so much time is cut to, in parts of a second or in seconds. */
static const struct {
  gint64 below_s;
  DrawlRational step;
} left_steps[] = {
    {1, DRAWL_RATIONAL_INIT (1, 1000)}, /* so small a figure is read closely */
    {60, DRAWL_RATIONAL_INIT (1, 10)},  /* more digits than a tenth would only look exact */
    {3600, DRAWL_RATIONAL_INIT (1, 1)},
    {G_MAXINT64, DRAWL_RATIONAL_INIT (60, 1)},
};

char *
drawl_figure_time_left (DrawlRational seconds)
{
  DrawlRational steps;
  guint i = 0;

  while (drawl_rational_floor (seconds) >= left_steps[i].below_s)
    i++;
  if (drawl_rational_div (seconds, left_steps[i].step, &steps))
    drawl_rational_mul (drawl_rational_whole (drawl_rational_floor (steps)), left_steps[i].step,
                        &seconds);
  return drawl_figure_time (seconds);
}

char *
drawl_figure_factor (DrawlRational factor)
{
  g_autofree char *number = drawl_figure_number (factor, places_for (factor, FACTOR_PLACES));
  return g_strdup_printf (_ ("%s×"), number);
}

char *
drawl_figure_percent (DrawlRational percent)
{
  g_autofree char *number = drawl_figure_number (percent, places_for (percent, PERCENT_PLACES));
  return g_strdup_printf (_ ("%s\u00a0%%"), number);
}

char *
drawl_figure_count (gint64 n)
{
  return format (n, 0, TRUE, TRUE);
}

/* Decimal steps of a thousand, each with its unit for bytes and for bytes a second. */
static const struct {
  gint64 bytes;
  const char *of_bytes;
  const char *of_speed;
} steps[] = {
    {G_GINT64_CONSTANT (1000000000000000), N_ ("PB"), N_ ("PB/s")},
    {G_GINT64_CONSTANT (1000000000000), N_ ("TB"), N_ ("TB/s")},
    {1000000000, N_ ("GB"), N_ ("GB/s")},
    {1000000, N_ ("MB"), N_ ("MB/s")},
    {1000, N_ ("kB"), N_ ("kB/s")},
    {1, N_ ("B"), N_ ("B/s")},
};

/* Three digits: the greatest unit in which the rounded figure is 1 or more. */
static char *
bytes_figure (DrawlRational bytes, gboolean speed)
{
  guint i;
  DrawlRational in_unit = bytes;
  gint64 scaled = 0;

  for (i = 0; i < G_N_ELEMENTS (steps); i++)
    if (drawl_rational_div (bytes, drawl_rational_whole (steps[i].bytes), &in_unit) &&
        scale (in_unit, 4, &scaled) && ABS (scaled) >= 9995)
      break;
  i = MIN (i, G_N_ELEMENTS (steps) - 1);
  int places = ABS (scaled) < 99950 ? 2 : ABS (scaled) < 999500 ? 1 : 0;
  g_autofree char *number = drawl_figure_number (in_unit, steps[i].bytes == 1 ? 0 : places);
  const char *unit = speed ? steps[i].of_speed : steps[i].of_bytes;
  /* Translators: a number and its unit or currency: "512 GB", "60.00 EUR". */
  return g_strdup_printf (_ ("%s\u00a0%s"), number, _ (unit));
}

char *
drawl_figure_bytes (DrawlRational bytes)
{
  return bytes_figure (bytes, FALSE);
}

char *
drawl_figure_bytes_rate (DrawlRational bytes_s)
{
  return bytes_figure (bytes_s, TRUE);
}

char *
drawl_figure_money (gint64 hundredths, const char *currency)
{
  g_autofree char *amount = format (hundredths, 2, TRUE, TRUE);

  if (currency == NULL || *currency == '\0')
    return g_steal_pointer (&amount);
  return g_strdup_printf (_ ("%s\u00a0%s"), amount, currency);
}
