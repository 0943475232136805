/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A disk's refusals: one row for each that happens on a set; what is not in the table is left to
 * the system's own words. */

#include "plan/disk-error.h"

#include <errno.h>

#include "core/text.h"

static const struct {
  int code;
  DrawlPlanError error;
  const char *words;
} reasons[] = {
    {ENOSPC, DRAWL_PLAN_ERROR_NO_SPACE, N_ ("the disk is full")},
    {EDQUOT, DRAWL_PLAN_ERROR_NO_SPACE, N_ ("there is no room left for your files on this disk")},
    {EFBIG, DRAWL_PLAN_ERROR_NO_SPACE,
     N_ ("the file would be larger than this disk or session allows")},
    {EROFS, DRAWL_PLAN_ERROR_READ_ONLY, N_ ("the disk can only be read")},
    {EACCES, DRAWL_PLAN_ERROR_NO_PERMISSION, N_ ("you are not allowed to write there")},
    {EPERM, DRAWL_PLAN_ERROR_NO_PERMISSION, N_ ("you are not allowed to write there")},
    {ENOENT, DRAWL_PLAN_ERROR_NO_FOLDER, N_ ("the folder does not exist")},
    {ENOTDIR, DRAWL_PLAN_ERROR_NO_FOLDER, N_ ("the folder does not exist")},
    {EISDIR, DRAWL_PLAN_ERROR_WRITE, N_ ("a folder of this name stands there")},
    {ELOOP, DRAWL_PLAN_ERROR_WRITE, N_ ("the name is a link that leads back to itself")},
    {ENAMETOOLONG, DRAWL_PLAN_ERROR_WRITE, N_ ("the name is too long")},
};

const char *
drawl_disk_error_words (int code, DrawlPlanError *error)
{
  for (guint i = 0; i < G_N_ELEMENTS (reasons); i++)
    if (reasons[i].code == code) {
      *error = reasons[i].error;
      return _ (reasons[i].words);
    }
  *error = DRAWL_PLAN_ERROR_WRITE;
  return g_strerror (code);
}
