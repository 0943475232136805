/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlSheetRow: a row of a sheet, cells side by side. It is made of pieces, the lines of each text
 * and each picture, so that a row that is taller than a page can be drawn a part at a time. */

#include "draw/sheet-flow.h"

typedef struct {
  double x, width;
  DrawlSheetFont font;
  char *markup;        /* of a text */
  PangoLayout *layout; /* of one that may reach over pages, laid out once; else NULL */
  double height;       /* of a picture */
  DrawlSheetPicture draw;
  gpointer data;
  GDestroyNotify free_data;
} DrawlSheetCell;

typedef struct {
  double gap; /* above */
  DrawlSheetRule rule;
  GArray *cells; /* of DrawlSheetCell */
  double height; /* of the row as a whole */
} DrawlSheetRow;

/* What a row is set with. */
typedef struct {
  cairo_t *cr;
  const DrawlStyle *style;
  double width; /* of the sheet between its margins */
} DrawlSheetPen;

DrawlSheetRow *drawl_sheet_row_new (double gap, DrawlSheetRule rule);
void drawl_sheet_row_free (DrawlSheetRow *row);

PangoLayout *drawl_sheet_pen_layout (const DrawlSheetPen *pen, const DrawlSheetFont *font,
                                     double width, const char *markup);

void drawl_sheet_row_measure (const DrawlSheetPen *pen, DrawlSheetRow *row);

/* How much of the row goes into @room when the first @from[i] pieces of each cell i are done: @to
 * takes how many are done then; returns the height. With @force at least a piece of each cell. */
double drawl_sheet_row_part (const DrawlSheetPen *pen, const DrawlSheetRow *row, const guint *from,
                             double room, gboolean force, guint *to);

/* Draws the pieces from @from up to @to, both NULL: all of them, with the top of the row at 0. */
void drawl_sheet_row_draw (const DrawlSheetPen *pen, const DrawlSheetRow *row, const guint *from,
                           const guint *to);
