/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The body editor: a body from nothing, with its mistakes marked and mended; a body of the plan
 * edited, and what of the plan goes along; rows taken from a table of text; leaving. */

#include "app/body-editor.h"

#include <string.h>

#include "app/body-cell.h"
#include "app/body-cell-row.h"
#include "app/body-chooser.h"
#include "app/body-limit-rows.h"
#include "app/body-rows.h"
#include "app/limits-view.h"
#include "fixture.h"
#include "rows.h"

/* ---- Finding what is typed into ---- */

typedef struct {
  const char *title;
  guint nth;
} Wanted;

static Wanted wanted;

static gboolean
is_row_titled (GtkWidget *widget, gconstpointer data)
{
  return DRAWL_IS_BODY_CELL_ROW (widget) &&
         g_str_equal (adw_preferences_row_get_title (ADW_PREFERENCES_ROW (widget)), wanted.title) &&
         wanted.nth-- == 0;
}

/* The cell with that title (its mnemonic and all), the @nth of them on the page. */
static GtkWidget *
cell_on (DrawlBodyEditor *editor, const char *page, const char *title, guint nth)
{
  wanted = (Wanted){title, nth};
  GtkWidget *row = find_widget (by_id (editor, page), is_row_titled, NULL);

  g_assert_nonnull (row);
  return row;
}

static void
type_on (DrawlBodyEditor *editor, const char *page, const char *title, guint nth, const char *text)
{
  GtkWidget *row = cell_on (editor, page, title, nth);

  gtk_editable_set_text (GTK_EDITABLE (by_type (row, GTK_TYPE_ENTRY)), text);
  settle ();
}

static GtkWidget *
limit_entry (DrawlBodyEditor *editor, guint nth)
{
  GtkWidget *table = by_id (editor, "table"), *line = gtk_widget_get_first_child (table);
  GtkWidget *cells = gtk_widget_get_first_child (gtk_widget_get_next_sibling (line));

  for (GtkWidget *cell = gtk_widget_get_first_child (cells); cell != NULL;
       cell = gtk_widget_get_next_sibling (cell)) {
    GtkWidget *editor_of = gtk_widget_get_first_child (cell);
    if (GTK_IS_ENTRY (editor_of) && nth-- == 0)
      return editor_of;
  }
  g_assert_not_reached ();
}

static void
type_limit (DrawlBodyEditor *editor, guint nth, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (limit_entry (editor, nth)), text);
  settle ();
}

static DrawlBodyEditor *
editor_over (gpointer parent)
{
  g_autoptr (GList) toplevels = gtk_window_list_toplevels ();

  for (GList *l = toplevels; l != NULL; l = l->next)
    if (DRAWL_IS_BODY_EDITOR (l->data) && gtk_window_get_transient_for (l->data) == parent)
      return l->data;
  return NULL;
}

static GtkWindow *
chooser_over (gpointer parent)
{
  g_autoptr (GList) toplevels = gtk_window_list_toplevels ();

  for (GList *l = toplevels; l != NULL; l = l->next)
    if (DRAWL_IS_BODY_CHOOSER (l->data) && gtk_window_get_transient_for (l->data) == parent)
      return l->data;
  return NULL;
}

static DrawlBodyEditor *
edit_first (DrawlWindow *window)
{
  act_on (window, "page", "bodies");
  g_signal_emit_by_name (by_id (window->bodies, "edit_button"), "clicked");
  settle ();
  DrawlBodyEditor *editor = editor_over (window);
  g_assert_nonnull (editor);
  wait_until (gtk_widget_get_mapped (GTK_WIDGET (editor)));
  return editor;
}

static gboolean
needs_attention (DrawlBodyEditor *editor, const char *page)
{
  AdwViewStack *pages = ADW_VIEW_STACK (by_id (editor, "pages"));

  return adw_view_stack_page_get_needs_attention (
      adw_view_stack_get_page (pages, adw_view_stack_get_child_by_name (pages, page)));
}

/* ---- From nothing ---- */

static void
fill (DrawlBodyEditor *editor)
{
  type_on (editor, "about_page", "_Name", 0, "Spindle 3");
  type_on (editor, "sizes_page", "_Name", 0, "3840 × 2160");
  type_on (editor, "sizes_page", "_Width in Pixels", 0, "3840");
  type_on (editor, "sizes_page", "_Height in Pixels", 0, "2160");
  type_on (editor, "sizes_page", "_Name", 1, "Intra");
  type_on (editor, "sizes_page", "_Data Rate in Mbit/s", 0, "240,5");
  type_on (editor, "sizes_page", "Stated _at fps", 0, "24");
  type_limit (editor, 0, "1");
  type_limit (editor, 1, "120");
}

