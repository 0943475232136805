/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Bytes of a frame under the four kinds of law. Uncompressed frames are whole bytes: each row, or
 * the frame where rows are not aligned, is rounded up. Laws stated as a data rate in 10⁶ bit/s give
 * fractions of a byte. */

#include "core/payload.h"

#include "core/error.h"
#include "core/text.h"

#define BITS_MAX 64
#define ALIGN_MAX 65536
#define MEGABIT_BYTES 125000

static const struct {
  const char *id;
  DrawlRational samples; /* a pixel */
} samplings[] = {
    [DRAWL_SAMPLING_420] = {"420", {3, 2}},
    [DRAWL_SAMPLING_422] = {"422", {2, 1}},
    [DRAWL_SAMPLING_444] = {"444", {3, 1}},
    [DRAWL_SAMPLING_MOSAIC] = {"mosaic", {1, 1}},
};

gboolean
drawl_sampling_parse (const char *text, DrawlSampling *out)
{
  for (gsize i = 0; i < G_N_ELEMENTS (samplings); i++)
    if (g_str_equal (samplings[i].id, text)) {
      *out = (DrawlSampling)i;
      return TRUE;
    }
  return FALSE;
}

const char *
drawl_sampling_id (DrawlSampling sampling)
{
  return samplings[sampling].id;
}

DrawlRational
drawl_sampling_samples (DrawlSampling sampling)
{
  return samplings[sampling].samples;
}

/* ---- Laws that make sense ---- */

static gboolean
refuse_law (const char *message, GError **error)
{
  g_set_error_literal (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_RANGE, message);
  return FALSE;
}

static gboolean
check_uncompressed (const DrawlPayload *payload, GError **error)
{
  DrawlRational most = drawl_rational_whole (BITS_MAX);

  if ((gsize)payload->sampling >= G_N_ELEMENTS (samplings))
    return refuse_law (_ ("the sampling is unknown; 420, 422, 444 or mosaic is expected"), error);
  if (payload->stored_bits.num <= 0 || drawl_rational_compare (payload->stored_bits, most) > 0)
    return refuse_law (_ ("the bits a sample takes must be above 0 and at most 64"), error);
  if (payload->row_align > ALIGN_MAX)
    return refuse_law (_ ("rows can be filled to at most 65536 bytes"), error);
  return TRUE;
}

static gboolean
check_fixed (const DrawlPayload *payload, GError **error)
{
  if (payload->frame_bytes <= 0)
    return refuse_law (_ ("the bytes of a frame must be above 0"), error);
  if ((payload->width == 0) != (payload->height == 0))
    return refuse_law (_ ("a law for one size needs both its width and its height"), error);
  return TRUE;
}

static gboolean
check_scaling (const DrawlPayload *payload, GError **error)
{
  if (payload->mbps.num <= 0)
    return refuse_law (_ ("the data rate must be above 0"), error);
  if (!drawl_rate_valid (payload->at))
    return refuse_law (_ ("the rate at which the data rate is stated must be above 0"), error);
  return TRUE;
}

static gboolean
check_constant (const DrawlPayload *payload, GError **error)
{
  if (payload->mbps.num <= 0)
    return refuse_law (_ ("the data rate must be above 0"), error);
  return TRUE;
}

/* ---- Bytes of a frame ---- */

static gboolean
refuse_overflow (GError **error)
{
  g_set_error_literal (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_OVERFLOW,
                       _ ("the bytes cannot be counted exactly; smaller figures are expected"));
  return FALSE;
}

/* Rounds @bytes up to a whole multiple of @step. */
static gboolean
fill_up (DrawlRational bytes, guint step, DrawlRational *filled)
{
  DrawlRational steps;
  return drawl_rational_div (bytes, drawl_rational_whole (step), &steps) &&
         drawl_rational_mul (drawl_rational_whole (drawl_rational_ceil (steps)),
                             drawl_rational_whole (step), filled);
}

