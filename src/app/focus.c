/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Focus that waits for a widget to be laid out. */

#include "app/focus.h"

#define FRAMES_MAX 10

static gboolean
has_focus_within (GtkWidget *widget, GtkRoot *root)
{
  GtkWidget *focus = gtk_root_get_focus (root);

  return focus != NULL && (focus == widget || gtk_widget_is_ancestor (focus, widget));
}

/* A list box would take the focus itself, and then have no row to move on from. From what has the
 * focus within already, the next would be one too far. */
static gboolean
take (GtkWidget *widget)
{
  GtkRoot *root = gtk_widget_get_root (widget);

  if (root == NULL || !gtk_widget_get_mapped (widget))
    return FALSE;
  if ((GTK_IS_LIST_BOX (widget) || !gtk_widget_grab_focus (widget)) &&
      !has_focus_within (widget, root))
    gtk_widget_child_focus (widget, GTK_DIR_TAB_FORWARD);
  return has_focus_within (widget, root);
}

static gboolean
on_frame (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  guint *frames = data;

  return take (widget) || ++*frames >= FRAMES_MAX ? G_SOURCE_REMOVE : G_SOURCE_CONTINUE;
}

void
drawl_focus_when_ready (GtkWidget *widget)
{
  if (!take (widget))
    gtk_widget_add_tick_callback (widget, on_frame, g_new0 (guint, 1), g_free);
}
