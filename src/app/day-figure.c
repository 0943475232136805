/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A figure of the day strip. What it says aloud is heading, figure and working together. */

#include "app/day-figure.h"

#include "app/tooltip.h"

enum { PROP_HEADING = 1, N_PROPS };

static GParamSpec *props[N_PROPS];

struct _DrawlDayFigure {
  GtkWidget parent_instance;
  char *heading;
  GtkWidget *button, *heading_label, *value_label, *title_label, *working_label;
};

G_DEFINE_FINAL_TYPE (DrawlDayFigure, drawl_day_figure, GTK_TYPE_WIDGET)

static void
drawl_day_figure_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  if (prop_id == PROP_HEADING)
    g_value_set_string (value, DRAWL_DAY_FIGURE (object)->heading);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static void
drawl_day_figure_set_property (GObject *object, guint prop_id, const GValue *value,
                               GParamSpec *pspec)
{
  DrawlDayFigure *self = DRAWL_DAY_FIGURE (object);

  if (prop_id != PROP_HEADING) {
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    return;
  }
  g_free (self->heading);
  self->heading = g_value_dup_string (value);
  gtk_label_set_text (GTK_LABEL (self->heading_label), self->heading);
  gtk_label_set_text (GTK_LABEL (self->title_label), self->heading);
}

static void
drawl_day_figure_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), DRAWL_TYPE_DAY_FIGURE);
  G_OBJECT_CLASS (drawl_day_figure_parent_class)->dispose (object);
}

static void
drawl_day_figure_finalize (GObject *object)
{
  g_free (DRAWL_DAY_FIGURE (object)->heading);
  G_OBJECT_CLASS (drawl_day_figure_parent_class)->finalize (object);
}

static void
drawl_day_figure_class_init (DrawlDayFigureClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = drawl_day_figure_get_property;
  object_class->set_property = drawl_day_figure_set_property;
  object_class->dispose = drawl_day_figure_dispose;
  object_class->finalize = drawl_day_figure_finalize;

  props[PROP_HEADING] =
      g_param_spec_string ("heading", NULL, NULL, NULL, G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  gtk_widget_class_set_template_from_resource (widget_class, "/org/drawl/Drawl/ui/day-figure.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlDayFigure, button);
  gtk_widget_class_bind_template_child (widget_class, DrawlDayFigure, heading_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlDayFigure, value_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlDayFigure, title_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlDayFigure, working_label);
}

static void
drawl_day_figure_init (DrawlDayFigure *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
drawl_day_figure_set (DrawlDayFigure *figure, const char *value, const char *working)
{
  g_autofree char *name = g_strdup_printf ("%s: %s", figure->heading, value);

  gtk_label_set_text (GTK_LABEL (figure->value_label), value);
  gtk_label_set_text (GTK_LABEL (figure->working_label), working);
  drawl_tooltip_set (figure->button, working);
  gtk_accessible_update_property (GTK_ACCESSIBLE (figure->button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, working, -1);
}
