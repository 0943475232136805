/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The blanks of a sentence: what is typed, stepped, held and restored. */

#include "page.h"

static void
focus (const Page *page, DrawlTimingTerm term)
{
  gtk_widget_grab_focus (GTK_WIDGET (blank_of (page, term)));
  settle (page);
}

static void
type (const Page *page, DrawlTimingTerm term, const char *text)
{
  gtk_editable_set_text (entry_of (page, term), text);
}

static void
press_enter (const Page *page, DrawlTimingTerm term)
{
  g_signal_emit_by_name (gtk_editable_get_delegate (entry_of (page, term)), "activate");
  settle (page);
}

static DrawlEdit *
edit_of (const Page *page, DrawlTimingTerm term)
{
  return drawl_blank_get_edit (blank_of (page, term));
}

/* ---- What is typed ---- */

typedef struct {
  const char *name;
  DrawlTimingTerm term;
  const char *typed;
  DrawlTimingTerm follower;
  const char *value, *follows; /* exact */
} TypedRow;

static const TypedRow typed[] = {
    {"capture", DRAWL_TIMING_CAPTURE, "120", DRAWL_TIMING_FACTOR, "120", "5"},
    {"comma", DRAWL_TIMING_ACTION, "0,9", DRAWL_TIMING_SCREEN, "0.9", "9"},
    {"unit", DRAWL_TIMING_ACTION, "0.9 s", DRAWL_TIMING_SCREEN, "0.9", "9"},
    {"spelling", DRAWL_TIMING_PLAYBACK, "23.976", DRAWL_TIMING_SCREEN, "24000/1001", "4.5045"},
    {"fraction", DRAWL_TIMING_CAPTURE, "24000/1001", DRAWL_TIMING_FACTOR, "24000/1001",
     "1000/1001"},
    {"factor", DRAWL_TIMING_FACTOR, "20", DRAWL_TIMING_SCREEN, "20", "9"},
};

static void
test_typed (gconstpointer data)
{
  const TypedRow *row = data;
  Page page;

  open_page (&page, "1");
  focus (&page, row->term);
  type (&page, row->term, row->typed);
  press_enter (&page, row->term);
  assert_value (&page, "1", row->term, row->value);
  assert_value (&page, "1", row->follower, row->follows);
  g_assert_null (drawl_edit_get_error (edit_of (&page, row->term)));
  drawl_plan_undo (page.plan);
  assert_value (&page, "1", DRAWL_TIMING_CAPTURE, "240");
  assert_value (&page, "1", DRAWL_TIMING_ACTION, "0.45");
  g_assert_false (drawl_plan_can_redo (page.plan) && drawl_plan_can_undo (page.plan) &&
                  drawl_plan_get_modified (page.plan));
  close_page (&page);
}

static void
test_focus_out (void)
{
  Page page;

  open_page (&page, "1");
  focus (&page, DRAWL_TIMING_CAPTURE);
  type (&page, DRAWL_TIMING_CAPTURE, "48");
  assert_value (&page, "1", DRAWL_TIMING_CAPTURE, "240");
  focus (&page, DRAWL_TIMING_ACTION);
  assert_value (&page, "1", DRAWL_TIMING_CAPTURE, "48");
  g_assert_cmpstr (drawl_plan_undo_label (page.plan), ==, "Change capture rate");
  close_page (&page);
}

/* What is shown is rounded; leaving it alone leaves the exact value alone. */
static void
test_untouched (void)
{
  Page page;

  open_page (&page, "1");
  type (&page, DRAWL_TIMING_FACTOR, "1/3");
  press_enter (&page, DRAWL_TIMING_FACTOR);
  drawl_plan_mark_saved (page.plan);
  focus (&page, DRAWL_TIMING_SCREEN);
  assert_shown (&page, DRAWL_TIMING_SCREEN, "0.15");
  press_enter (&page, DRAWL_TIMING_SCREEN);
  type (&page, DRAWL_TIMING_SCREEN, "9");
  type (&page, DRAWL_TIMING_SCREEN, "0.15");
  press_enter (&page, DRAWL_TIMING_SCREEN);
  g_assert_false (drawl_plan_get_modified (page.plan));
  close_page (&page);
}

