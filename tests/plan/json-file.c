/* SPDX-License-Identifier: GPL-3.0-or-later */

/* JSON from and to disk: what is refused before it is parsed, where and in which words; numbers as
 * they were written; and a save that never leaves half a file. */

#define _XOPEN_SOURCE 700

#include "plan/json-file.h"

#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "plan/error.h"
#include "plan/json-scan.h"
#include "rows.h"

#define assert_refused(error, code, part)                                                          \
  G_STMT_START                                                                                     \
  {                                                                                                \
    g_assert_error ((error), DRAWL_PLAN_ERROR, (int)(code));                                       \
    if (strstr ((error)->message, (part)) == NULL)                                                 \
      g_error ("\"%s\" does not say \"%s\"", (error)->message, (part));                            \
  }                                                                                                \
  G_STMT_END

/* ---- Texts ---- */

typedef struct {
  const char *name;
  const char *text;
  int code; /* -1: taken */
  const char *says;
} Text;

static const Text texts[] = {
    {"empty-object", "{}", -1, NULL},
    {"spaces", " \t\r\n{ \"a\" : [ ] }\n", -1, NULL},
    {"all-kinds", "{\"a\":[1,-2.5e3,0.0,true,false,null,\"x\",{}]}", -1, NULL},
    {"byte-order-mark", "\xef\xbb\xbf{}", -1, NULL},
    {"escapes", "{\"a\":\"\\\"\\\\\\/\\b\\f\\n\\r\\t\\u00e4\\ud83d\\ude00\"}", -1, NULL},
    {"brackets-in-a-text", "{\"a\":\"[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[{{{{\"}", -1, NULL},
    {"quote-in-a-text", "{\"a\":\"\\\"[\"}", -1, NULL},
    {"empty", "", DRAWL_PLAN_ERROR_SYNTAX, "line 1, column 1"},
    {"only-spaces", "\n\n  ", DRAWL_PLAN_ERROR_SYNTAX, "line 3, column 3"},
    {"a-list", "[]", DRAWL_PLAN_ERROR_SYNTAX, "“[” was found, but “{” is expected"},
    {"prose", "Dear crew,", DRAWL_PLAN_ERROR_SYNTAX, "“D” was found"},
    {"truncated-key", "{\"for", DRAWL_PLAN_ERROR_SYNTAX, "ends at line 1, column 6"},
    {"truncated-value", "{\"a\":", DRAWL_PLAN_ERROR_SYNTAX, "ends at line 1, column 6"},
    {"truncated-object", "{\"a\":1", DRAWL_PLAN_ERROR_SYNTAX, "a comma or “}”"},
    {"truncated-list", "{\"a\":[1", DRAWL_PLAN_ERROR_SYNTAX, "a comma or “]”"},
    {"truncated-number", "{\"a\":-", DRAWL_PLAN_ERROR_SYNTAX, "a digit"},
    {"truncated-escape", "{\"a\":\"\\", DRAWL_PLAN_ERROR_SYNTAX, "an escape sequence"},
    {"truncated-word", "{\"a\":tru", DRAWL_PLAN_ERROR_SYNTAX, "a value"},
    {"comma-at-the-end", "{\"a\":1,}", DRAWL_PLAN_ERROR_SYNTAX, "a key in quotation marks"},
    {"comma-in-a-list", "{\"a\":[1,]}", DRAWL_PLAN_ERROR_SYNTAX, "a value"},
    {"no-comma", "{\"a\":1 \"b\":2}", DRAWL_PLAN_ERROR_SYNTAX, "column 8"},
    {"no-colon", "{\"a\" 1}", DRAWL_PLAN_ERROR_SYNTAX, "a colon"},
    {"bare-key", "{a:1}", DRAWL_PLAN_ERROR_SYNTAX, "a key in quotation marks"},
    {"single-quotes", "{'a':1}", DRAWL_PLAN_ERROR_SYNTAX, "a key in quotation marks"},
    {"wrong-bracket", "{\"a\":[1}", DRAWL_PLAN_ERROR_SYNTAX, "“}” was found"},
    {"comment", "{/* rate */\"a\":1}", DRAWL_PLAN_ERROR_SYNTAX, "“/” was found"},
    {"assignment", "var a = {}", DRAWL_PLAN_ERROR_SYNTAX, "“v” was found"},
    {"something-after", "{} {}", DRAWL_PLAN_ERROR_SYNTAX, "nothing more"},
    {"octal", "{\"a\":010}", DRAWL_PLAN_ERROR_SYNTAX, "leading zero"},
    {"hexadecimal", "{\"a\":0x10}", DRAWL_PLAN_ERROR_SYNTAX, "“x” was found"},
    {"plus", "{\"a\":+1}", DRAWL_PLAN_ERROR_SYNTAX, "“+” was found"},
    {"point-first", "{\"a\":.5}", DRAWL_PLAN_ERROR_SYNTAX, "“.” was found"},
    {"point-last", "{\"a\":5.}", DRAWL_PLAN_ERROR_SYNTAX, "a digit"},
    {"exponent-empty", "{\"a\":5e}", DRAWL_PLAN_ERROR_SYNTAX, "a digit"},
    {"not-a-number", "{\"a\":NaN}", DRAWL_PLAN_ERROR_SYNTAX, "“N” was found"},
    {"infinity", "{\"a\":-Infinity}", DRAWL_PLAN_ERROR_SYNTAX, "a digit"},
    {"line-in-a-text", "{\"a\":\"x\ny\"}", DRAWL_PLAN_ERROR_SYNTAX, "line 1, column 8"},
    {"escape-unknown", "{\"a\":\"\\x41\"}", DRAWL_PLAN_ERROR_SYNTAX, "an escape sequence"},
    {"escape-short", "{\"a\":\"\\u00e\"}", DRAWL_PLAN_ERROR_SYNTAX, "four hexadecimal digits"},
    {"escape-nul", "{\"a\":\"\\u0000\"}", DRAWL_PLAN_ERROR_SYNTAX, "four hexadecimal digits"},
    {"half-a-pair", "{\"a\":\"\\ud83d\"}", DRAWL_PLAN_ERROR_SYNTAX, "four hexadecimal digits"},
    {"second-half-alone", "{\"a\":\"\\ude00\"}", DRAWL_PLAN_ERROR_SYNTAX, "hexadecimal"},
    {"not-utf-8", "{\"a\":\"\n\xff\"}", DRAWL_PLAN_ERROR_SYNTAX, "line 2, column 1"},
    {"line-and-column", "{\n  \"ä\": 1,\n  \"öü\" 2\n}", DRAWL_PLAN_ERROR_SYNTAX,
     "line 3, column 8"},
    {"nineteen-digits", "{\"a\":1234567890123456789}", DRAWL_PLAN_ERROR_TOO_LARGE, "18 digits"},
    {"forty-digits", "{\"a\":-1234567890123456789012345678901234567890}",
     DRAWL_PLAN_ERROR_TOO_LARGE, "18 digits"},
};

