/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Edits of shots: a copy of the fields, one thing changed, handed to the plan. Nothing is worked
 * out here. */

#include "app/shot-edit.h"

#include "app/term.h"
#include "core/text.h"
#include "core/timecode.h"

/* Drop counting goes with the rates that have it. */
static void
keep_drop_possible (DrawlShotFields *fields)
{
  if (fields->drop &&
      !drawl_timecode_check (fields->blanks.value[DRAWL_TIMING_PLAYBACK], TRUE, NULL))
    fields->drop = FALSE;
}

gboolean
drawl_shot_edit_set_term (DrawlShotFields *fields, DrawlTimingTerm term, DrawlRational value,
                          GError **error)
{
  if (!drawl_blanks_edit (&fields->blanks, term, value, error))
    return FALSE;
  keep_drop_possible (fields);
  return TRUE;
}

gboolean
drawl_shot_edit_term (DrawlPlan *plan, DrawlShot *shot, const DrawlBlanks *from,
                      DrawlTimingTerm term, DrawlRational value, GError **error)
{
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (drawl_shot_get_fields (shot));

  if (from != NULL)
    fields->blanks = *from;
  return drawl_shot_edit_set_term (fields, term, value, error) &&
         drawl_plan_set_shot (plan, shot, fields, _ (drawl_term_words[term].change), error);
}

void
drawl_shot_edit_hold (DrawlPlan *plan, DrawlShot *shot, DrawlTimingTerm term, gboolean held)
{
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (drawl_shot_get_fields (shot));
  const DrawlTermWords *words = &drawl_term_words[term];

  drawl_blanks_hold (&fields->blanks, term, held);
  drawl_plan_set_shot (plan, shot, fields, held ? _ (words->hold) : _ (words->let_go), NULL);
}

/* ---- Bodies ---- */

static gboolean
opens (const DrawlBodyLimit *limit, DrawlTier tier)
{
  return (limit->licences & ~tier) == 0;
}

/* The row to take for @size and @codec (indices; -1: gone): the one that keeps the size, then the
 * codec, then one that the tier opens. NULL for a body without limits. */
static const DrawlBodyLimit *
choose_limit (const DrawlBody *body, DrawlTier tier, int size, int codec)
{
  const DrawlBodyLimit *best = NULL;
  int best_rank = -1;

  for (guint i = 0; i < body->n_limits; i++) {
    const DrawlBodyLimit *limit = &body->limits[i];
    int rank =
        4 * ((int)limit->size == size) + 2 * ((int)limit->codec == codec) + opens (limit, tier);
    if (rank > best_rank) {
      best = limit;
      best_rank = rank;
    }
  }
  return best;
}

static void
settle_on (DrawlShotFields *fields, DrawlHiredBody *hired)
{
  const DrawlBody *body = drawl_hired_body_get_body (hired);
  DrawlTier tier =
      drawl_tier_effective (body->licences, body->n_licences, drawl_hired_body_get_tier (hired));
  int size = drawl_body_size_index (body, fields->size);
  int codec = drawl_body_codec_index (body, fields->codec);
  const DrawlBodyLimit *limit = choose_limit (body, tier, size, codec);

  if (limit == NULL)
    return;
  drawl_shot_fields_set (&fields->size, body->sizes[limit->size].id);
  if (limit->codec != DRAWL_BODY_NO_CODEC)
    drawl_shot_fields_set (&fields->codec, body->codecs[limit->codec].id);
}

void
drawl_shot_edit_give_body (DrawlShotFields *fields, DrawlHiredBody *hired)
{
  DrawlBody *body = drawl_hired_body_get_body (hired);
  DrawlTier held =
      drawl_tier_effective (body->licences, body->n_licences, drawl_hired_body_get_tier (hired));
  const DrawlBodyLimit *chosen = body->limits;

  drawl_shot_fields_set (&fields->body, drawl_hired_body_get_id (hired));
  fields->audio_tracks = MIN (body->audio_tracks, DRAWL_SHOT_AUDIO_MAX);
  if (body->n_limits == 0)
    return;
  for (guint i = 0; i < body->n_limits; i++)
    if (opens (&body->limits[i], held)) {
      chosen = &body->limits[i];
      break;
    }
  drawl_shot_fields_set (&fields->size, body->sizes[chosen->size].id);
  drawl_shot_fields_set (
      &fields->codec, chosen->codec != DRAWL_BODY_NO_CODEC ? body->codecs[chosen->codec].id : "");
}

void
drawl_shot_edit_set_body (DrawlShotFields *fields, DrawlPlan *plan, const char *id)
{
  DrawlHiredBody *hired = drawl_plan_find_body (plan, id);

  drawl_shot_fields_set (&fields->body, id);
  if (hired != NULL)
    settle_on (fields, hired);
}

void
drawl_shot_edit_set_size (DrawlShotFields *fields, DrawlPlan *plan, const char *id)
{
  DrawlHiredBody *hired = drawl_plan_find_body (plan, fields->body);

  drawl_shot_fields_set (&fields->size, id);
  if (hired != NULL && *id != '\0')
    settle_on (fields, hired);
}

gboolean
drawl_shot_edit_body (DrawlPlan *plan, DrawlShot *shot, const char *id, GError **error)
{
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (drawl_shot_get_fields (shot));

  drawl_shot_edit_set_body (fields, plan, id);
  return drawl_plan_set_shot (plan, shot, fields, _ ("Change body"), error);
}

gboolean
drawl_shot_edit_size (DrawlPlan *plan, DrawlShot *shot, const char *id, GError **error)
{
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (drawl_shot_get_fields (shot));

  drawl_shot_edit_set_size (fields, plan, id);
  return drawl_plan_set_shot (plan, shot, fields, _ ("Change size"), error);
}

gboolean
drawl_shot_edit_fallback (DrawlPlan *plan, DrawlShot *shot, const DrawlFallback *fallback,
                          GError **error)
{
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (drawl_shot_get_fields (shot));
  const DrawlBody *body = drawl_shot_get_question (shot)->body;

  drawl_shot_fields_set (&fields->size, body->sizes[fallback->size].id);
  if (fallback->codec != DRAWL_BODY_NO_CODEC)
    drawl_shot_fields_set (&fields->codec, body->codecs[fallback->codec].id);
  if (!drawl_rational_equal (fields->blanks.value[DRAWL_TIMING_CAPTURE], fallback->rate) &&
      !drawl_blanks_edit (&fields->blanks, DRAWL_TIMING_CAPTURE, fallback->rate, error))
    return FALSE;
  return drawl_plan_set_shot (plan, shot, fields, _ ("Shoot it as the body can"), error);
}

gboolean
drawl_shot_edit_hire (DrawlPlan *plan, DrawlShot *shot, DrawlTier add, GError **error)
{
  DrawlHiredBody *hired = drawl_plan_find_body (plan, drawl_shot_get_fields (shot)->body);
  g_autoptr (DrawlHiredFields) fields =
      drawl_hired_fields_copy (drawl_hired_body_get_fields (hired));

  fields->tier |= add;
  return drawl_plan_set_body (plan, hired, fields, _ ("Hire licence"), error);
}
