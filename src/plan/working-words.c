/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The words that stand in braces in the texts of a working: each one is a figure of the shot, as a
 * person reads it. A word is only asked for where the figure exists. */

#include "plan/working-private.h"

#include "core/text.h"
#include "core/timecode.h"
#include "plan/figure.h"
#include "plan/shot-load.h"

#include <string.h>

/* Decimals of a plain number in a working. */
#define PLACES 6

/* Codes that ST 12-1 itself counts. */
#define BASE_RATE_MAX 30

static char *
number (DrawlRational value)
{
  return drawl_figure_number (value, PLACES);
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
word_factor (const DrawlWorkingShot *shot)
{
  return drawl_figure_factor (shot->timing->value[DRAWL_TIMING_FACTOR]);
}

static char *
word_ratio (const DrawlWorkingShot *shot)
{
  return number (shot->timing->value[DRAWL_TIMING_FACTOR]);
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
  return drawl_figure_time (shot->fields->handle_before_s);
}

static char *
word_after (const DrawlWorkingShot *shot)
{
  return drawl_figure_time (shot->fields->handle_after_s);
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

static char *
word_document (const DrawlWorkingShot *shot)
{
  const DrawlBody *body = shot->question->body;
  const char *document = body->source_document, *date = body->source_date;

  if (document == NULL || document[0] == '\0')
    return g_strdup (body->name);
  return date != NULL && date[0] != '\0' ? g_strdup_printf ("%s, %s", document, date)
                                         : g_strdup (document);
}

/* ---- Frames and data rates ---- */

static char *
word_width (const DrawlWorkingShot *shot)
{
  return g_strdup_printf ("%u", shot->size->width);
}

static char *
word_height (const DrawlWorkingShot *shot)
{
  return g_strdup_printf ("%u", shot->size->height);
}

static char *
word_samples (const DrawlWorkingShot *shot)
{
  return number (drawl_sampling_samples (shot->codec->payload.sampling));
}

static char *
word_bits (const DrawlWorkingShot *shot)
{
  return number (shot->codec->payload.stored_bits);
}

static char *
word_align (const DrawlWorkingShot *shot)
{
  return g_strdup_printf ("%u", shot->codec->payload.row_align);
}

static char *
word_header (const DrawlWorkingShot *shot)
{
  return drawl_figure_count (shot->codec->payload.overhead_bytes);
}

static char *
word_fixed (const DrawlWorkingShot *shot)
{
  return drawl_figure_count (shot->codec->payload.frame_bytes);
}

static char *
word_mbps (const DrawlWorkingShot *shot)
{
  return number (shot->codec->payload.mbps);
}

static char *
word_at (const DrawlWorkingShot *shot)
{
  return drawl_figure_rate (shot->codec->payload.at);
}

static char *
word_law_source (const DrawlWorkingShot *shot)
{
  const DrawlCodecLaw *law = shot->codec->law;
  return law != NULL ? g_strdup (law->source) : word_document (shot);
}

static char *
word_frame (const DrawlWorkingShot *shot)
{
  return drawl_figure_bytes (shot->load->frame_bytes);
}

static char *
word_frame_exact (const DrawlWorkingShot *shot)
{
  return number (shot->load->frame_bytes);
}

static char *
word_data_rate (const DrawlWorkingShot *shot)
{
  return drawl_figure_bytes_rate (shot->load->bytes_s);
}

static char *
word_data_rate_exact (const DrawlWorkingShot *shot)
{
  return number (shot->load->bytes_s);
}

static char *
word_audio (const DrawlWorkingShot *shot)
{
  return g_strdup_printf ("%u", shot->question->audio_tracks);
}

static char *
word_track (const DrawlWorkingShot *shot)
{
  return drawl_figure_bytes_rate (drawl_rational_whole (DRAWL_AUDIO_BYTES_S));
}

static char *
word_loaded_frame (const DrawlWorkingShot *shot)
{
  DrawlRational bytes = drawl_rational_whole (0);

  drawl_rational_div (shot->load->bytes_s, shot->question->rate, &bytes);
  return drawl_figure_bytes (bytes);
}

/* ---- Cards and buffer ---- */

static char *
word_card (const DrawlWorkingShot *shot)
{
  return drawl_figure_bytes (drawl_rational_whole (shot->card->bytes));
}

static char *
word_reserve (const DrawlWorkingShot *shot)
{
  return drawl_figure_percent (shot->question->reserve_percent);
}

static char *
word_card_frames (const DrawlWorkingShot *shot)
{
  return drawl_figure_count (shot->load->card_frames);
}

static char *
word_card_s (const DrawlWorkingShot *shot)
{
  return drawl_figure_time (shot->load->card_s);
}

static char *
word_cards (const DrawlWorkingShot *shot)
{
  return drawl_figure_count (shot->load->cards);
}

static char *
word_take_bytes (const DrawlWorkingShot *shot)
{
  return drawl_figure_bytes (drawl_rational_whole (shot->load->take_bytes));
}

static char *
word_takes_on_card (const DrawlWorkingShot *shot)
{
  gint64 usable = 0;

  drawl_card_usable_bytes (shot->card->bytes, shot->question->reserve_percent, &usable, NULL);
  return drawl_figure_count (usable / MAX (shot->load->take_bytes, 1));
}

static char *
word_buffer (const DrawlWorkingShot *shot)
{
  return drawl_figure_bytes (drawl_rational_whole (shot->question->body->buffer_bytes));
}

static char *
word_buffer_frames (const DrawlWorkingShot *shot)
{
  return drawl_figure_count (shot->load->buffer.frames);
}

static char *
word_held_s (const DrawlWorkingShot *shot)
{
  return drawl_figure_time (shot->load->buffer.held_s);
}

static char *
word_empty_s (const DrawlWorkingShot *shot)
{
  return drawl_figure_time (shot->load->buffer.empty_s);
}

static char *
word_write_speed (const DrawlWorkingShot *shot)
{
  gint64 bytes_s = drawl_body_buffer_write_speed (shot->question->body, shot->check->card);
  return drawl_figure_bytes_rate (drawl_rational_whole (bytes_s));
}

/* ---- Film ---- */

static char *
word_foot_frames (const DrawlWorkingShot *shot)
{
  char text[DRAWL_RATIONAL_TEXT_SIZE];
  return g_strdup (drawl_rational_text (shot->size->gauge->foot_frames, text));
}

static char *
word_feet_frames (const DrawlWorkingShot *shot)
{
  return drawl_footage_feet_frames (shot->size->gauge, shot->load->take_frames);
}

static char *
word_magazine_feet (const DrawlWorkingShot *shot)
{
  return number (shot->magazine->feet);
}

static char *
word_magazine_s (const DrawlWorkingShot *shot)
{
  return drawl_figure_time (shot->load->magazine_s);
}

static char *
word_magazines (const DrawlWorkingShot *shot)
{
  return drawl_figure_count (shot->load->magazines);
}

static char *
word_takes_on_magazine (const DrawlWorkingShot *shot)
{
  gint64 frames = 0;

  drawl_footage_frames_on_feet (shot->size->gauge, shot->magazine->feet, &frames);
  return drawl_figure_count (frames / MAX (shot->load->take_frames, 1));
}

/* ---- Filling in ---- */

#define WORD(name)                                                                                 \
  {                                                                                                \
#name, word_##name                                                                             \
  }

static const struct {
  const char *name;
  char *(*text) (const DrawlWorkingShot *shot);
} words[] = {
    WORD (capture),       WORD (playback),
    WORD (action),        WORD (screen),
    WORD (factor),        WORD (ratio),
    WORD (post),          WORD (speed),
    WORD (frames),        WORD (screen_code),
    WORD (screen_frames), WORD (code_source),
    WORD (before),        WORD (after),
    WORD (take_frames),   WORD (takes),
    WORD (cheapest),      WORD (sets),
    WORD (document),      WORD (width),
    WORD (height),        WORD (samples),
    WORD (bits),          WORD (align),
    WORD (header),        WORD (fixed),
    WORD (mbps),          WORD (at),
    WORD (law_source),    WORD (frame),
    WORD (frame_exact),   WORD (data_rate),
    WORD (audio),         WORD (track),
    WORD (loaded_frame),  WORD (data_rate_exact),
    WORD (card),          WORD (reserve),
    WORD (card_frames),   WORD (card_s),
    WORD (cards),         WORD (take_bytes),
    WORD (takes_on_card), WORD (buffer),
    WORD (buffer_frames), WORD (held_s),
    WORD (empty_s),       WORD (write_speed),
    WORD (foot_frames),   WORD (feet_frames),
    WORD (magazine_feet), WORD (magazine_s),
    WORD (magazines),     WORD (takes_on_magazine),
};

/* A word that is none stays as it is, so that a slip in a translation is seen and not fatal. */
static char *
word_text (const char *name, gsize length, const DrawlWorkingShot *shot)
{
  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    if (strlen (words[i].name) == length && strncmp (words[i].name, name, length) == 0)
      return words[i].text (shot);
  return g_strdup_printf ("{%.*s}", (int)length, name);
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
