/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A table of shots on its way into a window: what is shown of it, with every reason; that nothing
 * comes in before it is asked for; and that all of it is one step of undo. */

#include "rows.h"
#include "transfer.h"

static DrawlImportDialog *
import_text (DrawlWindow *window, const char *text, gsize length)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("drawl-test-XXXXXX", &error);
  g_autofree char *path = g_build_filename (folder, "shots.csv", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);

  g_assert_no_error (error);
  g_file_set_contents (path, text, (gssize)length, &error);
  g_assert_no_error (error);
  drawl_window_import (window, file);
  settle ();
  remove_copy (file);
  return import_over (window);
}

static GListModel *
model_of (DrawlImportDialog *dialog, const char *view)
{
  return G_LIST_MODEL (gtk_column_view_get_model (GTK_COLUMN_VIEW (by_id (dialog, view))));
}

typedef struct {
  const char *name;
  const char *text;
  guint n_good, n_bad;
  const char *said[3]; /* in the dialogue */
} Row;

static const Row rows[] = {
    {"all-good", "slate,fps,action_s\n90,240,0.5\n91,48,1\n", 2, 0, {"2 shots can come in."}},
    {"some-rejected",
     "slate,fps,action_s\n90,240,0.5\n91,zero,1\n1A,24,1\n",
     1,
     2,
     {"1 shot can come in. 2 rows cannot.", "Stays Out (2)"}},
    {"semicolons-and-commas", "slate;fps;action_s\n90;59,94;0,45\n", 1, 0, {"59.94", "0.45"}},
    {"tabs", "slate\tfps\taction_s\n90\t50\t2\n", 1, 0, {"50\u00a0fps"}},
    {"latin-1",
     "slate,description,action_s\n90,Glasbl\xe4ser,1\n",
     1,
     0,
     {"It was read as Latin-1", "Glasbläser"}},
    {"ignored", "slate,fps,action_s,Lens\n90,240,1,50\n", 1, 0, {"Columns left aside: “Lens”"}},
    {"assumed", "slate,fps\n90,240\n", 1, 0, {"1 s of action is assumed.", ", assumed"}},
    {"no-headings", "90,2,A vase falls,240\n", 1, 0, {"no heading that is known", "A vase falls"}},
    {"none-good",
     "slate,fps\n1A,24\n,24\n",
     0,
     2,
     {"No row can come in.", "The plan has the slate “1A” already.", "A shot must have a slate."}},
    {"no-rows", "slate,fps\n", 0, 0, {"There is no row in this table.", "No Rows"}},
};

static void
test_shown (gconstpointer data)
{
  const Row *row = data;
  DrawlWindow *window = window_on_demo ();
  guint before = n_shots (window);
  DrawlImportDialog *dialog = import_text (window, row->text, strlen (row->text));

  g_assert_nonnull (dialog);
  wait_until (gtk_widget_get_mapped (GTK_WIDGET (dialog)));
  g_assert_cmpuint (g_list_model_get_n_items (model_of (dialog, "good_view")), ==, row->n_good);
  g_assert_cmpuint (g_list_model_get_n_items (model_of (dialog, "bad_view")), ==, row->n_bad);
  for (gsize i = 0; i < G_N_ELEMENTS (row->said) && row->said[i] != NULL; i++)
    wait_until (is_said (GTK_WIDGET (dialog), row->said[i]));
  g_assert_true (gtk_widget_get_visible (by_id (dialog, "bring_button")) == (row->n_good > 0));
  g_assert_cmpuint (n_shots (window), ==, before);
  gtk_window_close (GTK_WINDOW (dialog));
  settle ();
  g_assert_cmpuint (n_shots (window), ==, before);
  g_assert_false (drawl_document_get_modified (drawl_window_get_document (window)));
  drop_window (window);
}

