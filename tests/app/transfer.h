/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* What the tests of tables on their way into a window share. */

#include "app/import-dialog.h"
#include "fixture.h"

/* The open window of @type above @window, or NULL. */
static inline gpointer
window_over (gpointer window, GType type)
{
  g_autoptr (GList) toplevels = gtk_window_list_toplevels ();

  for (GList *l = toplevels; l != NULL; l = l->next)
    if (G_TYPE_CHECK_INSTANCE_TYPE (l->data, type) && gtk_widget_get_visible (l->data) &&
        gtk_window_get_transient_for (l->data) == window)
      return l->data;
  return NULL;
}

static inline DrawlImportDialog *
import_over (gpointer window)
{
  return window_over (window, DRAWL_TYPE_IMPORT_DIALOG);
}

/* Whether a label that can be seen within @root says @part. */
static inline gboolean
is_said (GtkWidget *root, const char *part)
{
  if (!gtk_widget_get_visible (root))
    return FALSE;
  if (GTK_IS_LABEL (root) && strstr (gtk_label_get_text (GTK_LABEL (root)), part) != NULL)
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (is_said (child, part))
      return TRUE;
  return FALSE;
}

static inline guint
n_shots (DrawlWindow *window)
{
  return drawl_plan_n_shots (drawl_window_get_plan (window));
}
