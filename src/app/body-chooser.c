/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The choice of a body. Profiles are read once, when the window opens; those that cannot be read
 * are named with the reason. */

#include "app/body-chooser.h"

#include "app/body-editor.h"
#include "app/focus.h"
#include "app/message.h"
#include "core/text.h"
#include "plan/body-file.h"
#include "plan/figure.h"

struct _DrawlBodyChooser {
  AdwWindow parent_instance;
  GtkFileChooserNative *native;
  GtkWidget *list_box, *none_label, *problems_label;
};

static guint chosen_signal;

G_DEFINE_FINAL_TYPE (DrawlBodyChooser, drawl_body_chooser, ADW_TYPE_WINDOW)

static void
choose (DrawlBodyChooser *self, DrawlBody *body)
{
  g_signal_emit (self, chosen_signal, 0, body);
  gtk_window_close (GTK_WINDOW (self));
}

static void
on_row_activated (DrawlBodyChooser *self, GtkWidget *row)
{
  choose (self, g_object_get_data (G_OBJECT (row), "body"));
}

static DrawlRate
top_rate_of (const DrawlBody *body)
{
  DrawlRate top = drawl_rational_whole (0);

  for (guint i = 0; i < body->n_limits; i++)
    if (drawl_rational_compare (body->limits[i].highest, top) > 0)
      top = body->limits[i].highest;
  return top;
}

static GtkWidget *
row_for (DrawlBodyChooser *self, DrawlBody *body)
{
  GtkWidget *row = adw_action_row_new ();
  g_autofree char *top = drawl_figure_rate (top_rate_of (body));
  g_autofree char *price = drawl_figure_money (body->price, body->currency);
  /* Translators: what a body is; its highest rate, its price of hire. */
  g_autofree char *subtitle =
      g_strdup_printf (_ ("%s\nUp to %s · %s a day"), body->what, top, price);

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), body->name);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), subtitle);
  adw_action_row_set_subtitle_lines (ADW_ACTION_ROW (row), 0);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row),
                             gtk_image_new_from_icon_name ("go-next-symbolic"));
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), TRUE);
  gtk_widget_add_css_class (row, "figure");
  g_object_set_data_full (G_OBJECT (row), "body", drawl_body_ref (body),
                          (GDestroyNotify)drawl_body_unref);
  g_signal_connect_object (row, "activated", G_CALLBACK (on_row_activated), self,
                           G_CONNECT_SWAPPED);
  return row;
}

static void
show_problems (DrawlBodyChooser *self, GPtrArray *problems)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < problems->len; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? "\n" : "", (const char *)problems->pdata[i]);
  gtk_label_set_text (GTK_LABEL (self->problems_label), text->str);
  gtk_widget_set_visible (self->problems_label, problems->len > 0);
}

static void
fill (DrawlBodyChooser *self)
{
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) bodies = drawl_body_load_shipped (problems);

  for (guint i = 0; i < bodies->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (self->list_box), row_for (self, bodies->pdata[i]));
  gtk_widget_set_visible (self->list_box, bodies->len > 0);
  gtk_widget_set_visible (self->none_label, bodies->len == 0);
  show_problems (self, problems);
}

void
drawl_body_chooser_take_file (DrawlBodyChooser *chooser, GFile *file)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (DrawlBody) body = drawl_body_load (file, &error);

  if (body != NULL)
    choose (chooser, body);
  else
    drawl_message_show (GTK_WINDOW (chooser), _ ("The Body Could Not Be Read"), error);
}

static void
on_file_response (DrawlBodyChooser *self, int response)
{
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (self->native));
  g_clear_object (&self->native);
  if (file != NULL)
    drawl_body_chooser_take_file (self, file);
}

static void
on_from_file (DrawlBodyChooser *self)
{
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  self->native = gtk_file_chooser_native_new (_ ("Read a Body Profile"), GTK_WINDOW (self),
                                              GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Read"), NULL);
  gtk_file_filter_set_name (filter, _ ("Body profiles"));
  gtk_file_filter_add_pattern (filter, "*.json");
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (self->native), filter);
  g_signal_connect_swapped (self->native, "response", G_CALLBACK (on_file_response), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->native));
}

static void
on_new (DrawlBodyChooser *self)
{
  DrawlBodyEditor *editor = drawl_body_editor_new_from_nothing (GTK_WINDOW (self));

  g_signal_connect_object (editor, "applied", G_CALLBACK (choose), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (editor));
}

static void
drawl_body_chooser_dispose (GObject *object)
{
  DrawlBodyChooser *self = DRAWL_BODY_CHOOSER (object);

  g_clear_object (&self->native);
  gtk_widget_dispose_template (GTK_WIDGET (self), DRAWL_TYPE_BODY_CHOOSER);
  G_OBJECT_CLASS (drawl_body_chooser_parent_class)->dispose (object);
}

static void
drawl_body_chooser_class_init (DrawlBodyChooserClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = drawl_body_chooser_dispose;
  chosen_signal = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                NULL, NULL, G_TYPE_NONE, 1, DRAWL_TYPE_BODY);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/drawl/Drawl/ui/body-chooser.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlBodyChooser, list_box);
  gtk_widget_class_bind_template_child (widget_class, DrawlBodyChooser, none_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlBodyChooser, problems_label);
  gtk_widget_class_bind_template_callback (widget_class, on_from_file);
  gtk_widget_class_bind_template_callback (widget_class, on_new);
}

static void
drawl_body_chooser_init (DrawlBodyChooser *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_swapped (self, "map", G_CALLBACK (drawl_focus_when_ready), self->list_box);
  fill (self);
}

DrawlBodyChooser *
drawl_body_chooser_new (GtkWindow *parent)
{
  return g_object_new (DRAWL_TYPE_BODY_CHOOSER, "transient-for", parent, NULL);
}
