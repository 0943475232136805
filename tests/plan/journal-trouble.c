/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The journal in trouble: other programs that live, saves that were cut off, folders that cannot be
 * written, files that no Drawl wrote. It is told, nothing is lost, and editing goes on. */

#define _XOPEN_SOURCE 700

#include "plan/journal.h"

#include <signal.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "journal-work.h"

/* ---- Locks ---- */

static void
test_own_is_not_offered (Work *work, gconstpointer data)
{
  edit_and_flush (work);
  g_ptr_array_unref (list_left_behind (0));
  edit_and_flush (work);
  g_assert_cmpuint (n_files_in_state (), ==, 1);
}

/* What one program is being asked about, another is not offered. */
static void
test_offered_once (Work *work, gconstpointer data)
{
  edit_and_flush (work);
  leave (work);
  g_autoptr (GPtrArray) entries = list_left_behind (1);
  g_ptr_array_unref (list_left_behind (0));
  g_clear_pointer (&entries, g_ptr_array_unref);
  g_ptr_array_unref (list_left_behind (1));
}

/* A child that has a journal until it is killed. */
static void
live (int ready)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  g_autoptr (DrawlJournal) journal = drawl_journal_open (plan, NULL, NULL, NULL);

  edit_shot (plan, drawl_plan_get_shot (plan, 0), "Edit", fields->takes = 77);
  drawl_journal_flush (journal);
  if (write (ready, "!", 1) == 1)
    pause ();
  _exit (1);
}

static void
test_living_process (void)
{
  int ready[2];
  char word;

  fresh_state ();
  g_assert_cmpint (pipe (ready), ==, 0);
  pid_t child = fork ();
  g_assert_cmpint (child, >=, 0);
  if (child == 0)
    live (ready[1]);
  close (ready[1]);
  g_assert_cmpint (read (ready[0], &word, 1), ==, 1);
  close (ready[0]);
  g_ptr_array_unref (list_left_behind (0));
  g_assert_cmpuint (n_files_in_state (), ==, 1);

  g_assert_cmpint (kill (child, SIGKILL), ==, 0);
  g_assert_cmpint (waitpid (child, NULL, 0), ==, child);
  g_autoptr (GPtrArray) entries = list_left_behind (1);
  g_autoptr (DrawlPlan) plan = recover (entries->pdata[0]);
  g_assert_cmpuint (drawl_shot_get_fields (drawl_plan_get_shot (plan, 0))->takes, ==, 77);
}

/* ---- Saves that were cut off ---- */

/* The journal as it stood when the save had succeeded and the journal was not yet emptied. */
static char *
keep_journal_over_save (Work *work)
{
  g_autofree char *path = only_file_in_state ();
  g_autofree char *kept = g_build_filename (work->folder, "kept", NULL);

  g_assert_cmpint (link (path, kept), ==, 0);
  save (work);
  g_assert_cmpint (rename (kept, path), ==, 0);
  return g_steal_pointer (&path);
}

static void
test_killed_after_the_save (Work *work, gconstpointer data)
{
  edit_and_flush (work);
  edit (work); /* is in the file, not in the journal */
  g_autofree char *path = keep_journal_over_save (work);
  leave (work);
  g_ptr_array_unref (list_left_behind (0));
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
}

/* The file is another than was saved: what the journal has may be nowhere else. */
static void
test_killed_before_the_save (Work *work, gconstpointer data)
{
  edit_and_flush (work);
  g_autofree char *text = text_of (work);
  g_autofree char *path = keep_journal_over_save (work);
  leave (work);
  g_assert_true (g_file_replace_contents (work->file, "{}", 2, NULL, FALSE, G_FILE_CREATE_NONE,
                                          NULL, NULL, NULL));
  assert_left_behind (text);
  g_assert_true (g_file_delete (work->file, NULL, NULL));
  assert_left_behind (text);
}

static void
test_refused_save (Work *work, gconstpointer data)
{
  g_autoptr (GFile) nowhere = g_file_new_for_path ("/nonexistent/x.drawl");
  g_autoptr (GError) error = NULL, changed = NULL;

  edit_and_flush (work);
  g_assert_false (drawl_journal_save (work->journal, nowhere, NULL, TRUE, NULL, &error));
  g_assert_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_NO_FOLDER);
  save (work);
  edit_and_flush (work);
  g_assert_false (drawl_journal_save (work->journal, work->file, "1:2", TRUE, NULL, &changed));
  g_assert_error (changed, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_CHANGED);
  g_assert_true (drawl_plan_get_modified (work->plan));
  edit_and_flush (work);
  g_autofree char *text = text_of (work);
  leave (work);
  assert_left_behind (text);
}

