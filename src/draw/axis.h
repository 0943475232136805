/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlAxis: where the ticks of an axis of seconds stand and how they are labelled. Steps are 1, 2
 * or 5 times a power of ten below a minute, then whole minutes and hours as clocks count them.
 * Pure. */

#include <glib.h>

typedef struct {
  double from, to; /* seconds */
  double major;    /* step of the labelled ticks */
  double minor;    /* step of the short ones; divides major */
  int decimals;    /* of the labels */
} DrawlAxis;

/* Ticks so that labels of @label_px lie at least that far apart on @px pixels. */
DrawlAxis drawl_axis_make (double from, double to, double px, double label_px);
/* Index range of the ticks of @step within the axis: tick i stands at i · step. */
void drawl_axis_range (const DrawlAxis *axis, double step, gint64 *first, gint64 *last);
/* "0.5", "1:30", "1:00:00" in the locale's style, after the longest of the axis; zero is "0". New
 * string. */
char *drawl_axis_label (const DrawlAxis *axis, double seconds);
