/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The terms of a sentence as the window writes, reads and steps them. Values are exact: what is
 * shown rounded is stepped from its exact value. Rates in frames a second, times in seconds, post
 * speed in per cent. */

#include "app/term.h"

#include "core/text.h"
#include "plan/figure.h"

/* Translators: units follow their number, after a space that does not break where there is one. */
const DrawlTermWords drawl_term_words[DRAWL_TIMING_N_TERMS] = {
    [DRAWL_TIMING_CAPTURE] = {"capture", N_ ("Capture rate"), N_ ("Change capture rate"),
                              N_ ("Hold capture rate"), N_ ("Let go of capture rate"),
                              N_ ("\u00a0fps")},
    [DRAWL_TIMING_PLAYBACK] = {"playback", N_ ("Playback rate"), N_ ("Change playback rate"),
                               N_ ("Hold playback rate"), N_ ("Let go of playback rate"),
                               N_ ("\u00a0fps")},
    [DRAWL_TIMING_ACTION] = {"action", N_ ("Action time"), N_ ("Change action time"),
                             N_ ("Hold action time"), N_ ("Let go of action time"), N_ ("\u00a0s")},
    [DRAWL_TIMING_SCREEN] = {"screen", N_ ("Screen time"), N_ ("Change screen time"),
                             N_ ("Hold screen time"), N_ ("Let go of screen time"), N_ ("\u00a0s")},
    [DRAWL_TIMING_FACTOR] = {"factor", N_ ("Slow factor"), N_ ("Change slow factor"),
                             N_ ("Hold slow factor"), N_ ("Let go of slow factor"), N_ ("×")},
    [DRAWL_TIMING_POST_SPEED] = {"post", N_ ("Post speed"), N_ ("Change post speed"),
                                 N_ ("Hold post speed"), N_ ("Let go of post speed"),
                                 N_ ("\u00a0%")},
};

/* Playback rates in use, ascending: film, television in both mains countries, and their doubles. */
static const DrawlRate playback_rates[] = {
    {24000, 1001}, {24, 1}, {25, 1},       {30000, 1001}, {30, 1},
    {48, 1},       {50, 1}, {60000, 1001}, {60, 1},
};

/* Decimals that a time may show; the finest step is one of its last. */
#define TIME_DECIMALS 3

gboolean
drawl_term_is_faster (DrawlRational factor)
{
  return factor.num < factor.den;
}

/* The factor the other way round; never zero. */
static DrawlRational
inverse (DrawlRational factor)
{
  return (DrawlRational){factor.den, factor.num};
}

char *
drawl_term_number (DrawlTimingTerm term, DrawlRational value)
{
  switch (term) {
  case DRAWL_TIMING_CAPTURE:
  case DRAWL_TIMING_PLAYBACK:
    return drawl_figure_rate_number (value);
  case DRAWL_TIMING_ACTION:
  case DRAWL_TIMING_SCREEN:
    return drawl_figure_seconds_number (value);
  case DRAWL_TIMING_FACTOR:
    return drawl_figure_number (drawl_term_is_faster (value) ? inverse (value) : value, 3);
  default:
    return drawl_figure_number (value, 3);
  }
}

gboolean
drawl_term_read (DrawlTimingTerm term, DrawlRational present, const char *text,
                 DrawlRational *value, GError **error)
{
  if (!drawl_timing_term_parse (term, text, value, error))
    return FALSE;
  if (term == DRAWL_TIMING_FACTOR && drawl_term_is_faster (present))
    *value = inverse (*value);
  return TRUE;
}

/* ---- Steps ---- */

/* Whether @question says what the body is set to. */
static gboolean
is_set (const DrawlCheckQuestion *question)
{
  return question != NULL && question->body != NULL && question->size >= 0 &&
         (question->codec >= 0 || question->body->kind == DRAWL_BODY_FILM);
}

