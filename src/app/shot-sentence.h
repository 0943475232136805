/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlShotSentence: a shot as one sentence with blanks that are typed into in place. */

#include <gtk/gtk.h>

#include "app/blank.h"
#include "app/clause.h"
#include "plan/plan.h"

#define DRAWL_TYPE_SHOT_SENTENCE (drawl_shot_sentence_get_type ())
G_DECLARE_FINAL_TYPE (DrawlShotSentence, drawl_shot_sentence, DRAWL, SHOT_SENTENCE, GtkWidget)

/* Property, read-only, notified: "error" (string or NULL), why what was typed is not taken. */

/* Both NULL for none. What was typed and not taken yet goes to the former shot, or is given up. */
void drawl_shot_sentence_set_shot (DrawlShotSentence *sentence, DrawlPlan *plan, DrawlShot *shot);
/* Gives up what was typed and refused. */
void drawl_shot_sentence_restore (DrawlShotSentence *sentence);

const char *drawl_shot_sentence_get_error (DrawlShotSentence *sentence); /* or NULL */
DrawlBlank *drawl_shot_sentence_get_blank (DrawlShotSentence *sentence, DrawlTimingTerm term);
DrawlClause *drawl_shot_sentence_get_clause (DrawlShotSentence *sentence);
