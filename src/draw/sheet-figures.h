/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlSheetFigure: a figure of a shot on the set sheet: what it is, its value, and one line more.
 * Each is a row of the table in sheet-figures.c. */

#include "plan/filling.h"
#include "plan/plan.h"

/* A shot as the set sheet shows it, with the cards or magazines of its body before and after it. */
typedef struct {
  DrawlShot *shot;
  DrawlHiredBody *hired; /* NULL: none */
  gboolean filled;       /* all takes went onto cards or magazines */
  gint64 first;          /* of them, counted from 1 */
  DrawlFilling after;
  DrawlLengthUnit unit; /* of film */
} DrawlSheetShot;

typedef struct {
  char *label; /* all are new strings; `more` may be empty */
  char *value;
  char *more;
} DrawlSheetFigure;

#define DRAWL_SHEET_N_FIGURES 4

void drawl_sheet_figure_init (DrawlSheetFigure *figure, const DrawlSheetShot *shot, guint index);
void drawl_sheet_figure_clear (DrawlSheetFigure *figure);

/* The sentence of the shot, its figures bold. Pango markup, new string. */
char *drawl_sheet_sentence_markup (DrawlShot *shot);

/* Lines of text below the figures; each "" where there is nothing to say. New strings. */
char *drawl_sheet_reasons_words (DrawlShot *shot);
char *drawl_sheet_with_words (DrawlShot *shot);    /* the cheapest licences that would do */
char *drawl_sheet_without_words (DrawlShot *shot); /* what can be shot without them */
char *drawl_sheet_hire_words (DrawlShot *shot);    /* both */
char *drawl_sheet_buffer_words (DrawlShot *shot);
