/* SPDX-License-Identifier: GPL-3.0-or-later */

/* One plan made like another, by changes that undo can turn over. What both have at the head and at
 * the tail of the list is set in place; what is between goes and comes. Where the bodies are not
 * the same ones in the same order, every shot goes first, so that none refers to a body that is not
 * there. */

#include "plan/plan-replace.h"

#include "plan/plan-private.h"

typedef struct {
  DrawlPlan *plan;
  DrawlPlan *other;
  GArray *changes; /* of DrawlChange */
} Replacing;

static void
add (Replacing *replacing, DrawlChange change)
{
  g_array_append_val (replacing->changes, change);
}

static guint
n_bodies (DrawlPlan *plan)
{
  return g_list_model_get_n_items (G_LIST_MODEL (plan->bodies));
}

static gboolean
same_bodies (DrawlPlan *plan, DrawlPlan *other)
{
  guint n = n_bodies (plan);

  if (n != n_bodies (other))
    return FALSE;
  for (guint i = 0; i < n; i++)
    if (!g_str_equal (drawl_hired_body_get_id (drawl_plan_body_at (plan, i)),
                      drawl_hired_body_get_id (drawl_plan_body_at (other, i))))
      return FALSE;
  return TRUE;
}

static const char *
slate_at (DrawlPlan *plan, guint position)
{
  return drawl_shot_get_slate (plan->shots->pdata[position]);
}

/* How many slates both have at the head of the list, and then at its tail. */
static void
find_common (DrawlPlan *plan, DrawlPlan *other, guint *head, guint *tail)
{
  guint n = plan->shots->len, m = other->shots->len, least = MIN (n, m);

  *head = 0;
  while (*head < least && g_str_equal (slate_at (plan, *head), slate_at (other, *head)))
    ++*head;
  *tail = 0;
  while (*tail < least - *head &&
         g_str_equal (slate_at (plan, n - 1 - *tail), slate_at (other, m - 1 - *tail)))
    ++*tail;
}

static void
set_settings (Replacing *replacing)
{
  if (!drawl_plan_settings_equal (replacing->plan->settings, replacing->other->settings))
    add (replacing,
         (DrawlChange){.kind = DRAWL_CHANGE_SETTINGS,
                       .settings = drawl_plan_settings_copy (replacing->other->settings)});
}

static void
set_bodies (Replacing *replacing)
{
  for (guint i = 0; i < n_bodies (replacing->plan); i++) {
    DrawlHiredBody *hired = drawl_plan_body_at (replacing->plan, i);
    const DrawlHiredFields *fields =
        drawl_hired_body_get_fields (drawl_plan_body_at (replacing->other, i));
    if (!drawl_hired_fields_equal (fields, drawl_hired_body_get_fields (hired)))
      add (replacing, (DrawlChange){.kind = DRAWL_CHANGE_BODY_SET,
                                    .hired = g_object_ref (hired),
                                    .hired_fields = drawl_hired_fields_copy (fields)});
  }
}

static void
exchange_bodies (Replacing *replacing)
{
  for (guint i = n_bodies (replacing->plan); i-- > 0;)
    add (replacing, (DrawlChange){.kind = DRAWL_CHANGE_BODY_REMOVE,
                                  .hired = g_object_ref (drawl_plan_body_at (replacing->plan, i)),
                                  .position = i});
  for (guint i = 0; i < n_bodies (replacing->other); i++)
    add (replacing, (DrawlChange){.kind = DRAWL_CHANGE_BODY_INSERT,
                                  .hired = drawl_hired_body_new (drawl_hired_body_get_fields (
                                      drawl_plan_body_at (replacing->other, i))),
                                  .position = i});
}

static void
set_shots (Replacing *replacing, guint from, guint other_from, guint n)
{
  for (guint i = 0; i < n; i++) {
    DrawlShot *shot = replacing->plan->shots->pdata[from + i];
    const DrawlShotFields *fields =
        drawl_shot_get_fields (replacing->other->shots->pdata[other_from + i]);
    if (!drawl_shot_fields_equal (fields, drawl_shot_get_fields (shot)))
      add (replacing, (DrawlChange){.kind = DRAWL_CHANGE_SHOT_SET,
                                    .shot = g_object_ref (shot),
                                    .shot_fields = drawl_shot_fields_copy (fields)});
  }
}

/* The list as it is to be: what both have at the head, what comes between, what both have at the
 * tail. One change each way, however many they are, so that views look once. */
static void
change_list (Replacing *replacing, guint head, guint tail, GPtrArray *coming, GPtrArray *going)
{
  const GPtrArray *present = replacing->plan->shots;
  GPtrArray *shots = drawl_plan_new_shots (head + coming->len + tail);

  drawl_plan_add_shots (shots, present, 0, head);
  drawl_plan_add_shots (shots, coming, 0, coming->len);
  drawl_plan_add_shots (shots, present, present->len - tail, present->len);
  add (replacing,
       (DrawlChange){.kind = DRAWL_CHANGE_SHOTS, .shots = shots, .coming = coming, .going = going});
}

static void
remove_shots (Replacing *replacing, guint head, guint tail)
{
  guint n = replacing->plan->shots->len;
  GPtrArray *going = drawl_plan_new_shots (n);

  if (head + tail < n) {
    drawl_plan_add_shots (going, replacing->plan->shots, head, n - tail);
    change_list (replacing, head, tail, drawl_plan_new_shots (0), going);
  } else
    g_ptr_array_unref (going);
}

static void
insert_shots (Replacing *replacing, guint head, guint tail)
{
  const GPtrArray *wanted = replacing->other->shots;
  GPtrArray *coming = drawl_plan_new_shots (wanted->len);

  for (guint i = head; i < wanted->len - tail; i++)
    g_ptr_array_add (coming, drawl_shot_new (drawl_shot_get_fields (wanted->pdata[i])));
  if (coming->len > 0)
    change_list (replacing, head, tail, coming, drawl_plan_new_shots (0));
  else
    g_ptr_array_unref (coming);
}

gboolean
drawl_plan_replace (DrawlPlan *plan, DrawlPlan *other, const char *label)
{
  g_autoptr (GArray) changes = g_array_new (FALSE, FALSE, sizeof (DrawlChange));
  Replacing replacing = {plan, other, changes};
  guint head = 0, tail = 0, n = plan->shots->len, m = other->shots->len;
  gboolean keeps_bodies = same_bodies (plan, other);

  if (keeps_bodies)
    find_common (plan, other, &head, &tail);
  set_settings (&replacing);
  remove_shots (&replacing, head, tail);
  if (keeps_bodies)
    set_bodies (&replacing);
  else
    exchange_bodies (&replacing);
  set_shots (&replacing, 0, 0, head);
  insert_shots (&replacing, head, tail);
  set_shots (&replacing, n - tail, m - tail, tail);
  if (changes->len == 0)
    return FALSE;
  drawl_plan_make_step (plan, label, (DrawlChange *)(gpointer)changes->data, changes->len);
  return TRUE;
}
