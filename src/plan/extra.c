/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Keys that this version does not know, kept in the order of the file. */

#include "plan/extra.h"

void
drawl_extra_keep (JsonObject **extra, const char *key, JsonNode *node)
{
  if (*extra == NULL)
    *extra = json_object_new ();
  json_object_set_member (*extra, key, json_node_copy (node));
}

void
drawl_extra_restore (JsonObject *extra, JsonObject *object)
{
  JsonObjectIter iter;
  const char *key;
  JsonNode *node;

  if (extra == NULL)
    return;
  json_object_iter_init_ordered (&iter, extra);
  while (json_object_iter_next_ordered (&iter, &key, &node))
    json_object_set_member (object, key, json_node_copy (node));
}

JsonObject *
drawl_extra_ref (JsonObject *extra)
{
  return extra != NULL ? json_object_ref (extra) : NULL;
}

gboolean
drawl_extra_equal (JsonObject *a, JsonObject *b)
{
  return a == b || (a != NULL && b != NULL && json_object_equal (a, b));
}
