/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlBodyReader: what the parts of the body reader share while one profile is read. */

#include "plan/body.h"

/* More than any real body has; a file beyond them is refused, not cut. */
#define DRAWL_BODY_ROWS_MAX 1000     /* sizes, codecs, cards, magazines, notes, rates */
#define DRAWL_BODY_LIMITS_MAX 100000 /* rows once expanded to one size and codec each */
#define DRAWL_BODY_PAIR_ROWS_MAX 256 /* of them, for one size and codec */
#define DRAWL_BODY_TEXT_MAX 10000    /* characters of one text */
#define DRAWL_BODY_PIXELS_MAX 100000 /* width or height */
#define DRAWL_BODY_BYTES_MAX G_GINT64_CONSTANT (1000000000000000) /* of a card or buffer: 1 PB */
#define DRAWL_BODY_MB_S_MAX 1000000                               /* of a card or buffer */
#define DRAWL_BODY_WATTS_MAX 100000
#define DRAWL_BODY_MM_MAX 1000
#define DRAWL_BODY_READOUT_MS_MAX 10000
#define DRAWL_BODY_FEET_MAX 100000
#define DRAWL_BODY_AUDIO_MAX 64

typedef struct {
  DrawlBody *body; /* being filled */
  const char *where;
  GHashTable *sizes; /* id → index + 1; each id is owned by the body's table */
  GHashTable *codecs;
  GHashTable *licences;
  GHashTable *cards;
  GHashTable *magazines;
} DrawlBodyReader;

/* Texts: @out takes a new string. An absent optional one is empty; a required one must be there and
 * not be empty. */
gboolean drawl_body_read_text (JsonObject *object, const char *key, const char *where, char **out,
                               GError **error);
gboolean drawl_body_need_text (JsonObject *object, const char *key, const char *where, char **out,
                               GError **error);
/* FALSE with an error when @key is missing. */
gboolean drawl_body_need (JsonObject *object, const char *key, const char *where,
                          const char *expected, GError **error);

/* A number from @lowest to @highest; absent: @out stays. */
gboolean drawl_body_read_number (JsonObject *object, const char *key, const char *where,
                                 gint64 lowest, gint64 highest, DrawlRational *out, GError **error);
gboolean drawl_body_read_count (JsonObject *object, const char *key, const char *where,
                                gint64 lowest, gint64 highest, guint *out, GError **error);
/* Megabytes a second above 0 as whole bytes a second; absent: @out stays. */
gboolean drawl_body_read_speed (JsonObject *object, const char *key, const char *where, gint64 *out,
                                GError **error);

/* Enters the id of a table's row; _DUPLICATE when it is taken. */
gboolean drawl_body_enter_id (GHashTable *ids, const char *id, guint index, const char *where,
                              GError **error);

/* Finds @id in a table; -1 with _UNKNOWN when there is none. @what: "size", "licence", translated.
 */
int drawl_body_find_id (GHashTable *ids, const char *id, const char *what, const char *where,
                        GError **error);

/* The texts in the list at @key, or the one text in place of a list. Absent: empty. NULL with an
 * error. */
GStrv drawl_body_read_ids (JsonObject *object, const char *key, const char *where, GError **error);
/* The same as a set of licences. */
gboolean drawl_body_read_tier (const DrawlBodyReader *reader, JsonObject *object, const char *key,
                               const char *where, DrawlTier *out, GError **error);

/* Reads one row of a table into @row, which is zeroed. @where names the row. */
typedef gboolean (*DrawlBodyRowFunc) (DrawlBodyReader *reader, JsonObject *object, gpointer row,
                                      guint index, const char *where, GError **error);

/* A table of the body, and where it lies in it. */
typedef struct {
  const char *key;
  guint most;
  gsize row_bytes;
  DrawlBodyRowFunc read;
  gsize rows_offset;  /* of the pointer to the rows, within DrawlBody */
  gsize count_offset; /* of their number, a guint */
} DrawlBodyTable;

/* The list of objects at the table's key, each read into a new row. After an error the rows read so
 * far, and zeroed ones, are in the body, which frees them. */
gboolean drawl_body_read_table (DrawlBodyReader *reader, JsonObject *object,
                                const DrawlBodyTable *table, GError **error);

/* The parts. */
gboolean drawl_body_read_tables (DrawlBodyReader *reader, JsonObject *object, GError **error);
gboolean drawl_body_read_limits (DrawlBodyReader *reader, JsonObject *object, GError **error);

/* Whether a row of limits can hold: lowest under highest, a rate in between that the body offers, a
 * card that reaches the class; and whether its codec can at its size: the law is made for the size,
 * the level has room for it at the highest rate. _CONTRADICTION, without the place. */
gboolean drawl_body_check_limit (const DrawlBody *body, const DrawlBodyLimit *row, GError **error);
gboolean drawl_body_check_codec (const DrawlBody *body, const DrawlBodyLimit *row, GError **error);
