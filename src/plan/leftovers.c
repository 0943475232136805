/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Leftovers of killed saves. Two stamps of one disk are compared, so that a server with another
 * clock misleads nobody. Only plain files of this user, under exactly the name that a save gives
 * them, are touched. */

#define _XOPEN_SOURCE 700

#include "plan/leftovers.h"

#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#define OLD_S (60 * 60)

static gboolean
is_aside (const char *name)
{
  if (strlen (name) != strlen (DRAWL_ASIDE_TEMPLATE) ||
      !g_str_has_prefix (name, DRAWL_ASIDE_PREFIX))
    return FALSE;
  for (const char *at = name + strlen (DRAWL_ASIDE_PREFIX); *at != '\0'; at++)
    if (!g_ascii_isalnum (*at))
      return FALSE;
  return TRUE;
}

static gboolean
is_left_over (const char *path, const struct stat *saved)
{
  struct stat found;

  return lstat (path, &found) == 0 && S_ISREG (found.st_mode) && found.st_uid == geteuid () &&
         found.st_nlink == 1 && saved->st_mtime - found.st_mtime > OLD_S;
}

void
drawl_leftovers_clear (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  struct stat saved;
  const char *name;

  if (dir == NULL || stat (path, &saved) != 0)
    return;
  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *found = is_aside (name) ? g_build_filename (folder, name, NULL) : NULL;
    if (found != NULL && is_left_over (found, &saved))
      unlink (found);
  }
}