/* A refused entry of the shot that is left does not follow to the next, and waits there. */
static void
test_shot_switch (void)
{
  Page page;

  open_page (&page, "1");
  focus (&page, DRAWL_TIMING_CAPTURE);
  type (&page, DRAWL_TIMING_CAPTURE, "96");
  show_shot (&page, "2");
  assert_value (&page, "1", DRAWL_TIMING_CAPTURE, "96");
  assert_value (&page, "2", DRAWL_TIMING_CAPTURE, "24");
  assert_shown (&page, DRAWL_TIMING_CAPTURE, "24");
  type (&page, DRAWL_TIMING_CAPTURE, "fast");
  press_enter (&page, DRAWL_TIMING_CAPTURE);
  show_shot (&page, "1");
  assert_shown (&page, DRAWL_TIMING_CAPTURE, "96");
  g_assert_null (drawl_edit_get_error (edit_of (&page, DRAWL_TIMING_CAPTURE)));
  show_shot (&page, "2");
  assert_shown (&page, DRAWL_TIMING_CAPTURE, "fast");
  g_assert_nonnull (drawl_edit_get_error (edit_of (&page, DRAWL_TIMING_CAPTURE)));
  assert_value (&page, "2", DRAWL_TIMING_CAPTURE, "24");
  close_page (&page);
}

/* ---- What is refused ---- */

typedef struct {
  const char *name;
  DrawlTimingTerm term;
  const char *typed;
  const char *says;
} RefusedRow;

static const RefusedRow refused[] = {
    {"trailing", DRAWL_TIMING_CAPTURE, "24/1001x", "24/1001x"},
    {"zero", DRAWL_TIMING_CAPTURE, "0", "above 0"},
    {"negative", DRAWL_TIMING_ACTION, "-3", "above 0"},
    {"over-nothing", DRAWL_TIMING_PLAYBACK, "1/0", "0"},
    {"nan", DRAWL_TIMING_SCREEN, "nan", "nan"},
    {"exponent", DRAWL_TIMING_CAPTURE, "1e400", "1e400"},
    {"empty", DRAWL_TIMING_CAPTURE, "", "expected"},
    {"too-much", DRAWL_TIMING_CAPTURE, "99999999", "10000000"},
};

static gboolean
is_stale (gpointer widget)
{
  return gtk_widget_has_css_class (GTK_WIDGET (widget), "stale");
}

static GtkWidget *
find_type (const Page *page, const char *type_name)
{
  return find_first (page->page, g_type_from_name (type_name));
}

static void
test_refused (gconstpointer data)
{
  const RefusedRow *row = data;
  Page page;

  open_page (&page, "1");
  GtkEditable *entry = entry_of (&page, row->term);
  type (&page, row->term, row->typed);
  press_enter (&page, row->term);

  assert_shown (&page, row->term, row->typed);
  assert_value (&page, "1", DRAWL_TIMING_CAPTURE, "240");
  g_assert_false (drawl_plan_get_modified (page.plan));
  g_assert_true (gtk_widget_has_css_class (GTK_WIDGET (entry), "error"));
  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID,
                                    GTK_ACCESSIBLE_INVALID_TRUE);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                       drawl_edit_get_error (edit_of (&page, row->term)));
  g_assert_true (is_said (page.page, row->says));
  g_assert_true (is_stale (find_type (&page, "DrawlSpanView")));
  g_assert_true (is_stale (find_type (&page, "DrawlAnswers")));
  g_assert_cmpint (is_stale (blank_of (&page, DRAWL_TIMING_FACTOR)), ==,
                   row->term != DRAWL_TIMING_FACTOR);

  drawl_edit_restore (edit_of (&page, row->term));
  g_assert_false (is_stale (find_type (&page, "DrawlSpanView")));
  g_assert_false (is_stale (blank_of (&page, DRAWL_TIMING_FACTOR)));
  g_assert_null (drawl_edit_get_error (edit_of (&page, row->term)));
  close_page (&page);
}

