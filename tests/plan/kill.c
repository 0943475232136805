/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A thousand kills. A child edits, journals and saves a plan as the window does, and notes in
 * shared memory what every state was, and which of them it was told to be safe; it is killed at a
 * random instant. What is found on the disk then must be a whole file, old or new, and a journal
 * that is no older than what was told. The next child goes on from what was found. */

#define _DEFAULT_SOURCE

#include <math.h>
#include <signal.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

#include "any-edit.h"
#include "survival.h"

#define EDITS_AT_ONCE_MAX 3
#define SHORTEST_MS 0.02

typedef struct {
  const char *name;
  guint kills;
  guint shots;
  guint delay_ms;
  guint saves_percent; /* of the turns of the main loop */
  guint note_bytes;    /* of one shot, to make the journal long */
  double longest_ms;   /* until the kill */
} Row;

static const Row rows[] = {
    {"edits", 300, 3, 0, 0, 0, 25},
    {"saves", 250, 3, 0, 60, 0, 25},
    {"edits-and-saves", 250, 3, 2, 15, 0, 25},
    {"a-long-list", 100, 400, 1, 40, 0, 50},
    {"journals-begun-anew", 100, 3, 0, 2, 400000, 100},
};

static char *folder;

/* ---- The child ---- */

/* The file is always the one that was last seen here, kill or no kill. */
static void
save (DrawlJournal *journal, char **etag)
{
  g_autofree char *expected = g_steal_pointer (etag);
  g_autoptr (GError) error = NULL;

  g_atomic_int_set (&told->saving, told->n + 1);
  g_atomic_int_set (&told->busy, 1);
  if (!drawl_journal_save (journal, file, expected, g_test_rand_bit (), etag, &error))
    g_error ("%s", error->message);
  g_atomic_int_set (&told->saved, told->n + 1);
  g_atomic_int_set (&told->busy, 0);
}

static void
write_notes (DrawlPlan *plan, guint bytes)
{
  g_autofree char *notes = g_strnfill (bytes, (char)('a' + g_test_rand_int_range (0, 26)));

  if (drawl_plan_n_shots (plan) > 0)
    edit_shot (plan, drawl_plan_get_shot (plan, 0), "Notes",
               drawl_shot_fields_set (&fields->notes, notes));
}

static void
edit (DrawlPlan *plan, DrawlBody *profile, const Row *row)
{
  if (row->note_bytes > 0) {
    write_notes (plan, row->note_bytes);
    return;
  }
  for (int edits = g_test_rand_int_range (1, EDITS_AT_ONCE_MAX + 1); edits > 0; edits--) {
    edit_at_random (plan, profile, 0);
    int then = g_test_rand_int_range (0, 8);
    if (then == 0)
      drawl_plan_undo (plan);
    else if (then == 1)
      drawl_plan_redo (plan);
  }
}

/* As the window at its start: what was left behind, or else the file. */
static DrawlPlan *
open_plan (DrawlJournal **journal, char **etag)
{
  g_autoptr (GPtrArray) entries = drawl_journal_list (NULL);
  g_autoptr (GError) error = NULL;
  DrawlJournalEntry *entry = entries->len > 0 ? entries->pdata[0] : NULL;
  DrawlPlan *plan = entry != NULL ? drawl_journal_entry_recover (entry, &error)
                                  : drawl_plan_load (file, etag, &error);

  if (plan == NULL)
    g_error ("%s", error->message);
  if (entry != NULL)
    *etag = g_strdup (drawl_journal_entry_get_etag (entry));
  digest_of (plan, &told->states[0]);
  g_signal_connect (plan, "changed", G_CALLBACK (on_changed), NULL);
  *journal = drawl_journal_open (plan, file, *etag, entry);
  g_signal_connect (*journal, "written", G_CALLBACK (on_written), NULL);
  return plan;
}

