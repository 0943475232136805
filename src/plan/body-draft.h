/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlBodyDraft: a body profile while it is edited: every cell as it was typed, right or wrong,
 * and what is wrong with it. A body is made of it once nothing is. Signals: "changed" after each
 * edit; "rows-changed" (table) when rows have come or gone, before it. */

#include "plan/body-draft-columns.h"
#include "plan/body.h"

#define DRAWL_TYPE_BODY_DRAFT (drawl_body_draft_get_type ())
G_DECLARE_FINAL_TYPE (DrawlBodyDraft, drawl_body_draft, DRAWL, BODY_DRAFT, GObject)

/* A row of a table; it lives until it is removed, or as long as the draft. */
typedef struct _DrawlDraftRow DrawlDraftRow;

/* A digital body of which nothing is known, with a row where one is needed. */
DrawlBodyDraft *drawl_body_draft_new (void);
/* Keys that no column has, and values that are left alone, are kept as they are. */
DrawlBodyDraft *drawl_body_draft_new_from_body (const DrawlBody *body);

DrawlBodyKind drawl_body_draft_get_kind (DrawlBodyDraft *draft);
/* Anything was edited since it was made. */
gboolean drawl_body_draft_get_changed (DrawlBodyDraft *draft);

/* ---- Rows and cells ---- */

guint drawl_body_draft_n_rows (DrawlBodyDraft *draft, DrawlDraftTable table);
DrawlDraftRow *drawl_body_draft_get_row (DrawlBodyDraft *draft, DrawlDraftTable table, guint index);
/* Whether @row, which may be gone, is one of @table. */
gboolean drawl_body_draft_has_row (DrawlBodyDraft *draft, DrawlDraftTable table,
                                   const DrawlDraftRow *row);
DrawlDraftRow *drawl_body_draft_add_row (DrawlBodyDraft *draft, DrawlDraftTable table);
/* Rows that referred to it no longer do. */
void drawl_body_draft_remove_row (DrawlBodyDraft *draft, DrawlDraftRow *row);
void drawl_body_draft_clear_rows (DrawlBodyDraft *draft, DrawlDraftTable table);
/* Adds the rows of a table as a profile has them. */
void drawl_body_draft_add_rows (DrawlBodyDraft *draft, DrawlDraftTable table, JsonArray *rows);

DrawlDraftTable drawl_draft_row_get_table (DrawlDraftRow *row);
/* The text of a cell; of ROWS, the ids of the rows with ", " between. Never NULL. */
const char *drawl_body_draft_get (DrawlBodyDraft *draft, DrawlDraftRow *row, guint column);
/* Not for ROWS. A new name makes a new id, until an id was typed. */
void drawl_body_draft_set (DrawlBodyDraft *draft, DrawlDraftRow *row, guint column,
                           const char *text);
gboolean drawl_body_draft_refers (DrawlDraftRow *row, guint column, DrawlDraftRow *target);
void drawl_body_draft_refer (DrawlBodyDraft *draft, DrawlDraftRow *row, guint column,
                             DrawlDraftRow *target, gboolean refers);
/* FALSE for a cell that this kind of body, or of payload law, has not. */
gboolean drawl_body_draft_has_cell (DrawlBodyDraft *draft, DrawlDraftRow *row, guint column);
gboolean drawl_body_draft_has_table (DrawlBodyDraft *draft, DrawlDraftTable table);

/* ---- What is wrong ---- */

/* Clauses as in errors, or NULL: of a cell; of a row as a whole; of a table; of the profile, where
 * no place is to blame. */
const char *drawl_body_draft_cell_mistake (DrawlBodyDraft *draft, DrawlDraftRow *row, guint column);
/* The mistake is only that nothing was entered yet. */
gboolean drawl_body_draft_cell_is_missing (DrawlBodyDraft *draft, DrawlDraftRow *row, guint column);
const char *drawl_body_draft_row_mistake (DrawlBodyDraft *draft, DrawlDraftRow *row);
const char *drawl_body_draft_table_mistake (DrawlBodyDraft *draft, DrawlDraftTable table);
const char *drawl_body_draft_mistake (DrawlBodyDraft *draft);
/* Of the table and all in it. */
guint drawl_body_draft_n_mistakes (DrawlBodyDraft *draft, DrawlDraftTable table);

/* ---- What it makes ---- */

/* The body; NULL while anything is wrong. No reference is taken. */
DrawlBody *drawl_body_draft_get_body (DrawlBodyDraft *draft);
/* The same without its limits, for those who read limits against it. */
DrawlBody *drawl_body_draft_get_body_but_limits (DrawlBodyDraft *draft);
/* "One frame at 1920 × 1080: 3.11 MB; 746 MB/s at 240 fps": what a codec's law comes to. NULL while
 * it comes to nothing. New string. */
char *drawl_body_draft_codec_example (DrawlBodyDraft *draft, DrawlDraftRow *codec);

/* The id that row @id of a body had when the draft was made of it is now …; NULL when it is gone.
 * New string. */
char *drawl_body_draft_follow_id (DrawlBodyDraft *draft, DrawlDraftTable table, const char *id);
