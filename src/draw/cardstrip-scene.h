/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlCardStripScene: one drawing of the card picture, shared by its shapes and its captions. Its
 * layout runs from left to right, whatever the direction of the style. */

#include "draw/cardstrip.h"

#define DRAWL_CARDSTRIP_EDGE 3.0  /* no text comes nearer to the edge of the picture */
#define DRAWL_CARDSTRIP_HATCH 5.0 /* from line to line of what is kept empty, at least */

typedef struct {
  cairo_t *cr;
  const DrawlCardStripData *data;
  const DrawlStyle *style;
  double width, height, line;
  DrawlCardStripLayout at;
} DrawlCardStripScene;

void drawl_cardstrip_captions (const DrawlCardStripScene *strip);
/* In place of the picture: why there is none. */
void drawl_cardstrip_problem (const DrawlCardStripScene *strip);
