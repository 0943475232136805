/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Journals on the disk, as the tests look at them: in a state folder of the program's own. */

#include <glib/gstdio.h>

#include "fixture.h"
#include "tree.h"
#include "plan/journal.h"

/* To be called before anything asks for the folder, which is then left to end_state(). */
static inline char *
begin_state (void)
{
  char *state = g_dir_make_tmp ("drawl-state-XXXXXX", NULL);

  g_assert_nonnull (state);
  g_setenv ("XDG_STATE_HOME", state, TRUE);
  return state;
}

static inline void
end_state (char *state)
{
  remove_tree (state);
  g_free (state);
}

/* Paths of what stands in the folder of journals. */
static inline GPtrArray *
files_in_state (void)
{
  GPtrArray *paths = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *folder = drawl_journal_folder ();
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    g_ptr_array_add (paths, g_build_filename (folder, name, NULL));
  return paths;
}

/* What an earlier test left there is gone. */
static inline void
fresh_state (void)
{
  g_autoptr (GPtrArray) paths = files_in_state ();

  for (guint i = 0; i < paths->len; i++)
    remove_tree (paths->pdata[i]);
}

static inline guint
n_files_in_state (void)
{
  g_autoptr (GPtrArray) paths = files_in_state ();
  return paths->len;
}

static inline char *
only_file_in_state (void)
{
  g_autoptr (GPtrArray) paths = files_in_state ();

  g_assert_cmpuint (paths->len, ==, 1);
  return g_strdup (paths->pdata[0]);
}

static inline GPtrArray *
list_left_behind (guint n)
{
  g_autoptr (GError) error = NULL;
  GPtrArray *entries = drawl_journal_list (&error);

  g_assert_no_error (error);
  g_assert_cmpuint (entries->len, ==, n);
  return entries;
}

static inline DrawlPlan *
recover (DrawlJournalEntry *entry)
{
  g_autoptr (GError) error = NULL;
  DrawlPlan *plan = drawl_journal_entry_recover (entry, &error);

  g_assert_no_error (error);
  g_assert_true (drawl_plan_get_modified (plan));
  return plan;
}

/* The one journal left behind gives @text back, and nothing is wrong with it. */
static inline void
assert_left_behind (const char *text)
{
  g_autoptr (GPtrArray) entries = list_left_behind (1);
  g_autoptr (DrawlPlan) plan = recover (entries->pdata[0]);
  g_autofree char *found = drawl_plan_to_data (plan, NULL);

  g_assert_null (drawl_journal_entry_get_problem (entries->pdata[0]));
  g_assert_cmpstr (found, ==, text);
}
