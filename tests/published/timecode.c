/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Published check values: timecode. Each row is named by its id, and its source says where the
 * value stands and how it was obtained from there. All values are exact. */

#include "core/error.h"
#include "core/timecode.h"
#include "rows.h"

#include <string.h>

#define ST12_1 "SMPTE ST 12-1, drop-frame count; "
#define ST12_3 "SMPTE ST 12-3, drop-frame count; "
#define NON_DROP "SMPTE ST 12-1 and 12-3, non-drop count; run with libavutil 57"
#define BOTH_RAN "run with libavutil 57 and GStreamer 1.22, which agree"
#define ALL_RAN "run with libavutil 57, GStreamer 1.22 and libltc 1.3.2, which agree"
#define AVUTIL_RAN "read in FFmpeg libavutil/timecode.c and run with libavutil 57"

typedef struct {
  const char *name, *rate;
  gboolean drop;
  gint64 frame;
  const char *code;
  const char *source;
} Code;

static const Code code_rows[] = {
    {"TC14", "30000/1001", TRUE, 0, "00:00:00;00", ST12_1 AVUTIL_RAN},
    {"TC15", "30000/1001", TRUE, 1799, "00:00:59;29", ST12_1 BOTH_RAN},
    {"TC16", "30000/1001", TRUE, 1800, "00:01:00;02", ST12_1 ALL_RAN},
    {"TC17", "30000/1001", TRUE, 1801, "00:01:00;03", ST12_1 AVUTIL_RAN},
    {"TC18", "30000/1001", TRUE, 3597, "00:01:59;29", ST12_1 AVUTIL_RAN},
    {"TC19", "30000/1001", TRUE, 3598, "00:02:00;02", ST12_1 AVUTIL_RAN},
    {"TC20", "30000/1001", TRUE, 17981, "00:09:59;29", ST12_1 BOTH_RAN},
    {"TC21", "30000/1001", TRUE, 17982, "00:10:00;00", ST12_1 ALL_RAN},
    {"TC22", "30000/1001", TRUE, 17983, "00:10:00;01", ST12_1 AVUTIL_RAN},
    {"TC23", "30000/1001", TRUE, 19780, "00:10:59;28", ST12_1 BOTH_RAN},
    {"TC24", "30000/1001", TRUE, 19781, "00:10:59;29", ST12_1 AVUTIL_RAN},
    {"TC25", "30000/1001", TRUE, 19782, "00:11:00;02", ST12_1 AVUTIL_RAN},
    {"TC26", "30000/1001", TRUE, 35963, "00:19:59;29", ST12_1 AVUTIL_RAN},
    {"TC27", "30000/1001", TRUE, 35964, "00:20:00;00", ST12_1 AVUTIL_RAN},
    {"TC28", "30000/1001", TRUE, 107891, "00:59:59;29", ST12_1 BOTH_RAN},
    {"TC29", "30000/1001", TRUE, 107892, "01:00:00;00", ST12_1 BOTH_RAN},
    {"TC30", "30000/1001", TRUE, 1000000, "09:16:06;22", ST12_1 AVUTIL_RAN},
    {"TC31", "30000/1001", TRUE, 2589407, "23:59:59;29", ST12_1 BOTH_RAN},
    {"TC33", "60000/1001", TRUE, 3599, "00:00:59;59", ST12_3 BOTH_RAN},
    {"TC34", "60000/1001", TRUE, 3600, "00:01:00;04", ST12_3 BOTH_RAN},
    {"TC35", "60000/1001", TRUE, 7195, "00:01:59;59", ST12_3 AVUTIL_RAN},
    {"TC36", "60000/1001", TRUE, 7196, "00:02:00;04", ST12_3 AVUTIL_RAN},
    {"TC37", "60000/1001", TRUE, 35963, "00:09:59;59", ST12_3 BOTH_RAN},
    {"TC38", "60000/1001", TRUE, 35964, "00:10:00;00", ST12_3 BOTH_RAN},
    {"TC39", "60000/1001", TRUE, 39560, "00:10:59;56", ST12_3 AVUTIL_RAN},
    {"TC40", "60000/1001", TRUE, 215783, "00:59:59;59", ST12_3 AVUTIL_RAN},
    {"TC41", "60000/1001", TRUE, 215784, "01:00:00;00", ST12_3 BOTH_RAN},
    {"TC42", "60000/1001", TRUE, 5178815, "23:59:59;59", ST12_3 BOTH_RAN},
    {"TC43", "30000/1001", FALSE, 107892, "00:59:56:12", NON_DROP},
    {"TC44", "30000/1001", FALSE, 108000, "01:00:00:00", NON_DROP},
    {"TC45", "24", FALSE, 86399, "00:59:59:23", NON_DROP},
    {"TC46", "24", FALSE, 86400, "01:00:00:00", NON_DROP},
    {"TC47", "24", FALSE, 2073599, "23:59:59:23", NON_DROP},
    {"TC48", "24000/1001", FALSE, 86400, "01:00:00:00", NON_DROP},
    {"TC49", "25", FALSE, 89999, "00:59:59:24", NON_DROP},
    {"TC50", "25", FALSE, 90000, "01:00:00:00", NON_DROP},
    {"TC51", "48", FALSE, 172800, "01:00:00:00", NON_DROP},
    {"TC52", "100", FALSE, 360000, "01:00:00:00", NON_DROP},
    {"TC53", "120", FALSE, 432000, "01:00:00:000", NON_DROP},
};

