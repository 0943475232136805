/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlJsonKeys: the keys of one object while it is read through, so that none stands in it twice:
 * of two members of one name a parser would silently drop the first. */

#include "plan/json-walk.h"

/* Later keys are held against these, but not among themselves: no object of ours has as many, and
 * no file can make the reading long. */
#define DRAWL_JSON_KEYS_MAX 64

typedef struct {
  guint64 seen; /* a bit by a key's sign, so that most keys are new at a glance */
  guint n_keys;
  DrawlJsonSpan keys[DRAWL_JSON_KEYS_MAX]; /* without quotes, escapes resolved */
} DrawlJsonKeys;

/* For the next object. */
void drawl_json_keys_clear (DrawlJsonKeys *keys);

/* FALSE when @key (a text, quotes and all) stands there already. What has to be kept besides the
 * text itself goes into @kept, which is made when it is needed. */
gboolean drawl_json_keys_add (DrawlJsonKeys *keys, DrawlJsonSpan key, GStringChunk **kept);
