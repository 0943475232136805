/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Any bytes as a journal; and, since hardly any have seals that fit, each line of them as a record
 * of one whose seals do. There is always an answer; a plan that comes out of it is whole, and what
 * was left off the end of a journal changes nothing before it. */

#include "fuzz.h"
#include "plan/journal-frame.h"
#include "plan/journal-state.h"
#include "plan/plan-file.h"

static void
look_at (const DrawlJournalState *state)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *title = drawl_journal_state_title (state);
  gsize length = 0;
  g_autofree char *text = drawl_journal_state_text (state, &length, &error);

  g_assert_nonnull (title);
  g_assert_true (state->head != NULL || state->problem != NULL);
  g_assert_true (state->problem == NULL || g_utf8_validate (state->problem, -1, NULL));
  fuzz_assert_outcome (text != NULL, error);
  if (text == NULL)
    return;
  g_autoptr (DrawlPlan) plan = drawl_plan_from_data (text, length, "fuzz", &error);
  fuzz_assert_outcome (plan != NULL, error);
  g_assert_true (plan == NULL || drawl_plan_n_shots (plan) == state->shots->len);
}

static void
read_raw (const guint8 *data, gsize size)
{
  g_autoptr (DrawlJournalState) state = drawl_journal_state_read ((const char *)data, size);
  look_at (state);
}

/* @cut: bytes that are missing at the end. */
static void
read_framed (char **records, gsize cut)
{
  g_autoptr (GString) journal = g_string_new (DRAWL_JOURNAL_MAGIC);
  DrawlJournalSeal seal = {{0}};

  for (guint i = 0; records[i] != NULL; i++)
    if (records[i][0] != '\0')
      drawl_journal_frame_append (journal, &seal, records[i], strlen (records[i]));
  g_autofree char *copy = g_memdup2 (journal->str, journal->len);
  g_autoptr (DrawlJournalState) state =
      drawl_journal_state_read (copy, journal->len - MIN (cut, journal->len));
  look_at (state);
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autofree char *text = fuzz_text (data, size);
  g_auto (GStrv) records = g_strsplit (text, "\n", -1);

  read_raw (data, size);
  read_framed (records, 0);
  read_framed (records, size > 0 ? data[0] : 1);
  return 0;
}
