/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Puts an edited body where it is used: into a plan, and into the user's folder of profiles. */

#include "plan/body-draft.h"
#include "plan/plan.h"

/* @hired has the body of the draft from now on, in one step of undo: its tier and card, and the
 * sizes and codecs of its shots, go along with ids that changed. FALSE with the plan's error, or
 * DRAWL_PLAN_ERROR_VALUE while the draft has mistakes. */
gboolean drawl_body_draft_apply (DrawlBodyDraft *draft, DrawlPlan *plan, DrawlHiredBody *hired,
                                 GError **error);

/* Writes the profile to ID.json in the user's folder, which drawl_body_load_shipped() reads; a file
 * that stands there is kept once as ID.json~. Errors: those of drawl_json_save(). */
gboolean drawl_body_save_own (DrawlBody *body, GError **error);
