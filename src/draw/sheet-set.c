/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The set sheet: a shot a band, in the order of the list, under the scene that it belongs to. A
 * band has a gutter with slate and verdict, and beside it the sentence, the span picture, the
 * figures, and what is to be known. Lengths in points. */

#include "core/text.h"
#include "draw/sheet.h"
#include "draw/sheet-figures.h"
#include "draw/sheet-type.h"
#include "draw/timeline.h"
#include "plan/figure.h"

#define GUTTER 84.0
#define MAIN_X 96.0
#define PICTURE_HEIGHT 66.0
#define PICTURE_FONT 8.0
#define N_FIGURES DRAWL_SHEET_N_FIGURES
#define COLUMN_GAP 9.0
#define BAND_GAP 20.0
#define VERDICT_MARK 9.5
#define VERDICT_INDENT 14.0

static const DrawlSheetFont sentence_font = {.size = 11.5, .drop = 4, .ours = TRUE};
static const DrawlSheetFont value_font = {.size = 10.5, .bold = TRUE};
static const DrawlSheetFont more_font = {.size = 8.5};
static const DrawlSheetFont figure_font = {.size = 8, .dim = TRUE};

/* ---- The gutter ---- */

/* The largest type in which the slate is one line, else the smallest. */
static void
add_slate (DrawlSheetFlow *flow, const char *slate)
{
  static const double sizes[] = {25, 20, 16, 12.5, 9.5};
  g_autofree char *markup = g_markup_escape_text (slate, -1);
  DrawlSheetFont font = {.bold = TRUE};

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++) {
    font.size = sizes[i];
    font.drop = (sizes[0] - sizes[i]) * 0.6;
    if (drawl_sheet_flow_measure (flow, &font, markup) <= GUTTER)
      break;
  }
  drawl_sheet_flow_plain (flow, 0, GUTTER, &font, slate);
}

/* What is set on the body, and the verdict. */
typedef struct {
  char *capture;  /* "240 fps" */
  char *playback; /* "plays at 24 fps" */
  DrawlVerdict verdict;
} Setting;

static void
setting_free (gpointer data)
{
  Setting *setting = data;

  g_free (setting->capture);
  g_free (setting->playback);
  g_free (setting);
}

static Setting *
setting_new (DrawlShot *shot)
{
  const DrawlRational *value = drawl_shot_get_timing (shot)->value;
  g_autofree char *playback = drawl_figure_rate (value[DRAWL_TIMING_PLAYBACK]);
  Setting *setting = g_new0 (Setting, 1);

  setting->capture = drawl_figure_rate (value[DRAWL_TIMING_CAPTURE]);
  setting->playback = g_strdup_printf (_ ("plays at %s"), playback);
  setting->verdict = drawl_shot_get_verdict (shot);
  return setting;
}

/* As large as it goes into one line. */
static DrawlTextStyle
rate_style (cairo_t *cr, const DrawlStyle *style, double width, const char *rate)
{
  static const double sizes[] = {15, 13, 11, 9, 7.5};
  DrawlTextStyle text_style = {.bold = TRUE};

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++) {
    double across, height;

    text_style.size = sizes[i];
    drawl_text_measure (cr, style, &text_style, rate, &across, &height);
    if (across <= width)
      break;
  }
  text_style.max_width = width;
  return text_style;
}

static void
draw_setting (cairo_t *cr, const DrawlStyle *style, double width, double height, gconstpointer data)
{
  const Setting *setting = data;
  DrawlTextStyle rate = rate_style (cr, style, width, setting->capture);
  DrawlTextStyle plays = {.size = more_font.size, .max_width = width};
  DrawlTextStyle verdict = {.size = 9, .bold = TRUE, .max_width = width - VERDICT_INDENT};
  double start = style->rtl ? width : 0, y = 0;

  drawl_style_set_colour (cr, style->ink);
  y += drawl_text_paragraph_draw (cr, style, &rate, 1, start, y, setting->capture);
  y += drawl_text_paragraph_draw (cr, style, &plays, 2, start, y, setting->playback) + 6;
  cairo_save (cr);
  cairo_translate (cr, style->rtl ? width - VERDICT_MARK : 0, y + 1);
  drawl_mark_draw (cr, drawl_mark_of_verdict (setting->verdict), VERDICT_MARK);
  cairo_restore (cr);
  drawl_text_paragraph_draw (cr, style, &verdict, 2,
                             style->rtl ? width - VERDICT_INDENT : VERDICT_INDENT, y,
                             drawl_verdict_name (setting->verdict));
}

/* ---- The picture ---- */

static void
data_free (gpointer data)
{
  drawl_timeline_data_clear (data);
  g_free (data);
}

/* What the picture leaves free beside its spans stands in the gutter, so that they begin where the
 * text does. */
