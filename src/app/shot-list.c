/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The list of shots: plan → filter → selection → rows. Invariant: "selected" is the selection's
 * item; the filter keeps it through edits, and lets it go only when the filter itself is changed.
 */

#include "app/shot-list-private.h"

#include <adwaita.h>

#include "app/focus.h"
#include "core/text.h"
#include "plan/figure.h"

#define FILTER_ALL "all"

enum { PROP_PLAN = 1, PROP_SELECTED, PROP_FILTER, PROP_SINGLE_CLICK, N_PROPS };

static GParamSpec *props[N_PROPS];
static guint activated_signal;

G_DEFINE_FINAL_TYPE (DrawlShotList, drawl_shot_list, GTK_TYPE_WIDGET)

/* The bars share one scale: the longest time of the plan fills a row. */
static double
longest_of (DrawlPlan *plan)
{
  double longest = 0;

  for (guint i = 0; plan != NULL && i < drawl_plan_n_shots (plan); i++) {
    const DrawlRational *value = drawl_shot_get_timing (drawl_plan_get_shot (plan, i))->value;
    longest = MAX (longest, drawl_rational_to_double (value[DRAWL_TIMING_SCREEN]));
    longest = MAX (longest, drawl_rational_to_double (value[DRAWL_TIMING_ACTION]));
  }
  return longest;
}

static void
scale_bars (DrawlShotList *self)
{
  double longest = longest_of (self->plan);

  if (longest >= self->longest_s && longest <= self->longest_s)
    return;
  drawl_shot_list_scale_rows (self, longest);
}

static void
tell_count (DrawlShotList *self)
{
  guint shown = g_list_model_get_n_items (G_LIST_MODEL (self->selection));
  guint all = self->plan != NULL ? drawl_plan_n_shots (self->plan) : 0;
  int verdict = drawl_shot_filter_get_verdict (self->filter);
  gboolean narrowed = verdict != DRAWL_SHOT_FILTER_ANY || shown < all;
  g_autofree char *shown_text = drawl_figure_count (shown);
  g_autofree char *all_text = drawl_figure_count (all);
  /* Translators: "4 of 14 shots". */
  g_autofree char *count =
      g_strdup_printf (ngettext_ ("%s of %s shot", "%s of %s shots", all), shown_text, all_text);
  g_autofree char *text =
      verdict == DRAWL_SHOT_FILTER_ANY
          ? g_strdup (count)
          : g_strdup_printf ("%s: %s", count, drawl_verdict_name ((DrawlVerdict)verdict));

  gtk_label_set_text (GTK_LABEL (self->filter_label), text);
  gtk_revealer_set_reveal_child (GTK_REVEALER (self->filter_revealer), narrowed);
  gtk_stack_set_visible_child_name (GTK_STACK (self->stack),
                                    shown == 0 && all > 0 ? "none" : "shots");
  if (verdict == DRAWL_SHOT_FILTER_ANY)
    gtk_widget_remove_css_class (self->filter_button, "filtering");
  else
    gtk_widget_add_css_class (self->filter_button, "filtering");
}

/* Once per turn of the loop, however many edits came in between. */
static gboolean
catch_up (gpointer data)
{
  DrawlShotList *self = data;

  self->idle_id = 0;
  drawl_shot_filter_refresh (self->filter);
  scale_bars (self);
  tell_count (self);
  return G_SOURCE_REMOVE;
}

static void
on_plan_changed (DrawlShotList *self)
{
  if (self->idle_id == 0)
    self->idle_id = g_idle_add (catch_up, self);
}

static void
on_selected_notify (DrawlShotList *self)
{
  DrawlShot *shot = gtk_single_selection_get_selected_item (self->selection);

  if (self->narrowing)
    return;
  drawl_shot_filter_keep (self->filter, shot);
  if (g_set_object (&self->selected, shot))
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SELECTED]);
}

void
drawl_shot_list_activate (DrawlShotList *list)
{
  g_signal_emit (list, activated_signal, 0);
}

static void
begin_narrowing (DrawlShotList *self)
{
  self->narrowing = TRUE;
  drawl_shot_filter_keep (self->filter, NULL);
}

static void
end_narrowing (DrawlShotList *self)
{
  self->narrowing = FALSE;
  on_selected_notify (self);
  tell_count (self);
}

static void
on_activate (DrawlShotList *self, guint position)
{
  gtk_single_selection_set_selected (self->selection, position);
  drawl_shot_list_activate (self);
}

