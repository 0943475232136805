/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Members of a JSON object by type, strictly: what is there must be what is asked for. Numbers pass
 * through their text, never through arithmetic on doubles, so 0.45 is 9/20. */

#include "plan/json-file.h"

#include <string.h>

#include "core/error.h"
#include "core/text.h"
#include "plan/error.h"

/* Digits after the first that are tried for a double, fewest first; the last always reads back. */
#define DIGITS_LEAST 14
#define DIGITS_MOST 16
#define DOUBLE_TEXT_SIZE 40

/* 10 billion a day, in hundredths: what 64 licences cost together still fits. */
#define MONEY_MAX G_GINT64_CONSTANT (1000000000000)

static gboolean
same_double (double a, double b)
{
  return !(a < b) && !(a > b);
}

/* @scientific: "-1.5e-07", as printed; the same without exponent. */
static char *
expand (const char *scientific)
{
  gboolean negative = *scientific == '-';
  const char *mantissa = scientific + (negative ? 1 : 0);
  const char *mark = strchr (mantissa, 'e');
  gint64 exponent = g_ascii_strtoll (mark + 1, NULL, 10);
  GString *text = g_string_new_len (mantissa, mark - mantissa);

  if (text->len > 1)
    g_string_erase (text, 1, 1); /* the point */
  while (text->len > 1 && text->str[text->len - 1] == '0')
    g_string_truncate (text, text->len - 1);
  while ((gint64)text->len < exponent + 1)
    g_string_append_c (text, '0');
  for (; exponent < 0; exponent++)
    g_string_prepend_c (text, '0');
  if ((gint64)text->len > exponent + 1)
    g_string_insert_c (text, (gssize)exponent + 1, '.');
  if (negative)
    g_string_prepend_c (text, '-');
  return g_string_free (text, FALSE);
}

static char *
double_text (double value)
{
  char text[DOUBLE_TEXT_SIZE], format[8];

  if (!(value >= -G_MAXDOUBLE && value <= G_MAXDOUBLE))
    return NULL;
  for (int digits = DIGITS_LEAST; digits <= DIGITS_MOST; digits++) {
    g_snprintf (format, sizeof format, "%%.%de", digits);
    g_ascii_formatd (text, sizeof text, format, value);
    if (same_double (g_ascii_strtod (text, NULL), value))
      break;
  }
  return expand (text);
}

char *
drawl_json_number_text (JsonNode *node)
{
  if (!JSON_NODE_HOLDS_VALUE (node))
    return NULL;
  switch (json_node_get_value_type (node)) {
  case G_TYPE_STRING:
    return g_strdup (json_node_get_string (node));
  case G_TYPE_INT64:
    return g_strdup_printf ("%" G_GINT64_FORMAT, json_node_get_int (node));
  case G_TYPE_DOUBLE:
    return double_text (json_node_get_double (node));
  default:
    return NULL;
  }
}

static char *
describe (JsonNode *node)
{
  if (node == NULL)
    return g_strdup (_ ("missing"));
  if (JSON_NODE_HOLDS_ARRAY (node))
    return g_strdup (_ ("a list"));
  if (JSON_NODE_HOLDS_OBJECT (node))
    return g_strdup (_ ("an object"));
  if (JSON_NODE_HOLDS_NULL (node))
    return g_strdup ("null");
  if (json_node_get_value_type (node) == G_TYPE_BOOLEAN)
    return g_strdup (json_node_get_boolean (node) ? "true" : "false");

  g_autofree char *text = drawl_json_number_text (node);
  if (text == NULL)
    return g_strdup (_ ("a number that is too large"));
  g_autofree char *quote = drawl_core_quote (text);
  if (json_node_get_value_type (node) == G_TYPE_STRING)
    return g_strdup_printf ("\"%s\"", quote);
  return g_steal_pointer (&quote);
}

gboolean
drawl_json_fail (JsonNode *found, const char *key, const char *where, const char *expected,
                 GError **error)
{
  g_autofree char *what = describe (found);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE,
               _ ("%s: “%s” is %s; %s is expected"), where, key, what, expected);
  return FALSE;
}

static gboolean
holds (JsonNode *node, GType type)
{
  return JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == type;
}

gboolean
drawl_json_get_string (JsonObject *object, const char *key, const char *where, const char **out,
                       GError **error)
{
  JsonNode *node = json_object_get_member (object, key);

  if (node == NULL)
    return TRUE;
  if (!holds (node, G_TYPE_STRING))
    return drawl_json_fail (node, key, where, _ ("a text"), error);
  *out = json_node_get_string (node);
  return TRUE;
}

gboolean
drawl_json_get_bool (JsonObject *object, const char *key, const char *where, gboolean *out,
                     GError **error)
{
  JsonNode *node = json_object_get_member (object, key);

  if (node == NULL)
    return TRUE;
  if (!holds (node, G_TYPE_BOOLEAN))
    return drawl_json_fail (node, key, where, _ ("true or false"), error);
  *out = json_node_get_boolean (node);
  return TRUE;
}

