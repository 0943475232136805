/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* What the sources of the draft share. */

#include "plan/body-draft.h"

struct _DrawlDraftRow {
  DrawlDraftTable table;
  JsonObject *json;  /* as it was read; NULL: a new row */
  char *origin;      /* its id then, or NULL */
  gboolean own_id;   /* the id was typed or read, and no longer follows the name */
  char **texts;      /* a column each; of ROWS, made of the rows when it is asked for */
  char **loaded;     /* the texts as they were read; NULL: the key was not there */
  GPtrArray **links; /* a column each: of DrawlDraftRow, or NULL */
  char **mistakes;   /* a column each, and one for the row behind them */
  gboolean *missing;
};

struct _DrawlBodyDraft {
  GObject parent_instance;
  GPtrArray *tables[DRAWL_N_DRAFT_TABLES]; /* of DrawlDraftRow */
  char *table_mistakes[DRAWL_N_DRAFT_TABLES];
  char *mistake;
  gboolean changed;
  gboolean checked; /* mistakes and bodies are those of the cells */
  DrawlBody *body;
  DrawlBody *but_limits;
};

/* Works out mistakes and bodies, unless they are. */
void drawl_body_draft_check (DrawlBodyDraft *draft);

/* The row as its file has it; the whole profile. @limits: with its limits. */
JsonObject *drawl_draft_row_to_json (DrawlBodyDraft *draft, DrawlDraftRow *row);
JsonObject *drawl_body_draft_to_json (DrawlBodyDraft *draft, gboolean limits);
/* A profile of which only this row is of interest, for the reader to take or refuse. */
JsonObject *drawl_draft_row_alone (DrawlBodyDraft *draft, DrawlDraftRow *row);

/* Fills the cells of a row from the object that has them. References are found among the rows of
 * the draft. */
void drawl_draft_row_load (DrawlBodyDraft *draft, DrawlDraftRow *row, JsonObject *object);

const DrawlDraftColumn *drawl_draft_row_column (DrawlDraftRow *row, guint column);
DrawlDraftRow *drawl_draft_row_new (DrawlDraftTable table);
