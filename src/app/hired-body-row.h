/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlHiredBodyRow: a hired body in the list: its name, and the tier it is hired with. */

#include <gtk/gtk.h>

#include "plan/hired-body.h"

#define DRAWL_TYPE_HIRED_BODY_ROW (drawl_hired_body_row_get_type ())
G_DECLARE_FINAL_TYPE (DrawlHiredBodyRow, drawl_hired_body_row, DRAWL, HIRED_BODY_ROW, GtkWidget)

GtkWidget *drawl_hired_body_row_new (void);
void drawl_hired_body_row_set_hired (DrawlHiredBodyRow *row, DrawlHiredBody *hired); /* or NULL */
