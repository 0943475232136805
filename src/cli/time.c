/* SPDX-License-Identifier: GPL-3.0-or-later */

/* `drawl-cli time`: from what is known of a shot's timing to all of it. Rates in frames a second,
 * times in seconds, slow factor as a ratio, post speed in per cent. */

#include "cli/call.h"
#include "cli/error.h"
#include "core/text.h"
#include "core/timecode.h"
#include "core/timing.h"

enum { PLAY, CAPTURE, ACTION, SCREEN, SLOW, POST_SPEED, DROP, N_OPTIONS };

static const DrawlOption options[N_OPTIONS] = {
    [PLAY] = {"play", 0, "R", N_ ("Playback rate, frames a second of screen time")},
    [CAPTURE] = {"capture", 0, "R", N_ ("Capture rate, frames a second of real time")},
    [ACTION] = {"action", 0, "S", N_ ("Action time: how long it lasts in reality, seconds")},
    [SCREEN] = {"screen", 0, "S", N_ ("Screen time: how long it lasts on screen, seconds")},
    [SLOW] = {"slow", 0, "F",
              N_ ("Slow factor: capture rate ÷ playback rate; 10 is ten times "
                  "slower")},
    [POST_SPEED] = {"post-speed", 0, "PCT",
                    N_ ("Speed change in the cutting room, per cent; 100 "
                        "unless given")},
    [DROP] = {"drop", 0, NULL, N_ ("Count the screen timecode drop-frame (29.97 and 59.94)")},
};

static const DrawlTimingTerm term_of[] = {
    [PLAY] = DRAWL_TIMING_PLAYBACK, [CAPTURE] = DRAWL_TIMING_CAPTURE,
    [ACTION] = DRAWL_TIMING_ACTION, [SCREEN] = DRAWL_TIMING_SCREEN,
    [SLOW] = DRAWL_TIMING_FACTOR,   [POST_SPEED] = DRAWL_TIMING_POST_SPEED,
};

/* Reads the options that are terms, and works out the rest. */
static gboolean
solve (const DrawlCall *call, DrawlTiming *timing, GError **error)
{
  DrawlRational value[DRAWL_TIMING_N_TERMS] = {{0, 1}};
  guint given = 0, given_options = 0;
  GError *reason = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (term_of); i++) {
    if (!drawl_call_has (call, i))
      continue;
    if (!drawl_timing_term_parse (term_of[i], call->values[i], &value[term_of[i]], &reason))
      return drawl_call_refuse_for (call, i, reason, error);
    given |= DRAWL_TIMING_BIT (term_of[i]);
    given_options |= 1u << i;
  }
  if (drawl_timing_solve (value, given, timing, &reason))
    return TRUE;

  g_autofree char *names = drawl_call_option_names (call, given_options);
  return drawl_cli_refuse_for (error, DRAWL_CLI_ERROR_QUESTION, given != 0 ? names : _ ("options"),
                               reason);
}

/* Speed of the picture on screen, 100 % as it happened: post speed ÷ slow factor. */
static double
speed_percent (const DrawlTiming *timing)
{
  DrawlRational post = timing->value[DRAWL_TIMING_POST_SPEED];
  DrawlRational factor = timing->value[DRAWL_TIMING_FACTOR], speed;

  return drawl_rational_div (post, factor, &speed)
             ? drawl_rational_to_double (speed)
             : drawl_rational_to_double (post) / drawl_rational_to_double (factor);
}

static gboolean
print_timecode (const DrawlCall *call, const DrawlTiming *timing, DrawlOutput *output,
                GError **error)
{
  DrawlRate play = timing->value[DRAWL_TIMING_PLAYBACK];
  gboolean drop = drawl_call_has (call, DROP);
  char code[DRAWL_TIMECODE_SIZE];
  GError *reason = NULL;

  if (drop && !drawl_timecode_check (play, TRUE, &reason))
    return drawl_call_refuse_for (call, DROP, reason, error);
  if (drawl_rate_nominal (play) == 0) {
    drawl_output_null (output, "screen_timecode", _ ("screen timecode"),
                       _ ("none at this playback rate"));
    return TRUE;
  }
  if (!drawl_timecode_format (play, drop, timing->screen_frames, code, error))
    return FALSE;
  drawl_output_text (output, "screen_timecode", _ ("screen timecode"), code);
  return TRUE;
}

