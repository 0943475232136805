/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What a person does to shots from the window: add, duplicate, remove and move those that are
 * selected, search, filter, sort. Each is an action of the window, one row of the table; each that
 * changes the plan is one step of undo. */

#include "app/message.h"
#include "app/shot-edit.h"
#include "app/window-private.h"
#include "core/text.h"
#include "plan/figure.h"

/* "Remove Shot", "Remove 12 Shots": @many has one place for the number. New string. */
static char *
counted (const char *one, const char *many, guint n)
{
  g_autofree char *count = drawl_figure_count (n);
  g_auto (GStrv) parts = g_strsplit (many, "%s", 2);

  return n == 1 ? g_strdup (one) : g_strjoinv (count, parts);
}

static GPtrArray *
dup_selection (DrawlWindow *self)
{
  return drawl_shot_list_dup_selection (drawl_window_get_list (self));
}

/* ---- Adding ---- */

/* A new shot goes on with the body, size and codec of the one in hand. */
static DrawlShotFields *
new_fields (DrawlPlan *plan, DrawlShot *after)
{
  g_autofree char *slate = drawl_plan_next_slate (plan);
  DrawlShotFields *fields = drawl_shot_fields_new (slate, drawl_plan_get_settings (plan)->playback);
  const DrawlShotFields *former = after != NULL ? drawl_shot_get_fields (after) : NULL;
  g_autoptr (DrawlHiredBody) first = g_list_model_get_item (drawl_plan_get_bodies (plan), 0);

  if (former != NULL && former->body[0] != '\0') {
    drawl_shot_fields_set (&fields->body, former->body);
    drawl_shot_fields_set (&fields->size, former->size);
    drawl_shot_fields_set (&fields->codec, former->codec);
    fields->audio_tracks = former->audio_tracks;
  } else if (first != NULL)
    drawl_shot_edit_give_body (fields, first);
  return fields;
}

static guint
position_after (DrawlPlan *plan, DrawlShot *shot)
{
  int at = shot != NULL ? drawl_plan_shot_position (plan, shot) : -1;

  return at >= 0 ? (guint)at + 1 : drawl_plan_n_shots (plan);
}

static void
on_add_shot (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;
  DrawlPlan *plan = drawl_window_get_plan (self);
  DrawlShot *after = drawl_window_get_shot (self);
  guint position = position_after (plan, after);
  g_autoptr (DrawlShotFields) fields = new_fields (plan, after);
  g_autoptr (GError) error = NULL;

  drawl_window_show_page (self, "shots");
  if (!drawl_plan_insert_shot (plan, position, fields, _ ("Add Shot"), &error)) {
    drawl_message_show (GTK_WINDOW (self), _ ("The Shot Could Not Be Added"), error);
    return;
  }
  drawl_shot_list_select (drawl_window_get_list (self), drawl_plan_get_shot (plan, position));
  drawl_shots_page_enter_shot (self->shots);
}

/* The copies stand behind the last of the originals, and are selected in their place. */
static void
on_duplicate_shot (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;
  DrawlPlan *plan = drawl_window_get_plan (self);
  g_autoptr (GPtrArray) shots = dup_selection (self);
  g_autoptr (DrawlShotBundle) bundle = drawl_shot_bundle_new (plan, shots);
  g_autoptr (GPtrArray) copies = g_ptr_array_new_with_free_func (g_object_unref);
  guint position = position_after (plan, shots->pdata[shots->len - 1]);
  g_autofree char *label =
      counted (_ ("Duplicate Shot"),
               ngettext_ ("Duplicate %s Shot", "Duplicate %s Shots", shots->len), shots->len);
  g_autoptr (GError) error = NULL;

  drawl_window_show_page (self, "shots");
  if (!drawl_shot_bundle_insert (bundle, plan, position, label, &error)) {
    drawl_message_show (GTK_WINDOW (self), _ ("The Shots Could Not Be Duplicated"), error);
    return;
  }
  for (guint i = 0; i < shots->len; i++)
    g_ptr_array_add (copies, g_object_ref (drawl_plan_get_shot (plan, position + i)));
  drawl_shot_list_select_many (drawl_window_get_list (self), copies);
  if (copies->len == 1)
    drawl_shots_page_enter_shot (self->shots);
}

/* ---- Removing and moving ---- */

static void
on_remove_shot (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;
  g_autoptr (GPtrArray) shots = dup_selection (self);
  guint n = shots->len;
  g_autofree char *label =
      counted (_ ("Remove Shot"), ngettext_ ("Remove %s Shot", "Remove %s Shots", n), n);
  g_autofree char *one =
      g_strdup_printf (_ ("Shot %s removed"), drawl_shot_get_slate (shots->pdata[0]));
  g_autofree char *text = counted (one, ngettext_ ("%s shot removed", "%s shots removed", n), n);

  drawl_plan_remove_all (drawl_window_get_plan (self), shots, label);
  drawl_window_tell_undoable (self, text);
}

/* The plan's shots with each of those in @chosen one place nearer to its beginning (@step −1) or
 * end (1); those that stand there already stay. */
