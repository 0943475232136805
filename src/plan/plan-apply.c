/* SPDX-License-Identifier: GPL-3.0-or-later */

/* How a change is applied to a plan. Each kind is its own inverse once turned over: values are
 * swapped with what stood there, insertion becomes removal. What a change touches is worked out
 * before anyone hears of it. */

#include "plan/list-stretch.h"
#include "plan/plan-private.h"

static void
recompute_shot (DrawlPlan *plan, DrawlShot *shot, DrawlHiredBody *hired)
{
  drawl_shot_recompute (shot, hired, plan->settings->reserve_percent, plan->settings->takes_span);
}

static const char *
body_of (DrawlShot *shot)
{
  return drawl_shot_get_fields (shot)->body;
}

static void
recompute_if (DrawlPlan *plan, gboolean (*concerns) (DrawlShot *shot))
{
  DrawlHiredBody *hired = NULL;

  for (guint i = 0; i < plan->shots->len; i++) {
    DrawlShot *shot = plan->shots->pdata[i];
    if (concerns != NULL && !concerns (shot))
      continue;
    if (hired == NULL || !g_str_equal (drawl_hired_body_get_id (hired), body_of (shot)))
      hired = drawl_plan_find_body (plan, body_of (shot));
    recompute_shot (plan, shot, hired);
  }
}

void
drawl_plan_recompute (DrawlPlan *plan)
{
  recompute_if (plan, NULL);
}

static gboolean
goes_on_cards (DrawlShot *shot)
{
  const DrawlBody *body = drawl_shot_get_question (shot)->body;
  return body != NULL && body->kind == DRAWL_BODY_DIGITAL;
}

static void
recompute_shots_of (DrawlPlan *plan, DrawlHiredBody *hired)
{
  const char *id = drawl_hired_body_get_id (hired);

  for (guint i = 0; i < plan->shots->len; i++)
    if (g_str_equal (body_of (plan->shots->pdata[i]), id))
      recompute_shot (plan, plan->shots->pdata[i], hired);
}

/* The look-up goes by the slate that the shot owns. */
static void
give_fields (DrawlPlan *plan, DrawlShot *shot, const DrawlShotFields *fields)
{
  g_hash_table_remove (plan->by_slate, drawl_shot_get_slate (shot));
  drawl_shot_take_fields (shot, fields);
  g_hash_table_insert (plan->by_slate, (char *)drawl_shot_get_slate (shot), shot);
}

static void
apply_shot_set (DrawlPlan *plan, DrawlChange *change)
{
  DrawlShotFields *before = drawl_shot_fields_copy (drawl_shot_get_fields (change->shot));

  give_fields (plan, change->shot, change->shot_fields);
  drawl_shot_fields_free (change->shot_fields);
  change->shot_fields = before;
  recompute_shot (plan, change->shot, drawl_plan_find_body (plan, body_of (change->shot)));
}

static void
apply_shot_insert (DrawlPlan *plan, DrawlChange *change)
{
  change->kind = DRAWL_CHANGE_SHOT_REMOVE;
  g_ptr_array_insert (plan->shots, (int)change->position, g_object_ref (change->shot));
  g_hash_table_insert (plan->by_slate, (char *)drawl_shot_get_slate (change->shot), change->shot);
  recompute_shot (plan, change->shot, drawl_plan_find_body (plan, body_of (change->shot)));
  g_list_model_items_changed (G_LIST_MODEL (plan), change->position, 0, 1);
}

static void
apply_shot_remove (DrawlPlan *plan, DrawlChange *change)
{
  change->kind = DRAWL_CHANGE_SHOT_INSERT;
  g_hash_table_remove (plan->by_slate, drawl_shot_get_slate (change->shot));
  g_ptr_array_remove_index (plan->shots, change->position);
  g_list_model_items_changed (G_LIST_MODEL (plan), change->position, 1, 0);
}

