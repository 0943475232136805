/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The page as a whole: with and without a shot, every shot of the demo, narrow and mirrored. */

#include "page.h"

#include "plan/plan-file.h"

static void
test_none (void)
{
  Page page;

  open_page (&page, "1");
  drawl_shot_page_set_shot (page.page, NULL);
  settle (&page);
  g_assert_true (is_said (page.page, "No shot selected"));
  drawl_plan_remove_shot (page.plan, 0, "Remove");
  show_shot (&page, "2");
  assert_shown (&page, DRAWL_TIMING_CAPTURE, "24");
  drawl_shot_page_set_plan (page.page, NULL);
  settle (&page);
  g_assert_null (drawl_shot_page_get_shot (page.page));
  close_page (&page);
}

static void
count (int *n)
{
  (*n)++;
}

static void
test_properties (void)
{
  g_autoptr (DrawlPlan) plan = NULL;
  g_autoptr (DrawlShot) shot = NULL;
  int told = 0;
  Page page;

  open_page (&page, "1");
  g_signal_connect_swapped (page.page, "notify::shot", G_CALLBACK (count), &told);
  g_object_set (page.page, "shot", shot_of (&page, "2"), NULL);
  g_object_set (page.page, "shot", shot_of (&page, "2"), NULL);
  g_assert_cmpint (told, ==, 1);
  g_object_get (page.page, "plan", &plan, "shot", &shot, NULL);
  g_assert_true (plan == page.plan);
  g_assert_true (shot == shot_of (&page, "2"));
  g_clear_object (&plan);
  g_clear_object (&shot);
  close_page (&page);
}

/* The shot is deleted while it is shown, and comes back. */
static void
test_shot_removed (void)
{
  Page page;

  open_page (&page, "1");
  drawl_plan_remove_shot (page.plan, 0, "Remove");
  settle (&page);
  drawl_plan_undo (page.plan);
  settle (&page);
  drawl_edit_type (drawl_blank_get_edit (blank_of (&page, DRAWL_TIMING_CAPTURE)), "48");
  assert_value (&page, "1", DRAWL_TIMING_CAPTURE, "48");
  close_page (&page);
}

static const char *
text_in (gpointer widget)
{
  return gtk_editable_get_text (GTK_EDITABLE (find_first (widget, GTK_TYPE_TEXT)));
}

static GtkWidget *
find_entry_row (gpointer in, const char *title)
{
  GtkWidget *row;

  for (guint skip = 0, i = 0; (skip = i, row = find_widget (in, ADW_TYPE_ENTRY_ROW, &skip)); i++)
    if (g_str_equal (adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row)), title))
      return row;
  g_error ("no row “%s”", title);
}

/* What cannot be read waits with its shot while another one is looked at. */
static void
test_unreadable_stays (void)
{
  Page page;

  open_page (&page, "1");
  open_all (GTK_WIDGET (page.page));
  settle (&page);
  DrawlBlank *blank = blank_of (&page, DRAWL_TIMING_CAPTURE);
  DrawlEdit *edit = drawl_blank_get_edit (blank);
  GtkWidget *takes = find_entry_row (page.page, "Takes");
  gtk_editable_set_text (GTK_EDITABLE (find_first (blank, GTK_TYPE_TEXT)), "24/1001x");
  gtk_editable_set_text (GTK_EDITABLE (takes), "many");
  show_shot (&page, "2");
  assert_shown (&page, DRAWL_TIMING_CAPTURE, "24");
  g_assert_null (drawl_edit_get_error (edit));
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (takes)), !=, "many");

  show_shot (&page, "1");
  g_assert_cmpstr (text_in (blank), ==, "24/1001x");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (takes)), ==, "many");
  g_assert_nonnull (drawl_edit_get_error (edit));
  g_assert_true (is_said (page.page, drawl_edit_get_error (edit)));
  assert_value (&page, "1", DRAWL_TIMING_CAPTURE, "240");
  g_assert_false (drawl_plan_get_modified (page.plan));

  /* Given up, it does not come back. */
  drawl_edit_restore (edit);
  show_shot (&page, "2");
  show_shot (&page, "1");
  assert_shown (&page, DRAWL_TIMING_CAPTURE, "240");
  close_page (&page);
}

typedef struct {
  const char *name;
  int width;
  GtkTextDirection direction;
} Row;

static const Row rows[] = {
    {"wide", 1000, GTK_TEXT_DIR_LTR},
    {"narrow", 360, GTK_TEXT_DIR_LTR},
    {"mirrored", 800, GTK_TEXT_DIR_RTL},
};

/* Every shot of the demo fits, with all details open. */
static void
test_demo (gconstpointer data)
{
  const Row *row = data;
  g_autofree char *path =
      g_build_filename (g_getenv ("DRAWL_DATA_DIR"), "demo", "glass.drawl", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (DrawlPlan) plan = drawl_plan_load (file, NULL, &error);
  Page page;

  g_assert_no_error (error);
  gtk_widget_set_default_direction (row->direction);
  open_page (&page, "1");
  gtk_window_set_default_size (GTK_WINDOW (page.window), row->width, 900);
  open_all (GTK_WIDGET (page.page));
  drawl_shot_page_set_plan (page.page, plan);
  for (guint i = 0; i < drawl_plan_n_shots (plan); i++) {
    drawl_shot_page_set_shot (page.page, drawl_plan_get_shot (plan, i));
    open_all (GTK_WIDGET (page.page));
    settle (&page);
    g_assert_cmpint (gtk_widget_get_width (GTK_WIDGET (page.page)), ==, row->width);
  }
  g_assert_false (drawl_plan_get_modified (plan));
  close_page (&page);
  gtk_widget_set_default_direction (GTK_TEXT_DIR_LTR);
}

int
main (int argc, char **argv)
{
  if (!start_tests (&argc, &argv))
    return 0;
  g_test_add_func ("/shot-page/none", test_none);
  g_test_add_func ("/shot-page/properties", test_properties);
  g_test_add_func ("/shot-page/shot-removed", test_shot_removed);
  g_test_add_func ("/shot-page/unreadable-stays", test_unreadable_stays);
  add_rows ("/shot-page/demo", rows, test_demo);
  return g_test_run ();
}
