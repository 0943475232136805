/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlHireAnswer: can the hired body do this shot? The verdict, every reason, each smallest set of
 * licences that opens it, and what the shot falls back to without. */

#include "app/answer-card.h"

#define DRAWL_TYPE_HIRE_ANSWER (drawl_hire_answer_get_type ())
G_DECLARE_FINAL_TYPE (DrawlHireAnswer, drawl_hire_answer, DRAWL, HIRE_ANSWER, DrawlAnswerCard)

GtkWidget *drawl_hire_answer_new (void);
