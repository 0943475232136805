/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Taking a sentence's template apart. Invariant: words and places in order, with their gaps, give
 * the template back, white space aside. */

#include "app/sentence-template.h"

#include <string.h>

#define BREAK_WITHOUT_GAP 0x200B

typedef struct {
  GArray *pieces;
  GString *word;   /* being gathered */
  gboolean parted; /* from the piece before */
  gboolean spaced;
} Splitter;

static void
piece_clear (DrawlSentencePiece *piece)
{
  g_free (piece->word);
}

static void
add_piece (Splitter *splitter, int place, char *word)
{
  gboolean first = splitter->pieces->len == 0;
  DrawlSentencePiece piece = {
      .place = place,
      .word = word,
      .joined = !first && !splitter->parted,
      .spaced = !first && splitter->spaced,
  };

  g_array_append_val (splitter->pieces, piece);
  splitter->parted = FALSE;
  splitter->spaced = FALSE;
}

static void
end_word (Splitter *splitter)
{
  if (splitter->word->len == 0)
    return;
  add_piece (splitter, DRAWL_SENTENCE_WORD, g_strdup (splitter->word->str));
  g_string_truncate (splitter->word, 0);
}

/* The place that @text begins with ("{name}"), and its length in bytes; or -1. */
static int
place_at (const char *text, const char *const *places, guint n_places, gsize *length)
{
  for (guint i = 0; i < n_places; i++) {
    gsize name = strlen (places[i]);
    if (text[0] == '{' && strncmp (text + 1, places[i], name) == 0 && text[1 + name] == '}') {
      *length = name + 2;
      return (int)i;
    }
  }
  return -1;
}

/* A gap that a line may end in: white space, but not the kinds that hold words together. */
static gboolean
parts (gunichar c)
{
  GUnicodeBreakType type = g_unichar_break_type (c);

  return c == BREAK_WITHOUT_GAP ||
         (g_unichar_isspace (c) && type != G_UNICODE_BREAK_NON_BREAKING_GLUE);
}

static void
split (Splitter *splitter, const char *template, const char *const *places, guint n_places,
       guint *seen, guint *twice)
{
  for (const char *at = template; *at != '\0';) {
    gunichar c = g_utf8_get_char (at);
    gsize length = (gsize)(g_utf8_next_char (at) - at);
    int place = place_at (at, places, n_places, &length);

    if (place >= 0) {
      end_word (splitter);
      add_piece (splitter, place, NULL);
      *twice |= *seen & (1u << place);
      *seen |= 1u << place;
    } else if (parts (c)) {
      end_word (splitter);
      splitter->parted = TRUE;
      splitter->spaced |= c != BREAK_WITHOUT_GAP;
    } else {
      g_string_append_unichar (splitter->word, c);
    }
    at += length;
  }
  end_word (splitter);
}

gboolean
drawl_sentence_split (const char *template, const char *const *places, guint n_places, guint wanted,
                      GArray **pieces)
{
  g_autoptr (GArray) found = g_array_new (FALSE, FALSE, sizeof (DrawlSentencePiece));
  g_autoptr (GString) word = g_string_new (NULL);
  Splitter splitter = {.pieces = found, .word = word};
  guint seen = 0, twice = 0;

  g_array_set_clear_func (found, (GDestroyNotify)piece_clear);
  if (!g_utf8_validate (template, -1, NULL))
    return FALSE;
  split (&splitter, template, places, n_places, &seen, &twice);
  if (seen != wanted || twice != 0)
    return FALSE;
  *pieces = g_steal_pointer (&found);
  return TRUE;
}
