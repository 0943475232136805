/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The list with many shots selected: what is chosen and stays so, orders and groups, the filter by
 * body, what is done to all of them at once, and shots that go from window to window. */

#include "fixture.h"

#include "app/shot-row.h"
#include "rows.h"

static DrawlShotList *
list_of (DrawlWindow *window)
{
  return drawl_window_get_list (window);
}

static GtkSelectionModel *
model_of (DrawlWindow *window)
{
  return gtk_list_view_get_model (GTK_LIST_VIEW (by_id (list_of (window), "list_view")));
}

/* "1A 1B", in the plan's order. */
static char *
selection_of (DrawlWindow *window)
{
  g_autoptr (GPtrArray) shots = drawl_shot_list_dup_selection (list_of (window));
  GString *slates = g_string_new (NULL);

  for (guint i = 0; i < shots->len; i++)
    g_string_append_printf (slates, "%s%s", i > 0 ? " " : "",
                            drawl_shot_get_slate (shots->pdata[i]));
  return g_string_free (slates, FALSE);
}

#define assert_selection(window, slates)                                                           \
  G_STMT_START                                                                                     \
  {                                                                                                \
    g_autofree char *selection_ = selection_of (window);                                           \
    g_assert_cmpstr (selection_, ==, (slates));                                                    \
  }                                                                                                \
  G_STMT_END

static GPtrArray *
shots_of (DrawlWindow *window, const char *slates)
{
  g_auto (GStrv) names = g_strsplit (slates, " ", -1);
  GPtrArray *shots = g_ptr_array_new ();

  for (char **name = names; *name != NULL; name++)
    g_ptr_array_add (shots, shot_of (window, *name));
  return shots;
}

static void
select_many (DrawlWindow *window, const char *slates)
{
  g_autoptr (GPtrArray) shots = shots_of (window, slates);

  drawl_shot_list_select_many (list_of (window), shots);
  settle ();
}

/* The slates of the plan from its beginning, as many as @n. */
static char *
plan_order (DrawlWindow *window, guint n)
{
  GString *slates = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    g_string_append_printf (
        slates, "%s%s", i > 0 ? " " : "",
        drawl_shot_get_slate (drawl_plan_get_shot (drawl_window_get_plan (window), i)));
  return g_string_free (slates, FALSE);
}

#define assert_plan(window, n, slates)                                                             \
  G_STMT_START                                                                                     \
  {                                                                                                \
    g_autofree char *order_ = plan_order ((window), (n));                                          \
    g_assert_cmpstr (order_, ==, (slates));                                                        \
  }                                                                                                \
  G_STMT_END

static int
compare_rows (gconstpointer a, gconstpointer b)
{
  graphene_rect_t left, right;
  GtkWidget *row_a = *(GtkWidget *const *)a, *row_b = *(GtkWidget *const *)b;

  g_assert_true (
      gtk_widget_compute_bounds (row_a, GTK_WIDGET (gtk_widget_get_root (row_a)), &left));
  g_assert_true (
      gtk_widget_compute_bounds (row_b, GTK_WIDGET (gtk_widget_get_root (row_b)), &right));
  return left.origin.y < right.origin.y ? -1 : 1;
}

static void
add_rows_below (GtkWidget *widget, GPtrArray *rows)
{
  if (DRAWL_IS_SHOT_ROW (widget) && drawl_shot_row_get_shot (DRAWL_SHOT_ROW (widget)) != NULL &&
      gtk_widget_get_mapped (widget))
    g_ptr_array_add (rows, widget);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    add_rows_below (child, rows);
}

/* What the rows on screen show, from the top: slates, and "[Scene 1 · 3 shots]" where one begins.
 */
