/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Words of the span picture. The data are doubles, as a drag makes them: a figure is rounded to
 * nine places before it is written, which brings back the decimal that was meant. */

#include "draw/timeline-words.h"

#include "core/text.h"
#include "plan/figure.h"

#include <math.h>

#define SCALE 1000000000.0
#define SAME 1e-9 /* factors nearer to 1 than this are 1 */

static DrawlRational
rational (double value)
{
  DrawlRational exact = {0, 1};
  double scale = fabs (value) < 1e9 ? SCALE : 1;

  if (isfinite (value) && fabs (value) < 1e18)
    drawl_rational_make (llround (value * scale), llround (scale), &exact);
  return exact;
}

static char *
time_words (double seconds)
{
  return drawl_figure_time (rational (seconds));
}

static char *
rate_words (double fps)
{
  return drawl_figure_rate (rational (fps));
}

static char *
frames_words (gint64 frames)
{
  g_autofree char *count = drawl_figure_count (frames);

  return g_strdup_printf (ngettext_ ("%s frame", "%s frames", (gulong)frames), count);
}

char *
drawl_timeline_real_words (const DrawlTimelineData *data)
{
  g_autofree char *action = time_words (data->action_s);
  g_autofree char *frames = frames_words (data->frames);
  g_autofree char *rate = rate_words (data->capture_fps);

  /* Translators: action time, "108 frames", capture rate. */
  return g_strdup_printf (_ ("%s, %s at %s"), action, frames, rate);
}

char *
drawl_timeline_real_words_short (const DrawlTimelineData *data)
{
  return time_words (data->action_s);
}

char *
drawl_timeline_screen_words (const DrawlTimelineData *data)
{
  g_autofree char *screen = time_words (data->screen_s);
  g_autofree char *rate = rate_words (data->playback_fps);

  /* Translators: screen time, playback rate: "4.5 s at 24 fps". */
  return g_strdup_printf (_ ("%s at %s"), screen, rate);
}

char *
drawl_timeline_screen_words_short (const DrawlTimelineData *data)
{
  return time_words (data->screen_s);
}

char *
drawl_timeline_handle_words (double seconds)
{
  return time_words (seconds);
}

/* Screen time ÷ action time, or the inverse where that is above 1; NULL when they are the same, or
 * when there is no action. */
static char *
factor_words (const DrawlTimelineData *data, gboolean *slower)
{
  double ratio = data->screen_s / data->action_s;

  *slower = ratio > 1;
  if (!isfinite (ratio) || ratio <= 0 || fabs (ratio - 1) < SAME)
    return NULL;
  return drawl_figure_factor (rational (*slower ? ratio : 1 / ratio));
}

char *
drawl_timeline_stretch_words (const DrawlTimelineData *data)
{
  gboolean slower;
  g_autofree char *factor = factor_words (data, &slower);

  if (factor == NULL)
    return g_strdup (_ ("real time"));
  return g_strdup_printf (slower ? _ ("%s slower") : _ ("%s faster"), factor);
}

char *
drawl_timeline_stretch_words_short (const DrawlTimelineData *data)
{
  gboolean slower;
  char *factor = factor_words (data, &slower);

  return factor != NULL ? factor : g_strdup (_ ("real time"));
}

/* ---- Sentences ---- */

static char *
time_sentence (const DrawlTimelineData *data)
{
  gboolean slower;
  g_autofree char *real = drawl_timeline_real_words (data);
  g_autofree char *screen = drawl_timeline_screen_words (data);
  g_autofree char *factor = factor_words (data, &slower);

  if (factor == NULL)
    /* Translators: "4.5 s, 108 frames at 24 fps", "4.5 s at 24 fps". */
    return g_strdup_printf (_ ("The action takes %s, and plays in real time: %s."), real, screen);
  /* Translators: "0.45 s, 108 frames at 240 fps", "4.5 s at 24 fps", "10×". */
  return g_strdup_printf (slower ? _ ("The action takes %s, and plays for %s: %s slower.")
                                 : _ ("The action takes %s, and plays for %s: %s faster."),
                          real, screen, factor);
}

static char *
handles_sentence (const DrawlTimelineData *data)
{
  g_autofree char *before = time_words (data->before_s);
  g_autofree char *after = time_words (data->after_s);

  if (data->before_s > 0 && data->after_s > 0)
    return g_strdup_printf (_ ("The handles are %s before and %s after the action."), before,
                            after);
  if (data->before_s > 0)
    return g_strdup_printf (_ ("The handle is %s before the action."), before);
  if (data->after_s > 0)
    return g_strdup_printf (_ ("The handle is %s after the action."), after);
  return NULL;
}

char *
drawl_timeline_text (const DrawlTimelineData *data)
{
  GString *text = g_string_new (NULL);
  g_autofree char *times = time_sentence (data);
  g_autofree char *handles = handles_sentence (data);

  g_string_append (text, times);
  if (handles != NULL)
    g_string_append_printf (text, " %s", handles);
  if (data->screen_code != NULL) {
    g_string_append_c (text, ' ');
    g_string_append_printf (text, _ ("Its length on screen is %s as timecode."), data->screen_code);
  }
  return g_string_free (text, FALSE);
}
