/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlHeaderTitle: the middle of the header bar: title and file at its start, and the switcher of
 * pages where there is room for it. */

#include <adwaita.h>

#define DRAWL_TYPE_HEADER_TITLE (drawl_header_title_get_type ())
G_DECLARE_FINAL_TYPE (DrawlHeaderTitle, drawl_header_title, DRAWL, HEADER_TITLE, GtkWidget)

/* Property, read-only, notified: "narrow" (boolean): no room for the switcher. */

/* @subtitle may be empty; @tooltip may be NULL. */
void drawl_header_title_set (DrawlHeaderTitle *title, const char *text, const char *subtitle,
                             const char *tooltip);
/* The pages to switch between; NULL: no switcher. */
void drawl_header_title_set_stack (DrawlHeaderTitle *title, AdwViewStack *stack);
gboolean drawl_header_title_get_narrow (DrawlHeaderTitle *title);
