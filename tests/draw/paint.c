/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What is painted: nothing at the edge of a picture or beyond it, no text over text, no text cut
 * off, and no picture that Cairo cannot draw. The linker hands every line of text to
 * __wrap_drawl_text_draw() first (--wrap), where its box is noted. */

#include "draw/cardstrip.h"
#include "draw/text.h"
#include "draw/timeline.h"
#include "rows.h"

#include <math.h>

#define EDGE 2      /* px that stay untouched */
#define ROUNDED 0.1 /* a box may pass another by so much */
#define N_RANDOM 250
#define UNCUT_FROM 300.0 /* px: in pictures wider than this no line is ever cut */

typedef struct {
  double x, y, width, height;
  gboolean cut;
} Line;

static GArray *lines; /* of Line, of the picture being drawn */

double __real_drawl_text_draw (cairo_t *cr, const DrawlStyle *style,
                               const DrawlTextStyle *text_style, double x, double y,
                               const char *text);
double __wrap_drawl_text_draw (cairo_t *cr, const DrawlStyle *style,
                               const DrawlTextStyle *text_style, double x, double y,
                               const char *text);

double
__wrap_drawl_text_draw (cairo_t *cr, const DrawlStyle *style, const DrawlTextStyle *text_style,
                        double x, double y, const char *text)
{
  DrawlTextStyle uncut = *text_style;
  Line line = {.y = y};
  double natural, height;

  uncut.max_width = 0;
  drawl_text_measure (cr, style, text_style, text, &line.width, &line.height);
  drawl_text_measure (cr, style, &uncut, text, &natural, &height);
  line.cut = natural > line.width + ROUNDED;
  g_assert_cmpint (text_style->align, ==, DRAWL_ALIGN_START);
  line.x = style->rtl ? x - line.width : x;
  g_array_append_val (lines, line);
  return __real_drawl_text_draw (cr, style, text_style, x, y, text);
}

static void
assert_lines (double width, double height)
{
  for (guint i = 0; i < lines->len; i++) {
    const Line *a = &g_array_index (lines, Line, i);

    g_assert_cmpfloat (a->x, >=, 0);
    g_assert_cmpfloat (a->y, >=, 0);
    g_assert_cmpfloat (a->x + a->width, <=, width);
    g_assert_cmpfloat (a->y + a->height, <=, height);
    g_assert_false (a->cut && width >= UNCUT_FROM);
    for (guint j = 0; j < i; j++) {
      const Line *b = &g_array_index (lines, Line, j);
      gboolean beside = a->x + a->width <= b->x + ROUNDED || b->x + b->width <= a->x + ROUNDED;
      gboolean below = a->y + a->height <= b->y + ROUNDED || b->y + b->height <= a->y + ROUNDED;

      g_assert_true (beside || below);
    }
  }
}

/* ---- A picture of either kind, on nothing ---- */

typedef struct {
  const DrawlTimelineData *timeline; /* or */
  const DrawlCardStripData *cards;
  const DrawlTimelineLayout *fixed;
  DrawlTimelineGrip active;
  double playhead_s;
  DrawlStyle style;
  double width, height;
} Picture;

static void
draw (cairo_t *cr, const Picture *picture)
{
  g_array_set_size (lines, 0);
  if (picture->timeline != NULL)
    drawl_timeline_draw (cr, picture->timeline, &picture->style, picture->width, picture->height,
                         picture->active, picture->playhead_s, picture->fixed);
  else
    drawl_cardstrip_draw (cr, picture->cards, &picture->style, picture->width, picture->height);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
}

/* On a surface without bounds, so that what is painted outside shows. */
static void
assert_within (const Picture *picture)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  double x, y, width, height;

  draw (cr, picture);
  cairo_destroy (cr);
  cairo_recording_surface_ink_extents (surface, &x, &y, &width, &height);
  g_assert_cmpint (cairo_surface_status (surface), ==, CAIRO_STATUS_SUCCESS);
  cairo_surface_destroy (surface);
  g_assert_cmpfloat (width, >, 0);
  g_assert_cmpfloat (x, >=, EDGE - 1);
  g_assert_cmpfloat (y, >=, EDGE - 1);
  g_assert_cmpfloat (x + width, <=, picture->width - EDGE + 1);
  g_assert_cmpfloat (y + height, <=, picture->height - EDGE + 1);
}

