/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlImportRow: a row of a table of shots on its way into a plan, as a list shows it. */

#include <glib-object.h>

#include "plan/shot-table.h"

#define DRAWL_TYPE_IMPORT_ROW (drawl_import_row_get_type ())
G_DECLARE_FINAL_TYPE (DrawlImportRow, drawl_import_row, DRAWL, IMPORT_ROW, GObject)

/* @row must outlive it. */
DrawlImportRow *drawl_import_row_new (const DrawlShotTableRow *row);

/* What a list shows of a row. */
typedef struct {
  const char *id;
  const char *title; /* marked for translation */
  int width;         /* pixels at least; 0: as its words need */
  gboolean number;   /* stands at the end of its column */
  gboolean expand;
  gboolean wrap;
  char *(*text) (const DrawlShotTableRow *row); /* new string */
} DrawlImportColumn;

/* Of rows that are good; of rows that are rejected. */
const DrawlImportColumn *drawl_import_columns_good (guint *n_columns);
const DrawlImportColumn *drawl_import_columns_bad (guint *n_columns);

/* What @column shows of the row. New string. */
char *drawl_import_row_text (DrawlImportRow *row, const DrawlImportColumn *column);
