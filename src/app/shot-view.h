/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlShotView: the shots of a plan as the list shows them: those that pass the filter, in the
 * order that is asked for; a list model of DrawlShot. Nothing of it changes the plan. Signals:
 * GListModel::items-changed, at most once a change; "refreshed": shown shots, order or scene
 * headings may be others than before. */

#include "app/shot-filter.h"
#include "app/shot-order.h"
#include "plan/plan.h"

#define DRAWL_TYPE_SHOT_VIEW (drawl_shot_view_get_type ())
G_DECLARE_FINAL_TYPE (DrawlShotView, drawl_shot_view, DRAWL, SHOT_VIEW, GObject)

DrawlShotView *drawl_shot_view_new (void);
void drawl_shot_view_set_plan (DrawlShotView *view, DrawlPlan *plan);
DrawlPlan *drawl_shot_view_get_plan (DrawlShotView *view); /* or NULL */

/* Change it, then narrow the view. */
DrawlShotFilter *drawl_shot_view_get_filter (DrawlShotView *view);
void drawl_shot_view_set_order (DrawlShotView *view, const DrawlShotOrder *order);
const DrawlShotOrder *drawl_shot_view_get_order (DrawlShotView *view);

/* A set of shots that stay shown whatever the filter says, so that those in hand do not vanish
 * under an edit. Not owned; looked at whenever the view is made anew, except by narrowing. */
void drawl_shot_view_set_kept (DrawlShotView *view, GHashTable *kept);

/* Shots have changed: looks again. Additions and removals are followed by themselves. */
void drawl_shot_view_refresh (DrawlShotView *view);
/* The filter has changed: looks again, and lets go of those that are only kept. */
void drawl_shot_view_narrow (DrawlShotView *view);

guint drawl_shot_view_n_shown (DrawlShotView *view);
DrawlShot *drawl_shot_view_get_shot (DrawlShotView *view, guint position); /* no reference */
/* G_MAXUINT when it is not shown. */
guint drawl_shot_view_find (DrawlShotView *view, DrawlShot *shot);

/* Those shown stand in the plan's order, so that moving them means what it looks like. */
gboolean drawl_shot_view_in_plan_order (DrawlShotView *view);
/* All shots of the plan, those that the filter hides as well, in the order of the view: of
 * DrawlShot, with references. */
GPtrArray *drawl_shot_view_dup_order (DrawlShotView *view);

/* The scene whose shots begin at @position, and how many of them are shown; NULL where none begins
 * or shots are not grouped. */
const char *drawl_shot_view_heading (DrawlShotView *view, guint position, guint *n_shots);
