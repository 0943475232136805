/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Cells of a body profile: from what is typed to what stands in the file, and back. Numbers are
 * exact both ways; files have a decimal point, people that of their locale. */

#include "plan/body-draft-columns.h"

#include <langinfo.h>
#include <string.h>

#include "core/error.h"
#include "core/text.h"
#include "plan/body-file.h"
#include "plan/body-reader.h"
#include "plan/error.h"
#include "plan/figure.h"
#include "plan/json-file.h"

#define GIGABYTE G_GINT64_CONSTANT (1000000000)
#define CENTS 100
#define CENTS_MAX G_GINT64_CONSTANT (1000000000000)
#define SEPARATORS " ;\t\n"

static JsonNode *
text_node (const char *text)
{
  return json_node_init_string (json_node_alloc (), text);
}

static JsonNode *
int_node (gint64 value)
{
  return json_node_init_int (json_node_alloc (), value);
}

static JsonNode *
list_node (JsonArray *array)
{
  JsonNode *node = json_node_init_array (json_node_alloc (), array);
  json_array_unref (array);
  return node;
}

G_GNUC_PRINTF (2, 3)
static gpointer
refuse (GError **error, const char *format, ...)
{
  va_list values;

  va_start (values, format);
  g_autofree char *message = g_strdup_vprintf (format, values);
  va_end (values);
  g_set_error_literal (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE, message);
  return NULL;
}

/* ---- Reading ---- */

static JsonNode *
read_text (const DrawlDraftColumn *column, const char *text, GError **error)
{
  if (g_utf8_strlen (text, -1) > DRAWL_BODY_TEXT_MAX)
    return refuse (error, _ ("at most %d characters are expected"), DRAWL_BODY_TEXT_MAX);
  return text_node (text);
}

static JsonNode *
read_day (const DrawlDraftColumn *column, const char *text, GError **error)
{
  if (!drawl_body_is_day (text))
    return refuse (error, _ ("a day like 2026-11-25 is expected"));
  return text_node (text);
}

static gboolean
in_range (const DrawlDraftColumn *column, DrawlRational value, GError **error)
{
  if (drawl_rational_compare (value, drawl_rational_whole (column->lowest)) >= 0 &&
      drawl_rational_compare (value, drawl_rational_whole (column->highest)) <= 0)
    return TRUE;
  g_autofree char *lowest = drawl_figure_count (column->lowest);
  g_autofree char *highest = drawl_figure_count (column->highest);
  refuse (error, _ ("a number from %s to %s is expected"), lowest, highest);
  return FALSE;
}

static JsonNode *
read_number (const DrawlDraftColumn *column, const char *text, GError **error)
{
  char exact[DRAWL_RATIONAL_TEXT_SIZE];
  DrawlRational value;

  if (!drawl_rational_parse (text, &value, error) || !in_range (column, value, error))
    return NULL;
  return text_node (drawl_rational_text (value, exact));
}

static JsonNode *
read_count (const DrawlDraftColumn *column, const char *text, GError **error)
{
  DrawlRational value;

  if (!drawl_rational_parse (text, &value, error) || !in_range (column, value, error))
    return NULL;
  return value.den == 1 ? int_node (value.num) : refuse (error, _ ("a whole number is expected"));
}

static JsonNode *
read_gigabytes (const DrawlDraftColumn *column, const char *text, GError **error)
{
  static const char *const units[] = {"GB", NULL};
  DrawlRational value, bytes;

  if (!drawl_rational_parse_unit (text, units, &value, error))
    return NULL;
  if (!drawl_rational_mul (value, drawl_rational_whole (GIGABYTE), &bytes) || bytes.den != 1 ||
      bytes.num < column->lowest || bytes.num > column->highest)
    return refuse (error, _ ("gigabytes above 0 are expected, like 512"));
  return int_node (bytes.num);
}

static JsonNode *
read_money (const DrawlDraftColumn *column, const char *text, GError **error)
{
  DrawlRational value, cents;

  if (!drawl_rational_parse (text, &value, error))
    return NULL;
  if (!drawl_rational_mul (value, drawl_rational_whole (CENTS), &cents) || cents.den != 1 ||
      cents.num < 0 || cents.num > CENTS_MAX)
    return refuse (error, _ ("an amount of money with at most two decimals is expected"));
  g_autofree char *exact =
      g_strdup_printf ("%" G_GINT64_FORMAT ".%02d", cents.num / CENTS, (int)(cents.num % CENTS));
  return text_node (exact);
}

static JsonNode *
read_rate (const DrawlDraftColumn *column, const char *text, GError **error)
{
  char exact[DRAWL_RATIONAL_TEXT_SIZE];
  DrawlRate rate;

  return drawl_rate_parse (text, &rate, error) ? text_node (drawl_rate_text (rate, exact)) : NULL;
}

/* "23.976, 29.97" is how lists are written, too. */
static JsonNode *
read_rates (const DrawlDraftColumn *column, const char *text, GError **error)
{
  g_auto (GStrv) words = g_strsplit_set (text, SEPARATORS, -1);
  g_autoptr (JsonArray) array = json_array_new ();
  char exact[DRAWL_RATIONAL_TEXT_SIZE];
  DrawlRate rate;

  for (guint i = 0; words[i] != NULL; i++) {
    if (g_str_has_suffix (words[i], ","))
      words[i][strlen (words[i]) - 1] = '\0';
    if (words[i][0] == '\0')
      continue;
    if (!drawl_rate_parse (words[i], &rate, error))
      return NULL;
    json_array_add_string_element (array, drawl_rate_text (rate, exact));
  }
  return list_node (g_steal_pointer (&array));
}

