/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The journal of a plan: what was left behind is found and equals the last state that was told to
 * be written; a save or a clean close leaves nothing. */

#include "plan/journal.h"

#include "any-edit.h"
#include "journal-work.h"
#include "plan/journal-state.h"

G_STATIC_ASSERT (DRAWL_JOURNAL_DELAY_MS < 1000);

/* ---- When there is a journal ---- */

static void
test_none_before_an_edit (Work *work, gconstpointer data)
{
  g_assert_true (drawl_journal_flush (work->journal));
  g_assert_cmpuint (n_files_in_state (), ==, 0);
}

/* By itself, in the main loop; edits that come together are written together. */
static void
test_written_by_itself (Work *work, gconstpointer data)
{
  guint64 edits = 0;

  drawl_journal_set_delay (work->journal, 1);
  g_signal_connect (work->journal, "written", G_CALLBACK (on_written), &edits);
  edit (work);
  edit (work);
  edit (work);
  g_autofree char *text = text_of (work);
  while (edits == 0)
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpuint (edits, ==, 3);
  leave (work);
  assert_left_behind (text);
}

/* While one write is under way, the next edit waits for it and is not forgotten. */
static void
test_edit_during_a_write (Work *work, gconstpointer data)
{
  guint64 edits = 0;

  drawl_journal_set_delay (work->journal, 0);
  g_signal_connect (work->journal, "written", G_CALLBACK (on_written), &edits);
  for (guint i = 1; i <= 20; i++) {
    edit (work);
    for (guint turns = (guint)g_test_rand_int_range (0, 4); turns > 0; turns--)
      g_main_context_iteration (NULL, FALSE);
  }
  while (edits < 20)
    g_main_context_iteration (NULL, TRUE);
  g_autofree char *text = text_of (work);
  leave (work);
  assert_left_behind (text);
}

static void
test_modes (Work *work, gconstpointer data)
{
  g_autofree char *folder = drawl_journal_folder ();
  struct stat found;

  g_mkdir_with_parents (folder, 0755);
  g_assert_cmpint (g_chmod (folder, 0755), ==, 0);
  edit_and_flush (work);
  g_autofree char *path = only_file_in_state ();
  g_assert_cmpint (stat (path, &found), ==, 0);
  g_assert_cmpint (found.st_mode & 07777, ==, 0600);
  g_assert_cmpint (stat (folder, &found), ==, 0);
  g_assert_cmpint (found.st_mode & 07777, ==, 0700);
}

static void
test_save_empties (Work *work, gconstpointer data)
{
  g_autofree char *etag = NULL;
  g_autoptr (GError) error = NULL;

  edit_and_flush (work);
  g_assert_cmpuint (n_files_in_state (), ==, 1);
  drawl_journal_save (work->journal, work->file, NULL, FALSE, &etag, &error);
  g_assert_no_error (error);
  g_assert_nonnull (etag);
  g_assert_false (drawl_plan_get_modified (work->plan));
  g_assert_cmpuint (n_files_in_state (), ==, 0);
  g_autoptr (DrawlPlan) saved = drawl_plan_load (work->file, NULL, &error);
  g_assert_no_error (error);
  assert_plans_equal (saved, work->plan);
}

/* A save that the journal was not asked for is noticed all the same. */
static void
test_other_save_empties (Work *work, gconstpointer data)
{
  edit_and_flush (work);
  g_assert_true (drawl_plan_save (work->plan, work->file, FALSE, NULL, NULL));
  g_assert_true (drawl_journal_flush (work->journal));
  g_assert_cmpuint (n_files_in_state (), ==, 0);
}

static void
test_undo_empties (Work *work, gconstpointer data)
{
  edit_and_flush (work);
  drawl_plan_undo (work->plan);
  g_assert_true (drawl_journal_flush (work->journal));
  g_assert_cmpuint (n_files_in_state (), ==, 0);
  drawl_plan_redo (work->plan);
  g_autofree char *text = text_of (work);
  g_assert_true (drawl_journal_flush (work->journal));
  leave (work);
  assert_left_behind (text);
}

