/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Cards, ring buffers, offloads and drives: sums, what is refused, and that more never fits in
 * less. */

#include "core/error.h"
#include "core/storage.h"
#include "rows.h"

#include <string.h>

#define N_RANDOM 5000

typedef struct {
  const char *name;
  gint64 card_bytes;
  const char *reserve, *frame_bytes, *rate;
  guint audio_tracks;
  gint64 frames; /* that fit on a card */
} Card;

static const Card card_rows[] = {
    {"plain", 128000000000, "0", "5184000", "24", 0, 24691},
    {"reserve", 128000000000, "10", "5184000", "24", 0, 22222},
    {"reserve-fraction", 1000, "12.5", "1", "24", 0, 875},
    {"sound", 1000000, "0", "10000", "25", 2, 46},
    {"sound-at-24000-1001", 1000000, "0", "4", "24000/1001", 1, 166},
    {"fraction-of-a-byte", 10, "0", "10/3", "24", 0, 3},
    {"exactly-one", 5184000, "0", "5184000", "24", 0, 1},
    {"not-one", 5183999, "0", "5184000", "24", 0, 0},
};

static DrawlCardLoad
card_load (const Card *row)
{
  return (DrawlCardLoad){row->card_bytes, exact (row->reserve), exact (row->frame_bytes),
                         exact (row->rate), row->audio_tracks};
}

static void
test_card (gconstpointer data)
{
  const Card *row = data;
  DrawlCardLoad load = card_load (row);
  g_autoptr (GError) error = NULL;
  gint64 frames = -1, cards = -1;

  g_assert_true (drawl_card_frames (&load, &frames, &error));
  g_assert_no_error (error);
  g_assert_cmpint (frames, ==, row->frames);

  if (row->frames == 0) {
    g_assert_false (drawl_cards_spanning (&load, 1, &cards, &error));
    assert_says (error, DRAWL_CORE_ERROR_UNFIT, "not one frame fits");
    return;
  }
  for (gint64 n = 0; n < 3; n++) {
    g_assert_true (drawl_cards_spanning (&load, n * row->frames, &cards, NULL));
    g_assert_cmpint (cards, ==, n);
    g_assert_true (drawl_cards_spanning (&load, n * row->frames + 1, &cards, NULL));
    g_assert_cmpint (cards, ==, n + 1);
  }
}

typedef struct {
  const char *name;
  Card card;
  const char *says;
} CardRefused;

static const CardRefused card_refused_rows[] = {
    {"no-card", {"", 0, "0", "1", "24"}, "more than 0 bytes"},
    {"negative-card", {"", -1, "0", "1", "24"}, "more than 0 bytes"},
    {"negative-reserve", {"", 1, "-1", "1", "24"}, "at least 0 % and below 100 %"},
    {"all-reserve", {"", 1, "100", "1", "24"}, "at least 0 % and below 100 %"},
    {"no-frame", {"", 1, "0", "0", "24"}, "a frame must take more than 0 bytes"},
    {"no-rate", {"", 1, "0", "1", "0"}, "a capture rate above 0"},
};

static void
test_card_refused (gconstpointer data)
{
  const CardRefused *row = data;
  DrawlCardLoad load = card_load (&row->card);
  g_autoptr (GError) error = NULL;
  gint64 frames = -7;

  g_assert_false (drawl_card_frames (&load, &frames, &error));
  assert_says (error, DRAWL_CORE_ERROR_RANGE, row->says);
  g_assert_cmpint (frames, ==, -7);
}

typedef struct {
  const char *name;
  gint64 usable;
  struct {
    gint64 bytes, count;
  } takes[4];
  gint64 whole_cards, whole_left, spanning_cards, spanning_left;
} Fill;

