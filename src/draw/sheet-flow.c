/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Blocks, rows and cells as they are said, and the pages that they fall on. Invariant: rows stand
 * in the order in which they were said, none over another, and all within the height of their page.
 * Lengths in points. */

#include "draw/sheet-row.h"

#define SLACK 0.01        /* of a point: what rounding may add up to */
#define STARTS_WITHIN 3.0 /* a block taller than a page starts where a page's third is left */
#define UNCUT_WITHIN 4.0  /* a row of it that is lower than a page's fourth is not cut */
#define HEAD_WITHIN 4.0   /* a head that is higher than a page's fourth is not said again */
#define BELOW_HEAD 3.0
#define LEFT_TO_RIGHT "\u200e" /* a sign that is not seen and sets the direction */
#define RULE_WIDTH 0.4
#define STRONG_RULE_WIDTH 1.2

typedef struct {
  DrawlSheetBlockKind kind;
  guint first, end; /* rows */
  char *name;       /* or NULL */
} Block;

/* A row on a page, or a part of one. */
typedef struct {
  guint row;
  double y;
  double rule_y; /* below 0: none */
  guint part;    /* index of its pieces in `pieces`; WHOLE: all */
} Place;

#define WHOLE G_MAXUINT

struct _DrawlSheetFlow {
  DrawlSheetPen pen; /* measures */
  GArray *blocks;    /* of Block */
  GPtrArray *rows;   /* of DrawlSheetRow */
  GArray *places;    /* of Place, page by page */
  GArray *pieces;    /* guint: of each part, the first piece of each cell, then the end of each */
  GArray *pages;     /* guint: the first place of each page */
};

static void
block_clear (gpointer data)
{
  g_free (((Block *)data)->name);
}

DrawlSheetFlow *
drawl_sheet_flow_new (const DrawlStyle *style, double width)
{
  DrawlSheetFlow *flow = g_new0 (DrawlSheetFlow, 1);
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);

  flow->pen = (DrawlSheetPen){cairo_create (surface), style, width};
  cairo_surface_destroy (surface);
  flow->blocks = g_array_new (FALSE, FALSE, sizeof (Block));
  g_array_set_clear_func (flow->blocks, block_clear);
  flow->rows = g_ptr_array_new_with_free_func ((GDestroyNotify)drawl_sheet_row_free);
  flow->places = g_array_new (FALSE, FALSE, sizeof (Place));
  flow->pieces = g_array_new (FALSE, FALSE, sizeof (guint));
  flow->pages = g_array_new (FALSE, FALSE, sizeof (guint));
  return flow;
}

void
drawl_sheet_flow_free (DrawlSheetFlow *flow)
{
  cairo_destroy (flow->pen.cr);
  g_array_unref (flow->blocks);
  g_ptr_array_unref (flow->rows);
  g_array_unref (flow->places);
  g_array_unref (flow->pieces);
  g_array_unref (flow->pages);
  g_free (flow);
}

double
drawl_sheet_flow_width (const DrawlSheetFlow *flow)
{
  return flow->pen.width;
}

double
drawl_sheet_flow_measure (DrawlSheetFlow *flow, const DrawlSheetFont *font, const char *markup)
{
  PangoRectangle logical;
  PangoLayout *layout = drawl_sheet_pen_layout (&flow->pen, font, 0, markup);

  pango_layout_set_width (layout, -1);
  pango_layout_get_extents (layout, NULL, &logical);
  return (double)logical.width / PANGO_SCALE;
}

/* ---- Saying ---- */

void
drawl_sheet_flow_block (DrawlSheetFlow *flow, DrawlSheetBlockKind kind)
{
  Block block = {kind, flow->rows->len, flow->rows->len, NULL};

  g_array_append_val (flow->blocks, block);
}

void
drawl_sheet_flow_name (DrawlSheetFlow *flow, const char *name)
{
  Block *block = &g_array_index (flow->blocks, Block, flow->blocks->len - 1);

  g_free (block->name);
  block->name = g_strdup (name);
}

void
drawl_sheet_flow_row (DrawlSheetFlow *flow, double gap, DrawlSheetRule rule)
{
  g_ptr_array_add (flow->rows, drawl_sheet_row_new (gap, rule));
  g_array_index (flow->blocks, Block, flow->blocks->len - 1).end = flow->rows->len;
}

static void
add_cell (DrawlSheetFlow *flow, DrawlSheetCell cell)
{
  DrawlSheetRow *row = g_ptr_array_index (flow->rows, flow->rows->len - 1);

  g_array_append_val (row->cells, cell);
}

void
drawl_sheet_flow_text (DrawlSheetFlow *flow, double x, double width, const DrawlSheetFont *font,
                       const char *markup)
{
  if (*markup != '\0')
    add_cell (flow,
              (DrawlSheetCell){.x = x, .width = width, .font = *font, .markup = g_strdup (markup)});
}

