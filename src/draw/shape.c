/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Boxes and hatching, as paths. Lengths in points. */

#include "draw/shape.h"

#include <glib.h>

static void
corner (cairo_t *cr, double x, double y, double radius, int quarter)
{
  if (radius > 0)
    cairo_arc (cr, x, y, radius, quarter * G_PI_2, (quarter + 1) * G_PI_2);
  else
    cairo_line_to (cr, x, y);
}

void
drawl_shape_box (cairo_t *cr, double x, double y, double width, double height, double left,
                 double right)
{
  double most = MIN (width, height) / 2, l = MIN (left, most), r = MIN (right, most);

  cairo_new_sub_path (cr);
  corner (cr, x + width - r, y + height - r, r, 0);
  corner (cr, x + l, y + height - l, l, 1);
  corner (cr, x + l, y + l, l, 2);
  corner (cr, x + width - r, y + r, r, 3);
  cairo_close_path (cr);
}

void
drawl_shape_hatch (cairo_t *cr, double x, double y, double width, double height, double step)
{
  double apart = MAX (step, 1);

  /* A line stands at @base on the lower edge's line and leans to the right. */
  for (double base = x - height + apart / 2; base < x + width; base += apart) {
    double from = MAX (base, x), to = MIN (base + height, x + width);

    cairo_move_to (cr, from, y + height - (from - base));
    cairo_line_to (cr, to, y + height - (to - base));
  }
}
