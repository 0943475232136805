/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A journal file. Records are appended to it and synced; to begin anew, a new file is written and
 * synced beside it and takes its name. Whoever holds the lock of the file that stands under the
 * name owns the journal; a program that dies loses its locks. Invariant: the first `length` bytes
 * are whole frames, and `seal` is that of the last of them. */

#define _DEFAULT_SOURCE

#include "plan/journal-store.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include "core/text.h"
#include "plan/disk-error.h"

#define FOLDER_MODE 0700
#define FILE_MODE 0600
#define TRIES_MAX 3

/* A journal is begun anew when what was added is this much, or as long as what it began with. */
#define ADDED_BYTES_MAX (1024 * 1024)
#define ADDED_RECORDS_MAX 1000

struct _DrawlJournalStore {
  char *path; /* NULL before the first record */
  int fd;     /* -1 without a file */
  gsize length;
  DrawlJournalSeal seal;
  gboolean frayed; /* there may be more behind `length`, or less */
  gsize begun_length;
  gsize most_length; /* it is begun anew beyond this */
  guint added;       /* records since it was begun */
};

char *
drawl_journal_folder (void)
{
  return g_build_filename (g_get_user_state_dir (), "drawl", "journal", NULL);
}

static gboolean
fail (int code, GError **error)
{
  DrawlPlanError domain_code;
  const char *words = drawl_disk_error_words (code, &domain_code);
  g_autofree char *folder = drawl_journal_folder ();
  g_autofree char *name = g_filename_display_name (folder);

  g_set_error (error, DRAWL_PLAN_ERROR, (int)domain_code,
               _ ("unsaved work is not kept safe in %s: %s"), name, words);
  return FALSE;
}

/* ---- Files ---- */

static int
write_at (int fd, const char *text, gsize length, gsize offset)
{
  while (length > 0) {
    gssize n = pwrite (fd, text, length, (off_t)offset);
    if (n < 0 && errno == EINTR)
      continue;
    if (n < 0)
      return errno;
    text += n;
    length -= (gsize)n;
    offset += (gsize)n;
  }
  return fsync (fd) == 0 ? 0 : errno;
}

/* Whether the file open at @fd is the one that stands at @path. */
static gboolean
stands_at (int fd, const char *path)
{
  struct stat open_file, named;

  return fstat (fd, &open_file) == 0 && lstat (path, &named) == 0 &&
         open_file.st_dev == named.st_dev && open_file.st_ino == named.st_ino;
}

static int
sync_folder (const char *folder)
{
  int fd = open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (fd < 0)
    return errno;

  int code = fsync (fd) == 0 || errno == EINVAL ? 0 : errno;
  close (fd);
  return code;
}

static int
make_folder (const char *folder)
{
  g_autofree char *parent = g_path_get_dirname (folder);
  g_autofree char *grandparent = g_path_get_dirname (parent);
  gboolean stood = g_file_test (folder, G_FILE_TEST_IS_DIR);
  struct stat found;

  if (g_mkdir_with_parents (folder, FOLDER_MODE) != 0 || stat (folder, &found) != 0)
    return errno;
  /* It may have been made by hand, for others to read. */
  if ((found.st_mode & 07777) != FOLDER_MODE && chmod (folder, FOLDER_MODE) != 0)
    return errno;
  if (stood)
    return 0;
  int code = sync_folder (parent);
  return code != 0 ? code : sync_folder (grandparent);
}

/* A new file that is locked before anyone can take it for one left behind; an errno or 0. */
static int
create_locked (const char *path, int *fd)
{
  for (guint i = 0; i < TRIES_MAX; i++) {
    *fd = open (path, O_RDWR | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, FILE_MODE);
    if (*fd < 0)
      return errno;
    if (flock (*fd, LOCK_EX | LOCK_NB) == 0 && stands_at (*fd, path))
      return 0;
    int code = errno;
    close (*fd);
    if (code != EWOULDBLOCK && code != ENOENT) {
      unlink (path);
      return code;
    }
  }
  return EAGAIN;
}

/* ---- Open and close ---- */

DrawlJournalStore *
drawl_journal_store_new (void)
{
  DrawlJournalStore *store = g_new0 (DrawlJournalStore, 1);

  store->fd = -1;
  return store;
}

void
drawl_journal_store_free (DrawlJournalStore *store)
{
  if (store == NULL)
    return;
  if (store->fd >= 0)
    close (store->fd);
  g_free (store->path);
  g_free (store);
}

static gboolean
fail_to_read (const char *reason, GError **error)
{
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_READ,
               _ ("the journal could not be read: %s"), reason);
  return FALSE;
}

/* A link, a pipe or a folder under the name of a journal is none of ours. */
static gboolean
open_locked (DrawlJournalStore *store, gboolean *in_use, struct stat *found, GError **error)
{
  store->fd = open (store->path, O_RDWR | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC);
  if (store->fd < 0)
    return fail_to_read (g_strerror (errno), error);
  if (fstat (store->fd, found) != 0)
    return fail_to_read (g_strerror (errno), error);
  if (!S_ISREG (found->st_mode))
    return fail_to_read (_ ("it is no file"), error);
  if (found->st_size > DRAWL_JOURNAL_BYTES_MAX)
    return fail_to_read (_ ("it is too large"), error);
  gboolean locked = flock (store->fd, LOCK_EX | LOCK_NB) == 0;
  if (!locked && errno != EWOULDBLOCK)
    return fail_to_read (g_strerror (errno), error);
  /* Its owner may have begun it anew, or removed it, between the opening and the lock. */
  *in_use = !locked || !stands_at (store->fd, store->path);
  return !*in_use;
}