static gboolean
has_letters (const char *text)
{
  for (; *text != '\0'; text = g_utf8_next_char (text))
    if (g_unichar_isalpha (g_utf8_get_char (text)))
      return TRUE;
  return FALSE;
}

/* Figures without a word run from left to right on every page: 1920 × 1080 is not 1080 × 1920. */
void
drawl_sheet_flow_plain (DrawlSheetFlow *flow, double x, double width, const DrawlSheetFont *font,
                        const char *text)
{
  g_autofree char *escaped = g_markup_escape_text (text, -1);
  g_autofree char *markup =
      *text != '\0' && !has_letters (text) ? g_strconcat (LEFT_TO_RIGHT, escaped, NULL) : NULL;

  drawl_sheet_flow_text (flow, x, width, font, markup != NULL ? markup : escaped);
}

void
drawl_sheet_flow_picture (DrawlSheetFlow *flow, double x, double width, double height,
                          DrawlSheetPicture draw, gpointer data, GDestroyNotify free_data)
{
  add_cell (flow, (DrawlSheetCell){.x = x,
                                   .width = width,
                                   .height = height,
                                   .draw = draw,
                                   .data = data,
                                   .free_data = free_data});
}

/* ---- Falling on pages ---- */

typedef struct {
  DrawlSheetFlow *flow;
  double first_height, height;
  double y;   /* of what comes next */
  double top; /* of what comes after a head that was said again */
  int head;   /* block, or -1 */
} Pager;

static DrawlSheetRow *
row_at (const DrawlSheetFlow *flow, guint i)
{
  return g_ptr_array_index (flow->rows, i);
}

static double
page_height (const Pager *pager)
{
  return pager->flow->pages->len == 1 ? pager->first_height : pager->height;
}

static double
room_left (const Pager *pager)
{
  return page_height (pager) - pager->y + SLACK;
}

static gboolean
below_head (const Pager *pager, const DrawlSheetRow *row)
{
  return row->rule == DRAWL_SHEET_RULE_BETWEEN && pager->y <= pager->top;
}

static double
gap_above (const Pager *pager, guint i)
{
  const DrawlSheetRow *row = row_at (pager->flow, i);

  if (pager->y <= 0)
    return 0;
  return below_head (pager, row) ? MIN (row->gap, BELOW_HEAD) : row->gap;
}

/* Of all rows, with the gaps between them. */
static double
block_height (const DrawlSheetFlow *flow, const Block *block)
{
  double height = 0;

  for (guint i = block->first; i < block->end; i++)
    height += row_at (flow, i)->height + (i > block->first ? row_at (flow, i)->gap : 0);
  return height;
}

static void
place (Pager *pager, guint row, guint part, double height)
{
  double gap = gap_above (pager, row);
  const DrawlSheetRow *of = row_at (pager->flow, row);
  gboolean ruled = gap > 0 && of->rule != DRAWL_SHEET_NO_RULE && !below_head (pager, of);
  Place at = {row, pager->y + gap, ruled ? pager->y + gap / 2 : -1, part};

  g_array_append_val (pager->flow->places, at);
  pager->y += gap + height;
}

static void
place_whole (Pager *pager, const Block *block)
{
  for (guint i = block->first; i < block->end; i++)
    place (pager, i, WHOLE, row_at (pager->flow, i)->height);
}

static void
begin_page (Pager *pager)
{
  g_array_append_val (pager->flow->pages, pager->flow->places->len);
  pager->y = 0;
  if (pager->head >= 0)
    place_whole (pager, &g_array_index (pager->flow->blocks, Block, pager->head));
  pager->top = pager->y;
}

/* What of the row, from @pieces on, goes onto the rest of the page; TRUE when that is all of it. */
static gboolean
place_part (Pager *pager, guint row, guint *pieces)
{
  DrawlSheetFlow *flow = pager->flow;
  const DrawlSheetRow *cells = row_at (flow, row);
  guint n = cells->cells->len, part = flow->pieces->len;
  double room = room_left (pager) - gap_above (pager, row);
  gboolean fresh = pager->y <= pager->top;

  g_array_append_vals (flow->pieces, pieces, n);
  double height = drawl_sheet_row_part (&flow->pen, cells, pieces, room, fresh, pieces);
  g_array_append_vals (flow->pieces, pieces, n);
  if (height > 0)
    place (pager, row, part, height);

  g_autofree guint *rest = g_new0 (guint, n);
  return drawl_sheet_row_part (&flow->pen, cells, pieces, G_MAXDOUBLE, FALSE, rest) <= 0;
}

/* Row by row; a row that is a good part of a page itself is cut where the page ends. */
static void
place_in_parts (Pager *pager, const Block *block)
{
  for (guint i = block->first; i < block->end; i++) {
    const DrawlSheetRow *row = row_at (pager->flow, i);
    g_autofree guint *pieces = g_new0 (guint, MAX (row->cells->len, 1));
    gboolean fits = gap_above (pager, i) + row->height <= room_left (pager);

    if (!fits && row->height <= pager->height / UNCUT_WITHIN && pager->y > pager->top) {
      begin_page (pager);
      fits = TRUE;
    }
    if (fits)
      place (pager, i, WHOLE, row->height);
    else
      while (!place_part (pager, i, pieces))
        begin_page (pager);
  }
}

