/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlManyPage: many shots at once: their sums and verdicts, and what can be changed in all of
 * them. A field that differs among them says so and is left alone until something is entered; each
 * change is one step of undo. What some shots cannot take is told, and nothing is done before the
 * person has decided. */

#include <gtk/gtk.h>

#include "plan/plan.h"

#define DRAWL_TYPE_MANY_PAGE (drawl_many_page_get_type ())
G_DECLARE_FINAL_TYPE (DrawlManyPage, drawl_many_page, DRAWL, MANY_PAGE, GtkWidget)

GtkWidget *drawl_many_page_new (void);
/* @shots: of DrawlShot, on @plan; NULL: none. */
void drawl_many_page_set_shots (DrawlManyPage *page, DrawlPlan *plan, GPtrArray *shots);
