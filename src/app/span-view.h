/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlSpanView: the span picture of a shot: real time above screen time. Its far ends can be
 * dragged, or moved with the arrow keys by a frame (Shift: ten); Tab and Space change the end. */

#include <gtk/gtk.h>

#include "draw/timeline.h"
#include "plan/plan.h"

#define DRAWL_TYPE_SPAN_VIEW (drawl_span_view_get_type ())
G_DECLARE_FINAL_TYPE (DrawlSpanView, drawl_span_view, DRAWL, SPAN_VIEW, GtkWidget)

/* Property, read-only, notified: "error" (string or NULL), why an end does not move. */

/* Both NULL for none. */
void drawl_span_view_set_shot (DrawlSpanView *view, DrawlPlan *plan, DrawlShot *shot);

/* The end that keys move, or that is being dragged. */
DrawlTimelineGrip drawl_span_view_get_active (DrawlSpanView *view);
void drawl_span_view_layout (DrawlSpanView *view, DrawlTimelineLayout *layout);

/* A drag, as the pointer makes one: FALSE when there is no end at @x, @y. */
gboolean drawl_span_view_drag_begin (DrawlSpanView *view, double x, double y);
void drawl_span_view_drag_to (DrawlSpanView *view, double x);
void drawl_span_view_drag_end (DrawlSpanView *view);
/* Puts the shot back as it was. */
void drawl_span_view_drag_cancel (DrawlSpanView *view);