static void
assert_clear (const guint8 *data, int stride, int x, int y)
{
  g_assert_cmpuint (((const guint32 *)(gconstpointer)(data + (gsize)y * (gsize)stride))[x], ==, 0);
}

static void
assert_edge_untouched (const Picture *picture)
{
  int width = (int)picture->width, height = (int)picture->height;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  cairo_t *cr = cairo_create (surface);

  draw (cr, picture);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  const guint8 *data = cairo_image_surface_get_data (surface);
  int stride = cairo_image_surface_get_stride (surface);
  for (int inset = 0; inset < EDGE; inset++) {
    for (int x = 0; x < width; x++) {
      assert_clear (data, stride, x, inset);
      assert_clear (data, stride, x, height - 1 - inset);
    }
    for (int y = 0; y < height; y++) {
      assert_clear (data, stride, inset, y);
      assert_clear (data, stride, width - 1 - inset, y);
    }
  }
  cairo_surface_destroy (surface);
}

static void
assert_sound (const Picture *picture)
{
  assert_within (picture);
  assert_lines (picture->width, picture->height);
  assert_edge_untouched (picture);
}

static Picture
make_picture (double width, double height, gboolean rtl, gboolean dark)
{
  Picture picture = {
      .playhead_s = -1,
      .style = dark ? drawl_style_dark : drawl_style_light,
      .width = width,
      .height = height,
  };

  picture.style.ground.alpha = 0;
  picture.style.font_size = 13;
  picture.style.rtl = rtl;
  return picture;
}

/* ---- The span picture ---- */

typedef struct {
  const char *name;
  double width, height;
} Size;

static const Size sizes[] = {
    {"smallest", 200, 120}, {"narrow", 280, 200}, {"window", 760, 260},   {"low", 760, 60},
    {"very-low", 760, 24},  {"tall", 220, 900},   {"widest", 3840, 1000},
};

typedef struct {
  const char *name;
  DrawlTimelineData data;
} Extreme;

static const Extreme extreme_rows[] = {
    {"ten-times-slower", {0.45, 4.5, 0.3, 0.2, 240, 24, 108, (char *)"00:00:04:12"}},
    {"ten-thousand-times-slower", {0.001, 10, 0, 0, 240000, 24, 240, (char *)"00:00:10:00"}},
    {"ten-thousand-with-handles", {0.001, 10, 0.5, 0.5, 240000, 24, 240, NULL}},
    {"a-hundred-times-faster", {36000, 360, 0, 0, 0.24, 24, 8640, (char *)"00:06:00:00"}},
    {"a-hundred-million-times", {1e-6, 100, 0, 0, 1e7, 0.1, 10, NULL}},
    {"real-time", {4, 4, 1, 1, 25, 25, 100, (char *)"00:00:04:00"}},
    {"ten-hours", {36000, 36000, 0, 0, 25, 25, 900000, (char *)"10:00:00:00"}},
    {"ten-years", {315360000, 31536, 0, 0, 0.0024, 24, 756864, (char *)"08:45:36:00"}},
    {"a-millisecond", {0.001, 0.001, 0, 0, 1000, 1000, 1, (char *)"00:00:00:001"}},
    {"one-frame", {0.001, 1 / 24.0, 0, 0, 1000, 24, 1, (char *)"00:00:00:01"}},
    {"long-handles", {0.1, 1, 600, 300, 240, 24, 24, (char *)"00:00:01:00"}},
    {"handle-after-only", {0.1, 1, 0, 300, 240, 24, 24, (char *)"00:00:01:00"}},
    {"handle-before-only", {0.1, 1, 300, 0, 240, 24, 24, (char *)"00:00:01:00"}},
    {"nothing", {0, 0, 0, 0, 0, 0, 0, NULL}},
    {"not-a-number", {NAN, INFINITY, 0, 0, NAN, 0, 0, NULL}},
};

static void
test_extreme (gconstpointer data)
{
  const Extreme *row = data;

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (guint way = 0; way < 4; way++) {
      Picture picture = make_picture (sizes[i].width, sizes[i].height, way & 1, way & 2);

      picture.timeline = &row->data;
      assert_sound (&picture);
      picture.active = DRAWL_TIMELINE_ACTION_END;
      picture.playhead_s = row->data.screen_s / 3;
      assert_sound (&picture);
      picture.active = DRAWL_TIMELINE_SCREEN_END;
      assert_sound (&picture);
    }
}

