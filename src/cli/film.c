/* SPDX-License-Identifier: GPL-3.0-or-later */

/* `drawl-cli film`: length of film in frames, feet, metres and time. The length that was given
 * stays as given: 400 feet are 400 feet although, on 35 mm with three perforations, a frame ends a
 * little before. Frames are whole: those that lie on a length, or the fewest that cover a time.
 * Physical metres are those of the same film, measured along it. */

#include "cli/call.h"
#include "core/error.h"
#include "core/footage.h"
#include "core/text.h"
#include "core/timecode.h"

enum { GAUGE, RATE, FEET, METRES, FRAMES, SECONDS, N_OPTIONS };

#define LENGTHS (1u << FEET | 1u << METRES | 1u << FRAMES | 1u << SECONDS)

static const DrawlOption options[N_OPTIONS] = {
    [GAUGE] = {"gauge", 0, "G", N_ ("Gauge: 8, s8, 16, 35-4, 35-3, 35-2, 65-5, 65-8 or 65-15")},
    [RATE] = {"rate", 0, "R", N_ ("Capture rate, frames a second")},
    [FEET] = {"feet", 0, "F", N_ ("A length in feet")},
    [METRES] = {"metres", 0, "M", N_ ("A length in metres")},
    [FRAMES] = {"frames", 0, "N", N_ ("A number of frames")},
    [SECONDS] = {"seconds", 0, "S", N_ ("A time in seconds")},
};

static const char *const units[N_OPTIONS][3] = {
    [FEET] = {"feet", "ft"},
    [METRES] = {"metres", "m"},
    [FRAMES] = {NULL},
    [SECONDS] = {"s"},
};

static const DrawlRational foot_metres = {381, 1250}; /* 0.3048 m */

typedef struct {
  const DrawlGauge *gauge;
  DrawlRate rate;
  gint64 frames;  /* whole */
  gint64 counted; /* frames that the counter shows */
  DrawlRational feet, metres, run_s;
  DrawlRational film; /* the length in frames, whole or not */
  DrawlRational physical_metres[DRAWL_N_PITCHES];
} Length;

static gboolean
read_gauge (const DrawlCall *call, const DrawlGauge **gauge, GError **error)
{
  g_autoptr (GString) ids = g_string_new (NULL);
  g_autofree char *message = NULL;
  const char *id = call->values[GAUGE];
  guint n_gauges;

  *gauge = id != NULL ? drawl_gauge_find (id) : NULL;
  if (*gauge != NULL)
    return TRUE;

  const DrawlGauge *gauges = drawl_gauges (&n_gauges);
  for (guint i = 0; i < n_gauges; i++)
    g_string_append_printf (ids, "%s%s", i > 0 ? ", " : "", gauges[i].id);
  if (id != NULL) {
    g_autofree char *quoted = drawl_core_quote (id);
    message = g_strdup_printf (_ ("“%s” is no gauge; one of %s is expected"), quoted, ids->str);
  } else {
    message = g_strdup_printf (_ ("is missing; one of %s is expected"), ids->str);
  }
  return drawl_call_refuse (call, GAUGE, message, error);
}

/* ---- From one length to all; FALSE when one does not fit ---- */

static gboolean
measure_frames (Length *length)
{
  length->counted = length->frames;
  length->film = drawl_rational_whole (length->frames);
  return drawl_footage_feet (length->gauge, length->frames, &length->feet) &&
         drawl_footage_metres (length->gauge, length->frames, &length->metres) &&
         drawl_timecode_seconds (length->rate, length->frames, &length->run_s);
}

static gboolean
measure_seconds (Length *length, DrawlRational seconds)
{
  DrawlRational frames;

  if (!drawl_rational_mul (seconds, length->rate, &frames))
    return FALSE;
  length->frames = drawl_rational_ceil (frames);
  gboolean fits = measure_frames (length);
  length->run_s = seconds;
  return fits;
}

/* The counter passes a foot mark with the length, not with the last whole frame before it. */
static gboolean
measure_feet (Length *length, DrawlRational feet)
{
  DrawlRational whole_feet;

  if (!drawl_rational_mul (feet, length->gauge->foot_frames, &length->film) ||
      !drawl_footage_frames_on_feet (length->gauge, feet, &length->frames) ||
      !drawl_footage_feet (length->gauge, length->frames, &whole_feet))
    return FALSE;
  gboolean mark_passed = drawl_rational_floor (whole_feet) < drawl_rational_floor (feet);
  length->counted = length->frames + mark_passed;
  length->feet = feet;
  return drawl_footage_feet (length->gauge, length->counted, &whole_feet) &&
         drawl_rational_mul (feet, foot_metres, &length->metres) &&
         drawl_rational_div (length->film, length->rate, &length->run_s);
}

