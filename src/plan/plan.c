/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The document as others see it: a list model of shots, properties, look-ups. Invariant: `by_slate`
 * has exactly the shots of the list, under their slates; every shot's body is empty or on the plan;
 * every figure is worked out against what the plan holds now. Nothing changes here: that is
 * plan-edit.c. */

#include "plan/plan-private.h"

#include <string.h>

enum {
  PROP_TITLE = 1,
  PROP_MODIFIED,
  PROP_CAN_UNDO,
  PROP_CAN_REDO,
  PROP_UNDO_LABEL,
  PROP_REDO_LABEL,
  N_PROPS
};

static GParamSpec *props[N_PROPS];
static guint changed_signal;

/* ---- List model ---- */

static GType
drawl_plan_get_item_type (GListModel *model)
{
  return DRAWL_TYPE_SHOT;
}

static guint
drawl_plan_get_n_items (GListModel *model)
{
  return DRAWL_PLAN (model)->shots->len;
}

static gpointer
drawl_plan_get_item (GListModel *model, guint position)
{
  DrawlPlan *self = DRAWL_PLAN (model);
  return position < self->shots->len ? g_object_ref (self->shots->pdata[position]) : NULL;
}

static void
list_model_init (GListModelInterface *iface)
{
  iface->get_item_type = drawl_plan_get_item_type;
  iface->get_n_items = drawl_plan_get_n_items;
  iface->get_item = drawl_plan_get_item;
}

G_DEFINE_FINAL_TYPE_WITH_CODE (DrawlPlan, drawl_plan, G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, list_model_init))

/* ---- Object ---- */

static void
drawl_plan_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  DrawlPlan *self = DRAWL_PLAN (object);

  switch (prop_id) {
  case PROP_TITLE:
    g_value_set_string (value, self->settings->title);
    break;
  case PROP_MODIFIED:
    g_value_set_boolean (value, drawl_plan_get_modified (self));
    break;
  case PROP_CAN_UNDO:
    g_value_set_boolean (value, drawl_plan_can_undo (self));
    break;
  case PROP_CAN_REDO:
    g_value_set_boolean (value, drawl_plan_can_redo (self));
    break;
  case PROP_UNDO_LABEL:
    g_value_set_string (value, drawl_plan_undo_label (self));
    break;
  case PROP_REDO_LABEL:
    g_value_set_string (value, drawl_plan_redo_label (self));
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
  }
}

static void
drawl_plan_finalize (GObject *object)
{
  DrawlPlan *self = DRAWL_PLAN (object);

  drawl_history_free (self->history);
  g_hash_table_unref (self->by_slate);
  g_ptr_array_unref (self->shots);
  g_object_unref (self->bodies);
  drawl_plan_settings_free (self->settings);
  G_OBJECT_CLASS (drawl_plan_parent_class)->finalize (object);
}

