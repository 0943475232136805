/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A table of shots as a proposal to a plan. Each row is read for itself, and against the rows
 * before it (slates, bodies to hire); a row is good as a whole or not at all. */

#include "plan/shot-table.h"

#include "core/error.h"
#include "core/text.h"
#include "plan/csv.h"
#include "plan/error.h"
#include "plan/plan-private.h"
#include "plan/sentence.h"
#include "plan/shot-column.h"
#include "plan/shot-hire.h"
#include "plan/shot-table-shape.h"
#include "plan/table-cell.h"
#include "plan/table-number.h"

typedef struct {
  DrawlPlan *plan;
  DrawlShotTable *table;
  DrawlTableMap *map;
  gboolean commas; /* numbers have decimal commas */
  DrawlShotHires hires;
  GHashTable *slates; /* slate, owned by its row → the row */
} Reader;

/* ---- The table ---- */

static void
row_free (gpointer data)
{
  DrawlShotTableRow *row = data;

  drawl_shot_fields_free (row->fields);
  g_free (row->heading);
  g_free (row->reason);
  g_free (row);
}

static DrawlShotTable *
table_new (const DrawlCsv *csv, const DrawlTableMap *map)
{
  DrawlShotTable *table = g_new0 (DrawlShotTable, 1);

  table->has_headings = map->has_headings;
  table->latin_1 = csv->latin_1;
  table->delimiter = csv->delimiter;
  table->recognised = g_ptr_array_ref (map->recognised);
  table->ignored = g_ptr_array_ref (map->ignored);
  table->rows = g_ptr_array_new_with_free_func (row_free);
  return table;
}

void
drawl_shot_table_free (DrawlShotTable *table)
{
  g_ptr_array_unref (table->recognised);
  g_ptr_array_unref (table->ignored);
  g_ptr_array_unref (table->rows);
  g_clear_pointer (&table->hires, g_ptr_array_unref);
  g_free (table);
}

char *
drawl_shot_table_row_text (const DrawlShotTableRow *row)
{
  g_return_val_if_fail (row->reason != NULL, NULL);

  if (row->heading == NULL)
    return g_strdup (row->reason);
  g_autofree char *quote = drawl_core_quote (row->heading);
  /* Translators: heading of a column, what is wrong there. */
  return g_strdup_printf (_ ("“%s”: %s"), quote, row->reason);
}

/* ---- Rows ---- */

/* Rejects a row for the reason in @error, which is taken; @column is to blame, or G_MAXUINT. */
static void
reject (const Reader *reader, DrawlShotTableRow *row, guint column, GError *error)
{
  if (column != G_MAXUINT)
    row->heading = g_strdup (reader->map->headings[column]);
  row->reason = g_strdup (error->message);
  g_error_free (error);
}

static gboolean
read_cell (const Reader *reader, const DrawlShotColumn *column, const char *cell,
           DrawlShotReading *reading, GError **error)
{
  g_autofree char *plain = NULL;

  if (column->read == NULL || cell[0] == '\0')
    return TRUE;
  if (reader->commas && column->number && (plain = drawl_table_number_plain (cell, error)) == NULL)
    return FALSE;
  return column->read (column, plain != NULL ? plain : cell, reading, error);
}

/* The columns of a row, one by one. FALSE when one is to blame. */
static gboolean
read_cells (const Reader *reader, const DrawlCsvRow *csv_row, DrawlShotReading *reading,
            DrawlShotTableRow *row)
{
  guint n_columns;
  const DrawlShotColumn *columns = drawl_shot_columns (&n_columns);
  GError *error = NULL;

  for (guint i = 0; i < n_columns; i++) {
    g_autofree char *written = drawl_table_map_cell (reader->map, csv_row, i);
    if (read_cell (reader, &columns[i], drawl_table_cell_bare (written), reading, &error))
      continue;
    reject (reader, row, i, error);
    return FALSE;
  }
  return TRUE;
}

#define N_DRIVING 4 /* terms, from which the other two follow */

#define RATES                                                                                      \
  (DRAWL_TIMING_BIT (DRAWL_TIMING_CAPTURE) | DRAWL_TIMING_BIT (DRAWL_TIMING_PLAYBACK) |            \
   DRAWL_TIMING_BIT (DRAWL_TIMING_FACTOR))

/* Sets a term that the told terms of @among do not tell; TRUE when that was needed. */
static gboolean
assume (DrawlShotReading *reading, DrawlTimingTerm term, DrawlRational value, guint among)
{
  guint told = reading->present | DRAWL_TIMING_BIT (DRAWL_TIMING_POST_SPEED);

  if ((drawl_timing_closure (told & among) & DRAWL_TIMING_BIT (term)) != 0)
    return FALSE;
  reading->value[term] = value;
  reading->present |= DRAWL_TIMING_BIT (term);
  return TRUE;
}

