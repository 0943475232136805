/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlShotSelection: which of the shown shots are chosen, and which one of them is in hand. Of
 * those shown one is chosen, always. It goes by the shots themselves, not by where they stand, so
 * that it outlives sorting, filtering, moving and undo. A selection model, and a list model of
 * places, which say nothing but where they are: the shot there is the view's. Signal "changed":
 * other shots are chosen, or another one is in hand. */

#include <gtk/gtk.h>

#include "app/shot-view.h"

#define DRAWL_TYPE_SHOT_SELECTION (drawl_shot_selection_get_type ())
G_DECLARE_FINAL_TYPE (DrawlShotSelection, drawl_shot_selection, DRAWL, SHOT_SELECTION, GObject)

DrawlShotSelection *drawl_shot_selection_new (DrawlShotView *view);

/* NULL when no shot is shown. No reference. */
DrawlShot *drawl_shot_selection_get_hand (DrawlShotSelection *selection);
guint drawl_shot_selection_n_chosen (DrawlShotSelection *selection);
gboolean drawl_shot_selection_has (DrawlShotSelection *selection, DrawlShot *shot);

/* Chooses @shots (of DrawlShot, on the plan) and no others; the first of them in the view is in
 * hand. A filter that hides some of them is set aside for those. */
void drawl_shot_selection_choose (DrawlShotSelection *selection, const GPtrArray *shots);
/* The one alone. */
void drawl_shot_selection_choose_one (DrawlShotSelection *selection, DrawlShot *shot);
