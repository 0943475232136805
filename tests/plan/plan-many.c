/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Edits of many shots at once: what they lead to, one step each, told of once, and taken back. */

#include "fixture.h"

#define N_SHOTS 12

/* Shots "1" … "12", each on body A. */
static DrawlPlan *
plan_of_twelve (void)
{
  DrawlPlan *plan = plan_of (PLAN (""));
  g_autoptr (GPtrArray) none = g_ptr_array_new ();
  g_autoptr (GPtrArray) fields =
      g_ptr_array_new_with_free_func ((GDestroyNotify)drawl_shot_fields_free);

  for (int i = 1; i <= N_SHOTS; i++) {
    g_autofree char *slate = g_strdup_printf ("%d", i);
    DrawlShotFields *shot = drawl_shot_fields_new (slate, exact ("24"));
    drawl_shot_fields_set (&shot->body, "A");
    drawl_shot_fields_set (&shot->size, "hd");
    drawl_shot_fields_set (&shot->codec, "intra");
    g_ptr_array_add (fields, shot);
  }
  g_assert_true (drawl_plan_insert_all (plan, 0, none, fields, "Add", NULL));
  drawl_plan_mark_saved (plan);
  return plan;
}

static GPtrArray *
shots_of (DrawlPlan *plan, const char *slates)
{
  g_auto (GStrv) names = g_strsplit (slates, " ", -1);
  GPtrArray *shots = g_ptr_array_new ();

  for (char **name = names; *name != NULL; name++)
    if (**name != '\0') {
      DrawlShot *shot = drawl_plan_find_shot (plan, *name);
      g_assert_nonnull (shot);
      g_ptr_array_add (shots, shot);
    }
  return shots;
}

static char *
slates_of (DrawlPlan *plan)
{
  GString *slates = g_string_new (NULL);

  for (guint i = 0; i < drawl_plan_n_shots (plan); i++)
    g_string_append_printf (slates, "%s%s", i > 0 ? " " : "",
                            drawl_shot_get_slate (drawl_plan_get_shot (plan, i)));
  return g_string_free (slates, FALSE);
}

/* ---- What is told ---- */

typedef struct {
  guint changed, items;
  guint position, removed, added;
  GPtrArray *copy; /* of DrawlShot: a view that follows what it is told */
} Heard;

static void
on_items (GListModel *plan, guint position, guint removed, guint added, Heard *heard)
{
  heard->items++;
  heard->position = position;
  heard->removed = removed;
  heard->added = added;
  if (removed > 0)
    g_ptr_array_remove_range (heard->copy, position, removed);
  for (guint i = 0; i < added; i++)
    g_ptr_array_insert (heard->copy, (int)(position + i),
                        g_list_model_get_item (plan, position + i));
}

static void
on_changed (DrawlPlan *plan, Heard *heard)
{
  heard->changed++;
  g_assert_cmpuint (heard->copy->len, ==, drawl_plan_n_shots (plan));
  for (guint i = 0; i < heard->copy->len; i++)
    g_assert_true (heard->copy->pdata[i] == drawl_plan_get_shot (plan, i));
}

static void
listen (DrawlPlan *plan, Heard *heard)
{
  heard->copy = g_ptr_array_new_with_free_func (g_object_unref);
  for (guint i = 0; i < drawl_plan_n_shots (plan); i++)
    g_ptr_array_add (heard->copy, g_object_ref (drawl_plan_get_shot (plan, i)));
  g_signal_connect (plan, "items-changed", G_CALLBACK (on_items), heard);
  g_signal_connect (plan, "changed", G_CALLBACK (on_changed), heard);
}

static void
stop_listening (DrawlPlan *plan, Heard *heard)
{
  g_signal_handlers_disconnect_by_data (plan, heard);
  g_ptr_array_unref (heard->copy);
}

/* ---- Lists ---- */

typedef enum { REMOVE, MOVE, REORDER } ListEdit;

