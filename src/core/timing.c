/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The timing of a shot. Its six terms are tied by two products that are always 1:
 *
 *   C · P⁻¹ · F⁻¹ = 1        A · F · 100 · S⁻¹ · r⁻¹ = 1
 *
 * so a term is worked out as soon as the others of one product are known, and every set of terms
 * that can determine another does so by such steps alone. Given terms are taken in one by one; one
 * that is already known by then must agree. Rates in frames a second, times in seconds, post speed
 * in per cent. */

#include "core/timing.h"

#include "core/error.h"
#include "core/text.h"

#include <string.h>

#define N_TIES 2

/* A product of terms that is 1: each term's power, and a whole factor. */
typedef struct {
  gint8 power[DRAWL_TIMING_N_TERMS];
  gint64 times;
} Tie;

static const Tie ties[N_TIES] = {
    {{[DRAWL_TIMING_CAPTURE] = 1, [DRAWL_TIMING_PLAYBACK] = -1, [DRAWL_TIMING_FACTOR] = -1}, 1},
    {{[DRAWL_TIMING_ACTION] = 1,
      [DRAWL_TIMING_FACTOR] = 1,
      [DRAWL_TIMING_SCREEN] = -1,
      [DRAWL_TIMING_POST_SPEED] = -1},
     100},
};

typedef struct {
  const char *key;
  const char *name;
  const char *unit;     /* as it follows the number in a message */
  const char *units[3]; /* as they may be typed */
  DrawlRational least;  /* and above 0 */
  DrawlRational most;
} Term;

static const Term terms[DRAWL_TIMING_N_TERMS] = {
    [DRAWL_TIMING_CAPTURE] =
        {"capture_rate", N_ ("capture rate"), N_ (" fps"), {"fps"}, {0, 1}, {DRAWL_RATE_MAX, 1}},
    [DRAWL_TIMING_PLAYBACK] =
        {"playback_rate", N_ ("playback rate"), N_ (" fps"), {"fps"}, {0, 1}, {DRAWL_RATE_MAX, 1}},
    [DRAWL_TIMING_ACTION] =
        {"action_s", N_ ("action time"), N_ (" s"), {"s"}, {0, 1}, {DRAWL_TIMING_MAX_S, 1}},
    [DRAWL_TIMING_SCREEN] =
        {"screen_s", N_ ("screen time"), N_ (" s"), {"s"}, {0, 1}, {DRAWL_TIMING_MAX_S, 1}},
    [DRAWL_TIMING_FACTOR] = {"slow_factor",
                             N_ ("slow factor"),
                             N_ ("×"),
                             {"×", "x"},
                             {1, DRAWL_TIMING_MAX_FACTOR},
                             {DRAWL_TIMING_MAX_FACTOR, 1}},
    [DRAWL_TIMING_POST_SPEED] = {"post_speed_percent",
                                 N_ ("post speed"),
                                 N_ (" %"),
                                 {"%"},
                                 {0, 1},
                                 {DRAWL_TIMING_MAX_FACTOR, 1}},
};

/* The order in which given terms are taken in: a later one is the one that is said to disagree. */
static const guint8 taking_order[DRAWL_TIMING_N_TERMS] = {
    DRAWL_TIMING_POST_SPEED, DRAWL_TIMING_PLAYBACK, DRAWL_TIMING_CAPTURE,
    DRAWL_TIMING_FACTOR,     DRAWL_TIMING_ACTION,   DRAWL_TIMING_SCREEN,
};

typedef struct {
  DrawlRational value[DRAWL_TIMING_N_TERMS];
  guint known;  /* bits of the terms that have a value */
  guint chosen; /* those of them that were given, and not known before */
} Solution;

/* ---- Terms ---- */

const char *
drawl_timing_term_key (DrawlTimingTerm term)
{
  return terms[term].key;
}

const char *
drawl_timing_term_name (DrawlTimingTerm term)
{
  return _ (terms[term].name);
}

/* "240 fps" */
static char *
value_text (DrawlTimingTerm term, DrawlRational value)
{
  char text[DRAWL_RATIONAL_TEXT_SIZE];
  return g_strconcat (drawl_rational_text (value, text), _ (terms[term].unit), NULL);
}

gboolean
drawl_timing_term_check (DrawlTimingTerm term, DrawlRational value, GError **error)
{
  gboolean low = value.num <= 0 || drawl_rational_compare (value, terms[term].least) < 0;
  gboolean high = drawl_rational_compare (value, terms[term].most) > 0;
  if (!low && !high)
    return TRUE;

  g_autofree char *shown = value_text (term, value);
  g_autofree char *least = value_text (term, terms[term].least);
  g_autofree char *most = value_text (term, terms[term].most);
  if (high)
    g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_RANGE,
                 _ ("%s cannot be %s; at most %s is possible"), drawl_timing_term_name (term),
                 shown, most);
  else if (value.num <= 0)
    g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_RANGE,
                 _ ("%s cannot be %s; a value above 0 is expected"), drawl_timing_term_name (term),
                 shown);
  else
    g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_RANGE,
                 _ ("%s cannot be %s; at least %s is possible"), drawl_timing_term_name (term),
                 shown, least);
  return FALSE;
}

