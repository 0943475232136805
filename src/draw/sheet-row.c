/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A row, measured and drawn. Invariant: a line of text is on one page, and every cell begins at the
 * top of its part. Lines stand by the direction of the page, whatever direction their words have.
 * Lengths in points. */

#include "draw/sheet-row.h"

#define TALL 300.0 /* points: texts below are laid out again when they are drawn */
#define TO_POINTS(units) ((double)(units) / PANGO_SCALE)

static void
cell_clear (gpointer data)
{
  DrawlSheetCell *cell = data;

  g_free (cell->markup);
  g_clear_object (&cell->layout);
  if (cell->free_data != NULL)
    cell->free_data (cell->data);
}

DrawlSheetRow *
drawl_sheet_row_new (double gap, DrawlSheetRule rule)
{
  DrawlSheetRow *row = g_new0 (DrawlSheetRow, 1);

  row->gap = gap;
  row->rule = rule;
  row->cells = g_array_new (FALSE, TRUE, sizeof (DrawlSheetCell));
  g_array_set_clear_func (row->cells, cell_clear);
  return row;
}

void
drawl_sheet_row_free (DrawlSheetRow *row)
{
  g_array_unref (row->cells);
  g_free (row);
}

PangoLayout *
drawl_sheet_pen_layout (const DrawlSheetPen *pen, const DrawlSheetFont *font, double width,
                        const char *markup)
{
  DrawlTextStyle text_style = {.size = font->size, .bold = font->bold, .max_width = width};
  PangoLayout *layout = drawl_text_flow (pen->cr, pen->style, &text_style, markup);

  pango_layout_set_auto_dir (layout, !font->ours);
  return layout;
}

static const DrawlSheetCell *
cell_at (const DrawlSheetRow *row, guint i)
{
  return &g_array_index (row->cells, DrawlSheetCell, i);
}

static PangoLayout *
layout_of (const DrawlSheetPen *pen, const DrawlSheetCell *cell)
{
  return cell->layout != NULL
             ? cell->layout
             : drawl_sheet_pen_layout (pen, &cell->font, cell->width, cell->markup);
}

/* ---- Measuring ---- */

/* Lines from @from on that go into @room. */
static double
lines_in (PangoLayout *layout, guint from, double room, gboolean force, guint *to)
{
  PangoLayoutIter *iter = pango_layout_get_iter (layout);
  int first = 0, bottom = 0;
  guint line = 0;

  do {
    int y0, y1;

    pango_layout_iter_get_line_yrange (iter, &y0, &y1);
    if (line == from)
      first = bottom = y0;
    if (line >= from && TO_POINTS (y1 - first) > room && !(force && line == from))
      break;
    if (line >= from)
      bottom = y1;
    line++;
  } while (pango_layout_iter_next_line (iter));
  pango_layout_iter_free (iter);
  *to = MAX (line, from);
  return TO_POINTS (bottom - first);
}

static double
cell_part (const DrawlSheetPen *pen, const DrawlSheetCell *cell, guint from, double room,
           gboolean force, guint *to)
{
  if (cell->markup != NULL) {
    PangoLayout *layout = layout_of (pen, cell);
    double height = lines_in (layout, from, room - cell->font.drop, force, to);

    return *to > from ? height + cell->font.drop : 0;
  }
  *to = from > 0 || force || cell->height <= room ? 1 : 0;
  return *to > from ? cell->height + cell->font.drop : 0;
}

double
drawl_sheet_row_part (const DrawlSheetPen *pen, const DrawlSheetRow *row, const guint *from,
                      double room, gboolean force, guint *to)
{
  double height = 0;

  for (guint i = 0; i < row->cells->len; i++) {
    double part = cell_part (pen, cell_at (row, i), from[i], room, force, &to[i]);

    height = MAX (height, part);
  }
  return height;
}

void
drawl_sheet_row_measure (const DrawlSheetPen *pen, DrawlSheetRow *row)
{
  row->height = 0;
  for (guint i = 0; i < row->cells->len; i++) {
    guint all;
    DrawlSheetCell *cell = &g_array_index (row->cells, DrawlSheetCell, i);
    double height = cell_part (pen, cell, 0, G_MAXDOUBLE, FALSE, &all);

    if (cell->markup != NULL && height > TALL)
      cell->layout = pango_layout_copy (layout_of (pen, cell));
    row->height = MAX (row->height, height);
  }
}

/* ---- Drawing ---- */

/* Where a line of @width begins, from the left of its cell. */
static double
line_x (const DrawlSheetPen *pen, const DrawlSheetCell *cell, double width)
{
  gboolean left = cell->font.align == (pen->style->rtl ? DRAWL_ALIGN_END : DRAWL_ALIGN_START);

  if (cell->font.align == DRAWL_ALIGN_MIDDLE)
    return (cell->width - width) / 2;
  return left ? 0 : cell->width - width;
}

static void
draw_text (const DrawlSheetPen *pen, const DrawlSheetCell *cell, guint from, guint to)
{
  PangoLayout *layout = layout_of (pen, cell);
  PangoLayoutIter *iter = pango_layout_get_iter (layout);
  int first = 0;
  guint line = 0;

  drawl_style_set_colour (pen->cr, cell->font.dim ? pen->style->dim : pen->style->ink);
  do {
    PangoRectangle logical;
    int y0;

    pango_layout_iter_get_line_yrange (iter, &y0, NULL);
    if (line == from)
      first = y0;
    if (line >= from && line < to) {
      pango_layout_iter_get_line_extents (iter, NULL, &logical);
      cairo_move_to (pen->cr, line_x (pen, cell, TO_POINTS (logical.width)),
                     cell->font.drop + TO_POINTS (pango_layout_iter_get_baseline (iter) - first));
      pango_cairo_show_layout_line (pen->cr, pango_layout_iter_get_line_readonly (iter));
    }
    line++;
  } while (line < to && pango_layout_iter_next_line (iter));
  pango_layout_iter_free (iter);
}

static void
draw_cell (const DrawlSheetPen *pen, const DrawlSheetCell *cell, guint from, guint to)
{
  double x = pen->style->rtl ? pen->width - cell->x - cell->width : cell->x;

  if (to <= from)
    return;
  cairo_save (pen->cr);
  cairo_translate (pen->cr, x, 0);
  if (cell->markup != NULL) {
    draw_text (pen, cell, from, to);
  } else {
    cairo_translate (pen->cr, 0, cell->font.drop);
    cell->draw (pen->cr, pen->style, cell->width, cell->height, cell->data);
  }
  cairo_restore (pen->cr);
}

void
drawl_sheet_row_draw (const DrawlSheetPen *pen, const DrawlSheetRow *row, const guint *from,
                      const guint *to)
{
  for (guint i = 0; i < row->cells->len; i++)
    draw_cell (pen, cell_at (row, i), from != NULL ? from[i] : 0, to != NULL ? to[i] : G_MAXUINT);
}
