/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The sentence of a shot while it is edited: six terms that always agree, four of which drive.
 * Which four is chosen anew at every edit: the term edited, then the held ones, then the free ones
 * from the newest edit to the oldest, each as long as those before it do not determine it already.
 * The rest follows. Rates in frames a second, times in seconds, post speed in per cent. */

#include "core/blanks.h"

#include "core/error.h"
#include "core/text.h"

#include <string.h>

#define POST_SPEED_BIT DRAWL_TIMING_BIT (DRAWL_TIMING_POST_SPEED)
#define PLAYBACK_BIT DRAWL_TIMING_BIT (DRAWL_TIMING_PLAYBACK)

/* A new sentence, oldest first: what follows, then what is held, then what is typed most. */
static const guint8 first_order[DRAWL_TIMING_N_TERMS] = {
    DRAWL_TIMING_FACTOR,   DRAWL_TIMING_SCREEN, DRAWL_TIMING_POST_SPEED,
    DRAWL_TIMING_PLAYBACK, DRAWL_TIMING_ACTION, DRAWL_TIMING_CAPTURE,
};

static gboolean
determines (guint given, guint term)
{
  return (drawl_timing_closure (given) & DRAWL_TIMING_BIT (term)) != 0;
}

/* Adds to @chosen the terms in @from, newest first, that it does not determine yet. */
static guint
choose_more (guint chosen, guint from, const guint8 order[DRAWL_TIMING_N_TERMS])
{
  for (guint i = DRAWL_TIMING_N_TERMS; i-- > 0;)
    if ((from & DRAWL_TIMING_BIT (order[i])) != 0 && !determines (chosen, order[i]))
      chosen |= DRAWL_TIMING_BIT (order[i]);
  return chosen;
}

static guint
choose_given (guint edited, guint held, const guint8 order[DRAWL_TIMING_N_TERMS])
{
  guint chosen = choose_more (edited, held, order);
  return choose_more (chosen, DRAWL_TIMING_ALL, order);
}

/* Makes @term the newest. */
static void
renew (guint8 order[DRAWL_TIMING_N_TERMS], guint8 term)
{
  guint at = 0;

  while (order[at] != term)
    at++;
  memmove (order + at, order + at + 1, DRAWL_TIMING_N_TERMS - 1 - at);
  order[DRAWL_TIMING_N_TERMS - 1] = term;
}

static void
take_timing (DrawlBlanks *blanks, const DrawlTiming *timing)
{
  memcpy (blanks->value, timing->value, sizeof blanks->value);
}

void
drawl_blanks_init (DrawlBlanks *blanks, DrawlRate playback)
{
  DrawlRational one = drawl_rational_whole (1);

  *blanks = (DrawlBlanks){
      .value =
          {
              [DRAWL_TIMING_CAPTURE] = playback,
              [DRAWL_TIMING_PLAYBACK] = playback,
              [DRAWL_TIMING_ACTION] = one,
              [DRAWL_TIMING_SCREEN] = one,
              [DRAWL_TIMING_FACTOR] = one,
              [DRAWL_TIMING_POST_SPEED] = drawl_rational_whole (100),
          },
      .held = PLAYBACK_BIT | POST_SPEED_BIT,
  };
  memcpy (blanks->order, first_order, sizeof first_order);
  blanks->given = choose_given (0, blanks->held, blanks->order);
}

gboolean
drawl_blanks_set (DrawlBlanks *blanks, const DrawlTimingTerm *given, guint n_given,
                  const DrawlRational value[DRAWL_TIMING_N_TERMS], guint held, GError **error)
{
  DrawlBlanks next = {.held = held & DRAWL_TIMING_ALL};
  DrawlTiming timing;
  guint bits = 0;

  memcpy (next.order, first_order, sizeof first_order);
  for (guint i = 0; i < n_given; i++) {
    bits |= DRAWL_TIMING_BIT (given[i]);
    renew (next.order, (guint8)given[i]);
  }
  if (!drawl_timing_solve (value, bits, &timing, error))
    return FALSE;

  if ((bits & POST_SPEED_BIT) == 0)
    next.held |= POST_SPEED_BIT;
  take_timing (&next, &timing);
  next.given = choose_given (0, next.held, next.order);
  if (!drawl_blanks_timing (&next, &timing, error))
    return FALSE;
  *blanks = next;
  return TRUE;
}

/* The names of the held terms that pin @term down; letting go of any one of them frees it. */
static char *
name_holders (guint holders, guint term)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  for (guint i = 0; i < DRAWL_TIMING_N_TERMS; i++)
    if ((holders & DRAWL_TIMING_BIT (i)) != 0 &&
        !determines (holders & ~DRAWL_TIMING_BIT (i), term))
      g_ptr_array_add (names, (gpointer)drawl_timing_term_name (i));
  g_ptr_array_add (names, NULL);
  return g_strjoinv (C_ ("between things listed", " and "), (char **)names->pdata);
}

static gboolean
refuse_held (guint others, DrawlTimingTerm term, const guint8 order[DRAWL_TIMING_N_TERMS],
             GError **error)
{
  g_autofree char *names = name_holders (choose_more (0, others, order), term);

  g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_CONFLICT,
               _ ("%s cannot change while these are held: %s; let go of one of them"),
               drawl_timing_term_name (term), names);
  return FALSE;
}

gboolean
drawl_blanks_edit (DrawlBlanks *blanks, DrawlTimingTerm term, DrawlRational value, GError **error)
{
  guint others = blanks->held & ~DRAWL_TIMING_BIT (term);
  gboolean pinned = determines (others, term);
  DrawlBlanks next = *blanks;
  DrawlTiming timing;

  if (!drawl_timing_term_check (term, value, error))
    return FALSE;
  if (pinned && !drawl_rational_equal (value, blanks->value[term]))
    return refuse_held (others, term, blanks->order, error);

  next.value[term] = value;
  renew (next.order, (guint8)term);
  next.given = choose_given (pinned ? 0 : DRAWL_TIMING_BIT (term), next.held, next.order);
  if (!drawl_timing_solve_bare (next.value, next.given, &timing, error))
    return FALSE;

  take_timing (&next, &timing);
  *blanks = next;
  return TRUE;
}

void
drawl_blanks_hold (DrawlBlanks *blanks, DrawlTimingTerm term, gboolean held)
{
  DrawlBlanks next = *blanks;
  DrawlTiming timing;

  if (held)
    next.held |= DRAWL_TIMING_BIT (term);
  else
    next.held &= ~DRAWL_TIMING_BIT (term);
  next.given = choose_given (0, next.held, next.order);
  if (!drawl_blanks_timing (&next, &timing, NULL))
    next.given = blanks->given;
  *blanks = next;
}

gboolean
drawl_blanks_timing (const DrawlBlanks *blanks, DrawlTiming *out, GError **error)
{
  return drawl_timing_solve_bare (blanks->value, blanks->given, out, error);
}

gboolean
drawl_blanks_equal (const DrawlBlanks *a, const DrawlBlanks *b)
{
  for (guint term = 0; term < DRAWL_TIMING_N_TERMS; term++)
    if (!drawl_rational_equal (a->value[term], b->value[term]))
      return FALSE;
  return memcmp (a->order, b->order, sizeof a->order) == 0 && a->held == b->held &&
         a->given == b->given;
}
