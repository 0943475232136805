/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A plan as a timeline. Schemas and their fields as the format's own documentation lists them.
 * Clips are made into text one by one, so that a long list never stands in memory twice. The
 * format has doubles for times and rates; what is exact is in the metadata as text. */

#include "export/otio.h"

#include <json-glib/json-glib.h>
#include <string.h>

#include "export/cut-list.h"
#include "plan/json-text.h"
#include "plan/shot-table.h"

#define MEDIA_KEY "DEFAULT_MEDIA"
#define METADATA_KEY "drawl"

static JsonObject *
schema (const char *name)
{
  JsonObject *object = json_object_new ();
  json_object_set_string_member (object, "OTIO_SCHEMA", name);
  return object;
}

static void
set_exact (JsonObject *object, const char *key, DrawlRational value)
{
  char text[DRAWL_RATIONAL_TEXT_SIZE];
  json_object_set_string_member (object, key, drawl_rational_text (value, text));
}

/* ---- Times ---- */

static JsonObject *
time_of (double value, DrawlRate rate)
{
  JsonObject *time = schema ("RationalTime.1");

  json_object_set_double_member (time, "rate", drawl_rational_to_double (rate));
  json_object_set_double_member (time, "value", value);
  return time;
}

static JsonObject *
range_of (double start, gint64 frames, DrawlRate rate)
{
  JsonObject *range = schema ("TimeRange.1");

  json_object_set_object_member (range, "start_time", time_of (start, rate));
  json_object_set_object_member (range, "duration", time_of ((double)frames, rate));
  return range;
}

/* The handle before the action, in frames of the list. */
static double
start_of (const DrawlCutList *list, const DrawlCut *cut)
{
  DrawlRational before = drawl_shot_get_fields (cut->shot)->handle_before_s, frames;

  if (drawl_rational_mul (before, list->rate, &frames))
    return drawl_rational_to_double (frames);
  return drawl_rational_to_double (before) * drawl_rational_to_double (list->rate);
}

/* ---- A clip ---- */

/* What the plan's table says of the shot, and the figures that doubles stand for. */
static JsonObject *
clip_metadata (DrawlPlan *plan, const DrawlCut *cut)
{
  JsonObject *metadata = json_object_new (), *columns = json_object_new ();

  for (guint column = 0; column < drawl_shot_table_n_columns (); column++) {
    g_autofree char *cell = drawl_shot_table_cell (plan, cut->shot, column);
    if (cell[0] != '\0')
      json_object_set_string_member (columns, drawl_shot_table_column_id (column), cell);
  }
  set_exact (columns, "time_scalar", cut->speed);
  json_object_set_int_member (columns, "record_frames", cut->frames);
  json_object_set_int_member (columns, "take_frames", drawl_shot_get_load (cut->shot)->take_frames);
  json_object_set_object_member (metadata, METADATA_KEY, columns);
  return metadata;
}

static JsonObject *
media_of (const DrawlCut *cut)
{
  DrawlRate capture = drawl_shot_get_timing (cut->shot)->value[DRAWL_TIMING_CAPTURE];
  JsonObject *references = json_object_new (), *media = schema ("MissingReference.1");

  json_object_set_object_member (media, "metadata", json_object_new ());
  json_object_set_string_member (media, "name", drawl_shot_get_slate (cut->shot));
  json_object_set_object_member (
      media, "available_range",
      range_of (0, drawl_shot_get_load (cut->shot)->take_frames, capture));
  json_object_set_null_member (media, "available_image_bounds");
  json_object_set_object_member (references, MEDIA_KEY, media);
  return references;
}

static JsonArray *
effects_of (const DrawlCut *cut)
{
  JsonArray *effects = json_array_new ();

  if (drawl_rational_equal (cut->speed, drawl_rational_whole (1)))
    return effects;
  JsonObject *warp = schema ("LinearTimeWarp.1");
  json_object_set_object_member (warp, "metadata", json_object_new ());
  json_object_set_string_member (warp, "name", "");
  json_object_set_string_member (warp, "effect_name", "LinearTimeWarp");
  json_object_set_double_member (warp, "time_scalar", drawl_rational_to_double (cut->speed));
  json_array_add_object_element (effects, warp);
  return effects;
}

static JsonArray *
markers_of (const DrawlCutList *list, const DrawlCut *cut)
{
  const char *notes = drawl_shot_get_fields (cut->shot)->notes;
  g_autofree char *first_line = g_strndup (notes, strcspn (notes, "\r\n"));
  JsonArray *markers = json_array_new ();

  if (notes[0] == '\0')
    return markers;
  JsonObject *marker = schema ("Marker.2");
  json_object_set_object_member (marker, "metadata", json_object_new ());
  json_object_set_string_member (marker, "name", first_line);
  json_object_set_string_member (marker, "color", "YELLOW");
  json_object_set_object_member (marker, "marked_range",
                                 range_of (start_of (list, cut), 1, list->rate));
  json_object_set_string_member (marker, "comment", notes);
  json_array_add_object_element (markers, marker);
  return markers;
}

