/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What sheets are set in. Lengths in points. */

#include "draw/sheet-type.h"

#include "core/text.h"
#include "plan/figure.h"

#include <math.h>

#define MARK_SIZE 1.05 /* of the type beside it */
#define MARK_DROP 0.12 /* from the top of its line */
#define SUMMARY_GAP 20.0

/* ---- Marks ---- */

static double
mark_size (const DrawlSheetFont *font)
{
  return MARK_SIZE * font->size;
}

static void
draw_mark (cairo_t *cr, const DrawlStyle *style, double width, double height, gconstpointer data)
{
  drawl_style_set_colour (cr, style->ink);
  cairo_translate (cr, 0, height - width);
  drawl_mark_draw (cr, GPOINTER_TO_INT (data), width);
}

void
drawl_sheet_add_mark (DrawlSheetFlow *flow, double x, const DrawlSheetFont *font, DrawlMark mark)
{
  double size = mark_size (font);

  drawl_sheet_flow_picture (flow, x, size, size + font->drop + MARK_DROP * font->size, draw_mark,
                            GINT_TO_POINTER (mark), NULL);
}

void
drawl_sheet_add_marked (DrawlSheetFlow *flow, double x, double width, const DrawlSheetFont *font,
                        DrawlMark mark, const char *text)
{
  double indent = mark_size (font) + DRAWL_SHEET_MARK_GAP;

  drawl_sheet_add_mark (flow, x, font, mark);
  drawl_sheet_flow_plain (flow, x + indent, width - indent, font, text);
}

double
drawl_sheet_marked_width (DrawlSheetFlow *flow, const DrawlSheetFont *font, const char *text)
{
  g_autofree char *markup = g_markup_escape_text (text, -1);

  return mark_size (font) + DRAWL_SHEET_MARK_GAP + drawl_sheet_flow_measure (flow, font, markup) +
         1;
}

/* ---- Rows ---- */

void
drawl_sheet_add_labelled (DrawlSheetFlow *flow, double gap, double x, const char *label,
                          const char *text)
{
  if (*text == '\0')
    return;
  drawl_sheet_flow_row (flow, gap, DRAWL_SHEET_NO_RULE);
  drawl_sheet_flow_plain (flow, 0, x - DRAWL_SHEET_MARK_GAP, &drawl_sheet_label, label);
  drawl_sheet_flow_plain (flow, x, drawl_sheet_flow_width (flow) - x, &drawl_sheet_plain, text);
}

void
drawl_sheet_add_nothing (DrawlSheetFlow *flow, const char *text)
{
  drawl_sheet_flow_block (flow, DRAWL_SHEET_BLOCK);
  drawl_sheet_flow_row (flow, 16, DRAWL_SHEET_RULE);
  drawl_sheet_flow_plain (flow, 0, drawl_sheet_flow_width (flow), &drawl_sheet_heading, text);
}

void
drawl_sheet_name_shot (DrawlSheetFlow *flow, DrawlShot *shot)
{
  g_autofree char *name = g_strdup_printf (_ ("shot %s"), drawl_shot_get_slate (shot));

  drawl_sheet_flow_name (flow, name);
}

char *
drawl_sheet_shots_words (guint shots)
{
  g_autofree char *count = drawl_figure_count (shots);

  return g_strdup_printf (ngettext_ ("%s shot", "%s shots", shots), count);
}

char *
drawl_sheet_sum_words (double seconds)
{
  return drawl_figure_time (drawl_rational_whole (llround (seconds)));
}

void
drawl_sheet_add_verdicts (DrawlSheetFlow *flow, const DrawlDay *day, const char *rest)
{
  double width = drawl_sheet_flow_width (flow), x = 0;

  drawl_sheet_flow_block (flow, DRAWL_SHEET_BLOCK);
  drawl_sheet_flow_row (flow, 8, DRAWL_SHEET_NO_RULE);
  for (guint i = 0; i < DRAWL_N_VERDICTS; i++) {
    g_autofree char *count = drawl_figure_count (day->by_verdict[i]);
    g_autofree char *words = g_strdup_printf (_ ("%s: %s"), drawl_verdict_name (i), count);
    double needed = drawl_sheet_marked_width (flow, &drawl_sheet_strong, words);

    if (x > 0 && x + needed > width) {
      drawl_sheet_flow_row (flow, 2, DRAWL_SHEET_NO_RULE);
      x = 0;
    }
    drawl_sheet_add_marked (flow, x, MIN (needed, width - x), &drawl_sheet_strong,
                            drawl_mark_of_verdict (i), words);
    x += needed + SUMMARY_GAP;
  }
  drawl_sheet_flow_row (flow, 3, DRAWL_SHEET_NO_RULE);
  drawl_sheet_flow_plain (flow, 0, width, &drawl_sheet_plain, rest);
}
