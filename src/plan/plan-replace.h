/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* A plan that becomes like another one. */

#include "plan/plan.h"

/* Makes @plan hold what @other holds, as one step of undo; FALSE, and no step, when it does
 * already. Shots that keep their slate and their place stay the same objects. */
gboolean drawl_plan_replace (DrawlPlan *plan, DrawlPlan *other, const char *label);
