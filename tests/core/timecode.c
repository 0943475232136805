/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Timecode: codes and frames at the edges, what is refused, a counter that walks an hour of drop
 * code frame by frame, and round trips at every standard rate. */

#include "core/error.h"
#include "core/timecode.h"
#include "rows.h"

#include <string.h>

#define N_RANDOM 4000

typedef struct {
  const char *name, *rate;
  gboolean drop;
  gint64 frame;
  const char *code;
} Code;

static const Code code_rows[] = {
    {"first", "24", FALSE, 0, "00:00:00:00"},
    {"second", "24", FALSE, 24, "00:00:01:00"},
    {"at-24000-1001", "24000/1001", FALSE, 86400, "01:00:00:00"},
    {"last-of-day", "25", FALSE, 2159999, "23:59:59:24"},
    {"two-digits-at-100", "100", FALSE, 99, "00:00:00:99"},
    {"three-digits-at-101", "101", FALSE, 100, "00:00:00:100"},
    {"three-digits-at-120", "120", FALSE, 5, "00:00:00:005"},
    {"four-digits-at-2500", "2500", FALSE, 2501, "00:00:01:0001"},
    {"seven-digits", "10000000", FALSE, 9999999, "00:00:00:9999999"},
    {"two-digits-at-1", "1", FALSE, 61, "00:01:01:00"},
    {"drop-first-minute", "30000/1001", TRUE, 1800, "00:01:00;02"},
    {"drop-tenth-minute", "30000/1001", TRUE, 17982, "00:10:00;00"},
    {"drop-60", "60000/1001", TRUE, 3600, "00:01:00;04"},
    {"non-drop-29.97", "30000/1001", FALSE, 1800, "00:01:00:00"},
};

static void
test_code (gconstpointer data)
{
  const Code *row = data;
  g_autoptr (GError) error = NULL;
  char code[DRAWL_TIMECODE_SIZE];
  gint64 frame = -1;

  g_assert_true (drawl_timecode_format (exact (row->rate), row->drop, row->frame, code, &error));
  g_assert_no_error (error);
  g_assert_cmpstr (code, ==, row->code);
  g_assert_true (drawl_timecode_parse (exact (row->rate), row->drop, code, &frame, &error));
  g_assert_no_error (error);
  g_assert_cmpint (frame, ==, row->frame);
}

typedef struct {
  const char *name, *rate;
  gboolean drop;
  const char *code;
  gint64 frame;
} Read;

static const Read read_rows[] = {
    {"short-fields", "24", FALSE, "1:2:3:4", 89356},
    {"space-around", "24", FALSE, " 00:00:01:00 ", 24},
    {"point", "25", FALSE, "00:00:01.05", 30},
    {"drop-colon", "30000/1001", TRUE, "00:01:00:02", 1800},
    {"drop-comma", "30000/1001", TRUE, "00:01:00,02", 1800},
    {"drop-point", "30000/1001", TRUE, "00:01:00.02", 1800},
    {"long-frames-field", "24", FALSE, "00:00:00:005", 5},
};

static void
test_read (gconstpointer data)
{
  const Read *row = data;
  gint64 frame = -1;

  g_assert_true (drawl_timecode_parse (exact (row->rate), row->drop, row->code, &frame, NULL));
  g_assert_cmpint (frame, ==, row->frame);
}

typedef struct {
  const char *name, *rate;
  gboolean drop;
  const char *code;
  DrawlCoreError error;
  const char *says;
} Refused;

