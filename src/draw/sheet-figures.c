/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The figures of a shot on paper. Units stand with their numbers. */

#include "draw/sheet-figures.h"

#include "core/text.h"
#include "plan/figure.h"
#include "plan/shot-load.h"

#define NOTHING "–"

/* ---- What is hired and set ---- */

static DrawlSheetFigure
takes (const DrawlSheetShot *of)
{
  const DrawlShotFields *fields = drawl_shot_get_fields (of->shot);
  g_autofree char *count = drawl_figure_count (fields->takes);
  g_autofree char *each = drawl_figure_time (drawl_shot_get_load (of->shot)->take_s);
  g_autofree char *before = drawl_figure_time (fields->handle_before_s);
  g_autofree char *after = drawl_figure_time (fields->handle_after_s);
  gboolean handles = fields->handle_before_s.num != 0 || fields->handle_after_s.num != 0;

  return (DrawlSheetFigure){
      g_strdup (_ ("Takes and handles")),
      /* Translators: "4 takes", length of each: "4 takes of 3.95 s". */
      g_strdup_printf (ngettext_ ("%s take of %s", "%s takes of %s", fields->takes), count, each),
      handles ? g_strdup_printf (_ ("%s before, %s after"), before, after)
              : g_strdup (_ ("no handles")),
  };
}

static DrawlSheetFigure
body (const DrawlSheetShot *of)
{
  DrawlSheetFigure figure = {.label = g_strdup (_ ("Body"))};

  if (of->hired == NULL) {
    figure.value = g_strdup (NOTHING);
    figure.more = g_strdup (_ ("none is chosen yet"));
    return figure;
  }
  const DrawlBody *profile = drawl_hired_body_get_body (of->hired);
  DrawlTier tier = drawl_hired_body_get_tier (of->hired);
  g_autofree char *names = drawl_body_tier_names (profile, tier);
  figure.value = drawl_hired_body_dup_name (of->hired);
  figure.more = tier != 0                 ? g_strdup_printf (_ ("with %s"), names)
                : profile->n_licences > 0 ? g_strdup (_ ("no licence hired"))
                                          : g_strdup ("");
  return figure;
}

static char *
codec_words (const DrawlSheetShot *of)
{
  const DrawlCheckQuestion *question = drawl_shot_get_question (of->shot);
  guint tracks = drawl_shot_get_fields (of->shot)->audio_tracks;
  g_autofree char *count = drawl_figure_count (tracks);
  g_autofree char *sound =
      g_strdup_printf (ngettext_ ("%s audio track", "%s audio tracks", tracks), count);
  const char *codec = "";

  if (question->body != NULL && question->body->kind == DRAWL_BODY_DIGITAL && question->codec >= 0)
    codec = question->body->codecs[question->codec].name;
  if (question->body != NULL && question->body->kind == DRAWL_BODY_FILM && question->size >= 0)
    codec = _ (question->body->sizes[question->size].gauge->name);
  if (tracks == 0)
    return g_strdup (codec);
  return *codec != '\0' ? g_strdup_printf ("%s\n%s", codec, sound) : g_steal_pointer (&sound);
}

static DrawlSheetFigure
size (const DrawlSheetShot *of)
{
  const DrawlCheckQuestion *question = drawl_shot_get_question (of->shot);
  gboolean known = question->body != NULL && question->size >= 0;
  gboolean film = question->body != NULL && question->body->kind == DRAWL_BODY_FILM;

  return (DrawlSheetFigure){
      g_strdup (film ? _ ("Size and gauge") : _ ("Size and codec")),
      g_strdup (known ? question->body->sizes[question->size].name : NOTHING),
      codec_words (of),
  };
}

/* ---- What is left ---- */

static char *
left_words (const DrawlSheetShot *of)
{
  DrawlRational left;

  if (!drawl_filling_left (&of->after, of->shot, &left))
    return g_strdup (NOTHING);
  return drawl_figure_time_left (left);
}

/* "of 512 GB", and where the takes began, if on another. */
static char *
span_words (const DrawlSheetShot *of, const char *capacity, gboolean film)
{
  g_autofree char *first = drawl_figure_count (of->first);
  g_autofree char *last = drawl_figure_count (of->after.begun);

  if (of->first == of->after.begun)
    return g_strdup_printf (_ ("of %s"), capacity);
  if (film)
    return g_strdup_printf (_ ("of %s; takes on magazines %s to %s"), capacity, first, last);
  return g_strdup_printf (_ ("of %s; takes on cards %s to %s"), capacity, first, last);
}

static DrawlSheetFigure
left_on_magazine (const DrawlSheetShot *of)
{
  const DrawlBody *profile = drawl_shot_get_question (of->shot)->body;
  g_autofree char *last = drawl_figure_count (of->after.begun);
  g_autofree char *capacity =
      drawl_length_film (drawl_body_longest_magazine (profile)->feet, of->unit);
  g_autofree char *time = left_words (of);
  g_autofree char *span = span_words (of, capacity, TRUE);

  return (DrawlSheetFigure){
      g_strdup_printf (_ ("Left on magazine %s"), last),
      drawl_length_film_left (of->after.left_feet, of->unit),
      g_strdup_printf (_ ("%s, %s"), time, span),
  };
}

static DrawlSheetFigure
left_on_card (const DrawlSheetShot *of)
{
  const DrawlBody *profile = drawl_shot_get_question (of->shot)->body;
  const DrawlBodyCard *card = &profile->cards[drawl_shot_get_check (of->shot)->card];
  g_autofree char *last = drawl_figure_count (of->after.begun);
  g_autofree char *capacity = drawl_figure_bytes (drawl_rational_whole (card->bytes));

  return (DrawlSheetFigure){
      g_strdup_printf (_ ("Left on card %s"), last),
      left_words (of),
      span_words (of, capacity, FALSE),
  };
}

static DrawlSheetFigure
left (const DrawlSheetShot *of)
{
  const DrawlBody *profile = drawl_shot_get_question (of->shot)->body;
  gboolean film = profile != NULL && profile->kind == DRAWL_BODY_FILM;

  if (of->filled)
    return film ? left_on_magazine (of) : left_on_card (of);
  return (DrawlSheetFigure){
      g_strdup (film ? _ ("Left on magazine") : _ ("Left on card")),
      g_strdup (NOTHING),
      g_strdup (drawl_shot_get_load (of->shot)->known ? _ ("not one take fits")
                                                      : _ ("not known yet")),
  };
}

static DrawlSheetFigure (*const figures[DRAWL_SHEET_N_FIGURES]) (const DrawlSheetShot *of) = {
    takes,
    body,
    size,
    left,
};

void
drawl_sheet_figure_init (DrawlSheetFigure *figure, const DrawlSheetShot *shot, guint index)
{
  *figure = figures[index](shot);
}

void
drawl_sheet_figure_clear (DrawlSheetFigure *figure)
{
  g_free (figure->label);
  g_free (figure->value);
  g_free (figure->more);
}