static const Fill fill_rows[] = {
    {"none", 100, {{0}}, 0, 0, 0, 0},
    {"one", 100, {{30, 1}}, 1, 70, 1, 70},
    {"fits-exactly", 100, {{50, 2}}, 1, 0, 1, 0},
    {"does-not-fit-on-what-is-left", 100, {{60, 1}, {50, 1}}, 2, 50, 2, 90},
    {"in-the-order-of-shooting", 100, {{60, 1}, {50, 1}, {40, 1}}, 2, 10, 2, 50},
    {"many", 100, {{30, 10}}, 4, 70, 3, 0},
    {"many-on-what-is-left", 100, {{40, 1}, {30, 3}}, 2, 70, 2, 70},
    {"as-large-as-a-card", 100, {{1, 1}, {100, 2}}, 3, 0, 3, 99},
    {"empty-takes", 100, {{0, 1000}, {10, 1}}, 1, 90, 1, 90},
    {"a-great-many",
     100,
     {{51, G_GINT64_CONSTANT (1000000000000000)}},
     G_GINT64_CONSTANT (1000000000000000),
     49,
     G_GINT64_CONSTANT (510000000000000),
     0},
};

static void
test_fill (gconstpointer data)
{
  const Fill *row = data;
  DrawlCardFill whole, spanning;

  drawl_card_fill_init (&whole, row->usable);
  drawl_card_fill_init (&spanning, row->usable);
  for (gsize i = 0; i < G_N_ELEMENTS (row->takes); i++) {
    gint64 bytes = row->takes[i].bytes, count = row->takes[i].count;
    g_assert_true (drawl_card_fill_add (&whole, bytes, count, NULL));
    g_assert_true (drawl_card_fill_add_spanning (&spanning, bytes, count, NULL));
  }
  g_assert_cmpint (whole.cards, ==, row->whole_cards);
  g_assert_cmpint (whole.left_bytes, ==, row->whole_left);
  g_assert_cmpint (spanning.cards, ==, row->spanning_cards);
  g_assert_cmpint (spanning.left_bytes, ==, row->spanning_left);
}

static void
assert_fill_refused (gboolean spanning, gint64 usable, gint64 bytes, gint64 count,
                     DrawlCoreError code, const char *says)
{
  g_autoptr (GError) error = NULL;
  DrawlCardFill fill;

  drawl_card_fill_init (&fill, usable);
  g_assert_false (spanning ? drawl_card_fill_add_spanning (&fill, bytes, count, &error)
                           : drawl_card_fill_add (&fill, bytes, count, &error));
  assert_says (error, code, says);
  g_assert_cmpint (fill.cards, ==, 0);
  g_assert_cmpint (fill.left_bytes, ==, 0);
}

static void
test_fill_refused (void)
{
  assert_fill_refused (FALSE, 100, 101, 1, DRAWL_CORE_ERROR_UNFIT, "longer than a card holds");
  assert_fill_refused (FALSE, 0, 1, 1, DRAWL_CORE_ERROR_UNFIT, "nothing fits");
  assert_fill_refused (TRUE, 0, 1, 1, DRAWL_CORE_ERROR_UNFIT, "nothing fits");
  assert_fill_refused (FALSE, 100, -1, 1, DRAWL_CORE_ERROR_RANGE, "must be 0 or more");
  assert_fill_refused (TRUE, 100, 1, -1, DRAWL_CORE_ERROR_RANGE, "must be 0 or more");
  assert_fill_refused (TRUE, 100, G_MAXINT64, 2, DRAWL_CORE_ERROR_OVERFLOW, "does not fit");

  DrawlCardFill fill;
  g_autoptr (GError) error = NULL;
  drawl_card_fill_init (&fill, 1);
  g_assert_true (drawl_card_fill_add (&fill, 1, G_MAXINT64, NULL));
  g_assert_false (drawl_card_fill_add (&fill, 1, 1, &error));
  assert_says (error, DRAWL_CORE_ERROR_OVERFLOW, "does not fit");
  g_assert_cmpint (fill.cards, ==, G_MAXINT64);
}

