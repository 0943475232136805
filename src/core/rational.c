/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Exact numbers: a fraction of two 64-bit whole numbers in lowest terms, the denominator above 0.
 * Factors are taken out before products are formed, so every greatest common divisor is one of
 * 64-bit numbers, and a 128-bit product that still does not fit means that the true result does
 * not. */

#include "core/rational.h"

#include "core/error.h"
#include "core/text.h"

#include <string.h>

typedef __int128 Int128;
typedef unsigned __int128 UInt128;

/* 10³⁸ is the highest power of ten in 128 bits. */
#define PLACES_MAX 38
#define TEXT_PLACES 9
#define TEXT_SCALE G_GINT64_CONSTANT (1000000000)

static guint64
magnitude (gint64 n)
{
  return n < 0 ? -(guint64)n : (guint64)n;
}

static guint64
gcd (guint64 a, guint64 b)
{
  while (b > 1) {
    guint64 rest = a % b;
    a = b;
    b = rest;
  }
  return b == 1 ? 1 : a;
}

static gboolean
store (Int128 num, Int128 den, DrawlRational *out)
{
  if (num > G_MAXINT64 || num < -(Int128)G_MAXINT64 || den > G_MAXINT64)
    return FALSE;
  *out = DRAWL_RATIONAL_INIT ((gint64)num, (gint64)den);
  return TRUE;
}

gboolean
drawl_rational_make (gint64 num, gint64 den, DrawlRational *out)
{
  if (den == 0)
    return FALSE;

  guint64 common = gcd (magnitude (num), magnitude (den));
  Int128 top = magnitude (num) / common;
  return store ((num < 0) != (den < 0) ? -top : top, magnitude (den) / common, out);
}

DrawlRational
drawl_rational_whole (gint64 n)
{
  g_assert (n != G_MININT64);
  return DRAWL_RATIONAL_INIT (n, 1);
}

gboolean
drawl_rational_add (DrawlRational a, DrawlRational b, DrawlRational *out)
{
  gint64 shared = (gint64)gcd ((guint64)a.den, (guint64)b.den);
  gint64 a_rest = a.den / shared, b_rest = b.den / shared;
  Int128 num = (Int128)a.num * b_rest + (Int128)b.num * a_rest;

  /* What the sum and the denominator still share can only be a part of what the denominators
   * shared. */
  Int128 rest = num % shared;
  gint64 common = (gint64)gcd ((guint64)shared, (guint64)(rest < 0 ? -rest : rest));
  return store (num / common, (Int128)a_rest * (b.den / common), out);
}

gboolean
drawl_rational_sub (DrawlRational a, DrawlRational b, DrawlRational *out)
{
  b.num = -b.num;
  return drawl_rational_add (a, b, out);
}

gboolean
drawl_rational_mul (DrawlRational a, DrawlRational b, DrawlRational *out)
{
  gint64 ab = (gint64)gcd (magnitude (a.num), (guint64)b.den);
  gint64 ba = (gint64)gcd (magnitude (b.num), (guint64)a.den);
  return store ((Int128)(a.num / ab) * (b.num / ba), (Int128)(a.den / ba) * (b.den / ab), out);
}

gboolean
drawl_rational_div (DrawlRational a, DrawlRational b, DrawlRational *out)
{
  if (b.num == 0)
    return FALSE;

  DrawlRational inverse = {b.num < 0 ? -b.den : b.den, (gint64)magnitude (b.num)};
  return drawl_rational_mul (a, inverse, out);
}

int
drawl_rational_compare (DrawlRational a, DrawlRational b)
{
  Int128 left = (Int128)a.num * b.den, right = (Int128)b.num * a.den;
  return (left > right) - (left < right);
}

gboolean
drawl_rational_equal (DrawlRational a, DrawlRational b)
{
  return a.num == b.num && a.den == b.den;
}

gint64
drawl_rational_floor (DrawlRational a)
{
  return a.num / a.den - (a.num % a.den < 0);
}

