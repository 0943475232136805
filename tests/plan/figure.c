/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Figures as text: rounding, units, and the style of a locale. In the rows "_" stands for the
 * no-break space. */

#include "plan/figure.h"

#include <locale.h>
#include <string.h>

#include "rows.h"

#define NO_BREAK_SPACE "\u00a0"

typedef char *(*Figure) (DrawlRational value);

static char *
two_places (DrawlRational value)
{
  return drawl_figure_number (value, 2);
}

static char *
no_places (DrawlRational value)
{
  return drawl_figure_number (value, 0);
}

static char *
nine_places (DrawlRational value)
{
  return drawl_figure_number (value, 99);
}

static char *
count (DrawlRational value)
{
  return drawl_figure_count (value.num);
}

static char *
euros (DrawlRational value)
{
  return drawl_figure_money (value.num, "EUR");
}

static char *
no_currency (DrawlRational value)
{
  return drawl_figure_money (value.num, "");
}

typedef struct {
  const char *name;
  Figure figure;
  const char *value, *text;
} Row;

static const Row rows[] = {
    {"number/whole", two_places, "24", "24"},
    {"number/zeros-dropped", two_places, "4.50", "4.5"},
    {"number/rounded", two_places, "1/3", "0.33"},
    {"number/half-away", two_places, "0.125", "0.13"},
    {"number/half-away-below-zero", two_places, "-0.125", "-0.13"},
    {"number/zero", two_places, "0", "0"},
    {"number/rounds-to-zero", two_places, "0.001", "0"},
    {"number/carries", two_places, "9.999", "10"},
    {"number/zeros-between", two_places, "3.05", "3.05"},
    {"number/no-places", no_places, "2.5", "3"},
    {"number/at-most-nine-places", nine_places, "0.1234567891", "0.123456789"},
    {"number/largest", two_places, "9223372036854775807", "9223372036854775808"},
    {"rate/whole", drawl_figure_rate, "240", "240_fps"},
    {"rate/film-on-video", drawl_figure_rate, "24000/1001", "23.976_fps"},
    {"rate/video", drawl_figure_rate, "30000/1001", "29.97_fps"},
    {"rate/half", drawl_figure_rate, "25/2", "12.5_fps"},
    {"rate/time-lapse", drawl_figure_rate, "1/600", "0.00167_fps"},
    {"rate/number", drawl_figure_rate_number, "60000/1001", "59.94"},
    {"rate/number-not-grouped", drawl_figure_rate_number, "10000", "10000"},
    {"time/part", drawl_figure_time, "0.45", "0.45_s"},
    {"time/seconds", drawl_figure_time, "4.5", "4.5_s"},
    {"time/thousandths", drawl_figure_time, "1001/240", "4.171_s"},
    {"time/short", drawl_figure_time, "1/2400", "0.000417_s"},
    {"time/zero", drawl_figure_time, "0", "0_s"},
    {"time/just-below-a-minute", drawl_figure_time, "59.9994", "59.999_s"},
    {"time/rounds-to-a-minute", drawl_figure_time, "59.9995", "1_min_00_s"},
    {"time/minutes", drawl_figure_time, "125", "2_min_05_s"},
    {"time/rounds-to-a-second", drawl_figure_time, "125.5", "2_min_06_s"},
    {"time/just-below-an-hour", drawl_figure_time, "3599.4", "59_min_59_s"},
    {"time/rounds-to-an-hour", drawl_figure_time, "3599.5", "1_h_00_min"},
    {"time/hours", drawl_figure_time, "3720", "1_h_02_min"},
    {"time/rounds-to-a-minute-of-an-hour", drawl_figure_time, "7170", "2_h_00_min"},
    {"time/years", drawl_figure_time, "315360000", "87600_h_00_min"},
    {"left/nothing", drawl_figure_time_left, "0", "0_s"},
    {"left/part", drawl_figure_time_left, "0.9996", "0.999_s"},
    {"left/seconds", drawl_figure_time_left, "59.99", "59.9_s"},
    {"left/minutes", drawl_figure_time_left, "145.8", "2_min_25_s"},
    {"left/not-a-minute", drawl_figure_time_left, "59.9999", "59.9_s"},
    {"left/not-an-hour", drawl_figure_time_left, "3599.9", "59_min_59_s"},
    {"left/hours", drawl_figure_time_left, "7199", "1_h_59_min"},
    {"left/years", drawl_figure_time_left, "315360000", "87600_h_00_min"},
    {"time/number", drawl_figure_seconds_number, "0.450", "0.45"},
    {"factor/whole", drawl_figure_factor, "10", "10×"},
    {"factor/half", drawl_figure_factor, "1/2", "0.5×"},
    {"factor/film-on-video", drawl_figure_factor, "1001/100", "10.01×"},
    {"percent/whole", drawl_figure_percent, "20", "20_%"},
    {"percent/part", drawl_figure_percent, "9.99", "9.99_%"},
    {"percent/small", drawl_figure_percent, "0.012", "0.012_%"},
    {"count/none", count, "0", "0"},
    {"count/many", count, "12960", "12960"},
    {"bytes/none", drawl_figure_bytes, "0", "0_B"},
    {"bytes/few", drawl_figure_bytes, "999", "999_B"},
    {"bytes/kilo", drawl_figure_bytes, "1000", "1_kB"},
    {"bytes/frame", drawl_figure_bytes, "12441600", "12.4_MB"},
    {"bytes/card", drawl_figure_bytes, "512000000000", "512_GB"},
    {"bytes/three-digits", drawl_figure_bytes, "1492992000", "1.49_GB"},
    {"bytes/rounds-up-a-unit", drawl_figure_bytes, "999600000", "1_GB"},
    {"bytes/stays-in-its-unit", drawl_figure_bytes, "999400000", "999_MB"},
    {"bytes/rounds-up-a-digit", drawl_figure_bytes, "9996000", "10_MB"},
    {"bytes/more-than-any", drawl_figure_bytes, "9223372036854775807", "9223_PB"},
    {"bytes/part-of-a-byte", drawl_figure_bytes, "1/3", "0_B"},
    {"speed/exact", drawl_figure_bytes_rate, "1492992000", "1.49_GB/s"},
    {"speed/fraction", drawl_figure_bytes_rate, "310729270729/1000", "311_MB/s"},
    {"money/whole", euros, "6000", "60.00_EUR"},
    {"money/cents", euros, "7", "0.07_EUR"},
    {"money/none", euros, "0", "0.00_EUR"},
    {"money/no-currency", no_currency, "18050", "180.50"},
};

