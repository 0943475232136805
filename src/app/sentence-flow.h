/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The lines of a sentence: pieces of known size set one after the other, broken into lines, each
 * line on one baseline. Pure; from left to right, the caller mirrors. All in pixels. */

#include <glib.h>

typedef struct {
  /* What is asked. */
  int width;       /* as wide as it wants to be */
  int least;       /* as narrow as it may become */
  int ascent;      /* of its (first) line, above the baseline */
  int descent;     /* below it */
  gboolean joined; /* stands against the piece before it */
  gboolean spaced; /* else: with a gap before it */
  /* A piece that is itself broken into lines: it stands at the start of a line, as wide as all of
   * them. */
  int drop; /* from its first baseline to its last; 0: it has one line */
  int tail; /* where its last line ends; what follows goes on from there */
  /* What is answered. */
  int x, y;    /* of its upper left corner */
  int granted; /* its width */
} DrawlSentenceBit;

/* Sets @n bits on lines of @width, and returns the height of all lines; @leading lies between
 * lines, @gap between words. A run of joined bits that is wider than a line has its first bits
 * narrowed. */
int drawl_sentence_flow (DrawlSentenceBit *bits, guint n, int width, int gap, int leading);
