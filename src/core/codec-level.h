/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlCodecLevel: a level of an open coding standard, which bounds the size of a picture and how
 * many of its samples pass in a second. To add a level, add a row in codec-level.c with its source,
 * and a row in tests/published. */

#include "core/rate.h"

typedef struct {
  const char *id;      /* "h264-5.1" */
  const char *name;    /* "H.264, level 5.1": the same in every language */
  guint block;         /* both sides of a picture are filled to a multiple of so many pixels */
  guint unit;          /* the standard counts in squares of so many pixels a side */
  gint64 most_units;   /* of a picture */
  gint64 most_units_s; /* of a second */
  guint most_width, most_height; /* pixels; 0: by the square root of 8 times the picture */
  guint most_rate;               /* frames a second, whatever the size; 0: none read */
  const char *source;
} DrawlCodecLevel;

const DrawlCodecLevel *drawl_codec_levels (guint *n_levels);
const DrawlCodecLevel *drawl_codec_level_find (const char *id); /* NULL when there is none */

/* The highest rate of a picture of @width × @height > 0 pixels, exact; FALSE when the level has no
 * room for such a picture. */
gboolean drawl_codec_level_highest_rate (const DrawlCodecLevel *level, guint width, guint height,
                                         DrawlRate *highest);