static gboolean
uncompressed_bytes (const DrawlPayload *payload, guint width, guint height, DrawlRate rate,
                    DrawlRational *bytes, GError **error)
{
  if (width == 0 || height == 0)
    return refuse_law (
        _ ("a picture without pixels has no bytes; a width and a height are expected"), error);

  DrawlRational bits, row, rows = drawl_rational_whole (height);
  gboolean aligned = payload->row_align > 0;
  gboolean fits = drawl_rational_mul (drawl_sampling_samples (payload->sampling),
                                      payload->stored_bits, &bits) &&
                  drawl_rational_mul (bits, drawl_rational_whole (width), &bits) &&
                  drawl_rational_mul (bits, DRAWL_RATIONAL_INIT (1, 8), &row) &&
                  (!aligned || fill_up (row, payload->row_align, &row)) &&
                  drawl_rational_mul (row, rows, bytes) && fill_up (*bytes, 1, bytes);
  return fits || refuse_overflow (error);
}

static gboolean
fixed_bytes (const DrawlPayload *payload, guint width, guint height, DrawlRate rate,
             DrawlRational *bytes, GError **error)
{
  if (payload->width != 0 && (payload->width != width || payload->height != height)) {
    g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_UNFIT,
                 _ ("this codec knows the size %u × %u only, not %u × %u"), payload->width,
                 payload->height, width, height);
    return FALSE;
  }
  *bytes = drawl_rational_whole (payload->frame_bytes);
  return TRUE;
}

static gboolean
bytes_at (DrawlRational mbps, DrawlRate rate, DrawlRational *bytes, GError **error)
{
  return (drawl_rational_div (mbps, rate, bytes) &&
          drawl_rational_mul (*bytes, drawl_rational_whole (MEGABIT_BYTES), bytes)) ||
         refuse_overflow (error);
}

static gboolean
scaling_bytes (const DrawlPayload *payload, guint width, guint height, DrawlRate rate,
               DrawlRational *bytes, GError **error)
{
  return bytes_at (payload->mbps, payload->at, bytes, error);
}

static gboolean
constant_bytes (const DrawlPayload *payload, guint width, guint height, DrawlRate rate,
                DrawlRational *bytes, GError **error)
{
  if (!drawl_rate_valid (rate))
    return refuse_law (_ ("a constant data rate gives a frame no bytes without a rate above 0"),
                       error);
  return bytes_at (payload->mbps, rate, bytes, error);
}

static const struct {
  gboolean (*check) (const DrawlPayload *payload, GError **error);
  gboolean (*frame_bytes) (const DrawlPayload *payload, guint width, guint height, DrawlRate rate,
                           DrawlRational *bytes, GError **error);
} kinds[] = {
    [DRAWL_PAYLOAD_UNCOMPRESSED] = {check_uncompressed, uncompressed_bytes},
    [DRAWL_PAYLOAD_FIXED] = {check_fixed, fixed_bytes},
    [DRAWL_PAYLOAD_SCALING] = {check_scaling, scaling_bytes},
    [DRAWL_PAYLOAD_CONSTANT] = {check_constant, constant_bytes},
};

gboolean
drawl_payload_check (const DrawlPayload *payload, GError **error)
{
  if ((gsize)payload->kind >= G_N_ELEMENTS (kinds))
    return refuse_law (_ ("the kind of the law is unknown"), error);
  return kinds[payload->kind].check (payload, error);
}

gboolean
drawl_payload_frame_bytes (const DrawlPayload *payload, guint width, guint height, DrawlRate rate,
                           DrawlRational *bytes, GError **error)
{
  DrawlRational picture;

  if (!drawl_payload_check (payload, error) ||
      !kinds[payload->kind].frame_bytes (payload, width, height, rate, &picture, error))
    return FALSE;
  return drawl_rational_add (picture, drawl_rational_whole (payload->overhead_bytes), bytes) ||
         refuse_overflow (error);
}

gboolean
drawl_payload_data_rate (const DrawlPayload *payload, guint width, guint height, DrawlRate rate,
                         guint audio_tracks, DrawlRational *bytes_s, GError **error)
{
  DrawlRational picture, sound = drawl_rational_whole (DRAWL_AUDIO_BYTES_S * (gint64)audio_tracks);

  if (!drawl_rate_valid (rate))
    return refuse_law (_ ("a data rate needs a capture rate above 0"), error);
  if (!drawl_payload_frame_bytes (payload, width, height, rate, &picture, error))
    return FALSE;
  return (drawl_rational_mul (picture, rate, bytes_s) &&
          drawl_rational_add (*bytes_s, sound, bytes_s)) ||
         refuse_overflow (error);
}
