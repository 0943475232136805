/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Where the shipped data lies. The answer is found once and never changes while the program runs.
 */

#include "plan/data-dir.h"

#include <stdarg.h>

const char *
drawl_data_dir (void)
{
  static const char *dir;

  if (g_once_init_enter (&dir)) {
    const char *given = g_getenv ("DRAWL_DATA_DIR");
    g_once_init_leave (&dir, g_strdup (given != NULL && *given != '\0' ? given : DRAWL_PKGDATADIR));
  }
  return dir;
}

char *
drawl_data_file (const char *first, ...)
{
  va_list parts;

  va_start (parts, first);
  g_autofree char *below = g_build_filename_valist (first, &parts);
  va_end (parts);
  return g_build_filename (drawl_data_dir (), below, NULL);
}
