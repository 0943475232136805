/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlShotFilter: which shots the list shows: those of one verdict, those in which every word of a
 * search stands (in slate, scene, action or notes), and always the kept one, so that the shot in
 * hand does not vanish under an edit. */

#include <gtk/gtk.h>

#include "plan/shot.h"

#define DRAWL_TYPE_SHOT_FILTER (drawl_shot_filter_get_type ())
G_DECLARE_FINAL_TYPE (DrawlShotFilter, drawl_shot_filter, DRAWL, SHOT_FILTER, GtkFilter)

#define DRAWL_SHOT_FILTER_ANY (-1)

DrawlShotFilter *drawl_shot_filter_new (void);

/* A DrawlVerdict, or DRAWL_SHOT_FILTER_ANY. */
void drawl_shot_filter_set_verdict (DrawlShotFilter *filter, int verdict);
int drawl_shot_filter_get_verdict (DrawlShotFilter *filter);

/* Upper and lower case are the same; empty: every shot. */
void drawl_shot_filter_set_text (DrawlShotFilter *filter, const char *text);

/* Matches from the next look on, whatever the rest says; NULL: none. */
void drawl_shot_filter_keep (DrawlShotFilter *filter, DrawlShot *shot);

/* The same, and looks again if @shot is not among those shown. */
void drawl_shot_filter_show (DrawlShotFilter *filter, DrawlShot *shot);

/* Shots have changed: look again. */
void drawl_shot_filter_refresh (DrawlShotFilter *filter);
