/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The built-in styles: cool neutrals and one accent, and greys for paper. Invariant: text
 * reaches 4.5 : 1 and what carries meaning 3 : 1 against the ground; tests/draw/style.c reckons it.
 */

#include "draw/style.h"

#define COLOUR(rgb)                                                                                \
  {                                                                                                \
    (((rgb) >> 16) & 0xff) / 255.0, (((rgb) >> 8) & 0xff) / 255.0, ((rgb)&0xff) / 255.0, 1         \
  }

const DrawlStyle drawl_style_light = {
    .ground = COLOUR (0xffffff),
    .ink = COLOUR (0x1b2028),
    .dim = COLOUR (0x5b6471),
    .accent = COLOUR (0x0a7c86),
    .real = COLOUR (0x47515f),
    .screen = COLOUR (0x7f8a9a),
    .stretch = COLOUR (0xe8ebf0),
    .alert = COLOUR (0xb3341a),
    .font_size = 10,
};

const DrawlStyle drawl_style_dark = {
    .ground = COLOUR (0x1c1f24),
    .ink = COLOUR (0xeceff3),
    .dim = COLOUR (0x9aa3b0),
    .accent = COLOUR (0x52c4cc),
    .real = COLOUR (0xbfc8d4),
    .screen = COLOUR (0x7d8897),
    .stretch = COLOUR (0x31363f),
    .alert = COLOUR (0xff8f6b),
    .font_size = 10,
};

const DrawlStyle drawl_style_paper = {
    .ground = {1, 1, 1, 0},
    .ink = COLOUR (0x000000),
    .dim = COLOUR (0x4a4a4a),
    .accent = {0, 0, 0, 0},
    .real = COLOUR (0x3c3c3c),
    .screen = COLOUR (0x868686),
    .stretch = COLOUR (0xe9e9e9),
    .alert = COLOUR (0x000000),
    .font_size = 9,
};

double
drawl_style_margin (double width)
{
  return MIN (CLAMP (0.035 * width, 12, 40), width / 4);
}

void
drawl_style_set_colour (cairo_t *cr, DrawlColour colour)
{
  cairo_set_source_rgba (cr, colour.red, colour.green, colour.blue, colour.alpha);
}
