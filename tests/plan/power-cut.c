/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Power cuts. A kill leaves what was written in the system's memory; a power cut leaves what was
 * synced, and of the rest anything. So every call that changes the disk is noted (noted-calls.c),
 * and for each instant between two calls, disks are made as the power may leave them: what was not
 * synced is gone, there, half there, or blank, and of the names that were not synced any beginning
 * is there, in either folder. Each must survive as after a kill. */

#include <string.h>

#include "any-edit.h"
#include "noted-calls.h"
#include "survival.h"

/* ---- A disk ---- */

/* A file, whatever it is called: its bytes as they were synced, and as they are. */
typedef struct {
  GByteArray *safe;
  GByteArray *now;
} File;

/* A change of names that was not synced yet. */
typedef struct {
  const NotedCall *op;
  File *file; /* of NOTED_CREATE */
} Change;

#define N_FOLDERS 2

typedef struct {
  GPtrArray *files; /* of File; all there ever were */
  GHashTable *now;  /* path → File */
  GHashTable *safe; /* the same, of what was synced */
  const char *folders[N_FOLDERS];
  GArray *changes[N_FOLDERS]; /* of Change */
} Disk;

static void
file_free (File *one)
{
  g_byte_array_unref (one->safe);
  g_byte_array_unref (one->now);
  g_free (one);
}

static File *
add_file (Disk *disk)
{
  File *one = g_new0 (File, 1);

  one->safe = g_byte_array_new ();
  one->now = g_byte_array_new ();
  g_ptr_array_add (disk->files, one);
  return one;
}

static GHashTable *
names_new (void)
{
  return g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
}

static void
disk_init (Disk *disk, const char *state_folder, const char *plan_folder)
{
  disk->files = g_ptr_array_new_with_free_func ((GDestroyNotify)file_free);
  disk->now = names_new ();
  disk->safe = names_new ();
  disk->folders[0] = state_folder;
  disk->folders[1] = plan_folder;
  for (guint i = 0; i < N_FOLDERS; i++)
    disk->changes[i] = g_array_new (FALSE, FALSE, sizeof (Change));
}

static void
disk_clear (Disk *disk)
{
  g_hash_table_unref (disk->now);
  g_hash_table_unref (disk->safe);
  g_ptr_array_unref (disk->files);
  for (guint i = 0; i < N_FOLDERS; i++)
    g_array_unref (disk->changes[i]);
}

static guint
folder_of (const Disk *disk, const char *path)
{
  return g_str_has_prefix (path, disk->folders[0]) ? 0 : 1;
}

static void
change_names (GHashTable *names, const Change *change)
{
  const NotedCall *op = change->op;

  if (op->kind == NOTED_CREATE)
    g_hash_table_insert (names, g_strdup (op->path), change->file);
  if (op->kind == NOTED_RENAME)
    g_hash_table_insert (names, g_strdup (op->to), g_hash_table_lookup (names, op->path));
  if (op->kind != NOTED_CREATE)
    g_hash_table_remove (names, op->path);
}

static void
set_bytes (GByteArray *to, const GByteArray *from)
{
  g_byte_array_set_size (to, 0);
  g_byte_array_append (to, from->data, from->len);
}

static void
write_bytes (GByteArray *to, const NotedCall *op)
{
  gsize length, end;
  const void *data = g_bytes_get_data (op->bytes, &length);

  end = op->at + length;
  if (to->len < end)
    g_byte_array_set_size (to, (guint)end);
  memcpy (to->data + op->at, data, length);
}

static void
do_names (Disk *disk, const NotedCall *op)
{
  Change change = {op, op->kind == NOTED_CREATE ? add_file (disk) : NULL};

  change_names (disk->now, &change);
  g_array_append_val (disk->changes[folder_of (disk, op->path)], change);
}