static void
draw_span (cairo_t *cr, const DrawlStyle *style, double width, double height, gconstpointer data)
{
  DrawlStyle small = *style;
  double margin = drawl_style_margin (width);

  small.font_size = PICTURE_FONT;
  cairo_translate (cr, style->rtl ? 0 : -margin, 0);
  drawl_timeline_draw (cr, data, &small, width + margin, height, DRAWL_TIMELINE_NOTHING, -1, NULL);
}

static void
add_picture (DrawlSheetFlow *flow, DrawlShot *shot)
{
  DrawlTimelineData *data = g_new0 (DrawlTimelineData, 1);

  drawl_timeline_data_from_shot (data, shot);
  drawl_sheet_flow_row (flow, 2, DRAWL_SHEET_NO_RULE);
  drawl_sheet_flow_picture (flow, 0, GUTTER, PICTURE_HEIGHT, draw_setting, setting_new (shot),
                            setting_free);
  drawl_sheet_flow_picture (flow, MAIN_X, drawl_sheet_flow_width (flow) - MAIN_X, PICTURE_HEIGHT,
                            draw_span, data, data_free);
}

/* ---- Figures ---- */

/* A row of them, @texts being a string each. */
static void
add_row_of (DrawlSheetFlow *flow, double gap, const DrawlSheetFont *font,
            const char *const texts[N_FIGURES])
{
  static const double shares[N_FIGURES] = {0.25, 0.23, 0.3, 0.22};
  double main = drawl_sheet_flow_width (flow) - MAIN_X, x = MAIN_X;

  drawl_sheet_flow_row (flow, gap, DRAWL_SHEET_NO_RULE);
  for (guint i = 0; i < N_FIGURES; i++) {
    double width = shares[i] * main;

    drawl_sheet_flow_plain (flow, x, width - COLUMN_GAP, font, texts[i]);
    x += width;
  }
}

static void
add_figures (DrawlSheetFlow *flow, const DrawlSheetShot *of)
{
  DrawlSheetFigure figures[N_FIGURES];
  const char *labels[N_FIGURES], *values[N_FIGURES], *more[N_FIGURES];

  for (guint i = 0; i < N_FIGURES; i++) {
    drawl_sheet_figure_init (&figures[i], of, i);
    labels[i] = figures[i].label;
    values[i] = figures[i].value;
    more[i] = figures[i].more;
  }
  add_row_of (flow, 3, &figure_font, labels);
  if (!drawl_shot_get_fields (of->shot)->must)
    drawl_sheet_flow_plain (flow, 0, GUTTER, &figure_font, _ ("wished for"));
  add_row_of (flow, 0.5, &value_font, values);
  add_row_of (flow, 0, &more_font, more);
  for (guint i = 0; i < N_FIGURES; i++)
    drawl_sheet_figure_clear (&figures[i]);
}

/* ---- The band ---- */

static void
add_lines (DrawlSheetFlow *flow, DrawlShot *shot)
{
  g_autofree char *reasons = drawl_sheet_reasons_words (shot);
  g_autofree char *with = drawl_sheet_with_words (shot);
  g_autofree char *hire = drawl_sheet_hire_words (shot);
  g_autofree char *buffer = drawl_sheet_buffer_words (shot);
  const struct {
    const char *label, *text;
  } lines[] = {
      {_ ("Why"), reasons},
      {*with != '\0' ? _ ("Licence") : _ ("Instead"), hire},
      {_ ("Ring buffer"), buffer},
      {_ ("Notes"), drawl_shot_get_fields (shot)->notes},
  };

  for (guint i = 0, gap = 6; i < G_N_ELEMENTS (lines); i++) {
    drawl_sheet_add_labelled (flow, gap, MAIN_X, lines[i].label, lines[i].text);
    gap = *lines[i].text != '\0' ? 2 : gap;
  }
}

static void
add_band (DrawlSheetFlow *flow, const DrawlSheetShot *of, gboolean ruled)
{
  g_autofree char *sentence = drawl_sheet_sentence_markup (of->shot);

  drawl_sheet_flow_block (flow, DRAWL_SHEET_BLOCK);
  drawl_sheet_name_shot (flow, of->shot);
  drawl_sheet_flow_row (flow, ruled ? BAND_GAP : 2,
                        ruled ? DRAWL_SHEET_RULE_BETWEEN : DRAWL_SHEET_NO_RULE);
  add_slate (flow, drawl_shot_get_slate (of->shot));
  drawl_sheet_flow_text (flow, MAIN_X, drawl_sheet_flow_width (flow) - MAIN_X, &sentence_font,
                         sentence);
  add_picture (flow, of->shot);
  add_figures (flow, of);
  add_lines (flow, of->shot);
}

