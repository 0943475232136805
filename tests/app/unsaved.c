/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Work that is not in the file: what a lost program left behind and how it comes back, what another
 * program writes meanwhile, and plans that save themselves. A lost program is a window that goes
 * without a word. */

#include "app/recovery-dialog.h"
#include "app/recovery-row.h"
#include "app/recovery.h"
#include "work.h"

/* ---- Left behind ---- */

static guint
n_journals (void)
{
  g_autofree char *folder = drawl_journal_folder ();
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (dir != NULL && g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

static void
forget_all (void)
{
  g_autofree char *folder = drawl_journal_folder ();
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);

  for (const char *name; dir != NULL && (name = g_dir_read_name (dir)) != NULL;) {
    g_autofree char *path = g_build_filename (folder, name, NULL);
    g_unlink (path);
  }
}

/* A program dies with this on its plan of @file (NULL: of none yet). */
static void
lose (GFile *file, const char *title)
{
  DrawlWindow *window = file != NULL ? window_on (file) : window_on_demo ();

  edit_title (window, title);
  drawl_document_flush (drawl_window_get_document (window));
  drop_window (window);
}

static DrawlRecoveryDialog *
find_dialog (void)
{
  g_autoptr (GList) toplevels = gtk_window_list_toplevels ();

  for (GList *l = toplevels; l != NULL; l = l->next)
    if (DRAWL_IS_RECOVERY_DIALOG (l->data) && gtk_widget_get_visible (l->data))
      return l->data;
  return NULL;
}

static DrawlRecoveryDialog *
look_over (DrawlWindow *window)
{
  gtk_window_present (GTK_WINDOW (window));
  drawl_recovery_look (GTK_APPLICATION (program ()));
  settle ();
  return find_dialog ();
}

static DrawlRecoveryRow *
row_at (DrawlRecoveryDialog *dialog, int position)
{
  return DRAWL_RECOVERY_ROW (
      gtk_list_box_get_row_at_index (GTK_LIST_BOX (by_id (dialog, "list_box")), position));
}

static const char *
label_in (gpointer root, const char *id)
{
  return gtk_label_get_text (GTK_LABEL (by_id (root, id)));
}

static void
press (gpointer root, const char *id)
{
  g_signal_emit_by_name (by_id (root, id), "clicked");
  settle ();
}

static void
test_nothing (void)
{
  forget_all ();
  DrawlWindow *window = window_on (NULL);

  g_assert_null (look_over (window));
  drop_window (window);
}

static void
test_recover (void)
{
  g_autoptr (GFile) file = demo_copy ();
  g_autofree char *path = g_file_get_path (file);

  forget_all ();
  lose (file, "Lost and found");
  DrawlWindow *window = window_on (NULL);
  DrawlRecoveryDialog *dialog = look_over (window);
  DrawlRecoveryRow *row = row_at (dialog, 0);
  g_assert_cmpstr (label_in (row, "title_label"), ==, "Lost and found");
  g_assert_cmpstr (label_in (row, "file_label"), ==, path);
  g_assert_true (g_str_has_prefix (label_in (row, "edits_label"), "1 edit, on "));
  g_assert_false (gtk_widget_get_visible (by_id (row, "trouble_box")));
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (by_id (row, "recover_button")),
                                       GTK_ACCESSIBLE_PROPERTY_LABEL, "Recover “Lost and found”");
  press (row, "recover_button");
  g_assert_null (find_dialog ());
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (window)), ==, "• Lost and found");
  g_assert_true (drawl_document_is_of (drawl_window_get_document (window), file));

  act (window, "save");
  g_assert_null (message_over (window));
  assert_title_in (file, "Lost and found");
  g_assert_false (is_modified (window));
  g_assert_cmpuint (n_journals (), ==, 0);
  drop_window (window);
  remove_copy (file);
}

