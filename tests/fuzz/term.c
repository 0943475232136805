/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Any text as a term of the timing, which the first byte chooses: what is read can stand in that
 * term. */

#include "core/timing.h"
#include "fuzz.h"

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  if (size == 0)
    return 0;

  DrawlTimingTerm term = (DrawlTimingTerm)(data[0] % DRAWL_TIMING_N_TERMS);
  g_autofree char *text = fuzz_text (data + 1, size - 1);
  g_autoptr (GError) error = NULL;
  DrawlRational value;
  gboolean taken = drawl_timing_term_parse (term, text, &value, &error);

  fuzz_assert_outcome (taken, error);
  if (taken)
    g_assert_true (drawl_timing_term_check (term, value, NULL));
  return 0;
}