static DrawlTimelineData
random_data (void)
{
  double action = pow (10, g_test_rand_double_range (-3, 4.55));
  double factor = pow (10, g_test_rand_double_range (-2, 4));

  return (DrawlTimelineData){
      .action_s = action,
      .screen_s = action * factor,
      .before_s = g_test_rand_bit () ? pow (10, g_test_rand_double_range (-2, 2)) : 0,
      .after_s = g_test_rand_bit () ? pow (10, g_test_rand_double_range (-2, 2)) : 0,
      .capture_fps = 24 * factor,
      .playback_fps = 24,
      .frames = (gint64)ceil (24 * factor * action),
      .screen_code = (char *)"00:00:04:12",
  };
}

static void
test_random (void)
{
  for (guint i = 0; i < N_RANDOM; i++) {
    DrawlTimelineData data = random_data ();
    Picture picture = make_picture (g_test_rand_double_range (200, 2000),
                                    g_test_rand_double_range (24, 600), g_test_rand_bit (), FALSE);

    picture.timeline = &data;
    picture.style.font_size = g_test_rand_double_range (8, 18);
    picture.playhead_s = data.screen_s * g_test_rand_double_range (-0.2, 1.2);
    assert_within (&picture);
    assert_lines (picture.width, picture.height);
  }
}

/* In mid-drag an end may be pulled far out of the picture that stays. */
static void
test_dragged_out (void)
{
  for (guint i = 0; i < N_RANDOM; i++) {
    DrawlTimelineData data = random_data ();
    Picture picture = make_picture (700, 260, g_test_rand_bit (), FALSE);
    DrawlTimelineLayout fixed;

    drawl_timeline_layout (&data, picture.width, picture.height, 17, picture.style.rtl, &fixed);
    data.screen_s *= pow (10, g_test_rand_double_range (-3, 3));
    data.action_s *= pow (10, g_test_rand_double_range (-3, 3));
    picture.timeline = &data;
    picture.fixed = &fixed;
    picture.playhead_s = data.screen_s / 2;
    assert_within (&picture);
    assert_lines (picture.width, picture.height);
  }
}

/* ---- The bar of a list row ---- */

typedef struct {
  const char *name;
  double action_s, screen_s, longest_s;
  int real_px, screen_px; /* painted, of 100 */
} Bar;

static const Bar bar_rows[] = {
    {"slower", 0.45, 4.5, 9, 5, 50},        {"faster", 40, 20, 80, 50, 25},
    {"longest", 1, 10, 10, 10, 100},        {"too-short-to-see", 0.001, 10, 20, 2, 50},
    {"beyond-longest", 1, 30, 10, 10, 100}, {"no-longest", 1, 1, 0, 2, 2},
};

/* Pixels of a row of the image that are painted over half. */
static int
painted (cairo_surface_t *surface, int y)
{
  const guint8 *data = cairo_image_surface_get_data (surface);
  const guint8 *row = data + y * cairo_image_surface_get_stride (surface);
  int n = 0;

  for (int x = 0; x < cairo_image_surface_get_width (surface); x++)
    n += ((const guint32 *)(gconstpointer)row)[x] >> 24 > 127;
  return n;
}

static void
test_bar (gconstpointer data)
{
  const Bar *row = data;

  for (guint rtl = 0; rtl < 2; rtl++) {
    cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 100, 14);
    cairo_t *cr = cairo_create (surface);
    DrawlStyle style = drawl_style_light;

    style.rtl = rtl;
    drawl_timeline_draw_bar (cr, row->action_s, row->screen_s, row->longest_s, &style, 100, 14);
    g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
    cairo_destroy (cr);
    cairo_surface_flush (surface);
    g_assert_cmpint (ABS (painted (surface, 3) - row->real_px), <=, 1);
    g_assert_cmpint (ABS (painted (surface, 11) - row->screen_px), <=, 1);
    g_assert_cmpint (painted (surface, 6), ==, 0);
    cairo_surface_destroy (surface);
  }
}

/* ---- The card picture ---- */

