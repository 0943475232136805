/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Any text as a number: what is read is in lowest terms, and is written and read back the same. */

#include "core/rational.h"
#include "fuzz.h"

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autofree char *text = fuzz_text (data, size);
  g_autoptr (GError) error = NULL;
  DrawlRational value, reduced, back;
  char written[DRAWL_RATIONAL_TEXT_SIZE];
  gboolean taken = drawl_rational_parse (text, &value, &error);

  fuzz_assert_outcome (taken, error);
  if (!taken)
    return 0;
  g_assert_true (drawl_rational_make (value.num, value.den, &reduced));
  g_assert_true (drawl_rational_equal (value, reduced));
  g_assert_true (drawl_rational_parse (drawl_rational_text (value, written), &back, NULL));
  g_assert_true (drawl_rational_equal (value, back));
  return 0;
}
