/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The sentence of a shot as it is read: one of a few whole sentences, slower or faster, with or
 * without a change of speed in the cutting room, each with places in braces. */

#include "core/timing.h"

/* The places, in no order that a sentence keeps to. */
typedef enum {
  DRAWL_SENTENCE_WHAT,
  DRAWL_SENTENCE_ACTION,
  DRAWL_SENTENCE_CAPTURE,
  DRAWL_SENTENCE_PLAYBACK,
  DRAWL_SENTENCE_SCREEN,
  DRAWL_SENTENCE_FACTOR,
  DRAWL_SENTENCE_POST,
  DRAWL_SENTENCE_N_PLACES
} DrawlSentencePlace;

/* The sentence for these values, translated: "{what}: {action} of action, shot at {capture}, …". */
const char *drawl_sentence_template (const DrawlRational value[DRAWL_TIMING_N_TERMS]);

/* @template with each place replaced by its text. New string. */
char *drawl_sentence_fill_in (const char *template,
                              const char *const texts[DRAWL_SENTENCE_N_PLACES]);
