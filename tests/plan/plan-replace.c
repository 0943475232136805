/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A plan made like another one: whatever both were, it holds the same then, and undo brings back
 * what it held before. */

#include "any-edit.h"
#include "plan/plan-replace.h"

#define WALKS 60
#define EDITS 40

static DrawlPlan *
walked_plan (guint edits)
{
  DrawlPlan *plan = plan_of (PLAN (THREE_SHOTS));
  g_autoptr (DrawlBody) profile =
      drawl_body_ref (drawl_hired_body_get_body (drawl_plan_find_body (plan, "A")));

  for (guint i = 0; i < edits; i++)
    edit_at_random (plan, profile, 0);
  return plan;
}

static void
assert_replaced (DrawlPlan *plan, DrawlPlan *other)
{
  g_autofree char *before = all_of (plan), *wanted = all_of (other);
  gboolean same = g_str_equal (before, wanted);

  g_assert_true (drawl_plan_replace (plan, other, "Replace") == !same);
  g_autofree char *after = all_of (plan);
  g_assert_cmpstr (after, ==, wanted);
  if (same)
    return;
  g_assert_cmpstr (drawl_plan_undo_label (plan), ==, "Replace");
  drawl_plan_undo (plan);
  g_autofree char *back = all_of (plan);
  g_assert_cmpstr (back, ==, before);
  drawl_plan_redo (plan);
  g_autofree char *forth = all_of (plan);
  g_assert_cmpstr (forth, ==, wanted);
}

static void
test_any (void)
{
  for (guint i = 0; i < WALKS; i++) {
    g_autoptr (DrawlPlan) plan = walked_plan (i % EDITS);
    g_autoptr (DrawlPlan) other = walked_plan ((i * 7) % EDITS);
    assert_replaced (plan, other);
    assert_replaced (other, plan);
  }
}

static void
test_nothing_new (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS)), other = plan_of (PLAN (THREE_SHOTS));

  g_assert_false (drawl_plan_replace (plan, other, "Replace"));
  g_assert_false (drawl_plan_can_undo (plan));
  g_assert_false (drawl_plan_get_modified (plan));
}

/* What has one slate and one place in both is one shot to who looks at it. */
static void
test_shots_stay (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS)), other = plan_of (PLAN (THREE_SHOTS));
  DrawlShot *first = drawl_plan_get_shot (plan, 0), *last = drawl_plan_get_shot (plan, 2);

  edit_shot (other, drawl_plan_get_shot (other, 0), "Edit", fields->takes = 7);
  edit_shot (other, drawl_plan_get_shot (other, 1), "Edit",
             drawl_shot_fields_set (&fields->slate, "other"));
  g_assert_true (drawl_plan_replace (plan, other, "Replace"));
  g_assert_true (drawl_plan_get_shot (plan, 0) == first);
  g_assert_true (drawl_plan_get_shot (plan, 2) == last);
  g_assert_cmpuint (drawl_shot_get_fields (first)->takes, ==, 7);
  g_assert_nonnull (drawl_plan_find_shot (plan, "other"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan-replace/any", test_any);
  g_test_add_func ("/plan-replace/nothing-new", test_nothing_new);
  g_test_add_func ("/plan-replace/shots-stay", test_shots_stay);
  return g_test_run ();
}
