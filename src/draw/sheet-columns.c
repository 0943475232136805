/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Columns side by side. Invariant: once placed, none over another, all within the sheet. */

#include "draw/sheet-columns.h"

#include "core/text.h"
#include "draw/sheet-type.h"

#define GAP 9.0
#define HEAD_GAP 18.0

void
drawl_sheet_columns_place (DrawlSheetColumn *columns, guint n, double width)
{
  double taken = 0, x = 0;
  guint shown = 0;

  for (guint i = 0; i < n; i++) {
    taken += columns[i].hidden ? 0 : columns[i].width;
    shown += columns[i].hidden ? 0 : 1;
  }
  for (guint i = 0; i < n; i++) {
    if (columns[i].hidden)
      continue;
    if (columns[i].width <= 0)
      columns[i].width = width - taken - (shown - 1) * GAP;
    columns[i].x = x;
    x += columns[i].width + GAP;
  }
}

void
drawl_sheet_columns_add_head (DrawlSheetFlow *flow, const DrawlSheetColumn *columns, guint n)
{
  drawl_sheet_flow_block (flow, DRAWL_SHEET_HEAD);
  drawl_sheet_flow_row (flow, HEAD_GAP, DRAWL_SHEET_STRONG_RULE);
  for (guint i = 0; i < n; i++) {
    DrawlSheetFont font = drawl_sheet_label;

    font.align = columns[i].align;
    if (!columns[i].hidden)
      drawl_sheet_flow_plain (flow, columns[i].x, columns[i].width, &font, _ (columns[i].label));
  }
}

void
drawl_sheet_columns_add_cell (DrawlSheetFlow *flow, const DrawlSheetColumn *column, gboolean bold,
                              const char *text)
{
  DrawlSheetFont font = bold ? drawl_sheet_strong : drawl_sheet_plain;

  font.align = column->align;
  if (!column->hidden)
    drawl_sheet_flow_plain (flow, column->x, column->width, &font, text);
}