static gboolean
measure_metres (Length *length, DrawlRational metres)
{
  DrawlRational feet;
  return drawl_rational_div (metres, foot_metres, &feet) && measure_feet (length, feet);
}

static gboolean (*const measures[N_OPTIONS]) (Length *length, DrawlRational given) = {
    [FEET] = measure_feet,
    [METRES] = measure_metres,
    [SECONDS] = measure_seconds,
};

static gboolean
measure_film (Length *length)
{
  for (guint i = 0; i < DRAWL_N_PITCHES; i++)
    if (length->gauge->step_mm[i].num > 0 &&
        !drawl_footage_physical_metres (length->gauge, i, length->film,
                                        &length->physical_metres[i]))
      return FALSE;
  return TRUE;
}

static gboolean
measure (const DrawlCall *call, Length *length, GError **error)
{
  DrawlRational given;
  guint option;

  if (!drawl_call_only (call, LENGTHS, &option, error))
    return FALSE;
  if (option == FRAMES) {
    if (!drawl_call_whole (call, FRAMES, 0, G_MAXINT64, &length->frames, error))
      return FALSE;
    if (measure_frames (length) && measure_film (length))
      return TRUE;
  } else {
    if (!drawl_call_quantity (call, option, units[option], &given, error))
      return FALSE;
    if (measures[option](length, given) && measure_film (length))
      return TRUE;
  }
  return drawl_call_refuse (
      call, option, _ ("too long to be counted exactly; a shorter length is expected"), error);
}

static void
print_physical (const Length *length, DrawlOutput *output)
{
  static const struct {
    const char *key, *label;
  } pitches[DRAWL_N_PITCHES] = {
      [DRAWL_PITCH_LONG] = {"physical_metres", N_ ("long pitch")},
      [DRAWL_PITCH_SHORT] = {"physical_metres_short", N_ ("short pitch")},
  };

  for (guint i = 0; i < DRAWL_N_PITCHES; i++)
    if (length->gauge->step_mm[i].num > 0)
      drawl_output_number (output, pitches[i].key, _ (pitches[i].label), length->physical_metres[i],
                           _ ("m"));
    else
      drawl_output_null (output, pitches[i].key, _ (pitches[i].label), _ ("not known"));
}

static gboolean
run_film (const DrawlCall *call, DrawlOutput *output, GError **error)
{
  Length length = {0};

  if (!read_gauge (call, &length.gauge, error) ||
      !drawl_call_rate (call, RATE, &length.rate, error) || !measure (call, &length, error))
    return FALSE;

  g_autofree char *counter = drawl_footage_feet_frames (length.gauge, length.counted);
  drawl_output_text (output, "gauge", _ ("gauge"),
                     call->json ? length.gauge->id : _ (length.gauge->name));
  drawl_output_fraction (output, "rate", _ ("capture rate"), length.rate, _ ("fps"));
  drawl_output_count (output, "frames", _ ("frames"), length.frames, "");
  drawl_output_number (output, "feet", _ ("feet"), length.feet, _ ("ft"));
  drawl_output_text (output, "feet_frames", _ ("feet+frames"), counter);
  drawl_output_number (output, "metres", _ ("metres"), length.metres, _ ("m"));
  print_physical (&length, output);
  drawl_output_number (output, "run_s", _ ("run time"), length.run_s, _ ("s"));
  return TRUE;
}

const DrawlCommand drawl_command_film = {
    .name = "film",
    .summary = N_ ("Film by frames, feet, metres and time"),
    .help = N_ (
        /* xgettext:no-c-format */
        "Give the gauge, the rate (R, frames a second), and exactly one length. Feet are counted\n"
        "by perforations (64 a foot on 35 and 65 mm), as footage counters do. Measured along the\n"
        "film, the same length of 35 mm is 0.26 % shorter (long pitch), and of film made for\n"
        "cameras a little shorter still (short pitch). frames are the whole frames on a length,\n"
        "or the fewest that cover a time.\n"
        "\n"
        "Example: how long 400 feet of 35 mm film with four perforations run at 24 fps\n"
        "  drawl-cli film --gauge 35-4 --rate 24 --feet 400"),
    .options = options,
    .n_options = N_OPTIONS,
    .run = run_film,
};
