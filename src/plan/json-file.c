/* SPDX-License-Identifier: GPL-3.0-or-later */

/* JSON from disk. Nothing reaches the parser that has not been measured (bytes) and scanned
 * (levels, grammar) before. */

#include "plan/json-file.h"

#include <string.h>

#include "core/text.h"
#include "plan/error.h"
#include "plan/json-scan.h"

#define BYTE_ORDER_MARK "\xef\xbb\xbf"
#define GIVEN "drawl-name-as-given" /* data of a GFile */
#define CHUNK_BYTES (256 * 1024)

static gboolean
check_bytes (guint64 bytes, const char *where, GError **error)
{
  if (bytes <= DRAWL_JSON_MAX_BYTES)
    return TRUE;
  g_autofree char *count = g_strdup_printf ("%" G_GUINT64_FORMAT, bytes);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_TOO_LARGE,
               _ ("%s: the file is too large (%s bytes); at most %d bytes are expected"), where,
               count, DRAWL_JSON_MAX_BYTES);
  return FALSE;
}

gboolean
drawl_json_guard (const char **data, gsize *length, const char *where, GError **error)
{
  gsize mark = strlen (BYTE_ORDER_MARK);

  if (!check_bytes (*length, where, error))
    return FALSE;
  if (*length >= mark && memcmp (*data, BYTE_ORDER_MARK, mark) == 0) {
    *data += mark;
    *length -= mark;
  }
  return drawl_json_scan (*data, *length, where, error);
}

JsonObject *
drawl_json_parse (const char *data, gsize length, const char *where, GError **error)
{
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GError) local = NULL;

  if (!drawl_json_guard (&data, &length, where, error))
    return NULL;
  if (!json_parser_load_from_data (parser, data, (gssize)length, &local)) {
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_SYNTAX, "%s: %s", where, local->message);
    return NULL;
  }
  return json_object_ref (json_node_get_object (json_parser_get_root (parser)));
}

/* Reads to the end, but never more than one byte past the limit, whatever the size was said to be.
 */
static GByteArray *
read_stream (GInputStream *stream, const char *where, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  g_autoptr (GError) local = NULL;
  gsize n_read = 0;

  do {
    guint before = bytes->len;
    g_byte_array_set_size (bytes, before + CHUNK_BYTES);
    if (!g_input_stream_read_all (stream, bytes->data + before, CHUNK_BYTES, &n_read, NULL,
                                  &local)) {
      g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_READ, _ ("%s could not be read: %s"),
                   where, local->message);
      return NULL;
    }
    g_byte_array_set_size (bytes, before + (guint)n_read);
    if (!check_bytes (bytes->len, where, error))
      return NULL;
  } while (n_read == CHUNK_BYTES);
  return g_steal_pointer (&bytes);
}

static GByteArray *
read_file (GFile *file, const char *where, char **etag, GError **error)
{
  g_autoptr (GError) local = NULL;
  g_autoptr (GFileInputStream) stream = g_file_read (file, NULL, &local);

  if (stream == NULL) {
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_READ, _ ("%s could not be read: %s"),
                 where, local->message);
    return NULL;
  }
  g_autoptr (GFileInfo) info = g_file_input_stream_query_info (
      stream, G_FILE_ATTRIBUTE_STANDARD_SIZE "," G_FILE_ATTRIBUTE_ETAG_VALUE, NULL, NULL);
  if (info != NULL && g_file_info_has_attribute (info, G_FILE_ATTRIBUTE_STANDARD_SIZE) &&
      !check_bytes ((guint64)g_file_info_get_size (info), where, error))
    return NULL;

  GByteArray *bytes = read_stream (G_INPUT_STREAM (stream), where, error);
  if (bytes != NULL && etag != NULL)
    *etag = g_strdup (info == NULL ? NULL : g_file_info_get_etag (info));
  return bytes;
}

void
drawl_json_file_set_given (GFile *file, const char *given)
{
  g_object_set_data_full (G_OBJECT (file), GIVEN, g_filename_display_name (given), g_free);
}

gboolean
drawl_json_file_is_given (GFile *file)
{
  return g_object_get_data (G_OBJECT (file), GIVEN) != NULL;
}

char *
drawl_json_file_name (GFile *file)
{
  const char *given = g_object_get_data (G_OBJECT (file), GIVEN);
  g_autofree char *base = g_file_get_basename (file);

  if (given != NULL)
    return g_strdup (given);
  return g_filename_display_name (base == NULL ? "/" : base);
}

GBytes *
drawl_json_read (GFile *file, char **etag, GError **error)
{
  g_autofree char *where = drawl_json_file_name (file);
  GByteArray *bytes = read_file (file, where, etag, error);

  return bytes != NULL ? g_byte_array_free_to_bytes (bytes) : NULL;
}

JsonObject *
drawl_json_load (GFile *file, char **etag, GError **error)
{
  g_autofree char *where = drawl_json_file_name (file);
  g_autofree char *found_etag = NULL;
  g_autoptr (GByteArray) bytes = read_file (file, where, &found_etag, error);

  if (bytes == NULL)
    return NULL;
  JsonObject *object = drawl_json_parse ((const char *)bytes->data, bytes->len, where, error);
  if (object != NULL && etag != NULL)
    *etag = g_steal_pointer (&found_etag);
  return object;
}

gboolean
drawl_json_check_format (JsonObject *object, const char *format, gint64 version, const char *where,
                         GError **error)
{
  JsonNode *found = json_object_get_member (object, "format");
  gint64 found_version = 0;
  g_autoptr (GError) local = NULL;

  if (found == NULL || !JSON_NODE_HOLDS_VALUE (found) ||
      g_strcmp0 (json_node_get_string (found), format) != 0) {
    g_autofree char *expected = g_strdup_printf ("\"%s\"", format);
    drawl_json_fail (found, "format", where, expected, &local);
    g_set_error_literal (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_FORMAT, local->message);
    return FALSE;
  }
  if (!json_object_has_member (object, "version")) {
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_FORMAT,
                 _ ("%s: \"version\" is missing; a whole number is expected"), where);
    return FALSE;
  }
  if (!drawl_json_get_int (object, "version", where, 1, G_MAXINT, &found_version, error))
    return FALSE;
  if (found_version <= version)
    return TRUE;
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VERSION,
               _ ("%s: version %d was written by a newer Drawl; this one reads up to version %d"),
               where, (int)found_version, (int)version);
  return FALSE;
}
