/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlShotOrder: the order in which the list shows shots. Shots that are equal in it stay in the
 * order of the plan. */

#include "plan/shot.h"

typedef enum {
  DRAWL_SHOT_ORDER_PLAN,
  DRAWL_SHOT_ORDER_SLATE,
  DRAWL_SHOT_ORDER_SCENE,
  DRAWL_SHOT_ORDER_VERDICT,
  DRAWL_SHOT_ORDER_CAPTURE,
  DRAWL_SHOT_ORDER_ACTION,
  DRAWL_SHOT_ORDER_SCREEN,
} DrawlShotOrderKey;

#define DRAWL_N_SHOT_ORDER_KEYS (DRAWL_SHOT_ORDER_SCREEN + 1)

typedef struct {
  DrawlShotOrderKey key;
  gboolean descending;
  gboolean grouped; /* by scene; the scenes in the order in which they first come */
} DrawlShotOrder;

/* "plan", "slate", …; DRAWL_SHOT_ORDER_PLAN for an unknown one. */
const char *drawl_shot_order_id (DrawlShotOrderKey key);
DrawlShotOrderKey drawl_shot_order_from_id (const char *id);
/* "Sorted by slate". NULL for the plan's own order. */
const char *drawl_shot_order_words (DrawlShotOrderKey key);

/* Whether shots stay as they are. */
gboolean drawl_shot_order_is_plain (const DrawlShotOrder *order);
/* Puts @shots (of DrawlShot, in the plan's order) into @order. TRUE when they are still in the
 * plan's. */
gboolean drawl_shot_order_sort (const DrawlShotOrder *order, GPtrArray *shots);
