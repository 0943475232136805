/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlSheetFrame: what stands around the matter of every sheet: the title block that opens it, the
 * line at the head of the pages after, and the foot with caution, date, revision and page. */

#include "draw/sheet.h"

typedef struct {
  char *title;      /* of the plan */
  char *head;       /* as much of it as can stand in a line */
  char *production; /* may be empty */
  char *sheet;      /* "Set sheet" */
  char *day;        /* "Shooting day 2027-03-09", or empty */
  char *stamp;      /* "Printed 2026-11-25 14:05 · revision 7c419a" */
  const char *caution;
} DrawlSheetFrame;

void drawl_sheet_frame_init (DrawlSheetFrame *frame, const DrawlSheetKind *kind, DrawlPlan *plan,
                             GDateTime *printed);
void drawl_sheet_frame_clear (DrawlSheetFrame *frame);

/* The title block, the first of the flow. */
void drawl_sheet_frame_open (const DrawlSheetFrame *frame, DrawlSheetFlow *flow);

/* What lies within the margins of a page of that size. */
cairo_rectangle_t drawl_sheet_frame_area (double width, double height);
/* What is left between head and foot there. */
cairo_rectangle_t drawl_sheet_frame_room (const DrawlSheetFrame *frame, const DrawlStyle *style,
                                          double width, double height, guint page);
void drawl_sheet_frame_draw (const DrawlSheetFrame *frame, cairo_t *cr, const DrawlStyle *style,
                             double width, double height, guint page, guint n_pages);
