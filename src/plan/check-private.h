/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* What the parts of the check share: the question with what follows from it once. */

#include "plan/check.h"

typedef struct {
  const DrawlCheckQuestion *question;
  const DrawlBody *body;
  DrawlTier effective; /* the tier with all that it replaces */
  int card;            /* reckoned with, or -1: film, or a body without cards */
} DrawlCheckContext;

void drawl_check_context_init (DrawlCheckContext *context, const DrawlCheckQuestion *question);

/* Whether a take fits on what records it. Rates in bytes a second, times in seconds of real time.
 */
typedef struct {
  gboolean card_too_slow;
  gboolean buffer_too_short;
  gboolean card_too_small;
  gboolean magazine_too_short;
  DrawlRational data_rate;  /* of picture and sound */
  DrawlRational buffer_s;   /* what the ring buffer holds */
  DrawlRational card_s;     /* what the card holds */
  DrawlRational magazine_s; /* what the longest magazine runs */
} DrawlMedium;

/* TRUE when nothing is too slow, short or small. @size and @codec are those of the body; on film
 * the codec is not looked at. */
gboolean drawl_check_medium (const DrawlCheckContext *context, guint size, guint codec,
                             DrawlRate rate, gint64 take_frames, DrawlMedium *medium);

/* TRUE when the tier opens the row; when it spans @rate; when the card has the class it asks for.
 */
gboolean drawl_check_row_open (const DrawlCheckContext *context, const DrawlBodyLimit *row);
gboolean drawl_check_row_spans (const DrawlBodyLimit *row, DrawlRate rate);
gboolean drawl_check_row_card (const DrawlCheckContext *context, const DrawlBodyLimit *row);

/* Fills in the fallbacks of @check. */
void drawl_check_find_fallbacks (const DrawlCheckContext *context, DrawlCheck *check);
