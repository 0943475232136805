/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Shots on their way by pointer: taken up at a row, with all that is selected if the row is; put
 * down before or after a row, or below the last one. Within a plan they are moved, from plan to
 * plan copied. */

#include "app/shot-list-private.h"

#include "app/message.h"
#include "core/text.h"
#include "plan/figure.h"

/* ---- Taken up ---- */

static DrawlShotList *
list_of (DrawlShotRow *row)
{
  return DRAWL_SHOT_LIST (gtk_widget_get_ancestor (GTK_WIDGET (row), DRAWL_TYPE_SHOT_LIST));
}

static GPtrArray *
shots_at (DrawlShotList *self, DrawlShot *shot)
{
  if (drawl_shot_selection_has (self->selection, shot))
    return drawl_shot_list_dup_selection (self);
  GPtrArray *one = g_ptr_array_new_with_free_func (g_object_unref);
  g_ptr_array_add (one, g_object_ref (shot));
  return one;
}

static GdkContentProvider *
on_prepare (DrawlShotRow *row, double x, double y)
{
  DrawlShotList *self = list_of (row);
  DrawlShot *shot = drawl_shot_row_get_shot (row);

  if (shot == NULL || self == NULL)
    return NULL;
  g_autoptr (GPtrArray) shots = shots_at (self, shot);
  g_autoptr (DrawlShotBundle) bundle = drawl_shot_bundle_new (self->plan, shots);
  return gdk_content_provider_new_typed (DRAWL_TYPE_SHOT_BUNDLE, bundle);
}

/* One shot looks as in the list; of several the pointer shows how many they are. */
static void
on_drag_begin (DrawlShotRow *row, GdkDrag *drag, GtkDragSource *source)
{
  DrawlShotList *self = list_of (row);
  guint n = drawl_shot_list_n_selected (self);

  if (n == 1 || !drawl_shot_selection_has (self->selection, drawl_shot_row_get_shot (row))) {
    g_autoptr (GdkPaintable) picture = gtk_widget_paintable_new (GTK_WIDGET (row));
    gtk_drag_source_set_icon (source, picture, 12, 12);
    return;
  }
  g_autofree char *count = drawl_figure_count (n);
  g_autofree char *text = g_strdup_printf (ngettext_ ("%s shot", "%s shots", n), count);
  GtkWidget *label = gtk_label_new (text);
  gtk_widget_add_css_class (label, "drag-count");
  gtk_drag_icon_set_child (GTK_DRAG_ICON (gtk_drag_icon_get_for_drag (drag)), label);
}

/* ---- Put down ---- */

static gboolean
is_own (DrawlShotList *self, DrawlShotBundle *bundle)
{
  return drawl_shot_bundle_get_plan (bundle) == self->plan;
}

static GdkDragAction
action_for (DrawlShotList *self, GtkDropTarget *target)
{
  const GValue *value = gtk_drop_target_get_value (target);

  if (value == NULL)
    return GDK_ACTION_COPY;
  return is_own (self, g_value_get_object (value)) ? GDK_ACTION_MOVE : GDK_ACTION_COPY;
}

static gboolean
in_lower_half (DrawlShotRow *row, double y)
{
  return y > gtk_widget_get_height (GTK_WIDGET (row)) / 2.0;
}

static GdkDragAction
on_motion (GtkDropTarget *target, double x, double y, DrawlShotRow *row)
{
  gboolean after = in_lower_half (row, y);

  drawl_shot_row_mark_drop (row, !after, after);
  return action_for (list_of (row), target);
}

static void
on_leave (DrawlShotRow *row)
{
  drawl_shot_row_mark_drop (row, FALSE, FALSE);
}

static gboolean
on_drop (DrawlShotRow *row, const GValue *value, double x, double y)
{
  DrawlShotList *self = list_of (row);
  int at = drawl_plan_shot_position (self->plan, drawl_shot_row_get_shot (row));

  drawl_shot_row_mark_drop (row, FALSE, FALSE);
  if (at < 0)
    return FALSE;
  drawl_shot_list_drop (self, g_value_get_object (value), (guint)at + in_lower_half (row, y));
  return TRUE;
}

static GdkDragAction
on_motion_below (GtkDropTarget *target, double x, double y, DrawlShotList *self)
{
  return action_for (self, target);
}

