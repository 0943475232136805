/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Numbers of bytes as cards are labelled: what is read, and what is not. */

#include "core/byte-size.h"

#include <string.h>

#include "core/error.h"
#include "rows.h"

typedef struct {
  const char *name, *text;
  gint64 bytes;
} Read;

static const Read read_rows[] = {
    {"bytes", "256000000000", G_GINT64_CONSTANT (256000000000)},
    {"unit-of-one", "12 B", 12},
    {"decimal", "256 GB", G_GINT64_CONSTANT (256000000000)},
    {"binary", "1KiB", 1024},
    {"lower-case", "2mib", 2 << 20},
    {"part-of-a-unit", "1.5TB", G_GINT64_CONSTANT (1500000000000)},
    {"white-space", "  3 kB ", 3000},
};

static void
test_read (gconstpointer data)
{
  const Read *row = data;
  g_autoptr (GError) error = NULL;
  gint64 bytes = 0;

  drawl_byte_size_parse (row->text, &bytes, &error);
  g_assert_no_error (error);
  g_assert_cmpint (bytes, ==, row->bytes);
}

typedef struct {
  const char *name, *text;
  DrawlCoreError code;
  const char *says;
} Refused;

static const Refused refused_rows[] = {
    {"nothing", "", DRAWL_CORE_ERROR_SYNTAX, "“” is no number"},
    {"unit-alone", "GB", DRAWL_CORE_ERROR_SYNTAX, "“GB” is no number"},
    {"other-unit", "3 in", DRAWL_CORE_ERROR_SYNTAX, "“3 in” is no number"},
    {"none", "0 GB", DRAWL_CORE_ERROR_RANGE, "“0 GB” cannot be"},
    {"negative", "-1", DRAWL_CORE_ERROR_RANGE, "“-1” cannot be"},
    {"half-a-byte", "0.0005kB", DRAWL_CORE_ERROR_RANGE, "whole bytes"},
    {"too-many", "9999999999 TB", DRAWL_CORE_ERROR_OVERFLOW, "more than can be counted"},
};

static void
test_refused (gconstpointer data)
{
  const Refused *row = data;
  g_autoptr (GError) error = NULL;
  gint64 bytes = 7;

  g_assert_false (drawl_byte_size_parse (row->text, &bytes, &error));
  assert_says (error, row->code, row->says);
  g_assert_cmpint (bytes, ==, 7);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/byte-size/read", read_rows, test_read);
  add_rows ("/byte-size/refused", refused_rows, test_refused);
  return g_test_run ();
}
