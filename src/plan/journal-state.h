/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlJournalState: what a journal file says, record by record: whose work it is, and the plan as
 * of the last whole record, in pieces of text. */

#include <glib.h>

typedef struct {
  char *uri;           /* of the plan's file, or NULL: it had none yet */
  char *etag;          /* of that file as it was last read or written, or NULL */
  gint64 edited_us;    /* of the last edit, in real time since 1970 */
  gint64 edits;        /* since the plan was last saved */
  char *head;          /* the plan's members that are neither bodies nor shots: a JSON object */
  GPtrArray *bodies;   /* of GRefString, each a JSON object */
  GPtrArray *shots;    /* likewise */
  char *saving_uri;    /* the last record says that this file was about to be saved, or NULL */
  char *saving_digest; /* SHA-256 of what was about to be written there */
  char *problem;       /* what is wrong with the file, in words, or NULL; an unfinished record at
                          the end is nothing wrong and is left out */
} DrawlJournalState;

/* Reads as far as the file is whole. Whatever stands there, there is an answer; one that has a head
 * can be recovered, if perhaps not all of it. */
DrawlJournalState *drawl_journal_state_read (const char *data, gsize length);
void drawl_journal_state_free (DrawlJournalState *state);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (DrawlJournalState, drawl_journal_state_free)

/* The text of the plan file, for drawl_plan_from_data(); NULL with DRAWL_PLAN_ERROR_TOO_LARGE, or
 * _FORMAT when there is no plan in the journal. */
char *drawl_journal_state_text (const DrawlJournalState *state, gsize *length, GError **error);
/* The plan's title, may be empty. New string. */
char *drawl_journal_state_title (const DrawlJournalState *state);
