/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The plan as a file. A file is read whole or not at all; the keys of a plan that this version does
 * not know are kept and written back behind the known ones. Each shot is one line. */

#include "plan/plan-file.h"

#include "core/error.h"
#include "core/text.h"
#include "plan/error.h"
#include "plan/extra.h"
#include "plan/json-file.h"
#include "plan/json-text.h"
#include "plan/json-walk.h"
#include "plan/plan-private.h"

#include <string.h>

#define FORMAT "drawl-plan"

static const char *const known_keys[] = {
    "format",   "version",         "title",      "production",  "day",    "notes", "playback_rate",
    "mains_hz", "reserve_percent", "takes_span", "length_unit", "bodies", "shots", NULL,
};

/* ---- Settings ---- */

static gboolean
read_string (JsonObject *object, const char *key, const char *where, char **out, GError **error)
{
  const char *text = NULL;

  if (!drawl_json_get_string (object, key, where, &text, error))
    return FALSE;
  if (text != NULL)
    drawl_shot_fields_set (out, text);
  return TRUE;
}

static void
keep_extra (JsonObject *object, JsonObject **extra)
{
  JsonObjectIter iter;
  const char *key;
  JsonNode *node;

  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &key, &node))
    if (!g_strv_contains (known_keys, key))
      drawl_extra_keep (extra, key, node);
}

static DrawlPlanSettings *
read_settings (JsonObject *object, const char *where, GError **error)
{
  g_autoptr (DrawlPlanSettings) settings = drawl_plan_settings_new ();

  if (!read_string (object, "title", where, &settings->title, error) ||
      !read_string (object, "production", where, &settings->production, error) ||
      !read_string (object, "day", where, &settings->day, error) ||
      !read_string (object, "notes", where, &settings->notes, error) ||
      !drawl_json_get_rate (object, "playback_rate", where, &settings->playback, error) ||
      !drawl_json_get_int (object, "mains_hz", where, 50, 60, &settings->mains_hz, error) ||
      !drawl_json_get_rational (object, "reserve_percent", where, &settings->reserve_percent,
                                error) ||
      !drawl_json_get_bool (object, "takes_span", where, &settings->takes_span, error) ||
      !read_string (object, "length_unit", where, &settings->length_unit, error))
    return NULL;
  if (!drawl_plan_settings_check (settings, error)) {
    g_prefix_error (error, "%s: ", where);
    return NULL;
  }
  keep_extra (object, &settings->extra);
  return g_steal_pointer (&settings);
}

JsonObject *
drawl_plan_settings_to_json (const DrawlPlanSettings *settings, gboolean with_extra)
{
  JsonObject *object = json_object_new ();
  char text[DRAWL_RATIONAL_TEXT_SIZE];

  json_object_set_string_member (object, "format", FORMAT);
  json_object_set_int_member (object, "version", DRAWL_PLAN_VERSION);
  json_object_set_string_member (object, "title", settings->title);
  json_object_set_string_member (object, "production", settings->production);
  json_object_set_string_member (object, "day", settings->day);
  json_object_set_string_member (object, "notes", settings->notes);
  json_object_set_string_member (object, "playback_rate",
                                 drawl_rate_text (settings->playback, text));
  json_object_set_int_member (object, "mains_hz", settings->mains_hz);
  json_object_set_string_member (object, "reserve_percent",
                                 drawl_rational_text (settings->reserve_percent, text));
  json_object_set_boolean_member (object, "takes_span", settings->takes_span);
  if (*settings->length_unit != '\0')
    json_object_set_string_member (object, "length_unit", settings->length_unit);
  if (with_extra)
    drawl_extra_restore (settings->extra, object);
  return object;
}

/* ---- Bodies ---- */

