/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlTableMap: which column of a table of text holds which field. Headings may stand in any order
 * and be written as people write them: case, spaces, underscores, hyphens and units in brackets do
 * not count, and trade words are known as well as the field's own id. A first row is
 * one of headings when it has the first field, or any field and no number; a table without headings
 * has the fields in their order. */

#include "plan/csv.h"

typedef struct {
  const char *id;    /* the heading that is written: "capture_rate" */
  const char *words; /* other headings that mean it, "|" between them; marked for translation */
} DrawlTableField;

typedef struct {
  char *heading;     /* as it stands in the table */
  const char *field; /* id of what it was taken for */
} DrawlTableHeading;

typedef struct {
  gboolean has_headings;
  GPtrArray *recognised; /* of DrawlTableHeading, in the table's order */
  GPtrArray *ignored; /* char *, headings that are not known, or whose field another column has */
  guint n_columns;    /* that have a heading, or a field */
  guint n_fields;
  guint *columns;  /* by field: its column, G_MAXUINT without */
  char **headings; /* by field: as it stands in the table; the id where there are no headings */
} DrawlTableMap;

/* From the first row of a table (NULL: an empty one). @fields are @n_fields structs of @field_bytes
 * that begin with a DrawlTableField. */
DrawlTableMap *drawl_table_map_new (const DrawlCsvRow *first, const DrawlTableField *fields,
                                    guint n_fields, gsize field_bytes);
void drawl_table_map_free (DrawlTableMap *map);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (DrawlTableMap, drawl_table_map_free)

/* TRUE when some column holds @field. */
gboolean drawl_table_map_has (const DrawlTableMap *map, guint field);

/* What @row says of @field, stripped; "" when it says nothing. New string. */
char *drawl_table_map_cell (const DrawlTableMap *map, const DrawlCsvRow *row, guint field);

/* FALSE with DRAWL_PLAN_ERROR_VALUE when a cell of the row stands outside of the table. */
gboolean drawl_table_map_check_width (const DrawlTableMap *map, const DrawlCsvRow *row,
                                      GError **error);