static gboolean
step_capture (DrawlRational value, const DrawlCheckQuestion *question, int steps,
              DrawlRational *next)
{
  int direction = steps > 0 ? 1 : -1;
  DrawlRational rate = value;

  if (!is_set (question))
    return drawl_rational_add (value, drawl_rational_whole (steps), next) && next->num > 0;
  guint codec = question->codec < 0 ? DRAWL_BODY_NO_CODEC : (guint)question->codec;
  for (int i = 0; i < ABS (steps); i++)
    if (!drawl_body_step_rate (question->body, (guint)question->size, codec, rate, direction,
                               &rate))
      break;
  *next = rate;
  return !drawl_rational_equal (rate, value);
}

/* The first rate beyond @value on that side, and from there; stops at the last one. */
static gboolean
step_playback (DrawlRational value, int steps, DrawlRational *next)
{
  int last = (int)G_N_ELEMENTS (playback_rates) - 1, at;

  if (steps > 0) {
    for (at = 0; at <= last && drawl_rational_compare (playback_rates[at], value) <= 0;)
      at++;
    if (at > last)
      return FALSE;
    *next = playback_rates[MIN (at + steps - 1, last)];
  } else {
    for (at = last; at >= 0 && drawl_rational_compare (playback_rates[at], value) >= 0;)
      at--;
    if (at < 0)
      return FALSE;
    *next = playback_rates[MAX (at + steps + 1, 0)];
  }
  return TRUE;
}

/* A tenth of a second, or one of the last decimal that the number shows. */
static DrawlRational
time_step (DrawlRational value)
{
  gint64 parts = 10;

  for (int decimals = 1; decimals < TIME_DECIMALS; decimals++, parts *= 10) {
    DrawlRational shown;
    if (!drawl_rational_mul (value, drawl_rational_whole (parts), &shown) || shown.den == 1)
      break;
  }
  return (DrawlRational){1, parts};
}

static gboolean
step_by (DrawlRational value, DrawlRational step, int steps, DrawlRational *next)
{
  return drawl_rational_mul (step, drawl_rational_whole (steps), &step) &&
         drawl_rational_add (value, step, next) && next->num > 0;
}

/* Up is slower, always: … 3× faster, 2× faster, 1×, 2× slower, … A step never jumps over 1×. */
static gboolean
step_factor (DrawlRational value, int steps, DrawlRational *next)
{
  DrawlRational one = drawl_rational_whole (1), shown = value;
  int side = drawl_rational_compare (value, one);
  gboolean faster = side < 0 || (side == 0 && steps < 0);

  if (faster) {
    shown = inverse (value);
    steps = -steps;
  }
  if (!drawl_rational_add (shown, drawl_rational_whole (steps), next))
    return FALSE;
  if (drawl_rational_compare (*next, one) < 0)
    *next = one;
  if (faster)
    *next = inverse (*next);
  return TRUE;
}

gboolean
drawl_term_step (DrawlTimingTerm term, DrawlRational value, const DrawlCheckQuestion *question,
                 int steps, DrawlRational *next)
{
  switch (term) {
  case DRAWL_TIMING_CAPTURE:
    return step_capture (value, question, steps, next);
  case DRAWL_TIMING_PLAYBACK:
    return step_playback (value, steps, next);
  case DRAWL_TIMING_ACTION:
  case DRAWL_TIMING_SCREEN:
    return step_by (value, time_step (value), steps, next);
  case DRAWL_TIMING_FACTOR:
    return step_factor (value, steps, next);
  default:
    return step_by (value, drawl_rational_whole (1), steps, next);
  }
}

/* ---- Following ---- */

static gboolean
depends_on (DrawlTimingTerm term, DrawlTimingTerm other, guint given)
{
  guint without = drawl_timing_closure (given & ~DRAWL_TIMING_BIT (other));

  return (given & DRAWL_TIMING_BIT (other)) != 0 && (without & DRAWL_TIMING_BIT (term)) == 0;
}

char *
drawl_term_follows_text (DrawlTimingTerm term, guint given)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  for (guint other = 0; other < DRAWL_TIMING_N_TERMS; other++)
    if (other != term && depends_on (term, other, given))
      g_ptr_array_add (names, (gpointer)drawl_timing_term_name (other));
  g_ptr_array_add (names, NULL);
  g_autofree char *list = g_strjoinv (C_ ("between things listed", ", "), (char **)names->pdata);
  return g_strdup_printf (_ ("Follows from %s"), list);
}