static void
do_op (Disk *disk, const NotedCall *op)
{
  File *one = g_hash_table_lookup (disk->now, op->path);

  switch (op->kind) {
  case NOTED_WRITE:
    write_bytes (one->now, op);
    break;
  case NOTED_CUT:
    g_byte_array_set_size (one->now, (guint)op->at);
    break;
  case NOTED_SYNC:
    set_bytes (one->safe, one->now);
    break;
  case NOTED_SYNC_FOLDER: {
    GArray *changes = disk->changes[folder_of (disk, op->path)];
    for (guint i = 0; i < changes->len; i++)
      change_names (disk->safe, &g_array_index (changes, Change, i));
    g_array_set_size (changes, 0);
    break;
  }
  default:
    do_names (disk, op);
  }
}

/* ---- After the cut ---- */

typedef enum { GONE, THERE, HALF, BLANK, N_FATES } Fate;

/* What of a file's bytes has come through. */
static GByteArray *
bytes_after (const File *one, Fate fate)
{
  GByteArray *bytes = g_byte_array_new ();
  guint more = one->now->len > one->safe->len ? one->now->len - one->safe->len : 0;

  set_bytes (bytes, fate == THERE ? one->now : one->safe);
  if (fate == HALF)
    g_byte_array_append (bytes, one->now->data + one->safe->len, (more + 1) / 2);
  if (fate == BLANK) {
    g_autofree guint8 *blank = g_malloc0 (more + 1);
    g_byte_array_append (bytes, blank, more);
  }
  return bytes;
}

static GHashTable *
names_after (const Disk *disk, const guint *n_changes)
{
  GHashTable *names = names_new ();
  GHashTableIter iter;
  gpointer path, one;

  g_hash_table_iter_init (&iter, disk->safe);
  while (g_hash_table_iter_next (&iter, &path, &one))
    g_hash_table_insert (names, g_strdup (path), one);
  for (guint i = 0; i < N_FOLDERS; i++)
    for (guint k = 0; k < n_changes[i]; k++)
      change_names (names, &g_array_index (disk->changes[i], Change, k));
  return names;
}

static void
make_disk (const Disk *disk, GHashTable *names, Fate fate)
{
  GHashTableIter iter;
  gpointer path, one;

  for (guint i = 0; i < N_FOLDERS; i++) {
    remove_tree (disk->folders[i]);
    g_mkdir (disk->folders[i], 0700);
  }
  g_hash_table_iter_init (&iter, names);
  while (g_hash_table_iter_next (&iter, &path, &one)) {
    g_autoptr (GByteArray) bytes = bytes_after (one, fate);
    FILE *stream = fopen (path, "w");
    g_assert_nonnull (stream);
    g_assert_true (bytes->len == 0 || fwrite (bytes->data, bytes->len, 1, stream) == 1);
    g_assert_cmpint (fclose (stream), ==, 0);
  }
}

static void
judge (const Disk *disk, const guint *n_changes, Fate fate, const Digest *before, Tally *tally)
{
  g_autoptr (GHashTable) names = names_after (disk, n_changes);
  Digest in_file;

  make_disk (disk, names, fate);
  int saved = check_file (before, &in_file, tally);
  check_journal (saved, &in_file, tally);
}

static guint
judge_all (const Disk *disk, const Digest *before, Tally *tally)
{
  guint n[N_FOLDERS], disks = 0;

  for (n[0] = 0; n[0] <= disk->changes[0]->len; n[0]++)
    for (n[1] = 0; n[1] <= disk->changes[1]->len; n[1]++)
      for (Fate fate = GONE; fate < N_FATES; fate++, disks++)
        judge (disk, n, fate, before, tally);
  return disks;
}

/* ---- Rows ---- */

typedef struct {
  const char *name;
  guint turns;
  guint saves_percent;
  guint undo_percent; /* back to the saved state */
  guint note_bytes;
} Row;

static const Row rows[] = {
    {"edits", 25, 0, 0, 0},
    {"saves", 25, 50, 0, 0},
    {"undo-to-the-saved", 25, 15, 30, 0},
    {"begun-anew", 8, 0, 0, 300000},
};

static gboolean
chance (guint percent)
{
  return g_test_rand_int_range (0, 100) < (gint)percent;
}

