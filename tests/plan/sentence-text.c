/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The sentence of a shot in words: which one it is, and that its places are filled and no other. */

#include "plan/sentence-text.h"
#include "rows.h"

#include <string.h>

typedef struct {
  const char *name;
  const char *factor, *post;
  const char *says;
} Row;

static const Row rows[] = {
    {"slower", "10", "100", "W: A of action, shot at C, plays at P for S, F slower."},
    {"slower-with-post", "10", "50",
     "W: A of action, shot at C, plays at P, F slower, and run at Q in the cutting room lasts S."},
    {"real-time", "1", "100", "W: A of action, shot at C, plays at P for S, in real time (F)."},
    {"real-time-with-post", "1", "99.9",
     "W: A of action, shot at C, plays at P in real time (F), and run at Q in the cutting room "
     "lasts S."},
    {"faster", "0.999", "100", "W: A of action, shot at C, plays at P for S, F faster."},
    {"faster-with-post", "1/4", "200",
     "W: A of action, shot at C, plays at P, F faster, and run at Q in the cutting room lasts S."},
};

static const char *const letters[DRAWL_SENTENCE_N_PLACES] = {"W", "A", "C", "P", "S", "F", "Q"};

static void
test_row (gconstpointer data)
{
  const Row *row = data;
  DrawlRational value[DRAWL_TIMING_N_TERMS] = {
      [DRAWL_TIMING_FACTOR] = exact (row->factor),
      [DRAWL_TIMING_POST_SPEED] = exact (row->post),
  };
  g_autofree char *text = drawl_sentence_fill_in (drawl_sentence_template (value), letters);

  g_assert_cmpstr (text, ==, row->says);
}

static void
test_braces (void)
{
  const char *const braces[DRAWL_SENTENCE_N_PLACES] = {"{action}", "1", "2", "3", "4", "5", "6"};
  g_autofree char *text = drawl_sentence_fill_in ("{what} {{action} {} {", braces);
  g_autofree char *empty = drawl_sentence_fill_in ("", braces);

  g_assert_cmpstr (text, ==, "{action} {1 {} {");
  g_assert_cmpstr (empty, ==, "");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/sentence-text", rows, test_row);
  g_test_add_func ("/sentence-text/braces", test_braces);
  return g_test_run ();
}
