/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Numbers of bytes as cards are labelled: `256000000000`, `256 GB` (10⁹), `128GiB` (2³⁰), `1.5TB`.
 */

#include <glib.h>

/* Errors: DRAWL_CORE_ERROR_SYNTAX, _RANGE (not above 0, no whole bytes), _OVERFLOW. */
gboolean drawl_byte_size_parse (const char *text, gint64 *bytes, GError **error);
