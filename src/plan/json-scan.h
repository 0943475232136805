/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Reads through a JSON text (RFC 8259) before it is parsed: strictly, without recursion, and
 * counting levels and values, so that the parser behind it meets only what it can bear. */

#include <glib.h>

/* A text that is valid JSON with an object at the top, at most DRAWL_JSON_MAX_LEVELS deep, with no
 * key twice in one object. @where names it in messages. Errors: DRAWL_PLAN_ERROR_SYNTAX (with line
 * and column), _TOO_LARGE. */
gboolean drawl_json_scan (const char *data, gsize length, const char *where, GError **error);
