/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The type that sheets are set in, and what they share: text with a mark before it, a label beside
 * a text. Sizes are made to be read at arm's length. */

#include "draw/mark.h"
#include "draw/sheet-flow.h"
#include "plan/day.h"

/* Dropped, where need be, so that all stand on the line of plain text beside them. */
static const DrawlSheetFont drawl_sheet_title = {.size = 20, .bold = TRUE};
static const DrawlSheetFont drawl_sheet_heading = {.size = 12, .bold = TRUE};
static const DrawlSheetFont drawl_sheet_plain = {.size = 9.5};
static const DrawlSheetFont drawl_sheet_quiet = {.size = 9.5, .dim = TRUE};
static const DrawlSheetFont drawl_sheet_strong = {.size = 9.5, .bold = TRUE};
static const DrawlSheetFont drawl_sheet_label = {.size = 8.5, .dim = TRUE, .drop = 0.9};

/* A mark of about the height of @font, and how far text stands from it. */
#define DRAWL_SHEET_MARK_GAP 4.5
void drawl_sheet_add_mark (DrawlSheetFlow *flow, double x, const DrawlSheetFont *font,
                           DrawlMark mark);
/* The mark, and @text behind it. */
void drawl_sheet_add_marked (DrawlSheetFlow *flow, double x, double width,
                             const DrawlSheetFont *font, DrawlMark mark, const char *text);
/* Width that they take on one line. */
double drawl_sheet_marked_width (DrawlSheetFlow *flow, const DrawlSheetFont *font,
                                 const char *text);

/* A row: @label at its start, and at @x the text, which is plain. Nothing when @text is empty. */
void drawl_sheet_add_labelled (DrawlSheetFlow *flow, double gap, double x, const char *label,
                               const char *text);

/* A block: the shots of @day by verdict, each with its mark, and @rest. */
void drawl_sheet_add_verdicts (DrawlSheetFlow *flow, const DrawlDay *day, const char *rest);

/* A block that says why there is nothing more. */
void drawl_sheet_add_nothing (DrawlSheetFlow *flow, const char *text);

/* Names the block in hand after @shot. */
void drawl_sheet_name_shot (DrawlSheetFlow *flow, DrawlShot *shot);

/* "16 shots"; a sum of seconds, to whole ones. New strings. */
char *drawl_sheet_shots_words (guint shots);
char *drawl_sheet_sum_words (double seconds);
