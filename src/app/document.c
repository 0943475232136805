/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A plan and its file. Invariant: etag is that of the file as this document read or wrote it last,
 * NULL without a file; the first save over a file that was opened keeps what stood in it as a
 * backup; the journal follows the plan until the document is closed. Times in milliseconds. */

#include "app/document-private.h"

#include "app/same-file.h"
#include "core/text.h"
#include "plan/plan-file.h"

#define SAVE_DELAY_MS 5000

enum {
  PROP_TITLE = 1,
  PROP_NAME,
  PROP_MODIFIED,
  PROP_CHANGED,
  PROP_PROBLEM,
  PROP_SAVES_ITSELF,
  N_PROPS
};

static GParamSpec *props[N_PROPS];

G_DEFINE_FINAL_TYPE (DrawlDocument, drawl_document, G_TYPE_OBJECT)

/* ---- Object ---- */

static void
set_saves_itself (DrawlDocument *self, gboolean saves_itself)
{
  if (self->saves_itself == saves_itself)
    return;
  self->saves_itself = saves_itself;
  self->failed = FALSE;
  drawl_document_save_later (self);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SAVES_ITSELF]);
}

static void
drawl_document_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  DrawlDocument *self = DRAWL_DOCUMENT (object);

  switch (prop_id) {
  case PROP_TITLE:
    g_value_take_string (value, drawl_document_dup_title (self));
    break;
  case PROP_NAME:
    g_value_take_string (value, drawl_document_dup_name (self));
    break;
  case PROP_MODIFIED:
    g_value_set_boolean (value, drawl_document_get_modified (self));
    break;
  case PROP_CHANGED:
    g_value_set_boolean (value, self->changed);
    break;
  case PROP_PROBLEM:
    g_value_set_string (value, drawl_document_get_problem (self));
    break;
  case PROP_SAVES_ITSELF:
    g_value_set_boolean (value, self->saves_itself);
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
  }
}

static void
drawl_document_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  if (prop_id == PROP_SAVES_ITSELF)
    set_saves_itself (DRAWL_DOCUMENT (object), g_value_get_boolean (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static void
stop_watch (DrawlDocument *self)
{
  if (self->watch != NULL)
    drawl_file_watch_stop (self->watch);
  g_clear_object (&self->watch);
}

static void
drawl_document_dispose (GObject *object)
{
  DrawlDocument *self = DRAWL_DOCUMENT (object);

  g_clear_handle_id (&self->save_timer, g_source_remove);
  stop_watch (self);
  g_clear_object (&self->journal);
  g_clear_object (&self->plan);
  g_clear_object (&self->file);
  g_clear_pointer (&self->etag, g_free);
  G_OBJECT_CLASS (drawl_document_parent_class)->dispose (object);
}

static void
drawl_document_class_init (DrawlDocumentClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GParamFlags flags = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;

  object_class->get_property = drawl_document_get_property;
  object_class->set_property = drawl_document_set_property;
  object_class->dispose = drawl_document_dispose;

  props[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, NULL, flags);
  props[PROP_NAME] = g_param_spec_string ("name", NULL, NULL, NULL, flags);
  props[PROP_MODIFIED] = g_param_spec_boolean ("modified", NULL, NULL, FALSE, flags);
  props[PROP_CHANGED] = g_param_spec_boolean ("changed", NULL, NULL, FALSE, flags);
  props[PROP_PROBLEM] = g_param_spec_string ("problem", NULL, NULL, NULL, flags);
  props[PROP_SAVES_ITSELF] =
      g_param_spec_boolean ("saves-itself", NULL, NULL, FALSE, flags | G_PARAM_WRITABLE);
  g_object_class_install_properties (object_class, N_PROPS, props);

  g_signal_new ("save-failed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                G_TYPE_NONE, 1, G_TYPE_ERROR);
}

static void
drawl_document_init (DrawlDocument *self)
{
  self->save_delay_ms = SAVE_DELAY_MS;
}

/* ---- What is followed: the plan, the journal, the file ---- */

static void
on_plan_notify (DrawlDocument *self, GParamSpec *pspec)
{
  if (g_str_equal (pspec->name, "title"))
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_TITLE]);
  else if (g_str_equal (pspec->name, "modified"))
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_MODIFIED]);
}

static void
on_problem (DrawlDocument *self)
{
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_PROBLEM]);
}

void
drawl_document_set_changed (DrawlDocument *document, gboolean changed)
{
  if (!changed && !document->changed)
    return;
  document->changed = changed;
  g_object_notify_by_pspec (G_OBJECT (document), props[PROP_CHANGED]);
}

static void
on_file_changed (DrawlDocument *self)
{
  drawl_document_set_changed (self, TRUE);
}

