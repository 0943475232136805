/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlExportDialog: what a plan is written as for another program, and where to. */

#include <adwaita.h>

#include "plan/plan.h"

#define DRAWL_TYPE_EXPORT_DIALOG (drawl_export_dialog_get_type ())
G_DECLARE_FINAL_TYPE (DrawlExportDialog, drawl_export_dialog, DRAWL, EXPORT_DIALOG, AdwWindow)

/* Signal "written" (GFile, GPtrArray of char *: sentences of what had to be decided). */

/* @name is that of the file without its ending. */
DrawlExportDialog *drawl_export_dialog_new (GtkWindow *parent, DrawlPlan *plan, const char *name);

/* Chooses what is written: "csv", "otio", "edl" or "pdf". */
void drawl_export_dialog_choose (DrawlExportDialog *dialog, const char *format);

/* Writes what is chosen to @file and closes; FALSE, with a message, when that cannot be done:
 * whatever stood there stays. */
gboolean drawl_export_dialog_write (DrawlExportDialog *dialog, GFile *file);
