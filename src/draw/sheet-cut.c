/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The cut sheet: a table, a row a shot, of what the cutting room gets and how it is to play. Frames
 * and lengths are those of the action, without handles. Lengths in points. */

#include "core/text.h"
#include "core/timecode.h"
#include "draw/sheet.h"
#include "draw/sheet-columns.h"
#include "draw/sheet-type.h"
#include "plan/figure.h"

#define ROW_GAP 6.0
#define NOTHING "–"

/* ---- Cells ---- */

static char *
slate (DrawlShot *shot)
{
  return g_strdup (drawl_shot_get_slate (shot));
}

static char *
action (DrawlShot *shot)
{
  return g_strdup (drawl_shot_get_fields (shot)->action);
}

static char *
frames (DrawlShot *shot)
{
  return drawl_figure_count (drawl_shot_get_timing (shot)->frames);
}

static char *
screen_timecode (DrawlShot *shot)
{
  const DrawlTiming *timing = drawl_shot_get_timing (shot);
  char code[DRAWL_TIMECODE_SIZE];

  if (drawl_timecode_format (timing->value[DRAWL_TIMING_PLAYBACK],
                             drawl_shot_get_fields (shot)->drop, timing->screen_frames, code, NULL))
    return g_strdup (code);
  return drawl_figure_time (timing->value[DRAWL_TIMING_SCREEN]);
}

static const DrawlGauge *
gauge_of (DrawlShot *shot)
{
  const DrawlCheckQuestion *question = drawl_shot_get_question (shot);

  if (question->body == NULL || question->body->kind != DRAWL_BODY_FILM || question->size < 0)
    return NULL;
  return question->body->sizes[question->size].gauge;
}

static char *
feet (DrawlShot *shot)
{
  const DrawlGauge *gauge = gauge_of (shot);
  char *text = gauge != NULL
                   ? drawl_footage_feet_frames (gauge, drawl_shot_get_timing (shot)->frames)
                   : NULL;

  return text != NULL ? text : g_strdup (NOTHING);
}

static char *
metres (DrawlShot *shot)
{
  const DrawlGauge *gauge = gauge_of (shot);
  DrawlRational length;

  if (gauge == NULL || !drawl_footage_metres (gauge, drawl_shot_get_timing (shot)->frames, &length))
    return g_strdup (NOTHING);
  return drawl_figure_number (length, 1);
}

static char *
speed (DrawlShot *shot)
{
  const DrawlRational *value = drawl_shot_get_timing (shot)->value;
  DrawlRational percent;

  if (!drawl_rational_div (value[DRAWL_TIMING_POST_SPEED], value[DRAWL_TIMING_FACTOR], &percent))
    return g_strdup (NOTHING);
  return drawl_figure_percent (percent);
}

static gboolean
has_post_speed (DrawlShot *shot)
{
  return !drawl_rational_equal (drawl_shot_get_timing (shot)->value[DRAWL_TIMING_POST_SPEED],
                                drawl_rational_whole (100));
}

static char *
post_speed (DrawlShot *shot)
{
  if (!has_post_speed (shot))
    return g_strdup (NOTHING);
  return drawl_figure_percent (drawl_shot_get_timing (shot)->value[DRAWL_TIMING_POST_SPEED]);
}

static char *
capture_rate (DrawlShot *shot)
{
  return drawl_figure_rate (drawl_shot_get_timing (shot)->value[DRAWL_TIMING_CAPTURE]);
}

static char *
playback_rate (DrawlShot *shot)
{
  return drawl_figure_rate (drawl_shot_get_timing (shot)->value[DRAWL_TIMING_PLAYBACK]);
}

static char *
takes (DrawlShot *shot)
{
  return drawl_figure_count (drawl_shot_get_fields (shot)->takes);
}

/* ---- The table ---- */

enum {
  SLATE,
  ACTION,
  FRAMES,
  CODE,
  FEET,
  METRES,
  SPEED,
  POST,
  CAPTURE,
  PLAYBACK,
  TAKES,
  N_COLUMNS
};

static const DrawlSheetColumn columns_said[N_COLUMNS] = {
    [SLATE] = {N_ ("Slate"), 46, DRAWL_ALIGN_START},
    [ACTION] = {N_ ("Action"), 0, DRAWL_ALIGN_START},
    [FRAMES] = {N_ ("Frames"), 42, DRAWL_ALIGN_END},
    [CODE] = {N_ ("Screen timecode"), 62, DRAWL_ALIGN_END},
    [FEET] = {N_ ("Feet+frames"), 52, DRAWL_ALIGN_END},
    [METRES] = {N_ ("Metres"), 52, DRAWL_ALIGN_END},
    [SPEED] = {N_ ("Speed on screen"), 58, DRAWL_ALIGN_END},
    [POST] = {N_ ("Post speed"), 54, DRAWL_ALIGN_END},
    [CAPTURE] = {N_ ("Capture rate"), 58, DRAWL_ALIGN_END},
    [PLAYBACK] = {N_ ("Playback rate"), 66, DRAWL_ALIGN_END},
    [TAKES] = {N_ ("Takes"), 32, DRAWL_ALIGN_END},
};

