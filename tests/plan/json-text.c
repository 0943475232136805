/* SPDX-License-Identifier: GPL-3.0-or-later */

/* JSON as we lay it out, and the walk over JSON that stands in a text: what is written is what is
 * read, character for character. */

#include "fixture.h"

#include "plan/json-text.h"
#include "plan/json-walk.h"

/* ---- Layout ---- */

typedef struct {
  const char *name;
  const char *json;
  const char *text;
} Layout;

static const Layout layouts[] = {
    {"empty-object", "{}", "{}"},
    {"empty-list", "[]", "[]"},
    {"shot", "{\"a\":1,\"b\":[\"x\",\"y\"],\"c\":{\"d\":true}}",
     "{\"a\": 1, \"b\": [\"x\", \"y\"], \"c\": {\"d\": true}}"},
    {"list-of-rows", "[{\"a\":1},{\"a\":[2]}]", "[\n {\"a\": 1},\n {\"a\": [2]}\n]"},
    {"deep", "{\"a\":{\"b\":{\"c\":null}},\"d\":[]}",
     "{\n \"a\": {\"b\": {\"c\": null}},\n \"d\": []\n}"},
    {"deeper", "{\"a\":{\"b\":{\"c\":[[1]]}}}",
     "{\n \"a\": {\n  \"b\": {\n   \"c\": [\n    [1]\n   ]\n  }\n }\n}"},
    {"tenth", "[0.1]", "[0.1]"},
    {"third", "[0.3333333333333333]", "[0.3333333333333333]"},
    {"whole-double", "[2.0]", "[2.0]"},
    {"tiny", "[5e-324]", "[4.94065645841247e-324]"},
    {"large", "[1e22]", "[1e+22]"},
    {"too-large", "[1e999,-1e999]", "[1e999, -1e999]"},
    {"whole", "[-12,0,999999999999999999]", "[-12, 0, 999999999999999999]"},
    {"escapes", "[\"\\\"\\\\\\b\\f\\n\\r\\t\\u001f\\u007f/ä\"]",
     "[\"\\\"\\\\\\b\\f\\n\\r\\t\\u001f\\u007f/ä\"]"},
    {"key", "{\"a\\\"b\":1}", "{\"a\\\"b\": 1}"},
};

static void
test_layout (gconstpointer data)
{
  const Layout *row = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) node = json_from_string (row->json, &error);
  g_autoptr (GString) text = g_string_new (NULL);

  g_assert_no_error (error);
  drawl_json_append (text, node, 0);
  g_assert_cmpstr (text->str, ==, row->text);

  g_autoptr (JsonNode) again = json_from_string (text->str, &error);
  g_assert_no_error (error);
  g_assert_true (json_node_equal (node, again));
}

/* ---- Walks ---- */

typedef struct {
  const char *name;
  const char *json;
  const char *parts; /* each key and value as it stands, with `;` behind */
} Walk;

static const Walk walks[] = {
    {"empty-object", "{}", ""},
    {"empty-list", "[ ]", ""},
    {"object", "{\"a\":1,\"b\":\"x\"}", "\"a\";1;\"b\";\"x\";"},
    {"spaces", " {\n \"a\" :\t1 ,\r\n\"b\": true } ", "\"a\";1;\"b\";true;"},
    {"list", "[1, -2.5e3,null,\"x\"]", "1;-2.5e3;null;\"x\";"},
    {"nested", "{\"a\":{\"b\":[1,{}]},\"c\":[[],[[2]]]}", "\"a\";{\"b\":[1,{}]};\"c\";[[],[[2]]];"},
    {"brackets-in-a-text", "[\"]\",[\"}{[\"],{\"]\":\"[\"}]", "\"]\";[\"}{[\"];{\"]\":\"[\"};"},
    {"quotes-in-a-text", "[\"\\\"\",\"\\\\\",\"\\\\\\\"]\"]", "\"\\\"\";\"\\\\\";\"\\\\\\\"]\";"},
};

static void
append_part (GString *parts, DrawlJsonSpan span)
{
  g_string_append_len (parts, span.at, (gssize)span.length);
  g_string_append_c (parts, ';');
}

static void
test_walk (gconstpointer data)
{
  const Walk *row = data;
  DrawlJsonSpan whole = drawl_json_span (row->json), key, value;
  DrawlJsonWalk walk = drawl_json_walk (whole.at);
  g_autoptr (GString) parts = g_string_new (NULL);

  if (*whole.at == '{')
    while (drawl_json_walk_member (&walk, &key, &value)) {
      append_part (parts, key);
      append_part (parts, value);
    }
  else
    while (drawl_json_walk_element (&walk, &value))
      append_part (parts, value);
  g_assert_cmpstr (parts->str, ==, row->parts);
}

typedef struct {
  const char *name;
  const char *json;
  const char *string; /* NULL: none */
} String;

static const String strings[] = {
    {"text", "\"abc\"", "abc"},      {"empty", "\"\"", ""},
    {"escape", "\"a\\nb\"", "a\nb"}, {"surrogates", "\"\\ud83d\\ude00\"", "😀"},
    {"whole", "-12", "-12"},         {"decimal", "0.25", "0.25"},
    {"exponent", "2e3", NULL},       {"truth", "true", NULL},
    {"list", "[1]", NULL},           {"null", "null", NULL},
};

static void
test_string (gconstpointer data)
{
  const String *row = data;
  g_autofree char *string = drawl_json_span_string (drawl_json_span (row->json));

  g_assert_cmpstr (string, ==, row->string);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/json-text/layout", layouts, test_layout);
  add_rows ("/json-text/walk", walks, test_walk);
  add_rows ("/json-text/string", strings, test_string);

  return g_test_run ();
}
