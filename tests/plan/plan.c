/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The document: edits, what they work out anew, what is refused, and that undo takes every edit
 * back. */

#include "fixture.h"

static char *
slates (DrawlPlan *plan)
{
  GString *all = g_string_new (NULL);

  for (guint i = 0; i < drawl_plan_n_shots (plan); i++)
    g_string_append_printf (all, "%s%s", i > 0 ? " " : "",
                            drawl_shot_get_slate (drawl_plan_get_shot (plan, i)));
  return g_string_free (all, FALSE);
}

#define assert_slates(plan, expected)                                                              \
  G_STMT_START                                                                                     \
  {                                                                                                \
    g_autofree char *slates_ = slates (plan);                                                      \
    g_assert_cmpstr (slates_, ==, (expected));                                                     \
  }                                                                                                \
  G_STMT_END

/* ---- Edits and their undoing ---- */

static void
set_shot (DrawlPlan *plan)
{
  edit_shot (plan, drawl_plan_get_shot (plan, 1), "Edit", fields->takes = 7);
}

static void
rename_shot (DrawlPlan *plan)
{
  edit_shot (plan, drawl_plan_get_shot (plan, 1), "Edit",
             drawl_shot_fields_set (&fields->slate, "2A"));
  g_assert_null (drawl_plan_find_shot (plan, "2"));
  g_assert_true (drawl_plan_find_shot (plan, "2A") == drawl_plan_get_shot (plan, 1));
}

static void
insert_shot (DrawlPlan *plan)
{
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_new ("9", exact ("25"));

  g_assert_true (drawl_plan_insert_shot (plan, 1, fields, "Edit", NULL));
  assert_slates (plan, "1 9 2 3");
}

static void
append_shot (DrawlPlan *plan)
{
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_new ("9", exact ("25"));

  g_assert_true (drawl_plan_insert_shot (plan, G_MAXUINT, fields, "Edit", NULL));
  assert_slates (plan, "1 2 3 9");
}

static void
remove_shot (DrawlPlan *plan)
{
  drawl_plan_remove_shot (plan, 1, "Edit");
  assert_slates (plan, "1 3");
  g_assert_null (drawl_plan_find_shot (plan, "2"));
}

static void
move_down (DrawlPlan *plan)
{
  drawl_plan_move_shot (plan, 0, 2, "Edit");
  assert_slates (plan, "2 3 1");
}

static void
move_up (DrawlPlan *plan)
{
  drawl_plan_move_shot (plan, 2, 0, "Edit");
  assert_slates (plan, "3 1 2");
}

static void
set_tier (DrawlPlan *plan)
{
  DrawlHiredBody *hired = drawl_plan_find_body (plan, "A");
  g_autoptr (DrawlHiredFields) fields =
      drawl_hired_fields_copy (drawl_hired_body_get_fields (hired));
  DrawlShot *shot = drawl_plan_get_shot (plan, 1);

  g_assert_cmpint (drawl_shot_get_verdict (shot), ==, DRAWL_VERDICT_NEEDS_LICENCE);
  fields->tier = 1;
  g_assert_true (drawl_plan_set_body (plan, hired, fields, "Edit", NULL));
  g_assert_cmpint (drawl_shot_get_verdict (shot), ==, DRAWL_VERDICT_AS_HIRED);
}

static void
rename_body (DrawlPlan *plan)
{
  DrawlHiredBody *hired = drawl_plan_find_body (plan, "A");
  g_autoptr (DrawlHiredFields) fields =
      drawl_hired_fields_copy (drawl_hired_body_get_fields (hired));
  DrawlShot *shot = drawl_plan_get_shot (plan, 0);

  g_free (fields->id);
  fields->id = g_strdup ("Q");
  g_assert_true (drawl_plan_set_body (plan, hired, fields, "Edit", NULL));
  g_assert_cmpstr (drawl_shot_get_fields (shot)->body, ==, "Q");
  g_assert_cmpstr (drawl_shot_get_fields (drawl_plan_get_shot (plan, 2))->body, ==, "F");
  g_assert_cmpint (drawl_shot_get_verdict (shot), ==, DRAWL_VERDICT_AS_HIRED);
  g_assert_true (drawl_plan_find_shot (plan, "1") == shot);
}

static void
insert_body (DrawlPlan *plan)
{
  const DrawlHiredFields *a = drawl_hired_body_get_fields (drawl_plan_find_body (plan, "A"));
  g_autoptr (DrawlHiredFields) fields = drawl_hired_fields_new ("B", a->body);

  g_assert_true (drawl_plan_insert_body (plan, 0, fields, "Edit", NULL));
  g_assert_cmpuint (g_list_model_get_n_items (drawl_plan_get_bodies (plan)), ==, 3);
}

