/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The template of a sentence, "{what}: {action} of action, shot at {capture}, …", taken apart into
 * words and places, so that each can stand in a line of its own right. Pure. */

#include <glib.h>

#define DRAWL_SENTENCE_WORD (-1)

typedef struct {
  int place;       /* index into the names of the places, or DRAWL_SENTENCE_WORD */
  char *word;      /* as it is written; NULL in a place */
  gboolean joined; /* stands against the piece before it: no gap, no new line between */
  gboolean spaced; /* when not joined: a gap lies before it, unless it begins a line */
} DrawlSentencePiece;

/* Pieces of @template, in its order. White space parts pieces; a zero-width space (U+200B) lets a
 * line break without a gap, for languages that write without spaces. FALSE, and @pieces is left
 * alone, unless each place whose bit is set in @wanted stands there once and no other does. */
gboolean drawl_sentence_split (const char *template, const char *const *places, guint n_places,
                               guint wanted, GArray **pieces);
