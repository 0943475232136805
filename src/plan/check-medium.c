/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Whether one take fits on what records it: the card (its speed and its room), the ring buffer, the
 * longest magazine. With a ring buffer the picture goes there first, so the card need not be as
 * fast as the picture, but the take must not be longer than the buffer. */

#include "core/storage.h"
#include "plan/check-private.h"

/* Real time of @frames; 0 when it cannot be said. */
static DrawlRational
run_time (gint64 frames, DrawlRate rate)
{
  DrawlRational seconds;
  return drawl_rational_div (drawl_rational_whole (frames), rate, &seconds)
             ? seconds
             : drawl_rational_whole (0);
}

static void
look_at_magazines (const DrawlCheckContext *context, guint size, DrawlRate rate, gint64 take_frames,
                   DrawlMedium *medium)
{
  const DrawlBody *body = context->body;
  gint64 longest = 0, frames;

  if (body->n_magazines == 0)
    return;
  for (guint i = 0; i < body->n_magazines; i++)
    if (drawl_footage_frames_on_feet (body->sizes[size].gauge, body->magazines[i].feet, &frames))
      longest = MAX (longest, frames);
  medium->magazine_s = run_time (longest, rate);
  medium->magazine_too_short = longest < take_frames;
}

static void
look_at_buffer (const DrawlCheckContext *context, DrawlRational frame_bytes, DrawlRate rate,
                gint64 take_frames, DrawlMedium *medium)
{
  const DrawlBody *body = context->body;
  DrawlRingBuffer buffer;

  if (drawl_ring_buffer (body->buffer_bytes, frame_bytes, rate, body->buffer_pre_percent,
                         body->buffer_write_bytes_s, &buffer, NULL)) {
    medium->buffer_s = buffer.held_s;
    medium->buffer_too_short = buffer.frames < take_frames;
  } else {
    medium->buffer_too_short = TRUE;
  }
}

static void
look_at_card (const DrawlCheckContext *context, DrawlRational frame_bytes, DrawlRate rate,
              gint64 take_frames, DrawlMedium *medium)
{
  const DrawlBodyCard *card = &context->body->cards[context->card];
  DrawlRational guaranteed = drawl_rational_whole (card->write_bytes_s);
  DrawlCardLoad load = {
      .card_bytes = card->bytes,
      .reserve_percent = context->question->reserve_percent,
      .frame_bytes = frame_bytes,
      .rate = rate,
      .audio_tracks = context->question->audio_tracks,
  };
  gint64 frames = 0;

  medium->card_too_slow = context->body->buffer_bytes == 0 &&
                          drawl_rational_compare (medium->data_rate, guaranteed) > 0;
  medium->card_too_small = !drawl_card_frames (&load, &frames, NULL) || frames < take_frames;
  medium->card_s = run_time (frames, rate);
}

static void
look_at_data (const DrawlCheckContext *context, guint size, guint codec, DrawlRate rate,
              gint64 take_frames, DrawlMedium *medium)
{
  const DrawlBody *body = context->body;
  const DrawlBodySize *at = &body->sizes[size];
  const DrawlPayload *payload = &body->codecs[codec].payload;
  DrawlRational frame_bytes;

  if (!drawl_payload_frame_bytes (payload, at->width, at->height, rate, &frame_bytes, NULL) ||
      !drawl_payload_data_rate (payload, at->width, at->height, rate,
                                context->question->audio_tracks, &medium->data_rate, NULL)) {
    /* More than 64 bits can count is more than any card takes. */
    medium->card_too_slow = TRUE;
    medium->data_rate = drawl_rational_whole (G_MAXINT64);
    return;
  }
  if (body->buffer_bytes > 0)
    look_at_buffer (context, frame_bytes, rate, take_frames, medium);
  if (context->card >= 0)
    look_at_card (context, frame_bytes, rate, take_frames, medium);
}

gboolean
drawl_check_medium (const DrawlCheckContext *context, guint size, guint codec, DrawlRate rate,
                    gint64 take_frames, DrawlMedium *medium)
{
  DrawlRational none = drawl_rational_whole (0);

  *medium = (DrawlMedium){FALSE, FALSE, FALSE, FALSE, none, none, none, none};
  if (context->body->kind == DRAWL_BODY_FILM)
    look_at_magazines (context, size, rate, take_frames, medium);
  else
    look_at_data (context, size, codec, rate, take_frames, medium);
  return !medium->card_too_slow && !medium->buffer_too_short && !medium->card_too_small &&
         !medium->magazine_too_short;
}
