/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Any text as a timecode, at a rate that the first byte chooses: what is read is a frame of the
 * day, whose code is read as the same frame. */

#include "core/timecode.h"
#include "fuzz.h"

static const struct {
  DrawlRate rate;
  gboolean drop;
} counts[] = {
    {{24, 1}, FALSE},  {{30000, 1001}, TRUE}, {{30000, 1001}, FALSE}, {{60000, 1001}, TRUE},
    {{120, 1}, FALSE}, {{24, 1}, TRUE},       {{25, 2}, FALSE},       {{10000000, 1}, FALSE},
};

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  if (size == 0)
    return 0;

  guint which = data[0] % G_N_ELEMENTS (counts);
  DrawlRate rate = counts[which].rate;
  gboolean drop = counts[which].drop;
  g_autofree char *text = fuzz_text (data + 1, size - 1);
  g_autoptr (GError) error = NULL;
  char code[DRAWL_TIMECODE_SIZE];
  gint64 frame, back;
  gboolean taken = drawl_timecode_parse (rate, drop, text, &frame, &error);

  fuzz_assert_outcome (taken, error);
  if (!taken)
    return 0;
  g_assert_cmpint (frame, >=, 0);
  g_assert_cmpint (frame, <, drawl_timecode_day_frames (rate, drop));
  g_assert_true (drawl_timecode_format (rate, drop, frame, code, NULL));
  g_assert_true (drawl_timecode_parse (rate, drop, code, &back, NULL));
  g_assert_cmpint (frame, ==, back);
  return 0;
}
