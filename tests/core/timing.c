/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The timing solver: what follows from what, what is missing, what disagrees, and round trips from
 * every set of terms that is enough. */

#include "core/error.h"
#include "core/timing.h"
#include "rows.h"

#include <string.h>

#define N_RANDOM 2000
#define C DRAWL_TIMING_BIT (DRAWL_TIMING_CAPTURE)
#define P DRAWL_TIMING_BIT (DRAWL_TIMING_PLAYBACK)
#define A DRAWL_TIMING_BIT (DRAWL_TIMING_ACTION)
#define S DRAWL_TIMING_BIT (DRAWL_TIMING_SCREEN)
#define F DRAWL_TIMING_BIT (DRAWL_TIMING_FACTOR)
#define R DRAWL_TIMING_BIT (DRAWL_TIMING_POST_SPEED)

/* Reads "capture_rate=240 action_s=0.45"; returns the bits of the terms in it. */
static guint
read_terms (const char *text, DrawlRational value[DRAWL_TIMING_N_TERMS])
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);
  guint bits = 0;

  for (gsize i = 0; words[i] != NULL && *words[i] != '\0'; i++) {
    char *sign = strchr (words[i], '=');
    guint term = 0;

    *sign = '\0';
    while (!g_str_equal (drawl_timing_term_key (term), words[i]))
      g_assert_cmpuint (++term, <, DRAWL_TIMING_N_TERMS);
    value[term] = exact (sign + 1);
    bits |= DRAWL_TIMING_BIT (term);
  }
  return bits;
}

typedef struct {
  const char *name, *given, *followed;
  gint64 frames, screen_frames;
} Solved;

static const Solved solved_rows[] = {
    {"rates-and-action", "capture_rate=240 playback_rate=24 action_s=0.45",
     "screen_s=4.5 slow_factor=10", 108, 108},
    {"rates-and-screen", "capture_rate=240 playback_rate=24 screen_s=4.5",
     "action_s=0.45 slow_factor=10", 108, 108},
    {"factor-and-playback", "slow_factor=10 playback_rate=24 action_s=0.45",
     "capture_rate=240 screen_s=4.5", 108, 108},
    {"factor-and-capture", "slow_factor=10 capture_rate=240 screen_s=4.5",
     "playback_rate=24 action_s=0.45", 108, 108},
    {"times-and-playback", "action_s=0.45 screen_s=4.5 playback_rate=24",
     "capture_rate=240 slow_factor=10", 108, 108},
    {"times-and-capture", "action_s=0.45 screen_s=4.5 capture_rate=240",
     "playback_rate=24 slow_factor=10", 108, 108},
    {"all-that-agree",
     "capture_rate=240 playback_rate=24 action_s=0.45 screen_s=4.5 slow_factor=10", "", 108, 108},
    {"at-24000-1001", "capture_rate=120 playback_rate=24000/1001 action_s=4",
     "screen_s=20.02 slow_factor=5.005", 480, 480},
    {"undercranked", "capture_rate=12 playback_rate=24 action_s=10", "screen_s=5 slow_factor=0.5",
     120, 120},
    {"real-time", "capture_rate=24 playback_rate=24 action_s=1", "screen_s=1 slow_factor=1", 24,
     24},
    {"half-post-speed", "capture_rate=120 playback_rate=24 action_s=2 post_speed_percent=50",
     "screen_s=20 slow_factor=5", 240, 480},
    {"double-post-speed", "capture_rate=48 playback_rate=24 screen_s=3 post_speed_percent=200",
     "action_s=3 slow_factor=2", 144, 72},
    {"frames-cover", "capture_rate=24 playback_rate=24 action_s=0.1", "screen_s=0.1 slow_factor=1",
     3, 3},
    {"thirds-are-exact", "capture_rate=24 playback_rate=24 action_s=1/3",
     "screen_s=1/3 slow_factor=1", 8, 8},
    {"one-frame-at-least", "capture_rate=1/5 playback_rate=24 action_s=0.001",
     "screen_s=1/120000 slow_factor=1/120", 1, 1},
};

