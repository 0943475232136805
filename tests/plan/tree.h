/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Takes a folder of a test away again, with all that lies in it; a link is removed, not followed.
 */

#include <glib/gstdio.h>

static inline void
remove_tree (const char *path)
{
  g_autoptr (GDir) dir =
      g_file_test (path, G_FILE_TEST_IS_SYMLINK) ? NULL : g_dir_open (path, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *below = g_build_filename (path, name, NULL);
    remove_tree (below);
  }
  g_assert_cmpint (g_remove (path), ==, 0);
}
