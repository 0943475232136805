/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlShotFilter: which shots the list shows: those of one verdict, on one body, and in which
 * every word of a search stands: in slate, scene, action or notes. */

#include "plan/hired-body.h"
#include "plan/shot.h"

typedef struct _DrawlShotFilter DrawlShotFilter;

#define DRAWL_SHOT_FILTER_ANY (-1)

DrawlShotFilter *drawl_shot_filter_new (void);
void drawl_shot_filter_free (DrawlShotFilter *filter);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (DrawlShotFilter, drawl_shot_filter_free)

/* Each returns whether that is another filter than before. */

/* A DrawlVerdict, or DRAWL_SHOT_FILTER_ANY. */
gboolean drawl_shot_filter_set_verdict (DrawlShotFilter *filter, int verdict);
/* A body of the plan, under whatever id it has; NULL: any, or none. */
gboolean drawl_shot_filter_set_body (DrawlShotFilter *filter, DrawlHiredBody *hired);
/* Upper and lower case are the same; empty: every shot. */
gboolean drawl_shot_filter_set_text (DrawlShotFilter *filter, const char *text);

int drawl_shot_filter_get_verdict (DrawlShotFilter *filter);
DrawlHiredBody *drawl_shot_filter_get_body (DrawlShotFilter *filter);

/* TRUE while every shot matches, whatever it is. */
gboolean drawl_shot_filter_is_open (DrawlShotFilter *filter);
gboolean drawl_shot_filter_matches (DrawlShotFilter *filter, DrawlShot *shot);
