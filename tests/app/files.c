/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Files of a window: save and read again, what others changed meanwhile, unsaved work, and what
 * cannot be read: told, and nothing lost. */

#include "work.h"

static void
test_save_and_read_again (void)
{
  g_autoptr (GFile) file = demo_copy ();
  DrawlWindow *window = window_on (file);
  g_autoptr (GError) error = NULL;
  gsize length, length_again;

  edit_title (window, "Saved");
  g_assert_true (is_modified (window));
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (window)), ==, "• Saved");
  act (window, "save");
  g_assert_false (is_modified (window));
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (window)), ==, "Saved");
  g_autoptr (DrawlPlan) again = drawl_plan_load (file, NULL, &error);
  g_assert_no_error (error);
  g_autofree char *text = drawl_plan_to_data (drawl_window_get_plan (window), &length);
  g_autofree char *text_again = drawl_plan_to_data (again, &length_again);
  g_assert_cmpmem (text, length, text_again, length_again);
  /* Saving once more is no conflict with oneself. */
  edit_title (window, "Saved Twice");
  act (window, "save");
  g_assert_null (message_over (window));
  g_assert_false (is_modified (window));
  drop_window (window);
  remove_copy (file);
}

static void
test_save_as (void)
{
  g_autoptr (GFile) file = demo_copy ();
  g_autoptr (GFile) folder = g_file_get_parent (file);
  g_autoptr (GFile) other = g_file_get_child (folder, "other.drawl");
  DrawlWindow *window = window_on_demo ();

  g_assert_true (drawl_window_save_to (window, other));
  g_assert_true (
      g_file_equal (drawl_document_get_file (drawl_window_get_document (window)), other));
  g_autofree char *name = drawl_document_dup_name (drawl_window_get_document (window));
  g_assert_cmpstr (name, ==, "other.drawl");
  drop_window (window);
  remove_copy (file);
}

static void
test_cannot_be_written (void)
{
  g_autoptr (GFile) file = g_file_new_for_path ("/proc/no-such-folder/plan.drawl");
  DrawlWindow *window = window_on_demo ();

  edit_title (window, "Still here");
  g_assert_false (drawl_window_save_to (window, file));
  g_assert_nonnull (message_over (window));
  g_assert_true (is_modified (window));
  answer_with (window, "cancel");
  drop_window (window);
}

static void
begin_conflict (GFile *file, DrawlWindow **window)
{
  *window = window_on (file);
  edit_title (*window, "Mine");
  change_elsewhere (file);
  act (*window, "save");
  g_assert_nonnull (message_over (*window));
  g_autofree char *title = title_in (file);
  g_assert_cmpstr (title, ==, "Theirs");
}

static void
test_conflict_overwritten (void)
{
  g_autoptr (GFile) file = demo_copy ();
  DrawlWindow *window;

  begin_conflict (file, &window);
  answer_with (window, "overwrite");
  g_autofree char *title = title_in (file);
  g_assert_cmpstr (title, ==, "Mine");
  g_assert_false (is_modified (window));
  /* What they wrote stays as the backup. */
  g_autoptr (GFile) folder = g_file_get_parent (file);
  g_autoptr (GFile) backup = g_file_get_child (folder, "copy.drawl~");
  g_autofree char *theirs = title_in (backup);
  g_assert_cmpstr (theirs, ==, "Theirs");
  drop_window (window);
  remove_copy (file);
}

static void
test_conflict_cancelled (void)
{
  g_autoptr (GFile) file = demo_copy ();
  DrawlWindow *window;

  begin_conflict (file, &window);
  answer_with (window, "cancel");
  g_autofree char *title = title_in (file);
  g_assert_cmpstr (title, ==, "Theirs");
  g_assert_true (is_modified (window));
  drop_window (window);
  remove_copy (file);
}

/* A save that closing asked for stops at the conflict: the window stays. */
static void
test_conflict_keeps_the_window (void)
{
  g_autoptr (GFile) file = demo_copy ();
  DrawlWindow *window = window_on (file);

  edit_title (window, "Mine");
  change_elsewhere (file);
  gtk_window_close (GTK_WINDOW (window));
  settle ();
  answer_with (window, "save");
  answer_with (window, "cancel");
  g_assert_true (gtk_widget_get_mapped (GTK_WIDGET (window)));
  g_assert_true (is_modified (window));
  drop_window (window);
  remove_copy (file);
}

