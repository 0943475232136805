/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A table of limits. Each row is read for itself, and must not contradict one before it; what a
 * good row becomes is what the reader of profiles takes. Rates are frames a second. */

#include "plan/limit-table.h"

#include "core/error.h"
#include "core/text.h"
#include "plan/body-reader.h"
#include "plan/csv.h"
#include "plan/error.h"
#include "plan/table-map.h"

typedef struct {
  const DrawlBody *body;
  DrawlLimitTable *table;
  DrawlTableMap *map;
  GHashTable *promises; /* size, codec, licences and class in one text → Promise */
  GHashTable *pairs;    /* size and codec in one text → number of rows */
} Reader;

/* What a row says of a size and codec. */
typedef struct {
  guint line;
  DrawlRate lowest;
  DrawlRate highest;
} Promise;

typedef struct {
  DrawlTableField field;
  gboolean (*read) (const DrawlBody *body, const char *cell, DrawlBodyLimit *limit, GError **error);
} Column;

/* ---- The table ---- */

static void
row_free (gpointer data)
{
  DrawlLimitTableRow *row = data;

  g_clear_pointer (&row->limit, json_object_unref);
  g_free (row->heading);
  g_free (row->reason);
  g_free (row);
}

static DrawlLimitTable *
table_new (const DrawlCsv *csv, const DrawlTableMap *map)
{
  DrawlLimitTable *table = g_new0 (DrawlLimitTable, 1);

  table->has_headings = map->has_headings;
  table->latin_1 = csv->latin_1;
  table->delimiter = csv->delimiter;
  table->recognised = g_ptr_array_ref (map->recognised);
  table->ignored = g_ptr_array_ref (map->ignored);
  table->rows = g_ptr_array_new_with_free_func (row_free);
  return table;
}

void
drawl_limit_table_free (DrawlLimitTable *table)
{
  g_ptr_array_unref (table->recognised);
  g_ptr_array_unref (table->ignored);
  g_ptr_array_unref (table->rows);
  g_free (table);
}

/* ---- Names ---- */

/* @text as names are compared: without case and spaces, with a letter for the sign between pixels.
 */
static char *
simplify (const char *text)
{
  g_autofree char *folded = g_utf8_casefold (text, -1);
  GString *simple = g_string_new (NULL);

  for (const char *at = folded; *at != '\0'; at = g_utf8_next_char (at)) {
    gunichar c = g_utf8_get_char (at);
    if (!g_unichar_isspace (c))
      g_string_append_unichar (simple, c == 0x00d7 || c == '*' ? 'x' : c);
  }
  return g_string_free (simple, FALSE);
}

static gboolean
names (const char *cell, const char *name)
{
  g_autofree char *a = simplify (cell), *b = simplify (name);
  return g_str_equal (a, b);
}

G_GNUC_PRINTF (3, 4)
static gboolean
refuse (GError **error, const char *cell, const char *format, ...)
{
  g_autofree char *quote = drawl_core_quote (cell);
  g_autofree char *message = NULL;
  va_list values;

  va_start (values, format);
  message = g_strdup_vprintf (format, values);
  va_end (values);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_UNKNOWN, "“%s”: %s", quote, message);
  return FALSE;
}

/* ---- Cells ---- */

static gboolean
read_size (const DrawlBody *body, const char *cell, DrawlBodyLimit *limit, GError **error)
{
  int found = drawl_body_size_index (body, cell);

  for (guint i = 0; i < body->n_sizes && found < 0; i++)
    if (names (cell, body->sizes[i].name))
      found = (int)i;
  if (found < 0)
    return refuse (error, cell, _ ("the id or the name of a size of this body is expected"));
  limit->size = (guint)found;
  return TRUE;
}

static gboolean
read_codec (const DrawlBody *body, const char *cell, DrawlBodyLimit *limit, GError **error)
{
  int found = drawl_body_codec_index (body, cell);

  if (body->kind == DRAWL_BODY_FILM)
    return cell[0] == '\0' || refuse (error, cell, _ ("nothing is expected, on a film body"));
  for (guint i = 0; i < body->n_codecs && found < 0; i++)
    if (names (cell, body->codecs[i].name))
      found = (int)i;
  if (found < 0)
    return refuse (error, cell, _ ("the id or the name of a codec of this body is expected"));
  limit->codec = (guint)found;
  return TRUE;
}

