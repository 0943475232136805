/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlFigureButton: a figure of a shot that opens to its working. Looks like a label. */

#include <gtk/gtk.h>

#include "plan/working.h"

#define DRAWL_TYPE_FIGURE_BUTTON (drawl_figure_button_get_type ())
G_DECLARE_FINAL_TYPE (DrawlFigureButton, drawl_figure_button, DRAWL, FIGURE_BUTTON, GtkButton)

GtkWidget *drawl_figure_button_new (DrawlFigure figure);
DrawlFigure drawl_figure_button_get_figure (DrawlFigureButton *button);

/* Shows the figure of @shot (NULL for none). FALSE, and the button hides, when it has none. */
gboolean drawl_figure_button_set_shot (DrawlFigureButton *button, DrawlPlan *plan, DrawlShot *shot);
/* "Time on a card", or NULL. */
const char *drawl_figure_button_get_name (DrawlFigureButton *button);
/* The popover, once it was opened; else NULL. */
GtkWidget *drawl_figure_button_get_popover (DrawlFigureButton *button);
