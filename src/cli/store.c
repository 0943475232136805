/* SPDX-License-Identifier: GPL-3.0-or-later */

/* `drawl-cli store`: bytes of a frame, data rate, and what fits on a card. Megabits and megabytes
 * are decimal; data rates are those of picture and sound. */

#include "cli/call.h"
#include "cli/error.h"
#include "core/byte-size.h"
#include "core/codec-law.h"
#include "core/error.h"
#include "core/storage.h"
#include "core/text.h"
#include "core/timecode.h"

enum {
  WIDTH,
  HEIGHT,
  BITS,
  SAMPLING,
  FRAME_BYTES,
  MBPS,
  AT,
  CONSTANT_MBPS,
  LAW,
  RATE,
  CARD_BYTES,
  RESERVE,
  AUDIO_TRACKS,
  SECONDS,
  N_OPTIONS
};

#define BIT(option) (1u << (option))
#define SIDE_MAX 1000000
#define TRACKS_MAX 64

static const DrawlOption options[N_OPTIONS] = {
    [WIDTH] = {"width", 0, "W", N_ ("Uncompressed: width, pixels")},
    [HEIGHT] = {"height", 0, "H", N_ ("Uncompressed: height, pixels")},
    [BITS] = {"bits", 0, "B", N_ ("Uncompressed: bits a sample")},
    [SAMPLING] = {"sampling", 0, "S", N_ ("Uncompressed: 420, 422, 444 or mosaic")},
    [FRAME_BYTES] = {"frame-bytes", 0, "N", N_ ("Each frame takes so many bytes")},
    [MBPS] = {"mbps", 0, "M", N_ ("A data rate that grows with the rate: 10⁶ bit/s, at --at")},
    [AT] = {"at", 0, "R", N_ ("The rate at which --mbps is stated, frames a second")},
    [CONSTANT_MBPS] = {"constant-mbps", 0, "M",
                       N_ ("A data rate that is the same at every rate: 10⁶ bit/s")},
    [LAW] = {"law", 0, "ID", N_ ("A codec of an open standard, such as vc3-1235 or dpx-444-10")},
    [RATE] = {"rate", 0, "R", N_ ("Capture rate, frames a second")},
    [CARD_BYTES] = {"card-bytes", 0, "N", N_ ("Size of a card: bytes, or such as 256GB, 128GiB")},
    [RESERVE] = {"reserve", 0, "PCT", N_ ("Part of the card that stays empty, per cent")},
    [AUDIO_TRACKS] = {"audio-tracks", 0, "N", N_ ("Audio tracks, 48 kHz × 24 bit each")},
    [SECONDS] = {"seconds", 0, "S", N_ ("A take of so many seconds of real time")},
};

static const char *const second_units[] = {"s", NULL};
static const char *const percent_units[] = {"%", NULL};
static const char *const mbps_units[] = {"Mbit/s", NULL};

typedef struct {
  DrawlPayload payload;
  guint width, height;
} Picture;

/* ---- The picture: one of five forms ---- */

static gboolean
read_size (const DrawlCall *call, Picture *picture, GError **error)
{
  gint64 width, height;

  if (!drawl_call_whole (call, WIDTH, 1, SIDE_MAX, &width, error) ||
      !drawl_call_whole (call, HEIGHT, 1, SIDE_MAX, &height, error))
    return FALSE;
  picture->width = (guint)width;
  picture->height = (guint)height;
  return TRUE;
}

static gboolean
read_uncompressed (const DrawlCall *call, Picture *picture, GError **error)
{
  const char *sampling;
  gint64 bits;

  if (!read_size (call, picture, error) || !drawl_call_whole (call, BITS, 1, 64, &bits, error) ||
      !drawl_call_text (call, SAMPLING, &sampling, error))
    return FALSE;
  picture->payload.kind = DRAWL_PAYLOAD_UNCOMPRESSED;
  picture->payload.stored_bits = drawl_rational_whole (bits);
  if (drawl_sampling_parse (sampling, &picture->payload.sampling))
    return TRUE;

  g_autofree char *quoted = drawl_core_quote (sampling);
  g_autofree char *message =
      g_strdup_printf (_ ("“%s” is no sampling; 420, 422, 444 or mosaic is expected"), quoted);
  return drawl_call_refuse (call, SAMPLING, message, error);
}

