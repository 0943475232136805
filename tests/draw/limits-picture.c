/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The picture of a body's limits without a brush: which tiers it has, where its parts lie at any
 * width, and the same in words; then that every style can be drawn. */

#include "draw/limits-picture.h"

#include "plan/body-file.h"
#include "plan/data-dir.h"
#include "rows.h"

#define LINE 17.0

typedef struct {
  const char *name;
  guint n_tiers;
  const char *first; /* the size on top */
  const char *says;
} Row;

static const Row rows[] = {
    {"mullion-8.json", 2, "8192 × 5120", "8192 × 5120: not as hired, 48 fps with “Open gate”."},
    {"treadle-4.json", 4, "6144 × 3240", "1920 × 1080: up to 60 fps as hired, 240 fps with"},
    {"ferrule.json", 2, "4096 × 2304", "1280 × 512: up to 1000 fps as hired, 4390 fps"},
    {"quern-35.json", 1, "4 perforations", "2 perforations: up to 150 fps as hired."},
};

static void
load (const char *name, DrawlLimitsData *data)
{
  g_autofree char *path = drawl_data_file ("bodies", name, NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (DrawlBody) body = drawl_body_load (file, &error);

  g_assert_no_error (error);
  drawl_limits_data_from_body (data, body);
}

static void
test_data (gconstpointer data)
{
  const Row *row = data;
  DrawlLimitsData limits;

  load (row->name, &limits);
  g_assert_cmpuint (limits.n_tiers, ==, row->n_tiers);
  g_assert_cmpstr (limits.sizes[0], ==, row->first);
  /* Each tier goes beyond the body as hired somewhere, and below it nowhere. */
  for (guint tier = 1; tier < limits.n_tiers; tier++) {
    guint beyond = 0;
    for (guint i = 0; i < limits.n_sizes; i++) {
      int order =
          drawl_rational_compare (limits.tiers[tier].highest[i], limits.tiers[0].highest[i]);
      g_assert_cmpint (order, >=, 0);
      beyond += order > 0;
    }
    g_assert_cmpuint (beyond, >, 0);
  }
  drawl_limits_data_clear (&limits);
}

static void
test_words (gconstpointer data)
{
  const Row *row = data;
  DrawlLimitsData limits;

  load (row->name, &limits);
  g_autofree char *text = drawl_limits_text (&limits);
  g_auto (GStrv) parts = g_strsplit (text, "\u00a0", -1);
  g_autofree char *plain = g_strjoinv (" ", parts);
  g_assert_nonnull (strstr (plain, row->says));
  drawl_limits_data_clear (&limits);
}

static void
assert_inside (const cairo_rectangle_t *box, double width, double height)
{
  g_assert_cmpfloat (box->x, >=, 0);
  g_assert_cmpfloat (box->y, >=, 0);
  g_assert_cmpfloat (box->x + box->width, <=, width + 1e-6);
  g_assert_cmpfloat (box->y + box->height, <=, height + 1e-6);
}

static void
test_layout (gconstpointer data)
{
  const Row *row = data;
  DrawlLimitsData limits;

  load (row->name, &limits);
  for (double width = 240; width < 3840; width *= 1.3) {
    DrawlLimitsLayout at;
    drawl_limits_layout (&limits, width, LINE, 90, &at);
    assert_inside (&at.names, width, at.height);
    assert_inside (&at.plot, width, at.height);
    assert_inside (&at.axis, width, at.height);
    assert_inside (&at.legend, width, at.height);
    g_assert_cmpfloat (at.names.x + at.names.width, <, at.plot.x);
    g_assert_cmpfloat (at.plot.y + at.plot.height, <=, at.axis.y);
    g_assert_cmpfloat (at.axis.y + at.axis.height, <, at.legend.y);
    g_assert_cmpuint (at.n_ticks, >, 0);
    for (guint i = 1; i < at.n_ticks; i++)
      g_assert_cmpfloat (at.ticks[i], >, at.ticks[i - 1]);
    for (guint i = 0; i < limits.n_sizes; i++) {
      double x = drawl_limits_x_of (&at, limits.tiers[0].highest[i]);
      g_assert_cmpfloat (x, >=, at.plot.x);
      g_assert_cmpfloat (x, <=, at.plot.x + at.plot.width + 1e-6);
    }
  }
  drawl_limits_data_clear (&limits);
}

/* Twice the rate is as far everywhere. */
static void
test_ratios (void)
{
  DrawlLimitsData limits;
  DrawlLimitsLayout at;

  load ("ferrule.json", &limits);
  drawl_limits_layout (&limits, 800, LINE, 90, &at);
  double x500 = drawl_limits_x_of (&at, exact ("500"));
  double x1000 = drawl_limits_x_of (&at, exact ("1000"));
  double x2000 = drawl_limits_x_of (&at, exact ("2000"));
  g_assert_cmpfloat_with_epsilon (x2000 - x1000, x1000 - x500, 1e-6);
  g_assert_cmpfloat_with_epsilon (drawl_limits_x_of (&at, exact ("0")), at.plot.x, 1e-6);
  drawl_limits_data_clear (&limits);
}

static void
test_drawn (gconstpointer data)
{
  const Row *row = data;
  const DrawlStyle *styles[] = {&drawl_style_light, &drawl_style_dark, &drawl_style_paper};
  DrawlLimitsData limits;

  load (row->name, &limits);
  for (guint i = 0; i < 2 * G_N_ELEMENTS (styles); i++) {
    DrawlStyle style = *styles[i / 2];
    cairo_surface_t *ink = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
    cairo_t *cr = cairo_create (ink);
    double height = drawl_limits_height (&limits, 560, LINE), x, y, w, h;
    style.rtl = i % 2;
    style.ground.alpha = 0;
    drawl_limits_draw (cr, &limits, &style, 560, height);
    g_assert_cmpint ((int)cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
    cairo_recording_surface_ink_extents (ink, &x, &y, &w, &h);
    g_assert_cmpfloat (x, >=, 0);
    g_assert_cmpfloat (x + w, <=, 560);
    g_assert_cmpfloat (y, >=, 0);
    cairo_destroy (cr);
    cairo_surface_destroy (ink);
  }
  drawl_limits_data_clear (&limits);
}

/* A draft of which little is known, or a body with no limits: nothing is drawn out of bounds. */
static void
test_nothing (void)
{
  g_autoptr (DrawlBody) body = drawl_body_new ();
  cairo_surface_t *ink = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (ink);
  DrawlLimitsData limits;

  drawl_limits_data_from_body (&limits, body);
  g_assert_cmpuint (limits.n_tiers, ==, 1);
  drawl_limits_draw (cr, &limits, &drawl_style_light, 300, 100);
  g_assert_cmpint ((int)cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  g_autofree char *text = drawl_limits_text (&limits);
  g_assert_cmpstr (text, ==, "");
  drawl_limits_data_clear (&limits);
  cairo_destroy (cr);
  cairo_surface_destroy (ink);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/limits/data", rows, test_data);
  add_rows ("/limits/words", rows, test_words);
  add_rows ("/limits/layout", rows, test_layout);
  add_rows ("/limits/drawn", rows, test_drawn);
  g_test_add_func ("/limits/ratios", test_ratios);
  g_test_add_func ("/limits/nothing", test_nothing);
  return g_test_run ();
}
