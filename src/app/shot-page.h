/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlShotPage: one shot of a plan: its sentence, the span picture, answers, and details.
 * Properties: "plan" (DrawlPlan), "shot" (DrawlShot), both may be NULL. */

#include <gtk/gtk.h>

#include "plan/plan.h"

#define DRAWL_TYPE_SHOT_PAGE (drawl_shot_page_get_type ())
G_DECLARE_FINAL_TYPE (DrawlShotPage, drawl_shot_page, DRAWL, SHOT_PAGE, GtkWidget)

GtkWidget *drawl_shot_page_new (void);

DrawlPlan *drawl_shot_page_get_plan (DrawlShotPage *page);
/* Another plan shows no shot at first. */
void drawl_shot_page_set_plan (DrawlShotPage *page, DrawlPlan *plan);
DrawlShot *drawl_shot_page_get_shot (DrawlShotPage *page);
/* @shot belongs to the plan. */
void drawl_shot_page_set_shot (DrawlShotPage *page, DrawlShot *shot);
