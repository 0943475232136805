/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Lines of text. One PangoLayout a surface context serves them all, and a second one all texts with
 * markup: making one costs more than drawing a label. Invariant: a layout hangs on its cairo_t and
 * dies with it; metrics are not rounded to pixels, so a picture is the same at every scale. */

#include "draw/text.h"

#include <math.h>

#define LINE_SPACING 1.25
#define FLOW_SPACING 1.1 /* of texts on paper, which are set closer */

static const cairo_user_data_key_t layout_key, flow_key;

/* What holds for all text: numerals of one width, and no hyphen where a long word is broken, which
 * could be read as part of it. */
static void
add_attributes (PangoAttrList *attributes)
{
  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1"));
  pango_attr_list_insert (attributes, pango_attr_insert_hyphens_new (FALSE));
}

static PangoLayout *
make_layout (cairo_t *cr, const cairo_user_data_key_t *key)
{
  PangoLayout *layout = pango_cairo_create_layout (cr);
  PangoContext *context = pango_layout_get_context (layout);
  PangoAttrList *attributes = pango_attr_list_new ();
  cairo_font_options_t *options = cairo_font_options_create ();

  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options (context, options);
  cairo_font_options_destroy (options);
  pango_context_set_round_glyph_positions (context, FALSE);

  add_attributes (attributes);
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);

  cairo_set_user_data (cr, key, layout, g_object_unref);
  return layout;
}

/* The layout of that key with everything but its text. */
static PangoLayout *
prepare (cairo_t *cr, const cairo_user_data_key_t *key, const DrawlStyle *style,
         const DrawlTextStyle *text_style)
{
  PangoLayout *layout = cairo_get_user_data (cr, key);
  PangoFontDescription *font = pango_font_description_new ();
  double size = text_style->size > 0 ? text_style->size : style->font_size;

  if (layout == NULL)
    layout = make_layout (cr, key);
  else
    pango_cairo_update_layout (cr, layout);
  pango_context_set_base_dir (pango_layout_get_context (layout),
                              style->rtl ? PANGO_DIRECTION_RTL : PANGO_DIRECTION_LTR);
  pango_font_description_set_family (font, style->font != NULL ? style->font : "Sans");
  pango_font_description_set_absolute_size (font, size * PANGO_SCALE);
  pango_font_description_set_weight (font, text_style->bold ? PANGO_WEIGHT_SEMIBOLD
                                                            : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  pango_layout_set_width (layout, -1);
  pango_layout_set_height (layout, -1);
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_NONE);
  pango_layout_set_line_spacing (layout, 0);
  return layout;
}

static PangoLayout *
set_up (cairo_t *cr, const DrawlStyle *style, const DrawlTextStyle *text_style, const char *text)
{
  PangoLayout *layout = prepare (cr, &layout_key, style, text_style);

  pango_layout_set_single_paragraph_mode (layout, TRUE);
  pango_layout_set_text (layout, text, -1);
  return layout;
}

/* One line, cut to the greatest width. @box in points, relative to where the layout is shown. */
static PangoLayout *
set_up_line (cairo_t *cr, const DrawlStyle *style, const DrawlTextStyle *text_style,
             const char *text, cairo_rectangle_t *box)
{
  PangoLayout *layout = set_up (cr, style, text_style, text);
  PangoRectangle logical;

  pango_layout_get_extents (layout, NULL, &logical);
  if (text_style->max_width > 0 && logical.width > text_style->max_width * PANGO_SCALE) {
    pango_layout_set_width (layout, (int)floor (text_style->max_width * PANGO_SCALE));
    pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
    pango_layout_get_extents (layout, NULL, &logical);
  }
  *box = (cairo_rectangle_t){
      (double)logical.x / PANGO_SCALE,
      (double)logical.y / PANGO_SCALE,
      (double)logical.width / PANGO_SCALE,
      (double)logical.height / PANGO_SCALE,
  };
  return layout;
}

