/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlSentence: a shot as one sentence with blanks that are typed into in place. */

#include <gtk/gtk.h>

#include "app/blank.h"
#include "app/clause.h"
#include "plan/plan.h"

#define DRAWL_TYPE_SENTENCE (drawl_sentence_get_type ())
G_DECLARE_FINAL_TYPE (DrawlSentence, drawl_sentence, DRAWL, SENTENCE, GtkWidget)

/* Property, read-only, notified: "error" (string or NULL), why what was typed is not taken. */

/* Both NULL for none. What was typed and not taken yet goes to the former shot, or is given up. */
void drawl_sentence_set_shot (DrawlSentence *sentence, DrawlPlan *plan, DrawlShot *shot);
/* Gives up what was typed and refused. */
void drawl_sentence_restore (DrawlSentence *sentence);

const char *drawl_sentence_get_error (DrawlSentence *sentence); /* or NULL */
DrawlBlank *drawl_sentence_get_blank (DrawlSentence *sentence, DrawlTimingTerm term);
DrawlClause *drawl_sentence_get_clause (DrawlSentence *sentence);
