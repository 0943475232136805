/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Workings: every figure has one where it should and none where it has no meaning; the words in
 * them are all filled in; and they say what was reckoned. */

#include "fixture.h"

#include "plan/working.h"

#define BIT(figure) (1u << (figure))
#define TIMES                                                                                      \
  (BIT (DRAWL_FIGURE_CAPTURE) | BIT (DRAWL_FIGURE_ACTION) | BIT (DRAWL_FIGURE_SCREEN) |            \
   BIT (DRAWL_FIGURE_FACTOR) | BIT (DRAWL_FIGURE_SPEED_PERCENT) | BIT (DRAWL_FIGURE_FRAMES) |      \
   BIT (DRAWL_FIGURE_TAKE_FRAMES))
#define CODE BIT (DRAWL_FIGURE_SCREEN_TIMECODE)
#define LICENCES BIT (DRAWL_FIGURE_LICENCES)
#define FRAMES (BIT (DRAWL_FIGURE_FRAME_BYTES) | BIT (DRAWL_FIGURE_DATA_RATE))
#define CARDS (BIT (DRAWL_FIGURE_CARD_TIME) | BIT (DRAWL_FIGURE_CARDS))
#define BUFFER (BIT (DRAWL_FIGURE_BUFFER) | BIT (DRAWL_FIGURE_BUFFER_EMPTY))
#define FILM                                                                                       \
  (BIT (DRAWL_FIGURE_FOOTAGE) | BIT (DRAWL_FIGURE_MAGAZINE) | BIT (DRAWL_FIGURE_MAGAZINES))

#define A(size, codec) ",\"body\":\"A\",\"size\":\"" size "\",\"codec\":\"" codec "\""
#define F(size) ",\"body\":\"F\",\"size\":\"" size "\""

/* ---- Which figures there are ---- */

typedef struct {
  const char *name;
  const char *keys;
  guint figures;
} Has;

static const Has has[] = {
    {"no-body", "", TIMES | CODE},
    {"no-such-size", A ("8k", "intra"), TIMES | CODE},
    {"no-timecode", ",\"playback_rate\":\"24.5\"", TIMES},
    {"digital", A ("uhd", "intra"), TIMES | CODE | FRAMES | CARDS | BUFFER},
    {"licence", A ("uhd", "intra") ",\"capture_rate\":120,\"action_s\":1",
     TIMES | CODE | LICENCES | FRAMES | CARDS | BUFFER},
    {"too-large", A ("uhd", "intra") ",\"capture_rate\":24,\"action_s\":3000",
     TIMES | CODE | FRAMES | BIT (DRAWL_FIGURE_CARD_TIME) | BUFFER},
    {"film", F ("s16"), TIMES | CODE | FILM},
    {"film-too-long", F ("s16") ",\"capture_rate\":24,\"action_s\":900",
     TIMES | CODE | (FILM & ~BIT (DRAWL_FIGURE_MAGAZINES))},
};

static DrawlPlan *
plan_with (const char *keys)
{
  g_autofree char *text = g_strdup_printf (PLAN ("{\"slate\":\"1\"%s}"), keys);
  return plan_of (text);
}

static void
check_text (DrawlFigure figure, const char *what, const char *text)
{
  if (text == NULL || text[0] == '\0' || strpbrk (text, "{}") != NULL)
    g_error ("%s of %s is \"%s\"", what, drawl_figure_id (figure), text);
}

static void
test_has (gconstpointer data)
{
  const Has *row = data;
  g_autoptr (DrawlPlan) plan = plan_with (row->keys);

  for (guint figure = 0; figure < DRAWL_N_FIGURES; figure++) {
    g_autoptr (DrawlWorking) working =
        drawl_working_new (plan, drawl_plan_get_shot (plan, 0), figure);
    if ((working != NULL) != ((row->figures & BIT (figure)) != 0))
      g_error ("%s %s", drawl_figure_id (figure), working != NULL ? "is too much" : "is missing");
    if (working == NULL)
      continue;
    check_text (figure, "name", working->name);
    check_text (figure, "value", working->value);
    check_text (figure, "formula", working->formula);
    check_text (figure, "numbers", working->numbers);
    check_text (figure, "source", working->source);
  }
}

/* ---- What they say ---- */

typedef struct {
  const char *name;
  const char *keys;
  DrawlFigure figure;
  const char *value;
  const char *formula; /* a part of it */
  const char *numbers;
  const char *source; /* a part of it */
} Says;

