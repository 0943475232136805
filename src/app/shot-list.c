/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The list of shots: plan → view → selection → rows. Invariant: "selected" is the shot in the
 * selection's hand; the view keeps what is selected through edits, and lets it go only when the
 * filter itself is changed. */

#include "app/shot-list-private.h"

#include <adwaita.h>

#include "app/focus.h"

enum {
  PROP_PLAN = 1,
  PROP_SELECTED,
  PROP_N_SELECTED,
  PROP_FILTER,
  PROP_BODY_FILTER,
  PROP_SORT,
  PROP_DESCENDING,
  PROP_GROUPED,
  PROP_SINGLE_CLICK,
  N_PROPS
};
enum { ACTIVATED, TOLD, COPIED, N_SIGNALS };

static GParamSpec *props[N_PROPS];
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (DrawlShotList, drawl_shot_list, GTK_TYPE_WIDGET)

void
drawl_shot_list_activate (DrawlShotList *list)
{
  g_signal_emit (list, signals[ACTIVATED], 0);
}

void
drawl_shot_list_tell (DrawlShotList *list, const char *why)
{
  g_signal_emit (list, signals[TOLD], 0, why);
}

void
drawl_shot_list_tell_copied (DrawlShotList *list, guint n)
{
  g_signal_emit (list, signals[COPIED], 0, n);
}

void
drawl_shot_list_notify (DrawlShotList *list, const char *property)
{
  g_object_notify (G_OBJECT (list), property);
}

/* ---- What is selected ---- */

static void
on_selection_changed (DrawlShotList *self)
{
  gboolean other = g_set_object (&self->selected, drawl_shot_selection_get_hand (self->selection));

  g_object_freeze_notify (G_OBJECT (self));
  if (other)
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SELECTED]);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_N_SELECTED]);
  g_object_thaw_notify (G_OBJECT (self));
}

static guint
hand_position (DrawlShotList *self)
{
  return self->selected != NULL ? drawl_shot_view_find (self->view, self->selected) : G_MAXUINT;
}

/* The list view's own way, so that it knows from where on a range is selected next. */
static void
go_to (DrawlShotList *self, guint position)
{
  gtk_widget_activate_action (self->list_view, "list.select-item", "(ubb)", position, FALSE, FALSE);
  gtk_widget_activate_action (self->list_view, "list.scroll-to-item", "u", position);
}

void
drawl_shot_list_select (DrawlShotList *list, DrawlShot *shot)
{
  drawl_shot_selection_choose_one (list->selection, shot);
  if (drawl_shot_view_find (list->view, shot) != G_MAXUINT)
    go_to (list, drawl_shot_view_find (list->view, shot));
}

void
drawl_shot_list_select_many (DrawlShotList *list, const GPtrArray *shots)
{
  if (shots->len == 1)
    drawl_shot_list_select (list, shots->pdata[0]);
  if (shots->len <= 1)
    return;
  drawl_shot_selection_choose (list->selection, shots);
  guint at = hand_position (list);
  if (at != G_MAXUINT)
    gtk_widget_activate_action (list->list_view, "list.scroll-to-item", "u", at);
}

void
drawl_shot_list_select_all (DrawlShotList *list)
{
  gtk_selection_model_select_all (GTK_SELECTION_MODEL (list->selection));
}

void
drawl_shot_list_step (DrawlShotList *list, int direction)
{
  guint n = drawl_shot_view_n_shown (list->view), at = hand_position (list);

  if (at == G_MAXUINT || (direction < 0 && at == 0) || (direction > 0 && at + 1 >= n))
    return;
  go_to (list, direction < 0 ? at - 1 : at + 1);
}

DrawlShot *
drawl_shot_list_get_selected (DrawlShotList *list)
{
  return list->selected;
}

guint
drawl_shot_list_n_selected (DrawlShotList *list)
{
  return drawl_shot_selection_n_chosen (list->selection);
}

GPtrArray *
drawl_shot_list_dup_selection (DrawlShotList *list)
{
  GPtrArray *shots = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; list->plan != NULL && i < drawl_plan_n_shots (list->plan); i++) {
    DrawlShot *shot = drawl_plan_get_shot (list->plan, i);
    if (drawl_shot_selection_has (list->selection, shot))
      g_ptr_array_add (shots, g_object_ref (shot));
  }
  return shots;
}

/* One of several goes on to all of them. */
static void
on_activate (DrawlShotList *self, guint position)
{
  DrawlShot *shot = drawl_shot_view_get_shot (self->view, position);

  if (!drawl_shot_selection_has (self->selection, shot))
    drawl_shot_list_select (self, shot);
  drawl_shot_list_activate (self);
}

