/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* What the tests of the window share: a program, a window on the demo, and ways to find widgets and
 * to wait for what the main loop brings. Waiting ends when the condition holds; the limit only
 * bounds a failure. */

#include <glib/gstdio.h>

#include "app/window-private.h"
#include "plan/data-dir.h"
#include "plan/plan-file.h"

#define WAIT_MAX_US (20 * G_USEC_PER_SEC)

#define wait_until(condition)                                                                      \
  G_STMT_START                                                                                     \
  {                                                                                                \
    gint64 end_ = g_get_monotonic_time () + WAIT_MAX_US;                                           \
    while (!(condition) && g_get_monotonic_time () < end_)                                         \
      if (!g_main_context_iteration (NULL, FALSE))                                                 \
        g_usleep (500);                                                                            \
    g_assert_true (condition);                                                                     \
  }                                                                                                \
  G_STMT_END

/* Lets everything run that is ready now, idle work included. */
static inline void
settle (void)
{
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

/* The first widget below @root for which @matches holds. */
static inline GtkWidget *
find_widget (GtkWidget *root, gboolean (*matches) (GtkWidget *widget, gconstpointer data),
             gconstpointer data)
{
  if (matches (root, data))
    return root;
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    GtkWidget *found = find_widget (child, matches, data);
    if (found != NULL)
      return found;
  }
  return NULL;
}

static inline gboolean
has_id (GtkWidget *widget, gconstpointer id)
{
  return g_strcmp0 (gtk_buildable_get_buildable_id (GTK_BUILDABLE (widget)), id) == 0;
}

static inline gboolean
has_type (GtkWidget *widget, gconstpointer type)
{
  return g_type_is_a (G_OBJECT_TYPE (widget), *(const GType *)type);
}

/* A widget by the id that it has in its template. */
static inline GtkWidget *
by_id (gpointer root, const char *id)
{
  GtkWidget *found = find_widget (GTK_WIDGET (root), has_id, id);

  g_assert_nonnull (found);
  return found;
}

static inline GtkWidget *
by_type (gpointer root, GType type)
{
  GtkWidget *found = find_widget (GTK_WIDGET (root), has_type, &type);

  g_assert_nonnull (found);
  return found;
}

/* The one program of a test process. */
static inline DrawlApplication *
program (void)
{
  static DrawlApplication *application;
  g_autoptr (GError) error = NULL;

  if (application == NULL) {
    application = drawl_application_new ();
    g_application_register (G_APPLICATION (application), NULL, &error);
    g_assert_no_error (error);
    g_application_set_default (G_APPLICATION (application));
  }
  return application;
}

static inline GFile *
demo_file (void)
{
  g_autofree char *path = drawl_data_file ("demo", "glass.drawl", NULL);

  return g_file_new_for_path (path);
}

/* A copy of the demo in a folder of its own, which remove_copy() removes. */
static inline GFile *
demo_copy (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("drawl-test-XXXXXX", &error);
  g_autofree char *path = g_build_filename (folder, "copy.drawl", NULL);
  GFile *copy = g_file_new_for_path (path);
  g_autoptr (GFile) demo = demo_file ();

  g_assert_no_error (error);
  g_file_copy (demo, copy, G_FILE_COPY_NONE, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  return copy;
}

static inline void
remove_copy (GFile *copy)
{
  g_autoptr (GFile) folder = g_file_get_parent (copy);
  g_autofree char *path = g_file_get_path (folder);
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);

  for (const char *name = g_dir_read_name (dir); name != NULL; name = g_dir_read_name (dir)) {
    g_autofree char *file = g_build_filename (path, name, NULL);
    g_unlink (file);
  }
  g_rmdir (path);
}

/* A window that is on screen, on the plan of @file, or without one. */
static inline DrawlWindow *
window_on (GFile *file)
{
  DrawlWindow *window = drawl_window_new (program ());

  gtk_window_set_default_size (GTK_WINDOW (window), 1200, 800);
  gtk_window_present (GTK_WINDOW (window));
  if (file != NULL)
    drawl_window_open (window, file);
  wait_until (gtk_widget_get_mapped (GTK_WIDGET (window)));
  settle ();
  return window;
}

static inline void
act (DrawlWindow *window, const char *action)
{
  g_assert_true (g_action_group_get_action_enabled (G_ACTION_GROUP (window), action));
  g_action_group_activate_action (G_ACTION_GROUP (window), action, NULL);
  settle ();
}

/* On a plan like the demo that belongs to no file. */
static inline DrawlWindow *
window_on_demo (void)
{
  DrawlWindow *window = window_on (NULL);

  act (window, "open-demo");
  g_assert_nonnull (drawl_window_get_document (window));
  return window;
}

static inline void
act_on (DrawlWindow *window, const char *action, const char *parameter)
{
  g_action_group_activate_action (G_ACTION_GROUP (window), action,
                                  g_variant_new_string (parameter));
  settle ();
}

static inline gboolean
can (DrawlWindow *window, const char *action)
{
  return g_action_group_get_action_enabled (G_ACTION_GROUP (window), action);
}

static inline DrawlShot *
shot_of (DrawlWindow *window, const char *slate)
{
  DrawlShot *shot = drawl_plan_find_shot (drawl_window_get_plan (window), slate);

  g_assert_nonnull (shot);
  return shot;
}

static inline void
select_shot (DrawlWindow *window, const char *slate)
{
  drawl_shot_list_select (drawl_window_get_list (window), shot_of (window, slate));
  settle ();
}

static inline const char *
selected_slate (DrawlWindow *window)
{
  DrawlShot *shot = drawl_window_get_shot (window);

  return shot != NULL ? drawl_shot_get_slate (shot) : NULL;
}

static inline guint
rows_of (DrawlWindow *window)
{
  GtkWidget *view = by_id (drawl_window_get_list (window), "list_view");

  return g_list_model_get_n_items (G_LIST_MODEL (gtk_list_view_get_model (GTK_LIST_VIEW (view))));
}

/* The message dialog that is open above @window, or NULL. */
static inline AdwMessageDialog *
message_over (gpointer window)
{
  g_autoptr (GList) toplevels = gtk_window_list_toplevels ();

  for (GList *l = toplevels; l != NULL; l = l->next)
    if (ADW_IS_MESSAGE_DIALOG (l->data) && gtk_widget_get_visible (l->data) &&
        gtk_window_get_transient_for (l->data) == window)
      return l->data;
  return NULL;
}

static inline void
answer_with (gpointer window, const char *response)
{
  g_autoptr (AdwMessageDialog) dialog = g_object_ref (message_over (window));

  adw_message_dialog_response (dialog, response);
  gtk_window_destroy (GTK_WINDOW (dialog)); /* as a click on the button does */
  settle ();
}

/* Closes without asking. */
static inline void
drop_window (DrawlWindow *window)
{
  gtk_window_destroy (GTK_WINDOW (window));
  settle ();
}

static inline int
run_window_tests (void)
{
  adw_init ();
  return g_test_run ();
}
