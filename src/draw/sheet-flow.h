/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlSheetFlow: what a sheet says, and how it falls on pages. It is made of blocks, a block of
 * rows one below the other, a row of cells side by side; a cell is a text that wraps or a picture
 * of a fixed height. A block stays on one page unless it is taller than a page. Lengths in points;
 * x runs from the side at which lines begin. */

#include <pango/pangocairo.h>

#include "draw/text.h"

typedef struct {
  double size; /* 0: the style's */
  gboolean bold;
  gboolean dim;
  DrawlAlign align; /* within the width of the cell */
  double drop;      /* stands so much lower in its row: small type beside large */
  gboolean ours;    /* runs as the page does, whatever names it begins with; else as its words do */
} DrawlSheetFont;

/* Draws a picture whose corner is at 0, 0. */
typedef void (*DrawlSheetPicture) (cairo_t *cr, const DrawlStyle *style, double width,
                                   double height, gconstpointer data);

typedef enum {
  DRAWL_SHEET_BLOCK,
  DRAWL_SHEET_TITLE, /* never the last on its page: stays with the next block */
  DRAWL_SHEET_HEAD,  /* a title that is said again on each page that the blocks after it reach */
  DRAWL_SHEET_END,   /* a block at which the head before it ends */
} DrawlSheetBlockKind;

typedef enum {
  DRAWL_SHEET_NO_RULE,
  DRAWL_SHEET_RULE,
  DRAWL_SHEET_STRONG_RULE,
  DRAWL_SHEET_RULE_BETWEEN, /* neither rule nor wide gap below a head that is said again */
} DrawlSheetRule;

typedef struct _DrawlSheetFlow DrawlSheetFlow;

/* @style must outlive the flow. */
DrawlSheetFlow *drawl_sheet_flow_new (const DrawlStyle *style, double width);
void drawl_sheet_flow_free (DrawlSheetFlow *flow);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (DrawlSheetFlow, drawl_sheet_flow_free)

double drawl_sheet_flow_width (const DrawlSheetFlow *flow);
/* Width of one line of Pango markup. */
double drawl_sheet_flow_measure (DrawlSheetFlow *flow, const DrawlSheetFont *font,
                                 const char *markup);

/* Opens a block, a row of it, and cells of that. @gap is left above the row, but not at the top of
 * a page; the rule stands in the middle of it. */
void drawl_sheet_flow_block (DrawlSheetFlow *flow, DrawlSheetBlockKind kind);
void drawl_sheet_flow_row (DrawlSheetFlow *flow, double gap, DrawlSheetRule rule);
/* Names the block in hand, for those who cannot see the page: "shot 12A". */
void drawl_sheet_flow_name (DrawlSheetFlow *flow, const char *name);
void drawl_sheet_flow_text (DrawlSheetFlow *flow, double x, double width,
                            const DrawlSheetFont *font, const char *markup);
/* The same with what is no markup. */
void drawl_sheet_flow_plain (DrawlSheetFlow *flow, double x, double width,
                             const DrawlSheetFont *font, const char *text);
/* @data is freed with @free_data, if not NULL. @height is at most a third of the least page. */
void drawl_sheet_flow_picture (DrawlSheetFlow *flow, double x, double width, double height,
                               DrawlSheetPicture draw, gpointer data, GDestroyNotify free_data);

/* Settles what stands where on pages of which @height (the first: @first_height) is free for it;
 * returns how many there are, at least 1. To be called once, when all is said. */
guint drawl_sheet_flow_paginate (DrawlSheetFlow *flow, double first_height, double height);
/* Names of the first and the last block that has one on page @page; FALSE when none has. */
gboolean drawl_sheet_flow_page_names (const DrawlSheetFlow *flow, guint page, const char **first,
                                      const char **last);
/* Draws page @page, counted from 0, with its upper left corner at 0, 0. */
void drawl_sheet_flow_draw (const DrawlSheetFlow *flow, cairo_t *cr, guint page);
