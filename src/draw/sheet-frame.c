/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The frame of a sheet's pages. Equal plans bear equal revisions, whatever their files are called:
 * two sheets on a table can be told to agree. Lengths in points. */

#include "draw/sheet-frame.h"

#include "core/text.h"
#include "draw/sheet-type.h"
#include "draw/text.h"
#include "plan/plan-file.h"

#define SIDE 42.0
#define TOP 40.0
#define BOTTOM 36.0
#define HEAD_GAP 16.0 /* below the line at the head */
#define FOOT_GAP 12.0 /* above the rule of the foot */
#define FOOT_PAD 5.0  /* below it */
#define FOOT_SIZE 8.5
#define CAUTION_LINES 3
#define REVISION_DIGITS 6
#define HEAD_CHARACTERS 200
#define TITLE_SHARE 0.66 /* of the width, for what stands at the start of the title block */

/* ---- What it says ---- */

static char *
stamp_words (DrawlPlan *plan, GDateTime *printed)
{
  gsize length;
  g_autofree char *data = drawl_plan_to_data (plan, &length);
  g_autofree char *sum =
      g_compute_checksum_for_data (G_CHECKSUM_SHA256, (const guchar *)data, length);
  g_autofree char *date = g_date_time_format (printed, "%Y-%m-%d %H:%M");

  sum[REVISION_DIGITS] = '\0';
  /* Translators: date and time, a few letters and digits that stand for the plan as it is. */
  return g_strdup_printf (_ ("Printed %s · revision %s"), date, sum);
}

/* More than a line is cut before it is laid out, page after page. */
static char *
head_words (const char *title)
{
  if (g_utf8_strlen (title, -1) <= HEAD_CHARACTERS)
    return g_strdup (title);
  g_autofree char *start = g_utf8_substring (title, 0, HEAD_CHARACTERS);
  return g_strconcat (start, "…", NULL);
}

void
drawl_sheet_frame_init (DrawlSheetFrame *frame, const DrawlSheetKind *kind, DrawlPlan *plan,
                        GDateTime *printed)
{
  const DrawlPlanSettings *settings = drawl_plan_get_settings (plan);

  *frame = (DrawlSheetFrame){
      .title = g_strdup (*settings->title != '\0' ? settings->title : _ ("Untitled Plan")),
      .production = g_strdup (settings->production),
      .sheet = g_strdup (_ (kind->name)),
      .day = *settings->day != '\0' ? g_strdup_printf (_ ("Shooting day %s"), settings->day)
                                    : g_strdup (""),
      .stamp = stamp_words (plan, printed),
      .caution = _ (kind->caution),
  };
  frame->head = head_words (frame->title);
}

void
drawl_sheet_frame_clear (DrawlSheetFrame *frame)
{
  g_free (frame->title);
  g_free (frame->head);
  g_free (frame->production);
  g_free (frame->sheet);
  g_free (frame->day);
  g_free (frame->stamp);
}

void
drawl_sheet_frame_open (const DrawlSheetFrame *frame, DrawlSheetFlow *flow)
{
  static const DrawlSheetFont sheet = {
      .size = 13, .bold = TRUE, .align = DRAWL_ALIGN_END, .drop = 7};
  static const DrawlSheetFont day = {.size = 10, .align = DRAWL_ALIGN_END};
  static const DrawlSheetFont production = {.size = 10, .dim = TRUE};
  double width = drawl_sheet_flow_width (flow), x = TITLE_SHARE * width;

  drawl_sheet_flow_block (flow, DRAWL_SHEET_TITLE);
  drawl_sheet_flow_row (flow, 0, DRAWL_SHEET_NO_RULE);
  drawl_sheet_flow_plain (flow, 0, x - 8, &drawl_sheet_title, frame->title);
  drawl_sheet_flow_plain (flow, x, width - x, &sheet, frame->sheet);
  drawl_sheet_flow_row (flow, 1, DRAWL_SHEET_NO_RULE);
  drawl_sheet_flow_plain (flow, 0, x - 8, &production, frame->production);
  drawl_sheet_flow_plain (flow, x, width - x, &day, frame->day);
  drawl_sheet_flow_row (flow, 9, DRAWL_SHEET_STRONG_RULE);
}

/* ---- Where it stands ---- */

/* Heights of its lines, measured where nothing is drawn. */
typedef struct {
  double head, caution, stamp;
} Lines;

static const DrawlTextStyle foot_style = {.size = FOOT_SIZE};

