/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Any bytes as a table of text: what is read can be written, and is then read as the same. */

#include "plan/csv.h"

#include "fuzz.h"

/* The rows from @first on, behind a row that tells the delimiter. */
static char *
write_rows (const DrawlCsv *csv, guint first)
{
  static const char *const heading[] = {"a", "b"};
  GString *text = g_string_new (NULL);

  drawl_csv_append_row (text, heading, 2, csv->delimiter);
  for (guint i = first; i < csv->rows->len; i++) {
    const DrawlCsvRow *row = csv->rows->pdata[i];
    g_autoptr (GPtrArray) fields = g_ptr_array_new ();
    for (guint column = 0; column < row->fields->len; column++)
      g_ptr_array_add (fields, (gpointer)drawl_csv_field (row, column));
    drawl_csv_append_row (text, (const char *const *)fields->pdata, fields->len, csv->delimiter);
  }
  return g_string_free (text, FALSE);
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (DrawlCsv) csv = drawl_csv_read ((const char *)data, size, &error);

  fuzz_assert_outcome (csv != NULL, error);
  if (csv == NULL)
    return 0;

  g_autofree char *text = write_rows (csv, 0);
  g_autoptr (DrawlCsv) again = drawl_csv_read (text, strlen (text), &error);
  g_assert_no_error (error);
  g_assert_cmpint (again->delimiter, ==, csv->delimiter);
  g_autofree char *text_again = write_rows (again, 1);
  g_assert_cmpstr (text_again, ==, text);
  return 0;
}
