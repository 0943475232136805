/* SPDX-License-Identifier: GPL-3.0-or-later */

/* save-trouble FOLDER KIND SAYS: tries to save over FOLDER/glass.drawl, which must fail in that
 * kind (no-space, no-permission, read-only) with a message that holds SAYS, and leave the folder
 * exactly as it was. save-trouble.sh makes the folders in which nothing can be saved. With
 * LIMIT_BYTES in the environment no file may grow beyond that. */

#define _XOPEN_SOURCE 700

#include "plan/json-file.h"

#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>

#include "plan/error.h"

#define TEXT_BYTES (4 * 1024 * 1024)

static void
limit_file_size (void)
{
  const char *bytes = g_getenv ("LIMIT_BYTES");
  struct rlimit limit;

  if (bytes == NULL)
    return;
  signal (SIGXFSZ, SIG_IGN);
  limit.rlim_cur = limit.rlim_max = (rlim_t)g_ascii_strtoull (bytes, NULL, 10);
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &limit), ==, 0);
}

static const struct {
  const char *name;
  int code;
} kinds[] = {
    {"no-space", DRAWL_PLAN_ERROR_NO_SPACE},
    {"no-permission", DRAWL_PLAN_ERROR_NO_PERMISSION},
    {"read-only", DRAWL_PLAN_ERROR_READ_ONLY},
};

static int
find_kind (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (g_str_equal (kinds[i].name, name))
      return kinds[i].code;
  g_error ("no such kind: %s", name);
}

static int
compare_lines (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *)a, *(const char *const *)b);
}

/* The names in a folder and the contents of what they name, in one text. */
static char *
take_stock (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
  const char *name;

  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (folder, name, NULL);
    g_autofree char *text = NULL;
    g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
    g_ptr_array_add (lines, g_strdup_printf ("%s: %s", name, text));
  }
  g_ptr_array_sort (lines, compare_lines);
  g_ptr_array_add (lines, NULL);
  return g_strjoinv ("\n", (char **)lines->pdata);
}

int
main (int argc, char **argv)
{
  g_assert_cmpint (argc, ==, 4);
  g_autofree char *path = g_build_filename (argv[1], "glass.drawl", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autofree char *text = g_strnfill (TEXT_BYTES, ' ');
  g_autofree char *before = take_stock (argv[1]);
  g_autoptr (GError) error = NULL;

  limit_file_size ();
  gboolean saved = drawl_json_save (file, text, TEXT_BYTES, TRUE, NULL, &error);
  g_autofree char *after = take_stock (argv[1]);
  if (saved || strstr (error->message, argv[3]) == NULL) {
    g_print ("# %s\n", saved ? "it was saved" : error->message);
    return EXIT_FAILURE;
  }
  g_assert_error (error, DRAWL_PLAN_ERROR, find_kind (argv[2]));
  g_assert_cmpstr (after, ==, before);
  return EXIT_SUCCESS;
}
