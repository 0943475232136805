/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Where a drag or a key puts the end of a span. */

#include "app/span-drag.h"

#include "rows.h"

typedef struct {
  const char *name;
  double seconds, seconds_per_px;
  const char *rate;
  const char *snapped;
} SnapRow;

static const SnapRow snaps[] = {
    {"round-decimal", 0.4537, 0.01, "240", "0.45"},
    {"next-round-decimal", 0.4537, 0.011, "240", "0.46"},
    {"fifths", 3.13, 0.03, "240", "3.15"},
    {"whole-seconds", 61.4, 0.6, "24", "61"},
    {"frames-when-wider-than-a-step", 0.5, 0.001, "24", "0.5"},
    {"frames-of-24", 0.53, 0.001, "24", "13/24"},
    {"frames-of-23.976", 1.0, 0.001, "24000/1001", "1001/1000"},
    {"at-least-a-step", 0, 0.01, "240", "0.01"},
    {"at-least-a-frame", 0, 0.0001, "24", "1/24"},
    {"very-long", 86430, 200, "24", "86400"},
    {"very-short", 0.0000123, 0.0000001, "10000000", "0.000012"},
};

static void
test_snap (gconstpointer data)
{
  const SnapRow *row = data;

  assert_same (drawl_span_snap (row->seconds, row->seconds_per_px, exact (row->rate)),
               exact (row->snapped));
}

typedef struct {
  const char *name;
  const char *seconds;
  gint64 frames;
  const char *rate;
  const char *moved;
} NudgeRow;

static const NudgeRow nudges[] = {
    {"a-frame-on", "0.5", 1, "24", "13/24"},
    {"a-frame-back", "0.5", -1, "24", "11/24"},
    {"ten", "0.5", 10, "24", "22/24"},
    {"ntsc", "1001/1000", 1, "24000/1001", "1001/960"},
    {"from-between-to-the-next", "0.51", 1, "24", "13/24"},
    {"from-between-back", "0.51", -1, "24", "0.5"},
    {"never-below-a-frame", "1/24", -10, "24", "1/24"},
};

static void
test_nudge (gconstpointer data)
{
  const NudgeRow *row = data;
  DrawlRational moved;

  g_assert_true (drawl_span_nudge (exact (row->seconds), row->frames, exact (row->rate), &moved));
  assert_same (moved, exact (row->moved));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/span-drag/snap", snaps, test_snap);
  add_rows ("/span-drag/nudge", nudges, test_nudge);
  return g_test_run ();
}
