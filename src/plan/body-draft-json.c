/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A draft from and to the JSON of a profile. Invariant: a cell that reads as it was read keeps its
 * node, so a profile that is opened and closed is the same to the last digit. */

#include "plan/body-draft-private.h"

#include <string.h>

/* ---- Members, one level deep ---- */

/* The object that has the last part of @key, which is left in *@member; NULL: there is none, and
 * none is made. */
static JsonObject *
holder_of (JsonObject *object, const char *key, gboolean make, const char **member)
{
  const char *dot = strchr (key, '.');

  *member = dot != NULL ? dot + 1 : key;
  if (dot == NULL)
    return object;
  g_autofree char *outer = g_strndup (key, (gsize)(dot - key));
  JsonNode *node = json_object_get_member (object, outer);
  if (node != NULL && JSON_NODE_HOLDS_OBJECT (node))
    return json_node_get_object (node);
  if (!make)
    return NULL;
  json_object_set_object_member (object, outer, json_object_new ());
  return json_object_get_object_member (object, outer);
}

static JsonNode *
find_member (JsonObject *object, const char *key)
{
  const char *member;
  JsonObject *holder = holder_of (object, key, FALSE, &member);

  return holder != NULL ? json_object_get_member (holder, member) : NULL;
}

static void
put_member (JsonObject *object, const char *key, JsonNode *node)
{
  const char *member;
  JsonObject *holder = holder_of (object, key, TRUE, &member);

  json_object_set_member (holder, member, node);
}

/* An object within that has nothing left goes, too. */
static void
drop_member (JsonObject *object, const char *key)
{
  const char *member;
  JsonObject *holder = holder_of (object, key, FALSE, &member);

  if (holder == NULL || !json_object_has_member (holder, member))
    return;
  json_object_remove_member (holder, member);
  if (holder != object && json_object_get_size (holder) == 0) {
    g_autofree char *outer = g_strndup (key, (gsize)(member - 1 - key));
    json_object_remove_member (object, outer);
  }
}

/* A copy with objects of its own one level deep; what lies deeper is shared and never changed. */
static JsonObject *
copy_object (JsonObject *object, guint levels)
{
  JsonObject *copy = json_object_new ();
  JsonObjectIter iter;
  const char *key;
  JsonNode *node;

  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &key, &node))
    if (levels > 0 && JSON_NODE_HOLDS_OBJECT (node))
      json_object_set_object_member (copy, key,
                                     copy_object (json_node_get_object (node), levels - 1));
    else
      json_object_set_member (copy, key, json_node_copy (node));
  return copy;
}

/* ---- From JSON ---- */

static void
link_id (DrawlBodyDraft *draft, DrawlDraftRow *row, guint column, const char *id)
{
  DrawlDraftTable target = drawl_draft_row_column (row, column)->target;
  const GPtrArray *rows = draft->tables[target];
  guint id_column = drawl_draft_column (target, "id");

  for (guint i = 0; i < rows->len; i++) {
    DrawlDraftRow *candidate = rows->pdata[i];
    if (g_str_equal (candidate->texts[id_column], id) &&
        !g_ptr_array_find (row->links[column], candidate, NULL))
      g_ptr_array_add (row->links[column], candidate);
  }
}

/* A list of ids, or one. */
static void
load_links (DrawlBodyDraft *draft, DrawlDraftRow *row, guint column, JsonNode *node)
{
  if (!JSON_NODE_HOLDS_ARRAY (node)) {
    link_id (draft, row, column, json_node_get_string (node));
    return;
  }
  JsonArray *array = json_node_get_array (node);
  for (guint i = 0; i < json_array_get_length (array); i++)
    link_id (draft, row, column, json_array_get_string_element (array, i));
}

void
drawl_draft_row_load (DrawlBodyDraft *draft, DrawlDraftRow *row, JsonObject *object)
{
  const DrawlDraftTableInfo *info = drawl_draft_table_info (row->table);

  row->json = json_object_ref (object);
  for (guint i = 0; i < info->n_columns; i++) {
    JsonNode *node = find_member (object, info->columns[i].key);
    if (node == NULL)
      continue;
    if (info->columns[i].kind == DRAWL_DRAFT_ROWS) {
      load_links (draft, row, i, node);
      drawl_body_draft_get (draft, row, i);
    } else {
      g_free (row->texts[i]);
      row->texts[i] = drawl_draft_cell_text (&info->columns[i], node);
    }
    row->loaded[i] = g_strdup (row->texts[i]);
    if (info->columns[i].kind == DRAWL_DRAFT_ID) {
      row->origin = g_strdup (row->texts[i]);
      row->own_id = TRUE;
    }
  }
}

/* ---- To JSON ---- */

static JsonNode *
links_node (const DrawlDraftRow *row, guint column)
{
  JsonArray *array = json_array_new ();
  JsonNode *node = json_node_init_array (json_node_alloc (), array);

  for (guint i = 0; i < row->links[column]->len; i++) {
    DrawlDraftRow *target = row->links[column]->pdata[i];
    json_array_add_string_element (array, target->texts[drawl_draft_column (target->table, "id")]);
  }
  json_array_unref (array);
  return node;
}

