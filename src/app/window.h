/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlWindow: one window, one plan; without a plan, a welcome. Several windows may show one plan.
 * Split by concern: window.c (what is shown), window-actions.c (edits), window-files.c (open,
 * close, and asking first), window-save.c, window-notices.c (what happens to the file meanwhile).
 */

#include "app/application.h"
#include "app/document.h"

#define DRAWL_TYPE_WINDOW (drawl_window_get_type ())
G_DECLARE_FINAL_TYPE (DrawlWindow, drawl_window, DRAWL, WINDOW, AdwApplicationWindow)

/* Property "document" (DrawlDocument or NULL). */

DrawlWindow *drawl_window_new (DrawlApplication *application);

DrawlDocument *drawl_window_get_document (DrawlWindow *window); /* NULL: the welcome is shown */
void drawl_window_set_document (DrawlWindow *window, DrawlDocument *document);

/* The window that has @file open, or NULL. */
DrawlWindow *drawl_window_find (GtkApplication *application, GFile *file);

/* Reads @file into this window, asking first about unsaved work; what cannot be read is told, and
 * the window keeps what it has. A window that has @file open already is raised instead. */
void drawl_window_open (DrawlWindow *window, GFile *file);
/* Closes every window that shows this one's document, after asking once about unsaved work. */
void drawl_window_close_document (DrawlWindow *window);
/* @document in place of @former in all windows; @former's work is given up. */
void drawl_window_put_everywhere (GtkApplication *application, DrawlDocument *former,
                                  DrawlDocument *document);
/* Saves to @file as the plan's own from now on. FALSE (told) when it could not be written. */
gboolean drawl_window_save_to (DrawlWindow *window, GFile *file);
