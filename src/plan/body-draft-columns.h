/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* What a body profile is made of, as one who edits it sees it: tables of rows, and a column for
 * each key. A cell is a text until it is read; reading it gives what stands in the file. */

#include <json-glib/json-glib.h>

typedef enum {
  DRAWL_DRAFT_ABOUT, /* one row: the profile itself */
  DRAWL_DRAFT_SIZES,
  DRAWL_DRAFT_CODECS,
  DRAWL_DRAFT_LICENCES,
  DRAWL_DRAFT_LIMITS,
  DRAWL_DRAFT_CARDS,
  DRAWL_DRAFT_MAGAZINES,
  DRAWL_DRAFT_FITS,
  DRAWL_DRAFT_PICKUPS,
  DRAWL_DRAFT_RETURNS,
  DRAWL_N_DRAFT_TABLES
} DrawlDraftTable;

typedef enum {
  DRAWL_DRAFT_TEXT,
  DRAWL_DRAFT_ID,        /* made from the name until it is typed */
  DRAWL_DRAFT_DAY,       /* 2026-11-25 */
  DRAWL_DRAFT_NUMBER,    /* exact, with comma or point */
  DRAWL_DRAFT_COUNT,     /* a whole number */
  DRAWL_DRAFT_RATE,      /* frames a second */
  DRAWL_DRAFT_RATES,     /* several, with spaces between */
  DRAWL_DRAFT_MONEY,     /* with at most two decimals */
  DRAWL_DRAFT_GIGABYTES, /* of 10⁹ bytes; the file has bytes */
  DRAWL_DRAFT_CHOICE,    /* the id of one of the column's choices; "": none */
  DRAWL_DRAFT_CHOICES,   /* several of them, with spaces between */
  DRAWL_DRAFT_ROWS,      /* rows of another table, which keep their place when an id changes */
} DrawlDraftKind;

/* Which bodies have the column: a mask. */
typedef enum {
  DRAWL_DRAFT_ON_DIGITAL = 1 << 0,
  DRAWL_DRAFT_ON_FILM = 1 << 1,
  DRAWL_DRAFT_ON_BOTH = DRAWL_DRAFT_ON_DIGITAL | DRAWL_DRAFT_ON_FILM
} DrawlDraftOn;

typedef struct {
  const char *id;
  const char *name; /* as it is shown, translated */
} DrawlDraftChoice;

typedef struct {
  const char *key;   /* of the file; "power.watts": a key of an object within */
  const char *title; /* marked for translation, with a mnemonic where there is one */
  const char *hint;  /* marked for translation; NULL: none */
  DrawlDraftKind kind;
  DrawlDraftOn on;
  gboolean required;
  gint64 lowest, highest; /* of a number, count or rate */
  const char *own_kinds; /* codecs: kinds of a payload law of its own that have it; NULL: any row */
  gboolean (*choice) (guint index, DrawlDraftChoice *out); /* FALSE past the end */
  DrawlDraftTable target;                                  /* of ROWS */
} DrawlDraftColumn;

typedef struct {
  const char *key;
  DrawlDraftOn on;
  gboolean required; /* at least one row */
  const DrawlDraftColumn *columns;
  guint n_columns;
} DrawlDraftTableInfo;

const DrawlDraftTableInfo *drawl_draft_table_info (DrawlDraftTable table);
/* Index of the column with that key; it must be there. */
guint drawl_draft_column (DrawlDraftTable table, const char *key);

/* What a cell that is not empty means, as it stands in the file; NULL with an error, which says
 * what is expected. Not for ROWS. */
JsonNode *drawl_draft_cell_read (const DrawlDraftColumn *column, const char *text, GError **error);
/* And back, with the locale's decimal point. New string. */
char *drawl_draft_cell_text (const DrawlDraftColumn *column, JsonNode *node);
