/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The journal of one plan. Each record says what is new against the state that stood in the journal
 * before, so that an edit costs a record of some hundred bytes; the first one stands for the whole
 * plan. On 10,000 shots (2.7 MB; tests/bench/journal-10000) an edit holds the window up for 0.05 ms
 * and the beginning of a journal for 4 ms; the text of the whole plan would take 45 ms each time.
 * Invariant: `basis` is what the last record of the store leads to, NULL when that is nothing; one
 * write is under way at most, and only it touches the store then. */

#include "plan/journal.h"

#include <string.h>

#include "plan/journal-write.h"
#include "plan/json-file.h"
#include "plan/json-text.h"
#include "plan/plan-file.h"

/* Until what failed is tried again. */
#define RETRY_MS 5000

enum { PROP_PROBLEM = 1, N_PROPS };

static GParamSpec *props[N_PROPS];
static guint written_signal;

struct _DrawlJournal {
  GObject parent_instance;
  DrawlPlan *plan;
  GFile *file; /* of the plan, or NULL */
  char *etag;
  GMainContext *context;
  GSource *timer;
  guint delay_ms;
  DrawlJournalStore *store;
  DrawlJournalBasis *basis;
  GTask *task; /* of the write under way, or NULL */
  gboolean news;
  guint64 total; /* edits since the journal was opened */
  gint64 before; /* edits, less those of `total`, since the plan was saved */
  gint64 edited_us;
  char *problem;
};

G_DEFINE_FINAL_TYPE (DrawlJournal, drawl_journal, G_TYPE_OBJECT)

static void schedule (DrawlJournal *self, guint delay_ms);

static void
set_problem (DrawlJournal *self, const char *problem)
{
  if (g_strcmp0 (self->problem, problem) == 0)
    return;
  g_free (self->problem);
  self->problem = g_strdup (problem);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_PROBLEM]);
}

/* ---- Writing ---- */

static void
append_text (GString *json, const char *key, const char *value)
{
  if (value == NULL)
    return;
  g_string_append (json, json->len > 1 ? ", " : "");
  drawl_json_append_string (json, key);
  g_string_append (json, ": ");
  drawl_json_append_string (json, value);
}

/* The first record: whose journal it is. */
static char *
head_text (DrawlJournal *self)
{
  g_autofree char *uri = self->file != NULL ? g_file_get_uri (self->file) : NULL;
  GString *json = g_string_new ("{");

  append_text (json, "file", uri);
  append_text (json, "etag", self->file != NULL ? self->etag : NULL);
  g_string_append_c (json, '}');
  return g_string_free (json, FALSE);
}

/* Takes in how the write under way, which is done, has ended. */
static void
finish (DrawlJournal *self)
{
  g_autoptr (GTask) task = g_steal_pointer (&self->task);
  DrawlJournalWrite *write = g_task_get_task_data (task);
  g_autoptr (DrawlJournalBasis) after = g_steal_pointer (&write->after);

  if (write->error != NULL) {
    self->news = TRUE;
    schedule (self, RETRY_MS);
    set_problem (self, write->error->message);
    return;
  }
  g_clear_pointer (&self->basis, drawl_journal_basis_free);
  self->basis = g_steal_pointer (&after);
  if (self->news && self->timer == NULL) /* it has rung meanwhile */
    schedule (self, 0);
  set_problem (self, NULL);
  g_signal_emit (self, written_signal, 0, write->total);
}

/* Whoever waited for the write has finished it before this comes, and the journal may be gone. */
static void
on_written (GObject *source, GAsyncResult *result, gpointer data)
{
  GWeakRef *ref = data;
  g_autoptr (DrawlJournal) self = g_weak_ref_get (ref);

  g_weak_ref_clear (ref);
  g_free (ref);
  if (self != NULL && G_TASK (result) == self->task)
    finish (self);
}

static void
wait_for_write (DrawlJournal *self)
{
  if (self->task == NULL)
    return;
  drawl_journal_write_wait (g_task_get_task_data (self->task));
  finish (self);
}

