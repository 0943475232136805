/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlWorkingPopover: how a figure came about: its name, value, formula, the numbers put in, and
 * where the rule comes from. Everything can be selected and copied. */

#include <gtk/gtk.h>

#include "plan/working.h"

#define DRAWL_TYPE_WORKING_POPOVER (drawl_working_popover_get_type ())
G_DECLARE_FINAL_TYPE (DrawlWorkingPopover, drawl_working_popover, DRAWL, WORKING_POPOVER,
                      GtkPopover)

GtkWidget *drawl_working_popover_new (void);
void drawl_working_popover_show (DrawlWorkingPopover *popover, const DrawlWorking *working);
/* All of it, a line each. New string. */
char *drawl_working_popover_dup_text (DrawlWorkingPopover *popover);
