/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Files of a command line. Two names are one file when device and inode say so: a link of either
 * kind, or another way to the same folder, is seen through. */

#include "cli/file-argument.h"

#include <glib/gstdio.h>

#include "cli/error.h"
#include "core/text.h"
#include "plan/json-file.h"

GFile *
drawl_file_argument (const char *given)
{
  GFile *file = g_file_new_for_commandline_arg (given);

  drawl_json_file_set_given (file, given);
  return file;
}

static gboolean
same_file (const char *path, const char *other)
{
  GStatBuf here, there;

  return g_stat (path, &here) == 0 && g_stat (other, &there) == 0 && here.st_dev == there.st_dev &&
         here.st_ino == there.st_ino;
}

/* "x/", "x/." and "x/.." stand for folders; GIO would make files of them. */
static gboolean
names_a_folder (const char *path)
{
  static const char *const endings[] = {"/", "/.", "/.."};

  for (gsize i = 0; i < G_N_ELEMENTS (endings); i++)
    if (g_str_has_suffix (path, endings[i]))
      return TRUE;
  return FALSE;
}

gboolean
drawl_file_argument_input (const DrawlCall *call, guint option, const char **path, GError **error)
{
  if (!drawl_call_text (call, option, path, error))
    return FALSE;
  return **path != '\0' ||
         drawl_call_refuse (call, option, _ ("is empty; the name of a file is expected"), error);
}

gboolean
drawl_file_argument_output (const DrawlCall *call, guint option, const char **path, GError **error)
{
  if (!drawl_file_argument_input (call, option, path, error))
    return FALSE;
  g_autofree char *shown = g_filename_display_name (*path);
  if (names_a_folder (*path))
    return drawl_cli_refuse (error, DRAWL_CLI_ERROR_FILE, shown,
                             _ ("this is the name of a folder; that of a file is expected"));
  if (!same_file (*path, call->files[0]))
    return TRUE;
  g_autofree char *message = g_strdup_printf (
      _ ("%s is the file that is read, and nothing was written; another file is expected"), shown);
  return drawl_call_refuse (call, option, message, error);
}
