/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Notes that a spreadsheet would run as formulas: written so that it does not, and read back as
 * they were. */

#include "plan/table-cell.h"

#include "fixture.h"
#include "plan/shot-table.h"

typedef struct {
  const char *name;
  const char *note;
  const char *cell;
} Row;

static const Row rows[] = {
    {"equals", "=1+1", "'=1+1"},          {"plus", "+2 flags", "'+2 flags"},
    {"minus", "- gloves", "'- gloves"},   {"at", "@door", "'@door"},
    {"guarded-already", "'=1", "''=1"},   {"guarded-twice", "''@x", "'''@x"},
    {"apostrophe-alone", "'tis", "'tis"}, {"in-the-middle", "a=b", "a=b"},
};

static void
test_table (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (DrawlPlan) plan = plan_of (PLAN ("")), other = plan_of (PLAN (""));
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_new ("1", drawl_rational_whole (24));
  g_autofree char *written = g_strdup_printf (",yes,%s,not-on-this-body\r\n", row->cell);
  g_autoptr (GError) error = NULL;

  drawl_shot_fields_set (&fields->notes, row->note);
  g_assert_true (drawl_plan_insert_shot (plan, 0, fields, "Add", NULL));
  g_autofree char *text = drawl_shot_table_text (plan, NULL, 0, ',');
  g_autofree char *html = drawl_shot_table_html (plan, NULL, 0);
  g_assert_true (g_str_has_suffix (text, written));
  g_assert_null (strstr (html, "<td>="));
  g_autoptr (DrawlShotTable) table = drawl_shot_table_read (other, text, strlen (text), &error);
  g_assert_no_error (error);
  g_assert_cmpuint (table->n_good, ==, 1);
  const DrawlShotTableRow *read = table->rows->pdata[0];
  g_assert_cmpstr (read->fields->notes, ==, row->note);
}

static void
test_guard (gconstpointer data)
{
  const Row *row = data;
  g_autofree char *cell = drawl_table_cell_guard (row->note);

  g_assert_cmpstr (cell, ==, row->cell);
  g_assert_cmpstr (drawl_table_cell_bare (cell), ==, row->note);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/table-cell/guard", rows, test_guard);
  add_rows ("/table-cell/table", rows, test_table);
  return g_test_run ();
}