/* Another blank still works; the refused one keeps what was typed, until it is mended. */
static void
test_mended (void)
{
  Page page;

  open_page (&page, "1");
  type (&page, DRAWL_TIMING_CAPTURE, "24x");
  press_enter (&page, DRAWL_TIMING_CAPTURE);
  type (&page, DRAWL_TIMING_ACTION, "2");
  press_enter (&page, DRAWL_TIMING_ACTION);
  assert_value (&page, "1", DRAWL_TIMING_ACTION, "2");
  assert_shown (&page, DRAWL_TIMING_CAPTURE, "24x");
  type (&page, DRAWL_TIMING_CAPTURE, "48");
  press_enter (&page, DRAWL_TIMING_CAPTURE);
  assert_value (&page, "1", DRAWL_TIMING_CAPTURE, "48");
  g_assert_false (is_stale (find_type (&page, "DrawlAnswers")));
  close_page (&page);
}

static void
test_restore_button (void)
{
  Page page;

  open_page (&page, "1");
  type (&page, DRAWL_TIMING_CAPTURE, "24x");
  g_assert_null (find_button (page.page, "Restore"));
  press_enter (&page, DRAWL_TIMING_CAPTURE);
  g_signal_emit_by_name (find_button (page.page, "Restore"), "clicked");
  assert_shown (&page, DRAWL_TIMING_CAPTURE, "240");
  settle (&page);
  g_assert_null (find_button (page.page, "Restore"));
  close_page (&page);
}

/* ---- Steps ---- */

typedef struct {
  const char *name;
  DrawlTimingTerm term;
  int steps;
  const char *value;
} StepRow;

static const StepRow steps[] = {
    {"capture-through-the-body", DRAWL_TIMING_CAPTURE, -1, "239"},
    {"capture-at-its-end", DRAWL_TIMING_CAPTURE, 1, "240"},
    {"capture-large", DRAWL_TIMING_CAPTURE, -10, "230"},
    {"playback", DRAWL_TIMING_PLAYBACK, -1, "24000/1001"},
    {"action", DRAWL_TIMING_ACTION, 1, "0.46"},
    {"screen", DRAWL_TIMING_SCREEN, 1, "4.6"},
    {"factor", DRAWL_TIMING_FACTOR, -1, "9"},
};

static void
test_step (gconstpointer data)
{
  const StepRow *row = data;
  Page page;

  open_page (&page, "1");
  focus (&page, row->term);
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (blank_of (&page, row->term)), "blank.step",
                                             "i", row->steps));
  assert_value (&page, "1", row->term, row->value);
  close_page (&page);
}

/* Typing and stepping at once: what was typed counts first. */
static void
test_step_from_typed (void)
{
  Page page;

  open_page (&page, "1");
  type (&page, DRAWL_TIMING_CAPTURE, "100");
  gtk_widget_activate_action (GTK_WIDGET (blank_of (&page, DRAWL_TIMING_CAPTURE)), "blank.step",
                              "i", 1);
  assert_value (&page, "1", DRAWL_TIMING_CAPTURE, "101");
  type (&page, DRAWL_TIMING_CAPTURE, "1o1");
  gtk_widget_activate_action (GTK_WIDGET (blank_of (&page, DRAWL_TIMING_CAPTURE)), "blank.step",
                              "i", 1);
  assert_shown (&page, DRAWL_TIMING_CAPTURE, "1o1");
  assert_value (&page, "1", DRAWL_TIMING_CAPTURE, "101");
  close_page (&page);
}

/* ---- Holds ---- */

static gboolean
is_held (const Page *page, DrawlTimingTerm term)
{
  return gtk_toggle_button_get_active (
      GTK_TOGGLE_BUTTON (find_first (blank_of (page, term), GTK_TYPE_TOGGLE_BUTTON)));
}

static void
toggle_hold (const Page *page, DrawlTimingTerm term)
{
  g_assert_true (
      gtk_widget_activate_action (GTK_WIDGET (blank_of (page, term)), "blank.hold", NULL));
  settle (page);
}

