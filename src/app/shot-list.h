/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlShotList: the shots of a plan, a row each: searched, filtered by verdict, put in order. One
 * of those shown is selected, always. What it asks for (add, remove, move …) are actions of the
 * window. */

#include <gtk/gtk.h>

#include "plan/plan.h"

#define DRAWL_TYPE_SHOT_LIST (drawl_shot_list_get_type ())
G_DECLARE_FINAL_TYPE (DrawlShotList, drawl_shot_list, DRAWL, SHOT_LIST, GtkWidget)

/* Properties, notified: "plan" (DrawlPlan), "selected" (DrawlShot, read-only; NULL when no shot is
 * shown), "filter" (string: "all", or a verdict's id), "single-click" (boolean: a click on a row
 * also activates it, for windows that show the list alone). Signal "activated": a row was clicked
 * or Enter pressed on it. */

GtkWidget *drawl_shot_list_new (void);

void drawl_shot_list_set_plan (DrawlShotList *list, DrawlPlan *plan);
DrawlShot *drawl_shot_list_get_selected (DrawlShotList *list);

/* The selected shots, with references, in the order of the plan. New array. */
GPtrArray *drawl_shot_list_dup_selection (DrawlShotList *list);

/* Selects and scrolls to it; a filter that hides it is set aside for that shot. */
void drawl_shot_list_select (DrawlShotList *list, DrawlShot *shot);
/* One row on or back. */
void drawl_shot_list_step (DrawlShotList *list, int direction);

void drawl_shot_list_set_filter (DrawlShotList *list, const char *filter);
const char *drawl_shot_list_get_filter (DrawlShotList *list);

/* Puts the keyboard focus into the search entry; onto the selected row. */
void drawl_shot_list_search (DrawlShotList *list);
void drawl_shot_list_focus_row (DrawlShotList *list);