static void
test_text (gconstpointer data)
{
  const Text *row = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonObject) object =
      drawl_json_parse (row->text, strlen (row->text), "glass.drawl", &error);

  if (row->code < 0) {
    g_assert_no_error (error);
    g_assert_nonnull (object);
    return;
  }
  g_assert_null (object);
  assert_refused (error, row->code, row->says);
  g_assert_true (g_str_has_prefix (error->message, "glass.drawl: "));
}

/* A text of @levels lists within the top object. */
static char *
deep_text (guint levels)
{
  GString *text = g_string_new ("{\"a\":");

  for (guint i = 0; i < levels; i++)
    g_string_append_c (text, '[');
  for (guint i = 0; i < levels; i++)
    g_string_append_c (text, ']');
  g_string_append_c (text, '}');
  return g_string_free (text, FALSE);
}

static void
test_levels (void)
{
  g_autofree char *allowed = deep_text (DRAWL_JSON_MAX_LEVELS - 1);
  g_autofree char *one_more = deep_text (DRAWL_JSON_MAX_LEVELS);
  g_autofree char *many = deep_text (100000);
  const char *refused[] = {one_more, many};
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonObject) object = drawl_json_parse (allowed, strlen (allowed), "w", &error);

  g_assert_no_error (error);
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++) {
    g_autoptr (GError) deep = NULL;
    g_assert_null (drawl_json_parse (refused[i], strlen (refused[i]), "w", &deep));
    assert_refused (deep, DRAWL_PLAN_ERROR_TOO_LARGE, "32 levels");
  }
}

