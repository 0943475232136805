/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A strict reader of JSON that keeps nothing but the keys of the objects that are open. Invariant:
 * bit n of `objects` says whether level n is an object or a list, so the depth is bounded by the
 * width of the mask and nothing recurses. The parser that comes after takes comments, hexadecimal
 * and octal numbers and wraps whole numbers beyond 64 bits; none of these get past here. */

#include "plan/json-scan.h"

#include <string.h>

#include "core/error.h"
#include "core/text.h"
#include "plan/error.h"
#include "plan/json-file.h"
#include "plan/json-keys.h"

#define VALUES_MAX 10000000
#define WHOLE_DIGITS_MAX 18 /* always fit in 64 bits */

typedef enum { VALUE, VALUE_OR_END, KEY, KEY_OR_END, COMMA_OR_END } Expect;

typedef struct {
  const char *start;
  const char *at;
  const char *end;
  const char *where;
  guint64 objects; /* bit n: level n is an object */
  guint level;
  guint n_values;
  DrawlJsonKeys keys[DRAWL_JSON_MAX_LEVELS + 1]; /* by level, of the objects */
  GStringChunk *kept;                            /* keys with escapes, resolved */
} Scan;

G_STATIC_ASSERT (DRAWL_JSON_MAX_LEVELS < 64);

static char
peek (const Scan *scan)
{
  return scan->at < scan->end ? *scan->at : '\0';
}

/* Line and column, from 1, the column in characters. */
static void
find_place (const Scan *scan, guint *line, guint *column)
{
  const char *line_start = scan->start;

  *line = 1;
  for (const char *at = scan->start; at < scan->at; at++)
    if (*at == '\n') {
      (*line)++;
      line_start = at + 1;
    }
  *column = 1 + (guint)g_utf8_strlen (line_start, scan->at - line_start);
}

static gboolean
fail (const Scan *scan, const char *expected, GError **error)
{
  guint line, column;

  find_place (scan, &line, &column);
  if (scan->at >= scan->end) {
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_SYNTAX,
                 _ ("%s: the text ends at line %u, column %u, but %s is expected there"),
                 scan->where, line, column, expected);
    return FALSE;
  }
  gunichar found = g_utf8_get_char (scan->at);
  char shown[7] = {0};
  g_unichar_to_utf8 (g_unichar_isprint (found) ? found : ' ', shown);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_SYNTAX,
               _ ("%s: line %u, column %u: “%s” was found, but %s is expected"), scan->where, line,
               column, shown, expected);
  return FALSE;
}

static gboolean
fail_twice (const Scan *scan, DrawlJsonSpan key, GError **error)
{
  g_autofree char *name = drawl_json_span_string (key);
  g_autofree char *quote = drawl_core_quote (name != NULL ? name : "");
  guint line, column;

  find_place (scan, &line, &column);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_SYNTAX,
               _ ("%s: line %u, column %u: the key “%s” stands in this object a second time; it is "
                  "expected once"),
               scan->where, line, column, quote);
  return FALSE;
}

/* @message is taken. */
static gboolean
fail_too_large (const Scan *scan, char *message, GError **error)
{
  guint line, column;

  find_place (scan, &line, &column);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_TOO_LARGE,
               _ ("%s: line %u, column %u: %s"), scan->where, line, column, message);
  g_free (message);
  return FALSE;
}

static void
skip_space (Scan *scan)
{
  while (scan->at < scan->end && strchr (" \t\r\n", *scan->at) != NULL)
    scan->at++;
}

static gsize
skip_digits (Scan *scan)
{
  const char *from = scan->at;
  while (g_ascii_isdigit (peek (scan)))
    scan->at++;
  return (gsize)(scan->at - from);
}

static gboolean
skip_number (Scan *scan, GError **error)
{
  const char *start = scan->at;
  gboolean whole = TRUE;

  if (peek (scan) == '-')
    scan->at++;
  const char *digits = scan->at;
  gsize n_digits = skip_digits (scan);
  if (n_digits == 0)
    return fail (scan, _ ("a digit"), error);
  if (n_digits > 1 && *digits == '0') {
    scan->at = digits + 1;
    return fail (scan, _ ("a number without a leading zero"), error);
  }
  if (peek (scan) == '.') {
    scan->at++;
    whole = FALSE;
    if (skip_digits (scan) == 0)
      return fail (scan, _ ("a digit"), error);
  }
  if (peek (scan) == 'e' || peek (scan) == 'E') {
    scan->at++;
    whole = FALSE;
    if (peek (scan) == '+' || peek (scan) == '-')
      scan->at++;
    if (skip_digits (scan) == 0)
      return fail (scan, _ ("a digit"), error);
  }
  if (whole && n_digits > WHOLE_DIGITS_MAX) {
    scan->at = start;
    return fail_too_large (
        scan, g_strdup_printf (_ ("a whole number has more than %d digits"), WHOLE_DIGITS_MAX),
        error);
  }
  return TRUE;
}

/* The four digits after \u, or -1. */
static gint32
read_hex (Scan *scan)
{
  gint32 code = 0;

  for (guint i = 0; i < 4; i++, scan->at++) {
    int digit = g_ascii_xdigit_value (peek (scan));
    if (digit < 0)
      return -1;
    code = code * 16 + digit;
  }
  return code;
}

/* \uXXXX, with its second half where it is the first of a pair. A lone half or a NUL is refused:
 * neither can stand in a text. */
