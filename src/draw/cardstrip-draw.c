/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The card picture, drawn. A marked take stands as high as its card and is outlined, the others are
 * lower: it is told apart without colour. What is kept empty is hatched. Lengths in points. */

#include "draw/cardstrip-words.h"
#include "draw/shape.h"
#include "draw/text.h"

#include "core/text.h"

#define EDGE 3.0
#define CORNER 5.0
#define INSET 3.0  /* between the rim of a card and what lies on it */
#define LOWER 0.16 /* the others stay so far from top and bottom, as a share of the height */
#define SEAM 1.0   /* left between takes that are wide enough */
#define SEAM_FROM 4.0
#define HATCH 5.0
#define SAMPLE_LINES 1.3 /* from the start of a sample to its words */

typedef struct {
  cairo_t *cr;
  const DrawlCardStripData *data;
  const DrawlStyle *style;
  double width, height, line;
  DrawlCardStripLayout at; /* left to right */
} Strip;

/* ---- Cards ---- */

static void
fill (const Strip *strip, DrawlColour colour)
{
  drawl_style_set_colour (strip->cr, colour);
  cairo_fill (strip->cr);
}

static cairo_rectangle_t
inside (const Strip *strip, guint card)
{
  cairo_rectangle_t box = drawl_cardstrip_card (&strip->at, card);
  double inset = MIN (INSET, box.height / 6);

  return (cairo_rectangle_t){box.x + inset, box.y + inset, box.width - 2 * inset,
                             box.height - 2 * inset};
}

static void
draw_card (const Strip *strip, guint card)
{
  cairo_rectangle_t box = drawl_cardstrip_card (&strip->at, card), in = inside (strip, card);
  double reserve = in.width * strip->data->reserve;

  drawl_shape_box (strip->cr, box.x, box.y, box.width, box.height, CORNER, CORNER);
  fill (strip, strip->style->stretch);
  if (reserve >= 1) {
    drawl_shape_hatch (strip->cr, in.x + in.width - reserve, in.y, reserve, in.height, HATCH);
    cairo_set_line_width (strip->cr, 1);
    drawl_style_set_colour (strip->cr, strip->style->screen);
    cairo_stroke (strip->cr);
  }
  drawl_shape_box (strip->cr, box.x + 0.5, box.y + 0.5, box.width - 1, box.height - 1, CORNER - 0.5,
                   CORNER - 0.5);
  drawl_style_set_colour (strip->cr, strip->style->screen);
  cairo_set_line_width (strip->cr, 1);
  cairo_stroke (strip->cr);
}

/* ---- Takes ---- */

static cairo_rectangle_t
block_box (const Strip *strip, const DrawlCardBlock *block)
{
  cairo_rectangle_t in = inside (strip, block->card);
  double lower = block->marked ? 0 : in.height * LOWER;

  return (cairo_rectangle_t){in.x + block->from * in.width, in.y + lower,
                             (block->to - block->from) * in.width, in.height - 2 * lower};
}

/* Shots take turns in two neutrals, so that one ends where the next begins. */
static DrawlColour
block_colour (const Strip *strip, const DrawlCardBlock *block, guint turn)
{
  if (block->marked)
    return strip->style->accent;
  return turn % 2 == 0 ? strip->style->real : strip->style->screen;
}

static const DrawlCardBlock *
block_at (const Strip *strip, guint i)
{
  return &g_array_index (strip->data->blocks, DrawlCardBlock, i);
}

/* The blocks from @first that are painted as one: of one shot on one card, each too narrow for a
 * seam, or so close that they share a point. */
static guint
run_end (const Strip *strip, guint first)
{
  const DrawlCardBlock *start = block_at (strip, first);
  double scale = inside (strip, start->card).width;
  guint end = first + 1;

  for (; end < strip->data->blocks->len; end++) {
    const DrawlCardBlock *next = block_at (strip, end);
    gboolean together = next->shot == start->shot
                            ? (next->to - next->from) * scale < SEAM_FROM
                            : (next->to - start->from) * scale < 1 && !start->marked;

    if (next->card != start->card || next->marked != start->marked || !together)
      break;
  }
  return end;
}

