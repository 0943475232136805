/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Journals left behind. An entry is made of what stands in the file while its lock is held, so that
 * nothing changes under it; whatever stands there, it is listed and not believed. */

#include "plan/journal-entry.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <string.h>

#include "core/text.h"
#include "plan/error.h"
#include "plan/journal-state.h"
#include "plan/json-file.h"
#include "plan/plan-file.h"

struct _DrawlJournalEntry {
  GObject parent_instance;
  char *path;
  DrawlJournalStore *store; /* NULL when the file could not even be opened, or was handed on */
  gboolean handed_on;
  DrawlJournalState *state; /* NULL when the file could not even be opened */
  GFile *file;
  char *title;
  GDateTime *time;
  char *problem;
};

G_DEFINE_FINAL_TYPE (DrawlJournalEntry, drawl_journal_entry, G_TYPE_OBJECT)

static void
drawl_journal_entry_finalize (GObject *object)
{
  DrawlJournalEntry *self = DRAWL_JOURNAL_ENTRY (object);

  g_clear_pointer (&self->store, drawl_journal_store_free);
  g_clear_pointer (&self->state, drawl_journal_state_free);
  g_clear_object (&self->file);
  g_clear_pointer (&self->time, g_date_time_unref);
  g_free (self->title);
  g_free (self->problem);
  g_free (self->path);
  G_OBJECT_CLASS (drawl_journal_entry_parent_class)->finalize (object);
}

static void
drawl_journal_entry_class_init (DrawlJournalEntryClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = drawl_journal_entry_finalize;
}

static void
drawl_journal_entry_init (DrawlJournalEntry *self)
{
}

/* ---- Making ---- */

/* NULL for a time that no calendar has. */
static GDateTime *
time_of (gint64 edited_us)
{
  g_autoptr (GDateTime) utc = g_date_time_new_from_unix_utc (edited_us / G_USEC_PER_SEC);

  return edited_us > 0 && utc != NULL ? g_date_time_to_local (utc) : NULL;
}

static void
take_state (DrawlJournalEntry *self, DrawlJournalState *state)
{
  self->state = state;
  self->file = state->uri != NULL ? g_file_new_for_uri (state->uri) : NULL;
  self->title = drawl_journal_state_title (state);
  self->time = time_of (state->edited_us);
  self->problem = g_strdup (state->problem);
}

/* NULL when the journal belongs to a living program. */
static DrawlJournalEntry *
entry_new (const char *path)
{
  g_autoptr (DrawlJournalEntry) self = g_object_new (DRAWL_TYPE_JOURNAL_ENTRY, NULL);
  g_autoptr (GError) error = NULL;
  g_autofree char *data = NULL;
  gboolean in_use;
  gsize length = 0;

  self->path = g_strdup (path);
  self->store = drawl_journal_store_open (path, &in_use, &data, &length, &error);
  if (in_use)
    return NULL;
  if (self->store != NULL)
    take_state (self, drawl_journal_state_read (data, length));
  else
    self->problem = g_strdup (error->message);
  return g_steal_pointer (&self);
}

/* Whether the last thing that the lost program did was to save all of this, and it succeeded. Only
 * of files that are at hand: a server that is away must not hold up the start. */
static gboolean
was_saved (DrawlJournalEntry *self)
{
  if (self->state == NULL || self->state->saving_uri == NULL || self->problem != NULL)
    return FALSE;

  g_autoptr (GFile) file = g_file_new_for_uri (self->state->saving_uri);
  g_autoptr (GBytes) bytes = NULL;
  if (!g_file_is_native (file) ||
      g_file_query_file_type (file, G_FILE_QUERY_INFO_NONE, NULL) != G_FILE_TYPE_REGULAR ||
      (bytes = drawl_json_read (file, NULL, NULL)) == NULL)
    return FALSE;
  g_autofree char *digest = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, bytes);
  return g_str_equal (digest, self->state->saving_digest);
}

/* A journal that was still being begun when its program died: nothing in it was ever told to be
 * safe. Its owner, if it lives, holds the lock. */
static void
clear_away (const char *path)
{
  gboolean in_use;
  g_autoptr (DrawlJournalStore) store = drawl_journal_store_open (path, &in_use, NULL, NULL, NULL);

  if (store != NULL)
    drawl_journal_store_remove (store, NULL);
}

