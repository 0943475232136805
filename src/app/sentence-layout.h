/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlSentenceLayout: sets its widget's children like the words of a sentence: on lines as wide as
 * there is room, each line on one baseline, mirrored where text runs from right to left. */

#include <gtk/gtk.h>

#define DRAWL_TYPE_SENTENCE_LAYOUT (drawl_sentence_layout_get_type ())
G_DECLARE_FINAL_TYPE (DrawlSentenceLayout, drawl_sentence_layout, DRAWL, SENTENCE_LAYOUT,
                      GtkLayoutManager)

GtkLayoutManager *drawl_sentence_layout_new (void);

/* How @child stands to the one before it: against it, or else with a gap or none. */
void drawl_sentence_layout_join (GtkWidget *child, gboolean joined, gboolean spaced);

/* The gap between two words, and the room between two lines, of @widget's type, in pixels. */
int drawl_sentence_layout_gap (GtkWidget *widget);
int drawl_sentence_layout_leading (GtkWidget *widget);