gint64
drawl_rational_ceil (DrawlRational a)
{
  return a.num / a.den + (a.num % a.den > 0);
}

gint64
drawl_rational_round (DrawlRational a)
{
  gint64 size = (gint64)magnitude (a.num);
  gint64 whole = size / a.den, rest = size % a.den;

  whole += rest >= a.den - rest;
  return a.num < 0 ? -whole : whole;
}

double
drawl_rational_to_double (DrawlRational a)
{
  return (double)a.num / (double)a.den;
}

/* ---- Reading ---- */

/* Digits as read so far: ± digits ÷ (10^places · under). */
typedef struct {
  const char *at;
  gboolean negative;
  gboolean too_long;
  UInt128 digits;
  guint places;
  UInt128 under;
} Scan;

static void
scan_digit (Scan *scan, guint digit, gboolean after_point)
{
  scan->places += after_point;
  if (scan->digits > (~(UInt128)0 - digit) / 10 || scan->places > PLACES_MAX)
    scan->too_long = TRUE;
  else
    scan->digits = scan->digits * 10 + digit;
}

/* Reads a run of digits and returns how many there were. Zeros that end a decimal change nothing,
 * so they are only counted in once another digit follows. */
static gsize
scan_digits (Scan *scan, gboolean after_point)
{
  const char *start = scan->at;
  gsize zeros = 0;

  for (; g_ascii_isdigit (*scan->at); scan->at++) {
    if (after_point && *scan->at == '0') {
      zeros++;
      continue;
    }
    for (; zeros > 0 && !scan->too_long; zeros--)
      scan_digit (scan, 0, after_point);
    scan_digit (scan, (guint)(*scan->at - '0'), after_point);
  }
  return (gsize)(scan->at - start);
}

static gboolean
scan_under (Scan *scan)
{
  Scan under = {.at = scan->at};
  gboolean found = scan_digits (&under, FALSE) > 0;

  scan->at = under.at;
  scan->under = under.digits;
  scan->too_long |= under.too_long;
  return found;
}

static void
scan_space (Scan *scan)
{
  while (g_ascii_isspace (*scan->at))
    scan->at++;
}

/* Reads one number; FALSE where none stands. Sets @grouping when its comma could have meant
 * thousands. */
static gboolean
scan_number (Scan *scan, gboolean *grouping)
{
  scan->under = 1;
  scan->negative = *scan->at == '-';
  scan->at += scan->negative;

  gsize whole = scan_digits (scan, FALSE);
  gboolean above_zero = scan->digits > 0;
  if (whole > 0 && *scan->at == '/') {
    scan->at++;
    return scan_under (scan);
  }
  if (*scan->at != '.' && *scan->at != ',')
    return whole > 0;

  gboolean comma = *scan->at++ == ',';
  gsize places = scan_digits (scan, TRUE);
  *grouping = comma && above_zero && places == 3 && scan->at[-1] == '0';
  return places > 0;
}

static void
scan_unit (Scan *scan, const char *const *units)
{
  for (gsize i = 0; units != NULL && units[i] != NULL; i++)
    if (g_ascii_strncasecmp (scan->at, units[i], strlen (units[i])) == 0) {
      scan->at += strlen (units[i]);
      break;
    }
}

/* The value of what was read, in lowest terms. FALSE when it does not fit. */
static gboolean
scan_value (const Scan *scan, DrawlRational *out)
{
  UInt128 num = scan->digits, den = scan->under;
  for (guint i = 0; i < scan->places; i++)
    den *= 10;

  UInt128 a = num, b = den;
  while (b != 0) {
    UInt128 rest = a % b;
    a = b;
    b = rest;
  }
  if (num / a > G_MAXINT64 || den / a > G_MAXINT64)
    return FALSE;
  return store (scan->negative ? -(Int128)(num / a) : (Int128)(num / a), (Int128)(den / a), out);
}