static GPtrArray *
read_bodies (JsonObject *object, const char *where, GError **error)
{
  g_autoptr (GPtrArray) list =
      g_ptr_array_new_with_free_func ((GDestroyNotify)drawl_hired_fields_free);
  JsonArray *array = NULL;

  if (!drawl_json_get_array (object, "bodies", where, DRAWL_PLAN_BODIES_MAX, &array, error))
    return NULL;
  for (guint i = 0; array != NULL && i < json_array_get_length (array); i++) {
    JsonNode *node = json_array_get_element (array, i);
    DrawlHiredFields *fields;
    if (!JSON_NODE_HOLDS_OBJECT (node)) {
      drawl_json_fail (node, "bodies", where, _ ("an object for each body"), error);
      return NULL;
    }
    fields = drawl_hired_fields_from_json (json_node_get_object (node), where, error);
    if (fields == NULL)
      return NULL;
    g_ptr_array_add (list, fields);
  }
  return g_steal_pointer (&list);
}

/* ---- Shots ---- */

static gboolean
fail_shots (const char *found, const char *where, const char *expected, GError **error)
{
  g_autoptr (JsonNode) node = drawl_json_span_node (drawl_json_span (found));
  return drawl_json_fail (node, "shots", where, expected, error);
}

static char *
find_slate (const char *shot)
{
  DrawlJsonWalk walk = drawl_json_walk (shot);
  DrawlJsonSpan key, value;

  while (drawl_json_walk_member (&walk, &key, &value))
    if (key.length == strlen ("\"slate\"") && strncmp (key.at, "\"slate\"", key.length) == 0)
      return drawl_json_span_string (value);
  return NULL;
}

/* Reads a shot; the words that name its place are only made when they are needed. */
static DrawlShotFields *
read_shot (const char **text, guint number, DrawlRate playback, const char *where, GError **error)
{
  DrawlShotFields *fields = drawl_shot_fields_from_json (text, playback, where, NULL);

  if (fields != NULL)
    return fields;
  g_autofree char *slate = find_slate (*text);
  g_autofree char *quote = drawl_core_quote (slate != NULL ? slate : "");
  g_autofree char *place =
      quote[0] != '\0' ? g_strdup_printf (_ ("%s, shot number %u (slate %s)"), where, number, quote)
                       : g_strdup_printf (_ ("%s, shot number %u"), where, number);
  return drawl_shot_fields_from_json (text, playback, place, error);
}

static gboolean
read_shots (const char *list, DrawlRate playback, const char *where, GPtrArray *shots,
            GError **error)
{
  DrawlJsonWalk walk = drawl_json_walk (list);

  if (*list != '[')
    return fail_shots (list, where, _ ("a list"), error);
  while (drawl_json_walk_next (&walk)) {
    DrawlShotFields *fields;
    if (shots->len == DRAWL_PLAN_SHOTS_MAX) {
      g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_TOO_LARGE,
                   _ ("%s: a plan holds at most %d shots"), where, DRAWL_PLAN_SHOTS_MAX);
      return FALSE;
    }
    if (*walk.at != '{')
      return fail_shots (walk.at, where, _ ("an object for each shot"), error);
    fields = read_shot (&walk.at, shots->len + 1, playback, where, error);
    if (fields == NULL)
      return FALSE;
    g_ptr_array_add (shots, fields);
  }
  return TRUE;
}

/* ---- Reading ---- */

/* Parses everything but the shots, which are many and are read as they stand; @shots takes their
 * list. */
static JsonObject *
parse_head (const char *data, const char *where, const char **shots, GError **error)
{
  DrawlJsonWalk walk = drawl_json_walk (drawl_json_span (data).at);
  DrawlJsonSpan key, value;
  g_autoptr (GString) head = g_string_new ("{");

  while (drawl_json_walk_member (&walk, &key, &value)) {
    g_autofree char *name = drawl_json_span_string (key);
    if (g_str_equal (name, "shots")) {
      *shots = value.at;
      continue;
    }
    g_string_append (head, head->len > 1 ? ", " : "");
    g_string_append_len (head, key.at, (gssize)key.length);
    g_string_append_c (head, ':');
    g_string_append_len (head, value.at, (gssize)value.length);
  }
  g_string_append_c (head, '}');
  return drawl_json_parse (head->str, head->len, where, error);
}

