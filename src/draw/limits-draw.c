/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The picture of limits. A tier is told by its stroke as well as by its shade: as hired a thick
 * unbroken line with its ground filled, everything a double line, each licence dashes of its own. A
 * licence is drawn where it goes beyond the body as hired. Lengths in points. */

#include "draw/limits-picture.h"

#include "core/text.h"
#include "draw/text.h"
#include "plan/figure.h"

#include <math.h>

#define HIRED_WIDTH 2.5
#define LICENCE_WIDTH 1.75
#define EVERYTHING_WIDTH 4.0
#define EVERYTHING_CORE 1.5
#define SAMPLE 26.0
#define GAP 6.0
#define DASHES 4

/* A tier's stroke: lengths of dashes and gaps; none: unbroken. */
static const struct {
  double dashes[DASHES];
  int n;
} strokes[DRAWL_LIMITS_LICENCES_MAX] = {
    {{7, 3}, 2}, {{2, 3}, 2}, {{9, 3, 2, 3}, 4}, {{4, 5}, 2}, {{12, 4}, 2}, {{2, 2, 6, 2}, 4},
};

typedef struct {
  cairo_t *cr;
  const DrawlLimitsData *data;
  const DrawlStyle *style;
  DrawlLimitsLayout at;
  double line;
} Scene;

static void
set (const Scene *scene, DrawlColour colour)
{
  drawl_style_set_colour (scene->cr, colour);
}

static DrawlColour
ground_of (const Scene *scene)
{
  DrawlColour colour = scene->style->ground;

  colour.alpha = 1;
  return colour;
}

/* Where a caption's point is, as the page runs. */
static double
page_x (const Scene *scene, double x)
{
  return scene->style->rtl ? scene->at.width - x : x;
}

/* ---- Strokes ---- */

/* Strokes the path as the tier's line. */
static void
stroke_tier (const Scene *scene, guint tier)
{
  if (tier == 0) {
    set (scene, scene->style->ink);
    cairo_set_line_width (scene->cr, HIRED_WIDTH);
  } else if (scene->data->tiers[tier].everything) {
    set (scene, scene->style->screen);
    cairo_set_line_width (scene->cr, EVERYTHING_WIDTH);
    cairo_stroke_preserve (scene->cr);
    set (scene, ground_of (scene));
    cairo_set_line_width (scene->cr, EVERYTHING_CORE);
  } else {
    guint kind = (tier - 1) % DRAWL_LIMITS_LICENCES_MAX;
    set (scene, scene->style->real);
    cairo_set_line_width (scene->cr, LICENCE_WIDTH);
    cairo_set_dash (scene->cr, strokes[kind].dashes, strokes[kind].n, 0);
  }
  cairo_stroke (scene->cr);
  cairo_set_dash (scene->cr, NULL, 0, 0);
}

static double
row_y (const Scene *scene, guint size)
{
  return scene->at.plot.y + size * scene->at.row_height;
}

static gboolean
goes_beyond (const Scene *scene, guint tier, guint size)
{
  const DrawlLimitsTier *tiers = scene->data->tiers;

  return tier == 0 ||
         drawl_rational_compare (tiers[tier].highest[size], tiers[0].highest[size]) > 0;
}

/* The steps: down along the end of each row that it has, over to the next, or to the line of the
 * body as hired, and on. */
static void
path_tier (const Scene *scene, guint tier)
{
  const DrawlRate *highest = scene->data->tiers[tier].highest;
  gboolean drawing = FALSE;

  for (guint i = 0; i < scene->data->n_sizes; i++) {
    double x = drawl_limits_x_of (&scene->at, highest[i]), y = row_y (scene, i);
    gboolean beyond = goes_beyond (scene, tier, i);

    if (!beyond && drawing)
      cairo_line_to (scene->cr, x, y);
    if (beyond && !drawing) {
      double from = drawl_limits_x_of (&scene->at, scene->data->tiers[0].highest[i]);
      cairo_move_to (scene->cr, tier == 0 ? x : i == 0 ? x : from, y);
    }
    drawing = beyond;
    if (!beyond)
      continue;
    cairo_line_to (scene->cr, x, y);
    cairo_line_to (scene->cr, x, y + scene->at.row_height);
  }
}

