/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The functions that the linker puts before those of the system. What is written through the
 * library's own descriptors (temporary files) is seen at the first write to them. */

#define _DEFAULT_SOURCE

#include "noted-calls.h"

#include <unistd.h>

static void (*hook) (NotedCall *call);
static GPtrArray *calls;     /* of NotedCall; NULL: nothing is noted */
static GHashTable *standing; /* the paths of files that were created */

static void
call_free (NotedCall *call)
{
  g_free (call->path);
  g_free (call->to);
  g_clear_pointer (&call->bytes, g_bytes_unref);
  g_free (call);
}

static NotedCall *
note (NotedKind kind, const char *path)
{
  NotedCall *call = g_new0 (NotedCall, 1);

  call->kind = kind;
  call->path = g_strdup (path);
  hook (call);
  g_ptr_array_add (calls, call);
  return call;
}

/* Where the file open at @fd stands. A file that was made by the library is first seen here. */
static char *
path_of (int fd)
{
  g_autofree char *link = g_strdup_printf ("/proc/self/fd/%d", fd);
  char *path = g_file_read_link (link, NULL);

  g_assert_nonnull (path);
  if (!g_file_test (path, G_FILE_TEST_IS_DIR) && g_hash_table_add (standing, g_strdup (path)))
    note (NOTED_CREATE, path);
  return path;
}

static void
note_write (int fd, const void *data, gssize n, gsize at)
{
  if (calls == NULL || n <= 0)
    return;
  g_autofree char *path = path_of (fd);
  NotedCall *call = note (NOTED_WRITE, path);
  call->bytes = g_bytes_new (data, (gsize)n);
  call->at = at;
}

gssize __real_write (int fd, const void *data, gsize n);
gssize __wrap_write (int fd, const void *data, gsize n);
gssize __real_pwrite64 (int fd, const void *data, gsize n, gint64 at);
gssize __wrap_pwrite64 (int fd, const void *data, gsize n, gint64 at);
int __real_ftruncate64 (int fd, gint64 length);
int __wrap_ftruncate64 (int fd, gint64 length);
int __real_fsync (int fd);
int __wrap_fsync (int fd);
int __real_rename (const char *from, const char *to);
int __wrap_rename (const char *from, const char *to);
int __real_unlink (const char *path);
int __wrap_unlink (const char *path);

gssize
__wrap_write (int fd, const void *data, gsize n)
{
  gsize at = calls != NULL ? (gsize)lseek (fd, 0, SEEK_CUR) : 0;
  gssize done = __real_write (fd, data, n);

  note_write (fd, data, done, at);
  return done;
}

gssize
__wrap_pwrite64 (int fd, const void *data, gsize n, gint64 at)
{
  gssize done = __real_pwrite64 (fd, data, n, at);

  note_write (fd, data, done, (gsize)at);
  return done;
}

int
__wrap_ftruncate64 (int fd, gint64 length)
{
  if (calls != NULL) {
    g_autofree char *path = path_of (fd);
    note (NOTED_CUT, path)->at = (gsize)length;
  }
  return __real_ftruncate64 (fd, length);
}

int
__wrap_fsync (int fd)
{
  if (calls != NULL) {
    g_autofree char *path = path_of (fd);
    note (g_file_test (path, G_FILE_TEST_IS_DIR) ? NOTED_SYNC_FOLDER : NOTED_SYNC, path);
  }
  return __real_fsync (fd);
}

int
__wrap_rename (const char *from, const char *to)
{
  int rc = __real_rename (from, to);

  if (calls != NULL && rc == 0) {
    note (NOTED_RENAME, from)->to = g_strdup (to);
    g_hash_table_remove (standing, from);
    g_hash_table_add (standing, g_strdup (to));
  }
  return rc;
}

int
__wrap_unlink (const char *path)
{
  int rc = __real_unlink (path);

  if (calls != NULL && rc == 0) {
    note (NOTED_UNLINK, path);
    g_hash_table_remove (standing, path);
  }
  return rc;
}

void
noted_begin (void (*on_call) (NotedCall *call))
{
  hook = on_call;
  calls = g_ptr_array_new_with_free_func ((GDestroyNotify)call_free);
  standing = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
}

GPtrArray *
noted_end (void)
{
  g_clear_pointer (&standing, g_hash_table_unref);
  return g_steal_pointer (&calls);
}