/* Height of a block with those that it must stay with. */
static double
height_with_next (const DrawlSheetFlow *flow, guint i)
{
  double height = 0;

  for (; i < flow->blocks->len; i++) {
    const Block *block = &g_array_index (flow->blocks, Block, i);

    height += block_height (flow, block);
    if ((block->kind != DRAWL_SHEET_TITLE && block->kind != DRAWL_SHEET_HEAD) ||
        i + 1 == flow->blocks->len)
      break;
    const Block *next = block + 1;
    height += next->first < next->end ? row_at (flow, next->first)->gap : 0;
  }
  return height;
}

static void
place_block (Pager *pager, guint i)
{
  const Block *block = &g_array_index (pager->flow->blocks, Block, i);
  double needed = height_with_next (pager->flow, i);

  if (block->kind == DRAWL_SHEET_HEAD || block->kind == DRAWL_SHEET_END)
    pager->head = -1;
  if (block->first == block->end)
    return;
  if (gap_above (pager, block->first) + needed > room_left (pager) && pager->y > pager->top) {
    double head =
        pager->head < 0
            ? 0
            : block_height (pager->flow, &g_array_index (pager->flow->blocks, Block, pager->head));
    if (needed + head <= pager->height || room_left (pager) < pager->height / STARTS_WITHIN)
      begin_page (pager);
  }
  if (gap_above (pager, block->first) + block_height (pager->flow, block) <= room_left (pager))
    place_whole (pager, block);
  else
    place_in_parts (pager, block);
  if (block->kind == DRAWL_SHEET_HEAD &&
      block_height (pager->flow, block) <= pager->height / HEAD_WITHIN)
    pager->head = (int)i;
}

guint
drawl_sheet_flow_paginate (DrawlSheetFlow *flow, double first_height, double height)
{
  Pager pager = {flow, first_height, height, .head = -1};

  for (guint i = 0; i < flow->rows->len; i++)
    drawl_sheet_row_measure (&flow->pen, row_at (flow, i));
  begin_page (&pager);
  for (guint i = 0; i < flow->blocks->len; i++)
    place_block (&pager, i);
  return flow->pages->len;
}

/* ---- Drawing ---- */

static void
draw_rule (const DrawlSheetPen *pen, DrawlSheetRule rule, double y)
{
  gboolean strong = rule == DRAWL_SHEET_STRONG_RULE;

  cairo_move_to (pen->cr, 0, y);
  cairo_line_to (pen->cr, pen->width, y);
  cairo_set_line_width (pen->cr, strong ? STRONG_RULE_WIDTH : RULE_WIDTH);
  drawl_style_set_colour (pen->cr, strong ? pen->style->ink : pen->style->screen);
  cairo_stroke (pen->cr);
}

/* The places of a page end before this one. */
static guint
page_end (const DrawlSheetFlow *flow, guint page)
{
  return page + 1 < flow->pages->len ? g_array_index (flow->pages, guint, page + 1)
                                     : flow->places->len;
}

gboolean
drawl_sheet_flow_page_names (const DrawlSheetFlow *flow, guint page, const char **first,
                             const char **last)
{
  guint begin = g_array_index (flow->pages, guint, page), end = page_end (flow, page);

  *first = *last = NULL;
  for (guint i = 0; i < flow->blocks->len; i++) {
    const Block *block = &g_array_index (flow->blocks, Block, i);
    gboolean here = FALSE;

    for (guint at = begin; at < end && block->name != NULL && !here; at++) {
      guint row = g_array_index (flow->places, Place, at).row;
      here = row >= block->first && row < block->end;
    }
    if (here && *first == NULL)
      *first = block->name;
    if (here)
      *last = block->name;
  }
  return *first != NULL;
}

void
drawl_sheet_flow_draw (const DrawlSheetFlow *flow, cairo_t *cr, guint page)
{
  DrawlSheetPen pen = {cr, flow->pen.style, flow->pen.width};
  guint i = g_array_index (flow->pages, guint, page), end = page_end (flow, page);

  for (; i < end; i++) {
    const Place *at = &g_array_index (flow->places, Place, i);
    const DrawlSheetRow *row = row_at (flow, at->row);
    const guint *pieces = at->part == WHOLE ? NULL : &g_array_index (flow->pieces, guint, at->part);

    if (at->rule_y >= 0)
      draw_rule (&pen, row->rule, at->rule_y);
    cairo_save (cr);
    cairo_translate (cr, 0, at->y);
    drawl_sheet_row_draw (&pen, row, pieces, pieces != NULL ? pieces + row->cells->len : NULL);
    cairo_restore (cr);
  }
}