gboolean
drawl_timing_term_parse (DrawlTimingTerm term, const char *text, DrawlRational *out, GError **error)
{
  gboolean is_rate = term == DRAWL_TIMING_CAPTURE || term == DRAWL_TIMING_PLAYBACK;
  DrawlRational value;

  if (is_rate ? !drawl_rate_parse (text, &value, error)
              : !drawl_rational_parse_unit (text, terms[term].units, &value, error))
    return FALSE;
  if (!drawl_timing_term_check (term, value, error))
    return FALSE;
  *out = value;
  return TRUE;
}

/* ---- What determines what ---- */

/* The one term of @tie that is not in @known, or N_TERMS when there is none or more than one. */
static DrawlTimingTerm
lone_unknown (const Tie *tie, guint known)
{
  DrawlTimingTerm lone = DRAWL_TIMING_N_TERMS;

  for (guint term = 0; term < DRAWL_TIMING_N_TERMS; term++) {
    if (tie->power[term] == 0 || (known & DRAWL_TIMING_BIT (term)) != 0)
      continue;
    if (lone != DRAWL_TIMING_N_TERMS)
      return DRAWL_TIMING_N_TERMS;
    lone = term;
  }
  return lone;
}

guint
drawl_timing_closure (guint given)
{
  guint known = given & DRAWL_TIMING_ALL, before;

  do {
    before = known;
    for (guint i = 0; i < N_TIES; i++) {
      DrawlTimingTerm lone = lone_unknown (&ties[i], known);
      if (lone != DRAWL_TIMING_N_TERMS)
        known |= DRAWL_TIMING_BIT (lone);
    }
  } while (known != before);
  return known;
}

static gboolean
determines (guint given, guint term)
{
  return (drawl_timing_closure (given) & DRAWL_TIMING_BIT (term)) != 0;
}

/* ---- Working out ---- */

/* The value that makes the product of @tie 1. */
static gboolean
work_out (const Tie *tie, DrawlTimingTerm wanted, Solution *solution, GError **error)
{
  DrawlRational product = drawl_rational_whole (tie->times);
  gboolean fits = TRUE;

  for (guint term = 0; term < DRAWL_TIMING_N_TERMS && fits; term++)
    if (term != wanted && tie->power[term] > 0)
      fits = drawl_rational_mul (product, solution->value[term], &product);
    else if (term != wanted && tie->power[term] < 0)
      fits = drawl_rational_div (product, solution->value[term], &product);
  if (fits && tie->power[wanted] > 0)
    fits = drawl_rational_div (drawl_rational_whole (1), product, &product);

  if (!fits) {
    g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_OVERFLOW,
                 _ ("%s cannot be worked out exactly; values of fewer digits are expected"),
                 drawl_timing_term_name (wanted));
    return FALSE;
  }
  solution->value[wanted] = product;
  solution->known |= DRAWL_TIMING_BIT (wanted);
  return drawl_timing_term_check (wanted, product, error);
}

static gboolean
work_out_all (Solution *solution, GError **error)
{
  guint before;

  do {
    before = solution->known;
    for (guint i = 0; i < N_TIES; i++) {
      DrawlTimingTerm lone = lone_unknown (&ties[i], solution->known);
      if (lone != DRAWL_TIMING_N_TERMS && !work_out (&ties[i], lone, solution, error))
        return FALSE;
    }
  } while (solution->known != before);
  return TRUE;
}

/* The newest chosen term without which @term would not be determined. */
static DrawlTimingTerm
find_opponent (const Solution *solution, DrawlTimingTerm term)
{
  for (guint i = DRAWL_TIMING_N_TERMS; i-- > 0;) {
    guint bit = DRAWL_TIMING_BIT (taking_order[i]);
    if ((solution->chosen & bit) != 0 && !determines (solution->chosen & ~bit, term))
      return taking_order[i];
  }
  g_assert_not_reached ();
}

static gboolean
refuse_conflict (const Solution *solution, DrawlTimingTerm term, DrawlRational given,
                 GError **error)
{
  DrawlTimingTerm opponent = find_opponent (solution, term);
  g_autofree char *shown = value_text (term, given);
  g_autofree char *opposed = value_text (opponent, solution->value[opponent]);
  g_autofree char *right = value_text (term, solution->value[term]);

  g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_CONFLICT,
               _ ("%s %s and %s %s disagree; with the rest as given, %s would have to be %s"),
               drawl_timing_term_name (term), shown, drawl_timing_term_name (opponent), opposed,
               drawl_timing_term_name (term), right);
  return FALSE;
}

