/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The page of many shots: what it says of them, and what is entered there goes into all of them, in
 * one step; what some cannot take is told before anything is done. */

#include "app/bulk-edit.h"
#include "app/choice-row.h"
#include "app/many-page.h"
#include "fixture.h"
#include "rows.h"

static void
select_slates (DrawlWindow *window, const char *slates)
{
  g_auto (GStrv) names = g_strsplit (slates, " ", -1);
  g_autoptr (GPtrArray) shots = g_ptr_array_new ();

  for (char **name = names; *name != NULL; name++)
    g_ptr_array_add (shots, shot_of (window, *name));
  drawl_shot_list_select_many (drawl_window_get_list (window), shots);
  settle ();
}

static DrawlWindow *
window_on_shots (const char *slates)
{
  DrawlWindow *window = window_on_demo ();

  select_slates (window, slates);
  return window;
}

static GtkWidget *
page_of (DrawlWindow *window)
{
  return by_type (window->shots, DRAWL_TYPE_MANY_PAGE);
}

static void
type (DrawlWindow *window, const char *row, const char *text)
{
  GtkEditable *editable = GTK_EDITABLE (by_id (page_of (window), row));

  gtk_editable_set_text (editable, text);
  g_signal_emit_by_name (gtk_editable_get_delegate (editable), "activate");
  settle ();
}

static const char *
shown (DrawlWindow *window, const char *row)
{
  return gtk_editable_get_text (GTK_EDITABLE (by_id (page_of (window), row)));
}

static const DrawlShotFields *
fields_of (DrawlWindow *window, const char *slate)
{
  return drawl_shot_get_fields (shot_of (window, slate));
}

static char *
capture_of (DrawlWindow *window, const char *slate)
{
  char text[DRAWL_RATIONAL_TEXT_SIZE];

  return g_strdup (
      drawl_rational_text (fields_of (window, slate)->blanks.value[DRAWL_TIMING_CAPTURE], text));
}

static void
test_sums (void)
{
  DrawlWindow *window = window_on_shots ("1A 1B 2B");
  GtkWidget *page = page_of (window);

  g_assert_true (gtk_widget_get_mapped (page));
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (by_id (page, "title_label"))), ==,
                   "3 shots selected");
  /* 0.45 s, 0.025 s, 45 s; 4.5 s, 2 s, 45 s. */
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (by_id (page, "action_label"))), ==, "45.475 s");
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (by_id (page, "screen_label"))), ==, "51.5 s");
  gtk_selection_model_unselect_all (gtk_list_view_get_model (
      GTK_LIST_VIEW (by_id (drawl_window_get_list (window), "list_view"))));
  settle ();
  g_assert_false (gtk_widget_get_mapped (page));
  drop_window (window);
}

static void
test_differ (void)
{
  DrawlWindow *window = window_on_shots ("1A 1B");
  const DrawlShotFields *first = fields_of (window, "1A"), *second = fields_of (window, "1B");

  g_assert_cmpuint (first->takes, !=, 0);
  g_assert_cmpstr (shown (window, "capture_row"), ==, "");
  g_assert_cmpstr (shown (window, "playback_row"), ==, "24");
  g_assert_cmpstr (first->scene, ==, second->scene);
  g_assert_cmpstr (shown (window, "scene_row"), ==, first->scene);
  drop_window (window);
}

typedef struct {
  const char *name; /* of the row */
  const char *text;
  const char *label;
} EntryRow;

static const EntryRow entry_rows[] = {
    {"capture_row", "96", "Change Capture Rate of 3 Shots"},
    {"playback_row", "25", "Change Playback Rate of 3 Shots"},
    {"takes_row", "9", "Change Takes of 3 Shots"},
    {"before_row", "3.5", "Change Handle Before of 3 Shots"},
    {"after_row", "0.25", "Change Handle After of 3 Shots"},
    {"audio_row", "4", "Change Audio Tracks of 3 Shots"},
    {"scene_row", "Night", "Change Scene of 3 Shots"},
};