static char *
shown (DrawlWindow *window, guint n)
{
  g_autoptr (GPtrArray) rows = g_ptr_array_new ();
  GString *text = g_string_new (NULL);

  drawl_shot_list_focus_row (list_of (window));
  for (int i = 0; i < 20; i++) {
    settle ();
    g_usleep (5000);
  }
  add_rows_below (GTK_WIDGET (list_of (window)), rows);
  g_ptr_array_sort (rows, compare_rows);
  for (guint i = 0; i < MIN (n, rows->len); i++) {
    GtkWidget *heading = by_id (rows->pdata[i], "heading_label");
    if (gtk_widget_get_visible (heading))
      g_string_append_printf (text, "[%s] ", gtk_label_get_text (GTK_LABEL (heading)));
    g_string_append_printf (
        text, "%s ",
        drawl_shot_get_slate (drawl_shot_row_get_shot (DRAWL_SHOT_ROW (rows->pdata[i]))));
  }
  return g_string_free (text, FALSE);
}

#define assert_shown(window, n, text)                                                              \
  G_STMT_START                                                                                     \
  {                                                                                                \
    g_autofree char *shown_ = shown ((window), (n));                                               \
    g_assert_cmpstr (shown_, ==, (text));                                                          \
  }                                                                                                \
  G_STMT_END

/* ---- Selecting ---- */

/* As the list view asks for it when keys and pointer choose. */
static void
test_select (void)
{
  DrawlWindow *window = window_on_demo ();
  GtkSelectionModel *model = model_of (window);

  g_assert_cmpuint (drawl_shot_list_n_selected (list_of (window)), ==, 1);
  gtk_selection_model_select_item (model, 3, TRUE);
  assert_selection (window, "2A");
  gtk_selection_model_select_item (model, 0, FALSE);
  assert_selection (window, "1A 2A");
  g_assert_cmpstr (selected_slate (window), ==, "1A");
  gtk_selection_model_select_range (model, 2, 3, FALSE);
  assert_selection (window, "1A 1C 2A 2B");
  g_assert_cmpstr (selected_slate (window), ==, "1A");
  gtk_selection_model_unselect_item (model, 0);
  assert_selection (window, "1C 2A 2B");
  g_assert_cmpstr (selected_slate (window), ==, "1C");
  gtk_selection_model_unselect_all (model);
  assert_selection (window, "1C");
  /* One stays, whatever is asked for. */
  gtk_selection_model_unselect_item (model, 2);
  assert_selection (window, "1C");
  gtk_selection_model_select_all (model);
  g_assert_cmpuint (drawl_shot_list_n_selected (list_of (window)), ==, rows_of (window));
  gtk_selection_model_unselect_range (model, 0, rows_of (window));
  assert_selection (window, "1C");
  drop_window (window);
}

static void
count (guint *counter)
{
  (*counter)++;
}

static void
test_selection_is_told (void)
{
  DrawlWindow *window = window_on_demo ();
  guint n_selected = 0, selected = 0;

  g_signal_connect_swapped (list_of (window), "notify::n-selected", G_CALLBACK (count),
                            &n_selected);
  g_signal_connect_swapped (list_of (window), "notify::selected", G_CALLBACK (count), &selected);
  gtk_selection_model_select_range (model_of (window), 0, 3, TRUE);
  g_assert_cmpuint (n_selected, ==, 1);
  g_assert_cmpuint (selected, ==, 0);
  gtk_selection_model_select_item (model_of (window), 5, TRUE);
  g_assert_cmpuint (n_selected, ==, 2);
  g_assert_cmpuint (selected, ==, 1);
  gtk_selection_model_select_item (model_of (window), 5, TRUE);
  g_assert_cmpuint (n_selected, ==, 2);
  g_signal_handlers_disconnect_by_data (list_of (window), &n_selected);
  g_signal_handlers_disconnect_by_data (list_of (window), &selected);
  drop_window (window);
}