static void
turn (DrawlPlan *plan, DrawlJournal *journal, DrawlBody *profile, const Row *row)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *notes = g_strnfill (row->note_bytes, (char)('a' + told->n % 26));

  edit_at_random (plan, profile, 0);
  if (row->note_bytes > 0 && drawl_plan_n_shots (plan) > 0)
    edit_shot (plan, drawl_plan_get_shot (plan, 0), "Notes",
               drawl_shot_fields_set (&fields->notes, notes));
  if (chance (70))
    g_assert_true (drawl_journal_flush (journal));
  while (chance (row->undo_percent) && drawl_plan_get_modified (plan) && drawl_plan_can_undo (plan))
    drawl_plan_undo (plan);
  if (chance (row->undo_percent))
    g_assert_true (drawl_journal_flush (journal));
  if (!chance (row->saves_percent))
    return;
  told->saving = told->n + 1;
  drawl_journal_save (journal, file, NULL, TRUE, NULL, &error);
  g_assert_no_error (error);
  told->saved = told->n + 1;
}

/* Lives through the edits of a row, noting what the disk is told. */
static void
live (const Row *row, Digest *before)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  g_autoptr (DrawlBody) profile =
      drawl_body_ref (drawl_hired_body_get_body (drawl_plan_find_body (plan, "A")));
  g_autoptr (GError) error = NULL;

  memset (told, 0, sizeof *told);
  drawl_plan_save (plan, file, FALSE, NULL, &error);
  g_assert_no_error (error);
  digest_of (plan, before);
  told->states[0] = *before;
  g_signal_connect (plan, "changed", G_CALLBACK (on_changed), NULL);
  g_autoptr (DrawlJournal) journal = drawl_journal_open (plan, file, NULL, NULL);
  g_signal_connect (journal, "written", G_CALLBACK (on_written), NULL);
  for (guint i = 0; i < row->turns; i++)
    turn (plan, journal, profile, row);
  drawl_journal_flush (journal);
}

/* What had been told before the call. */
static void
on_call (NotedCall *call)
{
  call->n = told->n;
  call->written = told->written;
  call->saving = told->saving;
  call->saved = told->saved;
}

static void
test_cuts (gconstpointer data)
{
  g_autofree char *state_folder = drawl_journal_folder ();
  g_autofree char *path = g_file_get_path (file);
  g_autofree char *plan_folder = g_path_get_dirname (path);
  Disk disk = {0};
  Tally tally = {0};
  Digest before;
  guint disks = 0;

  fresh_state ();
  g_mkdir_with_parents (state_folder, 0700);
  noted_begin (on_call);
  live (data, &before);
  g_autoptr (GPtrArray) story = noted_end ();
  disk_init (&disk, state_folder, plan_folder);
  gboolean first_is_saved = FALSE;
  for (guint i = 0; i < story->len; i++) {
    const NotedCall *op = story->pdata[i];
    told->n = op->n;
    told->written = op->written;
    told->saving = op->saving;
    told->saved = op->saved;
    if (first_is_saved)
      disks += judge_all (&disk, &before, &tally);
    do_op (&disk, op);
    first_is_saved |= op->kind == NOTED_SYNC_FOLDER;
  }
  disk_clear (&disk);
  g_test_message ("%u calls, %u disks: %u journals left behind, %u later than what was told",
                  story->len, disks, tally.journals, tally.later);
}

int
main (int argc, char **argv)
{
  char *state = begin_state ();
  char *folder = g_dir_make_tmp ("drawl-power-XXXXXX", NULL);

  g_test_init (&argc, &argv, NULL);
  told = g_new0 (Told, 1);
  g_autofree char *path = g_build_filename (folder, "glass.drawl", NULL);
  file = g_file_new_for_path (path);
  add_rows ("/power-cut", rows, test_cuts);
  int rc = g_test_run ();
  g_clear_object (&file);
  remove_tree (folder);
  g_free (folder);
  g_free (told);
  end_state (state);
  return rc;
}
