/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlCardAnswer: what the shot puts on a card, or through the gate: time, takes, cards, data rate
 * against what the card guarantees, the ring buffer, and the cards filling up. */

#include "app/answer-card.h"

#define DRAWL_TYPE_CARD_ANSWER (drawl_card_answer_get_type ())
G_DECLARE_FINAL_TYPE (DrawlCardAnswer, drawl_card_answer, DRAWL, CARD_ANSWER, DrawlAnswerCard)

GtkWidget *drawl_card_answer_new (void);