#define TEN_TIMES ",\"capture_rate\":240,\"action_s\":\"0.45\""

static const Says says[] = {
    {"screen", TEN_TIMES, DRAWL_FIGURE_SCREEN, "4.5 s", "action time × slow factor ÷ post speed",
     "0.45 s × 10 ÷ 100 %", "Definition"},
    {"screen-post", TEN_TIMES ",\"post_speed_percent\":50", DRAWL_FIGURE_SCREEN, "9 s",
     "÷ post speed", "0.45 s × 10 ÷ 50 %", "Definition"},
    {"screen-entered", ",\"screen_s\":5,\"slow_factor\":10", DRAWL_FIGURE_SCREEN, "5 s",
     "as entered", "5 s", "Entered"},
    {"capture-follows", ",\"screen_s\":5,\"slow_factor\":10", DRAWL_FIGURE_CAPTURE, "240 fps",
     "slow factor × playback rate", "10× × 24 fps", "Definition"},
    {"action-follows", ",\"screen_s\":5,\"slow_factor\":10", DRAWL_FIGURE_ACTION, "0.5 s",
     "screen time × post speed ÷ slow factor", "5 s × 100 % ÷ 10", "Definition"},
    {"factor-of-rates", TEN_TIMES, DRAWL_FIGURE_FACTOR, "10×", "capture rate ÷ playback rate",
     "240 fps ÷ 24 fps", "Definition"},
    {"factor-of-times", ",\"screen_s\":5,\"action_s\":1", DRAWL_FIGURE_FACTOR, "5×",
     "screen time × post speed ÷ action time", "5 s × 100 % ÷ 1 s", "Definition"},
    {"speed", TEN_TIMES, DRAWL_FIGURE_SPEED_PERCENT, "10 %", "post speed ÷ slow factor",
     "100 % ÷ 10", "Definition"},
    {"frames", TEN_TIMES, DRAWL_FIGURE_FRAMES, "108", "rounded up", "0.45 s × 240 fps",
     "Definition"},
    {"code", TEN_TIMES, DRAWL_FIGURE_SCREEN_TIMECODE, "00:00:04:12", "timecode",
     "4.5 s × 24 fps = 108 frames", "SMPTE ST 12-1, non-drop"},
    {"drop-code",
     ",\"playback_rate\":\"29.97\",\"drop\":true,\"capture_rate\":\"29.97\",\"action_s\":60.06",
     DRAWL_FIGURE_SCREEN_TIMECODE, "00:01:00;02", "timecode", "60.06 s × 29.97 fps = 1800 frames",
     "SMPTE ST 12-1, drop-frame count"},
    {"high-code", ",\"playback_rate\":50", DRAWL_FIGURE_SCREEN_TIMECODE, "00:00:01:00", "timecode",
     "1 s × 50 fps = 50 frames", "SMPTE ST 12-3"},
    {"take", TEN_TIMES ",\"handle_before_s\":2,\"handle_after_s\":\"1.5\"",
     DRAWL_FIGURE_TAKE_FRAMES, "948", "handle before", "(2 s + 0.45 s + 1.5 s) × 240 fps",
     "Definition"},
    {"licences", A ("uhd", "intra") TEN_TIMES, DRAWL_FIGURE_LICENCES,
     "Rate upgrade (60.00 EUR a day)", "cheapest", "Rate upgrade (60.00 EUR a day)",
     "Bench sheet, 2026-11-25"},
    {"scaling", A ("uhd", "intra"), DRAWL_FIGURE_FRAME_BYTES, "1 MB", "stated data rate",
     "192 Mbit/s ÷ 8 ÷ 24 fps + 0 = 1000000 B", "Bench sheet"},
    {"constant", A ("uhd", "even") ",\"capture_rate\":50,\"action_s\":1", DRAWL_FIGURE_FRAME_BYTES,
     "250 kB", "÷ capture rate", "100 Mbit/s ÷ 8 ÷ 50 fps + 0 = 250000 B", "Bench sheet"},
    {"fixed", A ("uhd", "fixed"), DRAWL_FIGURE_FRAME_BYTES, "500 kB", "the same for every frame",
     "500000 + 0 = 500000 B", "Bench sheet"},
    {"data-rate", A ("uhd", "intra") ",\"audio_tracks\":2", DRAWL_FIGURE_DATA_RATE, "24.3 MB/s",
     "48 kHz × 24 bit", "1000000 B × 24 fps + 2 × 144 kB/s = 24288000 B/s", "Definition"},
    {"card", A ("uhd", "intra"), DRAWL_FIGURE_CARD_TIME, "40 min 00 s", "card less reserve",
     "64 GB × (100 % − 10 %) ÷ 1 MB = 57600 frames; ÷ 24 fps", "printed"},
    {"cards", A ("uhd", "intra") ",\"capture_rate\":24,\"action_s\":1000,\"takes\":5",
     DRAWL_FIGURE_CARDS, "3", "whole takes", "5 ÷ 2", "kept whole"},
    {"buffer", A ("uhd", "intra"), DRAWL_FIGURE_BUFFER, "33 min 20 s", "ring buffer",
     "48 GB ÷ 1 MB = 48000 frames; ÷ 24 fps", "Bench sheet"},
    {"buffer-empty", A ("uhd", "intra"), DRAWL_FIGURE_BUFFER_EMPTY, "4 min 00 s", "write speed",
     "48000 × 1 MB ÷ 200 MB/s", "Bench sheet"},
    {"feet-16", F ("s16") ",\"capture_rate\":24,\"action_s\":101", DRAWL_FIGURE_FOOTAGE, "60+24",
     "frames a foot", "2424 ÷ 40", "40 frames a foot. The physical length is 18.47088 m"},
    {"feet-35", F ("s35") ",\"capture_rate\":24,\"action_s\":100", DRAWL_FIGURE_FOOTAGE, "112+10",
     "frames a foot", "2400 ÷ 64/3", "physical length is 34.2 m, because"},
    {"magazine", F ("s16"), DRAWL_FIGURE_MAGAZINE, "11 min 07 s", "length of the magazine",
     "400 ft × 40 ÷ 24 fps", "longest magazine"},
    {"magazines", F ("s16") ",\"capture_rate\":24,\"action_s\":100,\"takes\":7",
     DRAWL_FIGURE_MAGAZINES, "2", "whole takes", "7 ÷ 6", "kept whole"},
};