static void
test_close_removes (Work *work, gconstpointer data)
{
  edit_and_flush (work);
  edit (work);
  drawl_journal_close (work->journal);
  g_assert_cmpuint (n_files_in_state (), ==, 0);
  edit (work); /* nobody follows any more */
  while (g_main_context_iteration (NULL, FALSE))
    continue;
  g_assert_cmpuint (n_files_in_state (), ==, 0);
}

static void
test_close_during_a_write (Work *work, gconstpointer data)
{
  drawl_journal_set_delay (work->journal, 0);
  edit (work);
  g_main_context_iteration (NULL, TRUE);
  drawl_journal_close (work->journal);
  g_assert_cmpuint (n_files_in_state (), ==, 0);
}

/* A plan that came in unsaved stands in no file, though nobody has edited it here. */
static void
test_unsaved_from_the_start (Work *work, gconstpointer data)
{
  leave (work);
  work->plan = plan_of (PLAN (THREE_SHOTS));
  drawl_plan_mark_unsaved (work->plan);
  open_journal (work, NULL, NULL, NULL);
  g_autofree char *text = text_of (work);
  g_assert_true (drawl_journal_flush (work->journal));
  leave (work);
  assert_left_behind (text);
}

/* ---- What is recovered ---- */

static void
test_entry (Work *work, gconstpointer data)
{
  g_autoptr (DrawlPlanSettings) settings =
      drawl_plan_settings_copy (drawl_plan_get_settings (work->plan));
  gint64 before_s = g_get_real_time () / G_USEC_PER_SEC;

  g_clear_object (&work->journal);
  open_journal (work, work->file, "1:2", NULL);
  drawl_shot_fields_set (&settings->title, "Glass, “hot” \\ \"cold\"");
  drawl_plan_set_settings (work->plan, settings, "Settings", NULL);
  edit_and_flush (work);
  edit_and_flush (work);
  leave (work);

  g_autoptr (GPtrArray) entries = list_left_behind (1);
  DrawlJournalEntry *entry = entries->pdata[0];
  GDateTime *time = drawl_journal_entry_get_time (entry);
  g_assert_true (g_file_equal (drawl_journal_entry_get_file (entry), work->file));
  g_assert_cmpstr (drawl_journal_entry_get_etag (entry), ==, "1:2");
  g_assert_cmpstr (drawl_journal_entry_get_title (entry), ==, "Glass, “hot” \\ \"cold\"");
  g_assert_cmpint (drawl_journal_entry_get_edits (entry), ==, 3);
  g_assert_cmpint (g_date_time_to_unix (time), >=, before_s);
  g_assert_cmpint (g_date_time_to_unix (time), <=, g_get_real_time () / G_USEC_PER_SEC);
  g_assert_true (drawl_journal_entry_can_recover (entry));
  g_assert_null (drawl_journal_entry_get_problem (entry));
}

/* Edits of every kind, written at any time between them: what is left behind is what there was. */
static void
test_any_edits (Work *work, gconstpointer data)
{
  g_autoptr (DrawlBody) profile =
      drawl_body_ref (drawl_hired_body_get_body (drawl_plan_find_body (work->plan, "A")));

  for (guint round = 0; round < 40; round++) {
    drawl_plan_mark_unsaved (work->plan);
    for (int edits = g_test_rand_int_range (1, 30); edits > 0; edits--) {
      edit_at_random (work->plan, profile, 0);
      int then = g_test_rand_int_range (0, 10);
      if (then == 0)
        drawl_plan_undo (work->plan);
      else if (then == 1)
        drawl_plan_redo (work->plan);
      else if (then < 5)
        drawl_journal_flush (work->journal);
    }
    g_assert_true (drawl_journal_flush (work->journal));
    g_autofree char *text = text_of (work), *path = only_file_in_state (), *journal = NULL;
    gsize length;
    g_assert_true (g_file_get_contents (path, &journal, &length, NULL));
    g_autoptr (DrawlJournalState) state = drawl_journal_state_read (journal, length);
    g_autofree char *kept = drawl_journal_state_text (state, &length, NULL);
    g_autoptr (DrawlPlan) again = plan_of (kept);
    g_autofree char *again_text = drawl_plan_to_data (again, NULL);
    g_assert_cmpstr (again_text, ==, text);
  }
}

