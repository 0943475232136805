/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The shape of a table, found from all of its cells before any is read. */

#include "plan/shot-table-shape.h"

#include <string.h>

#include "core/text.h"
#include "plan/error.h"
#include "plan/json-scan.h"
#include "plan/shot-column.h"
#include "plan/table-number.h"

#define BYTE_ORDER_MARK "\xef\xbb\xbf"

/* A list is looked at as a member, since a text of JSON has an object at the top here. */
static gboolean
is_json (const char *data, gsize length)
{
  g_autoptr (GString) text = g_string_new ("{\"\":");

  g_string_append_len (text, data, (gssize)length);
  g_string_append_c (text, '}');
  return drawl_json_scan (text->str, text->len, "", NULL);
}

gboolean
drawl_shot_table_check_kind (const char *data, gsize length, GError **error)
{
  gsize mark = strlen (BYTE_ORDER_MARK);
  gsize at = length >= mark && memcmp (data, BYTE_ORDER_MARK, mark) == 0 ? mark : 0;
  gsize first = at;

  while (first < length && g_ascii_isspace (data[first]))
    first++;
  if (first == length || (data[first] != '{' && data[first] != '[') ||
      !is_json (data + at, length - at))
    return TRUE;
  g_set_error (
      error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_FORMAT,
      _ ("this is JSON, not a table; rows of cells with commas, semicolons or tabs between "
         "them are expected"));
  return FALSE;
}

typedef gboolean (*Look) (const char *cell);

/* TRUE when some cell of a number's column looks so. */
static gboolean
any_number (const DrawlCsv *csv, const DrawlTableMap *map, Look look)
{
  guint n_columns;
  const DrawlShotColumn *columns = drawl_shot_columns (&n_columns);

  for (guint i = map->has_headings; i < csv->rows->len; i++)
    for (guint column = 0; column < n_columns; column++) {
      if (!columns[column].number || !drawl_table_map_has (map, column))
        continue;
      g_autofree char *cell = drawl_table_map_cell (map, csv->rows->pdata[i], column);
      if (look (cell))
        return TRUE;
    }
  return FALSE;
}

gboolean
drawl_shot_table_check_order (const DrawlCsv *csv, const DrawlTableMap *map, GError **error)
{
  if (map->has_headings || csv->rows->len == 0 || any_number (csv, map, drawl_table_number_is))
    return TRUE;
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_FORMAT,
               _ ("no heading is known, and no number stands where the columns in their order have "
                  "one; headings such as slate, capture_rate, action_s and screen_s are expected"));
  return FALSE;
}

gboolean
drawl_shot_table_has_commas (const DrawlCsv *csv, const DrawlTableMap *map)
{
  return csv->delimiter != ',' && any_number (csv, map, drawl_table_number_shows_comma);
}