/* It goes by the shots: sorting, moving, other shots that come or go leave it alone. */
static void
test_selection_stays (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlPlan *plan = drawl_window_get_plan (window);

  select_many (window, "1B 2A 4A");
  act_on (window, "filter", "as-hired");
  assert_selection (window, "2A 4A");
  act_on (window, "filter", "all");
  assert_selection (window, "2A 4A");
  g_action_group_change_action_state (G_ACTION_GROUP (window), "sort-shots",
                                      g_variant_new_string ("screen"));
  assert_selection (window, "2A 4A");
  drawl_plan_remove_shot (plan, 0, "Remove");
  assert_selection (window, "2A 4A");
  drawl_plan_remove_shot (plan, (guint)drawl_plan_shot_position (plan, shot_of (window, "2A")),
                          "Remove");
  assert_selection (window, "4A");
  act (window, "undo");
  assert_selection (window, "4A");
  g_action_group_change_action_state (G_ACTION_GROUP (window), "sort-shots",
                                      g_variant_new_string ("plan"));
  drop_window (window);
}

/* ---- Done to all of them ---- */

static void
test_duplicate_many (void)
{
  DrawlWindow *window = window_on_demo ();

  select_many (window, "1A 1C");
  act (window, "duplicate-shot");
  assert_plan (window, 6, "1A 1B 1C 1D 1E 2A");
  assert_selection (window, "1D 1E");
  g_assert_cmpstr (drawl_plan_undo_label (drawl_window_get_plan (window)), ==, "Duplicate 2 Shots");
  g_assert_cmpstr (drawl_shot_get_fields (shot_of (window, "1E"))->action, ==,
                   drawl_shot_get_fields (shot_of (window, "1C"))->action);
  act (window, "undo");
  assert_plan (window, 4, "1A 1B 1C 2A");
  act (window, "redo");
  assert_plan (window, 6, "1A 1B 1C 1D 1E 2A");
  drop_window (window);
}

static void
test_remove_many (void)
{
  DrawlWindow *window = window_on_demo ();
  guint before = rows_of (window);

  select_many (window, "1A 1C 2A");
  act (window, "remove-shot");
  g_assert_cmpuint (rows_of (window), ==, before - 3);
  g_assert_cmpstr (drawl_plan_undo_label (drawl_window_get_plan (window)), ==, "Remove 3 Shots");
  g_assert_cmpstr (adw_toast_get_title (window->toast), ==, "3 shots removed");
  g_assert_cmpuint (drawl_shot_list_n_selected (list_of (window)), ==, 1);
  act (window, "undo");
  assert_plan (window, 4, "1A 1B 1C 2A");
  drop_window (window);
}

static void
test_move_many (void)
{
  DrawlWindow *window = window_on_demo ();

  select_many (window, "1B 2A");
  act (window, "move-shot-up");
  assert_plan (window, 4, "1B 1A 2A 1C");
  assert_selection (window, "1B 2A");
  g_assert_cmpstr (drawl_plan_undo_label (drawl_window_get_plan (window)), ==, "Move 2 Shots");
  act (window, "move-shot-up");
  assert_plan (window, 4, "1B 2A 1A 1C");
  g_assert_false (can (window, "move-shot-up"));
  act (window, "move-shot-down");
  assert_plan (window, 4, "1A 1B 2A 1C");
  act (window, "undo");
  act (window, "undo");
  act (window, "undo");
  assert_plan (window, 4, "1A 1B 1C 2A");
  g_assert_false (can (window, "undo"));
  drop_window (window);
}

/* ---- Orders ---- */

static void
sort_by (DrawlWindow *window, const char *key)
{
  g_action_group_change_action_state (G_ACTION_GROUP (window), "sort-shots",
                                      g_variant_new_string (key));
  settle ();
}

static void
set_switch (DrawlWindow *window, const char *action, gboolean on)
{
  g_action_group_change_action_state (G_ACTION_GROUP (window), action, g_variant_new_boolean (on));
  settle ();
}

static void
reset_order (DrawlWindow *window)
{
  sort_by (window, "plan");
  set_switch (window, "sort-descending", FALSE);
  set_switch (window, "group-shots", FALSE);
}

