/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Shots end to end. Invariant: each cut begins where the one before it ends; frames are whole,
 * speeds exact. */

#include "export/cut-list.h"

#include "core/error.h"
#include "core/text.h"
#include "core/timecode.h"
#include "export/error.h"

#define START_HOURS 1

static gboolean
refuse (DrawlShot *shot, GError **error)
{
  g_autofree char *slate = drawl_core_quote (drawl_shot_get_slate (shot));
  g_set_error (error, DRAWL_EXPORT_ERROR, DRAWL_EXPORT_ERROR_INEXACT,
               _ ("shot %s: its frames cannot be counted exactly; times of fewer digits are "
                  "expected"),
               slate);
  return FALSE;
}

static gboolean
add_cut (DrawlCutList *list, DrawlShot *shot, GError **error)
{
  const DrawlRational *value = drawl_shot_get_timing (shot)->value;
  DrawlCut cut = {.shot = shot, .in = list->frames};
  DrawlRational frames;

  if (!drawl_rational_mul (value[DRAWL_TIMING_SCREEN], list->rate, &frames) ||
      !drawl_rational_div (value[DRAWL_TIMING_ACTION], value[DRAWL_TIMING_SCREEN], &cut.speed))
    return refuse (shot, error);
  cut.frames = drawl_rational_ceil (frames);
  if (cut.frames > G_MAXINT64 - list->frames)
    return refuse (shot, error);
  list->frames += cut.frames;
  g_array_append_val (list->cuts, cut);
  return TRUE;
}

static void
count_drop (DrawlCutList *list, DrawlPlan *plan)
{
  guint n_drop = 0, n_other = 0;

  for (guint i = 0; i < list->cuts->len; i++) {
    const DrawlShotFields *fields = drawl_shot_get_fields (drawl_plan_get_shot (plan, i));
    if (!drawl_rational_equal (fields->blanks.value[DRAWL_TIMING_PLAYBACK], list->rate))
      list->n_converted++;
    else if (fields->drop)
      n_drop++;
    else
      n_other++;
  }
  list->drop = n_drop > 0 && n_other == 0;
  list->drop_mixed = n_drop > 0 && n_other > 0;
}

DrawlCutList *
drawl_cut_list_new (DrawlPlan *plan, GError **error)
{
  g_autoptr (DrawlCutList) list = g_new0 (DrawlCutList, 1);

  list->rate = drawl_plan_get_settings (plan)->playback;
  list->cuts = g_array_new (FALSE, FALSE, sizeof (DrawlCut));
  for (guint i = 0; i < drawl_plan_n_shots (plan); i++)
    if (!add_cut (list, drawl_plan_get_shot (plan, i), error))
      return NULL;
  count_drop (list, plan);
  return g_steal_pointer (&list);
}

void
drawl_cut_list_free (DrawlCutList *list)
{
  g_array_unref (list->cuts);
  g_free (list);
}

gboolean
drawl_cut_list_start (const DrawlCutList *list, gint64 *frame)
{
  g_autofree char *code = g_strdup_printf ("%02d:00:00%c00", START_HOURS, list->drop ? ';' : ':');
  return drawl_timecode_parse (list->rate, list->drop, code, frame, NULL);
}

void
drawl_cut_list_warn (const DrawlCutList *list, GPtrArray *warnings)
{
  char rate[DRAWL_RATIONAL_TEXT_SIZE];

  if (list->n_converted > 0)
    g_ptr_array_add (warnings,
                     g_strdup_printf (ngettext_ ("%u shot is to play at another rate than the "
                                                 "plan's %s; its screen time is kept",
                                                 "%u shots are to play at another rate than the "
                                                 "plan's %s; their screen times are kept",
                                                 list->n_converted),
                                      list->n_converted, drawl_rate_text (list->rate, rate)));
  if (list->drop_mixed)
    g_ptr_array_add (warnings, g_strdup (_ ("some shots count drop-frame and some do not; the list "
                                            "counts non-drop")));
}