/* @shots of @takes each, a card holding about ten; the middle shot marked. */
static void
make_cards (DrawlCardStripData *data, guint shots, guint takes, double share)
{
  DrawlCardBlock block = {0};

  *data = (DrawlCardStripData){
      .blocks = g_array_new (FALSE, FALSE, sizeof (DrawlCardBlock)),
      .reserve = 0.1,
      .card_name = g_strdup ("V90 256 GB"),
      .capacity = g_strdup ("256 GB"),
      .slate = g_strdup ("12A"),
      .takes = takes,
      .left = g_strdup ("4 min 10 s left on the last at 240 fps"),
  };
  for (guint i = 0; i < shots * takes && block.card < DRAWL_CARDSTRIP_CARDS_MAX; i++) {
    block.to = block.from + share;
    block.shot = i / takes;
    block.marked = block.shot == shots / 2;
    g_array_append_val (data->blocks, block);
    data->cards = block.card + 1;
    data->marked_cards += block.marked;
    block.from = block.to;
    if (block.from + share > 0.9) {
      block.card++;
      block.from = 0;
    }
  }
}

typedef struct {
  const char *name;
  guint shots, takes;
  double share;
} Cards;

static const Cards cards_rows[] = {
    {"one-shot", 1, 3, 0.1},
    {"one-card", 3, 3, 0.08},
    {"three-cards", 3, 8, 0.11},
    {"twelve-cards", 12, 9, 0.1},
    {"all-that-are-drawn", 90, 8, 0.1},
    {"three-hundred-shots", 300, 12, 0.0125},
    {"hair-thin", 300, 12, 0.00025},
    {"none", 0, 0, 0},
};

static void
test_cards (gconstpointer data)
{
  const Cards *row = data;
  DrawlCardStripData cards;

  make_cards (&cards, row->shots, row->takes, row->share);
  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (guint way = 0; way < 4; way++) {
      Picture picture = make_picture (sizes[i].width, sizes[i].height, way & 1, way & 2);

      picture.cards = &cards;
      assert_sound (&picture);
    }
  drawl_cardstrip_data_clear (&cards);
}

static void
test_problem (void)
{
  DrawlCardStripData cards = {.blocks = g_array_new (FALSE, FALSE, sizeof (DrawlCardBlock)),
                              .problem = g_strdup ("This shot has no size or no codec yet.")};

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++) {
    Picture picture = make_picture (sizes[i].width, sizes[i].height, i % 2, FALSE);

    picture.cards = &cards;
    assert_within (&picture);
    assert_edge_untouched (&picture);
  }
  drawl_cardstrip_data_clear (&cards);
}

/* Points painted in each row of @column of a picture of one marked and one other take: the marked
 * one is told by its height alone. */
static void
test_marked_is_higher (void)
{
  DrawlCardStripData cards;
  Picture picture = make_picture (600, 220, FALSE, FALSE);
  DrawlCardStripLayout at;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 600, 220);
  cairo_t *cr = cairo_create (surface);

  make_cards (&cards, 2, 1, 0.4);
  picture.cards = &cards;
  draw (cr, &picture);
  drawl_cardstrip_layout (cards.cards, 600, 220, drawl_text_height (cr, &picture.style), FALSE,
                          &at);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  cairo_rectangle_t card = drawl_cardstrip_card (&at, 0);
  const guint8 *data = cairo_image_surface_get_data (surface);
  const guint32 *row =
      (const guint32 *)(gconstpointer)(data + (int)(card.y + 6) *
                                                  cairo_image_surface_get_stride (surface));
  /* Near the top of the card: empty above the other take, painted in the accent in the marked. */
  g_assert_cmphex (row[(int)(card.x + card.width * 0.2)], !=,
                   row[(int)(card.x + card.width * 0.6)]);
  g_assert_cmphex (row[(int)(card.x + card.width * 0.2)], ==,
                   row[(int)(card.x + card.width * 0.85)]);
  cairo_surface_destroy (surface);
  drawl_cardstrip_data_clear (&cards);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  lines = g_array_new (FALSE, FALSE, sizeof (Line));
  add_rows ("/paint/timeline", extreme_rows, test_extreme);
  g_test_add_func ("/paint/timeline/random", test_random);
  g_test_add_func ("/paint/timeline/dragged-out", test_dragged_out);
  add_rows ("/paint/bar", bar_rows, test_bar);
  add_rows ("/paint/cards", cards_rows, test_cards);
  g_test_add_func ("/paint/cards/problem", test_problem);
  g_test_add_func ("/paint/cards/marked-is-higher", test_marked_is_higher);
  int failed = g_test_run ();
  g_array_unref (lines);
  return failed;
}
