/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Two windows on one plan show one truth and go their own ways in it; unsaved work is asked about
 * when the last of them goes. */

#include "work.h"

static DrawlWindow *
second_window (DrawlWindow *window)
{
  act (window, "new-window");
  DrawlWindow *other =
      DRAWL_WINDOW (gtk_application_get_active_window (GTK_APPLICATION (program ())));

  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (program ())); l != NULL;
       l = l->next)
    if (DRAWL_IS_WINDOW (l->data) && l->data != window)
      other = l->data;
  g_assert_true (other != window);
  wait_until (gtk_widget_get_mapped (GTK_WIDGET (other)));
  settle ();
  return other;
}

static guint
n_windows (void)
{
  guint n = 0;

  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (program ())); l != NULL;
       l = l->next)
    n += DRAWL_IS_WINDOW (l->data) ? 1 : 0;
  return n;
}

static void
assert_titles (DrawlWindow *window, DrawlWindow *other, const char *title)
{
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (window)), ==, title);
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (other)), ==, title);
}

static void
test_one_truth (void)
{
  g_autoptr (GFile) file = demo_copy ();
  DrawlWindow *window = window_on (file);
  DrawlWindow *other = second_window (window);
  guint before = rows_of (window);

  g_assert_true (drawl_window_get_document (window) == drawl_window_get_document (other));
  edit_title (window, "Both");
  assert_titles (window, other, "• Both");
  act (other, "add-shot");
  g_assert_cmpuint (rows_of (window), ==, before + 1);
  g_assert_cmpuint (rows_of (other), ==, before + 1);
  act (window, "undo");
  g_assert_cmpuint (rows_of (other), ==, before);
  g_assert_true (can (other, "redo"));
  act (other, "save");
  assert_titles (window, other, "Both");
  act (window, "undo");
  g_assert_true (g_str_has_prefix (gtk_window_get_title (GTK_WINDOW (other)), "• "));
  act (other, "redo");
  assert_titles (window, other, "Both");
  drop_window (other);
  drop_window (window);
  remove_copy (file);
}

static void
test_own_ways (void)
{
  g_autoptr (GFile) file = demo_copy ();
  DrawlWindow *window = window_on (file);

  select_shot (window, "4A");
  DrawlWindow *other = second_window (window);
  g_assert_cmpstr (selected_slate (other), ==, "4A");
  select_shot (other, "2A");
  g_assert_cmpstr (selected_slate (window), ==, "4A");
  act_on (other, "filter", "as-hired");
  g_assert_cmpuint (rows_of (other), <, rows_of (window));
  act_on (other, "page", "bodies");
  g_assert_cmpstr (adw_view_stack_get_visible_child_name (ADW_VIEW_STACK (window->pages)), ==,
                   "shots");
  /* A shot that one window has in hand goes in the other. */
  select_shot (window, "4A");
  act_on (other, "page", "shots");
  act_on (other, "filter", "all");
  select_shot (other, "4A");
  act (other, "remove-shot");
  g_assert_cmpstr (selected_slate (window), !=, "4A");
  drop_window (window);
  drop_window (other);
  remove_copy (file);
}

static void
test_close_one (void)
{
  g_autoptr (GFile) file = demo_copy ();
  DrawlWindow *window = window_on (file);
  DrawlWindow *other = second_window (window);
  guint before = n_windows ();

  edit_title (window, "Unsaved");
  gtk_window_close (GTK_WINDOW (other));
  settle ();
  g_assert_cmpuint (n_windows (), ==, before - 1);
  g_assert_null (message_over (window));
  g_assert_true (is_modified (window));
  gtk_window_close (GTK_WINDOW (window));
  settle ();
  g_assert_nonnull (message_over (window));
  answer_with (window, "save");
  g_assert_cmpuint (n_windows (), ==, before - 2);
  assert_title_in (file, "Unsaved");
  remove_copy (file);
}

static void
test_another_plan_in_one (void)
{
  g_autoptr (GFile) file = demo_copy (), second = demo_copy ();
  DrawlWindow *window = window_on (file);
  DrawlWindow *other = second_window (window);

  edit_title (window, "Unsaved");
  drawl_window_open (other, second);
  settle ();
  g_assert_null (message_over (other));
  g_assert_true (drawl_document_is_of (drawl_window_get_document (other), second));
  g_assert_cmpstr (title_of (window), ==, "Unsaved");
  g_assert_true (is_modified (window));
  /* What is shown elsewhere goes on being kept safe. */
  act (window, "save");
  assert_title_in (file, "Unsaved");
  drop_window (other);
  drop_window (window);
  remove_copy (file);
  remove_copy (second);
}

static guint
n_questions (void)
{
  g_autoptr (GList) toplevels = gtk_window_list_toplevels ();
  guint n = 0;

  for (GList *l = toplevels; l != NULL; l = l->next)
    n += ADW_IS_MESSAGE_DIALOG (l->data) && gtk_widget_get_visible (l->data) ? 1 : 0;
  return n;
}

