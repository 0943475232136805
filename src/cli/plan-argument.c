/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Plans and shots as a command line names them: a plan by its file, a shot by its slate. */

#include "cli/plan-argument.h"

#include "cli/error.h"
#include "cli/file-argument.h"
#include "cli/nearest.h"
#include "core/error.h"
#include "core/text.h"
#include "plan/plan-file.h"

DrawlPlan *
drawl_plan_argument_load (const DrawlCall *call, GError **error)
{
  g_autoptr (GFile) file = drawl_file_argument (call->files[0]);
  GError *reason = NULL;
  DrawlPlan *plan = drawl_plan_load (file, NULL, &reason);

  if (plan == NULL)
    drawl_cli_refuse_file (error, reason);
  return plan;
}

DrawlShot *
drawl_plan_argument_shot (const DrawlCall *call, DrawlPlan *plan, guint option, GError **error)
{
  const char *slate;

  if (!drawl_call_text (call, option, &slate, error))
    return NULL;
  DrawlShot *shot = drawl_plan_find_shot (plan, slate);
  if (shot != NULL)
    return shot;

  g_autofree char *quoted = drawl_core_quote (slate);
  g_autofree char *message = NULL;
  DrawlNearest nearest;
  drawl_nearest_init (&nearest, slate);
  for (guint i = 0; i < drawl_plan_n_shots (plan); i++)
    drawl_nearest_offer (&nearest, drawl_shot_get_slate (drawl_plan_get_shot (plan, i)));
  message = nearest.name != NULL
                ? g_strdup_printf (_ ("the plan has no slate “%s”, the nearest is “%s”; a slate of "
                                      "the plan is expected"),
                                   quoted, nearest.name)
                : g_strdup_printf (
                      _ ("the plan has no slate “%s”; a slate of the plan is expected"), quoted);
  drawl_call_refuse (call, option, message, error);
  return NULL;
}
