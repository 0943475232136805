/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The working of a figure, as a popover. It keeps the words it shows, so that copying gives just
 * those. */

#include "app/working-popover.h"

#include "core/text.h"

struct _DrawlWorkingPopover {
  GtkPopover parent_instance;
  GtkWidget *name_label, *value_label, *formula_label, *numbers_label, *source_label;
  GtkWidget *copy_button;
};

G_DEFINE_FINAL_TYPE (DrawlWorkingPopover, drawl_working_popover, GTK_TYPE_POPOVER)

static const char *
words_of (GtkWidget *label)
{
  return gtk_label_get_text (GTK_LABEL (label));
}

static void
set_words (GtkWidget *label, const char *words)
{
  gtk_label_set_text (GTK_LABEL (label), words);
  gtk_widget_set_visible (label, *words != '\0');
}

char *
drawl_working_popover_dup_text (DrawlWorkingPopover *popover)
{
  /* Translators: a figure as it is copied: name, value, formula, numbers put in, source of the
   * rule. */
  return g_strdup_printf (_ ("%s: %s\n= %s\n= %s\n(%s)\n"), words_of (popover->name_label),
                          words_of (popover->value_label), words_of (popover->formula_label),
                          words_of (popover->numbers_label), words_of (popover->source_label));
}

static void
on_copy (DrawlWorkingPopover *self)
{
  g_autofree char *text = drawl_working_popover_dup_text (self);

  gdk_clipboard_set_text (gtk_widget_get_clipboard (GTK_WIDGET (self)), text);
}

/* The first label would take the focus, and have all its text selected. */
static void
on_map (DrawlWorkingPopover *self)
{
  gtk_widget_grab_focus (self->copy_button);
}

static void
drawl_working_popover_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), DRAWL_TYPE_WORKING_POPOVER);
  G_OBJECT_CLASS (drawl_working_popover_parent_class)->dispose (object);
}

static void
drawl_working_popover_class_init (DrawlWorkingPopoverClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = drawl_working_popover_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/drawl/Drawl/ui/working-popover.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlWorkingPopover, name_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlWorkingPopover, value_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlWorkingPopover, formula_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlWorkingPopover, numbers_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlWorkingPopover, source_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlWorkingPopover, copy_button);
  gtk_widget_class_bind_template_callback (widget_class, on_copy);
  gtk_widget_class_bind_template_callback (widget_class, on_map);
}

static void
drawl_working_popover_init (DrawlWorkingPopover *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
drawl_working_popover_new (void)
{
  return g_object_new (DRAWL_TYPE_WORKING_POPOVER, NULL);
}

void
drawl_working_popover_show (DrawlWorkingPopover *popover, const DrawlWorking *working)
{
  set_words (popover->name_label, working->name);
  set_words (popover->value_label, working->value);
  set_words (popover->formula_label, working->formula);
  set_words (popover->numbers_label, working->numbers);
  set_words (popover->source_label, working->source);
}
