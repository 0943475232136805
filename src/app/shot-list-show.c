/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Which shots the list shows, and in which order; and the two lines under the search that say so
 * whenever it is not all of them, or not the plan's order. */

#include "app/shot-list-private.h"

#include "core/text.h"
#include "plan/figure.h"

#define FILTER_ALL "all"

/* ---- The lines ---- */

/* "4 of 14 shots: needs a licence, A · Treadle 4". */
static char *
filter_text (DrawlShotList *self, guint shown, guint all)
{
  DrawlShotFilter *filter = drawl_shot_view_get_filter (self->view);
  int verdict = drawl_shot_filter_get_verdict (filter);
  DrawlHiredBody *hired = drawl_shot_filter_get_body (filter);
  g_autofree char *shown_text = drawl_figure_count (shown), *all_text = drawl_figure_count (all);
  g_autofree char *body = hired != NULL ? drawl_hired_body_dup_name (hired) : NULL;
  /* Translators: "4 of 14 shots". */
  g_autofree char *count =
      g_strdup_printf (ngettext_ ("%s of %s shot", "%s of %s shots", all), shown_text, all_text);

  if (verdict == DRAWL_SHOT_FILTER_ANY && hired == NULL)
    return g_steal_pointer (&count);
  if (hired == NULL)
    return g_strdup_printf ("%s: %s", count, drawl_verdict_name ((DrawlVerdict)verdict));
  if (verdict == DRAWL_SHOT_FILTER_ANY)
    return g_strdup_printf ("%s: %s", count, body);
  return g_strdup_printf ("%s: %s, %s", count, drawl_verdict_name ((DrawlVerdict)verdict), body);
}

static void
mark_button (GtkWidget *button, gboolean at_work)
{
  (at_work ? gtk_widget_add_css_class : gtk_widget_remove_css_class) (button, "filtering");
}

static void
tell_filter (DrawlShotList *self)
{
  DrawlShotFilter *filter = drawl_shot_view_get_filter (self->view);
  guint shown = drawl_shot_view_n_shown (self->view);
  guint all = self->plan != NULL ? drawl_plan_n_shots (self->plan) : 0;
  gboolean by_menu = drawl_shot_filter_get_verdict (filter) != DRAWL_SHOT_FILTER_ANY ||
                     drawl_shot_filter_get_body (filter) != NULL;
  g_autofree char *text = filter_text (self, shown, all);

  gtk_label_set_text (GTK_LABEL (self->filter_label), text);
  gtk_revealer_set_reveal_child (GTK_REVEALER (self->filter_revealer), by_menu || shown < all);
  gtk_stack_set_visible_child_name (GTK_STACK (self->stack),
                                    shown == 0 && all > 0 ? "none" : "shots");
  mark_button (self->filter_button, by_menu);
}

static void
tell_order (DrawlShotList *self)
{
  const DrawlShotOrder *order = drawl_shot_view_get_order (self->view);
  const char *words = drawl_shot_order_words (order->key);
  gboolean sorted = words != NULL || order->descending;

  if (words == NULL)
    words = _ ("In plan order");
  g_autofree char *text =
      /* Translators: "Sorted by slate". */
      order->descending ? g_strdup_printf (_ ("%s, descending"), words) : g_strdup (words);
  gtk_label_set_text (GTK_LABEL (self->order_label), text);
  gtk_revealer_set_reveal_child (GTK_REVEALER (self->order_revealer), sorted);
  mark_button (self->order_button, sorted || order->grouped);
}

/* ---- The bars share one scale: the longest time of the plan fills a row ---- */

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

/* ---- The bodies in the filter's menu ---- */

static void
fill_bodies (DrawlShotList *self)
{
  GListModel *bodies = self->plan != NULL ? drawl_plan_get_bodies (self->plan) : NULL;
  guint n = bodies != NULL ? g_list_model_get_n_items (bodies) : 0;

  g_menu_remove_all (self->body_section);
  for (guint i = 0; n > 1 && i < n; i++) {
    g_autoptr (DrawlHiredBody) hired = g_list_model_get_item (bodies, i);
    g_autofree char *name = drawl_hired_body_dup_name (hired);
    /* In a menu one underscore marks a letter, two are one. */
    g_auto (GStrv) parts = g_strsplit (name, "_", -1);
    g_autofree char *label = g_strjoinv ("__", parts);
    g_autoptr (GMenuItem) item = g_menu_item_new (label, NULL);
    g_menu_item_set_action_and_target (item, "win.filter-body", "s",
                                       drawl_hired_body_get_id (hired));
    g_menu_append_item (self->body_section, item);
  }
}

static void
on_filter_menu (GtkMenuButton *button, gpointer data)
{
  fill_bodies (data);
}

/* ---- Changes ---- */

void
drawl_shot_list_catch_up (DrawlShotList *list)
{
  DrawlShotFilter *filter = drawl_shot_view_get_filter (list->view);

  if (!drawl_shot_filter_is_open (filter) ||
      !drawl_shot_order_is_plain (drawl_shot_view_get_order (list->view)))
    drawl_shot_view_refresh (list->view);
  scale_bars (list);
  tell_filter (list);
}

