/* SPDX-License-Identifier: GPL-3.0-or-later */

/* How the sentence of a shot goes to a file and back. The values that drive it are enough for the
 * rest to follow; which free value follows the next edit also depends on the order of the edits
 * before, so that is told as well wherever it is not what reading would assume. */

#include "plan/sentence.h"

#include <string.h>

#define POST_SPEED_BIT DRAWL_TIMING_BIT (DRAWL_TIMING_POST_SPEED)

/* As many terms determine the other two. */
#define N_DRIVING 4

gboolean
drawl_terms_have (const DrawlTerms *terms, DrawlTimingTerm term)
{
  for (guint i = 0; i < terms->n; i++)
    if (terms->term[i] == term)
      return TRUE;
  return FALSE;
}

/* ---- From a file ---- */

static void
add_term (DrawlTerms *terms, DrawlTimingTerm term)
{
  if (!drawl_terms_have (terms, term))
    terms->term[terms->n++] = term;
}

/* The driving terms, oldest edit first: those that have a value and are not listed count as older
 * than the listed ones; playback rate and post speed come first, as what is seldom changed. */
static DrawlTerms
list_given (const DrawlSentence *sentence)
{
  static const DrawlTimingTerm first[DRAWL_TIMING_N_TERMS] = {
      DRAWL_TIMING_PLAYBACK, DRAWL_TIMING_POST_SPEED, DRAWL_TIMING_ACTION,
      DRAWL_TIMING_CAPTURE,  DRAWL_TIMING_SCREEN,     DRAWL_TIMING_FACTOR,
  };
  DrawlTerms given = {0};

  for (guint i = 0; i < G_N_ELEMENTS (first); i++)
    if ((sentence->present & DRAWL_TIMING_BIT (first[i])) != 0 &&
        !drawl_terms_have (&sentence->given, first[i]))
      add_term (&given, first[i]);
  for (guint i = 0; i < sentence->given.n; i++)
    add_term (&given, sentence->given.term[i]);
  return given;
}

static guint
terms_bits (const DrawlTerms *terms)
{
  guint bits = 0;
  for (guint i = 0; i < terms->n; i++)
    bits |= DRAWL_TIMING_BIT (terms->term[i]);
  return bits;
}

/* A post speed that follows from the listed terms is worked out here, since blanks assume 100 %
 * where none is given. */
static gboolean
add_post_speed (DrawlSentence *sentence, DrawlTerms *given, GError **error)
{
  guint bits = terms_bits (given);
  DrawlTiming timing;

  if (!sentence->given.present || drawl_terms_have (given, DRAWL_TIMING_POST_SPEED) ||
      drawl_timing_closure (bits) != DRAWL_TIMING_ALL)
    return TRUE;
  if (!drawl_timing_solve_bare (sentence->value, bits, &timing, error))
    return FALSE;
  sentence->value[DRAWL_TIMING_POST_SPEED] = timing.value[DRAWL_TIMING_POST_SPEED];
  add_term (given, DRAWL_TIMING_POST_SPEED);
  return TRUE;
}

/* What the blanks remember beyond the values: what is held, what drives, in which order the terms
 * were edited. */
static void
restore_memory (DrawlBlanks *blanks, const DrawlSentence *sentence, const DrawlTerms *given,
                guint held)
{
  gboolean lists_all = drawl_timing_closure (terms_bits (given)) == DRAWL_TIMING_ALL;

  if (sentence->order.n == DRAWL_TIMING_N_TERMS)
    for (guint i = 0; i < DRAWL_TIMING_N_TERMS; i++)
      blanks->order[i] = (guint8)sentence->order.term[i];
  /* Blanks hold a post speed that is not given, and have chosen what drives by another order. */
  if (blanks->held != held || sentence->order.present) {
    blanks->held = held;
    drawl_blanks_hold (blanks, DRAWL_TIMING_POST_SPEED, (held & POST_SPEED_BIT) != 0);
  }
  if (sentence->given.present && given->n == N_DRIVING && lists_all)
    blanks->given = terms_bits (given);
}

gboolean
drawl_sentence_settle (DrawlSentence sentence, DrawlRate playback, DrawlBlanks *blanks,
                       GError **error)
{
  guint held = sentence.held.present ? terms_bits (&sentence.held) : DRAWL_SENTENCE_ASSUMED;
  DrawlTerms given = list_given (&sentence);

  /* With no more than a playback rate it is a new sentence. */
  if ((terms_bits (&given) & ~DRAWL_TIMING_BIT (DRAWL_TIMING_PLAYBACK)) == 0) {
    drawl_blanks_init (blanks, given.n > 0 ? sentence.value[DRAWL_TIMING_PLAYBACK] : playback);
    restore_memory (blanks, &sentence, &given, held);
    return TRUE;
  }
  guint known = drawl_timing_closure (terms_bits (&given) | POST_SPEED_BIT);
  if ((known & DRAWL_TIMING_BIT (DRAWL_TIMING_PLAYBACK)) == 0) {
    sentence.present |= DRAWL_TIMING_BIT (DRAWL_TIMING_PLAYBACK);
    given = list_given (&sentence);
  }

  DrawlTerms listed = given;
  if (!add_post_speed (&sentence, &given, error) ||
      !drawl_blanks_set (blanks, given.term, given.n, sentence.value, held, error))
    return FALSE;
  restore_memory (blanks, &sentence, &listed, held);
  return TRUE;
}

/* ---- To a file ---- */

static void
list_bits (DrawlTerms *terms, guint bits, const guint8 order[DRAWL_TIMING_N_TERMS])
{
  terms->present = TRUE;
  for (guint i = 0; i < DRAWL_TIMING_N_TERMS; i++)
    if ((bits & DRAWL_TIMING_BIT (order[i])) != 0)
      terms->term[terms->n++] = order[i];
}

static gboolean
tells (const DrawlSentence *sentence, const DrawlBlanks *blanks)
{
  DrawlBlanks read;
  return drawl_sentence_settle (*sentence, blanks->value[DRAWL_TIMING_PLAYBACK], &read, NULL) &&
         drawl_blanks_equal (&read, blanks);
}

void
drawl_sentence_describe (const DrawlBlanks *blanks, DrawlSentence *sentence)
{
  DrawlRational none = drawl_rational_whole (100);

  memcpy (sentence->value, blanks->value, sizeof sentence->value);
  sentence->present = blanks->given;
  if (drawl_rational_equal (blanks->value[DRAWL_TIMING_POST_SPEED], none))
    sentence->present &= ~POST_SPEED_BIT;
  if (blanks->held != DRAWL_SENTENCE_ASSUMED)
    list_bits (&sentence->held, blanks->held, blanks->order);
  if (tells (sentence, blanks))
    return;
  list_bits (&sentence->given, blanks->given, blanks->order);
  if (!tells (sentence, blanks))
    list_bits (&sentence->order, DRAWL_TIMING_ALL, blanks->order);
}
