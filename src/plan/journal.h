/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlJournal: keeps the unsaved work of one plan safe beside the user's state, so that it
 * survives a kill or a power cut at any instant. It follows the plan by itself: within a second of
 * an edit the new state is written and synced by another thread; when nothing is unsaved there is
 * no file. What was left behind is found with drawl_journal_list() (journal-entry.h).
 *
 * Property "problem" (string, read-only, notified): why unsaved work is not kept safe at present, a
 * sentence, or NULL. Editing goes on, and it is tried again. Notified when it begins, when it turns
 * into another problem and when it ends. Signal "written" (guint64): as many edits as that, of
 * those made since the journal was opened, are safe now. */

#include "plan/journal-entry.h"

#define DRAWL_TYPE_JOURNAL (drawl_journal_get_type ())
G_DECLARE_FINAL_TYPE (DrawlJournal, drawl_journal, DRAWL, JOURNAL, GObject)

/* How long an edit waits for others before all are written. */
#define DRAWL_JOURNAL_DELAY_MS 300

/* @file: the plan's, or NULL; @etag: that of @file as it was read, or NULL. @entry: what the plan
 * was recovered from, or NULL; its journal goes on as this one. It is written in the thread-default
 * main context of the caller. */
DrawlJournal *drawl_journal_open (DrawlPlan *plan, GFile *file, const char *etag,
                                  DrawlJournalEntry *entry);
/* A clean close: the work was saved, or is given up, and the journal is deleted. A journal that is
 * only unreferenced stays and is offered at the next start. */
void drawl_journal_close (DrawlJournal *journal);

/* Saves the plan to @file, which becomes the plan's own, marks it saved and empties the journal; a
 * kill on the way leaves the old file and the journal, or the new file and nothing to recover.
 * Nothing is written over a file whose entity tag is not @expected_etag, unless that is NULL.
 * @backup, @etag and errors: as drawl_json_save_unless_changed(). */
gboolean drawl_journal_save (DrawlJournal *journal, GFile *file, const char *expected_etag,
                             gboolean backup, char **etag, GError **error);

/* Writes what is not yet written and waits until it is safe; FALSE when it is not (see "problem").
 * For the end of a session, when there may be no other second. */
gboolean drawl_journal_flush (DrawlJournal *journal);

const char *drawl_journal_get_problem (DrawlJournal *journal);
void drawl_journal_set_delay (DrawlJournal *journal, guint delay_ms);
