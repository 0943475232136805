/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlShotTable: shots as a table of text, both ways. What is read from a table is a proposal: for
 * each row either the fields of a shot, or the reason why not. Nothing changes in the plan until it
 * is inserted. Numbers are exact text with a decimal point ("0.45", "24000/1001"); a decimal comma
 * is read, and one that can only be one tells how to read the others. */

#include "plan/plan.h"

typedef struct {
  guint line;              /* where the row begins, counted from 1 */
  DrawlShotFields *fields; /* NULL when the row is rejected */
  char *heading;           /* of the column that is to blame, as the table has it; NULL: the row */
  char *reason;            /* a sentence; NULL when the row is good */
  gboolean action_assumed; /* neither action nor screen time is told: 1 s, as in a new shot */
} DrawlShotTableRow;

typedef struct {
  gboolean has_headings; /* FALSE: no known heading; read in the order of the columns below */
  gboolean latin_1;      /* the bytes were no UTF-8, and were taken for Latin-1 */
  char delimiter;
  GPtrArray *recognised; /* of DrawlTableHeading, in the table's order */
  GPtrArray *ignored; /* char *, headings that are not known, or stand for a known column again */
  GPtrArray *rows;    /* of DrawlShotTableRow, in the table's order */
  guint n_good;
  GPtrArray *hires; /* of DrawlHiredFields: bodies that the good rows bring along */
} DrawlShotTable;

/* Reads a table for @plan. A row is good when the plan could take its shot in: the slate is new to
 * the plan and to the rows before; all that is told of its timing agrees; its body is on the plan,
 * or named by a profile that the plan or a shipped or own body has. What a row leaves open is as in
 * a new shot. Errors, when there is no table at all: those of drawl_csv_read(), and
 * DRAWL_PLAN_ERROR_FORMAT for JSON, and for cells that neither headings nor numbers explain. */
DrawlShotTable *drawl_shot_table_read (DrawlPlan *plan, const char *data, gsize length,
                                       GError **error);
void drawl_shot_table_free (DrawlShotTable *table);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (DrawlShotTable, drawl_shot_table_free)

/* "“Fps”: a rate of 0 is too low; …": a rejected row's reason with its place. New string. */
char *drawl_shot_table_row_text (const DrawlShotTableRow *row);

/* Inserts the good rows at @position, behind the bodies that they bring along: one step of undo.
 * Errors as drawl_plan_insert_all(), when the plan has changed since. */
gboolean drawl_shot_table_insert (DrawlPlan *plan, const DrawlShotTable *table, guint position,
                                  const char *label, GError **error);

/* The columns in their order, and what they say of a shot. Free the text with g_free(). */
guint drawl_shot_table_n_columns (void);
const char *drawl_shot_table_column_id (guint column);
char *drawl_shot_table_cell (DrawlPlan *plan, DrawlShot *shot, guint column);

/* The shots at @positions (NULL: all) as a table with headings: as RFC 4180 text with @delimiter,
 * and as an HTML table for those who paste it elsewhere. What is written as text is read back
 * unchanged; what a spreadsheet would run as a formula is guarded (table-cell.h). New strings. */
char *drawl_shot_table_text (DrawlPlan *plan, const guint *positions, guint n_positions,
                             char delimiter);
char *drawl_shot_table_html (DrawlPlan *plan, const guint *positions, guint n_positions);
