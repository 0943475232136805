/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Pictures in the window look as the window does: its colours, its type, its direction. */

#include <gtk/gtk.h>

#include "draw/style.h"

/* Fills @style for a picture on @widget; valid until the widget's style changes. */
void drawl_theme_style (GtkWidget *widget, DrawlStyle *style);