static char *(*const texts[N_COLUMNS]) (DrawlShot *shot) = {
    [SLATE] = slate,
    [ACTION] = action,
    [FRAMES] = frames,
    [CODE] = screen_timecode,
    [FEET] = feet,
    [METRES] = metres,
    [SPEED] = speed,
    [POST] = post_speed,
    [CAPTURE] = capture_rate,
    [PLAYBACK] = playback_rate,
    [TAKES] = takes,
};

static gboolean
has_film (DrawlPlan *plan)
{
  for (guint i = 0; i < drawl_plan_n_shots (plan); i++)
    if (gauge_of (drawl_plan_get_shot (plan, i)) != NULL)
      return TRUE;
  return FALSE;
}

static void
add_shot (DrawlSheetFlow *flow, const DrawlSheetColumn *columns, DrawlShot *shot)
{
  gboolean flagged = has_post_speed (shot);

  drawl_sheet_flow_block (flow, DRAWL_SHEET_BLOCK);
  drawl_sheet_name_shot (flow, shot);
  drawl_sheet_flow_row (flow, ROW_GAP, DRAWL_SHEET_RULE);
  for (guint i = 0; i < N_COLUMNS; i++) {
    g_autofree char *text = texts[i](shot);

    drawl_sheet_columns_add_cell (flow, &columns[i], i == SLATE || (i == POST && flagged), text);
  }
  if (flagged)
    drawl_sheet_add_mark (flow, columns[POST].x, &drawl_sheet_strong, DRAWL_MARK_FLAG);
}

static gboolean
has_flag (DrawlPlan *plan)
{
  for (guint i = 0; i < drawl_plan_n_shots (plan); i++)
    if (has_post_speed (drawl_plan_get_shot (plan, i)))
      return TRUE;
  return FALSE;
}

/* Sums, and how the table is to be read. */
static void
add_opening (DrawlSheetFlow *flow, DrawlPlan *plan)
{
  g_auto (DrawlDay) day = {0};
  double width = drawl_sheet_flow_width (flow);

  drawl_day_reckon (plan, &day);
  g_autofree char *shots = drawl_sheet_shots_words (day.shots);
  g_autofree char *screen = drawl_sheet_sum_words (day.screen_s);
  /* Translators: "16 shots", screen time. */
  g_autofree char *sums = g_strdup_printf (_ ("%s, %s on screen."), shots, screen);
  drawl_sheet_flow_block (flow, DRAWL_SHEET_BLOCK);
  drawl_sheet_flow_row (flow, 8, DRAWL_SHEET_NO_RULE);
  drawl_sheet_flow_plain (flow, 0, width, &drawl_sheet_plain, sums);
  drawl_sheet_flow_row (flow, 2, DRAWL_SHEET_NO_RULE);
  drawl_sheet_flow_plain (
      flow, 0, width, &drawl_sheet_quiet,
      _ ("Frames, footage and screen timecode are of the action alone, without handles. Speed on "
         "screen is against real time. A code with a semicolon counts drop-frame."));
  if (!has_flag (plan))
    return;
  drawl_sheet_flow_row (flow, 2, DRAWL_SHEET_NO_RULE);
  drawl_sheet_add_marked (flow, 0, width, &drawl_sheet_quiet, DRAWL_MARK_FLAG,
                          _ ("Post speed: the cutting room runs the shot at so much of its "
                             "speed."));
}

void
drawl_sheet_say_cut (DrawlSheetFlow *flow, DrawlPlan *plan)
{
  DrawlSheetColumn columns[N_COLUMNS];

  if (drawl_plan_n_shots (plan) == 0) {
    drawl_sheet_add_nothing (flow, _ ("This plan has no shots yet."));
    return;
  }
  for (guint i = 0; i < N_COLUMNS; i++)
    columns[i] = columns_said[i];
  gboolean film = has_film (plan);
  gboolean metric = drawl_plan_get_length_unit (plan) == DRAWL_LENGTH_METRIC;
  columns[FEET].hidden = !film || metric;
  columns[METRES].hidden = !film || !metric;
  drawl_sheet_columns_place (columns, N_COLUMNS, drawl_sheet_flow_width (flow));
  add_opening (flow, plan);
  drawl_sheet_columns_add_head (flow, columns, N_COLUMNS);
  for (guint i = 0; i < drawl_plan_n_shots (plan); i++)
    add_shot (flow, columns, drawl_plan_get_shot (plan, i));
}
