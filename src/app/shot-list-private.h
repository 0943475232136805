/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* What the parts of the list share: shot-list.c (the type, and what is selected), shot-list-show.c
 * (which shots are shown, in which order, and the lines that say so), shot-list-rows.c (rows, and
 * what the pointer does to them), shot-list-drag.c (rows on their way). */

#include "app/shot-list.h"
#include "app/shot-row.h"
#include "app/shot-selection.h"

struct _DrawlShotList {
  GtkWidget parent_instance;
  DrawlPlan *plan;
  DrawlShotView *view;
  DrawlShotSelection *selection;
  DrawlShot *selected; /* as last told, a reference */
  GPtrArray *rows;     /* those alive, no references */
  double longest_s;
  gboolean single_click;
  guint idle_id;
  GtkWidget *head_box, *search_entry, *filter_button, *filter_revealer, *filter_label,
      *order_button, *order_revealer, *order_label, *stack, *scroller, *list_view;
  GtkWidget *menu; /* made when first asked for */
  GMenuModel *shot_menu;
  GMenu *body_section; /* of the filter's menu */
};

/* shot-list.c */
void drawl_shot_list_activate (DrawlShotList *list);
void drawl_shot_list_tell (DrawlShotList *list, const char *why);
void drawl_shot_list_tell_copied (DrawlShotList *list, guint n);
void drawl_shot_list_notify (DrawlShotList *list, const char *property);

/* shot-list-show.c */
void drawl_shot_list_bind_show (GtkWidgetClass *widget_class);
void drawl_shot_list_add_show (DrawlShotList *list);
/* Looks at all of the plan again. */
void drawl_shot_list_catch_up (DrawlShotList *list);

/* shot-list-rows.c */
void drawl_shot_list_add_rows (DrawlShotList *list);
void drawl_shot_list_scale_rows (DrawlShotList *list, double longest_s);
/* Gives each row the shot that now stands at its place. */
void drawl_shot_list_fill_rows (DrawlShotList *list);
/* The menu of the selected shots, at the row of the one in hand. */
void drawl_shot_list_open_menu (DrawlShotList *list);

/* shot-list-drag.c */
void drawl_shot_list_add_drag (DrawlShotList *list, DrawlShotRow *row);
void drawl_shot_list_add_drop (DrawlShotList *list);