/* ---- The sheet ---- */

static void
add_cautions (DrawlSheetFlow *flow)
{
  static const char *const cautions[] = {
      N_ ("Falling, breaking, burning or thrown things: what is done, and from where it is seen, "
          "is decided by the people licensed for it, not by this sheet."),
      N_ ("More light means heat, UV and load on the supply: fixtures and distribution by a "
          "qualified electrician, to local code."),
      N_ ("Pulsing or strobing light can harm people with photosensitive epilepsy: tell everyone "
          "before it is switched on."),
  };

  drawl_sheet_flow_block (flow, DRAWL_SHEET_BLOCK);
  for (guint i = 0; i < G_N_ELEMENTS (cautions); i++) {
    drawl_sheet_flow_row (flow, i == 0 ? 8 : 2, DRAWL_SHEET_NO_RULE);
    drawl_sheet_add_marked (flow, 0, drawl_sheet_flow_width (flow), &drawl_sheet_plain,
                            DRAWL_MARK_CAUTION, _ (cautions[i]));
  }
}

static void
add_opening (DrawlSheetFlow *flow, DrawlPlan *plan)
{
  g_auto (DrawlDay) day = {0};
  const char *notes = drawl_plan_get_settings (plan)->notes;

  drawl_day_reckon (plan, &day);
  g_autofree char *shots = drawl_sheet_shots_words (day.shots);
  g_autofree char *rolled = drawl_sheet_sum_words (day.real_s);
  g_autofree char *screen = drawl_sheet_sum_words (day.screen_s);
  /* Translators: "16 shots", real time, screen time. */
  g_autofree char *sums = g_strdup_printf (
      _ ("%s; %s to be rolled, all takes and handles; %s on screen."), shots, rolled, screen);
  drawl_sheet_add_verdicts (flow, &day, sums);
  add_cautions (flow);
  if (*notes != '\0') {
    drawl_sheet_flow_block (flow, DRAWL_SHEET_BLOCK);
    drawl_sheet_flow_row (flow, 6, DRAWL_SHEET_NO_RULE);
    drawl_sheet_flow_plain (flow, 0, drawl_sheet_flow_width (flow), &drawl_sheet_plain, notes);
  }
}

/* A line for a scene that the shot before does not belong to; said again on each page of it. */
static gboolean
add_scene (DrawlSheetFlow *flow, const char *scene, const char *before)
{
  if (g_strcmp0 (scene, before) == 0)
    return FALSE;
  if (*scene == '\0') {
    drawl_sheet_flow_block (flow, DRAWL_SHEET_END);
    return FALSE;
  }
  drawl_sheet_flow_block (flow, DRAWL_SHEET_HEAD);
  drawl_sheet_flow_row (flow, 26, DRAWL_SHEET_STRONG_RULE);
  drawl_sheet_flow_plain (flow, 0, drawl_sheet_flow_width (flow), &drawl_sheet_heading, scene);
  return TRUE;
}

/* The shot's place on the cards of its body, which runs on from shot to shot. */
static DrawlSheetShot
follow (DrawlPlan *plan, DrawlShot *shot, GHashTable *fillings)
{
  gboolean span = drawl_plan_get_settings (plan)->takes_span;
  DrawlSheetShot of = {
      .shot = shot,
      .hired = drawl_plan_find_body (plan, drawl_shot_get_fields (shot)->body),
      .unit = drawl_plan_get_length_unit (plan),
  };

  if (of.hired == NULL)
    return of;
  DrawlFilling *filling = g_hash_table_lookup (fillings, of.hired);
  if (filling == NULL) {
    filling = g_new (DrawlFilling, 1);
    drawl_filling_init (filling);
    g_hash_table_insert (fillings, of.hired, filling);
  }
  of.first = drawl_filling_next (filling, shot, span);
  of.filled = drawl_filling_add (filling, shot, span);
  of.after = *filling;
  return of;
}

void
drawl_sheet_say_set (DrawlSheetFlow *flow, DrawlPlan *plan)
{
  g_autoptr (GHashTable) fillings = g_hash_table_new_full (NULL, NULL, NULL, g_free);
  const char *scene = NULL;

  add_opening (flow, plan);
  if (drawl_plan_n_shots (plan) == 0)
    drawl_sheet_add_nothing (flow, _ ("This plan has no shots yet."));
  for (guint i = 0; i < drawl_plan_n_shots (plan); i++) {
    DrawlShot *shot = drawl_plan_get_shot (plan, i);
    const char *own = drawl_shot_get_fields (shot)->scene;
    gboolean opened = add_scene (flow, own, scene);
    DrawlSheetShot of = follow (plan, shot, fillings);

    add_band (flow, &of, !opened);
    scene = own;
  }
}
