/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlPlan: the document: a list of shots (it is a GListModel of DrawlShot) and the bodies hired
 * for them. The one place where anything changes: each edit below is one step of undo, recomputes
 * what it touches, and then tells. Signals: GListModel::items-changed; "changed" after every edit,
 * undo and redo, once everything is worked out again. Properties, notified: "title", "modified"
 * (boolean), "can-undo", "can-redo", "undo-label", "redo-label". */

#include <gio/gio.h>

#include "plan/hired-body.h"
#include "plan/length-unit.h"
#include "plan/shot.h"

/* What a plan says about itself. */
typedef struct {
  char *title;
  char *production;
  char *day; /* shooting day, ISO 8601, or empty */
  char *notes;
  DrawlRate playback;            /* of new shots */
  gint64 mains_hz;               /* 50 or 60 */
  DrawlRational reserve_percent; /* of each card that stays empty */
  gboolean takes_span;           /* takes may run on from card to card */
  char *length_unit; /* of film: id of a DrawlLengthUnit; empty, or not known here: not told */
  JsonObject *extra; /* unknown keys, or NULL */
} DrawlPlanSettings;

DrawlPlanSettings *drawl_plan_settings_copy (const DrawlPlanSettings *settings);
void drawl_plan_settings_free (DrawlPlanSettings *settings);
gboolean drawl_plan_settings_equal (const DrawlPlanSettings *a, const DrawlPlanSettings *b);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (DrawlPlanSettings, drawl_plan_settings_free)

#define DRAWL_TYPE_PLAN (drawl_plan_get_type ())
G_DECLARE_FINAL_TYPE (DrawlPlan, drawl_plan, DRAWL, PLAN, GObject)

/* More shots or bodies than this no file and no edit brings in. */
#define DRAWL_PLAN_SHOTS_MAX 200000
#define DRAWL_PLAN_BODIES_MAX 200

DrawlPlan *drawl_plan_new (void);

const DrawlPlanSettings *drawl_plan_get_settings (DrawlPlan *plan);
/* The unit for lengths of film: the one that the plan tells, else the default, which is no part of
 * the plan and is feet unless it is set. */
DrawlLengthUnit drawl_plan_get_length_unit (DrawlPlan *plan);
void drawl_plan_set_default_length_unit (DrawlPlan *plan, DrawlLengthUnit unit);
GListModel *drawl_plan_get_bodies (DrawlPlan *plan); /* of DrawlHiredBody; owned by the plan */
guint drawl_plan_n_shots (DrawlPlan *plan);
DrawlShot *drawl_plan_get_shot (DrawlPlan *plan, guint position);     /* no reference is taken */
DrawlShot *drawl_plan_find_shot (DrawlPlan *plan, const char *slate); /* or NULL; by hash */
DrawlHiredBody *drawl_plan_find_body (DrawlPlan *plan, const char *id);
/* Position of a shot, or -1. */
int drawl_plan_shot_position (DrawlPlan *plan, DrawlShot *shot);
/* A slate that is free: the one after the last shot's ("12" → "13", "12A" → "12B", …). New string.
 */
char *drawl_plan_next_slate (DrawlPlan *plan);
/* An id for a body that is free: "A", "B", … New string. */
char *drawl_plan_next_body_id (DrawlPlan *plan);

/* Edits. @label is a translated phrase for the undo entry ("Change rate"). Values equal to the
 * present ones make no step. Errors: DRAWL_PLAN_ERROR_DUPLICATE (slate or id taken), _VALUE (empty
 * slate …), _TOO_LARGE; nothing has changed then. */
gboolean drawl_plan_set_shot (DrawlPlan *plan, DrawlShot *shot, const DrawlShotFields *fields,
                              const char *label, GError **error);
gboolean drawl_plan_insert_shot (DrawlPlan *plan, guint position, const DrawlShotFields *fields,
                                 const char *label, GError **error);
/* Many at once, of DrawlShotFields, behind bodies that are hired for them, of DrawlHiredFields: one
 * step, told of once; all of them or, with an error, none. */
gboolean drawl_plan_insert_all (DrawlPlan *plan, guint position, const GPtrArray *hired_fields,
                                const GPtrArray *shot_fields, const char *label, GError **error);
/* The same for shots that are on the plan, in any order, none of them twice. @shot_fields are what
 * they get, one each; none may take the slate that another one has. @position is a gap of the list
 * as it now is (0: before the first shot): they are moved there, in the plan's order. @order: all
 * shots of the plan. */
gboolean drawl_plan_set_all (DrawlPlan *plan, const GPtrArray *shots, const GPtrArray *shot_fields,
                             const char *label, GError **error);
void drawl_plan_remove_all (DrawlPlan *plan, const GPtrArray *shots, const char *label);
void drawl_plan_move_all (DrawlPlan *plan, const GPtrArray *shots, guint position,
                          const char *label);
void drawl_plan_reorder (DrawlPlan *plan, const GPtrArray *order, const char *label);
void drawl_plan_remove_shot (DrawlPlan *plan, guint position, const char *label);
void drawl_plan_move_shot (DrawlPlan *plan, guint from, guint to, const char *label);
gboolean drawl_plan_insert_body (DrawlPlan *plan, guint position, const DrawlHiredFields *fields,
                                 const char *label, GError **error);
/* A new id goes along into the shots that refer to it. */
gboolean drawl_plan_set_body (DrawlPlan *plan, DrawlHiredBody *hired,
                              const DrawlHiredFields *fields, const char *label, GError **error);
void drawl_plan_remove_body (DrawlPlan *plan, DrawlHiredBody *hired, const char *label);
gboolean drawl_plan_set_settings (DrawlPlan *plan, const DrawlPlanSettings *settings,
                                  const char *label, GError **error);

/* Edits between begin and end are one step of undo, labelled by begin (a drag, an edit of many
 * shots). Nests. Consecutive edits of the same shot within a group keep only the first "before". */
void drawl_plan_begin_step (DrawlPlan *plan, const char *label);
void drawl_plan_end_step (DrawlPlan *plan);

gboolean drawl_plan_can_undo (DrawlPlan *plan);
gboolean drawl_plan_can_redo (DrawlPlan *plan);
const char *drawl_plan_undo_label (DrawlPlan *plan); /* or NULL */
const char *drawl_plan_redo_label (DrawlPlan *plan);
void drawl_plan_undo (DrawlPlan *plan);
void drawl_plan_redo (DrawlPlan *plan);

/* Differs from what was last saved or loaded; undo back to that state is unmodified again. */
gboolean drawl_plan_get_modified (DrawlPlan *plan);
void drawl_plan_mark_saved (DrawlPlan *plan);
/* What the plan holds stands in no file, though nothing was edited: it was recovered. */
void drawl_plan_mark_unsaved (DrawlPlan *plan);

/* For plan-file.c: fills an empty plan without undo steps, then works everything out once. The
 * elements of @shot_fields are taken, NULL stands in their place. Errors as the edits. */
gboolean drawl_plan_fill (DrawlPlan *plan, const DrawlPlanSettings *settings,
                          GPtrArray *hired_fields, GPtrArray *shot_fields, GError **error);
