/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Bodies in the window: the tier and what follows from it, the chooser, the day's figures. */

#include "app/body-chooser.h"
#include "app/hired-body-page.h"
#include "app/shot-row.h"
#include "app/tier-group.h"
#include "app/verdict-mark.h"
#include "fixture.h"
#include "plan/body-file.h"
#include "rows.h"

/* ---- The tier, pure ---- */

/* Licences 0, 1, 2, …; 1 needs 0, 2 needs 1; 3 is instead of 0 and 1. */
static DrawlBody *
body_of_four (void)
{
  DrawlBody *body = drawl_body_new ();

  body->n_licences = 4;
  body->licences = g_new0 (DrawlLicence, 4);
  for (guint i = 0; i < 4; i++) {
    body->licences[i].id = g_strdup_printf ("l%u", i);
    body->licences[i].name = g_strdup_printf ("Licence %u", i);
    body->licences[i].what = g_strdup ("");
  }
  body->licences[1].requires = DRAWL_TIER_BIT (0);
  body->licences[2].requires = DRAWL_TIER_BIT (1);
  body->licences[3].replaces = DRAWL_TIER_BIT (0) | DRAWL_TIER_BIT (1);
  return body;
}

typedef struct {
  const char *name;
  DrawlTier before;
  guint licence;
  gboolean held;
  DrawlTier after;
} Tier;

static const Tier tier_rows[] = {
    {"one-alone", 0x0, 0, TRUE, 0x1},
    {"with-what-it-needs", 0x0, 1, TRUE, 0x3},
    {"with-all-that-it-needs", 0x0, 2, TRUE, 0x7},
    {"needs-that-are-met", 0x1, 1, TRUE, 0x3},
    {"needs-that-another-replaces", 0x8, 2, TRUE, 0xc},
    {"given-back", 0x1, 0, FALSE, 0x0},
    {"given-back-with-what-depends", 0x7, 0, FALSE, 0x0},
    {"given-back-in-the-middle", 0x7, 1, FALSE, 0x1},
    {"replaced-still", 0xf, 0, FALSE, 0xe},
    {"replacement-given-back", 0xc, 3, FALSE, 0x0},
    {"others-stay", 0x9, 3, FALSE, 0x1},
};

static void
test_tier (gconstpointer data)
{
  const Tier *row = data;
  g_autoptr (DrawlBody) body = body_of_four ();

  g_assert_cmphex (drawl_tier_with (body, row->before, row->licence, row->held), ==, row->after);
}

/* ---- In the window ---- */

static GtkWidget *
row_for (DrawlWindow *window, const char *slate)
{
  GtkWidget *view = by_id (drawl_window_get_list (window), "list_view");

  for (GtkWidget *item = gtk_widget_get_first_child (view); item != NULL;
       item = gtk_widget_get_next_sibling (item)) {
    GtkWidget *row = gtk_widget_get_first_child (item);
    if (DRAWL_IS_SHOT_ROW (row) && drawl_shot_row_get_shot (DRAWL_SHOT_ROW (row)) != NULL &&
        g_str_equal (drawl_shot_get_slate (drawl_shot_row_get_shot (DRAWL_SHOT_ROW (row))), slate))
      return row;
  }
  return NULL;
}

static DrawlVerdict
shown_verdict (DrawlWindow *window, const char *slate)
{
  GtkWidget *row = row_for (window, slate);

  g_assert_nonnull (row);
  return drawl_verdict_mark_get_verdict (
      DRAWL_VERDICT_MARK (by_type (row, DRAWL_TYPE_VERDICT_MARK)));
}

static GtkWidget *
switch_of (DrawlWindow *window, guint licence)
{
  GtkWidget *group = by_id (window->bodies, "tier_group");
  GtkWidget *list = by_type (group, GTK_TYPE_LIST_BOX);
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), (int)licence);

  g_assert_nonnull (row);
  return by_type (row, GTK_TYPE_SWITCH);
}

