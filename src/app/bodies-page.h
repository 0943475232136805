/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlBodiesPage: the hired bodies beside the one in hand; in a narrow window one at a time. */

#include <gtk/gtk.h>

#include "plan/plan.h"

#define DRAWL_TYPE_BODIES_PAGE (drawl_bodies_page_get_type ())
G_DECLARE_FINAL_TYPE (DrawlBodiesPage, drawl_bodies_page, DRAWL, BODIES_PAGE, GtkWidget)

/* Properties, notified: "plan" (DrawlPlan), "covered" (boolean, read-only: a body covers the list,
 * so there is a way back). */

GtkWidget *drawl_bodies_page_new (void);
void drawl_bodies_page_set_plan (DrawlBodiesPage *page, DrawlPlan *plan);
DrawlHiredBody *drawl_bodies_page_get_selected (DrawlBodiesPage *page); /* or NULL */
void drawl_bodies_page_select (DrawlBodiesPage *page, DrawlHiredBody *hired);
/* Puts the keyboard focus where work goes on. */
void drawl_bodies_page_focus (DrawlBodiesPage *page);
void drawl_bodies_page_go_back (DrawlBodiesPage *page);