static const Refused refused_rows[] = {
    {"empty", "24", FALSE, "", DRAWL_CORE_ERROR_SYNTAX, "such as 01:02:03:04 are expected"},
    {"words", "24", FALSE, "noon", DRAWL_CORE_ERROR_SYNTAX, "“noon” is not a timecode"},
    {"three-fields", "24", FALSE, "00:00:00", DRAWL_CORE_ERROR_SYNTAX, "is not a timecode"},
    {"five-fields", "24", FALSE, "00:00:00:00:00", DRAWL_CORE_ERROR_SYNTAX, "is not a timecode"},
    {"empty-field", "24", FALSE, "00::00:00", DRAWL_CORE_ERROR_SYNTAX, "is not a timecode"},
    {"long-field", "24", FALSE, "000:00:00:00", DRAWL_CORE_ERROR_SYNTAX, "is not a timecode"},
    {"endless-frames", "24", FALSE, "00:00:00:99999999999999999999", DRAWL_CORE_ERROR_SYNTAX,
     "is not a timecode"},
    {"semicolons", "30000/1001", TRUE, "00;01;00;02", DRAWL_CORE_ERROR_SYNTAX, "is not a timecode"},
    {"negative", "24", FALSE, "-00:00:00:01", DRAWL_CORE_ERROR_SYNTAX, "is not a timecode"},
    {"drop-code-as-non-drop", "30000/1001", FALSE, "00:01:00;02", DRAWL_CORE_ERROR_SYNTAX,
     "“;” before the frames marks drop code; “:” is expected"},
    {"comma-as-non-drop", "24", FALSE, "00:01:00,02", DRAWL_CORE_ERROR_SYNTAX, "marks drop code"},
    {"hour-24", "24", FALSE, "24:00:00:00", DRAWL_CORE_ERROR_NO_CODE,
     "there is no hour 24 in a code at this rate; 0 to 23 are expected"},
    {"minute-60", "24", FALSE, "00:60:00:00", DRAWL_CORE_ERROR_NO_CODE, "no minute 60"},
    {"second-60", "24", FALSE, "00:00:60:00", DRAWL_CORE_ERROR_NO_CODE, "no second 60"},
    {"frame-24", "24", FALSE, "00:00:00:24", DRAWL_CORE_ERROR_NO_CODE, "no frame 24"},
    {"frame-30-drop", "30000/1001", TRUE, "00:00:00;30", DRAWL_CORE_ERROR_NO_CODE, "0 to 29"},
    {"dropped", "30000/1001", TRUE, "00:01:00;01", DRAWL_CORE_ERROR_NO_CODE,
     "00:01:00;01 does not exist, drop code leaves it out; the minute begins at 00:01:00;02"},
    {"dropped-60", "60000/1001", TRUE, "12:59:00;03", DRAWL_CORE_ERROR_NO_CODE,
     "the minute begins at 12:59:00;04"},
    {"drop-at-24", "24", TRUE, "00:00:00;00", DRAWL_CORE_ERROR_NO_DROP,
     "a rate of 24 has no drop counting; 30000/1001 or 60000/1001 is expected"},
    {"drop-at-24000-1001", "24000/1001", TRUE, "00:00:00;00", DRAWL_CORE_ERROR_NO_DROP,
     "a rate of 24000/1001 has no drop counting"},
    {"drop-at-30", "30", TRUE, "00:00:00;00", DRAWL_CORE_ERROR_NO_DROP, "no drop counting"},
    {"no-timecode", "25/2", FALSE, "00:00:00:00", DRAWL_CORE_ERROR_RANGE,
     "a rate of 25/2 has no timecode; a whole rate"},
    {"no-timecode-drop", "2997/100", TRUE, "00:00:00;00", DRAWL_CORE_ERROR_RANGE,
     "has no timecode"},
};

static void
test_refused (gconstpointer data)
{
  const Refused *row = data;
  g_autoptr (GError) error = NULL;
  gint64 frame = -7;

  g_assert_false (drawl_timecode_parse (exact (row->rate), row->drop, row->code, &frame, &error));
  assert_says (error, row->error, row->says);
  g_assert_cmpint (frame, ==, -7);
}

static void
test_format_refused (void)
{
  char code[DRAWL_TIMECODE_SIZE] = "kept";
  g_autoptr (GError) negative = NULL, no_drop = NULL, no_code = NULL;

  g_assert_false (drawl_timecode_format (exact ("24"), FALSE, -1, code, &negative));
  assert_says (negative, DRAWL_CORE_ERROR_RANGE, "frame -1 has no code; frame 0 is the first");
  g_assert_false (drawl_timecode_format (exact ("48"), TRUE, 0, code, &no_drop));
  assert_says (no_drop, DRAWL_CORE_ERROR_NO_DROP, "no drop counting");
  g_assert_false (drawl_timecode_format (exact ("1/5"), FALSE, 0, code, &no_code));
  assert_says (no_code, DRAWL_CORE_ERROR_RANGE, "has no timecode");
  g_assert_cmpstr (code, ==, "kept");
}

typedef struct {
  const char *name, *rate;
  gboolean drop;
  gint64 frames;
} Day;

static const Day day_rows[] = {
    {"24", "24", FALSE, 2073600},
    {"23.976", "24000/1001", FALSE, 2073600},
    {"25", "25", FALSE, 2160000},
    {"29.97-drop", "30000/1001", TRUE, 2589408},
    {"29.97", "30000/1001", FALSE, 2592000},
    {"30", "30", FALSE, 2592000},
    {"47.952", "48000/1001", FALSE, 4147200},
    {"48", "48", FALSE, 4147200},
    {"50", "50", FALSE, 4320000},
    {"59.94-drop", "60000/1001", TRUE, 5178816},
    {"59.94", "60000/1001", FALSE, 5184000},
    {"60", "60", FALSE, 5184000},
    {"72", "72", FALSE, 6220800},
    {"96", "96", FALSE, 8294400},
    {"100", "100", FALSE, 8640000},
    {"119.88", "120000/1001", FALSE, 10368000},
    {"120", "120", FALSE, 10368000},
};

