/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* What a combo row offers, kept in step with a list that changes. A choice that is made by a person
 * is told apart from one that follows from the plan. */

#include <adwaita.h>

/* Offers @names, with a word for none before them; the choice is @selected, an index into @names,
 * or -1 for none. Nothing is told to the callback of the row. What a row offers must not change by
 * its own choice: GTK 4.8 does not survive that. */
void drawl_choice_row_fill (AdwComboRow *row, GPtrArray *names, int selected);

/* Calls @chosen with @data first, then the index (-1 for none), whenever a person chooses. */
typedef void (*DrawlChosen) (gpointer data, int index);
void drawl_choice_row_watch (AdwComboRow *row, DrawlChosen chosen, gpointer data);
