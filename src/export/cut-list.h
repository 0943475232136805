/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlCutList: the shots of a plan laid end to end, as a cutting room counts them: at the plan's
 * playback rate, each as long as its screen time, rounded up to whole frames. A shot that is to
 * play at another rate keeps its screen time in seconds. The media of a shot is taken to run in
 * real time, as it was shot; `speed` says how fast it is then played. */

#include "plan/plan.h"

typedef struct {
  DrawlShot *shot;     /* owned by the plan */
  gint64 in;           /* first frame, counted from 0 at the head of the list */
  gint64 frames;       /* at least 1 */
  DrawlRational speed; /* action time ÷ screen time = post speed ÷ slow factor: 1/10 is ten times
                          slower, 1 real time */
} DrawlCut;

typedef struct {
  DrawlRate rate;
  gboolean drop;       /* all shots that play at `rate` count drop-frame, and there is one */
  gboolean drop_mixed; /* some of them do, and some do not */
  guint n_converted;   /* shots that are to play at another rate */
  GArray *cuts;        /* of DrawlCut */
  gint64 frames;       /* of all */
} DrawlCutList;

/* Errors: DRAWL_EXPORT_ERROR_INEXACT. */
DrawlCutList *drawl_cut_list_new (DrawlPlan *plan, GError **error);
void drawl_cut_list_free (DrawlCutList *list);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (DrawlCutList, drawl_cut_list_free)

/* The frame that is coded 01:00:00:00, where the list begins. FALSE when its rate has no timecode.
 */
gboolean drawl_cut_list_start (const DrawlCutList *list, gint64 *frame);

/* Adds to @warnings (char *) what the list had to decide: shots of another rate, mixed counting. */
void drawl_cut_list_warn (const DrawlCutList *list, GPtrArray *warnings);
