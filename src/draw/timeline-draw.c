/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The shapes of the span picture. Everything is placed as if time ran from left to right, under a
 * mirrored matrix where it does not. Lengths in points. */

#include "draw/shape.h"
#include "draw/text.h"
#include "draw/timeline-scene.h"

#include <math.h>

#define GAP 3.0 /* between a bar and the stretch */
#define KNOB_ACTIVE 6.5
#define HALO 9.5
#define CORNER 4.0
#define TICK_PX 4.0

/* ---- Shapes ---- */

static void
fill (const DrawlTimelineScene *scene, DrawlColour colour)
{
  drawl_style_set_colour (scene->cr, colour);
  cairo_fill (scene->cr);
}

static DrawlColour
opaque (DrawlColour colour)
{
  colour.alpha = 1;
  return colour;
}

/* A soft trapezoid, and the line that its far ends move along. */
static void
draw_stretch (const DrawlTimelineScene *scene)
{
  const DrawlTimelineLayout *at = &scene->at;
  double top = drawl_timeline_bottom (&at->real) + GAP, bottom = at->screen.y - GAP;
  double real_x = at->zero_x + MAX (at->real.width, DRAWL_TIMELINE_MARK);
  double screen_x = at->zero_x + MAX (at->screen.width, DRAWL_TIMELINE_MARK);

  if (bottom <= top)
    return;
  cairo_move_to (scene->cr, at->zero_x, top);
  cairo_line_to (scene->cr, real_x, top);
  cairo_line_to (scene->cr, screen_x, bottom);
  cairo_line_to (scene->cr, at->zero_x, bottom);
  cairo_close_path (scene->cr);
  fill (scene, scene->style->stretch);
  cairo_move_to (scene->cr, real_x, top);
  cairo_line_to (scene->cr, screen_x, bottom);
  drawl_style_set_colour (scene->cr, scene->style->screen);
  cairo_set_line_width (scene->cr, 1);
  cairo_stroke (scene->cr);
}

/* Lighter than the action, with an outline that carries their shape. */
static void
draw_handle (const DrawlTimelineScene *scene, const cairo_rectangle_t *handle, double left,
             double right)
{
  if (handle->width < 0.5)
    return;
  drawl_shape_box (scene->cr, handle->x, handle->y, handle->width, handle->height, left, right);
  fill (scene, scene->style->stretch);
  if (handle->width < 3 || handle->height < 3)
    return;
  drawl_shape_box (scene->cr, handle->x + 0.5, handle->y + 0.5, handle->width - 1,
                   handle->height - 1, left, right);
  drawl_style_set_colour (scene->cr, scene->style->screen);
  cairo_set_line_width (scene->cr, 1);
  cairo_stroke (scene->cr);
}

static void
draw_spans (const DrawlTimelineScene *scene)
{
  const DrawlTimelineLayout *at = &scene->at;
  gboolean before = at->before.width >= 0.5, after = at->after.width >= 0.5;

  draw_handle (scene, &at->before, CORNER, 0);
  draw_handle (scene, &at->after, 0, CORNER);
  drawl_shape_box (scene->cr, at->real.x, at->real.y, MAX (at->real.width, DRAWL_TIMELINE_MARK),
                   at->real.height, before ? 0 : CORNER, after ? 0 : CORNER);
  fill (scene, scene->style->real);
  drawl_shape_box (scene->cr, at->screen.x, at->screen.y,
                   MAX (at->screen.width, DRAWL_TIMELINE_MARK), at->screen.height, CORNER, CORNER);
  fill (scene, scene->style->screen);
}

/* Notches where one frame ends and the next begins, within the part of the span that is seen: on
 * the lower edge of real time and the upper edge of screen time, which face each other. */
static void
draw_frames (const DrawlTimelineScene *scene, const cairo_rectangle_t *span, double fps,
             gboolean lower)
{
  double frame_px = 1 / (fps * scene->at.seconds_per_px);
  double last = MIN (drawl_timeline_end (span), scene->at.width) - frame_px / 2;
  double height = MIN (CLAMP (0.6 * frame_px, 3, 6), 0.3 * span->height);
  double y = lower ? drawl_timeline_bottom (span) - height : span->y;

  for (double i = 1; frame_px >= TICK_PX && span->x + i * frame_px < last; i++)
    cairo_rectangle (scene->cr, span->x + i * frame_px - 0.5, y, 1, height);
  fill (scene, opaque (scene->style->ground));
}

static void
draw_ticks (const DrawlTimelineScene *scene, double step, double height)
{
  const cairo_rectangle_t *axis = &scene->at.axis;
  gint64 first, last;

  if (step < TICK_PX * scene->at.seconds_per_px)
    return;
  drawl_axis_range (&scene->at.ticks, step, &first, &last);
  for (gint64 i = first; i <= last; i++) {
    double x = scene->at.zero_x + (double)i * step / scene->at.seconds_per_px;

    cairo_rectangle (scene->cr, round (x) - 0.5, axis->y, 1, height);
  }
}

static void
draw_axis (const DrawlTimelineScene *scene)
{
  const cairo_rectangle_t *axis = &scene->at.axis;

  if (axis->height <= 0)
    return;
  cairo_rectangle (scene->cr, axis->x - 0.5, round (axis->y) - 0.5, axis->width + 1, 1);
  draw_ticks (scene, scene->at.ticks.minor, 3);
  draw_ticks (scene, scene->at.ticks.major, 5);
  fill (scene, scene->style->dim);
}