static void
test_from_nothing (void)
{
  DrawlWindow *window = window_on_demo ();
  GListModel *bodies = drawl_plan_get_bodies (drawl_window_get_plan (window));
  guint n = g_list_model_get_n_items (bodies);

  act (window, "add-body");
  GtkWindow *chooser = chooser_over (window);
  g_assert_nonnull (chooser);
  g_signal_emit_by_name (by_id (chooser, "new_button"), "clicked");
  settle ();
  DrawlBodyEditor *editor = editor_over (chooser);
  g_assert_nonnull (editor);
  gtk_switch_set_active (GTK_SWITCH (by_id (editor, "own_switch")), FALSE);

  /* Nothing is marked before it was tried. */
  GtkWidget *name = cell_on (editor, "about_page", "_Name", 0);
  g_assert_false (gtk_widget_has_css_class (name, "mistaken"));
  g_assert_false (drawl_body_editor_apply (editor));
  settle ();
  g_assert_true (gtk_widget_has_css_class (name, "mistaken"));
  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (by_type (name, GTK_TYPE_ENTRY)),
                                    GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE);
  g_assert_cmpstr (adw_action_row_get_subtitle (ADW_ACTION_ROW (name)), ==, "This is needed.");
  g_assert_true (needs_attention (editor, "limits"));

  fill (editor);
  g_assert_false (gtk_widget_has_css_class (name, "mistaken"));
  g_assert_false (needs_attention (editor, "limits"));
  g_assert_true (gtk_widget_get_visible (by_id (editor, "picture")));
  g_assert_true (drawl_body_editor_apply (editor));
  settle ();
  g_assert_cmpuint (g_list_model_get_n_items (bodies), ==, n + 1);
  g_autoptr (DrawlHiredBody) hired = g_list_model_get_item (bodies, n);
  g_assert_cmpstr (drawl_hired_body_get_body (hired)->id, ==, "spindle-3");
  act (window, "undo");
  g_assert_cmpuint (g_list_model_get_n_items (bodies), ==, n);
  drop_window (window);
}

static void
test_kept_for_other_plans (void)
{
  DrawlBodyEditor *editor = drawl_body_editor_new_from_nothing (NULL);
  g_autofree char *path =
      g_build_filename (g_get_user_data_dir (), "drawl", "bodies", "spindle-3.json", NULL);

  gtk_window_present (GTK_WINDOW (editor));
  settle ();
  g_assert_true (gtk_switch_get_active (GTK_SWITCH (by_id (editor, "own_switch"))));
  fill (editor);
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
  g_assert_true (drawl_body_editor_apply (editor));
  settle ();
  g_assert_true (g_file_test (path, G_FILE_TEST_EXISTS));
  g_unlink (path);
}

/* ---- One of the plan ---- */

/* What is wrong is marked where it is, the rest of what was typed stays. */
static void
test_mistakes (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlBodyEditor *editor = edit_first (window);
  GtkWidget *width = cell_on (editor, "sizes_page", "_Width in Pixels", 0);

  type_on (editor, "sizes_page", "_Readout in ms", 0, "3,5");
  type_on (editor, "sizes_page", "_Width in Pixels", 0, "wide");
  g_assert_true (gtk_widget_has_css_class (width, "mistaken"));
  g_assert_true (needs_attention (editor, "sizes"));
  g_assert_false (needs_attention (editor, "about"));
  g_assert_false (drawl_body_editor_apply (editor));
  settle ();
  g_assert_cmpstr (adw_view_stack_get_visible_child_name (ADW_VIEW_STACK (by_id (editor, "pages"))),
                   ==, "sizes");
  wait_until (gtk_widget_is_ancestor (gtk_root_get_focus (GTK_ROOT (editor)), width));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (by_type (width, GTK_TYPE_ENTRY))), ==,
                   "wide");
  type_on (editor, "sizes_page", "_Width in Pixels", 0, "6144");
  g_assert_false (gtk_widget_has_css_class (width, "mistaken"));
  g_assert_true (drawl_body_editor_apply (editor));
  settle ();
  g_assert_true (can (window, "undo"));
  drop_window (window);
}

static void
test_limit_against_the_rest (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlBodyEditor *editor = edit_first (window);

  type_limit (editor, 0, "900");
  g_assert_true (gtk_widget_has_css_class (limit_entry (editor, 1), "error"));
  g_assert_true (needs_attention (editor, "limits"));
  type_limit (editor, 0, "1");
  g_assert_false (gtk_widget_has_css_class (limit_entry (editor, 1), "error"));
  g_assert_false (needs_attention (editor, "limits"));
  gtk_window_destroy (GTK_WINDOW (editor));
  drop_window (window);
}

