/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Film by length. A counting foot holds a whole number of perforations (64 on 35 and 65 mm), and so
 * an exact, not always whole, number of frames. Lengths are in counting feet, or in metres at
 * 0.3048 m a foot; physical lengths are in metres along the film, by the step of its frames. */

#include "core/footage.h"

#include "core/text.h"

#define READ "foot-count tables, read in two published ones"
#define COUNTED "64 perforations a counting foot, as in the foot-count tables; arithmetic"

#define STEP_8 "304.8 mm ÷ 80, arithmetic"
#define STEP_S8 "SMPTE 149-2004, table 1, read in a preview"
#define STEP_16 "ISO 69, long pitch read in a film-step table; short pitch from memory"
#define STEP_35 "ISO 491: 4.75 mm a perforation, short pitch 4.74 mm, read in a film glossary"
#define STEP_65 "ISO 3023: 23.75 mm for 5 perforations, read in a film-step table"

#define UNKNOWN                                                                                    \
  {                                                                                                \
    0, 1                                                                                           \
  }

static const DrawlRational foot_metres = {381, 1250};

/* clang-format off */
static const DrawlGauge gauges[] = {
    {"8", N_ ("8 mm"), {80, 1}, READ, {{381, 100}, UNKNOWN}, STEP_8},
    {"s8", N_ ("Super 8"), {72, 1}, READ, {{2117, 500}, {4227, 1000}}, STEP_S8},
    {"16", N_ ("16 mm"), {40, 1}, READ, {{381, 50}, {1521, 200}}, STEP_16},
    {"35-4", N_ ("35 mm, 4 perforations"), {16, 1}, READ, {{19, 1}, {474, 25}}, STEP_35},
    {"35-3", N_ ("35 mm, 3 perforations"), {64, 3}, COUNTED, {{57, 4}, {711, 50}}, STEP_35},
    {"35-2", N_ ("35 mm, 2 perforations"), {32, 1}, COUNTED, {{19, 2}, {237, 25}}, STEP_35},
    {"65-5", N_ ("65 mm, 5 perforations"), {64, 5}, COUNTED, {{95, 4}, UNKNOWN}, STEP_65},
    {"65-8", N_ ("65 mm, 8 perforations"), {8, 1}, COUNTED, {{38, 1}, UNKNOWN}, STEP_65},
    {"65-15", N_ ("65 mm, 15 perforations"), {64, 15}, COUNTED, {{285, 4}, UNKNOWN}, STEP_65},
};
/* clang-format on */

const DrawlGauge *
drawl_gauges (guint *n_gauges)
{
  *n_gauges = G_N_ELEMENTS (gauges);
  return gauges;
}

const DrawlGauge *
drawl_gauge_find (const char *id)
{
  for (gsize i = 0; i < G_N_ELEMENTS (gauges); i++)
    if (g_str_equal (gauges[i].id, id))
      return &gauges[i];
  return NULL;
}

gboolean
drawl_footage_frames_on_feet (const DrawlGauge *gauge, DrawlRational feet, gint64 *frames)
{
  DrawlRational exact;

  if (feet.num < 0 || !drawl_rational_mul (feet, gauge->foot_frames, &exact))
    return FALSE;
  *frames = drawl_rational_floor (exact);
  return TRUE;
}

gboolean
drawl_footage_frames_on_metres (const DrawlGauge *gauge, DrawlRational metres, gint64 *frames)
{
  DrawlRational feet;
  return drawl_rational_div (metres, foot_metres, &feet) &&
         drawl_footage_frames_on_feet (gauge, feet, frames);
}

gboolean
drawl_footage_feet (const DrawlGauge *gauge, gint64 frames, DrawlRational *feet)
{
  return frames >= 0 &&
         drawl_rational_div (drawl_rational_whole (frames), gauge->foot_frames, feet);
}

gboolean
drawl_footage_metres (const DrawlGauge *gauge, gint64 frames, DrawlRational *metres)
{
  DrawlRational feet;
  return drawl_footage_feet (gauge, frames, &feet) &&
         drawl_rational_mul (feet, foot_metres, metres);
}

char *
drawl_footage_feet_frames (const DrawlGauge *gauge, gint64 frames)
{
  DrawlRational feet, mark;

  if (!drawl_footage_feet (gauge, frames, &feet))
    return NULL;

  /* The last foot mark lies at or before the end of the frames, so it fits where they do. */
  gint64 whole_feet = drawl_rational_floor (feet);
  drawl_rational_mul (drawl_rational_whole (whole_feet), gauge->foot_frames, &mark);
  return g_strdup_printf ("%" G_GINT64_FORMAT "+%02" G_GINT64_FORMAT, whole_feet,
                          frames - drawl_rational_ceil (mark));
}

gboolean
drawl_footage_physical_metres (const DrawlGauge *gauge, DrawlPitch pitch, DrawlRational frames,
                               DrawlRational *metres)
{
  DrawlRational step;

  return frames.num >= 0 && gauge->step_mm[pitch].num > 0 &&
         drawl_rational_mul (gauge->step_mm[pitch], DRAWL_RATIONAL_INIT (1, 1000), &step) &&
         drawl_rational_mul (frames, step, metres);
}
