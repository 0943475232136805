/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* A plan of three shots with its journal, as a fixture. */

#include <sys/stat.h>

#include "state-folder.h"

typedef struct {
  char *folder;
  GFile *file; /* of the plan; not there yet */
  DrawlPlan *plan;
  DrawlJournal *journal;
  guint told; /* how often "problem" was notified */
} Work;

static inline void
on_problem (Work *work)
{
  work->told++;
}

static inline void
open_journal (Work *work, GFile *file, const char *etag, DrawlJournalEntry *entry)
{
  work->journal = drawl_journal_open (work->plan, file, etag, entry);
  g_signal_connect_swapped (work->journal, "notify::problem", G_CALLBACK (on_problem), work);
}

static inline void
set_up (Work *work, gconstpointer data)
{
  fresh_state ();
  work->folder = g_dir_make_tmp ("drawl-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (work->folder, "glass.drawl", NULL);
  work->file = g_file_new_for_path (path);
  work->plan = plan_of (PLAN (THREE_SHOTS));
  work->told = 0;
  open_journal (work, NULL, NULL, NULL);
}

/* Leaves the work behind, as a kill does: the lock goes, the file stays. */
static inline void
leave (Work *work)
{
  g_clear_object (&work->journal);
  g_clear_object (&work->plan);
}

static inline void
tear_down (Work *work, gconstpointer data)
{
  leave (work);
  g_clear_object (&work->file);
  remove_tree (work->folder);
  g_free (work->folder);
}

static inline void
edit (Work *work)
{
  edit_shot (work->plan, drawl_plan_get_shot (work->plan, 0), "Edit", fields->takes++);
}

static inline void
edit_and_flush (Work *work)
{
  edit (work);
  g_assert_true (drawl_journal_flush (work->journal));
}

static inline char *
text_of (Work *work)
{
  return drawl_plan_to_data (work->plan, NULL);
}

static inline void
save (Work *work)
{
  g_autoptr (GError) error = NULL;

  drawl_journal_save (work->journal, work->file, NULL, TRUE, NULL, &error);
  g_assert_no_error (error);
}

static inline void
on_written (DrawlJournal *journal, guint64 edits, gpointer data)
{
  *(guint64 *)data = edits;
}

static inline gsize
size_of_only_file (void)
{
  g_autofree char *path = only_file_in_state ();
  struct stat found;

  g_assert_cmpint (stat (path, &found), ==, 0);
  return (gsize)found.st_size;
}
