/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What every part of a body profile is read with: texts, numbers in their bounds, ids, lists of
 * rows. Each message begins with the place: file, table and row. */

#include "plan/body-reader.h"

#include <string.h>

#include "core/error.h"
#include "core/text.h"
#include "plan/error.h"
#include "plan/json-file.h"

gboolean
drawl_body_need (JsonObject *object, const char *key, const char *where, const char *expected,
                 GError **error)
{
  return json_object_has_member (object, key) ||
         drawl_json_fail (NULL, key, where, expected, error);
}

gboolean
drawl_body_read_text (JsonObject *object, const char *key, const char *where, char **out,
                      GError **error)
{
  const char *text = "";

  if (!drawl_json_get_string (object, key, where, &text, error))
    return FALSE;
  if (g_utf8_strlen (text, -1) > DRAWL_BODY_TEXT_MAX) {
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_TOO_LARGE,
                 _ ("%s: “%s” is longer than %d characters"), where, key, DRAWL_BODY_TEXT_MAX);
    return FALSE;
  }
  *out = g_strdup (text);
  return TRUE;
}

gboolean
drawl_body_need_text (JsonObject *object, const char *key, const char *where, char **out,
                      GError **error)
{
  const char *expected = _ ("a text that is not empty");

  if (!drawl_body_need (object, key, where, expected, error) ||
      !drawl_body_read_text (object, key, where, out, error))
    return FALSE;
  return **out != '\0' ||
         drawl_json_fail (json_object_get_member (object, key), key, where, expected, error);
}

gboolean
drawl_body_read_number (JsonObject *object, const char *key, const char *where, gint64 lowest,
                        gint64 highest, DrawlRational *out, GError **error)
{
  DrawlRational value = *out;

  if (!json_object_has_member (object, key))
    return TRUE;
  if (!drawl_json_get_rational (object, key, where, &value, error))
    return FALSE;
  if (drawl_rational_compare (value, drawl_rational_whole (lowest)) >= 0 &&
      drawl_rational_compare (value, drawl_rational_whole (highest)) <= 0) {
    *out = value;
    return TRUE;
  }
  char least[DRAWL_RATIONAL_TEXT_SIZE], most[DRAWL_RATIONAL_TEXT_SIZE];
  drawl_rational_text (drawl_rational_whole (lowest), least);
  drawl_rational_text (drawl_rational_whole (highest), most);
  g_autofree char *expected = g_strdup_printf (_ ("a number from %s to %s"), least, most);
  return drawl_json_fail (json_object_get_member (object, key), key, where, expected, error);
}

gboolean
drawl_body_read_count (JsonObject *object, const char *key, const char *where, gint64 lowest,
                       gint64 highest, guint *out, GError **error)
{
  gint64 value = *out;

  if (!drawl_json_get_int (object, key, where, lowest, highest, &value, error))
    return FALSE;
  *out = (guint)value;
  return TRUE;
}

gboolean
drawl_body_read_speed (JsonObject *object, const char *key, const char *where, gint64 *out,
                       GError **error)
{
  DrawlRational mb_s = {0, 1}, bytes_s;

  if (!json_object_has_member (object, key))
    return TRUE;
  if (!drawl_body_read_number (object, key, where, 0, DRAWL_BODY_MB_S_MAX, &mb_s, error))
    return FALSE;
  if (!drawl_rational_mul (mb_s, drawl_rational_whole (1000000), &bytes_s) ||
      drawl_rational_floor (bytes_s) < 1)
    return drawl_json_fail (json_object_get_member (object, key), key, where,
                            _ ("a number of megabytes a second above 0"), error);
  *out = drawl_rational_floor (bytes_s);
  return TRUE;
}