void
drawl_shot_list_focus_row (DrawlShotList *list)
{
  guint at = hand_position (list);

  if (at != G_MAXUINT)
    gtk_widget_activate_action (list->list_view, "list.scroll-to-item", "u", at);
  drawl_focus_when_ready (list->list_view);
}

/* ---- The plan ---- */

/* Once per turn of the loop, however many edits came in between. */
static gboolean
on_idle (gpointer data)
{
  DrawlShotList *self = data;

  self->idle_id = 0;
  drawl_shot_list_catch_up (self);
  return G_SOURCE_REMOVE;
}

static void
on_plan_changed (DrawlShotList *self)
{
  if (self->idle_id == 0)
    self->idle_id = g_idle_add (on_idle, self);
}

void
drawl_shot_list_set_plan (DrawlShotList *list, DrawlPlan *plan)
{
  if (plan == list->plan)
    return;
  if (list->plan != NULL)
    g_signal_handlers_disconnect_by_data (list->plan, list);
  g_set_object (&list->plan, plan);
  drawl_shot_view_set_plan (list->view, plan);
  if (plan != NULL) {
    g_signal_connect_swapped (plan, "changed", G_CALLBACK (on_plan_changed), list);
    if (drawl_shot_view_n_shown (list->view) > 0)
      go_to (list, 0);
  }
  drawl_shot_list_catch_up (list);
  g_object_notify_by_pspec (G_OBJECT (list), props[PROP_PLAN]);
}

/* ---- The type ---- */

static void
drawl_shot_list_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  DrawlShotList *self = DRAWL_SHOT_LIST (object);
  const DrawlShotOrder *order = drawl_shot_view_get_order (self->view);

  switch (prop_id) {
  case PROP_PLAN:
    g_value_set_object (value, self->plan);
    break;
  case PROP_SELECTED:
    g_value_set_object (value, self->selected);
    break;
  case PROP_N_SELECTED:
    g_value_set_uint (value, drawl_shot_list_n_selected (self));
    break;
  case PROP_FILTER:
    g_value_set_string (value, drawl_shot_list_get_filter (self));
    break;
  case PROP_BODY_FILTER:
    g_value_set_string (value, drawl_shot_list_get_body_filter (self));
    break;
  case PROP_SORT:
    g_value_set_string (value, drawl_shot_order_id (order->key));
    break;
  case PROP_DESCENDING:
    g_value_set_boolean (value, order->descending);
    break;
  case PROP_GROUPED:
    g_value_set_boolean (value, order->grouped);
    break;
  case PROP_SINGLE_CLICK:
    g_value_set_boolean (value, self->single_click);
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
  }
}

static void
drawl_shot_list_set_property (GObject *object, guint prop_id, const GValue *value,
                              GParamSpec *pspec)
{
  DrawlShotList *self = DRAWL_SHOT_LIST (object);
  DrawlShotOrder order = *drawl_shot_view_get_order (self->view);

  switch (prop_id) {
  case PROP_PLAN:
    drawl_shot_list_set_plan (self, g_value_get_object (value));
    break;
  case PROP_FILTER:
    drawl_shot_list_set_filter (self, g_value_get_string (value));
    break;
  case PROP_BODY_FILTER:
    drawl_shot_list_set_body_filter (self, g_value_get_string (value));
    break;
  case PROP_SORT:
    order.key = drawl_shot_order_from_id (g_value_get_string (value));
    drawl_shot_list_set_order (self, &order);
    break;
  case PROP_DESCENDING:
    order.descending = g_value_get_boolean (value);
    drawl_shot_list_set_order (self, &order);
    break;
  case PROP_GROUPED:
    order.grouped = g_value_get_boolean (value);
    drawl_shot_list_set_order (self, &order);
    break;
  case PROP_SINGLE_CLICK:
    self->single_click = g_value_get_boolean (value);
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
  }
}

static void
drawl_shot_list_dispose (GObject *object)
{
  DrawlShotList *self = DRAWL_SHOT_LIST (object);

  g_clear_handle_id (&self->idle_id, g_source_remove);
  if (self->plan != NULL)
    g_signal_handlers_disconnect_by_data (self->plan, self);
  g_clear_object (&self->plan);
  g_clear_object (&self->selected);
  g_signal_handlers_disconnect_by_data (self->selection, self);
  g_signal_handlers_disconnect_by_data (self->view, self);
  g_clear_pointer (&self->menu, gtk_widget_unparent);
  gtk_widget_dispose_template (GTK_WIDGET (self), DRAWL_TYPE_SHOT_LIST);
  G_OBJECT_CLASS (drawl_shot_list_parent_class)->dispose (object);
}