/* ---- Unsaved work ---- */

static DrawlWindow *
closing_window (GFile *file)
{
  DrawlWindow *window = window_on (file);

  edit_title (window, "Unsaved");
  gtk_window_close (GTK_WINDOW (window));
  settle ();
  g_assert_nonnull (message_over (window));
  g_object_ref (window);
  return window;
}

static void
test_close_keep (void)
{
  g_autoptr (GFile) file = demo_copy ();
  g_autoptr (DrawlWindow) window = closing_window (file);

  answer_with (window, "keep");
  g_assert_true (gtk_widget_get_mapped (GTK_WIDGET (window)));
  g_assert_true (is_modified (window));
  drop_window (window);
  remove_copy (file);
}

static void
test_close_discard (void)
{
  g_autoptr (GFile) file = demo_copy ();
  g_autoptr (DrawlWindow) window = closing_window (file);

  answer_with (window, "discard");
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (window)));
  g_autofree char *title = title_in (file);
  g_assert_cmpstr (title, !=, "Unsaved");
  remove_copy (file);
}

static void
test_close_save (void)
{
  g_autoptr (GFile) file = demo_copy ();
  g_autoptr (DrawlWindow) window = closing_window (file);

  answer_with (window, "save");
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (window)));
  g_autofree char *title = title_in (file);
  g_assert_cmpstr (title, ==, "Unsaved");
  remove_copy (file);
}

static void
test_close_unmodified (void)
{
  g_autoptr (GFile) file = demo_copy ();
  g_autoptr (DrawlWindow) window = g_object_ref (window_on (file));

  gtk_window_close (GTK_WINDOW (window));
  settle ();
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (window)));
  remove_copy (file);
}

static void
test_new_asks (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlPlan *plan = drawl_window_get_plan (window);

  edit_title (window, "Unsaved");
  act (window, "new");
  answer_with (window, "keep");
  g_assert_true (drawl_window_get_plan (window) == plan);
  act (window, "new");
  answer_with (window, "discard");
  g_assert_true (drawl_window_get_plan (window) != plan);
  g_assert_cmpuint (drawl_plan_n_shots (drawl_window_get_plan (window)), ==, 0);
  drop_window (window);
}

static void
test_size_is_remembered (void)
{
  GSettings *settings = drawl_application_get_settings (program ());
  DrawlWindow *window = window_on_demo ();

  gtk_window_set_default_size (GTK_WINDOW (window), 903, 702);
  settle ();
  gtk_window_close (GTK_WINDOW (window));
  settle ();
  g_assert_cmpint (g_settings_get_int (settings, "window-width"), ==, 903);
  g_assert_cmpint (g_settings_get_int (settings, "window-height"), ==, 702);
}

/* ---- Opening ---- */

typedef struct {
  const char *name;
  const char *text; /* NULL: there is no such file */
} Broken;

static const Broken broken_rows[] = {
    {"absent", NULL},
    {"empty", ""},
    {"no-json", "shots: 3"},
    {"cut-short", "{\"format\": \"drawl-plan\", \"version\": 1, \"shots\": ["},
    {"newer", "{\"format\": \"drawl-plan\", \"version\": 999}"},
    {"other-format", "{\"format\": \"drawl-body\", \"version\": 1}"},
};

static void
test_broken (gconstpointer data)
{
  const Broken *row = data;
  g_autoptr (GFile) file = demo_copy ();
  DrawlWindow *window = window_on_demo ();
  DrawlPlan *plan = drawl_window_get_plan (window);

  edit_title (window, "Kept");
  if (row->text == NULL)
    g_file_delete (file, NULL, NULL);
  else
    g_file_replace_contents (file, row->text, strlen (row->text), NULL, FALSE, G_FILE_CREATE_NONE,
                             NULL, NULL, NULL);
  drawl_window_open (window, file);
  settle ();
  AdwMessageDialog *message = message_over (window);
  g_assert_nonnull (message);
  g_assert_cmpstr (adw_message_dialog_get_body (message), !=, "");
  g_assert_true (g_str_has_suffix (adw_message_dialog_get_body (message), "."));
  g_assert_true (drawl_window_get_plan (window) == plan);
  g_assert_true (is_modified (window));
  answer_with (window, "close");
  drop_window (window);
  remove_copy (file);
}