static void
remove_body (DrawlPlan *plan)
{
  drawl_plan_remove_body (plan, drawl_plan_find_body (plan, "A"), "Edit");

  DrawlShot *shot = drawl_plan_get_shot (plan, 1);
  g_assert_cmpstr (drawl_shot_get_fields (shot)->body, ==, "");
  g_assert_cmpint (drawl_shot_get_check (shot)->reasons[0].kind, ==, DRAWL_REASON_NO_BODY);
  g_assert_cmpstr (drawl_shot_get_fields (shot)->size, ==, "hd");
  g_assert_false (drawl_shot_get_load (shot)->known);
}

static void
set_settings (DrawlPlan *plan)
{
  g_autoptr (DrawlPlanSettings) settings =
      drawl_plan_settings_copy (drawl_plan_get_settings (plan));
  gint64 before = drawl_shot_get_load (drawl_plan_get_shot (plan, 0))->card_frames;

  settings->reserve_percent = exact ("50");
  g_free (settings->title);
  settings->title = g_strdup ("Glass");
  g_assert_true (drawl_plan_set_settings (plan, settings, "Edit", NULL));
  g_assert_cmpint (drawl_shot_get_load (drawl_plan_get_shot (plan, 0))->card_frames, <, before);
}

typedef struct {
  const char *name;
  void (*edit) (DrawlPlan *plan);
} Edit;

static const Edit edits[] = {
    {"set-shot", set_shot},       {"rename-shot", rename_shot}, {"insert-shot", insert_shot},
    {"append-shot", append_shot}, {"remove-shot", remove_shot}, {"move-down", move_down},
    {"move-up", move_up},         {"set-tier", set_tier},       {"rename-body", rename_body},
    {"insert-body", insert_body}, {"remove-body", remove_body}, {"set-settings", set_settings},
};

static void
test_edit (gconstpointer data)
{
  const Edit *row = data;
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  g_autofree char *before = all_of (plan);

  row->edit (plan);
  g_autofree char *after = all_of (plan);
  g_assert_cmpstr (before, !=, after);
  g_assert_cmpstr (drawl_plan_undo_label (plan), ==, "Edit");
  g_assert_true (drawl_plan_get_modified (plan));

  for (guint round = 0; round < 2; round++) {
    drawl_plan_undo (plan);
    g_autofree char *undone = all_of (plan);
    g_assert_cmpstr (undone, ==, before);
    g_assert_false (drawl_plan_get_modified (plan));
    g_assert_false (drawl_plan_can_undo (plan));
    g_assert_cmpstr (drawl_plan_redo_label (plan), ==, "Edit");
    drawl_plan_redo (plan);
    g_autofree char *redone = all_of (plan);
    g_assert_cmpstr (redone, ==, after);
    g_assert_false (drawl_plan_can_redo (plan));
  }
}

/* The shot that comes back is the same object, so that a view finds its selection again. */
static void
test_same_object (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  DrawlShot *shot = drawl_plan_get_shot (plan, 1);

  drawl_plan_remove_shot (plan, 1, "Remove");
  g_assert_cmpint (drawl_plan_shot_position (plan, shot), ==, -1);
  drawl_plan_undo (plan);
  g_assert_true (drawl_plan_get_shot (plan, 1) == shot);
}

/* ---- Refused edits ---- */

typedef struct {
  const char *name;
  void (*change) (DrawlShotFields *fields);
  int code;
  const char *says;
} Refused;

static void
take_slate (DrawlShotFields *fields)
{
  drawl_shot_fields_set (&fields->slate, "3");
}

static void
no_slate (DrawlShotFields *fields)
{
  drawl_shot_fields_set (&fields->slate, "");
}

static void
no_such_body (DrawlShotFields *fields)
{
  drawl_shot_fields_set (&fields->body, "Z");
}

static void
drop_at_24 (DrawlShotFields *fields)
{
  fields->drop = TRUE;
}

static void
no_takes (DrawlShotFields *fields)
{
  fields->takes = 0;
}

static void
handle_below_0 (DrawlShotFields *fields)
{
  fields->handle_after_s = exact ("-1");
}

static const Refused refused[] = {
    {"slate-taken", take_slate, DRAWL_PLAN_ERROR_DUPLICATE, "“3”"},
    {"no-slate", no_slate, DRAWL_PLAN_ERROR_VALUE, "slate"},
    {"no-such-body", no_such_body, DRAWL_PLAN_ERROR_UNKNOWN, "“Z”"},
    {"drop-at-24", drop_at_24, DRAWL_PLAN_ERROR_VALUE, "“drop”"},
    {"no-takes", no_takes, DRAWL_PLAN_ERROR_VALUE, "“takes”"},
    {"handle-below-0", handle_below_0, DRAWL_PLAN_ERROR_VALUE, "“handle_after_s”"},
};