static JsonObject *
clip_of (DrawlPlan *plan, const DrawlCutList *list, const DrawlCut *cut)
{
  JsonObject *clip = schema ("Clip.2");

  json_object_set_object_member (clip, "metadata", clip_metadata (plan, cut));
  json_object_set_string_member (clip, "name", drawl_shot_get_slate (cut->shot));
  json_object_set_object_member (clip, "source_range",
                                 range_of (start_of (list, cut), cut->frames, list->rate));
  json_object_set_array_member (clip, "effects", effects_of (cut));
  json_object_set_array_member (clip, "markers", markers_of (list, cut));
  json_object_set_boolean_member (clip, "enabled", TRUE);
  json_object_set_object_member (clip, "media_references", media_of (cut));
  json_object_set_string_member (clip, "active_media_reference_key", MEDIA_KEY);
  return clip;
}

/* ---- The timeline ---- */

static JsonObject *
timeline_of (DrawlPlan *plan, const DrawlCutList *list)
{
  const DrawlPlanSettings *settings = drawl_plan_get_settings (plan);
  JsonObject *timeline = schema ("Timeline.1");
  JsonObject *metadata = json_object_new (), *own = json_object_new ();
  char rate[DRAWL_RATIONAL_TEXT_SIZE];
  gint64 start;

  json_object_set_string_member (own, "title", settings->title);
  json_object_set_string_member (own, "production", settings->production);
  json_object_set_string_member (own, "day", settings->day);
  json_object_set_string_member (own, "notes", settings->notes);
  json_object_set_string_member (own, "playback_rate", drawl_rate_text (list->rate, rate));
  json_object_set_boolean_member (own, "drop", list->drop);
  json_object_set_object_member (metadata, METADATA_KEY, own);
  json_object_set_object_member (timeline, "metadata", metadata);
  json_object_set_string_member (timeline, "name", settings->title);
  if (drawl_cut_list_start (list, &start))
    json_object_set_object_member (timeline, "global_start_time",
                                   time_of ((double)start, list->rate));
  else
    json_object_set_null_member (timeline, "global_start_time");
  return timeline;
}

/* A stack or track, all of it but its children. */
static JsonObject *
composition (const char *schema_name, const char *name)
{
  JsonObject *object = schema (schema_name);

  json_object_set_object_member (object, "metadata", json_object_new ());
  json_object_set_string_member (object, "name", name);
  json_object_set_null_member (object, "source_range");
  json_object_set_array_member (object, "effects", json_array_new ());
  json_object_set_array_member (object, "markers", json_array_new ());
  json_object_set_boolean_member (object, "enabled", TRUE);
  return object;
}

/* ---- Text ---- */

/* Begins an object with the members of @object, which is taken, and one more member, whose value is
 * to follow. */
static void
begin_object (GString *text, JsonObject *object, const char *last_key, guint level)
{
  JsonObjectIter iter;
  const char *key;
  JsonNode *node;
  gboolean first = TRUE;

  g_string_append_c (text, '{');
  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &key, &node)) {
    drawl_json_append_member (text, key, node, level + 1, first);
    first = FALSE;
  }
  drawl_json_append_line (text, level + 1, FALSE);
  drawl_json_append_string (text, last_key);
  g_string_append (text, ": ");
  json_object_unref (object);
}

static void
end_object (GString *text, guint level)
{
  drawl_json_append_line (text, level, TRUE);
  g_string_append_c (text, '}');
}

static void
append_clips (GString *text, DrawlPlan *plan, const DrawlCutList *list, guint level)
{
  g_string_append_c (text, '[');
  for (guint i = 0; i < list->cuts->len; i++) {
    g_autoptr (JsonNode) node = json_node_new (JSON_NODE_OBJECT);
    json_node_take_object (node, clip_of (plan, list, &g_array_index (list->cuts, DrawlCut, i)));
    drawl_json_append_line (text, level + 1, i == 0);
    drawl_json_append (text, node, level + 1);
  }
  if (list->cuts->len > 0)
    drawl_json_append_line (text, level, TRUE);
  g_string_append_c (text, ']');
}

char *
drawl_otio_text (DrawlPlan *plan, GPtrArray *warnings, GError **error)
{
  g_autoptr (DrawlCutList) list = drawl_cut_list_new (plan, error);
  JsonObject *track;

  if (list == NULL)
    return NULL;
  GString *text = g_string_new (NULL);
  begin_object (text, timeline_of (plan, list), "tracks", 0);
  begin_object (text, composition ("Stack.1", "tracks"), "children", 1);
  g_string_append_c (text, '[');
  track = composition ("Track.1", "V1");
  json_object_set_string_member (track, "kind", "Video");
  begin_object (text, track, "children", 2);
  append_clips (text, plan, list, 3);
  end_object (text, 2);
  g_string_append_c (text, ']');
  end_object (text, 1);
  end_object (text, 0);
  g_string_append_c (text, '\n');
  drawl_cut_list_warn (list, warnings);
  return g_string_free (text, FALSE);
}
