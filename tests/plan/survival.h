/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* What a plan went through until it was cut off, and the judge of what is found on the disk then:
 * the file is whole, old or new, and the journal is no older than what was told to be safe. */

#include "state-folder.h"

#define DIGEST_BYTES 32
#define STATES_MAX 32768

typedef struct {
  guint8 bytes[DIGEST_BYTES];
} Digest;

/* What is told while it goes on. States are numbered by the edits since the beginning. */
typedef struct {
  gint n;       /* the last state that is in `states` */
  gint written; /* the journal said that this one is safe */
  gint saving;  /* one more than the state that is being saved, or was; 0: none */
  gint saved;   /* the same, once the save has returned */
  gint busy;    /* 1 while a save runs */
  Digest states[STATES_MAX];
} Told;

/* What has been found on the way, for the report. */
typedef struct {
  guint in_a_save, new_file, journals, later, begun, asides;
} Tally;

static Told *told;
static GFile *file; /* of the plan */

/* ---- Telling ---- */

static inline void
take_digest (const char *text, gsize length, Digest *digest)
{
  g_autoptr (GChecksum) sum = g_checksum_new (G_CHECKSUM_SHA256);
  gsize size = DIGEST_BYTES;

  g_checksum_update (sum, (const guchar *)text, (gssize)length);
  g_checksum_get_digest (sum, digest->bytes, &size);
}

static inline void
digest_of (DrawlPlan *plan, Digest *digest)
{
  gsize length;
  g_autofree char *text = drawl_plan_to_data (plan, &length);

  take_digest (text, length, digest);
}

static inline void
on_changed (DrawlPlan *plan)
{
  digest_of (plan, &told->states[told->n + 1]);
  g_atomic_int_inc (&told->n);
}

static inline void
on_written (DrawlJournal *journal, guint64 edits)
{
  g_atomic_int_set (&told->written, (gint)edits);
}

/* ---- Judging ---- */

static inline gboolean
is_state (const Digest *digest, int number)
{
  return number >= 0 && memcmp (digest, &told->states[number], sizeof *digest) == 0;
}

/* The last state that was such, or -1. One more than was counted may have been noted. */
static inline int
last_state (const Digest *digest)
{
  for (int number = told->n + 1; number >= 0; number--)
    if (is_state (digest, number))
      return number;
  return -1;
}

/* Both are whole files of our own; the file is the old one or the new one. Returns the number of
 * the state it was surely saved as, 0 when that was before the beginning: undo may have led back to
 * what the old one held. */
static inline int
check_file (const Digest *before, Digest *found, Tally *tally)
{
  g_autofree char *path = g_file_get_path (file);
  g_autofree char *backup = g_strconcat (path, "~", NULL), *text = NULL;
  g_autoptr (GFile) backup_file = g_file_new_for_path (backup);
  g_autoptr (GError) error = NULL;
  gsize length;

  g_file_get_contents (path, &text, &length, &error);
  g_assert_no_error (error);
  take_digest (text, length, found);
  g_autoptr (DrawlPlan) plan = drawl_plan_load (file, NULL, &error);
  g_assert_no_error (error);
  if (g_file_test (backup, G_FILE_TEST_EXISTS)) {
    g_autoptr (DrawlPlan) kept = drawl_plan_load (backup_file, NULL, &error);
    g_assert_no_error (error);
  }
  gboolean is_new = is_state (found, told->saving - 1);
  gboolean is_old = told->saved > 0 ? is_state (found, told->saved - 1)
                                    : memcmp (found, before, sizeof *found) == 0;
  g_assert_true (is_new || is_old);
  tally->new_file += !is_old;
  return MAX (is_old ? told->saved - 1 : told->saving - 1, 0);
}

/* What is offered is no older than the last state that was told to be safe, by either way. When
 * nothing is, the file has that state, or a later one that undo has made the same. */
static inline void
check_journal (int saved, const Digest *in_file, Tally *tally)
{
  g_autoptr (GPtrArray) entries = drawl_journal_list (NULL);
  int safe = MAX (told->written, told->saved - 1);

  g_assert_nonnull (entries);
  g_assert_cmpuint (entries->len, <=, 1);
  if (entries->len == 0) {
    g_assert_cmpint (last_state (in_file), >=, safe);
    return;
  }
  Digest found;
  g_autoptr (DrawlPlan) plan = recover (entries->pdata[0]);
  g_assert_null (drawl_journal_entry_get_problem (entries->pdata[0]));
  digest_of (plan, &found);
  int number = last_state (&found);
  g_assert_cmpint (number, >=, safe);
  g_assert_cmpint (number, >=, saved);
  tally->journals++;
  tally->later += number > safe;
}
