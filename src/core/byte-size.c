/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Bytes with and without a unit. Decimal and binary units are told apart by their spelling, GB from
 * GiB; upper and lower case are not. */

#include "core/byte-size.h"

#include <string.h>

#include "core/error.h"
#include "core/rational.h"
#include "core/text.h"

#define N_UNITS 9

static const struct {
  const char *name;
  gint64 bytes;
} units[N_UNITS] = {
    /* a unit stands after those that it is the end of */
    {"kB", 1000},
    {"MB", 1000000},
    {"GB", G_GINT64_CONSTANT (1000000000)},
    {"TB", G_GINT64_CONSTANT (1000000000000)},
    {"KiB", G_GINT64_CONSTANT (1) << 10},
    {"MiB", G_GINT64_CONSTANT (1) << 20},
    {"GiB", G_GINT64_CONSTANT (1) << 30},
    {"TiB", G_GINT64_CONSTANT (1) << 40},
    {"B", 1},
};

/* Bytes of the unit that @text ends in, which is cut off it; 1 when there is none. */
static gint64
take_unit (char *text)
{
  gsize length = strlen (g_strchomp (text));

  for (gsize i = 0; i < N_UNITS; i++) {
    gsize unit_length = strlen (units[i].name);
    if (length >= unit_length &&
        g_ascii_strcasecmp (text + length - unit_length, units[i].name) == 0) {
      text[length - unit_length] = '\0';
      return units[i].bytes;
    }
  }
  return 1;
}

gboolean
drawl_byte_size_parse (const char *text, gint64 *bytes, GError **error)
{
  g_autofree char *number = g_strdup (text);
  g_autofree char *quoted = drawl_core_quote (text);
  DrawlRational unit = drawl_rational_whole (take_unit (number)), size;

  if (!drawl_rational_parse (number, &size, NULL)) {
    g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_SYNTAX,
                 _ ("“%s” is no number of bytes; bytes, or a number with GB, GiB, TB or TiB, are "
                    "expected"),
                 quoted);
    return FALSE;
  }
  if (!drawl_rational_mul (size, unit, &size)) {
    g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_OVERFLOW,
                 _ ("“%s” is more than can be counted; fewer bytes are expected"), quoted);
    return FALSE;
  }
  if (size.num <= 0 || size.den != 1) {
    g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_RANGE,
                 _ ("“%s” cannot be; whole bytes above 0 are expected"), quoted);
    return FALSE;
  }
  *bytes = size.num;
  return TRUE;
}
