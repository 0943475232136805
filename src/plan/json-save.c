/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Saving: the new text is written aside, synced, and only then takes the old one's name. At every
 * moment the name stands for a whole file, old or new. */

#define _XOPEN_SOURCE 700

#include "plan/json-file.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <sys/stat.h>
#include <unistd.h>

#include "core/text.h"
#include "plan/disk-error.h"
#include "plan/error.h"
#include "plan/leftovers.h"

#define LINKS_MAX 40
#define NEW_FILE_MODE 0666

/* What is to be written, and over what. */
typedef struct {
  const char *shown; /* its name in messages */
  const char *text;
  gsize length;
  gboolean backup;
  const char *expected_etag; /* or NULL */
  char *etag;                /* taken from what was written */
} Saving;

/* What GIO says of files elsewhere. */
static const struct {
  GIOErrorEnum code;
  DrawlPlanError error;
} elsewhere[] = {
    {G_IO_ERROR_NO_SPACE, DRAWL_PLAN_ERROR_NO_SPACE},
    {G_IO_ERROR_PERMISSION_DENIED, DRAWL_PLAN_ERROR_NO_PERMISSION},
    {G_IO_ERROR_READ_ONLY, DRAWL_PLAN_ERROR_READ_ONLY},
    {G_IO_ERROR_NOT_FOUND, DRAWL_PLAN_ERROR_NO_FOLDER},
    {G_IO_ERROR_NOT_DIRECTORY, DRAWL_PLAN_ERROR_NO_FOLDER},
};

/* @stood: a file stood there, and still does as it was. */
static gboolean
fail_words (const char *name, const char *words, DrawlPlanError domain_code, gboolean stood,
            GError **error)
{
  g_set_error (error, DRAWL_PLAN_ERROR, (int)domain_code,
               stood ? _ ("%s could not be saved: %s; what stood there before is unharmed")
                     : _ ("%s could not be saved: %s"),
               name, words);
  return FALSE;
}

static gboolean
fail (const char *name, int code, gboolean stood, GError **error)
{
  DrawlPlanError domain_code;
  const char *words = drawl_disk_error_words (code, &domain_code);

  return fail_words (name, words, domain_code, stood, error);
}

static gboolean
fail_changed (GFile *file, GError **error)
{
  g_autofree char *name = drawl_json_file_name (file);
  g_set_error (
      error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_CHANGED,
      _ ("another program has changed %s since it was last read here, so it was not saved"), name);
  return FALSE;
}

/* The path that @path stands for, symbolic links followed even to a file that is not there yet;
 * NULL with errno ELOOP. New string. */
static char *
follow_links (const char *path)
{
  g_autofree char *at = g_strdup (path);

  for (guint i = 0; i < LINKS_MAX; i++) {
    g_autofree char *link = g_file_read_link (at, NULL);
    if (link == NULL)
      return g_steal_pointer (&at);
    g_autofree char *folder = g_path_get_dirname (at);
    g_free (at);
    at =
        g_path_is_absolute (link) ? g_steal_pointer (&link) : g_build_filename (folder, link, NULL);
  }
  errno = ELOOP;
  return NULL;
}

static int
write_all (int fd, const char *text, gsize length)
{
  while (length > 0) {
    gssize n = write (fd, text, length);
    if (n < 0 && errno == EINTR)
      continue;
    if (n < 0)
      return errno;
    text += n;
    length -= (gsize)n;
  }
  return 0;
}

/* Gives the new file the mode of the old, and its owner where that is allowed: without that right
 * the file is the saver's, as any new file would be. */
static int
keep_mode (int fd, const struct stat *old)
{
  if (fchown (fd, old->st_uid, old->st_gid) != 0)
    g_debug ("owner not kept: %s", g_strerror (errno));
  return fchmod (fd, old->st_mode & 07777) == 0 ? 0 : errno;
}

static int
sync_folder (const char *folder)
{
  int fd = open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (fd < 0)
    return 0; /* a folder that can be written but not listed */

  int code = fsync (fd) == 0 || errno == EINVAL ? 0 : errno;
  close (fd);
  return code;
}

/* Fills the file open at @fd and closes it; an errno or 0. */
static int
fill_and_close (int fd, const struct stat *old, const char *text, gsize length)
{
  int code = old == NULL ? 0 : keep_mode (fd, old);

  if (code == 0)
    code = write_all (fd, text, length);
  if (code == 0 && fsync (fd) != 0)
    code = errno;
  if (close (fd) != 0 && code == 0)
    code = errno;
  return code;
}

/* Writes @text to a new file beside @path, synced, and sets @aside to its name; an errno or 0. */
static int
write_aside (const char *path, const struct stat *old, const char *text, gsize length, char **aside)
{
  g_autofree char *folder = g_path_get_dirname (path);
  g_autofree char *name = g_build_filename (folder, DRAWL_ASIDE_TEMPLATE, NULL);
  int fd = g_mkstemp_full (name, O_RDWR | O_CLOEXEC, NEW_FILE_MODE);
  if (fd < 0)
    return errno;

  int code = fill_and_close (fd, old, text, length);
  if (code != 0)
    unlink (name);
  else
    *aside = g_steal_pointer (&name);
  return code;
}

/* Gives the file at @aside the name @path; an errno or 0. */
static int
take_place (const char *aside, const char *path)
{
  if (rename (aside, path) == 0)
    return 0;
  int code = errno;
  unlink (aside);
  return code;
}