static gboolean
read_fixed (const DrawlCall *call, Picture *picture, GError **error)
{
  picture->payload.kind = DRAWL_PAYLOAD_FIXED;
  return drawl_call_whole (call, FRAME_BYTES, 1, G_MAXINT64, &picture->payload.frame_bytes, error);
}

/* A data rate, above 0. */
static gboolean
read_mbps (const DrawlCall *call, guint option, Picture *picture, GError **error)
{
  if (!drawl_call_quantity (call, option, mbps_units, &picture->payload.mbps, error))
    return FALSE;
  return picture->payload.mbps.num > 0 ||
         drawl_call_refuse (call, option, _ ("is 0; a data rate above 0 is expected"), error);
}

static gboolean
read_scaling (const DrawlCall *call, Picture *picture, GError **error)
{
  picture->payload.kind = DRAWL_PAYLOAD_SCALING;
  return read_mbps (call, MBPS, picture, error) &&
         drawl_call_rate (call, AT, &picture->payload.at, error);
}

static gboolean
read_constant (const DrawlCall *call, Picture *picture, GError **error)
{
  picture->payload.kind = DRAWL_PAYLOAD_CONSTANT;
  return read_mbps (call, CONSTANT_MBPS, picture, error);
}

static gboolean
refuse_law (const DrawlCall *call, const char *id, GError **error)
{
  g_autofree char *quoted = drawl_core_quote (id);
  g_autoptr (GString) ids = g_string_new (NULL);
  guint n_laws;

  const DrawlCodecLaw *laws = drawl_codec_laws (&n_laws);
  for (guint i = 0; i < n_laws; i++)
    g_string_append_printf (ids, "%s%s", i > 0 ? ", " : "", laws[i].id);
  g_autofree char *message =
      g_strdup_printf (_ ("“%s” is no codec law; one of %s is expected"), quoted, ids->str);
  return drawl_call_refuse (call, LAW, message, error);
}

static gboolean
read_law (const DrawlCall *call, Picture *picture, GError **error)
{
  const DrawlCodecLaw *law = drawl_codec_law_find (call->values[LAW]);

  if (law == NULL)
    return refuse_law (call, call->values[LAW], error);
  picture->payload = law->law;
  picture->width = law->law.width;
  picture->height = law->law.height;

  gboolean size_given = drawl_call_given (call, BIT (WIDTH) | BIT (HEIGHT)) != 0;
  return (law->law.width != 0 && !size_given) || read_size (call, picture, error);
}

/* A form is told by any of its own options; width and height belong to two. */
static const struct {
  guint own;  /* options of this form alone */
  guint also; /* others that it takes */
  gboolean (*read) (const DrawlCall *call, Picture *picture, GError **error);
} forms[] = {
    {BIT (BITS) | BIT (SAMPLING), BIT (WIDTH) | BIT (HEIGHT), read_uncompressed},
    {BIT (FRAME_BYTES), 0, read_fixed},
    {BIT (MBPS) | BIT (AT), 0, read_scaling},
    {BIT (CONSTANT_MBPS), 0, read_constant},
    {BIT (LAW), BIT (WIDTH) | BIT (HEIGHT), read_law},
};

#define PICTURE_OPTIONS                                                                            \
  (BIT (WIDTH) | BIT (HEIGHT) | BIT (BITS) | BIT (SAMPLING) | BIT (FRAME_BYTES) | BIT (MBPS) |     \
   BIT (AT) | BIT (CONSTANT_MBPS) | BIT (LAW))