typedef struct {
  const char *name;
  ListEdit edit;
  const char *shots;
  guint position;
  const char *then;
  guint told_at, told_removed, told_added; /* nothing at all when both are 0 */
} ListRow;

static const ListRow list_rows[] = {
    {"remove-none", REMOVE, "", 0, "1 2 3 4 5 6 7 8 9 10 11 12", 0, 0, 0},
    {"remove-one", REMOVE, "3", 0, "1 2 4 5 6 7 8 9 10 11 12", 2, 1, 0},
    {"remove-scattered", REMOVE, "10 2 5", 0, "1 3 4 6 7 8 9 11 12", 1, 9, 6},
    {"remove-all", REMOVE, "1 2 3 4 5 6 7 8 9 10 11 12", 0, "", 0, 12, 0},
    {"move-none", MOVE, "", 3, "1 2 3 4 5 6 7 8 9 10 11 12", 0, 0, 0},
    {"move-nowhere", MOVE, "4 5", 4, "1 2 3 4 5 6 7 8 9 10 11 12", 0, 0, 0},
    {"move-down", MOVE, "2 1", 4, "3 4 1 2 5 6 7 8 9 10 11 12", 0, 4, 4},
    {"move-up", MOVE, "12 7", 0, "7 12 1 2 3 4 5 6 8 9 10 11", 0, 12, 12},
    {"gather", MOVE, "2 4 6", 4, "1 3 2 4 6 5 7 8 9 10 11 12", 1, 5, 5},
    {"move-to-end", MOVE, "1", 99, "2 3 4 5 6 7 8 9 10 11 12 1", 0, 12, 12},
    {"reorder", REORDER, "1 2 4 3 5 6 7 8 9 10 11 12", 0, "1 2 4 3 5 6 7 8 9 10 11 12", 2, 2, 2},
    {"reorder-same", REORDER, "1 2 3 4 5 6 7 8 9 10 11 12", 0, "1 2 3 4 5 6 7 8 9 10 11 12", 0, 0,
     0},
};

static void
do_edit (DrawlPlan *plan, const ListRow *row)
{
  g_autoptr (GPtrArray) shots = shots_of (plan, row->shots);

  if (row->edit == REMOVE)
    drawl_plan_remove_all (plan, shots, "Many");
  else if (row->edit == MOVE)
    drawl_plan_move_all (plan, shots, row->position, "Many");
  else
    drawl_plan_reorder (plan, shots, "Many");
}

static void
test_list (gconstpointer data)
{
  const ListRow *row = data;
  g_autoptr (DrawlPlan) plan = plan_of_twelve ();
  g_autofree char *before = all_of (plan);
  gboolean nothing = row->told_removed == 0 && row->told_added == 0;
  Heard heard = {0};

  listen (plan, &heard);
  do_edit (plan, row);
  g_autofree char *slates = slates_of (plan), *after = all_of (plan);
  g_assert_cmpstr (slates, ==, row->then);
  g_assert_cmpuint (heard.items, ==, nothing ? 0 : 1);
  g_assert_cmpuint (heard.changed, ==, nothing ? 0 : 1);
  g_assert_cmpint (drawl_plan_get_modified (plan), ==, !nothing);
  g_assert_cmpuint (heard.position, ==, row->told_at);
  g_assert_cmpuint (heard.removed, ==, row->told_removed);
  g_assert_cmpuint (heard.added, ==, row->told_added);
  if (!nothing) {
    g_assert_cmpstr (drawl_plan_undo_label (plan), ==, "Many");
    drawl_plan_undo (plan);
    g_autofree char *undone = all_of (plan);
    g_assert_cmpstr (before, ==, undone);
    g_assert_cmpuint (heard.items, ==, 2);
    drawl_plan_redo (plan);
    g_autofree char *redone = all_of (plan);
    g_assert_cmpstr (after, ==, redone);
    g_assert_cmpuint (heard.items, ==, 3);
  }
  stop_listening (plan, &heard);
}

