/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The plan that a command is given. */

#include "cli/call.h"
#include "plan/plan.h"

/* The plan read, or NULL with DRAWL_CLI_ERROR_FILE. */
DrawlPlan *drawl_plan_argument_load (const DrawlCall *call, GError **error);

/* The shot of the slate that @option gives, owned by the plan; or NULL with
 * DRAWL_CLI_ERROR_QUESTION. */
DrawlShot *drawl_plan_argument_shot (const DrawlCall *call, DrawlPlan *plan, guint option,
                                     GError **error);