typedef struct {
  const char *name;
  gboolean descending;
  const char *kept; /* the first four of the plan once the order is kept */
} OrderRow;

static const OrderRow order_rows[] = {
    {"slate", FALSE, "1A 1B 1C 2A"},   {"slate", TRUE, "5B 5A 4C 4B"},
    {"capture", FALSE, "5B 2A 5A 2B"}, {"capture", TRUE, "1B 4C 1C 1A"},
    {"verdict", FALSE, "1C 2A 2B 3A"}, {"screen", TRUE, "2B 3C 2A 3D"},
    {"action", FALSE, "1B 4C 1A 1C"},  {"scene", TRUE, "5A 5B 4A 4B"},
};

static void
test_order (gconstpointer data)
{
  const OrderRow *row = data;
  DrawlWindow *window = window_on_demo ();
  g_autofree char *before = plan_order (window, 4);

  sort_by (window, row->name);
  set_switch (window, "sort-descending", row->descending);
  assert_plan (window, 4, before);
  g_assert_false (drawl_plan_get_modified (drawl_window_get_plan (window)));
  g_autofree char *expected = g_strconcat (row->kept, " ", NULL);
  g_autofree char *first = g_strndup (row->kept, 2);
  select_shot (window, first);
  g_assert_false (can (window, "move-shot-down"));
  assert_shown (window, 4, expected);
  act (window, "keep-order");
  assert_plan (window, 4, row->kept);
  assert_shown (window, 4, expected);
  g_assert_cmpstr (drawl_shot_order_id (drawl_shot_list_get_order (list_of (window))->key), ==,
                   "plan");
  if (drawl_plan_can_undo (drawl_window_get_plan (window)))
    act (window, "undo");
  assert_plan (window, 4, before);
  reset_order (window);
  drop_window (window);
}

static void
test_group (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlPlan *plan = drawl_window_get_plan (window);

  set_switch (window, "group-shots", TRUE);
  select_shot (window, "1A");
  assert_shown (window, 5,
                "[Scene 1 The break · 3 shots] 1A 1B 1C [Scene 2 The furnace · 4 shots] 2A 2B ");
  g_assert_true (can (window, "move-shot-down"));
  /* A shot that stands elsewhere in the plan is with its scene, and then rows are not moved. */
  drawl_plan_move_shot (plan, 0, 5, "Move");
  settle ();
  select_shot (window, "1B");
  assert_shown (window, 4,
                "[Scene 1 The break · 3 shots] 1B 1C 1A [Scene 2 The furnace · 4 shots] 2A ");
  g_assert_false (can (window, "move-shot-down"));
  act (window, "keep-order");
  assert_plan (window, 4, "1B 1C 1A 2A");
  /* The heading is read out with the row that it stands above. */
  GtkWidget *row = by_type (list_of (window), DRAWL_TYPE_SHOT_ROW);
  g_autofree char *summary = drawl_shot_dup_summary (shot_of (window, "1B"));
  g_autofree char *name =
      g_strdup_printf ("Scene 1 The break · 3 shots: 1B, %s, %s, needs a licence",
                       drawl_shot_get_fields (shot_of (window, "1B"))->action, summary);
  g_assert_true (drawl_shot_row_get_shot (DRAWL_SHOT_ROW (row)) == shot_of (window, "1B"));
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (gtk_widget_get_parent (row)),
                                       GTK_ACCESSIBLE_PROPERTY_LABEL, name);
  reset_order (window);
  drop_window (window);
}

/* The next window begins with the same order. */
static void
test_order_is_remembered (void)
{
  DrawlWindow *window = window_on_demo ();

  sort_by (window, "capture");
  set_switch (window, "group-shots", TRUE);
  DrawlWindow *other = window_on_demo ();
  g_assert_cmpint (drawl_shot_list_get_order (list_of (other))->key, ==, DRAWL_SHOT_ORDER_CAPTURE);
  g_assert_true (drawl_shot_list_get_order (list_of (other))->grouped);
  reset_order (other);
  g_assert_cmpint (drawl_shot_list_get_order (list_of (window))->key, ==, DRAWL_SHOT_ORDER_CAPTURE);
  drop_window (other);
  drop_window (window);
}