static void
test_hold (void)
{
  Page page;

  open_page (&page, "1");
  g_assert_true (is_held (&page, DRAWL_TIMING_PLAYBACK));
  g_assert_false (is_held (&page, DRAWL_TIMING_SCREEN));
  gtk_test_accessible_assert_property (
      GTK_ACCESSIBLE (find_first (blank_of (&page, DRAWL_TIMING_CAPTURE), GTK_TYPE_TOGGLE_BUTTON)),
      GTK_ACCESSIBLE_PROPERTY_LABEL, "Hold capture rate");
  toggle_hold (&page, DRAWL_TIMING_SCREEN);
  g_assert_true (is_held (&page, DRAWL_TIMING_SCREEN));
  g_assert_cmpstr (drawl_plan_undo_label (page.plan), ==, "Hold screen time");
  type (&page, DRAWL_TIMING_CAPTURE, "120");
  press_enter (&page, DRAWL_TIMING_CAPTURE);
  assert_value (&page, "1", DRAWL_TIMING_SCREEN, "4.5");
  assert_value (&page, "1", DRAWL_TIMING_ACTION, "0.9");
  drawl_plan_undo (page.plan);
  drawl_plan_undo (page.plan);
  g_assert_false (is_held (&page, DRAWL_TIMING_SCREEN));
  close_page (&page);
}

/* Holds that leave no room are named; once one is let go of, what was typed is taken. */
static void
test_held_fast (void)
{
  Page page;

  open_page (&page, "1");
  toggle_hold (&page, DRAWL_TIMING_FACTOR);
  type (&page, DRAWL_TIMING_CAPTURE, "120");
  press_enter (&page, DRAWL_TIMING_CAPTURE);
  assert_shown (&page, DRAWL_TIMING_CAPTURE, "120");
  assert_value (&page, "1", DRAWL_TIMING_CAPTURE, "240");
  g_assert_true (is_said (page.page, "slow factor"));
  toggle_hold (&page, DRAWL_TIMING_FACTOR);
  assert_value (&page, "1", DRAWL_TIMING_CAPTURE, "120");
  g_assert_null (drawl_edit_get_error (edit_of (&page, DRAWL_TIMING_CAPTURE)));
  close_page (&page);
}

/* ---- Following ---- */

static void
test_follows (void)
{
  Page page;

  open_page (&page, "1");
  DrawlBlank *factor = blank_of (&page, DRAWL_TIMING_FACTOR);
  g_assert_true (drawl_blank_get_follows (factor));
  g_assert_true (gtk_widget_has_css_class (GTK_WIDGET (factor), "follows"));
  g_assert_cmpstr (gtk_widget_get_tooltip_text (GTK_WIDGET (entry_of (&page, DRAWL_TIMING_FACTOR))),
                   ==, "Follows from capture rate, playback rate");
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (entry_of (&page, DRAWL_TIMING_FACTOR)),
                                       GTK_ACCESSIBLE_PROPERTY_LABEL, "Slow factor");
  g_assert_false (drawl_blank_get_follows (blank_of (&page, DRAWL_TIMING_CAPTURE)));
  type (&page, DRAWL_TIMING_FACTOR, "5");
  press_enter (&page, DRAWL_TIMING_FACTOR);
  g_assert_false (drawl_blank_get_follows (factor));
  close_page (&page);
}

int
main (int argc, char **argv)
{
  if (!start_tests (&argc, &argv))
    return 0;
  add_rows ("/blank/typed", typed, test_typed);
  g_test_add_func ("/blank/focus-out", test_focus_out);
  g_test_add_func ("/blank/untouched", test_untouched);
  g_test_add_func ("/blank/shot-switch", test_shot_switch);
  add_rows ("/blank/refused", refused, test_refused);
  g_test_add_func ("/blank/mended", test_mended);
  g_test_add_func ("/blank/restore-button", test_restore_button);
  add_rows ("/blank/step", steps, test_step);
  g_test_add_func ("/blank/step-from-typed", test_step_from_typed);
  g_test_add_func ("/blank/hold", test_hold);
  g_test_add_func ("/blank/held-fast", test_held_fast);
  g_test_add_func ("/blank/follows", test_follows);
  return g_test_run ();
}