/* Lost once more before it is saved: nothing is lost. */
static void
test_recover_and_lose_again (void)
{
  g_autoptr (GFile) file = demo_copy ();

  forget_all ();
  lose (file, "First");
  DrawlWindow *window = window_on (NULL);
  press (row_at (look_over (window), 0), "recover_button");
  edit_title (window, "Second");
  drawl_document_flush (drawl_window_get_document (window));
  drop_window (window);
  window = window_on (NULL);
  DrawlRecoveryRow *row = row_at (look_over (window), 0);
  g_assert_cmpstr (label_in (row, "title_label"), ==, "Second");
  g_assert_true (g_str_has_prefix (label_in (row, "edits_label"), "2 edits, "));
  press (row, "recover_button");
  act (window, "save");
  assert_title_in (file, "Second");
  drop_window (window);
  remove_copy (file);
}

static void
test_discard (void)
{
  g_autoptr (GFile) file = demo_copy ();

  forget_all ();
  lose (file, "One");
  lose (NULL, "Two");
  DrawlWindow *window = window_on (NULL);
  DrawlRecoveryDialog *dialog = look_over (window);
  DrawlRecoveryRow *first = row_at (dialog, 0), *second = row_at (dialog, 1);
  GtkWidget *close_button = by_id (dialog, "close_button");
  g_assert_cmpstr (label_in (first, "title_label"), ==, "Two");
  g_assert_cmpstr (label_in (first, "file_label"), ==, "Not saved yet");
  g_assert_cmpstr (gtk_button_get_label (GTK_BUTTON (close_button)), ==, "Decide _Later");

  press (first, "discard_button");
  press (second, "discard_button");
  g_assert_false (gtk_widget_get_visible (by_id (first, "recover_button")));
  g_assert_cmpstr (gtk_button_get_label (GTK_BUTTON (close_button)), ==, "_Done");
  g_assert_cmpuint (n_journals (), ==, 2);
  press (second, "discard_button"); /* keep it after all */
  g_assert_true (gtk_widget_get_visible (by_id (second, "recover_button")));
  gtk_window_close (GTK_WINDOW (dialog));
  settle ();
  g_assert_cmpuint (n_journals (), ==, 1);
  dialog = look_over (window);
  g_assert_cmpstr (label_in (row_at (dialog, 0), "title_label"), ==, "One");
  gtk_window_close (GTK_WINDOW (dialog));
  drop_window (window);
  remove_copy (file);
}

static void
test_file_changed_since (void)
{
  g_autoptr (GFile) file = demo_copy ();

  forget_all ();
  lose (file, "Mine");
  change_elsewhere (file);
  DrawlWindow *window = window_on (NULL);
  DrawlRecoveryRow *row = row_at (look_over (window), 0);
  g_assert_nonnull (strstr (label_in (row, "trouble_label"), "changed since"));
  press (row, "recover_button");
  wait_until (notice_of (window) != NULL);
  act (window, "save");
  g_assert_nonnull (message_over (window));
  assert_title_in (file, "Theirs");
  answer_with (window, "overwrite");
  assert_title_in (file, "Mine");
  drop_window (window);
  remove_copy (file);
}

static void
test_file_gone (void)
{
  g_autoptr (GFile) file = demo_copy ();

  forget_all ();
  lose (file, "Mine");
  g_file_delete (file, NULL, NULL);
  DrawlWindow *window = window_on (NULL);
  DrawlRecoveryRow *row = row_at (look_over (window), 0);
  g_assert_nonnull (strstr (label_in (row, "trouble_label"), "no longer there"));
  press (row, "recover_button");
  act (window, "save");
  g_assert_null (message_over (window));
  assert_title_in (file, "Mine");
  drop_window (window);
  remove_copy (file);
}

