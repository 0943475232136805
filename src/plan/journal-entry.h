/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlJournalEntry: a journal that no living program has, so that what is in it was left behind
 * unsaved. While the entry lives it holds the journal's lock, and no other program is offered the
 * same work. */

#include "plan/journal-store.h"
#include "plan/plan.h"

#define DRAWL_TYPE_JOURNAL_ENTRY (drawl_journal_entry_get_type ())
G_DECLARE_FINAL_TYPE (DrawlJournalEntry, drawl_journal_entry, DRAWL, JOURNAL_ENTRY, GObject)

/* All of them, of DrawlJournalEntry, the latest edit first; NULL with DRAWL_PLAN_ERROR_READ when
 * the folder cannot be read. A journal whose last word is a save that then succeeded has nothing
 * unsaved in it and is deleted. One that cannot be read, or only in part, is listed with its
 * problem and never deleted. */
GPtrArray *drawl_journal_list (GError **error);

/* The file that the plan belonged to, or NULL: it had none yet; and that file's entity tag as the
 * lost program last knew it, or NULL. */
GFile *drawl_journal_entry_get_file (DrawlJournalEntry *entry);
const char *drawl_journal_entry_get_etag (DrawlJournalEntry *entry);
const char *drawl_journal_entry_get_title (DrawlJournalEntry *entry); /* may be empty */
/* When the last edit was made, local time; NULL when that is not known. */
GDateTime *drawl_journal_entry_get_time (DrawlJournalEntry *entry);
/* How many edits there were since the plan was last saved. */
gint64 drawl_journal_entry_get_edits (DrawlJournalEntry *entry);
/* What is wrong with the journal, a sentence, or NULL. */
const char *drawl_journal_entry_get_problem (DrawlJournalEntry *entry);
/* Whether there is a plan in it. */
gboolean drawl_journal_entry_can_recover (DrawlJournalEntry *entry);
/* The journal itself, for messages. */
const char *drawl_journal_entry_get_path (DrawlJournalEntry *entry);

/* The plan as of the last journalled edit, not saved. The journal stays; hand the entry to
 * drawl_journal_open() so that it goes on from there. Errors: those of drawl_plan_from_data(). */
DrawlPlan *drawl_journal_entry_recover (DrawlJournalEntry *entry, GError **error);
/* Deletes the journal. Errors: those of drawl_journal_store_begin(). */
gboolean drawl_journal_entry_discard (DrawlJournalEntry *entry, GError **error);

/* For the journal alone: its store, which is then the caller's; NULL if it was taken before. */
DrawlJournalStore *drawl_journal_entry_steal_store (DrawlJournalEntry *entry);
