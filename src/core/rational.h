/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlRational: an exact number. Invariant: den > 0, |num| ≤ G_MAXINT64, gcd(|num|, den) = 1,
 * zero is 0/1. Products are formed in 128 bits; a result that does not fit is refused, never
 * rounded. Plain value: pass and return by value. */

#include <glib.h>

/* Room for the longest text of a rational, "-9223372036854775807/9223372036854775807". */
#define DRAWL_RATIONAL_TEXT_SIZE 48

typedef struct {
  gint64 num;
  gint64 den;
} DrawlRational;

#define DRAWL_RATIONAL_INIT(n, d) ((DrawlRational){(n), (d)})

/* Makes num/den in lowest terms. FALSE when den is 0 or the reduced value does not fit. */
gboolean drawl_rational_make (gint64 num, gint64 den, DrawlRational *out);

/* A whole number; @n must not be G_MININT64. */
DrawlRational drawl_rational_whole (gint64 n);

/* Exact arithmetic. Each returns FALSE (and leaves @out alone) when the result does not fit,
 * drawl_rational_div() also when @b is zero. @out may be one of the operands. */
gboolean drawl_rational_add (DrawlRational a, DrawlRational b, DrawlRational *out);
gboolean drawl_rational_sub (DrawlRational a, DrawlRational b, DrawlRational *out);
gboolean drawl_rational_mul (DrawlRational a, DrawlRational b, DrawlRational *out);
gboolean drawl_rational_div (DrawlRational a, DrawlRational b, DrawlRational *out);

/* -1, 0 or 1, by cross products in 128 bits. */
int drawl_rational_compare (DrawlRational a, DrawlRational b);
gboolean drawl_rational_equal (DrawlRational a, DrawlRational b);

/* The greatest whole number not above, the least not below, and the nearest (halves away from
 * zero). */
gint64 drawl_rational_floor (DrawlRational a);
gint64 drawl_rational_ceil (DrawlRational a);
gint64 drawl_rational_round (DrawlRational a);

/* For display and physics only. */
double drawl_rational_to_double (DrawlRational a);

/* Reads `12`, `-3`, `0.45`, `0,45`, `.5`, `1/3`, `1001/240`: decimals are taken literally, and
 * exactly. White space around is ignored. Exponents, `nan`, `inf`, grouping and anything trailing
 * are refused; so is a comma that could be either (`1,500`: three places that end in 0 after a
 * whole part other than 0). Errors: DRAWL_CORE_ERROR_SYNTAX, _OVERFLOW, _RANGE (a zero
 * denominator). */
gboolean drawl_rational_parse (const char *text, DrawlRational *out, GError **error);

/* The same with one of the NULL-terminated @units allowed after the number, upper or lower case:
 * `24 fps`. */
gboolean drawl_rational_parse_unit (const char *text, const char *const *units, DrawlRational *out,
                                    GError **error);

/* The exact value for files: a whole number, a decimal if it ends within 9 places, else "num/den".
 * Always with a decimal point, whatever the locale. drawl_rational_parse() reads it back unchanged.
 * Writes at most DRAWL_RATIONAL_TEXT_SIZE bytes and returns @buffer. */
const char *drawl_rational_text (DrawlRational a, char buffer[DRAWL_RATIONAL_TEXT_SIZE]);