/* ---- Trouble ---- */

static void
test_deleted_meanwhile (Work *work, gconstpointer data)
{
  g_autofree char *folder = drawl_journal_folder ();

  edit_and_flush (work);
  remove_tree (folder);
  edit_and_flush (work);
  g_autofree char *text = text_of (work);
  leave (work);
  assert_left_behind (text);
}

/* A file stands where the folder should be. */
static void
test_no_folder_can_be_made (Work *work, gconstpointer data)
{
  g_autofree char *folder = drawl_journal_folder ();
  g_autoptr (GError) error = NULL;

  g_rmdir (folder);
  g_assert_true (g_file_set_contents (folder, "", 0, NULL));
  for (guint i = 0; i < 4; i++) {
    edit (work);
    g_assert_false (drawl_journal_flush (work->journal));
  }
  g_assert_cmpuint (work->told, ==, 1);
  g_assert_nonnull (strstr (drawl_journal_get_problem (work->journal), "is not kept safe in"));
  g_assert_null (drawl_journal_list (&error));
  g_assert_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_READ);
  save (work); /* saving does not depend on it */

  edit (work);
  g_assert_cmpint (g_unlink (folder), ==, 0);
  g_assert_true (drawl_journal_flush (work->journal));
  g_assert_cmpuint (work->told, ==, 2);
  g_assert_null (drawl_journal_get_problem (work->journal));
  g_autofree char *text = text_of (work);
  leave (work);
  assert_left_behind (text);
}

/* By itself, it is tried again. */
static void
test_trouble_passes (Work *work, gconstpointer data)
{
  g_autofree char *folder = drawl_journal_folder ();
  guint64 edits = 0;

  g_rmdir (folder);
  g_assert_true (g_file_set_contents (folder, "", 0, NULL));
  drawl_journal_set_delay (work->journal, 0);
  g_signal_connect (work->journal, "written", G_CALLBACK (on_written), &edits);
  edit (work);
  while (work->told == 0)
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpint (g_unlink (folder), ==, 0);
  edit (work);
  while (edits == 0)
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpuint (edits, ==, 2);
  g_assert_cmpuint (work->told, ==, 2);
}

typedef struct {
  const char *name;
  void (*make) (const char *path);
  gboolean goes; /* when it is discarded */
} Broken;

static void
make_text (const char *path)
{
  g_assert_true (g_file_set_contents (path, "Dear crew,", -1, NULL));
}

static void
make_empty (const char *path)
{
  g_assert_true (g_file_set_contents (path, "", 0, NULL));
}

static void
make_link (const char *path)
{
  g_assert_cmpint (symlink ("/etc/passwd", path), ==, 0);
}

static void
make_pipe (const char *path)
{
  g_assert_cmpint (mkfifo (path, 0600), ==, 0);
}

static void
make_folder (const char *path)
{
  g_autofree char *below = g_build_filename (path, "below", NULL);

  g_assert_cmpint (g_mkdir (path, 0700), ==, 0);
  make_text (below);
}

static void
make_huge (const char *path)
{
  make_text (path);
  g_assert_cmpint (truncate (path, 300 * 1024 * 1024), ==, 0);
}

static const Broken broken[] = {
    {"text", make_text, TRUE}, {"empty", make_empty, TRUE},    {"link", make_link, TRUE},
    {"pipe", make_pipe, TRUE}, {"folder", make_folder, FALSE}, {"huge", make_huge, TRUE},
};

/* It is listed, explained, and stays until someone says otherwise. */
static void
test_broken (gconstpointer data)
{
  const Broken *row = data;
  g_autofree char *folder = drawl_journal_folder ();
  g_autofree char *path = g_build_filename (folder, "x.journal", NULL);
  g_autoptr (GError) error = NULL;

  fresh_state ();
  g_mkdir_with_parents (folder, 0700);
  row->make (path);
  for (guint i = 0; i < 2; i++) {
    g_autoptr (GPtrArray) entries = list_left_behind (1);
    g_assert_nonnull (drawl_journal_entry_get_problem (entries->pdata[0]));
    g_assert_false (drawl_journal_entry_can_recover (entries->pdata[0]));
    g_assert_null (drawl_journal_entry_recover (entries->pdata[0], &error));
    g_assert_nonnull (error);
    g_clear_error (&error);
  }
  g_autoptr (GPtrArray) entries = list_left_behind (1);
  g_assert_cmpint (drawl_journal_entry_discard (entries->pdata[0], &error), ==, row->goes);
  g_assert_cmpuint (n_files_in_state (), ==, row->goes ? 0 : 1);
  g_assert_true (g_file_test ("/etc/passwd", G_FILE_TEST_EXISTS));
}

