/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The sentences, a row for slower, real time and faster, and how their places are filled. */

#include "plan/sentence-text.h"

#include <string.h>

#include "core/text.h"

/* Translators: the words in braces are places for what is typed; keep each one, in any order. Units
 * are part of their place. Punctuation stays with the place that it touches. */
static const char *const templates[3][2] = {
    {
        N_ ("{what}: {action} of action, shot at {capture}, plays at {playback} for {screen}, "
            "{factor} slower."),
        N_ ("{what}: {action} of action, shot at {capture}, plays at {playback}, {factor} slower, "
            "and run at {post} in the cutting room lasts {screen}."),
    },
    {
        N_ ("{what}: {action} of action, shot at {capture}, plays at {playback} for {screen}, in "
            "real time ({factor})."),
        N_ ("{what}: {action} of action, shot at {capture}, plays at {playback} in real time "
            "({factor}), and run at {post} in the cutting room lasts {screen}."),
    },
    {
        N_ ("{what}: {action} of action, shot at {capture}, plays at {playback} for {screen}, "
            "{factor} faster."),
        N_ ("{what}: {action} of action, shot at {capture}, plays at {playback}, {factor} faster, "
            "and run at {post} in the cutting room lasts {screen}."),
    },
};

static const char *const places[DRAWL_SENTENCE_N_PLACES] = {
    [DRAWL_SENTENCE_WHAT] = "{what}",       [DRAWL_SENTENCE_ACTION] = "{action}",
    [DRAWL_SENTENCE_CAPTURE] = "{capture}", [DRAWL_SENTENCE_PLAYBACK] = "{playback}",
    [DRAWL_SENTENCE_SCREEN] = "{screen}",   [DRAWL_SENTENCE_FACTOR] = "{factor}",
    [DRAWL_SENTENCE_POST] = "{post}",
};

const char *
drawl_sentence_template (const DrawlRational value[DRAWL_TIMING_N_TERMS])
{
  int side = drawl_rational_compare (value[DRAWL_TIMING_FACTOR], drawl_rational_whole (1));
  gboolean with_post =
      !drawl_rational_equal (value[DRAWL_TIMING_POST_SPEED], drawl_rational_whole (100));

  return _ (templates[1 - side][with_post]);
}

/* The place that @text begins with, or -1. */
static int
place_at (const char *text)
{
  for (int i = 0; i < DRAWL_SENTENCE_N_PLACES; i++)
    if (g_str_has_prefix (text, places[i]))
      return i;
  return -1;
}

char *
drawl_sentence_fill_in (const char *template, const char *const texts[DRAWL_SENTENCE_N_PLACES])
{
  GString *sentence = g_string_new (NULL);

  for (const char *at = template; *at != '\0';) {
    int place = *at == '{' ? place_at (at) : -1;
    gsize plain = 1 + strcspn (at + 1, "{");

    if (place < 0) {
      g_string_append_len (sentence, at, (gssize)plain);
      at += plain;
    } else {
      g_string_append (sentence, texts[place]);
      at += strlen (places[place]);
    }
  }
  return g_string_free (sentence, FALSE);
}
