/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A row of the list of bodies. Recycled by the list view; the list item around it bears the
 * accessible name. */

#include "app/hired-body-row.h"

#include "core/text.h"

struct _DrawlHiredBodyRow {
  GtkWidget parent_instance;
  DrawlHiredBody *hired;
  gulong notify_id;
  GtkWidget *name_label, *tier_label;
};

G_DEFINE_FINAL_TYPE (DrawlHiredBodyRow, drawl_hired_body_row, GTK_TYPE_WIDGET)

static char *
tier_text (DrawlHiredBody *hired)
{
  DrawlBody *body = drawl_hired_body_get_body (hired);
  DrawlTier tier = drawl_hired_body_get_tier (hired);

  if (body->n_licences == 0)
    return g_strdup (body->what);
  return tier == 0 ? g_strdup (_ ("No licences hired")) : drawl_body_tier_names (body, tier);
}

static void
refresh (DrawlHiredBodyRow *self)
{
  g_autofree char *name = drawl_hired_body_dup_name (self->hired);
  g_autofree char *tier = tier_text (self->hired);
  g_autofree char *aloud = g_strdup_printf ("%s, %s", name, tier);
  GtkWidget *item = gtk_widget_get_parent (GTK_WIDGET (self));

  gtk_label_set_text (GTK_LABEL (self->name_label), name);
  gtk_label_set_text (GTK_LABEL (self->tier_label), tier);
  if (item != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (item), GTK_ACCESSIBLE_PROPERTY_LABEL, aloud,
                                    -1);
}

void
drawl_hired_body_row_set_hired (DrawlHiredBodyRow *row, DrawlHiredBody *hired)
{
  if (hired == row->hired)
    return;
  if (row->hired != NULL)
    g_clear_signal_handler (&row->notify_id, row->hired);
  g_set_object (&row->hired, hired);
  if (hired == NULL)
    return;
  row->notify_id = g_signal_connect_swapped (hired, "notify", G_CALLBACK (refresh), row);
  refresh (row);
}

static void
drawl_hired_body_row_dispose (GObject *object)
{
  drawl_hired_body_row_set_hired (DRAWL_HIRED_BODY_ROW (object), NULL);
  gtk_widget_dispose_template (GTK_WIDGET (object), DRAWL_TYPE_HIRED_BODY_ROW);
  G_OBJECT_CLASS (drawl_hired_body_row_parent_class)->dispose (object);
}

static void
drawl_hired_body_row_class_init (DrawlHiredBodyRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = drawl_hired_body_row_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/drawl/Drawl/ui/hired-body-row.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlHiredBodyRow, name_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlHiredBodyRow, tier_label);
}

static void
drawl_hired_body_row_init (DrawlHiredBodyRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
drawl_hired_body_row_new (void)
{
  return g_object_new (DRAWL_TYPE_HIRED_BODY_ROW, NULL);
}