static void
test_code (gconstpointer data)
{
  const Code *row = data;
  char code[DRAWL_TIMECODE_SIZE];
  gint64 frame = -1;

  g_assert_true (drawl_timecode_format (exact (row->rate), row->drop, row->frame, code, NULL));
  g_assert_cmpstr (code, ==, row->code);
  g_assert_true (drawl_timecode_parse (exact (row->rate), row->drop, row->code, &frame, NULL));
  g_assert_cmpint (frame, ==, row->frame);
}

/* Codes that a span of code leaves out: whole seconds' worth of codes less the frames there are. */
typedef struct {
  const char *name, *rate;
  struct {
    const char *from, *to;
    gint64 seconds, dropped;
  } spans[4];
  const char *source;
} Dropped;

static const Dropped dropped_rows[] = {
    {"TC10",
     "30000/1001",
     {{"00:00:00;00", "00:01:00;02", 60, 0},
      {"00:01:00;02", "00:02:00;02", 60, 2},
      {"00:00:00;00", "00:10:00;00", 600, 18},
      {"00:00:00;00", "01:00:00;00", 3600, 108}},
     "SMPTE ST 12-1; read in two glossary pages (108 an hour) and in FFmpeg libavutil/timecode.c"},
    {"TC11",
     "60000/1001",
     {{"00:00:00;00", "00:01:00;04", 60, 0},
      {"00:01:00;04", "00:02:00;04", 60, 4},
      {"00:00:00;00", "00:10:00;00", 600, 36},
      {"00:00:00;00", "01:00:00;00", 3600, 216}},
     "SMPTE ST 12-3; read in FFmpeg libavutil/timecode.c and GStreamer gstvideotimecode.c"},
};

static gint64
frame_of (const char *rate, const char *code)
{
  gint64 frame = -1;
  g_assert_true (drawl_timecode_parse (exact (rate), TRUE, code, &frame, NULL));
  return frame;
}

static void
test_dropped (gconstpointer data)
{
  const Dropped *row = data;
  gint64 second = drawl_rate_nominal (exact (row->rate));

  for (gsize i = 0; i < G_N_ELEMENTS (row->spans); i++) {
    gint64 frames =
        frame_of (row->rate, row->spans[i].to) - frame_of (row->rate, row->spans[i].from);
    g_assert_cmpint (row->spans[i].seconds * second - frames, ==, row->spans[i].dropped);
  }
  g_assert_cmpint (86400 * second - drawl_timecode_day_frames (exact (row->rate), TRUE), ==,
                   24 * row->spans[3].dropped);
}

