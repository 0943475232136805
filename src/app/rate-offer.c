/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The offer of a rate that the body has. Taking it is an edit like any other, so the same term
 * follows that would follow if it were typed. */

#include "app/rate-offer.h"

#include "app/message.h"
#include "app/shot-edit.h"
#include "core/text.h"
#include "plan/figure.h"

struct _DrawlRateOffer {
  GtkWidget parent_instance;
  DrawlPlan *plan;
  DrawlShot *shot;
  gulong changed_handler;
  DrawlRate nearest;
  GtkWidget *button;
  GtkWidget *error_label;
};

G_DEFINE_FINAL_TYPE (DrawlRateOffer, drawl_rate_offer, GTK_TYPE_WIDGET)

gboolean
drawl_rate_offer_find (const DrawlCheckQuestion *question, DrawlRate *nearest)
{
  const DrawlBody *body = question->body;
  guint n = 0;

  if (body == NULL || question->size < 0 || drawl_body_offers_rate (body, question->rate))
    return FALSE;
  guint codec = body->kind == DRAWL_BODY_FILM || question->codec < 0 ? DRAWL_BODY_NO_CODEC
                                                                     : (guint)question->codec;
  const DrawlBodyLimit *limits = drawl_body_limits_of (body, (guint)question->size, codec, &n);
  if (n == 0)
    return FALSE;
  DrawlRate lowest = limits[0].lowest, highest = limits[0].highest;
  for (guint i = 1; i < n; i++) {
    if (drawl_rational_compare (limits[i].lowest, lowest) < 0)
      lowest = limits[i].lowest;
    if (drawl_rational_compare (limits[i].highest, highest) > 0)
      highest = limits[i].highest;
  }
  return drawl_body_nearest_rate (body, question->rate, lowest, highest, nearest);
}

/* How far @nearest lies from @rate, per cent, as a number with one decimal, or as many as it takes
 * to be more than 0. */
static char *
dup_error (DrawlRate rate, DrawlRate nearest)
{
  DrawlRational share;

  if (!drawl_rational_sub (nearest, rate, &share) || !drawl_rational_div (share, rate, &share) ||
      !drawl_rational_mul (share, drawl_rational_whole (100), &share))
    return g_strdup ("?");
  share.num = ABS (share.num);
  int places = 1;
  for (DrawlRational part = {1, 20}; places < 6 && drawl_rational_compare (share, part) < 0;
       places++)
    part.den *= 10;
  return drawl_figure_number (share, places);
}

static void
refresh (DrawlRateOffer *self)
{
  const DrawlCheckQuestion *question = drawl_shot_get_question (self->shot);
  gboolean found = drawl_rate_offer_find (question, &self->nearest);

  gtk_widget_set_visible (GTK_WIDGET (self), found);
  gtk_widget_set_visible (self->error_label, FALSE);
  if (!found)
    return;
  g_autofree char *rate = drawl_figure_rate (self->nearest);
  g_autofree char *off = dup_error (question->rate, self->nearest);
  /* Translators: a rate, and how far it is from the one wanted: "Use 239 fps (nearest that this
   * body offers, 0.4 % off)". */
  g_autofree char *label =
      g_strdup_printf (_ ("Use %s (nearest that this body offers, %s\u00a0%% off)"), rate, off);
  gtk_label_set_text (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (self->button))), label);
}

static void
on_clicked (DrawlRateOffer *self)
{
  g_autoptr (GError) error = NULL;

  if (self->shot == NULL || drawl_shot_edit_term (self->plan, self->shot, NULL,
                                                  DRAWL_TIMING_CAPTURE, self->nearest, &error))
    return;
  g_autofree char *words = drawl_message_sentence (error);
  gtk_label_set_text (GTK_LABEL (self->error_label), words);
  gtk_widget_set_visible (self->error_label, TRUE);
}

static void
leave_shot (DrawlRateOffer *self)
{
  g_clear_signal_handler (&self->changed_handler, self->shot);
  g_clear_object (&self->shot);
  g_clear_object (&self->plan);
}

static void
drawl_rate_offer_dispose (GObject *object)
{
  DrawlRateOffer *self = DRAWL_RATE_OFFER (object);

  leave_shot (self);
  g_clear_pointer (&self->button, gtk_widget_unparent);
  g_clear_pointer (&self->error_label, gtk_widget_unparent);
  G_OBJECT_CLASS (drawl_rate_offer_parent_class)->dispose (object);
}

static void
drawl_rate_offer_class_init (DrawlRateOfferClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = drawl_rate_offer_dispose;
  gtk_widget_class_set_css_name (widget_class, "rateoffer");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
}

static void
drawl_rate_offer_init (DrawlRateOffer *self)
{
  GtkWidget *widget = GTK_WIDGET (self), *label = gtk_label_new (NULL);
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (widget);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_widget_set_visible (widget, FALSE);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  self->button = gtk_button_new ();
  gtk_button_set_child (GTK_BUTTON (self->button), label);
  gtk_widget_set_halign (self->button, GTK_ALIGN_START);
  gtk_widget_set_parent (self->button, widget);
  self->error_label = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (self->error_label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->error_label), 0);
  gtk_widget_add_css_class (self->error_label, "error");
  gtk_widget_set_parent (self->error_label, widget);
  g_signal_connect_swapped (self->button, "clicked", G_CALLBACK (on_clicked), self);
}

void
drawl_rate_offer_set_shot (DrawlRateOffer *offer, DrawlPlan *plan, DrawlShot *shot)
{
  if (offer->shot == shot && offer->plan == plan)
    return;
  leave_shot (offer);
  gtk_widget_set_visible (GTK_WIDGET (offer), FALSE);
  if (shot == NULL)
    return;
  offer->plan = g_object_ref (plan);
  offer->shot = g_object_ref (shot);
  offer->changed_handler = g_signal_connect_swapped (shot, "changed", G_CALLBACK (refresh), offer);
  refresh (offer);
}
