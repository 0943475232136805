/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Cards, ring buffers, offloads and drives. Bytes, frames, cards and drives are whole and never
 * below 0; what must hold something is rounded up, what is held is rounded down. A frame's bytes
 * stay exact fractions until its take ends; sound is spread over the frames (144,000 bytes a second
 * and track). */

#include "core/storage.h"

#include "core/error.h"
#include "core/text.h"

static gboolean
refuse_range (const char *message, GError **error)
{
  g_set_error_literal (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_RANGE, message);
  return FALSE;
}

static gboolean
refuse_unfit (const char *message, GError **error)
{
  g_set_error_literal (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_UNFIT, message);
  return FALSE;
}

static gboolean
refuse_overflow (GError **error)
{
  g_set_error_literal (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_OVERFLOW,
                       _ ("the sum does not fit; smaller figures are expected"));
  return FALSE;
}

/* @a ÷ @b rounded up, for whole numbers ≥ 0. */
static gint64
ceil_div (gint64 a, gint64 b)
{
  return a / b + (a % b > 0);
}

/* ---- Cards ---- */

gboolean
drawl_card_usable_bytes (gint64 card_bytes, DrawlRational reserve_percent, gint64 *usable,
                         GError **error)
{
  DrawlRational hundred = drawl_rational_whole (100), part, bytes;

  if (card_bytes <= 0)
    return refuse_range (_ ("a card must hold more than 0 bytes"), error);
  if (reserve_percent.num < 0 || drawl_rational_compare (reserve_percent, hundred) >= 0)
    return refuse_range (_ ("the reserve must be at least 0 % and below 100 %"), error);

  if (!drawl_rational_sub (hundred, reserve_percent, &part) ||
      !drawl_rational_div (part, hundred, &part) ||
      !drawl_rational_mul (part, drawl_rational_whole (card_bytes), &bytes))
    return refuse_overflow (error);
  *usable = drawl_rational_floor (bytes);
  return TRUE;
}

/* Bytes of one frame with its share of the sound. */
static gboolean
loaded_frame_bytes (const DrawlCardLoad *load, DrawlRational *bytes, GError **error)
{
  DrawlRational sound = drawl_rational_whole (DRAWL_AUDIO_BYTES_S * (gint64)load->audio_tracks);

  if (load->frame_bytes.num <= 0)
    return refuse_range (_ ("a frame must take more than 0 bytes"), error);
  if (!drawl_rate_valid (load->rate))
    return refuse_range (_ ("a capture rate above 0 is expected"), error);
  return (drawl_rational_div (sound, load->rate, &sound) &&
          drawl_rational_add (load->frame_bytes, sound, bytes)) ||
         refuse_overflow (error);
}

gboolean
drawl_card_frames (const DrawlCardLoad *load, gint64 *frames, GError **error)
{
  DrawlRational frame, held;
  gint64 usable;

  if (!drawl_card_usable_bytes (load->card_bytes, load->reserve_percent, &usable, error) ||
      !loaded_frame_bytes (load, &frame, error))
    return FALSE;
  if (!drawl_rational_div (drawl_rational_whole (usable), frame, &held))
    return refuse_overflow (error);
  *frames = drawl_rational_floor (held);
  return TRUE;
}

gboolean
drawl_cards_spanning (const DrawlCardLoad *load, gint64 frames, gint64 *cards, GError **error)
{
  gint64 on_each;

  if (frames < 0)
    return refuse_range (_ ("the frames must be 0 or more"), error);
  if (!drawl_card_frames (load, &on_each, error))
    return FALSE;
  if (on_each == 0)
    return refuse_unfit (_ ("not one frame fits on the card"), error);
  *cards = ceil_div (frames, on_each);
  return TRUE;
}

gboolean
drawl_take_bytes (const DrawlCardLoad *load, gint64 frames, gint64 *bytes, GError **error)
{
  DrawlRational frame, all;

  if (frames < 0)
    return refuse_range (_ ("the frames must be 0 or more"), error);
  if (!loaded_frame_bytes (load, &frame, error))
    return FALSE;
  if (!drawl_rational_mul (frame, drawl_rational_whole (frames), &all))
    return refuse_overflow (error);
  *bytes = drawl_rational_ceil (all);
  return TRUE;
}

/* ---- Filling cards in the order of shooting ---- */

void
drawl_card_fill_init (DrawlCardFill *fill, gint64 usable_bytes)
{
  *fill = (DrawlCardFill){.usable_bytes = usable_bytes};
}

static gboolean
check_takes (const DrawlCardFill *fill, gint64 bytes, gint64 count, GError **error)
{
  if (bytes < 0 || count < 0)
    return refuse_range (_ ("the bytes and the number of takes must be 0 or more"), error);
  if (fill->usable_bytes <= 0 && bytes > 0 && count > 0)
    return refuse_unfit (_ ("nothing fits on the card"), error);
  return TRUE;
}

/* Begins @more cards, the last of which has @left bytes left. */
static gboolean
begin_cards (DrawlCardFill *fill, gint64 more, gint64 left, GError **error)
{
  if (more > G_MAXINT64 - fill->cards)
    return refuse_overflow (error);
  fill->cards += more;
  fill->left_bytes = left;
  return TRUE;
}

