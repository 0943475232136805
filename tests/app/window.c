/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The window as a person uses it: list, search, filter, selection, edits, undo, titles, pages. */

#include "fixture.h"

#include "app/shot-row.h"

static void
test_welcome (void)
{
  DrawlWindow *window = window_on (NULL);

  g_assert_cmpstr (gtk_stack_get_visible_child_name (GTK_STACK (window->stack)), ==, "welcome");
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (window)), ==, "Drawl");
  g_assert_false (can (window, "save"));
  g_assert_false (can (window, "add-shot"));
  g_assert_false (can (window, "undo"));
  g_assert_true (can (window, "new"));
  g_assert_true (can (window, "open"));
  drop_window (window);
}

static void
test_open_demo (void)
{
  DrawlWindow *window = window_on (NULL);

  act (window, "open-demo");
  DrawlDocument *document = drawl_window_get_document (window);
  g_assert_nonnull (document);
  g_assert_null (drawl_document_get_file (document));
  g_assert_cmpuint (rows_of (window), ==, drawl_plan_n_shots (drawl_window_get_plan (window)));
  g_assert_cmpuint (rows_of (window), >=, 12);
  drop_window (window);
}

static void
test_rows_say_all (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlShot *shot = shot_of (window, "1A");
  GtkWidget *row = by_type (drawl_window_get_list (window), DRAWL_TYPE_SHOT_ROW);
  g_autofree char *summary = drawl_shot_dup_summary (shot);
  g_autofree char *name = g_strdup_printf ("1A, %s, %s, needs a licence",
                                           drawl_shot_get_fields (shot)->action, summary);

  g_assert_true (drawl_shot_row_get_shot (DRAWL_SHOT_ROW (row)) == shot);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (gtk_widget_get_parent (row)),
                                       GTK_ACCESSIBLE_PROPERTY_LABEL, name);
  drop_window (window);
}

/* The search entry tells with a delay, and of an empty text at once. */
static void
search_for (DrawlWindow *window, const char *text, guint found)
{
  GtkWidget *entry = by_id (drawl_window_get_list (window), "search_entry");
  GtkWidget *stack = by_id (drawl_window_get_list (window), "stack");

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  wait_until (rows_of (window) == found);
  settle ();
  g_assert_cmpstr (gtk_stack_get_visible_child_name (GTK_STACK (stack)), ==,
                   found == 0 ? "none" : "shots");
}

static void
test_search (void)
{
  DrawlWindow *window = window_on_demo ();
  guint all = rows_of (window);

  search_for (window, "GOBLET rings", 1);
  g_assert_cmpstr (selected_slate (window), ==, "5A");
  search_for (window, "no such words", 0);
  g_assert_null (selected_slate (window));
  g_assert_false (can (window, "remove-shot"));
  search_for (window, "", all);
  g_assert_nonnull (selected_slate (window));
  drop_window (window);
}

static void
test_filter (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlPlan *plan = drawl_window_get_plan (window);
  guint sum = 0;

  for (int i = 0; i < DRAWL_N_VERDICTS; i++) {
    act_on (window, "filter", drawl_verdict_id ((DrawlVerdict)i));
    g_assert_cmpstr (drawl_shot_list_get_filter (drawl_window_get_list (window)), ==,
                     drawl_verdict_id ((DrawlVerdict)i));
    g_assert_cmpint ((int)drawl_shot_get_verdict (drawl_window_get_shot (window)), ==, i);
    sum += rows_of (window);
  }
  g_assert_cmpuint (sum, ==, drawl_plan_n_shots (plan));
  /* The same again: all of them. */
  act_on (window, "filter", drawl_verdict_id ((DrawlVerdict)(DRAWL_N_VERDICTS - 1)));
  g_assert_cmpuint (rows_of (window), ==, drawl_plan_n_shots (plan));
  drop_window (window);
}

