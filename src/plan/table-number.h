/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Numbers in the cells of a table of text. A comma before three places of which the last is 0
 * ("2,500") could be thousands or a decimal; one cell elsewhere whose comma can only be a decimal
 * one ("0,5") tells how the whole table is written. */

#include <glib.h>

/* TRUE when @cell is a number, be it with a unit behind it. */
gboolean drawl_table_number_is (const char *cell);
/* TRUE when @cell begins with a number whose comma can only be a decimal one. */
gboolean drawl_table_number_shows_comma (const char *cell);

/* @cell of a table with decimal commas, with a decimal point. NULL when its point could be one of
 * thousands ("1.000"): DRAWL_PLAN_ERROR_VALUE. New string. */
char *drawl_table_number_plain (const char *cell, GError **error);