/* ---- Filter and search ---- */

static void
test_filter_by_body (void)
{
  DrawlWindow *window = window_on_demo ();
  guint all = rows_of (window), sum = 0;
  GListModel *bodies = drawl_plan_get_bodies (drawl_window_get_plan (window));
  GtkWidget *label = by_id (list_of (window), "filter_label");

  for (guint i = 0; i < g_list_model_get_n_items (bodies); i++) {
    g_autoptr (DrawlHiredBody) hired = g_list_model_get_item (bodies, i);
    g_autofree char *name = drawl_hired_body_dup_name (hired);
    act_on (window, "filter-body", drawl_hired_body_get_id (hired));
    g_assert_cmpstr (drawl_shot_get_fields (drawl_window_get_shot (window))->body, ==,
                     drawl_hired_body_get_id (hired));
    g_assert_true (g_str_has_suffix (gtk_label_get_text (GTK_LABEL (label)), name));
    guint of_body = rows_of (window);
    sum += of_body;
    act_on (window, "filter", "as-hired");
    g_assert_cmpuint (rows_of (window), <=, of_body);
    act_on (window, "filter", "as-hired");
    g_assert_cmpuint (rows_of (window), ==, of_body);
  }
  g_assert_cmpuint (sum, ==, all);
  g_signal_emit_by_name (by_id (list_of (window), "all_button"), "clicked");
  settle ();
  g_assert_cmpuint (rows_of (window), ==, all);
  drop_window (window);
}

/* What is searched for is found in every field that is words. */
static const struct {
  const char *name;
} search_rows[] = {{"slate"}, {"scene"}, {"action"}, {"notes"}};

static void
test_search (gconstpointer data)
{
  const char *field = *(const char *const *)data;
  DrawlWindow *window = window_on_demo ();
  DrawlShot *shot = shot_of (window, "3B");
  GtkWidget *entry = by_id (list_of (window), "search_entry");
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (drawl_shot_get_fields (shot));
  char **members[] = {&fields->slate, &fields->scene, &fields->action, &fields->notes};

  for (gsize i = 0; i < G_N_ELEMENTS (search_rows); i++)
    if (g_str_equal (search_rows[i].name, field))
      drawl_shot_fields_set (members[i], "Öl ZWEI");
  gtk_editable_set_text (GTK_EDITABLE (entry), "öl zwei");
  wait_until (rows_of (window) == 0);
  g_assert_true (drawl_plan_set_shot (drawl_window_get_plan (window), shot, fields, "Edit", NULL));
  wait_until (rows_of (window) == 1);
  g_assert_true (drawl_window_get_shot (window) == shot);
  drop_window (window);
}

/* ---- From window to window ---- */

static DrawlShotBundle *
dragged (DrawlWindow *window, const char *slates)
{
  g_autoptr (GPtrArray) shots = shots_of (window, slates);

  return drawl_shot_bundle_new (drawl_window_get_plan (window), shots);
}