/* The highest rate of a size, whatever is licensed. */
static DrawlRate
highest_of_all (const DrawlLimitsData *data, guint size)
{
  DrawlRate highest = data->tiers[0].highest[size];

  for (guint tier = 1; tier < data->n_tiers; tier++)
    if (drawl_rational_compare (data->tiers[tier].highest[size], highest) > 0)
      highest = data->tiers[tier].highest[size];
  return highest;
}

/* The ground from the axis to the end of each row: as hired, or of all tiers. */
static void
fill_ground (const Scene *scene, gboolean hired, double alpha)
{
  DrawlColour colour = scene->style->screen;

  for (guint i = 0; i < scene->data->n_sizes; i++) {
    DrawlRate end = hired ? scene->data->tiers[0].highest[i] : highest_of_all (scene->data, i);
    double x = drawl_limits_x_of (&scene->at, end);
    cairo_rectangle (scene->cr, scene->at.plot.x, row_y (scene, i), x - scene->at.plot.x,
                     scene->at.row_height);
  }
  colour.alpha = alpha;
  set (scene, colour);
  cairo_fill (scene->cr);
}

static void
draw_grid (const Scene *scene)
{
  const cairo_rectangle_t *plot = &scene->at.plot;

  for (guint i = 0; i < scene->at.n_ticks; i++) {
    double x = plot->x + plot->width * log (scene->at.ticks[i] / scene->at.low_fps) /
                             log (scene->at.high_fps / scene->at.low_fps);
    cairo_rectangle (scene->cr, round (x) - 0.5, plot->y, 1, plot->height + 4);
  }
  set (scene, scene->style->stretch);
  cairo_fill (scene->cr);
  cairo_rectangle (scene->cr, plot->x - 0.5, round (plot->y + plot->height) - 0.5, plot->width + 1,
                   1);
  set (scene, scene->style->dim);
  cairo_fill (scene->cr);
}

static void
draw_shapes (const Scene *scene)
{
  guint last = scene->data->n_tiers - 1;

  draw_grid (scene);
  cairo_set_line_join (scene->cr, CAIRO_LINE_JOIN_MITER);
  if (last > 0)
    fill_ground (scene, FALSE, 0.14);
  fill_ground (scene, TRUE, 0.34);
  for (guint tier = last; tier < G_MAXUINT; tier--) {
    path_tier (scene, tier);
    stroke_tier (scene, tier);
  }
}

/* ---- Captions ---- */

static void
draw_names (const Scene *scene)
{
  DrawlTextStyle text = {.align = DRAWL_ALIGN_END, .max_width = scene->at.names.width};

  set (scene, scene->style->ink);
  for (guint i = 0; i < scene->data->n_sizes; i++)
    drawl_text_draw (
        scene->cr, scene->style, &text, page_x (scene, scene->at.names.x + scene->at.names.width),
        row_y (scene, i) + (scene->at.row_height - scene->line) / 2, scene->data->sizes[i]);
}

/* The highest rate of the body as hired inside its ground; the highest of all behind its end. */
static void
draw_figures (const Scene *scene)
{
  const DrawlLimitsTier *hired = &scene->data->tiers[0];

  for (guint i = 0; i < scene->data->n_sizes; i++) {
    DrawlRate highest = highest_of_all (scene->data, i);
    DrawlTextStyle inside = {.align = DRAWL_ALIGN_END}, behind = {.align = DRAWL_ALIGN_START};
    double y = row_y (scene, i) + (scene->at.row_height - scene->line) / 2;

    if (highest.num == 0)
      continue;
    g_autofree char *all = drawl_figure_rate_number (highest);
    g_autofree char *own = drawl_figure_rate_number (hired->highest[i]);
    set (scene, scene->style->ink);
    drawl_text_draw (scene->cr, scene->style, &behind,
                     page_x (scene, drawl_limits_x_of (&scene->at, highest) + GAP), y, all);
    if (hired->highest[i].num > 0 && !drawl_rational_equal (highest, hired->highest[i]))
      drawl_text_draw (scene->cr, scene->style, &inside,
                       page_x (scene, drawl_limits_x_of (&scene->at, hired->highest[i]) - GAP), y,
                       own);
  }
}

