/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Workings are made from rows of text with {words} in braces; each word is a figure of the shot. */

#include "plan/working.h"

/* A shot with all that its words are taken from. */
typedef struct {
  const DrawlShotFields *fields;
  const DrawlTiming *timing;
  const DrawlShotLoad *load;
  const DrawlCheck *check;
  const DrawlCheckQuestion *question;
  const DrawlBodySize *size;   /* NULL without */
  const DrawlBodyCodec *codec; /* NULL without, and on film */
  const DrawlBodyCard *card;   /* that was reckoned with; NULL without */
  const DrawlBodyMagazine *magazine;
  gboolean takes_span;
  DrawlLengthUnit unit; /* of film */
} DrawlWorkingShot;

/* One way in which a figure can come about. Texts are marked for translation. */
typedef struct {
  DrawlFigure figure;
  gboolean (*applies) (const DrawlWorkingShot *shot);
  const char *value;
  const char *formula;
  const char *numbers;
  const char *source;
} DrawlWorkingRow;

/* The first row of a figure that applies to the shot, or NULL. */
const DrawlWorkingRow *drawl_working_find_row (const DrawlWorkingShot *shot, DrawlFigure figure);

/* @text with each {word} replaced by what it stands for. New string. */
char *drawl_working_fill_in (const char *text, const DrawlWorkingShot *shot);

/* A word, and the text that it stands for. */
typedef struct {
  const char *name;
  char *(*text) (const DrawlWorkingShot *shot);
} DrawlWorkingWord;

#define DRAWL_WORKING_WORD(name)                                                                   \
  {                                                                                                \
#name, word_##name                                                                             \
  }

/* The words of cards, buffer and film. */
const DrawlWorkingWord *drawl_working_load_words (guint *n_words);

/* Texts that words share: a plain number, and the document a body's figures were taken from. */
char *drawl_working_number (DrawlRational value);
char *drawl_working_document (const DrawlWorkingShot *shot);