static gboolean
skip_unicode_escape (Scan *scan, GError **error)
{
  gint32 code = read_hex (scan);

  if (code >= 0xd800 && code < 0xdc00 && scan->end - scan->at > 2 && scan->at[0] == '\\' &&
      scan->at[1] == 'u') {
    scan->at += 2;
    gint32 second = read_hex (scan);
    code = second >= 0xdc00 && second < 0xe000 ? 0xfffd : -1;
  }
  if (code <= 0 || (code >= 0xd800 && code < 0xe000))
    return fail (scan, _ ("the four hexadecimal digits of a character"), error);
  return TRUE;
}

static gboolean
skip_string (Scan *scan, GError **error)
{
  for (scan->at++; scan->at < scan->end && *scan->at != '"';) {
    if ((guchar)*scan->at < ' ')
      return fail (scan, _ ("the closing quotation mark of a text"), error);
    if (*scan->at++ != '\\')
      continue;
    char escaped = peek (scan);
    if (escaped == '\0' || strchr ("\"\\/bfnrtu", escaped) == NULL)
      return fail (scan, _ ("an escape sequence of JSON"), error);
    scan->at++;
    if (escaped == 'u' && !skip_unicode_escape (scan, error))
      return FALSE;
  }
  if (scan->at >= scan->end)
    return fail (scan, _ ("the closing quotation mark of a text"), error);
  scan->at++;
  return TRUE;
}

static gboolean
skip_word (Scan *scan, GError **error)
{
  static const char *const words[] = {"true", "false", "null"};

  for (guint i = 0; i < G_N_ELEMENTS (words); i++) {
    gsize length = strlen (words[i]);
    if ((gsize)(scan->end - scan->at) >= length && strncmp (scan->at, words[i], length) == 0) {
      scan->at += length;
      return TRUE;
    }
  }
  return fail (scan, _ ("a value"), error);
}

static gboolean
open_level (Scan *scan, gboolean object, GError **error)
{
  if (scan->level >= DRAWL_JSON_MAX_LEVELS)
    return fail_too_large (scan,
                           g_strdup_printf (_ ("lists and objects lie more than %d levels deep"),
                                            DRAWL_JSON_MAX_LEVELS),
                           error);
  scan->at++;
  scan->level++;
  scan->objects &= ~(G_GUINT64_CONSTANT (1) << scan->level);
  scan->objects |= (guint64)(object ? 1 : 0) << scan->level;
  drawl_json_keys_clear (&scan->keys[scan->level]);
  return TRUE;
}

static gboolean
in_object (const Scan *scan)
{
  return (scan->objects >> scan->level & 1) != 0;
}

static gboolean
scan_value (Scan *scan, Expect *expect, GError **error)
{
  char first = peek (scan);

  if (++scan->n_values > VALUES_MAX)
    return fail_too_large (
        scan, g_strdup_printf (_ ("the text holds more than %d values"), VALUES_MAX), error);
  *expect = first == '{' ? KEY_OR_END : first == '[' ? VALUE_OR_END : COMMA_OR_END;
  if (first == '{' || first == '[')
    return open_level (scan, first == '{', error);
  if (first == '"')
    return skip_string (scan, error);
  if (first == '-' || g_ascii_isdigit (first))
    return skip_number (scan, error);
  return skip_word (scan, error);
}

static gboolean
scan_key (Scan *scan, Expect *expect, GError **error)
{
  const char *start = scan->at;

  if (peek (scan) != '"')
    return fail (scan, _ ("a key in quotation marks"), error);
  if (!skip_string (scan, error))
    return FALSE;
  DrawlJsonSpan key = {start, (gsize)(scan->at - start)};
  if (!drawl_json_keys_add (&scan->keys[scan->level], key, &scan->kept)) {
    scan->at = start;
    return fail_twice (scan, key, error);
  }
  skip_space (scan);
  if (peek (scan) != ':')
    return fail (scan, _ ("a colon"), error);
  scan->at++;
  *expect = VALUE;
  return TRUE;
}

/* One value, key, comma or end of a level. */
static gboolean
scan_step (Scan *scan, Expect *expect, GError **error)
{
  gboolean object = in_object (scan);
  char found = peek (scan);

  if (found == (object ? '}' : ']') && *expect != VALUE && *expect != KEY) {
    scan->at++;
    scan->level--;
    *expect = COMMA_OR_END;
    return TRUE;
  }
  if (*expect == VALUE || *expect == VALUE_OR_END)
    return scan_value (scan, expect, error);
  if (*expect == KEY || *expect == KEY_OR_END)
    return scan_key (scan, expect, error);
  if (found != ',')
    return fail (scan, object ? _ ("a comma or “}”") : _ ("a comma or “]”"), error);
  scan->at++;
  *expect = object ? KEY : VALUE;
  return TRUE;
}

static gboolean
scan_all (Scan *scan, GError **error)
{
  Expect expect = VALUE;

  skip_space (scan);
  if (peek (scan) != '{')
    return fail (scan, _ ("“{”"), error);
  do {
    if (!scan_step (scan, &expect, error))
      return FALSE;
    skip_space (scan);
  } while (scan->level > 0);
  if (scan->at < scan->end)
    return fail (scan, _ ("nothing more"), error);
  return TRUE;
}

gboolean
drawl_json_scan (const char *data, gsize length, const char *where, GError **error)
{
  Scan scan = {.start = data, .at = data, .end = data + length, .where = where};
  const char *bad;

  if (!g_utf8_validate_len (data, length, &bad)) {
    guint line, column;
    scan.at = bad;
    find_place (&scan, &line, &column);
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_SYNTAX,
                 _ ("%s: line %u, column %u: this is not text in UTF-8"), where, line, column);
    return FALSE;
  }
  gboolean good = scan_all (&scan, error);
  g_clear_pointer (&scan.kept, g_string_chunk_free);
  return good;
}
