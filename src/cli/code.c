/* SPDX-License-Identifier: GPL-3.0-or-later */

/* `drawl-cli code`: frame number to timecode and back, and the exact length in seconds. */

#include "cli/call.h"
#include "core/text.h"
#include "core/timecode.h"

enum { RATE, DROP, FRAMES, CODE, N_OPTIONS };

static const DrawlOption options[N_OPTIONS] = {
    [RATE] = {"rate", 0, "R", N_ ("Rate, frames a second")},
    [DROP] = {"drop", 0, NULL, N_ ("Count drop-frame (29.97 and 59.94)")},
    [FRAMES] = {"frames", 0, "N", N_ ("A number of frames, the first is 0")},
    [CODE] = {"code", 0, "HH:MM:SS:FF", N_ ("A timecode; “;” before the frames needs --drop")},
};

/* The frame that was given, as a number or as a code. */
static gboolean
read_frame (const DrawlCall *call, DrawlRate rate, gint64 *frame, GError **error)
{
  GError *reason = NULL;
  guint given;

  if (!drawl_call_only (call, 1u << FRAMES | 1u << CODE, &given, error))
    return FALSE;
  if (given == FRAMES)
    return drawl_call_whole (call, FRAMES, 0, G_MAXINT64, frame, error);
  return drawl_timecode_parse (rate, drawl_call_has (call, DROP), call->values[CODE], frame,
                               &reason) ||
         drawl_call_refuse_for (call, CODE, reason, error);
}

static gboolean
run_code (const DrawlCall *call, DrawlOutput *output, GError **error)
{
  gboolean drop = drawl_call_has (call, DROP);
  char code[DRAWL_TIMECODE_SIZE];
  GError *reason = NULL;
  DrawlRational seconds;
  DrawlRate rate;
  gint64 frame;

  if (!drawl_call_rate (call, RATE, &rate, error))
    return FALSE;
  if (!drawl_timecode_check (rate, drop, &reason))
    return drawl_call_refuse_for (call, drop ? DROP : RATE, reason, error);
  if (!read_frame (call, rate, &frame, error) ||
      !drawl_timecode_format (rate, drop, frame, code, error))
    return FALSE;
  if (!drawl_timecode_seconds (rate, frame, &seconds))
    return drawl_call_refuse (
        call, FRAMES, _ ("too many to be timed exactly; a smaller number is expected"), error);

  drawl_output_count (output, "frames", _ ("frames"), frame, "");
  drawl_output_text (output, "code", _ ("timecode"), code);
  drawl_output_fraction (output, "seconds_exact", _ ("exactly"), seconds, _ ("s"));
  drawl_output_number (output, "seconds_s", _ ("seconds"), seconds, _ ("s"));
  return TRUE;
}

const DrawlCommand drawl_command_code = {
    .name = "code",
    .summary = N_ ("Frames to timecode and back"),
    .help = N_ (
        "Give the rate, and either --frames or --code. Frame 0 is 00:00:00:00; codes wrap after\n"
        "24 hours. Drop codes are written with “;” before the frames. SMPTE ST 12-1.\n"
        "\n"
        "seconds is the real length of so many frames at the rate (R, frames a second), exactly\n"
        "and as a number.\n"
        "\n"
        "Example: the code of frame 1800 at 29.97, drop-frame\n"
        "  drawl-cli code --rate 29.97 --drop --frames 1800"),
    .options = options,
    .n_options = N_OPTIONS,
    .run = run_code,
};