gboolean
drawl_json_get_array (JsonObject *object, const char *key, const char *where, guint most,
                      JsonArray **out, GError **error)
{
  JsonNode *node = json_object_get_member (object, key);

  if (node == NULL)
    return TRUE;
  if (!JSON_NODE_HOLDS_ARRAY (node))
    return drawl_json_fail (node, key, where, _ ("a list"), error);
  JsonArray *array = json_node_get_array (node);
  if (json_array_get_length (array) > most) {
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_TOO_LARGE,
                 _ ("%s: “%s” has %u entries; at most %u are expected"), where, key,
                 json_array_get_length (array), most);
    return FALSE;
  }
  *out = array;
  return TRUE;
}

gboolean
drawl_json_get_object (JsonObject *object, const char *key, const char *where, JsonObject **out,
                       GError **error)
{
  JsonNode *node = json_object_get_member (object, key);

  if (node == NULL)
    return TRUE;
  if (!JSON_NODE_HOLDS_OBJECT (node))
    return drawl_json_fail (node, key, where, _ ("an object"), error);
  *out = json_node_get_object (node);
  return TRUE;
}

#define DIGITS "0123456789"

gboolean
drawl_json_number_is_plain (const char *text)
{
  const char *at = text + (*text == '-');
  gsize whole = strspn (at, DIGITS);
  char sign = at[whole];

  if (sign == '\0')
    return whole > 0;
  if (sign != '.' && (sign != '/' || whole == 0))
    return FALSE;
  at += whole + 1;
  gsize rest = strspn (at, DIGITS);
  return rest > 0 && at[rest] == '\0';
}

gboolean
drawl_json_fail_number (const char *text, const char *key, const char *where, GError **error)
{
  g_autoptr (JsonNode) node = json_node_init_string (json_node_alloc (), text);
  return drawl_json_fail (node, key, where,
                          _ ("a number with a decimal point, without unit or spaces,"), error);
}

typedef gboolean (*ParseNumber) (const char *text, DrawlRational *out, GError **error);

/* A number or the text of one; what @parse says against it goes into the message. */
static gboolean
get_number (JsonObject *object, const char *key, const char *where, ParseNumber parse,
            const char *expected, DrawlRational *out, GError **error)
{
  JsonNode *node = json_object_get_member (object, key);
  g_autoptr (GError) local = NULL;

  if (node == NULL)
    return TRUE;
  g_autofree char *text = drawl_json_number_text (node);
  if (text == NULL)
    return drawl_json_fail (node, key, where, expected, error);
  if (parse (text, out, &local))
    return drawl_json_number_is_plain (text) || drawl_json_fail_number (text, key, where, error);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE, _ ("%s: “%s”: %s"), where, key,
               local->message);
  return FALSE;
}

gboolean
drawl_json_get_rational (JsonObject *object, const char *key, const char *where, DrawlRational *out,
                         GError **error)
{
  return get_number (object, key, where, drawl_rational_parse, _ ("a number"), out, error);
}

gboolean
drawl_json_get_rate (JsonObject *object, const char *key, const char *where, DrawlRate *out,
                     GError **error)
{
  return get_number (object, key, where, drawl_rate_parse, _ ("a rate"), out, error);
}

gboolean
drawl_json_get_int (JsonObject *object, const char *key, const char *where, gint64 lowest,
                    gint64 highest, gint64 *out, GError **error)
{
  JsonNode *node = json_object_get_member (object, key);
  DrawlRational value = {0, 1};

  if (node == NULL)
    return TRUE;
  if (!holds (node, G_TYPE_STRING) && !drawl_json_get_rational (object, key, where, &value, error))
    return FALSE;
  if (!holds (node, G_TYPE_STRING) && value.den == 1 && value.num >= lowest &&
      value.num <= highest) {
    *out = value.num;
    return TRUE;
  }
  char least[DRAWL_RATIONAL_TEXT_SIZE], most[DRAWL_RATIONAL_TEXT_SIZE];
  drawl_rational_text (drawl_rational_whole (lowest), least);
  drawl_rational_text (drawl_rational_whole (highest), most);
  g_autofree char *expected = g_strdup_printf (_ ("a whole number from %s to %s"), least, most);
  return drawl_json_fail (node, key, where, expected, error);
}

gboolean
drawl_json_get_money (JsonObject *object, const char *key, const char *where, gint64 *out,
                      GError **error)
{
  JsonNode *node = json_object_get_member (object, key);
  DrawlRational value = {0, 1}, hundredths;

  if (node == NULL)
    return TRUE;
  if (!drawl_json_get_rational (object, key, where, &value, error))
    return FALSE;
  if (!drawl_rational_mul (value, drawl_rational_whole (100), &hundredths) || hundredths.den != 1 ||
      hundredths.num < 0 || hundredths.num > MONEY_MAX)
    return drawl_json_fail (node, key, where, _ ("an amount of money with at most two decimals"),
                            error);
  *out = hundredths.num;
  return TRUE;
}
