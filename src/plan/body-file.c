/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Body profiles from their files. The head of a profile is read here; its tables and its limits are
 * read by the parts beside. A body is handed out whole or not at all. */

#include "plan/body-file.h"

#include <stdlib.h>
#include <string.h>

#include "core/error.h"
#include "core/text.h"
#include "plan/body-reader.h"
#include "plan/data-dir.h"
#include "plan/error.h"
#include "plan/json-file.h"

#define BODY_FORMAT "drawl-body"
#define BODY_VERSION 1
#define BODY_SUFFIX ".json"
#define DAY_LENGTH 10 /* "2026-11-25" */

static gboolean
read_kind (JsonObject *object, DrawlBodyKind *kind, const char *where, GError **error)
{
  g_autofree char *id = NULL;

  if (!drawl_body_need_text (object, "kind", where, &id, error))
    return FALSE;
  *kind = g_str_equal (id, "film") ? DRAWL_BODY_FILM : DRAWL_BODY_DIGITAL;
  return *kind == DRAWL_BODY_FILM || g_str_equal (id, "digital") ||
         drawl_json_fail (json_object_get_member (object, "kind"), "kind", where,
                          _ ("“digital” or “film”"), error);
}

/* "2026-11-25", a day that exists. */
gboolean
drawl_body_is_day (const char *text)
{
  g_autofree char *moment = g_strconcat (text, "T00:00:00Z", NULL);
  g_autoptr (GDateTime) day = g_date_time_new_from_iso8601 (moment, NULL);

  return day != NULL && strlen (text) == DAY_LENGTH && text[4] == '-' && text[7] == '-';
}

static gboolean
read_source (DrawlBodyReader *reader, JsonObject *object, GError **error)
{
  DrawlBody *body = reader->body;
  g_autofree char *where = g_strdup_printf (_ ("%s: “%s”"), reader->where, "source");
  g_autoptr (JsonObject) none = json_object_new ();
  JsonObject *source = none;

  if (!drawl_json_get_object (object, "source", reader->where, &source, error) ||
      !drawl_body_read_text (source, "document", where, &body->source_document, error) ||
      !drawl_body_read_text (source, "date", where, &body->source_date, error))
    return FALSE;
  return *body->source_date == '\0' || drawl_body_is_day (body->source_date) ||
         drawl_json_fail (json_object_get_member (source, "date"), "date", where,
                          _ ("a day like 2026-11-25"), error);
}

static int
compare_rates (gconstpointer a, gconstpointer b)
{
  return drawl_rational_compare (*(const DrawlRate *)a, *(const DrawlRate *)b);
}

/* The rates listed beside the steps, ascending, each once. */
static gboolean
read_listed_rates (DrawlBody *body, JsonObject *rates, const char *where, GError **error)
{
  JsonArray *array = NULL;
  g_autoptr (JsonObject) one = json_object_new ();

  if (!drawl_json_get_array (rates, "also", where, DRAWL_BODY_ROWS_MAX, &array, error))
    return FALSE;
  guint n_rates = array == NULL ? 0 : json_array_get_length (array);
  body->rates = g_new0 (DrawlRate, n_rates);
  for (guint i = 0; i < n_rates; i++) {
    json_object_set_member (one, "also", json_array_dup_element (array, i));
    if (!drawl_json_get_rate (one, "also", where, &body->rates[i], error))
      return FALSE;
  }
  if (n_rates > 0)
    qsort (body->rates, n_rates, sizeof (DrawlRate), compare_rates);
  for (guint i = 0; i < n_rates; i++)
    if (i == 0 || !drawl_rational_equal (body->rates[i], body->rates[body->n_rates - 1]))
      body->rates[body->n_rates++] = body->rates[i];
  return TRUE;
}

static gboolean
read_offered_rates (DrawlBodyReader *reader, JsonObject *object, GError **error)
{
  g_autofree char *where = g_strdup_printf (_ ("%s: “%s”"), reader->where, "rates");
  JsonObject *rates = NULL;

  if (!drawl_json_get_object (object, "rates", reader->where, &rates, error))
    return FALSE;
  return rates == NULL || (drawl_body_read_number (rates, "step", where, 0, DRAWL_RATE_MAX,
                                                   &reader->body->rate_step, error) &&
                           read_listed_rates (reader->body, rates, where, error));
}

static gboolean
read_buffer (DrawlBodyReader *reader, JsonObject *object, GError **error)
{
  DrawlBody *body = reader->body;
  g_autofree char *where = g_strdup_printf (_ ("%s: “%s”"), reader->where, "buffer");
  JsonObject *buffer = NULL;

  if (!drawl_json_get_object (object, "buffer", reader->where, &buffer, error))
    return FALSE;
  return buffer == NULL ||
         (drawl_body_need (buffer, "bytes", where, _ ("a number of bytes"), error) &&
          drawl_json_get_int (buffer, "bytes", where, 1, DRAWL_BODY_BYTES_MAX, &body->buffer_bytes,
                              error) &&
          drawl_body_read_number (buffer, "pre_percent", where, 0, 100, &body->buffer_pre_percent,
                                  error) &&
          drawl_body_read_speed (buffer, "write_mb_s", where, &body->buffer_write_bytes_s, error));
}