/* A knob on the end of a span: what the window drags. */
static void
draw_grip (const DrawlTimelineScene *scene, const cairo_rectangle_t *span, gboolean active)
{
  double x = drawl_timeline_end (span), y = span->y + span->height / 2;
  double room = MIN (y, scene->at.height - y) - DRAWL_TIMELINE_EDGE;
  double radius = MIN (active ? KNOB_ACTIVE : DRAWL_TIMELINE_KNOB, span->height * 0.42);
  DrawlColour colour = scene->style->accent;

  if (colour.alpha <= 0 || x > scene->at.width - DRAWL_TIMELINE_EDGE - radius)
    return;
  if (active) {
    cairo_arc (scene->cr, x, y, MIN (HALO, room), 0, 2 * G_PI);
    fill (scene, (DrawlColour){colour.red, colour.green, colour.blue, colour.alpha * 0.28});
  }
  cairo_arc (scene->cr, x, y, MIN (radius + 1.5, room), 0, 2 * G_PI);
  fill (scene, opaque (scene->style->ground));
  cairo_arc (scene->cr, x, y, radius, 0, 2 * G_PI);
  fill (scene, colour);
}

/* The same instant on both spans, and the line between. */
static void
draw_playhead (const DrawlTimelineScene *scene, double playhead_s)
{
  const DrawlTimelineLayout *at = &scene->at;
  double share = scene->data->screen_s > 0 ? MIN (playhead_s / scene->data->screen_s, 1) : 0;
  double real_x = at->zero_x + share * at->real.width;
  double screen_x = at->zero_x + share * at->screen.width;

  cairo_move_to (scene->cr, real_x, MAX (at->real.y - 3, DRAWL_TIMELINE_EDGE));
  cairo_line_to (scene->cr, real_x, drawl_timeline_bottom (&at->real) + GAP);
  cairo_line_to (scene->cr, screen_x, at->screen.y - GAP);
  cairo_line_to (scene->cr, screen_x,
                 MIN (drawl_timeline_bottom (&at->screen) + 3, at->height - DRAWL_TIMELINE_EDGE));
  drawl_style_set_colour (scene->cr, scene->style->accent);
  cairo_set_line_width (scene->cr, 1.5);
  cairo_stroke (scene->cr);
}

static void
draw_shapes (const DrawlTimelineScene *scene, DrawlTimelineGrip active, double playhead_s)
{
  const DrawlTimelineLayout *at = &scene->at;

  draw_stretch (scene);
  draw_spans (scene);
  if (at->real_frames)
    draw_frames (scene, &at->real, scene->data->capture_fps, TRUE);
  if (at->screen_frames)
    draw_frames (scene, &at->screen, scene->data->playback_fps, FALSE);
  draw_axis (scene);
  if (playhead_s >= 0)
    draw_playhead (scene, playhead_s);
  draw_grip (scene, &at->real, active == DRAWL_TIMELINE_ACTION_END);
  draw_grip (scene, &at->screen, active == DRAWL_TIMELINE_SCREEN_END);
}

/* ---- The picture ---- */

void
drawl_timeline_draw (cairo_t *cr, const DrawlTimelineData *data, const DrawlStyle *style,
                     double width, double height, DrawlTimelineGrip active, double playhead_s,
                     const DrawlTimelineLayout *fixed)
{
  DrawlTimelineScene scene = {cr, data, style, .line = drawl_text_height (cr, style),
                              .playing = playhead_s >= 0};

  if (fixed != NULL) {
    scene.at = *fixed;
    if (scene.at.rtl)
      drawl_timeline_layout_mirror (&scene.at);
    drawl_timeline_layout_update (&scene.at, data);
  } else {
    drawl_timeline_layout (data, width, height, scene.line, FALSE, &scene.at);
  }

  if (style->ground.alpha > 0) {
    cairo_rectangle (cr, 0, 0, width, height);
    fill (&scene, style->ground);
  }
  cairo_save (cr);
  if (fixed != NULL) {
    cairo_rectangle (cr, DRAWL_TIMELINE_EDGE, DRAWL_TIMELINE_EDGE, width - 2 * DRAWL_TIMELINE_EDGE,
                     height - 2 * DRAWL_TIMELINE_EDGE);
    cairo_clip (cr);
  }
  if (style->rtl)
    cairo_transform (cr, &(cairo_matrix_t){-1, 0, 0, 1, width, 0});
  draw_shapes (&scene, active, playhead_s);
  cairo_restore (cr);
  drawl_timeline_captions (&scene);
}

void
drawl_timeline_draw_bar (cairo_t *cr, double action_s, double screen_s, double longest_s,
                         const DrawlStyle *style, double width, double height)
{
  double scale = longest_s > 0 ? width / longest_s : 0, gap = MIN (2, height / 6);
  double bar = (height - gap) / 2;
  double real = CLAMP (action_s * scale, DRAWL_TIMELINE_MARK, width);
  double screen = CLAMP (screen_s * scale, DRAWL_TIMELINE_MARK, width);

  drawl_shape_box (cr, style->rtl ? width - real : 0, 0, real, bar, 2, 2);
  drawl_style_set_colour (cr, style->real);
  cairo_fill (cr);
  drawl_shape_box (cr, style->rtl ? width - screen : 0, bar + gap, screen, bar, 2, 2);
  drawl_style_set_colour (cr, style->screen);
  cairo_fill (cr);
}
