/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlSheetView: a page of a sheet, as large as it fits. Only the page that is shown is drawn. */

#include <gtk/gtk.h>

#include "draw/sheet.h"

#define DRAWL_TYPE_SHEET_VIEW (drawl_sheet_view_get_type ())
G_DECLARE_FINAL_TYPE (DrawlSheetView, drawl_sheet_view, DRAWL, SHEET_VIEW, GtkWidget)

/* Property, notified: "page" (uint, counted from 0). */

GtkWidget *drawl_sheet_view_new (void);

/* Takes over @sheet; shows its first page, or the one that was shown if it has that many. */
void drawl_sheet_view_set_sheet (DrawlSheetView *view, DrawlSheet *sheet);
DrawlSheet *drawl_sheet_view_get_sheet (DrawlSheetView *view); /* or NULL */

/* The nearest page that there is. */
void drawl_sheet_view_set_page (DrawlSheetView *view, int page);
guint drawl_sheet_view_get_page (DrawlSheetView *view);