static void
test_drag_to_another_window (void)
{
  DrawlWindow *from = window_on_demo (), *to = window_on (NULL);
  g_autoptr (DrawlShotBundle) bundle = dragged (from, "1A 2B");

  act (to, "new");
  act (to, "add-shot");
  DrawlPlan *plan = drawl_window_get_plan (to);
  drawl_shot_list_drop (list_of (to), bundle, 0);
  settle ();
  g_assert_cmpuint (drawl_plan_n_shots (plan), ==, 3);
  assert_selection (to, "1A 2B");
  g_assert_cmpstr (drawl_plan_undo_label (plan), ==, "Copy 2 Shots");
  g_assert_cmpint (drawl_shot_get_verdict (shot_of (to, "1A")), ==,
                   drawl_shot_get_verdict (shot_of (from, "1A")));
  g_assert_cmpstr (adw_toast_get_title (to->toast), ==, "2 shots copied");
  /* The other plan is as it was, and a second copy gets slates of its own. */
  g_assert_false (drawl_plan_get_modified (drawl_window_get_plan (from)));
  drawl_shot_list_drop (list_of (to), bundle, G_MAXUINT);
  settle ();
  g_assert_cmpuint (drawl_plan_n_shots (plan), ==, 5);
  assert_selection (to, "1B 2C");
  act (to, "undo");
  act (to, "undo");
  g_assert_cmpuint (drawl_plan_n_shots (plan), ==, 1);
  g_assert_cmpuint (g_list_model_get_n_items (drawl_plan_get_bodies (plan)), ==, 0);
  drop_window (to);
  drop_window (from);
}

/* A plan without shots has no rows to put them down at. */
static void
test_drag_to_an_empty_plan (void)
{
  DrawlWindow *from = window_on_demo (), *to = window_on (NULL);
  g_autoptr (DrawlShotBundle) bundle = dragged (from, "1B 3A");
  g_auto (GValue) value = G_VALUE_INIT;
  gboolean taken = FALSE;

  act (to, "new");
  g_value_init (&value, DRAWL_TYPE_SHOT_BUNDLE);
  g_value_set_object (&value, bundle);
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (by_id (to->shots, "stack"));
  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++) {
    g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);
    if (GTK_IS_DROP_TARGET (controller))
      g_signal_emit_by_name (controller, "drop", &value, 0.0, 0.0, &taken);
  }
  settle ();
  g_assert_true (taken);
  assert_plan (to, 2, "1B 3A");
  assert_selection (to, "1B 3A");
  g_assert_cmpuint (rows_of (to), ==, 2);
  drop_window (to);
  drop_window (from);
}

/* In a sorted list rows are not moved, and it is said why. */
static void
test_drop_while_sorted (void)
{
  DrawlWindow *window = window_on_demo ();
  g_autoptr (DrawlShotBundle) bundle = dragged (window, "3A");

  sort_by (window, "capture");
  drawl_shot_list_drop (list_of (window), bundle, 0);
  settle ();
  g_assert_false (can (window, "undo"));
  g_assert_nonnull (strstr (adw_toast_get_title (window->toast), "order"));
  reset_order (window);
  drawl_shot_list_drop (list_of (window), bundle, 0);
  assert_plan (window, 2, "3A 1A");
  drop_window (window);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/list/select", test_select);
  g_test_add_func ("/list/selection-is-told", test_selection_is_told);
  g_test_add_func ("/list/selection-stays", test_selection_stays);
  g_test_add_func ("/list/duplicate-many", test_duplicate_many);
  g_test_add_func ("/list/remove-many", test_remove_many);
  g_test_add_func ("/list/move-many", test_move_many);
  for (gsize i = 0; i < G_N_ELEMENTS (order_rows); i++) {
    g_autofree char *path = g_strdup_printf ("/list/order/%s%s", order_rows[i].name,
                                             order_rows[i].descending ? "-descending" : "");
    g_test_add_data_func (path, &order_rows[i], test_order);
  }
  g_test_add_func ("/list/group", test_group);
  g_test_add_func ("/list/order-is-remembered", test_order_is_remembered);
  g_test_add_func ("/list/filter-by-body", test_filter_by_body);
  add_rows ("/list/search", search_rows, test_search);
  g_test_add_func ("/list/drag-to-another-window", test_drag_to_another_window);
  g_test_add_func ("/list/drag-to-an-empty-plan", test_drag_to_an_empty_plan);
  g_test_add_func ("/list/drop-while-sorted", test_drop_while_sorted);
  return run_window_tests ();
}
