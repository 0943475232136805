/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The edits of one shot that more than one view makes: each is one step of undo. */

#include "plan/plan.h"

/* ---- Of fields alone: nothing changes in a plan ---- */

/* The body, with the first size and codec that are open to its tier, so that a new shot can be done
 * as hired. */
void drawl_shot_edit_give_body (DrawlShotFields *fields, DrawlHiredBody *hired);
/* What the edits below do to the fields. */
gboolean drawl_shot_edit_set_term (DrawlShotFields *fields, DrawlTimingTerm term,
                                   DrawlRational value, GError **error);
void drawl_shot_edit_set_body (DrawlShotFields *fields, DrawlPlan *plan, const char *id);
void drawl_shot_edit_set_size (DrawlShotFields *fields, DrawlPlan *plan, const char *id);

/* ---- Of a shot ---- */

/* Types @value into @term of @from (NULL: the shot's present sentence). Drop counting is switched
 * off when the playback rate has none. Errors: as drawl_blanks_edit() and drawl_plan_set_shot();
 * nothing has changed then. */
gboolean drawl_shot_edit_term (DrawlPlan *plan, DrawlShot *shot, const DrawlBlanks *from,
                               DrawlTimingTerm term, DrawlRational value, GError **error);
/* Holds or lets go of a term. */
void drawl_shot_edit_hold (DrawlPlan *plan, DrawlShot *shot, DrawlTimingTerm term, gboolean held);
/* Puts the shot on another body of the plan ("" for none). Size and codec stay where that body has
 * them together; else the first that its tier allows. */
gboolean drawl_shot_edit_body (DrawlPlan *plan, DrawlShot *shot, const char *id, GError **error);
/* Another size ("" for none); the codec stays where it can. */
gboolean drawl_shot_edit_size (DrawlPlan *plan, DrawlShot *shot, const char *id, GError **error);
/* Shoots it as @fallback says: size, codec and capture rate. */
gboolean drawl_shot_edit_fallback (DrawlPlan *plan, DrawlShot *shot, const DrawlFallback *fallback,
                                   GError **error);
/* Adds licences to the tier of the shot's body. */
gboolean drawl_shot_edit_hire (DrawlPlan *plan, DrawlShot *shot, DrawlTier add, GError **error);
