/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The table of sheets, and a sheet made of one: its frame, its flow, its pages. To add one, write
 * what it says in a file of its own and list it here. Lengths in points. */

#include "draw/sheet.h"

#include "core/text.h"
#include "draw/sheet-frame.h"
#include "draw/style.h"

#define FONT "Cantarell, Inter, Noto Sans, Sans"

static const DrawlSheetKind kinds[] = {
    {"set", N_ ("Set sheet"),
     N_ ("Figures are plans: test on the day. Falling, breaking, burning or thrown things: the "
         "people licensed for it decide."),
     FALSE, drawl_sheet_say_set},
    {"hire", N_ ("Hire sheet"),
     N_ ("Figures are plans: test on the day. Limits and prices are those of the profiles; the "
         "hire firm has the last word."),
     FALSE, drawl_sheet_say_hire},
    {"cut", N_ ("Cut sheet"),
     N_ ("Figures are plans: test on the day. What was shot is in the camera report."), TRUE,
     drawl_sheet_say_cut},
};

const DrawlSheetKind *
drawl_sheet_kinds (guint *n_kinds)
{
  *n_kinds = G_N_ELEMENTS (kinds);
  return kinds;
}

const DrawlSheetKind *
drawl_sheet_kind_find (const char *id)
{
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (g_str_equal (kinds[i].id, id))
      return &kinds[i];
  return NULL;
}

gboolean
drawl_sheet_reads_rtl (const DrawlSheetKind *kind)
{
  PangoContext *context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  PangoLayout *layout = pango_layout_new (context);

  pango_layout_set_text (layout, _ (kind->name), -1);
  gboolean rtl = pango_layout_get_direction (layout, 0) == PANGO_DIRECTION_RTL;
  g_object_unref (layout);
  g_object_unref (context);
  return rtl;
}

/* ---- A sheet ---- */

struct _DrawlSheet {
  DrawlStyle style;
  double width, height;
  char *font;
  char *title;
  GDateTime *printed;
  DrawlSheetFrame frame;
  DrawlSheetFlow *flow;
  guint n_pages;
};

static cairo_rectangle_t
room_on (const DrawlSheet *sheet, guint page)
{
  return drawl_sheet_frame_room (&sheet->frame, &sheet->style, sheet->width, sheet->height, page);
}

static void
lay_out (DrawlSheet *sheet, const DrawlSheetKind *kind, DrawlPlan *plan)
{
  cairo_rectangle_t first = room_on (sheet, 0), others = room_on (sheet, 1);

  sheet->flow = drawl_sheet_flow_new (&sheet->style, first.width);
  drawl_sheet_frame_open (&sheet->frame, sheet->flow);
  kind->say (sheet->flow, plan);
  sheet->n_pages = drawl_sheet_flow_paginate (sheet->flow, first.height, others.height);
}

DrawlSheet *
drawl_sheet_new (const DrawlSheetKind *kind, DrawlPlan *plan, const DrawlSheetSetup *setup)
{
  DrawlSheet *sheet = g_new0 (DrawlSheet, 1);
  const DrawlPaper *paper = setup->paper;

  sheet->width = kind->landscape ? paper->height : paper->width;
  sheet->height = kind->landscape ? paper->width : paper->height;
  sheet->font = g_strdup (setup->font != NULL ? setup->font : FONT);
  sheet->style = drawl_style_paper;
  sheet->style.font = sheet->font;
  sheet->style.rtl = setup->rtl;
  sheet->printed = g_date_time_ref (setup->printed);
  drawl_sheet_frame_init (&sheet->frame, kind, plan, setup->printed);
  /* Translators: title of the plan, name of the sheet. */
  sheet->title = g_strdup_printf (_ ("%s · %s"), sheet->frame.title, sheet->frame.sheet);
  lay_out (sheet, kind, plan);
  return sheet;
}

void
drawl_sheet_free (DrawlSheet *sheet)
{
  drawl_sheet_flow_free (sheet->flow);
  drawl_sheet_frame_clear (&sheet->frame);
  g_date_time_unref (sheet->printed);
  g_free (sheet->title);
  g_free (sheet->font);
  g_free (sheet);
}

const char *
drawl_sheet_get_title (const DrawlSheet *sheet)
{
  return sheet->title;
}

GDateTime *
drawl_sheet_get_printed (const DrawlSheet *sheet)
{
  return sheet->printed;
}

guint
drawl_sheet_n_pages (const DrawlSheet *sheet)
{
  return sheet->n_pages;
}

char *
drawl_sheet_page_words (const DrawlSheet *sheet, guint page)
{
  const char *name = sheet->frame.sheet, *first, *last;

  if (!drawl_sheet_flow_page_names (sheet->flow, page, &first, &last))
    /* Translators: name of a sheet, a page of it, how many there are. */
    return g_strdup_printf (_ ("%s, page %u of %u"), name, page + 1, sheet->n_pages);
  if (first == last)
    /* Translators: the same, and "shot 3A", or the name of a body. */
    return g_strdup_printf (_ ("%s, page %u of %u: %s"), name, page + 1, sheet->n_pages, first);
  /* Translators: the same, the first and the last of what stands there. */
  return g_strdup_printf (_ ("%s, page %u of %u: %s to %s"), name, page + 1, sheet->n_pages, first,
                          last);
}

void
drawl_sheet_page_size (const DrawlSheet *sheet, double *width, double *height)
{
  *width = sheet->width;
  *height = sheet->height;
}

cairo_rectangle_t
drawl_sheet_page_area (const DrawlSheet *sheet)
{
  return drawl_sheet_frame_area (sheet->width, sheet->height);
}

void
drawl_sheet_draw_page (const DrawlSheet *sheet, cairo_t *cr, guint page)
{
  cairo_rectangle_t room = room_on (sheet, page);

  drawl_sheet_frame_draw (&sheet->frame, cr, &sheet->style, sheet->width, sheet->height, page,
                          sheet->n_pages);
  cairo_save (cr);
  cairo_translate (cr, room.x, room.y);
  drawl_sheet_flow_draw (sheet->flow, cr, page);
  cairo_restore (cr);
}
