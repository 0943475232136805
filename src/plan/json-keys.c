/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Keys of one object. Invariant: bit sign_of() of `seen` is set for every key that is held, so a
 * key whose bit is not set is new. */

#include "plan/json-keys.h"

#include <string.h>

#define CHUNK_BYTES 4096

void
drawl_json_keys_clear (DrawlJsonKeys *keys)
{
  keys->seen = 0;
  keys->n_keys = 0;
}

/* Cheap, and apart for keys as people choose them. */
static guint64
sign_of (DrawlJsonSpan key)
{
  const guchar *at = (const guchar *)key.at;
  gsize sign = key.length;

  if (key.length > 0)
    sign += 5u * at[0] + 17u * at[key.length / 2] + 31u * at[key.length - 1];
  return G_GUINT64_CONSTANT (1) << sign % 64;
}

static gboolean
holds (const DrawlJsonKeys *keys, DrawlJsonSpan key)
{
  for (guint i = 0; i < keys->n_keys; i++)
    if (keys->keys[i].length == key.length && memcmp (keys->keys[i].at, key.at, key.length) == 0)
      return TRUE;
  return FALSE;
}

static DrawlJsonSpan
resolve (DrawlJsonSpan key, GStringChunk **kept)
{
  g_autofree char *text = drawl_json_span_string (key);

  if (*kept == NULL)
    *kept = g_string_chunk_new (CHUNK_BYTES);
  return (DrawlJsonSpan){g_string_chunk_insert (*kept, text), strlen (text)};
}

gboolean
drawl_json_keys_add (DrawlJsonKeys *keys, DrawlJsonSpan key, GStringChunk **kept)
{
  DrawlJsonSpan bare = {key.at + 1, key.length - 2};

  if (memchr (bare.at, '\\', bare.length) != NULL)
    bare = resolve (key, kept);
  guint64 sign = sign_of (bare);
  if ((keys->seen & sign) != 0 && holds (keys, bare))
    return FALSE;
  if (keys->n_keys < DRAWL_JSON_KEYS_MAX) {
    keys->keys[keys->n_keys++] = bare;
    keys->seen |= sign;
  }
  return TRUE;
}