/* Makes the last change of names last. */
static gboolean
sync_name (const char *path, GError **error)
{
  g_autofree char *folder = g_path_get_dirname (path);
  int code = sync_folder (folder);

  if (code == 0)
    return TRUE;
  g_autofree char *name = g_filename_display_name (path);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_WRITE,
               _ ("%s was written, but the disk does not confirm that it will last: %s"), name,
               g_strerror (code));
  return FALSE;
}

static char *
find_etag (GFile *file)
{
  g_autoptr (GFileInfo) info =
      g_file_query_info (file, G_FILE_ATTRIBUTE_ETAG_VALUE, G_FILE_QUERY_INFO_NONE, NULL, NULL);
  return info == NULL ? NULL : g_strdup (g_file_info_get_etag (info));
}

static char *
find_etag_at (const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  return find_etag (file);
}

static gboolean
check_unchanged (const char *path, const char *expected_etag, GError **error)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autofree char *found = expected_etag != NULL ? find_etag (file) : NULL;

  if (found == NULL || g_str_equal (found, expected_etag))
    return TRUE;
  return fail_changed (file, error);
}

/* Keeps what stands at @path as "PATH~". */
static gboolean
back_up (const char *path, const struct stat *old, GError **error)
{
  g_autofree char *name = NULL;
  g_autofree char *backup = g_strconcat (path, "~", NULL);
  g_autofree char *aside = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GError) local = NULL;
  gsize length;

  if (!g_file_get_contents (path, &text, &length, &local)) {
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_WRITE,
                 _ ("no backup could be made, so nothing was saved: %s"), local->message);
    return FALSE;
  }
  int code = write_aside (backup, old, text, length, &aside);
  if (code == 0)
    code = take_place (aside, backup);
  name = g_filename_display_name (backup);
  return code == 0 ? sync_name (backup, error) : fail (name, code, TRUE, error);
}

/* The new text is safe on the disk before the backup gives way to it, and the backup before the old
 * text does. Whether someone else has written is asked as late as can be: before the backup, since
 * that must not take in what they wrote, and again before the old text goes. */
static gboolean
replace (const char *path, const struct stat *old, Saving *saving, GError **error)
{
  g_autofree char *aside = NULL;
  int code = write_aside (path, old, saving->text, saving->length, &aside);

  if (code != 0)
    return fail (saving->shown, code, old != NULL, error);
  saving->etag = find_etag_at (aside);
  if (!check_unchanged (path, saving->expected_etag, error) ||
      (old != NULL && saving->backup && !back_up (path, old, error)) ||
      !check_unchanged (path, saving->expected_etag, error)) {
    unlink (aside);
    return FALSE;
  }
  code = take_place (aside, path);
  return code == 0 ? sync_name (path, error) : fail (saving->shown, code, old != NULL, error);
}

static gboolean
save_local (const char *path, Saving *saving, GError **error)
{
  g_autofree char *target = follow_links (path);
  if (target == NULL)
    return fail (saving->shown, errno, FALSE, error);

  struct stat old;
  gboolean stands = stat (target, &old) == 0;
  if (!stands && errno != ENOENT)
    return fail (saving->shown, errno, FALSE, error);
  if (stands && S_ISDIR (old.st_mode))
    return fail (saving->shown, EISDIR, FALSE, error);
  if (stands && !S_ISREG (old.st_mode))
    return fail_words (saving->shown, _ ("what stands there is no plain file"),
                       DRAWL_PLAN_ERROR_WRITE, FALSE, error);
  /* A file that is marked read-only is so on purpose, even where its folder would let it go. */
  if (stands && access (target, W_OK) != 0)
    return fail (saving->shown, errno, TRUE, error);
  if (!replace (target, stands ? &old : NULL, saving, error))
    return FALSE;
  if (saving->backup) /* once a file, rather than at every save */
    drawl_leftovers_clear (target);
  return TRUE;
}

static gboolean
save_elsewhere (GFile *file, Saving *saving, GError **error)
{
  g_autoptr (GError) local = NULL;
  DrawlPlanError code = DRAWL_PLAN_ERROR_WRITE;

  if (g_file_replace_contents (file, saving->text, saving->length, saving->expected_etag,
                               saving->backup, G_FILE_CREATE_NONE, &saving->etag, NULL, &local))
    return TRUE;
  if (g_error_matches (local, G_IO_ERROR, G_IO_ERROR_WRONG_ETAG))
    return fail_changed (file, error);
  for (guint i = 0; i < G_N_ELEMENTS (elsewhere); i++)
    if (g_error_matches (local, G_IO_ERROR, (int)elsewhere[i].code))
      code = elsewhere[i].error;
  return fail_words (saving->shown, local->message, code, FALSE, error);
}

/* As it was given, else the whole path: a save that fails may leave one looking for the place. */
static char *
shown_name (GFile *file, const char *path)
{
  return path == NULL || drawl_json_file_is_given (file) ? drawl_json_file_name (file)
                                                         : g_filename_display_name (path);
}

gboolean
drawl_json_save_unless_changed (GFile *file, const char *text, gsize length, gboolean backup,
                                const char *expected_etag, char **etag, GError **error)
{
  g_autofree char *path = g_file_get_path (file);
  g_autofree char *shown = shown_name (file, path);
  Saving saving = {shown, text, length, backup, expected_etag, NULL};
  gboolean saved = path != NULL && g_file_is_native (file) ? save_local (path, &saving, error)
                                                           : save_elsewhere (file, &saving, error);

  if (saved && etag != NULL)
    *etag = g_steal_pointer (&saving.etag);
  g_free (saving.etag);
  return saved;
}

gboolean
drawl_json_save (GFile *file, const char *text, gsize length, gboolean backup, char **etag,
                 GError **error)
{
  return drawl_json_save_unless_changed (file, text, length, backup, NULL, etag, error);
}