/* A shot that an edit takes out of the filter stays while it is in hand. */
static void
test_filter_keeps_the_shot_in_hand (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlPlan *plan = drawl_window_get_plan (window);

  act_on (window, "filter", "as-hired");
  select_shot (window, "4A");
  guint before = rows_of (window);
  g_autoptr (DrawlShotFields) fields =
      drawl_shot_fields_copy (drawl_shot_get_fields (shot_of (window, "4A")));
  g_assert_true (
      drawl_blanks_edit (&fields->blanks, DRAWL_TIMING_CAPTURE, drawl_rational_whole (240), NULL));
  g_assert_true (drawl_plan_set_shot (plan, shot_of (window, "4A"), fields, "Rate", NULL));
  settle ();
  g_assert_cmpint (drawl_shot_get_verdict (shot_of (window, "4A")), ==,
                   DRAWL_VERDICT_NEEDS_LICENCE);
  g_assert_cmpstr (selected_slate (window), ==, "4A");
  g_assert_cmpuint (rows_of (window), ==, before);
  act_on (window, "filter", "needs-licence");
  act_on (window, "filter", "as-hired");
  g_assert_cmpuint (rows_of (window), ==, before - 1);
  drop_window (window);
}

static void
test_add_and_undo (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlPlan *plan = drawl_window_get_plan (window);
  guint before = rows_of (window);

  select_shot (window, "4A");
  act (window, "add-shot");
  DrawlShot *added = drawl_window_get_shot (window);
  const DrawlShotFields *fields = drawl_shot_get_fields (added);
  g_assert_cmpuint (rows_of (window), ==, before + 1);
  g_assert_cmpint (drawl_plan_shot_position (plan, added), ==,
                   drawl_plan_shot_position (plan, shot_of (window, "4A")) + 1);
  g_assert_cmpstr (fields->body, ==, drawl_shot_get_fields (shot_of (window, "4A"))->body);
  g_assert_cmpstr (fields->size, ==, drawl_shot_get_fields (shot_of (window, "4A"))->size);
  g_assert_cmpint (drawl_shot_get_verdict (added), ==, DRAWL_VERDICT_AS_HIRED);
  /* The keyboard goes on in the new shot. */
  GtkWidget *page = by_id (window->shots, "shot_bin");
  wait_until (gtk_window_get_focus (GTK_WINDOW (window)) != NULL &&
              gtk_widget_is_ancestor (gtk_window_get_focus (GTK_WINDOW (window)), page));
  g_assert_true (g_str_has_prefix (gtk_window_get_title (GTK_WINDOW (window)), "•"));
  g_assert_nonnull (strstr (gtk_widget_get_tooltip_text (window->undo_button), "Add Shot"));
  act (window, "undo");
  g_assert_cmpuint (rows_of (window), ==, before);
  g_assert_false (g_str_has_prefix (gtk_window_get_title (GTK_WINDOW (window)), "•"));
  g_assert_nonnull (strstr (gtk_widget_get_tooltip_text (window->redo_button), "Add Shot"));
  act (window, "redo");
  g_assert_cmpuint (rows_of (window), ==, before + 1);
  drop_window (window);
}

static void
test_duplicate (void)
{
  DrawlWindow *window = window_on_demo ();

  select_shot (window, "2C");
  act (window, "duplicate-shot");
  const DrawlShotFields *copy = drawl_shot_get_fields (drawl_window_get_shot (window));
  const DrawlShotFields *original = drawl_shot_get_fields (shot_of (window, "2C"));
  g_assert_cmpstr (copy->slate, !=, original->slate);
  g_assert_cmpstr (copy->action, ==, original->action);
  g_assert_true (drawl_blanks_equal (&copy->blanks, &original->blanks));
  drop_window (window);
}

