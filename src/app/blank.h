/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlBlank: a blank of a sentence that holds a number: an entry as wide as its text, the unit
 * after it, and a toggle that holds the term.
 * Signals: "step" (int: how many, up or down), "hold" (boolean). What is typed comes through its
 * edit. Actions: "blank.step" (int), "blank.hold"; keys Up, Down, Page Up, Page Down, Ctrl+L. */

#include "app/edit.h"
#include "app/term.h"

#define DRAWL_TYPE_BLANK (drawl_blank_get_type ())
G_DECLARE_FINAL_TYPE (DrawlBlank, drawl_blank, DRAWL, BLANK, GtkWidget)

GtkWidget *drawl_blank_new (DrawlTimingTerm term);

DrawlTimingTerm drawl_blank_get_term (DrawlBlank *blank);
DrawlEdit *drawl_blank_get_edit (DrawlBlank *blank);

/* Shows the number. @follows: from what it follows, in words; NULL when it drives. */
void drawl_blank_show (DrawlBlank *blank, const char *number, gboolean held, const char *follows);
/* A figure that may no longer be right is greyed. */
void drawl_blank_set_stale (DrawlBlank *blank, gboolean stale);
gboolean drawl_blank_get_follows (DrawlBlank *blank);
