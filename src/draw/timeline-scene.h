/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlTimelineScene: one drawing of the span picture, shared by its shapes and its captions. Its
 * layout runs from left to right, whatever the direction of the style. */

#include "draw/timeline.h"

#define DRAWL_TIMELINE_EDGE 3.0 /* nothing comes nearer to the edge of the picture */
#define DRAWL_TIMELINE_MARK 2.0 /* the least width of a span */
#define DRAWL_TIMELINE_KNOB 5.0 /* radius of a grip */

typedef struct {
  cairo_t *cr;
  const DrawlTimelineData *data;
  const DrawlStyle *style;
  DrawlTimelineLayout at;
  double line;      /* height of a line of text */
  gboolean playing; /* there is a playhead */
} DrawlTimelineScene;

static inline double
drawl_timeline_end (const cairo_rectangle_t *span)
{
  return span->x + span->width;
}

static inline double
drawl_timeline_bottom (const cairo_rectangle_t *span)
{
  return span->y + span->height;
}

void drawl_timeline_captions (const DrawlTimelineScene *scene);
