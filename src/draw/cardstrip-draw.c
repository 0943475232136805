/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The card picture, drawn. A marked take stands as high as its card and is outlined, the others are
 * lower: it is told apart without colour. What is kept empty is hatched. Lengths in points. */

#include "draw/cardstrip-scene.h"
#include "draw/shape.h"
#include "draw/text.h"

#include <math.h>

#define CORNER 5.0
#define INSET 3.0     /* between the rim of a card and what lies on it */
#define LOWER 0.16    /* the others stay so far from top and bottom, as a share of the height */
#define SEAM 1.0      /* left between takes that are wide enough */
#define SEAM_FROM 4.0 /* nothing narrower is told apart */
#define HATCH_LINES 7

/* ---- Cards ---- */

static void
fill (const DrawlCardStripScene *strip, DrawlColour colour)
{
  drawl_style_set_colour (strip->cr, colour);
  cairo_fill (strip->cr);
}

static cairo_rectangle_t
inside (const DrawlCardStripScene *strip, guint card)
{
  cairo_rectangle_t box = drawl_cardstrip_card (&strip->at, card);
  double inset = MIN (INSET, floor (box.height / 6));

  return (cairo_rectangle_t){box.x + inset, box.y + inset, box.width - 2 * inset,
                             box.height - 2 * inset};
}

/* All cards in three paths, which is quicker than each for itself. */
static void
draw_cards (const DrawlCardStripScene *strip)
{
  cairo_t *cr = strip->cr;
  double corner = CORNER - 0.5;

  for (guint card = 0; card < strip->at.cards; card++) {
    cairo_rectangle_t box = drawl_cardstrip_card (&strip->at, card);
    drawl_shape_box (cr, box.x, box.y, box.width, box.height, CORNER, CORNER);
  }
  fill (strip, strip->style->stretch);
  for (guint card = 0; card < strip->at.cards; card++) {
    cairo_rectangle_t in = inside (strip, card);
    double reserve = in.width * strip->data->reserve;

    if (reserve >= 1)
      drawl_shape_hatch (cr, in.x + in.width - reserve, in.y, reserve, in.height,
                         MAX (DRAWL_CARDSTRIP_HATCH, in.height / HATCH_LINES));
  }
  for (guint card = 0; card < strip->at.cards; card++) {
    cairo_rectangle_t box = drawl_cardstrip_card (&strip->at, card);
    drawl_shape_box (cr, box.x + 0.5, box.y + 0.5, box.width - 1, box.height - 1, corner, corner);
  }
  drawl_style_set_colour (cr, strip->style->screen);
  cairo_set_line_width (cr, 1);
  cairo_stroke (cr);
}

/* ---- Takes ---- */

static cairo_rectangle_t
block_box (const DrawlCardStripScene *strip, const DrawlCardBlock *block)
{
  cairo_rectangle_t in = inside (strip, block->card);
  double lower = block->marked ? 0 : round (in.height * LOWER);

  return (cairo_rectangle_t){in.x + block->from * in.width, in.y + lower,
                             (block->to - block->from) * in.width, in.height - 2 * lower};
}

static const DrawlCardBlock *
block_at (const DrawlCardStripScene *strip, guint i)
{
  return &g_array_index (strip->data->blocks, DrawlCardBlock, i);
}

/* Points of the blocks from @first up to @end. */
static double
run_width (const DrawlCardStripScene *strip, guint first, guint end)
{
  const DrawlCardBlock *start = block_at (strip, first);

  return (block_at (strip, end - 1)->to - start->from) * inside (strip, start->card).width;
}

/* The end of the blocks from @first that belong together: takes of one shot on one card, each too
 * narrow for a seam. */
static guint
shot_end (const DrawlCardStripScene *strip, guint first)
{
  const DrawlCardBlock *start = block_at (strip, first);
  guint end = first + 1;

  while (end < strip->data->blocks->len && block_at (strip, end)->shot == start->shot &&
         block_at (strip, end)->card == start->card &&
         MAX (run_width (strip, end - 1, end), run_width (strip, end, end + 1)) < SEAM_FROM)
    end++;
  return end;
}

/* The same, and the shots after it as long as each is too narrow to be told from its neighbours. */
static guint
run_end (const DrawlCardStripScene *strip, guint first)
{
  const DrawlCardBlock *start = block_at (strip, first);
  guint end = shot_end (strip, first), next;

  if (start->marked || run_width (strip, first, end) >= SEAM_FROM)
    return end;
  for (; end < strip->data->blocks->len; end = next) {
    next = shot_end (strip, end);
    if (block_at (strip, end)->card != start->card || block_at (strip, end)->marked ||
        run_width (strip, end, next) >= SEAM_FROM)
      break;
  }
  return end;
}