static void
test_nul_in_text (void)
{
  static const char text[] = "{\"a\":1\0}";
  g_autoptr (GError) error = NULL;

  g_assert_null (drawl_json_parse (text, sizeof text - 1, "w", &error));
  assert_refused (error, DRAWL_PLAN_ERROR_SYNTAX, "column 7");
}

/* ---- Numbers ---- */

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
    {"comma", "\"0,45\"", "9/20", NULL},
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
    {"lowest", "1", 1},      {"highest", "9", 9},  {"as-decimal", "4.0", 4},
    {"as-text", "\"7\"", 7}, {"below", "0", -1},   {"above", "10", -1},
    {"part", "1.5", -1},     {"huge", "1e18", -1}, {"no-number", "\"two\"", -1},
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

/* ---- Files ---- */

typedef struct {
  char *folder;
  char *path;
  GFile *file;
} Place;

static void
set_up (Place *place, gconstpointer data)
{
  place->folder = g_dir_make_tmp ("drawl-json-XXXXXX", NULL);
  place->path = g_build_filename (place->folder, "glass.drawl", NULL);
  place->file = g_file_new_for_path (place->path);
}

static guint
count_entries (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

static void
tear_down (Place *place, gconstpointer data)
{
  g_autoptr (GDir) dir = g_dir_open (place->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (place->folder, name, NULL);
    g_assert_cmpint (g_remove (path), ==, 0);
  }
  g_assert_cmpint (g_rmdir (place->folder), ==, 0);
  g_free (place->folder);
  g_free (place->path);
  g_object_unref (place->file);
}

static void
assert_content (const char *path, const char *text)
{
  g_autofree char *found = NULL;
  g_autoptr (GError) error = NULL;

  g_file_get_contents (path, &found, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (found, ==, text);
}

static void
save (Place *place, const char *text, gboolean backup)
{
  g_autoptr (GError) error = NULL;

  drawl_json_save (place->file, text, strlen (text), backup, NULL, &error);
  g_assert_no_error (error);
}

static void
test_save_and_load (Place *place, gconstpointer data)
{
  g_autofree char *saved_etag = NULL, *etag = NULL;
  g_autoptr (GError) error = NULL;

  drawl_json_save (place->file, "{\"a\":1}", 7, FALSE, &saved_etag, &error);
  g_assert_no_error (error);
  g_autoptr (JsonObject) object = drawl_json_load (place->file, &etag, &error);
  g_assert_no_error (error);
  g_assert_cmpint (json_object_get_int_member (object, "a"), ==, 1);
  g_assert_nonnull (etag);
  g_assert_cmpstr (etag, ==, saved_etag);
  g_assert_cmpuint (count_entries (place->folder), ==, 1);
}

static void
test_backup (Place *place, gconstpointer data)
{
  g_autofree char *backup = g_strconcat (place->path, "~", NULL);

  save (place, "{}", TRUE);
  g_assert_false (g_file_test (backup, G_FILE_TEST_EXISTS));
  save (place, "{\"second\":2}", TRUE);
  assert_content (backup, "{}");
  save (place, "{\"third\":3}", FALSE);
  assert_content (backup, "{}");
  assert_content (place->path, "{\"third\":3}");
  g_assert_cmpuint (count_entries (place->folder), ==, 2);
}

static void
test_mode_stays (Place *place, gconstpointer data)
{
  g_autofree char *backup = g_strconcat (place->path, "~", NULL);
  struct stat found;

  save (place, "{}", FALSE);
  g_assert_cmpint (g_chmod (place->path, 0640), ==, 0);
  save (place, "{\"a\":1}", TRUE);
  g_assert_cmpint (stat (place->path, &found), ==, 0);
  g_assert_cmpint (found.st_mode & 07777, ==, 0640);
  g_assert_cmpint (stat (backup, &found), ==, 0);
  g_assert_cmpint (found.st_mode & 07777, ==, 0640);
}

static void
test_link_stays (Place *place, gconstpointer data)
{
  g_autofree char *target = g_build_filename (place->folder, "real.drawl", NULL);
  struct stat found;

  g_assert_cmpint (symlink ("real.drawl", place->path), ==, 0);
  save (place, "{\"a\":1}", FALSE); /* the link leads nowhere yet */
  assert_content (target, "{\"a\":1}");
  save (place, "{\"a\":2}", FALSE);
  assert_content (target, "{\"a\":2}");
  g_assert_cmpint (lstat (place->path, &found), ==, 0);
  g_assert_true (S_ISLNK (found.st_mode));
}

static void
assert_not_saved (const char *path, const char *says)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;

  g_assert_false (drawl_json_save (file, "{}", 2, TRUE, NULL, &error));
  assert_refused (error, DRAWL_PLAN_ERROR_WRITE, says);
}

static void
test_not_saved (Place *place, gconstpointer data)
{
  g_autofree char *no_folder = g_build_filename (place->folder, "none", "glass.drawl", NULL);
  g_autofree char *in_a_file = g_build_filename (place->path, "glass.drawl", NULL);
  g_autofree char *circle = g_build_filename (place->folder, "circle", NULL);
  g_autofree char *name = g_strnfill (300, 'a');
  g_autofree char *long_name = g_build_filename (place->folder, name, NULL);

  save (place, "{}", FALSE);
  g_assert_cmpint (symlink ("circle", circle), ==, 0);
  assert_not_saved (no_folder, "the folder does not exist");
  assert_not_saved (in_a_file, "the folder does not exist");
  assert_not_saved (place->folder, "a folder of this name");
  assert_not_saved (circle, "leads back to itself");
  assert_not_saved (long_name, "the name is too long");
  assert_content (place->path, "{}");
  g_assert_cmpuint (count_entries (place->folder), ==, 2);
}

static void
test_not_loaded (Place *place, gconstpointer data)
{
  g_autoptr (GFile) folder = g_file_new_for_path (place->folder);
  g_autoptr (GError) missing = NULL, is_folder = NULL;

  g_assert_null (drawl_json_load (place->file, NULL, &missing));
  assert_refused (missing, DRAWL_PLAN_ERROR_READ, "glass.drawl could not be read");
  g_assert_null (drawl_json_load (folder, NULL, &is_folder));
  g_assert_error (is_folder, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_READ);
}

/* The size alone decides, so that nothing of it is read. */
static void
test_too_many_bytes (Place *place, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  save (place, "{}", FALSE);
  g_assert_cmpint (truncate (place->path, 200 * 1024 * 1024), ==, 0);
  g_assert_null (drawl_json_load (place->file, NULL, &error));
  assert_refused (error, DRAWL_PLAN_ERROR_TOO_LARGE, "209715200 bytes");
}

/* A file that says it has no size, and has no end. */
static void
test_endless (void)
{
  g_autoptr (GFile) file = g_file_new_for_path ("/dev/zero");
  g_autoptr (GError) error = NULL;

  g_assert_null (drawl_json_load (file, NULL, &error));
  g_assert_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_TOO_LARGE);
}

#define ADD_FILE(name, test) g_test_add ("/json/file/" name, Place, NULL, set_up, test, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/json/text", texts, test_text);
  g_test_add_func ("/json/levels", test_levels);
  g_test_add_func ("/json/nul", test_nul_in_text);
  add_rows ("/json/number", numbers, test_number);
  g_test_add_func ("/json/decimals-are-exact", test_decimals_are_exact);
  g_test_add_func ("/json/members", test_members);
  add_rows ("/json/whole", wholes, test_whole);
  add_rows ("/json/money", amounts, test_amount);
  add_rows ("/json/rate", rates, test_rate);
  add_rows ("/json/format", formats, test_format);
  ADD_FILE ("save-and-load", test_save_and_load);
  ADD_FILE ("backup", test_backup);
  ADD_FILE ("mode-stays", test_mode_stays);
  ADD_FILE ("link-stays", test_link_stays);
  ADD_FILE ("not-saved", test_not_saved);
  ADD_FILE ("not-loaded", test_not_loaded);
  ADD_FILE ("too-many-bytes", test_too_many_bytes);
  g_test_add_func ("/json/file/endless", test_endless);
  return g_test_run ();
}