static gboolean
read_lowest (const DrawlBody *body, const char *cell, DrawlBodyLimit *limit, GError **error)
{
  return drawl_rate_parse (cell, &limit->lowest, error);
}

static gboolean
read_highest (const DrawlBody *body, const char *cell, DrawlBodyLimit *limit, GError **error)
{
  return drawl_rate_parse (cell, &limit->highest, error);
}

static gboolean
read_licences (const DrawlBody *body, const char *cell, DrawlBodyLimit *limit, GError **error)
{
  g_auto (GStrv) ids = g_strsplit_set (cell, " ,;+", -1);

  for (guint i = 0; ids[i] != NULL; i++) {
    int licence = drawl_body_licence_index (body, ids[i]);
    if (ids[i][0] == '\0')
      continue;
    if (licence < 0)
      return refuse (error, ids[i], _ ("ids of licences of this body are expected"));
    limit->licences |= DRAWL_TIER_BIT (licence);
  }
  return TRUE;
}

static gboolean
read_card_class (const DrawlBody *body, const char *cell, DrawlBodyLimit *limit, GError **error)
{
  if (cell[0] == '\0')
    return TRUE;
  limit->card_class = drawl_card_class_find (cell);
  if (limit->card_class == NULL)
    return refuse (error, cell, _ ("a card class like “V60” is expected"));
  limit->card_bytes_s = limit->card_class->bytes_s;
  return TRUE;
}

static const Column columns[] = {
    {{"size", N_ ("size|picture size|frame size|resolution|format")}, read_size},
    {{"codec", N_ ("codec|recording codec|compression")}, read_codec},
    {{"lowest_rate", N_ ("lowest rate|lowest|min|minimum|min fps|from|from fps")}, read_lowest},
    {{"highest_rate", N_ ("highest rate|highest|max|maximum|max fps|to|to fps|fps")}, read_highest},
    {{"licences", N_ ("licences|licence|licenses|license|needs")}, read_licences},
    {{"card_class", N_ ("card class|class|card")}, read_card_class},
};

/* ---- Rows ---- */

static gboolean
read_cells (const Reader *reader, const DrawlCsvRow *csv_row, DrawlBodyLimit *limit,
            DrawlLimitTableRow *row, GError **error)
{
  for (guint i = 0; i < G_N_ELEMENTS (columns); i++) {
    g_autofree char *cell = drawl_table_map_cell (reader->map, csv_row, i);
    if (columns[i].read (reader->body, cell, limit, error))
      continue;
    row->heading = g_strdup (reader->map->headings[i]);
    return FALSE;
  }
  return TRUE;
}

static char *
promise_key (const DrawlBodyLimit *limit)
{
  return g_strdup_printf ("%u %u %" G_GUINT64_FORMAT " %" G_GINT64_FORMAT, limit->size,
                          limit->codec, limit->licences, limit->card_bytes_s);
}

/* Rows that say the same twice are harmless; rows that say two things are not. */
static gboolean
check_promise (const Reader *reader, const DrawlBodyLimit *limit, guint line, GError **error)
{
  g_autofree char *key = promise_key (limit);
  const Promise *former = g_hash_table_lookup (reader->promises, key);
  char lowest[DRAWL_RATIONAL_TEXT_SIZE], highest[DRAWL_RATIONAL_TEXT_SIZE];

  if (former == NULL) {
    Promise *promise = g_new (Promise, 1);
    *promise = (Promise){line, limit->lowest, limit->highest};
    g_hash_table_insert (reader->promises, g_steal_pointer (&key), promise);
    return TRUE;
  }
  if (drawl_rational_equal (former->lowest, limit->lowest) &&
      drawl_rational_equal (former->highest, limit->highest))
    return TRUE;
  g_set_error (
      error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_CONTRADICTION,
      _ ("line %u says %s to %s for this size and codec, with the same licences and cards"),
      former->line, drawl_rate_text (former->lowest, lowest),
      drawl_rate_text (former->highest, highest));
  return FALSE;
}

