/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The load of a shot: bytes on cards, or feet through the gate. Bytes and frames are whole, times
 * in seconds of real time, all exact. */

#include "plan/shot-load.h"

#include "core/footage.h"

const DrawlBodyMagazine *
drawl_body_longest_magazine (const DrawlBody *body)
{
  const DrawlBodyMagazine *longest = NULL;

  for (guint i = 0; i < body->n_magazines; i++)
    if (longest == NULL || drawl_rational_compare (body->magazines[i].feet, longest->feet) > 0)
      longest = &body->magazines[i];
  return longest;
}

gint64
drawl_body_buffer_write_speed (const DrawlBody *body, int card)
{
  if (body->buffer_write_bytes_s > 0)
    return body->buffer_write_bytes_s;
  return card >= 0 ? body->cards[card].write_bytes_s : 0;
}

/* Magazines for all takes, each take whole. */
static void
reckon_magazines (DrawlShotLoad *load, gint64 magazine_frames, guint takes)
{
  gint64 on_each = load->take_frames > 0 ? magazine_frames / load->take_frames : 0;

  if (on_each > 0)
    load->magazines = (takes + on_each - 1) / on_each;
}

static void
reckon_film (DrawlShotLoad *load, const DrawlCheckQuestion *question, guint takes)
{
  const DrawlGauge *gauge = question->body->sizes[question->size].gauge;
  const DrawlBodyMagazine *magazine = drawl_body_longest_magazine (question->body);
  gint64 frames;

  if (gauge == NULL || !drawl_footage_feet (gauge, load->take_frames, &load->take_feet))
    return;
  load->known = TRUE;
  if (magazine == NULL || !drawl_footage_frames_on_feet (gauge, magazine->feet, &frames))
    return;
  drawl_rational_div (drawl_rational_whole (frames), question->rate, &load->magazine_s);
  reckon_magazines (load, frames, takes);
}

/* Cards for all takes, whole or running on. */
static void
reckon_cards (DrawlShotLoad *load, gint64 usable_bytes, guint takes, gboolean takes_span)
{
  DrawlCardFill fill;
  gboolean fits;

  drawl_card_fill_init (&fill, usable_bytes);
  fits = takes_span ? drawl_card_fill_add_spanning (&fill, load->take_bytes, takes, NULL)
                    : drawl_card_fill_add (&fill, load->take_bytes, takes, NULL);
  load->cards = fits ? fill.cards : 0;
}

static void
reckon_card (DrawlShotLoad *load, const DrawlCheckQuestion *question, const DrawlCardLoad *on_card,
             guint takes, gboolean takes_span)
{
  gint64 usable;

  if (on_card->card_bytes == 0 || !drawl_card_frames (on_card, &load->card_frames, NULL) ||
      !drawl_card_usable_bytes (on_card->card_bytes, on_card->reserve_percent, &usable, NULL))
    return;
  drawl_rational_div (drawl_rational_whole (load->card_frames), question->rate, &load->card_s);
  reckon_cards (load, usable, takes, takes_span);
}

static void
reckon_digital (DrawlShotLoad *load, const DrawlCheckQuestion *question, int card, guint takes,
                gboolean takes_span)
{
  const DrawlBody *body = question->body;
  const DrawlBodySize *size = &body->sizes[question->size];
  const DrawlPayload *payload = &body->codecs[question->codec].payload;
  DrawlCardLoad on_card = {
      .card_bytes = card >= 0 ? body->cards[card].bytes : 0,
      .reserve_percent = question->reserve_percent,
      .rate = question->rate,
      .audio_tracks = question->audio_tracks,
  };

  if (!drawl_payload_frame_bytes (payload, size->width, size->height, question->rate,
                                  &load->frame_bytes, NULL) ||
      !drawl_payload_data_rate (payload, size->width, size->height, question->rate,
                                question->audio_tracks, &load->bytes_s, NULL))
    return;
  on_card.frame_bytes = load->frame_bytes;
  if (!drawl_take_bytes (&on_card, load->take_frames, &load->take_bytes, NULL))
    return;
  load->known = TRUE;
  reckon_card (load, question, &on_card, takes, takes_span);
  if (body->buffer_bytes > 0)
    drawl_ring_buffer (body->buffer_bytes, load->frame_bytes, question->rate,
                       body->buffer_pre_percent, drawl_body_buffer_write_speed (body, card),
                       &load->buffer, NULL);
}

void
drawl_shot_load_reckon (DrawlShotLoad *load, const DrawlCheckQuestion *question,
                        const DrawlCheck *check, guint takes, gboolean takes_span)
{
  DrawlRational none = drawl_rational_whole (0);

  *load = (DrawlShotLoad){
      .take_s = question->take_s,
      .take_frames = question->take_frames,
      .frame_bytes = none,
      .bytes_s = none,
      .card_s = none,
      .buffer = {.held_s = none, .empty_s = none},
      .take_feet = none,
      .magazine_s = none,
  };
  if (question->body == NULL || question->size < 0)
    return;
  if (question->body->kind == DRAWL_BODY_FILM)
    reckon_film (load, question, takes);
  else if (question->codec >= 0)
    reckon_digital (load, question, check->card, takes, takes_span);
}