/* Four of the terms in @among from which all others follow exactly as they are in @value; 0 when
 * there are none. With values of very many digits not every four will do. */
static guint
find_driving (const DrawlRational value[DRAWL_TIMING_N_TERMS], guint among)
{
  for (guint bits = 0; bits <= DRAWL_TIMING_ALL; bits++) {
    DrawlTiming timing;
    guint n = 0, n_equal = 0, n_told = 0;
    for (guint term = 0; term < DRAWL_TIMING_N_TERMS; term++) {
      n += (bits & DRAWL_TIMING_BIT (term)) != 0;
      n_told += (among & DRAWL_TIMING_BIT (term)) != 0;
    }
    if ((bits & ~among) != 0 || n != N_DRIVING ||
        !drawl_timing_solve_bare (value, bits, &timing, NULL))
      continue;
    for (guint term = 0; term < DRAWL_TIMING_N_TERMS; term++)
      n_equal += (among & DRAWL_TIMING_BIT (term)) != 0 &&
                 drawl_rational_equal (value[term], timing.value[term]);
    if (n_equal == n_told)
      return bits;
  }
  return 0;
}

/* Sets the sentence from the terms in @bits. */
static gboolean
set_blanks (DrawlShotReading *reading, guint bits, GError **error)
{
  /* What is seldom changed, and what follows from the rest, counts as edited longest ago. */
  static const DrawlTimingTerm order[DRAWL_TIMING_N_TERMS] = {
      DRAWL_TIMING_FACTOR,   DRAWL_TIMING_SCREEN, DRAWL_TIMING_POST_SPEED,
      DRAWL_TIMING_PLAYBACK, DRAWL_TIMING_ACTION, DRAWL_TIMING_CAPTURE,
  };
  DrawlBlanks *blanks = &reading->fields->blanks;
  DrawlTimingTerm given[DRAWL_TIMING_N_TERMS];
  guint n_given = 0;

  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    if ((bits & DRAWL_TIMING_BIT (order[i])) != 0)
      given[n_given++] = order[i];
  if (!drawl_blanks_set (blanks, given, n_given, reading->value, reading->held, error))
    return FALSE;
  drawl_blanks_hold (blanks, DRAWL_TIMING_POST_SPEED,
                     (reading->held & DRAWL_TIMING_BIT (DRAWL_TIMING_POST_SPEED)) != 0);
  return TRUE;
}

/* Sets it from all that is told; or, where that agrees but is too long to be worked out term after
 * term, from those that can be. */
static gboolean
set_blanks_told (DrawlShotReading *reading, GError **error)
{
  DrawlBlanks *blanks = &reading->fields->blanks;
  g_autoptr (GError) reason = NULL;
  DrawlTiming timing;
  guint driving;

  if (!set_blanks (reading, reading->present, &reason)) {
    driving = g_error_matches (reason, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_OVERFLOW)
                  ? find_driving (reading->value, reading->present)
                  : 0;
    if (driving == 0 || !set_blanks (reading, driving, NULL)) {
      g_propagate_error (error, g_steal_pointer (&reason));
      return FALSE;
    }
  }
  if (drawl_blanks_timing (blanks, &timing, &reason))
    return TRUE;
  driving = find_driving (blanks->value, DRAWL_TIMING_ALL);
  if (driving != 0)
    blanks->given = driving;
  else
    g_propagate_error (error, g_steal_pointer (&reason));
  return driving != 0;
}

/* What is told of the timing must agree, and what is not told follows; where that is not enough, it
 * is as in a new shot: the plan's playback rate, real time, 1 s. */
static gboolean
settle_timing (DrawlPlan *plan, DrawlShotReading *reading, DrawlShotTableRow *row, GError **error)
{
  /* Times are often rounded: a playback rate never follows from them. */
  assume (reading, DRAWL_TIMING_PLAYBACK, plan->settings->playback, RATES);
  assume (reading, DRAWL_TIMING_CAPTURE, reading->value[DRAWL_TIMING_PLAYBACK], DRAWL_TIMING_ALL);
  row->action_assumed =
      assume (reading, DRAWL_TIMING_ACTION, drawl_rational_whole (1), DRAWL_TIMING_ALL);
  return set_blanks_told (reading, error);
}

