/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What stands on the disk and is not what was asked for stays as it is: after each command the
 * folder holds the same names with the same bytes. */

#define _XOPEN_SOURCE 700

#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

#include "rows.h"
#include "run.h"

typedef struct {
  const char *name;
  const char *command; /* in the folder: plan.drawl, soft.drawl and hard.drawl that are the same,
                          table.csv of which no row is good, empty.csv, good.csv */
  int rc;
  const char *says; /* on stderr; on stdout where it is done */
} Row;

#define READ " is the file that is read, and nothing was written"

static const Row rows[] = {
    /* a table without a good row */
    {"import-no-good-row", "import @T/table.csv -o @T/plan.drawl", 1, "nothing was written"},
    {"import-no-good-row-json", "import @T/table.csv -o @T/plan.drawl --json", 1, "\"file\": null"},
    {"import-no-good-row-into", "import @T/table.csv --into @T/plan.drawl -o @T/plan.drawl", 1,
     "nothing was written"},
    {"import-no-good-row-new", "import @T/table.csv -o @T/new.drawl", 1, "nothing was written"},
    {"import-empty", "import @T/empty.csv -o @T/plan.drawl", 1, "nothing was written"},
    /* the output is the input */
    {"import-itself", "import @T/good.csv -o @T/good.csv", 2, READ},
    {"export-itself", "export @T/plan.drawl --as edl -o @T/plan.drawl", 2, READ},
    {"export-itself-csv", "export @T/plan.drawl --as csv -o @T/plan.drawl", 2, READ},
    {"export-soft-link", "export @T/plan.drawl --as edl -o @T/soft.drawl", 2, READ},
    {"export-from-soft-link", "export @T/soft.drawl --as edl -o @T/plan.drawl", 2, READ},
    {"export-hard-link", "export @T/plan.drawl --as edl -o @T/hard.drawl", 2, READ},
    {"export-roundabout", "export @T/plan.drawl --as edl -o @T/../@B/plan.drawl", 2, READ},
    {"sheet-itself", "sheet @T/plan.pdf -o @T/plan.pdf", 2, READ},
    {"draw-itself", "draw @T/plan.pdf --shot 1 -o @T/plan.pdf", 2, READ},
    /* no names of a file */
    {"export-folder", "export @T/plan.drawl --as edl -o @T/x/", 3,
     "/x/: this is the name of a folder; that of a file is expected"},
    {"export-folder-dot", "export @T/plan.drawl --as edl -o @T/x/.", 3, "name of a folder"},
    {"export-onto-folder", "export @T/plan.drawl --as edl -o @T", 3,
     ": a folder of this name stands there\n"},
    {"export-nameless", "export @T/plan.drawl --as edl -o ''", 2,
     "--output: is empty; the name of a file is expected"},
    {"export-onto-device", "export @T/plan.drawl --as edl -o /dev/full", 3,
     "/dev/full could not be saved: what stands there is no plain file\n"},
    {"draw-nameless", "draw @T/plan.drawl --shot 1 -o ''", 2, "--output: is empty"},
    {"sheet-nameless", "sheet @T/plan.drawl -o ''", 2, "--output: is empty"},
    {"import-nameless", "import @T/good.csv -o ''", 2, "--output: is empty"},
    {"import-into-nameless", "import @T/good.csv --into '' -o @T/x", 2, "--into: is empty"},
    {"check-nameless", "check ''", 2, "PLAN: is empty; the name of a file is expected"},
    {"check-body-nameless", "check @T/plan.drawl --body ''", 2, "--body: is empty"},
    {"export-where-nothing-stood", "export @T/plan.drawl --as edl -o @T/no/x", 3,
     "/no/x could not be saved: the folder does not exist\n"},
};

/* ---- A folder ---- */

static void
put (const char *folder, const char *name, const char *content)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_assert_true (g_file_set_contents (path, content, -1, NULL));
}