static void
test_unknown_keys (Work *work, gconstpointer data)
{
  leave (work);
  work->plan = plan_of (PLAN_HEAD "\"later\":{\"a\":[[[[[1]]]]]},\"bodies\":[" BODY_A "],\"shots\":"
                                  "[{\"slate\":\"1\",\"mine\":[{\"b\":[null,\"\\u00e9\\n\"]}]}]}");
  open_journal (work, NULL, NULL, NULL);
  edit_and_flush (work);
  edit_and_flush (work);
  g_autofree char *text = text_of (work);
  leave (work);
  assert_left_behind (text);
}

/* As deep as a file may be. */
static void
test_deep_keys (Work *work, gconstpointer data)
{
  g_autofree char *open = g_strnfill (31, '['), *close = g_strnfill (31, ']');
  g_autofree char *plan = g_strconcat (PLAN_HEAD "\"later\":", open, close,
                                       ",\"shots\":[{\"slate\":"
                                       "\"1\"}]}",
                                       NULL);

  leave (work);
  work->plan = plan_of (plan);
  open_journal (work, NULL, NULL, NULL);
  edit_and_flush (work);
  g_autofree char *text = text_of (work);
  leave (work);
  assert_left_behind (text);
}

/* The entry is taken on: killed again at once, or after more edits, nothing is lost. */
static void
test_recovered_goes_on (Work *work, gconstpointer data)
{
  edit_and_flush (work);
  g_autofree char *text = text_of (work);
  leave (work);

  for (guint round = 0; round < 3; round++) {
    g_autoptr (GPtrArray) entries = list_left_behind (1);
    work->plan = recover (entries->pdata[0]);
    open_journal (work, NULL, NULL, entries->pdata[0]);
    g_assert_true (drawl_journal_flush (work->journal));
    leave (work);
    g_clear_pointer (&entries, g_ptr_array_unref);
    assert_left_behind (text);
  }

  g_autoptr (GPtrArray) entries = list_left_behind (1);
  work->plan = recover (entries->pdata[0]);
  open_journal (work, NULL, NULL, entries->pdata[0]);
  edit_and_flush (work);
  g_autofree char *more = text_of (work);
  leave (work);
  assert_left_behind (more);
  g_autoptr (GPtrArray) again = list_left_behind (1);
  g_assert_cmpint (drawl_journal_entry_get_edits (again->pdata[0]), ==, 2);
}

static void
test_recovered_and_saved (Work *work, gconstpointer data)
{
  edit_and_flush (work);
  g_autofree char *text = text_of (work);
  leave (work);

  g_autoptr (GPtrArray) entries = list_left_behind (1);
  work->plan = recover (entries->pdata[0]);
  open_journal (work, NULL, NULL, entries->pdata[0]);
  save (work);
  g_assert_cmpuint (n_files_in_state (), ==, 0);
  g_autofree char *saved = NULL;
  g_assert_true (g_file_load_contents (work->file, NULL, &saved, NULL, NULL, NULL));
  g_assert_cmpstr (saved, ==, text);
}

static void
test_discard (Work *work, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  edit_and_flush (work);
  leave (work);
  g_autoptr (GPtrArray) entries = list_left_behind (1);
  g_assert_true (drawl_journal_entry_discard (entries->pdata[0], &error));
  g_assert_no_error (error);
  g_assert_cmpuint (n_files_in_state (), ==, 0);
}

