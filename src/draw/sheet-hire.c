/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The hire sheet: what is to be hired and what it does not cover, then each body with what must be
 * fitted and what is looked at when it is picked up and returned, to be ticked. Lengths in points.
 */

#include "core/text.h"
#include "draw/sheet.h"
#include "draw/sheet-order.h"
#include "draw/sheet-type.h"
#include "plan/figure.h"

#define FACTS_X 96.0
#define TICK_GAP 4.0

/* ---- Ticks ---- */

static void
add_note (DrawlSheetFlow *flow, const DrawlBodyNote *note)
{
  g_autofree char *markup = *note->why == '\0'
                                ? g_markup_printf_escaped ("<b>%s</b>", note->what)
                                : g_markup_printf_escaped ("<b>%s</b>  %s", note->what, note->why);
  static const DrawlSheetFont box = {.size = 11, .drop = -0.9};
  double indent = 20;

  drawl_sheet_flow_block (flow, DRAWL_SHEET_BLOCK);
  drawl_sheet_flow_row (flow, TICK_GAP, DRAWL_SHEET_NO_RULE);
  drawl_sheet_add_mark (flow, 0, &box, DRAWL_MARK_TICK_BOX);
  drawl_sheet_flow_text (flow, indent, drawl_sheet_flow_width (flow) - indent, &drawl_sheet_plain,
                         markup);
}

static void
add_notes (DrawlSheetFlow *flow, const char *title, const DrawlBodyNote *notes, guint n_notes)
{
  if (n_notes == 0)
    return;
  drawl_sheet_flow_block (flow, DRAWL_SHEET_TITLE);
  drawl_sheet_flow_row (flow, 14, DRAWL_SHEET_NO_RULE);
  drawl_sheet_flow_plain (flow, 0, drawl_sheet_flow_width (flow), &drawl_sheet_strong, title);
  for (guint i = 0; i < n_notes; i++)
    add_note (flow, &notes[i]);
}

/* ---- A body ---- */

static char *
licences_words (const DrawlHiredFields *hired)
{
  if (hired->body->n_licences == 0)
    return g_strdup (_ ("This body has none."));
  if (hired->tier == 0)
    return g_strdup (_ ("None is hired."));
  return drawl_body_tier_names (hired->body, hired->tier);
}

static char *
slates_on (DrawlPlan *plan, const char *id)
{
  GString *slates = g_string_new (NULL);

  for (guint i = 0; i < drawl_plan_n_shots (plan); i++) {
    DrawlShot *shot = drawl_plan_get_shot (plan, i);

    if (g_str_equal (drawl_shot_get_fields (shot)->body, id))
      g_string_append_printf (slates, "%s%s", slates->len > 0 ? ", " : "",
                              drawl_shot_get_slate (shot));
  }
  return g_string_free (slates, FALSE);
}

static char *
source_words (const DrawlBody *body)
{
  if (body->source_document == NULL || *body->source_document == '\0')
    return g_strdup (_ ("The profile does not say: take them as a guess."));
  if (body->source_date == NULL || *body->source_date == '\0')
    return g_strdup (body->source_document);
  /* Translators: document, date: where the figures of a body come from. */
  return g_strdup_printf (_ ("%s, %s"), body->source_document, body->source_date);
}

static char *
power_words (const DrawlBody *body)
{
  if (body->watts.num == 0)
    return g_strdup ("");
  g_autofree char *number = drawl_figure_number (body->watts, 1);
  return g_strdup_printf (_ ("%s\u00a0W"), number);
}

static void
add_facts (DrawlSheetFlow *flow, DrawlPlan *plan, const DrawlHiredFields *hired)
{
  const DrawlBody *body = hired->body;
  g_autofree char *licences = licences_words (hired);
  g_autofree char *slates = slates_on (plan, hired->id);
  g_autofree char *power = power_words (body);
  g_autofree char *source = source_words (body);

  drawl_sheet_flow_block (flow, DRAWL_SHEET_BLOCK);
  drawl_sheet_add_labelled (flow, 6, FACTS_X, _ ("What it is"), body->what);
  drawl_sheet_add_labelled (flow, 2, FACTS_X, _ ("Maker"), body->maker);
  drawl_sheet_add_labelled (flow, 2, FACTS_X, _ ("Licences"), licences);
  drawl_sheet_add_labelled (flow, 2, FACTS_X, _ ("Power draw"), power);
  drawl_sheet_add_labelled (flow, 2, FACTS_X, _ ("Shots"), slates);
  drawl_sheet_add_labelled (flow, 2, FACTS_X, _ ("Figures from"), source);
}

static void
add_body (DrawlSheetFlow *flow, DrawlPlan *plan, DrawlHiredBody *hired)
{
  const DrawlHiredFields *fields = drawl_hired_body_get_fields (hired);
  const DrawlBody *body = fields->body;
  g_autofree char *name = drawl_hired_body_dup_name (hired);

  drawl_sheet_flow_block (flow, DRAWL_SHEET_HEAD);
  drawl_sheet_flow_name (flow, name);
  drawl_sheet_flow_row (flow, 28, DRAWL_SHEET_STRONG_RULE);
  drawl_sheet_flow_plain (flow, 0, drawl_sheet_flow_width (flow), &drawl_sheet_heading, name);
  add_facts (flow, plan, fields);
  add_notes (flow, _ ("To be fitted before it runs"), body->fits, body->n_fits);
  add_notes (flow, _ ("At pick-up"), body->pickups, body->n_pickups);
  add_notes (flow, _ ("At return"), body->returns, body->n_returns);
}

/* ---- The sheet ---- */

static void
add_opening (DrawlSheetFlow *flow, const DrawlDay *day)
{
  g_autofree char *shots = drawl_sheet_shots_words (day->shots);
  g_autofree char *count = drawl_figure_count (day->bodies->len);
  g_autofree char *bodies =
      g_strdup_printf (ngettext_ ("%s body", "%s bodies", day->bodies->len), count);
  /* Translators: "16 shots", "3 bodies". */
  g_autofree char *sums = g_strdup_printf (_ ("%s on %s, as far as the plan says."), shots, bodies);

  drawl_sheet_add_verdicts (flow, day, sums);
  drawl_sheet_flow_block (flow, DRAWL_SHEET_BLOCK);
  drawl_sheet_flow_row (flow, 8, DRAWL_SHEET_NO_RULE);
  drawl_sheet_add_marked (flow, 0, drawl_sheet_flow_width (flow), &drawl_sheet_plain,
                          DRAWL_MARK_CAUTION,
                          _ ("Batteries: the rules for carrying them change. Ask the carrier "
                             "before you travel."));
}

void
drawl_sheet_say_hire (DrawlSheetFlow *flow, DrawlPlan *plan)
{
  g_auto (DrawlDay) day = {0};

  drawl_day_reckon (plan, &day);
  add_opening (flow, &day);
  if (day.bodies->len == 0)
    drawl_sheet_add_nothing (flow, _ ("No body is hired yet."));
  else
    drawl_sheet_add_order (flow, &day);
  drawl_sheet_add_lacks (flow, plan);
  for (guint i = 0; i < day.bodies->len; i++)
    add_body (flow, plan, g_array_index (day.bodies, DrawlDayBody, i).hired);
}
