/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlSheetColumn: a column of a table on a sheet. One column, of width 0, takes what the others
 * leave. */

#include "draw/sheet-flow.h"

typedef struct {
  const char *label; /* at its head, marked for translation */
  double width;      /* points */
  DrawlAlign align;
  gboolean hidden;
  double x; /* set by drawl_sheet_columns_place() */
} DrawlSheetColumn;

void drawl_sheet_columns_place (DrawlSheetColumn *columns, guint n, double width);
/* The row of labels, in a block that each page repeats. */
void drawl_sheet_columns_add_head (DrawlSheetFlow *flow, const DrawlSheetColumn *columns, guint n);
/* A cell of the row that is being said. */
void drawl_sheet_columns_add_cell (DrawlSheetFlow *flow, const DrawlSheetColumn *column,
                                   gboolean bold, const char *text);
