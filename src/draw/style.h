/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlStyle: the colours, type and direction that every picture is drawn with. The window fills
 * one from its theme; files use the built-in light or dark one. Lengths in pictures are in points
 * of the surface (pixels at scale 1). */

#include <glib.h>
#include <cairo.h>

typedef struct {
  double red, green, blue, alpha;
} DrawlColour;

typedef struct {
  DrawlColour ground;  /* behind everything; alpha 0: none is painted, but gaps are still of this
                          colour */
  DrawlColour ink;     /* text and lines that matter */
  DrawlColour dim;     /* axes, labels, ticks */
  DrawlColour accent;  /* the one accent: what can be dragged, what is in hand; alpha 0: nothing */
  DrawlColour real;    /* real time */
  DrawlColour screen;  /* screen time */
  DrawlColour stretch; /* between them, handles, empty part of a card */
  DrawlColour alert;   /* what does not fit */
  const char *font;    /* Pango family, "Sans" when NULL */
  double font_size;    /* of plain labels, 10 in files */
  gboolean rtl;        /* mirrored: time runs from right to left, as the page does */
} DrawlStyle;

extern const DrawlStyle drawl_style_light;
extern const DrawlStyle drawl_style_dark;
/* Black and greys, for paper: nothing is told by colour, nothing can be dragged. */
extern const DrawlStyle drawl_style_paper;

void drawl_style_set_colour (cairo_t *cr, DrawlColour colour);
/* What a picture of that width leaves free at its left and right. */
double drawl_style_margin (double width);