gboolean
drawl_card_fill_add (DrawlCardFill *fill, gint64 bytes, gint64 count, GError **error)
{
  if (!check_takes (fill, bytes, count, error))
    return FALSE;
  if (bytes > fill->usable_bytes && count > 0)
    return refuse_unfit (_ ("a take is longer than a card holds"), error);
  if (bytes == 0 || count == 0)
    return TRUE;

  gint64 here = MIN (count, fill->left_bytes / bytes), rest = count - here;
  if (rest == 0) {
    fill->left_bytes -= here * bytes;
    return TRUE;
  }
  gint64 on_each = fill->usable_bytes / bytes, more = ceil_div (rest, on_each);
  gint64 on_last = rest - (more - 1) * on_each;
  return begin_cards (fill, more, fill->usable_bytes - on_last * bytes, error);
}

gboolean
drawl_card_fill_add_spanning (DrawlCardFill *fill, gint64 bytes, gint64 count, GError **error)
{
  if (!check_takes (fill, bytes, count, error))
    return FALSE;
  if (bytes == 0 || count == 0)
    return TRUE;
  if (bytes > G_MAXINT64 / count)
    return refuse_overflow (error);

  gint64 here = MIN (bytes * count, fill->left_bytes), rest = bytes * count - here;
  if (rest == 0) {
    fill->left_bytes -= here;
    return TRUE;
  }
  gint64 more = ceil_div (rest, fill->usable_bytes);
  gint64 on_last = rest - (more - 1) * fill->usable_bytes;
  return begin_cards (fill, more, fill->usable_bytes - on_last, error);
}

/* ---- Ring buffer ---- */

static gboolean
check_ring (gint64 buffer_bytes, DrawlRational frame_bytes, DrawlRate rate,
            DrawlRational pre_percent, gint64 write_bytes_s, GError **error)
{
  if (buffer_bytes <= 0 || frame_bytes.num <= 0)
    return refuse_range (_ ("the buffer and a frame must take more than 0 bytes"), error);
  if (!drawl_rate_valid (rate))
    return refuse_range (_ ("a capture rate above 0 is expected"), error);
  if (pre_percent.num < 0 || drawl_rational_compare (pre_percent, drawl_rational_whole (100)) > 0)
    return refuse_range (_ ("the part before the trigger must be from 0 % to 100 %"), error);
  if (write_bytes_s < 0)
    return refuse_range (_ ("the write speed must be 0 or more"), error);
  return TRUE;
}

gboolean
drawl_ring_buffer (gint64 buffer_bytes, DrawlRational frame_bytes, DrawlRate rate,
                   DrawlRational pre_percent, gint64 write_bytes_s, DrawlRingBuffer *out,
                   GError **error)
{
  DrawlRingBuffer ring = {.empty_s = {0, 1}};
  DrawlRational held, pre, bytes;

  if (!check_ring (buffer_bytes, frame_bytes, rate, pre_percent, write_bytes_s, error))
    return FALSE;
  if (!drawl_rational_div (drawl_rational_whole (buffer_bytes), frame_bytes, &held))
    return refuse_overflow (error);
  ring.frames = drawl_rational_floor (held);
  if (ring.frames == 0)
    return refuse_unfit (_ ("not one frame fits in the buffer"), error);

  DrawlRational frames = drawl_rational_whole (ring.frames);
  if (!drawl_rational_mul (frames, pre_percent, &pre) ||
      !drawl_rational_div (pre, drawl_rational_whole (100), &pre) ||
      !drawl_rational_div (frames, rate, &ring.held_s) ||
      !drawl_rational_mul (frames, frame_bytes, &bytes) ||
      (write_bytes_s > 0 &&
       !drawl_rational_div (bytes, drawl_rational_whole (write_bytes_s), &ring.empty_s)))
    return refuse_overflow (error);
  ring.pre_frames = drawl_rational_floor (pre);
  ring.post_frames = ring.frames - ring.pre_frames;
  *out = ring;
  return TRUE;
}

/* ---- Offload ---- */

gboolean
drawl_offload_seconds (gint64 bytes, gint64 bytes_s, guint copies, DrawlRational *seconds,
                       GError **error)
{
  if (bytes < 0)
    return refuse_range (_ ("the bytes must be 0 or more"), error);
  if (bytes_s <= 0)
    return refuse_range (_ ("the offload speed must be above 0"), error);

  DrawlRational once;
  return (drawl_rational_make (bytes, bytes_s, &once) &&
          drawl_rational_mul (once, drawl_rational_whole (copies), seconds)) ||
         refuse_overflow (error);
}

gboolean
drawl_drives_needed (gint64 bytes, gint64 drive_bytes, guint copies, gint64 *drives, GError **error)
{
  if (bytes < 0)
    return refuse_range (_ ("the bytes must be 0 or more"), error);
  if (drive_bytes <= 0)
    return refuse_range (_ ("a drive must hold more than 0 bytes"), error);

  gint64 of_one_copy = ceil_div (bytes, drive_bytes);
  if (copies > 0 && of_one_copy > G_MAXINT64 / (gint64)copies)
    return refuse_range (_ ("so many drives cannot be counted"), error);
  *drives = of_one_copy * (gint64)copies;
  return TRUE;
}