void
drawl_document_open_journal (DrawlDocument *document, DrawlJournalEntry *entry)
{
  document->journal = drawl_journal_open (document->plan, document->file, document->etag, entry);
  g_signal_connect_object (document->journal, "notify::problem", G_CALLBACK (on_problem), document,
                           G_CONNECT_SWAPPED);
}

void
drawl_document_start_watch (DrawlDocument *document)
{
  stop_watch (document);
  document->watch = drawl_file_watch_new (document->file, document->etag);
  g_signal_connect_object (document->watch, "changed", G_CALLBACK (on_file_changed), document,
                           G_CONNECT_SWAPPED);
  drawl_document_set_changed (document, FALSE);
}

/* Takes over all but @entry. */
static DrawlDocument *
document_for (DrawlPlan *plan, GFile *file, char *etag, DrawlJournalEntry *entry)
{
  DrawlDocument *self = g_object_new (DRAWL_TYPE_DOCUMENT, NULL);

  self->plan = plan;
  self->file = file;
  self->etag = etag;
  g_signal_connect_object (plan, "notify", G_CALLBACK (on_plan_notify), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (plan, "changed", G_CALLBACK (drawl_document_save_later), self,
                           G_CONNECT_SWAPPED);
  drawl_document_open_journal (self, entry);
  if (file != NULL)
    drawl_document_start_watch (self);
  return self;
}

/* ---- Open and close ---- */

DrawlDocument *
drawl_document_new (gint64 mains_hz)
{
  g_autoptr (DrawlPlan) plan = drawl_plan_new ();
  g_autoptr (DrawlPlanSettings) settings =
      drawl_plan_settings_copy (drawl_plan_get_settings (plan));
  g_autoptr (GPtrArray) none = g_ptr_array_new ();

  settings->mains_hz = mains_hz;
  drawl_plan_fill (plan, settings, none, none, NULL);
  return document_for (g_steal_pointer (&plan), NULL, NULL, NULL);
}

DrawlDocument *
drawl_document_open (GFile *file, GError **error)
{
  g_autofree char *etag = NULL;
  DrawlPlan *plan = drawl_plan_load (file, &etag, error);

  return plan != NULL ? document_for (plan, g_object_ref (file), g_steal_pointer (&etag), NULL)
                      : NULL;
}

DrawlDocument *
drawl_document_open_copy (GFile *file, GError **error)
{
  DrawlPlan *plan = drawl_plan_load (file, NULL, error);

  return plan != NULL ? document_for (plan, NULL, NULL, NULL) : NULL;
}

DrawlDocument *
drawl_document_recover (DrawlJournalEntry *entry, GError **error)
{
  g_autoptr (GFile) file = NULL;
  DrawlPlan *plan = drawl_journal_entry_recover (entry, error);

  if (plan == NULL)
    return NULL;
  g_set_object (&file, drawl_journal_entry_get_file (entry));
  DrawlDocument *self = document_for (plan, g_steal_pointer (&file),
                                      g_strdup (drawl_journal_entry_get_etag (entry)), entry);
  drawl_document_look_at_file (self);
  return self;
}

void
drawl_document_close (DrawlDocument *document)
{
  g_clear_handle_id (&document->save_timer, g_source_remove);
  g_signal_handlers_disconnect_by_data (document->plan, document);
  stop_watch (document);
  if (document->journal != NULL)
    drawl_journal_close (document->journal);
  g_clear_object (&document->journal);
}

/* ---- Asking ---- */

DrawlPlan *
drawl_document_get_plan (DrawlDocument *document)
{
  return document->plan;
}

GFile *
drawl_document_get_file (DrawlDocument *document)
{
  return document->file;
}

gboolean
drawl_document_is_of (DrawlDocument *document, GFile *file)
{
  return document->file != NULL && drawl_same_file (document->file, file);
}

char *
drawl_document_dup_title (DrawlDocument *document)
{
  const char *title = drawl_plan_get_settings (document->plan)->title;

  return g_strdup (title != NULL && *title != '\0' ? title : _ ("Untitled Plan"));
}

char *
drawl_document_dup_name (DrawlDocument *document)
{
  if (document->file == NULL)
    return g_strdup (_ ("Not saved yet"));
  g_autofree char *base = g_file_get_basename (document->file);
  return g_filename_display_name (base);
}

gboolean
drawl_document_get_modified (DrawlDocument *document)
{
  return drawl_plan_get_modified (document->plan);
}

gboolean
drawl_document_get_changed (DrawlDocument *document)
{
  return document->changed;
}

const char *
drawl_document_get_problem (DrawlDocument *document)
{
  return document->journal != NULL ? drawl_journal_get_problem (document->journal) : NULL;
}

void
drawl_document_look_at_file (DrawlDocument *document)
{
  if (document->watch != NULL)
    drawl_file_watch_look (document->watch);
}

void
drawl_document_flush (DrawlDocument *document)
{
  if (document->journal != NULL)
    drawl_journal_flush (document->journal);
}
