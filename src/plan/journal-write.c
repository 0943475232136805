/* SPDX-License-Identifier: GPL-3.0-or-later */

/* One write of the journal. What is expensive, the text of the record, its seal and the disk, is
 * done in a thread; who started it may wait for it at any time. */

#include "plan/journal-write.h"

static void
write_free (DrawlJournalWrite *write)
{
  g_free (write->head);
  drawl_journal_delta_free (write->delta);
  g_clear_error (&write->error);
  g_mutex_clear (&write->lock);
  g_cond_clear (&write->is_done);
  g_free (write);
}

static void
run (GTask *task, gpointer source, gpointer task_data, GCancellable *cancellable)
{
  DrawlJournalWrite *write = task_data;
  gsize length;
  g_autofree char *record =
      drawl_journal_delta_text (write->delta, write->edited_us, write->edits, &length);

  if (write->head != NULL)
    drawl_journal_store_begin (write->store, write->head, record, length, &write->error);
  else
    drawl_journal_store_append (write->store, record, length, &write->error);

  g_mutex_lock (&write->lock);
  write->done = TRUE;
  g_cond_signal (&write->is_done);
  g_mutex_unlock (&write->lock);
  g_task_return_boolean (task, TRUE);
}

GTask *
drawl_journal_write_start (DrawlJournalWrite *write, GAsyncReadyCallback callback, gpointer data)
{
  GTask *task = g_task_new (NULL, NULL, callback, data);

  g_mutex_init (&write->lock);
  g_cond_init (&write->is_done);
  g_task_set_task_data (task, write, (GDestroyNotify)write_free);
  g_task_run_in_thread (task, run);
  return task;
}

void
drawl_journal_write_wait (DrawlJournalWrite *write)
{
  g_mutex_lock (&write->lock);
  while (!write->done)
    g_cond_wait (&write->is_done, &write->lock);
  g_mutex_unlock (&write->lock);
}