static void
test_refused (gconstpointer data)
{
  const Refused *row = data;
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  g_autofree char *before = all_of (plan);
  g_autoptr (DrawlShotFields) fields =
      drawl_shot_fields_copy (drawl_shot_get_fields (drawl_plan_get_shot (plan, 0)));
  g_autoptr (GError) set_error = NULL, insert_error = NULL;

  row->change (fields);
  g_assert_false (
      drawl_plan_set_shot (plan, drawl_plan_get_shot (plan, 0), fields, "Edit", &set_error));
  assert_refused (set_error, row->code, row->says);
  g_assert_false (drawl_plan_insert_shot (plan, 0, fields, "Edit", &insert_error));
  g_autofree char *after = all_of (plan);
  g_assert_cmpstr (before, ==, after);
  g_assert_false (drawl_plan_can_undo (plan));
}

static void
test_refused_bodies (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  DrawlHiredBody *hired = drawl_plan_find_body (plan, "A");
  g_autoptr (DrawlHiredFields) fields =
      drawl_hired_fields_copy (drawl_hired_body_get_fields (hired));
  g_autoptr (GError) error = NULL;

  g_assert_false (drawl_plan_insert_body (plan, 0, fields, "Edit", &error));
  assert_refused (error, DRAWL_PLAN_ERROR_DUPLICATE, "“A”");
  g_clear_error (&error);
  fields->tier = 2;
  g_assert_false (drawl_plan_set_body (plan, hired, fields, "Edit", &error));
  assert_refused (error, DRAWL_PLAN_ERROR_VALUE, "“tier”");
  g_clear_error (&error);
  fields->tier = 0;
  fields->card = 2;
  g_assert_false (drawl_plan_set_body (plan, hired, fields, "Edit", &error));
  assert_refused (error, DRAWL_PLAN_ERROR_VALUE, "“card”");
  g_assert_false (drawl_plan_can_undo (plan));
}

static void
test_refused_settings (void)
{
  g_autoptr (DrawlPlan) plan = drawl_plan_new ();
  g_autoptr (DrawlPlanSettings) settings =
      drawl_plan_settings_copy (drawl_plan_get_settings (plan));
  g_autoptr (GError) error = NULL;

  settings->mains_hz = 55;
  g_assert_false (drawl_plan_set_settings (plan, settings, "Edit", &error));
  assert_refused (error, DRAWL_PLAN_ERROR_VALUE, "“mains_hz”");
  g_assert_cmpint (drawl_plan_get_settings (plan)->mains_hz, ==, 50);
}

/* ---- Names ---- */

typedef struct {
  const char *name;
  const char *slates[4];
  const char *next;
} Names;

static const Names names[] = {
    {"first", {NULL}, "1"},
    {"number", {"12"}, "13"},
    {"nine", {"9"}, "10"},
    {"zeros", {"007"}, "008"},
    {"letter", {"12A"}, "12B"},
    {"last-letter", {"12Z"}, "12AA"},
    {"two-letters", {"12AZ"}, "12BA"},
    {"small", {"3c"}, "3d"},
    {"lone-letter", {"C"}, "D"},
    {"word", {"Intro"}, "Intro 2"},
    {"word-number", {"Intro 2"}, "Intro 3"},
    {"sign", {"4*"}, "4* 2"},
    {"umlaut", {"4ä"}, "4ä 2"},
    {"taken", {"3", "4", "2"}, "5"},
};

static void
test_next_slate (gconstpointer data)
{
  const Names *row = data;
  g_autoptr (DrawlPlan) plan = drawl_plan_new ();

  for (guint i = 0; row->slates[i] != NULL; i++) {
    g_autoptr (DrawlShotFields) fields = drawl_shot_fields_new (row->slates[i], exact ("24"));
    g_assert_true (drawl_plan_insert_shot (plan, i, fields, "", NULL));
  }
  g_autofree char *next = drawl_plan_next_slate (plan);
  g_assert_cmpstr (next, ==, row->next);
}

static void
test_next_body_id (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (""));
  g_autofree char *next = drawl_plan_next_body_id (plan);

  g_assert_cmpstr (next, ==, "B");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/plan/edit", edits, test_edit);
  add_rows ("/plan/refused", refused, test_refused);
  add_rows ("/plan/next-slate", names, test_next_slate);
  g_test_add_func ("/plan/same-object", test_same_object);
  g_test_add_func ("/plan/refused/bodies", test_refused_bodies);
  g_test_add_func ("/plan/refused/settings", test_refused_settings);
  g_test_add_func ("/plan/next-body-id", test_next_body_id);

  return g_test_run ();
}
