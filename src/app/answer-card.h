/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlAnswerCard: one answer about a shot: a title, a mark, a headline figure, a line of plain
 * words, and details that open. Each kind of answer is a class of its own that fills the card in
 * `refresh`, called whenever the plan has changed. Property, notified: "attention" (boolean). */

#include <gtk/gtk.h>

#include "app/figure-button.h"
#include "plan/plan.h"

#define DRAWL_TYPE_ANSWER_CARD (drawl_answer_card_get_type ())
G_DECLARE_DERIVABLE_TYPE (DrawlAnswerCard, drawl_answer_card, DRAWL, ANSWER_CARD, GtkWidget)

struct _DrawlAnswerCardClass {
  GtkWidgetClass parent_class;
  void (*refresh) (DrawlAnswerCard *card, DrawlPlan *plan, DrawlShot *shot);
};

/* Both NULL for none. */
void drawl_answer_card_set_shot (DrawlAnswerCard *card, DrawlPlan *plan, DrawlShot *shot);
DrawlPlan *drawl_answer_card_get_plan (DrawlAnswerCard *card); /* or NULL */
DrawlShot *drawl_answer_card_get_shot (DrawlAnswerCard *card); /* or NULL */

/* A card that needs attention stands first. */
gboolean drawl_answer_card_get_attention (DrawlAnswerCard *card);

/* For the classes of answers. */
void drawl_answer_card_set_title (DrawlAnswerCard *card, const char *title);
void drawl_answer_card_set_attention (DrawlAnswerCard *card, gboolean attention);
/* The headline in words, when it is no figure; NULL for none. */
void drawl_answer_card_set_headline (DrawlAnswerCard *card, const char *words);
void drawl_answer_card_set_line (DrawlAnswerCard *card, const char *line);
void drawl_answer_card_add_mark (DrawlAnswerCard *card, GtkWidget *mark);
void drawl_answer_card_add_headline_figure (DrawlAnswerCard *card, GtkWidget *figure);
/* Below the line, always in sight. */
void drawl_answer_card_add_action (DrawlAnswerCard *card, GtkWidget *action);
void drawl_answer_card_add_detail (DrawlAnswerCard *card, GtkWidget *detail);
