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
  gboolean film;       /* magazines, not cards */
  char *card_name;     /* as the body's profile calls it */
  char *capacity;      /* "256 GB", "400 ft" */
  char *slate;         /* of the marked shot */
  guint takes;         /* of the marked shot */
  gint64 marked_first; /* the first card that the marked shot touches, counted from 0 */
  gint64 marked_cards; /* cards that it touches */
  char *left;    /* what is left on the last of them after it, as a phrase: "4 min 10 s left on the
                    last at 240 fps"; NULL when unknown */
  char *problem; /* a sentence: why nothing can be drawn, or NULL */
} DrawlCardStripData;

/* Blocks of all takes of the shots that use the same hired body as @shot. Runs of takes beyond
 * DRAWL_CARDSTRIP_CARDS_MAX cards are counted, not drawn. */
#define DRAWL_CARDSTRIP_CARDS_MAX 64
void drawl_cardstrip_data_from_plan (DrawlCardStripData *data, DrawlPlan *plan, DrawlShot *shot);
void drawl_cardstrip_data_clear (DrawlCardStripData *data);

/* Where the cards stand: in rows, all of one size, as large as the room allows. Pure. */
typedef struct {
  guint cards; /* drawn: at most DRAWL_CARDSTRIP_CARDS_MAX */
  guint columns;
  double width; /* of the picture, for its mirror */
  double x, y;  /* of the first card */
  double card_width, card_height;
  double step_x, step_y; /* from card to card, from row to row */
  double foot_y;         /* of the first line of text below */
  guint foot_lines;      /* that there is room for: 0, 1 or 2 */
  double leading;        /* from one to the next */
  gboolean labels;       /* there is room for a line above each card */
  gboolean rtl;
} DrawlCardStripLayout;

void drawl_cardstrip_layout (gint64 cards, double width, double height, double label_height,
                             gboolean rtl, DrawlCardStripLayout *layout);
cairo_rectangle_t drawl_cardstrip_card (const DrawlCardStripLayout *layout, guint card);

void drawl_cardstrip_draw (cairo_t *cr, const DrawlCardStripData *data, const DrawlStyle *style,
                           double width, double height);
/* The same in words. New string. */
char *drawl_cardstrip_text (const DrawlCardStripData *data);
