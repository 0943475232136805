/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlFilling: the cards or magazines of one hired body while the takes of its shots go onto them,
 * in the order of the list. Whole takes: one that does not fit on what is left begins the next; on
 * cards they may run on where the plan says so. A struct on the caller's stack. */

#include "plan/shot.h"

typedef struct {
  gint64 begun;            /* cards or magazines so far */
  DrawlCardFill cards;     /* digital */
  int card;                /* of the body, that `cards` counts; -1: none yet */
  DrawlRational left_feet; /* film: on the magazine begun last */
} DrawlFilling;

void drawl_filling_init (DrawlFilling *filling);

/* Adds all takes of a shot of that body. FALSE when nothing is known of what it records, or when
 * not one take fits; nothing is added then. */
gboolean drawl_filling_add (DrawlFilling *filling, DrawlShot *shot, gboolean takes_span);

/* The card or magazine, counted from 1, on which the next take of @shot would begin. */
gint64 drawl_filling_next (const DrawlFilling *filling, DrawlShot *shot, gboolean takes_span);

/* Real time that is left on the last card or magazine at the capture rate of @shot, which was added
 * last. FALSE when it cannot be counted. */
gboolean drawl_filling_left (const DrawlFilling *filling, DrawlShot *shot, DrawlRational *seconds);
