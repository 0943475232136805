/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The words of the card picture in their places: a label above each card, and below them what the
 * marks mean. What has no room is left out, but for the marked shot, which is cut at last. Lengths
 * in points. */

#include "draw/cardstrip-scene.h"
#include "draw/cardstrip-words.h"
#include "draw/shape.h"
#include "draw/text.h"

#define SAMPLE_LINES 1.3 /* from the start of a sample to its words */

static double
width_of (const DrawlCardStripScene *strip, const DrawlTextStyle *text_style, const char *text)
{
  double width, height;

  drawl_text_measure (strip->cr, strip->style, text_style, text, &width, &height);
  return width;
}

static void
write_at (const DrawlCardStripScene *strip, const DrawlTextStyle *text_style, DrawlColour colour,
          double x, double y, const char *text)
{
  drawl_style_set_colour (strip->cr, colour);
  drawl_text_draw (strip->cr, strip->style, text_style, strip->style->rtl ? strip->width - x : x, y,
                   text);
}

/* "Card 1" above each, or where that is too wide for the last of them, all but numbers. */
static void
draw_labels (const DrawlCardStripScene *strip)
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
draw_sample (const DrawlCardStripScene *strip, Sample sample, double x, double y, double size)
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
    drawl_shape_hatch (cr, x + 1, y + 1, size - 2, size - 2, DRAWL_CARDSTRIP_HATCH - 1);
  }
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* A sample and what it means; returns where the next may begin. What has no room is left out, but
 * for the marked shot, which is cut. */
static double
draw_entry (const DrawlCardStripScene *strip, Sample sample, const DrawlTextStyle *text_style,
            DrawlColour colour, double x, double y, const char *text)
{
  double text_x = x + SAMPLE_LINES * strip->line,
         room = strip->width - DRAWL_CARDSTRIP_EDGE - text_x;
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
marked_words (const DrawlCardStripScene *strip, double room, gboolean *has_left)
{
  const DrawlCardStripData *data = strip->data;
  DrawlTextStyle strong = {.bold = TRUE};
  g_autofree char *takes = drawl_cardstrip_takes_words (data);
  g_autofree char *cards = drawl_cardstrip_cards_words (data, data->marked_cards);
  g_autofree char *all = g_strjoin (" · ", data->slate, takes, cards, data->left, NULL);
  g_autofree char *most = g_strjoin (" · ", data->slate, takes, cards, NULL);

  *has_left = data->left == NULL || width_of (strip, &strong, all) <= room;
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
draw_legend (const DrawlCardStripScene *strip, double x, double y)
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
draw_foot (const DrawlCardStripScene *strip)
{
  DrawlTextStyle strong = {.bold = TRUE},
                 plain = {.max_width = strip->width - DRAWL_CARDSTRIP_EDGE - strip->at.x};
  double x = strip->at.x, y = strip->at.foot_y;
  double room = strip->width - DRAWL_CARDSTRIP_EDGE - x - SAMPLE_LINES * strip->line;
  gboolean has_left;

  if (strip->at.foot_lines < 1)
    return;
  g_autofree char *marked = marked_words (strip, room, &has_left);
  draw_entry (strip, SAMPLE_MARKED, &strong, strip->style->ink, x, y, marked);
  if (strip->at.foot_lines < 2)
    return;
  y += strip->at.leading;
  if (has_left)
    draw_legend (strip, x, y);
  else
    write_at (strip, &plain, strip->style->ink, x, y, strip->data->left);
}

void
drawl_cardstrip_problem (const DrawlCardStripScene *strip)
{
  DrawlTextStyle plain = {.max_width = MAX (strip->width - 2 * strip->at.x, 1)};
  double x = strip->style->rtl ? strip->width - strip->at.x : strip->at.x;
  double height =
      drawl_text_paragraph_height (strip->cr, strip->style, &plain, 3, strip->data->problem);

  drawl_style_set_colour (strip->cr, strip->style->dim);
  drawl_text_paragraph_draw (strip->cr, strip->style, &plain, 3, x,
                             MAX ((strip->height - height) / 2, 0), strip->data->problem);
}

void
drawl_cardstrip_captions (const DrawlCardStripScene *strip)
{
  draw_labels (strip);
  draw_foot (strip);
}
