/* SPDX-License-Identifier: GPL-3.0-or-later */

/* How blocks fall on pages. Rows are pictures of known heights, named by a letter, that note where
 * they are drawn; a page comes out as "A0 B30": each with its top. Pages are 100 high, the first
 * 80. */

#include "draw/sheet-flow.h"
#include "rows.h"

#include <math.h>
#include <string.h>

#define WIDTH 200.0
#define FIRST 80.0
#define PAGE 100.0

/* ---- Pictures that say where they are ---- */

static GString *drawn;

static void
note (cairo_t *cr, const DrawlStyle *style, double width, double height, gconstpointer data)
{
  double x = 0, y = 0;

  cairo_user_to_device (cr, &x, &y);
  g_string_append_printf (drawn, "%s%c%g", drawn->len > 0 ? " " : "", GPOINTER_TO_INT (data), y);
}

/* What a flow says: a letter a block ("T" a title, "H" a head, "E" an end, else a plain block),
 * then its rows, a name, a height and the gap above, ":" between. Blocks are parted by spaces. */
static void
say (DrawlSheetFlow *flow, const char *text)
{
  g_auto (GStrv) blocks = g_strsplit (text, " ", -1);

  for (char **block = blocks; *block != NULL && **block != '\0'; block++) {
    g_auto (GStrv) parts = g_strsplit (*block, ":", -1);
    const char *kinds = "BTHE";

    drawl_sheet_flow_block (flow, (DrawlSheetBlockKind)(strchr (kinds, *parts[0]) - kinds));
    for (char **part = parts + 1; *part != NULL; part++) {
      g_auto (GStrv) numbers = g_strsplit (*part + 1, "+", 2);

      drawl_sheet_flow_row (flow, numbers[1] != NULL ? g_ascii_strtod (numbers[1], NULL) : 0,
                            DRAWL_SHEET_NO_RULE);
      drawl_sheet_flow_picture (flow, 0, WIDTH, g_ascii_strtod (numbers[0], NULL), note,
                                GINT_TO_POINTER (**part), NULL);
    }
  }
}

static char *
pages_of (DrawlSheetFlow *flow, guint n_pages)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  GString *pages = g_string_new (NULL);

  for (guint page = 0; page < n_pages; page++) {
    drawn = g_string_new (NULL);
    drawl_sheet_flow_draw (flow, cr, page);
    g_string_append_printf (pages, "%s%s", page > 0 ? " | " : "", drawn->str);
    g_string_free (drawn, TRUE);
  }
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return g_string_free (pages, FALSE);
}

/* ---- Rows ---- */

typedef struct {
  const char *name;
  const char *says;
  const char *pages;
} Row;

static const Row rows[] = {
    {"nothing", "", ""},
    {"no-gap-at-the-top", "B:a10+5 B:b10+5", "a0 b15"},
    {"a-block-stays-whole", "B:a50 B:b20:c20", "a0 | b0 c20"},
    {"it-fits-to-the-point", "B:a50 B:b20:c10", "a0 b50 c70"},
    {"the-gap-counts", "B:a50 B:b20+1:c10", "a0 | b0 c20"},
    {"pages-after-the-first-are-higher", "B:a80 B:b100 B:c1", "a0 | b0 | c0"},
    {"a-title-stays-with-its-block", "B:a40 T:b20 B:c25", "a0 | b0 c20"},
    {"titles-stay-together", "B:a30 T:b10 T:c20 B:d25", "a0 | b0 c10 d30"},
    {"a-title-at-the-end", "B:a70 T:b20", "a0 | b0"},
    {"a-head-is-said-again", "H:h10 B:a60 B:b80 B:c20", "h0 a10 | h0 b10 | h0 c10"},
    {"a-head-with-a-gap", "H:h10+9 B:a60+3 B:b80+3", "h0 a13 | h0 b13"},
    {"a-new-head-takes-its-place", "H:h10 B:a60 H:i20 B:b70 B:c60", "h0 a10 | i0 b20 | i0 c20"},
    {"a-head-ends", "H:h10 B:a60 B:b70 E:c10 B:d50", "h0 a10 | h0 b10 c80 | d0"},
    {"a-head-too-high-to-be-said-again", "H:h40 B:a40 B:b80", "h0 a40 | b0"},
    {"an-end-of-nothing", "H:h10 B:a70 E B:b90", "h0 a10 | b0"},
    {"taller-than-a-page", "B:a60 B:b40:c40:d40", "a0 | b0 c40 | d0"},
    {"taller-where-a-third-is-left", "B:a30 B:b20:c25:d24:e60", "a0 b30 c50 | d0 e24"},
    {"taller-under-a-head", "H:h10 B:a20 B:b20:c25:d24:e60", "h0 a10 b30 c50 | h0 d10 e34"},
};

static void
test_row (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (DrawlSheetFlow) flow = drawl_sheet_flow_new (&drawl_style_paper, WIDTH);

  say (flow, row->says);
  g_autofree char *pages = pages_of (flow, drawl_sheet_flow_paginate (flow, FIRST, PAGE));
  g_assert_cmpstr (pages, ==, row->pages);
}

/* ---- Side by side ---- */

static void
across (cairo_t *cr, const DrawlStyle *style, double width, double height, gconstpointer data)
{
  double x = 0, y = 0;

  cairo_user_to_device (cr, &x, &y);
  g_string_append_printf (drawn, "%g ", x);
}

