/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A long random walk of edits: whatever happened before, a plan is the one that its file gives,
 * undo leads back to the start and redo to the end. */

#include "any-edit.h"

/* A plan that was worked out step by step is the one that is read from its file. */
static void
assert_as_from_file (DrawlPlan *plan)
{
  g_autofree char *text = drawl_plan_to_data (plan, NULL);
  g_autoptr (DrawlPlan) again = plan_of (text);
  g_autofree char *stepwise = all_of (plan), *at_once = all_of (again);

  g_assert_cmpstr (stepwise, ==, at_once);
}

static void
test_random_walk (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  g_autoptr (DrawlBody) profile =
      drawl_body_ref (drawl_hired_body_get_body (drawl_plan_find_body (plan, "A")));
  g_autofree char *start = all_of (plan);
  guint steps = 0;

  for (guint i = 0; i < 1000; i++) {
    edit_at_random (plan, profile, 0);
    if (i % 50 == 0)
      assert_as_from_file (plan);
    if (g_test_rand_int_range (0, 10) == 0)
      drawl_plan_undo (plan);
  }
  g_autofree char *end = all_of (plan);
  for (; drawl_plan_can_undo (plan); steps++) {
    drawl_plan_undo (plan);
    if (steps % 100 == 0)
      assert_as_from_file (plan);
  }
  g_autofree char *undone = all_of (plan);
  g_assert_cmpuint (steps, >, 200);
  g_assert_cmpstr (undone, ==, start);
  g_assert_false (drawl_plan_get_modified (plan));
  for (; steps > 0; steps--)
    drawl_plan_redo (plan);
  g_autofree char *redone = all_of (plan);
  g_assert_cmpstr (redone, ==, end);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/plan-walk/random", test_random_walk);

  return g_test_run ();
}
