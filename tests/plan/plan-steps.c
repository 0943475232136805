/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Steps of several edits, and who hears of what: views are told once, of what changed only, and
 * when everything is worked out. */

#include "fixture.h"

/* ---- Steps ---- */

static void
test_no_change (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));

  edit_shot (plan, drawl_plan_get_shot (plan, 0), "Edit", fields->takes = 1);
  drawl_plan_move_shot (plan, 1, 1, "Edit");
  g_assert_false (drawl_plan_can_undo (plan));
  g_assert_false (drawl_plan_get_modified (plan));
}

static void
test_drag (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  DrawlShot *shot = drawl_plan_get_shot (plan, 0);
  g_autofree char *before = all_of (plan);

  drawl_plan_begin_step (plan, "Drag");
  for (guint takes = 2; takes < 50; takes++)
    edit_shot (plan, shot, "Inner", fields->takes = takes);
  g_assert_false (drawl_plan_can_undo (plan));
  g_assert_true (drawl_plan_get_modified (plan));
  drawl_plan_end_step (plan);
  g_assert_cmpstr (drawl_plan_undo_label (plan), ==, "Drag");
  drawl_plan_undo (plan);
  g_autofree char *after = all_of (plan);
  g_assert_cmpstr (before, ==, after);
  g_assert_false (drawl_plan_can_undo (plan));
}

/* There and back again is no step. */
static void
test_drag_back (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  DrawlShot *shot = drawl_plan_get_shot (plan, 0);

  drawl_plan_begin_step (plan, "Drag");
  edit_shot (plan, shot, "Inner", fields->takes = 5);
  edit_shot (plan, shot, "Inner", fields->takes = 1);
  drawl_plan_end_step (plan);
  g_assert_false (drawl_plan_can_undo (plan));
  g_assert_false (drawl_plan_get_modified (plan));
}

/* Two shots that swap slates over a third: undone in the same order backwards. */
static void
test_swap_slates (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  DrawlShot *first = drawl_plan_get_shot (plan, 0), *second = drawl_plan_get_shot (plan, 1);

  drawl_plan_begin_step (plan, "Swap");
  edit_shot (plan, first, "", drawl_shot_fields_set (&fields->slate, "x"));
  edit_shot (plan, second, "", drawl_shot_fields_set (&fields->slate, "1"));
  edit_shot (plan, first, "", drawl_shot_fields_set (&fields->slate, "2"));
  drawl_plan_end_step (plan);
  g_assert_true (drawl_plan_find_shot (plan, "2") == first);
  drawl_plan_undo (plan);
  g_assert_true (drawl_plan_find_shot (plan, "1") == first);
  g_assert_true (drawl_plan_find_shot (plan, "2") == second);
  g_assert_null (drawl_plan_find_shot (plan, "x"));
}

/* ---- Who hears of it ---- */

typedef struct {
  guint changed, items, modified, can_undo, verdict, shot_changed, summary, title;
} Heard;

static void
count (guint *counter)
{
  (*counter)++;
}

static void
listen (gpointer object, const char *signal, guint *counter)
{
  g_signal_connect_swapped (object, signal, G_CALLBACK (count), counter);
}

static void
listen_to_all (DrawlPlan *plan, DrawlShot *shot, Heard *heard)
{
  listen (plan, "changed", &heard->changed);
  listen (plan, "items-changed", &heard->items);
  listen (plan, "notify::modified", &heard->modified);
  listen (plan, "notify::can-undo", &heard->can_undo);
  listen (plan, "notify::title", &heard->title);
  listen (shot, "notify::verdict", &heard->verdict);
  listen (shot, "notify::summary", &heard->summary);
  listen (shot, "changed", &heard->shot_changed);
}

static void
test_told_of_edit (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  DrawlShot *shot = drawl_plan_get_shot (plan, 1);
  Heard heard = {0};

  listen_to_all (plan, shot, &heard);
  edit_shot (plan, shot, "Edit",
             drawl_blanks_edit (&fields->blanks, DRAWL_TIMING_CAPTURE, exact ("48"), NULL));
  g_assert_cmpuint (heard.changed, ==, 1);
  g_assert_cmpuint (heard.items, ==, 0);
  g_assert_cmpuint (heard.modified, ==, 1);
  g_assert_cmpuint (heard.can_undo, ==, 1);
  g_assert_cmpuint (heard.verdict, ==, 1);
  g_assert_cmpuint (heard.summary, ==, 1);
  g_assert_cmpuint (heard.shot_changed, ==, 1);

  /* A second edit changes neither whether it can be undone in that sense, nor the verdict. */
  edit_shot (plan, shot, "Edit", fields->takes = 3);
  g_assert_cmpuint (heard.changed, ==, 2);
  g_assert_cmpuint (heard.modified, ==, 1);
  g_assert_cmpuint (heard.verdict, ==, 1);
  g_assert_cmpuint (heard.summary, ==, 1);
  g_assert_cmpuint (heard.shot_changed, ==, 2);
}