static void
draw_run (const Strip *strip, guint first, guint end, guint turn)
{
  const DrawlCardBlock *block = block_at (strip, first);
  DrawlCardBlock run = *block;

  run.to = block_at (strip, end - 1)->to;
  cairo_rectangle_t box = block_box (strip, &run);
  double seam = box.width >= SEAM_FROM ? SEAM : 0;
  double width = MAX (box.width - seam, 0.75);

  drawl_shape_box (strip->cr, box.x, box.y, width, box.height, 1.5, 1.5);
  fill (strip, block_colour (strip, block, turn));
}

static void
draw_takes (const Strip *strip)
{
  guint turn = 0, shot = G_MAXUINT;

  for (guint i = 0; i < strip->data->blocks->len;) {
    const DrawlCardBlock *block = block_at (strip, i);
    guint end = run_end (strip, i);

    if (block->card >= strip->at.cards)
      break;
    if (block->shot != shot && !block->marked)
      turn++;
    shot = block->shot;
    draw_run (strip, i, end, turn);
    i = end;
  }
}

/* Around the marked takes of each card. */
static void
draw_outlines (const Strip *strip)
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

/* ---- Words ---- */

static double
width_of (const Strip *strip, const DrawlTextStyle *text_style, const char *text)
{
  double width, height;

  drawl_text_measure (strip->cr, strip->style, text_style, text, &width, &height);
  return width;
}

static void
write_at (const Strip *strip, const DrawlTextStyle *text_style, DrawlColour colour, double x,
          double y, const char *text)
{
  drawl_style_set_colour (strip->cr, colour);
  drawl_text_draw (strip->cr, strip->style, text_style, strip->style->rtl ? strip->width - x : x, y,
                   text);
}

/* "Card 1" above each, or where that is too wide for the last of them, all but numbers. */
static void
draw_labels (const Strip *strip)
{
  g_autofree char *widest = drawl_cardstrip_card_words (strip->data, strip->at.cards - 1);
  DrawlTextStyle plain = {.max_width = strip->at.card_width};
  gboolean words = width_of (strip, &(DrawlTextStyle){0}, widest) <= plain.max_width;

  for (guint card = 0; strip->at.labels && card < strip->at.cards; card++) {
    cairo_rectangle_t box = drawl_cardstrip_card (&strip->at, card);
    g_autofree char *label =
        words ? drawl_cardstrip_card_words (strip->data, card) : g_strdup_printf ("%u", card + 1);

    write_at (strip, &plain, strip->style->dim, box.x, box.y - 1.25 * strip->line, label);
  }
}

typedef enum { SAMPLE_MARKED, SAMPLE_OTHERS, SAMPLE_RESERVE } Sample;

