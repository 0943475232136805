/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlPrintDialog: which sheet is printed, on which paper, and what its pages look like, before
 * the dialogue of the system asks for the printer. */

#include <adwaita.h>

#include "draw/sheet.h"
#include "plan/plan.h"

#define DRAWL_TYPE_PRINT_DIALOG (drawl_print_dialog_get_type ())
G_DECLARE_FINAL_TYPE (DrawlPrintDialog, drawl_print_dialog, DRAWL, PRINT_DIALOG, AdwWindow)

DrawlPrintDialog *drawl_print_dialog_new (GtkWindow *parent, DrawlPlan *plan);

/* The sheet whose pages are shown. */
const DrawlSheet *drawl_print_dialog_get_sheet (DrawlPrintDialog *dialog);

/* What prints the sheet that is shown, on its own paper, edge to edge. New reference; the dialogue
 * must stay as long. */
GtkPrintOperation *drawl_print_dialog_operation (DrawlPrintDialog *dialog);
