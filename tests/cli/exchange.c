/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Plans out of the program and tables into it: what is said, what is written, and that a table that
 * was written comes back to the byte. */

#include <glib/gstdio.h>
#include <string.h>

#include "rows.h"
#include "run.h"

/* ---- A folder for one test ---- */

static char *
make_scratch (void)
{
  g_autoptr (GError) error = NULL;
  char *scratch = g_dir_make_tmp ("drawl-cli-XXXXXX", &error);

  g_assert_no_error (error);
  return scratch;
}

/* Removes the folder with all that is in it. */
static void
remove_scratch (const char *scratch)
{
  GDir *dir = g_dir_open (scratch, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (scratch, name, NULL);
    g_assert_cmpint (g_unlink (path), ==, 0);
  }
  g_dir_close (dir);
  g_assert_cmpint (g_rmdir (scratch), ==, 0);
}

static char *
content_of (const char *scratch, const char *name)
{
  g_autofree char *path = g_build_filename (scratch, name, NULL);
  g_autoptr (GError) error = NULL;
  char *content = NULL;

  g_file_get_contents (path, &content, NULL, &error);
  g_assert_no_error (error);
  return content;
}

static void
write_content (const char *scratch, const char *name, const char *content)
{
  g_autofree char *path = g_build_filename (scratch, name, NULL);
  g_autoptr (GError) error = NULL;

  g_file_set_contents (path, content, -1, &error);
  g_assert_no_error (error);
}

/* ---- Import ---- */

typedef struct {
  const char *name;
  const char *table;
  const char *options;
  int rc;
  const char *shown; /* taken in; rejected lines; bodies; ignored headings; warnings */
} Import;

static const Import imports[] = {
    {"all-good", "slate,capture_rate,action_s\n1,240,0.45\n2,24,1\n", "", 0, "2;;;;"},
    {"one-rejected", "slate,fps,action_s\n1,0,0.45\n2,24,1\n", "", 1, "1; 2;;;"},
    {"all-rejected", "slate,fps\n,24\n", "", 1,
     "0; 2;;; no row could be taken in, so nothing was written"},
    {"nothing", "", "", 1, "0;;;; no row could be taken in, so nothing was written"},
    {"decimal-commas", "Slate;FPS;Length\n1;59,94;4,5\n", "", 0, "1;;;;"},
    {"into-a-plan", "slate,body,action_s\n2A,A,1\n10,A,1\n", "--into @D/list.drawl", 1, "1; 2;;;"},
    {"body-of-the-plan", "slate,camera,action_s\n10,A,1\n11,C,1\n", "--into @D/list.drawl", 1,
     "1; 3;;;"},
    {"body-brought-along", "slate,body,profile,action_s\n10,B,ferrule,1\n", "", 0,
     "1;; B=ferrule;;"},
    {"unknown-headings", "slate,Lens,action_s,Crane\n10,50,1,no\n", "", 0, "1;;; Lens Crane;"},
    {"no-headings", "10\t1\tFalls\t240\t24\t0.45\n", "", 0, "1;;;; the first row has no known"},
    {"nothing-about-time", "slate,fps\n10,240\n11,24\n", "", 0, "2;;;; 2 shots tell neither"},
    {"latin-1",
     "slate,action,action_s\n1,Gr\xfc\xdf"
     "e,1\n",
     "", 0, "1;;;; the table is not UTF-8"},
};

static void
append_texts (GString *out, JsonObject *object, const char *key)
{
  JsonArray *texts = json_object_get_array_member (object, key);

  for (guint i = 0; i < json_array_get_length (texts); i++)
    g_string_append_printf (out, " %s", json_array_get_string_element (texts, i));
}

static char *
show (JsonObject *object)
{
  JsonArray *rejected = json_object_get_array_member (object, "rejected");
  JsonArray *bodies = json_object_get_array_member (object, "bodies");
  GString *out = g_string_new (NULL);

  g_string_append_printf (out, "%d;", (int)json_object_get_int_member (object, "shots"));
  for (guint i = 0; i < json_array_get_length (rejected); i++) {
    JsonObject *row = json_array_get_object_element (rejected, i);
    g_assert_cmpstr (json_object_get_string_member (row, "reason"), !=, "");
    g_string_append_printf (out, " %d", (int)json_object_get_int_member (row, "line"));
  }
  g_string_append_c (out, ';');
  for (guint i = 0; i < json_array_get_length (bodies); i++) {
    JsonObject *body = json_array_get_object_element (bodies, i);
    g_string_append_printf (out, " %s=%s", json_object_get_string_member (body, "id"),
                            json_object_get_string_member (body, "profile"));
  }
  g_string_append_c (out, ';');
  append_texts (out, object, "ignored");
  g_string_append_c (out, ';');
  append_texts (out, object, "warnings");
  return g_string_free (out, FALSE);
}

