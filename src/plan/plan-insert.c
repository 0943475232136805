/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Many shots into a plan at once: all of them are checked against the plan and against each other
 * before the first one goes in, so that a refusal has changed nothing. */

#include "core/error.h"
#include "core/text.h"
#include "plan/error.h"
#include "plan/plan-private.h"

static gboolean
enter (GHashTable *names, const char *name, const char *message, GError **error)
{
  if (g_hash_table_add (names, (gpointer)name))
    return TRUE;
  g_autofree char *quote = drawl_core_quote (name);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_DUPLICATE, "%s: “%s”", message, quote);
  return FALSE;
}

/* @ids takes the ids of the bodies. */
static gboolean
check_bodies (DrawlPlan *plan, const GPtrArray *hired_fields, GHashTable *ids, GError **error)
{
  for (guint i = 0; i < hired_fields->len; i++) {
    const DrawlHiredFields *fields = hired_fields->pdata[i];
    if (!drawl_plan_check_hired (plan, NULL, fields, error) ||
        !enter (ids, fields->id, _ ("two bodies of one id"), error))
      return FALSE;
  }
  return TRUE;
}

/* A shot whose body is among @ids is looked at as if it had none. */
static gboolean
check_shot (DrawlPlan *plan, const DrawlShotFields *fields, GHashTable *ids, GError **error)
{
  if (!g_hash_table_contains (ids, fields->body))
    return drawl_plan_check_shot (plan, NULL, fields, error);
  g_autoptr (DrawlShotFields) without = drawl_shot_fields_copy (fields);
  drawl_shot_fields_set (&without->body, "");
  return drawl_plan_check_shot (plan, NULL, without, error);
}

static gboolean
check_shots (DrawlPlan *plan, const GPtrArray *shot_fields, GHashTable *ids, GError **error)
{
  g_autoptr (GHashTable) slates = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < shot_fields->len; i++) {
    const DrawlShotFields *fields = shot_fields->pdata[i];
    if (!check_shot (plan, fields, ids, error) ||
        !enter (slates, fields->slate, _ ("two shots of one slate"), error))
      return FALSE;
  }
  return TRUE;
}

static DrawlChange
insertion (DrawlPlan *plan, guint position, const GPtrArray *shot_fields)
{
  GPtrArray *coming = drawl_plan_new_shots (shot_fields->len);
  GPtrArray *shots = drawl_plan_new_shots (plan->shots->len + shot_fields->len);
  guint first = MIN (position, plan->shots->len);

  for (guint i = 0; i < shot_fields->len; i++)
    g_ptr_array_add (coming, drawl_shot_new_bare (drawl_shot_fields_copy (shot_fields->pdata[i])));
  drawl_plan_add_shots (shots, plan->shots, 0, first);
  drawl_plan_add_shots (shots, coming, 0, coming->len);
  drawl_plan_add_shots (shots, plan->shots, first, plan->shots->len);
  return (DrawlChange){.kind = DRAWL_CHANGE_SHOTS,
                       .shots = shots,
                       .coming = coming,
                       .going = drawl_plan_new_shots (0)};
}

gboolean
drawl_plan_insert_all (DrawlPlan *plan, guint position, const GPtrArray *hired_fields,
                       const GPtrArray *shot_fields, const char *label, GError **error)
{
  g_autoptr (GHashTable) ids = g_hash_table_new (g_str_hash, g_str_equal);
  guint n_bodies = g_list_model_get_n_items (G_LIST_MODEL (plan->bodies));
  guint n = hired_fields->len + (shot_fields->len > 0), at = 0;

  if (!drawl_plan_check_room (plan, hired_fields->len, shot_fields->len, error) ||
      !check_bodies (plan, hired_fields, ids, error) ||
      !check_shots (plan, shot_fields, ids, error))
    return FALSE;
  if (n == 0)
    return TRUE;

  g_autofree DrawlChange *changes = g_new0 (DrawlChange, n);
  for (guint i = 0; i < hired_fields->len; i++)
    changes[at++] = (DrawlChange){.kind = DRAWL_CHANGE_BODY_INSERT,
                                  .hired = drawl_hired_body_new (hired_fields->pdata[i]),
                                  .position = n_bodies + i};
  if (shot_fields->len > 0)
    changes[at] = insertion (plan, position, shot_fields);
  drawl_plan_make_step (plan, label, changes, n);
  return TRUE;
}
