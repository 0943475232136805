/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Shots written as a table: the same cells as RFC 4180 text and as HTML. No cell is a formula. */

#include "plan/csv.h"
#include "plan/shot-column.h"
#include "plan/shot-table.h"
#include "plan/table-cell.h"

#include <string.h>

guint
drawl_shot_table_n_columns (void)
{
  guint n_columns;
  drawl_shot_columns (&n_columns);
  return n_columns;
}

const char *
drawl_shot_table_column_id (guint column)
{
  guint n_columns;
  return drawl_shot_columns (&n_columns)[column].field.id;
}

char *
drawl_shot_table_cell (DrawlPlan *plan, DrawlShot *shot, guint column)
{
  guint n_columns;
  const DrawlShotColumn *written = &drawl_shot_columns (&n_columns)[column];

  g_return_val_if_fail (column < n_columns, NULL);
  return written->write (written, plan, shot);
}

static GStrv
headings (void)
{
  guint n_columns = drawl_shot_table_n_columns ();
  GStrv cells = g_new0 (char *, n_columns + 1);

  for (guint column = 0; column < n_columns; column++)
    cells[column] = g_strdup (drawl_shot_table_column_id (column));
  return cells;
}

static GStrv
cells_of (DrawlPlan *plan, DrawlShot *shot)
{
  guint n_columns = drawl_shot_table_n_columns ();
  GStrv cells = g_new0 (char *, n_columns + 1);

  for (guint column = 0; column < n_columns; column++) {
    g_autofree char *cell = drawl_shot_table_cell (plan, shot, column);
    cells[column] = drawl_table_cell_guard (cell);
  }
  return cells;
}

/* The shot that is written as number @i. */
static DrawlShot *
shot_at (DrawlPlan *plan, const guint *positions, guint i)
{
  return drawl_plan_get_shot (plan, positions != NULL ? positions[i] : i);
}

static void
append_text_row (GString *text, GStrv cells, char delimiter)
{
  drawl_csv_append_row (text, (const char *const *)cells, g_strv_length (cells), delimiter);
}

char *
drawl_shot_table_text (DrawlPlan *plan, const guint *positions, guint n_positions, char delimiter)
{
  guint n = positions != NULL ? n_positions : drawl_plan_n_shots (plan);
  GString *text = g_string_new (NULL);
  g_auto (GStrv) heads = headings ();

  append_text_row (text, heads, delimiter);
  for (guint i = 0; i < n; i++) {
    g_auto (GStrv) cells = cells_of (plan, shot_at (plan, positions, i));
    append_text_row (text, cells, delimiter);
  }
  return g_string_free (text, FALSE);
}

/* @cell as HTML text, lines broken where it breaks them. */
static char *
escape (const char *cell)
{
  g_autofree char *escaped = g_markup_escape_text (cell, -1);
  GString *html = g_string_new (escaped);

  g_string_replace (html, "\r\n", "<br>", 0);
  g_string_replace (html, "\n", "<br>", 0);
  g_string_replace (html, "\r", "<br>", 0);
  return g_string_free (html, FALSE);
}

static void
append_html_row (GString *html, GStrv cells, const char *tag)
{
  g_string_append (html, "<tr>");
  for (guint i = 0; cells[i] != NULL; i++) {
    g_autofree char *escaped = escape (cells[i]);
    g_string_append_printf (html, "<%s>%s</%s>", tag, escaped, tag);
  }
  g_string_append (html, "</tr>\n");
}

char *
drawl_shot_table_html (DrawlPlan *plan, const guint *positions, guint n_positions)
{
  guint n = positions != NULL ? n_positions : drawl_plan_n_shots (plan);
  GString *html = g_string_new ("<meta charset=\"utf-8\">\n<table>\n");
  g_auto (GStrv) heads = headings ();

  append_html_row (html, heads, "th");
  for (guint i = 0; i < n; i++) {
    g_auto (GStrv) cells = cells_of (plan, shot_at (plan, positions, i));
    append_html_row (html, cells, "td");
  }
  g_string_append (html, "</table>\n");
  return g_string_free (html, FALSE);
}
