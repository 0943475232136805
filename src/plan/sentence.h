/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlSentence: the sentence of a shot (DrawlBlanks) as a plan file says it. */

#include "core/blanks.h"

/* Held, and post speed 100 %, unless the file says otherwise. */
#define DRAWL_SENTENCE_ASSUMED                                                                     \
  (DRAWL_TIMING_BIT (DRAWL_TIMING_PLAYBACK) | DRAWL_TIMING_BIT (DRAWL_TIMING_POST_SPEED))

/* A list of terms, each at most once. */
typedef struct {
  gboolean present; /* the file has the list, be it empty */
  DrawlTimingTerm term[DRAWL_TIMING_N_TERMS];
  guint n;
} DrawlTerms;

typedef struct {
  DrawlRational value[DRAWL_TIMING_N_TERMS];
  guint present;    /* bits of the terms with a value */
  DrawlTerms given; /* that drive, oldest edit first */
  DrawlTerms order; /* all terms, oldest edit first, where `given` alone would not tell */
  DrawlTerms held;
} DrawlSentence;

gboolean drawl_terms_have (const DrawlTerms *terms, DrawlTimingTerm term);

/* The blanks that @sentence tells of. Playback rate and post speed must have a value even where the
 * file has none: @playback, and 100 %. Errors as drawl_blanks_set(). */
gboolean drawl_sentence_settle (DrawlSentence sentence, DrawlRate playback, DrawlBlanks *blanks,
                                GError **error);

/* The shortest sentence that is read back as the same blanks. */
void drawl_sentence_describe (const DrawlBlanks *blanks, DrawlSentence *sentence);
