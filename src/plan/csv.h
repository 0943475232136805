/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlCsv: a table of text, read leniently and written strictly (RFC 4180). Reading takes `,` `;`
 * or tab between fields, whichever the first line uses (tab before `;` before `,` where it could be
 * either), or what a first line such as "sep=|" tells; line ends of every kind, UTF-8 with or
 * without a byte order mark, and Latin-1 when the bytes are no UTF-8. */

#include <glib.h>

#define DRAWL_CSV_MAX_BYTES (64 * 1024 * 1024)
#define DRAWL_CSV_MAX_FIELDS 1000 /* a row */
#define DRAWL_CSV_MAX_FIELDS_IN_ALL 10000000

typedef struct {
  char *text;      /* never NULL */
  gboolean quoted; /* stood in quotes, so white space at its ends is meant */
} DrawlCsvField;

typedef struct {
  GArray *fields; /* of DrawlCsvField */
  guint line;     /* where the row begins, counted from 1 */
} DrawlCsvRow;

typedef struct {
  GPtrArray *rows;  /* of DrawlCsvRow; rows without a single character are left out */
  char delimiter;   /* ',', ';', '\t', or as told */
  gboolean latin_1; /* the bytes were no UTF-8, and were taken for Latin-1: a warning is due */
} DrawlCsv;

/* Errors: DRAWL_PLAN_ERROR_SYNTAX (a quote that is never closed, text behind a closing quote, a NUL
 * byte; with the line), _TOO_LARGE. An empty table is no error. */
DrawlCsv *drawl_csv_read (const char *data, gsize length, GError **error);
void drawl_csv_free (DrawlCsv *csv);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (DrawlCsv, drawl_csv_free)

/* The field at @column, or "" when the row is shorter; and a copy of it without white space at its
 * ends, unless it stood in quotes. */
const char *drawl_csv_field (const DrawlCsvRow *row, guint column);
char *drawl_csv_field_stripped (const DrawlCsvRow *row, guint column);

/* Appends one row with its CRLF; fields that hold a delimiter of any kind, a quote, a line end, or
 * white space at an end are quoted. What is written is read back unchanged, but for rows without a
 * single character. */
void drawl_csv_append_row (GString *text, const char *const *fields, guint n_fields,
                           char delimiter);
