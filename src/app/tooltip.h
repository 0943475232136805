/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Sets a tooltip where it is another one than before. To set one, the toolkit asks the display
 * twice where the pointer is, and waits: too slow for what is refreshed at every edit. */

#include <gtk/gtk.h>

/* @text is plain; NULL: none. */
void drawl_tooltip_set (GtkWidget *widget, const char *text);
