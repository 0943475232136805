/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The page of a shot. It hands plan and shot to its views, which follow them by themselves, and
 * says under the sentence and under the picture what is wrong there. */

#include "app/shot-page.h"

#include <adwaita.h>

#include "app/answers.h"
#include "app/rate-offer.h"
#include "app/shot-sentence.h"
#include "app/shot-details.h"
#include "app/span-view.h"
#include "core/text.h"

struct _DrawlShotPage {
  GtkWidget parent_instance;
  DrawlPlan *plan;
  DrawlShot *shot;
  GtkWidget *stack, *scroller, *sentence, *error_box, *error_label, *offer, *span_view, *span_error;
  GtkWidget *answers, *details;
};

enum { PROP_PLAN = 1, PROP_SHOT, N_PROPS };

static GParamSpec *props[N_PROPS];

G_DEFINE_FINAL_TYPE (DrawlShotPage, drawl_shot_page, GTK_TYPE_WIDGET)

/* ---- What is wrong ---- */

static void
set_stale (GtkWidget *widget, gboolean stale)
{
  if (stale)
    gtk_widget_add_css_class (widget, "stale");
  else
    gtk_widget_remove_css_class (widget, "stale");
}

/* Figures that hang on a sentence in which something is wrong stay, and are greyed. */
static void
on_sentence_error (DrawlShotPage *self)
{
  const char *error = drawl_shot_sentence_get_error (DRAWL_SHOT_SENTENCE (self->sentence));

  gtk_label_set_text (GTK_LABEL (self->error_label), error != NULL ? error : "");
  gtk_widget_set_visible (self->error_box, error != NULL);
  set_stale (self->span_view, error != NULL);
  set_stale (self->answers, error != NULL);
  drawl_shot_details_set_stale (DRAWL_SHOT_DETAILS (self->details), error != NULL);
}

static void
on_restore (DrawlShotPage *self)
{
  drawl_shot_sentence_restore (DRAWL_SHOT_SENTENCE (self->sentence));
}

static void
on_span_error (DrawlShotPage *self)
{
  g_autofree char *error = NULL;

  g_object_get (self->span_view, "error", &error, NULL);
  gtk_label_set_text (GTK_LABEL (self->span_error), error != NULL ? error : "");
  gtk_widget_set_visible (self->span_error, error != NULL);
}

/* ---- Plan and shot ---- */

static void
hand_on (DrawlShotPage *self)
{
  drawl_shot_sentence_set_shot (DRAWL_SHOT_SENTENCE (self->sentence), self->plan, self->shot);
  drawl_shot_details_set_shot (DRAWL_SHOT_DETAILS (self->details), self->plan, self->shot);
  drawl_rate_offer_set_shot (DRAWL_RATE_OFFER (self->offer), self->plan, self->shot);
  drawl_span_view_set_shot (DRAWL_SPAN_VIEW (self->span_view), self->plan, self->shot);
  drawl_answers_set_shot (DRAWL_ANSWERS (self->answers), self->plan, self->shot);
  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), self->shot != NULL ? "shot" : "none");
}

static void
scroll_to_top (DrawlShotPage *self)
{
  GtkScrolledWindow *scroller = GTK_SCROLLED_WINDOW (self->scroller);

  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (scroller), 0);
}

DrawlShot *
drawl_shot_page_get_shot (DrawlShotPage *page)
{
  return page->shot;
}

void
drawl_shot_page_set_shot (DrawlShotPage *page, DrawlShot *shot)
{
  g_return_if_fail (shot == NULL || page->plan != NULL);

  if (!g_set_object (&page->shot, shot))
    return;
  hand_on (page);
  scroll_to_top (page);
  g_object_notify_by_pspec (G_OBJECT (page), props[PROP_SHOT]);
}

DrawlPlan *
drawl_shot_page_get_plan (DrawlShotPage *page)
{
  return page->plan;
}

void
drawl_shot_page_set_plan (DrawlShotPage *page, DrawlPlan *plan)
{
  if (page->plan == plan)
    return;
  drawl_shot_page_set_shot (page, NULL);
  g_set_object (&page->plan, plan);
  g_object_notify_by_pspec (G_OBJECT (page), props[PROP_PLAN]);
}

/* ---- The widget ---- */

static void
drawl_shot_page_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  DrawlShotPage *self = DRAWL_SHOT_PAGE (object);

  switch (prop_id) {
  case PROP_PLAN:
    g_value_set_object (value, self->plan);
    break;
  case PROP_SHOT:
    g_value_set_object (value, self->shot);
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
  }
}

static void
drawl_shot_page_set_property (GObject *object, guint prop_id, const GValue *value,
                              GParamSpec *pspec)
{
  DrawlShotPage *self = DRAWL_SHOT_PAGE (object);

  switch (prop_id) {
  case PROP_PLAN:
    drawl_shot_page_set_plan (self, g_value_get_object (value));
    break;
  case PROP_SHOT:
    drawl_shot_page_set_shot (self, g_value_get_object (value));
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
  }
}

static void
drawl_shot_page_dispose (GObject *object)
{
  DrawlShotPage *self = DRAWL_SHOT_PAGE (object);

  if (self->stack != NULL)
    drawl_shot_page_set_plan (self, NULL);
  gtk_widget_dispose_template (GTK_WIDGET (object), DRAWL_TYPE_SHOT_PAGE);
  G_OBJECT_CLASS (drawl_shot_page_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class, "/org/drawl/Drawl/ui/shot-page.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlShotPage, stack);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotPage, scroller);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotPage, sentence);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotPage, error_box);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotPage, error_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotPage, offer);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotPage, span_view);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotPage, span_error);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotPage, answers);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotPage, details);
  gtk_widget_class_bind_template_callback (widget_class, on_sentence_error);
  gtk_widget_class_bind_template_callback (widget_class, on_restore);
  gtk_widget_class_bind_template_callback (widget_class, on_span_error);
}

/* Nothing is there to be focused while no shot is shown. */
static gboolean
drawl_shot_page_grab_focus (GtkWidget *widget)
{
  DrawlShotPage *self = DRAWL_SHOT_PAGE (widget);

  return self->shot != NULL && gtk_widget_grab_focus (self->sentence);
}

static void
drawl_shot_page_class_init (DrawlShotPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;

  object_class->get_property = drawl_shot_page_get_property;
  object_class->set_property = drawl_shot_page_set_property;
  object_class->dispose = drawl_shot_page_dispose;
  props[PROP_PLAN] = g_param_spec_object ("plan", NULL, NULL, DRAWL_TYPE_PLAN, flags);
  props[PROP_SHOT] = g_param_spec_object ("shot", NULL, NULL, DRAWL_TYPE_SHOT, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  g_type_ensure (DRAWL_TYPE_SHOT_SENTENCE);
  g_type_ensure (DRAWL_TYPE_RATE_OFFER);
  g_type_ensure (DRAWL_TYPE_SPAN_VIEW);
  g_type_ensure (DRAWL_TYPE_ANSWERS);
  g_type_ensure (DRAWL_TYPE_SHOT_DETAILS);
  widget_class->grab_focus = drawl_shot_page_grab_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  bind_children (widget_class);
}

static void
drawl_shot_page_init (DrawlShotPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
drawl_shot_page_new (void)
{
  return g_object_new (DRAWL_TYPE_SHOT_PAGE, NULL);
}
