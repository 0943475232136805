/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The picture of a body's limits: a row a size, the largest on top, rates to the right on a scale
 * of ratios, and a step line a tier that ends where the tier's rates end. The body as hired, with
 * each single licence, and with everything. Layout is pure; drawing only draws. */

#include <pango/pangocairo.h>

#include "draw/style.h"
#include "plan/body.h"

/* Single licences that are drawn; of more, those that open most sizes. */
#define DRAWL_LIMITS_LICENCES_MAX 6

typedef struct {
  char *name;         /* "As hired", the licence's, "With everything" */
  DrawlTier licences; /* with what they require */
  DrawlRate *highest; /* a size each; 0: the size is not open */
  gboolean everything;
} DrawlLimitsTier;

typedef struct {
  char **sizes; /* names, the largest first; film: as the profile has them */
  guint n_sizes;
  DrawlRate lowest;       /* of all rows */
  DrawlLimitsTier *tiers; /* as hired; the licences that open anything by themselves; everything,
                             where that is more than one of those before it */
  guint n_tiers;
} DrawlLimitsData;

void drawl_limits_data_from_body (DrawlLimitsData *data, const DrawlBody *body);
void drawl_limits_data_clear (DrawlLimitsData *data);

#define DRAWL_LIMITS_TICKS_MAX 24

typedef struct {
  double width, height;
  double row_height;
  cairo_rectangle_t names;  /* the column of the sizes */
  cairo_rectangle_t plot;   /* rates from its left to its right edge */
  cairo_rectangle_t axis;   /* below it */
  cairo_rectangle_t legend; /* below that: a cell a tier, row by row */
  guint legend_columns;
  double low_fps, high_fps; /* at the edges of the plot */
  double ticks[DRAWL_LIMITS_TICKS_MAX];
  guint n_ticks;
} DrawlLimitsLayout;

/* Height that the picture needs at @width. @label_height: of one line of text in the style's font
 * (drawl_text_height()). */
double drawl_limits_height (const DrawlLimitsData *data, double width, double label_height);
/* From left to right, whatever the direction of the style. @names_width: of the longest name. */
void drawl_limits_layout (const DrawlLimitsData *data, double width, double label_height,
                          double names_width, DrawlLimitsLayout *layout);
double drawl_limits_x_of (const DrawlLimitsLayout *layout, DrawlRate rate);

void drawl_limits_draw (cairo_t *cr, const DrawlLimitsData *data, const DrawlStyle *style,
                        double width, double height);

/* The same in words, a sentence a size, for those who do not see the picture. New string. */
char *drawl_limits_text (const DrawlLimitsData *data);