static gboolean
take_in (Solution *solution, DrawlTimingTerm term, DrawlRational given, GError **error)
{
  if (!drawl_timing_term_check (term, given, error))
    return FALSE;
  if ((solution->known & DRAWL_TIMING_BIT (term)) != 0)
    return drawl_rational_equal (given, solution->value[term]) ||
           refuse_conflict (solution, term, given, error);

  solution->value[term] = given;
  solution->known |= DRAWL_TIMING_BIT (term);
  solution->chosen |= DRAWL_TIMING_BIT (term);
  return work_out_all (solution, error);
}

/* ---- What is missing ---- */

/* Names every term that alone would complete @known; NULL when none does. */
static char *
name_alternatives (guint known)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  for (guint term = 0; term < DRAWL_TIMING_N_TERMS; term++)
    if (drawl_timing_closure (known | DRAWL_TIMING_BIT (term)) == DRAWL_TIMING_ALL)
      g_ptr_array_add (names, (gpointer)drawl_timing_term_name (term));
  if (names->len == 0)
    return NULL;
  g_ptr_array_add (names, NULL);
  return g_strjoinv (C_ ("between alternatives", " or "), (char **)names->pdata);
}

/* Names terms that together would complete @known, each one needed. */
static char *
name_enough (guint known)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  for (guint i = 0; i < DRAWL_TIMING_N_TERMS; i++) {
    if ((known & DRAWL_TIMING_BIT (taking_order[i])) != 0)
      continue;
    known = drawl_timing_closure (known | DRAWL_TIMING_BIT (taking_order[i]));
    g_ptr_array_add (names, (gpointer)drawl_timing_term_name (taking_order[i]));
  }
  g_ptr_array_add (names, NULL);
  return g_strjoinv (C_ ("between things listed", " and "), (char **)names->pdata);
}

static gboolean
refuse_missing (guint known, GError **error)
{
  g_autofree char *alternatives = name_alternatives (known);

  if (alternatives != NULL) {
    g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_MISSING, _ ("%s is missing"),
                 alternatives);
  } else {
    g_autofree char *enough = name_enough (known);
    g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_MISSING,
                 _ ("too little is given; %s would be enough"), enough);
  }
  return FALSE;
}

/* ---- Solving ---- */

/* The least whole number of frames that covers @seconds at @rate. */
static gboolean
count_frames (DrawlRational seconds, DrawlRate rate, gint64 *frames, GError **error)
{
  DrawlRational exact;

  if (!drawl_rational_mul (seconds, rate, &exact)) {
    g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_OVERFLOW,
                 _ ("the frames cannot be counted exactly; values of fewer digits are expected"));
    return FALSE;
  }
  *frames = drawl_rational_ceil (exact);
  return TRUE;
}

gboolean
drawl_timing_solve_bare (const DrawlRational value[DRAWL_TIMING_N_TERMS], guint given,
                         DrawlTiming *out, GError **error)
{
  Solution solution = {0};
  DrawlTiming timing;

  for (guint i = 0; i < DRAWL_TIMING_N_TERMS; i++)
    if ((given & DRAWL_TIMING_BIT (taking_order[i])) != 0 &&
        !take_in (&solution, taking_order[i], value[taking_order[i]], error))
      return FALSE;
  if (solution.known != DRAWL_TIMING_ALL)
    return refuse_missing (solution.known, error);

  memcpy (timing.value, solution.value, sizeof timing.value);
  timing.followed = DRAWL_TIMING_ALL & ~given;
  if (!count_frames (timing.value[DRAWL_TIMING_ACTION], timing.value[DRAWL_TIMING_CAPTURE],
                     &timing.frames, error) ||
      !count_frames (timing.value[DRAWL_TIMING_SCREEN], timing.value[DRAWL_TIMING_PLAYBACK],
                     &timing.screen_frames, error))
    return FALSE;
  *out = timing;
  return TRUE;
}

gboolean
drawl_timing_solve (const DrawlRational value[DRAWL_TIMING_N_TERMS], guint given, DrawlTiming *out,
                    GError **error)
{
  DrawlRational assumed[DRAWL_TIMING_N_TERMS];

  memcpy (assumed, value, sizeof assumed);
  if ((given & DRAWL_TIMING_BIT (DRAWL_TIMING_POST_SPEED)) == 0)
    assumed[DRAWL_TIMING_POST_SPEED] = drawl_rational_whole (100);
  return drawl_timing_solve_bare (assumed, given | DRAWL_TIMING_BIT (DRAWL_TIMING_POST_SPEED), out,
                                  error);
}
