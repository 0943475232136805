/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Published check values: screen time. Each row is named by its id, and its source says where the
 * value stands and how it was obtained from there. */

#include "core/timecode.h"
#include "core/timing.h"
#include "rows.h"

typedef struct {
  const char *name;
  gint64 frames;
  const char *rate;
  double seconds, tolerance;
  const char *source;
} Duration;

static const Duration duration_rows[] = {
    {"ST17", 480, "24000/1001", 20.020, 1e-6,
     "definition; 480 frames made at 120 fps and played at 24000/1001: FFmpeg 5.1 run, ffprobe "
     "says "
     "20.020000"},
    {"ST18", 1800, "30000/1001", 60.060, 1e-6,
     "definition; FFmpeg 5.1 run, ffprobe says 60.060000"},
};

static void
test_duration (gconstpointer data)
{
  const Duration *row = data;
  DrawlRational seconds;

  g_assert_true (drawl_timecode_seconds (exact (row->rate), row->frames, &seconds));
  g_assert_cmpfloat_with_epsilon (drawl_rational_to_double (seconds), row->seconds, row->tolerance);
}

typedef struct {
  const char *name, *capture, *playback, *action;
  const char *factor, *screen;
  gint64 frames;
  const char *source;
} Solved;

/* Exact. */
static const Solved solved_rows[] = {
    {"ST17-solved", "120", "24000/1001", "4", "5.005", "20.02", 480,
     "definition; FFmpeg 5.1 run, ffprobe says 480 frames and 20.020000 s"},
    {"ST24", "96", "24", "1", "4", "4", 96,
     "worked example of four times overcranking; read in a model-effects page, "
     "modelshipsinthecinema.com"},
};

static void
test_solved (gconstpointer data)
{
  const Solved *row = data;
  DrawlRational value[DRAWL_TIMING_N_TERMS] = {
      [DRAWL_TIMING_CAPTURE] = exact (row->capture),
      [DRAWL_TIMING_PLAYBACK] = exact (row->playback),
      [DRAWL_TIMING_ACTION] = exact (row->action),
  };
  guint given = DRAWL_TIMING_BIT (DRAWL_TIMING_CAPTURE) | DRAWL_TIMING_BIT (DRAWL_TIMING_PLAYBACK) |
                DRAWL_TIMING_BIT (DRAWL_TIMING_ACTION);
  DrawlTiming timing;

  g_assert_true (drawl_timing_solve (value, given, &timing, NULL));
  assert_same (timing.value[DRAWL_TIMING_FACTOR], exact (row->factor));
  assert_same (timing.value[DRAWL_TIMING_SCREEN], exact (row->screen));
  g_assert_cmpint (timing.frames, ==, row->frames);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/published/timing", duration_rows, test_duration);
  add_rows ("/published/timing", solved_rows, test_solved);
  return g_test_run ();
}
