/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* What the sources of the plan share: its struct, and how changes are applied and told of. */

#include "plan/history.h"
#include "plan/plan.h"

struct _DrawlPlan {
  GObject parent_instance;
  DrawlPlanSettings *settings;
  GPtrArray *shots;     /* of DrawlShot */
  GHashTable *by_slate; /* slate, owned by the shot → shot */
  GListStore *bodies;   /* of DrawlHiredBody */
  DrawlHistory *history;
  DrawlLengthUnit default_length_unit;
  gboolean told_modified; /* what the views were last told */
  const DrawlStep *told_undo;
  const DrawlStep *told_redo;
};

DrawlPlanSettings *drawl_plan_settings_new (void);
/* The members of a plan file that are neither bodies nor shots. @with_extra: also the keys that
 * this version does not know, behind the known ones. */
JsonObject *drawl_plan_settings_to_json (const DrawlPlanSettings *settings, gboolean with_extra);
/* FALSE with DRAWL_PLAN_ERROR_VALUE, naming the key, when a plan cannot have such settings. */
gboolean drawl_plan_settings_check (const DrawlPlanSettings *settings, GError **error);

/* Whether @shot (NULL: a new one) may have these fields; whether @hired may; whether there is room.
 * Errors as the edits. */
gboolean drawl_plan_check_shot (DrawlPlan *plan, DrawlShot *shot, const DrawlShotFields *fields,
                                GError **error);
gboolean drawl_plan_check_hired (DrawlPlan *plan, DrawlHiredBody *hired,
                                 const DrawlHiredFields *fields, GError **error);
gboolean drawl_plan_check_room (DrawlPlan *plan, guint more_bodies, guint more_shots,
                                GError **error);

/* Gives those of @shot_fields (DrawlShotFields) a free slate whose own is the plan's or stands
 * twice among them: each counts on from its own. */
void drawl_plan_free_slates (DrawlPlan *plan, const GPtrArray *shot_fields);
/* @wanted, or what counts on from it, that is neither the id of a body of the plan nor in @given
 * (NULL: empty). New string. */
char *drawl_plan_free_body_id (DrawlPlan *plan, const char *wanted, GHashTable *given);

/* An empty list of shots with references, with room for @n; and adds to one those of another that
 * stand from @first to before @end. */
GPtrArray *drawl_plan_new_shots (guint n);
void drawl_plan_add_shots (GPtrArray *shots, const GPtrArray *from, guint first, guint end);

/* Applies a change, and turns it over: it then holds what takes it back. Works out anew what it
 * touches. The values must have been checked. */
void drawl_plan_apply (DrawlPlan *plan, DrawlChange *change);
/* Applies @n changes as one step, or as part of the open one, and tells once. Takes what they hold.
 */
void drawl_plan_make_step (DrawlPlan *plan, const char *label, DrawlChange *changes, guint n);
/* Works out every shot. */
void drawl_plan_recompute (DrawlPlan *plan);

/* Notifies the properties that follow from the history, and emits "changed". */
void drawl_plan_tell_history (DrawlPlan *plan);
void drawl_plan_tell_changed (DrawlPlan *plan);
void drawl_plan_tell_title (DrawlPlan *plan);

/* The body at @position, or NULL past the end; no reference is taken. */
DrawlHiredBody *drawl_plan_body_at (DrawlPlan *plan, guint position);
