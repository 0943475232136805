/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Any bytes as a table of shots: each row is good or has a reason, the good ones go into a plan,
 * and what that plan writes is read into another one and written the same. */

#include "plan/shot-table.h"

#include "fuzz.h"

static void
assert_row (const DrawlShotTableRow *row)
{
  g_assert_cmpint (row->fields == NULL, ==, row->reason != NULL);
  if (row->reason == NULL)
    return;
  g_autofree char *text = drawl_shot_table_row_text (row);
  g_assert_true (g_utf8_validate (text, -1, NULL));
  g_assert_cmpuint (strlen (text), <, 1000);
}

static DrawlPlan *
plan_of (const DrawlShotTable *table)
{
  DrawlPlan *plan = drawl_plan_new ();
  g_autoptr (GError) error = NULL;

  drawl_shot_table_insert (plan, table, 0, "", &error);
  g_assert_no_error (error);
  g_assert_cmpuint (drawl_plan_n_shots (plan), ==, table->n_good);
  return plan;
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autoptr (DrawlPlan) empty = drawl_plan_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (DrawlShotTable) table =
      drawl_shot_table_read (empty, (const char *)data, size, &error);

  fuzz_assert_outcome (table != NULL, error);
  if (table == NULL)
    return 0;
  for (guint i = 0; i < table->rows->len; i++)
    assert_row (table->rows->pdata[i]);

  g_autoptr (DrawlPlan) plan = plan_of (table);
  g_autofree char *text = drawl_shot_table_text (plan, NULL, 0, ',');
  g_autoptr (DrawlShotTable) again = drawl_shot_table_read (empty, text, strlen (text), &error);
  g_assert_no_error (error);
  g_autoptr (DrawlPlan) plan_again = plan_of (again);
  g_autofree char *text_again = drawl_shot_table_text (plan_again, NULL, 0, ',');
  g_assert_cmpstr (text_again, ==, text);
  return 0;
}
