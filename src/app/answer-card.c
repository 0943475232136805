/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What all answers share. The plan's "changed" comes once everything is worked out again, whatever
 * was edited: the shot, its body, another shot on the same cards. */

#include "app/answer-card.h"

typedef struct {
  DrawlPlan *plan;
  DrawlShot *shot;
  gulong changed_handler;
  gboolean attention;
  GtkWidget *title_label, *mark_box, *headline_box, *headline_label, *line_label, *action_box;
  GtkWidget *expander, *details_box;
} DrawlAnswerCardPrivate;

enum { PROP_ATTENTION = 1, N_PROPS };

static GParamSpec *props[N_PROPS];

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (DrawlAnswerCard, drawl_answer_card, GTK_TYPE_WIDGET)

static DrawlAnswerCardPrivate *
private_of (DrawlAnswerCard *card)
{
  return drawl_answer_card_get_instance_private (card);
}

static void
refresh (DrawlAnswerCard *card)
{
  DrawlAnswerCardPrivate *self = private_of (card);

  DRAWL_ANSWER_CARD_GET_CLASS (card)->refresh (card, self->plan, self->shot);
}

static void
leave_shot (DrawlAnswerCard *card)
{
  DrawlAnswerCardPrivate *self = private_of (card);

  g_clear_signal_handler (&self->changed_handler, self->plan);
  g_clear_object (&self->shot);
  g_clear_object (&self->plan);
}

void
drawl_answer_card_set_shot (DrawlAnswerCard *card, DrawlPlan *plan, DrawlShot *shot)
{
  DrawlAnswerCardPrivate *self = private_of (card);

  if (self->shot == shot && self->plan == plan)
    return;
  leave_shot (card);
  if (shot == NULL)
    return;
  self->plan = g_object_ref (plan);
  self->shot = g_object_ref (shot);
  self->changed_handler = g_signal_connect_swapped (plan, "changed", G_CALLBACK (refresh), card);
  refresh (card);
  gtk_expander_set_expanded (GTK_EXPANDER (self->expander), FALSE);
}

DrawlPlan *
drawl_answer_card_get_plan (DrawlAnswerCard *card)
{
  return private_of (card)->plan;
}

DrawlShot *
drawl_answer_card_get_shot (DrawlAnswerCard *card)
{
  return private_of (card)->shot;
}

gboolean
drawl_answer_card_get_attention (DrawlAnswerCard *card)
{
  return private_of (card)->attention;
}

void
drawl_answer_card_set_title (DrawlAnswerCard *card, const char *title)
{
  gtk_label_set_text (GTK_LABEL (private_of (card)->title_label), title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (card), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
}

void
drawl_answer_card_set_attention (DrawlAnswerCard *card, gboolean attention)
{
  DrawlAnswerCardPrivate *self = private_of (card);

  if (self->attention == attention)
    return;
  self->attention = attention;
  g_object_notify_by_pspec (G_OBJECT (card), props[PROP_ATTENTION]);
}

void
drawl_answer_card_set_headline (DrawlAnswerCard *card, const char *words)
{
  GtkWidget *label = private_of (card)->headline_label;

  gtk_label_set_text (GTK_LABEL (label), words != NULL ? words : "");
  gtk_widget_set_visible (label, words != NULL);
}

void
drawl_answer_card_set_line (DrawlAnswerCard *card, const char *line)
{
  gtk_label_set_text (GTK_LABEL (private_of (card)->line_label), line);
}

void
drawl_answer_card_add_mark (DrawlAnswerCard *card, GtkWidget *mark)
{
  gtk_box_append (GTK_BOX (private_of (card)->mark_box), mark);
}

void
drawl_answer_card_add_headline_figure (DrawlAnswerCard *card, GtkWidget *figure)
{
  gtk_box_append (GTK_BOX (private_of (card)->headline_box), figure);
}

void
drawl_answer_card_add_action (DrawlAnswerCard *card, GtkWidget *action)
{
  gtk_box_append (GTK_BOX (private_of (card)->action_box), action);
}

void
drawl_answer_card_add_detail (DrawlAnswerCard *card, GtkWidget *detail)
{
  gtk_box_append (GTK_BOX (private_of (card)->details_box), detail);
}

static void
drawl_answer_card_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  g_value_set_boolean (value, drawl_answer_card_get_attention (DRAWL_ANSWER_CARD (object)));
}

static void
drawl_answer_card_dispose (GObject *object)
{
  GtkWidget *content = gtk_widget_get_first_child (GTK_WIDGET (object));

  leave_shot (DRAWL_ANSWER_CARD (object));
  /* gtk_widget_dispose_template() of GTK 4.8 does not see the template of a parent class. */
  g_clear_pointer (&content, gtk_widget_unparent);
  G_OBJECT_CLASS (drawl_answer_card_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class, "/org/drawl/Drawl/ui/answer-card.ui");
  gtk_widget_class_bind_template_child_private (widget_class, DrawlAnswerCard, title_label);
  gtk_widget_class_bind_template_child_private (widget_class, DrawlAnswerCard, mark_box);
  gtk_widget_class_bind_template_child_private (widget_class, DrawlAnswerCard, headline_box);
  gtk_widget_class_bind_template_child_private (widget_class, DrawlAnswerCard, headline_label);
  gtk_widget_class_bind_template_child_private (widget_class, DrawlAnswerCard, line_label);
  gtk_widget_class_bind_template_child_private (widget_class, DrawlAnswerCard, action_box);
  gtk_widget_class_bind_template_child_private (widget_class, DrawlAnswerCard, expander);
  gtk_widget_class_bind_template_child_private (widget_class, DrawlAnswerCard, details_box);
}

static void
drawl_answer_card_class_init (DrawlAnswerCardClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = drawl_answer_card_get_property;
  object_class->dispose = drawl_answer_card_dispose;
  gtk_widget_class_set_css_name (widget_class, "answer");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  bind_children (widget_class);

  props[PROP_ATTENTION] =
      g_param_spec_boolean ("attention", NULL, NULL, FALSE,
                            G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
drawl_answer_card_init (DrawlAnswerCard *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