/* Never returns. */
static void
live (const Row *row, int ready)
{
  g_autoptr (DrawlPlan) other = plan_of (PLAN (""));
  DrawlBody *profile = drawl_hired_body_get_body (drawl_plan_find_body (other, "A"));
  DrawlJournal *journal;
  char *etag = NULL;
  g_autoptr (DrawlPlan) plan = open_plan (&journal, &etag);

  drawl_journal_set_delay (journal, row->delay_ms);
  if (write (ready, "!", 1) != 1)
    g_error ("nobody listens");
  while (told->n < STATES_MAX - 200) {
    edit (plan, profile, row);
    if (g_test_rand_int_range (0, 100) < (gint)row->saves_percent)
      save (journal, &etag);
    for (int turns = g_test_rand_int_range (0, 4); turns > 0; turns--)
      g_main_context_iteration (NULL, FALSE);
  }
  for (;;)
    pause ();
}

/* ---- The kill ---- */

/* Short times as likely as long ones. */
static void
wait_at_random (double longest_ms)
{
  double ms = SHORTEST_MS * pow (longest_ms / SHORTEST_MS, g_test_rand_double ());
  g_usleep ((gulong)(ms * 1000));
}

static void
run_and_kill (const Row *row)
{
  int ready[2], status;
  char word;

  memset (told, 0, sizeof *told);
  g_assert_cmpint (pipe (ready), ==, 0);
  pid_t child = fork ();
  g_assert_cmpint (child, >=, 0);
  if (child == 0)
    live (row, ready[1]);
  close (ready[1]);
  g_assert_cmpint (read (ready[0], &word, 1), ==, 1);
  close (ready[0]);
  wait_at_random (row->longest_ms);
  g_assert_cmpint (kill (child, SIGKILL), ==, 0);
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_true (WIFSIGNALED (status) && WTERMSIG (status) == SIGKILL);
}

/* ---- Rows ---- */

/* Files of which only a part was written: hidden ones beside the plan, and journals that were being
 * begun. Nothing is lost by them. */
static void
count_asides (Tally *tally)
{
  g_autoptr (GPtrArray) journals = files_in_state ();
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  for (guint i = 0; i < journals->len; i++)
    tally->begun += g_str_has_suffix (journals->pdata[i], DRAWL_JOURNAL_NEW_SUFFIX);
  while ((name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_prefix (name, ".drawl-")) {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      tally->asides += g_remove (path) == 0;
    }
}

static void
save_first (const Row *row)
{
  g_autoptr (GString) shots = g_string_new ("{\"slate\":\"1\"}");
  g_autoptr (GError) error = NULL;

  for (guint i = 2; i <= row->shots; i++)
    g_string_append_printf (shots, ",{\"slate\":\"%u\",\"action\":\"Sparks climb\"}", i + 100);
  g_autofree char *text = g_strconcat (PLAN_HEAD "\"bodies\":[" BODY_A "," BODY_F "],\"shots\":[",
                                       shots->str, "]}", NULL);
  g_autoptr (DrawlPlan) plan = plan_of (text);
  drawl_plan_save (plan, file, FALSE, NULL, &error);
  g_assert_no_error (error);
}

static void
test_kills (gconstpointer data)
{
  const Row *row = data;
  Tally tally = {0};
  Digest in_file;

  fresh_state ();
  save_first (row);
  g_autoptr (DrawlPlan) first = drawl_plan_load (file, NULL, NULL);
  digest_of (first, &in_file);
  for (guint i = 0; i < row->kills; i++) {
    Digest before = in_file;
    run_and_kill (row);
    tally.in_a_save += (guint)told->busy;
    count_asides (&tally);
    int saved = check_file (&before, &in_file, &tally);
    check_journal (saved, &in_file, &tally);
  }
  g_test_message (
      "%u kills, %u during a save (%u of them had the new file already, %u left half a "
      "file aside); %u journals left behind, %u later than what was told, %u kills while "
      "one was being begun",
      row->kills, tally.in_a_save, tally.new_file, tally.asides, tally.journals, tally.later,
      tally.begun);
}

int
main (int argc, char **argv)
{
  char *state = begin_state ();

  g_test_init (&argc, &argv, NULL);
  told = mmap (NULL, sizeof *told, PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
  g_assert_true (told != MAP_FAILED);
  folder = g_dir_make_tmp ("drawl-kill-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "glass.drawl", NULL);
  file = g_file_new_for_path (path);
  add_rows ("/kill", rows, test_kills);
  int rc = g_test_run ();
  g_clear_object (&file);
  remove_tree (folder);
  g_free (folder);
  end_state (state);
  return rc;
}
