/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Headings of tables. A field is looked for in three ways, the strict before the lenient, so that a
 * table that has both `capture_rate` and `fps` is understood; each column holds one field at most,
 * and each field is held by one column at most. */

#include "plan/table-map.h"

#include "core/text.h"
#include "plan/error.h"
#include "plan/table-number.h"

#include <string.h>

/* ---- Signs that count ---- */

typedef enum {
  AS_ID,         /* as the id is written, spaces for underscores */
  WITH_BRACKETS, /* "action(s)" is a time */
  BARE,          /* "action" is what happens */
  N_STRICTNESSES
} Strictness;

static gboolean
counts (gunichar c, Strictness strictness)
{
  return strictness == AS_ID || !(g_unichar_isspace (c) || c == '_' || c == '-' || c == '.');
}

/* @text down to the signs that count. */
static char *
simplify (const char *text, Strictness strictness)
{
  g_autofree char *folded = g_utf8_casefold (text, -1);
  GString *simple = g_string_new (NULL);
  guint depth = 0;

  for (const char *at = g_strstrip (folded); *at != '\0'; at = g_utf8_next_char (at)) {
    gunichar c = g_utf8_get_char (at);
    depth += c == '(' || c == '[';
    if (strictness == AS_ID && (g_unichar_isspace (c) || c == '-'))
      c = '_';
    if (counts (c, strictness) && (depth == 0 || strictness != BARE))
      g_string_append_unichar (simple, c);
    depth -= depth > 0 && (c == ')' || c == ']');
  }
  return g_string_free (simple, FALSE);
}

/* ---- The map ---- */

static void
heading_free (gpointer data)
{
  DrawlTableHeading *heading = data;
  g_free (heading->heading);
  g_free (heading);
}

void
drawl_table_map_free (DrawlTableMap *map)
{
  for (guint i = 0; i < map->n_fields; i++)
    g_free (map->headings[i]);
  g_free (map->headings);
  g_free (map->columns);
  g_ptr_array_unref (map->recognised);
  g_ptr_array_unref (map->ignored);
  g_free (map);
}

typedef struct {
  const DrawlCsvRow *row;
  const char *fields; /* the structs */
  guint n_fields;
  gsize field_bytes;
  GHashTable *ids;   /* simplified → field + 1 */
  GHashTable *words; /* the same */
  guint *field_of;   /* by column: its field, G_MAXUINT without */
} Matching;

static const DrawlTableField *
field_at (const Matching *matching, guint field)
{
  return (gconstpointer)(matching->fields + field * matching->field_bytes);
}

static void
learn (GHashTable *known, const char *word, Strictness strictness, guint field)
{
  char *simple = simplify (word, strictness);

  if (g_hash_table_contains (known, simple))
    g_free (simple);
  else
    g_hash_table_insert (known, simple, GUINT_TO_POINTER (field + 1));
}

static void
learn_words (GHashTable *known, const char *words, guint field)
{
  g_auto (GStrv) list = g_strsplit (words, "|", -1);

  for (guint i = 0; list[i] != NULL; i++)
    learn (known, list[i], WITH_BRACKETS, field);
}

/* Words are known in English and in the language of the screen. */
static void
learn_all (Matching *matching)
{
  matching->ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  matching->words = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  for (guint field = 0; field < matching->n_fields; field++) {
    learn (matching->ids, field_at (matching, field)->id, AS_ID, field);
    learn_words (matching->words, field_at (matching, field)->words, field);
  }
  for (guint field = 0; field < matching->n_fields; field++)
    learn_words (matching->words, _ (field_at (matching, field)->words), field);
}

static gboolean
is_taken (const Matching *matching, guint field)
{
  for (guint column = 0; column < matching->row->fields->len; column++)
    if (matching->field_of[column] == field)
      return TRUE;
  return FALSE;
}

static void
match_column (const Matching *matching, guint column, Strictness strictness)
{
  GHashTable *known = strictness == AS_ID ? matching->ids : matching->words;
  g_autofree char *simple = simplify (drawl_csv_field (matching->row, column), strictness);
  guint found = GPOINTER_TO_UINT (g_hash_table_lookup (known, simple));

  if (found > 0 && matching->field_of[column] == G_MAXUINT && !is_taken (matching, found - 1))
    matching->field_of[column] = found - 1;
}

