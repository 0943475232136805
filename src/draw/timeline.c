/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The span picture without a brush: what it shows, where its parts lie, what is under the pointer.
 * Invariant of a layout: both spans begin at zero_x on one scale, every box lies inside the
 * picture, and the mirror of a layout is the layout of the other direction. Lengths in points,
 * times in seconds. */

#include "draw/timeline.h"

#include "core/timecode.h"

#include <math.h>

#define EDGE 3.0     /* kept free above and below at least */
#define FRAME_PX 4.0 /* frames narrower than this get no ticks */

/* ---- What it shows ---- */

static char *
screen_code (DrawlShot *shot)
{
  const DrawlTiming *timing = drawl_shot_get_timing (shot);
  char code[DRAWL_TIMECODE_SIZE];

  if (!drawl_timecode_format (timing->value[DRAWL_TIMING_PLAYBACK],
                              drawl_shot_get_fields (shot)->drop, timing->screen_frames, code,
                              NULL))
    return NULL;
  return g_strdup (code);
}

void
drawl_timeline_data_from_shot (DrawlTimelineData *data, DrawlShot *shot)
{
  const DrawlTiming *timing = drawl_shot_get_timing (shot);
  const DrawlShotFields *fields = drawl_shot_get_fields (shot);

  *data = (DrawlTimelineData){
      .action_s = drawl_rational_to_double (timing->value[DRAWL_TIMING_ACTION]),
      .screen_s = drawl_rational_to_double (timing->value[DRAWL_TIMING_SCREEN]),
      .before_s = drawl_rational_to_double (fields->handle_before_s),
      .after_s = drawl_rational_to_double (fields->handle_after_s),
      .capture_fps = drawl_rational_to_double (timing->value[DRAWL_TIMING_CAPTURE]),
      .playback_fps = drawl_rational_to_double (timing->value[DRAWL_TIMING_PLAYBACK]),
      .frames = timing->frames,
      .screen_code = screen_code (shot),
  };
}

void
drawl_timeline_data_clear (DrawlTimelineData *data)
{
  g_clear_pointer (&data->screen_code, g_free);
}

/* ---- Where it lies ---- */

/* Heights from top to bottom: margin, figures, bar, stretch, bar, figures, axis, margin. */
typedef struct {
  double top;
  double figures; /* 0: no room for them */
  double bar;
  double stretch;
  double gap, axis; /* 0: no room for an axis */
} Rows;

/* What does not fit goes: first the axis, then the figures. */
static Rows
divide_height (double height, double line)
{
  double margin = CLAMP (0.06 * height, MIN (EDGE, height / 8), 0.8 * line), least = 3 * line;
  Rows rows = {.figures = 1.4 * line, .gap = 0.7 * line, .axis = line + 7};
  double rest = height - 2 * margin - 2 * rows.figures - rows.gap - rows.axis;

  if (rest < least) {
    rest += rows.gap + rows.axis;
    rows.gap = rows.axis = 0;
  }
  if (rest < least) {
    rest += 2 * rows.figures;
    rows.figures = 0;
  }
  rows.bar = CLAMP (0.24 * rest, MIN (3, rest / 3), 1.9 * line);
  rows.stretch = MIN (rest - 2 * rows.bar, 8 * line);
  rows.top = margin + (rest - 2 * rows.bar - rows.stretch) / 2;
  return rows;
}

static double
finite_or_zero (double seconds)
{
  return isfinite (seconds) ? MAX (seconds, 0) : 0;
}

static cairo_rectangle_t
box (const DrawlTimelineLayout *layout, double from_s, double seconds, cairo_rectangle_t row)
{
  return (cairo_rectangle_t){layout->zero_x + from_s / layout->seconds_per_px, row.y,
                             seconds / layout->seconds_per_px, row.height};
}

static void
mirror_box (cairo_rectangle_t *rectangle, double width)
{
  rectangle->x = width - rectangle->x - rectangle->width;
}

