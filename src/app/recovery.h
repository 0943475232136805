/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Unsaved work that lost programs left behind: looked for once the window is there, and offered. */

#include <adwaita.h>

/* Looks for all of it; the program has started. */
void drawl_recovery_look (GtkApplication *application);
/* Looks for that of @file, which was just opened. @application may be NULL: nothing is offered. */
void drawl_recovery_look_for (GtkApplication *application, GFile *file);
