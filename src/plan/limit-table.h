/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlLimitTable: the limits of a body, read from a table of text: the maker's published table, a
 * size and codec a row. For each row either what stands in a profile's "limits", or the reason why
 * not. The body itself does not change. */

#include "plan/body.h"

typedef struct {
  guint line;        /* where the row begins, counted from 1 */
  JsonObject *limit; /* NULL when the row is rejected */
  char *heading;     /* of the column that is to blame, as the table has it; NULL: the row */
  char *reason;      /* a sentence; NULL when the row is good */
} DrawlLimitTableRow;

typedef struct {
  gboolean has_headings; /* FALSE: no known heading; read in the order size, codec, lowest_rate,
                            highest_rate, licences, card_class */
  gboolean latin_1;      /* the bytes were no UTF-8, and were taken for Latin-1 */
  char delimiter;
  GPtrArray *recognised; /* of DrawlTableHeading, in the table's order */
  GPtrArray *ignored; /* char *, headings that are not known, or stand for a known column again */
  GPtrArray *rows;    /* of DrawlLimitTableRow, in the table's order */
  guint n_good;
} DrawlLimitTable;

/* Reads a table against the sizes, codecs, licences, cards and rates of @body. Sizes and codecs are
 * given by id or by name; licences by their ids with spaces between them. Errors: those of
 * drawl_csv_read(), when there is no table at all. */
DrawlLimitTable *drawl_limit_table_read (const DrawlBody *body, const char *data, gsize length,
                                         GError **error);
void drawl_limit_table_free (DrawlLimitTable *table);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (DrawlLimitTable, drawl_limit_table_free)

/* The good rows, as the "limits" of a profile. */
JsonArray *drawl_limit_table_to_json (const DrawlLimitTable *table);
