/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The edits of a plan. Each one checks first, so that a refused edit has changed nothing; then it
 * applies its changes, records them for undo, and tells. */

#include "plan/plan-private.h"

#include "core/error.h"
#include "core/text.h"
#include "plan/error.h"

#include <string.h>

/* ---- Steps ---- */

void
drawl_plan_begin_step (DrawlPlan *plan, const char *label)
{
  drawl_history_begin (plan->history, label);
  drawl_plan_tell_history (plan);
}

/* A drag that ends where it began is no step. */
static gboolean
leads_nowhere (DrawlPlan *plan, const DrawlChange *change)
{
  switch (change->kind) {
  case DRAWL_CHANGE_SHOT_SET:
    return drawl_shot_fields_equal (change->shot_fields, drawl_shot_get_fields (change->shot));
  case DRAWL_CHANGE_BODY_SET:
    return drawl_hired_fields_equal (change->hired_fields,
                                     drawl_hired_body_get_fields (change->hired));
  case DRAWL_CHANGE_SETTINGS:
    return drawl_plan_settings_equal (change->settings, plan->settings);
  default:
    return FALSE;
  }
}

/* Closes a step without a word; TRUE when it was the outermost. */
static gboolean
close_step (DrawlPlan *plan)
{
  const DrawlChange *only = drawl_history_only_news (plan->history);

  if (only != NULL && leads_nowhere (plan, only))
    drawl_history_drop_news (plan->history);
  return drawl_history_end (plan->history);
}

void
drawl_plan_end_step (DrawlPlan *plan)
{
  gboolean news = drawl_history_has_news (plan->history);

  if (!close_step (plan))
    return;
  drawl_plan_tell_history (plan);
  if (news)
    drawl_plan_tell_changed (plan);
}

void
drawl_plan_make_step (DrawlPlan *plan, const char *label, DrawlChange *changes, guint n)
{
  drawl_history_begin (plan->history, label);
  for (guint i = 0; i < n; i++) {
    drawl_plan_apply (plan, &changes[i]);
    drawl_history_add (plan->history, &changes[i]);
  }
  drawl_history_end (plan->history);
  drawl_plan_tell_history (plan);
  drawl_plan_tell_changed (plan);
}

void
drawl_plan_undo (DrawlPlan *plan)
{
  if (!drawl_plan_can_undo (plan))
    return;
  GArray *changes = drawl_history_back (plan->history)->changes;
  for (guint i = changes->len; i-- > 0;)
    drawl_plan_apply (plan, &g_array_index (changes, DrawlChange, i));
  drawl_plan_tell_history (plan);
  drawl_plan_tell_changed (plan);
}

void
drawl_plan_redo (DrawlPlan *plan)
{
  if (!drawl_plan_can_redo (plan))
    return;
  GArray *changes = drawl_history_forth (plan->history)->changes;
  for (guint i = 0; i < changes->len; i++)
    drawl_plan_apply (plan, &g_array_index (changes, DrawlChange, i));
  drawl_plan_tell_history (plan);
  drawl_plan_tell_changed (plan);
}

void
drawl_plan_mark_saved (DrawlPlan *plan)
{
  drawl_history_mark (plan->history);
  drawl_plan_tell_history (plan);
}

void
drawl_plan_mark_unsaved (DrawlPlan *plan)
{
  drawl_history_unmark (plan->history);
  drawl_plan_tell_history (plan);
}

/* ---- Shots ---- */

static gboolean
refuse_slate (const char *slate, GError **error)
{
  g_autofree char *quote = drawl_core_quote (slate);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_DUPLICATE,
               _ ("another shot already has the slate “%s”"), quote);
  return FALSE;
}

static gboolean
refuse_body (const DrawlShotFields *fields, GError **error)
{
  g_autofree char *slate = drawl_core_quote (fields->slate);
  g_autofree char *body = drawl_core_quote (fields->body);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_UNKNOWN,
               _ ("shot %s: “body”: there is no body “%s” on the plan"), slate, body);
  return FALSE;
}

