/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Members of a JSON object: numbers as they were written, and each other kind only where it is
 * asked for. */

#include "plan/json-file.h"

#include <string.h>

#include "refused.h"
#include "rows.h"

typedef struct {
  const char *name;
  const char *json;
  const char *exact; /* NULL: refused */
  const char *says;
} Number;

static const Number numbers[] = {
    {"whole", "24", "24", NULL},
    {"negative", "-3", "-3", NULL},
    {"decimal", "0.45", "9/20", NULL},
    {"a-tenth", "0.1", "1/10", NULL},
    {"decimal-with-zeros", "4.500", "9/2", NULL},
    {"many-places", "0.123456789", "123456789/1000000000", NULL},
    {"seventeen-digits", "0.30000000000000004", "7500000000000001/25000000000000000", NULL},
    {"exponent", "1.5e3", "1500", NULL},
    {"exponent-down", "25e-4", "1/400", NULL},
    {"exponent-whole", "1e2", "100", NULL},
    {"minus-zero", "-0.0", "0", NULL},
    {"text", "\"0.45\"", "9/20", NULL},
    {"fraction", "\"1001/240\"", "1001/240", NULL},
    {"text-point-first", "\".5\"", "1/2", NULL},
    {"text-negative", "\"-1/2\"", "-1/2", NULL},
    {"comma", "\"0,45\"", NULL,
     "“n” is \"0,45\"; a number with a decimal point, without unit or spaces, is expected"},
    {"space-before", "\" 0.45\"", NULL, "without unit or spaces, is expected"},
    {"space-after", "\"0.45 \"", NULL, "without unit or spaces, is expected"},
    {"space-within", "\"1/ 2\"", NULL, ""},
    {"too-large", "1e400", NULL, "a number that is too large"},
    {"too-large-for-a-fraction", "1e300", NULL, ""},
    {"too-small-for-a-fraction", "1e-300", NULL, ""},
    {"text-nan", "\"nan\"", NULL, "nan"},
    {"text-empty", "\"\"", NULL, ""},
    {"zero-denominator", "\"1/0\"", NULL, ""},
    {"null", "null", NULL, "“n” is null; a number is expected"},
    {"true", "true", NULL, "“n” is true; a number is expected"},
    {"list", "[1]", NULL, "“n” is a list"},
    {"object", "{}", NULL, "“n” is an object"},
};

static JsonObject *
object_of (const char *json)
{
  g_autofree char *text = g_strdup_printf ("{\"n\":%s}", json);
  g_autoptr (GError) error = NULL;
  JsonObject *object = drawl_json_parse (text, strlen (text), "where", &error);

  g_assert_no_error (error);
  return object;
}

static void
test_number (gconstpointer data)
{
  const Number *row = data;
  g_autoptr (JsonObject) object = object_of (row->json);
  g_autoptr (GError) error = NULL;
  DrawlRational value = {7, 1};
  gboolean taken = drawl_json_get_rational (object, "n", "where", &value, &error);

  if (row->exact != NULL) {
    g_assert_no_error (error);
    assert_same (value, exact (row->exact));
    return;
  }
  g_assert_false (taken);
  assert_refused (error, DRAWL_PLAN_ERROR_VALUE, row->says);
  assert_refused (error, DRAWL_PLAN_ERROR_VALUE, "where: “n”");
}

/* Any double with up to 15 digits is read as the decimal that was written. */
static void
test_decimals_are_exact (void)
{
  for (guint i = 0; i < 2000; i++) {
    gint64 digits = random_whole (49);
    int places = g_test_rand_int_range (1, 12);
    gint64 unit = 1;
    DrawlRational wanted, value;

    for (int n = 0; n < places; n++)
      unit *= 10;
    g_autofree char *json = g_strdup_printf ("%" G_GINT64_FORMAT ".%0*" G_GINT64_FORMAT,
                                             digits / unit, places, digits % unit);
    g_autoptr (JsonObject) object = object_of (json);
    g_assert_true (drawl_rational_make (digits, unit, &wanted));
    g_assert_true (drawl_json_get_rational (object, "n", "w", &value, NULL));
    assert_same (value, wanted);
  }
}

static void
test_members (void)
{
  g_autoptr (JsonObject) object = object_of ("\"x\"");
  const char *text = "as it was";
  gboolean flag = TRUE;
  gint64 whole = 5;
  JsonArray *array = NULL;
  JsonObject *inner = NULL;

  g_assert_true (drawl_json_get_string (object, "none", "w", &text, NULL));
  g_assert_cmpstr (text, ==, "as it was");
  g_assert_true (drawl_json_get_string (object, "n", "w", &text, NULL));
  g_assert_cmpstr (text, ==, "x");
  g_assert_false (drawl_json_get_bool (object, "n", "w", &flag, NULL));
  g_assert_false (drawl_json_get_int (object, "n", "w", 0, 9, &whole, NULL));
  g_assert_false (drawl_json_get_array (object, "n", "w", 9, &array, NULL));
  g_assert_false (drawl_json_get_object (object, "n", "w", &inner, NULL));
  g_assert_true (drawl_json_get_int (object, "none", "w", 0, 9, &whole, NULL));
  g_assert_cmpint (whole, ==, 5);
}

