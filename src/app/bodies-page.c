/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The page of the bodies. Invariant: the body page shows the list's selected body; one is selected
 * whenever there is one. */

#include "app/bodies-page.h"

#include <adwaita.h>

#include "app/focus.h"
#include "app/hired-body-page.h"
#include "app/hired-body-row.h"

enum { PROP_PLAN = 1, PROP_COVERED, N_PROPS };

static GParamSpec *props[N_PROPS];

struct _DrawlBodiesPage {
  GtkWidget parent_instance;
  DrawlPlan *plan;
  GtkSingleSelection *selection;
  GtkWidget *stack, *leaflet, *list_view;
  DrawlHiredBodyPage *body_page;
  gboolean covered;
};

G_DEFINE_FINAL_TYPE (DrawlBodiesPage, drawl_bodies_page, GTK_TYPE_WIDGET)

static void
refresh (DrawlBodiesPage *self)
{
  gboolean empty = g_list_model_get_n_items (G_LIST_MODEL (self->selection)) == 0;

  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), empty ? "empty" : "bodies");
  drawl_hired_body_page_show (self->body_page, self->plan, drawl_bodies_page_get_selected (self));
}

static void
tell_covered (DrawlBodiesPage *self)
{
  const char *name = adw_leaflet_get_visible_child_name (ADW_LEAFLET (self->leaflet));
  gboolean covered =
      adw_leaflet_get_folded (ADW_LEAFLET (self->leaflet)) && g_strcmp0 (name, "body") == 0;

  if (covered == self->covered)
    return;
  self->covered = covered;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_COVERED]);
}

static void
on_activate (DrawlBodiesPage *self, guint position)
{
  gtk_single_selection_set_selected (self->selection, position);
  adw_leaflet_set_visible_child_name (ADW_LEAFLET (self->leaflet), "body");
  drawl_focus_when_ready (GTK_WIDGET (self->body_page));
}

void
drawl_bodies_page_focus (DrawlBodiesPage *page)
{
  gboolean empty = g_list_model_get_n_items (G_LIST_MODEL (page->selection)) == 0;

  drawl_focus_when_ready (empty           ? page->stack
                          : page->covered ? GTK_WIDGET (page->body_page)
                                          : page->list_view);
}

void
drawl_bodies_page_go_back (DrawlBodiesPage *page)
{
  adw_leaflet_set_visible_child_name (ADW_LEAFLET (page->leaflet), "list");
  drawl_focus_when_ready (page->list_view);
}

DrawlHiredBody *
drawl_bodies_page_get_selected (DrawlBodiesPage *page)
{
  return gtk_single_selection_get_selected_item (page->selection);
}

void
drawl_bodies_page_select (DrawlBodiesPage *page, DrawlHiredBody *hired)
{
  GListModel *model = G_LIST_MODEL (page->selection);

  for (guint i = 0; i < g_list_model_get_n_items (model); i++) {
    g_autoptr (DrawlHiredBody) item = g_list_model_get_item (model, i);
    if (item == hired)
      gtk_single_selection_set_selected (page->selection, i);
  }
}

/* Where the list is alone in the window a click goes on to the body. */
static void
on_clicked (GtkListItem *item, int n_press, double x, double y, GtkGesture *gesture)
{
  GtkWidget *row = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (gesture));
  DrawlBodiesPage *self = DRAWL_BODIES_PAGE (gtk_widget_get_ancestor (row, DRAWL_TYPE_BODIES_PAGE));

  if (adw_leaflet_get_folded (ADW_LEAFLET (self->leaflet)))
    on_activate (self, gtk_list_item_get_position (item));
}

static void
on_setup (DrawlBodiesPage *self, GtkListItem *item)
{
  GtkWidget *row = drawl_hired_body_row_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  g_signal_connect_object (click, "released", G_CALLBACK (on_clicked), item, G_CONNECT_SWAPPED);
  gtk_widget_add_controller (row, GTK_EVENT_CONTROLLER (click));
  gtk_list_item_set_child (item, row);
}

