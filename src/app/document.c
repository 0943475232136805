/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A plan and its file. Invariant: etag is that of the file as this document read or wrote it last,
 * NULL without a file; the first save over a file that was opened keeps what stood in it as a
 * backup. */

#include "app/document.h"

#include "core/text.h"
#include "plan/plan-file.h"

enum { PROP_TITLE = 1, PROP_NAME, PROP_MODIFIED, N_PROPS };

static GParamSpec *props[N_PROPS];

struct _DrawlDocument {
  GObject parent_instance;
  DrawlPlan *plan;
  GFile *file;
  char *etag;
  gboolean backed_up;
};

G_DEFINE_FINAL_TYPE (DrawlDocument, drawl_document, G_TYPE_OBJECT)
G_DEFINE_QUARK (drawl_document_error, drawl_document_error)

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
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
  }
}

static void
drawl_document_dispose (GObject *object)
{
  DrawlDocument *self = DRAWL_DOCUMENT (object);

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
  object_class->dispose = drawl_document_dispose;

  props[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, NULL, flags);
  props[PROP_NAME] = g_param_spec_string ("name", NULL, NULL, NULL, flags);
  props[PROP_MODIFIED] = g_param_spec_boolean ("modified", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
drawl_document_init (DrawlDocument *self)
{
}

static void
on_plan_notify (DrawlDocument *self, GParamSpec *pspec)
{
  if (g_str_equal (pspec->name, "title"))
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_TITLE]);
  else if (g_str_equal (pspec->name, "modified"))
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_MODIFIED]);
}

/* Takes over @plan. */
static DrawlDocument *
document_for (DrawlPlan *plan)
{
  DrawlDocument *self = g_object_new (DRAWL_TYPE_DOCUMENT, NULL);

  self->plan = plan;
  g_signal_connect_object (plan, "notify", G_CALLBACK (on_plan_notify), self, G_CONNECT_SWAPPED);
  return self;
}

DrawlDocument *
drawl_document_new (gint64 mains_hz)
{
  g_autoptr (DrawlPlan) plan = drawl_plan_new ();
  g_autoptr (DrawlPlanSettings) settings =
      drawl_plan_settings_copy (drawl_plan_get_settings (plan));
  g_autoptr (GPtrArray) none = g_ptr_array_new ();

  settings->mains_hz = mains_hz;
  drawl_plan_fill (plan, settings, none, none, NULL);
  return document_for (g_steal_pointer (&plan));
}

DrawlDocument *
drawl_document_open (GFile *file, GError **error)
{
  g_autofree char *etag = NULL;
  DrawlPlan *plan = drawl_plan_load (file, &etag, error);

  if (plan == NULL)
    return NULL;
  DrawlDocument *self = document_for (plan);
  self->file = g_object_ref (file);
  self->etag = g_steal_pointer (&etag);
  return self;
}

DrawlDocument *
drawl_document_open_copy (GFile *file, GError **error)
{
  DrawlPlan *plan = drawl_plan_load (file, NULL, error);

  return plan != NULL ? document_for (plan) : NULL;
}

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

/* A file that has gone counts as unchanged: saving brings it back and harms nobody's work. */
static gboolean
changed_elsewhere (DrawlDocument *self)
{
  g_autoptr (GFileInfo) info = g_file_query_info (self->file, G_FILE_ATTRIBUTE_ETAG_VALUE,
                                                  G_FILE_QUERY_INFO_NONE, NULL, NULL);

  return info != NULL && self->etag != NULL &&
         g_strcmp0 (g_file_info_get_etag (info), self->etag) != 0;
}

static gboolean
write_to (DrawlDocument *self, GFile *file, gboolean backup, GError **error)
{
  g_autofree char *etag = NULL;

  if (!drawl_plan_save (self->plan, file, backup, &etag, error))
    return FALSE;
  g_free (self->etag);
  self->etag = g_steal_pointer (&etag);
  self->backed_up = TRUE;
  if (g_set_object (&self->file, file))
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_NAME]);
  return TRUE;
}

gboolean
drawl_document_save (DrawlDocument *document, gboolean force, GError **error)
{
  if (!force && changed_elsewhere (document)) {
    g_autofree char *name = drawl_document_dup_name (document);
    g_set_error (error, DRAWL_DOCUMENT_ERROR, DRAWL_DOCUMENT_ERROR_CHANGED,
                 _ ("“%s” has been changed by another program since it was last read here"), name);
    return FALSE;
  }
  g_autoptr (GFile) file = g_object_ref (document->file);
  return write_to (document, file, force || !document->backed_up, error);
}

gboolean
drawl_document_save_as (DrawlDocument *document, GFile *file, GError **error)
{
  return write_to (document, file, TRUE, error);
}