/* What cannot be read can be discarded, no more; and it is not deleted unasked. */
static void
test_damaged (void)
{
  g_autofree char *folder = drawl_journal_folder ();
  g_autofree char *path = g_build_filename (folder, "broken.journal", NULL);

  forget_all ();
  g_mkdir_with_parents (folder, 0700);
  g_assert_true (g_file_set_contents (path, "no journal", -1, NULL));
  DrawlWindow *window = window_on (NULL);
  DrawlRecoveryDialog *dialog = look_over (window);
  DrawlRecoveryRow *row = row_at (dialog, 0);
  g_assert_false (gtk_widget_get_visible (by_id (row, "recover_button")));
  g_assert_cmpstr (label_in (row, "trouble_label"), ==, "This is not a journal.");
  gtk_window_close (GTK_WINDOW (dialog));
  settle ();
  g_assert_true (g_file_test (path, G_FILE_TEST_EXISTS));
  dialog = look_over (window);
  press (row_at (dialog, 0), "discard_button");
  gtk_window_close (GTK_WINDOW (dialog));
  settle ();
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
  drop_window (window);
}

/* A file is opened that has work left behind: it is offered there, and takes the file's place. */
static void
test_on_open (void)
{
  g_autoptr (GFile) file = demo_copy (), other = demo_copy ();

  forget_all ();
  lose (file, "Mine");
  lose (other, "Other");
  DrawlWindow *window = window_on (file);
  DrawlRecoveryDialog *dialog = find_dialog ();
  g_assert_nonnull (dialog);
  g_assert_null (gtk_list_box_get_row_at_index (GTK_LIST_BOX (by_id (dialog, "list_box")), 1));
  g_assert_cmpstr (title_of (window), !=, "Mine");
  press (row_at (dialog, 0), "recover_button");
  g_assert_cmpstr (title_of (window), ==, "Mine");
  g_assert_true (is_modified (window));
  drop_window (window);
  forget_all ();
  remove_copy (file);
  remove_copy (other);
}

/* A start on a file looks for everything: one dialog offers it all. */
static void
test_one_dialog (void)
{
  g_autoptr (GFile) file = demo_copy ();

  forget_all ();
  lose (file, "Mine");
  lose (NULL, "Other");
  drawl_application_show_file (program (), file);
  DrawlWindow *window = drawl_window_find (GTK_APPLICATION (program ()), file);
  DrawlRecoveryDialog *dialog = look_over (window);
  g_assert_nonnull (row_at (dialog, 0));
  g_assert_nonnull (row_at (dialog, 1));
  gtk_window_close (GTK_WINDOW (dialog));
  settle ();
  g_assert_null (find_dialog ());
  drop_window (window);
  forget_all ();
  remove_copy (file);
}

/* A window that lives is not offered to itself, nor to another start. */
static void
test_living_is_not_offered (void)
{
  g_autoptr (GFile) file = demo_copy ();

  forget_all ();
  DrawlWindow *window = window_on (file);
  edit_title (window, "Living");
  drawl_document_flush (drawl_window_get_document (window));
  g_assert_cmpuint (n_journals (), ==, 1);
  g_assert_null (look_over (window));
  gtk_window_close (GTK_WINDOW (window));
  settle ();
  answer_with (window, "discard");
  g_assert_cmpuint (n_journals (), ==, 0);
  remove_copy (file);
}

static void
test_problem_is_told (void)
{
  g_autofree char *folder = drawl_journal_folder ();
  DrawlWindow *window = window_on_demo ();

  forget_all ();
  g_rmdir (folder);
  g_assert_true (g_file_set_contents (folder, "in the way", -1, NULL));
  edit_title (window, "At risk");
  drawl_document_flush (drawl_window_get_document (window));
  g_assert_nonnull (strstr (notice_of (window), "not kept safe"));
  g_assert_cmpstr (gtk_actionable_get_action_name (GTK_ACTIONABLE (window->notice_button)), ==,
                   "win.save");
  drawl_window_put_notice_away (window);
  g_assert_null (notice_of (window));
  g_unlink (folder);
  edit_title (window, "Safe again");
  drawl_document_flush (drawl_window_get_document (window));
  g_assert_null (drawl_document_get_problem (drawl_window_get_document (window)));
  drop_window (window);
  forget_all ();
}