/* Cells are mirrored where lines run from right to left. */
static void
test_mirrored (void)
{
  for (int rtl = 0; rtl < 2; rtl++) {
    DrawlStyle style = drawl_style_paper;
    style.rtl = rtl;
    g_autoptr (DrawlSheetFlow) flow = drawl_sheet_flow_new (&style, WIDTH);

    drawl_sheet_flow_block (flow, DRAWL_SHEET_BLOCK);
    drawl_sheet_flow_row (flow, 0, DRAWL_SHEET_NO_RULE);
    drawl_sheet_flow_picture (flow, 0, 50, 10, across, NULL, NULL);
    drawl_sheet_flow_picture (flow, 60, 90, 10, across, NULL, NULL);
    g_autofree char *pages = pages_of (flow, drawl_sheet_flow_paginate (flow, FIRST, PAGE));
    g_assert_cmpstr (pages, ==, rtl ? "150 50 " : "0 60 ");
  }
}

static int n_freed;

static void
count_freed (gpointer data)
{
  n_freed += GPOINTER_TO_INT (data);
}

static void
test_data_is_freed (void)
{
  DrawlSheetFlow *flow = drawl_sheet_flow_new (&drawl_style_paper, WIDTH);

  drawl_sheet_flow_block (flow, DRAWL_SHEET_BLOCK);
  drawl_sheet_flow_row (flow, 0, DRAWL_SHEET_NO_RULE);
  drawl_sheet_flow_picture (flow, 0, 50, 10, note, GINT_TO_POINTER (7), count_freed);
  drawl_sheet_flow_free (flow);
  g_assert_cmpint (n_freed, ==, 7);
}

/* ---- Text ---- */

static cairo_rectangle_t
ink_of (DrawlSheetFlow *flow, guint page)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  cairo_rectangle_t ink;

  drawl_sheet_flow_draw (flow, cr, page);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_recording_surface_ink_extents (surface, &ink.x, &ink.y, &ink.width, &ink.height);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return ink;
}

static char *
words (const char *word, guint n)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    g_string_append (text, word);
  return g_string_free (text, FALSE);
}

typedef struct {
  const char *name;
  const char *word;
  guint n;
  guint least_pages;
} Text;

static const Text texts[] = {
    {"short", "word ", 1, 1},
    {"long", "word ", 400, 3},
    {"without-spaces", "W", 1000, 3},
    {"lines", "one\ntwo\n\n", 60, 3},
    {"right-to-left", "זכוכית ", 300, 3},
    {"wide", "😀", 300, 2},
};

/* Long texts go on over pages, line by line, within their width and above the foot. */
static void
test_text (gconstpointer data)
{
  const Text *row = data;
  DrawlSheetFont font = {.size = 10};

  for (int rtl = 0; rtl < 2; rtl++) {
    DrawlStyle style = drawl_style_paper;
    style.rtl = rtl;
    g_autoptr (DrawlSheetFlow) flow = drawl_sheet_flow_new (&style, WIDTH);
    g_autofree char *text = words (row->word, row->n);

    drawl_sheet_flow_block (flow, DRAWL_SHEET_BLOCK);
    drawl_sheet_flow_row (flow, 0, DRAWL_SHEET_NO_RULE);
    drawl_sheet_flow_plain (flow, 0, 60, &font, "side");
    drawl_sheet_flow_plain (flow, 70, 130, &font, text);
    guint n_pages = drawl_sheet_flow_paginate (flow, FIRST, PAGE);
    g_assert_cmpint (n_pages, >=, row->least_pages);
    for (guint page = 0; page < n_pages; page++) {
      cairo_rectangle_t ink = ink_of (flow, page);

      g_assert_cmpfloat (ink.width, >, 0);
      g_assert_cmpfloat (ink.x, >=, -1);
      g_assert_cmpfloat (ink.x + ink.width, <=, WIDTH + 1);
      g_assert_cmpfloat (ink.y, >=, -1);
      g_assert_cmpfloat (ink.y + ink.height, <=, (page == 0 ? FIRST : PAGE) + 1);
    }
  }
}

/* A line that is higher than a page is drawn all the same, and the flow comes to an end. */
static void
test_line_too_high (void)
{
  DrawlSheetFont font = {.size = 150};
  g_autoptr (DrawlSheetFlow) flow = drawl_sheet_flow_new (&drawl_style_paper, WIDTH);

  drawl_sheet_flow_block (flow, DRAWL_SHEET_BLOCK);
  drawl_sheet_flow_row (flow, 0, DRAWL_SHEET_NO_RULE);
  drawl_sheet_flow_plain (flow, 0, WIDTH, &font, "a b c");
  g_assert_cmpint (drawl_sheet_flow_paginate (flow, FIRST, PAGE), ==, 3);
}

/* Markup that is none is text. */
static void
test_no_markup (void)
{
  DrawlSheetFont font = {.size = 10};
  g_autoptr (DrawlSheetFlow) flow = drawl_sheet_flow_new (&drawl_style_paper, WIDTH);

  g_assert_cmpfloat (drawl_sheet_flow_measure (flow, &font, "<b>bold"), >,
                     drawl_sheet_flow_measure (flow, &font, "<b>bold</b>"));
  g_assert_cmpfloat (drawl_sheet_flow_measure (flow, &font, ""), <=, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/sheet-flow/pages", rows, test_row);
  g_test_add_func ("/sheet-flow/mirrored", test_mirrored);
  g_test_add_func ("/sheet-flow/data-is-freed", test_data_is_freed);
  add_rows ("/sheet-flow/text", texts, test_text);
  g_test_add_func ("/sheet-flow/line-too-high", test_line_too_high);
  g_test_add_func ("/sheet-flow/no-markup", test_no_markup);
  return g_test_run ();
}
