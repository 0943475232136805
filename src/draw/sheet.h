/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlSheet: a plan on paper, laid out page by page: for the set, for the hire firm, for the
 * cutting room. It is a picture of the plan as it was when it was made; later edits do not show.
 * Every kind of sheet is a row of the table in sheet.c. */

#include "draw/paper.h"
#include "draw/sheet-flow.h"
#include "plan/plan.h"

typedef struct {
  const char *id;      /* "set": the word of the command line */
  const char *name;    /* marked for translation: "Set sheet" */
  const char *caution; /* at the foot of each page; marked for translation */
  gboolean landscape;  /* the long side of the paper lies */
  /* Says all of it, below the title block. */
  void (*say) (DrawlSheetFlow *flow, DrawlPlan *plan);
} DrawlSheetKind;

const DrawlSheetKind *drawl_sheet_kinds (guint *n_kinds);
const DrawlSheetKind *drawl_sheet_kind_find (const char *id); /* NULL when there is none */

typedef struct {
  const DrawlPaper *paper;
  GDateTime *printed; /* date and time that the pages bear */
  gboolean rtl;       /* lines run from right to left */
  const char *font;   /* Pango families; NULL: those of files */
} DrawlSheetSetup;

/* Whether the words of the present language run from right to left. */
gboolean drawl_sheet_reads_rtl (const DrawlSheetKind *kind);

typedef struct _DrawlSheet DrawlSheet;

DrawlSheet *drawl_sheet_new (const DrawlSheetKind *kind, DrawlPlan *plan,
                             const DrawlSheetSetup *setup);
void drawl_sheet_free (DrawlSheet *sheet);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (DrawlSheet, drawl_sheet_free)

/* Title of plan and sheet, for a file's own description. */
const char *drawl_sheet_get_title (const DrawlSheet *sheet);
GDateTime *drawl_sheet_get_printed (const DrawlSheet *sheet);
guint drawl_sheet_n_pages (const DrawlSheet *sheet);
/* What stands on page @page, for those who cannot see it: "Set sheet, page 2 of 5: shot 3A to shot
 * 7". New string. */
char *drawl_sheet_page_words (const DrawlSheet *sheet, guint page);
/* Points; the same for all pages. */
void drawl_sheet_page_size (const DrawlSheet *sheet, double *width, double *height);
/* What no ink leaves, on every page. */
cairo_rectangle_t drawl_sheet_page_area (const DrawlSheet *sheet);
/* Draws page @page, counted from 0, with the corner of the paper at 0, 0. */
void drawl_sheet_draw_page (const DrawlSheet *sheet, cairo_t *cr, guint page);

/* For the table alone. */
void drawl_sheet_say_set (DrawlSheetFlow *flow, DrawlPlan *plan);
void drawl_sheet_say_hire (DrawlSheetFlow *flow, DrawlPlan *plan);
void drawl_sheet_say_cut (DrawlSheetFlow *flow, DrawlPlan *plan);