static void
add_run (const DrawlCardStripScene *strip, guint first, guint end, GArray *boxes)
{
  DrawlCardBlock run = *block_at (strip, first);

  run.to = block_at (strip, end - 1)->to;
  cairo_rectangle_t box = block_box (strip, &run);

  if (box.width < SEAM_FROM) { /* whole points, which many boxes in a row are quickest at */
    double x = round (box.x);
    box.width = MAX (round (box.x + box.width) - x, 1);
    box.x = x;
  } else {
    box.width -= SEAM;
  }
  g_array_append_val (boxes, box);
}

/* Paints the boxes of one colour as one path, which is quick, and takes them out. */
static void
paint_boxes (const DrawlCardStripScene *strip, GArray *boxes, DrawlColour colour)
{
  for (guint i = 0; i < boxes->len; i++) {
    const cairo_rectangle_t *box = &g_array_index (boxes, cairo_rectangle_t, i);

    cairo_rectangle (strip->cr, box->x, box->y, box->width, box->height);
  }
  fill (strip, colour);
  g_array_set_size (boxes, 0);
}

/* Shots take turns in two neutrals, so that one ends where the next begins; the marked one has the
 * accent. Cards are painted one by one: it is boxes side by side that make a path slow. */
static void
draw_takes (const DrawlCardStripScene *strip)
{
  const DrawlStyle *style = strip->style;
  const DrawlColour colours[] = {style->real, style->screen, style->accent};
  GArray *boxes[G_N_ELEMENTS (colours)];
  guint turn = 0, shot = G_MAXUINT, n_blocks = strip->data->blocks->len;

  for (guint look = 0; look < G_N_ELEMENTS (boxes); look++)
    boxes[look] = g_array_new (FALSE, FALSE, sizeof (cairo_rectangle_t));
  for (guint i = 0, end; i < n_blocks && block_at (strip, i)->card < strip->at.cards; i = end) {
    const DrawlCardBlock *block = block_at (strip, i);

    end = run_end (strip, i);
    if (block->shot != shot && !block->marked)
      turn = 1 - turn;
    shot = block->shot;
    add_run (strip, i, end, boxes[block->marked ? 2 : turn]);
    for (guint look = 0; look < G_N_ELEMENTS (boxes); look++)
      if (end == n_blocks || block_at (strip, end)->card != block->card)
        paint_boxes (strip, boxes[look], colours[look]);
  }
  for (guint look = 0; look < G_N_ELEMENTS (boxes); look++)
    g_array_unref (boxes[look]);
}

/* Around the marked takes of each card. */
static void
draw_outlines (const DrawlCardStripScene *strip)
{
  guint len = strip->data->blocks->len;

  cairo_set_line_width (strip->cr, 1.5);
  drawl_style_set_colour (strip->cr, strip->style->ink);
  for (guint i = 0; i < len;) {
    DrawlCardBlock run = *block_at (strip, i++);

    if (!run.marked || run.card >= strip->at.cards)
      continue;
    while (i < len && block_at (strip, i)->marked && block_at (strip, i)->card == run.card)
      run.to = block_at (strip, i++)->to;
    cairo_rectangle_t box = block_box (strip, &run);
    drawl_shape_box (strip->cr, box.x - 0.75, box.y - 0.75, MAX (box.width + 0.5, 2),
                     box.height + 1.5, 2, 2);
    cairo_stroke (strip->cr);
  }
}

/* ---- The picture ---- */

void
drawl_cardstrip_draw (cairo_t *cr, const DrawlCardStripData *data, const DrawlStyle *style,
                      double width, double height)
{
  DrawlCardStripScene strip = {cr, data, style, width, height, drawl_text_height (cr, style)};

  drawl_cardstrip_layout (data->cards, width, height, strip.line, FALSE, &strip.at);
  if (style->ground.alpha > 0) {
    cairo_rectangle (cr, 0, 0, width, height);
    fill (&strip, style->ground);
  }
  if (data->problem != NULL) {
    drawl_cardstrip_problem (&strip);
    return;
  }
  cairo_save (cr);
  if (style->rtl)
    cairo_transform (cr, &(cairo_matrix_t){-1, 0, 0, 1, width, 0});
  cairo_set_antialias (cr, CAIRO_ANTIALIAS_FAST); /* hatching is most of the work */
  draw_cards (&strip);
  cairo_set_antialias (cr,
                       CAIRO_ANTIALIAS_NONE); /* upright edges are crisper without, and quicker */
  draw_takes (&strip);
  cairo_set_antialias (cr, CAIRO_ANTIALIAS_DEFAULT);
  draw_outlines (&strip);
  cairo_restore (cr);
  drawl_cardstrip_captions (&strip);
}