/* A size gets another id, and a rate another figure: shots and verdicts follow, one undo. */
static void
test_edit_and_undo (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlPlan *plan = drawl_window_get_plan (window);
  DrawlHiredBody *hired = drawl_plan_find_body (plan, "A");
  DrawlShot *shot = shot_of (window, "1A");
  DrawlBody *before = drawl_hired_body_get_body (hired);
  g_autofree char *size = g_strdup (drawl_shot_get_fields (shot)->size);
  guint index = (guint)drawl_body_size_index (before, size);
  DrawlBodyEditor *editor = edit_first (window);
  DrawlBodyDraft *draft = drawl_body_editor_get_draft (editor);
  guint licences = drawl_draft_column (DRAWL_DRAFT_LIMITS, "licences");

  g_assert_cmpint ((int)drawl_shot_get_verdict (shot), ==, DRAWL_VERDICT_NEEDS_LICENCE);
  type_on (editor, "sizes_page", "I_d", index, "renamed");
  /* The maker gives everything away: no row needs a licence. */
  for (guint i = 0; i < drawl_body_draft_n_rows (draft, DRAWL_DRAFT_LIMITS); i++)
    for (guint k = 0; k < drawl_body_draft_n_rows (draft, DRAWL_DRAFT_LICENCES); k++)
      drawl_body_draft_refer (draft, drawl_body_draft_get_row (draft, DRAWL_DRAFT_LIMITS, i),
                              licences, drawl_body_draft_get_row (draft, DRAWL_DRAFT_LICENCES, k),
                              FALSE);
  settle ();
  /* Now rows contradict each other, which is said; the highest of a pair stays. */
  g_assert_false (drawl_body_editor_apply (editor));
  for (guint i = drawl_body_draft_n_rows (draft, DRAWL_DRAFT_LIMITS); i-- > 0;) {
    DrawlDraftRow *row = drawl_body_draft_get_row (draft, DRAWL_DRAFT_LIMITS, i);
    if (g_str_equal (drawl_body_draft_get (draft, row, 3), "30") ||
        g_str_equal (drawl_body_draft_get (draft, row, 3), "60"))
      drawl_body_draft_remove_row (draft, row);
  }
  settle ();
  g_assert_nonnull (drawl_body_draft_get_body (draft));
  g_assert_true (drawl_body_editor_apply (editor));
  settle ();
  g_assert_cmpstr (drawl_shot_get_fields (shot)->size, ==, "renamed");
  g_assert_cmpint ((int)drawl_shot_get_verdict (shot), ==, DRAWL_VERDICT_AS_HIRED);
  act (window, "undo");
  g_assert_cmpstr (drawl_shot_get_fields (shot)->size, ==, size);
  g_assert_cmpint ((int)drawl_shot_get_verdict (shot), ==, DRAWL_VERDICT_NEEDS_LICENCE);
  g_assert_true (drawl_hired_body_get_body (hired) == before);
  g_assert_false (can (window, "undo"));
  drop_window (window);
}

/* The page of the body shows the new profile. */
static void
test_page_follows (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlBodyEditor *editor = edit_first (window);

  type_on (editor, "about_page", "_What It Is", 0, "Another line");
  g_assert_true (drawl_body_editor_apply (editor));
  settle ();
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (by_id (window->bodies, "what_label"))), ==,
                   "Another line");
  drop_window (window);
}

/* ---- The example of a law ---- */

static void
test_law_example (void)
{
  DrawlBodyEditor *editor = drawl_body_editor_new_from_nothing (NULL);
  GtkWidget *law = cell_on (editor, "sizes_page", "Payload _Law", 0);
  GtkWidget *codec = gtk_widget_get_ancestor (law, ADW_TYPE_EXPANDER_ROW);

  gtk_window_present (GTK_WINDOW (editor));
  settle ();
  g_assert_true (
      gtk_widget_get_visible (cell_on (editor, "sizes_page", "_Data Rate in Mbit/s", 0)));
  drawl_body_draft_set (
      drawl_body_editor_get_draft (editor),
      drawl_body_draft_get_row (drawl_body_editor_get_draft (editor), DRAWL_DRAFT_CODECS, 0),
      drawl_draft_column (DRAWL_DRAFT_CODECS, "law"), "mosaic-12");
  settle ();
  g_assert_false (
      gtk_widget_get_visible (cell_on (editor, "sizes_page", "_Data Rate in Mbit/s", 0)));
  g_assert_nonnull (
      strstr (adw_expander_row_get_subtitle (ADW_EXPANDER_ROW (codec)), "1920 × 1080: 3.11"));
  gtk_window_destroy (GTK_WINDOW (editor));
  settle ();
}

