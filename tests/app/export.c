/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The plan as a file for other programs, from the window: each format, what it had to decide, and
 * what cannot be written: told, with nothing half done. */

#include "app/export-dialog.h"
#include "rows.h"
#include "transfer.h"

static DrawlExportDialog *
open_export (DrawlWindow *window)
{
  act (window, "export");
  DrawlExportDialog *dialog = window_over (window, DRAWL_TYPE_EXPORT_DIALOG);
  g_assert_nonnull (dialog);
  wait_until (gtk_widget_get_mapped (GTK_WIDGET (dialog)));
  return dialog;
}

static GFile *
file_in_folder (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("drawl-test-XXXXXX", &error);
  g_autofree char *path = g_build_filename (folder, "out", NULL);

  g_assert_no_error (error);
  return g_file_new_for_path (path);
}

static char *
content_of (GFile *file)
{
  char *text = NULL;

  g_file_load_contents (file, NULL, &text, NULL, NULL, NULL);
  return text;
}

typedef struct {
  const char *name, *format;
  int delimiter; /* its place in the list; -1: as it is */
  const char *begin;
} Row;

static const Row rows[] = {
    {"table", "csv", 0, "slate,scene,action,"},
    {"table-of-semicolons", "csv", 1, "slate;scene;action;"},
    {"table-of-tabs", "csv", 2, "slate\tscene\taction\t"},
    {"timeline", "otio", -1, "{\n \"OTIO_SCHEMA\": \"Timeline.1\""},
    {"list", "edl", -1, "TITLE: "},
    {"sheet", "pdf", -1, "%PDF-"},
};

static void
test_written (gconstpointer data)
{
  const Row *row = data;
  DrawlWindow *window = window_on_demo ();
  DrawlExportDialog *dialog = open_export (window);
  g_autoptr (GFile) file = file_in_folder ();

  drawl_export_dialog_choose (dialog, row->format);
  if (row->delimiter >= 0)
    adw_combo_row_set_selected (ADW_COMBO_ROW (by_id (dialog, "delimiter_row")),
                                (guint)row->delimiter);
  g_assert_true (gtk_widget_get_visible (by_id (dialog, "paper_row")) ==
                 g_str_equal (row->format, "pdf"));
  g_assert_true (drawl_export_dialog_write (dialog, file));
  settle ();
  g_assert_null (window_over (window, DRAWL_TYPE_EXPORT_DIALOG));
  g_autofree char *text = content_of (file);
  g_assert_true (g_str_has_prefix (text, row->begin));
  wait_until (is_said (by_id (window, "toasts"), "out written"));
  g_assert_false (drawl_document_get_modified (drawl_window_get_document (window)));
  drop_window (window);
  remove_copy (file);
}

/* What the list cannot hold as it is planned is told, once it is written. */
static void
test_remarks (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlExportDialog *dialog = open_export (window);
  g_autoptr (GFile) file = file_in_folder ();

  drawl_export_dialog_choose (dialog, "edl");
  g_assert_true (drawl_export_dialog_write (dialog, file));
  settle ();
  AdwMessageDialog *message = message_over (window);
  g_assert_nonnull (message);
  g_assert_true (g_str_has_suffix (adw_message_dialog_get_body (message), "."));
  answer_with (window, "close");
  drop_window (window);
  remove_copy (file);
}

static void
test_cannot_be_written (void)
{
  g_autoptr (GFile) file = g_file_new_for_path ("/proc/no-such-folder/out.csv");
  DrawlWindow *window = window_on_demo ();
  DrawlExportDialog *dialog = open_export (window);

  g_assert_false (drawl_export_dialog_write (dialog, file));
  g_assert_nonnull (message_over (dialog));
  answer_with (dialog, "close");
  g_assert_true (gtk_widget_get_mapped (GTK_WIDGET (dialog)));
  gtk_window_destroy (GTK_WINDOW (dialog));
  drop_window (window);
}

/* A playback rate without timecode makes no edit decision list: told before a file is asked for,
 * and what stood there stays. */
static void
test_no_timecode (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlPlan *plan = drawl_window_get_plan (window);
  g_autoptr (DrawlPlanSettings) settings =
      drawl_plan_settings_copy (drawl_plan_get_settings (plan));
  g_autoptr (GFile) file = file_in_folder ();

  settings->playback = (DrawlRate){25, 2};
  g_assert_true (drawl_plan_set_settings (plan, settings, "Rate", NULL));
  g_file_replace_contents (file, "before", 6, NULL, FALSE, G_FILE_CREATE_NONE, NULL, NULL, NULL);
  DrawlExportDialog *dialog = open_export (window);
  drawl_export_dialog_choose (dialog, "edl");
  gtk_widget_activate (by_id (dialog, "export_button"));
  wait_until (message_over (dialog) != NULL);
  answer_with (dialog, "close");
  g_assert_false (drawl_export_dialog_write (dialog, file));
  answer_with (dialog, "close");
  g_autofree char *text = content_of (file);
  g_assert_cmpstr (text, ==, "before");
  gtk_window_destroy (GTK_WINDOW (dialog));
  drop_window (window);
  remove_copy (file);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/export/written", rows, test_written);
  g_test_add_func ("/export/remarks", test_remarks);
  g_test_add_func ("/export/cannot-be-written", test_cannot_be_written);
  g_test_add_func ("/export/no-timecode", test_no_timecode);
  return run_window_tests ();
}
