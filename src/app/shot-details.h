/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlShotDetails: what else is entered about a shot: slate, scene, body, size, codec, takes,
 * handles, notes; and the counts that follow. */

#include <gtk/gtk.h>

#include "app/edit.h"
#include "plan/plan.h"

#define DRAWL_TYPE_SHOT_DETAILS (drawl_shot_details_get_type ())
G_DECLARE_FINAL_TYPE (DrawlShotDetails, drawl_shot_details, DRAWL, SHOT_DETAILS, GtkWidget)

/* Both NULL for none. What was typed and not taken yet goes to the former shot, or is given up. */
void drawl_shot_details_set_shot (DrawlShotDetails *details, DrawlPlan *plan, DrawlShot *shot);

/* The figures of a sentence in which something is wrong are greyed. */
void drawl_shot_details_set_stale (DrawlShotDetails *details, gboolean stale);
