/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A figure that opens to its working. The popover is made when it is first asked for; while it is
 * open it follows the figure. */

#include "app/figure-button.h"

#include "app/working-popover.h"
#include "core/text.h"

struct _DrawlFigureButton {
  GtkButton parent_instance;
  DrawlFigure figure;
  DrawlWorking *working; /* NULL: nothing to show */
  GtkWidget *label;
  GtkWidget *popover; /* NULL until opened */
};

#define LINE_CHARS 20 /* in which a long figure likes to be set */

G_DEFINE_FINAL_TYPE (DrawlFigureButton, drawl_figure_button, GTK_TYPE_BUTTON)

static void
on_closed (DrawlFigureButton *self)
{
  gtk_accessible_update_state (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_STATE_EXPANDED, FALSE, -1);
}

static void
make_popover (DrawlFigureButton *self)
{
  self->popover = drawl_working_popover_new ();
  gtk_widget_set_parent (self->popover, GTK_WIDGET (self));
  g_signal_connect_swapped (self->popover, "closed", G_CALLBACK (on_closed), self);
}

static void
drawl_figure_button_clicked (GtkButton *button)
{
  DrawlFigureButton *self = DRAWL_FIGURE_BUTTON (button);

  if (self->working == NULL)
    return;
  if (self->popover == NULL)
    make_popover (self);
  drawl_working_popover_show (DRAWL_WORKING_POPOVER (self->popover), self->working);
  gtk_popover_popup (GTK_POPOVER (self->popover));
  gtk_accessible_update_state (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_STATE_EXPANDED, TRUE, -1);
}

static void
drawl_figure_button_dispose (GObject *object)
{
  DrawlFigureButton *self = DRAWL_FIGURE_BUTTON (object);

  g_clear_pointer (&self->popover, gtk_widget_unparent);
  g_clear_pointer (&self->working, drawl_working_free);
  G_OBJECT_CLASS (drawl_figure_button_parent_class)->dispose (object);
}

static void
drawl_figure_button_class_init (DrawlFigureButtonClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = drawl_figure_button_dispose;
  GTK_BUTTON_CLASS (klass)->clicked = drawl_figure_button_clicked;
}

static void
drawl_figure_button_init (DrawlFigureButton *self)
{
  GtkWidget *widget = GTK_WIDGET (self);

  self->label = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (self->label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->label), 0);
  gtk_label_set_max_width_chars (GTK_LABEL (self->label), LINE_CHARS);
  gtk_button_set_child (GTK_BUTTON (self), self->label);
  gtk_widget_add_css_class (widget, "flat");
  gtk_widget_add_css_class (widget, "figure");
  gtk_widget_set_halign (widget, GTK_ALIGN_START);
  gtk_widget_set_visible (widget, FALSE);
  gtk_widget_set_tooltip_text (widget, _ ("Show the working"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_HAS_POPUP, TRUE,
                                  -1);
}

GtkWidget *
drawl_figure_button_new (DrawlFigure figure)
{
  DrawlFigureButton *self = g_object_new (DRAWL_TYPE_FIGURE_BUTTON, NULL);

  self->figure = figure;
  gtk_widget_set_name (GTK_WIDGET (self), drawl_figure_id (figure));
  return GTK_WIDGET (self);
}

DrawlFigure
drawl_figure_button_get_figure (DrawlFigureButton *button)
{
  return button->figure;
}

static void
refresh (DrawlFigureButton *self)
{
  /* Translators: a figure read aloud: its name and its value. */
  g_autofree char *spoken =
      g_strdup_printf (_ ("%s: %s"), self->working->name, self->working->value);

  gtk_label_set_text (GTK_LABEL (self->label), self->working->value);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  if (self->popover != NULL && gtk_widget_get_visible (self->popover))
    drawl_working_popover_show (DRAWL_WORKING_POPOVER (self->popover), self->working);
}

gboolean
drawl_figure_button_set_shot (DrawlFigureButton *button, DrawlPlan *plan, DrawlShot *shot)
{
  g_clear_pointer (&button->working, drawl_working_free);
  if (shot != NULL)
    button->working = drawl_working_new (plan, shot, button->figure);
  gtk_widget_set_visible (GTK_WIDGET (button), button->working != NULL);
  if (button->working != NULL)
    refresh (button);
  else if (button->popover != NULL)
    gtk_popover_popdown (GTK_POPOVER (button->popover));
  return button->working != NULL;
}

const char *
drawl_figure_button_get_name (DrawlFigureButton *button)
{
  return button->working != NULL ? button->working->name : NULL;
}

GtkWidget *
drawl_figure_button_get_popover (DrawlFigureButton *button)
{
  return button->popover;
}
