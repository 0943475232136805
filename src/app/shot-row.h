/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlShotRow: a shot in the list: slate, what happens, the sentence in short, a bar of real time
 * above screen time, and the verdict's mark; above it, where a scene begins, which and how many
 * shots it has. */

#include <gtk/gtk.h>

#include "plan/shot.h"

#define DRAWL_TYPE_SHOT_ROW (drawl_shot_row_get_type ())
G_DECLARE_FINAL_TYPE (DrawlShotRow, drawl_shot_row, DRAWL, SHOT_ROW, GtkWidget)

/* Properties: "shot" (DrawlShot or NULL), "longest" (double): seconds that fill the bar's width.
 * Signals "clicked", without a key held; "menu-wanted". */

GtkWidget *drawl_shot_row_new (void);
DrawlShot *drawl_shot_row_get_shot (DrawlShotRow *row);
void drawl_shot_row_set_shot (DrawlShotRow *row, DrawlShot *shot);
/* @scene: NULL for none; "" for shots that are of no scene. */
void drawl_shot_row_set_heading (DrawlShotRow *row, const char *scene, guint n_shots);
/* A line where what is dragged would go. */
void drawl_shot_row_mark_drop (DrawlShotRow *row, gboolean before, gboolean after);
void drawl_shot_row_set_longest (DrawlShotRow *row, double longest_s);
