/* SPDX-License-Identifier: GPL-3.0-or-later */

/* JSON text. What is read back is what was written; only the layout is ours. */

#include "plan/json-text.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Levels of what may stand on one line: a list of plain values, and an object that holds such lists
 * or such objects (a shot, a row of a table). */
#define FLAT_LIST_LEVELS 1
#define FLAT_OBJECT_LEVELS 2

/* Digits that may, and that surely do, give a double back. */
#define DOUBLE_DIGITS_MIN 15
#define DOUBLE_DIGITS_MAX 17
#define DOUBLE_TEXT_SIZE 32

static void append_flat (GString *text, JsonNode *node);

/* ---- Values ---- */

static void
append_escape (GString *text, char c)
{
  static const char plain[] = "\"\\\b\f\n\r\t";
  static const char escaped[] = "\"\\bfnrt";
  const char *at = strchr (plain, c);

  if (at != NULL)
    g_string_append_printf (text, "\\%c", escaped[at - plain]);
  else
    g_string_append_printf (text, "\\u%04x", (guint)(guchar)c);
}

void
drawl_json_append_string (GString *text, const char *string)
{
  const char *run = string;

  g_string_append_c (text, '"');
  for (const char *at = string; *at != '\0'; at++) {
    if (!g_ascii_iscntrl (*at) && *at != '"' && *at != '\\')
      continue;
    g_string_append_len (text, run, at - run);
    append_escape (text, *at);
    run = at + 1;
  }
  g_string_append (text, run);
  g_string_append_c (text, '"');
}

static void
append_double (GString *text, double number)
{
  char buffer[DOUBLE_TEXT_SIZE], format[8];

  if (!isfinite (number)) { /* written too large to be held: kept too large */
    g_string_append (text, number > 0 ? "1e999" : "-1e999");
    return;
  }
  for (int digits = DOUBLE_DIGITS_MIN; digits <= DOUBLE_DIGITS_MAX; digits++) {
    g_snprintf (format, sizeof format, "%%.%dg", digits);
    g_ascii_formatd (buffer, sizeof buffer, format, number);
    double back = g_ascii_strtod (buffer, NULL);
    if (memcmp (&back, &number, sizeof back) == 0)
      break;
  }
  g_string_append (text, buffer);
  if (strpbrk (buffer, ".e") == NULL)
    g_string_append (text, ".0");
}

static void
append_value (GString *text, JsonNode *node)
{
  GType type = json_node_get_value_type (node);

  if (type == G_TYPE_STRING)
    drawl_json_append_string (text, json_node_get_string (node));
  else if (type == G_TYPE_BOOLEAN)
    g_string_append (text, json_node_get_boolean (node) ? "true" : "false");
  else if (type == G_TYPE_DOUBLE)
    append_double (text, json_node_get_double (node));
  else
    g_string_append_printf (text, "%" G_GINT64_FORMAT, json_node_get_int (node));
}

/* ---- One line ---- */

static void
append_flat_object (GString *text, JsonObject *object)
{
  JsonObjectIter iter;
  const char *key, *between = "";
  JsonNode *node;

  g_string_append_c (text, '{');
  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &key, &node)) {
    g_string_append (text, between);
    drawl_json_append_string (text, key);
    g_string_append (text, ": ");
    append_flat (text, node);
    between = ", ";
  }
  g_string_append_c (text, '}');
}

static void
append_flat_array (GString *text, JsonArray *array)
{
  g_string_append_c (text, '[');
  for (guint i = 0; i < json_array_get_length (array); i++) {
    g_string_append (text, i > 0 ? ", " : "");
    append_flat (text, json_array_get_element (array, i));
  }
  g_string_append_c (text, ']');
}

static void
append_flat (GString *text, JsonNode *node)
{
  switch (json_node_get_node_type (node)) {
  case JSON_NODE_OBJECT:
    append_flat_object (text, json_node_get_object (node));
    break;
  case JSON_NODE_ARRAY:
    append_flat_array (text, json_node_get_array (node));
    break;
  case JSON_NODE_VALUE:
    append_value (text, node);
    break;
  default:
    g_string_append (text, "null");
  }
}

/* ---- Lines ---- */

static gboolean
is_deeper (JsonNode *node, guint levels)
{
  gboolean deeper = FALSE;

  if (JSON_NODE_HOLDS_OBJECT (node)) {
    JsonObjectIter iter;
    const char *key;
    JsonNode *member;
    json_object_iter_init_ordered (&iter, json_node_get_object (node));
    while (levels > 0 && !deeper && json_object_iter_next_ordered (&iter, &key, &member))
      deeper = is_deeper (member, levels - 1);
    return deeper || levels == 0;
  }
  if (JSON_NODE_HOLDS_ARRAY (node)) {
    JsonArray *array = json_node_get_array (node);
    for (guint i = 0; levels > 0 && !deeper && i < json_array_get_length (array); i++)
      deeper = is_deeper (json_array_get_element (array, i), levels - 1);
    return deeper || levels == 0;
  }
  return FALSE;
}

void
drawl_json_append_line (GString *text, guint level, gboolean first)
{
  g_string_append (text, first ? "\n" : ",\n");
  for (guint i = 0; i < level; i++)
    g_string_append_c (text, ' ');
}

void
drawl_json_append_member (GString *text, const char *key, JsonNode *node, guint level,
                          gboolean first)
{
  drawl_json_append_line (text, level, first);
  drawl_json_append_string (text, key);
  g_string_append (text, ": ");
  drawl_json_append (text, node, level);
}

static void
append_object (GString *text, JsonObject *object, guint level)
{
  JsonObjectIter iter;
  const char *key;
  JsonNode *node;
  gboolean first = TRUE;

  g_string_append_c (text, '{');
  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &key, &node)) {
    drawl_json_append_member (text, key, node, level + 1, first);
    first = FALSE;
  }
  drawl_json_append_line (text, level, TRUE);
  g_string_append_c (text, '}');
}

static void
append_array (GString *text, JsonArray *array, guint level)
{
  g_string_append_c (text, '[');
  for (guint i = 0; i < json_array_get_length (array); i++) {
    drawl_json_append_line (text, level + 1, i == 0);
    drawl_json_append (text, json_array_get_element (array, i), level + 1);
  }
  drawl_json_append_line (text, level, TRUE);
  g_string_append_c (text, ']');
}

void
drawl_json_append (GString *text, JsonNode *node, guint level)
{
  guint flat_levels = JSON_NODE_HOLDS_ARRAY (node) ? FLAT_LIST_LEVELS : FLAT_OBJECT_LEVELS;

  if (!is_deeper (node, flat_levels))
    append_flat (text, node);
  else if (JSON_NODE_HOLDS_OBJECT (node))
    append_object (text, json_node_get_object (node), level);
  else
    append_array (text, json_node_get_array (node), level);
}