static void
test_entry (gconstpointer data)
{
  const EntryRow *row = data;
  DrawlWindow *window = window_on_shots ("1A 1B 3A");
  DrawlPlan *plan = drawl_window_get_plan (window);
  g_autofree char *before = drawl_plan_to_data (plan, NULL);

  type (window, row->name, row->text);
  g_assert_cmpstr (drawl_plan_undo_label (plan), ==, row->label);
  g_assert_cmpstr (shown (window, row->name), ==, row->text);
  act (window, "undo");
  g_autofree char *after = drawl_plan_to_data (plan, NULL);
  g_assert_cmpstr (before, ==, after);
  g_assert_false (drawl_plan_can_undo (plan));
  act (window, "redo");
  g_assert_cmpstr (shown (window, row->name), ==, row->text);
  drop_window (window);
}

/* What no shot can take is said at the entry; nothing is done. */
static void
test_unreadable (void)
{
  DrawlWindow *window = window_on_shots ("1A 1B");

  type (window, "capture_row", "24/1001x");
  g_assert_true (gtk_widget_has_css_class (by_id (page_of (window), "capture_row"), "error"));
  g_assert_true (gtk_widget_get_visible (by_id (page_of (window), "error_label")));
  g_assert_cmpstr (shown (window, "capture_row"), ==, "24/1001x");
  g_assert_false (can (window, "undo"));
  type (window, "capture_row", "100");
  g_assert_false (gtk_widget_get_visible (by_id (page_of (window), "error_label")));
  drop_window (window);
}

/* Shot 1B holds what pins its capture rate down. */
static DrawlWindow *
window_with_a_pinned_shot (void)
{
  DrawlWindow *window = window_on_demo ();
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (fields_of (window, "1B"));

  drawl_blanks_hold (&fields->blanks, DRAWL_TIMING_ACTION, TRUE);
  drawl_blanks_hold (&fields->blanks, DRAWL_TIMING_SCREEN, TRUE);
  g_assert_true (drawl_plan_set_shot (drawl_window_get_plan (window), shot_of (window, "1B"),
                                      fields, "Hold", NULL));
  select_slates (window, "1A 1B 1C");
  return window;
}

static void
test_refused_by_some (void)
{
  DrawlWindow *window = window_with_a_pinned_shot ();
  g_autofree char *one = capture_of (window, "1A"), *other = capture_of (window, "1B");

  type (window, "capture_row", "96");
  AdwMessageDialog *dialog = message_over (window);
  g_assert_nonnull (dialog);
  g_assert_cmpstr (adw_message_dialog_get_heading (dialog), ==, "1 Shot Cannot Take This");
  g_assert_nonnull (strstr (adw_message_dialog_get_body (dialog), "1B: "));
  g_assert_null (strstr (adw_message_dialog_get_body (dialog), "1A: "));
  answer_with (window, "cancel");
  g_autofree char *still = capture_of (window, "1A");
  g_assert_cmpstr (still, ==, one);

  type (window, "capture_row", "96");
  answer_with (window, "others");
  g_autofree char *changed = capture_of (window, "1A"), *left = capture_of (window, "1B");
  g_assert_cmpstr (changed, ==, "96");
  g_assert_cmpstr (left, ==, other);
  g_assert_cmpstr (drawl_plan_undo_label (drawl_window_get_plan (window)), ==,
                   "Change Capture Rate of 2 Shots");
  act (window, "undo");
  g_autofree char *again = capture_of (window, "1A");
  g_assert_cmpstr (again, ==, one);
  drop_window (window);
}

/* Held blanks stay: of the free ones another follows. */
static void
test_holds_stay (void)
{
  DrawlWindow *window = window_on_demo ();
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (fields_of (window, "1A"));

  drawl_blanks_hold (&fields->blanks, DRAWL_TIMING_SCREEN, TRUE);
  g_assert_true (drawl_plan_set_shot (drawl_window_get_plan (window), shot_of (window, "1A"),
                                      fields, "Hold", NULL));
  select_slates (window, "1A 1C");
  type (window, "capture_row", "48");
  g_assert_null (message_over (window));
  const DrawlRational *value = fields_of (window, "1A")->blanks.value;
  assert_same (value[DRAWL_TIMING_SCREEN], exact ("4.5"));
  assert_same (value[DRAWL_TIMING_ACTION], exact ("2.25"));
  drop_window (window);
}

/* ---- Choices ---- */

static const char *
chosen (DrawlWindow *window, const char *row)
{
  GObject *item = adw_combo_row_get_selected_item (ADW_COMBO_ROW (by_id (page_of (window), row)));

  return gtk_string_object_get_string (GTK_STRING_OBJECT (item));
}

