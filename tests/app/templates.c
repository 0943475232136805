/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Every widget can be made from its template, is put on screen, and goes again; the test runs with
 * warnings fatal. Each type is a row. */

#include "app/body-chooser.h"
#include "app/body-limits.h"
#include "app/day-figure.h"
#include "app/hired-body-page.h"
#include "app/hired-body-row.h"
#include "app/many-page.h"
#include "app/plan-dialog.h"
#include "app/recovery-dialog.h"
#include "app/shot-page.h"
#include "app/shot-row.h"
#include "app/tier-group.h"
#include "app/verdict-mark.h"
#include "fixture.h"
#include "rows.h"

typedef struct {
  const char *name;
  GType (*type) (void);
} Row;

static const Row rows[] = {
    {"bodies-page", drawl_bodies_page_get_type},
    {"body-limits", drawl_body_limits_get_type},
    {"day-figure", drawl_day_figure_get_type},
    {"day-strip", drawl_day_strip_get_type},
    {"header-title", drawl_header_title_get_type},
    {"hired-body-page", drawl_hired_body_page_get_type},
    {"hired-body-row", drawl_hired_body_row_get_type},
    {"many-page", drawl_many_page_get_type},
    {"shot-list", drawl_shot_list_get_type},
    {"shot-page", drawl_shot_page_get_type},
    {"shot-row", drawl_shot_row_get_type},
    {"shots-page", drawl_shots_page_get_type},
    {"tier-group", drawl_tier_group_get_type},
    {"verdict-mark", drawl_verdict_mark_get_type},
};

static void
test_widget (gconstpointer data)
{
  const Row *row = data;
  GtkWidget *window = gtk_window_new ();
  GtkWidget *widget = g_object_new (row->type (), NULL);

  gtk_window_set_child (GTK_WINDOW (window), widget);
  gtk_window_present (GTK_WINDOW (window));
  wait_until (gtk_widget_get_mapped (widget));
  settle ();
  g_object_add_weak_pointer (G_OBJECT (widget), (gpointer *)&widget);
  gtk_window_destroy (GTK_WINDOW (window));
  wait_until (widget == NULL);
}

static const Row window_rows[] = {
    {"body-chooser", drawl_body_chooser_get_type},
    {"plan-dialog", drawl_plan_dialog_get_type},
    {"recovery-dialog", drawl_recovery_dialog_get_type},
    {"window", drawl_window_get_type},
};

static void
test_window (gconstpointer data)
{
  const Row *row = data;
  GtkWindow *window = g_object_new (row->type (), NULL);

  gtk_window_present (window);
  wait_until (gtk_widget_get_mapped (GTK_WIDGET (window)));
  settle ();
  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *)&window);
  gtk_window_destroy (window);
  wait_until (window == NULL);
}

static void
test_shortcuts (void)
{
  DrawlWindow *window = window_on (NULL);

  act (window, "shortcuts");
  GtkShortcutsWindow *shortcuts =
      gtk_application_window_get_help_overlay (GTK_APPLICATION_WINDOW (window));
  wait_until (gtk_widget_get_mapped (GTK_WIDGET (shortcuts)));
  settle ();
  drop_window (window);
}

static void
test_about (void)
{
  DrawlWindow *window = window_on (NULL);
  GtkWidget *about = NULL;

  act (window, "about");
  g_autoptr (GList) toplevels = gtk_window_list_toplevels ();
  for (GList *l = toplevels; l != NULL; l = l->next)
    if (ADW_IS_ABOUT_WINDOW (l->data))
      about = l->data;
  g_assert_nonnull (about);
  wait_until (gtk_widget_get_mapped (about));
  g_assert_cmpstr (adw_about_window_get_application_name (ADW_ABOUT_WINDOW (about)), ==, "Drawl");
  gtk_window_destroy (GTK_WINDOW (about));
  drop_window (window);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/template", rows, test_widget);
  add_rows ("/template", window_rows, test_window);
  g_test_add_func ("/template/shortcuts", test_shortcuts);
  g_test_add_func ("/template/about", test_about);
  return run_window_tests ();
}