static gboolean
check_slate (const Reader *reader, const char *slate, GError **error)
{
  const DrawlShotTableRow *former = g_hash_table_lookup (reader->slates, slate);
  g_autofree char *quote = drawl_core_quote (slate);

  if (!drawl_table_map_has (reader->map, drawl_shot_column_find ("slate")))
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE,
                 _ ("no column holds the slate; a heading such as “slate” or “shot” is expected"));
  else if (!drawl_shot_slate_check (slate, error))
    return FALSE;
  else if (former != NULL)
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_DUPLICATE,
                 _ ("line %u has the slate “%s” already"), former->line, quote);
  else if (drawl_plan_find_shot (reader->plan, slate) != NULL)
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_DUPLICATE,
                 _ ("the plan has the slate “%s” already"), quote);
  else
    return TRUE;
  return FALSE;
}

/* What a row says, taken together. @blame takes the column that is to blame. */
static gboolean
settle_row (Reader *reader, DrawlShotReading *reading, DrawlShotTableRow *row, guint *blame,
            GError **error)
{
  DrawlShotFields *fields = reading->fields;
  const char *profile = reading->profile != NULL ? reading->profile : "";
  gboolean has_body = fields->body[0] != '\0';

  *blame = drawl_shot_column_find ("slate");
  if (!check_slate (reader, fields->slate, error))
    return FALSE;
  *blame = G_MAXUINT;
  if (!settle_timing (reader->plan, reading, row, error) ||
      !drawl_shot_fields_check (fields, error))
    return FALSE;
  *blame = drawl_shot_column_find (has_body && profile[0] == '\0' ? "body" : "profile");
  return drawl_shot_hires_settle (&reader->hires, fields, profile, error);
}

static void
read_row (Reader *reader, const DrawlCsvRow *csv_row)
{
  DrawlShotTableRow *row = g_new0 (DrawlShotTableRow, 1);
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_new ("", reader->plan->settings->playback);
  DrawlShotReading reading = {.fields = fields, .held = DRAWL_SENTENCE_ASSUMED};
  guint blame = G_MAXUINT;
  GError *error = NULL;

  row->line = csv_row->line;
  g_ptr_array_add (reader->table->rows, row);
  if (!drawl_table_map_check_width (reader->map, csv_row, &error)) {
    reject (reader, row, G_MAXUINT, error);
  } else if (read_cells (reader, csv_row, &reading, row)) {
    if (settle_row (reader, &reading, row, &blame, &error)) {
      row->fields = g_steal_pointer (&fields);
      g_hash_table_insert (reader->slates, row->fields->slate, row);
      reader->table->n_good++;
    } else {
      reject (reader, row, blame, error);
    }
  }
  g_free (reading.profile);
}

static DrawlTableMap *
map_columns (const DrawlCsv *csv)
{
  guint n_columns;
  const DrawlShotColumn *columns = drawl_shot_columns (&n_columns);

  return drawl_table_map_new (csv->rows->len > 0 ? csv->rows->pdata[0] : NULL, &columns->field,
                              n_columns, sizeof *columns);
}

DrawlShotTable *
drawl_shot_table_read (DrawlPlan *plan, const char *data, gsize length, GError **error)
{
  if (!drawl_shot_table_check_kind (data, length, error))
    return NULL;
  g_autoptr (DrawlCsv) csv = drawl_csv_read (data, length, error);
  if (csv == NULL)
    return NULL;
  g_autoptr (DrawlTableMap) map = map_columns (csv);
  if (!drawl_shot_table_check_order (csv, map, error))
    return NULL;
  g_autoptr (GHashTable) slates = g_hash_table_new (g_str_hash, g_str_equal);
  Reader reader = {.plan = plan,
                   .table = table_new (csv, map),
                   .map = map,
                   .commas = drawl_shot_table_has_commas (csv, map),
                   .slates = slates};

  drawl_shot_hires_init (&reader.hires, plan);
  for (guint i = map->has_headings; i < csv->rows->len; i++)
    read_row (&reader, csv->rows->pdata[i]);
  reader.table->hires = g_ptr_array_ref (reader.hires.hires);
  drawl_shot_hires_clear (&reader.hires);
  return reader.table;
}

/* ---- Into the plan ---- */

gboolean
drawl_shot_table_insert (DrawlPlan *plan, const DrawlShotTable *table, guint position,
                         const char *label, GError **error)
{
  g_autoptr (GPtrArray) shots = g_ptr_array_new ();

  for (guint i = 0; i < table->rows->len; i++) {
    const DrawlShotTableRow *row = table->rows->pdata[i];
    if (row->fields != NULL)
      g_ptr_array_add (shots, row->fields);
  }
  return drawl_plan_insert_all (plan, position, table->hires, shots, label, error);
}
