/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* A walk over JSON text that has passed drawl_json_scan(): its values are stretches of that text,
 * and nothing is copied until it is asked for. This is how long lists are read; small things are
 * parsed whole (json-file.h). Text that was not scanned must never come here. */

#include <json-glib/json-glib.h>

/* One value as it stands in the text, without spaces around. */
typedef struct {
  const char *at;
  gsize length;
} DrawlJsonSpan;

/* The value that begins at or after @text. */
DrawlJsonSpan drawl_json_span (const char *text);

/* Where a walk is. It begins with the object or list that opens at @container. */
typedef struct {
  const char *at;
} DrawlJsonWalk;

DrawlJsonWalk drawl_json_walk (const char *container);
/* Stands at the next element or key; FALSE at the closing bracket. Who reads on from there puts
 * `at` behind what was read. */
gboolean drawl_json_walk_next (DrawlJsonWalk *walk);
/* The next member or element; FALSE at the closing bracket. The key is a text, quotes and all. */
gboolean drawl_json_walk_member (DrawlJsonWalk *walk, DrawlJsonSpan *key, DrawlJsonSpan *value);
gboolean drawl_json_walk_element (DrawlJsonWalk *walk, DrawlJsonSpan *value);

gboolean drawl_json_span_is_text (DrawlJsonSpan span);
gboolean drawl_json_span_is_list (DrawlJsonSpan span);

/* The characters of a text; or those of a number that is written without exponent; else NULL. New
 * string. */
char *drawl_json_span_string (DrawlJsonSpan span);

/* The value, parsed. New node. */
JsonNode *drawl_json_span_node (DrawlJsonSpan span);