/* One telling for the whole stretch, so that a view that looks for its shot finds it again. */
static void
apply_shot_move (DrawlPlan *plan, DrawlChange *change)
{
  guint from = change->position, to = change->to;
  guint first = MIN (from, to), span = MAX (from, to) - first + 1;

  g_ptr_array_insert (plan->shots, (int)to, g_ptr_array_steal_index (plan->shots, from));
  change->position = to;
  change->to = from;
  g_list_model_items_changed (G_LIST_MODEL (plan), first, span, span);
}

/* The list as a whole changes places with the one before it. */
static void
apply_shots (DrawlPlan *plan, DrawlChange *change)
{
  GPtrArray *before = plan->shots, *coming = change->coming, *going = change->going;

  for (guint i = 0; i < going->len; i++)
    g_hash_table_remove (plan->by_slate, drawl_shot_get_slate (going->pdata[i]));
  plan->shots = change->shots;
  change->shots = before;
  change->coming = going;
  change->going = coming;
  for (guint i = 0; i < coming->len; i++) {
    DrawlShot *shot = coming->pdata[i];
    g_hash_table_insert (plan->by_slate, (char *)drawl_shot_get_slate (shot), shot);
    recompute_shot (plan, shot, drawl_plan_find_body (plan, body_of (shot)));
  }
  drawl_list_tell_stretch (G_LIST_MODEL (plan), before, plan->shots);
}

/* No shot has the id @to before, so the same the other way round takes it back. */
static void
rename_in_shots (DrawlPlan *plan, const char *from, const char *to)
{
  for (guint i = 0; i < plan->shots->len; i++) {
    DrawlShot *shot = plan->shots->pdata[i];
    if (!g_str_equal (body_of (shot), from))
      continue;
    g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (drawl_shot_get_fields (shot));
    drawl_shot_fields_set (&fields->body, to);
    give_fields (plan, shot, fields);
  }
}

static void
apply_body_set (DrawlPlan *plan, DrawlChange *change)
{
  DrawlHiredFields *before = drawl_hired_fields_copy (drawl_hired_body_get_fields (change->hired));

  drawl_hired_body_take_fields (change->hired, change->hired_fields);
  drawl_hired_fields_free (change->hired_fields);
  change->hired_fields = before;
  if (!g_str_equal (before->id, drawl_hired_body_get_id (change->hired)))
    rename_in_shots (plan, before->id, drawl_hired_body_get_id (change->hired));
  recompute_shots_of (plan, change->hired);
}

static void
apply_body_insert (DrawlPlan *plan, DrawlChange *change)
{
  change->kind = DRAWL_CHANGE_BODY_REMOVE;
  g_list_store_insert (plan->bodies, change->position, change->hired);
}

static void
apply_body_remove (DrawlPlan *plan, DrawlChange *change)
{
  change->kind = DRAWL_CHANGE_BODY_INSERT;
  g_list_store_remove (plan->bodies, change->position);
}

static void
apply_settings (DrawlPlan *plan, DrawlChange *change)
{
  DrawlPlanSettings *before = plan->settings, *after = change->settings;

  plan->settings = after;
  change->settings = before;
  if (!drawl_rational_equal (before->reserve_percent, after->reserve_percent) ||
      before->takes_span != after->takes_span)
    recompute_if (plan, goes_on_cards);
  if (!g_str_equal (before->title, after->title))
    drawl_plan_tell_title (plan);
}

void
drawl_plan_apply (DrawlPlan *plan, DrawlChange *change)
{
  static void (*const apply[]) (DrawlPlan *, DrawlChange *) = {
      [DRAWL_CHANGE_SHOT_SET] = apply_shot_set,
      [DRAWL_CHANGE_SHOT_INSERT] = apply_shot_insert,
      [DRAWL_CHANGE_SHOT_REMOVE] = apply_shot_remove,
      [DRAWL_CHANGE_SHOT_MOVE] = apply_shot_move,
      [DRAWL_CHANGE_SHOTS] = apply_shots,
      [DRAWL_CHANGE_BODY_SET] = apply_body_set,
      [DRAWL_CHANGE_BODY_INSERT] = apply_body_insert,
      [DRAWL_CHANGE_BODY_REMOVE] = apply_body_remove,
      [DRAWL_CHANGE_SETTINGS] = apply_settings,
  };

  apply[change->kind](plan, change);
}