/* 0 where there is no plan. */
static guint
shots_in (const char *scratch)
{
  g_autofree char *path = g_build_filename (scratch, "out.drawl", NULL);
  if (!g_file_test (path, G_FILE_TEST_EXISTS))
    return 0;
  g_autofree char *text = content_of (scratch, "out.drawl");
  g_autoptr (JsonNode) node = json_from_string (text, NULL);

  g_assert_nonnull (node);
  return json_array_get_length (
      json_object_get_array_member (json_node_get_object (node), "shots"));
}

static void
test_import (gconstpointer data)
{
  const Import *row = data;
  g_autofree char *scratch = make_scratch ();
  g_autofree char *command =
      g_strdup_printf ("import @T/in.csv -o @T/out.drawl --json %s", row->options);
  g_auto (Run) run = {0};

  write_content (scratch, "in.csv", row->table);
  run_init (&run, command, scratch);
  g_autoptr (JsonObject) object = run_json (&run, row->rc);
  g_autofree char *shown = show (object);
  g_test_message ("%s", shown);
  g_assert_true (g_str_has_prefix (shown, row->shown));
  guint before = strstr (row->options, "list.drawl") != NULL ? 6 : 0;
  g_assert_cmpint (shots_in (scratch), ==, before + json_object_get_int_member (object, "shots"));
  remove_scratch (scratch);
}

static void
test_import_text (void)
{
  g_autofree char *scratch = make_scratch ();
  g_auto (Run) run = {0};

  run_init (&run, "import @D/shots.csv --into @D/list.drawl -o @T/out.drawl", scratch);
  g_assert_cmpstr (run.err, ==, "");
  g_assert_cmpint (run.rc, ==, 1);
  const char *rest = strchr (run.out, '\n');
  g_assert_cmpstr (rest, ==,
                   "\nshots taken in      2\n"
                   "rejected, line 4    “Slate”: the plan has the slate “2A” already\n"
                   "rejected, line 5    “FPS”: a rate of 0 is too low; a rate above 0 is expected\n"
                   "body brought along  B (Ferrule)\n"
                   "heading not known   Lens\n"
                   "warning             1 shot tells neither action nor screen time; 1 s of action "
                   "is assumed\n");
  remove_scratch (scratch);
}

/* What the plan was is kept beside it. */
static void
test_import_backup (void)
{
  g_autofree char *scratch = make_scratch ();
  g_auto (Run) run = {0}, again = {0};

  write_content (scratch, "in.csv", "slate,action_s\n1,1\n");
  write_content (scratch, "more.csv", "slate,action_s\n2,1\n");
  run_init (&run, "import @T/in.csv -o @T/out.drawl", scratch);
  g_assert_cmpint (run.rc, ==, 0);
  g_autofree char *before = content_of (scratch, "out.drawl");
  run_init (&again, "import @T/more.csv --into @T/out.drawl -o @T/out.drawl", scratch);
  g_assert_cmpint (again.rc, ==, 0);
  g_autofree char *backup = content_of (scratch, "out.drawl~");
  g_assert_cmpstr (backup, ==, before);
  g_assert_cmpuint (shots_in (scratch), ==, 2);
  remove_scratch (scratch);
}

/* A plan that cannot be read, or a table that is none, leaves nothing behind. */
static void
test_import_refused (void)
{
  g_autofree char *scratch = make_scratch ();
  g_autofree char *out = g_build_filename (scratch, "out.drawl", NULL);
  g_auto (Run) run = {0};

  write_content (scratch, "in.csv", "slate,notes\n1,\"never closed\n");
  run_init (&run, "import @T/in.csv -o @T/out.drawl", scratch);
  run_assert_refused (&run, 3, "in.csv: line 2: a quote is opened and never closed");
  g_assert_false (g_file_test (out, G_FILE_TEST_EXISTS));
  remove_scratch (scratch);
}

/* ---- Export ---- */

typedef struct {
  const char *name;
  const char *options;
  const char *file;
  const char *as;
  const char *begins;
} Export;

#define TABLE_HEAD "slate,scene,action,capture_rate,playback_rate,action_s,screen_s,"

