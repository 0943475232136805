/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Where the parts of the picture of limits lie. Invariant: rows, axis and legend lie below each
 * other inside the picture; x_of() grows with the rate and stays inside the plot. Rates are on a
 * scale of ratios: twice the rate is as far everywhere. Lengths in points. */

#include "draw/limits-picture.h"

#include <math.h>

#define ROW_LINES 1.5    /* height of a row in lines of text */
#define LEGEND_LINES 1.4 /* and of a row of the legend */
#define CELL_LINES 13.0  /* width of a cell of the legend at least */
#define NAMES_SHARE 0.34 /* of the width, at most */
#define FIGURE_LINES 2.6 /* kept free at the right, for the figure behind the last step */
#define TICK_LINES 2.6   /* labels of the axis lie at least so far apart */
#define GAP 9.0
#define TICK 5.0
#define DECADES_MAX 8

static guint
legend_columns (const DrawlLimitsData *data, double room, double line)
{
  double most = MAX (floor (room / (CELL_LINES * line)), 1);

  return (guint)CLAMP (most, 1, MAX (data->n_tiers, 1));
}

static double
legend_height (const DrawlLimitsData *data, guint columns, double line)
{
  return (double)((data->n_tiers + columns - 1) / columns) * LEGEND_LINES * line;
}

double
drawl_limits_height (const DrawlLimitsData *data, double width, double label_height)
{
  guint columns = legend_columns (data, width - 2 * drawl_style_margin (width), label_height);

  return 3 * GAP + data->n_sizes * ROW_LINES * label_height + label_height + 2 * TICK +
         legend_height (data, columns, label_height);
}

static double
highest_fps (const DrawlLimitsData *data)
{
  double highest = 0;

  for (guint i = 0; i < data->n_tiers; i++)
    for (guint size = 0; size < data->n_sizes; size++)
      highest = MAX (highest, drawl_rational_to_double (data->tiers[i].highest[size]));
  return highest > 0 ? highest : 100;
}

/* The least that a tier ends at: below it nothing is told apart. */
static double
least_fps (const DrawlLimitsData *data, double highest)
{
  double least = highest;

  for (guint i = 0; i < data->n_tiers; i++)
    for (guint size = 0; size < data->n_sizes; size++)
      if (data->tiers[i].highest[size].num > 0)
        least = MIN (least, drawl_rational_to_double (data->tiers[i].highest[size]));
  return least;
}

/* 1, 2 and 5 times powers of ten, as far as labels have room. */
static void
place_ticks (DrawlLimitsLayout *layout, double line)
{
  static const double steps[] = {1, 2, 5};
  double from = floor (log10 (layout->low_fps)), room = TICK_LINES * line, last = -G_MAXDOUBLE;

  for (guint decade = 0; decade < DECADES_MAX; decade++)
    for (guint i = 0; i < G_N_ELEMENTS (steps); i++) {
      double fps = steps[i] * pow (10, from + decade);
      double x = layout->plot.width * log (fps / layout->low_fps) /
                 log (layout->high_fps / layout->low_fps);
      if (x < -0.5 || x > layout->plot.width + 0.5 || x - last < room ||
          layout->n_ticks == DRAWL_LIMITS_TICKS_MAX)
        continue;
      layout->ticks[layout->n_ticks++] = fps;
      last = x;
    }
}

void
drawl_limits_layout (const DrawlLimitsData *data, double width, double label_height,
                     double names_width, DrawlLimitsLayout *layout)
{
  double margin = drawl_style_margin (width), room = width - 2 * margin;
  double names = MIN (names_width, NAMES_SHARE * room), rows = ROW_LINES * label_height;
  double high = highest_fps (data), low = least_fps (data, high);
  double plot_x = margin + names + GAP, plot_y = GAP;
  double plot_width = MAX (room - names - GAP - FIGURE_LINES * label_height, 1);

  *layout = (DrawlLimitsLayout){
      .width = width,
      .height = drawl_limits_height (data, width, label_height),
      .row_height = rows,
      .names = {margin, plot_y, names, data->n_sizes * rows},
      .plot = {plot_x, plot_y, plot_width, data->n_sizes * rows},
      .legend_columns = legend_columns (data, room, label_height),
      .low_fps = low / 2.5,
      .high_fps = high,
  };
  layout->axis = (cairo_rectangle_t){plot_x, plot_y + layout->plot.height, plot_width,
                                     label_height + 2 * TICK};
  layout->legend = (cairo_rectangle_t){margin, layout->axis.y + layout->axis.height + GAP, room,
                                       legend_height (data, layout->legend_columns, label_height)};
  place_ticks (layout, label_height);
}

double
drawl_limits_x_of (const DrawlLimitsLayout *layout, DrawlRate rate)
{
  double fps = drawl_rational_to_double (rate);

  if (fps <= layout->low_fps)
    return layout->plot.x;
  return layout->plot.x + MIN (layout->plot.width * log (fps / layout->low_fps) /
                                   log (layout->high_fps / layout->low_fps),
                               layout->plot.width);
}