static void
put_cell (DrawlBodyDraft *draft, DrawlDraftRow *row, guint i, JsonObject *object)
{
  const DrawlDraftColumn *column = drawl_draft_row_column (row, i);
  const char *text = drawl_body_draft_get (draft, row, i);
  gboolean has = drawl_body_draft_has_cell (draft, row, i);

  if (has && row->loaded[i] != NULL && g_str_equal (text, row->loaded[i]))
    return;
  if (!has || *text == '\0') {
    drop_member (object, column->key);
    return;
  }
  JsonNode *node = column->kind == DRAWL_DRAFT_ROWS ? links_node (row, i)
                                                    : drawl_draft_cell_read (column, text, NULL);
  if (node != NULL)
    put_member (object, column->key, node);
}

JsonObject *
drawl_draft_row_to_json (DrawlBodyDraft *draft, DrawlDraftRow *row)
{
  JsonObject *object = row->json != NULL ? copy_object (row->json, 1) : json_object_new ();

  for (guint i = 0; i < drawl_draft_table_info (row->table)->n_columns; i++)
    put_cell (draft, row, i, object);
  /* A law by name stands in place of one of its own, whatever else that held. */
  if (row->table == DRAWL_DRAFT_CODECS && json_object_has_member (object, "law"))
    json_object_remove_member (object, "payload");
  return object;
}

static void
put_table (DrawlBodyDraft *draft, DrawlDraftTable table, JsonObject *profile)
{
  const char *key = drawl_draft_table_info (table)->key;
  const GPtrArray *rows = draft->tables[table];
  gboolean has = drawl_body_draft_has_table (draft, table);

  if (!has || (rows->len == 0 && !json_object_has_member (profile, key))) {
    json_object_remove_member (profile, key);
    return;
  }
  JsonArray *array = json_array_new ();
  for (guint i = 0; i < rows->len; i++)
    json_array_add_object_element (array, drawl_draft_row_to_json (draft, rows->pdata[i]));
  json_object_set_array_member (profile, key, array);
}

static JsonObject *
profile_new (void)
{
  JsonObject *profile = json_object_new ();

  json_object_set_string_member (profile, "format", "drawl-body");
  json_object_set_int_member (profile, "version", 1);
  return profile;
}

static void
put_about (DrawlBodyDraft *draft, JsonObject *profile)
{
  DrawlDraftRow *row = draft->tables[DRAWL_DRAFT_ABOUT]->pdata[0];

  for (guint i = 0; i < drawl_draft_table_info (row->table)->n_columns; i++)
    put_cell (draft, row, i, profile);
}

JsonObject *
drawl_body_draft_to_json (DrawlBodyDraft *draft, gboolean limits)
{
  const DrawlDraftRow *about = draft->tables[DRAWL_DRAFT_ABOUT]->pdata[0];
  JsonObject *profile = about->json != NULL ? copy_object (about->json, 1) : profile_new ();

  put_about (draft, profile);
  for (guint table = DRAWL_DRAFT_SIZES; table < DRAWL_N_DRAFT_TABLES; table++)
    if (limits || table != DRAWL_DRAFT_LIMITS)
      put_table (draft, table, profile);
  return profile;
}

static void
put_stand_in (DrawlBodyDraft *draft, DrawlDraftTable table, const char *text, JsonObject *profile)
{
  JsonArray *array = json_array_new ();
  g_autoptr (JsonNode) node = json_from_string (text, NULL);

  json_array_add_element (array, json_node_copy (node));
  json_object_set_array_member (profile, drawl_draft_table_info (table)->key, array);
}

/* A row of each table that the reader wants, so that only @row can be wrong. */
JsonObject *
drawl_draft_row_alone (DrawlBodyDraft *draft, DrawlDraftRow *row)
{
  gboolean film = drawl_body_draft_get_kind (draft) == DRAWL_BODY_FILM;
  JsonObject *profile = profile_new ();
  JsonArray *rows = json_array_new ();

  json_object_set_string_member (profile, "id", "-");
  json_object_set_string_member (profile, "name", "-");
  json_object_set_string_member (profile, "kind", film ? "film" : "digital");
  put_stand_in (draft, DRAWL_DRAFT_SIZES,
                film ? "{\"id\": \"-\", \"name\": \"-\", \"gauge\": \"16\"}"
                     : "{\"id\": \"-\", \"name\": \"-\", \"width\": 1, \"height\": 1}",
                profile);
  if (!film)
    put_stand_in (draft, DRAWL_DRAFT_CODECS,
                  "{\"id\": \"-\", \"name\": \"-\", \"law\": \"mosaic-10\"}", profile);
  json_array_add_object_element (rows, drawl_draft_row_to_json (draft, row));
  json_object_set_array_member (profile, drawl_draft_table_info (row->table)->key, rows);
  return profile;
}
