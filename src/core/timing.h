/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlTiming: how real time becomes screen time.
 *
 *   F = C / P          slow factor = capture rate ÷ playback rate
 *   S = A · F / r      screen time = action time · slow factor ÷ post speed (r = percent ÷ 100)
 *   N = ⌈A · C⌉        the least whole number of frames that covers the action
 *
 * Six terms, two equations: four independent terms give the other two. All are exact rationals;
 * action and screen time stay as asked, only the counts are whole. */

#include "core/rate.h"

typedef enum {
  DRAWL_TIMING_CAPTURE,    /* capture rate, frames a second of real time */
  DRAWL_TIMING_PLAYBACK,   /* playback rate, frames a second of screen time */
  DRAWL_TIMING_ACTION,     /* action time, seconds of real time */
  DRAWL_TIMING_SCREEN,     /* screen time, seconds */
  DRAWL_TIMING_FACTOR,     /* slow factor, a ratio: 10 is ten times slower, 0.5 twice as fast */
  DRAWL_TIMING_POST_SPEED, /* speed change in the cutting room, per cent: 100 none, 50 half speed */
  DRAWL_TIMING_N_TERMS
} DrawlTimingTerm;

#define DRAWL_TIMING_BIT(term) (1u << (term))
#define DRAWL_TIMING_ALL ((1u << DRAWL_TIMING_N_TERMS) - 1)

/* Longest time in seconds (ten years) and greatest slow factor or its inverse that a term may hold.
 */
#define DRAWL_TIMING_MAX_S G_GINT64_CONSTANT (315360000)
#define DRAWL_TIMING_MAX_FACTOR G_GINT64_CONSTANT (100000000)

typedef struct {
  DrawlRational value[DRAWL_TIMING_N_TERMS];
  guint followed;       /* bits of the terms that were worked out; an assumed post speed is not */
  gint64 frames;        /* N, at least 1 */
  gint64 screen_frames; /* ⌈S · P⌉: what the screen timecode counts */
} DrawlTiming;

/* The key of a term in files and on the command line ("capture_rate", "playback_rate", "action_s",
 * "screen_s", "slow_factor", "post_speed_percent"), and its translated name ("capture rate", …). */
const char *drawl_timing_term_key (DrawlTimingTerm term);
const char *drawl_timing_term_name (DrawlTimingTerm term);

/* Reads one term from text: rates as drawl_rate_parse(), the factor with or without a trailing × or
 * x, per cent with or without %, times in seconds with or without s. Checks its range. Errors:
 * DRAWL_CORE_ERROR_SYNTAX, _RANGE, _OVERFLOW. */
gboolean drawl_timing_term_parse (DrawlTimingTerm term, const char *text, DrawlRational *out,
                                  GError **error);

/* FALSE with DRAWL_CORE_ERROR_RANGE when @value cannot stand in that term. */
gboolean drawl_timing_term_check (DrawlTimingTerm term, DrawlRational value, GError **error);

/* The terms that @given determines, @given included, post speed not assumed. */
guint drawl_timing_closure (guint given);

/* Works out all terms from those whose bit is set in @given. Post speed is 100 % unless given.
 * Errors: DRAWL_CORE_ERROR_MISSING (names what would be enough), _CONFLICT (names the two terms
 * that disagree and what one would have to be), _RANGE (a given or solved value out of range),
 * _OVERFLOW. */
gboolean drawl_timing_solve (const DrawlRational value[DRAWL_TIMING_N_TERMS], guint given,
                             DrawlTiming *out, GError **error);

/* The same without assuming a post speed: when it is not given, it follows from the others like any
 * term. */
gboolean drawl_timing_solve_bare (const DrawlRational value[DRAWL_TIMING_N_TERMS], guint given,
                                  DrawlTiming *out, GError **error);