/* The terms that were not given. */
static void
print_followed (const DrawlTiming *timing, DrawlOutput *output)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  if (output->writer != NULL)
    drawl_json_writer_begin_array (output->writer, "followed");
  for (guint i = 0; i < DRAWL_TIMING_N_TERMS; i++) {
    if ((timing->followed & DRAWL_TIMING_BIT (i)) == 0)
      continue;
    if (output->writer != NULL)
      drawl_json_writer_string (output->writer, NULL, drawl_timing_term_key (i));
    g_ptr_array_add (names, (gpointer)drawl_timing_term_name (i));
  }
  if (output->writer != NULL) {
    drawl_json_writer_end_array (output->writer);
    return;
  }
  g_ptr_array_add (names, NULL);
  g_autofree char *list = g_strjoinv (", ", (char **)names->pdata);
  drawl_output_text (output, "followed", names->len > 1 ? _ ("worked out") : NULL, list);
}

static void
print_rates (const DrawlTiming *timing, DrawlOutput *output)
{
  const DrawlRational *value = timing->value;

  drawl_output_fraction (output, "capture_rate", drawl_timing_term_name (DRAWL_TIMING_CAPTURE),
                         value[DRAWL_TIMING_CAPTURE], _ ("fps"));
  drawl_output_fraction (output, "playback_rate", drawl_timing_term_name (DRAWL_TIMING_PLAYBACK),
                         value[DRAWL_TIMING_PLAYBACK], _ ("fps"));
  drawl_output_number (output, "slow_factor", drawl_timing_term_name (DRAWL_TIMING_FACTOR),
                       value[DRAWL_TIMING_FACTOR], "×");
  drawl_output_fraction (output, "slow_factor_exact", NULL, value[DRAWL_TIMING_FACTOR], "");
  drawl_output_double (output, "speed_percent", _ ("speed on screen"), speed_percent (timing), "%");
  drawl_output_number (output, "post_speed_percent",
                       drawl_timing_term_name (DRAWL_TIMING_POST_SPEED),
                       value[DRAWL_TIMING_POST_SPEED], "%");
}

static void
print_times (const DrawlTiming *timing, DrawlOutput *output)
{
  const DrawlRational *value = timing->value;

  drawl_output_number (output, "action_s", drawl_timing_term_name (DRAWL_TIMING_ACTION),
                       value[DRAWL_TIMING_ACTION], _ ("s"));
  drawl_output_fraction (output, "action_exact_s", NULL, value[DRAWL_TIMING_ACTION], "");
  drawl_output_number (output, "screen_s", drawl_timing_term_name (DRAWL_TIMING_SCREEN),
                       value[DRAWL_TIMING_SCREEN], _ ("s"));
  drawl_output_fraction (output, "screen_exact_s", NULL, value[DRAWL_TIMING_SCREEN], "");
  drawl_output_count (output, "frames", _ ("frames"), timing->frames, "");
}

static gboolean
run_time (const DrawlCall *call, DrawlOutput *output, GError **error)
{
  DrawlTiming timing;

  if (!solve (call, &timing, error))
    return FALSE;
  print_rates (&timing, output);
  print_times (&timing, output);
  if (!print_timecode (call, &timing, output, error))
    return FALSE;
  print_followed (&timing, output);
  return TRUE;
}

const DrawlCommand drawl_command_time = {
    .name = "time",
    .summary = N_ ("Rates, times and frames of a slow-motion shot"),
    .help = N_ (
        "Give the playback rate and two more of the values; the others follow. Values that\n"
        "disagree, or do not suffice, are refused.\n"
        "\n"
        "Rates (R) are frames a second, such as 240, 12.5 or 24000/1001; 23.976 means\n"
        "24000/1001. Times (S) are seconds of any length. frames is the least whole number that\n"
        "covers the action; the screen timecode counts the frames played, and is non-drop\n"
        "unless --drop is given.\n"
        "\n"
        "Example: 0.45 s of action that is to last 4.5 s on screen\n"
        "  drawl-cli time --play 24 --action 0.45 --screen 4.5"),
    .options = options,
    .n_options = N_OPTIONS,
    .run = run_time,
};
