/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The rows of the list: made, filled and emptied as the list view recycles them; headed with
 * scenes, clicked, and asked for their menu. Invariant: `rows` holds those that are alive. */

#include "app/shot-list-private.h"

/* Where the list is alone in the window a click goes on to the shot. The list view's own way of
 * doing so would also select whatever the pointer passes over. */
static void
on_clicked (DrawlShotRow *row, DrawlShotList *self)
{
  if (!self->single_click)
    return;
  drawl_shot_list_select (self, drawl_shot_row_get_shot (row));
  drawl_shot_list_activate (self);
}

static void
open_menu (DrawlShotList *self, GtkWidget *row)
{
  graphene_rect_t bounds;

  if (self->menu == NULL) {
    self->menu = gtk_popover_menu_new_from_model (self->shot_menu);
    gtk_widget_set_parent (self->menu, GTK_WIDGET (self));
  }
  if (!gtk_widget_compute_bounds (row, GTK_WIDGET (self), &bounds))
    return;
  GdkRectangle at = {(int)bounds.origin.x, (int)bounds.origin.y, (int)bounds.size.width,
                     (int)bounds.size.height};
  gtk_popover_set_pointing_to (GTK_POPOVER (self->menu), &at);
  gtk_popover_popup (GTK_POPOVER (self->menu));
}

static void
on_menu_wanted (DrawlShotRow *row, DrawlShotList *self)
{
  DrawlShot *shot = drawl_shot_row_get_shot (row);

  if (!drawl_shot_selection_has (self->selection, shot))
    drawl_shot_list_select (self, shot);
  open_menu (self, GTK_WIDGET (row));
}

void
drawl_shot_list_open_menu (DrawlShotList *list)
{
  for (guint i = 0; i < list->rows->len; i++)
    if (drawl_shot_row_get_shot (list->rows->pdata[i]) == list->selected)
      open_menu (list, list->rows->pdata[i]);
}

/* By the time of its "teardown" a list item has no child any more. */
static void
on_row_destroyed (GtkWidget *row, DrawlShotList *self)
{
  g_ptr_array_remove_fast (self->rows, row);
}

static void
on_setup (DrawlShotList *self, GtkListItem *item)
{
  GtkWidget *row = drawl_shot_row_new ();

  drawl_shot_list_add_drag (self, DRAWL_SHOT_ROW (row));
  g_signal_connect (row, "clicked", G_CALLBACK (on_clicked), self);
  g_signal_connect (row, "menu-wanted", G_CALLBACK (on_menu_wanted), self);
  g_signal_connect (row, "destroy", G_CALLBACK (on_row_destroyed), self);
  drawl_shot_row_set_longest (DRAWL_SHOT_ROW (row), self->longest_s);
  g_ptr_array_add (self->rows, row);
  gtk_list_item_set_child (item, row);
}

/* The shot that stands at the row's place, and the scene that begins with it. */
static void
fill_row (DrawlShotList *self, DrawlShotRow *row, guint position)
{
  guint n_shots = 0;
  const char *scene = drawl_shot_view_heading (self->view, position, &n_shots);

  drawl_shot_row_set_heading (row, scene, n_shots);
  drawl_shot_row_set_shot (row, drawl_shot_view_get_shot (self->view, position));
}

static void
on_bind (DrawlShotList *self, GtkListItem *item)
{
  GtkWidget *row = gtk_list_item_get_child (item);

  g_object_set_data (G_OBJECT (row), "item", item);
  fill_row (self, DRAWL_SHOT_ROW (row), gtk_list_item_get_position (item));
}

static void
on_unbind (DrawlShotList *self, GtkListItem *item)
{
  GtkWidget *row = gtk_list_item_get_child (item);

  g_object_set_data (G_OBJECT (row), "item", NULL);
  drawl_shot_row_set_shot (DRAWL_SHOT_ROW (row), NULL);
}

void
drawl_shot_list_add_rows (DrawlShotList *list)
{
  g_autoptr (GtkListItemFactory) factory = gtk_signal_list_item_factory_new ();

  g_signal_connect_swapped (factory, "setup", G_CALLBACK (on_setup), list);
  g_signal_connect_swapped (factory, "bind", G_CALLBACK (on_bind), list);
  g_signal_connect_swapped (factory, "unbind", G_CALLBACK (on_unbind), list);
  gtk_list_view_set_factory (GTK_LIST_VIEW (list->list_view), factory);
}

void
drawl_shot_list_scale_rows (DrawlShotList *list, double longest_s)
{
  list->longest_s = longest_s;
  for (guint i = 0; i < list->rows->len; i++)
    drawl_shot_row_set_longest (list->rows->pdata[i], longest_s);
}

/* Rows that wait to be used again are at no place. */
void
drawl_shot_list_fill_rows (DrawlShotList *list)
{
  for (guint i = 0; i < list->rows->len; i++) {
    GtkListItem *item = g_object_get_data (list->rows->pdata[i], "item");
    if (item != NULL)
      fill_row (list, list->rows->pdata[i], gtk_list_item_get_position (item));
  }
}
