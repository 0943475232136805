/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* What a text is before its rows are read as shots: no other kind of file, with headings or with
 * the columns in their order, with decimal points or commas. */

#include "plan/csv.h"
#include "plan/table-map.h"

/* FALSE with DRAWL_PLAN_ERROR_FORMAT when @data is JSON. */
gboolean drawl_shot_table_check_kind (const char *data, gsize length, GError **error);

/* FALSE with DRAWL_PLAN_ERROR_FORMAT when @map knows no heading and no row has a number where the
 * columns in their order have one. */
gboolean drawl_shot_table_check_order (const DrawlCsv *csv, const DrawlTableMap *map,
                                       GError **error);

/* TRUE when the numbers of the table have decimal commas: its delimiter is none, and some cell
 * tells. */
gboolean drawl_shot_table_has_commas (const DrawlCsv *csv, const DrawlTableMap *map);
