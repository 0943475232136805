/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The order of slates: rows of three or more that stand as they are to be. */

#include "plan/slate-order.h"

#include "rows.h"

typedef struct {
  const char *name;
  const char *slates[8]; /* each before the next */
} Row;

static const Row rows[] = {
    {"numbers", {"1", "2", "9", "10", "11", "100"}},
    {"letters", {"12", "12A", "12B", "12Z", "12AA", "13"}},
    {"empty-first", {"", "1", "A"}},
    {"words", {"Intro", "Intro 2", "Intro 10", "Outro"}},
    {"capitals-together", {"a", "B", "c", "D"}},
    {"letters-of-other-scripts", {"Äpfel 2", "äpfel 10", "Öl"}},
    {"zeros", {"1", "02", "2A", "003"}},
    {"long-numbers", {"99999999999999999999", "100000000000000000000"}},
    {"numbers-before-letters", {"1", "A", "AA"}},
    {"inside", {"S1T2", "S1T10", "S2T1"}},
};

static int
sign (int order)
{
  return order < 0 ? -1 : order > 0;
}

static void
test_row (gconstpointer data)
{
  const Row *row = data;

  for (guint i = 0; i < G_N_ELEMENTS (row->slates) && row->slates[i] != NULL; i++)
    for (guint j = 0; j < G_N_ELEMENTS (row->slates) && row->slates[j] != NULL; j++)
      g_assert_cmpint (sign (drawl_slate_compare (row->slates[i], row->slates[j])), ==,
                       sign ((int)i - (int)j));
}

/* The order is whole: texts that look alike to a reader still have one, and it goes both ways. */
static void
test_ties (void)
{
  static const char *const alike[] = {"12a", "12A", "012A", "0012a"};

  for (guint i = 0; i < G_N_ELEMENTS (alike); i++)
    for (guint j = 0; j < G_N_ELEMENTS (alike); j++) {
      int there = sign (drawl_slate_compare (alike[i], alike[j]));
      g_assert_cmpint (there, ==, -sign (drawl_slate_compare (alike[j], alike[i])));
      g_assert_cmpint (there == 0, ==, i == j);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/slate-order", rows, test_row);
  g_test_add_func ("/slate-order/ties", test_ties);

  return g_test_run ();
}