static GPtrArray *
stepped (DrawlPlan *plan, const GPtrArray *chosen, int step)
{
  guint n = drawl_plan_n_shots (plan);
  GPtrArray *order = g_ptr_array_new_full (n, g_object_unref);
  g_autoptr (GHashTable) set = g_hash_table_new (NULL, NULL);

  for (guint i = 0; i < chosen->len; i++)
    g_hash_table_add (set, chosen->pdata[i]);
  for (guint i = 0; i < n; i++)
    g_ptr_array_add (order, g_object_ref (drawl_plan_get_shot (plan, i)));
  for (guint i = 1; i < n; i++) {
    guint at = step < 0 ? i : n - 1 - i, ahead = at + (guint)step;
    gpointer shot = order->pdata[at], other = order->pdata[ahead];
    if (!g_hash_table_contains (set, shot) || g_hash_table_contains (set, other))
      continue;
    order->pdata[ahead] = shot;
    order->pdata[at] = other;
  }
  return order;
}

static void
move_by (DrawlWindow *self, int step)
{
  DrawlPlan *plan = drawl_window_get_plan (self);
  DrawlShotList *list = drawl_window_get_list (self);
  g_autoptr (GPtrArray) shots = dup_selection (self);
  g_autoptr (GPtrArray) order = stepped (plan, shots, step);
  g_autofree char *label = counted (
      _ ("Move Shot"), ngettext_ ("Move %s Shot", "Move %s Shots", shots->len), shots->len);

  drawl_plan_reorder (plan, order, label);
  drawl_shot_list_select_many (list, shots);
}

static void
on_move_up (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  move_by (data, -1);
}

static void
on_move_down (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  move_by (data, 1);
}

/* ---- Going about ---- */

static void
on_previous_shot (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  drawl_shot_list_step (drawl_window_get_list (data), -1);
}

static void
on_next_shot (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  drawl_shot_list_step (drawl_window_get_list (data), 1);
}

static void
on_select_all (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  drawl_shot_list_select_all (drawl_window_get_list (data));
}

static void
on_find (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;

  drawl_window_show_page (self, "shots");
  drawl_shots_page_go_back (self->shots);
  drawl_shot_list_search (drawl_window_get_list (self));
}

/* The verdict that is shown already: all of them again. */
static void
on_filter (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;
  const char *wanted = g_variant_get_string (parameter, NULL);

  drawl_window_show_page (self, "shots");
  DrawlShotList *list = drawl_window_get_list (self);
  gboolean again = g_str_equal (wanted, drawl_shot_list_get_filter (list));
  drawl_shot_list_set_filter (list, again ? "all" : wanted);
  drawl_window_refresh_shot_actions (self);
}

static void
on_filter_body (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;
  const char *wanted = g_variant_get_string (parameter, NULL);

  drawl_window_show_page (self, "shots");
  DrawlShotList *list = drawl_window_get_list (self);
  gboolean again = g_str_equal (wanted, drawl_shot_list_get_body_filter (list));
  drawl_shot_list_set_body_filter (list, again ? "" : wanted);
  drawl_window_refresh_shot_actions (self);
}

/* ---- The order of the list ---- */

/* A window that is opened next begins with the same. */
static void
remember_order (DrawlWindow *self, const DrawlShotOrder *order)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (self));
  GSettings *settings = drawl_application_get_settings (DRAWL_APPLICATION (application));

  g_settings_set_string (settings, "sort", drawl_shot_order_id (order->key));
  g_settings_set_boolean (settings, "sort-descending", order->descending);
  g_settings_set_boolean (settings, "group-by-scene", order->grouped);
}

static void
set_order (DrawlWindow *self, const DrawlShotOrder *order)
{
  drawl_window_show_page (self, "shots");
  drawl_shot_list_set_order (drawl_window_get_list (self), order);
  remember_order (self, order);
}

static void
on_sort (GSimpleAction *action, GVariant *value, gpointer data)
{
  DrawlShotOrder order = *drawl_shot_list_get_order (drawl_window_get_list (data));

  order.key = drawl_shot_order_from_id (g_variant_get_string (value, NULL));
  set_order (data, &order);
}

static void
on_descending (GSimpleAction *action, GVariant *value, gpointer data)
{
  DrawlShotOrder order = *drawl_shot_list_get_order (drawl_window_get_list (data));

  order.descending = g_variant_get_boolean (value);
  set_order (data, &order);
}

static void
on_group (GSimpleAction *action, GVariant *value, gpointer data)
{
  DrawlShotOrder order = *drawl_shot_list_get_order (drawl_window_get_list (data));

  order.grouped = g_variant_get_boolean (value);
  set_order (data, &order);
}

/* What was a view becomes the plan's own order. */
static void
on_keep_order (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;
  DrawlShotList *list = drawl_window_get_list (self);
  DrawlShotOrder order = *drawl_shot_list_get_order (list);
  g_autoptr (GPtrArray) shots = drawl_shot_list_dup_order (list);

  drawl_plan_reorder (drawl_window_get_plan (self), shots, _ ("Keep This Order"));
  order.key = DRAWL_SHOT_ORDER_PLAN;
  order.descending = FALSE;
  set_order (self, &order);
}

