/* SPDX-License-Identifier: GPL-3.0-or-later */

/* How an empty plan is filled from a file: without undo, worked out once at the end, and empty
 * again if anything is refused. */

#include "plan/plan-private.h"

#include "core/text.h"

static gboolean
fill_body (DrawlPlan *plan, const DrawlHiredFields *fields, GError **error)
{
  if (!drawl_plan_check_hired (plan, NULL, fields, error))
    return FALSE;
  g_autoptr (DrawlHiredBody) hired = drawl_hired_body_new (fields);
  g_list_store_append (plan->bodies, hired);
  return TRUE;
}

/* Takes the fields over. */
static gboolean
fill_shot (DrawlPlan *plan, gpointer *fields, GError **error)
{
  if (!drawl_plan_check_shot (plan, NULL, *fields, error))
    return FALSE;
  DrawlShot *shot = drawl_shot_new_bare (g_steal_pointer (fields));
  g_ptr_array_add (plan->shots, shot);
  g_hash_table_insert (plan->by_slate, (char *)drawl_shot_get_slate (shot), shot);
  return TRUE;
}

static gboolean
fill_all (DrawlPlan *plan, GPtrArray *hired_fields, GPtrArray *shot_fields, GError **error)
{
  for (guint i = 0; i < hired_fields->len; i++)
    if (!fill_body (plan, hired_fields->pdata[i], error)) {
      g_prefix_error (error, _ ("body number %u: "), i + 1);
      return FALSE;
    }
  for (guint i = 0; i < shot_fields->len; i++)
    if (!fill_shot (plan, &shot_fields->pdata[i], error)) {
      g_prefix_error (error, _ ("shot number %u: "), i + 1);
      return FALSE;
    }
  return TRUE;
}

gboolean
drawl_plan_fill (DrawlPlan *plan, const DrawlPlanSettings *settings, GPtrArray *hired_fields,
                 GPtrArray *shot_fields, GError **error)
{
  g_return_val_if_fail (plan->shots->len == 0, FALSE);

  if (!drawl_plan_settings_check (settings, error) ||
      !drawl_plan_check_room (plan, hired_fields->len, shot_fields->len, error))
    return FALSE;
  if (!fill_all (plan, hired_fields, shot_fields, error)) {
    g_hash_table_remove_all (plan->by_slate);
    g_ptr_array_set_size (plan->shots, 0);
    g_list_store_remove_all (plan->bodies);
    return FALSE;
  }
  g_autoptr (DrawlPlanSettings) before = plan->settings; /* may be @settings itself */
  plan->settings = drawl_plan_settings_copy (settings);
  drawl_plan_recompute (plan);
  g_list_model_items_changed (G_LIST_MODEL (plan), 0, 0, plan->shots->len);
  drawl_plan_tell_title (plan);
  drawl_plan_tell_changed (plan);
  return TRUE;
}
