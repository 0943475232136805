/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The verdicts on a plan's shots, in words or as JSON, with their totals. */

#include "cli/output.h"
#include "plan/plan.h"

/* Notes in @output when some shot is not as hired. */
void drawl_verdicts_print (DrawlPlan *plan, DrawlOutput *output);