static gboolean
read_all (int fd, char *data, gsize length, GError **error)
{
  gsize done = 0;

  while (done < length) {
    gssize n = pread (fd, data + done, length - done, (off_t)done);
    if (n < 0 && errno == EINTR)
      continue;
    if (n < 0)
      return fail_to_read (g_strerror (errno), error);
    if (n == 0)
      return fail_to_read (_ ("it ends too soon"), error);
    done += (gsize)n;
  }
  return TRUE;
}

DrawlJournalStore *
drawl_journal_store_open (const char *path, gboolean *in_use, char **data, gsize *length,
                          GError **error)
{
  g_autoptr (DrawlJournalStore) store = drawl_journal_store_new ();
  struct stat found;

  *in_use = FALSE;
  store->path = g_strdup (path);
  if (!open_locked (store, in_use, &found, error))
    return NULL;
  store->frayed = TRUE; /* what stands there is for reading: the next record begins anew */
  store->length = (gsize)found.st_size;
  if (data == NULL)
    return g_steal_pointer (&store);

  g_autofree char *text = g_try_malloc (store->length + 1);
  if (text == NULL) {
    fail_to_read (_ ("it is too large"), error);
    return NULL;
  }
  if (!read_all (store->fd, text, store->length, error))
    return NULL;
  text[store->length] = '\0';
  *data = g_steal_pointer (&text);
  *length = store->length;
  return g_steal_pointer (&store);
}

/* ---- Records ---- */

gboolean
drawl_journal_store_is_begun (DrawlJournalStore *store)
{
  return store->fd >= 0;
}

gboolean
drawl_journal_store_wants_whole (DrawlJournalStore *store)
{
  return store->fd < 0 || store->frayed || store->length > store->most_length ||
         store->added >= ADDED_RECORDS_MAX || !stands_at (store->fd, store->path);
}

static gboolean
check_length (gsize length, GError **error)
{
  if (length <= DRAWL_JOURNAL_RECORD_BYTES_MAX)
    return TRUE;
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_TOO_LARGE,
               _ ("unsaved work is not kept safe: the plan is larger than %d bytes"),
               DRAWL_JOURNAL_RECORD_BYTES_MAX);
  return FALSE;
}

/* Writes @text to a new file that takes the name @path; an errno or 0, and then the new file is
 * open and locked at *@fd. */
static int
write_anew (const char *folder, const char *path, const GString *text, int *fd)
{
  g_autofree char *aside = g_strconcat (path, ".new", NULL);
  int code = make_folder (folder);

  unlink (aside); /* of an attempt that failed */
  if (code == 0)
    code = create_locked (aside, fd);
  if (code != 0)
    return code;
  code = write_at (*fd, text->str, text->len, 0);
  if (code == 0 && rename (aside, path) != 0)
    code = errno;
  if (code == 0)
    return 0;
  unlink (aside);
  close (*fd);
  return code;
}

gboolean
drawl_journal_store_begin (DrawlJournalStore *store, const char *head, const char *record,
                           gsize length, GError **error)
{
  g_autofree char *folder = drawl_journal_folder ();
  g_autofree char *id = g_uuid_string_random ();
  g_autofree char *name = g_strconcat (id, DRAWL_JOURNAL_SUFFIX, NULL);
  g_autofree char *path =
      store->path != NULL ? g_strdup (store->path) : g_build_filename (folder, name, NULL);
  g_autoptr (GString) text = g_string_new (DRAWL_JOURNAL_MAGIC);
  DrawlJournalSeal seal = {{0}};
  int fd = -1;

  if (!check_length (length, error))
    return FALSE;
  drawl_journal_frame_append (text, &seal, head, strlen (head));
  drawl_journal_frame_append (text, &seal, record, length);
  int code = write_anew (folder, path, text, &fd);
  if (code != 0) {
    store->most_length *= 2; /* what there is can still be added to */
    store->added = 0;
    return fail (code, error);
  }

  if (store->fd >= 0)
    close (store->fd);
  store->fd = fd;
  g_free (store->path);
  store->path = g_steal_pointer (&path);
  store->seal = seal;
  store->length = text->len;
  store->most_length = store->length + MAX (store->length, ADDED_BYTES_MAX);
  store->added = 0;
  code = sync_folder (folder);
  store->frayed = code != 0;
  return code == 0 || fail (code, error);
}

gboolean
drawl_journal_store_append (DrawlJournalStore *store, const char *record, gsize length,
                            GError **error)
{
  g_autoptr (GString) text = g_string_new (NULL);
  DrawlJournalSeal seal = store->seal;

  if (!check_length (length, error))
    return FALSE;
  drawl_journal_frame_append (text, &seal, record, length);
  int code = write_at (store->fd, text->str, text->len, store->length);
  if (code != 0) {
    store->frayed = ftruncate (store->fd, (off_t)store->length) != 0 || code == EIO;
    return fail (code, error);
  }
  store->seal = seal;
  store->length += text->len;
  store->added++;
  return TRUE;
}

gboolean
drawl_journal_store_remove (DrawlJournalStore *store, GError **error)
{
  if (store->fd < 0)
    return TRUE;
  g_autofree char *folder = g_path_get_dirname (store->path);
  /* Under the name of a file that was deleted, another may stand. */
  if (stands_at (store->fd, store->path) && unlink (store->path) != 0)
    return fail (errno, error);
  close (store->fd);
  store->fd = -1;
  g_clear_pointer (&store->path, g_free);
  /* Else a power cut brings it back, and it is offered beside a file that was saved since. */
  int code = sync_folder (folder);
  return code == 0 || code == ENOENT || fail (code, error);
}