static void
limit_files (gsize bytes)
{
  struct rlimit limit;

  g_assert_cmpint (getrlimit (RLIMIT_FSIZE, &limit), ==, 0);
  limit.rlim_cur = bytes > 0 ? bytes : limit.rlim_max;
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &limit), ==, 0);
}

/* A record of which only the beginning had room is taken back; the edit is kept in mind. */
static void
test_no_room (Work *work, gconstpointer data)
{
  g_autofree char *notes = g_strnfill (5000, 'n');

  signal (SIGXFSZ, SIG_IGN);
  edit_and_flush (work);
  gsize first = size_of_only_file ();
  limit_files (first + 200);
  edit_shot (work->plan, drawl_plan_get_shot (work->plan, 0), "Edit",
             drawl_shot_fields_set (&fields->notes, notes));
  for (guint i = 0; i < 3; i++)
    g_assert_false (drawl_journal_flush (work->journal));
  g_assert_cmpuint (size_of_only_file (), ==, first);
  g_assert_cmpuint (work->told, ==, 1);
  g_assert_nonnull (strstr (drawl_journal_get_problem (work->journal), "larger than this disk"));

  limit_files (0);
  edit_and_flush (work);
  g_assert_cmpuint (work->told, ==, 2);
  g_autofree char *after = text_of (work);
  leave (work);
  assert_left_behind (after);
}

/* A journal that can be read in part is offered with that part, and taken on. */
static void
test_damaged (Work *work, gconstpointer data)
{
  g_autofree char *journal = NULL;
  gsize length, first;

  edit_and_flush (work);
  g_autofree char *text = text_of (work);
  first = size_of_only_file ();
  edit_and_flush (work);
  edit_and_flush (work);
  leave (work);
  g_autofree char *path = only_file_in_state ();
  g_assert_true (g_file_get_contents (path, &journal, &length, NULL));
  journal[first + 100] ^= 1;
  g_assert_true (g_file_set_contents (path, journal, (gssize)length, NULL));

  g_autoptr (GPtrArray) entries = list_left_behind (1);
  g_assert_nonnull (strstr (drawl_journal_entry_get_problem (entries->pdata[0]), "is damaged"));
  work->plan = recover (entries->pdata[0]);
  g_autofree char *found = text_of (work);
  g_assert_cmpstr (found, ==, text);
  open_journal (work, NULL, NULL, entries->pdata[0]);
  edit_and_flush (work);
  g_autofree char *more = text_of (work);
  leave (work);
  assert_left_behind (more);
}

/* A journal that was being begun when its program died goes; others' files stay. */
static void
test_half_begun (Work *work, gconstpointer data)
{
  g_autofree char *folder = drawl_journal_folder ();
  g_autofree char *half = g_build_filename (folder, "x.journal.new", NULL);
  g_autofree char *note = g_build_filename (folder, "note.txt", NULL);

  edit_and_flush (work);
  make_text (half);
  make_text (note);
  g_ptr_array_unref (list_left_behind (0));
  g_assert_false (g_file_test (half, G_FILE_TEST_EXISTS));
  g_assert_true (g_file_test (note, G_FILE_TEST_EXISTS));
  make_text (half);
  gboolean in_use;
  g_autoptr (DrawlJournalStore) owner = drawl_journal_store_open (half, &in_use, NULL, NULL, NULL);
  g_assert_nonnull (owner);
  g_ptr_array_unref (list_left_behind (0));
  g_assert_true (g_file_test (half, G_FILE_TEST_EXISTS));
}

#define ADD(name, test) g_test_add ("/journal-trouble/" name, Work, NULL, set_up, test, tear_down)

int
main (int argc, char **argv)
{
  char *state = begin_state ();

  g_test_init (&argc, &argv, NULL);
  /* First, while there is no other thread that the child would miss. */
  g_test_add_func ("/journal-trouble/living-process", test_living_process);
  ADD ("own-is-not-offered", test_own_is_not_offered);
  ADD ("offered-once", test_offered_once);
  ADD ("killed-after-the-save", test_killed_after_the_save);
  ADD ("killed-before-the-save", test_killed_before_the_save);
  ADD ("refused-save", test_refused_save);
  ADD ("deleted-meanwhile", test_deleted_meanwhile);
  ADD ("no-folder-can-be-made", test_no_folder_can_be_made);
  ADD ("trouble-passes", test_trouble_passes);
  ADD ("no-room", test_no_room);
  ADD ("damaged", test_damaged);
  ADD ("half-begun", test_half_begun);
  add_rows ("/journal-trouble/broken", broken, test_broken);
  int rc = g_test_run ();
  end_state (state);
  return rc;
}