static void
start_write (DrawlJournal *self)
{
  DrawlJournalWrite *write = g_new0 (DrawlJournalWrite, 1);
  GWeakRef *ref = g_new0 (GWeakRef, 1);
  gboolean whole = self->basis == NULL || drawl_journal_store_wants_whole (self->store);

  write->store = self->store;
  write->head = whole ? head_text (self) : NULL;
  write->after = drawl_journal_basis_new (self->plan);
  write->delta = drawl_journal_delta_new (self->plan, whole ? NULL : self->basis, write->after);
  write->edited_us = self->edited_us;
  write->edits = self->before + (gint64)self->total;
  write->total = self->total;
  self->news = FALSE;
  g_weak_ref_init (ref, self);
  self->task = drawl_journal_write_start (write, on_written, ref);
}

static void
empty (DrawlJournal *self)
{
  g_autoptr (GError) error = NULL;

  wait_for_write (self);
  g_clear_pointer (&self->basis, drawl_journal_basis_free);
  self->news = FALSE;
  self->before = -(gint64)self->total;
  if (!drawl_journal_store_remove (self->store, &error))
    set_problem (self, error->message);
}

/* ---- When ---- */

static void
stop_timer (DrawlJournal *self)
{
  if (self->timer != NULL)
    g_source_destroy (self->timer);
  g_clear_pointer (&self->timer, g_source_unref);
}

/* A write under way looks by itself, at its end, whether there is more. */
static void
look (DrawlJournal *self)
{
  if (!drawl_plan_get_modified (self->plan))
    empty (self);
  else if (self->news && self->task == NULL)
    start_write (self);
}

static gboolean
on_timer (gpointer data)
{
  DrawlJournal *self = data;

  stop_timer (self);
  look (self);
  return G_SOURCE_REMOVE;
}

/* Edits that follow go with the one that is waiting, which waits no longer for them; but no edit
 * waits until a failure is tried again. */
static void
schedule (DrawlJournal *self, guint delay_ms)
{
  gint64 due_us = g_get_monotonic_time () + delay_ms * G_TIME_SPAN_MILLISECOND;

  if (self->timer != NULL && g_source_get_ready_time (self->timer) <= due_us)
    return;
  stop_timer (self);
  self->timer = g_timeout_source_new (delay_ms);
  g_source_set_callback (self->timer, on_timer, self, NULL);
  g_source_attach (self->timer, self->context);
}

static void
on_changed (DrawlJournal *self)
{
  self->total++;
  self->edited_us = g_get_real_time ();
  self->news = TRUE;
  schedule (self, self->delay_ms);
}

static void
on_modified (DrawlJournal *self)
{
  schedule (self, self->delay_ms);
}

/* ---- Object ---- */

static void
drawl_journal_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  if (prop_id == PROP_PROBLEM)
    g_value_set_string (value, DRAWL_JOURNAL (object)->problem);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static void
drawl_journal_finalize (GObject *object)
{
  DrawlJournal *self = DRAWL_JOURNAL (object);

  stop_timer (self);
  if (self->task != NULL) {
    DrawlJournalWrite *write = g_task_get_task_data (self->task);
    drawl_journal_write_wait (write);
    g_clear_pointer (&write->after, drawl_journal_basis_free);
    g_object_unref (self->task);
  }
  drawl_journal_store_free (self->store);
  drawl_journal_basis_free (self->basis);
  g_clear_object (&self->plan);
  g_clear_object (&self->file);
  g_main_context_unref (self->context);
  g_free (self->etag);
  g_free (self->problem);
  G_OBJECT_CLASS (drawl_journal_parent_class)->finalize (object);
}

static void
drawl_journal_class_init (DrawlJournalClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = drawl_journal_get_property;
  object_class->finalize = drawl_journal_finalize;

  props[PROP_PROBLEM] =
      g_param_spec_string ("problem", NULL, NULL, NULL,
                           G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, props);

  written_signal = g_signal_new ("written", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 1, G_TYPE_UINT64);
}

