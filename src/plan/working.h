/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlWorking: how a figure came about: the formula in words and signs, the numbers put in, the
 * result, and where the rule comes from (published document and clause, "definition", or "common
 * practice"). Each figure is a row of the table in working.c. */

#include "plan/plan.h"

typedef enum {
  DRAWL_FIGURE_CAPTURE, /* capture rate, when it follows */
  DRAWL_FIGURE_ACTION,
  DRAWL_FIGURE_SCREEN,
  DRAWL_FIGURE_FACTOR,
  DRAWL_FIGURE_SPEED_PERCENT,   /* speed of the picture, per cent */
  DRAWL_FIGURE_FRAMES,          /* frames of the action */
  DRAWL_FIGURE_SCREEN_TIMECODE, /* length on screen as code */
  DRAWL_FIGURE_TAKE_FRAMES,     /* with handles */
  DRAWL_FIGURE_LICENCES,        /* cheapest set and price a day */
  DRAWL_FIGURE_FRAME_BYTES,
  DRAWL_FIGURE_DATA_RATE,
  DRAWL_FIGURE_CARD_TIME,
  DRAWL_FIGURE_CARDS,
  DRAWL_FIGURE_BUFFER,       /* seconds held */
  DRAWL_FIGURE_BUFFER_EMPTY, /* seconds to write it out */
  DRAWL_FIGURE_FOOTAGE,      /* film: feet+frames of a take */
  DRAWL_FIGURE_MAGAZINE,     /* film: run time of a magazine */
  DRAWL_FIGURE_MAGAZINES,
  DRAWL_N_FIGURES
} DrawlFigure;

typedef struct {
  char *name;    /* "Screen time" */
  char *value;   /* "4.5 s" */
  char *formula; /* "action time × slow factor ÷ post speed" */
  char *numbers; /* "0.45 s × 10 ÷ 100 %" */
  char *source;  /* "Definition" … */
} DrawlWorking;

/* NULL when the figure has no meaning for this shot (cards on a film body, buffer without one). */
DrawlWorking *drawl_working_new (DrawlPlan *plan, DrawlShot *shot, DrawlFigure figure);
void drawl_working_free (DrawlWorking *working);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (DrawlWorking, drawl_working_free)

/* "screen_s", …: stable word for tests and for the accessible id. */
const char *drawl_figure_id (DrawlFigure figure);