static void
drawl_shot_list_finalize (GObject *object)
{
  DrawlShotList *self = DRAWL_SHOT_LIST (object);

  g_ptr_array_unref (self->rows);
  g_object_unref (self->selection);
  g_object_unref (self->view);
  G_OBJECT_CLASS (drawl_shot_list_parent_class)->finalize (object);
}

static void
on_menu_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  drawl_shot_list_open_menu (DRAWL_SHOT_LIST (widget));
}

static void
on_select_all_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  drawl_shot_list_select_all (DRAWL_SHOT_LIST (widget));
}

static void
on_select_one_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  DrawlShotList *self = DRAWL_SHOT_LIST (widget);

  if (self->selected != NULL)
    drawl_shot_list_select (self, self->selected);
}

static void
install_properties (GObjectClass *object_class)
{
  GParamFlags flags = G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;
  GParamFlags open = G_PARAM_READWRITE | flags;

  props[PROP_PLAN] = g_param_spec_object ("plan", NULL, NULL, DRAWL_TYPE_PLAN, open);
  props[PROP_SELECTED] =
      g_param_spec_object ("selected", NULL, NULL, DRAWL_TYPE_SHOT, G_PARAM_READABLE | flags);
  props[PROP_N_SELECTED] =
      g_param_spec_uint ("n-selected", NULL, NULL, 0, G_MAXUINT, 0, G_PARAM_READABLE | flags);
  props[PROP_FILTER] = g_param_spec_string ("filter", NULL, NULL, "all", open);
  props[PROP_BODY_FILTER] = g_param_spec_string ("body-filter", NULL, NULL, "", open);
  props[PROP_SORT] = g_param_spec_string ("sort", NULL, NULL, "plan", open);
  props[PROP_DESCENDING] = g_param_spec_boolean ("descending", NULL, NULL, FALSE, open);
  props[PROP_GROUPED] = g_param_spec_boolean ("grouped", NULL, NULL, FALSE, open);
  props[PROP_SINGLE_CLICK] = g_param_spec_boolean ("single-click", NULL, NULL, FALSE,
                                                   G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class, "/org/drawl/Drawl/ui/shot-list.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, head_box);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, stack);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, scroller);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, list_view);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, shot_menu);
  gtk_widget_class_bind_template_callback (widget_class, on_activate);
  gtk_widget_class_bind_template_callback (widget_class, drawl_shot_list_focus_row);
  drawl_shot_list_bind_show (widget_class);
}

static void
drawl_shot_list_class_init (DrawlShotListClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GType type = G_TYPE_FROM_CLASS (klass);

  object_class->get_property = drawl_shot_list_get_property;
  object_class->set_property = drawl_shot_list_set_property;
  object_class->dispose = drawl_shot_list_dispose;
  object_class->finalize = drawl_shot_list_finalize;
  install_properties (object_class);
  signals[ACTIVATED] =
      g_signal_new ("activated", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[TOLD] = g_signal_new ("told", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                                1, G_TYPE_STRING);
  signals[COPIED] = g_signal_new ("copied", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_UINT);
  gtk_widget_class_install_action (widget_class, "shots.menu", NULL, on_menu_action);
  gtk_widget_class_install_action (widget_class, "shots.select-all", NULL, on_select_all_action);
  gtk_widget_class_install_action (widget_class, "shots.select-one", NULL, on_select_one_action);
  bind_template (widget_class);
}

static void
drawl_shot_list_init (DrawlShotList *self)
{
  self->rows = g_ptr_array_new ();
  self->view = drawl_shot_view_new ();
  self->selection = drawl_shot_selection_new (self->view);
  gtk_widget_init_template (GTK_WIDGET (self));
  drawl_shot_list_add_rows (self);
  drawl_shot_list_add_drop (self);
  drawl_shot_list_add_show (self);
  g_signal_connect_swapped (self->selection, "changed", G_CALLBACK (on_selection_changed), self);
  gtk_list_view_set_model (GTK_LIST_VIEW (self->list_view), GTK_SELECTION_MODEL (self->selection));
}

GtkWidget *
drawl_shot_list_new (void)
{
  return g_object_new (DRAWL_TYPE_SHOT_LIST, NULL);
}