/* A slate that went is free, and taken again when its shot comes back. */
static void
test_slates_follow (void)
{
  g_autoptr (DrawlPlan) plan = plan_of_twelve ();
  g_autoptr (GPtrArray) shots = shots_of (plan, "3 4");
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_new ("3", exact ("24"));

  drawl_plan_remove_all (plan, shots, "Remove");
  g_assert_null (drawl_plan_find_shot (plan, "3"));
  g_assert_true (drawl_plan_insert_shot (plan, 0, fields, "Add", NULL));
  drawl_plan_undo (plan);
  drawl_plan_undo (plan);
  g_assert_false (drawl_plan_insert_shot (plan, 0, fields, "Add", NULL));
}

/* Shots that were away hear of what their body was given meanwhile only when they come back. */
static void
test_comes_back_worked_out (void)
{
  g_autoptr (DrawlPlan) plan = plan_of_twelve ();
  DrawlShot *shot = drawl_plan_find_shot (plan, "3");
  g_autoptr (GPtrArray) shots = shots_of (plan, "3");

  edit_shot (plan, shot, "Rate",
             drawl_blanks_edit (&fields->blanks, DRAWL_TIMING_CAPTURE, exact ("120"), NULL));
  g_assert_cmpint (drawl_shot_get_verdict (shot), ==, DRAWL_VERDICT_NEEDS_LICENCE);
  DrawlHiredBody *hired = drawl_plan_find_body (plan, "A");
  g_autoptr (DrawlHiredFields) body = drawl_hired_fields_copy (drawl_hired_body_get_fields (hired));
  body->tier = 1;
  g_assert_true (drawl_plan_set_body (plan, hired, body, "Tier", NULL));
  g_assert_cmpint (drawl_shot_get_verdict (shot), ==, DRAWL_VERDICT_AS_HIRED);
  drawl_plan_remove_all (plan, shots, "Remove");
  drawl_plan_undo (plan);
  g_assert_cmpint (drawl_shot_get_verdict (shot), ==, DRAWL_VERDICT_AS_HIRED);
  drawl_plan_undo (plan);
  g_assert_cmpint (drawl_shot_get_verdict (shot), ==, DRAWL_VERDICT_NEEDS_LICENCE);
}

/* ---- Fields ---- */

/* The fields of @shots, of which each gets so many takes. */
static GPtrArray *
with_takes (const GPtrArray *shots, guint takes)
{
  GPtrArray *list = g_ptr_array_new_with_free_func ((GDestroyNotify)drawl_shot_fields_free);

  for (guint i = 0; i < shots->len; i++) {
    DrawlShotFields *fields = drawl_shot_fields_copy (drawl_shot_get_fields (shots->pdata[i]));
    fields->takes = takes;
    g_ptr_array_add (list, fields);
  }
  return list;
}

static guint
sum_of_takes (DrawlPlan *plan)
{
  guint sum = 0;

  for (guint i = 0; i < drawl_plan_n_shots (plan); i++)
    sum += drawl_shot_get_fields (drawl_plan_get_shot (plan, i))->takes;
  return sum;
}

static void
test_set (void)
{
  g_autoptr (DrawlPlan) plan = plan_of_twelve ();
  g_autoptr (GPtrArray) shots = shots_of (plan, "12 1 5");
  g_autoptr (GPtrArray) fields = with_takes (shots, 4);
  g_autofree char *before = all_of (plan);
  Heard heard = {0};

  listen (plan, &heard);
  g_assert_true (drawl_plan_set_all (plan, shots, fields, "Takes", NULL));
  g_assert_cmpuint (sum_of_takes (plan), ==, 9 + 3 * 4);
  g_assert_cmpuint (heard.items, ==, 0);
  g_assert_cmpuint (heard.changed, ==, 1);
  drawl_plan_undo (plan);
  g_autofree char *undone = all_of (plan);
  g_assert_cmpstr (before, ==, undone);
  g_assert_false (drawl_plan_can_undo (plan) && drawl_plan_get_modified (plan));
  drawl_plan_redo (plan);
  g_assert_cmpuint (sum_of_takes (plan), ==, 9 + 3 * 4);
  stop_listening (plan, &heard);
}