static const char *
count_text (DrawlWindow *window)
{
  return gtk_label_get_text (GTK_LABEL (by_id (window->bodies, "count_label")));
}

static void
test_switch (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlHiredBody *hired = drawl_plan_find_body (drawl_window_get_plan (window), "A");

  g_assert_cmpint ((int)shown_verdict (window, "1A"), ==, DRAWL_VERDICT_NEEDS_LICENCE);
  act_on (window, "page", "bodies");
  g_assert_true (drawl_bodies_page_get_selected (window->bodies) == hired);
  g_assert_cmpstr (count_text (window), ==,
                   "4 of 9 shots as hired, 4 need a licence, 1 not on this body");
  g_assert_false (gtk_switch_get_active (GTK_SWITCH (switch_of (window, 0))));
  gtk_switch_set_active (GTK_SWITCH (switch_of (window, 0)), TRUE);
  settle ();
  g_assert_cmphex (drawl_hired_body_get_tier (hired), ==, 0x1);
  g_assert_cmpint ((int)shown_verdict (window, "1A"), ==, DRAWL_VERDICT_AS_HIRED);
  g_assert_cmpstr (count_text (window), ==,
                   "6 of 9 shots as hired, 2 need a licence, 1 not on this body");
  act (window, "undo");
  g_assert_false (gtk_switch_get_active (GTK_SWITCH (switch_of (window, 0))));
  g_assert_cmphex (drawl_hired_body_get_tier (hired), ==, 0);
  g_assert_cmpint ((int)shown_verdict (window, "1A"), ==, DRAWL_VERDICT_NEEDS_LICENCE);
  drop_window (window);
}

/* Hiring what needs another hires both, in one step. */
static void
test_switch_with_needs (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlHiredBody *hired = drawl_plan_find_body (drawl_window_get_plan (window), "A");
  DrawlBody *body = drawl_hired_body_get_body (hired);
  guint raw = (guint)drawl_body_licence_index (body, "raw");
  guint codec = (guint)drawl_body_licence_index (body, "codec");

  act_on (window, "page", "bodies");
  gtk_switch_set_active (GTK_SWITCH (switch_of (window, raw)), TRUE);
  settle ();
  g_assert_true (gtk_switch_get_active (GTK_SWITCH (switch_of (window, codec))));
  g_assert_cmphex (drawl_hired_body_get_tier (hired), ==,
                   DRAWL_TIER_BIT (raw) | DRAWL_TIER_BIT (codec));
  act (window, "undo");
  g_assert_cmphex (drawl_hired_body_get_tier (hired), ==, 0);
  g_assert_false (gtk_switch_get_active (GTK_SWITCH (switch_of (window, raw))));
  drop_window (window);
}

static void
test_limits_are_marked (void)
{
  DrawlWindow *window = window_on_demo ();

  act_on (window, "page", "bodies");
  GtkWidget *limits = by_id (window->bodies, "limits");
  DrawlVerdictMark *first = DRAWL_VERDICT_MARK (by_type (limits, DRAWL_TYPE_VERDICT_MARK)); /* 6k */
  guint size = (guint)drawl_body_licence_index (
      drawl_hired_body_get_body (drawl_bodies_page_get_selected (window->bodies)), "size");
  g_assert_cmpint ((int)drawl_verdict_mark_get_verdict (first), ==, DRAWL_VERDICT_NEEDS_LICENCE);
  gtk_switch_set_active (GTK_SWITCH (switch_of (window, size)), TRUE);
  settle ();
  g_assert_cmpint ((int)drawl_verdict_mark_get_verdict (first), ==, DRAWL_VERDICT_AS_HIRED);
  drop_window (window);
}

