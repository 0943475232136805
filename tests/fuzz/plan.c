/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Any bytes as a plan: what is read has its look-ups and figures, is written and read back the
 * same, and bears an edit and its undoing. */

#include "fuzz.h"
#include "plan/day.h"
#include "plan/plan-file.h"
#include "plan/working.h"

static void
look_at_all (DrawlPlan *plan)
{
  g_auto (DrawlDay) day = {0};

  drawl_day_reckon (plan, &day);
  g_assert_cmpuint (day.shots, ==, drawl_plan_n_shots (plan));
  for (guint i = 0; i < drawl_plan_n_shots (plan); i++) {
    DrawlShot *shot = drawl_plan_get_shot (plan, i);
    g_autofree char *summary = drawl_shot_dup_summary (shot);
    g_assert_true (drawl_plan_find_shot (plan, drawl_shot_get_slate (shot)) == shot);
    for (guint figure = 0; figure < DRAWL_N_FIGURES; figure++) {
      g_autoptr (DrawlWorking) working = drawl_working_new (plan, shot, figure);
      g_assert_true (working == NULL || g_utf8_validate (working->numbers, -1, NULL));
    }
  }
}

static void
edit_and_undo (DrawlPlan *plan, const char *before)
{
  g_autofree char *slate = drawl_plan_next_slate (plan);
  g_autoptr (DrawlShotFields) fields =
      drawl_shot_fields_new (slate, drawl_plan_get_settings (plan)->playback);

  g_assert_true (drawl_plan_insert_shot (plan, 0, fields, "Edit", NULL));
  drawl_plan_remove_shot (plan, drawl_plan_n_shots (plan) - 1, "Edit");
  drawl_plan_undo (plan);
  drawl_plan_undo (plan);
  g_autofree char *after = drawl_plan_to_data (plan, NULL);
  g_assert_cmpstr (before, ==, after);
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = fuzz_text (data, size);
  g_autoptr (DrawlPlan) plan = drawl_plan_from_data (text, strlen (text), "fuzz", &error);

  fuzz_assert_outcome (plan != NULL, error);
  if (plan == NULL)
    return 0;
  look_at_all (plan);

  gsize length;
  g_autofree char *written = drawl_plan_to_data (plan, &length);
  g_autoptr (DrawlPlan) again = drawl_plan_from_data (written, length, "again", &error);
  g_assert_no_error (error);
  g_autofree char *twice = drawl_plan_to_data (again, NULL);
  g_assert_cmpstr (written, ==, twice);
  edit_and_undo (plan, written);
  return 0;
}
