/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlDayStrip: the whole plan in one line: shots by verdict, time rolled and time on screen,
 * cards and magazines. A verdict is a switch that narrows the list to it. */

#include <gtk/gtk.h>

#include "plan/plan.h"

#define DRAWL_TYPE_DAY_STRIP (drawl_day_strip_get_type ())
G_DECLARE_FINAL_TYPE (DrawlDayStrip, drawl_day_strip, DRAWL, DAY_STRIP, GtkWidget)

/* Property "plan" (DrawlPlan). */

void drawl_day_strip_set_plan (DrawlDayStrip *strip, DrawlPlan *plan);
