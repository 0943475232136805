/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The list's filter. Invariant: words are case-folded, none is empty; without words and verdict
 * every shot matches, and the list model passes them through without asking one by one. */

#include "app/shot-filter.h"

#include <string.h>

struct _DrawlShotFilter {
  GtkFilter parent_instance;
  GStrv words; /* NULL: none */
  int verdict;
  DrawlShot *kept; /* compared only, no reference */
};

G_DEFINE_FINAL_TYPE (DrawlShotFilter, drawl_shot_filter, GTK_TYPE_FILTER)

static gboolean
filters_nothing (DrawlShotFilter *self)
{
  return self->words == NULL && self->verdict == DRAWL_SHOT_FILTER_ANY;
}

/* What a search looks through, in one folded line. */
static char *
haystack_of (DrawlShot *shot)
{
  const DrawlShotFields *fields = drawl_shot_get_fields (shot);
  g_autofree char *all =
      g_strjoin ("\n", fields->slate, fields->scene, fields->action, fields->notes, NULL);

  return g_utf8_casefold (all, -1);
}

static gboolean
matches_words (DrawlShotFilter *self, DrawlShot *shot)
{
  if (self->words == NULL)
    return TRUE;
  g_autofree char *haystack = haystack_of (shot);
  for (char **word = self->words; *word != NULL; word++)
    if (strstr (haystack, *word) == NULL)
      return FALSE;
  return TRUE;
}

static gboolean
matches (DrawlShotFilter *self, DrawlShot *shot)
{
  if (self->verdict != DRAWL_SHOT_FILTER_ANY && (int)drawl_shot_get_verdict (shot) != self->verdict)
    return FALSE;
  return matches_words (self, shot);
}

static gboolean
drawl_shot_filter_match (GtkFilter *filter, gpointer item)
{
  DrawlShotFilter *self = DRAWL_SHOT_FILTER (filter);

  return item == (gpointer)self->kept || matches (self, DRAWL_SHOT (item));
}

static GtkFilterMatch
drawl_shot_filter_get_strictness (GtkFilter *filter)
{
  return filters_nothing (DRAWL_SHOT_FILTER (filter)) ? GTK_FILTER_MATCH_ALL
                                                      : GTK_FILTER_MATCH_SOME;
}

static void
drawl_shot_filter_finalize (GObject *object)
{
  g_strfreev (DRAWL_SHOT_FILTER (object)->words);
  G_OBJECT_CLASS (drawl_shot_filter_parent_class)->finalize (object);
}

static void
drawl_shot_filter_class_init (DrawlShotFilterClass *klass)
{
  GtkFilterClass *filter_class = GTK_FILTER_CLASS (klass);

  filter_class->match = drawl_shot_filter_match;
  filter_class->get_strictness = drawl_shot_filter_get_strictness;
  G_OBJECT_CLASS (klass)->finalize = drawl_shot_filter_finalize;
}

static void
drawl_shot_filter_init (DrawlShotFilter *self)
{
  self->verdict = DRAWL_SHOT_FILTER_ANY;
}

DrawlShotFilter *
drawl_shot_filter_new (void)
{
  return g_object_new (DRAWL_TYPE_SHOT_FILTER, NULL);
}

void
drawl_shot_filter_set_verdict (DrawlShotFilter *filter, int verdict)
{
  if (filter->verdict == verdict)
    return;
  filter->verdict = verdict;
  gtk_filter_changed (GTK_FILTER (filter), GTK_FILTER_CHANGE_DIFFERENT);
}

int
drawl_shot_filter_get_verdict (DrawlShotFilter *filter)
{
  return filter->verdict;
}

static GStrv
words_of (const char *text)
{
  g_autofree char *folded = g_utf8_casefold (text, -1);
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

void
drawl_shot_filter_set_text (DrawlShotFilter *filter, const char *text)
{
  g_auto (GStrv) words = words_of (text);

  if (words == NULL && filter->words == NULL)
    return;
  if (words != NULL && filter->words != NULL &&
      g_strv_equal ((const char *const *)words, (const char *const *)filter->words))
    return;
  g_strfreev (filter->words);
  filter->words = g_steal_pointer (&words);
  gtk_filter_changed (GTK_FILTER (filter), GTK_FILTER_CHANGE_DIFFERENT);
}

void
drawl_shot_filter_keep (DrawlShotFilter *filter, DrawlShot *shot)
{
  filter->kept = shot;
}

void
drawl_shot_filter_show (DrawlShotFilter *filter, DrawlShot *shot)
{
  filter->kept = shot;
  if (shot != NULL && !filters_nothing (filter) && !matches (filter, shot))
    gtk_filter_changed (GTK_FILTER (filter), GTK_FILTER_CHANGE_LESS_STRICT);
}

void
drawl_shot_filter_refresh (DrawlShotFilter *filter)
{
  if (!filters_nothing (filter))
    gtk_filter_changed (GTK_FILTER (filter), GTK_FILTER_CHANGE_DIFFERENT);
}