/* A small box drawn as that is drawn. */
static void
draw_sample (const Strip *strip, Sample sample, double x, double y, double size)
{
  cairo_t *cr = strip->cr;
  const DrawlStyle *style = strip->style;

  cairo_save (cr);
  if (style->rtl)
    cairo_transform (cr, &(cairo_matrix_t){-1, 0, 0, 1, strip->width, 0});
  cairo_set_line_width (cr, sample == SAMPLE_MARKED ? 1.5 : 1);
  drawl_shape_box (cr, x + 0.75, y + 0.75, size - 1.5, size - 1.5, 2, 2);
  if (sample == SAMPLE_MARKED) {
    drawl_style_set_colour (cr, style->accent);
    cairo_fill_preserve (cr);
    drawl_style_set_colour (cr, style->ink);
  } else if (sample == SAMPLE_OTHERS) {
    drawl_style_set_colour (cr, style->real);
    cairo_fill_preserve (cr);
  } else {
    drawl_style_set_colour (cr, style->stretch);
    cairo_fill_preserve (cr);
    drawl_style_set_colour (cr, style->screen);
    drawl_shape_hatch (cr, x + 1, y + 1, size - 2, size - 2, HATCH - 1);
  }
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* A sample and what it means; returns where the next may begin. What has no room is left out, but
 * for the marked shot, which is cut. */
static double
draw_entry (const Strip *strip, Sample sample, const DrawlTextStyle *text_style, DrawlColour colour,
            double x, double y, const char *text)
{
  double text_x = x + SAMPLE_LINES * strip->line, room = strip->width - EDGE - text_x;
  DrawlTextStyle fitted = *text_style;

  if (sample != SAMPLE_MARKED && width_of (strip, text_style, text) > room)
    return x;
  fitted.max_width = room;
  draw_sample (strip, sample, x, y + 0.1 * strip->line, 0.8 * strip->line);
  write_at (strip, &fitted, colour, text_x, y, text);
  return text_x + width_of (strip, &fitted, text) + 1.4 * strip->line;
}

/* The marked shot in one line. What is left on its last card comes on a line of its own where room
 * is short. */
static char *
marked_words (const Strip *strip, double room, gboolean *has_left)
{
  const DrawlCardStripData *data = strip->data;
  DrawlTextStyle strong = {.bold = TRUE};
  g_autofree char *takes = drawl_cardstrip_takes_words (data);
  g_autofree char *cards = drawl_cardstrip_cards_words (data, data->marked_cards);
  g_autofree char *all = g_strjoin (" · ", data->slate, takes, cards, data->left, NULL);
  g_autofree char *most = g_strjoin (" · ", data->slate, takes, cards, NULL);

  *has_left = width_of (strip, &strong, all) <= room;
  if (*has_left)
    return g_steal_pointer (&all);
  if (width_of (strip, &strong, most) <= room)
    return g_steal_pointer (&most);
  return g_strjoin (" · ", data->slate, takes, NULL);
}

static gboolean
has_others (const DrawlCardStripData *data)
{
  for (guint i = 0; i < data->blocks->len; i++)
    if (!g_array_index (data->blocks, DrawlCardBlock, i).marked)
      return TRUE;
  return FALSE;
}

/* What the other samples mean. */
static void
draw_legend (const Strip *strip, double x, double y)
{
  DrawlTextStyle plain = {0};
  DrawlColour dim = strip->style->dim;
  g_autofree char *reserve = drawl_cardstrip_reserve_words (strip->data);

  if (has_others (strip->data)) {
    g_autofree char *others = drawl_cardstrip_others_words (strip->data);

    x = draw_entry (strip, SAMPLE_OTHERS, &plain, dim, x, y, others);
  }
  if (reserve != NULL)
    draw_entry (strip, SAMPLE_RESERVE, &plain, dim, x, y, reserve);
}

static void
draw_foot (const Strip *strip)
{
  DrawlTextStyle strong = {.bold = TRUE}, plain = {.max_width = strip->width - EDGE - strip->at.x};
  double x = strip->at.x, y = strip->at.foot_y;
  double room = strip->width - EDGE - x - SAMPLE_LINES * strip->line;
  gboolean has_left;

  if (strip->height < 6 * strip->line)
    return;
  g_autofree char *marked = marked_words (strip, room, &has_left);
  draw_entry (strip, SAMPLE_MARKED, &strong, strip->style->ink, x, y, marked);
  y += 1.6 * strip->line;
  if (has_left)
    draw_legend (strip, x, y);
  else
    write_at (strip, &plain, strip->style->ink, x, y, strip->data->left);
}

static void
draw_problem (const Strip *strip)
{
  DrawlTextStyle plain = {.max_width = MAX (strip->width - 2 * strip->at.x, 1)};
  double x = strip->style->rtl ? strip->width - strip->at.x : strip->at.x;
  double height =
      drawl_text_paragraph_height (strip->cr, strip->style, &plain, 3, strip->data->problem);

  drawl_style_set_colour (strip->cr, strip->style->dim);
  drawl_text_paragraph_draw (strip->cr, strip->style, &plain, 3, x,
                             MAX ((strip->height - height) / 2, 0), strip->data->problem);
}

/* ---- The picture ---- */

void
drawl_cardstrip_draw (cairo_t *cr, const DrawlCardStripData *data, const DrawlStyle *style,
                      double width, double height)
{
  Strip strip = {cr, data, style, width, height, drawl_text_height (cr, style)};

  drawl_cardstrip_layout (data->cards, width, height, strip.line, FALSE, &strip.at);
  if (style->ground.alpha > 0) {
    cairo_rectangle (cr, 0, 0, width, height);
    fill (&strip, style->ground);
  }
  if (data->problem != NULL) {
    draw_problem (&strip);
    return;
  }
  cairo_save (cr);
  if (style->rtl)
    cairo_transform (cr, &(cairo_matrix_t){-1, 0, 0, 1, width, 0});
  for (guint card = 0; card < strip.at.cards; card++)
    draw_card (&strip, card);
  draw_takes (&strip);
  draw_outlines (&strip);
  cairo_restore (cr);
  draw_labels (&strip);
  draw_foot (&strip);
}
