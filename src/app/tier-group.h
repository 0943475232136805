/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlTierGroup: the licences of a body, a switch each. Hiring one hires what it requires as well;
 * giving one back gives back what cannot do without it. */

#include <gtk/gtk.h>

#include "plan/body.h"

#define DRAWL_TYPE_TIER_GROUP (drawl_tier_group_get_type ())
G_DECLARE_FINAL_TYPE (DrawlTierGroup, drawl_tier_group, DRAWL, TIER_GROUP, GtkWidget)

/* Signal "chosen" (guint64 tier): the switches ask for that tier; the rows follow once
 * drawl_tier_group_set_tier() says that it is so. */

void drawl_tier_group_set_body (DrawlTierGroup *group, DrawlBody *body);
void drawl_tier_group_set_tier (DrawlTierGroup *group, DrawlTier tier);

/* The tier with one licence hired or given back, and what follows from that. Pure. */
DrawlTier drawl_tier_with (const DrawlBody *body, DrawlTier tier, guint licence, gboolean held);
