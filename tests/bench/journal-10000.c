/* SPDX-License-Identifier: GPL-3.0-or-later */

/* journal-10000 PLAN: how long the window is held up by the journal of a long plan: after one edit,
 * and when the journal is begun; beside the text of the whole plan, which it does without; and how
 * long after an edit its record is safe on the disk. The state goes to a folder of its own. */

#define _POSIX_C_SOURCE 200809L

#include "plan/journal-delta.h"
#include "plan/journal.h"
#include "plan/plan-file.h"

#include <glib/gstdio.h>
#include <stdlib.h>

#define RUNS 101

static double
since_ms (gint64 start_us)
{
  return (double)(g_get_monotonic_time () - start_us) / 1000;
}

static int
compare (gconstpointer a, gconstpointer b)
{
  double one = *(const double *)a, other = *(const double *)b;

  return one < other ? -1 : one > other;
}

static void
report (const char *what, double *ms, const char *limit)
{
  qsort (ms, RUNS, sizeof *ms, compare);
  g_print ("%-44s median %6.2f ms, longest %6.2f ms%s\n", what, ms[RUNS / 2], ms[RUNS - 1], limit);
}

static void
edit (DrawlPlan *plan, guint run)
{
  DrawlShot *shot = drawl_plan_get_shot (plan, run * 97 % drawl_plan_n_shots (plan));
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (drawl_shot_get_fields (shot));

  fields->takes = fields->takes % 9 + 1;
  drawl_plan_set_shot (plan, shot, fields, "Edit", NULL);
}

/* What start_write() of the journal does in the window's thread. */
static void
measure_window (DrawlPlan *plan, gboolean whole, const char *what)
{
  double ms[RUNS];

  for (guint run = 0; run < RUNS; run++) {
    g_autoptr (DrawlJournalBasis) before = drawl_journal_basis_new (plan);
    edit (plan, run);
    gint64 start = g_get_monotonic_time ();
    g_autoptr (DrawlJournalBasis) after = drawl_journal_basis_new (plan);
    g_autoptr (DrawlJournalDelta) delta =
        drawl_journal_delta_new (plan, whole ? NULL : before, after);
    ms[run] = since_ms (start);
  }
  report (what, ms, ", limit 16 ms");
}

static void
measure_text (DrawlPlan *plan)
{
  double ms[RUNS];

  for (guint run = 0; run < RUNS; run++) {
    gint64 start = g_get_monotonic_time ();
    g_autofree char *text = drawl_plan_to_data (plan, NULL);
    ms[run] = since_ms (start);
  }
  report ("the text of the whole plan", ms, "");
}

static void
measure_disk (DrawlPlan *plan, DrawlJournal *journal)
{
  double ms[RUNS];

  for (guint run = 0; run < RUNS; run++) {
    edit (plan, run);
    gint64 start = g_get_monotonic_time ();
    drawl_journal_flush (journal);
    ms[run] = since_ms (start);
  }
  report ("from an edit to the disk", ms, "");
}

int
main (int argc, char **argv)
{
  g_autofree char *state = g_dir_make_tmp ("drawl-bench-XXXXXX", NULL);
  g_autoptr (GError) error = NULL;

  g_setenv ("XDG_STATE_HOME", state, TRUE);
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (argc > 1 ? argv[1] : "");
  g_autoptr (DrawlPlan) plan = drawl_plan_load (file, NULL, &error);
  if (plan == NULL) {
    g_printerr ("%s\n", error->message);
    return 1;
  }
  measure_window (plan, FALSE, "the window waits, after one edit");
  measure_window (plan, TRUE, "the window waits, when the journal is begun");
  measure_text (plan);

  g_autoptr (DrawlJournal) journal = drawl_journal_open (plan, file, NULL, NULL);
  gint64 start = g_get_monotonic_time ();
  drawl_journal_flush (journal);
  g_print ("%-44s %6.2f ms\n", "the whole plan to the disk", since_ms (start));
  measure_disk (plan, journal);
  drawl_journal_close (journal);
  g_autofree char *folder = drawl_journal_folder (), *parent = g_path_get_dirname (folder);
  g_rmdir (folder);
  g_rmdir (parent);
  g_rmdir (state);
  return 0;
}
