/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Text in pictures: one line of Pango at a point, measured, with tabular numerals. */

#include <pango/pangocairo.h>

#include "draw/style.h"

/* How a line stands to its point: the point is its start, its middle or its end. */
typedef enum { DRAWL_ALIGN_START, DRAWL_ALIGN_MIDDLE, DRAWL_ALIGN_END } DrawlAlign;

typedef struct {
  double size; /* in points; 0: the style's */
  gboolean bold;
  DrawlAlign align;
  double max_width; /* 0: as long as it is; else cut with an ellipsis */
} DrawlTextStyle;

/* Draws in the current colour with the top of the line at @y; returns the width drawn. */
double drawl_text_draw (cairo_t *cr, const DrawlStyle *style, const DrawlTextStyle *text_style,
                        double x, double y, const char *text);
/* Width and height of a line as it would be drawn. */
void drawl_text_measure (cairo_t *cr, const DrawlStyle *style, const DrawlTextStyle *text_style,
                         const char *text, double *width, double *height);
double drawl_text_height (cairo_t *cr, const DrawlStyle *style);

/* A text that wraps at the style's max_width into at most @lines lines, the last of them ellipsised
 * if need be: its height, and to draw it with the top of its first line at @y and its start at @x.
 */
double drawl_text_paragraph_height (cairo_t *cr, const DrawlStyle *style,
                                    const DrawlTextStyle *text_style, guint lines,
                                    const char *text);
double drawl_text_paragraph_draw (cairo_t *cr, const DrawlStyle *style,
                                  const DrawlTextStyle *text_style, guint lines, double x, double y,
                                  const char *text);

/* A text of any number of lines, for those who draw it line by line: Pango markup, set at the
 * style's max_width; a word that is too long for a line is broken. The layout belongs to @cr, and
 * serves until the next call of any of these functions. */
PangoLayout *drawl_text_flow (cairo_t *cr, const DrawlStyle *style,
                              const DrawlTextStyle *text_style, const char *markup);