gboolean
drawl_plan_check_shot (DrawlPlan *plan, DrawlShot *shot, const DrawlShotFields *fields,
                       GError **error)
{
  DrawlShot *namesake = drawl_plan_find_shot (plan, fields->slate);

  if (!drawl_shot_fields_check (fields, error))
    return FALSE;
  if (namesake != NULL && namesake != shot)
    return refuse_slate (fields->slate, error);
  if (fields->body[0] != '\0' && drawl_plan_find_body (plan, fields->body) == NULL)
    return refuse_body (fields, error);
  return TRUE;
}

gboolean
drawl_plan_set_shot (DrawlPlan *plan, DrawlShot *shot, const DrawlShotFields *fields,
                     const char *label, GError **error)
{
  if (drawl_shot_fields_equal (fields, drawl_shot_get_fields (shot)))
    return TRUE;
  if (!drawl_plan_check_shot (plan, shot, fields, error))
    return FALSE;

  DrawlChange change = {
      .kind = DRAWL_CHANGE_SHOT_SET,
      .shot = g_object_ref (shot),
      .shot_fields = drawl_shot_fields_copy (fields),
  };
  drawl_plan_make_step (plan, label, &change, 1);
  return TRUE;
}

static gboolean
has_room (guint present, guint more, guint most)
{
  return more <= most && present <= most - more;
}

gboolean
drawl_plan_check_room (DrawlPlan *plan, guint more_bodies, guint more_shots, GError **error)
{
  guint n_bodies = g_list_model_get_n_items (G_LIST_MODEL (plan->bodies));
  gboolean bodies_fit = has_room (n_bodies, more_bodies, DRAWL_PLAN_BODIES_MAX);

  if (bodies_fit && has_room (plan->shots->len, more_shots, DRAWL_PLAN_SHOTS_MAX))
    return TRUE;
  if (bodies_fit)
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_TOO_LARGE,
                 _ ("a plan holds at most %d shots"), DRAWL_PLAN_SHOTS_MAX);
  else
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_TOO_LARGE,
                 _ ("a plan holds at most %d bodies"), DRAWL_PLAN_BODIES_MAX);
  return FALSE;
}

gboolean
drawl_plan_insert_shot (DrawlPlan *plan, guint position, const DrawlShotFields *fields,
                        const char *label, GError **error)
{
  if (!drawl_plan_check_room (plan, 0, 1, error) ||
      !drawl_plan_check_shot (plan, NULL, fields, error))
    return FALSE;

  DrawlChange change = {
      .kind = DRAWL_CHANGE_SHOT_INSERT,
      .shot = drawl_shot_new (fields),
      .position = MIN (position, plan->shots->len),
  };
  drawl_plan_make_step (plan, label, &change, 1);
  return TRUE;
}

void
drawl_plan_remove_shot (DrawlPlan *plan, guint position, const char *label)
{
  g_return_if_fail (position < plan->shots->len);

  DrawlChange change = {
      .kind = DRAWL_CHANGE_SHOT_REMOVE,
      .shot = g_object_ref (plan->shots->pdata[position]),
      .position = position,
  };
  drawl_plan_make_step (plan, label, &change, 1);
}

void
drawl_plan_move_shot (DrawlPlan *plan, guint from, guint to, const char *label)
{
  g_return_if_fail (from < plan->shots->len && to < plan->shots->len);

  if (from == to)
    return;
  DrawlChange change = {.kind = DRAWL_CHANGE_SHOT_MOVE, .position = from, .to = to};
  drawl_plan_make_step (plan, label, &change, 1);
}

/* ---- Bodies ---- */

