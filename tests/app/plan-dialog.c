/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The settings of a plan: what is wrong is marked, says why and is not taken; what is left alone
 * keeps every digit. */

#include "app/plan-dialog.h"

#include "fixture.h"
#include "rows.h"

typedef struct {
  DrawlPlan *plan;
  DrawlPlanDialog *dialog;
} Dialog;

/* @open->dialog becomes NULL when the dialog has gone. */
static void
open_dialog (Dialog *open)
{
  g_autoptr (GFile) file = demo_file ();

  open->plan = drawl_plan_load (file, NULL, NULL);
  open->dialog = drawl_plan_dialog_new (NULL, open->plan);
  gtk_window_present (GTK_WINDOW (open->dialog));
  g_object_add_weak_pointer (G_OBJECT (open->dialog), (gpointer *)&open->dialog);
  settle ();
}

static void
type (Dialog *open, const char *row, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (by_id (open->dialog, row)), text);
  settle ();
}

typedef struct {
  const char *name;
  const char *row;
  const char *text;
  const char *says;
} Wrong;

static const Wrong wrong_rows[] = {
    {"rate-empty", "playback_row", "", "Nothing is written"},
    {"rate-zero", "playback_row", "0", "above 0"},
    {"rate-nan", "playback_row", "nan", "number"},
    {"rate-by-zero", "playback_row", "1/0", "0"},
    {"reserve-hundred", "reserve_row", "100", "below 100"},
    {"reserve-negative", "reserve_row", "-1", "at least 0"},
    {"reserve-word", "reserve_row", "some", "number"},
    {"day-word", "day_row", "tomorrow", "2026-03-14"},
    {"day-absent", "day_row", "2027-02-30", "2026-03-14"},
    {"day-other-order", "day_row", "14-03-2026", "2026-03-14"},
};

static void
test_wrong (gconstpointer data)
{
  const Wrong *row = data;
  Dialog open;
  open_dialog (&open);
  g_autoptr (DrawlPlanSettings) before =
      drawl_plan_settings_copy (drawl_plan_get_settings (open.plan));
  GtkWidget *entry = by_id (open.dialog, row->row);
  GtkRevealer *revealer = GTK_REVEALER (by_id (open.dialog, "error_revealer"));

  type (&open, "title_row", "Another title");
  type (&open, row->row, row->text);
  g_assert_true (gtk_widget_has_css_class (entry, "error"));
  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID,
                                    GTK_ACCESSIBLE_INVALID_TRUE);
  g_assert_true (gtk_revealer_get_reveal_child (revealer));
  const char *why = gtk_label_get_text (GTK_LABEL (by_id (open.dialog, "error_label")));
  g_assert_nonnull (strstr (why, row->says));
  g_assert_false (drawl_plan_dialog_apply (open.dialog));
  settle ();
  g_assert_true (drawl_plan_settings_equal (before, drawl_plan_get_settings (open.plan)));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, row->text);
  type (&open, row->row, "");
  if (!g_str_equal (row->row, "day_row"))
    type (&open, row->row, "20");
  g_assert_false (gtk_widget_has_css_class (entry, "error"));
  g_assert_true (drawl_plan_dialog_apply (open.dialog));
  wait_until (open.dialog == NULL);
  g_assert_cmpstr (drawl_plan_get_settings (open.plan)->title, ==, "Another title");
  g_object_unref (open.plan);
}

static void
test_all (void)
{
  Dialog open;

  open_dialog (&open);
  type (&open, "title_row", "Title");
  type (&open, "production_row", "Production");
  type (&open, "day_row", "2028-02-29");
  type (&open, "playback_row", "23.976");
  type (&open, "reserve_row", "12.5 %");
  adw_combo_row_set_selected (ADW_COMBO_ROW (by_id (open.dialog, "mains_row")), 1);
  gtk_switch_set_active (GTK_SWITCH (by_id (open.dialog, "span_switch")), TRUE);
  gtk_text_buffer_set_text (
      gtk_text_view_get_buffer (GTK_TEXT_VIEW (by_id (open.dialog, "notes_view"))), "Notes", -1);
  g_assert_true (drawl_plan_dialog_apply (open.dialog));
  const DrawlPlanSettings *settings = drawl_plan_get_settings (open.plan);
  g_assert_cmpstr (settings->title, ==, "Title");
  g_assert_cmpstr (settings->production, ==, "Production");
  g_assert_cmpstr (settings->day, ==, "2028-02-29");
  assert_rational (settings->playback, 24000, 1001);
  assert_rational (settings->reserve_percent, 25, 2);
  g_assert_cmpint (settings->mains_hz, ==, 60);
  g_assert_true (settings->takes_span);
  g_assert_cmpstr (settings->notes, ==, "Notes");
  /* One step. */
  drawl_plan_undo (open.plan);
  g_assert_false (drawl_plan_can_undo (open.plan));
  wait_until (open.dialog == NULL);
  g_object_unref (open.plan);
}