DrawlPlan *
drawl_plan_from_data (const char *data, gsize length, const char *where, GError **error)
{
  g_autoptr (JsonObject) head = NULL;
  g_autoptr (DrawlPlanSettings) settings = NULL;
  g_autoptr (GPtrArray) bodies = NULL;
  g_autoptr (GPtrArray) shots =
      g_ptr_array_new_with_free_func ((GDestroyNotify)drawl_shot_fields_free);
  g_autoptr (DrawlPlan) plan = drawl_plan_new ();
  const char *list = "[]";

  if (!drawl_json_guard (&data, &length, where, error) ||
      (head = parse_head (data, where, &list, error)) == NULL ||
      !drawl_json_check_format (head, FORMAT, DRAWL_PLAN_VERSION, where, error) ||
      (settings = read_settings (head, where, error)) == NULL ||
      (bodies = read_bodies (head, where, error)) == NULL ||
      !read_shots (list, settings->playback, where, shots, error))
    return NULL;
  if (!drawl_plan_fill (plan, settings, bodies, shots, error)) {
    g_prefix_error (error, "%s: ", where);
    return NULL;
  }
  return g_steal_pointer (&plan);
}

DrawlPlan *
drawl_plan_load (GFile *file, char **etag, GError **error)
{
  g_autofree char *where = drawl_json_file_name (file);
  g_autofree char *found_etag = NULL;
  g_autoptr (GBytes) bytes = drawl_json_read (file, &found_etag, error);
  gsize length;

  if (bytes == NULL)
    return NULL;
  const char *data = g_bytes_get_data (bytes, &length);
  DrawlPlan *plan = drawl_plan_from_data (data != NULL ? data : "", length, where, error);
  if (plan != NULL && etag != NULL)
    *etag = g_steal_pointer (&found_etag);
  return plan;
}

/* ---- Writing ---- */

static void
append_members (GString *text, JsonObject *object, gboolean first)
{
  JsonObjectIter iter;
  const char *key;
  JsonNode *node;

  if (object == NULL)
    return;
  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &key, &node)) {
    drawl_json_append_member (text, key, node, 1, first);
    first = FALSE;
  }
}

/* Takes @object over. */
static void
append_element (GString *text, JsonObject *object, gboolean first)
{
  g_autoptr (JsonNode) node = json_node_new (JSON_NODE_OBJECT);

  json_node_take_object (node, object);
  drawl_json_append_line (text, 2, first);
  drawl_json_append (text, node, 2);
}

static void
begin_list (GString *text, const char *key)
{
  drawl_json_append_line (text, 1, FALSE);
  drawl_json_append_string (text, key);
  g_string_append (text, ": [");
}

static void
end_list (GString *text, guint n)
{
  if (n > 0)
    drawl_json_append_line (text, 1, TRUE);
  g_string_append_c (text, ']');
}

/* One shot at a time is made into JSON, so that a long list never stands twice in memory. */
char *
drawl_plan_to_data (DrawlPlan *plan, gsize *length)
{
  g_autoptr (JsonObject) head = drawl_plan_settings_to_json (plan->settings, FALSE);
  guint n_bodies = g_list_model_get_n_items (G_LIST_MODEL (plan->bodies));
  GString *text = g_string_new ("{");

  append_members (text, head, TRUE);
  begin_list (text, "bodies");
  for (guint i = 0; i < n_bodies; i++)
    append_element (
        text,
        drawl_hired_fields_to_json (drawl_hired_body_get_fields (drawl_plan_body_at (plan, i))),
        i == 0);
  end_list (text, n_bodies);
  begin_list (text, "shots");
  for (guint i = 0; i < plan->shots->len; i++)
    append_element (text, drawl_shot_fields_to_json (drawl_shot_get_fields (plan->shots->pdata[i])),
                    i == 0);
  end_list (text, plan->shots->len);
  append_members (text, plan->settings->extra, FALSE);
  g_string_append (text, "\n}\n");
  if (length != NULL)
    *length = text->len;
  return g_string_free (text, FALSE);
}

gboolean
drawl_plan_save (DrawlPlan *plan, GFile *file, gboolean backup, char **etag, GError **error)
{
  gsize length;
  g_autofree char *text = drawl_plan_to_data (plan, &length);

  if (!drawl_json_save (file, text, length, backup, etag, error))
    return FALSE;
  drawl_plan_mark_saved (plan);
  return TRUE;
}
