/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Steps over values of scanned JSON. Since the grammar is known to hold, the end of a text is its
 * next quote without a backslash before it, the end of a container is where as many close as have
 * opened, and the end of anything else is the next comma, bracket or space. */

#include "plan/json-walk.h"

#include <string.h>

static const char *
skip_spaces (const char *at)
{
  while (*at == ' ' || *at == '\n' || *at == '\r' || *at == '\t')
    at++;
  return at;
}

/* @at: an opening quote. */
static const char *
skip_text (const char *at)
{
  for (at++; *at != '"'; at++)
    if (*at == '\\')
      at++;
  return at + 1;
}

/* @at: an opening bracket or brace. */
static const char *
skip_container (const char *at)
{
  guint open = 0;

  do {
    if (*at == '"') {
      at = skip_text (at);
      continue;
    }
    if (*at == '{' || *at == '[')
      open++;
    else if (*at == '}' || *at == ']')
      open--;
    at++;
  } while (open > 0);
  return at;
}

DrawlJsonSpan
drawl_json_span (const char *text)
{
  const char *at = skip_spaces (text), *end;

  if (*at == '"')
    end = skip_text (at);
  else if (*at == '{' || *at == '[')
    end = skip_container (at);
  else
    end = at + strcspn (at, ",]} \t\r\n");
  return (DrawlJsonSpan){at, (gsize)(end - at)};
}

DrawlJsonWalk
drawl_json_walk (const char *container)
{
  return (DrawlJsonWalk){container + 1};
}

gboolean
drawl_json_walk_next (DrawlJsonWalk *walk)
{
  walk->at = skip_spaces (walk->at);
  if (*walk->at == ',')
    walk->at = skip_spaces (walk->at + 1);
  return *walk->at != '}' && *walk->at != ']';
}

gboolean
drawl_json_walk_element (DrawlJsonWalk *walk, DrawlJsonSpan *value)
{
  if (!drawl_json_walk_next (walk))
    return FALSE;
  *value = drawl_json_span (walk->at);
  walk->at = value->at + value->length;
  return TRUE;
}

gboolean
drawl_json_walk_member (DrawlJsonWalk *walk, DrawlJsonSpan *key, DrawlJsonSpan *value)
{
  if (!drawl_json_walk_element (walk, key))
    return FALSE;
  walk->at = skip_spaces (walk->at) + 1; /* the colon */
  *value = drawl_json_span (walk->at);
  walk->at = value->at + value->length;
  return TRUE;
}

gboolean
drawl_json_span_is_text (DrawlJsonSpan span)
{
  return *span.at == '"';
}

gboolean
drawl_json_span_is_list (DrawlJsonSpan span)
{
  return *span.at == '[';
}

JsonNode *
drawl_json_span_node (DrawlJsonSpan span)
{
  g_autofree char *text = g_strndup (span.at, span.length);
  JsonNode *node = json_from_string (text, NULL);

  return node != NULL ? node : json_node_new (JSON_NODE_NULL);
}

static gboolean
has (DrawlJsonSpan span, char c)
{
  return memchr (span.at, c, span.length) != NULL;
}

char *
drawl_json_span_string (DrawlJsonSpan span)
{
  if (drawl_json_span_is_text (span) && has (span, '\\')) {
    g_autoptr (JsonNode) node = drawl_json_span_node (span);
    return json_node_dup_string (node);
  }
  if (drawl_json_span_is_text (span))
    return g_strndup (span.at + 1, span.length - 2);
  if ((g_ascii_isdigit (*span.at) || *span.at == '-') && !has (span, 'e') && !has (span, 'E'))
    return g_strndup (span.at, span.length);
  return NULL;
}
