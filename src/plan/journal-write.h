/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlJournalWrite: one record under way to the disk, in a thread of its own. */

#include <gio/gio.h>

#include "plan/journal-delta.h"
#include "plan/journal-store.h"

typedef struct {
  DrawlJournalStore *store; /* nobody else may use it until the write is done */
  char *head;               /* of a journal that is begun anew with this record, or NULL */
  DrawlJournalDelta *delta;
  DrawlJournalBasis
      *after; /* not for the thread: what stands in the journal once this has succeeded */
  gint64 edited_us;
  gint64 edits;  /* as the record says */
  guint64 total; /* as "written" says */
  GError *error; /* or NULL; to be looked at when it is done, as is what follows */
  gboolean done;
  GMutex lock;
  GCond is_done;
} DrawlJournalWrite;

/* Begins to write; @callback comes in the thread-default main context. The task owns @write, and
 * may free it in either thread, so what stands in `after` must have been taken by then. */
GTask *drawl_journal_write_start (DrawlJournalWrite *write, GAsyncReadyCallback callback,
                                  gpointer data);
/* Waits until it is done. */
void drawl_journal_write_wait (DrawlJournalWrite *write);
