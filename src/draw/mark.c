/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Marks, as paths in a square of 16 units. Invariant: each lies within its square. */

#include "draw/mark.h"

#include "draw/shape.h"

#include <math.h>

#define UNITS 16.0
#define BOX_EDGE 1.25
#define BOX_LINE 1.5

typedef struct {
  double x, y;
} Point;

static void
polygon (cairo_t *cr, const Point *points, guint n_points)
{
  for (guint i = 0; i < n_points; i++)
    cairo_line_to (cr, points[i].x, points[i].y);
  cairo_close_path (cr);
}

#define POLYGON(cr, ...)                                                                           \
  polygon ((cr), (const Point[]){__VA_ARGS__}, sizeof ((Point[]){__VA_ARGS__}) / sizeof (Point))

static void
disc_with_tick (cairo_t *cr)
{
  cairo_arc (cr, 8, 8, 7, 0, 2 * G_PI);
  cairo_close_path (cr);
  POLYGON (cr, {11.3, 4.9}, {7, 9.2}, {4.7, 6.9}, {3.3, 8.3}, {7, 12}, {12.7, 6.3});
}

static void
key (cairo_t *cr)
{
  double opening = asin (0.25); /* half of where the bit leaves the bow, as an angle */

  cairo_arc (cr, 4, 8, 4, opening, 2 * G_PI - opening);
  POLYGON (cr, {16, 7}, {16, 12}, {14, 12}, {14, 9}, {12, 9}, {12, 11}, {10, 11}, {10, 9});
  cairo_arc (cr, 4, 8, 2, 0, 2 * G_PI);
  cairo_close_path (cr);
}

static void
struck_camera (cairo_t *cr)
{
  POLYGON (cr, {1.3, 0}, {16, 14.7}, {14.7, 16}, {0, 1.3});
  cairo_move_to (cr, 1, 4);
  cairo_line_to (cr, 1.2, 4);
  cairo_line_to (cr, 9.2, 12);
  cairo_line_to (cr, 2.5, 12);
  cairo_arc (cr, 2.5, 10.5, 1.5, G_PI_2, G_PI);
  cairo_close_path (cr);
  cairo_move_to (cr, 6.8, 4);
  cairo_arc (cr, 9.5, 5, 1, -G_PI_2, 0);
  POLYGON (cr, {10.5, 6.9}, {15, 4.5}, {15, 11.5}, {13.49, 10.69});
}

static void
tick_box (cairo_t *cr)
{
  double outer = UNITS - 2 * BOX_EDGE, inner = outer - 2 * BOX_LINE;

  drawl_shape_box (cr, BOX_EDGE, BOX_EDGE, outer, outer, 2, 2);
  drawl_shape_box (cr, BOX_EDGE + BOX_LINE, BOX_EDGE + BOX_LINE, inner, inner, 0.75, 0.75);
}

static void
caution (cairo_t *cr)
{
  POLYGON (cr, {8, 1}, {15.75, 14.75}, {0.25, 14.75});
  POLYGON (cr, {7.1, 5.5}, {8.9, 5.5}, {8.6, 10.5}, {7.4, 10.5});
  cairo_rectangle (cr, 7.15, 11.6, 1.7, 1.7);
}

static void
flag (cairo_t *cr)
{
  cairo_rectangle (cr, 2.5, 1, 1.8, 14);
  cairo_new_sub_path (cr);
  POLYGON (cr, {4.3, 1.5}, {14.5, 5.25}, {4.3, 9});
}

static void (*const paths[DRAWL_N_MARKS]) (cairo_t *cr) = {
    [DRAWL_MARK_AS_HIRED] = disc_with_tick,
    [DRAWL_MARK_NEEDS_LICENCE] = key,
    [DRAWL_MARK_NOT_ON_THIS_BODY] = struck_camera,
    [DRAWL_MARK_TICK_BOX] = tick_box,
    [DRAWL_MARK_CAUTION] = caution,
    [DRAWL_MARK_FLAG] = flag,
};

DrawlMark
drawl_mark_of_verdict (DrawlVerdict verdict)
{
  static const DrawlMark marks[DRAWL_N_VERDICTS] = {
      [DRAWL_VERDICT_AS_HIRED] = DRAWL_MARK_AS_HIRED,
      [DRAWL_VERDICT_NEEDS_LICENCE] = DRAWL_MARK_NEEDS_LICENCE,
      [DRAWL_VERDICT_NOT_ON_THIS_BODY] = DRAWL_MARK_NOT_ON_THIS_BODY,
  };

  return marks[verdict];
}

void
drawl_mark_draw (cairo_t *cr, DrawlMark mark, double size)
{
  cairo_save (cr);
  cairo_scale (cr, size / UNITS, size / UNITS);
  cairo_new_path (cr);
  paths[mark](cr);
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
  cairo_fill (cr);
  cairo_restore (cr);
}
