/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What the set sheet says about a shot in whole sentences. */

#include "core/text.h"
#include "draw/sheet-figures.h"
#include "plan/figure.h"
#include "plan/sentence-text.h"

#define ISOLATE "\u2068" /* its direction is its own, and turns nothing beside it */
#define POP_ISOLATE "\u2069"

/* ---- The sentence ---- */

static char *
bold (char *figure)
{
  g_autofree char *taken = figure;

  return g_markup_printf_escaped (ISOLATE "<b>%s</b>" POP_ISOLATE, taken);
}

/* Slower or faster, the factor is above 1. */
static DrawlRational
factor_shown (DrawlRational factor)
{
  return factor.num < factor.den ? (DrawlRational){factor.den, factor.num} : factor;
}

char *
drawl_sheet_sentence_markup (DrawlShot *shot)
{
  const DrawlRational *value = drawl_shot_get_timing (shot)->value;
  const char *what = drawl_shot_get_fields (shot)->action;
  g_autofree char *words = g_markup_escape_text (*what != '\0' ? what : "…", -1);
  g_autofree char *clause = g_strconcat (ISOLATE, words, POP_ISOLATE, NULL);
  g_autofree char *action = bold (drawl_figure_time (value[DRAWL_TIMING_ACTION]));
  g_autofree char *capture = bold (drawl_figure_rate (value[DRAWL_TIMING_CAPTURE]));
  g_autofree char *playback = bold (drawl_figure_rate (value[DRAWL_TIMING_PLAYBACK]));
  g_autofree char *screen = bold (drawl_figure_time (value[DRAWL_TIMING_SCREEN]));
  g_autofree char *factor = bold (drawl_figure_factor (factor_shown (value[DRAWL_TIMING_FACTOR])));
  g_autofree char *post = bold (drawl_figure_percent (value[DRAWL_TIMING_POST_SPEED]));
  const char *const texts[DRAWL_SENTENCE_N_PLACES] = {
      [DRAWL_SENTENCE_WHAT] = clause,     [DRAWL_SENTENCE_ACTION] = action,
      [DRAWL_SENTENCE_CAPTURE] = capture, [DRAWL_SENTENCE_PLAYBACK] = playback,
      [DRAWL_SENTENCE_SCREEN] = screen,   [DRAWL_SENTENCE_FACTOR] = factor,
      [DRAWL_SENTENCE_POST] = post,
  };

  return drawl_sentence_fill_in (drawl_sentence_template (value), texts);
}

/* ---- Hire ---- */

static char *
as_sentence (const char *text)
{
  return g_strdup_printf (C_ ("a reason as a sentence", "%s."), text);
}

char *
drawl_sheet_reasons_words (DrawlShot *shot)
{
  const DrawlCheck *check = drawl_shot_get_check (shot);
  GString *words = g_string_new (NULL);

  for (guint i = 0; i < check->n_reasons; i++) {
    g_autofree char *reason =
        drawl_reason_text (&check->reasons[i], drawl_shot_get_question (shot));
    g_autofree char *sentence = as_sentence (reason);

    g_string_append_printf (words, "%s%s", words->len > 0 ? " " : "", sentence);
  }
  return g_string_free (words, FALSE);
}

char *
drawl_sheet_with_words (DrawlShot *shot)
{
  const DrawlCheck *check = drawl_shot_get_check (shot);

  if (check->verdict != DRAWL_VERDICT_NEEDS_LICENCE || check->sets == NULL || check->sets->len == 0)
    return g_strdup ("");
  return drawl_licence_set_text (&g_array_index (check->sets, DrawlLicenceSet, 0),
                                 drawl_shot_get_question (shot)->body);
}

char *
drawl_sheet_without_words (DrawlShot *shot)
{
  const DrawlCheck *check = drawl_shot_get_check (shot);
  const DrawlFallback *ways = check->fallbacks;
  char *words = g_strdup ("");

  for (guint i = 0; i < DRAWL_N_KEEPS; i++) {
    g_autofree char *way =
        ways[i].found && check->verdict != DRAWL_VERDICT_AS_HIRED
            ? drawl_fallback_text (&ways[i], drawl_shot_get_question (shot)->body)
            : NULL;
    if (way == NULL)
      continue;
    g_autofree char *before = words;
    /* Translators: two ways to shoot it: "60 fps at Super 16; or 120 fps at Normal 16". */
    words = *before != '\0' ? g_strdup_printf (_ ("%s; or %s"), before, way) : g_strdup (way);
  }
  return words;
}

char *
drawl_sheet_hire_words (DrawlShot *shot)
{
  g_autofree char *with = drawl_sheet_with_words (shot);
  g_autofree char *without = drawl_sheet_without_words (shot);

  if (*with == '\0')
    return g_steal_pointer (&without);
  if (*without == '\0')
    return g_steal_pointer (&with);
  /* Translators: licences and their price; what can be shot without them. */
  return g_strdup_printf (_ ("%s. Without it: %s."), with, without);
}

/* ---- Buffer ---- */

static char *
time_of_frames (gint64 frames, DrawlRate rate)
{
  DrawlRational seconds, hundredths;

  if (!drawl_rational_div (drawl_rational_whole (frames), rate, &seconds))
    return NULL;
  if (seconds.num > seconds.den &&
      drawl_rational_mul (seconds, drawl_rational_whole (100), &hundredths))
    drawl_rational_make (drawl_rational_floor (hundredths), 100, &seconds);
  return drawl_figure_time (seconds);
}

char *
drawl_sheet_buffer_words (DrawlShot *shot)
{
  const DrawlRingBuffer *buffer = &drawl_shot_get_load (shot)->buffer;
  DrawlRate rate = drawl_shot_get_timing (shot)->value[DRAWL_TIMING_CAPTURE];
  g_autofree char *held = buffer->frames > 0 ? time_of_frames (buffer->frames, rate) : NULL;
  g_autofree char *before = buffer->frames > 0 ? time_of_frames (buffer->pre_frames, rate) : NULL;

  if (held == NULL || before == NULL)
    return g_strdup ("");
  if (buffer->empty_s.num == 0)
    return g_strdup_printf (_ ("Holds %s, %s of it before the trigger."), held, before);
  g_autofree char *empty = drawl_figure_time (buffer->empty_s);
  return g_strdup_printf (
      _ ("Holds %s, %s of it before the trigger; a full one takes %s to write out."), held, before,
      empty);
}
