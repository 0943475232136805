/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlApplication: the program: its windows, and what belongs to none of them. */

#include <adwaita.h>

#define DRAWL_APPLICATION_ID "org.drawl.Drawl"

#define DRAWL_TYPE_APPLICATION (drawl_application_get_type ())
G_DECLARE_FINAL_TYPE (DrawlApplication, drawl_application, DRAWL, APPLICATION, AdwApplication)

DrawlApplication *drawl_application_new (void);

/* Page last open, window size, mains frequency of new plans. */
GSettings *drawl_application_get_settings (DrawlApplication *application);

#include "app/document.h"

typedef struct _DrawlWindow DrawlWindow;

/* Shows @document, which no window has yet, in a window, and tells which. */
DrawlWindow *drawl_application_show_document (DrawlApplication *application,
                                              DrawlDocument *document);
/* Shows @file in a window: the one that has it open, else one that shows no plan, else a new one.
 */
void drawl_application_show_file (DrawlApplication *application, GFile *file);