static void
test_told_of_others (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  Heard heard = {0};

  listen_to_all (plan, drawl_plan_get_shot (plan, 1), &heard);
  edit_shot (plan, drawl_plan_get_shot (plan, 0), "Edit", fields->takes = 3);
  g_assert_cmpuint (heard.changed, ==, 1);
  g_assert_cmpuint (heard.shot_changed, ==, 0);
  g_autoptr (DrawlHiredFields) fields =
      drawl_hired_fields_copy (drawl_hired_body_get_fields (drawl_plan_find_body (plan, "A")));
  fields->tier = 1;
  g_assert_true (
      drawl_plan_set_body (plan, drawl_plan_find_body (plan, "A"), fields, "Tier", NULL));
  g_assert_cmpuint (heard.changed, ==, 2);
  g_assert_cmpuint (heard.verdict, ==, 1);
  g_autoptr (DrawlPlanSettings) settings =
      drawl_plan_settings_copy (drawl_plan_get_settings (plan));
  drawl_shot_fields_set (&settings->title, "Glass");
  g_assert_true (drawl_plan_set_settings (plan, settings, "Title", NULL));
  g_assert_cmpuint (heard.changed, ==, 3);
  g_assert_cmpuint (heard.title, ==, 1);
  drawl_plan_remove_body (plan, drawl_plan_find_body (plan, "A"), "Remove");
  g_assert_cmpuint (heard.changed, ==, 4);
  drawl_plan_undo (plan);
  g_assert_cmpuint (heard.changed, ==, 5);
  drawl_plan_move_shot (plan, 0, 2, "Move");
  g_assert_cmpuint (heard.items, ==, 1);
  g_assert_cmpuint (heard.changed, ==, 6);
}

/* The views follow a drag as it goes. */
static void
test_told_in_step (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  DrawlShot *shot = drawl_plan_get_shot (plan, 1);
  Heard heard = {0};

  listen_to_all (plan, shot, &heard);
  drawl_plan_begin_step (plan, "Drag");
  g_assert_cmpuint (heard.changed, ==, 0);
  edit_shot (plan, shot, "", fields->takes = 3);
  edit_shot (plan, shot, "", fields->takes = 4);
  g_assert_cmpuint (heard.changed, ==, 2);
  drawl_plan_end_step (plan);
  g_assert_cmpuint (heard.changed, ==, 3);
  g_assert_cmpuint (heard.can_undo, ==, 1);
  drawl_plan_begin_step (plan, "Nothing");
  drawl_plan_end_step (plan);
  g_assert_cmpuint (heard.changed, ==, 3);
}

static void
check_settled (DrawlShot *shot, GParamSpec *pspec, DrawlPlan *plan)
{
  g_assert_cmpint (drawl_shot_get_verdict (shot), ==, DRAWL_VERDICT_AS_HIRED);
  g_assert_true (drawl_plan_find_shot (plan, "2A") == shot);
  g_object_set_data (G_OBJECT (shot), "heard", shot);
}

/* Who hears of a new slate finds the figures and the look-up as they are to be. */
static void
test_settled_when_told (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  DrawlShot *shot = drawl_plan_get_shot (plan, 1);

  g_signal_connect (shot, "notify::slate", G_CALLBACK (check_settled), plan);
  edit_shot (plan, shot, "Edit", {
    drawl_shot_fields_set (&fields->slate, "2A");
    drawl_blanks_edit (&fields->blanks, DRAWL_TIMING_CAPTURE, exact ("48"), NULL);
  });
  g_assert_nonnull (g_object_get_data (G_OBJECT (shot), "heard"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/plan-steps/step/no-change", test_no_change);
  g_test_add_func ("/plan-steps/step/drag", test_drag);
  g_test_add_func ("/plan-steps/step/drag-back", test_drag_back);
  g_test_add_func ("/plan-steps/step/swap-slates", test_swap_slates);
  g_test_add_func ("/plan-steps/told/of-edit", test_told_of_edit);
  g_test_add_func ("/plan-steps/told/of-others", test_told_of_others);
  g_test_add_func ("/plan-steps/told/in-step", test_told_in_step);
  g_test_add_func ("/plan-steps/told/settled", test_settled_when_told);

  return g_test_run ();
}
