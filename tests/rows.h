/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Tests as tables: each row becomes a test path of its own, made of the group and the row's name.
 * Exact numbers stand in the rows as text. */

#include "core/rational.h"

/* Adds a test for each row of @rows, which are structs that begin with their name. */
#define add_rows(group, rows, test)                                                                \
  for (gsize row_ = 0; row_ < G_N_ELEMENTS (rows); row_++) {                                       \
    g_autofree char *path_ = g_strconcat ((group), "/", (rows)[row_].name, NULL);                  \
    g_test_add_data_func (path_, &(rows)[row_], (test));                                           \
  }

static inline DrawlRational
exact (const char *text)
{
  g_autoptr (GError) error = NULL;
  DrawlRational value = {0, 1};

  drawl_rational_parse (text, &value, &error);
  g_assert_no_error (error);
  return value;
}

#define assert_rational(value, num_, den_)                                                         \
  G_STMT_START                                                                                     \
  {                                                                                                \
    DrawlRational value_ = (value);                                                                \
    g_assert_cmpint (value_.num, ==, (num_));                                                      \
    g_assert_cmpint (value_.den, ==, (den_));                                                      \
  }                                                                                                \
  G_STMT_END

#define assert_same(a, b)                                                                          \
  G_STMT_START                                                                                     \
  {                                                                                                \
    char text_a_[DRAWL_RATIONAL_TEXT_SIZE], text_b_[DRAWL_RATIONAL_TEXT_SIZE];                     \
    g_assert_cmpstr (drawl_rational_text ((a), text_a_), ==, drawl_rational_text ((b), text_b_));  \
  }                                                                                                \
  G_STMT_END

/* The message is a sentence without a full stop, and says @part. */
#define assert_says(error, code, part)                                                             \
  G_STMT_START                                                                                     \
  {                                                                                                \
    g_assert_error ((error), DRAWL_CORE_ERROR, (int)(code));                                       \
    g_assert_nonnull (strstr ((error)->message, (part)));                                          \
    g_assert_false (g_str_has_suffix ((error)->message, "."));                                     \
  }                                                                                                \
  G_STMT_END

/* A whole number of up to @bits bits, 0 ≤ n < 2^bits, small ones as likely as large ones. */
static inline gint64
random_whole (guint bits)
{
  guint64 wide = ((guint64)(guint32)g_test_rand_int () << 32) | (guint32)g_test_rand_int ();
  return (gint64)(wide >> (64 - (guint)g_test_rand_int_range (1, (gint32)bits + 1)));
}