typedef struct {
  const char *name, *rate, *code;
  gint64 frames;
  const char *source;
} Span;

static const Span span_rows[] = {
    {"TC12", "30000/1001", "00:10:00;00", 17982,
     "SMPTE ST 12-1, ST 2059-1 s. 9.4.3; read in FFmpeg libavutil/timecode.c"},
    {"TC13", "60000/1001", "00:10:00;00", 35964,
     "SMPTE ST 12-3; read in FFmpeg libavutil/timecode.c (17982 · rate ÷ 30)"},
};

static void
test_span (gconstpointer data)
{
  const Span *row = data;
  g_assert_cmpint (frame_of (row->rate, row->code), ==, row->frames);
}

typedef struct {
  const char *name, *rate;
  gint64 frame;
  const char *code;
  const char *source;
} Wrap;

static const Wrap wrap_rows[] = {
    {"TC32", "30000/1001", 2589408, "00:00:00;00",
     "SMPTE ST 12-1; " BOTH_RAN " (24-hour flag set)"},
};

static void
test_wrap (gconstpointer data)
{
  const Wrap *row = data;
  char code[DRAWL_TIMECODE_SIZE];

  g_assert_true (drawl_timecode_format (exact (row->rate), TRUE, row->frame, code, NULL));
  g_assert_cmpstr (code, ==, row->code);
  g_assert_cmpint (frame_of (row->rate, row->code), ==, 0);
}

typedef struct {
  const char *name, *rate;
  const char *source;
} NoDrop;

static const NoDrop no_drop_rows[] = {
    {"TC57", "24000/1001",
     "SMPTE ST 12-1 defines drop counting for 30/1.001 alone; libavutil 57 run: refuses with -22"},
    {"TC59", "120000/1001",
     "libavutil 57 run: extrapolates drop counting to this rate, which no standard read defines; "
     "Drawl "
     "refuses"},
};

static void
test_no_drop (gconstpointer data)
{
  const NoDrop *row = data;
  g_autoptr (GError) error = NULL;

  g_assert_false (drawl_timecode_check (exact (row->rate), TRUE, &error));
  assert_says (error, DRAWL_CORE_ERROR_NO_DROP, "30000/1001 or 60000/1001 is expected");
}

/* The sign before the frames: what Drawl writes, and the field-1 form that it reads as the same. */
typedef struct {
  const char *name;
  gboolean drop;
  char written, also_read;
  const char *source;
} Separator;

static const Separator separator_rows[] = {
    {"TC62-drop", TRUE, ';', ',',
     "SMPTE ST 2059-1, as cited and read in GStreamer gstvideotimecode.c"},
    {"TC62-non-drop", FALSE, ':', '.',
     "SMPTE ST 2059-1, as cited and read in GStreamer gstvideotimecode.c"},
};

static void
test_separator (gconstpointer data)
{
  const Separator *row = data;
  DrawlRate rate = exact ("30000/1001");
  char code[DRAWL_TIMECODE_SIZE];
  gint64 frame = -1;

  g_assert_true (drawl_timecode_format (rate, row->drop, 12345, code, NULL));
  g_assert_cmpint (code[8], ==, row->written);
  code[8] = row->also_read;
  g_assert_true (drawl_timecode_parse (rate, row->drop, code, &frame, NULL));
  g_assert_cmpint (frame, ==, 12345);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/published/timecode", code_rows, test_code);
  add_rows ("/published/timecode", dropped_rows, test_dropped);
  add_rows ("/published/timecode", span_rows, test_span);
  add_rows ("/published/timecode", wrap_rows, test_wrap);
  add_rows ("/published/timecode", no_drop_rows, test_no_drop);
  add_rows ("/published/timecode", separator_rows, test_separator);
  return g_test_run ();
}
