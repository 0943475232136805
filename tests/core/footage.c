/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Film by length: every gauge, the counter's reading, and that no frame is lost between feet and
 * frames. */

#include "core/footage.h"
#include "rows.h"

#define N_RANDOM 5000

typedef struct {
  const char *name, *gauge;
  gint64 frames;
  const char *counter, *feet, *metres;
} Length;

static const Length length_rows[] = {
    {"none", "35-4", 0, "0+00", "0", "0"},
    {"35-4-minute", "35-4", 1440, "90+00", "90", "27.432"},
    {"35-4-last-before-mark", "35-4", 1439, "89+15", "1439/16", "27.41295"},
    {"35-3-before-first-mark", "35-3", 21, "0+21", "63/64", "0.300038"},
    {"35-3-over-first-mark", "35-3", 22, "1+00", "33/32", "0.314325"},
    {"35-3-whole", "35-3", 64, "3+00", "3", "0.9144"},
    {"35-2", "35-2", 33, "1+01", "33/32", "0.314325"},
    {"16", "16", 4001, "100+01", "4001/40", "30.48762"},
    {"8", "8", 79, "0+79", "79/80", "0.30099"},
    {"super-8", "s8", 3600, "50+00", "50", "15.24"},
    {"65-5", "65-5", 13, "1+00", "65/64", "0.3095625"},
    {"65-8", "65-8", 15, "1+07", "15/8", "0.5715"},
    {"65-15", "65-15", 64, "15+00", "15", "4.572"},
};

static void
test_length (gconstpointer data)
{
  const Length *row = data;
  const DrawlGauge *gauge = drawl_gauge_find (row->gauge);
  g_autofree char *counter = drawl_footage_feet_frames (gauge, row->frames);
  DrawlRational feet, metres;

  g_assert_cmpstr (counter, ==, row->counter);
  g_assert_true (drawl_footage_feet (gauge, row->frames, &feet));
  assert_same (feet, exact (row->feet));
  g_assert_true (drawl_footage_metres (gauge, row->frames, &metres));
  g_assert_cmpfloat_with_epsilon (drawl_rational_to_double (metres),
                                  drawl_rational_to_double (exact (row->metres)), 1e-6);
}

typedef struct {
  const char *name, *gauge, *length;
  gboolean in_metres;
  gint64 frames;
} Load;

static const Load load_rows[] = {
    {"35-4-400-feet", "35-4", "400", FALSE, 6400},
    {"35-3-400-feet", "35-3", "400", FALSE, 8533},
    {"35-2-400-feet", "35-2", "400", FALSE, 12800},
    {"16-100-feet", "16", "100", FALSE, 4000},
    {"16-part-of-a-frame", "16", "1.049", FALSE, 41},
    {"65-15-1000-feet", "65-15", "1000", FALSE, 4266},
    {"one-foot-in-metres", "35-4", "0.3048", TRUE, 16},
    {"super-8-15-metres", "s8", "15", TRUE, 3543},
    {"none", "s8", "0", FALSE, 0},
};

static void
test_load (gconstpointer data)
{
  const Load *row = data;
  const DrawlGauge *gauge = drawl_gauge_find (row->gauge);
  gint64 frames = -1;

  g_assert_true (row->in_metres
                     ? drawl_footage_frames_on_metres (gauge, exact (row->length), &frames)
                     : drawl_footage_frames_on_feet (gauge, exact (row->length), &frames));
  g_assert_cmpint (frames, ==, row->frames);
}

static void
test_refused (void)
{
  const DrawlGauge *gauge = drawl_gauge_find ("35-3");
  DrawlRational length, longest = drawl_rational_whole (G_MAXINT64);
  gint64 frames;

  g_assert_false (drawl_footage_frames_on_feet (gauge, exact ("-1"), &frames));
  g_assert_false (drawl_footage_frames_on_metres (gauge, exact ("-1"), &frames));
  g_assert_false (drawl_footage_frames_on_feet (gauge, longest, &frames));
  g_assert_false (drawl_footage_feet (gauge, -1, &length));
  g_assert_false (drawl_footage_metres (gauge, -1, &length));
  g_assert_null (drawl_footage_feet_frames (gauge, -1));
  g_assert_null (drawl_footage_feet_frames (gauge, G_MAXINT64));
  g_assert_null (drawl_gauge_find ("35"));
  g_assert_false (drawl_footage_physical_metres (gauge, DRAWL_PITCH_LONG, exact ("-1"), &length));
  g_assert_false (drawl_footage_physical_metres (gauge, DRAWL_PITCH_LONG, longest, &length));
  g_assert_false (drawl_footage_physical_metres (drawl_gauge_find ("65-5"), DRAWL_PITCH_SHORT,
                                                 exact ("1"), &length));
}