static gboolean
read_power (DrawlBodyReader *reader, JsonObject *object, GError **error)
{
  g_autofree char *where = g_strdup_printf (_ ("%s: “%s”"), reader->where, "power");
  JsonObject *power = NULL;

  if (!drawl_json_get_object (object, "power", reader->where, &power, error))
    return FALSE;
  return power == NULL || drawl_body_read_number (power, "watts", where, 0, DRAWL_BODY_WATTS_MAX,
                                                  &reader->body->watts, error);
}

static gboolean
read_head (DrawlBodyReader *reader, JsonObject *object, GError **error)
{
  DrawlBody *body = reader->body;
  const char *where = reader->where;

  return drawl_json_check_format (object, BODY_FORMAT, BODY_VERSION, where, error) &&
         drawl_body_need_text (object, "id", where, &body->id, error) &&
         drawl_body_need_text (object, "name", where, &body->name, error) &&
         drawl_body_read_text (object, "maker", where, &body->maker, error) &&
         drawl_body_read_text (object, "what", where, &body->what, error) &&
         read_kind (object, &body->kind, where, error) && read_source (reader, object, error) &&
         drawl_body_read_text (object, "currency", where, &body->currency, error) &&
         drawl_json_get_money (object, "price_day", where, &body->price, error) &&
         read_offered_rates (reader, object, error) &&
         drawl_body_read_count (object, "audio_tracks", where, 0, DRAWL_BODY_AUDIO_MAX,
                                &body->audio_tracks, error) &&
         read_power (reader, object, error);
}

static gboolean
read_but_limits (DrawlBodyReader *reader, JsonObject *object, GError **error)
{
  return read_head (reader, object, error) && drawl_body_read_tables (reader, object, error) &&
         read_buffer (reader, object, error);
}

static DrawlBody *
read_profile (JsonObject *object, gboolean with_limits, const char *where, GError **error)
{
  g_autoptr (DrawlBody) body = drawl_body_new ();
  g_autoptr (GHashTable) sizes = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GHashTable) codecs = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GHashTable) licences = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GHashTable) cards = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GHashTable) magazines = g_hash_table_new (g_str_hash, g_str_equal);
  DrawlBodyReader reader = {body, where, sizes, codecs, licences, cards, magazines};

  if (!read_but_limits (&reader, object, error) ||
      (with_limits && !drawl_body_read_limits (&reader, object, error)))
    return NULL;
  body->json = json_object_ref (object);
  return g_steal_pointer (&body);
}

DrawlBody *
drawl_body_from_json (JsonObject *object, const char *where, GError **error)
{
  return read_profile (object, TRUE, where, error);
}

DrawlBody *
drawl_body_from_json_but_limits (JsonObject *object, const char *where, GError **error)
{
  return read_profile (object, FALSE, where, error);
}

DrawlBody *
drawl_body_load (GFile *file, GError **error)
{
  g_autoptr (JsonObject) object = drawl_json_load (file, NULL, error);
  g_autofree char *where = drawl_json_file_name (file);

  return object == NULL ? NULL : drawl_body_from_json (object, where, error);
}

/* ---- Those that are shipped ---- */

static void
load_folder (const char *path, GPtrArray *bodies, GPtrArray *problems)
{
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL) {
    g_autoptr (GError) error = NULL;
    if (!g_str_has_suffix (name, BODY_SUFFIX))
      continue;
    g_autoptr (GFile) file = g_file_new_build_filename (path, name, NULL);
    DrawlBody *body = drawl_body_load (file, &error);
    if (body != NULL)
      g_ptr_array_add (bodies, body);
    else if (problems != NULL)
      g_ptr_array_add (problems, g_strdup (error->message));
  }
}

static int
compare_bodies (gconstpointer a, gconstpointer b)
{
  const DrawlBody *first = *(DrawlBody *const *)a, *second = *(DrawlBody *const *)b;
  int order = g_utf8_collate (first->name, second->name);
  return order != 0 ? order : g_strcmp0 (first->id, second->id);
}

GPtrArray *
drawl_body_load_shipped (GPtrArray *problems)
{
  GPtrArray *bodies = g_ptr_array_new_with_free_func ((GDestroyNotify)drawl_body_unref);
  g_autofree char *shipped = drawl_data_file ("bodies", NULL);
  g_autofree char *own = g_build_filename (g_get_user_data_dir (), "drawl", "bodies", NULL);

  load_folder (shipped, bodies, problems);
  load_folder (own, bodies, problems);
  g_ptr_array_sort (bodies, compare_bodies);
  return bodies;
}
