/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* What the parts of the list share: shot-list.c (which shots, which one selected) and
 * shot-list-rows.c (rows, and what the pointer does to them). */

#include "app/shot-filter.h"
#include "app/shot-list.h"

struct _DrawlShotList {
  GtkWidget parent_instance;
  DrawlPlan *plan;
  DrawlShotFilter *filter;
  GtkFilterListModel *filtered;
  GtkSingleSelection *selection;
  DrawlShot *selected; /* as last told, a reference */
  GPtrArray *rows;     /* those alive, no references */
  double longest_s;
  gboolean single_click;
  gboolean narrowing; /* the filter is changing; what is selected meanwhile is nobody's choice */
  guint idle_id;
  GtkWidget *head_box, *search_entry, *filter_button, *filter_revealer, *filter_label, *stack,
      *list_view;
  GtkWidget *menu; /* made when first asked for */
  GMenuModel *shot_menu;
};

/* shot-list.c */
void drawl_shot_list_activate (DrawlShotList *list);

/* shot-list-rows.c */
void drawl_shot_list_add_rows (DrawlShotList *list);
void drawl_shot_list_scale_rows (DrawlShotList *list, double longest_s);
/* The menu of the selected shot, at its row. */
void drawl_shot_list_open_menu (DrawlShotList *list);