static gboolean
refuse_syntax (const char *text, const char *rest, GError **error)
{
  g_autofree char *quoted = drawl_core_quote (text);
  g_autofree char *quoted_rest = drawl_core_quote (rest);

  if (*rest == '\0' && rest == text)
    g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_SYNTAX,
                 _ ("nothing is written; a number such as 24, 0.45 or 24000/1001 is expected"));
  else if (*rest == '\0')
    g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_SYNTAX,
                 _ ("“%s” ends too early; a number such as 24, 0.45 or 24000/1001 is expected"),
                 quoted);
  else if (rest == text)
    g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_SYNTAX,
                 _ ("“%s” is not a number; a number such as 24, 0.45 or 24000/1001 is expected"),
                 quoted);
  else
    g_set_error (
        error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_SYNTAX,
        _ ("“%s” is not a number, because of “%s”; a number such as 24, 0.45 or 24000/1001 "
           "is expected"),
        quoted, quoted_rest);
  return FALSE;
}

static gboolean
refuse_grouping (const char *text, GError **error)
{
  g_autofree char *quoted = drawl_core_quote (text);

  g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_SYNTAX,
               _ ("“%s” could be thousands or a decimal; a number without commas is expected"),
               quoted);
  return FALSE;
}

static gboolean
refuse_under (const char *text, GError **error)
{
  g_autofree char *quoted = drawl_core_quote (text);

  g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_RANGE,
               _ ("“%s” divides by zero; a number above 0 is expected under the stroke"), quoted);
  return FALSE;
}

static gboolean
refuse_length (const char *text, GError **error)
{
  g_autofree char *quoted = drawl_core_quote (text);

  g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_OVERFLOW,
               _ ("“%s” has more digits than can be kept exactly; fewer are expected, and up to 18 "
                  "always fit"),
               quoted);
  return FALSE;
}

gboolean
drawl_rational_parse_unit (const char *text, const char *const *units, DrawlRational *out,
                           GError **error)
{
  Scan scan = {.at = text};
  gboolean grouping = FALSE;

  scan_space (&scan);
  const char *start = scan.at;
  if (!scan_number (&scan, &grouping))
    return refuse_syntax (start, *scan.at == '\0' ? scan.at : start, error);

  scan_space (&scan);
  scan_unit (&scan, units);
  scan_space (&scan);
  if (*scan.at != '\0')
    return refuse_syntax (start, scan.at, error);
  if (grouping)
    return refuse_grouping (start, error);
  if (scan.under == 0 && !scan.too_long)
    return refuse_under (start, error);

  DrawlRational value;
  if (scan.too_long || !scan_value (&scan, &value))
    return refuse_length (start, error);
  *out = value;
  return TRUE;
}

gboolean
drawl_rational_parse (const char *text, DrawlRational *out, GError **error)
{
  return drawl_rational_parse_unit (text, NULL, out, error);
}

/* ---- Writing ---- */

const char *
drawl_rational_text (DrawlRational a, char buffer[DRAWL_RATIONAL_TEXT_SIZE])
{
  const char *sign = a.num < 0 ? "-" : "";
  guint64 size = magnitude (a.num), den = (guint64)a.den;

  if (den == 1) {
    g_snprintf (buffer, DRAWL_RATIONAL_TEXT_SIZE, "%" G_GINT64_FORMAT, a.num);
  } else if (TEXT_SCALE % den == 0) {
    int length = g_snprintf (buffer, DRAWL_RATIONAL_TEXT_SIZE,
                             "%s%" G_GUINT64_FORMAT ".%0*" G_GUINT64_FORMAT, sign, size / den,
                             TEXT_PLACES, size % den * (TEXT_SCALE / den));
    while (buffer[length - 1] == '0')
      buffer[--length] = '\0';
  } else {
    g_snprintf (buffer, DRAWL_RATIONAL_TEXT_SIZE, "%" G_GINT64_FORMAT "/%" G_GINT64_FORMAT, a.num,
                a.den);
  }
  return buffer;
}
