/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlDayFigure: one figure of the day strip: a small heading, the figure, and behind it, on a
 * click, how it comes about. */

#include <gtk/gtk.h>

#define DRAWL_TYPE_DAY_FIGURE (drawl_day_figure_get_type ())
G_DECLARE_FINAL_TYPE (DrawlDayFigure, drawl_day_figure, DRAWL, DAY_FIGURE, GtkWidget)

/* Property "heading" (string). */

/* @working: sentences, one a line. */
void drawl_day_figure_set (DrawlDayFigure *figure, const char *value, const char *working);