static void
test_bring_in (void)
{
  static const char text[] = "slate,fps,action_s\n90,240,0.5\n91,zero,1\n92,48,1\n";
  DrawlWindow *window = window_on_demo ();
  guint before = n_shots (window);

  select_shot (window, "1B");
  DrawlImportDialog *dialog = import_text (window, text, strlen (text));
  g_assert_true (drawl_import_dialog_bring_in (dialog));
  settle ();
  g_assert_null (import_over (window));
  g_assert_cmpuint (n_shots (window), ==, before + 2);
  int at = drawl_plan_shot_position (drawl_window_get_plan (window), shot_of (window, "1B"));
  g_assert_cmpint (
      drawl_plan_shot_position (drawl_window_get_plan (window), shot_of (window, "90")), ==,
      at + 1);
  g_assert_cmpstr (selected_slate (window), ==, "90");
  g_assert_cmpstr (drawl_plan_undo_label (drawl_window_get_plan (window)), ==, "Bring In Shots");
  act (window, "undo");
  g_assert_cmpuint (n_shots (window), ==, before);
  g_assert_false (can (window, "undo"));
  drop_window (window);
}

/* Between the look and the bringing in, someone took a slate: told, and nothing has come in. */
static void
test_too_late (void)
{
  static const char text[] = "slate,fps,action_s\n90,240,0.5\n";
  DrawlWindow *window = window_on_demo ();
  DrawlPlan *plan = drawl_window_get_plan (window);
  DrawlImportDialog *dialog = import_text (window, text, strlen (text));
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_new ("90", drawl_rational_whole (24));

  g_assert_true (drawl_plan_insert_shot (plan, 0, fields, "Add", NULL));
  guint before = n_shots (window);
  g_assert_false (drawl_import_dialog_bring_in (dialog));
  settle ();
  g_assert_nonnull (message_over (dialog));
  answer_with (dialog, "close");
  g_assert_cmpuint (n_shots (window), ==, before);
  gtk_window_destroy (GTK_WINDOW (dialog));
  drop_window (window);
}

/* What cannot be read as a table at all. */
static void
test_no_table (void)
{
  static const char text[] = "slate,action\n90,\"never closed\n";
  DrawlWindow *window = window_on_demo ();

  g_assert_null (import_text (window, text, strlen (text)));
  AdwMessageDialog *message = message_over (window);
  g_assert_nonnull (message);
  g_assert_nonnull (strstr (adw_message_dialog_get_body (message), "ine 2"));
  answer_with (window, "close");
  drop_window (window);
}

static guint
count_widgets (GtkWidget *root)
{
  guint n = 1;

  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    n += count_widgets (child);
  return n;
}

/* Ten thousand rows are as many objects, and a screenful of widgets. */
static void
test_many (void)
{
  DrawlWindow *window = window_on_demo ();
  g_autoptr (GString) text = g_string_new ("slate,fps,action_s\n");

  for (guint i = 0; i < 10000; i++)
    g_string_append_printf (text, "N%u,%u,1\n", i, i % 10 == 0 ? 0 : 48);
  DrawlImportDialog *dialog = import_text (window, text->str, text->len);
  wait_until (gtk_widget_get_mapped (GTK_WIDGET (dialog)));
  settle ();
  g_assert_cmpuint (g_list_model_get_n_items (model_of (dialog, "good_view")), ==, 9000);
  g_assert_cmpuint (g_list_model_get_n_items (model_of (dialog, "bad_view")), ==, 1000);
  g_assert_cmpuint (count_widgets (GTK_WIDGET (dialog)), <, 10000);
  g_assert_true (drawl_import_dialog_bring_in (dialog));
  settle ();
  g_assert_cmpuint (n_shots (window), >, 9000);
  drop_window (window);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/import/shown", rows, test_shown);
  g_test_add_func ("/import/bring-in", test_bring_in);
  g_test_add_func ("/import/too-late", test_too_late);
  g_test_add_func ("/import/no-table", test_no_table);
  g_test_add_func ("/import/many", test_many);
  return run_window_tests ();
}
