/* SPDX-License-Identifier: GPL-3.0-or-later */

/* JSON from and to disk: what is refused before it is parsed, where and in which words; and a save
 * that never leaves half a file. */

#define _XOPEN_SOURCE 700

#include "plan/json-file.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "plan/error.h"
#include "plan/json-keys.h"
#include "plan/json-scan.h"
#include "refused.h"
#include "rows.h"

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
    {"key-twice", "{\"a\":1,\n \"b\":2, \"a\":1}", DRAWL_PLAN_ERROR_SYNTAX,
     "line 2, column 9: the key “a” stands in this object a second time; it is expected once"},
    {"key-twice-deep", "{\"a\":[{\"b\":1},{\"b\":1,\"b\":2}]}", DRAWL_PLAN_ERROR_SYNTAX,
     "column 22: the key “b”"},
    {"key-twice-by-escape", "{\"shots\":1,\"sh\\u006fts\":2}", DRAWL_PLAN_ERROR_SYNTAX, "“shots”"},
    {"key-twice-empty", "{\"\":1,\"\":2}", DRAWL_PLAN_ERROR_SYNTAX, "a second time"},
    {"key-twice-after-an-object", "{\"a\":{\"c\":1},\"a\":1}", DRAWL_PLAN_ERROR_SYNTAX, "“a”"},
    {"key-in-another-object", "{\"a\":{\"a\":{\"a\":1},\"b\":[{\"a\":1},{\"a\":2}]}}", -1, NULL},
    {"keys-of-the-same-signs", "{\"ab\":1,\"ba\":2,\"abba\":3,\"a\":4,\"b\":5,\"AB\":6}", -1, NULL},
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

/* However many keys an object has, the first of them are not taken again. */
static void
test_many_keys (void)
{
  g_autoptr (GString) text = g_string_new ("{");
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < 3 * DRAWL_JSON_KEYS_MAX; i++)
    g_string_append_printf (text, "\"key %u\": 1,\n", i);
  g_autofree char *good = g_strconcat (text->str, "\"last\": 1}", NULL);
  g_autofree char *bad = g_strconcat (text->str, "\"key 63\": 1}", NULL);
  g_assert_true (drawl_json_scan (good, strlen (good), "glass.drawl", &error));
  g_assert_no_error (error);
  g_assert_false (drawl_json_scan (bad, strlen (bad), "glass.drawl", &error));
  assert_refused (error, DRAWL_PLAN_ERROR_SYNTAX, "line 193, column 1: the key “key 63”");
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
assert_not_saved (const char *path, int code, const char *says)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;

  g_assert_false (drawl_json_save (file, "{}", 2, TRUE, NULL, &error));
  assert_refused (error, code, says);
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
  assert_not_saved (no_folder, DRAWL_PLAN_ERROR_NO_FOLDER, "the folder does not exist");
  assert_not_saved (in_a_file, DRAWL_PLAN_ERROR_NO_FOLDER, "the folder does not exist");
  assert_not_saved (place->folder, DRAWL_PLAN_ERROR_WRITE, "a folder of this name");
  assert_not_saved (circle, DRAWL_PLAN_ERROR_WRITE, "leads back to itself");
  assert_not_saved (long_name, DRAWL_PLAN_ERROR_WRITE, "the name is too long");
  assert_content (place->path, "{}");
  g_assert_cmpuint (count_entries (place->folder), ==, 2);
}

/* What stands there is of another time than what was read here. */
static void
write_as_another (Place *place, const char *text)
{
  struct timespec times[2] = {{1000000000, 0}, {1000000000, 0}};
  g_autoptr (GError) error = NULL;

  g_file_set_contents (place->path, text, -1, &error);
  g_assert_no_error (error);
  g_assert_cmpint (utimensat (AT_FDCWD, place->path, times, 0), ==, 0);
}

static gboolean
save_unless_changed (Place *place, const char *text, const char *expected, char **etag,
                     GError **error)
{
  return drawl_json_save_unless_changed (place->file, text, strlen (text), TRUE, expected, etag,
                                         error);
}

static void
test_changed (Place *place, gconstpointer data)
{
  g_autofree char *backup = g_strconcat (place->path, "~", NULL);
  g_autofree char *first = NULL, *second = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (save_unless_changed (place, "{}", NULL, &first, NULL));
  g_assert_true (save_unless_changed (place, "{\"b\":2}", first, &second, NULL));
  write_as_another (place, "{\"theirs\":1}");
  g_assert_false (save_unless_changed (place, "{\"c\":3}", second, NULL, &error));
  assert_refused (error, DRAWL_PLAN_ERROR_CHANGED, "glass.drawl since it was last read here");
  assert_content (place->path, "{\"theirs\":1}");
  assert_content (backup, "{}");
  g_assert_cmpuint (count_entries (place->folder), ==, 2);

  /* Told to, it overwrites; and theirs is the backup. */
  g_assert_true (save_unless_changed (place, "{\"c\":3}", NULL, NULL, NULL));
  assert_content (place->path, "{\"c\":3}");
  assert_content (backup, "{\"theirs\":1}");
}

static void
test_gone (Place *place, gconstpointer data)
{
  g_autofree char *etag = NULL;

  g_assert_true (save_unless_changed (place, "{}", NULL, &etag, NULL));
  g_assert_cmpint (g_unlink (place->path), ==, 0);
  g_assert_true (save_unless_changed (place, "{\"b\":2}", etag, NULL, NULL));
  assert_content (place->path, "{\"b\":2}");
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
  g_test_add_func ("/json/many-keys", test_many_keys);
  g_test_add_func ("/json/nul", test_nul_in_text);
  ADD_FILE ("save-and-load", test_save_and_load);
  ADD_FILE ("backup", test_backup);
  ADD_FILE ("mode-stays", test_mode_stays);
  ADD_FILE ("link-stays", test_link_stays);
  ADD_FILE ("not-saved", test_not_saved);
  ADD_FILE ("changed", test_changed);
  ADD_FILE ("gone", test_gone);
  ADD_FILE ("not-loaded", test_not_loaded);
  ADD_FILE ("too-many-bytes", test_too_many_bytes);
  g_test_add_func ("/json/file/endless", test_endless);
  return g_test_run ();
}