static void
test_take_bytes (void)
{
  DrawlCardLoad load = {1000, exact ("0"), exact ("10/3"), exact ("24000/1001"), 1};
  g_autoptr (GError) negative = NULL, huge = NULL;
  gint64 bytes;

  /* 10/3 + 144000 · 1001/24000 = 18028/3 bytes a frame. */
  g_assert_true (drawl_take_bytes (&load, 0, &bytes, NULL));
  g_assert_cmpint (bytes, ==, 0);
  g_assert_true (drawl_take_bytes (&load, 1, &bytes, NULL));
  g_assert_cmpint (bytes, ==, 6010);
  g_assert_true (drawl_take_bytes (&load, 3, &bytes, NULL));
  g_assert_cmpint (bytes, ==, 18028);
  g_assert_false (drawl_take_bytes (&load, -1, &bytes, &negative));
  assert_says (negative, DRAWL_CORE_ERROR_RANGE, "must be 0 or more");
  g_assert_false (drawl_take_bytes (&load, G_MAXINT64 - 1, &bytes, &huge));
  assert_says (huge, DRAWL_CORE_ERROR_OVERFLOW, "does not fit");
}

typedef struct {
  const char *name;
  gint64 buffer;
  const char *frame_bytes, *rate, *pre_percent;
  gint64 write;
  gint64 frames, pre, post;
  const char *held_s, *empty_s;
} Ring;

static const Ring ring_rows[] = {
    {"usual", 16000000000, "3110400", "1000", "50", 400000000, 5144, 2572, 2572, "5.144",
     "39.9997440"},
    {"odd-frames", 350, "100", "10", "50", 100, 3, 1, 2, "0.3", "3"},
    {"all-before", 350, "100", "10", "100", 0, 3, 3, 0, "0.3", "0"},
    {"all-after", 350, "100", "10", "0", 0, 3, 0, 3, "0.3", "0"},
    {"third-before", 1000, "100", "24000/1001", "100/3", 0, 10, 3, 7, "1001/2400", "0"},
};

static void
test_ring (gconstpointer data)
{
  const Ring *row = data;
  g_autoptr (GError) error = NULL;
  DrawlRingBuffer ring;

  g_assert_true (drawl_ring_buffer (row->buffer, exact (row->frame_bytes), exact (row->rate),
                                    exact (row->pre_percent), row->write, &ring, &error));
  g_assert_no_error (error);
  g_assert_cmpint (ring.frames, ==, row->frames);
  g_assert_cmpint (ring.pre_frames, ==, row->pre);
  g_assert_cmpint (ring.post_frames, ==, row->post);
  assert_same (ring.held_s, exact (row->held_s));
  assert_same (ring.empty_s, exact (row->empty_s));
}

static void
test_ring_refused (void)
{
  static const struct {
    gint64 buffer;
    const char *frame, *rate, *pre;
    gint64 write;
    DrawlCoreError code;
    const char *says;
  } rows[] = {
      {0, "1", "24", "50", 0, DRAWL_CORE_ERROR_RANGE, "more than 0 bytes"},
      {1, "0", "24", "50", 0, DRAWL_CORE_ERROR_RANGE, "more than 0 bytes"},
      {1, "1", "0", "50", 0, DRAWL_CORE_ERROR_RANGE, "capture rate above 0"},
      {1, "1", "24", "-1", 0, DRAWL_CORE_ERROR_RANGE, "from 0 % to 100 %"},
      {1, "1", "24", "101", 0, DRAWL_CORE_ERROR_RANGE, "from 0 % to 100 %"},
      {1, "1", "24", "50", -1, DRAWL_CORE_ERROR_RANGE, "write speed"},
      {1, "2", "24", "50", 0, DRAWL_CORE_ERROR_UNFIT, "not one frame fits in the buffer"},
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autoptr (GError) error = NULL;
    DrawlRingBuffer ring = {.frames = -7};
    g_assert_false (drawl_ring_buffer (rows[i].buffer, exact (rows[i].frame), exact (rows[i].rate),
                                       exact (rows[i].pre), rows[i].write, &ring, &error));
    assert_says (error, rows[i].code, rows[i].says);
    g_assert_cmpint (ring.frames, ==, -7);
  }
}