static void
test_solved (gconstpointer data)
{
  const Solved *row = data;
  DrawlRational value[DRAWL_TIMING_N_TERMS] = {{0, 1}};
  g_autoptr (GError) error = NULL;
  guint given = read_terms (row->given, value);
  guint followed = read_terms (row->followed, value);
  DrawlTiming timing;

  g_assert_true (drawl_timing_solve (value, given, &timing, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (timing.followed, ==, followed);
  for (guint term = 0; term < DRAWL_TIMING_N_TERMS; term++)
    if (((given | followed) & DRAWL_TIMING_BIT (term)) != 0)
      assert_same (timing.value[term], value[term]);
  if ((given & R) == 0)
    assert_rational (timing.value[DRAWL_TIMING_POST_SPEED], 100, 1);
  g_assert_cmpint (timing.frames, ==, row->frames);
  g_assert_cmpint (timing.screen_frames, ==, row->screen_frames);
}

typedef struct {
  const char *name, *given;
  DrawlCoreError code;
  const char *says;
} Refused;

static const Refused refused_rows[] = {
    {"nothing-given", "", DRAWL_CORE_ERROR_MISSING,
     "too little is given; playback rate and capture rate and action time would be enough"},
    {"no-time", "capture_rate=240 playback_rate=24", DRAWL_CORE_ERROR_MISSING,
     "action time or screen time is missing"},
    {"no-time-with-factor", "slow_factor=10 playback_rate=24", DRAWL_CORE_ERROR_MISSING,
     "action time or screen time is missing"},
    {"no-slowness", "playback_rate=24 action_s=1", DRAWL_CORE_ERROR_MISSING,
     "capture rate or screen time or slow factor is missing"},
    {"no-rate", "slow_factor=10 action_s=1", DRAWL_CORE_ERROR_MISSING,
     "capture rate or playback rate is missing"},
    {"one-rate-alone", "playback_rate=24", DRAWL_CORE_ERROR_MISSING,
     "capture rate and action time would be enough"},
    {"factor-disagrees", "capture_rate=240 playback_rate=24 slow_factor=5 action_s=1",
     DRAWL_CORE_ERROR_CONFLICT,
     "slow factor 5× and capture rate 240 fps disagree; with the rest as given, slow factor would "
     "have "
     "to be 10×"},
    {"screen-disagrees", "capture_rate=240 playback_rate=24 action_s=1 screen_s=5",
     DRAWL_CORE_ERROR_CONFLICT,
     "screen time 5 s and action time 1 s disagree; with the rest as given, screen time would have "
     "to be "
     "10 s"},
    {"times-and-factor-disagree", "action_s=1 screen_s=5 slow_factor=4 playback_rate=24",
     DRAWL_CORE_ERROR_CONFLICT, "screen time would have to be 4 s"},
    {"no-hidden-post-speed", "capture_rate=240 playback_rate=24 action_s=1 screen_s=20",
     DRAWL_CORE_ERROR_CONFLICT, "screen time would have to be 10 s"},
    {"post-speed-counts",
     "capture_rate=240 playback_rate=24 action_s=1 screen_s=10 "
     "post_speed_percent=50",
     DRAWL_CORE_ERROR_CONFLICT, "screen time would have to be 20 s"},
    {"zero-rate", "capture_rate=0 playback_rate=24 action_s=1", DRAWL_CORE_ERROR_RANGE,
     "capture rate cannot be 0 fps; a value above 0 is expected"},
    {"negative-time", "capture_rate=240 playback_rate=24 action_s=-1", DRAWL_CORE_ERROR_RANGE,
     "action time cannot be -1 s; a value above 0 is expected"},
    {"zero-post-speed", "capture_rate=240 playback_rate=24 action_s=1 post_speed_percent=0",
     DRAWL_CORE_ERROR_RANGE, "post speed cannot be 0 %"},
    {"solved-rate-too-high", "slow_factor=1000000 playback_rate=24 action_s=1",
     DRAWL_CORE_ERROR_RANGE,
     "capture rate cannot be 24000000 fps; at most 10000000 fps is possible"},
    {"solved-time-too-long", "capture_rate=10000000 playback_rate=1 action_s=100",
     DRAWL_CORE_ERROR_RANGE, "screen time cannot be 1000000000 s; at most 315360000 s is possible"},
    {"factor-too-small", "slow_factor=1/100000001 playback_rate=24 action_s=1",
     DRAWL_CORE_ERROR_RANGE,
     "slow factor cannot be 1/100000001×; at least 0.00000001× is possible"},
    {"too-fine",
     "capture_rate=9007199254740881/9007199254740993 playback_rate=24 "
     "action_s=9007199254740847/9007199254740997",
     DRAWL_CORE_ERROR_OVERFLOW, "cannot be"},
};

static void
test_refused (gconstpointer data)
{
  const Refused *row = data;
  DrawlRational value[DRAWL_TIMING_N_TERMS] = {{0, 1}};
  g_autoptr (GError) error = NULL;
  guint given = read_terms (row->given, value);
  DrawlTiming timing = {.frames = -7};

  g_assert_false (drawl_timing_solve (value, given, &timing, &error));
  assert_says (error, row->code, row->says);
  g_assert_cmpint (timing.frames, ==, -7);
}

typedef struct {
  const char *name;
  DrawlTimingTerm term;
  const char *text;
  const char *value; /* NULL: refused */
  const char *says;
} Typed;

static const Typed typed_rows[] = {
    {"rate-family", DRAWL_TIMING_CAPTURE, "59.94", "60000/1001", NULL},
    {"rate-unit", DRAWL_TIMING_PLAYBACK, "24 fps", "24", NULL},
    {"time", DRAWL_TIMING_ACTION, "0.45", "0.45", NULL},
    {"time-unit", DRAWL_TIMING_SCREEN, "4,5 s", "4.5", NULL},
    {"time-is-literal", DRAWL_TIMING_SCREEN, "23.976", "23.976", NULL},
    {"factor", DRAWL_TIMING_FACTOR, "10", "10", NULL},
    {"factor-times", DRAWL_TIMING_FACTOR, "10×", "10", NULL},
    {"factor-x", DRAWL_TIMING_FACTOR, "2.5 x", "5/2", NULL},
    {"per-cent", DRAWL_TIMING_POST_SPEED, "50%", "50", NULL},
    {"per-cent-space", DRAWL_TIMING_POST_SPEED, "12.5 %", "12.5", NULL},
    {"longest", DRAWL_TIMING_ACTION, "315360000", "315360000", NULL},
    {"too-long", DRAWL_TIMING_ACTION, "315360001", NULL, "at most 315360000 s"},
    {"zero-time", DRAWL_TIMING_ACTION, "0", NULL, "above 0"},
    {"zero-rate", DRAWL_TIMING_CAPTURE, "0", NULL, "above 0"},
    {"wrong-unit", DRAWL_TIMING_ACTION, "4 fps", NULL, "because of “fps”"},
    {"factor-too-large", DRAWL_TIMING_FACTOR, "100000001", NULL, "at most 100000000×"},
};

static void
test_typed (gconstpointer data)
{
  const Typed *row = data;
  g_autoptr (GError) error = NULL;
  DrawlRational value = {7, 5};

  g_assert_cmpint (drawl_timing_term_parse (row->term, row->text, &value, &error), ==,
                   row->value != NULL);
  if (row->value != NULL) {
    g_assert_no_error (error);
    assert_same (value, exact (row->value));
  } else {
    g_assert_nonnull (error);
    g_assert_nonnull (strstr (error->message, row->says));
    assert_rational (value, 7, 5);
  }
}

/* The sets of terms that are dependent, and no part of which is: the two ties, and both with the
 * factor taken out. A term is determined when the rest of one of these is given. */
static const guint circuits[] = {C | P | F, A | F | S | R, C | P | A | S | R};

static guint
closure_by_circuits (guint given)
{
  guint closure = given;

  for (guint term = 0; term < DRAWL_TIMING_N_TERMS; term++)
    for (gsize i = 0; i < G_N_ELEMENTS (circuits); i++) {
      guint bit = DRAWL_TIMING_BIT (term);
      if ((circuits[i] & bit) != 0 && (circuits[i] & ~bit & ~given) == 0)
        closure |= bit;
    }
  return closure;
}

static void
test_closure (void)
{
  for (guint given = 0; given <= DRAWL_TIMING_ALL; given++)
    g_assert_cmpuint (drawl_timing_closure (given), ==, closure_by_circuits (given));
}

static void
test_keys_and_names (void)
{
  for (guint a = 0; a < DRAWL_TIMING_N_TERMS; a++)
    for (guint b = 0; b < a; b++) {
      g_assert_cmpstr (drawl_timing_term_key (a), !=, drawl_timing_term_key (b));
      g_assert_cmpstr (drawl_timing_term_name (a), !=, drawl_timing_term_name (b));
    }
  g_assert_cmpstr (drawl_timing_term_key (DRAWL_TIMING_POST_SPEED), ==, "post_speed_percent");
}

static DrawlRational
random_ratio (gint32 num_max, gint32 den_max)
{
  DrawlRational value;
  g_assert_true (drawl_rational_make (g_test_rand_int_range (1, num_max),
                                      g_test_rand_int_range (1, den_max), &value));
  return value;
}

/* Six values that agree, by the definitions. */
static void
random_timing (DrawlRational value[DRAWL_TIMING_N_TERMS])
{
  DrawlRational frames, percent_frames;

  value[DRAWL_TIMING_CAPTURE] = random_ratio (100000, 1002);
  value[DRAWL_TIMING_PLAYBACK] =
      g_test_rand_bit () ? DRAWL_RATIONAL_INIT (24000, 1001) : random_ratio (120, 2);
  value[DRAWL_TIMING_ACTION] = random_ratio (10000, 1000);
  value[DRAWL_TIMING_POST_SPEED] = random_ratio (400, 4);
  g_assert_true (drawl_rational_div (value[DRAWL_TIMING_CAPTURE], value[DRAWL_TIMING_PLAYBACK],
                                     &value[DRAWL_TIMING_FACTOR]));
  g_assert_true (
      drawl_rational_mul (value[DRAWL_TIMING_ACTION], value[DRAWL_TIMING_CAPTURE], &frames));
  g_assert_true (drawl_rational_mul (frames, drawl_rational_whole (100), &percent_frames));
  g_assert_true (drawl_rational_div (percent_frames, value[DRAWL_TIMING_PLAYBACK],
                                     &value[DRAWL_TIMING_SCREEN]));
  g_assert_true (drawl_rational_div (value[DRAWL_TIMING_SCREEN], value[DRAWL_TIMING_POST_SPEED],
                                     &value[DRAWL_TIMING_SCREEN]));
}

static void
test_every_subset (void)
{
  for (guint i = 0; i < N_RANDOM; i++) {
    DrawlRational value[DRAWL_TIMING_N_TERMS];
    random_timing (value);

    for (guint given = 0; given <= DRAWL_TIMING_ALL; given++) {
      g_autoptr (GError) error = NULL;
      DrawlTiming timing;
      gboolean enough = closure_by_circuits (given) == DRAWL_TIMING_ALL;

      g_assert_cmpint (drawl_timing_solve_bare (value, given, &timing, &error), ==, enough);
      if (!enough) {
        g_assert_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_MISSING);
        continue;
      }
      g_assert_cmpuint (timing.followed, ==, DRAWL_TIMING_ALL & ~given);
      for (guint term = 0; term < DRAWL_TIMING_N_TERMS; term++)
        assert_same (timing.value[term], value[term]);
      g_assert_cmpint (timing.frames, >=, 1);
      g_assert_cmpint (timing.screen_frames, >=, 1);
    }
  }
}

/* A term that the others determine, moved off: it is never taken in silence. */
static void
test_disagreement (void)
{
  for (guint i = 0; i < N_RANDOM; i++) {
    DrawlRational value[DRAWL_TIMING_N_TERMS];
    random_timing (value);
    guint given = (guint)g_test_rand_int_range (0, DRAWL_TIMING_ALL + 1);
    guint moved = (guint)g_test_rand_int_range (0, DRAWL_TIMING_N_TERMS),
          bit = DRAWL_TIMING_BIT (moved);
    if (closure_by_circuits (given & ~bit) != DRAWL_TIMING_ALL)
      continue;

    g_autoptr (GError) error = NULL;
    DrawlTiming timing;
    g_assert_true (drawl_rational_mul (value[moved], drawl_rational_whole (2), &value[moved]));
    g_assert_false (drawl_timing_solve_bare (value, given | bit, &timing, &error));
    if (error->code == DRAWL_CORE_ERROR_CONFLICT)
      g_assert_nonnull (strstr (error->message, "would have to be"));
    else
      g_assert_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_RANGE);
  }
}