/* A profile has room for so many rows and no more. */
static gboolean
check_room (const Reader *reader, const DrawlBodyLimit *limit, GError **error)
{
  g_autofree char *key = g_strdup_printf ("%u %u", limit->size, limit->codec);
  guint n = GPOINTER_TO_UINT (g_hash_table_lookup (reader->pairs, key));

  if (n >= DRAWL_BODY_PAIR_ROWS_MAX || reader->table->n_good >= DRAWL_BODY_LIMITS_MAX) {
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_TOO_LARGE,
                 _ ("a profile has at most %d rows for one size and codec, and %d in all"),
                 DRAWL_BODY_PAIR_ROWS_MAX, DRAWL_BODY_LIMITS_MAX);
    return FALSE;
  }
  g_hash_table_insert (reader->pairs, g_steal_pointer (&key), GUINT_TO_POINTER (n + 1));
  return TRUE;
}

static gboolean
settle_row (const Reader *reader, const DrawlCsvRow *csv_row, DrawlBodyLimit *limit,
            DrawlLimitTableRow *row, GError **error)
{
  return drawl_table_map_check_width (reader->map, csv_row, error) &&
         read_cells (reader, csv_row, limit, row, error) &&
         drawl_body_check_limit (reader->body, limit, error) &&
         drawl_body_check_codec (reader->body, limit, error) &&
         check_promise (reader, limit, row->line, error) && check_room (reader, limit, error);
}

static void
set_list (JsonObject *object, const char *key, const char *const *ids)
{
  JsonArray *array = json_array_new ();

  for (guint i = 0; ids[i] != NULL; i++)
    json_array_add_string_element (array, ids[i]);
  json_object_set_array_member (object, key, array);
}

static void
set_one (JsonObject *object, const char *key, const char *id)
{
  const char *const ids[] = {id, NULL};
  set_list (object, key, ids);
}

static JsonObject *
limit_to_json (const DrawlBody *body, const DrawlBodyLimit *limit)
{
  g_auto (GStrv) licences = drawl_body_tier_ids (body, limit->licences);
  JsonObject *object = json_object_new ();
  char rate[DRAWL_RATIONAL_TEXT_SIZE];

  set_one (object, "sizes", body->sizes[limit->size].id);
  if (limit->codec != DRAWL_BODY_NO_CODEC)
    set_one (object, "codecs", body->codecs[limit->codec].id);
  json_object_set_string_member (object, "lowest_rate", drawl_rate_text (limit->lowest, rate));
  json_object_set_string_member (object, "highest_rate", drawl_rate_text (limit->highest, rate));
  if (limit->licences != 0)
    set_list (object, "licences", (const char *const *)licences);
  if (limit->card_class != NULL)
    set_one (object, "card_classes", limit->card_class->id);
  return object;
}

static void
read_row (Reader *reader, const DrawlCsvRow *csv_row)
{
  DrawlLimitTableRow *row = g_new0 (DrawlLimitTableRow, 1);
  DrawlBodyLimit limit = {.codec = DRAWL_BODY_NO_CODEC};
  g_autoptr (GError) error = NULL;

  row->line = csv_row->line;
  g_ptr_array_add (reader->table->rows, row);
  if (settle_row (reader, csv_row, &limit, row, &error)) {
    row->limit = limit_to_json (reader->body, &limit);
    reader->table->n_good++;
  } else {
    row->reason = g_strdup (error->message);
  }
}

DrawlLimitTable *
drawl_limit_table_read (const DrawlBody *body, const char *data, gsize length, GError **error)
{
  g_autoptr (DrawlCsv) csv = drawl_csv_read (data, length, error);

  if (csv == NULL)
    return NULL;
  g_autoptr (DrawlTableMap) map =
      drawl_table_map_new (csv->rows->len > 0 ? csv->rows->pdata[0] : NULL, &columns[0].field,
                           G_N_ELEMENTS (columns), sizeof columns[0]);
  g_autoptr (GHashTable) promises = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (GHashTable) pairs = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  Reader reader = {.body = body,
                   .table = table_new (csv, map),
                   .map = map,
                   .promises = promises,
                   .pairs = pairs};

  for (guint i = map->has_headings; i < csv->rows->len; i++)
    read_row (&reader, csv->rows->pdata[i]);
  return reader.table;
}

JsonArray *
drawl_limit_table_to_json (const DrawlLimitTable *table)
{
  JsonArray *limits = json_array_new ();

  for (guint i = 0; i < table->rows->len; i++) {
    const DrawlLimitTableRow *row = table->rows->pdata[i];
    if (row->limit != NULL)
      json_array_add_object_element (limits, json_object_ref (row->limit));
  }
  return limits;
}
