/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Published check values: levels of coding standards. Each row is named by its id, and its source
 * says where the value stands and how it was obtained from there. */

#include "core/codec-level.h"
#include "rows.h"

#define H264_READ "ITU-T H.264, table A-1; read in FFmpeg libavcodec/h264_levels.c"
#define H265_READ "ITU-T H.265, tables A.8 and A.9; read in FFmpeg libavcodec/h265_profile_level.c"
#define H265_BOTH H265_READ " and in a liquisearch page"
#define AV1_READ "AV1 bitstream specification, annex A; read in FFmpeg libavcodec/av1_levels.c"
#define H264_COUNT "ITU-T H.264, A.3; derived: the most a second ÷ macroblocks"
#define H265_COUNT "ITU-T H.265, A.4; derived: the most a second ÷ samples"
#define H265_PADDED "ITU-T H.265, A.4; example read in a liquisearch page, whose picture is padded"

/* The most units of a picture, which one of @width × @height fills wholly, and of a second. */
typedef struct {
  const char *name, *level;
  gint64 most_s, most;
  guint width, height, block;
  const char *source;
} Bounds;

static const Bounds bounds_rows[] = {
    {"DA55", "h264-3.1", 108000, 3600, 1280, 720, 16, H264_READ},
    {"DA56", "h264-4", 245760, 8192, 2048, 1024, 16, H264_READ},
    {"DA57", "h264-4.2", 522240, 8704, 2048, 1088, 16, H264_READ},
    {"DA58", "h264-5.1", 983040, 36864, 4096, 2304, 16, H264_READ},
    {"DA59", "h264-5.2", 2073600, 36864, 4096, 2304, 16, H264_READ},
    {"DA60", "h264-6.2", 16711680, 139264, 8192, 4352, 16, H264_READ},
    {"DA70", "h265-4.1", 133693440, 2228224, 2048, 1088, 8, H265_BOTH},
    {"DA71", "h265-5", 267386880, 8912896, 4096, 2176, 8, H265_BOTH},
    {"DA72", "h265-5.1", 534773760, 8912896, 4096, 2176, 8, H265_BOTH},
    {"DA73", "h265-5.2", 1069547520, 8912896, 4096, 2176, 8, H265_BOTH},
    {"DA74", "h265-6", 1069547520, 35651584, 8192, 4352, 8, H265_BOTH},
    {"DA75", "h265-6.1", 2139095040, 35651584, 8192, 4352, 8, H265_BOTH},
    {"DA76", "h265-6.2", 4278190080, 35651584, 8192, 4352, 8, H265_READ},
    {"DA82", "av1-4.0", 70778880, 2359296, 2048, 1152, 1, AV1_READ},
    {"DA83", "av1-4.1", 141557760, 2359296, 2048, 1152, 1, AV1_READ},
    {"DA84", "av1-5.0", 267386880, 8912896, 4096, 2176, 1, AV1_READ},
    {"DA85", "av1-5.1", 534773760, 8912896, 4096, 2176, 1, AV1_READ},
    {"DA86", "av1-5.2", 1069547520, 8912896, 4096, 2176, 1, AV1_READ},
    {"DA87", "av1-6.2", 4278190080, 35651584, 8192, 4352, 1, AV1_READ},
};

/* The fullest picture runs at the one ÷ the other; one more block has no room. */
static void
test_bounds (gconstpointer data)
{
  const Bounds *row = data;
  const DrawlCodecLevel *level = drawl_codec_level_find (row->level);
  DrawlRational expected;
  DrawlRate highest;

  g_assert_nonnull (level);
  g_assert_true (drawl_rational_make (row->most_s, row->most, &expected));
  g_assert_true (drawl_codec_level_highest_rate (level, row->width, row->height, &highest));
  assert_same (highest, expected);
  g_assert_true (drawl_codec_level_highest_rate (level, row->width - row->block + 1,
                                                 row->height - row->block + 1, &highest));
  assert_same (highest, expected);
  g_assert_false (drawl_codec_level_highest_rate (level, row->width + 1, row->height, &highest));
  g_assert_false (drawl_codec_level_highest_rate (level, row->width, row->height + 1, &highest));
}

typedef struct {
  const char *name, *level;
  guint width, height;
  double fps, tolerance;
  const char *source;
} Highest;

static const Highest highest_rows[] = {
    {"DA61", "h264-4", 1920, 1080, 30.1176, 1e-4, H264_COUNT},
    {"DA62", "h264-4.2", 1920, 1080, 64, 1e-4, H264_COUNT},
    {"DA63", "h264-5.1", 1920, 1080, 120.4706, 1e-4, H264_COUNT},
    {"DA64", "h264-5.2", 1920, 1080, 254.1176, 1e-4, H264_COUNT},
    {"DA65", "h264-5.1", 3840, 2160, 30.3407, 1e-4, H264_COUNT},
    {"DA66", "h264-5.2", 3840, 2160, 64, 1e-4, H264_COUNT},
    {"DA67", "h264-3.1", 1280, 720, 30, 1e-4, H264_COUNT},
    {"DA68", "h264-4.2", 1280, 720, 145.0667, 1e-4, H264_COUNT},
    {"DA77", "h265-4.1", 1920, 1080, 64.4741, 0.001, H265_COUNT},
    {"DA77-padded", "h265-4.1", 1920, 1088, 64, 0.001, H265_PADDED},
    {"DA78", "h265-5.1", 1920, 1080, 257.8963, 0.001, H265_COUNT},
    {"DA78-padded", "h265-5.1", 1920, 1088, 256, 0.001, H265_PADDED},
    {"DA79", "h265-5.1", 3840, 2160, 64.4741, 0.001, H265_COUNT},
    {"DA79-padded", "h265-5.1", 3840, 2176, 64, 0.001, H265_PADDED},
    {"DA80", "h265-5.2", 3840, 2160, 128.9481, 0.001, H265_COUNT},
    {"DA80-padded", "h265-5.2", 3840, 2176, 128, 0.001, H265_PADDED},
    {"DA81", "h265-6.2", 1280, 720, 300, 0, "ITU-T H.265, A.4; read in a page on its levels"},
};

static void
test_highest (gconstpointer data)
{
  const Highest *row = data;
  DrawlRate highest;

  g_assert_true (drawl_codec_level_highest_rate (drawl_codec_level_find (row->level), row->width,
                                                 row->height, &highest));
  g_assert_cmpfloat_with_epsilon (drawl_rational_to_double (highest), row->fps,
                                  row->tolerance + 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/published/levels", bounds_rows, test_bounds);
  add_rows ("/published/levels", highest_rows, test_highest);
  return g_test_run ();
}