/* The least whole number of frames that covers the action, and no smaller one. */
static void
test_frames_cover (void)
{
  for (guint i = 0; i < N_RANDOM; i++) {
    DrawlRational value[DRAWL_TIMING_N_TERMS], covered;
    DrawlTiming timing;

    random_timing (value);
    g_assert_true (drawl_timing_solve_bare (value, C | P | A | R, &timing, NULL));
    g_assert_true (drawl_rational_div (drawl_rational_whole (timing.frames),
                                       value[DRAWL_TIMING_CAPTURE], &covered));
    g_assert_cmpint (drawl_rational_compare (covered, value[DRAWL_TIMING_ACTION]), >=, 0);
    g_assert_true (drawl_rational_div (drawl_rational_whole (timing.frames - 1),
                                       value[DRAWL_TIMING_CAPTURE], &covered));
    g_assert_cmpint (drawl_rational_compare (covered, value[DRAWL_TIMING_ACTION]), <, 0);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/timing/solved", solved_rows, test_solved);
  add_rows ("/timing/refused", refused_rows, test_refused);
  add_rows ("/timing/typed", typed_rows, test_typed);
  g_test_add_func ("/timing/closure", test_closure);
  g_test_add_func ("/timing/keys-and-names", test_keys_and_names);
  g_test_add_func ("/timing/property/every-subset", test_every_subset);
  g_test_add_func ("/timing/property/disagreement", test_disagreement);
  g_test_add_func ("/timing/property/frames-cover", test_frames_cover);
  return g_test_run ();
}
