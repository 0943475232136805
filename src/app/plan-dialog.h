/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlPlanDialog: what a plan says about itself: title, day, default rate, mains, card reserve. An
 * entry that cannot be read is marked and says why; the plan takes all of it, or nothing. */

#include <adwaita.h>

#include "plan/plan.h"

#define DRAWL_TYPE_PLAN_DIALOG (drawl_plan_dialog_get_type ())
G_DECLARE_FINAL_TYPE (DrawlPlanDialog, drawl_plan_dialog, DRAWL, PLAN_DIALOG, AdwWindow)

/* Signal "applied": the plan has taken the settings. */

DrawlPlanDialog *drawl_plan_dialog_new (GtkWindow *parent, DrawlPlan *plan);

/* Hands everything to the plan and closes; FALSE (with the focus on it) when an entry is wrong. */
gboolean drawl_plan_dialog_apply (DrawlPlanDialog *dialog);
