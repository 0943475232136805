/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The card picture: the cards of one body side by side, filling up in the order of the list; each
 * take a block, one shot marked out. Magazines of a film body are drawn the same way, in feet. */

#include <pango/pangocairo.h>

#include "draw/style.h"
#include "plan/plan.h"

/* A stretch of one card taken up by one take, or by part of one. */
typedef struct {
  guint card;      /* counted from 0 */
  double from, to; /* share of the card's capacity, 0 … 1 */
  guint shot;      /* position in the plan */
  gboolean marked; /* of the shot asked for */
} DrawlCardBlock;

typedef struct {
  GArray *blocks;      /* of DrawlCardBlock */
  gint64 cards;        /* needed in all */
  double reserve;      /* share kept empty, 0 … 1 */
  char *card_name;     /* "V90 256 GB", or the magazine */
  char *slate;         /* of the marked shot */
  gint64 marked_cards; /* cards that the marked shot touches */
  char *left; /* what is left on the last card after the marked shot, in time at its rate; NULL when
                 unknown */
  char *problem; /* why nothing can be drawn, or NULL */
} DrawlCardStripData;

/* Blocks of all takes of the shots that use the same hired body as @shot. Runs of takes beyond
 * DRAWL_CARDSTRIP_CARDS_MAX cards are counted, not drawn. */
#define DRAWL_CARDSTRIP_CARDS_MAX 64
void drawl_cardstrip_data_from_plan (DrawlCardStripData *data, DrawlPlan *plan, DrawlShot *shot);
void drawl_cardstrip_data_clear (DrawlCardStripData *data);

void drawl_cardstrip_draw (cairo_t *cr, const DrawlCardStripData *data, const DrawlStyle *style,
                           double width, double height);
char *drawl_cardstrip_text (const DrawlCardStripData *data);
