/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What the window knows of terms: steps, numbers, what follows from what. */

#include "app/term.h"

#include "plan/bodies.h"
#include "rows.h"

typedef struct {
  const char *name;
  DrawlTimingTerm term;
  const char *value;
  int steps;
  const char *next; /* NULL: none */
} StepRow;

static const StepRow steps[] = {
    {"capture-without-body", DRAWL_TIMING_CAPTURE, "240", 1, "241"},
    {"capture-large", DRAWL_TIMING_CAPTURE, "240", -10, "230"},
    {"capture-stays-above-0", DRAWL_TIMING_CAPTURE, "1", -1, NULL},
    {"playback-up", DRAWL_TIMING_PLAYBACK, "24", 1, "25"},
    {"playback-down-to-ntsc", DRAWL_TIMING_PLAYBACK, "24", -1, "24000/1001"},
    {"playback-from-ntsc", DRAWL_TIMING_PLAYBACK, "30000/1001", 1, "30"},
    {"playback-between", DRAWL_TIMING_PLAYBACK, "40", 1, "48"},
    {"playback-between-down", DRAWL_TIMING_PLAYBACK, "40", -1, "30"},
    {"playback-large-stops-at-the-last", DRAWL_TIMING_PLAYBACK, "24", 10, "60"},
    {"playback-large-stops-at-the-first", DRAWL_TIMING_PLAYBACK, "50", -10, "24000/1001"},
    {"playback-at-the-end", DRAWL_TIMING_PLAYBACK, "60", 1, NULL},
    {"playback-below-the-first", DRAWL_TIMING_PLAYBACK, "12", -1, NULL},
    {"time-by-a-tenth", DRAWL_TIMING_ACTION, "4.5", 1, "4.6"},
    {"whole-time-by-a-tenth", DRAWL_TIMING_SCREEN, "12", 1, "12.1"},
    {"time-by-its-last-decimal", DRAWL_TIMING_ACTION, "0.45", -1, "0.44"},
    {"time-by-a-thousandth", DRAWL_TIMING_ACTION, "0.025", 1, "0.026"},
    {"endless-time-by-a-thousandth", DRAWL_TIMING_SCREEN, "1/3", 1, "1003/3000"},
    {"time-large", DRAWL_TIMING_ACTION, "0.45", 10, "0.55"},
    {"time-stays-above-0", DRAWL_TIMING_ACTION, "0.1", -1, NULL},
    {"factor-up", DRAWL_TIMING_FACTOR, "10", 1, "11"},
    {"factor-keeps-its-part", DRAWL_TIMING_FACTOR, "2.5", 1, "3.5"},
    {"factor-stops-at-real-time", DRAWL_TIMING_FACTOR, "1.5", -1, "1"},
    {"factor-from-real-time-down", DRAWL_TIMING_FACTOR, "1", -1, "1/2"},
    {"factor-faster-still", DRAWL_TIMING_FACTOR, "1/2", -1, "1/3"},
    {"factor-faster-up", DRAWL_TIMING_FACTOR, "1/2", 1, "1"},
    {"factor-large", DRAWL_TIMING_FACTOR, "30", -10, "20"},
    {"post-speed", DRAWL_TIMING_POST_SPEED, "50", 1, "51"},
    {"post-speed-large", DRAWL_TIMING_POST_SPEED, "50", -10, "40"},
    {"post-speed-stays-above-0", DRAWL_TIMING_POST_SPEED, "5", -10, NULL},
};

static void
test_step (gconstpointer data)
{
  const StepRow *row = data;
  DrawlRational next;
  gboolean found = drawl_term_step (row->term, exact (row->value), NULL, row->steps, &next);

  g_assert_cmpint (found, ==, row->next != NULL);
  if (found)
    assert_same (next, exact (row->next));
}

/* The body offers whole rates and three broken ones; hd in intra goes up to 240. */
typedef struct {
  const char *name;
  const char *value;
  int steps;
  const char *next;
} OfferedRow;

static const OfferedRow offered[] = {
    {"next", "59", 1, "60000/1001"},
    {"back", "60", -1, "60000/1001"},
    {"from-a-rate-it-has-not", "59.5", 1, "60000/1001"},
    {"large", "24", -10, "15"},
    {"stops-at-the-last", "238", 10, "240"},
    {"at-the-end", "240", 1, NULL},
};

