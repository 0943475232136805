/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* A sheet as a PDF file. Equal sheets that were printed at the same time make equal bytes. */

#include <gio/gio.h>

#include "draw/sheet.h"

/* The time that the pages of a file bear: that of SOURCE_DATE_EPOCH, in UTC, where it is set, as
 * builds which must be reproduced ask for; else now. New reference. */
GDateTime *drawl_sheet_pdf_date (void);

/* Writes all pages of @sheet, aside first, then under the name of @file: a failure leaves what was
 * there. Errors: DRAWL_PLAN_ERROR_WRITE; G_IO_ERROR_FAILED when memory gave out. */
gboolean drawl_sheet_pdf_save (const DrawlSheet *sheet, GFile *file, GError **error);
