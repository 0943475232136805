/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The words that stand in braces in the texts of a working: each one is a figure of the shot, as a
 * person reads it. A word is only asked for where the figure exists. Here those of the sentence and
 * of licences; those of cards and film are in working-load.c. */

#include "plan/working-private.h"

#include "core/text.h"
#include "core/timecode.h"
#include "plan/figure.h"

#include <string.h>

/* Decimals of a plain number in a working. */
#define PLACES 6

/* Codes that ST 12-1 itself counts. */
#define BASE_RATE_MAX 30

char *
drawl_working_number (DrawlRational value)
{
  return drawl_figure_number (value, PLACES);
}

/* Times that are put in are given in full; only results are rounded to what is read easily. */
static char *
seconds (DrawlRational value)
{
  g_autofree char *text = drawl_working_number (value);
  /* Translators: seconds. */
  return g_strdup_printf (_ ("%s s"), text);
}

/* ---- The sentence ---- */

static char *
word_capture (const DrawlWorkingShot *shot)
{
  return drawl_figure_rate (shot->timing->value[DRAWL_TIMING_CAPTURE]);
}

static char *
word_playback (const DrawlWorkingShot *shot)
{
  return drawl_figure_rate (shot->timing->value[DRAWL_TIMING_PLAYBACK]);
}

static char *
word_action (const DrawlWorkingShot *shot)
{
  return drawl_figure_time (shot->timing->value[DRAWL_TIMING_ACTION]);
}

static char *
word_screen (const DrawlWorkingShot *shot)
{
  return drawl_figure_time (shot->timing->value[DRAWL_TIMING_SCREEN]);
}

static char *
word_action_s (const DrawlWorkingShot *shot)
{
  return seconds (shot->timing->value[DRAWL_TIMING_ACTION]);
}

static char *
word_screen_s (const DrawlWorkingShot *shot)
{
  return seconds (shot->timing->value[DRAWL_TIMING_SCREEN]);
}

static char *
word_factor (const DrawlWorkingShot *shot)
{
  return drawl_figure_factor (shot->timing->value[DRAWL_TIMING_FACTOR]);
}

static char *
word_ratio (const DrawlWorkingShot *shot)
{
  return drawl_working_number (shot->timing->value[DRAWL_TIMING_FACTOR]);
}

static char *
word_post (const DrawlWorkingShot *shot)
{
  return drawl_figure_percent (shot->timing->value[DRAWL_TIMING_POST_SPEED]);
}

static char *
word_speed (const DrawlWorkingShot *shot)
{
  DrawlRational speed = drawl_rational_whole (0);

  drawl_rational_div (shot->timing->value[DRAWL_TIMING_POST_SPEED],
                      shot->timing->value[DRAWL_TIMING_FACTOR], &speed);
  return drawl_figure_percent (speed);
}

static char *
word_frames (const DrawlWorkingShot *shot)
{
  return drawl_figure_count (shot->timing->frames);
}

static char *
word_screen_frames (const DrawlWorkingShot *shot)
{
  return drawl_figure_count (shot->timing->screen_frames);
}

static char *
word_screen_code (const DrawlWorkingShot *shot)
{
  char code[DRAWL_TIMECODE_SIZE] = "";

  drawl_timecode_format (shot->timing->value[DRAWL_TIMING_PLAYBACK], shot->fields->drop,
                         shot->timing->screen_frames, code, NULL);
  return g_strdup (code);
}

static char *
word_code_source (const DrawlWorkingShot *shot)
{
  gint64 nominal = drawl_rate_nominal (shot->timing->value[DRAWL_TIMING_PLAYBACK]);
  const char *standard = nominal > BASE_RATE_MAX ? "SMPTE ST 12-3" : "SMPTE ST 12-1";

  return g_strdup_printf (
      shot->fields->drop ? _ ("%s, drop-frame count") : _ ("%s, non-drop count"), standard);
}

static char *
word_before (const DrawlWorkingShot *shot)
{
  return seconds (shot->fields->handle_before_s);
}