static void
test_step_offered (gconstpointer data)
{
  const OfferedRow *row = data;
  g_autoptr (DrawlBody) body = sound_body (DIGITAL_BODY);
  DrawlCheckQuestion question = {
      .body = body,
      .size = drawl_body_size_index (body, "hd"),
      .codec = drawl_body_codec_index (body, "intra"),
  };
  DrawlRational next;
  gboolean found =
      drawl_term_step (DRAWL_TIMING_CAPTURE, exact (row->value), &question, row->steps, &next);

  g_assert_cmpint (found, ==, row->next != NULL);
  if (found)
    assert_same (next, exact (row->next));
}

typedef struct {
  const char *name;
  DrawlTimingTerm term;
  const char *present, *typed;
  const char *value; /* NULL: refused */
  const char *shown;
} ReadingRow;

static const ReadingRow readings[] = {
    {"rate", DRAWL_TIMING_CAPTURE, "24", "240", "240", "240"},
    {"rate-with-unit", DRAWL_TIMING_CAPTURE, "24", "240 fps", "240", "240"},
    {"customary-spelling", DRAWL_TIMING_PLAYBACK, "24", "23.976", "24000/1001", "23.976"},
    {"customary-spelling-with-comma", DRAWL_TIMING_PLAYBACK, "24", "23,98", "24000/1001", "23.976"},
    {"comma", DRAWL_TIMING_ACTION, "1", "0,45", "0.45", "0.45"},
    {"slower", DRAWL_TIMING_FACTOR, "2", "10x", "10", "10"},
    {"faster", DRAWL_TIMING_FACTOR, "1/2", "4", "1/4", "4"},
    {"faster-than-half-is-slower", DRAWL_TIMING_FACTOR, "1/2", "0.5", "2", "2"},
    {"per-cent", DRAWL_TIMING_POST_SPEED, "100", "50 %", "50", "50"},
    {"zero", DRAWL_TIMING_CAPTURE, "24", "0", NULL, NULL},
    {"negative", DRAWL_TIMING_ACTION, "1", "-1", NULL, NULL},
    {"words", DRAWL_TIMING_SCREEN, "1", "long", NULL, NULL},
    {"empty", DRAWL_TIMING_CAPTURE, "24", "", NULL, NULL},
};

static void
test_read (gconstpointer data)
{
  const ReadingRow *row = data;
  g_autoptr (GError) error = NULL;
  DrawlRational value;
  gboolean taken = drawl_term_read (row->term, exact (row->present), row->typed, &value, &error);

  g_assert_cmpint (taken, ==, row->value != NULL);
  if (!taken) {
    g_assert_nonnull (error);
    return;
  }
  g_autofree char *shown = drawl_term_number (row->term, value);
  assert_same (value, exact (row->value));
  g_assert_cmpstr (shown, ==, row->shown);
}

#define BIT(term) DRAWL_TIMING_BIT (DRAWL_TIMING_##term)

typedef struct {
  const char *name;
  DrawlTimingTerm term;
  guint given;
  const char *text;
} FollowsRow;

static const FollowsRow follows[] = {
    {"factor", DRAWL_TIMING_FACTOR,
     BIT (CAPTURE) | BIT (PLAYBACK) | BIT (ACTION) | BIT (POST_SPEED),
     "Follows from capture rate, playback rate"},
    {"screen", DRAWL_TIMING_SCREEN,
     BIT (CAPTURE) | BIT (PLAYBACK) | BIT (ACTION) | BIT (POST_SPEED),
     "Follows from capture rate, playback rate, action time, post speed"},
    {"capture", DRAWL_TIMING_CAPTURE,
     BIT (FACTOR) | BIT (PLAYBACK) | BIT (ACTION) | BIT (POST_SPEED),
     "Follows from playback rate, slow factor"},
    {"action", DRAWL_TIMING_ACTION, BIT (SCREEN) | BIT (FACTOR) | BIT (PLAYBACK) | BIT (POST_SPEED),
     "Follows from screen time, slow factor, post speed"},
};

static void
test_follows (gconstpointer data)
{
  const FollowsRow *row = data;
  g_autofree char *text = drawl_term_follows_text (row->term, row->given);

  g_assert_cmpstr (text, ==, row->text);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/term/step", steps, test_step);
  add_rows ("/term/step-offered", offered, test_step_offered);
  add_rows ("/term/read", readings, test_read);
  add_rows ("/term/follows", follows, test_follows);
  return g_test_run ();
}