static void
test_day (gconstpointer data)
{
  const Day *row = data;
  DrawlRate rate = exact (row->rate);
  char first[DRAWL_TIMECODE_SIZE], wrapped[DRAWL_TIMECODE_SIZE];

  g_assert_cmpint (drawl_timecode_day_frames (rate, row->drop), ==, row->frames);
  g_assert_true (drawl_timecode_format (rate, row->drop, 0, first, NULL));
  g_assert_true (drawl_timecode_format (rate, row->drop, row->frames, wrapped, NULL));
  g_assert_cmpstr (wrapped, ==, first);
  g_assert_true (drawl_timecode_format (rate, row->drop, row->frames - 1, wrapped, NULL));
  g_assert_true (g_str_has_prefix (wrapped, "23:59:59"));
}

static void
assert_round_trip (DrawlRate rate, gboolean drop, gint64 frame)
{
  char code[DRAWL_TIMECODE_SIZE];
  gint64 back = -1;

  g_assert_true (drawl_timecode_format (rate, drop, frame, code, NULL));
  g_assert_true (drawl_timecode_parse (rate, drop, code, &back, NULL));
  g_assert_cmpint (back, ==, frame);
}

static void
test_round_trip (gconstpointer data)
{
  const Day *row = data;
  DrawlRate rate = exact (row->rate);
  gint64 second = drawl_rate_nominal (rate);

  for (guint i = 0; i < N_RANDOM; i++)
    assert_round_trip (rate, row->drop, g_test_rand_int_range (0, (gint32)row->frames));
  for (gint64 minute = 1; minute < 24 * 60; minute++)
    for (gint64 frame = -1; frame <= 1; frame++)
      assert_round_trip (rate, row->drop, minute * (row->frames / (24 * 60)) + frame);
  for (gint64 frame = 0; frame < 2 * second; frame++)
    assert_round_trip (rate, row->drop, frame);
}

/* Counts as a clock does: frames, seconds, minutes, and skips the codes that are dropped. */
static void
test_clock (gconstpointer data)
{
  const Day *row = data;
  DrawlRate rate = exact (row->rate);
  int second = (int)drawl_rate_nominal (rate), dropped = row->drop ? second / 15 : 0;
  int m = 0, s = 0, f = 0;

  for (gint64 frame = 0; m < 60; frame++) {
    g_autofree char *expected =
        g_strdup_printf ("00:%02d:%02d%c%02d", m, s, row->drop ? ';' : ':', f);
    char code[DRAWL_TIMECODE_SIZE];
    g_assert_true (drawl_timecode_format (rate, row->drop, frame, code, NULL));
    g_assert_cmpstr (code, ==, expected);

    f = (f + 1) % second;
    s += f == 0;
    m += s == 60;
    s %= 60;
    if (f == 0 && s == 0 && m % 10 != 0)
      f = dropped;
  }
}

static const Day clock_rows[] = {
    {"29.97-drop", "30000/1001", TRUE, 0},
    {"59.94-drop", "60000/1001", TRUE, 0},
    {"24", "24", FALSE, 0},
};

static void
test_seconds (void)
{
  DrawlRational seconds;

  g_assert_true (drawl_timecode_seconds (exact ("24000/1001"), 480, &seconds));
  assert_same (seconds, exact ("20.02"));
  g_assert_true (drawl_timecode_seconds (exact ("24"), 0, &seconds));
  assert_rational (seconds, 0, 1);
  g_assert_false (drawl_timecode_seconds (exact ("0"), 24, &seconds));
  g_assert_false (drawl_timecode_seconds (exact ("24000/1001"), G_MAXINT64, &seconds));
  g_assert_cmpint (drawl_timecode_day_frames (exact ("25/2"), FALSE), ==, 0);
  g_assert_cmpint (drawl_timecode_day_frames (exact ("24"), TRUE), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/timecode/code", code_rows, test_code);
  add_rows ("/timecode/read", read_rows, test_read);
  add_rows ("/timecode/refused", refused_rows, test_refused);
  g_test_add_func ("/timecode/format-refused", test_format_refused);
  add_rows ("/timecode/day", day_rows, test_day);
  g_test_add_func ("/timecode/seconds", test_seconds);
  add_rows ("/timecode/property/round-trip", day_rows, test_round_trip);
  add_rows ("/timecode/property/clock", clock_rows, test_clock);
  return g_test_run ();
}
