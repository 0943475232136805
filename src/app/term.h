/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* What the window knows of the terms of a sentence: the words that go with each, how its number is
 * written, and how the arrow keys step it. */

#include "core/timing.h"
#include "plan/check.h"

/* Marked for translation, except for the place. */
typedef struct {
  const char *place;  /* where it stands in the sentence's template: "capture" */
  const char *label;  /* "Capture rate" */
  const char *change; /* of the step of undo: "Change capture rate" */
  const char *hold;   /* "Hold capture rate" */
  const char *let_go; /* "Let go of capture rate" */
  const char *unit;   /* as it stands after the number, space and all */
} DrawlTermWords;

extern const DrawlTermWords drawl_term_words[DRAWL_TIMING_N_TERMS];

/* A slow factor below 1 is written, and typed, as how many times faster: 0.5 as "2". */
gboolean drawl_term_is_faster (DrawlRational factor);

/* The number alone, in the locale's style. New string. */
char *drawl_term_number (DrawlTimingTerm term, DrawlRational value);
/* Reads what was typed for a term that holds @present. Errors: as drawl_timing_term_parse(). */
gboolean drawl_term_read (DrawlTimingTerm term, DrawlRational present, const char *text,
                          DrawlRational *value, GError **error);

/* The value @steps (up or down; ten of them are a large step) from @value: the capture rate goes
 * through what the body of @question offers, the playback rate through the customary ones, times by
 * a tenth or by their last decimal, the slow factor by 1, post speed by 1 %. FALSE when there is
 * none. */
gboolean drawl_term_step (DrawlTimingTerm term, DrawlRational value,
                          const DrawlCheckQuestion *question, int steps, DrawlRational *next);

/* "Follows from playback rate and slow factor" for a term that @given determines without holding
 * it. New string. */
char *drawl_term_follows_text (DrawlTimingTerm term, guint given);
