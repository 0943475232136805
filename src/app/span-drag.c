/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Times that a drag sets. A pointer gives a double, a shot wants an exact time: the answer is a
 * whole number of steps, and a step is a frame or a round decimal. Seconds. */

#include "app/span-drag.h"

#include <math.h>

#define FINEST 1000000 /* steps a second, at most */

/* The least 1, 2 or 5 · 10^k s that is a pixel or more. */
static DrawlRational
decimal_step (double seconds_per_px)
{
  static const gint64 leads[] = {1, 2, 5};
  DrawlRational scale = {1, FINEST}, step = scale;

  for (;; drawl_rational_mul (scale, drawl_rational_whole (10), &scale))
    for (guint i = 0; i < G_N_ELEMENTS (leads); i++) {
      drawl_rational_mul (scale, drawl_rational_whole (leads[i]), &step);
      if (drawl_rational_to_double (step) >= seconds_per_px || scale.num >= FINEST)
        return step;
    }
}

DrawlRational
drawl_span_snap (double seconds, double seconds_per_px, DrawlRate rate)
{
  DrawlRational frame = {rate.den, rate.num}, decimal = decimal_step (seconds_per_px);
  DrawlRational step = drawl_rational_compare (frame, decimal) > 0 ? frame : decimal;
  gint64 steps = llround (seconds / drawl_rational_to_double (step));
  DrawlRational snapped = step;

  drawl_rational_mul (step, drawl_rational_whole (MAX (steps, 1)), &snapped);
  return snapped;
}

gboolean
drawl_span_nudge (DrawlRational seconds, gint64 frames, DrawlRate rate, DrawlRational *moved)
{
  DrawlRational count;

  if (!drawl_rational_mul (seconds, rate, &count))
    return FALSE;
  /* From between two frames, the first step goes to the next whole one. */
  gint64 whole = frames > 0 ? drawl_rational_floor (count) : drawl_rational_ceil (count);
  return drawl_rational_div (drawl_rational_whole (MAX (whole + frames, 1)), rate, moved);
}
