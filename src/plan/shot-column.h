/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlShotColumn: one column of the shot table: its headings, and how its cell is written and
 * read. */

#include "plan/plan.h"
#include "plan/table-map.h"

/* A row while it is read. */
typedef struct {
  DrawlShotFields *fields;
  DrawlRational value[DRAWL_TIMING_N_TERMS];
  guint present; /* bits of the terms that the row tells */
  guint held;    /* bits */
  char *profile; /* id of the profile of its body */
} DrawlShotReading;

typedef struct _DrawlShotColumn DrawlShotColumn;
struct _DrawlShotColumn {
  DrawlTableField field;
  char *(*write) (const DrawlShotColumn *column, DrawlPlan *plan, DrawlShot *shot);
  /* NULL: not read. Is never asked for an empty cell. Errors: a sentence without the place. */
  gboolean (*read) (const DrawlShotColumn *column, const char *cell, DrawlShotReading *reading,
                    GError **error);
  gboolean number;      /* what its cell says is one */
  gsize offset;         /* in the fields: of texts, truths, counts and times */
  int least, most;      /* of counts */
  DrawlTimingTerm term; /* of terms */
};

/* In the order in which they are written. */
const DrawlShotColumn *drawl_shot_columns (guint *n_columns);

/* Index of the column of @id. */
guint drawl_shot_column_find (const char *id);
