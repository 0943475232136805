/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The span picture: real time above, screen time below, both on one scale of seconds, and the
 * stretch drawn between them. Layout and hit-testing are pure; drawing only draws. */

#include <pango/pangocairo.h>

#include "draw/axis.h"
#include "draw/style.h"
#include "plan/shot.h"

/* What is drawn; copied out of a shot, so that it can also be drawn in mid-drag. */
typedef struct {
  double action_s;
  double screen_s;
  double before_s, after_s; /* handles, real time */
  double capture_fps, playback_fps;
  gint64 frames;     /* of the action */
  char *screen_code; /* screen length as timecode, may be NULL */
} DrawlTimelineData;

void drawl_timeline_data_from_shot (DrawlTimelineData *data, DrawlShot *shot);
void drawl_timeline_data_clear (DrawlTimelineData *data);

typedef enum {
  DRAWL_TIMELINE_NOTHING,
  DRAWL_TIMELINE_ACTION_END, /* the far end of the real-time span: action time */
  DRAWL_TIMELINE_SCREEN_END, /* the far end of the screen span: screen time */
} DrawlTimelineGrip;

typedef struct {
  double width, height;
  double seconds_per_px;
  double zero_x; /* where both spans begin (the action begins; handles lie before it) */
  gboolean rtl;
  cairo_rectangle_t real;          /* the action */
  cairo_rectangle_t before, after; /* handles, empty when there are none */
  cairo_rectangle_t screen;
  cairo_rectangle_t axis;
  DrawlAxis ticks;                     /* seconds */
  gboolean real_frames, screen_frames; /* frame ticks are drawn: a frame is wide enough */
} DrawlTimelineLayout;

/* @label_height: of one line of text in the style's font (drawl_text_height()). */
void drawl_timeline_layout (const DrawlTimelineData *data, double width, double height,
                            double label_height, gboolean rtl, DrawlTimelineLayout *layout);
/* Moves the spans to other data, keeping scale, zero and heights: mid-drag they may end outside. */
void drawl_timeline_layout_update (DrawlTimelineLayout *layout, const DrawlTimelineData *data);
/* Turns it into its mirror image, of the other direction. */
void drawl_timeline_layout_mirror (DrawlTimelineLayout *layout);
DrawlTimelineGrip drawl_timeline_hit (const DrawlTimelineLayout *layout, double x, double y,
                                      double reach);
/* Seconds at @x, from where the spans begin; never negative. */
double drawl_timeline_seconds_at (const DrawlTimelineLayout *layout, double x);
double drawl_timeline_x_of (const DrawlTimelineLayout *layout, double seconds);

/* @active is drawn as grasped; @playhead_s < 0: no playhead, else seconds of screen time, drawn on
 * both spans.
 * @fixed, when not NULL, is a layout to keep (a drag must not rescale under the pointer). */
void drawl_timeline_draw (cairo_t *cr, const DrawlTimelineData *data, const DrawlStyle *style,
                          double width, double height, DrawlTimelineGrip active, double playhead_s,
                          const DrawlTimelineLayout *fixed);

/* The same in words, for those who do not see the picture. New string. */
char *drawl_timeline_text (const DrawlTimelineData *data);

/* The small bar of a list row: real time above screen time, @longest_s at full width. */
void drawl_timeline_draw_bar (cairo_t *cr, double action_s, double screen_s, double longest_s,
                              const DrawlStyle *style, double width, double height);