static char *
make_folder (void)
{
  char *folder = g_dir_make_tmp ("drawl-cli-XXXXXX", NULL);
  g_autofree char *list = g_build_filename (g_getenv ("DRAWL_TEST_DATA"), "list.drawl", NULL);
  g_autofree char *plan = g_build_filename (folder, "plan.drawl", NULL);
  g_autofree char *soft = g_build_filename (folder, "soft.drawl", NULL);
  g_autofree char *hard = g_build_filename (folder, "hard.drawl", NULL);
  g_autofree char *text = NULL;

  g_assert_true (g_file_get_contents (list, &text, NULL, NULL));
  put (folder, "plan.drawl", text);
  put (folder, "plan.pdf", text);
  put (folder, "table.csv", "slate,fps\n1A,nan\n,24\n");
  put (folder, "empty.csv", "");
  put (folder, "good.csv", "slate,fps,action_s\n900,24,1\n");
  g_assert_cmpint (symlink ("plan.drawl", soft), ==, 0);
  g_assert_cmpint (link (plan, hard), ==, 0);
  return folder;
}

static int
by_text (gconstpointer a, gconstpointer b)
{
  return strcmp (*(char *const *)a, *(char *const *)b);
}

/* All names in the folder with what they hold, in order. */
static char *
look (const char *folder)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
  GDir *dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (folder, name, NULL);
    g_autofree char *text = NULL;
    g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
    g_ptr_array_add (lines, g_strdup_printf ("%s: %s", name, text));
  }
  g_dir_close (dir);
  g_ptr_array_sort (lines, by_text);
  g_ptr_array_add (lines, NULL);
  return g_strjoinv ("\n", (char **)lines->pdata);
}

static void
remove_folder (const char *folder)
{
  GDir *dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (folder, name, NULL);
    g_assert_cmpint (g_unlink (path), ==, 0);
  }
  g_dir_close (dir);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

/* ---- Rows ---- */

static void
test_unharmed (gconstpointer data)
{
  const Row *row = data;
  g_autofree char *folder = make_folder ();
  g_autofree char *name = g_path_get_basename (folder);
  g_auto (GStrv) parts = g_strsplit (row->command, "@B", -1);
  g_autofree char *command = g_strjoinv (name, parts);
  g_autofree char *before = look (folder);
  g_auto (Run) run = {0};

  run_init (&run, command, folder);
  if (row->rc > 1) {
    run_assert_refused (&run, row->rc, row->says);
  } else {
    g_assert_cmpint (run.rc, ==, row->rc);
    g_assert_cmpstr (run.err, ==, "");
    g_assert_nonnull (strstr (run.out, row->says));
  }
  g_autofree char *after = look (folder);
  g_assert_cmpstr (after, ==, before);
  remove_folder (folder);
}

/* Shots behind those of a plan, in its place: that is asked for. */
static void
test_into_itself (void)
{
  g_autofree char *folder = make_folder ();
  g_auto (Run) run = {0};

  run_init (&run, "import @T/good.csv --into @T/plan.drawl -o @T/plan.drawl --json", folder);
  g_autoptr (JsonObject) object = run_json (&run, 0);
  g_assert_cmpint (json_object_get_int_member (object, "shots"), ==, 1);
  remove_folder (folder);
}

/* A file that may not grow as long as it has to. */
static void
test_size_limit (void)
{
  g_autofree char *folder = make_folder ();
  g_autofree char *before = look (folder);
  g_autofree char *script = g_strdup_printf (
      "ulimit -f 1; \"$DRAWL_CLI\" export '%s/plan.drawl' --as otio -o '%s/x'", folder, folder);
  g_auto (Run) run = {0};

  run_shell_init (&run, script);
  run_assert_refused (&run, 3, "the file would be larger than this disk or session allows\n");
  g_autofree char *after = look (folder);
  g_assert_cmpstr (after, ==, before);
  remove_folder (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/cli/unharmed", rows, test_unharmed);
  g_test_add_func ("/cli/unharmed/into-itself", test_into_itself);
  g_test_add_func ("/cli/unharmed/size-limit", test_size_limit);
  return g_test_run ();
}
