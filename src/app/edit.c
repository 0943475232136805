/* SPDX-License-Identifier: GPL-3.0-or-later */

/* An entry of a plan. Invariant: unless something is pending, the entry shows the value; an error
 * stands only while something is pending. */

#include "app/edit.h"

#include "app/message.h"

struct _DrawlEdit {
  GObject parent_instance;
  GtkEditable *editable; /* owns this */
  char *value;
  char *error;
  char *description;
  gboolean pending; /* something was typed and not taken yet */
  gboolean filling; /* the text changes by itself, nobody types */
};

enum { PROP_ERROR = 1, N_PROPS };
enum { COMMIT, N_SIGNALS };

static GParamSpec *props[N_PROPS];
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (DrawlEdit, drawl_edit, G_TYPE_OBJECT)

static void
tell_state (DrawlEdit *self)
{
  GtkWidget *widget = GTK_WIDGET (self->editable);
  GtkAccessible *accessible = GTK_ACCESSIBLE (widget);
  const char *words = self->error != NULL ? self->error : self->description;

  if (self->error != NULL) {
    gtk_widget_add_css_class (widget, "error");
    gtk_accessible_update_state (accessible, GTK_ACCESSIBLE_STATE_INVALID,
                                 GTK_ACCESSIBLE_INVALID_TRUE, -1);
  } else {
    gtk_widget_remove_css_class (widget, "error");
    gtk_accessible_reset_state (accessible, GTK_ACCESSIBLE_STATE_INVALID);
  }
  if (words != NULL)
    gtk_accessible_update_property (accessible, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
  else
    gtk_accessible_reset_property (accessible, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
}

static void
set_error (DrawlEdit *self, const char *error)
{
  if (g_strcmp0 (self->error, error) == 0)
    return;
  g_free (self->error);
  self->error = g_strdup (error);
  tell_state (self);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_ERROR]);
}

/* Shows the value; the cursor keeps its place as far as it can. */
static void
show_value (DrawlEdit *self)
{
  int position = gtk_editable_get_position (self->editable);

  if (g_str_equal (gtk_editable_get_text (self->editable), self->value))
    return;
  self->filling = TRUE;
  gtk_editable_set_text (self->editable, self->value);
  gtk_editable_set_position (self->editable, position);
  self->filling = FALSE;
}

static void
on_typed (DrawlEdit *self)
{
  if (!self->filling)
    self->pending = TRUE;
}

static gboolean
on_key (DrawlEdit *self, guint key)
{
  if (key != GDK_KEY_Escape || !self->pending)
    return GDK_EVENT_PROPAGATE;
  drawl_edit_restore (self);
  return GDK_EVENT_STOP;
}

static void
drawl_edit_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  g_value_set_string (value, DRAWL_EDIT (object)->error);
}

static void
drawl_edit_finalize (GObject *object)
{
  DrawlEdit *self = DRAWL_EDIT (object);

  g_free (self->value);
  g_free (self->error);
  g_free (self->description);
  G_OBJECT_CLASS (drawl_edit_parent_class)->finalize (object);
}

static void
drawl_edit_class_init (DrawlEditClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = drawl_edit_get_property;
  object_class->finalize = drawl_edit_finalize;

  props[PROP_ERROR] =
      g_param_spec_string ("error", NULL, NULL, NULL,
                           G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, props);
  signals[COMMIT] = g_signal_new ("commit", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                  NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
drawl_edit_init (DrawlEdit *self)
{
  self->value = g_strdup ("");
}

DrawlEdit *
drawl_edit_new (GtkEditable *editable)
{
  DrawlEdit *self = g_object_new (DRAWL_TYPE_EDIT, NULL);
  GtkEditable *delegate = gtk_editable_get_delegate (editable);
  GtkWidget *text = GTK_WIDGET (delegate != NULL ? delegate : editable);
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *key = gtk_event_controller_key_new ();

  self->editable = editable;
  g_object_set_data_full (G_OBJECT (editable), "drawl-edit", self, g_object_unref);
  /* Undo is the plan's: Ctrl+Z takes back the last edit, not the last letter. */
  gtk_editable_set_enable_undo (editable, FALSE);

  g_signal_connect_object (editable, "changed", G_CALLBACK (on_typed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (text, "activate", G_CALLBACK (drawl_edit_commit), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (focus, "leave", G_CALLBACK (drawl_edit_commit), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (key, "key-pressed", G_CALLBACK (on_key), self, G_CONNECT_SWAPPED);
  gtk_widget_add_controller (text, focus);
  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  gtk_widget_add_controller (text, key);
  return self;
}

void
drawl_edit_set_value (DrawlEdit *edit, const char *value)
{
  if (!g_str_equal (edit->value, value)) {
    g_free (edit->value);
    edit->value = g_strdup (value);
  }
  if (!edit->pending)
    show_value (edit);
}

const char *
drawl_edit_get_value (DrawlEdit *edit)
{
  return edit->value;
}

void
drawl_edit_set_description (DrawlEdit *edit, const char *description)
{
  if (g_strcmp0 (edit->description, description) == 0)
    return;
  g_free (edit->description);
  edit->description = g_strdup (description);
  tell_state (edit);
}

gboolean
drawl_edit_commit (DrawlEdit *edit)
{
  if (!edit->pending)
    return TRUE;

  g_autofree char *text = g_strdup (gtk_editable_get_text (edit->editable));
  if (g_str_equal (text, edit->value)) {
    drawl_edit_restore (edit);
    return TRUE;
  }
  /* The handler refuses, or else what was typed is taken; the plan may tell of it meanwhile. */
  edit->pending = FALSE;
  g_signal_emit (edit, signals[COMMIT], 0, text);
  if (!edit->pending) {
    set_error (edit, NULL);
    show_value (edit);
  }
  return !edit->pending;
}

gboolean
drawl_edit_type (DrawlEdit *edit, const char *text)
{
  gtk_editable_set_text (edit->editable, text);
  return drawl_edit_commit (edit);
}

void
drawl_edit_restore (DrawlEdit *edit)
{
  edit->pending = FALSE;
  show_value (edit);
  set_error (edit, NULL);
}

void
drawl_edit_refuse (DrawlEdit *edit, const char *why)
{
  edit->pending = TRUE;
  set_error (edit, why);
}

void
drawl_edit_refuse_error (DrawlEdit *edit, const GError *error)
{
  g_autofree char *why = drawl_message_sentence (error);

  drawl_edit_refuse (edit, why);
}

void
drawl_edit_bring_back (DrawlEdit *edit, const char *text, const char *why)
{
  gtk_editable_set_text (edit->editable, text);
  drawl_edit_refuse (edit, why);
}

const char *
drawl_edit_get_text (DrawlEdit *edit)
{
  return gtk_editable_get_text (edit->editable);
}

gboolean
drawl_edit_is_pending (DrawlEdit *edit)
{
  return edit->pending;
}

const char *
drawl_edit_get_error (DrawlEdit *edit)
{
  return edit->error;
}