void
drawl_timeline_layout_mirror (DrawlTimelineLayout *layout)
{
  cairo_rectangle_t *boxes[] = {&layout->real, &layout->before, &layout->after, &layout->screen,
                                &layout->axis};

  for (guint i = 0; i < G_N_ELEMENTS (boxes); i++)
    mirror_box (boxes[i], layout->width);
  layout->zero_x = layout->width - layout->zero_x;
  layout->rtl = !layout->rtl;
}

void
drawl_timeline_layout_update (DrawlTimelineLayout *layout, const DrawlTimelineData *data)
{
  double action = finite_or_zero (data->action_s), before = finite_or_zero (data->before_s);
  double a_frame = FRAME_PX * layout->seconds_per_px;
  gboolean rtl = layout->rtl;

  if (rtl)
    drawl_timeline_layout_mirror (layout);
  layout->real = box (layout, 0, action, layout->real);
  layout->before = box (layout, -before, before, layout->real);
  layout->after = box (layout, action, finite_or_zero (data->after_s), layout->real);
  layout->screen = box (layout, 0, finite_or_zero (data->screen_s), layout->screen);
  layout->real_frames = data->capture_fps > 0 && data->capture_fps * a_frame <= 1;
  layout->screen_frames = data->playback_fps > 0 && data->playback_fps * a_frame <= 1;
  if (rtl)
    drawl_timeline_layout_mirror (layout);
}

void
drawl_timeline_layout (const DrawlTimelineData *data, double width, double height,
                       double label_height, gboolean rtl, DrawlTimelineLayout *layout)
{
  Rows rows = divide_height (height, label_height);
  double margin = drawl_style_margin (width), room = width - 2 * margin;
  double before = finite_or_zero (data->before_s);
  double after = finite_or_zero (data->action_s) + finite_or_zero (data->after_s);
  double longest = MAX (after, finite_or_zero (data->screen_s));
  double seconds = before + longest > 0 ? before + longest : 1;
  double real_y = rows.top + rows.figures, screen_y = real_y + rows.bar + rows.stretch;

  *layout = (DrawlTimelineLayout){
      .width = width,
      .height = height,
      .seconds_per_px = seconds / room,
      .zero_x = margin + before * room / seconds,
      .real = {.y = real_y, .height = rows.bar},
      .screen = {.y = screen_y, .height = rows.bar},
      .axis = {margin, screen_y + rows.bar + rows.figures + rows.gap, room, rows.axis},
      .ticks = drawl_axis_make (-before, seconds - before, room,
                                CLAMP (room / 8, 3.2 * label_height, 5 * label_height)),
  };
  drawl_timeline_layout_update (layout, data);
  if (rtl)
    drawl_timeline_layout_mirror (layout);
}

double
drawl_timeline_seconds_at (const DrawlTimelineLayout *layout, double x)
{
  double px = layout->rtl ? layout->zero_x - x : x - layout->zero_x;

  return MAX (px, 0) * layout->seconds_per_px;
}

double
drawl_timeline_x_of (const DrawlTimelineLayout *layout, double seconds)
{
  double px = seconds / layout->seconds_per_px;

  return layout->rtl ? layout->zero_x - px : layout->zero_x + px;
}

/* ---- What is under the pointer ---- */

static gboolean
at_end (const DrawlTimelineLayout *layout, const cairo_rectangle_t *span, double x, double reach)
{
  double end = layout->rtl ? span->x : span->x + span->width;

  return fabs (x - end) <= reach;
}

DrawlTimelineGrip
drawl_timeline_hit (const DrawlTimelineLayout *layout, double x, double y, double reach)
{
  const cairo_rectangle_t *real = &layout->real, *screen = &layout->screen;
  double middle = (real->y + real->height + screen->y) / 2;

  if (y < real->y - reach || y > screen->y + screen->height + reach)
    return DRAWL_TIMELINE_NOTHING;
  if (y < middle && y <= real->y + real->height + reach && at_end (layout, real, x, reach))
    return DRAWL_TIMELINE_ACTION_END;
  if (y >= middle && y >= screen->y - reach && at_end (layout, screen, x, reach))
    return DRAWL_TIMELINE_SCREEN_END;
  return DRAWL_TIMELINE_NOTHING;
}