/* ---- Changed by another program ---- */

static void
test_changed_is_told (void)
{
  g_autoptr (GFile) file = demo_copy ();
  DrawlWindow *window = window_on (file);

  g_assert_null (notice_of (window));
  g_assert_false (can (window, "reload"));
  change_elsewhere (file);
  wait_until (notice_of (window) != NULL);
  g_assert_cmpstr (notice_of (window), ==, "Another program has changed “copy.drawl”.");
  act (window, "reload");
  g_assert_null (notice_of (window));
  g_assert_cmpstr (title_of (window), ==, "Theirs");
  g_assert_false (is_modified (window));
  drop_window (window);
  remove_copy (file);
}

static void
test_reload_loses_nothing (void)
{
  g_autoptr (GFile) file = demo_copy ();
  DrawlWindow *window = window_on (file);

  edit_title (window, "Mine");
  select_shot (window, "4A");
  change_elsewhere (file);
  act (window, "save");
  answer_with (window, "reload");
  g_assert_cmpstr (title_of (window), ==, "Theirs");
  g_assert_cmpstr (selected_slate (window), ==, "4A");
  g_assert_false (is_modified (window));
  act (window, "undo");
  g_assert_cmpstr (title_of (window), ==, "Mine");
  g_assert_true (is_modified (window));
  act (window, "save");
  g_assert_null (message_over (window));
  assert_title_in (file, "Mine");
  drop_window (window);
  remove_copy (file);
}

static void
count_up (guint *n)
{
  ++*n;
}

static void
test_own_saves_are_quiet (void)
{
  g_autoptr (GFile) file = demo_copy ();
  DrawlWindow *window = window_on (file);
  DrawlDocument *document = drawl_window_get_document (window);
  guint told = 0;

  g_signal_connect_swapped (document, "notify::changed", G_CALLBACK (count_up), &told);
  edit_title (window, "Mine");
  act (window, "save");
  edit_title (window, "Mine again");
  act (window, "save");
  drawl_document_look_at_file (document);
  /* This is the first that is told of. */
  change_elsewhere (file);
  wait_until (notice_of (window) != NULL);
  g_assert_cmpuint (told, ==, 1);
  drawl_window_put_notice_away (window);
  g_assert_null (notice_of (window));
  g_signal_handlers_disconnect_by_data (document, &told);
  drop_window (window);
  remove_copy (file);
}

static void
test_changed_through_a_link (void)
{
  g_autoptr (GFile) file = demo_copy ();
  g_autoptr (GFile) folder = g_file_get_parent (file);
  g_autoptr (GFile) link = g_file_get_child (folder, "link.drawl");

  g_assert_true (g_file_make_symbolic_link (link, "copy.drawl", NULL, NULL));
  DrawlWindow *window = window_on (link);
  change_elsewhere (file);
  wait_until (notice_of (window) != NULL);
  drop_window (window);
  remove_copy (file);
}

/* ---- By itself ---- */

static DrawlWindow *
window_by_itself (GFile *file)
{
  DrawlWindow *window = window_on (file);

  g_settings_set_boolean (drawl_application_get_settings (program ()), "save-by-itself", TRUE);
  settle ();
  drawl_document_set_save_delay (drawl_window_get_document (window), 1);
  return window;
}

static void
end_by_itself (DrawlWindow *window)
{
  g_settings_set_boolean (drawl_application_get_settings (program ()), "save-by-itself", FALSE);
  drop_window (window);
}

static void
test_off_by_default (void)
{
  g_autoptr (GVariant) state =
      g_action_group_get_action_state (G_ACTION_GROUP (program ()), "save-by-itself");
  g_assert_false (g_variant_get_boolean (state));
}

