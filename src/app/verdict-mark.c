/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The mark of a verdict. Each verdict is a row: the shape, and the style class that colours it. */

#include "app/verdict-mark.h"

static const struct {
  const char *icon;
  const char *css_class;
} verdicts[DRAWL_N_VERDICTS] = {
    [DRAWL_VERDICT_AS_HIRED] = {"drawl-as-hired-symbolic", "as-hired"},
    [DRAWL_VERDICT_NEEDS_LICENCE] = {"drawl-needs-licence-symbolic", "needs-licence"},
    [DRAWL_VERDICT_NOT_ON_THIS_BODY] = {"drawl-not-on-this-body-symbolic", "not-on-this-body"},
};

struct _DrawlVerdictMark {
  GtkWidget parent_instance;
  DrawlVerdict verdict;
  GtkWidget *image;
  GtkWidget *name;
};

enum { PROP_VERDICT = 1, PROP_SHOW_NAME, N_PROPS };

static GParamSpec *props[N_PROPS];

G_DEFINE_FINAL_TYPE (DrawlVerdictMark, drawl_verdict_mark, GTK_TYPE_WIDGET)

/* Answered when it is asked for: to set a tooltip, the toolkit asks the display where the pointer
 * is, and waits, which a list of marks has no time for. */
static gboolean
on_query_tooltip (DrawlVerdictMark *self, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  gtk_tooltip_set_text (tooltip, drawl_verdict_name (self->verdict));
  return TRUE;
}

static void
refresh (DrawlVerdictMark *self)
{
  const char *name = drawl_verdict_name (self->verdict);

  for (guint i = 0; i < DRAWL_N_VERDICTS; i++)
    gtk_widget_remove_css_class (GTK_WIDGET (self), verdicts[i].css_class);
  gtk_widget_add_css_class (GTK_WIDGET (self), verdicts[self->verdict].css_class);
  gtk_image_set_from_icon_name (GTK_IMAGE (self->image), verdicts[self->verdict].icon);
  gtk_label_set_text (GTK_LABEL (self->name), name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void
drawl_verdict_mark_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  DrawlVerdictMark *self = DRAWL_VERDICT_MARK (object);

  switch (prop_id) {
  case PROP_VERDICT:
    g_value_set_enum (value, self->verdict);
    break;
  case PROP_SHOW_NAME:
    g_value_set_boolean (value, drawl_verdict_mark_get_show_name (self));
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
  }
}

static void
drawl_verdict_mark_set_property (GObject *object, guint prop_id, const GValue *value,
                                 GParamSpec *pspec)
{
  DrawlVerdictMark *self = DRAWL_VERDICT_MARK (object);

  switch (prop_id) {
  case PROP_VERDICT:
    drawl_verdict_mark_set_verdict (self, g_value_get_enum (value));
    break;
  case PROP_SHOW_NAME:
    drawl_verdict_mark_set_show_name (self, g_value_get_boolean (value));
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
  }
}

static void
drawl_verdict_mark_dispose (GObject *object)
{
  DrawlVerdictMark *self = DRAWL_VERDICT_MARK (object);

  g_clear_pointer (&self->image, gtk_widget_unparent);
  g_clear_pointer (&self->name, gtk_widget_unparent);
  G_OBJECT_CLASS (drawl_verdict_mark_parent_class)->dispose (object);
}

static void
drawl_verdict_mark_class_init (DrawlVerdictMarkClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;

  object_class->get_property = drawl_verdict_mark_get_property;
  object_class->set_property = drawl_verdict_mark_set_property;
  object_class->dispose = drawl_verdict_mark_dispose;
  gtk_widget_class_set_css_name (widget_class, "verdictmark");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);

  props[PROP_VERDICT] =
      g_param_spec_enum ("verdict", NULL, NULL, DRAWL_TYPE_VERDICT, DRAWL_VERDICT_AS_HIRED, flags);
  props[PROP_SHOW_NAME] = g_param_spec_boolean ("show-name", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
drawl_verdict_mark_init (DrawlVerdictMark *self)
{
  self->image = gtk_image_new ();
  self->name = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (self->name), TRUE);
  gtk_widget_set_visible (self->name, FALSE);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (gtk_widget_get_layout_manager (GTK_WIDGET (self))),
                              6);
  gtk_widget_set_parent (self->image, GTK_WIDGET (self));
  gtk_widget_set_parent (self->name, GTK_WIDGET (self));
  gtk_widget_set_has_tooltip (self->image, TRUE);
  g_signal_connect_swapped (self->image, "query-tooltip", G_CALLBACK (on_query_tooltip), self);
  refresh (self);
}

GtkWidget *
drawl_verdict_mark_new (void)
{
  return g_object_new (DRAWL_TYPE_VERDICT_MARK, NULL);
}

DrawlVerdict
drawl_verdict_mark_get_verdict (DrawlVerdictMark *mark)
{
  return mark->verdict;
}

void
drawl_verdict_mark_set_verdict (DrawlVerdictMark *mark, DrawlVerdict verdict)
{
  if (mark->verdict == verdict)
    return;
  mark->verdict = verdict;
  refresh (mark);
  g_object_notify_by_pspec (G_OBJECT (mark), props[PROP_VERDICT]);
}

gboolean
drawl_verdict_mark_get_show_name (DrawlVerdictMark *mark)
{
  return gtk_widget_get_visible (mark->name);
}

void
drawl_verdict_mark_set_show_name (DrawlVerdictMark *mark, gboolean show_name)
{
  if (drawl_verdict_mark_get_show_name (mark) == show_name)
    return;
  gtk_widget_set_visible (mark->name, show_name);
  g_object_notify_by_pspec (G_OBJECT (mark), props[PROP_SHOW_NAME]);
}
