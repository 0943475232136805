/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A file under watch. The system tells of the file that a symbolic link leads to only when that one
 * is watched, so links are followed first. Invariant: one question to the disk is under way at
 * most, and what comes in meanwhile asks once more. */

#define _XOPEN_SOURCE 700

#include "app/file-watch.h"

#include <stdlib.h>

/* A write is many events; they are looked at together. Milliseconds. */
#define DELAY_MS 200

struct _DrawlFileWatch {
  GObject parent_instance;
  GFile *file;
  char *known; /* or NULL */
  char *told;  /* the one last told of, or NULL */
  GFileMonitor *monitor;
  GCancellable *asking; /* or NULL */
  gboolean again;
  guint timer;
};

static guint changed_signal;

G_DEFINE_FINAL_TYPE (DrawlFileWatch, drawl_file_watch, G_TYPE_OBJECT)

static void
drawl_file_watch_dispose (GObject *object)
{
  drawl_file_watch_stop (DRAWL_FILE_WATCH (object));
  G_OBJECT_CLASS (drawl_file_watch_parent_class)->dispose (object);
}

static void
drawl_file_watch_finalize (GObject *object)
{
  DrawlFileWatch *self = DRAWL_FILE_WATCH (object);

  g_clear_object (&self->file);
  g_free (self->known);
  g_free (self->told);
  G_OBJECT_CLASS (drawl_file_watch_parent_class)->finalize (object);
}

static void
drawl_file_watch_class_init (DrawlFileWatchClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = drawl_file_watch_dispose;
  G_OBJECT_CLASS (klass)->finalize = drawl_file_watch_finalize;
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
}

static void
drawl_file_watch_init (DrawlFileWatch *self)
{
}

/* ---- Asking ---- */

static void
take_in (DrawlFileWatch *self, const char *etag)
{
  if (etag == NULL || self->known == NULL || g_str_equal (etag, self->known) ||
      g_strcmp0 (etag, self->told) == 0)
    return;
  g_free (self->told);
  self->told = g_strdup (etag);
  g_signal_emit (self, changed_signal, 0);
}

/* A watch that was stopped meanwhile has cancelled the question, and may be gone. */
static void
on_answer (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GFileInfo) info = g_file_query_info_finish (G_FILE (source), result, &error);
  DrawlFileWatch *self = data;

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  g_clear_object (&self->asking);
  if (self->again)
    drawl_file_watch_look (self);
  else if (info != NULL)
    take_in (self, g_file_info_get_etag (info));
}

void
drawl_file_watch_look (DrawlFileWatch *watch)
{
  watch->again = watch->asking != NULL;
  if (watch->again || watch->known == NULL)
    return;
  watch->asking = g_cancellable_new ();
  g_file_query_info_async (watch->file, G_FILE_ATTRIBUTE_ETAG_VALUE, G_FILE_QUERY_INFO_NONE,
                           G_PRIORITY_LOW, watch->asking, on_answer, watch);
}

/* ---- Being told ---- */

static gboolean
on_timer (gpointer data)
{
  DrawlFileWatch *self = data;

  self->timer = 0;
  drawl_file_watch_look (self);
  return G_SOURCE_REMOVE;
}

static void
on_event (DrawlFileWatch *self)
{
  if (self->timer == 0)
    self->timer = g_timeout_add (DELAY_MS, on_timer, self);
}

static GFile *
follow_links (GFile *file)
{
  const char *path = g_file_peek_path (file);
  char *real = path != NULL ? realpath (path, NULL) : NULL;
  GFile *followed = real != NULL ? g_file_new_for_path (real) : g_object_ref (file);

  free (real);
  return followed;
}

/* Where files cannot be watched, drawl_file_watch_look() is what is left. */
DrawlFileWatch *
drawl_file_watch_new (GFile *file, const char *etag)
{
  DrawlFileWatch *self = g_object_new (DRAWL_TYPE_FILE_WATCH, NULL);

  self->file = follow_links (file);
  self->known = g_strdup (etag);
  self->monitor = g_file_monitor_file (self->file, G_FILE_MONITOR_WATCH_MOVES, NULL, NULL);
  if (self->monitor != NULL)
    g_signal_connect_object (self->monitor, "changed", G_CALLBACK (on_event), self,
                             G_CONNECT_SWAPPED);
  return self;
}

void
drawl_file_watch_stop (DrawlFileWatch *watch)
{
  g_clear_handle_id (&watch->timer, g_source_remove);
  if (watch->monitor != NULL)
    g_file_monitor_cancel (watch->monitor);
  g_clear_object (&watch->monitor);
  if (watch->asking != NULL)
    g_cancellable_cancel (watch->asking);
  g_clear_object (&watch->asking);
  g_clear_pointer (&watch->known, g_free);
}