static void
test_card_and_days (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlHiredBody *hired = drawl_plan_find_body (drawl_window_get_plan (window), "A");
  int before = drawl_hired_body_get_fields (hired)->card;

  act_on (window, "page", "bodies");
  g_assert_cmpint (before, >=, 0);
  g_assert_false (can (window, "undo")); /* to show is not to edit */
  adw_combo_row_set_selected (ADW_COMBO_ROW (by_id (window->bodies, "card_row")), 0);
  settle ();
  g_assert_cmpint (drawl_hired_body_get_fields (hired)->card, ==, -1);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (by_id (window->bodies, "days_spin")), 5);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (by_id (window->bodies, "cards_spin")), 6);
  settle ();
  g_assert_cmpuint (drawl_hired_body_get_fields (hired)->days, ==, 5);
  g_assert_cmpuint (drawl_hired_body_get_fields (hired)->cards, ==, 6);
  act (window, "undo");
  act (window, "undo");
  act (window, "undo");
  g_assert_cmpint (drawl_hired_body_get_fields (hired)->card, ==, before);
  g_assert_cmpint (
      (int)adw_combo_row_get_selected (ADW_COMBO_ROW (by_id (window->bodies, "card_row"))), ==,
      before + 1);
  g_assert_false (can (window, "undo"));
  drop_window (window);
}

static void
test_remove_body (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlPlan *plan = drawl_window_get_plan (window);

  act_on (window, "page", "bodies");
  act (window, "remove-body");
  g_assert_null (drawl_plan_find_body (plan, "A"));
  g_assert_cmpint ((int)drawl_shot_get_verdict (shot_of (window, "4A")), ==,
                   DRAWL_VERDICT_NOT_ON_THIS_BODY);
  g_assert_cmpstr (drawl_hired_body_get_id (drawl_bodies_page_get_selected (window->bodies)), ==,
                   "B");
  act (window, "undo");
  g_assert_nonnull (drawl_plan_find_body (plan, "A"));
  g_assert_cmpint ((int)drawl_shot_get_verdict (shot_of (window, "4A")), ==,
                   DRAWL_VERDICT_AS_HIRED);
  drop_window (window);
}

/* ---- The chooser ---- */

static DrawlBodyChooser *
chooser_over (DrawlWindow *window)
{
  g_autoptr (GList) toplevels = gtk_window_list_toplevels ();

  for (GList *l = toplevels; l != NULL; l = l->next)
    if (DRAWL_IS_BODY_CHOOSER (l->data) &&
        gtk_window_get_transient_for (l->data) == (GtkWindow *)window)
      return l->data;
  return NULL;
}

static void
test_choose (void)
{
  DrawlWindow *window = window_on (NULL);

  act (window, "new");
  act (window, "add-shot");
  act (window, "add-body");
  DrawlBodyChooser *chooser = chooser_over (window);
  g_assert_nonnull (chooser);
  GtkListBox *list = GTK_LIST_BOX (by_id (chooser, "list_box"));
  g_autoptr (GPtrArray) shipped = drawl_body_load_shipped (NULL);
  g_assert_cmpuint (shipped->len, >=, 5);
  g_assert_nonnull (gtk_list_box_get_row_at_index (list, (int)shipped->len - 1));
  g_assert_null (gtk_list_box_get_row_at_index (list, (int)shipped->len));
  g_assert_true (gtk_widget_activate (GTK_WIDGET (gtk_list_box_get_row_at_index (list, 0))));
  settle ();
  g_assert_null (chooser_over (window));

  /* The shot that waited for a body is on it, as hired, and all of it is one step. */
  DrawlShot *shot = drawl_window_get_shot (window);
  g_assert_nonnull (drawl_plan_find_body (drawl_window_get_plan (window), "A"));
  g_assert_cmpstr (drawl_shot_get_fields (shot)->body, ==, "A");
  g_assert_cmpint ((int)drawl_shot_get_verdict (shot), ==, DRAWL_VERDICT_AS_HIRED);
  act (window, "undo");
  g_assert_null (drawl_plan_find_body (drawl_window_get_plan (window), "A"));
  g_assert_cmpstr (drawl_shot_get_fields (shot)->body, ==, "");
  drop_window (window);
}

