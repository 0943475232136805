/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlShotBundle: shots on their way from one plan to another, or to another program: what is
 * dragged or copied. It holds the shots as they were when they were taken, with the bodies that
 * they are shot on. Immutable.
 *
 * As text it is a plan file of these shots alone (drawl-plan(5)), so that what a plan may hold is
 * checked by the same rules. */

#include "plan/plan.h"

#define DRAWL_SHOT_BUNDLE_MIME_TYPE "application/vnd.drawl.shots+json"

#define DRAWL_TYPE_SHOT_BUNDLE (drawl_shot_bundle_get_type ())
G_DECLARE_FINAL_TYPE (DrawlShotBundle, drawl_shot_bundle, DRAWL, SHOT_BUNDLE, GObject)

/* @shots: of DrawlShot, all on @plan. */
DrawlShotBundle *drawl_shot_bundle_new (DrawlPlan *plan, const GPtrArray *shots);

guint drawl_shot_bundle_n_shots (DrawlShotBundle *bundle);
/* The plan that the shots were taken from, or NULL when they came as text; and those of them that
 * are still on it, of DrawlShot with references. */
DrawlPlan *drawl_shot_bundle_get_plan (DrawlShotBundle *bundle);
GPtrArray *drawl_shot_bundle_dup_shots (DrawlShotBundle *bundle);
/* As they were taken: of DrawlShotFields, of DrawlHiredFields; owned by the bundle. */
const GPtrArray *drawl_shot_bundle_get_shot_fields (DrawlShotBundle *bundle);
const GPtrArray *drawl_shot_bundle_get_hired_fields (DrawlShotBundle *bundle);

/* New string. */
char *drawl_shot_bundle_to_text (DrawlShotBundle *bundle, gsize *length);
/* @where names the text in messages. Errors: as drawl_plan_from_data(); DRAWL_PLAN_ERROR_VALUE for
 * a text without shots. */
DrawlShotBundle *drawl_shot_bundle_from_text (const char *text, gsize length, const char *where,
                                              GError **error);

/* Copies the shots into @plan, in one step of undo: from @position on, behind the bodies that are
 * not there yet. A body is there when the plan has one of the very same profile. A slate that is
 * taken counts on to the next free one. Errors as drawl_plan_insert_all(). */
gboolean drawl_shot_bundle_insert (DrawlShotBundle *bundle, DrawlPlan *plan, guint position,
                                   const char *label, GError **error);