static char *
word_after (const DrawlWorkingShot *shot)
{
  return seconds (shot->fields->handle_after_s);
}

static char *
word_take_frames (const DrawlWorkingShot *shot)
{
  return drawl_figure_count (shot->load->take_frames);
}

static char *
word_takes (const DrawlWorkingShot *shot)
{
  return drawl_figure_count (shot->fields->takes);
}

/* ---- Licences ---- */

static char *
set_text (const DrawlWorkingShot *shot, guint index)
{
  return drawl_licence_set_text (&g_array_index (shot->check->sets, DrawlLicenceSet, index),
                                 shot->question->body);
}

static char *
word_cheapest (const DrawlWorkingShot *shot)
{
  return set_text (shot, 0);
}

static char *
word_sets (const DrawlWorkingShot *shot)
{
  GString *all = g_string_new (NULL);

  for (guint i = 0; i < shot->check->sets->len; i++) {
    g_autofree char *one = set_text (shot, i);
    g_string_append_printf (all, "%s%s", i > 0 ? _ (" or ") : "", one);
  }
  return g_string_free (all, FALSE);
}

char *
drawl_working_document (const DrawlWorkingShot *shot)
{
  const DrawlBody *body = shot->question->body;
  const char *document = body->source_document, *date = body->source_date;

  if (document == NULL || document[0] == '\0')
    return g_strdup (body->name);
  return date != NULL && date[0] != '\0' ? g_strdup_printf ("%s, %s", document, date)
                                         : g_strdup (document);
}

/* ---- Filling in ---- */

static const DrawlWorkingWord words[] = {
    DRAWL_WORKING_WORD (capture),
    DRAWL_WORKING_WORD (playback),
    DRAWL_WORKING_WORD (action),
    DRAWL_WORKING_WORD (screen),
    DRAWL_WORKING_WORD (action_s),
    DRAWL_WORKING_WORD (screen_s),
    DRAWL_WORKING_WORD (factor),
    DRAWL_WORKING_WORD (ratio),
    DRAWL_WORKING_WORD (post),
    DRAWL_WORKING_WORD (speed),
    DRAWL_WORKING_WORD (frames),
    DRAWL_WORKING_WORD (screen_code),
    DRAWL_WORKING_WORD (screen_frames),
    DRAWL_WORKING_WORD (code_source),
    DRAWL_WORKING_WORD (before),
    DRAWL_WORKING_WORD (after),
    DRAWL_WORKING_WORD (take_frames),
    DRAWL_WORKING_WORD (takes),
    DRAWL_WORKING_WORD (cheapest),
    DRAWL_WORKING_WORD (sets),
    {"document", drawl_working_document},
};

static const DrawlWorkingWord *
find_word (const DrawlWorkingWord *table, guint n_words, const char *name, gsize length)
{
  for (guint i = 0; i < n_words; i++)
    if (strlen (table[i].name) == length && strncmp (table[i].name, name, length) == 0)
      return &table[i];
  return NULL;
}

/* A word that is none stays as it is, so that a slip in a translation is seen and not fatal. */
static char *
word_text (const char *name, gsize length, const DrawlWorkingShot *shot)
{
  guint n_load_words;
  const DrawlWorkingWord *load_words = drawl_working_load_words (&n_load_words);
  const DrawlWorkingWord *word = find_word (words, G_N_ELEMENTS (words), name, length);

  if (word == NULL)
    word = find_word (load_words, n_load_words, name, length);
  return word != NULL ? word->text (shot) : g_strdup_printf ("{%.*s}", (int)length, name);
}

char *
drawl_working_fill_in (const char *text, const DrawlWorkingShot *shot)
{
  GString *filled = g_string_new (NULL);
  const char *open, *close;

  while ((open = strchr (text, '{')) != NULL && (close = strchr (open, '}')) != NULL) {
    g_autofree char *word = word_text (open + 1, (gsize)(close - open - 1), shot);
    g_string_append_len (filled, text, open - text);
    g_string_append (filled, word);
    text = close + 1;
  }
  g_string_append (filled, text);
  return g_string_free (filled, FALSE);
}