static gboolean
read_picture (const DrawlCall *call, Picture *picture, GError **error)
{
  guint given = drawl_call_given (call, PICTURE_OPTIONS);

  for (gsize i = 0; i < G_N_ELEMENTS (forms); i++)
    if ((given & forms[i].own) != 0 && (given & ~(forms[i].own | forms[i].also)) == 0)
      return forms[i].read (call, picture, error);

  g_autofree char *names = drawl_call_option_names (call, given);
  g_autofree char *message = g_strdup_printf (
      _ ("%s; one form of picture is expected: --width, --height, --bits and --sampling, or "
         "--frame-bytes, or --mbps and --at, or --constant-mbps, or --law"),
      given == 0 ? _ ("nothing is given") : _ ("not one form, or not all of it"));
  return drawl_cli_refuse (error, DRAWL_CLI_ERROR_QUESTION, given == 0 ? _ ("picture") : names,
                           message);
}

/* ---- The card and the take ---- */

typedef struct {
  DrawlCardLoad load;
  gint64 frames; /* of the take; 0 when none was given */
} Take;

static gboolean
read_card (const DrawlCall *call, DrawlCardLoad *load, GError **error)
{
  GError *reason = NULL;
  gint64 usable;

  load->reserve_percent = drawl_rational_whole (0);
  if (!drawl_call_has (call, CARD_BYTES))
    return !drawl_call_has (call, RESERVE) ||
           drawl_call_refuse (call, RESERVE, _ ("of no card; --card-bytes is expected with it"),
                              error);
  if (!drawl_byte_size_parse (call->values[CARD_BYTES], &load->card_bytes, &reason))
    return drawl_call_refuse_for (call, CARD_BYTES, reason, error);
  if (drawl_call_has (call, RESERVE) &&
      !drawl_call_quantity (call, RESERVE, percent_units, &load->reserve_percent, error))
    return FALSE;
  return drawl_card_usable_bytes (load->card_bytes, load->reserve_percent, &usable, &reason) ||
         drawl_call_refuse_for (call, RESERVE, reason, error);
}

static gboolean
read_take (const DrawlCall *call, Take *take, GError **error)
{
  DrawlRational seconds, frames;
  gint64 tracks = 0;

  if (!drawl_call_rate (call, RATE, &take->load.rate, error) ||
      !read_card (call, &take->load, error))
    return FALSE;
  if (drawl_call_has (call, AUDIO_TRACKS) &&
      !drawl_call_whole (call, AUDIO_TRACKS, 0, TRACKS_MAX, &tracks, error))
    return FALSE;
  take->load.audio_tracks = (guint)tracks;

  if (!drawl_call_has (call, SECONDS))
    return TRUE;
  if (!drawl_call_quantity (call, SECONDS, second_units, &seconds, error))
    return FALSE;
  if (!drawl_rational_mul (seconds, take->load.rate, &frames))
    return drawl_call_refuse (
        call, SECONDS, _ ("too long to be counted exactly; a shorter time is expected"), error);
  take->frames = drawl_rational_ceil (frames);
  return TRUE;
}

/* ---- Answers ---- */

static double
mbps (DrawlRational bytes_s)
{
  return drawl_rational_to_double (bytes_s) * 8 / 1e6;
}

static gboolean
print_rates (const DrawlCall *call, const Picture *picture, Take *take, DrawlOutput *output,
             GError **error)
{
  const DrawlPayload *payload = &picture->payload;
  DrawlRational alone, with_sound;
  GError *reason = NULL;

  if (!drawl_payload_frame_bytes (payload, picture->width, picture->height, take->load.rate,
                                  &take->load.frame_bytes, &reason) ||
      !drawl_payload_data_rate (payload, picture->width, picture->height, take->load.rate, 0,
                                &alone, &reason) ||
      !drawl_payload_data_rate (payload, picture->width, picture->height, take->load.rate,
                                take->load.audio_tracks, &with_sound, &reason)) {
    g_autofree char *names =
        drawl_call_option_names (call, drawl_call_given (call, PICTURE_OPTIONS));
    return drawl_cli_refuse_for (error, DRAWL_CLI_ERROR_QUESTION, names, reason);
  }

  drawl_output_amount (output, "frame_bytes", _ ("a frame"), take->load.frame_bytes, _ ("bytes"));
  drawl_output_double (output, "data_rate_mbps", _ ("data rate"), mbps (with_sound), _ ("Mbit/s"));
  drawl_output_double (output, "data_rate_mb_s", "", mbps (with_sound) / 8, _ ("MB/s"));
  drawl_output_double (output, "picture_rate_mbps",
                       take->load.audio_tracks > 0 ? _ ("picture alone") : NULL, mbps (alone),
                       _ ("Mbit/s"));
  return TRUE;
}

