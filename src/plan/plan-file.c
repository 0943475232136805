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
#include "plan/plan-private.h"

#define FORMAT "drawl-plan"

static const char *const known_keys[] = {
    "format",   "version",         "title",      "production", "day",   "notes", "playback_rate",
    "mains_hz", "reserve_percent", "takes_span", "bodies",     "shots", NULL,
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
      !drawl_json_get_bool (object, "takes_span", where, &settings->takes_span, error))
    return NULL;
  if (!drawl_plan_settings_check (settings, error)) {
    g_prefix_error (error, "%s: ", where);
    return NULL;
  }
  keep_extra (object, &settings->extra);
  return g_steal_pointer (&settings);
}

static JsonObject *
settings_to_json (const DrawlPlanSettings *settings)
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
  return object;
}

/* ---- Bodies and shots ---- */

static JsonObject *
element_object (JsonArray *array, guint index, const char *place, GError **error)
{
  JsonNode *node = json_array_get_element (array, index);

  if (JSON_NODE_HOLDS_OBJECT (node))
    return json_node_get_object (node);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE, _ ("%s: an object is expected"),
               place);
  return NULL;
}

static GPtrArray *
read_bodies (JsonObject *object, const char *where, GError **error)
{
  g_autoptr (GPtrArray) list =
      g_ptr_array_new_with_free_func ((GDestroyNotify)drawl_hired_fields_free);
  JsonArray *array = NULL;

  if (!drawl_json_get_array (object, "bodies", where, DRAWL_PLAN_BODIES_MAX, &array, error))
    return NULL;
  for (guint i = 0; array != NULL && i < json_array_get_length (array); i++) {
    g_autofree char *place = g_strdup_printf (_ ("%s, body number %u"), where, i + 1);
    JsonObject *body = element_object (array, i, place, error);
    DrawlHiredFields *fields =
        body != NULL ? drawl_hired_fields_from_json (body, where, error) : NULL;
    if (fields == NULL)
      return NULL;
    g_ptr_array_add (list, fields);
  }
  return g_steal_pointer (&list);
}

/* Reads a shot; the words that name its place are only made when they are needed. */
static DrawlShotFields *
read_shot (JsonArray *array, guint index, DrawlRate playback, const char *where, GError **error)
{
  JsonNode *node = json_array_get_element (array, index);
  DrawlShotFields *fields = NULL;
  const char *slate = NULL;

  if (JSON_NODE_HOLDS_OBJECT (node))
    fields = drawl_shot_fields_from_json (json_node_get_object (node), playback, where, NULL);
  if (fields != NULL)
    return fields;

  g_autofree char *number = g_strdup_printf (_ ("%s, shot number %u"), where, index + 1);
  JsonObject *object = element_object (array, index, number, error);
  if (object == NULL || !drawl_json_get_string (object, "slate", number, &slate, error))
    return NULL;
  g_autofree char *quote = drawl_core_quote (slate != NULL ? slate : "");
  g_autofree char *place =
      slate != NULL ? g_strdup_printf (_ ("%s (slate %s)"), number, quote) : g_strdup (number);
  return drawl_shot_fields_from_json (object, playback, place, error);
}

static GPtrArray *
read_shots (JsonObject *object, DrawlRate playback, const char *where, GError **error)
{
  g_autoptr (GPtrArray) list =
      g_ptr_array_new_with_free_func ((GDestroyNotify)drawl_shot_fields_free);
  JsonArray *array = NULL;

  if (!drawl_json_get_array (object, "shots", where, DRAWL_PLAN_SHOTS_MAX, &array, error))
    return NULL;
  for (guint i = 0; array != NULL && i < json_array_get_length (array); i++) {
    DrawlShotFields *fields = read_shot (array, i, playback, where, error);
    if (fields == NULL)
      return NULL;
    g_ptr_array_add (list, fields);
  }
  return g_steal_pointer (&list);
}

/* ---- Reading ---- */

/* Takes the document over, so that it is gone before the plan is made of what it said. */
static DrawlPlan *
plan_from_json (JsonObject *taken, const char *where, GError **error)
{
  g_autoptr (JsonObject) object = taken;
  g_autoptr (DrawlPlanSettings) settings = NULL;
  g_autoptr (GPtrArray) bodies = NULL, shots = NULL;
  g_autoptr (DrawlPlan) plan = drawl_plan_new ();

  if (!drawl_json_check_format (object, FORMAT, DRAWL_PLAN_VERSION, where, error) ||
      (settings = read_settings (object, where, error)) == NULL ||
      (bodies = read_bodies (object, where, error)) == NULL ||
      (shots = read_shots (object, settings->playback, where, error)) == NULL)
    return NULL;
  g_clear_pointer (&object, json_object_unref);
  if (!drawl_plan_fill (plan, settings, bodies, shots, error)) {
    g_prefix_error (error, "%s, ", where);
    return NULL;
  }
  return g_steal_pointer (&plan);
}

DrawlPlan *
drawl_plan_from_data (const char *data, gsize length, const char *where, GError **error)
{
  JsonObject *object = drawl_json_parse (data, length, where, error);
  return object != NULL ? plan_from_json (object, where, error) : NULL;
}

DrawlPlan *
drawl_plan_load (GFile *file, char **etag, GError **error)
{
  g_autofree char *where = drawl_json_file_name (file);
  JsonObject *object = drawl_json_load (file, etag, error);
  return object != NULL ? plan_from_json (object, where, error) : NULL;
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
  g_autoptr (JsonObject) head = settings_to_json (plan->settings);
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
