/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Any bytes as shots on their way: what is read is written and read back the same, goes into a plan
 * that has none of it and once more into the same, and is taken back from there. */

#include "plan/shot-bundle.h"

#include "fuzz.h"
#include "plan/plan-file.h"

static void
insert_twice (DrawlShotBundle *bundle)
{
  g_autoptr (DrawlPlan) plan = drawl_plan_new ();
  g_autofree char *before = drawl_plan_to_data (plan, NULL);
  guint n = drawl_shot_bundle_n_shots (bundle);
  g_autoptr (GError) error = NULL;

  for (guint time = 1; time <= 2; time++) {
    drawl_shot_bundle_insert (bundle, plan, 0, "Copy", &error);
    g_assert_no_error (error);
    g_assert_cmpuint (drawl_plan_n_shots (plan), ==, n * time);
    g_assert_cmpuint (g_list_model_get_n_items (drawl_plan_get_bodies (plan)), ==,
                      drawl_shot_bundle_get_hired_fields (bundle)->len);
  }
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
  g_autoptr (DrawlShotBundle) bundle =
      drawl_shot_bundle_from_text (text, strlen (text), "fuzz", &error);

  fuzz_assert_outcome (bundle != NULL, error);
  if (bundle == NULL)
    return 0;
  gsize length;
  g_autofree char *written = drawl_shot_bundle_to_text (bundle, &length);
  g_autoptr (DrawlShotBundle) again =
      drawl_shot_bundle_from_text (written, length, "again", &error);
  g_assert_no_error (error);
  g_autofree char *twice = drawl_shot_bundle_to_text (again, NULL);
  g_assert_cmpstr (written, ==, twice);
  insert_twice (again);
  return 0;
}
