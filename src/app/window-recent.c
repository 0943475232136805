/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The plans opened last, newest first, as a menu; filled when the main menu is about to be seen. */

#include "app/window-private.h"

#include "core/text.h"

#define RECENT_MAX 8

static int
newer_first (gconstpointer a, gconstpointer b)
{
  GtkRecentInfo *left = *(GtkRecentInfo *const *)a, *right = *(GtkRecentInfo *const *)b;

  return g_date_time_compare (gtk_recent_info_get_visited (right),
                              gtk_recent_info_get_visited (left));
}

static GPtrArray *
plans_of (GtkRecentManager *manager)
{
  GPtrArray *plans = g_ptr_array_new_with_free_func ((GDestroyNotify)gtk_recent_info_unref);
  g_autoptr (GList) items = gtk_recent_manager_get_items (manager);

  for (GList *l = items; l != NULL; l = l->next)
    if (gtk_recent_info_has_application (l->data, "drawl") && gtk_recent_info_exists (l->data))
      g_ptr_array_add (plans, l->data);
    else
      gtk_recent_info_unref (l->data);
  g_ptr_array_sort (plans, newer_first);
  return plans;
}

static void
add_item (GMenu *menu, GtkRecentInfo *info)
{
  /* An underline in a name is no mnemonic. */
  g_auto (GStrv) parts = g_strsplit (gtk_recent_info_get_display_name (info), "_", -1);
  g_autofree char *label = g_strjoinv ("__", parts);
  g_autoptr (GMenuItem) item = g_menu_item_new (label, NULL);

  g_menu_item_set_action_and_target (item, "win.open-recent", "s", gtk_recent_info_get_uri (info));
  g_menu_append_item (menu, item);
}

void
drawl_window_fill_recent (DrawlWindow *window)
{
  g_autoptr (GPtrArray) plans = plans_of (gtk_recent_manager_get_default ());

  g_menu_remove_all (window->recent_menu);
  for (guint i = 0; i < plans->len && i < RECENT_MAX; i++)
    add_item (window->recent_menu, plans->pdata[i]);
  if (plans->len == 0)
    g_menu_append (window->recent_menu, _ ("None Yet"), "win.no-recent");
}
