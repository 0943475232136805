/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlLimitsView: the picture of a body's limits. */

#include <gtk/gtk.h>

#include "plan/body.h"

#define DRAWL_TYPE_LIMITS_VIEW (drawl_limits_view_get_type ())
G_DECLARE_FINAL_TYPE (DrawlLimitsView, drawl_limits_view, DRAWL, LIMITS_VIEW, GtkWidget)

/* NULL: nothing is drawn. */
void drawl_limits_view_set_body (DrawlLimitsView *view, DrawlBody *body);