static void
drawl_journal_init (DrawlJournal *self)
{
  self->context = g_main_context_ref_thread_default ();
  self->delay_ms = DRAWL_JOURNAL_DELAY_MS;
}

DrawlJournal *
drawl_journal_open (DrawlPlan *plan, GFile *file, const char *etag, DrawlJournalEntry *entry)
{
  DrawlJournal *self = g_object_new (DRAWL_TYPE_JOURNAL, NULL);

  self->plan = g_object_ref (plan);
  g_set_object (&self->file, file);
  self->etag = g_strdup (etag);
  self->edited_us = g_get_real_time ();
  if (entry != NULL) {
    self->store = drawl_journal_entry_steal_store (entry);
    self->before = drawl_journal_entry_get_edits (entry);
  }
  /* What was recovered is safe in the entry's journal; what else is unsaved stands nowhere yet. */
  self->news = self->store == NULL && drawl_plan_get_modified (plan);
  if (self->store == NULL)
    self->store = drawl_journal_store_new ();
  if (self->news)
    schedule (self, self->delay_ms);
  g_signal_connect_object (plan, "changed", G_CALLBACK (on_changed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (plan, "notify::modified", G_CALLBACK (on_modified), self,
                           G_CONNECT_SWAPPED);
  return self;
}

void
drawl_journal_close (DrawlJournal *journal)
{
  g_signal_handlers_disconnect_by_data (journal->plan, journal);
  empty (journal);
  stop_timer (journal);
}

gboolean
drawl_journal_flush (DrawlJournal *journal)
{
  stop_timer (journal);
  wait_for_write (journal);
  look (journal);
  wait_for_write (journal);
  return !journal->news;
}

/* ---- Saving ---- */

/* A journal that can be added to; FALSE when none is there or can be. */
static gboolean
make_ready (DrawlJournal *self)
{
  wait_for_write (self);
  if (!drawl_journal_store_is_begun (self->store))
    return FALSE;
  if (self->basis != NULL && !drawl_journal_store_wants_whole (self->store))
    return TRUE;
  start_write (self);
  wait_for_write (self);
  return self->problem == NULL;
}

/* Says what is about to be saved where, so that after a kill it can be told whether it was. */
static void
announce (DrawlJournal *self, GFile *file, const char *text, gsize length)
{
  g_autofree char *uri = g_file_get_uri (file);
  g_autofree char *digest =
      g_compute_checksum_for_data (G_CHECKSUM_SHA256, (const guchar *)text, length);
  g_autoptr (GString) json = g_string_new ("{");
  g_autoptr (GError) error = NULL;

  append_text (json, "saving", digest);
  append_text (json, "file", uri);
  g_string_append_c (json, '}');
  if (!drawl_journal_store_append (self->store, json->str, json->len, &error))
    set_problem (self, error->message);
}

gboolean
drawl_journal_save (DrawlJournal *journal, GFile *file, const char *expected_etag, gboolean backup,
                    char **etag, GError **error)
{
  g_autofree char *written_etag = NULL;
  gsize length;
  g_autofree char *text = drawl_plan_to_data (journal->plan, &length);

  if (make_ready (journal))
    announce (journal, file, text, length);
  if (!drawl_json_save_unless_changed (file, text, length, backup, expected_etag, &written_etag,
                                       error))
    return FALSE;
  empty (journal);
  drawl_plan_mark_saved (journal->plan);
  g_set_object (&journal->file, file);
  g_free (journal->etag);
  journal->etag = g_strdup (written_etag);
  if (etag != NULL)
    *etag = g_steal_pointer (&written_etag);
  return TRUE;
}

const char *
drawl_journal_get_problem (DrawlJournal *journal)
{
  return journal->problem;
}

void
drawl_journal_set_delay (DrawlJournal *journal, guint delay_ms)
{
  journal->delay_ms = delay_ms;
}
