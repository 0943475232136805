/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The few shapes that pictures are made of. Each adds to the current path; the caller fills or
 * strokes. */

#include <cairo.h>

/* A box whose left and right corners are rounded by so much, less where the box is too small. */
void drawl_shape_box (cairo_t *cr, double x, double y, double width, double height, double left,
                      double right);
/* Lines at 45° across the box, @step apart along its base, cut at its edges. At most a line a
 * point. */
void drawl_shape_hatch (cairo_t *cr, double x, double y, double width, double height, double step);