/* ---- What the list says ---- */

static void
on_copied (DrawlWindow *self, guint n)
{
  g_autofree char *text =
      counted (_ ("Shot copied"), ngettext_ ("%s shot copied", "%s shots copied", n), n);

  drawl_window_tell_undoable (self, text);
}

void
drawl_window_listen_to_list (DrawlWindow *window, DrawlShotList *list)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (window));
  GSettings *settings =
      application != NULL ? drawl_application_get_settings (DRAWL_APPLICATION (application)) : NULL;

  if (settings != NULL) {
    g_autofree char *sort = g_settings_get_string (settings, "sort");
    DrawlShotOrder order = {.key = drawl_shot_order_from_id (sort),
                            .descending = g_settings_get_boolean (settings, "sort-descending"),
                            .grouped = g_settings_get_boolean (settings, "group-by-scene")};
    drawl_shot_list_set_order (list, &order);
  }
  g_signal_connect_object (list, "notify", G_CALLBACK (drawl_window_refresh_actions), window,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (list, "told", G_CALLBACK (drawl_window_tell), window, G_CONNECT_SWAPPED);
  g_signal_connect_object (list, "copied", G_CALLBACK (on_copied), window, G_CONNECT_SWAPPED);
}

/* ---- The actions ---- */

static void
show_state (DrawlWindow *self, const char *name, GVariant *state)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), name);

  g_simple_action_set_state (G_SIMPLE_ACTION (action), state);
}

static void
refresh_states (DrawlWindow *self, DrawlShotList *list)
{
  static const DrawlShotOrder plain = {.key = DRAWL_SHOT_ORDER_PLAN};
  const DrawlShotOrder *order = list != NULL ? drawl_shot_list_get_order (list) : &plain;

  show_state (self, "filter",
              g_variant_new_string (list != NULL ? drawl_shot_list_get_filter (list) : "all"));
  show_state (self, "filter-body",
              g_variant_new_string (list != NULL ? drawl_shot_list_get_body_filter (list) : ""));
  show_state (self, "sort-shots", g_variant_new_string (drawl_shot_order_id (order->key)));
  show_state (self, "sort-descending", g_variant_new_boolean (order->descending));
  show_state (self, "group-shots", g_variant_new_boolean (order->grouped));
}

/* Whether one of the selected has a place to go to. */
static gboolean
can_step (DrawlPlan *plan, const GPtrArray *chosen, int step)
{
  guint n = chosen->len;

  if (n == 0)
    return FALSE;
  guint first = (guint)drawl_plan_shot_position (plan, chosen->pdata[0]);
  guint last = (guint)drawl_plan_shot_position (plan, chosen->pdata[n - 1]);
  return step < 0 ? last >= n : first + n < drawl_plan_n_shots (plan);
}

void
drawl_window_refresh_shot_actions (DrawlWindow *window)
{
  DrawlPlan *plan = drawl_window_get_plan (window);
  DrawlShotList *list = drawl_window_get_list (window);
  g_autoptr (GPtrArray) chosen =
      plan != NULL && list != NULL ? dup_selection (window) : g_ptr_array_new ();
  gboolean can_move = list != NULL && drawl_shot_list_can_move (list);
  static const char *const of_plan[] = {"add-shot", "find", "filter", "filter-body"};
  static const char *const of_list[] = {"sort-shots", "sort-descending", "group-shots"};
  static const char *const of_shots[] = {"duplicate-shot", "remove-shot", "previous-shot",
                                         "next-shot", "select-all-shots"};

  for (gsize i = 0; i < G_N_ELEMENTS (of_plan); i++)
    drawl_window_enable (window, of_plan[i], plan != NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (of_list); i++)
    drawl_window_enable (window, of_list[i], plan != NULL && list != NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (of_shots); i++)
    drawl_window_enable (window, of_shots[i], chosen->len > 0);
  drawl_window_enable (window, "move-shot-up", can_move && can_step (plan, chosen, -1));
  drawl_window_enable (window, "move-shot-down", can_move && can_step (plan, chosen, 1));
  drawl_window_enable (window, "keep-order", plan != NULL && list != NULL && !can_move);
  refresh_states (window, list);
}

void
drawl_window_add_shot_actions (DrawlWindow *window)
{
  static const GActionEntry entries[] = {
      {"add-shot", on_add_shot},
      {"duplicate-shot", on_duplicate_shot},
      {"remove-shot", on_remove_shot},
      {"move-shot-up", on_move_up},
      {"move-shot-down", on_move_down},
      {"previous-shot", on_previous_shot},
      {"next-shot", on_next_shot},
      {"select-all-shots", on_select_all},
      {"find", on_find},
      {"filter", on_filter, "s", "'all'"},
      {"filter-body", on_filter_body, "s", "''"},
      {"sort-shots", NULL, "s", "'plan'", on_sort},
      {"sort-descending", NULL, NULL, "false", on_descending},
      {"group-shots", NULL, NULL, "false", on_group},
      {"keep-order", on_keep_order},
  };

  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
}