gboolean
drawl_body_enter_id (GHashTable *ids, const char *id, guint index, const char *where,
                     GError **error)
{
  if (!g_hash_table_contains (ids, id)) {
    g_hash_table_insert (ids, (gpointer)id, GUINT_TO_POINTER (index + 1));
    return TRUE;
  }
  g_autofree char *quote = drawl_core_quote (id);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_DUPLICATE,
               _ ("%s: the id “%s” stands twice; each id may stand once"), where, quote);
  return FALSE;
}

int
drawl_body_find_id (GHashTable *ids, const char *id, const char *what, const char *where,
                    GError **error)
{
  guint found = GPOINTER_TO_UINT (g_hash_table_lookup (ids, id));

  if (found > 0)
    return (int)found - 1;
  g_autofree char *quote = drawl_core_quote (id);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_UNKNOWN,
               _ ("%s: there is no %s “%s” in this profile"), where, what, quote);
  return -1;
}

static gboolean
holds_text (JsonNode *node)
{
  return JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_STRING;
}

GStrv
drawl_body_read_ids (JsonObject *object, const char *key, const char *where, GError **error)
{
  g_autoptr (GStrvBuilder) ids = g_strv_builder_new ();
  JsonNode *node = json_object_get_member (object, key);
  JsonArray *array = NULL;

  if (node != NULL && holds_text (node)) {
    g_strv_builder_add (ids, json_node_get_string (node));
    return g_strv_builder_end (ids);
  }
  if (!drawl_json_get_array (object, key, where, DRAWL_BODY_ROWS_MAX, &array, error))
    return NULL;
  guint n_ids = array == NULL ? 0 : json_array_get_length (array);
  for (guint i = 0; i < n_ids; i++) {
    JsonNode *element = json_array_get_element (array, i);
    if (!holds_text (element)) {
      drawl_json_fail (element, key, where, _ ("a list of ids"), error);
      return NULL;
    }
    g_strv_builder_add (ids, json_node_get_string (element));
  }
  return g_strv_builder_end (ids);
}

gboolean
drawl_body_read_tier (const DrawlBodyReader *reader, JsonObject *object, const char *key,
                      const char *where, DrawlTier *out, GError **error)
{
  g_auto (GStrv) ids = drawl_body_read_ids (object, key, where, error);

  if (ids == NULL)
    return FALSE;
  *out = 0;
  for (guint i = 0; ids[i] != NULL; i++) {
    int index = drawl_body_find_id (reader->licences, ids[i], _ ("licence"), where, error);
    if (index < 0)
      return FALSE;
    *out |= DRAWL_TIER_BIT (index);
  }
  return TRUE;
}

static gboolean
read_row (DrawlBodyReader *reader, JsonNode *node, const DrawlBodyTable *table, gpointer row,
          guint index, GError **error)
{
  g_autofree char *where =
      g_strdup_printf (_ ("%s: “%s”, row %u"), reader->where, table->key, index + 1);

  if (!JSON_NODE_HOLDS_OBJECT (node))
    return drawl_json_fail (node, table->key, where, _ ("a list of objects"), error);
  return table->read (reader, json_node_get_object (node), row, index, where, error);
}

gboolean
drawl_body_read_table (DrawlBodyReader *reader, JsonObject *object, const DrawlBodyTable *table,
                       GError **error)
{
  JsonArray *array = NULL;

  if (!drawl_json_get_array (object, table->key, reader->where, table->most, &array, error))
    return FALSE;
  guint n_rows = array == NULL ? 0 : json_array_get_length (array);
  if (n_rows == 0)
    return TRUE;

  char *rows = g_malloc0_n (n_rows, table->row_bytes);
  memcpy ((char *)reader->body + table->rows_offset, &rows, sizeof rows);
  memcpy ((char *)reader->body + table->count_offset, &n_rows, sizeof n_rows);
  for (guint i = 0; i < n_rows; i++)
    if (!read_row (reader, json_array_get_element (array, i), table, rows + i * table->row_bytes, i,
                   error))
      return FALSE;
  return TRUE;
}
