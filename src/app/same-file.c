/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Files by where they are, not by how they are spelled. */

#define _XOPEN_SOURCE 700

#include "app/same-file.h"

#include <stdlib.h>

/* Links followed; a file that is not there is where its name says. New string, or NULL. */
static char *
real_path (GFile *file)
{
  const char *path = g_file_peek_path (file);
  char *real = path != NULL ? realpath (path, NULL) : NULL;
  char *copy = g_strdup (real != NULL ? real : path);

  free (real);
  return copy;
}

gboolean
drawl_same_file (GFile *a, GFile *b)
{
  if (g_file_equal (a, b))
    return TRUE;
  g_autofree char *one = real_path (a);
  g_autofree char *other = real_path (b);
  return one != NULL && g_strcmp0 (one, other) == 0;
}