static void
quit (void)
{
  g_action_group_activate_action (G_ACTION_GROUP (program ()), "quit", NULL);
  settle ();
}

static void
test_quit (void)
{
  g_autoptr (GFile) file = demo_copy ();
  DrawlWindow *window = window_on (file);
  DrawlWindow *other = second_window (window);
  g_assert_cmpuint (n_windows (), ==, 2);

  edit_title (window, "Unsaved");
  quit ();
  g_assert_cmpuint (n_questions (), ==, 1);
  quit ();
  g_assert_cmpuint (n_questions (), ==, 1);
  DrawlWindow *asked = message_over (window) != NULL ? window : other;
  answer_with (asked, "keep");
  g_assert_cmpuint (n_windows (), ==, 2);
  quit ();
  g_assert_cmpuint (n_questions (), ==, 1);
  asked = message_over (window) != NULL ? window : other;
  answer_with (asked, "discard");
  g_assert_cmpuint (n_windows (), ==, 0);
  remove_copy (file);
}

/* ---- The same file by another name ---- */

typedef struct {
  const char *name;
  const char *link; /* made in the folder of the copy, or NULL */
  const char *to;
  const char *path; /* relative to that folder */
} Spelling;

static const Spelling spellings[] = {
    {"link", "link.drawl", "copy.drawl", "link.drawl"},
    {"folder-link", "same", ".", "same/copy.drawl"},
    {"dots", NULL, NULL, "../%s/copy.drawl"},
    {"double-slash", NULL, NULL, "//copy.drawl"},
};

static void
test_spelling (gconstpointer data)
{
  const Spelling *row = data;
  g_autoptr (GFile) file = demo_copy ();
  g_autoptr (GFile) folder = g_file_get_parent (file);
  g_autofree char *folder_path = g_file_get_path (folder);
  g_autofree char *folder_name = g_file_get_basename (folder);
  g_auto (GStrv) parts = g_strsplit (row->path, "%s", -1);
  g_autofree char *path = g_strjoinv (folder_name, parts);
  g_autofree char *whole = g_strconcat (folder_path, "/", path, NULL);
  g_autoptr (GFile) same = g_file_new_for_path (whole);
  DrawlWindow *window = window_on (file);
  guint before = n_windows ();

  if (row->link != NULL) {
    g_autoptr (GFile) link = g_file_get_child (folder, row->link);
    g_assert_true (g_file_make_symbolic_link (link, row->to, NULL, NULL));
  }
  g_assert_true (drawl_window_find (GTK_APPLICATION (program ()), same) == window);
  drawl_application_show_file (program (), same);
  settle ();
  g_assert_cmpuint (n_windows (), ==, before);
  drop_window (window);
  remove_copy (file);
}

static void
test_not_the_same (void)
{
  g_autoptr (GFile) file = demo_copy (), other = demo_copy ();
  g_autoptr (GFile) absent = g_file_new_for_path ("/nowhere/copy.drawl");
  DrawlWindow *window = window_on (file);

  g_assert_null (drawl_window_find (GTK_APPLICATION (program ()), other));
  g_assert_null (drawl_window_find (GTK_APPLICATION (program ()), absent));
  drop_window (window);
  remove_copy (file);
  remove_copy (other);
}

/* Two plans of one file would overwrite each other. */
static void
test_save_as_onto_another (void)
{
  g_autoptr (GFile) file = demo_copy ();
  DrawlWindow *window = window_on (file);
  DrawlWindow *other = window_on_demo ();

  edit_title (other, "Other");
  g_assert_false (drawl_window_save_to (other, file));
  g_assert_nonnull (message_over (other));
  answer_with (other, "close");
  g_assert_true (is_modified (other));
  g_autofree char *title = title_in (file);
  g_assert_cmpstr (title, !=, "Other");
  drop_window (other);
  drop_window (window);
  remove_copy (file);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/two-windows/one-truth", test_one_truth);
  g_test_add_func ("/two-windows/own-ways", test_own_ways);
  g_test_add_func ("/two-windows/close-one", test_close_one);
  g_test_add_func ("/two-windows/another-plan-in-one", test_another_plan_in_one);
  g_test_add_func ("/two-windows/quit", test_quit);
  for (gsize i = 0; i < G_N_ELEMENTS (spellings); i++) {
    g_autofree char *path = g_strconcat ("/two-windows/same-file/", spellings[i].name, NULL);
    g_test_add_data_func (path, &spellings[i], test_spelling);
  }
  g_test_add_func ("/two-windows/not-the-same", test_not_the_same);
  g_test_add_func ("/two-windows/save-as-onto-another", test_save_as_onto_another);
  return run_window_tests ();
}