static void
test_saves_itself (void)
{
  g_autoptr (GFile) file = demo_copy ();
  DrawlWindow *window = window_by_itself (file);

  edit_title (window, "By itself");
  wait_until (!is_modified (window));
  assert_title_in (file, "By itself");
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (window)), ==, "By itself");
  end_by_itself (window);
  remove_copy (file);
}

static void
test_saves_itself_on_close (void)
{
  g_autoptr (GFile) file = demo_copy ();
  DrawlWindow *window = window_by_itself (file);

  drawl_document_set_save_delay (drawl_window_get_document (window), G_MAXINT);
  edit_title (window, "By itself");
  g_assert_true (is_modified (window));
  gtk_window_close (GTK_WINDOW (window));
  settle ();
  assert_title_in (file, "By itself");
  g_settings_set_boolean (drawl_application_get_settings (program ()), "save-by-itself", FALSE);
  remove_copy (file);
}

static void
test_not_over_a_change (void)
{
  g_autoptr (GFile) file = demo_copy ();
  DrawlWindow *window = window_by_itself (file);

  drawl_document_set_save_delay (drawl_window_get_document (window), G_MAXINT);
  edit_title (window, "Mine");
  change_elsewhere (file);
  drawl_document_save_soon (drawl_window_get_document (window));
  assert_title_in (file, "Theirs");
  g_assert_true (is_modified (window));
  wait_until (notice_of (window) != NULL);
  end_by_itself (window);
  remove_copy (file);
}

/* Told once; a file that has gone is not put back unasked. */
static void
test_failure_is_told_once (void)
{
  g_autoptr (GFile) file = demo_copy ();
  DrawlWindow *window = window_by_itself (file);
  DrawlDocument *document = drawl_window_get_document (window);
  guint failures = 0;

  g_signal_connect_swapped (document, "save-failed", G_CALLBACK (count_up), &failures);
  g_file_delete (file, NULL, NULL);
  edit_title (window, "One");
  wait_until (failures == 1);
  edit_title (window, "Two");
  drawl_document_save_soon (document);
  g_assert_cmpuint (failures, ==, 1);
  g_assert_null (message_over (window));
  g_assert_false (g_file_query_exists (file, NULL));
  act (window, "save");
  assert_title_in (file, "Two");
  g_signal_handlers_disconnect_by_data (document, &failures);
  end_by_itself (window);
  remove_copy (file);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/unsaved/nothing", test_nothing);
  g_test_add_func ("/unsaved/recover", test_recover);
  g_test_add_func ("/unsaved/recover-and-lose-again", test_recover_and_lose_again);
  g_test_add_func ("/unsaved/discard", test_discard);
  g_test_add_func ("/unsaved/file-changed-since", test_file_changed_since);
  g_test_add_func ("/unsaved/file-gone", test_file_gone);
  g_test_add_func ("/unsaved/damaged", test_damaged);
  g_test_add_func ("/unsaved/on-open", test_on_open);
  g_test_add_func ("/unsaved/one-dialog", test_one_dialog);
  g_test_add_func ("/unsaved/living-is-not-offered", test_living_is_not_offered);
  g_test_add_func ("/unsaved/problem-is-told", test_problem_is_told);
  g_test_add_func ("/unsaved/changed/told", test_changed_is_told);
  g_test_add_func ("/unsaved/changed/reload-loses-nothing", test_reload_loses_nothing);
  g_test_add_func ("/unsaved/changed/own-saves-are-quiet", test_own_saves_are_quiet);
  g_test_add_func ("/unsaved/changed/through-a-link", test_changed_through_a_link);
  g_test_add_func ("/unsaved/by-itself/off-by-default", test_off_by_default);
  g_test_add_func ("/unsaved/by-itself/saved", test_saves_itself);
  g_test_add_func ("/unsaved/by-itself/on-close", test_saves_itself_on_close);
  g_test_add_func ("/unsaved/by-itself/not-over-a-change", test_not_over_a_change);
  g_test_add_func ("/unsaved/by-itself/failure-is-told-once", test_failure_is_told_once);
  return run_window_tests ();
}
