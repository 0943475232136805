/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Edits of many shots at once. What a list is to be is made beside the one that is, and the two
 * change places as one change: a thousand shots of ten thousand go with one telling. */

#include "core/error.h"
#include "core/text.h"
#include "plan/error.h"
#include "plan/plan-private.h"

/* ---- Lists ---- */

GPtrArray *
drawl_plan_new_shots (guint n)
{
  return g_ptr_array_new_full (n, g_object_unref);
}

void
drawl_plan_add_shots (GPtrArray *shots, const GPtrArray *from, guint first, guint end)
{
  for (guint i = first; i < end; i++)
    g_ptr_array_add (shots, g_object_ref (from->pdata[i]));
}

static GHashTable *
set_of (const GPtrArray *shots)
{
  GHashTable *set = g_hash_table_new (NULL, NULL);

  for (guint i = 0; i < shots->len; i++)
    g_hash_table_add (set, shots->pdata[i]);
  return set;
}

/* Adds those shots of the plan from @first to before @end that are (or are not) in @set. */
static void
add_those (GPtrArray *shots, DrawlPlan *plan, guint first, guint end, GHashTable *set, gboolean in)
{
  for (guint i = first; i < end; i++)
    if (g_hash_table_contains (set, plan->shots->pdata[i]) == in)
      g_ptr_array_add (shots, g_object_ref (plan->shots->pdata[i]));
}

/* Takes @shots and @going. */
static void
change_list (DrawlPlan *plan, GPtrArray *shots, GPtrArray *going, const char *label)
{
  DrawlChange change = {
      .kind = DRAWL_CHANGE_SHOTS,
      .shots = shots,
      .coming = drawl_plan_new_shots (0),
      .going = going,
  };

  drawl_plan_make_step (plan, label, &change, 1);
}

void
drawl_plan_remove_all (DrawlPlan *plan, const GPtrArray *shots, const char *label)
{
  g_autoptr (GHashTable) set = set_of (shots);
  guint n = plan->shots->len;

  if (shots->len == 0)
    return;
  GPtrArray *left = drawl_plan_new_shots (n), *going = drawl_plan_new_shots (shots->len);
  add_those (left, plan, 0, n, set, FALSE);
  add_those (going, plan, 0, n, set, TRUE);
  change_list (plan, left, going, label);
}

static gboolean
same_order (const GPtrArray *a, const GPtrArray *b)
{
  for (guint i = 0; i < a->len; i++)
    if (a->pdata[i] != b->pdata[i])
      return FALSE;
  return TRUE;
}

/* Takes @order. */
static void
put_in_order (DrawlPlan *plan, GPtrArray *order, const char *label)
{
  if (same_order (order, plan->shots))
    g_ptr_array_unref (order);
  else
    change_list (plan, order, drawl_plan_new_shots (0), label);
}

void
drawl_plan_move_all (DrawlPlan *plan, const GPtrArray *shots, guint position, const char *label)
{
  g_autoptr (GHashTable) set = set_of (shots);
  guint n = plan->shots->len, gap = MIN (position, n);
  GPtrArray *order = drawl_plan_new_shots (n);

  add_those (order, plan, 0, gap, set, FALSE);
  add_those (order, plan, 0, n, set, TRUE);
  add_those (order, plan, gap, n, set, FALSE);
  put_in_order (plan, order, label);
}

void
drawl_plan_reorder (DrawlPlan *plan, const GPtrArray *order, const char *label)
{
  g_return_if_fail (order->len == plan->shots->len);

  GPtrArray *shots = drawl_plan_new_shots (order->len);
  drawl_plan_add_shots (shots, order, 0, order->len);
  put_in_order (plan, shots, label);
}

/* ---- Fields ---- */

static gboolean
check_all (DrawlPlan *plan, const GPtrArray *shots, const GPtrArray *shot_fields, GError **error)
{
  g_autoptr (GHashTable) slates = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < shots->len; i++) {
    const DrawlShotFields *fields = shot_fields->pdata[i];
    g_return_val_if_fail (drawl_plan_find_shot (plan, drawl_shot_get_slate (shots->pdata[i])) ==
                              shots->pdata[i],
                          FALSE);
    if (!drawl_plan_check_shot (plan, shots->pdata[i], fields, error))
      return FALSE;
    if (!g_hash_table_add (slates, fields->slate)) {
      g_autofree char *quote = drawl_core_quote (fields->slate);
      g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_DUPLICATE,
                   _ ("two shots cannot both have the slate “%s”"), quote);
      return FALSE;
    }
  }
  return TRUE;
}

gboolean
drawl_plan_set_all (DrawlPlan *plan, const GPtrArray *shots, const GPtrArray *shot_fields,
                    const char *label, GError **error)
{
  g_return_val_if_fail (shots->len == shot_fields->len, FALSE);

  if (!check_all (plan, shots, shot_fields, error))
    return FALSE;
  g_autofree DrawlChange *changes = g_new0 (DrawlChange, MAX (shots->len, 1));
  guint n = 0;
  for (guint i = 0; i < shots->len; i++) {
    const DrawlShotFields *fields = shot_fields->pdata[i];
    if (drawl_shot_fields_equal (fields, drawl_shot_get_fields (shots->pdata[i])))
      continue;
    changes[n++] = (DrawlChange){.kind = DRAWL_CHANGE_SHOT_SET,
                                 .shot = g_object_ref (shots->pdata[i]),
                                 .shot_fields = drawl_shot_fields_copy (fields)};
  }
  if (n > 0)
    drawl_plan_make_step (plan, label, changes, n);
  return TRUE;
}