static void
test_gauges (void)
{
  static const char *const ids[] = {"8",    "s8",   "16",   "35-4", "35-3",
                                    "35-2", "65-5", "65-8", "65-15"};
  guint n_gauges;
  const DrawlGauge *gauges = drawl_gauges (&n_gauges);

  g_assert_cmpuint (n_gauges, ==, G_N_ELEMENTS (ids));
  for (guint i = 0; i < n_gauges; i++) {
    g_assert_cmpstr (gauges[i].id, ==, ids[i]);
    g_assert_true (drawl_gauge_find (ids[i]) == &gauges[i]);
    g_assert_nonnull (gauges[i].name);
    g_assert_nonnull (gauges[i].source);
    g_assert_nonnull (gauges[i].step_source);
  }
}

/* A counting foot of film is within 0.3 % of a foot, at the short pitch no longer than at the long
 * one, and its step is in lowest terms. */
static void
test_physical (void)
{
  guint n_gauges;
  const DrawlGauge *gauges = drawl_gauges (&n_gauges);

  for (guint i = 0; i < n_gauges; i++) {
    DrawlRational long_m, short_m;

    g_assert_true (drawl_footage_physical_metres (&gauges[i], DRAWL_PITCH_LONG,
                                                  gauges[i].foot_frames, &long_m));
    g_assert_cmpfloat_with_epsilon (drawl_rational_to_double (long_m), 0.3048, 0.003 * 0.3048);
    if (drawl_footage_physical_metres (&gauges[i], DRAWL_PITCH_SHORT, gauges[i].foot_frames,
                                       &short_m))
      g_assert_cmpint (drawl_rational_compare (short_m, long_m), <, 0);
    for (guint pitch = 0; pitch < DRAWL_N_PITCHES; pitch++) {
      DrawlRational step = gauges[i].step_mm[pitch], lowest;
      g_assert_true (drawl_rational_make (step.num, step.den, &lowest));
      assert_rational (step, lowest.num, lowest.den);
    }
  }
}

/* Frames at or before the @feet-th foot mark begin before it; the counter's two parts add up to all
 * frames. */
static void
test_counter_adds_up (void)
{
  guint n_gauges;
  const DrawlGauge *gauges = drawl_gauges (&n_gauges);

  for (guint i = 0; i < N_RANDOM; i++) {
    const DrawlGauge *gauge = &gauges[g_test_rand_int_range (0, (gint32)n_gauges)];
    gint64 frames = random_whole (40), feet, rest, before_mark;
    g_autofree char *counter = drawl_footage_feet_frames (gauge, frames);
    char *plus;

    feet = g_ascii_strtoll (counter, &plus, 10);
    rest = g_ascii_strtoll (plus + 1, NULL, 10);
    before_mark =
        (feet * gauge->foot_frames.num + gauge->foot_frames.den - 1) / gauge->foot_frames.den;
    g_assert_cmpint (before_mark + rest, ==, frames);
    g_assert_cmpint (rest * gauge->foot_frames.den, <, gauge->foot_frames.num);
  }
}

static void
test_there_and_back (void)
{
  guint n_gauges;
  const DrawlGauge *gauges = drawl_gauges (&n_gauges);

  for (guint i = 0; i < N_RANDOM; i++) {
    const DrawlGauge *gauge = &gauges[g_test_rand_int_range (0, (gint32)n_gauges)];
    gint64 frames = random_whole (40), back;
    DrawlRational length;

    g_assert_true (drawl_footage_feet (gauge, frames, &length));
    g_assert_true (drawl_footage_frames_on_feet (gauge, length, &back));
    g_assert_cmpint (back, ==, frames);
    g_assert_true (drawl_footage_metres (gauge, frames, &length));
    g_assert_true (drawl_footage_frames_on_metres (gauge, length, &back));
    g_assert_cmpint (back, ==, frames);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/footage/length", length_rows, test_length);
  add_rows ("/footage/load", load_rows, test_load);
  g_test_add_func ("/footage/refused", test_refused);
  g_test_add_func ("/footage/gauges", test_gauges);
  g_test_add_func ("/footage/physical", test_physical);
  g_test_add_func ("/footage/property/counter-adds-up", test_counter_adds_up);
  g_test_add_func ("/footage/property/there-and-back", test_there_and_back);
  return g_test_run ();
}