static void
scroll_to (DrawlShotList *self, guint position)
{
  gtk_widget_activate_action (self->list_view, "list.scroll-to-item", "u", position);
}

static guint
position_of (DrawlShotList *self, DrawlShot *shot)
{
  GListModel *model = G_LIST_MODEL (self->selection);

  for (guint i = 0; i < g_list_model_get_n_items (model); i++) {
    g_autoptr (DrawlShot) item = g_list_model_get_item (model, i);
    if (item == shot)
      return i;
  }
  return GTK_INVALID_LIST_POSITION;
}

void
drawl_shot_list_select (DrawlShotList *list, DrawlShot *shot)
{
  drawl_shot_filter_show (list->filter, shot);
  guint position = position_of (list, shot);

  if (position == GTK_INVALID_LIST_POSITION)
    return;
  gtk_single_selection_set_selected (list->selection, position);
  scroll_to (list, position);
}

void
drawl_shot_list_step (DrawlShotList *list, int direction)
{
  guint n = g_list_model_get_n_items (G_LIST_MODEL (list->selection));
  guint at = gtk_single_selection_get_selected (list->selection);

  if (at == GTK_INVALID_LIST_POSITION || (direction < 0 && at == 0) ||
      (direction > 0 && at + 1 >= n))
    return;
  at = direction < 0 ? at - 1 : at + 1;
  gtk_single_selection_set_selected (list->selection, at);
  scroll_to (list, at);
}

static void
on_search_changed (DrawlShotList *self)
{
  begin_narrowing (self);
  drawl_shot_filter_set_text (self->filter,
                              gtk_editable_get_text (GTK_EDITABLE (self->search_entry)));
  end_narrowing (self);
}

static void
on_stop_search (DrawlShotList *self)
{
  gtk_editable_set_text (GTK_EDITABLE (self->search_entry), "");
  drawl_shot_list_focus_row (self);
}

static void
on_next_match (DrawlShotList *self)
{
  drawl_shot_list_step (self, 1);
}

static void
on_previous_match (DrawlShotList *self)
{
  drawl_shot_list_step (self, -1);
}

static void
on_show_all (DrawlShotList *self)
{
  gtk_editable_set_text (GTK_EDITABLE (self->search_entry), "");
  drawl_shot_list_set_filter (self, FILTER_ALL);
}

void
drawl_shot_list_set_filter (DrawlShotList *list, const char *filter)
{
  int verdict = DRAWL_SHOT_FILTER_ANY;

  for (int i = 0; i < DRAWL_N_VERDICTS; i++)
    if (g_strcmp0 (filter, drawl_verdict_id ((DrawlVerdict)i)) == 0)
      verdict = i;
  if (verdict == drawl_shot_filter_get_verdict (list->filter))
    return;
  begin_narrowing (list);
  drawl_shot_filter_set_verdict (list->filter, verdict);
  end_narrowing (list);
  g_object_notify_by_pspec (G_OBJECT (list), props[PROP_FILTER]);
}

const char *
drawl_shot_list_get_filter (DrawlShotList *list)
{
  int verdict = drawl_shot_filter_get_verdict (list->filter);

  return verdict == DRAWL_SHOT_FILTER_ANY ? FILTER_ALL : drawl_verdict_id ((DrawlVerdict)verdict);
}

void
drawl_shot_list_search (DrawlShotList *list)
{
  gtk_widget_grab_focus (list->search_entry);
  gtk_editable_select_region (GTK_EDITABLE (list->search_entry), 0, -1);
}

void
drawl_shot_list_focus_row (DrawlShotList *list)
{
  guint at = gtk_single_selection_get_selected (list->selection);

  if (at != GTK_INVALID_LIST_POSITION)
    scroll_to (list, at);
  drawl_focus_when_ready (list->list_view);
}

void
drawl_shot_list_set_plan (DrawlShotList *list, DrawlPlan *plan)
{
  if (plan == list->plan)
    return;
  if (list->plan != NULL)
    g_signal_handlers_disconnect_by_data (list->plan, list);
  g_set_object (&list->plan, plan);
  drawl_shot_filter_keep (list->filter, NULL);
  gtk_filter_list_model_set_model (list->filtered, G_LIST_MODEL (plan));
  if (plan != NULL) {
    g_signal_connect_swapped (plan, "changed", G_CALLBACK (on_plan_changed), list);
    gtk_single_selection_set_selected (list->selection, 0);
  }
  scale_bars (list);
  tell_count (list);
  g_object_notify_by_pspec (G_OBJECT (list), props[PROP_PLAN]);
}

