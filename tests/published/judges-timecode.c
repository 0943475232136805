/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Timecode against two libraries that know nothing of this one: libavutil and GStreamer's video
 * library. At each rate, 100,000 random frames are written as code by both sides, and 100,000
 * random codes are read by both.
 *
 * libavutil 57 takes every whole or 1000/1001 rate, drop counting at 30000/1001 and 60000/1001
 * (and, by its own extrapolation, at other multiples of 30, which are left out). GStreamer 1.22
 * takes every whole rate, of the 1000/1001 kin only 24000, 30000 and 60000, and drop counting at
 * 30000/1001 and 60000/1001; its text has two frame digits at every rate, so its fields are
 * compared and not its text. */

#include "core/error.h"
#include "core/timecode.h"
#include "rows.h"

#include <gst/video/video.h>
#include <libavutil/log.h>
#include <libavutil/timecode.h>
#include <string.h>

#define N_RANDOM 100000

typedef struct {
  const char *name;
  int num, den;
  gboolean drop;
} Rate;

static const Rate both_rows[] = {
    {"23.976", 24000, 1001, FALSE},
    {"24", 24, 1, FALSE},
    {"25", 25, 1, FALSE},
    {"29.97", 30000, 1001, FALSE},
    {"29.97-drop", 30000, 1001, TRUE},
    {"30", 30, 1, FALSE},
    {"48", 48, 1, FALSE},
    {"50", 50, 1, FALSE},
    {"59.94", 60000, 1001, FALSE},
    {"59.94-drop", 60000, 1001, TRUE},
    {"60", 60, 1, FALSE},
    {"72", 72, 1, FALSE},
    {"96", 96, 1, FALSE},
    {"100", 100, 1, FALSE},
    {"120", 120, 1, FALSE},
};

/* What libavutil takes beside those. */
static const Rate more_avutil_rows[] = {
    {"47.952", 48000, 1001, FALSE},
    {"71.928", 72000, 1001, FALSE},
    {"119.88", 120000, 1001, FALSE},
};

static DrawlRate
rate_of (const Rate *row)
{
  return DRAWL_RATIONAL_INIT (row->num, row->den);
}

static gint64
random_frame (const Rate *row)
{
  return g_test_rand_int_range (0, (gint32)drawl_timecode_day_frames (rate_of (row), row->drop));
}

/* A code as its fields. */
typedef struct {
  guint hours, minutes, seconds, frames;
} Fields;

/* Random fields; half of them at the beginning of a minute, where codes are dropped. */
static Fields
random_fields (const Rate *row)
{
  int second = (int)drawl_rate_nominal (rate_of (row));
  gboolean edge = g_test_rand_bit ();

  return (Fields){
      (guint)g_test_rand_int_range (0, 24),
      (guint)g_test_rand_int_range (0, 60),
      edge ? 0 : (guint)g_test_rand_int_range (0, 60),
      (guint)g_test_rand_int_range (0, edge ? 6 : second),
  };
}

static void
write_fields (const Rate *row, Fields fields, char code[DRAWL_TIMECODE_SIZE])
{
  g_snprintf (code, DRAWL_TIMECODE_SIZE, "%02u:%02u:%02u%c%02u", fields.hours, fields.minutes,
              fields.seconds, row->drop ? ';' : ':', fields.frames);
}

/* ---- libavutil ---- */

static void
test_avutil_writes (gconstpointer data)
{
  const Rate *row = data;
  guint32 flags = AV_TIMECODE_FLAG_24HOURSMAX | (row->drop ? AV_TIMECODE_FLAG_DROPFRAME : 0);
  AVTimecode judge;

  g_assert_cmpint (av_timecode_init (&judge, (AVRational){row->num, row->den}, (int)flags, 0, NULL),
                   ==, 0);
  for (guint i = 0; i < N_RANDOM; i++) {
    gint64 frame = random_frame (row);
    char code[DRAWL_TIMECODE_SIZE], judged[AV_TIMECODE_STR_SIZE];
    g_assert_true (drawl_timecode_format (rate_of (row), row->drop, frame, code, NULL));
    g_assert_cmpstr (code, ==, av_timecode_make_string (&judge, judged, (int)frame));
  }
}

