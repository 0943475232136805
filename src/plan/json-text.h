/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* JSON as text that people can read and compare: a shot or a row of a table stands on one line,
 * lists of them and everything deeper are broken into lines. Numbers are written as short as they
 * can be read back unchanged, with a decimal point. */

#include <json-glib/json-glib.h>

/* Appends @node as it stands at @level of nesting. */
void drawl_json_append (GString *text, JsonNode *node, guint level);
/* Appends "key": and the value, as a member of an object that is broken into lines: begins with a
 * new line, and with a comma unless it is the @first. */
void drawl_json_append_member (GString *text, const char *key, JsonNode *node, guint level,
                               gboolean first);
/* Appends a string in quotes. */
void drawl_json_append_string (GString *text, const char *string);
/* Begins a line at @level, after a comma unless it is the @first of its kind. */
void drawl_json_append_line (GString *text, guint level, gboolean first);
