/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* A fuzz target is one source that defines LLVMFuzzerTestOneInput(): it reads @data as a parser
 * would, and asserts what must hold whatever stands there. A fuzzer of clang calls it, or driver.c
 * does in an ordinary test. */

#include <glib.h>
#include <string.h>

int LLVMFuzzerTestOneInput (const guint8 *data, gsize size);

/* @data as the text that a parser is given. Free with g_free(). */
static inline char *
fuzz_text (const guint8 *data, gsize size)
{
  return size == 0 ? g_strdup ("") : g_strndup ((const char *)data, size);
}

/* A refusal has an error whose message is one line of valid UTF-8 of a length that can be read; a
 * success has none. */
static inline void
fuzz_assert_outcome (gboolean taken, const GError *error)
{
  g_assert_cmpint (taken, ==, error == NULL);
  if (error == NULL)
    return;
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
  g_assert_null (strchr (error->message, '\n'));
  g_assert_cmpuint (strlen (error->message), >, 0);
  g_assert_cmpuint (strlen (error->message), <, 1000);
}