static gboolean
on_drop_below (DrawlShotList *self, const GValue *value)
{
  if (self->plan == NULL)
    return FALSE;
  drawl_shot_list_drop (self, g_value_get_object (value), drawl_plan_n_shots (self->plan));
  return TRUE;
}

static char *
counted (const char *one, const char *many, guint n)
{
  g_autofree char *count = drawl_figure_count (n);
  g_auto (GStrv) parts = g_strsplit (many, "%s", 2);

  return n == 1 ? g_strdup (one) : g_strjoinv (count, parts);
}

static void
move_here (DrawlShotList *self, DrawlShotBundle *bundle, guint position)
{
  g_autoptr (GPtrArray) shots = drawl_shot_bundle_dup_shots (bundle);
  g_autofree char *label = counted (
      _ ("Move Shot"), ngettext_ ("Move %s Shot", "Move %s Shots", shots->len), shots->len);

  if (!drawl_shot_list_can_move (self)) {
    drawl_shot_list_tell (self, _ ("Shots can be moved while the list is in the plan’s order"));
    return;
  }
  drawl_plan_move_all (self->plan, shots, position, label);
  drawl_shot_list_select_many (self, shots);
}

static void
copy_here (DrawlShotList *self, DrawlShotBundle *bundle, guint position)
{
  guint n = drawl_shot_bundle_n_shots (bundle),
        at = MIN (position, drawl_plan_n_shots (self->plan));
  g_autoptr (GPtrArray) shots = g_ptr_array_new_with_free_func (g_object_unref);
  g_autofree char *label =
      counted (_ ("Copy Shot"), ngettext_ ("Copy %s Shot", "Copy %s Shots", n), n);
  g_autoptr (GError) error = NULL;

  if (!drawl_shot_bundle_insert (bundle, self->plan, at, label, &error)) {
    g_autofree char *why = drawl_message_sentence (error);
    drawl_shot_list_tell (self, why);
    return;
  }
  for (guint i = at; i < at + n; i++)
    g_ptr_array_add (shots, g_object_ref (drawl_plan_get_shot (self->plan, i)));
  drawl_shot_list_select_many (self, shots);
  drawl_shot_list_tell_copied (self, n);
}

void
drawl_shot_list_drop (DrawlShotList *list, DrawlShotBundle *bundle, guint position)
{
  if (is_own (list, bundle))
    move_here (list, bundle, position);
  else
    copy_here (list, bundle, position);
}

/* ---- Where it can be done ---- */

/* The value is there while the pointer still moves, so that it can be told what a drop would do. */
static GtkDropTarget *
target_new (void)
{
  GtkDropTarget *target =
      gtk_drop_target_new (DRAWL_TYPE_SHOT_BUNDLE, GDK_ACTION_MOVE | GDK_ACTION_COPY);

  gtk_drop_target_set_preload (target, TRUE);
  return target;
}

void
drawl_shot_list_add_drag (DrawlShotList *list, DrawlShotRow *row)
{
  GtkDragSource *source = gtk_drag_source_new ();
  GtkDropTarget *target = target_new ();

  gtk_drag_source_set_actions (source, GDK_ACTION_MOVE | GDK_ACTION_COPY);
  g_signal_connect_swapped (source, "prepare", G_CALLBACK (on_prepare), row);
  g_signal_connect_object (source, "drag-begin", G_CALLBACK (on_drag_begin), row,
                           G_CONNECT_SWAPPED);
  gtk_widget_add_controller (GTK_WIDGET (row), GTK_EVENT_CONTROLLER (source));

  g_signal_connect (target, "enter", G_CALLBACK (on_motion), row);
  g_signal_connect (target, "motion", G_CALLBACK (on_motion), row);
  g_signal_connect_swapped (target, "leave", G_CALLBACK (on_leave), row);
  g_signal_connect_swapped (target, "drop", G_CALLBACK (on_drop), row);
  gtk_widget_add_controller (GTK_WIDGET (row), GTK_EVENT_CONTROLLER (target));
}

void
drawl_shot_list_add_drop (DrawlShotList *list)
{
  GtkDropTarget *target = target_new ();

  g_signal_connect (target, "enter", G_CALLBACK (on_motion_below), list);
  g_signal_connect (target, "motion", G_CALLBACK (on_motion_below), list);
  g_signal_connect_swapped (target, "drop", G_CALLBACK (on_drop_below), list);
  gtk_widget_add_controller (list->scroller, GTK_EVENT_CONTROLLER (target));
}