static void
test_latest_first (Work *work, gconstpointer data)
{
  g_autoptr (DrawlPlan) other = plan_of (PLAN (""));
  g_autoptr (DrawlJournal) other_journal = drawl_journal_open (other, work->file, NULL, NULL);
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_new ("1", exact ("25"));

  edit_and_flush (work);
  g_usleep (2);
  g_assert_true (drawl_plan_insert_shot (other, 0, fields, "Insert", NULL));
  g_assert_true (drawl_journal_flush (other_journal));
  leave (work);
  g_clear_object (&other_journal);
  g_autoptr (GPtrArray) entries = list_left_behind (2);
  g_assert_nonnull (drawl_journal_entry_get_file (entries->pdata[0]));
  g_assert_null (drawl_journal_entry_get_file (entries->pdata[1]));
}

/* ---- Growth ---- */

/* One edit among many shots is a short record. */
static void
test_short_records (Work *work, gconstpointer data)
{
  g_autoptr (GString) shots = g_string_new ("{\"slate\":\"0\"}");

  for (guint i = 1; i < 500; i++)
    g_string_append_printf (shots, ",{\"slate\":\"%u\",\"action\":\"Sparks climb\"}", i);
  g_autofree char *text = g_strconcat (PLAN_HEAD "\"shots\":[", shots->str, "]}", NULL);
  leave (work);
  work->plan = plan_of (text);
  open_journal (work, NULL, NULL, NULL);
  edit_and_flush (work);
  gsize first = size_of_only_file ();
  g_assert_cmpuint (first, >, 15000);
  edit_shot (work->plan, drawl_plan_get_shot (work->plan, 250), "Edit", fields->takes = 9);
  drawl_plan_move_shot (work->plan, 10, 400, "Move");
  g_assert_true (drawl_journal_flush (work->journal));
  g_assert_cmpuint (size_of_only_file () - first, <, 400);
}

static void
test_begun_anew_when_long (Work *work, gconstpointer data)
{
  gsize most = 0;

  for (guint i = 0; i < 12; i++) {
    g_autofree char *notes = g_strnfill (300000, (char)('a' + i));
    edit_shot (work->plan, drawl_plan_get_shot (work->plan, 0), "Edit",
               drawl_shot_fields_set (&fields->notes, notes));
    g_assert_true (drawl_journal_flush (work->journal));
    most = MAX (most, size_of_only_file ());
  }
  g_assert_cmpuint (most, >, 1000000);
  g_assert_cmpuint (most, <, 2200000);
  g_autofree char *text = text_of (work);
  leave (work);
  assert_left_behind (text);
}

#define ADD(name, test) g_test_add ("/journal/" name, Work, NULL, set_up, test, tear_down)

int
main (int argc, char **argv)
{
  char *state = begin_state ();

  g_test_init (&argc, &argv, NULL);
  ADD ("none-before-an-edit", test_none_before_an_edit);
  ADD ("written-by-itself", test_written_by_itself);
  ADD ("edit-during-a-write", test_edit_during_a_write);
  ADD ("modes", test_modes);
  ADD ("save-empties", test_save_empties);
  ADD ("other-save-empties", test_other_save_empties);
  ADD ("undo-empties", test_undo_empties);
  ADD ("close-removes", test_close_removes);
  ADD ("close-during-a-write", test_close_during_a_write);
  ADD ("unsaved-from-the-start", test_unsaved_from_the_start);
  ADD ("entry", test_entry);
  ADD ("any-edits", test_any_edits);
  ADD ("unknown-keys", test_unknown_keys);
  ADD ("deep-keys", test_deep_keys);
  ADD ("recovered-goes-on", test_recovered_goes_on);
  ADD ("recovered-and-saved", test_recovered_and_saved);
  ADD ("discard", test_discard);
  ADD ("latest-first", test_latest_first);
  ADD ("short-records", test_short_records);
  ADD ("begun-anew-when-long", test_begun_anew_when_long);
  int rc = g_test_run ();
  end_state (state);
  return rc;
}
