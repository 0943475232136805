/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Levels of H.264, H.265 and AV1. H.264 counts macroblocks of 16 × 16 pixels, begun ones as whole;
 * H.265 counts samples of brightness, of sides that are multiples of its least coding block, 8
 * pixels; AV1 counts those that are shown. Rates are exact. */

#include "core/codec-level.h"

#define H264(level, units_s, units)                                                                \
  {                                                                                                \
    .id = "h264-" level, .name = "H.264, level " level, .block = 16, .unit = 16,                   \
    .most_units = units, .most_units_s = units_s,                                                  \
    .source = "ITU-T H.264, table A-1, read in FFmpeg libavcodec/h264_levels.c"                    \
  }

#define H265(level, units_s, units)                                                                \
  {                                                                                                \
    .id = "h265-" level, .name = "H.265, level " level, .block = 8, .unit = 1,                     \
    .most_units = units, .most_units_s = units_s, .most_rate = 300,                                \
    .source = "ITU-T H.265, tables A.8 and A.9, read in FFmpeg libavcodec/h265_profile_level.c; "  \
              "300 fps read in a page on its levels"                                               \
  }

/* Every frame that is shown has a header: their number in a second is the highest rate. */
#define AV1(level, units_s, units, width, height, headers)                                         \
  {                                                                                                \
    .id = "av1-" level, .name = "AV1, level " level, .block = 1, .unit = 1, .most_units = units,   \
    .most_units_s = units_s, .most_width = width, .most_height = height, .most_rate = headers,     \
    .source = "AV1 bitstream specification, annex A, read in FFmpeg libavcodec/av1_levels.c"       \
  }

static const DrawlCodecLevel levels[] = {
    H264 ("3", 40500, 1620),
    H264 ("3.1", 108000, 3600),
    H264 ("3.2", 216000, 5120),
    H264 ("4", 245760, 8192),
    H264 ("4.1", 245760, 8192),
    H264 ("4.2", 522240, 8704),
    H264 ("5", 589824, 22080),
    H264 ("5.1", 983040, 36864),
    H264 ("5.2", 2073600, 36864),
    H264 ("6", 4177920, 139264),
    H264 ("6.1", 8355840, 139264),
    H264 ("6.2", 16711680, 139264),
    H265 ("3", 16588800, 552960),
    H265 ("3.1", 33177600, 983040),
    H265 ("4", 66846720, 2228224),
    H265 ("4.1", 133693440, 2228224),
    H265 ("5", 267386880, 8912896),
    H265 ("5.1", 534773760, 8912896),
    H265 ("5.2", 1069547520, 8912896),
    H265 ("6", 1069547520, 35651584),
    H265 ("6.1", 2139095040, 35651584),
    H265 ("6.2", G_GINT64_CONSTANT (4278190080), 35651584),
    AV1 ("3.0", 19975680, 665856, 4352, 2448, 150),
    AV1 ("3.1", 31950720, 1065024, 5504, 3096, 150),
    AV1 ("4.0", 70778880, 2359296, 6144, 3456, 300),
    AV1 ("4.1", 141557760, 2359296, 6144, 3456, 300),
    AV1 ("5.0", 267386880, 8912896, 8192, 4352, 300),
    AV1 ("5.1", 534773760, 8912896, 8192, 4352, 300),
    AV1 ("5.2", 1069547520, 8912896, 8192, 4352, 300),
    AV1 ("5.3", 1069547520, 8912896, 8192, 4352, 300),
    AV1 ("6.0", 1069547520, 35651584, 16384, 8704, 300),
    AV1 ("6.1", 2139095040, 35651584, 16384, 8704, 300),
    AV1 ("6.2", G_GINT64_CONSTANT (4278190080), 35651584, 16384, 8704, 300),
    AV1 ("6.3", G_GINT64_CONSTANT (4278190080), 35651584, 16384, 8704, 300),
};

const DrawlCodecLevel *
drawl_codec_levels (guint *n_levels)
{
  *n_levels = G_N_ELEMENTS (levels);
  return levels;
}

const DrawlCodecLevel *
drawl_codec_level_find (const char *id)
{
  for (gsize i = 0; i < G_N_ELEMENTS (levels); i++)
    if (g_str_equal (levels[i].id, id))
      return &levels[i];
  return NULL;
}

/* Units along a side of @pixels, filled to whole blocks. */
static gint64
units_along (const DrawlCodecLevel *level, guint pixels)
{
  gint64 blocks = ((gint64)pixels + level->block - 1) / level->block;
  return blocks * level->block / level->unit;
}

static gboolean
side_fits (const DrawlCodecLevel *level, gint64 units, guint most)
{
  return units <= level->most_units &&
         (most > 0 ? units <= most : units * units <= 8 * level->most_units);
}

gboolean
drawl_codec_level_highest_rate (const DrawlCodecLevel *level, guint width, guint height,
                                DrawlRate *highest)
{
  gint64 across = units_along (level, width), down = units_along (level, height);
  DrawlRate ceiling = drawl_rational_whole (level->most_rate);

  /* Sides first: no product then overflows. */
  if (!side_fits (level, across, level->most_width) ||
      !side_fits (level, down, level->most_height) || across * down > level->most_units ||
      !drawl_rational_make (level->most_units_s, across * down, highest))
    return FALSE;
  if (level->most_rate > 0 && drawl_rational_compare (*highest, ceiling) > 0)
    *highest = ceiling;
  return TRUE;
}