DrawlShot *
drawl_shot_list_get_selected (DrawlShotList *list)
{
  return list->selected;
}

GPtrArray *
drawl_shot_list_dup_selection (DrawlShotList *list)
{
  GPtrArray *shots = g_ptr_array_new_with_free_func (g_object_unref);

  if (list->selected != NULL)
    g_ptr_array_add (shots, g_object_ref (list->selected));
  return shots;
}

static void
drawl_shot_list_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  DrawlShotList *self = DRAWL_SHOT_LIST (object);

  switch (prop_id) {
  case PROP_PLAN:
    g_value_set_object (value, self->plan);
    break;
  case PROP_SELECTED:
    g_value_set_object (value, self->selected);
    break;
  case PROP_FILTER:
    g_value_set_string (value, drawl_shot_list_get_filter (self));
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

  switch (prop_id) {
  case PROP_PLAN:
    drawl_shot_list_set_plan (self, g_value_get_object (value));
    break;
  case PROP_FILTER:
    drawl_shot_list_set_filter (self, g_value_get_string (value));
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
  if (self->selection != NULL)
    g_signal_handlers_disconnect_by_data (self->selection, self);
  g_clear_pointer (&self->menu, gtk_widget_unparent);
  gtk_widget_dispose_template (GTK_WIDGET (self), DRAWL_TYPE_SHOT_LIST);
  g_clear_object (&self->selection);
  G_OBJECT_CLASS (drawl_shot_list_parent_class)->dispose (object);
}

static void
drawl_shot_list_finalize (GObject *object)
{
  g_ptr_array_unref (DRAWL_SHOT_LIST (object)->rows);
  G_OBJECT_CLASS (drawl_shot_list_parent_class)->finalize (object);
}

static void
on_menu_action (GtkWidget *widget, const char *action, GVariant *parameter)
{
  drawl_shot_list_open_menu (DRAWL_SHOT_LIST (widget));
}

static void
install_properties (GObjectClass *object_class)
{
  GParamFlags flags = G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;

  props[PROP_PLAN] =
      g_param_spec_object ("plan", NULL, NULL, DRAWL_TYPE_PLAN, G_PARAM_READWRITE | flags);
  props[PROP_SELECTED] =
      g_param_spec_object ("selected", NULL, NULL, DRAWL_TYPE_SHOT, G_PARAM_READABLE | flags);
  props[PROP_FILTER] =
      g_param_spec_string ("filter", NULL, NULL, FILTER_ALL, G_PARAM_READWRITE | flags);
  props[PROP_SINGLE_CLICK] = g_param_spec_boolean ("single-click", NULL, NULL, FALSE,
                                                   G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class, "/org/drawl/Drawl/ui/shot-list.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, head_box);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, search_entry);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, filter_button);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, filter_revealer);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, filter_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, stack);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, list_view);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, shot_menu);
  gtk_widget_class_bind_template_callback (widget_class, on_search_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_stop_search);
  gtk_widget_class_bind_template_callback (widget_class, on_next_match);
  gtk_widget_class_bind_template_callback (widget_class, on_previous_match);
  gtk_widget_class_bind_template_callback (widget_class, on_show_all);
  gtk_widget_class_bind_template_callback (widget_class, on_activate);
  gtk_widget_class_bind_template_callback (widget_class, drawl_shot_list_focus_row);
}

static void
drawl_shot_list_class_init (DrawlShotListClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = drawl_shot_list_get_property;
  object_class->set_property = drawl_shot_list_set_property;
  object_class->dispose = drawl_shot_list_dispose;
  object_class->finalize = drawl_shot_list_finalize;
  install_properties (object_class);
  activated_signal = g_signal_new ("activated", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                   NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_install_action (widget_class, "shots.menu", NULL, on_menu_action);
  bind_template (widget_class);
}

static void
drawl_shot_list_init (DrawlShotList *self)
{
  self->rows = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  drawl_shot_list_add_rows (self);

  self->filter = drawl_shot_filter_new ();
  self->filtered = gtk_filter_list_model_new (NULL, GTK_FILTER (self->filter));
  self->selection = gtk_single_selection_new (G_LIST_MODEL (self->filtered));
  g_signal_connect_swapped (self->selection, "notify::selected-item",
                            G_CALLBACK (on_selected_notify), self);
  gtk_list_view_set_model (GTK_LIST_VIEW (self->list_view), GTK_SELECTION_MODEL (self->selection));
}

GtkWidget *
drawl_shot_list_new (void)
{
  return g_object_new (DRAWL_TYPE_SHOT_LIST, NULL);
}