double
drawl_text_draw (cairo_t *cr, const DrawlStyle *style, const DrawlTextStyle *text_style, double x,
                 double y, const char *text)
{
  cairo_rectangle_t box;
  PangoLayout *layout = set_up_line (cr, style, text_style, text, &box);
  gboolean left = text_style->align == (style->rtl ? DRAWL_ALIGN_END : DRAWL_ALIGN_START);
  double back = text_style->align == DRAWL_ALIGN_MIDDLE ? box.width / 2 : left ? 0 : box.width;

  cairo_move_to (cr, x - back - box.x, y - box.y);
  pango_cairo_show_layout (cr, layout);
  return box.width;
}

void
drawl_text_measure (cairo_t *cr, const DrawlStyle *style, const DrawlTextStyle *text_style,
                    const char *text, double *width, double *height)
{
  cairo_rectangle_t box;

  set_up_line (cr, style, text_style, text, &box);
  *width = box.width;
  *height = box.height;
}

double
drawl_text_height (cairo_t *cr, const DrawlStyle *style)
{
  double width, height;

  drawl_text_measure (cr, style, &(DrawlTextStyle){0}, "0", &width, &height);
  return height;
}

static PangoLayout *
set_up_paragraph (cairo_t *cr, const DrawlStyle *style, const DrawlTextStyle *text_style,
                  guint lines, const char *text, PangoRectangle *logical)
{
  PangoLayout *layout = set_up (cr, style, text_style, text);

  pango_layout_set_width (layout, (int)floor (text_style->max_width * PANGO_SCALE));
  pango_layout_set_line_spacing (layout, LINE_SPACING);
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_height (layout, -(int)lines);
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  pango_layout_get_extents (layout, NULL, logical);
  return layout;
}

double
drawl_text_paragraph_height (cairo_t *cr, const DrawlStyle *style, const DrawlTextStyle *text_style,
                             guint lines, const char *text)
{
  PangoRectangle logical;

  set_up_paragraph (cr, style, text_style, lines, text, &logical);
  return (double)logical.height / PANGO_SCALE;
}

double
drawl_text_paragraph_draw (cairo_t *cr, const DrawlStyle *style, const DrawlTextStyle *text_style,
                           guint lines, double x, double y, const char *text)
{
  PangoRectangle logical;
  PangoLayout *layout = set_up_paragraph (cr, style, text_style, lines, text, &logical);
  gboolean against = (pango_layout_get_direction (layout, 0) == PANGO_DIRECTION_RTL) != style->rtl;

  /* Lines begin where the page does; Pango turns the alignment of those that run against it. */
  pango_layout_set_alignment (layout, style->rtl != against ? PANGO_ALIGN_RIGHT : PANGO_ALIGN_LEFT);
  cairo_move_to (cr, style->rtl ? x - text_style->max_width : x,
                 y - (double)logical.y / PANGO_SCALE);
  pango_cairo_show_layout (cr, layout);
  return (double)logical.height / PANGO_SCALE;
}

/* Text and attributes of @markup; what is no markup is shown as it stands. */
static void
set_markup (PangoLayout *layout, const char *markup)
{
  PangoAttrList *attributes;
  g_autofree char *text = NULL;

  if (!pango_parse_markup (markup, -1, 0, &attributes, &text, NULL, NULL)) {
    attributes = pango_attr_list_new ();
    text = g_strdup (markup);
  }
  add_attributes (attributes);
  pango_layout_set_text (layout, text, -1);
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
}

PangoLayout *
drawl_text_flow (cairo_t *cr, const DrawlStyle *style, const DrawlTextStyle *text_style,
                 const char *markup)
{
  PangoLayout *layout = prepare (cr, &flow_key, style, text_style);

  set_markup (layout, markup);
  pango_layout_set_width (layout, (int)floor (text_style->max_width * PANGO_SCALE));
  pango_layout_set_line_spacing (layout, FLOW_SPACING);
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  return layout;
}
