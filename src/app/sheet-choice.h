/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Which sheet on which paper: the lists that windows offer, and the sheet that is chosen. */

#include <gtk/gtk.h>

#include "draw/sheet.h"

/* Names of the sheets, of the papers, in the order of their tables. New references. */
GListModel *drawl_sheet_choice_kinds (void);
GListModel *drawl_sheet_choice_papers (void);

/* The paper that is usual where the program runs: its place in the list. */
guint drawl_sheet_choice_usual_paper (void);

/* What a printer is told of that paper, upright or lying as @sheet does. New reference. */
GtkPageSetup *drawl_sheet_choice_page_setup (guint paper, const DrawlSheet *sheet);

/* The sheet of those places in the lists, as of now. */
DrawlSheet *drawl_sheet_choice_make (DrawlPlan *plan, guint kind, guint paper);
