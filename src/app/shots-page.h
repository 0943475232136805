/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlShotsPage: the list beside the shot; in a narrow window one at a time. Without a shot, what
 * to do first. */

#include <gtk/gtk.h>

#include "app/shot-list.h"

#define DRAWL_TYPE_SHOTS_PAGE (drawl_shots_page_get_type ())
G_DECLARE_FINAL_TYPE (DrawlShotsPage, drawl_shots_page, DRAWL, SHOTS_PAGE, GtkWidget)

/* Properties, notified: "plan" (DrawlPlan), "covered" (boolean, read-only: the shot covers the
 * list, so there is a way back). */

GtkWidget *drawl_shots_page_new (void);
void drawl_shots_page_set_plan (DrawlShotsPage *page, DrawlPlan *plan);
DrawlShotList *drawl_shots_page_get_list (DrawlShotsPage *page);

/* Puts the keyboard focus where work goes on. */
void drawl_shots_page_focus (DrawlShotsPage *page);
/* Goes to the shot, with the keyboard focus; back to the list. */
void drawl_shots_page_enter_shot (DrawlShotsPage *page);
void drawl_shots_page_go_back (DrawlShotsPage *page);
