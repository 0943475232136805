/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlRate: frames a second, an exact rational with 0 < rate ≤ 10,000,000. Rates are compared and
 * combined exactly; a double is made of one only to be shown. */

#include "core/rational.h"

typedef DrawlRational DrawlRate;

#define DRAWL_RATE_MAX G_GINT64_CONSTANT (10000000)

/* TRUE when 0 < rate ≤ DRAWL_RATE_MAX and the rational is well formed. */
gboolean drawl_rate_valid (DrawlRate rate);

/* Reads `25`, `24000/1001`, `12.5`, `12,5`. The customary decimal spellings `23.976`, `23.98`,
 * `29.97`, `47.952`, `47.95`, `59.94`, `71.928`, `119.88` … (n·1000/1001 rounded or cut to two or
 * three places, n a whole multiple of 24 or 30 up to 240) mean n·1000/1001; every other decimal is
 * taken literally. A trailing "fps" is allowed.
 * Errors: DRAWL_CORE_ERROR_SYNTAX, _RANGE (zero, negative, too high), _OVERFLOW. */
gboolean drawl_rate_parse (const char *text, DrawlRate *out, GError **error);

/* "25", "24000/1001": the reduced text of files and of the command line. Returns @buffer. */
const char *drawl_rate_text (DrawlRate rate, char buffer[DRAWL_RATIONAL_TEXT_SIZE]);

/* The whole number of frames that a second of timecode counts: 24 for 24000/1001 and for 24.
 * 0 when the rate is neither whole nor whole·1000/1001 (such a rate has no timecode). SMPTE ST
 * 12-1, 12-3. */
gint64 drawl_rate_nominal (DrawlRate rate);