static void
test_remove_tells_and_undoes (void)
{
  DrawlWindow *window = window_on_demo ();
  guint before = rows_of (window);

  select_shot (window, "2C");
  act (window, "remove-shot");
  g_assert_cmpuint (rows_of (window), ==, before - 1);
  g_assert_null (drawl_plan_find_shot (drawl_window_get_plan (window), "2C"));
  g_assert_nonnull (window->toast);
  g_assert_nonnull (strstr (adw_toast_get_title (window->toast), "2C"));
  g_assert_cmpstr (adw_toast_get_action_name (window->toast), ==, "win.undo");
  act (window, "undo");
  /* What the toast offered has happened: it is gone. */
  wait_until (window->toast == NULL);
  g_assert_cmpuint (rows_of (window), ==, before);
  g_assert_cmpint (
      drawl_plan_shot_position (drawl_window_get_plan (window), shot_of (window, "2C")), ==, 5);
  drop_window (window);
}

static void
test_remove_the_last_shot (void)
{
  DrawlWindow *window = window_on_demo ();
  GtkWidget *stack = by_id (window->shots, "stack");

  while (drawl_plan_n_shots (drawl_window_get_plan (window)) > 0)
    act (window, "remove-shot");
  g_assert_null (drawl_window_get_shot (window));
  g_assert_false (can (window, "remove-shot"));
  g_assert_cmpstr (gtk_stack_get_visible_child_name (GTK_STACK (stack)), ==, "empty");
  act (window, "undo");
  g_assert_cmpstr (gtk_stack_get_visible_child_name (GTK_STACK (stack)), ==, "shots");
  g_assert_nonnull (drawl_window_get_shot (window));
  drop_window (window);
}

static void
test_move (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlPlan *plan = drawl_window_get_plan (window);

  select_shot (window, "1A");
  g_assert_false (can (window, "move-shot-up"));
  act (window, "move-shot-down");
  g_assert_cmpstr (selected_slate (window), ==, "1A");
  g_assert_cmpint (drawl_plan_shot_position (plan, shot_of (window, "1A")), ==, 1);
  g_assert_true (can (window, "move-shot-up"));
  act (window, "undo");
  g_assert_cmpint (drawl_plan_shot_position (plan, shot_of (window, "1A")), ==, 0);
  select_shot (window, "5B");
  g_assert_false (can (window, "move-shot-down"));
  drop_window (window);
}

/* The shots of @slates, as they are dragged. */
static DrawlShotBundle *
dragged (DrawlWindow *window, const char *slates)
{
  g_auto (GStrv) names = g_strsplit (slates, " ", -1);
  g_autoptr (GPtrArray) shots = g_ptr_array_new ();

  for (char **name = names; *name != NULL; name++)
    g_ptr_array_add (shots, shot_of (window, *name));
  return drawl_shot_bundle_new (drawl_window_get_plan (window), shots);
}

static void
drop (DrawlWindow *from, const char *slates, DrawlWindow *window, guint position)
{
  g_autoptr (DrawlShotBundle) bundle = dragged (from, slates);

  drawl_shot_list_drop (drawl_window_get_list (window), bundle, position);
  settle ();
}

static void
test_drop (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlPlan *plan = drawl_window_get_plan (window);

  drop (window, "3A", window, 1);
  g_assert_cmpint (drawl_plan_shot_position (plan, shot_of (window, "3A")), ==, 1);
  g_assert_cmpstr (selected_slate (window), ==, "3A");
  drop (window, "1C", window, 0);
  g_assert_cmpint (drawl_plan_shot_position (plan, shot_of (window, "1C")), ==, 0);
  /* On itself: nothing to undo. */
  act (window, "undo");
  act (window, "undo");
  drop (window, "1A", window, 1);
  g_assert_false (can (window, "undo"));
  drop_window (window);
}

static void
test_steps (void)
{
  DrawlWindow *window = window_on_demo ();

  select_shot (window, "1A");
  act (window, "next-shot");
  g_assert_cmpstr (selected_slate (window), ==, "1B");
  act (window, "previous-shot");
  act (window, "previous-shot");
  g_assert_cmpstr (selected_slate (window), ==, "1A");
  drop_window (window);
}