gboolean
drawl_plan_check_hired (DrawlPlan *plan, DrawlHiredBody *hired, const DrawlHiredFields *fields,
                        GError **error)
{
  DrawlHiredBody *namesake = drawl_plan_find_body (plan, fields->id);

  if (!drawl_hired_fields_check (fields, error))
    return FALSE;
  if (namesake == NULL || namesake == hired)
    return TRUE;
  g_autofree char *quote = drawl_core_quote (fields->id);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_DUPLICATE,
               _ ("another body already has the id “%s”"), quote);
  return FALSE;
}

gboolean
drawl_plan_insert_body (DrawlPlan *plan, guint position, const DrawlHiredFields *fields,
                        const char *label, GError **error)
{
  guint n = g_list_model_get_n_items (G_LIST_MODEL (plan->bodies));

  if (!drawl_plan_check_room (plan, 1, 0, error) ||
      !drawl_plan_check_hired (plan, NULL, fields, error))
    return FALSE;

  DrawlChange change = {
      .kind = DRAWL_CHANGE_BODY_INSERT,
      .hired = drawl_hired_body_new (fields),
      .position = MIN (position, n),
  };
  drawl_plan_make_step (plan, label, &change, 1);
  return TRUE;
}

gboolean
drawl_plan_set_body (DrawlPlan *plan, DrawlHiredBody *hired, const DrawlHiredFields *fields,
                     const char *label, GError **error)
{
  if (drawl_hired_fields_equal (fields, drawl_hired_body_get_fields (hired)))
    return TRUE;
  if (!drawl_plan_check_hired (plan, hired, fields, error))
    return FALSE;

  DrawlChange change = {
      .kind = DRAWL_CHANGE_BODY_SET,
      .hired = g_object_ref (hired),
      .hired_fields = drawl_hired_fields_copy (fields),
  };
  drawl_plan_make_step (plan, label, &change, 1);
  return TRUE;
}

static void
add_change (GArray *changes, DrawlChange change)
{
  g_array_append_val (changes, change);
}

/* The shots of a body that goes are left without one. */
static void
add_partings (GArray *changes, DrawlPlan *plan, const char *id)
{
  for (guint i = 0; i < plan->shots->len; i++) {
    DrawlShot *shot = plan->shots->pdata[i];
    const DrawlShotFields *fields = drawl_shot_get_fields (shot);
    if (!g_str_equal (fields->body, id))
      continue;
    DrawlShotFields *without = drawl_shot_fields_copy (fields);
    drawl_shot_fields_set (&without->body, "");
    add_change (changes, (DrawlChange){.kind = DRAWL_CHANGE_SHOT_SET,
                                       .shot = g_object_ref (shot),
                                       .shot_fields = without});
  }
}

void
drawl_plan_remove_body (DrawlPlan *plan, DrawlHiredBody *hired, const char *label)
{
  g_autoptr (GArray) changes = g_array_new (FALSE, FALSE, sizeof (DrawlChange));
  guint position;

  g_return_if_fail (g_list_store_find (plan->bodies, hired, &position));
  add_partings (changes, plan, drawl_hired_body_get_id (hired));
  add_change (changes, (DrawlChange){.kind = DRAWL_CHANGE_BODY_REMOVE,
                                     .hired = g_object_ref (hired),
                                     .position = position});
  drawl_plan_make_step (plan, label, (DrawlChange *)(gpointer)changes->data, changes->len);
}

/* ---- Settings ---- */

gboolean
drawl_plan_set_settings (DrawlPlan *plan, const DrawlPlanSettings *settings, const char *label,
                         GError **error)
{
  if (drawl_plan_settings_equal (settings, plan->settings))
    return TRUE;
  if (!drawl_plan_settings_check (settings, error))
    return FALSE;

  DrawlChange change = {
      .kind = DRAWL_CHANGE_SETTINGS,
      .settings = drawl_plan_settings_copy (settings),
  };
  drawl_plan_make_step (plan, label, &change, 1);
  return TRUE;
}
