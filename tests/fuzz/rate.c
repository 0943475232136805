/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Any text as a rate: what is read is a rate, and is written and read back the same. */

#include "core/rate.h"
#include "fuzz.h"

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autofree char *text = fuzz_text (data, size);
  g_autoptr (GError) error = NULL;
  char written[DRAWL_RATIONAL_TEXT_SIZE];
  DrawlRate rate, back;
  gboolean taken = drawl_rate_parse (text, &rate, &error);

  fuzz_assert_outcome (taken, error);
  if (!taken)
    return 0;
  g_assert_true (drawl_rate_valid (rate));
  g_assert_cmpint (drawl_rate_nominal (rate), >=, 0);
  g_assert_true (drawl_rate_parse (drawl_rate_text (rate, written), &back, NULL));
  g_assert_true (drawl_rational_equal (rate, back));
  return 0;
}