static void
drawl_plan_class_init (DrawlPlanClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GParamFlags flags = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;

  object_class->get_property = drawl_plan_get_property;
  object_class->finalize = drawl_plan_finalize;

  props[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, NULL, flags);
  props[PROP_MODIFIED] = g_param_spec_boolean ("modified", NULL, NULL, FALSE, flags);
  props[PROP_CAN_UNDO] = g_param_spec_boolean ("can-undo", NULL, NULL, FALSE, flags);
  props[PROP_CAN_REDO] = g_param_spec_boolean ("can-redo", NULL, NULL, FALSE, flags);
  props[PROP_UNDO_LABEL] = g_param_spec_string ("undo-label", NULL, NULL, NULL, flags);
  props[PROP_REDO_LABEL] = g_param_spec_string ("redo-label", NULL, NULL, NULL, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
}

static void
drawl_plan_init (DrawlPlan *self)
{
  self->settings = drawl_plan_settings_new ();
  self->shots = g_ptr_array_new_with_free_func (g_object_unref);
  self->by_slate = g_hash_table_new (g_str_hash, g_str_equal);
  self->bodies = g_list_store_new (DRAWL_TYPE_HIRED_BODY);
  self->history = drawl_history_new ();
}

DrawlPlan *
drawl_plan_new (void)
{
  return g_object_new (DRAWL_TYPE_PLAN, NULL);
}

/* ---- Look-ups ---- */

const DrawlPlanSettings *
drawl_plan_get_settings (DrawlPlan *plan)
{
  return plan->settings;
}

GListModel *
drawl_plan_get_bodies (DrawlPlan *plan)
{
  return G_LIST_MODEL (plan->bodies);
}

guint
drawl_plan_n_shots (DrawlPlan *plan)
{
  return plan->shots->len;
}

DrawlShot *
drawl_plan_get_shot (DrawlPlan *plan, guint position)
{
  g_return_val_if_fail (position < plan->shots->len, NULL);
  return plan->shots->pdata[position];
}

DrawlShot *
drawl_plan_find_shot (DrawlPlan *plan, const char *slate)
{
  return g_hash_table_lookup (plan->by_slate, slate);
}

DrawlHiredBody *
drawl_plan_body_at (DrawlPlan *plan, guint position)
{
  /* The store keeps the body alive. */
  g_autoptr (DrawlHiredBody) hired = g_list_model_get_item (G_LIST_MODEL (plan->bodies), position);
  return hired;
}

DrawlHiredBody *
drawl_plan_find_body (DrawlPlan *plan, const char *id)
{
  DrawlHiredBody *hired;

  if (id[0] == '\0')
    return NULL;
  for (guint i = 0; (hired = drawl_plan_body_at (plan, i)) != NULL; i++)
    if (g_str_equal (drawl_hired_body_get_id (hired), id))
      return hired;
  return NULL;
}

int
drawl_plan_shot_position (DrawlPlan *plan, DrawlShot *shot)
{
  guint position;
  return g_ptr_array_find (plan->shots, shot, &position) ? (int)position : -1;
}

gboolean
drawl_plan_can_undo (DrawlPlan *plan)
{
  return drawl_history_next_undo (plan->history) != NULL;
}

gboolean
drawl_plan_can_redo (DrawlPlan *plan)
{
  return drawl_history_next_redo (plan->history) != NULL;
}

const char *
drawl_plan_undo_label (DrawlPlan *plan)
{
  const DrawlStep *step = drawl_history_next_undo (plan->history);
  return step != NULL ? step->label : NULL;
}

const char *
drawl_plan_redo_label (DrawlPlan *plan)
{
  const DrawlStep *step = drawl_history_next_redo (plan->history);
  return step != NULL ? step->label : NULL;
}

gboolean
drawl_plan_get_modified (DrawlPlan *plan)
{
  return drawl_history_off_mark (plan->history);
}

/* ---- Telling ---- */

static void
notify_two (DrawlPlan *plan, guint first, guint second)
{
  g_object_notify_by_pspec (G_OBJECT (plan), props[first]);
  g_object_notify_by_pspec (G_OBJECT (plan), props[second]);
}

void
drawl_plan_tell_history (DrawlPlan *plan)
{
  const DrawlStep *undo = drawl_history_next_undo (plan->history);
  const DrawlStep *redo = drawl_history_next_redo (plan->history);
  gboolean modified = drawl_plan_get_modified (plan);
  gboolean other_undo = undo != plan->told_undo, other_redo = redo != plan->told_redo;
  gboolean other_modified = modified != plan->told_modified;

  plan->told_undo = undo;
  plan->told_redo = redo;
  plan->told_modified = modified;
  if (other_undo)
    notify_two (plan, PROP_CAN_UNDO, PROP_UNDO_LABEL);
  if (other_redo)
    notify_two (plan, PROP_CAN_REDO, PROP_REDO_LABEL);
  if (other_modified)
    g_object_notify_by_pspec (G_OBJECT (plan), props[PROP_MODIFIED]);
}

void
drawl_plan_tell_title (DrawlPlan *plan)
{
  g_object_notify_by_pspec (G_OBJECT (plan), props[PROP_TITLE]);
}

void
drawl_plan_tell_changed (DrawlPlan *plan)
{
  g_signal_emit (plan, changed_signal, 0);
}