/* libavutil reads a code that does not exist as another frame's; those are left to GStreamer. */
static gboolean
is_left_out (const Rate *row, Fields fields)
{
  guint n_dropped = row->drop ? (guint)drawl_rate_nominal (rate_of (row)) / 15 : 0;
  return fields.minutes % 10 != 0 && fields.seconds == 0 && fields.frames < n_dropped;
}

static void
test_avutil_reads (gconstpointer data)
{
  const Rate *row = data;
  guint n_read = 0;

  while (n_read < N_RANDOM) {
    Fields fields = random_fields (row);
    char code[DRAWL_TIMECODE_SIZE];
    gint64 frame = -1;
    AVTimecode judge;

    if (is_left_out (row, fields))
      continue;
    write_fields (row, fields, code);
    g_assert_cmpint (
        av_timecode_init_from_string (&judge, (AVRational){row->num, row->den}, code, NULL), ==, 0);
    g_assert_true (drawl_timecode_parse (rate_of (row), row->drop, code, &frame, NULL));
    g_assert_cmpint (frame, ==, judge.start);
    n_read++;
  }
}

/* ---- GStreamer ---- */

static void
judge_init (GstVideoTimeCode *judge, const Rate *row, Fields fields)
{
  gst_video_time_code_init (judge, (guint)row->num, (guint)row->den, NULL,
                            row->drop ? GST_VIDEO_TIME_CODE_FLAGS_DROP_FRAME
                                      : GST_VIDEO_TIME_CODE_FLAGS_NONE,
                            fields.hours, fields.minutes, fields.seconds, fields.frames, 0);
}

static void
test_gstreamer_writes (gconstpointer data)
{
  const Rate *row = data;

  for (guint i = 0; i < N_RANDOM; i++) {
    gint64 frame = random_frame (row);
    GstVideoTimeCode judge = GST_VIDEO_TIME_CODE_INIT;
    char code[DRAWL_TIMECODE_SIZE], judged[DRAWL_TIMECODE_SIZE];
    gint64 back = -1;

    judge_init (&judge, row, (Fields){0});
    gst_video_time_code_add_frames (&judge, frame);
    g_assert_true (drawl_timecode_format (rate_of (row), row->drop, frame, code, NULL));
    g_snprintf (judged, sizeof judged, "%02u:%02u:%02u%c%0*u", judge.hours, judge.minutes,
                judge.seconds, row->drop ? ';' : ':', (int)strlen (code) - 9, judge.frames);
    g_assert_cmpstr (code, ==, judged);
    g_assert_true (drawl_timecode_parse (rate_of (row), row->drop, judged, &back, NULL));
    g_assert_cmpint (back, ==, frame);
  }
}

/* Reads the same frame from every code, and refuses the same codes. */
static void
test_gstreamer_reads (gconstpointer data)
{
  const Rate *row = data;

  for (guint i = 0; i < N_RANDOM; i++) {
    Fields fields = random_fields (row);
    GstVideoTimeCode judge = GST_VIDEO_TIME_CODE_INIT;
    g_autoptr (GError) error = NULL;
    char code[DRAWL_TIMECODE_SIZE];
    gint64 frame = -1;

    judge_init (&judge, row, fields);
    write_fields (row, fields, code);
    gboolean exists = gst_video_time_code_is_valid (&judge);
    g_assert_cmpint (drawl_timecode_parse (rate_of (row), row->drop, code, &frame, &error), ==,
                     exists);
    if (exists)
      g_assert_cmpint (frame, ==, (gint64)gst_video_time_code_frames_since_daily_jam (&judge));
    else
      g_assert_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_NO_CODE);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  av_log_set_level (
      AV_LOG_ERROR); /* 72 and 96 are "non-standard" to libavutil, which still counts them */
  add_rows ("/published/judges/avutil-writes", both_rows, test_avutil_writes);
  add_rows ("/published/judges/avutil-writes", more_avutil_rows, test_avutil_writes);
  add_rows ("/published/judges/avutil-reads", both_rows, test_avutil_reads);
  add_rows ("/published/judges/avutil-reads", more_avutil_rows, test_avutil_reads);
  add_rows ("/published/judges/gstreamer-writes", both_rows, test_gstreamer_writes);
  add_rows ("/published/judges/gstreamer-reads", both_rows, test_gstreamer_reads);
  return g_test_run ();
}