static void
list_one (GPtrArray *entries, const char *path)
{
  g_autoptr (DrawlJournalEntry) entry = NULL;

  if (g_str_has_suffix (path, DRAWL_JOURNAL_NEW_SUFFIX)) {
    clear_away (path);
    return;
  }
  if (!g_str_has_suffix (path, DRAWL_JOURNAL_SUFFIX) || (entry = entry_new (path)) == NULL)
    return;
  if (was_saved (entry))
    drawl_journal_store_remove (entry->store, NULL);
  else
    g_ptr_array_add (entries, g_steal_pointer (&entry));
}

static int
compare_times (gconstpointer a, gconstpointer b)
{
  DrawlJournalEntry *one = *(DrawlJournalEntry *const *)a, *other = *(DrawlJournalEntry *const *)b;
  gint64 time = one->state != NULL ? one->state->edited_us : 0;
  gint64 other_time = other->state != NULL ? other->state->edited_us : 0;

  return time != other_time ? (time < other_time ? 1 : -1) : strcmp (one->path, other->path);
}

GPtrArray *
drawl_journal_list (GError **error)
{
  g_autoptr (GPtrArray) entries = g_ptr_array_new_with_free_func (g_object_unref);
  g_autofree char *folder = drawl_journal_folder ();
  g_autoptr (GError) local = NULL;
  g_autoptr (GDir) dir = g_dir_open (folder, 0, &local);
  const char *name;

  if (dir == NULL && !g_error_matches (local, G_FILE_ERROR, G_FILE_ERROR_NOENT)) {
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_READ,
                 _ ("what was left unsaved could not be looked for: %s"), local->message);
    return NULL;
  }
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (folder, name, NULL);
    list_one (entries, path);
  }
  g_ptr_array_sort (entries, compare_times);
  return g_steal_pointer (&entries);
}

/* ---- Asking ---- */

GFile *
drawl_journal_entry_get_file (DrawlJournalEntry *entry)
{
  return entry->file;
}

const char *
drawl_journal_entry_get_etag (DrawlJournalEntry *entry)
{
  return entry->state != NULL ? entry->state->etag : NULL;
}

const char *
drawl_journal_entry_get_title (DrawlJournalEntry *entry)
{
  return entry->title != NULL ? entry->title : "";
}

GDateTime *
drawl_journal_entry_get_time (DrawlJournalEntry *entry)
{
  return entry->time;
}

gint64
drawl_journal_entry_get_edits (DrawlJournalEntry *entry)
{
  return entry->state != NULL ? entry->state->edits : 0;
}

const char *
drawl_journal_entry_get_problem (DrawlJournalEntry *entry)
{
  return entry->problem;
}

gboolean
drawl_journal_entry_can_recover (DrawlJournalEntry *entry)
{
  return entry->state != NULL && entry->state->head != NULL;
}

const char *
drawl_journal_entry_get_path (DrawlJournalEntry *entry)
{
  return entry->path;
}

/* ---- Doing ---- */

DrawlPlan *
drawl_journal_entry_recover (DrawlJournalEntry *entry, GError **error)
{
  gsize length;

  if (entry->state == NULL) {
    g_set_error_literal (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_READ, entry->problem);
    return NULL;
  }
  g_autofree char *text = drawl_journal_state_text (entry->state, &length, error);
  if (text == NULL)
    return NULL;
  DrawlPlan *plan = drawl_plan_from_data (text, length, _ ("unsaved work"), error);
  if (plan != NULL)
    drawl_plan_mark_unsaved (plan);
  return plan;
}

gboolean
drawl_journal_entry_discard (DrawlJournalEntry *entry, GError **error)
{
  g_return_val_if_fail (!entry->handed_on, FALSE);

  if (entry->store != NULL)
    return drawl_journal_store_remove (entry->store, error);
  if (g_remove (entry->path) == 0 || errno == ENOENT)
    return TRUE;
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_WRITE, _ ("%s could not be deleted: %s"),
               entry->path, g_strerror (errno));
  return FALSE;
}

DrawlJournalStore *
drawl_journal_entry_steal_store (DrawlJournalEntry *entry)
{
  entry->handed_on = TRUE;
  return g_steal_pointer (&entry->store);
}