/* Each shipped body gives a first shot that it can do as it is hired. */
static void
test_first_shot (gconstpointer data)
{
  const guint *index = data;
  DrawlWindow *window = window_on (NULL);

  act (window, "new");
  act (window, "add-body");
  GtkListBox *list = GTK_LIST_BOX (by_id (chooser_over (window), "list_box"));
  gtk_widget_activate (GTK_WIDGET (gtk_list_box_get_row_at_index (list, (int)*index)));
  settle ();
  act (window, "add-shot");
  g_assert_cmpint ((int)drawl_shot_get_verdict (drawl_window_get_shot (window)), ==,
                   DRAWL_VERDICT_AS_HIRED);
  drop_window (window);
}

static void
test_choose_from_file (void)
{
  DrawlWindow *window = window_on_demo ();
  g_autofree char *path = drawl_data_file ("bodies", "cruet-2.json", NULL);
  g_autoptr (GFile) profile = g_file_new_for_path (path);
  g_autoptr (GFile) no_profile = demo_file ();

  act (window, "add-body");
  DrawlBodyChooser *chooser = chooser_over (window);
  drawl_body_chooser_take_file (chooser, no_profile);
  settle ();
  g_assert_nonnull (message_over (chooser));
  answer_with (chooser, "close");
  drawl_body_chooser_take_file (chooser, profile);
  settle ();
  g_assert_nonnull (drawl_plan_find_body (drawl_window_get_plan (window), "D"));
  drop_window (window);
}

/* ---- The day strip ---- */

static void
test_day_strip (void)
{
  DrawlWindow *window = window_on_demo ();
  GtkLabel *hired = GTK_LABEL (by_id (window->day_strip, "as_hired_label"));
  GtkLabel *needs = GTK_LABEL (by_id (window->day_strip, "needs_licence_label"));
  GtkWidget *rolled = by_id (by_id (window->day_strip, "rolled_figure"), "value_label");
  GtkWidget *screen = by_id (by_id (window->day_strip, "screen_figure"), "value_label");

  g_assert_cmpstr (gtk_label_get_text (hired), ==, "8");
  g_assert_cmpstr (gtk_label_get_text (needs), ==, "5");
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (rolled)), ==, "11\u00a0min\u00a034\u00a0s");
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (screen)), ==, "3\u00a0min\u00a048\u00a0s");
  select_shot (window, "4A");
  act (window, "remove-shot");
  g_assert_cmpstr (gtk_label_get_text (hired), ==, "7");
  /* A verdict narrows the list, and again shows all. */
  GtkWidget *button = by_id (window->day_strip, "needs_licence_button");
  g_assert_true (gtk_widget_activate (button));
  wait_until (rows_of (window) == 5);
  g_assert_true (gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (button)));
  g_assert_true (gtk_widget_activate (button));
  wait_until (rows_of (window) == drawl_plan_n_shots (drawl_window_get_plan (window)));
  g_assert_false (gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (button)));
  drop_window (window);
}

int
main (int argc, char **argv)
{
  static guint indices[5];

  g_test_init (&argc, &argv, NULL);
  add_rows ("/tier", tier_rows, test_tier);
  g_test_add_func ("/bodies/switch", test_switch);
  g_test_add_func ("/bodies/switch-with-needs", test_switch_with_needs);
  g_test_add_func ("/bodies/limits-are-marked", test_limits_are_marked);
  g_test_add_func ("/bodies/card-and-days", test_card_and_days);
  g_test_add_func ("/bodies/remove", test_remove_body);
  g_test_add_func ("/bodies/choose", test_choose);
  for (guint i = 0; i < G_N_ELEMENTS (indices); i++) {
    g_autofree char *path = g_strdup_printf ("/bodies/first-shot/%u", i);
    indices[i] = i;
    g_test_add_data_func (path, &indices[i], test_first_shot);
  }
  g_test_add_func ("/bodies/choose-from-file", test_choose_from_file);
  g_test_add_func ("/day-strip", test_day_strip);
  return run_window_tests ();
}
