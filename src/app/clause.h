/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlClause: the blank of a sentence that holds what happens. At rest a long clause is set on as
 * many lines as it needs; while it is typed into, it is an entry on one line. */

#include "app/edit.h"

#define DRAWL_TYPE_CLAUSE (drawl_clause_get_type ())
G_DECLARE_FINAL_TYPE (DrawlClause, drawl_clause, DRAWL, CLAUSE, GtkWidget)

GtkWidget *drawl_clause_new (void);
DrawlEdit *drawl_clause_get_edit (DrawlClause *clause);

/* Its lines, in pixels. */
typedef struct {
  int ascent;  /* of the first line */
  int descent; /* of the last line */
  int drop;    /* from the first baseline to the last */
  int tail;    /* where the last line ends */
} DrawlClauseLines;

/* Breaks it into lines of @width. FALSE while it is typed into, or when one line is enough. */
gboolean drawl_clause_break (DrawlClause *clause, int width, DrawlClauseLines *lines);