static guint
count_windows (void)
{
  guint n = 0;

  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (program ())); l != NULL;
       l = l->next)
    n += DRAWL_IS_WINDOW (l->data) ? 1 : 0;
  return n;
}

static void
test_open_once (void)
{
  g_autoptr (GFile) file = demo_copy ();
  g_autofree char *uri = g_file_get_uri (file);
  g_autoptr (GFile) same = g_file_new_for_uri (uri);
  guint before = count_windows ();

  drawl_application_show_file (program (), file);
  settle ();
  DrawlWindow *window = drawl_window_find (GTK_APPLICATION (program ()), file);
  g_assert_nonnull (window);
  g_assert_cmpuint (count_windows (), ==, before + 1);
  drawl_application_show_file (program (), same);
  settle ();
  g_assert_cmpuint (count_windows (), ==, before + 1);
  /* From within another window, too. */
  DrawlWindow *other = window_on_demo ();
  drawl_window_open (other, same);
  settle ();
  g_assert_true (drawl_document_get_file (drawl_window_get_document (other)) == NULL ||
                 !g_file_equal (drawl_document_get_file (drawl_window_get_document (other)), file));
  drop_window (other);
  drop_window (window);
  remove_copy (file);
}

static void
test_open_takes_the_idle_window (void)
{
  g_autoptr (GFile) file = demo_copy ();
  DrawlWindow *idle = window_on (NULL);
  guint before = count_windows ();

  drawl_application_show_file (program (), file);
  settle ();
  g_assert_cmpuint (count_windows (), ==, before);
  g_assert_true (drawl_window_find (GTK_APPLICATION (program ()), file) == idle);
  drop_window (idle);
  remove_copy (file);
}

static void
test_recent (void)
{
  g_autoptr (GFile) file = demo_copy ();
  g_autofree char *uri = g_file_get_uri (file);
  DrawlWindow *window = window_on (file);
  gboolean found = FALSE;

  wait_until (gtk_recent_manager_has_item (gtk_recent_manager_get_default (), uri));
  drawl_window_fill_recent (window);
  GMenuModel *menu = G_MENU_MODEL (window->recent_menu);
  for (int i = 0; i < g_menu_model_get_n_items (menu); i++) {
    g_autoptr (GVariant) target =
        g_menu_model_get_item_attribute_value (menu, i, "target", G_VARIANT_TYPE_STRING);
    found = found || (target != NULL && g_str_equal (g_variant_get_string (target, NULL), uri));
  }
  g_assert_true (found);
  drop_window (window);
  remove_copy (file);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/files/save-and-read-again", test_save_and_read_again);
  g_test_add_func ("/files/save-as", test_save_as);
  g_test_add_func ("/files/cannot-be-written", test_cannot_be_written);
  g_test_add_func ("/files/conflict/overwritten", test_conflict_overwritten);
  g_test_add_func ("/files/conflict/cancelled", test_conflict_cancelled);
  g_test_add_func ("/files/conflict/keeps-the-window", test_conflict_keeps_the_window);
  g_test_add_func ("/files/close/keep", test_close_keep);
  g_test_add_func ("/files/close/discard", test_close_discard);
  g_test_add_func ("/files/close/save", test_close_save);
  g_test_add_func ("/files/close/unmodified", test_close_unmodified);
  g_test_add_func ("/files/new-asks", test_new_asks);
  g_test_add_func ("/files/size-is-remembered", test_size_is_remembered);
  for (gsize i = 0; i < G_N_ELEMENTS (broken_rows); i++) {
    g_autofree char *path = g_strconcat ("/files/broken/", broken_rows[i].name, NULL);
    g_test_add_data_func (path, &broken_rows[i], test_broken);
  }
  g_test_add_func ("/files/open-once", test_open_once);
  g_test_add_func ("/files/open-takes-the-idle-window", test_open_takes_the_idle_window);
  g_test_add_func ("/files/recent", test_recent);
  return run_window_tests ();
}
