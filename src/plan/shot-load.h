/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* How a shot's load is worked out; the figures themselves are in shot.h. */

#include "plan/shot.h"

/* What one take of @question puts on a card or through the gate, and what @takes of it fill.
 * Figures that cannot be had (not on this body, not one take on a card) stay 0. */
void drawl_shot_load_reckon (DrawlShotLoad *load, const DrawlCheckQuestion *question,
                             const DrawlCheck *check, guint takes, gboolean takes_span);

/* The magazine that @body is reckoned with: its longest; NULL when it has none. */
const DrawlBodyMagazine *drawl_body_longest_magazine (const DrawlBody *body);

/* Speed at which the ring buffer of @body is written out, onto @card (-1: none); 0 when unknown. */
gint64 drawl_body_buffer_write_speed (const DrawlBody *body, int card);