/* Groups of digits are set apart differently from place to place. */
static char *
ungrouped (const char *text)
{
  g_autofree char *narrow = g_strdup (text);
  GString *plain = g_string_new (narrow);

  g_string_replace (plain, "\u202f", "", 0);
  g_string_replace (plain, "\u00a0", " ", 0);
  return g_string_free (plain, FALSE);
}

static void
assert_contains (const char *text, const char *part)
{
  if (strstr (text, part) == NULL)
    g_error ("\"%s\" does not say \"%s\"", text, part);
}

static void
test_says (gconstpointer data)
{
  const Says *row = data;
  g_autoptr (DrawlPlan) plan = plan_with (row->keys);
  g_autoptr (DrawlWorking) working =
      drawl_working_new (plan, drawl_plan_get_shot (plan, 0), row->figure);

  g_assert_nonnull (working);
  g_autofree char *value = ungrouped (working->value), *numbers = ungrouped (working->numbers);
  g_assert_cmpstr (value, ==, row->value);
  assert_contains (working->formula, row->formula);
  g_assert_cmpstr (numbers, ==, row->numbers);
  assert_contains (working->source, row->source);
}

static void
test_spanning (void)
{
  g_autofree char *text = g_strdup_printf (
      PLAN_HEAD "\"takes_span\":true,\"bodies\":[" BODY_A "],\"shots\":[{\"slate\":\"1\"%s}]}",
      A ("uhd", "intra") ",\"capture_rate\":24,\"action_s\":1000,\"takes\":5");
  g_autoptr (DrawlPlan) plan = plan_of (text);
  g_autoptr (DrawlWorking) working =
      drawl_working_new (plan, drawl_plan_get_shot (plan, 0), DRAWL_FIGURE_CARDS);

  g_assert_cmpstr (working->value, ==, "3"); /* 120 GB on 57.6 GB each */
  assert_contains (working->source, "run on");
}

static void
test_ids (void)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint figure = 0; figure < DRAWL_N_FIGURES; figure++)
    g_assert_true (g_hash_table_add (seen, (char *)drawl_figure_id (figure)));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/working/has", has, test_has);
  add_rows ("/working/says", says, test_says);
  g_test_add_func ("/working/spanning", test_spanning);
  g_test_add_func ("/working/ids", test_ids);

  return g_test_run ();
}