static void
test_offload (void)
{
  g_autoptr (GError) no_speed = NULL, negative = NULL, huge = NULL;
  DrawlRational seconds;

  g_assert_true (drawl_offload_seconds (128000000000, 100000000, 1, &seconds, NULL));
  assert_rational (seconds, 1280, 1);
  g_assert_true (drawl_offload_seconds (1000, 300, 2, &seconds, NULL));
  assert_rational (seconds, 20, 3);
  g_assert_false (drawl_offload_seconds (1, 0, 1, &seconds, &no_speed));
  assert_says (no_speed, DRAWL_CORE_ERROR_RANGE, "offload speed must be above 0");
  g_assert_false (drawl_offload_seconds (-1, 1, 1, &seconds, &negative));
  assert_says (negative, DRAWL_CORE_ERROR_RANGE, "0 or more");
  g_assert_false (drawl_offload_seconds (G_MAXINT64, 1, 2, &seconds, &huge));
  assert_says (huge, DRAWL_CORE_ERROR_OVERFLOW, "does not fit");
}

static void
test_drives (void)
{
  g_autoptr (GError) no_drive = NULL, negative = NULL, huge = NULL;
  gint64 drives;

  g_assert_true (drawl_drives_needed (1000, 1000, 2, &drives, NULL));
  g_assert_cmpint (drives, ==, 2);
  g_assert_true (drawl_drives_needed (1001, 1000, 3, &drives, NULL));
  g_assert_cmpint (drives, ==, 6);
  g_assert_true (drawl_drives_needed (0, 1000, 3, &drives, NULL));
  g_assert_cmpint (drives, ==, 0);
  g_assert_false (drawl_drives_needed (1, 0, 1, &drives, &no_drive));
  assert_says (no_drive, DRAWL_CORE_ERROR_RANGE, "more than 0 bytes");
  g_assert_false (drawl_drives_needed (-1, 1, 1, &drives, &negative));
  assert_says (negative, DRAWL_CORE_ERROR_RANGE, "0 or more");
  g_assert_false (drawl_drives_needed (G_MAXINT64, 1, 2, &drives, &huge));
  assert_says (huge, DRAWL_CORE_ERROR_RANGE, "cannot be counted");
}

/* ---- More never fits in less ---- */

static DrawlCardLoad
random_load (void)
{
  static const char *const rates[] = {"24000/1001", "25", "60000/1001", "120", "1000"};
  DrawlCardLoad load = {.card_bytes = 1000000000 + random_whole (36),
                        .reserve_percent = {g_test_rand_int_range (0, 50), 1},
                        .rate = exact (rates[g_test_rand_int_range (0, G_N_ELEMENTS (rates))]),
                        .audio_tracks = (guint)g_test_rand_int_range (0, 5)};

  g_assert_true (
      drawl_rational_make (1 + random_whole (24), g_test_rand_int_range (1, 8), &load.frame_bytes));
  return load;
}

static void
test_card_monotone (void)
{
  for (guint i = 0; i < N_RANDOM; i++) {
    DrawlCardLoad load = random_load (), larger = load, heavier = load, reserved = load;
    gint64 frames, more, fewer, cards, more_cards, bytes, over;

    larger.card_bytes += random_whole (30);
    reserved.reserve_percent.num += 1;
    g_assert_true (drawl_rational_add (load.frame_bytes, drawl_rational_whole (random_whole (10)),
                                       &heavier.frame_bytes));
    g_assert_true (drawl_card_frames (&load, &frames, NULL));
    g_assert_true (drawl_card_frames (&larger, &more, NULL));
    g_assert_cmpint (more, >=, frames);
    g_assert_true (drawl_card_frames (&heavier, &fewer, NULL));
    g_assert_cmpint (fewer, <=, frames);
    g_assert_true (drawl_card_frames (&reserved, &fewer, NULL));
    g_assert_cmpint (fewer, <=, frames);

    /* As many fit as are said to, and not one more. */
    gint64 usable;
    g_assert_true (drawl_card_usable_bytes (load.card_bytes, load.reserve_percent, &usable, NULL));
    g_assert_true (drawl_take_bytes (&load, frames, &bytes, NULL));
    g_assert_true (drawl_take_bytes (&load, frames + 1, &over, NULL));
    g_assert_cmpint (bytes, <=, usable);
    g_assert_cmpint (over, >, usable);

    gint64 shot = random_whole (30);
    g_assert_true (drawl_cards_spanning (&load, shot, &cards, NULL));
    g_assert_true (drawl_cards_spanning (&load, shot + random_whole (20), &more_cards, NULL));
    g_assert_cmpint (more_cards, >=, cards);
  }
}

