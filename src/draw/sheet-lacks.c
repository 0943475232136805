/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What the hire list does not cover. Shots of one body that the same licences would open stand
 * together, in the order of the list; a shot that no licence opens stands alone with its reasons.
 * Lengths in points. */

#include "core/text.h"
#include "draw/sheet-columns.h"
#include "draw/sheet-figures.h"
#include "draw/sheet-order.h"
#include "draw/sheet-type.h"
#include "plan/figure.h"

#define ROW_GAP 8.0

/* Shots that one set of licences would open. */
typedef struct {
  DrawlHiredBody *hired;
  DrawlLicenceSet set;
  GString *slates;
} Lack;

static void
lack_clear (gpointer data)
{
  g_string_free (((Lack *)data)->slates, TRUE);
}

/* ---- Licences ---- */

static Lack *
lack_of (GArray *lacks, DrawlHiredBody *hired, const DrawlLicenceSet *set)
{
  for (guint i = 0; i < lacks->len; i++) {
    Lack *lack = &g_array_index (lacks, Lack, i);

    if (lack->hired == hired && lack->set.add == set->add)
      return lack;
  }
  Lack fresh = {hired, *set, g_string_new (NULL)};
  g_array_append_val (lacks, fresh);
  return &g_array_index (lacks, Lack, lacks->len - 1);
}

static GArray *
collect (DrawlPlan *plan)
{
  GArray *lacks = g_array_new (FALSE, FALSE, sizeof (Lack));

  g_array_set_clear_func (lacks, lack_clear);
  for (guint i = 0; i < drawl_plan_n_shots (plan); i++) {
    DrawlShot *shot = drawl_plan_get_shot (plan, i);
    const DrawlCheck *check = drawl_shot_get_check (shot);
    DrawlHiredBody *hired = drawl_plan_find_body (plan, drawl_shot_get_fields (shot)->body);

    if (check->verdict != DRAWL_VERDICT_NEEDS_LICENCE || hired == NULL || check->sets == NULL ||
        check->sets->len == 0)
      continue;
    Lack *lack = lack_of (lacks, hired, &g_array_index (check->sets, DrawlLicenceSet, 0));
    g_string_append_printf (lack->slates, "%s%s", lack->slates->len > 0 ? ", " : "",
                            drawl_shot_get_slate (shot));
  }
  return lacks;
}

enum { LICENCES, SHOTS, BODY, PRICE, N_COLUMNS };

static const DrawlSheetColumn columns_said[N_COLUMNS] = {
    [LICENCES] = {N_ ("Needed, but not hired"), 172, DRAWL_ALIGN_START},
    [SHOTS] = {N_ ("For the shots"), 0, DRAWL_ALIGN_START},
    [BODY] = {N_ ("Body"), 104, DRAWL_ALIGN_START},
    [PRICE] = {N_ ("A day"), 84, DRAWL_ALIGN_END},
};

static void
add_lack (DrawlSheetFlow *flow, const DrawlSheetColumn *columns, const Lack *lack)
{
  const DrawlBody *body = drawl_hired_body_get_body (lack->hired);
  g_autofree char *names = drawl_body_tier_names (body, lack->set.add);
  g_autofree char *name = drawl_hired_body_dup_name (lack->hired);
  g_autofree char *price = drawl_figure_money (lack->set.price, body->currency);
  const DrawlSheetColumn *first = &columns[LICENCES];

  drawl_sheet_flow_block (flow, DRAWL_SHEET_BLOCK);
  drawl_sheet_flow_row (flow, ROW_GAP, DRAWL_SHEET_RULE);
  drawl_sheet_add_marked (flow, first->x, first->width, &drawl_sheet_strong,
                          DRAWL_MARK_NEEDS_LICENCE, names);
  drawl_sheet_columns_add_cell (flow, &columns[SHOTS], FALSE, lack->slates->str);
  drawl_sheet_columns_add_cell (flow, &columns[BODY], FALSE, name);
  drawl_sheet_columns_add_cell (flow, &columns[PRICE], FALSE, price);
}

static void
add_licences (DrawlSheetFlow *flow, DrawlPlan *plan)
{
  g_autoptr (GArray) lacks = collect (plan);
  DrawlSheetColumn columns[N_COLUMNS];

  if (lacks->len == 0)
    return;
  for (guint i = 0; i < N_COLUMNS; i++)
    columns[i] = columns_said[i];
  drawl_sheet_columns_place (columns, N_COLUMNS, drawl_sheet_flow_width (flow));
  drawl_sheet_columns_add_head (flow, columns, N_COLUMNS);
  for (guint i = 0; i < lacks->len; i++)
    add_lack (flow, columns, &g_array_index (lacks, Lack, i));
  drawl_sheet_flow_block (flow, DRAWL_SHEET_END);
  drawl_sheet_flow_row (flow, 4, DRAWL_SHEET_NO_RULE);
  drawl_sheet_flow_plain (flow, 0, drawl_sheet_flow_width (flow), &drawl_sheet_quiet,
                          _ ("The cheapest licences for each shot by itself; those hired for one "
                             "shot may open another."));
}

/* ---- Shots that are not possible ---- */

static void
add_not_possible (DrawlSheetFlow *flow, DrawlShot *shot, gboolean first)
{
  double width = drawl_sheet_flow_width (flow), x = 96;
  g_autofree char *reasons = drawl_sheet_reasons_words (shot);
  g_autofree char *instead = drawl_sheet_without_words (shot);

  if (first) {
    drawl_sheet_flow_block (flow, DRAWL_SHEET_HEAD);
    drawl_sheet_flow_row (flow, 20, DRAWL_SHEET_STRONG_RULE);
    drawl_sheet_flow_plain (flow, 0, width, &drawl_sheet_label,
                            _ ("Not possible on their bodies, whatever is hired"));
  }
  drawl_sheet_flow_block (flow, DRAWL_SHEET_BLOCK);
  drawl_sheet_flow_row (flow, ROW_GAP, DRAWL_SHEET_RULE);
  drawl_sheet_add_marked (flow, 0, x - 9, &drawl_sheet_strong, DRAWL_MARK_NOT_ON_THIS_BODY,
                          drawl_shot_get_slate (shot));
  drawl_sheet_flow_plain (flow, x, width - x, &drawl_sheet_plain, reasons);
  if (*instead == '\0')
    return;
  g_autofree char *words = g_strdup_printf (_ ("Instead: %s"), instead);
  drawl_sheet_flow_row (flow, 1, DRAWL_SHEET_NO_RULE);
  drawl_sheet_flow_plain (flow, x, width - x, &drawl_sheet_plain, words);
}

void
drawl_sheet_add_lacks (DrawlSheetFlow *flow, DrawlPlan *plan)
{
  gboolean first = TRUE;

  add_licences (flow, plan);
  for (guint i = 0; i < drawl_plan_n_shots (plan); i++) {
    DrawlShot *shot = drawl_plan_get_shot (plan, i);

    if (drawl_shot_get_verdict (shot) != DRAWL_VERDICT_NOT_ON_THIS_BODY)
      continue;
    add_not_possible (flow, shot, first);
    first = FALSE;
  }
}
