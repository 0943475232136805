/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Leftovers of killed saves: only what is surely one goes, and only beside what was just saved. */

#define _XOPEN_SOURCE 700

#include "plan/leftovers.h"

#include <fcntl.h>
#include <gio/gio.h>
#include <sys/stat.h>
#include <unistd.h>

#include "plan/json-file.h"
#include "rows.h"
#include "tree.h"

typedef struct {
  const char *name;
  const char *file;
  gint64 age_s; /* against the file that is saved */
  gboolean link;
  gboolean goes;
} Row;

static const Row rows[] = {
    {"old", ".drawl-A1b2C3", 4000, FALSE, TRUE},
    {"very-old", ".drawl-ZZZZZZ", 900000, FALSE, TRUE},
    {"may-be-under-way", ".drawl-A1b2C3", 3000, FALSE, FALSE},
    {"from-the-future", ".drawl-A1b2C3", -4000, FALSE, FALSE},
    {"longer-name", ".drawl-A1b2C3D", 4000, FALSE, FALSE},
    {"shorter-name", ".drawl-A1b2C", 4000, FALSE, FALSE},
    {"other-letters", ".drawl-A1.2C3", 4000, FALSE, FALSE},
    {"not-hidden", "drawl-A1b2C3x", 4000, FALSE, FALSE},
    {"the-backup", "glass.drawl~", 4000, FALSE, FALSE},
    {"a-link", ".drawl-A1b2C3", 4000, TRUE, FALSE},
};

static void
set_age (const char *path, gint64 age_s)
{
  gint64 at = g_get_real_time () / G_USEC_PER_SEC - age_s;
  struct timespec times[2] = {{(time_t)at, 0}, {(time_t)at, 0}};

  g_assert_cmpint (utimensat (AT_FDCWD, path, times, AT_SYMLINK_NOFOLLOW), ==, 0);
}

static void
test_row (gconstpointer data)
{
  const Row *row = data;
  g_autofree char *folder = g_dir_make_tmp ("drawl-leftovers-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "glass.drawl", NULL);
  g_autofree char *left = g_build_filename (folder, row->file, NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  struct stat found;

  if (row->link)
    g_assert_cmpint (symlink ("glass.drawl", left), ==, 0);
  else
    g_assert_true (g_file_set_contents (left, "{}", -1, NULL));
  set_age (left, row->age_s);
  g_assert_true (drawl_json_save (file, "{\"a\":1}", 7, FALSE, NULL, NULL));
  g_assert_cmpint (lstat (left, &found), ==, 0);
  g_assert_true (drawl_json_save (file, "{\"a\":1}", 7, TRUE, NULL, NULL));
  g_assert_cmpint (lstat (left, &found) == 0, ==, !row->goes);
  g_assert_cmpint (lstat (path, &found), ==, 0);
  remove_tree (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/leftovers", rows, test_row);
  return g_test_run ();
}
