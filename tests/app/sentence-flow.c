/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Lines of a sentence: bits 10 high above the baseline and 4 below it, lines 100 wide, gaps of 5,
 * leading of 2, unless a row says otherwise. */

#include "app/sentence-flow.h"

#include "rows.h"

#define WIDTH 100
#define GAP 5
#define LEADING 2
#define BITS_MAX 4

typedef struct {
  int x, y, granted;
} Place;

typedef struct {
  const char *name;
  DrawlSentenceBit bits[BITS_MAX]; /* up to the first of width 0 */
  Place places[BITS_MAX];
  int height;
} Row;

static const Row rows[] = {
    {"one-line",
     {{30, 30, 10, 4, FALSE, TRUE}, {40, 40, 10, 4, FALSE, TRUE}},
     {{0, 0, 30}, {35, 0, 40}},
     14},
    {"just-fits",
     {{45, 45, 10, 4, FALSE, TRUE}, {50, 50, 10, 4, FALSE, TRUE}},
     {{0, 0, 45}, {50, 0, 50}},
     14},
    {"breaks",
     {{46, 46, 10, 4, FALSE, TRUE}, {50, 50, 10, 4, FALSE, TRUE}},
     {{0, 0, 46}, {0, 16, 50}},
     30},
    {"no-gap",
     {{50, 50, 10, 4, FALSE, TRUE}, {50, 50, 10, 4, FALSE, FALSE}},
     {{0, 0, 50}, {50, 0, 50}},
     14},
    {"joined-bits-stay-together",
     {{60, 60, 10, 4, FALSE, TRUE}, {30, 30, 10, 4, FALSE, TRUE}, {10, 10, 10, 4, TRUE}},
     {{0, 0, 60}, {0, 16, 30}, {30, 16, 10}},
     30},
    {"one-baseline",
     {{30, 30, 10, 4, FALSE, TRUE}, {30, 30, 16, 6, FALSE, TRUE}},
     {{0, 6, 30}, {35, 0, 30}},
     22},
    {"too-wide-is-narrowed",
     {{150, 20, 10, 4, FALSE, TRUE}, {10, 10, 10, 4, TRUE}},
     {{0, 0, 90}, {90, 0, 10}},
     14},
    {"not-below-its-least",
     {{150, 120, 10, 4, FALSE, TRUE}, {20, 20, 10, 4, FALSE, TRUE}},
     {{0, 0, 120}, {0, 16, 20}},
     30},
    {"goes-on-after-a-broken-bit",
     {{100, 20, 10, 4, FALSE, TRUE, .drop = 32, .tail = 40}, {30, 30, 10, 4, FALSE, TRUE}},
     {{0, 0, 100}, {45, 32, 30}},
     46},
    {"broken-bit-begins-a-line",
     {{30, 30, 10, 4, FALSE, TRUE},
      {90, 20, 10, 4, FALSE, TRUE, .drop = 16, .tail = 70},
      {10, 10, 10, 4, TRUE},
      {30, 30, 10, 4, FALSE, TRUE}},
     {{0, 0, 30}, {0, 16, 90}, {70, 32, 10}, {0, 48, 30}},
     62},
};

static void
test_flow (gconstpointer data)
{
  const Row *row = data;
  DrawlSentenceBit bits[BITS_MAX];
  guint n = 0;

  memcpy (bits, row->bits, sizeof bits);
  while (n < BITS_MAX && bits[n].width > 0)
    n++;
  g_assert_cmpint (drawl_sentence_flow (bits, n, WIDTH, GAP, LEADING), ==, row->height);
  for (guint i = 0; i < n; i++) {
    g_assert_cmpint (bits[i].x, ==, row->places[i].x);
    g_assert_cmpint (bits[i].y, ==, row->places[i].y);
    g_assert_cmpint (bits[i].granted, ==, row->places[i].granted);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/sentence-flow", rows, test_flow);
  return g_test_run ();
}
