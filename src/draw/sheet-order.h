/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The parts of the hire sheet that look at all bodies together: the table of what is to be hired,
 * and the shots that it does not cover. */

#include "draw/sheet-flow.h"
#include "plan/day.h"

/* A row a body, licence and card or magazine, and the sums by currency. */
void drawl_sheet_add_order (DrawlSheetFlow *flow, const DrawlDay *day);
/* Licences that are not hired, with the shots that need them; and shots that no licence helps. */
void drawl_sheet_add_lacks (DrawlSheetFlow *flow, DrawlPlan *plan);
