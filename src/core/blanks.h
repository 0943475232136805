/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlBlanks: the sentence of a shot while it is being edited. Each term is held (never moves by
 * itself) or free; of the free terms, the one edited longest ago follows. Invariant: the terms
 * marked in `given` are independent and determine all others; `order` is a permutation of the
 * terms, longest ago first; held ⊆ given unless a held term is also determined by other held ones,
 * or the rest cannot be counted exactly from the held ones.
 * Plain value, copied freely (undo keeps copies). */

#include "core/timing.h"

typedef struct {
  DrawlRational value[DRAWL_TIMING_N_TERMS]; /* all six, agreeing with each other */
  guint8 order[DRAWL_TIMING_N_TERMS];        /* terms, the one edited longest ago first */
  guint held;                                /* bits */
  guint given;                               /* bits: the four that drive; the other two follow */
} DrawlBlanks;

/* A new sentence: @playback held, post speed 100 % held, capture rate = playback (real time),
 * action time 1 s; slow factor and screen time follow. */
void drawl_blanks_init (DrawlBlanks *blanks, DrawlRate playback);

/* From a file: the terms in @given (oldest edit first, @n_given of them), all others follow.
 * Post speed is 100 % and held unless given. Errors as drawl_timing_solve(); _OVERFLOW also when
 * the terms that would drive cannot give the others back exactly. */
gboolean drawl_blanks_set (DrawlBlanks *blanks, const DrawlTimingTerm *given, guint n_given,
                           const DrawlRational value[DRAWL_TIMING_N_TERMS], guint held,
                           GError **error);

/* Types @value into @term: the term becomes the newest given one, and the free term edited longest
 * ago follows. On an error nothing has changed. Errors: DRAWL_CORE_ERROR_CONFLICT when held terms
 * leave no room (names the held ones that would have to be let go), else as drawl_timing_solve().
 */
gboolean drawl_blanks_edit (DrawlBlanks *blanks, DrawlTimingTerm term, DrawlRational value,
                            GError **error);

/* Holds or lets go of a term; values stay. */
void drawl_blanks_hold (DrawlBlanks *blanks, DrawlTimingTerm term, gboolean held);

/* The whole timing of a sentence. Cannot fail for blanks made by the functions above. */
gboolean drawl_blanks_timing (const DrawlBlanks *blanks, DrawlTiming *out, GError **error);
gboolean drawl_blanks_equal (const DrawlBlanks *a, const DrawlBlanks *b);