/* 2997/125 shows as 23.976, which typed anew would be 24000/1001; 1/3 per cent shows rounded. */
static void
test_left_alone (void)
{
  g_autoptr (DrawlPlan) plan = drawl_plan_new ();
  g_autoptr (DrawlPlanSettings) settings =
      drawl_plan_settings_copy (drawl_plan_get_settings (plan));
  g_autoptr (GError) error = NULL;

  settings->playback = exact ("2997/125");
  settings->reserve_percent = exact ("1/3");
  drawl_plan_set_settings (plan, settings, "Settings", &error);
  g_assert_no_error (error);
  DrawlPlanDialog *dialog = drawl_plan_dialog_new (NULL, plan);
  gtk_window_present (GTK_WINDOW (dialog));
  gtk_editable_set_text (GTK_EDITABLE (by_id (dialog, "title_row")), "Title");
  g_assert_true (drawl_plan_dialog_apply (dialog));
  settle ();
  assert_rational (drawl_plan_get_settings (plan)->playback, 2997, 125);
  assert_rational (drawl_plan_get_settings (plan)->reserve_percent, 1, 3);
}

static void
test_mains_of_the_next_plan (void)
{
  DrawlWindow *window = window_on_demo ();
  GSettings *settings = drawl_application_get_settings (program ());
  GtkWidget *dialog = NULL;

  g_settings_set_int (settings, "mains-hz", 50);
  act (window, "plan-settings");
  g_autoptr (GList) toplevels = gtk_window_list_toplevels ();
  for (GList *l = toplevels; l != NULL; l = l->next)
    if (DRAWL_IS_PLAN_DIALOG (l->data))
      dialog = l->data;
  g_assert_nonnull (dialog);
  adw_combo_row_set_selected (ADW_COMBO_ROW (by_id (dialog, "mains_row")), 1);
  g_assert_true (drawl_plan_dialog_apply (DRAWL_PLAN_DIALOG (dialog)));
  settle ();
  g_assert_cmpint (g_settings_get_int (settings, "mains-hz"), ==, 60);
  act (window, "new");
  answer_with (window, "discard");
  g_assert_cmpint (drawl_plan_get_settings (drawl_window_get_plan (window))->mains_hz, ==, 60);
  drop_window (window);
}

static DrawlPlanDialog *
dialog_over (DrawlWindow *window)
{
  act (window, "plan-settings");
  g_autoptr (GList) toplevels = gtk_window_list_toplevels ();
  for (GList *l = toplevels; l != NULL; l = l->next)
    if (DRAWL_IS_PLAN_DIALOG (l->data) && gtk_widget_get_visible (l->data))
      return l->data;
  g_assert_not_reached ();
}

/* A plan that does not tell its unit goes by the settings, and tells it once it is changed; the
 * next plan goes by it, too. */
static void
test_length_unit (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlPlan *plan = drawl_window_get_plan (window);
  GSettings *settings = drawl_application_get_settings (program ());

  g_assert_cmpuint (drawl_plan_get_length_unit (plan), ==, DRAWL_LENGTH_FEET);
  g_assert_true (drawl_plan_dialog_apply (dialog_over (window)));
  settle ();
  g_assert_cmpstr (drawl_plan_get_settings (plan)->length_unit, ==, "");
  g_assert_false (drawl_plan_can_undo (plan));
  DrawlPlanDialog *dialog = dialog_over (window);
  adw_combo_row_set_selected (ADW_COMBO_ROW (by_id (dialog, "length_row")), 1);
  g_assert_true (drawl_plan_dialog_apply (dialog));
  settle ();
  g_assert_cmpstr (drawl_plan_get_settings (plan)->length_unit, ==, "metric");
  g_assert_cmpuint (drawl_plan_get_length_unit (plan), ==, DRAWL_LENGTH_METRIC);
  act (window, "new");
  answer_with (window, "discard");
  plan = drawl_window_get_plan (window);
  g_assert_cmpstr (drawl_plan_get_settings (plan)->length_unit, ==, "");
  g_assert_cmpuint (drawl_plan_get_length_unit (plan), ==, DRAWL_LENGTH_METRIC);
  g_settings_reset (settings, "length-unit");
  drop_window (window);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/plan-dialog/wrong", wrong_rows, test_wrong);
  g_test_add_func ("/plan-dialog/all", test_all);
  g_test_add_func ("/plan-dialog/left-alone", test_left_alone);
  g_test_add_func ("/plan-dialog/length-unit", test_length_unit);
  g_test_add_func ("/plan-dialog/mains-of-the-next-plan", test_mains_of_the_next_plan);
  return run_window_tests ();
}
