/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Rates: what is read, which decimals stand for the 1000/1001 family, and what is refused. */

#include "core/error.h"
#include "core/rate.h"
#include "rows.h"

#include <string.h>

typedef struct {
  const char *name; /* also what is typed, where text is not set */
  const char *rate; /* as files write it */
  const char *text;
} Read;

static const Read read_rows[] = {
    {"25", "25"},
    {"24.00", "24"},
    {"30.0", "30"},
    {"30.000", "30"},
    {"23.976", "24000/1001"},
    {"23,976", "24000/1001"},
    {"23.98", "24000/1001"},
    {"23.97", "24000/1001"},
    {"29.97", "30000/1001"},
    {"29.970", "30000/1001"},
    {"47.952", "48000/1001"},
    {"47.95", "48000/1001"},
    {"59.94", "60000/1001"},
    {"71.928", "72000/1001"},
    {"71.93", "72000/1001"},
    {"89.91", "90000/1001"},
    {"95.904", "96000/1001"},
    {"95.90", "96000/1001"},
    {"119.88", "120000/1001"},
    {"143.856", "144000/1001"},
    {"239.76", "240000/1001"},
    {"23.9760", "24000/1001"},
    {"23.9", "239/10"},
    {"12.5", "25/2"},
    {"12.50", "25/2"},
    {"24.5", "49/2"},
    {"59.93", "5993/100"},
    {"0.2", "1/5"},
    {"263.736", "32967/125"},
    {"reduced", "24000/1001", "48000/2002"},
    {"fraction", "24000/1001", "24000/1001"},
    {"unit", "24000/1001", " 23.976 fps "},
    {"highest", "10000000", "10000000"},
};

static void
test_read (gconstpointer data)
{
  const Read *row = data;
  g_autoptr (GError) error = NULL;
  char text[DRAWL_RATIONAL_TEXT_SIZE];
  DrawlRate rate;

  g_assert_true (drawl_rate_parse (row->text != NULL ? row->text : row->name, &rate, &error));
  g_assert_no_error (error);
  g_assert_cmpstr (drawl_rate_text (rate, text), ==, row->rate);
  g_assert_true (drawl_rate_valid (rate));
}

typedef struct {
  const char *name, *text;
  DrawlCoreError code;
  const char *says;
} Refused;

static const Refused refused_rows[] = {
    {"empty", "", DRAWL_CORE_ERROR_SYNTAX, "nothing is written; a number such as 24"},
    {"unit-alone", "fps", DRAWL_CORE_ERROR_SYNTAX, "is not a number"},
    {"nan", "nan", DRAWL_CORE_ERROR_SYNTAX, "a number such as 24"},
    {"exponent", "1e400", DRAWL_CORE_ERROR_SYNTAX, "a number such as 24"},
    {"letter-after", "24/1001x", DRAWL_CORE_ERROR_SYNTAX, "because of “x”"},
    {"divides-by-zero", "1/0", DRAWL_CORE_ERROR_RANGE,
     "a number above 0 is expected under the stroke"},
    {"zero", "0", DRAWL_CORE_ERROR_RANGE, "a rate above 0 is expected"},
    {"negative", "-24", DRAWL_CORE_ERROR_RANGE, "a rate above 0 is expected"},
    {"negative-family", "-23.976", DRAWL_CORE_ERROR_RANGE, "a rate above 0 is expected"},
    {"too-high", "10000001", DRAWL_CORE_ERROR_RANGE, "at most 10000000 is expected"},
    {"just-too-high", "100000001/10", DRAWL_CORE_ERROR_RANGE, "at most 10000000 is expected"},
    {"too-long", "99999999999999999999", DRAWL_CORE_ERROR_OVERFLOW, "more digits"},
};

static void
test_refused (gconstpointer data)
{
  const Refused *row = data;
  g_autoptr (GError) error = NULL;
  DrawlRate rate = {7, 5};

  g_assert_false (drawl_rate_parse (row->text, &rate, &error));
  assert_says (error, row->code, row->says);
  assert_rational (rate, 7, 5);
}

typedef struct {
  const char *name, *rate;
  gint64 nominal;
} Nominal;

static const Nominal nominal_rows[] = {
    {"24", "24", 24},
    {"23.976", "24000/1001", 24},
    {"25", "25", 25},
    {"29.97", "30000/1001", 30},
    {"59.94", "60000/1001", 60},
    {"119.88", "120000/1001", 120},
    {"77-reduces", "1000/13", 77},
    {"1001-is-whole", "1000", 1000},
    {"highest", "10000000", 10000000},
    {"half", "25/2", 0},
    {"literal-29.97", "2997/100", 0},
    {"one-in-five-seconds", "1/5", 0},
    {"zero", "0", 0},
    {"negative", "-24", 0},
};

static void
test_nominal (gconstpointer data)
{
  const Nominal *row = data;
  g_assert_cmpint (drawl_rate_nominal (exact (row->rate)), ==, row->nominal);
}

static void
test_valid (void)
{
  g_assert_true (drawl_rate_valid (DRAWL_RATIONAL_INIT (1, G_MAXINT64)));
  g_assert_false (drawl_rate_valid (DRAWL_RATIONAL_INIT (0, 1)));
  g_assert_false (drawl_rate_valid (DRAWL_RATIONAL_INIT (24, 0)));
  g_assert_false (drawl_rate_valid (DRAWL_RATIONAL_INIT (-24, -1)));
  g_assert_false (drawl_rate_valid (DRAWL_RATIONAL_INIT (48, 2)));
  g_assert_false (drawl_rate_valid (DRAWL_RATIONAL_INIT (10000001, 1)));
}

static void
test_whole_stays_whole (void)
{
  for (int n = 1; n <= 1000; n++)
    for (int places = 0; places <= 4; places++) {
      g_autofree char *text = g_strdup_printf ("%d.%0*d", n, places + 1, 0);
      DrawlRate rate;
      g_assert_true (drawl_rate_parse (text, &rate, NULL));
      assert_rational (rate, n, 1);
    }
}

/* Every member of the family, its decimals made here by whole-number division. */
static void
test_family (void)
{
  for (int n = 24; n <= 240; n++)
    for (int scale = 100; scale <= 1000; scale *= 10)
      for (int up = 0; up <= 1; up++) {
        int places = scale == 100 ? 2 : 3;
        int scaled = (n * 1000 * scale + up * 1001 / 2) / 1001;
        gboolean member = n % 24 == 0 || n % 30 == 0;
        g_autofree char *text = g_strdup_printf ("%d.%0*d", scaled / scale, places, scaled % scale);
        char written[DRAWL_RATIONAL_TEXT_SIZE];
        DrawlRate rate, expected;

        g_assert_true (drawl_rate_parse (text, &rate, NULL));
        if (member)
          g_assert_true (drawl_rational_make (n * 1000, 1001, &expected));
        else
          g_assert_true (drawl_rational_make (scaled, scale, &expected));
        assert_same (rate, expected);

        /* What is written is read back. */
        g_assert_true (drawl_rate_parse (drawl_rate_text (rate, written), &rate, NULL));
        assert_same (rate, expected);
      }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/rate/read", read_rows, test_read);
  add_rows ("/rate/refused", refused_rows, test_refused);
  add_rows ("/rate/nominal", nominal_rows, test_nominal);
  g_test_add_func ("/rate/valid", test_valid);
  g_test_add_func ("/rate/property/whole-stays-whole", test_whole_stays_whole);
  g_test_add_func ("/rate/property/family", test_family);
  return g_test_run ();
}