static gboolean
has_choice (const DrawlDraftColumn *column, const char *id)
{
  DrawlDraftChoice choice;

  for (guint i = 0; column->choice (i, &choice); i++)
    if (g_str_equal (choice.id, id))
      return TRUE;
  return FALSE;
}

static gpointer
refuse_choice (const char *text, GError **error)
{
  g_autofree char *quote = drawl_core_quote (text);
  return refuse (error, _ ("“%s” is none of what can be chosen"), quote);
}

static JsonNode *
read_choice (const DrawlDraftColumn *column, const char *text, GError **error)
{
  return has_choice (column, text) ? text_node (text) : refuse_choice (text, error);
}

static JsonNode *
read_choices (const DrawlDraftColumn *column, const char *text, GError **error)
{
  g_auto (GStrv) ids = g_strsplit (text, " ", -1);
  g_autoptr (JsonArray) array = json_array_new ();

  for (guint i = 0; ids[i] != NULL; i++) {
    if (!has_choice (column, ids[i]))
      return refuse_choice (ids[i], error);
    json_array_add_string_element (array, ids[i]);
  }
  return list_node (g_steal_pointer (&array));
}

static JsonNode *(*const readers[]) (const DrawlDraftColumn *, const char *, GError **) = {
    [DRAWL_DRAFT_TEXT] = read_text,
    [DRAWL_DRAFT_ID] = read_text,
    [DRAWL_DRAFT_DAY] = read_day,
    [DRAWL_DRAFT_NUMBER] = read_number,
    [DRAWL_DRAFT_COUNT] = read_count,
    [DRAWL_DRAFT_RATE] = read_rate,
    [DRAWL_DRAFT_RATES] = read_rates,
    [DRAWL_DRAFT_MONEY] = read_money,
    [DRAWL_DRAFT_GIGABYTES] = read_gigabytes,
    [DRAWL_DRAFT_CHOICE] = read_choice,
    [DRAWL_DRAFT_CHOICES] = read_choices,
};

JsonNode *
drawl_draft_cell_read (const DrawlDraftColumn *column, const char *text, GError **error)
{
  return readers[column->kind](column, text, error);
}

/* ---- Writing ---- */

static char *
localised (const char *exact)
{
  g_auto (GStrv) parts = g_strsplit (exact, ".", 2);
  return g_strjoinv (nl_langinfo (RADIXCHAR), parts);
}

static char *
rate_text (const char *text)
{
  DrawlRate rate, again;

  if (!drawl_rate_parse (text, &rate, NULL))
    return g_strdup (text);
  char *figure = drawl_figure_rate_number (rate);
  /* 23.976 where that is read as the same rate; else every digit. */
  if (drawl_rate_parse (figure, &again, NULL) && drawl_rational_equal (rate, again))
    return figure;
  g_free (figure);
  char exact[DRAWL_RATIONAL_TEXT_SIZE];
  return g_strdup (drawl_rate_text (rate, exact));
}

static char *
number_text (const DrawlDraftColumn *column, const char *text)
{
  char exact[DRAWL_RATIONAL_TEXT_SIZE];
  DrawlRational value;

  if (!drawl_rational_parse (text, &value, NULL))
    return g_strdup (text);
  if (column->kind == DRAWL_DRAFT_GIGABYTES)
    drawl_rational_div (value, drawl_rational_whole (GIGABYTE), &value);
  if (column->kind == DRAWL_DRAFT_MONEY && value.den != 1) {
    g_autofree char *cents =
        g_strdup_printf ("%" G_GINT64_FORMAT ".%02d", drawl_rational_floor (value),
                         (int)(value.num % value.den * CENTS / value.den));
    return localised (cents);
  }
  return localised (drawl_rational_text (value, exact));
}

static char *
one_text (const DrawlDraftColumn *column, JsonNode *node)
{
  g_autofree char *text = drawl_json_number_text (node);

  if (text == NULL)
    return g_strdup ("");
  switch (column->kind) {
  case DRAWL_DRAFT_RATE:
  case DRAWL_DRAFT_RATES:
    return rate_text (text);
  case DRAWL_DRAFT_NUMBER:
  case DRAWL_DRAFT_COUNT:
  case DRAWL_DRAFT_MONEY:
  case DRAWL_DRAFT_GIGABYTES:
    return number_text (column, text);
  default:
    return g_steal_pointer (&text);
  }
}

char *
drawl_draft_cell_text (const DrawlDraftColumn *column, JsonNode *node)
{
  g_autoptr (GString) list = g_string_new (NULL);

  if (!JSON_NODE_HOLDS_ARRAY (node))
    return one_text (column, node);
  JsonArray *array = json_node_get_array (node);
  for (guint i = 0; i < json_array_get_length (array); i++) {
    g_autofree char *text = one_text (column, json_array_get_element (array, i));
    g_string_append_printf (list, "%s%s", i > 0 ? " " : "", text);
  }
  return g_string_free (g_steal_pointer (&list), FALSE);
}