static char *
without_no_break_spaces (char *text)
{
  GString *plain = g_string_new (text);

  g_free (text);
  g_string_replace (plain, NO_BREAK_SPACE, "_", 0);
  return g_string_free (plain, FALSE);
}

static void
test_row (gconstpointer data)
{
  const Row *row = data;
  g_autofree char *text = without_no_break_spaces (row->figure (exact (row->value)));

  g_assert_cmpstr (text, ==, row->text);
}

/* What stands in a blank is read back as what is shown: three digits, so at most half a per cent
 * off, and a hair for the division of doubles. */
static void
test_blanks_read_back (void)
{
  for (guint i = 0; i < 2000; i++) {
    DrawlRational value, back;
    g_assert_true (drawl_rational_make (1 + random_whole (24), 1 + random_whole (12), &value));
    g_autofree char *rate = drawl_figure_rate_number (value);
    g_autofree char *seconds = drawl_figure_seconds_number (value);
    g_assert_true (drawl_rational_parse (rate, &back, NULL));
    g_assert_cmpfloat_with_epsilon (
        drawl_rational_to_double (back) / drawl_rational_to_double (value), 1, 0.005 + 1e-9);
    g_assert_true (drawl_rational_parse (seconds, &back, NULL));
    g_assert_cmpfloat_with_epsilon (
        drawl_rational_to_double (back) / drawl_rational_to_double (value), 1, 0.005 + 1e-9);
  }
}

/* In a locale that has a comma and groups digits. */
static void
test_locale (void)
{
  static const char *const names[] = {"de_DE.UTF-8", "de_DE.utf8", "fr_FR.UTF-8", "nl_NL.UTF-8"};
  gboolean set = FALSE;

  for (guint i = 0; i < G_N_ELEMENTS (names) && !set; i++)
    set = setlocale (LC_NUMERIC, names[i]) != NULL;
  if (!set) {
    g_test_skip ("no locale with a decimal comma is generated here");
    return;
  }
  g_autofree char *seconds = drawl_figure_seconds_number (exact ("0.45"));
  g_autofree char *rate = drawl_figure_rate_number (exact ("12000"));
  g_autofree char *money = drawl_figure_money (126000, NULL);
  g_autofree char *frames = drawl_figure_count (12960);
  setlocale (LC_NUMERIC, "C");
  g_assert_cmpstr (seconds, ==, "0,45");
  g_assert_cmpstr (rate, ==, "12000");
  g_assert_true (g_str_has_suffix (money, ",00"));
  g_assert_cmpuint (strlen (frames), >, 5);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/figure", rows, test_row);
  g_test_add_func ("/figure/blanks-read-back", test_blanks_read_back);
  g_test_add_func ("/figure/locale", test_locale);
  return g_test_run ();
}
