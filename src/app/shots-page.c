/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The page of the list and the shot. Invariant: what is beside the list is the page of the shot
 * that is selected there, or of all of them where there are several. */

#include "app/shots-page.h"

#include <adwaita.h>

#include "app/focus.h"
#include "app/many-page.h"
#include "app/shot-page.h"

enum { PROP_PLAN = 1, PROP_COVERED, N_PROPS };

static GParamSpec *props[N_PROPS];

struct _DrawlShotsPage {
  GtkWidget parent_instance;
  DrawlPlan *plan;
  GtkWidget *stack, *leaflet, *list, *shot_bin, *shot_stack, *shot_page, *body_button, *shot_button;
  GtkWidget *many_page; /* made when first needed */
  gboolean covered;
};

G_DEFINE_FINAL_TYPE (DrawlShotsPage, drawl_shots_page, GTK_TYPE_WIDGET)

/* The next thing to do is the button that stands out. */
static void
suggest (GtkWidget *button, gboolean suggested)
{
  if (suggested)
    gtk_widget_add_css_class (button, "suggested-action");
  else
    gtk_widget_remove_css_class (button, "suggested-action");
}

static void
refresh (DrawlShotsPage *self)
{
  gboolean empty = self->plan == NULL || drawl_plan_n_shots (self->plan) == 0;
  gboolean bodies =
      self->plan != NULL && g_list_model_get_n_items (drawl_plan_get_bodies (self->plan)) > 0;

  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), empty ? "empty" : "shots");
  if (bodies && gtk_widget_is_focus (self->body_button))
    gtk_widget_grab_focus (self->shot_button);
  gtk_widget_set_visible (self->body_button, !bodies);
  suggest (self->body_button, !bodies);
  suggest (self->shot_button, bodies);
}

static void
tell_covered (DrawlShotsPage *self)
{
  const char *name = adw_leaflet_get_visible_child_name (ADW_LEAFLET (self->leaflet));
  gboolean covered =
      adw_leaflet_get_folded (ADW_LEAFLET (self->leaflet)) && g_strcmp0 (name, "shot") == 0;

  if (covered == self->covered)
    return;
  self->covered = covered;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_COVERED]);
}

void
drawl_shots_page_enter_shot (DrawlShotsPage *page)
{
  adw_leaflet_set_visible_child_name (ADW_LEAFLET (page->leaflet), "shot");
  drawl_focus_when_ready (gtk_stack_get_visible_child (GTK_STACK (page->shot_stack)));
}

void
drawl_shots_page_focus (DrawlShotsPage *page)
{
  if (page->plan == NULL || drawl_plan_n_shots (page->plan) == 0)
    drawl_focus_when_ready (page->stack);
  else if (page->covered)
    drawl_focus_when_ready (gtk_stack_get_visible_child (GTK_STACK (page->shot_stack)));
  else
    drawl_shot_list_focus_row (DRAWL_SHOT_LIST (page->list));
}

void
drawl_shots_page_go_back (DrawlShotsPage *page)
{
  adw_leaflet_set_visible_child_name (ADW_LEAFLET (page->leaflet), "list");
  drawl_shot_list_focus_row (DRAWL_SHOT_LIST (page->list));
}

DrawlShotList *
drawl_shots_page_get_list (DrawlShotsPage *page)
{
  return DRAWL_SHOT_LIST (page->list);
}

static void
show_one (DrawlShotsPage *self, DrawlShot *shot)
{
  g_object_set (self->shot_page, "shot", shot, NULL);
  gtk_stack_set_visible_child (GTK_STACK (self->shot_stack), self->shot_page);
  if (self->many_page == NULL)
    return;
  drawl_many_page_set_shots (DRAWL_MANY_PAGE (self->many_page), NULL, NULL);
  gtk_widget_set_visible (self->many_page, FALSE);
}

static void
show_many (DrawlShotsPage *self)
{
  g_autoptr (GPtrArray) shots = drawl_shot_list_dup_selection (DRAWL_SHOT_LIST (self->list));

  if (self->many_page == NULL) {
    self->many_page = drawl_many_page_new ();
    gtk_stack_add_child (GTK_STACK (self->shot_stack), self->many_page);
  }
  g_object_set (self->shot_page, "shot", NULL, NULL);
  drawl_many_page_set_shots (DRAWL_MANY_PAGE (self->many_page), self->plan, shots);
  gtk_widget_set_visible (self->many_page, TRUE);
  gtk_stack_set_visible_child (GTK_STACK (self->shot_stack), self->many_page);
}

static void
on_selected (DrawlShotsPage *self)
{
  DrawlShotList *list = DRAWL_SHOT_LIST (self->list);

  if (drawl_shot_list_n_selected (list) > 1)
    show_many (self);
  else
    show_one (self, drawl_shot_list_get_selected (list));
}

/* Before the plan, so that the shot is never asked about a plan that it is not on. */
static void
unlink_shot (DrawlShotsPage *self)
{
  show_one (self, NULL);
}