static void
draw_axis (const Scene *scene)
{
  DrawlTextStyle text = {.align = DRAWL_ALIGN_MIDDLE};
  const cairo_rectangle_t *plot = &scene->at.plot;

  set (scene, scene->style->dim);
  for (guint i = 0; i < scene->at.n_ticks; i++) {
    double x = plot->x + plot->width * log (scene->at.ticks[i] / scene->at.low_fps) /
                             log (scene->at.high_fps / scene->at.low_fps);
    gint64 milli = llround (scene->at.ticks[i] * 1000);
    DrawlRational fps;
    if (!drawl_rational_make (milli, 1000, &fps))
      continue;
    g_autofree char *label = drawl_figure_number (fps, 3);
    drawl_text_draw (scene->cr, scene->style, &text, page_x (scene, x), scene->at.axis.y + 5,
                     label);
  }
  DrawlTextStyle unit = {.align = DRAWL_ALIGN_END, .max_width = scene->at.names.width};
  drawl_text_draw (scene->cr, scene->style, &unit,
                   page_x (scene, scene->at.names.x + scene->at.names.width), scene->at.axis.y + 5,
                   _ ("fps"));
}

static void
draw_legend (const Scene *scene)
{
  const cairo_rectangle_t *legend = &scene->at.legend;
  double cell = legend->width / scene->at.legend_columns, line = 1.4 * scene->line;
  DrawlTextStyle text = {.max_width = MAX (cell - SAMPLE - 2 * GAP, 1)};

  for (guint i = 0; i < scene->data->n_tiers; i++) {
    double x = legend->x + (i % scene->at.legend_columns) * cell;
    double y = legend->y + (double)(i / scene->at.legend_columns) * line;
    cairo_move_to (scene->cr, page_x (scene, x), y + scene->line / 2);
    cairo_line_to (scene->cr, page_x (scene, x + SAMPLE), y + scene->line / 2);
    stroke_tier (scene, i);
    set (scene, scene->style->ink);
    drawl_text_draw (scene->cr, scene->style, &text, page_x (scene, x + SAMPLE + GAP), y,
                     scene->data->tiers[i].name);
  }
}

static double
longest_name (cairo_t *cr, const DrawlLimitsData *data, const DrawlStyle *style)
{
  DrawlTextStyle text = {0};
  double longest = 0;

  for (guint i = 0; i < data->n_sizes; i++) {
    double width, height;
    drawl_text_measure (cr, style, &text, data->sizes[i], &width, &height);
    longest = MAX (longest, width);
  }
  return ceil (longest);
}

void
drawl_limits_draw (cairo_t *cr, const DrawlLimitsData *data, const DrawlStyle *style, double width,
                   double height)
{
  Scene scene = {cr, data, style, .line = drawl_text_height (cr, style)};

  if (style->ground.alpha > 0) {
    cairo_rectangle (cr, 0, 0, width, height);
    set (&scene, style->ground);
    cairo_fill (cr);
  }
  if (data->n_tiers == 0 || data->n_sizes == 0)
    return;
  drawl_limits_layout (data, width, scene.line, longest_name (cr, data, style), &scene.at);
  cairo_save (cr);
  if (style->rtl)
    cairo_transform (cr, &(cairo_matrix_t){-1, 0, 0, 1, width, 0});
  draw_shapes (&scene);
  cairo_restore (cr);
  draw_names (&scene);
  draw_figures (&scene);
  draw_axis (&scene);
  draw_legend (&scene);
}