static void
test_set_to_the_same (void)
{
  g_autoptr (DrawlPlan) plan = plan_of_twelve ();
  g_autoptr (GPtrArray) shots = shots_of (plan, "12 1 5");
  g_autoptr (GPtrArray) fields = with_takes (shots, 1);

  g_assert_true (drawl_plan_set_all (plan, shots, fields, "Takes", NULL));
  g_assert_false (drawl_plan_get_modified (plan));
}

typedef struct {
  const char *name;
  const char *slate, *body; /* that the last of three shots is to have */
  guint takes;
  DrawlPlanError code;
  const char *part;
} RefusedRow;

static const RefusedRow refused_rows[] = {
    {"slate-of-another", "2", "A", 4, DRAWL_PLAN_ERROR_DUPLICATE, "2"},
    {"slate-twice", "new", "A", 4, DRAWL_PLAN_ERROR_DUPLICATE, "new"},
    {"no-slate", "", "A", 4, DRAWL_PLAN_ERROR_VALUE, "slate"},
    {"no-body", "5", "Q", 4, DRAWL_PLAN_ERROR_UNKNOWN, "Q"},
    {"no-takes", "5", "A", 0, DRAWL_PLAN_ERROR_VALUE, "takes"},
};

/* What one of them cannot take none of them gets. */
static void
test_set_refused (gconstpointer data)
{
  const RefusedRow *row = data;
  g_autoptr (DrawlPlan) plan = plan_of_twelve ();
  g_autoptr (GPtrArray) shots = shots_of (plan, "12 1 5");
  g_autoptr (GPtrArray) fields = with_takes (shots, 4);
  g_autofree char *before = all_of (plan);
  DrawlShotFields *first = fields->pdata[0], *last = fields->pdata[2];
  g_autoptr (GError) error = NULL;

  drawl_shot_fields_set (&first->slate, "new");
  drawl_shot_fields_set (&last->slate, row->slate);
  drawl_shot_fields_set (&last->body, row->body);
  last->takes = row->takes;
  g_assert_false (drawl_plan_set_all (plan, shots, fields, "Set", &error));
  assert_refused (error, row->code, row->part);
  g_autofree char *after = all_of (plan);
  g_assert_cmpstr (before, ==, after);
  g_assert_false (drawl_plan_get_modified (plan));
}

/* Within an open step they are parts of it. */
static void
test_in_step (void)
{
  g_autoptr (DrawlPlan) plan = plan_of_twelve ();
  g_autoptr (GPtrArray) shots = shots_of (plan, "2 3");
  g_autoptr (GPtrArray) fields = with_takes (shots, 2);
  g_autofree char *before = all_of (plan);

  drawl_plan_begin_step (plan, "Whole");
  g_assert_true (drawl_plan_set_all (plan, shots, fields, "Set", NULL));
  drawl_plan_move_all (plan, shots, 12, "Move");
  drawl_plan_remove_all (plan, shots, "Remove");
  drawl_plan_end_step (plan);
  g_assert_cmpstr (drawl_plan_undo_label (plan), ==, "Whole");
  g_assert_cmpuint (drawl_plan_n_shots (plan), ==, 10);
  drawl_plan_undo (plan);
  g_autofree char *after = all_of (plan);
  g_assert_cmpstr (before, ==, after);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/plan-many/list", list_rows, test_list);
  g_test_add_func ("/plan-many/slates-follow", test_slates_follow);
  g_test_add_func ("/plan-many/comes-back-worked-out", test_comes_back_worked_out);
  g_test_add_func ("/plan-many/set", test_set);
  g_test_add_func ("/plan-many/set-to-the-same", test_set_to_the_same);
  add_rows ("/plan-many/set-refused", refused_rows, test_set_refused);
  g_test_add_func ("/plan-many/in-step", test_in_step);

  return g_test_run ();
}
