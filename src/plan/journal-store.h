/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlJournalStore: one journal file on the disk, owned by a lock as long as the store lives. What
 * a call wrote is synced when it returns. Any thread, one at a time. */

#include <glib.h>

#include "plan/journal-frame.h"

/* Names of journals in the folder; beside one that is being begun anew stands NAME.new. */
#define DRAWL_JOURNAL_SUFFIX ".journal"
#define DRAWL_JOURNAL_NEW_SUFFIX ".journal.new"
/* A journal that is longer than this is none of ours. */
#define DRAWL_JOURNAL_BYTES_MAX (256 * 1024 * 1024)

/* Where the journals are: below the user's state. New string. */
char *drawl_journal_folder (void);

typedef struct _DrawlJournalStore DrawlJournalStore;

/* Nothing stands on the disk before the first record is written. */
DrawlJournalStore *drawl_journal_store_new (void);
/* Opens the journal at @path, whose lock must be free: NULL with *@in_use when a living program has
 * it, or with DRAWL_PLAN_ERROR_READ. @data, if not NULL, takes what stands in it. */
DrawlJournalStore *drawl_journal_store_open (const char *path, gboolean *in_use, char **data,
                                             gsize *length, GError **error);
/* Closes it and gives the lock back; the file stays. */
void drawl_journal_store_free (DrawlJournalStore *store);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (DrawlJournalStore, drawl_journal_store_free)

/* Whether the next record must stand for the whole plan, because there is nothing to go on from, or
 * so much that it is time to begin anew. */
gboolean drawl_journal_store_wants_whole (DrawlJournalStore *store);
/* Begins anew: @head tells whose journal it is, @record stands for the whole plan. Until that is
 * safe the former records stay. Errors: DRAWL_PLAN_ERROR_WRITE, _NO_SPACE, _NO_PERMISSION,
 * _READ_ONLY, _NO_FOLDER, _TOO_LARGE; as below. */
gboolean drawl_journal_store_begin (DrawlJournalStore *store, const char *head, const char *record,
                                    gsize length, GError **error);
gboolean drawl_journal_store_append (DrawlJournalStore *store, const char *record, gsize length,
                                     GError **error);
/* Whether any record stands there. */
gboolean drawl_journal_store_is_begun (DrawlJournalStore *store);
/* Deletes the file; the store is as new. FALSE with an error when it stays. */
gboolean drawl_journal_store_remove (DrawlJournalStore *store, GError **error);
