/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The list's filter. Invariant: words are case-folded, none is empty. What a search looks through
 * is folded once for each state of a shot, told by its stamp, and kept. */

#include "app/shot-filter.h"

#include <string.h>

/* More than any plan has shots: what is beyond belongs to shots that have gone. */
#define TEXTS_MAX 262144

typedef struct {
  guint64 stamp;
  char *text;
} Folded;

struct _DrawlShotFilter {
  GStrv words; /* NULL: none */
  int verdict;
  DrawlHiredBody *hired; /* or NULL */
  GHashTable *folded;    /* shot, only compared → Folded */
};

static void
folded_free (gpointer data)
{
  Folded *folded = data;

  g_free (folded->text);
  g_free (folded);
}

DrawlShotFilter *
drawl_shot_filter_new (void)
{
  DrawlShotFilter *filter = g_new0 (DrawlShotFilter, 1);

  filter->verdict = DRAWL_SHOT_FILTER_ANY;
  filter->folded = g_hash_table_new_full (NULL, NULL, NULL, folded_free);
  return filter;
}

void
drawl_shot_filter_free (DrawlShotFilter *filter)
{
  if (filter == NULL)
    return;
  g_strfreev (filter->words);
  g_clear_object (&filter->hired);
  g_hash_table_unref (filter->folded);
  g_free (filter);
}

/* ---- Texts ---- */

/* Most texts are plain letters, for which the long way is many times slower. */
static char *
fold (char *text)
{
  if (g_str_is_ascii (text)) {
    for (char *at = text; *at != '\0'; at++)
      *at = g_ascii_tolower (*at);
    return text;
  }
  char *folded = g_utf8_casefold (text, -1);
  g_free (text);
  return folded;
}

static const char *
text_of (DrawlShotFilter *filter, DrawlShot *shot)
{
  Folded *folded = g_hash_table_lookup (filter->folded, shot);
  guint64 stamp = drawl_shot_get_stamp (shot);

  if (folded != NULL && folded->stamp == stamp)
    return folded->text;
  const DrawlShotFields *fields = drawl_shot_get_fields (shot);
  folded = g_new (Folded, 1);
  folded->stamp = stamp;
  folded->text =
      fold (g_strjoin ("\n", fields->slate, fields->scene, fields->action, fields->notes, NULL));
  if (g_hash_table_size (filter->folded) > TEXTS_MAX)
    g_hash_table_remove_all (filter->folded);
  g_hash_table_insert (filter->folded, shot, folded);
  return folded->text;
}

static gboolean
matches_words (DrawlShotFilter *filter, DrawlShot *shot)
{
  if (filter->words == NULL)
    return TRUE;
  const char *text = text_of (filter, shot);
  for (char **word = filter->words; *word != NULL; word++)
    if (strstr (text, *word) == NULL)
      return FALSE;
  return TRUE;
}

/* ---- Matching ---- */

gboolean
drawl_shot_filter_is_open (DrawlShotFilter *filter)
{
  return filter->words == NULL && filter->verdict == DRAWL_SHOT_FILTER_ANY && filter->hired == NULL;
}

gboolean
drawl_shot_filter_matches (DrawlShotFilter *filter, DrawlShot *shot)
{
  if (filter->verdict != DRAWL_SHOT_FILTER_ANY &&
      (int)drawl_shot_get_verdict (shot) != filter->verdict)
    return FALSE;
  if (filter->hired != NULL &&
      !g_str_equal (drawl_shot_get_fields (shot)->body, drawl_hired_body_get_id (filter->hired)))
    return FALSE;
  return matches_words (filter, shot);
}

/* ---- What is wanted ---- */

gboolean
drawl_shot_filter_set_verdict (DrawlShotFilter *filter, int verdict)
{
  gboolean other = filter->verdict != verdict;

  filter->verdict = verdict;
  return other;
}

gboolean
drawl_shot_filter_set_body (DrawlShotFilter *filter, DrawlHiredBody *hired)
{
  return g_set_object (&filter->hired, hired);
}

int
drawl_shot_filter_get_verdict (DrawlShotFilter *filter)
{
  return filter->verdict;
}

DrawlHiredBody *
drawl_shot_filter_get_body (DrawlShotFilter *filter)
{
  return filter->hired;
}

static GStrv
words_of (const char *text)
{
  g_autofree char *folded = fold (g_strdup (text));
  g_auto (GStrv) pieces = g_strsplit_set (folded, " \t\n", -1);
  g_autoptr (GStrvBuilder) words = g_strv_builder_new ();
  gboolean any = FALSE;

  for (char **piece = pieces; *piece != NULL; piece++)
    if (**piece != '\0') {
      g_strv_builder_add (words, *piece);
      any = TRUE;
    }
  return any ? g_strv_builder_end (words) : NULL;
}

gboolean
drawl_shot_filter_set_text (DrawlShotFilter *filter, const char *text)
{
  g_auto (GStrv) words = words_of (text);
  gboolean same =
      words == NULL || filter->words == NULL
          ? words == filter->words
          : g_strv_equal ((const char *const *)words, (const char *const *)filter->words);

  if (same)
    return FALSE;
  g_strfreev (filter->words);
  filter->words = g_steal_pointer (&words);
  return TRUE;
}
