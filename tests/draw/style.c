/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Contrast of the built-in styles. Source: W3C, Web Content Accessibility Guidelines 2.1:
 * success criteria 1.4.3 (text 4.5 : 1) and 1.4.11 (graphics 3 : 1), "relative luminance" and
 * "contrast ratio" of its glossary, read at w3c.github.io/wcag. */

#include "draw/style.h"
#include "rows.h"

#include <math.h>

#define TEXT 4.5
#define GRAPHICS 3.0

static double
linear (double channel)
{
  return channel <= 0.04045 ? channel / 12.92 : pow ((channel + 0.055) / 1.055, 2.4);
}

static double
luminance (DrawlColour colour)
{
  return 0.2126 * linear (colour.red) + 0.7152 * linear (colour.green) +
         0.0722 * linear (colour.blue);
}

static double
contrast (DrawlColour a, DrawlColour b)
{
  double lighter = MAX (luminance (a), luminance (b)), darker = MIN (luminance (a), luminance (b));

  return (lighter + 0.05) / (darker + 0.05);
}

/* Black on white is 21 : 1 by the definition; the grey 0x767676 is the darkest need for text. */
static void
test_formula (void)
{
  DrawlColour white = {1, 1, 1, 1}, black = {0, 0, 0, 1};
  DrawlColour grey = {0x76 / 255.0, 0x76 / 255.0, 0x76 / 255.0, 1};

  g_assert_cmpfloat_with_epsilon (contrast (black, white), 21, 1e-9);
  g_assert_cmpfloat_with_epsilon (contrast (white, white), 1, 1e-9);
  g_assert_cmpfloat_with_epsilon (contrast (grey, white), 4.54, 0.005);
}

#define OF(member) G_STRUCT_OFFSET (DrawlStyle, member)

typedef struct {
  const char *name;
  gsize one, other; /* colours of the style */
  double least;
} Pair;

static const Pair pair_rows[] = {
    {"ink-on-ground", OF (ink), OF (ground), TEXT},
    {"dim-on-ground", OF (dim), OF (ground), TEXT},
    {"ink-on-stretch", OF (ink), OF (stretch), TEXT},
    {"dim-on-stretch", OF (dim), OF (stretch), TEXT},
    {"alert-on-ground", OF (alert), OF (ground), TEXT},
    {"accent-on-ground", OF (accent), OF (ground), GRAPHICS},
    {"real-on-ground", OF (real), OF (ground), GRAPHICS},
    {"screen-on-ground", OF (screen), OF (ground), GRAPHICS},
    {"real-on-stretch", OF (real), OF (stretch), GRAPHICS},
    {"accent-on-stretch", OF (accent), OF (stretch), GRAPHICS},
};

static DrawlColour
colour_of (const DrawlStyle *style, gsize offset)
{
  return G_STRUCT_MEMBER (DrawlColour, style, offset);
}

static void
test_light (gconstpointer data)
{
  const Pair *row = data;

  g_assert_cmpfloat (contrast (colour_of (&drawl_style_light, row->one),
                               colour_of (&drawl_style_light, row->other)),
                     >=, row->least);
}

static void
test_dark (gconstpointer data)
{
  const Pair *row = data;

  g_assert_cmpfloat (
      contrast (colour_of (&drawl_style_dark, row->one), colour_of (&drawl_style_dark, row->other)),
      >=, row->least);
}

static void
test_paper (gconstpointer data)
{
  const Pair *row = data;

  g_assert_cmpfloat (contrast (colour_of (&drawl_style_paper, row->one),
                               colour_of (&drawl_style_paper, row->other)),
                     >=, row->least);
}

typedef struct {
  const char *name;
  double width, margin;
} Margin;

static const Margin margin_rows[] = {
    {"narrow", 20, 5}, {"small", 200, 12}, {"middle", 800, 28}, {"wide", 3840, 40}, {"none", 0, 0},
};

static void
test_margin (gconstpointer data)
{
  const Margin *row = data;

  g_assert_cmpfloat_with_epsilon (drawl_style_margin (row->width), row->margin, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/style/formula", test_formula);
  add_rows ("/style/light", pair_rows, test_light);
  add_rows ("/style/dark", pair_rows, test_dark);
  add_rows ("/style/paper", pair_rows, test_paper);
  add_rows ("/style/margin", margin_rows, test_margin);
  return g_test_run ();
}