static void
on_bind (DrawlBodiesPage *self, GtkListItem *item)
{
  drawl_hired_body_row_set_hired (DRAWL_HIRED_BODY_ROW (gtk_list_item_get_child (item)),
                                  gtk_list_item_get_item (item));
}

static void
on_unbind (DrawlBodiesPage *self, GtkListItem *item)
{
  drawl_hired_body_row_set_hired (DRAWL_HIRED_BODY_ROW (gtk_list_item_get_child (item)), NULL);
}

void
drawl_bodies_page_set_plan (DrawlBodiesPage *page, DrawlPlan *plan)
{
  if (!g_set_object (&page->plan, plan))
    return;
  gtk_single_selection_set_model (page->selection,
                                  plan != NULL ? drawl_plan_get_bodies (plan) : NULL);
  refresh (page);
  g_object_notify_by_pspec (G_OBJECT (page), props[PROP_PLAN]);
}

static void
drawl_bodies_page_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  DrawlBodiesPage *self = DRAWL_BODIES_PAGE (object);

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
drawl_bodies_page_set_property (GObject *object, guint prop_id, const GValue *value,
                                GParamSpec *pspec)
{
  if (prop_id == PROP_PLAN)
    drawl_bodies_page_set_plan (DRAWL_BODIES_PAGE (object), g_value_get_object (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static void
drawl_bodies_page_dispose (GObject *object)
{
  DrawlBodiesPage *self = DRAWL_BODIES_PAGE (object);

  if (self->selection != NULL)
    g_signal_handlers_disconnect_by_data (self->selection, self);
  g_clear_object (&self->plan);
  gtk_widget_dispose_template (GTK_WIDGET (self), DRAWL_TYPE_BODIES_PAGE);
  g_clear_object (&self->selection);
  G_OBJECT_CLASS (drawl_bodies_page_parent_class)->dispose (object);
}

static void
drawl_bodies_page_class_init (DrawlBodiesPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = drawl_bodies_page_get_property;
  object_class->set_property = drawl_bodies_page_set_property;
  object_class->dispose = drawl_bodies_page_dispose;

  props[PROP_PLAN] =
      g_param_spec_object ("plan", NULL, NULL, DRAWL_TYPE_PLAN,
                           G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  props[PROP_COVERED] = g_param_spec_boolean ("covered", NULL, NULL, FALSE,
                                              G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);

  g_type_ensure (DRAWL_TYPE_HIRED_BODY_PAGE);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/drawl/Drawl/ui/bodies-page.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlBodiesPage, stack);
  gtk_widget_class_bind_template_child (widget_class, DrawlBodiesPage, leaflet);
  gtk_widget_class_bind_template_child (widget_class, DrawlBodiesPage, list_view);
  gtk_widget_class_bind_template_child (widget_class, DrawlBodiesPage, body_page);
  gtk_widget_class_bind_template_callback (widget_class, on_activate);
}

static void
drawl_bodies_page_init (DrawlBodiesPage *self)
{
  g_autoptr (GtkListItemFactory) factory = gtk_signal_list_item_factory_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_swapped (factory, "setup", G_CALLBACK (on_setup), self);
  g_signal_connect_swapped (factory, "bind", G_CALLBACK (on_bind), self);
  g_signal_connect_swapped (factory, "unbind", G_CALLBACK (on_unbind), self);
  gtk_list_view_set_factory (GTK_LIST_VIEW (self->list_view), factory);

  self->selection = gtk_single_selection_new (NULL);
  g_signal_connect_swapped (self->selection, "notify::selected-item", G_CALLBACK (refresh), self);
  gtk_list_view_set_model (GTK_LIST_VIEW (self->list_view), GTK_SELECTION_MODEL (self->selection));
  adw_leaflet_set_visible_child_name (ADW_LEAFLET (self->leaflet), "list");
  g_signal_connect_swapped (self->leaflet, "notify::folded", G_CALLBACK (tell_covered), self);
  g_signal_connect_swapped (self->leaflet, "notify::visible-child", G_CALLBACK (tell_covered),
                            self);
  refresh (self);
}

GtkWidget *
drawl_bodies_page_new (void)
{
  return g_object_new (DRAWL_TYPE_BODIES_PAGE, NULL);
}
