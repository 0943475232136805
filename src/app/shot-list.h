/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlShotList: the shots of a plan, a row each: searched, filtered by verdict and body, sorted,
 * grouped by scene, chosen one or many, dragged. Of those shown one is selected, always; of several
 * one is in hand. What it asks for (add, remove, move …) are actions of the window. */

#include <gtk/gtk.h>

#include "app/shot-order.h"
#include "plan/plan.h"
#include "plan/shot-bundle.h"

#define DRAWL_TYPE_SHOT_LIST (drawl_shot_list_get_type ())
G_DECLARE_FINAL_TYPE (DrawlShotList, drawl_shot_list, DRAWL, SHOT_LIST, GtkWidget)

/* Properties, notified: "plan" (DrawlPlan), "selected" (DrawlShot, read-only: the one in hand; NULL
 * when no shot is shown), "n-selected" (uint, read-only: notified whenever other shots are
 * selected), "filter" (string: "all", or a verdict's id), "body-filter" (string: id of a body, or
 * empty), "sort" (string: an order's id), "descending", "grouped" (boolean), "single-click"
 * (boolean: a click on a row also activates it, for windows that show the list alone). Signals:
 * "activated": a row was clicked or Enter pressed on it; "told" (string): why something that was
 * tried cannot be; "copied" (uint): so many shots came from another plan. */

GtkWidget *drawl_shot_list_new (void);

void drawl_shot_list_set_plan (DrawlShotList *list, DrawlPlan *plan);
DrawlShot *drawl_shot_list_get_selected (DrawlShotList *list);

guint drawl_shot_list_n_selected (DrawlShotList *list);
/* Of DrawlShot, with references, in the plan's order. */
GPtrArray *drawl_shot_list_dup_selection (DrawlShotList *list);

/* Selects that alone and scrolls to it; a filter that hides it is set aside for that shot. */
void drawl_shot_list_select (DrawlShotList *list, DrawlShot *shot);
/* The same for many, of DrawlShot; the first of them is in hand. */
void drawl_shot_list_select_many (DrawlShotList *list, const GPtrArray *shots);
void drawl_shot_list_select_all (DrawlShotList *list);
/* One row on or back. */
void drawl_shot_list_step (DrawlShotList *list, int direction);

void drawl_shot_list_set_filter (DrawlShotList *list, const char *filter);
const char *drawl_shot_list_get_filter (DrawlShotList *list);
void drawl_shot_list_set_body_filter (DrawlShotList *list, const char *id);
const char *drawl_shot_list_get_body_filter (DrawlShotList *list);

void drawl_shot_list_set_order (DrawlShotList *list, const DrawlShotOrder *order);
const DrawlShotOrder *drawl_shot_list_get_order (DrawlShotList *list);
/* All shots of the plan as the list has them sorted: of DrawlShot, with references. */
GPtrArray *drawl_shot_list_dup_order (DrawlShotList *list);
/* Whether rows can be moved: they stand in the plan's order. */
gboolean drawl_shot_list_can_move (DrawlShotList *list);

/* Shots of this plan are moved, those of another copied, to the gap before @position of the plan.
 */
void drawl_shot_list_drop (DrawlShotList *list, DrawlShotBundle *bundle, guint position);

/* Puts the keyboard focus into the search entry; onto the selected row. */
void drawl_shot_list_search (DrawlShotList *list);
void drawl_shot_list_focus_row (DrawlShotList *list);
