/* SPDX-License-Identifier: GPL-3.0-or-later */

/* How long a picture takes to be drawn anew at 3840 × 1000 pixels: the median of RUNS, on an image
 * as the window draws on one. It is the processor's time of this thread, which is all that drawing
 * takes, so that it comes out much the same on a busy machine. */

#define _POSIX_C_SOURCE 200809L

#include "draw/cardstrip.h"
#include "draw/timeline.h"

#include <time.h>

#define WIDTH 3840
#define HEIGHT 1000
#define RUNS 61
#define WARM_UP 5
#define REACH_MS 8.0

typedef void (*Draw) (cairo_t *cr, gconstpointer data);

static void
draw_timeline (cairo_t *cr, gconstpointer data)
{
  drawl_timeline_draw (cr, data, &drawl_style_dark, WIDTH, HEIGHT, DRAWL_TIMELINE_SCREEN_END, 3,
                       NULL);
}

static void
draw_cards (cairo_t *cr, gconstpointer data)
{
  drawl_cardstrip_draw (cr, data, &drawl_style_dark, WIDTH, HEIGHT);
}

static double
now_ms (void)
{
  struct timespec now;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return (double)now.tv_sec * 1000 + (double)now.tv_nsec / 1000000;
}

static int
compare (gconstpointer a, gconstpointer b)
{
  double one = *(const double *)a, other = *(const double *)b;

  return one < other ? -1 : one > other;
}

static void
measure (const char *name, Draw draw, gconstpointer data)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
  double ms[RUNS];

  for (int i = -WARM_UP; i < RUNS; i++) {
    double start = now_ms ();
    cairo_t *cr = cairo_create (surface);
    draw (cr, data);
    cairo_destroy (cr);
    cairo_surface_flush (surface);
    ms[MAX (i, 0)] = now_ms () - start;
  }
  cairo_surface_destroy (surface);
  qsort (ms, RUNS, sizeof (double), compare);
  g_print ("%-28s median %5.2f ms, longest %5.2f ms, to reach: under %g ms\n", name, ms[RUNS / 2],
           ms[RUNS - 1], REACH_MS);
}

/* @takes on every card that is drawn. */
static void
make_cards (DrawlCardStripData *data, guint takes)
{
  *data = (DrawlCardStripData){
      .blocks = g_array_new (FALSE, FALSE, sizeof (DrawlCardBlock)),
      .cards = DRAWL_CARDSTRIP_CARDS_MAX,
      .reserve = 0.1,
      .card_name = g_strdup ("V90 256 GB"),
      .capacity = g_strdup ("256 GB"),
      .slate = g_strdup ("12A"),
      .takes = takes,
      .marked_cards = 1,
      .left = g_strdup ("4 min 10 s left on the last at 240 fps"),
  };
  for (guint i = 0; i < takes * DRAWL_CARDSTRIP_CARDS_MAX; i++) {
    double share = 0.9 / takes, from = share * (i % takes);
    DrawlCardBlock block = {i / takes, from, from + share, i / 3, i / takes == 5};
    g_array_append_val (data->blocks, block);
  }
}

int
main (void)
{
  /* Frames of either span a little over 4 px wide, and the other at any rate. */
  DrawlTimelineData slow = {0.45, 4.5, 0.3, 0.2, 240, 24, 108, (char *)"00:00:04:12"};
  DrawlTimelineData ticked = {30, 30, 1, 1, 29, 29, 870, (char *)"00:00:30:00"};
  DrawlTimelineData fast = {36000, 3600, 0, 0, 2.4, 24, 86400, (char *)"01:00:00:00"};
  DrawlCardStripData few, many;

  make_cards (&few, 12);
  make_cards (&many, 1000);
  measure ("timeline, ten times slower", draw_timeline, &slow);
  measure ("timeline, every frame ticked", draw_timeline, &ticked);
  measure ("timeline, ten hours", draw_timeline, &fast);
  measure ("cards, 64 of 12 takes", draw_cards, &few);
  measure ("cards, 64 of 1000 takes", draw_cards, &many);
  drawl_cardstrip_data_clear (&few);
  drawl_cardstrip_data_clear (&many);
  return 0;
}
