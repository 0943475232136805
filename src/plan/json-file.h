/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* JSON from and to disk, with the guards that json-glib leaves to its caller: a limit of bytes and
 * of levels before anything is parsed, strict types, and a durable, atomic way to write. Shared by
 * plan and body files. */

#include <gio/gio.h>
#include <json-glib/json-glib.h>

#include "core/rate.h"

#define DRAWL_JSON_MAX_BYTES (64 * 1024 * 1024)
#define DRAWL_JSON_MAX_LEVELS 32

/* The guard alone: @data is JSON with an object at the top, within the limits. Steps over a byte
 * order mark. Errors: DRAWL_PLAN_ERROR_SYNTAX (with line and column), _TOO_LARGE. */
gboolean drawl_json_guard (const char **data, gsize *length, const char *where, GError **error);

/* Parses @data; the top must be an object. @where names it in messages. Errors:
 * DRAWL_PLAN_ERROR_SYNTAX (with line and column), _TOO_LARGE. */
JsonObject *drawl_json_parse (const char *data, gsize length, const char *where, GError **error);

/* Reads a whole file, refusing more than DRAWL_JSON_MAX_BYTES before reading it. Errors:
 * DRAWL_PLAN_ERROR_READ, _TOO_LARGE.
 * @etag, if not NULL, takes the file's entity tag. */
JsonObject *drawl_json_load (GFile *file, char **etag, GError **error);

/* The bytes of a file, unparsed. Errors and @etag as above. */
GBytes *drawl_json_read (GFile *file, char **etag, GError **error);

/* The name of a file as a message shows it: as it was given, else its last part. New string. */
char *drawl_json_file_name (GFile *file);
/* From here on, messages name @file as it was @given. */
void drawl_json_file_set_given (GFile *file, const char *given);
gboolean drawl_json_file_is_given (GFile *file);

/* Writes @text aside, syncs, renames, syncs the folder. What stood at @file stays until the last
 * step; any failure leaves it whole. What is no plain file is left alone. Follows a symbolic link
 * to the file it names; keeps the mode. With @backup, the former content stays once beside it as
 * "NAME~". Errors: DRAWL_PLAN_ERROR_WRITE, _NO_SPACE, _NO_PERMISSION, _READ_ONLY, _NO_FOLDER, with
 * the system's reason in words. @etag, if not NULL, takes the entity tag of what was written. */
gboolean drawl_json_save (GFile *file, const char *text, gsize length, gboolean backup, char **etag,
                          GError **error);
/* The same, but where a file stands whose entity tag is not @expected_etag (NULL: any will do),
 * nothing is written: DRAWL_PLAN_ERROR_CHANGED. A file that has gone is nobody's work and comes
 * back. */
gboolean drawl_json_save_unless_changed (GFile *file, const char *text, gsize length,
                                         gboolean backup, const char *expected_etag, char **etag,
                                         GError **error);

/* Checks "format" and "version" of a document: _FORMAT or _VERSION when they do not fit. */
gboolean drawl_json_check_format (JsonObject *object, const char *format, gint64 version,
                                  const char *where, GError **error);

/* Members by type. An absent member leaves @out as it is and returns TRUE; a member of another type
 * is DRAWL_PLAN_ERROR_VALUE, naming @where and the key. Numbers are taken as written: 0.45 is 9/20;
 * and a text may say one only as drawl_json_number_is_plain() has it. Whole numbers are no texts.
 */
gboolean drawl_json_get_string (JsonObject *object, const char *key, const char *where,
                                const char **out, GError **error);
gboolean drawl_json_get_bool (JsonObject *object, const char *key, const char *where, gboolean *out,
                              GError **error);
gboolean drawl_json_get_int (JsonObject *object, const char *key, const char *where, gint64 lowest,
                             gint64 highest, gint64 *out, GError **error);
gboolean drawl_json_get_rational (JsonObject *object, const char *key, const char *where,
                                  DrawlRational *out, GError **error);
/* A rate, as drawl_rate_parse() reads it: "24000/1001", 23.976, 25. */
gboolean drawl_json_get_rate (JsonObject *object, const char *key, const char *where,
                              DrawlRate *out, GError **error);
gboolean drawl_json_get_array (JsonObject *object, const char *key, const char *where, guint most,
                               JsonArray **out, GError **error);
gboolean drawl_json_get_object (JsonObject *object, const char *key, const char *where,
                                JsonObject **out, GError **error);
/* An amount of money, "45.00" or 45, in hundredths. */
gboolean drawl_json_get_money (JsonObject *object, const char *key, const char *where, gint64 *out,
                               GError **error);

/* A number as the file has it, in plain decimals (the shortest that reads back as the same number),
 * or the characters of a text; NULL when @node is neither or not finite. New string. */
char *drawl_json_number_text (JsonNode *node);

/* TRUE when @text is a number as files have it: 12, 0.45, .5, 24000/1001, with or without a minus;
 * no comma, no unit, no space. */
gboolean drawl_json_number_is_plain (const char *text);
/* What is said of any other. */
gboolean drawl_json_fail_number (const char *text, const char *key, const char *where,
                                 GError **error);

/* FALSE with DRAWL_PLAN_ERROR_VALUE: "WHERE: “KEY” is FOUND; EXPECTED is expected". */
gboolean drawl_json_fail (JsonNode *found, const char *key, const char *where, const char *expected,
                          GError **error);
