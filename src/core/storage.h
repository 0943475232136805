/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Storage: what fits on a card, how many cards a list of takes fills, what a ring buffer holds, how
 * long an offload lasts. Bytes and frames are whole; gigabytes are decimal (10⁹) unless called GiB
 * (2³⁰). */

#include "core/payload.h"

typedef struct {
  gint64 card_bytes;             /* printed capacity */
  DrawlRational reserve_percent; /* stays empty, 0 ≤ reserve < 100 */
  DrawlRational frame_bytes;     /* picture, from drawl_payload_frame_bytes() */
  DrawlRate rate;                /* capture rate */
  guint audio_tracks;
} DrawlCardLoad;

/* Bytes of the card that may be filled: ⌊card · (100 − reserve) ÷ 100⌋. Errors:
 * DRAWL_CORE_ERROR_RANGE. */
gboolean drawl_card_usable_bytes (gint64 card_bytes, DrawlRational reserve_percent, gint64 *usable,
                                  GError **error);

/* Whole frames, sound included, that fit on one card. Errors: DRAWL_CORE_ERROR_RANGE, _OVERFLOW. */
gboolean drawl_card_frames (const DrawlCardLoad *load, gint64 *frames, GError **error);

/* Cards that @frames fill when takes may run on from card to card. Errors: _UNFIT when not one
 * frame fits. */
gboolean drawl_cards_spanning (const DrawlCardLoad *load, gint64 frames, gint64 *cards,
                               GError **error);

/* Bytes of @frames with sound, rounded up. */
gboolean drawl_take_bytes (const DrawlCardLoad *load, gint64 frames, gint64 *bytes, GError **error);

/* Fills cards with whole takes, in the order in which they are shot: a take that does not fit on
 * what is left begins a new card. A struct on the caller's stack; start with
 * drawl_card_fill_init(). */
typedef struct {
  gint64 usable_bytes; /* of each card */
  gint64 cards;        /* begun so far */
  gint64 left_bytes;   /* on the last of them */
} DrawlCardFill;

void drawl_card_fill_init (DrawlCardFill *fill, gint64 usable_bytes);
/* Adds @count takes of @bytes each. Errors: _UNFIT (a take is larger than a card), _OVERFLOW. On an
 * error nothing is added. */
gboolean drawl_card_fill_add (DrawlCardFill *fill, gint64 bytes, gint64 count, GError **error);
/* The same when takes may run on. */
gboolean drawl_card_fill_add_spanning (DrawlCardFill *fill, gint64 bytes, gint64 count,
                                       GError **error);

/* Ring buffer: whole frames it holds, how they divide about the trigger, and the seconds that
 * @frames need to be written out at @write_bytes_s. @pre_percent of the frames lie before the
 * trigger. */
typedef struct {
  gint64 frames;         /* held in all */
  gint64 pre_frames;     /* before the trigger */
  gint64 post_frames;    /* after it */
  DrawlRational held_s;  /* real time held */
  DrawlRational empty_s; /* time to write all of it out; 0/1 when no write speed is known */
} DrawlRingBuffer;

gboolean drawl_ring_buffer (gint64 buffer_bytes, DrawlRational frame_bytes, DrawlRate rate,
                            DrawlRational pre_percent, gint64 write_bytes_s, DrawlRingBuffer *out,
                            GError **error);

/* Time to copy @bytes at @bytes_s, @copies times one after the other. Errors: _RANGE, _OVERFLOW. */
gboolean drawl_offload_seconds (gint64 bytes, gint64 bytes_s, guint copies, DrawlRational *seconds,
                                GError **error);

/* Drives of @drive_bytes that @copies of @bytes fill; no two copies share a drive. Errors: _RANGE.
 */
gboolean drawl_drives_needed (gint64 bytes, gint64 drive_bytes, guint copies, gint64 *drives,
                              GError **error);