typedef struct {
  const char *name;
  const char *json;
  gint64 value; /* -1: refused */
} Whole;

static const Whole wholes[] = {
    {"lowest", "1", 1},       {"highest", "9", 9},  {"as-decimal", "4.0", 4},
    {"as-text", "\"7\"", -1}, {"below", "0", -1},   {"above", "10", -1},
    {"part", "1.5", -1},      {"huge", "1e18", -1}, {"no-number", "\"two\"", -1},
};

static void
test_whole (gconstpointer data)
{
  const Whole *row = data;
  g_autoptr (JsonObject) object = object_of (row->json);
  g_autoptr (GError) error = NULL;
  gint64 value = -1;

  g_assert_cmpint (drawl_json_get_int (object, "n", "w", 1, 9, &value, &error), ==,
                   row->value >= 0);
  g_assert_cmpint (value, ==, row->value);
  if (row->value < 0)
    g_assert_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE);
}

static const Whole amounts[] = {
    {"text", "\"45.00\"", 4500},  {"whole", "45", 4500},
    {"cents", "0.07", 7},         {"nothing", "0", 0},
    {"negative", "-1", -1},       {"three-places", "1.005", -1},
    {"too-much", "\"1e30\"", -1}, {"beyond", "99999999999999999", -1},
};

static void
test_amount (gconstpointer data)
{
  const Whole *row = data;
  g_autoptr (JsonObject) object = object_of (row->json);
  gint64 value = -1;

  g_assert_cmpint (drawl_json_get_money (object, "n", "w", &value, NULL), ==, row->value >= 0);
  g_assert_cmpint (value, ==, row->value);
}

typedef struct {
  const char *name;
  const char *json;
  const char *rate; /* NULL: refused */
} Rate;

static const Rate rates[] = {
    {"whole", "25", "25"},
    {"text", "\"24000/1001\"", "24000/1001"},
    {"customary", "23.976", "24000/1001"},
    {"customary-text", "\"59.94\"", "60000/1001"},
    {"literal", "12.5", "25/2"},
    {"zero", "0", NULL},
    {"negative", "-24", NULL},
    {"too-high", "1e9", NULL},
    {"text-after", "\"24/1001x\"", NULL},
};

static void
test_rate (gconstpointer data)
{
  const Rate *row = data;
  g_autoptr (JsonObject) object = object_of (row->json);
  g_autoptr (GError) error = NULL;
  DrawlRate rate = {1, 1};

  g_assert_cmpint (drawl_json_get_rate (object, "n", "w", &rate, &error), ==, row->rate != NULL);
  if (row->rate != NULL)
    assert_same (rate, exact (row->rate));
  else
    assert_refused (error, DRAWL_PLAN_ERROR_VALUE, "w: “n”");
}

/* ---- Format and version ---- */

typedef struct {
  const char *name;
  const char *json;
  int code;
  const char *says;
} Format;

static const Format formats[] = {
    {"right", "{\"format\":\"drawl-plan\",\"version\":1}", -1, NULL},
    {"older", "{\"format\":\"drawl-plan\",\"version\":1,\"x\":0}", -1, NULL},
    {"newer", "{\"format\":\"drawl-plan\",\"version\":3}", DRAWL_PLAN_ERROR_VERSION, "newer Drawl"},
    {"none", "{}", DRAWL_PLAN_ERROR_FORMAT, "drawl-plan"},
    {"other", "{\"format\":\"drawl-body\",\"version\":1}", DRAWL_PLAN_ERROR_FORMAT, "drawl-plan"},
    {"no-text", "{\"format\":1,\"version\":1}", DRAWL_PLAN_ERROR_FORMAT, "drawl-plan"},
    {"no-version", "{\"format\":\"drawl-plan\"}", DRAWL_PLAN_ERROR_FORMAT, "version"},
    {"version-zero", "{\"format\":\"drawl-plan\",\"version\":0}", DRAWL_PLAN_ERROR_VALUE,
     "version"},
    {"version-text", "{\"format\":\"drawl-plan\",\"version\":\"one\"}", DRAWL_PLAN_ERROR_VALUE,
     "version"},
};

static void
test_format (gconstpointer data)
{
  const Format *row = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonObject) object = drawl_json_parse (row->json, strlen (row->json), "w", NULL);
  gboolean fits = drawl_json_check_format (object, "drawl-plan", 2, "w", &error);

  g_assert_cmpint (fits, ==, row->code < 0);
  if (row->code >= 0)
    assert_refused (error, row->code, row->says);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/json/number", numbers, test_number);
  g_test_add_func ("/json/decimals-are-exact", test_decimals_are_exact);
  g_test_add_func ("/json/members", test_members);
  add_rows ("/json/whole", wholes, test_whole);
  add_rows ("/json/money", amounts, test_amount);
  add_rows ("/json/rate", rates, test_rate);
  add_rows ("/json/format", formats, test_format);
  return g_test_run ();
}
