/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Sheets before they are printed: what is said of their pages, how they are turned, and that as
 * many pages come out of the printing as the file of the same sheet has. */

#include "app/print-dialog.h"
#include "app/sheet-choice.h"
#include "app/sheet-view.h"
#include "export/sheet-pdf.h"
#include "rows.h"
#include "transfer.h"

static DrawlPrintDialog *
open_print (DrawlWindow *window)
{
  act (window, "print");
  DrawlPrintDialog *dialog = window_over (window, DRAWL_TYPE_PRINT_DIALOG);
  g_assert_nonnull (dialog);
  wait_until (gtk_widget_get_mapped (GTK_WIDGET (dialog)));
  return dialog;
}

static void
choose (DrawlPrintDialog *dialog, const char *list, guint place)
{
  gtk_drop_down_set_selected (GTK_DROP_DOWN (by_id (dialog, list)), place);
  settle ();
}

/* Where @word stands in the bytes from @at to @end, or NULL. */
static const char *
find (const char *at, const char *end, const char *word)
{
  gsize length = strlen (word);

  for (; at + length < end; at++)
    if (memcmp (at, word, length) == 0)
      return at;
  return NULL;
}

/* Pages of a PDF file: objects of that type. The size of them in @width and @height, in points. */
static guint
pages_in (const char *path, double *width, double *height)
{
  static const char word[] = "/Type /Page", size[] = "/MediaBox [ 0 0 ";
  g_autofree char *data = NULL;
  gsize length;
  guint n = 0;

  g_assert_true (g_file_get_contents (path, &data, &length, NULL));
  const char *at = data, *end = data + length;
  while ((at = find (at, end, word)) != NULL) {
    at += strlen (word);
    n += *at != 's' ? 1 : 0;
  }
  at = find (data, end, size);
  g_assert_nonnull (at);
  char *rest;
  *width = g_ascii_strtod (at + strlen (size), &rest);
  *height = g_ascii_strtod (rest, NULL);
  return n;
}

typedef struct {
  const char *name;
  guint kind, paper;
  double width, height;
} Row;

static const Row rows[] = {
    {"set/a4", 0, 0, 595, 842},      {"set/letter", 0, 1, 612, 792}, {"hire/a4", 1, 0, 595, 842},
    {"hire/letter", 1, 1, 612, 792}, {"cut/a4", 2, 0, 842, 595},     {"cut/letter", 2, 1, 792, 612},
};

static void
test_printed (gconstpointer data)
{
  const Row *row = data;
  DrawlWindow *window = window_on_demo ();
  DrawlPrintDialog *dialog = open_print (window);
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("drawl-test-XXXXXX", &error);
  g_autofree char *printed = g_build_filename (folder, "printed.pdf", NULL);
  g_autofree char *saved = g_build_filename (folder, "saved.pdf", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (saved);

  choose (dialog, "kind_list", row->kind);
  choose (dialog, "paper_list", row->paper);
  g_autoptr (GtkPrintOperation) operation = drawl_print_dialog_operation (dialog);
  gtk_print_operation_set_export_filename (operation, printed);
  g_assert_cmpint (
      gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_EXPORT, NULL, &error), ==,
      GTK_PRINT_OPERATION_RESULT_APPLY);
  g_assert_no_error (error);
  g_assert_true (drawl_sheet_pdf_save (drawl_print_dialog_get_sheet (dialog), file, &error));
  double width, height, saved_width, saved_height;
  guint n = pages_in (printed, &width, &height);
  g_assert_cmpuint (n, ==, drawl_sheet_n_pages (drawl_print_dialog_get_sheet (dialog)));
  g_assert_cmpuint (n, ==, pages_in (saved, &saved_width, &saved_height));
  g_assert_cmpfloat_with_epsilon (width, row->width, 1);
  g_assert_cmpfloat_with_epsilon (height, row->height, 1);
  g_assert_cmpfloat_with_epsilon (width, saved_width, 1);
  gtk_window_destroy (GTK_WINDOW (dialog));
  drop_window (window);
  remove_copy (file);
}

static const char *
page_words (DrawlPrintDialog *dialog)
{
  return gtk_label_get_text (GTK_LABEL (by_id (dialog, "page_label")));
}

static void
test_pages (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlPrintDialog *dialog = open_print (window);
  DrawlSheetView *view = DRAWL_SHEET_VIEW (by_id (dialog, "view"));
  guint n = drawl_sheet_n_pages (drawl_print_dialog_get_sheet (dialog));
  g_autofree char *last = g_strdup_printf ("Page %u of %u", n, n);

  g_assert_cmpuint (n, >, 2);
  g_assert_true (g_str_has_prefix (page_words (dialog), "Page 1 of "));
  g_assert_false (gtk_widget_get_sensitive (by_id (dialog, "previous_button")));
  gtk_widget_activate (by_id (dialog, "next_button"));
  wait_until (drawl_sheet_view_get_page (view) == 1);
  g_assert_true (g_str_has_prefix (page_words (dialog), "Page 2 of "));
  drawl_sheet_view_set_page (view, 1000);
  g_assert_cmpstr (page_words (dialog), ==, last);
  g_assert_false (gtk_widget_get_sensitive (by_id (dialog, "next_button")));
  /* A shorter sheet has no such page. */
  choose (dialog, "kind_list", 2);
  g_assert_cmpuint (drawl_sheet_view_get_page (view), <,
                    drawl_sheet_n_pages (drawl_print_dialog_get_sheet (dialog)));
  drawl_sheet_view_set_page (view, -7);
  g_assert_true (g_str_has_prefix (page_words (dialog), "Page 1 of "));
  gtk_window_destroy (GTK_WINDOW (dialog));
  drop_window (window);
}

/* Those who cannot see the page are told what stands there. */
static void
test_spoken (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlPrintDialog *dialog = open_print (window);
  GtkAccessible *view = GTK_ACCESSIBLE (by_id (dialog, "view"));
  g_autofree char *words = drawl_sheet_page_words (drawl_print_dialog_get_sheet (dialog), 0);

  g_assert_true (g_str_has_prefix (words, "Set sheet, page 1 of "));
  g_assert_nonnull (strstr (words, ": shot 1A to shot "));
  gtk_test_accessible_assert_role (view, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_test_accessible_assert_property (view, GTK_ACCESSIBLE_PROPERTY_LABEL, words);
  gtk_window_destroy (GTK_WINDOW (dialog));
  drop_window (window);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/print/printed", rows, test_printed);
  g_test_add_func ("/print/pages", test_pages);
  g_test_add_func ("/print/spoken", test_spoken);
  return run_window_tests ();
}
