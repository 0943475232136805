/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The phrases under the card picture; drawl_cardstrip_text() puts them into sentences. All return
 * new strings. */

#include "draw/cardstrip.h"

/* "12 takes"; "3 cards of 256 GB", "2 magazines of 400 ft". */
char *drawl_cardstrip_takes_words (const DrawlCardStripData *data);
char *drawl_cardstrip_cards_words (const DrawlCardStripData *data, gint64 cards);
/* "other shots, 7 cards in all". */
char *drawl_cardstrip_others_words (const DrawlCardStripData *data);
/* "10 % kept empty"; NULL when nothing is. */
char *drawl_cardstrip_reserve_words (const DrawlCardStripData *data);
/* "Card 1", "Magazine 1"; counted from 0. */
char *drawl_cardstrip_card_words (const DrawlCardStripData *data, guint card);