static void
test_whole_takes_need_no_fewer (void)
{
  for (guint i = 0; i < N_RANDOM; i++) {
    DrawlCardLoad load = random_load ();
    gint64 on_card, usable, frames = 0, cards;
    DrawlCardFill whole, running, bigger;

    g_assert_true (drawl_card_usable_bytes (load.card_bytes, load.reserve_percent, &usable, NULL));
    g_assert_true (drawl_card_frames (&load, &on_card, NULL));
    drawl_card_fill_init (&whole, usable);
    drawl_card_fill_init (&running, usable);
    drawl_card_fill_init (&bigger, usable * 2);
    for (int shots = g_test_rand_int_range (1, 8); shots > 0; shots--) {
      gint64 wanted = 1 + random_whole (24), take = MIN (on_card, wanted);
      gint64 count = g_test_rand_int_range (1, 10), bytes;
      DrawlCardFill before = whole;
      frames += take * count;
      g_assert_true (drawl_take_bytes (&load, take, &bytes, NULL));
      g_assert_true (drawl_card_fill_add (&whole, bytes, count, NULL));
      g_assert_true (drawl_card_fill_add_spanning (&running, bytes, count, NULL));
      g_assert_true (drawl_card_fill_add_spanning (&bigger, bytes, count, NULL));
      g_assert_cmpint (whole.cards, >=, before.cards);

      /* The same takes one by one. */
      for (gint64 n = 0; n < count; n++)
        g_assert_true (drawl_card_fill_add (&before, bytes, 1, NULL));
      g_assert_cmpint (before.cards, ==, whole.cards);
      g_assert_cmpint (before.left_bytes, ==, whole.left_bytes);
    }
    g_assert_true (drawl_cards_spanning (&load, frames, &cards, NULL));
    g_assert_cmpint (whole.cards, >=, running.cards);
    g_assert_cmpint (whole.cards, >=, cards);
    g_assert_cmpint (running.cards, >=, bigger.cards);
  }
}

static void
test_ring_adds_up (void)
{
  for (guint i = 0; i < N_RANDOM; i++) {
    DrawlCardLoad load = random_load ();
    DrawlRational pre = {g_test_rand_int_range (0, 101), 1};
    DrawlRingBuffer ring, larger;

    g_assert_true (drawl_rational_make (pre.num, 1, &pre));
    g_assert_true (
        drawl_ring_buffer (load.card_bytes, load.frame_bytes, load.rate, pre, 1000, &ring, NULL));
    g_assert_true (drawl_ring_buffer (load.card_bytes + random_whole (30), load.frame_bytes,
                                      load.rate, pre, 1000, &larger, NULL));
    g_assert_cmpint (ring.pre_frames + ring.post_frames, ==, ring.frames);
    g_assert_cmpint (larger.frames, >=, ring.frames);
    g_assert_cmpint (drawl_rational_compare (larger.held_s, ring.held_s), >=, 0);
    g_assert_cmpint (drawl_rational_compare (larger.empty_s, ring.empty_s), >=, 0);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/storage/card", card_rows, test_card);
  add_rows ("/storage/card-refused", card_refused_rows, test_card_refused);
  add_rows ("/storage/fill", fill_rows, test_fill);
  g_test_add_func ("/storage/fill-refused", test_fill_refused);
  g_test_add_func ("/storage/take-bytes", test_take_bytes);
  add_rows ("/storage/ring", ring_rows, test_ring);
  g_test_add_func ("/storage/ring-refused", test_ring_refused);
  g_test_add_func ("/storage/offload", test_offload);
  g_test_add_func ("/storage/drives", test_drives);
  g_test_add_func ("/storage/property/card-monotone", test_card_monotone);
  g_test_add_func ("/storage/property/whole-takes-need-no-fewer", test_whole_takes_need_no_fewer);
  g_test_add_func ("/storage/property/ring-adds-up", test_ring_adds_up);
  return g_test_run ();
}
