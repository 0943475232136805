/* SPDX-License-Identifier: GPL-3.0-or-later */

/* edit-10000 PLAN: how long one edit takes until every figure is right again, the sums of the day
 * included, in a plan of 10,000 shots. The median of many, and the longest. */

#include "plan/day.h"
#include "plan/plan-file.h"

#include <stdlib.h>

#define TARGET_MS 16.0
#define N_EDITS 501
#define N_FEW 21

/* What is measured: change number @n. */
typedef void (*Change) (DrawlPlan *plan, guint n);

static int
compare (gconstpointer a, gconstpointer b)
{
  double first = *(const double *)a, second = *(const double *)b;
  return (first > second) - (first < second);
}

static void
measure (DrawlPlan *plan, const char *what, guint times, Change change)
{
  g_autofree double *ms = g_new (double, times);

  for (guint n = 0; n < times; n++) {
    gint64 start = g_get_monotonic_time ();
    change (plan, n);
    ms[n] = (double)(g_get_monotonic_time () - start) / 1000;
  }
  qsort (ms, times, sizeof *ms, compare);
  g_print ("%-34s %8.3f ms (median of %u; longest %.3f ms), target %.0f ms: %s\n", what,
           ms[times / 2], times, ms[times - 1], TARGET_MS,
           ms[times / 2] < TARGET_MS ? "met" : "missed");
}

/* As the day strip does. */
static void
reckon_day (DrawlPlan *plan, DrawlDay *day)
{
  drawl_day_reckon (plan, day);
}

static void
set_shot (DrawlPlan *plan, DrawlShot *shot, DrawlTimingTerm term, DrawlRational value)
{
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (drawl_shot_get_fields (shot));
  g_autoptr (GError) error = NULL;

  if (!drawl_blanks_edit (&fields->blanks, term, value, &error) ||
      !drawl_plan_set_shot (plan, shot, fields, "Edit", &error))
    g_error ("%s", error->message);
}

static void
change_rate (DrawlPlan *plan, guint n)
{
  DrawlShot *shot = drawl_plan_get_shot (plan, n * 7919 % drawl_plan_n_shots (plan));
  set_shot (plan, shot, DRAWL_TIMING_CAPTURE, drawl_rational_whole (101 + n));
}

static void
undo_or_redo (DrawlPlan *plan, guint n)
{
  if (n % 2 == 0)
    drawl_plan_undo (plan);
  else
    drawl_plan_redo (plan);
}

static void
move_shot (DrawlPlan *plan, guint n)
{
  guint last = drawl_plan_n_shots (plan) - 1;
  drawl_plan_move_shot (plan, n % 2 == 0 ? 0 : last, n % 2 == 0 ? last : 0, "Move");
}

static void
switch_tier (DrawlPlan *plan, guint n)
{
  g_autoptr (DrawlHiredBody) hired = g_list_model_get_item (drawl_plan_get_bodies (plan), 0);
  g_autoptr (DrawlHiredFields) fields =
      drawl_hired_fields_copy (drawl_hired_body_get_fields (hired));

  fields->tier ^= 1;
  if (!drawl_plan_set_body (plan, hired, fields, "Tier", NULL))
    g_error ("the tier cannot be switched");
}

static void
change_reserve (DrawlPlan *plan, guint n)
{
  g_autoptr (DrawlPlanSettings) settings =
      drawl_plan_settings_copy (drawl_plan_get_settings (plan));

  settings->reserve_percent = drawl_rational_whole (11 + n % 2);
  if (!drawl_plan_set_settings (plan, settings, "Reserve", NULL))
    g_error ("the reserve cannot be set");
}

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  g_auto (DrawlDay) day = {0};

  if (argc != 2) {
    g_printerr ("edit-10000 PLAN\n");
    return 2;
  }
  g_autoptr (GFile) file = g_file_new_for_path (argv[1]);
  g_autoptr (DrawlPlan) plan = drawl_plan_load (file, NULL, &error);
  if (plan == NULL) {
    g_printerr ("%s\n", error->message);
    return 1;
  }
  g_print ("%u shots\n", drawl_plan_n_shots (plan));
  g_signal_connect (plan, "changed", G_CALLBACK (reckon_day), &day);
  measure (plan, "edit-10000: capture rate", N_EDITS, change_rate);
  measure (plan, "edit-10000: undo or redo of it", N_EDITS, undo_or_redo);
  measure (plan, "edit-10000: shot from end to end", N_EDITS, move_shot);
  measure (plan, "edit-10000: licence of a body", N_FEW, switch_tier);
  measure (plan, "edit-10000: reserve of all cards", N_FEW, change_reserve);
  return 0;
}