static const Export exports[] = {
    {"otio", "--as otio", "x", "otio", "{\n \"OTIO_SCHEMA\": \"Timeline.1\","},
    {"edl", "--as edl", "x", "edl", "TITLE: Trial list\r\nFCM: NON-DROP FRAME\r\n"},
    {"csv", "--as=csv", "x.txt", "csv", TABLE_HEAD},
    {"otio-by-ending", "", "x.otio", "otio", "{\n \"OTIO_SCHEMA\": \"Timeline.1\","},
    {"edl-by-ending", "", "x.EDL", "edl", "TITLE: Trial list\r\n"},
    {"csv-by-ending", "", "x.csv", "csv", TABLE_HEAD},
    {"format-before-ending", "--as csv", "x.otio", "csv", TABLE_HEAD},
};

static void
test_export (gconstpointer data)
{
  const Export *row = data;
  g_autofree char *scratch = make_scratch ();
  g_autofree char *command =
      g_strdup_printf ("export @D/list.drawl %s -o @T/%s --json", row->options, row->file);
  g_autofree char *path = g_build_filename (scratch, row->file, NULL);
  g_auto (Run) run = {0};

  run_init (&run, command, scratch);
  g_autoptr (JsonObject) object = run_json (&run, 0);
  g_assert_cmpstr (json_object_get_string_member (object, "file"), ==, path);
  g_assert_cmpstr (json_object_get_string_member (object, "as"), ==, row->as);
  g_assert_cmpint (json_object_get_int_member (object, "shots"), ==, 6);
  g_autofree char *content = content_of (scratch, row->file);
  g_assert_true (g_str_has_prefix (content, row->begins));
  remove_scratch (scratch);
}

/* -oFILE, and -- before what is no option. */
static void
test_export_words (void)
{
  g_autofree char *scratch = make_scratch ();
  g_auto (Run) run = {0};

  run_init (&run, "-- export -o@T/x.edl --json -- @D/list.drawl", scratch);
  g_autoptr (JsonObject) object = run_json (&run, 0);
  g_assert_cmpstr (json_object_get_string_member (object, "as"), ==, "edl");
  g_autofree char *content = content_of (scratch, "x.edl");
  g_assert_true (g_str_has_prefix (content, "TITLE: "));
  remove_scratch (scratch);
}

static void
test_export_warning (void)
{
  g_autofree char *scratch = make_scratch ();
  g_auto (Run) run = {0};

  run_init (&run, "export @D/list.drawl --as edl -o @T/x --json", scratch);
  g_autoptr (JsonObject) object = run_json (&run, 0);
  JsonArray *warnings = json_object_get_array_member (object, "warnings");
  g_assert_cmpuint (json_array_get_length (warnings), ==, 1);
  g_assert_nonnull (strstr (json_array_get_string_element (warnings, 0),
                            "1 shot is to play at another rate than the plan's 24"));
  remove_scratch (scratch);
}

/* Out, in and out again: the same bytes. */
static void
test_round_trip (void)
{
  g_autofree char *scratch = make_scratch ();
  g_auto (Run) out = {0}, in = {0}, again = {0};

  run_init (&out, "export @D/list.drawl -o @T/1.csv", scratch);
  g_assert_cmpint (out.rc, ==, 0);
  /* The body of the list is not shipped, so the plan that takes the shots has to have it. */
  g_autofree char *list = g_build_filename (g_getenv ("DRAWL_TEST_DATA"), "list.drawl", NULL);
  g_autofree char *text = NULL;
  g_assert_true (g_file_get_contents (list, &text, NULL, NULL));
  g_autoptr (JsonNode) node = json_from_string (text, NULL);
  json_object_set_array_member (json_node_get_object (node), "shots", json_array_new ());
  g_autofree char *bare = json_to_string (node, TRUE);
  write_content (scratch, "bare.drawl", bare);

  run_init (&in, "import @T/1.csv --into @T/bare.drawl -o @T/2.drawl", scratch);
  g_assert_cmpint (in.rc, ==, 0);
  run_init (&again, "export @T/2.drawl -o @T/2.csv", scratch);
  g_assert_cmpint (again.rc, ==, 0);
  g_autofree char *first = content_of (scratch, "1.csv"), *second = content_of (scratch, "2.csv");
  g_assert_cmpstr (second, ==, first);
  remove_scratch (scratch);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/cli/import", imports, test_import);
  g_test_add_func ("/cli/import/text", test_import_text);
  g_test_add_func ("/cli/import/backup", test_import_backup);
  g_test_add_func ("/cli/import/refused", test_import_refused);
  add_rows ("/cli/export", exports, test_export);
  g_test_add_func ("/cli/export/words", test_export_words);
  g_test_add_func ("/cli/export/warning", test_export_warning);
  g_test_add_func ("/cli/export/round-trip", test_round_trip);
  return g_test_run ();
}