void
drawl_shots_page_set_plan (DrawlShotsPage *page, DrawlPlan *plan)
{
  if (plan == page->plan)
    return;
  if (page->plan != NULL)
    g_signal_handlers_disconnect_by_data (page->plan, page);
  unlink_shot (page);
  g_set_object (&page->plan, plan);
  g_object_set (page->shot_page, "plan", plan, NULL);
  drawl_shot_list_set_plan (DRAWL_SHOT_LIST (page->list), plan);
  on_selected (page);
  if (plan != NULL)
    g_signal_connect_swapped (plan, "changed", G_CALLBACK (refresh), page);
  refresh (page);
  g_object_notify_by_pspec (G_OBJECT (page), props[PROP_PLAN]);
}

static void
drawl_shots_page_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  DrawlShotsPage *self = DRAWL_SHOTS_PAGE (object);

  switch (prop_id) {
  case PROP_PLAN:
    g_value_set_object (value, self->plan);
    break;
  case PROP_COVERED:
    g_value_set_boolean (value, self->covered);
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
  }
}

static void
drawl_shots_page_set_property (GObject *object, guint prop_id, const GValue *value,
                               GParamSpec *pspec)
{
  if (prop_id == PROP_PLAN)
    drawl_shots_page_set_plan (DRAWL_SHOTS_PAGE (object), g_value_get_object (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static void
drawl_shots_page_dispose (GObject *object)
{
  DrawlShotsPage *self = DRAWL_SHOTS_PAGE (object);

  if (self->plan != NULL)
    g_signal_handlers_disconnect_by_data (self->plan, self);
  g_clear_object (&self->plan);
  gtk_widget_dispose_template (GTK_WIDGET (self), DRAWL_TYPE_SHOTS_PAGE);
  G_OBJECT_CLASS (drawl_shots_page_parent_class)->dispose (object);
}

static void
drawl_shots_page_class_init (DrawlShotsPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = drawl_shots_page_get_property;
  object_class->set_property = drawl_shots_page_set_property;
  object_class->dispose = drawl_shots_page_dispose;

  props[PROP_PLAN] =
      g_param_spec_object ("plan", NULL, NULL, DRAWL_TYPE_PLAN,
                           G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  props[PROP_COVERED] = g_param_spec_boolean ("covered", NULL, NULL, FALSE,
                                              G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  g_type_ensure (DRAWL_TYPE_SHOT_LIST);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/drawl/Drawl/ui/shots-page.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlShotsPage, stack);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotsPage, leaflet);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotsPage, list);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotsPage, shot_bin);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotsPage, body_button);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotsPage, shot_button);
  gtk_widget_class_bind_template_callback (widget_class, drawl_shots_page_enter_shot);
}

/* Where there is no row yet, shots of another window can be put down anywhere. */
static GdkDragAction
on_motion (DrawlShotsPage *self, double x, double y)
{
  return self->plan != NULL && drawl_plan_n_shots (self->plan) == 0 ? GDK_ACTION_COPY : 0;
}

static gboolean
on_drop (DrawlShotsPage *self, const GValue *value)
{
  if (on_motion (self, 0, 0) == 0)
    return FALSE;
  drawl_shot_list_drop (DRAWL_SHOT_LIST (self->list), g_value_get_object (value), 0);
  return TRUE;
}

static void
add_drop (DrawlShotsPage *self)
{
  GtkDropTarget *target = gtk_drop_target_new (DRAWL_TYPE_SHOT_BUNDLE, GDK_ACTION_COPY);

  g_signal_connect_swapped (target, "enter", G_CALLBACK (on_motion), self);
  g_signal_connect_swapped (target, "motion", G_CALLBACK (on_motion), self);
  g_signal_connect_swapped (target, "drop", G_CALLBACK (on_drop), self);
  gtk_widget_add_controller (self->stack, GTK_EVENT_CONTROLLER (target));
}

static void
drawl_shots_page_init (DrawlShotsPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->shot_page = drawl_shot_page_new ();
  self->shot_stack = gtk_stack_new ();
  gtk_stack_add_child (GTK_STACK (self->shot_stack), self->shot_page);
  adw_bin_set_child (ADW_BIN (self->shot_bin), self->shot_stack);
  adw_leaflet_set_visible_child_name (ADW_LEAFLET (self->leaflet), "list");
  g_object_bind_property (self->leaflet, "folded", self->list, "single-click",
                          G_BINDING_SYNC_CREATE);
  g_signal_connect_swapped (self->list, "notify::n-selected", G_CALLBACK (on_selected), self);
  g_signal_connect_swapped (self->leaflet, "notify::folded", G_CALLBACK (tell_covered), self);
  g_signal_connect_swapped (self->leaflet, "notify::visible-child", G_CALLBACK (tell_covered),
                            self);
  add_drop (self);
  refresh (self);
}

GtkWidget *
drawl_shots_page_new (void)
{
  return g_object_new (DRAWL_TYPE_SHOTS_PAGE, NULL);
}
