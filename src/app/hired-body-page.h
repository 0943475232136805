/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlHiredBodyPage: a hired body: what it is, its card, its tier, and how many of its shots can
 * be done so; its limits, what has to be fitted and checked, and where the figures come from. */

#include <gtk/gtk.h>

#include "plan/plan.h"

#define DRAWL_TYPE_HIRED_BODY_PAGE (drawl_hired_body_page_get_type ())
G_DECLARE_FINAL_TYPE (DrawlHiredBodyPage, drawl_hired_body_page, DRAWL, HIRED_BODY_PAGE, GtkWidget)

/* Both, or both NULL. */
void drawl_hired_body_page_show (DrawlHiredBodyPage *page, DrawlPlan *plan, DrawlHiredBody *hired);
