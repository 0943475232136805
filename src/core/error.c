/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The error domain of the arithmetic, and how its messages quote what was typed: whatever stands in
 * a file or on a command line, a message stays one short line of valid UTF-8. */

#include "core/error.h"

#define QUOTE_CHARS 40
#define UTF8_BYTES_MAX 4

GQuark
drawl_core_error_quark (void)
{
  return g_quark_from_static_string ("drawl-core-error-quark");
}

char *
drawl_core_quote (const char *text)
{
  g_autofree char *start = g_strndup (text, (QUOTE_CHARS + 1) * UTF8_BYTES_MAX);
  g_autofree char *valid = g_utf8_make_valid (start, -1);
  GString *quote = g_string_new (NULL);
  guint n_chars = 0;

  for (const char *at = valid; *at != '\0'; at = g_utf8_next_char (at)) {
    gunichar c = g_utf8_get_char (at);
    if (++n_chars > QUOTE_CHARS) {
      g_string_append (quote, "…");
      break;
    }
    g_string_append_unichar (quote, g_unichar_iscntrl (c) ? ' ' : c);
  }
  return g_string_free (quote, FALSE);
}