static void
test_new_plan_becomes_useful (void)
{
  DrawlWindow *window = window_on (NULL);

  act (window, "new");
  DrawlPlan *plan = drawl_window_get_plan (window);
  g_assert_nonnull (plan);
  g_assert_false (drawl_plan_get_modified (plan));
  act (window, "add-shot");
  g_assert_cmpuint (rows_of (window), ==, 1);
  g_assert_cmpint (drawl_shot_get_verdict (drawl_window_get_shot (window)), ==,
                   DRAWL_VERDICT_NOT_ON_THIS_BODY);
  drop_window (window);
}

static void
test_pages (void)
{
  DrawlWindow *window = window_on_demo ();
  g_autofree char *page = NULL;

  act_on (window, "page", "bodies");
  g_assert_nonnull (window->bodies);
  page = g_settings_get_string (drawl_application_get_settings (program ()), "page");
  g_assert_cmpstr (page, ==, "bodies");
  DrawlWindow *other = window_on_demo ();
  g_assert_cmpstr (adw_view_stack_get_visible_child_name (ADW_VIEW_STACK (other->pages)), ==,
                   "bodies");
  act (other, "find");
  g_assert_cmpstr (adw_view_stack_get_visible_child_name (ADW_VIEW_STACK (other->pages)), ==,
                   "shots");
  drop_window (other);
  drop_window (window);
}

static void
test_narrow (void)
{
  DrawlWindow *window = window_on_demo ();

  gtk_window_set_default_size (GTK_WINDOW (window), 360, 640);
  wait_until (drawl_header_title_get_narrow (window->header_title));
  wait_until (adw_leaflet_get_folded (ADW_LEAFLET (by_id (window->shots, "leaflet"))));
  settle ();
  g_assert_cmpint (gtk_widget_get_width (GTK_WIDGET (window)), <=, 360);
  g_assert_true (adw_view_switcher_bar_get_reveal (ADW_VIEW_SWITCHER_BAR (window->switcher_bar)));
  g_assert_false (can (window, "back"));
  drawl_shots_page_enter_shot (window->shots);
  wait_until (can (window, "back"));
  settle ();
  g_assert_cmpint (gtk_widget_get_width (GTK_WIDGET (window)), <=, 360);
  act (window, "back");
  wait_until (!can (window, "back"));
  drop_window (window);
}

static void
test_right_to_left (void)
{
  gtk_widget_set_default_direction (GTK_TEXT_DIR_RTL);
  DrawlWindow *window = window_on_demo ();
  graphene_rect_t list, shot;

  wait_until (gtk_widget_get_width (by_id (window->shots, "list")) > 0);
  settle ();
  g_assert_true (
      gtk_widget_compute_bounds (by_id (window->shots, "list"), GTK_WIDGET (window), &list));
  g_assert_true (
      gtk_widget_compute_bounds (by_id (window->shots, "shot_bin"), GTK_WIDGET (window), &shot));
  g_assert_cmpfloat (list.origin.x, >, shot.origin.x);
  gtk_widget_set_default_direction (GTK_TEXT_DIR_LTR);
  drop_window (window);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/window/welcome", test_welcome);
  g_test_add_func ("/window/open-demo", test_open_demo);
  g_test_add_func ("/window/rows-say-all", test_rows_say_all);
  g_test_add_func ("/window/search", test_search);
  g_test_add_func ("/window/filter", test_filter);
  g_test_add_func ("/window/filter-keeps-the-shot-in-hand", test_filter_keeps_the_shot_in_hand);
  g_test_add_func ("/window/add-and-undo", test_add_and_undo);
  g_test_add_func ("/window/duplicate", test_duplicate);
  g_test_add_func ("/window/remove-tells-and-undoes", test_remove_tells_and_undoes);
  g_test_add_func ("/window/remove-the-last-shot", test_remove_the_last_shot);
  g_test_add_func ("/window/move", test_move);
  g_test_add_func ("/window/drop", test_drop);
  g_test_add_func ("/window/steps", test_steps);
  g_test_add_func ("/window/new-plan-becomes-useful", test_new_plan_becomes_useful);
  g_test_add_func ("/window/pages", test_pages);
  g_test_add_func ("/window/narrow", test_narrow);
  g_test_add_func ("/window/right-to-left", test_right_to_left);
  return run_window_tests ();
}