static void
choose (DrawlWindow *window, const char *row, const char *word)
{
  AdwComboRow *combo = ADW_COMBO_ROW (by_id (page_of (window), row));
  GListModel *words = adw_combo_row_get_model (combo);

  for (guint i = 0; i < g_list_model_get_n_items (words); i++)
    if (g_str_equal (gtk_string_list_get_string (GTK_STRING_LIST (words), i), word)) {
      adw_combo_row_set_selected (combo, i);
      settle ();
      return;
    }
  g_error ("no %s in %s", word, row);
}

static void
test_must (void)
{
  DrawlWindow *window = window_on_demo ();
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (fields_of (window, "1A"));

  fields->must = !fields_of (window, "1B")->must;
  g_assert_true (drawl_plan_set_shot (drawl_window_get_plan (window), shot_of (window, "1A"),
                                      fields, "Must", NULL));
  select_slates (window, "1A 1B");
  g_assert_cmpstr (chosen (window, "must_row"), ==, "Several");
  choose (window, "must_row", "Wished for");
  g_assert_false (fields_of (window, "1A")->must);
  g_assert_false (fields_of (window, "1B")->must);
  g_assert_cmpstr (chosen (window, "must_row"), ==, "Wished for");
  /* The word for several changes nothing. */
  choose (window, "must_row", "Several");
  g_assert_cmpstr (chosen (window, "must_row"), ==, "Wished for");
  act (window, "undo");
  g_assert_cmpstr (chosen (window, "must_row"), ==, "Several");
  drop_window (window);
}

/* The body goes into all of them, with a size and codec that it has. */
static void
test_body (void)
{
  DrawlWindow *window = window_on_shots ("1A 2A 4B");
  GListModel *bodies = drawl_plan_get_bodies (drawl_window_get_plan (window));
  g_autoptr (DrawlHiredBody) hired = g_list_model_get_item (bodies, 0);
  g_autofree char *name = drawl_hired_body_dup_name (hired);
  static const char *const slates[] = {"1A", "2A", "4B"};

  g_assert_cmpstr (chosen (window, "body_row"), ==, "Several");
  g_assert_false (gtk_widget_get_visible (by_id (page_of (window), "size_row")));
  choose (window, "body_row", name);
  for (gsize i = 0; i < G_N_ELEMENTS (slates); i++) {
    const DrawlCheckQuestion *question = drawl_shot_get_question (shot_of (window, slates[i]));
    g_assert_cmpstr (fields_of (window, slates[i])->body, ==, drawl_hired_body_get_id (hired));
    g_assert_cmpint (question->size, >=, 0);
    g_assert_cmpint (question->codec, >=, 0);
  }
  g_assert_true (gtk_widget_get_visible (by_id (page_of (window), "size_row")));
  choose (window, "size_row", drawl_hired_body_get_body (hired)->sizes[0].name);
  g_assert_cmpstr (fields_of (window, "2A")->size, ==,
                   drawl_hired_body_get_body (hired)->sizes[0].id);
  act (window, "undo");
  act (window, "undo");
  g_assert_cmpstr (chosen (window, "body_row"), ==, "Several");
  drop_window (window);
}

/* Shots that go while they are shown there take nothing with them. */
static void
test_remove_while_typing (void)
{
  DrawlWindow *window = window_on_shots ("1A 1B");

  gtk_editable_set_text (GTK_EDITABLE (by_id (page_of (window), "takes_row")), "7");
  act (window, "remove-shot");
  act (window, "undo");
  g_assert_nonnull (drawl_plan_find_shot (drawl_window_get_plan (window), "1A"));
  drop_window (window);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/many-page/sums", test_sums);
  g_test_add_func ("/many-page/differ", test_differ);
  add_rows ("/many-page/entry", entry_rows, test_entry);
  g_test_add_func ("/many-page/unreadable", test_unreadable);
  g_test_add_func ("/many-page/refused-by-some", test_refused_by_some);
  g_test_add_func ("/many-page/holds-stay", test_holds_stay);
  g_test_add_func ("/many-page/must", test_must);
  g_test_add_func ("/many-page/body", test_body);
  g_test_add_func ("/many-page/remove-while-typing", test_remove_while_typing);
  return run_window_tests ();
}
