/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlAnswers: the answers about a shot, side by side where there is room, else one below the
 * other. Those that need attention come first. */

#include <gtk/gtk.h>

#include "plan/plan.h"

#define DRAWL_TYPE_ANSWERS (drawl_answers_get_type ())
G_DECLARE_FINAL_TYPE (DrawlAnswers, drawl_answers, DRAWL, ANSWERS, GtkWidget)

/* Both NULL for none. */
void drawl_answers_set_shot (DrawlAnswers *answers, DrawlPlan *plan, DrawlShot *shot);
