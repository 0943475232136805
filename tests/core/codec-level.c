/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Levels of coding standards: sides that are too long, ceilings, and that a larger picture never
 * runs faster. */

#include "core/codec-level.h"

#include <string.h>

#include "rows.h"

#define N_RANDOM 20000

typedef struct {
  const char *name, *level;
  guint width, height;
  const char *highest; /* NULL: no room */
} Picture;

static const Picture pictures[] = {
    {"h264-begun-macroblock", "h264-5.1", 1920, 1080, "2048/17"},
    {"h264-longest-side", "h264-3.1", 2704, 16, "108000/169"},
    {"h264-side-too-long", "h264-3.1", 2720, 16, NULL},
    {"h264-side-too-high", "h264-3.1", 16, 2720, NULL},
    {"h264-one-pixel", "h264-3", 1, 1, "40500"},
    {"h265-begun-block", "h265-5.1", 4089, 2169, "60"},
    {"h265-ceiling", "h265-5.1", 1280, 720, "300"},
    {"h265-side-too-long", "h265-4", 4232, 8, NULL},
    {"av1-odd-sides", "av1-4.1", 2047, 1151, "141557760/2356097"},
    {"av1-widest", "av1-5.0", 8192, 1088, "30"},
    {"av1-too-wide", "av1-5.0", 8193, 8, NULL},
    {"av1-too-high", "av1-5.0", 8, 4353, NULL},
    {"av1-headers", "av1-3.0", 64, 64, "150"},
    {"far-too-large", "h265-6.2", G_MAXUINT, G_MAXUINT, NULL},
};

static void
test_picture (gconstpointer data)
{
  const Picture *row = data;
  DrawlRate highest;
  gboolean fits = drawl_codec_level_highest_rate (drawl_codec_level_find (row->level), row->width,
                                                  row->height, &highest);

  g_assert_cmpint (fits, ==, row->highest != NULL);
  if (fits)
    assert_same (highest, exact (row->highest));
}

static void
test_levels (void)
{
  guint n_levels;
  const DrawlCodecLevel *levels = drawl_codec_levels (&n_levels);

  g_assert_cmpuint (n_levels, >, 0);
  for (guint i = 0; i < n_levels; i++) {
    g_assert_true (drawl_codec_level_find (levels[i].id) == &levels[i]);
    g_assert_true (*levels[i].source != '\0');
    g_assert_true (g_str_has_suffix (levels[i].name, strrchr (levels[i].id, '-') + 1));
  }
  g_assert_null (drawl_codec_level_find ("h264"));
}

static void
test_larger_is_no_faster (void)
{
  guint n_levels;
  const DrawlCodecLevel *levels = drawl_codec_levels (&n_levels);

  for (guint i = 0; i < N_RANDOM; i++) {
    const DrawlCodecLevel *level = &levels[g_test_rand_int_range (0, (gint32)n_levels)];
    guint width = 1 + (guint)random_whole (14), height = 1 + (guint)random_whole (13);
    DrawlRate small, large;

    if (!drawl_codec_level_highest_rate (level, width + 9, height + 7, &large))
      continue;
    g_assert_true (drawl_codec_level_highest_rate (level, width, height, &small));
    g_assert_cmpint (drawl_rational_compare (small, large), >=, 0);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/codec-level/picture", pictures, test_picture);
  g_test_add_func ("/codec-level/levels", test_levels);
  g_test_add_func ("/codec-level/property/larger-is-no-faster", test_larger_is_no_faster);
  return g_test_run ();
}
