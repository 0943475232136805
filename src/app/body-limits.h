/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlBodyLimits: the maker's table of a body, a row a picture size that opens to its codecs: from
 * which to which rate, with which licences, on which cards. Each row bears the mark of what the
 * tier makes of it. */

#include <gtk/gtk.h>

#include "plan/body.h"

#define DRAWL_TYPE_BODY_LIMITS (drawl_body_limits_get_type ())
G_DECLARE_FINAL_TYPE (DrawlBodyLimits, drawl_body_limits, DRAWL, BODY_LIMITS, GtkWidget)

void drawl_body_limits_set_body (DrawlBodyLimits *limits, DrawlBody *body);
void drawl_body_limits_set_tier (DrawlBodyLimits *limits, DrawlTier tier);
