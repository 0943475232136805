/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlShotHires: the bodies that shots from elsewhere bring to a plan. A shot names its body by
 * the id that it has on its plan, and by the id of its profile. */

#include "plan/plan.h"

typedef struct {
  DrawlPlan *plan;
  GPtrArray *hires;   /* of DrawlHiredFields: to be hired as well */
  GPtrArray *shipped; /* of DrawlBody: loaded once it is needed */
} DrawlShotHires;

void drawl_shot_hires_init (DrawlShotHires *hires, DrawlPlan *plan);
void drawl_shot_hires_clear (DrawlShotHires *hires);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (DrawlShotHires, drawl_shot_hires_clear)

/* Sets the body of @fields to the id that it has, or is going to have, on the plan; @profile may be
 * empty. One that is not there yet is hired from the plan's own profiles, or from those that are
 * shipped or the user's own, under its id if that is free. FALSE with DRAWL_PLAN_ERROR_UNKNOWN when
 * there is no such body. */
gboolean drawl_shot_hires_settle (DrawlShotHires *hires, DrawlShotFields *fields,
                                  const char *profile, GError **error);