static void
match_all (Matching *matching)
{
  learn_all (matching);
  for (guint column = 0; column < matching->row->fields->len; column++)
    matching->field_of[column] = G_MAXUINT;
  for (Strictness strictness = AS_ID; strictness < N_STRICTNESSES; strictness++)
    for (guint column = 0; column < matching->row->fields->len; column++)
      match_column (matching, column, strictness);
  g_hash_table_unref (matching->ids);
  g_hash_table_unref (matching->words);
}

static void
take_columns (DrawlTableMap *map, const Matching *matching)
{
  for (guint column = 0; column < matching->row->fields->len; column++) {
    g_autofree char *heading = g_strstrip (g_strdup (drawl_csv_field (matching->row, column)));
    guint field = matching->field_of[column];
    if (field == G_MAXUINT) {
      if (heading[0] != '\0')
        g_ptr_array_add (map->ignored, g_steal_pointer (&heading));
      continue;
    }
    DrawlTableHeading *recognised = g_new0 (DrawlTableHeading, 1);
    recognised->heading = g_strdup (heading);
    recognised->field = field_at (matching, field)->id;
    g_ptr_array_add (map->recognised, recognised);
    map->columns[field] = column;
    map->headings[field] = g_steal_pointer (&heading);
  }
}

/* A row with its first field, or with known words and no number, is one of headings: a word such as
 * "camera" may stand among numbers as well. */
static gboolean
is_headings (const Matching *matching)
{
  gboolean known = FALSE, number = FALSE;

  for (guint column = 0; column < matching->row->fields->len; column++) {
    if (matching->field_of[column] == 0)
      return TRUE;
    known |= matching->field_of[column] != G_MAXUINT;
    number |= drawl_table_number_is (drawl_csv_field (matching->row, column));
  }
  return known && !number;
}

/* Without headings, the columns are the fields in their order. */
static void
take_fields (DrawlTableMap *map, const Matching *matching)
{
  for (guint field = 0; field < map->n_fields; field++) {
    map->columns[field] = field;
    map->headings[field] = g_strdup (field_at (matching, field)->id);
  }
}

static DrawlTableMap *
map_make (guint n_fields)
{
  DrawlTableMap *map = g_new0 (DrawlTableMap, 1);

  map->recognised = g_ptr_array_new_with_free_func (heading_free);
  map->ignored = g_ptr_array_new_with_free_func (g_free);
  map->n_fields = n_fields;
  map->columns = g_new (guint, n_fields);
  map->headings = g_new0 (char *, n_fields);
  for (guint field = 0; field < n_fields; field++)
    map->columns[field] = G_MAXUINT;
  return map;
}

DrawlTableMap *
drawl_table_map_new (const DrawlCsvRow *first, const DrawlTableField *fields, guint n_fields,
                     gsize field_bytes)
{
  guint n_columns = first != NULL ? first->fields->len : 0;
  g_autofree guint *field_of = g_new (guint, n_columns + 1);
  DrawlTableMap *map = map_make (n_fields);
  Matching matching = {.row = first,
                       .fields = (gconstpointer)fields,
                       .n_fields = n_fields,
                       .field_bytes = field_bytes,
                       .field_of = field_of};

  if (first != NULL) {
    match_all (&matching);
    map->has_headings = is_headings (&matching);
  }
  if (map->has_headings)
    take_columns (map, &matching);
  if (!map->has_headings)
    take_fields (map, &matching);
  map->n_columns = map->has_headings ? n_columns : n_fields;
  return map;
}

/* ---- Rows ---- */

gboolean
drawl_table_map_has (const DrawlTableMap *map, guint field)
{
  return map->columns[field] != G_MAXUINT;
}

char *
drawl_table_map_cell (const DrawlTableMap *map, const DrawlCsvRow *row, guint field)
{
  return drawl_table_map_has (map, field) ? drawl_csv_field_stripped (row, map->columns[field])
                                          : g_strdup ("");
}

gboolean
drawl_table_map_check_width (const DrawlTableMap *map, const DrawlCsvRow *row, GError **error)
{
  for (guint column = map->n_columns; column < row->fields->len; column++) {
    if (*drawl_csv_field (row, column) == '\0')
      continue;
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE,
                 _ ("the row goes on after its %u columns; text with a delimiter in it is "
                    "expected in quotes"),
                 map->n_columns);
    return FALSE;
  }
  return TRUE;
}