/* The keyboard focus goes with the shot in hand, not with its place; without any, to the search. */
static void
narrow (DrawlShotList *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  gboolean focused = root != NULL && gtk_widget_get_focus_child (self->list_view) != NULL;

  if (focused)
    gtk_root_set_focus (root, NULL);
  drawl_shot_view_narrow (self->view);
  tell_filter (self);
  if (!focused)
    return;
  if (drawl_shot_view_n_shown (self->view) > 0)
    drawl_shot_list_focus_row (self);
  else
    gtk_text_grab_focus_without_selecting (
        GTK_TEXT (gtk_editable_get_delegate (GTK_EDITABLE (self->search_entry))));
}

static void
on_search_changed (DrawlShotList *self)
{
  if (drawl_shot_filter_set_text (drawl_shot_view_get_filter (self->view),
                                  gtk_editable_get_text (GTK_EDITABLE (self->search_entry))))
    narrow (self);
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
  drawl_shot_list_set_body_filter (self, "");
}

static void
on_plan_order (DrawlShotList *self)
{
  DrawlShotOrder order = *drawl_shot_view_get_order (self->view);

  order.key = DRAWL_SHOT_ORDER_PLAN;
  order.descending = FALSE;
  drawl_shot_list_set_order (self, &order);
  drawl_shot_list_focus_row (self);
}

void
drawl_shot_list_search (DrawlShotList *list)
{
  gtk_widget_grab_focus (list->search_entry);
  gtk_editable_select_region (GTK_EDITABLE (list->search_entry), 0, -1);
}

void
drawl_shot_list_set_filter (DrawlShotList *list, const char *filter)
{
  int verdict = DRAWL_SHOT_FILTER_ANY;

  for (int i = 0; i < DRAWL_N_VERDICTS; i++)
    if (g_strcmp0 (filter, drawl_verdict_id ((DrawlVerdict)i)) == 0)
      verdict = i;
  if (!drawl_shot_filter_set_verdict (drawl_shot_view_get_filter (list->view), verdict))
    return;
  narrow (list);
  drawl_shot_list_notify (list, "filter");
}

const char *
drawl_shot_list_get_filter (DrawlShotList *list)
{
  int verdict = drawl_shot_filter_get_verdict (drawl_shot_view_get_filter (list->view));

  return verdict == DRAWL_SHOT_FILTER_ANY ? FILTER_ALL : drawl_verdict_id ((DrawlVerdict)verdict);
}

void
drawl_shot_list_set_body_filter (DrawlShotList *list, const char *id)
{
  DrawlHiredBody *hired = list->plan != NULL ? drawl_plan_find_body (list->plan, id) : NULL;

  if (!drawl_shot_filter_set_body (drawl_shot_view_get_filter (list->view), hired))
    return;
  narrow (list);
  drawl_shot_list_notify (list, "body-filter");
}

const char *
drawl_shot_list_get_body_filter (DrawlShotList *list)
{
  DrawlHiredBody *hired = drawl_shot_filter_get_body (drawl_shot_view_get_filter (list->view));

  return hired != NULL ? drawl_hired_body_get_id (hired) : "";
}

void
drawl_shot_list_set_order (DrawlShotList *list, const DrawlShotOrder *order)
{
  const DrawlShotOrder before = *drawl_shot_view_get_order (list->view);

  if (before.key == order->key && before.descending == order->descending &&
      before.grouped == order->grouped)
    return;
  drawl_shot_view_set_order (list->view, order);
  tell_order (list);
  if (list->selected != NULL)
    gtk_widget_activate_action (list->list_view, "list.scroll-to-item", "u",
                                drawl_shot_view_find (list->view, list->selected));
  drawl_shot_list_notify (list, "sort");
  drawl_shot_list_notify (list, "descending");
  drawl_shot_list_notify (list, "grouped");
}

const DrawlShotOrder *
drawl_shot_list_get_order (DrawlShotList *list)
{
  return drawl_shot_view_get_order (list->view);
}

GPtrArray *
drawl_shot_list_dup_order (DrawlShotList *list)
{
  return drawl_shot_view_dup_order (list->view);
}

gboolean
drawl_shot_list_can_move (DrawlShotList *list)
{
  const DrawlShotOrder *order = drawl_shot_view_get_order (list->view);

  return order->key == DRAWL_SHOT_ORDER_PLAN && !order->descending &&
         drawl_shot_view_in_plan_order (list->view);
}

/* ---- In the type ---- */

void
drawl_shot_list_bind_show (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, search_entry);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, filter_button);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, filter_revealer);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, filter_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, order_button);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, order_revealer);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, order_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotList, body_section);
  gtk_widget_class_bind_template_callback (widget_class, on_search_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_stop_search);
  gtk_widget_class_bind_template_callback (widget_class, on_next_match);
  gtk_widget_class_bind_template_callback (widget_class, on_previous_match);
  gtk_widget_class_bind_template_callback (widget_class, on_show_all);
  gtk_widget_class_bind_template_callback (widget_class, on_plan_order);
}

void
drawl_shot_list_add_show (DrawlShotList *list)
{
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (list->filter_button), on_filter_menu,
                                         list, NULL);
  g_signal_connect_swapped (list->view, "refreshed", G_CALLBACK (drawl_shot_list_fill_rows), list);
}
