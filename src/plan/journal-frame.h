/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The frames of a journal file. The file begins with DRAWL_JOURNAL_MAGIC; each record behind it is
 * a line of its length (8 hexadecimal digits) and its seal (SHA-256, over the seal before, the
 * length and the record), and then the record and a line's end. So a tail that was cut short, a
 * record that was altered and one that belongs elsewhere are all told from what was written. */

#include <glib.h>

#define DRAWL_JOURNAL_MAGIC_WORD "drawl-journal "
#define DRAWL_JOURNAL_MAGIC DRAWL_JOURNAL_MAGIC_WORD "1\n"

#define DRAWL_JOURNAL_SEAL_SIZE 65

/* The seal of the last record; all zero before the first. */
typedef struct {
  char text[DRAWL_JOURNAL_SEAL_SIZE];
} DrawlJournalSeal;

/* The longest record that is written or read: no plan file may be longer either. */
#define DRAWL_JOURNAL_RECORD_BYTES_MAX (64 * 1024 * 1024)

/* Appends a record; @seal goes on to it. */
void drawl_journal_frame_append (GString *out, DrawlJournalSeal *seal, const char *record,
                                 gsize length);

typedef enum {
  DRAWL_JOURNAL_FRAME_WHOLE,
  DRAWL_JOURNAL_FRAME_END,
  DRAWL_JOURNAL_FRAME_TORN,    /* the last one, which was never written to its end */
  DRAWL_JOURNAL_FRAME_DAMAGED, /* not as it was written; more may stand behind it */
} DrawlJournalFrame;

/* The record at *@at, before @end. When it is whole, *@at and @seal go on behind it. */
DrawlJournalFrame drawl_journal_frame_next (const char **at, const char *end,
                                            DrawlJournalSeal *seal, const char **record,
                                            gsize *length);
