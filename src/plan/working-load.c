/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The words of workings that tell what a shot puts on cards or through the gate. */

#include "plan/working-private.h"

#include "plan/figure.h"
#include "plan/shot-load.h"

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
  return drawl_working_number (drawl_sampling_samples (shot->codec->payload.sampling));
}

static char *
word_bits (const DrawlWorkingShot *shot)
{
  return drawl_working_number (shot->codec->payload.stored_bits);
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
  return drawl_working_number (shot->codec->payload.mbps);
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
  return law != NULL ? g_strdup (law->source) : drawl_working_document (shot);
}

static char *
word_frame (const DrawlWorkingShot *shot)
{
  return drawl_figure_bytes (shot->load->frame_bytes);
}

static char *
word_frame_exact (const DrawlWorkingShot *shot)
{
  return drawl_working_number (shot->load->frame_bytes);
}

static char *
word_data_rate (const DrawlWorkingShot *shot)
{
  return drawl_figure_bytes_rate (shot->load->bytes_s);
}

static char *
word_data_rate_exact (const DrawlWorkingShot *shot)
{
  return drawl_working_number (shot->load->bytes_s);
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
word_metres (const DrawlWorkingShot *shot)
{
  return drawl_length_film (shot->load->take_feet, DRAWL_LENGTH_METRIC);
}

static char *
word_film_m (const DrawlWorkingShot *shot)
{
  DrawlRational metres = {0, 1};

  drawl_footage_physical_metres (shot->size->gauge, DRAWL_PITCH_LONG,
                                 drawl_rational_whole (shot->load->take_frames), &metres);
  return drawl_working_number (metres);
}

static char *
word_step_source (const DrawlWorkingShot *shot)
{
  return g_strdup (shot->size->gauge->step_source);
}

static char *
word_magazine_feet (const DrawlWorkingShot *shot)
{
  return drawl_working_number (shot->magazine->feet);
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

static const DrawlWorkingWord words[] = {
    DRAWL_WORKING_WORD (width),
    DRAWL_WORKING_WORD (height),
    DRAWL_WORKING_WORD (samples),
    DRAWL_WORKING_WORD (bits),
    DRAWL_WORKING_WORD (align),
    DRAWL_WORKING_WORD (header),
    DRAWL_WORKING_WORD (fixed),
    DRAWL_WORKING_WORD (mbps),
    DRAWL_WORKING_WORD (at),
    DRAWL_WORKING_WORD (law_source),
    DRAWL_WORKING_WORD (frame),
    DRAWL_WORKING_WORD (frame_exact),
    DRAWL_WORKING_WORD (data_rate),
    DRAWL_WORKING_WORD (audio),
    DRAWL_WORKING_WORD (track),
    DRAWL_WORKING_WORD (loaded_frame),
    DRAWL_WORKING_WORD (data_rate_exact),
    DRAWL_WORKING_WORD (card),
    DRAWL_WORKING_WORD (reserve),
    DRAWL_WORKING_WORD (card_frames),
    DRAWL_WORKING_WORD (card_s),
    DRAWL_WORKING_WORD (cards),
    DRAWL_WORKING_WORD (take_bytes),
    DRAWL_WORKING_WORD (takes_on_card),
    DRAWL_WORKING_WORD (buffer),
    DRAWL_WORKING_WORD (buffer_frames),
    DRAWL_WORKING_WORD (held_s),
    DRAWL_WORKING_WORD (empty_s),
    DRAWL_WORKING_WORD (write_speed),
    DRAWL_WORKING_WORD (foot_frames),
    DRAWL_WORKING_WORD (feet_frames),
    DRAWL_WORKING_WORD (metres),
    DRAWL_WORKING_WORD (film_m),
    DRAWL_WORKING_WORD (step_source),
    DRAWL_WORKING_WORD (magazine_feet),
    DRAWL_WORKING_WORD (magazine_s),
    DRAWL_WORKING_WORD (magazines),
    DRAWL_WORKING_WORD (takes_on_magazine),
};

const DrawlWorkingWord *
drawl_working_load_words (guint *n_words)
{
  *n_words = G_N_ELEMENTS (words);
  return words;
}
