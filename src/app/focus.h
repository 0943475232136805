/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Puts the keyboard focus into @widget, or onto the first that takes it within: now, or as soon as
 * it can be taken; a list that has just been filled has its rows a frame later. Given up after a
 * few frames. */

#include <gtk/gtk.h>

void drawl_focus_when_ready (GtkWidget *widget);
