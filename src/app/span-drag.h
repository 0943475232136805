/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The arithmetic of dragging an end of a span: where a pointer or a key puts it, as an exact time.
 * Pure. */

#include "core/rate.h"

/* The time nearest to @seconds that a drag can set, where a pixel is @seconds_per_px: a whole
 * number of frames of @rate where frames are wider than a pixel, else of the next decimal step
 * (1, 2, 5 · 10^k s). Never less than one of them. */
DrawlRational drawl_span_snap (double seconds, double seconds_per_px, DrawlRate rate);

/* @seconds moved by @frames of @rate, to a whole number of frames, at least one. FALSE when it
 * cannot be said exactly. */
gboolean drawl_span_nudge (DrawlRational seconds, gint64 frames, DrawlRate rate,
                           DrawlRational *moved);
