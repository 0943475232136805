/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Ticks of an axis: where they stand, what they say, and that they never crowd. */

#include "draw/axis.h"
#include "rows.h"

#include <math.h>

#define N_RANDOM 20000

typedef struct {
  const char *name;
  double from, to, px, label_px;
  double major, minor;
  int decimals;
  gint64 first, last;     /* of the labelled ticks */
  const char *says_first; /* the labels there */
  const char *says_last;
} Ticks;

static const Ticks ticks_rows[] = {
    {"five-seconds", 0, 5, 500, 80, 1, 0.2, 0, 0, 5, "0", "5"},
    {"half-seconds", 0, 2.1, 500, 80, 0.5, 0.1, 1, 0, 4, "0", "2.0"},
    {"before-zero", -0.3, 4.5, 700, 85, 1, 0.2, 0, 0, 4, "0", "4"},
    {"two-before-zero", -2.2, 1, 700, 85, 0.5, 0.1, 1, -4, 2, "−2.0", "1.0"},
    {"milliseconds", 0, 0.001, 500, 80, 0.0002, 0.00005, 4, 0, 5, "0", "0.0010"},
    {"a-tenth-of-a-microsecond", 0, 1e-7, 500, 80, 2e-8, 5e-9, 8, 0, 5, "0", "0.00000010"},
    {"twenty-seconds", 0, 59, 300, 80, 20, 5, 0, 0, 2, "0", "40"},
    {"no-fifty", 0, 200, 400, 80, 60, 10, 0, 0, 3, "0", "3:00"},
    {"half-minutes-no", 0, 90, 400, 80, 20, 5, 0, 0, 4, "0", "1:20"},
    {"clock-with-decimals", 0, 61, 20000, 100, 0.5, 0.1, 1, 0, 122, "0", "1:01.0"},
    {"two-minutes", 0, 600, 450, 80, 120, 30, 0, 0, 5, "0", "10:00"},
    {"quarter-hours", 0, 3600, 360, 80, 900, 300, 0, 0, 4, "0", "1:00:00"},
    {"ten-hours", 0, 36000, 700, 85, 7200, 1800, 0, 0, 5, "0", "10:00:00"},
    {"minus-an-hour", -3600, 3600, 720, 85, 900, 300, 0, -4, 4, "−1:00:00", "1:00:00"},
    {"a-day", 0, 100000, 300, 80, 43200, 10800, 0, 0, 2, "0", "24:00:00"},
    {"ten-years", 0, 315360000, 700, 85, 43200000, 8640000, 0, 0, 7, "0", "84000:00:00"},
    {"few-px", 0, 1, 20, 4, 0.2, 0.2, 1, 0, 5, "0", "1.0"},
    {"a-tick-at-the-end", 0, 0.3, 300, 100, 0.1, 0.02, 1, 0, 3, "0", "0.3"},
    {"nothing-between", 3, 3, 300, 80, 0.5, 0.1, 1, 0, 2, "0", "1.0"},
    {"not-a-number", NAN, 1, 300, 80, 0.5, 0.1, 1, 0, 2, "0", "1.0"},
};

static void
assert_near (double a, double b)
{
  g_assert_cmpfloat_with_epsilon (a, b, 1e-12 * MAX (fabs (a), fabs (b)));
}

static void
test_ticks (gconstpointer data)
{
  const Ticks *row = data;
  DrawlAxis axis = drawl_axis_make (row->from, row->to, row->px, row->label_px);
  gint64 first, last;

  assert_near (axis.major, row->major);
  assert_near (axis.minor, row->minor);
  g_assert_cmpint (axis.decimals, ==, row->decimals);
  drawl_axis_range (&axis, axis.major, &first, &last);
  g_assert_cmpint (first, ==, row->first);
  g_assert_cmpint (last, ==, row->last);
  g_autofree char *says_first = drawl_axis_label (&axis, (double)first * axis.major);
  g_autofree char *says_last = drawl_axis_label (&axis, (double)last * axis.major);
  g_assert_cmpstr (says_first, ==, row->says_first);
  g_assert_cmpstr (says_last, ==, row->says_last);
}

static double
random_length (void)
{
  return pow (10, g_test_rand_double_range (-7, 8.5));
}

/* Labels at least label_px apart, all ticks at least 4 px and not absurdly far, minor within major.
 */
static void
test_spacing (void)
{
  for (int i = 0; i < N_RANDOM; i++) {
    double from = g_test_rand_bit () ? -random_length () : 0, to = random_length ();
    double px = g_test_rand_double_range (10, 4000), label_px = g_test_rand_double_range (4, 200);
    DrawlAxis axis = drawl_axis_make (from, to, px, label_px);
    double px_per_second = px / (to - from), minors = axis.major / axis.minor;

    g_assert_cmpfloat (axis.major * px_per_second, >=, label_px * (1 - 1e-6));
    g_assert_cmpfloat (axis.major * px_per_second, <, label_px * 3.5);
    g_assert_cmpfloat (axis.minor * px_per_second, >=, 4 * (1 - 1e-6));
    g_assert_cmpfloat_with_epsilon (minors, round (minors), 1e-6);
  }
}

/* Every tick of the range lies on the axis, and the next on either side does not. */
static void
test_range (void)
{
  for (int i = 0; i < N_RANDOM; i++) {
    double from = g_test_rand_bit () ? -random_length () : 0, to = random_length ();
    DrawlAxis axis = drawl_axis_make (from, to, 1000, 60);
    double slack = 1e-6 * axis.minor;
    gint64 first, last;

    drawl_axis_range (&axis, axis.minor, &first, &last);
    g_assert_cmpfloat ((double)first * axis.minor, >=, from - slack);
    g_assert_cmpfloat ((double)(first - 1) * axis.minor, <, from + slack);
    g_assert_cmpfloat ((double)last * axis.minor, <=, to + slack);
    g_assert_cmpfloat ((double)(last + 1) * axis.minor, >, to - slack);
    g_assert_cmpint (last - first, <=, 1000 / 4);
  }
}

/* No two ticks of an axis say the same. */
static void
test_labels_differ (void)
{
  for (int i = 0; i < N_RANDOM / 10; i++) {
    DrawlAxis axis = drawl_axis_make (0, random_length (), 1000, 60);
    g_autofree char *before = NULL;
    gint64 first, last;

    drawl_axis_range (&axis, axis.major, &first, &last);
    for (gint64 tick = first; tick <= last; tick++) {
      char *label = drawl_axis_label (&axis, (double)tick * axis.major);

      g_assert_cmpstr (label, !=, before);
      g_free (before);
      before = label;
    }
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/axis/ticks", ticks_rows, test_ticks);
  g_test_add_func ("/axis/spacing", test_spacing);
  g_test_add_func ("/axis/range", test_range);
  g_test_add_func ("/axis/labels-differ", test_labels_differ);
  return g_test_run ();
}