static gboolean
print_take (const DrawlCall *call, const Take *take, DrawlOutput *output, GError **error)
{
  GError *reason = NULL;
  gint64 bytes;

  if (!drawl_take_bytes (&take->load, take->frames, &bytes, &reason))
    return drawl_call_refuse_for (call, SECONDS, reason, error);
  drawl_output_count (output, "frames", _ ("frames of the take"), take->frames, "");
  drawl_output_count (output, "take_bytes", _ ("the take"), bytes, _ ("bytes"));
  return TRUE;
}

static gboolean
print_card (const DrawlCall *call, const Take *take, DrawlOutput *output, GError **error)
{
  const DrawlCardLoad *load = &take->load;
  gint64 usable, frames, cards;
  DrawlRational seconds;
  GError *reason = NULL;

  if (!drawl_card_usable_bytes (load->card_bytes, load->reserve_percent, &usable, &reason) ||
      !drawl_card_frames (load, &frames, &reason) ||
      (drawl_call_has (call, SECONDS) &&
       !drawl_cards_spanning (load, take->frames, &cards, &reason)))
    return drawl_call_refuse_for (call, CARD_BYTES, reason, error);
  if (!drawl_timecode_seconds (load->rate, frames, &seconds))
    return drawl_call_refuse (
        call, CARD_BYTES, _ ("too large to be timed exactly; a smaller card is expected"), error);

  drawl_output_count (output, "card_bytes", _ ("card"), load->card_bytes, _ ("bytes"));
  drawl_output_count (output, "card_usable_bytes", _ ("to be filled"), usable, _ ("bytes"));
  drawl_output_count (output, "card_frames", _ ("frames on it"), frames, "");
  drawl_output_number (output, "card_s", _ ("real time on it"), seconds, _ ("s"));
  if (drawl_call_has (call, SECONDS))
    drawl_output_count (output, "cards", _ ("cards for the take"), cards, "");
  return TRUE;
}

static gboolean
run_store (const DrawlCall *call, DrawlOutput *output, GError **error)
{
  Picture picture = {0};
  Take take = {0};

  return read_picture (call, &picture, error) && read_take (call, &take, error) &&
         print_rates (call, &picture, &take, output, error) &&
         (!drawl_call_has (call, SECONDS) || print_take (call, &take, output, error)) &&
         (!drawl_call_has (call, CARD_BYTES) || print_card (call, &take, output, error));
}

const DrawlCommand drawl_command_store = {
    .name = "store",
    .summary = N_ ("Bytes of a frame, data rate, time on a card"),
    .help = N_ (
        "Give the picture in one form: --width, --height, --bits and --sampling; or\n"
        "--frame-bytes; or --mbps and --at; or --constant-mbps; or --law (with --width and\n"
        "--height where the law is not made for one size). 4:4:4 has 3 samples a pixel, 4:2:2\n"
        "2, 4:2:0 1.5, mosaic 1, packed and rounded up to whole bytes a frame.\n"
        "\n"
        "Data rates are those of picture and sound; Mbit/s are 10⁶ bits, MB/s 10⁶ bytes a second\n"
        "of real time. With --card-bytes it says what fits on a card, with --seconds what a take\n"
        "of that length needs; takes run on from card to card.\n"
        "\n"
        "Example: a minute of 10-bit 4:2:2 at 120 fps on cards of 256 GB, a tenth kept empty\n"
        "  drawl-cli store --width 1920 --height 1080 --bits 10 --sampling 422 \\\n"
        "    --rate 120 --card-bytes 256GB --reserve 10 --seconds 60"),
    .options = options,
    .n_options = N_OPTIONS,
    .run = run_store,
};