/* ---- Rows ---- */

static void
test_rows_come_and_go (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlBodyEditor *editor = edit_first (window);
  DrawlBodyDraft *draft = drawl_body_editor_get_draft (editor);
  guint n = drawl_body_draft_n_rows (draft, DRAWL_DRAFT_SIZES);
  DrawlBodyRows *rows =
      DRAWL_BODY_ROWS (by_type (by_id (editor, "sizes_page"), DRAWL_TYPE_BODY_ROWS));
  GtkWidget *add = by_type (rows, GTK_TYPE_BUTTON);

  g_signal_emit_by_name (add, "clicked");
  settle ();
  g_assert_cmpuint (drawl_body_draft_n_rows (draft, DRAWL_DRAFT_SIZES), ==, n + 1);
  type_on (editor, "sizes_page", "_Name", n, "Slit");
  drawl_body_draft_remove_row (draft, drawl_body_draft_get_row (draft, DRAWL_DRAFT_SIZES, n));
  settle ();
  g_assert_nonnull (drawl_body_draft_get_body (draft));
  gtk_window_destroy (GTK_WINDOW (editor));
  drop_window (window);
}

typedef struct {
  const char *name;
  const char *response;
  guint more; /* rows than before, or in all where they are replaced */
  gboolean replaced;
} Import;

static const Import imports[] = {
    {"cancel", "cancel", 0, FALSE}, {"add", "add", 1, FALSE}, {"replace", "replace", 1, TRUE}};

static void
test_import (gconstpointer data)
{
  const Import *row = data;
  DrawlWindow *window = window_on_demo ();
  DrawlBodyEditor *editor = edit_first (window);
  DrawlBodyDraft *draft = drawl_body_editor_get_draft (editor);
  guint n = drawl_body_draft_n_rows (draft, DRAWL_DRAFT_LIMITS);
  DrawlBody *body =
      drawl_hired_body_get_body (drawl_plan_find_body (drawl_window_get_plan (window), "A"));
  g_autofree char *text =
      g_strdup_printf ("size;codec;lowest;highest\n%s;no such;1;25\n%s;%s;1;12,5\n",
                       body->sizes[0].id, body->sizes[0].id, body->codecs[0].id);

  drawl_body_limit_import (draft, GTK_WINDOW (editor), text, strlen (text));
  settle ();
  AdwMessageDialog *message = message_over (editor);
  g_assert_nonnull (message);
  g_assert_nonnull (strstr (adw_message_dialog_get_body (message), "1 row can be taken"));
  g_assert_nonnull (strstr (adw_message_dialog_get_body (message), "Line 2, codec"));
  answer_with (editor, row->response);
  g_assert_cmpuint (drawl_body_draft_n_rows (draft, DRAWL_DRAFT_LIMITS), ==,
                    row->replaced ? row->more : n + row->more);
  gtk_window_destroy (GTK_WINDOW (editor));
  drop_window (window);
}

/* ---- Leaving ---- */

static void
test_leave (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlBodyEditor *editor = edit_first (window);

  gtk_window_close (GTK_WINDOW (editor));
  settle ();
  g_assert_null (editor_over (window)); /* nothing was edited */

  editor = edit_first (window);
  type_on (editor, "about_page", "_Maker", 0, "Somebody");
  gtk_window_close (GTK_WINDOW (editor));
  settle ();
  g_assert_nonnull (message_over (editor));
  answer_with (editor, "cancel");
  g_assert_nonnull (editor_over (window));
  gtk_window_close (GTK_WINDOW (editor));
  settle ();
  answer_with (editor, "discard");
  g_assert_null (editor_over (window));
  g_assert_false (can (window, "undo"));
  drop_window (window);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/body-editor/from-nothing", test_from_nothing);
  g_test_add_func ("/body-editor/kept-for-other-plans", test_kept_for_other_plans);
  g_test_add_func ("/body-editor/mistakes", test_mistakes);
  g_test_add_func ("/body-editor/limit-against-the-rest", test_limit_against_the_rest);
  g_test_add_func ("/body-editor/edit-and-undo", test_edit_and_undo);
  g_test_add_func ("/body-editor/page-follows", test_page_follows);
  g_test_add_func ("/body-editor/law-example", test_law_example);
  g_test_add_func ("/body-editor/rows-come-and-go", test_rows_come_and_go);
  add_rows ("/body-editor/import", imports, test_import);
  g_test_add_func ("/body-editor/leave", test_leave);
  return run_window_tests ();
}
