/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The style of pictures in the window: the built-in light or dark one, with the widget's own ink,
 * accent and type over it. Type is in pixels of the widget, so that larger text in the settings of
 * the desktop makes larger labels. */

#include "app/theme.h"

#include <adwaita.h>
#include <pango/pangocairo.h>

#define LABEL_SCALE 0.85 /* of the widget's type */
#define POINTS_AN_INCH 72.0
#define USUAL_DPI 96.0

static DrawlColour
colour_from (const GdkRGBA *rgba)
{
  return (DrawlColour){(double)rgba->red, (double)rgba->green, (double)rgba->blue,
                       (double)rgba->alpha};
}

static void
look_up (GtkStyleContext *context, const char *name, DrawlColour *colour)
{
  GdkRGBA rgba;

  if (gtk_style_context_lookup_color (context, name, &rgba))
    *colour = colour_from (&rgba);
}

static double
font_pixels (GtkWidget *widget, const PangoFontDescription *font)
{
  double size = (double)pango_font_description_get_size (font) / PANGO_SCALE;
  double dpi = pango_cairo_context_get_resolution (gtk_widget_get_pango_context (widget));

  if (pango_font_description_get_size_is_absolute (font))
    return size;
  return size * (dpi > 0 ? dpi : USUAL_DPI) / POINTS_AN_INCH;
}

void
drawl_theme_style (GtkWidget *widget, DrawlStyle *style)
{
  GtkStyleContext *context = gtk_widget_get_style_context (widget);
  const PangoFontDescription *font =
      pango_context_get_font_description (gtk_widget_get_pango_context (widget));
  gboolean dark = adw_style_manager_get_dark (adw_style_manager_get_default ());
  GdkRGBA ink;

  *style = dark ? drawl_style_dark : drawl_style_light;
  gtk_style_context_get_color (context, &ink);
  style->ground.alpha = 0;
  style->ink = colour_from (&ink);
  look_up (context, "accent_color", &style->accent);
  style->font = pango_font_description_get_family (font);
  style->font_size = LABEL_SCALE * font_pixels (widget, font);
  style->rtl = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
}
