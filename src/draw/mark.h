/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Small marks, told apart by shape alone: those of the verdicts are drawn as in the window. */

#include <cairo.h>

#include "plan/check.h"

typedef enum {
  DRAWL_MARK_AS_HIRED,         /* a disc with a tick */
  DRAWL_MARK_NEEDS_LICENCE,    /* a key */
  DRAWL_MARK_NOT_ON_THIS_BODY, /* a camera body, struck through */
  DRAWL_MARK_TICK_BOX,         /* an empty box */
  DRAWL_MARK_CAUTION,          /* a triangle with a stroke and a point */
  DRAWL_MARK_FLAG,
  DRAWL_N_MARKS
} DrawlMark;

DrawlMark drawl_mark_of_verdict (DrawlVerdict verdict);

/* Fills a square of @size at 0, 0 in the current colour. */
void drawl_mark_draw (cairo_t *cr, DrawlMark mark, double size);