static DrawlTextStyle
caution_style (double width)
{
  return (DrawlTextStyle){.size = FOOT_SIZE, .max_width = width - 2 * SIDE};
}

static Lines
measure (const DrawlSheetFrame *frame, cairo_t *cr, const DrawlStyle *style, double width)
{
  DrawlTextStyle caution = caution_style (width), head = {.size = drawl_sheet_plain.size};
  double across;
  Lines lines;

  drawl_text_measure (cr, style, &head, frame->head, &across, &lines.head);
  drawl_text_measure (cr, style, &foot_style, frame->stamp, &across, &lines.stamp);
  lines.caution = drawl_text_paragraph_height (cr, style, &caution, CAUTION_LINES, frame->caution);
  return lines;
}

static double
foot_top (const Lines *lines, double height)
{
  return height - BOTTOM - lines->stamp - 2 - lines->caution - FOOT_PAD;
}

cairo_rectangle_t
drawl_sheet_frame_room (const DrawlSheetFrame *frame, const DrawlStyle *style, double width,
                        double height, guint page)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  Lines lines = measure (frame, cr, style, width);
  double top = TOP + (page > 0 ? lines.head + HEAD_GAP : 0);

  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return (cairo_rectangle_t){SIDE, top, width - 2 * SIDE,
                             foot_top (&lines, height) - FOOT_GAP - top};
}

cairo_rectangle_t
drawl_sheet_frame_area (double width, double height)
{
  return (cairo_rectangle_t){SIDE, TOP, width - 2 * SIDE, height - TOP - BOTTOM};
}

/* ---- Drawing ---- */

/* A line at the start and one at the end, which keeps its room; both cut where they must be. */
static void
draw_ends (cairo_t *cr, const DrawlStyle *style, double width, double y, DrawlTextStyle start,
           const char *at_start, DrawlTextStyle end, const char *at_end)
{
  double inner = width - 2 * SIDE, taken;

  end.align = DRAWL_ALIGN_END;
  end.max_width = inner / 2;
  taken = drawl_text_draw (cr, style, &end, style->rtl ? SIDE : width - SIDE, y, at_end);
  start.max_width = inner - taken - 12;
  drawl_text_draw (cr, style, &start, style->rtl ? width - SIDE : SIDE, y, at_start);
}

static void
draw_line (cairo_t *cr, const DrawlStyle *style, double width, double y)
{
  cairo_move_to (cr, SIDE, y);
  cairo_line_to (cr, width - SIDE, y);
  cairo_set_line_width (cr, 0.4);
  drawl_style_set_colour (cr, style->screen);
  cairo_stroke (cr);
}

static void
draw_head (const DrawlSheetFrame *frame, cairo_t *cr, const DrawlStyle *style, double width,
           const Lines *lines)
{
  DrawlTextStyle title = {.size = drawl_sheet_plain.size, .bold = TRUE};
  DrawlTextStyle sheet = {.size = drawl_sheet_plain.size};
  g_autofree char *end = *frame->day != '\0'
                             ? g_strdup_printf (_ ("%s · %s"), frame->sheet, frame->day)
                             : g_strdup (frame->sheet);

  drawl_style_set_colour (cr, style->ink);
  draw_ends (cr, style, width, TOP, title, frame->head, sheet, end);
  draw_line (cr, style, width, TOP + lines->head + HEAD_GAP / 3);
}

static void
draw_foot (const DrawlSheetFrame *frame, cairo_t *cr, const DrawlStyle *style, double width,
           double height, const Lines *lines, const char *page)
{
  DrawlTextStyle caution = caution_style (width), strong = foot_style;
  double y = foot_top (lines, height);

  draw_line (cr, style, width, y);
  drawl_style_set_colour (cr, style->ink);
  drawl_text_paragraph_draw (cr, style, &caution, CAUTION_LINES, style->rtl ? width - SIDE : SIDE,
                             y + FOOT_PAD, frame->caution);
  strong.bold = TRUE;
  draw_ends (cr, style, width, y + FOOT_PAD + lines->caution + 2, foot_style, frame->stamp, strong,
             page);
}

void
drawl_sheet_frame_draw (const DrawlSheetFrame *frame, cairo_t *cr, const DrawlStyle *style,
                        double width, double height, guint page, guint n_pages)
{
  Lines lines = measure (frame, cr, style, width);
  g_autofree char *words = g_strdup_printf (_ ("Page %u of %u"), page + 1, n_pages);

  if (page > 0)
    draw_head (frame, cr, style, width, &lines);
  draw_foot (frame, cr, style, width, height, &lines, words);
}
