/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlRateOffer: for a capture rate that the shot's body cannot be set to, a button that takes the
 * nearest one that it can. Hides itself when there is nothing to offer. */

#include <gtk/gtk.h>

#include "plan/plan.h"

#define DRAWL_TYPE_RATE_OFFER (drawl_rate_offer_get_type ())
G_DECLARE_FINAL_TYPE (DrawlRateOffer, drawl_rate_offer, DRAWL, RATE_OFFER, GtkWidget)

/* Both NULL for none. */
void drawl_rate_offer_set_shot (DrawlRateOffer *offer, DrawlPlan *plan, DrawlShot *shot);

/* The nearest rate that the body of @question offers at its size and codec, whatever licences it
 * takes, when the rate asked for is not one; FALSE when it is, or when there is none. */
gboolean drawl_rate_offer_find (const DrawlCheckQuestion *question, DrawlRate *nearest);
