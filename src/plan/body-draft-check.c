/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What is wrong with a draft, and where: first each cell, then each row, then the limits against
 * the rest, and at last the whole, by the reader of profiles itself. Invariant: there is a body
 * just when there is no mistake. */

#include "plan/body-draft-private.h"

#include <string.h>

#include "core/error.h"
#include "core/text.h"
#include "plan/body-file.h"
#include "plan/body-reader.h"

static const char *
cell (const DrawlDraftRow *row, const char *key)
{
  return row->texts[drawl_draft_column (row->table, key)];
}

/* The first mistake stays. */
static void
blame (DrawlDraftRow *row, guint column, const char *message)
{
  if (row->mistakes[column] == NULL)
    row->mistakes[column] = g_strdup (message);
}

static void
blame_row (DrawlDraftRow *row, const char *message)
{
  blame (row, drawl_draft_table_info (row->table)->n_columns, message);
}

static void
forget (DrawlBodyDraft *draft)
{
  g_clear_pointer (&draft->mistake, g_free);
  g_clear_pointer (&draft->body, drawl_body_unref);
  g_clear_pointer (&draft->but_limits, drawl_body_unref);
  for (guint table = 0; table < DRAWL_N_DRAFT_TABLES; table++) {
    g_clear_pointer (&draft->table_mistakes[table], g_free);
    for (guint i = 0; i < draft->tables[table]->len; i++) {
      DrawlDraftRow *row = draft->tables[table]->pdata[i];
      for (guint column = 0; column <= drawl_draft_table_info (table)->n_columns; column++)
        g_clear_pointer (&row->mistakes[column], g_free);
    }
  }
}

/* ---- Cells ---- */

static void
check_cell (DrawlBodyDraft *draft, DrawlDraftRow *row, guint i)
{
  const DrawlDraftColumn *column = drawl_draft_row_column (row, i);
  const char *text = drawl_body_draft_get (draft, row, i);
  gboolean empty = column->kind == DRAWL_DRAFT_ROWS ? row->links[i]->len == 0 : *text == '\0';
  g_autoptr (GError) error = NULL;

  row->missing[i] = empty && column->required;
  if (row->missing[i])
    blame (row, i, _ ("this is needed"));
  if (empty || column->kind == DRAWL_DRAFT_ROWS)
    return;
  g_autoptr (JsonNode) node = drawl_draft_cell_read (column, text, &error);
  if (node == NULL)
    blame (row, i, error->message);
}

static void
check_cells (DrawlBodyDraft *draft, DrawlDraftRow *row)
{
  for (guint i = 0; i < drawl_draft_table_info (row->table)->n_columns; i++) {
    row->missing[i] = FALSE;
    if (drawl_body_draft_has_cell (draft, row, i))
      check_cell (draft, row, i);
  }
}

/* ---- Rows ---- */

static gboolean
row_is_good (const DrawlDraftRow *row)
{
  for (guint i = 0; i <= drawl_draft_table_info (row->table)->n_columns; i++)
    if (row->mistakes[i] != NULL)
      return FALSE;
  return TRUE;
}

static void
check_ids (DrawlBodyDraft *draft, DrawlDraftTable table)
{
  const DrawlDraftTableInfo *info = drawl_draft_table_info (table);
  g_autoptr (GHashTable) ids = g_hash_table_new (g_str_hash, g_str_equal);

  if (info->columns[1].kind != DRAWL_DRAFT_ID)
    return;
  for (guint i = 0; i < draft->tables[table]->len; i++) {
    DrawlDraftRow *row = draft->tables[table]->pdata[i];
    if (*row->texts[1] != '\0' && !g_hash_table_add (ids, row->texts[1]))
      blame (row, 1, _ ("another row has this id"));
  }
}

/* The message of the reader without the place, which is where it is shown. */
static char *
without_place (const char *message, const char *key)
{
  g_autofree char *row = g_strdup_printf (_ ("%s: “%s”, row %u"), "", key, 1);
  const char *rest = g_str_has_prefix (message, row) ? message + strlen (row) : message;

  while (*rest == ':' || *rest == ' ')
    rest++;
  return g_strdup (rest);
}

/* What the reader says of a row for itself. */
static void
check_alone (DrawlBodyDraft *draft, DrawlDraftRow *row)
{
  g_autoptr (JsonObject) profile = drawl_draft_row_alone (draft, row);
  g_autoptr (GError) error = NULL;
  g_autoptr (DrawlBody) body = drawl_body_from_json_but_limits (profile, "", &error);

  if (body != NULL)
    return;
  g_autofree char *message =
      without_place (error->message, drawl_draft_table_info (row->table)->key);
  blame_row (row, message);
}

static void
check_card (DrawlDraftRow *row)
{
  if (*cell (row, "class") == '\0' && *cell (row, "write_mb_s") == '\0')
    blame (row, drawl_draft_column (row->table, "write_mb_s"),
           _ ("a class or a speed is needed, to know what the card can take"));
}

static void
check_buffer (DrawlBodyDraft *draft)
{
  DrawlDraftRow *row = draft->tables[DRAWL_DRAFT_ABOUT]->pdata[0];

  if (drawl_body_draft_get_kind (draft) == DRAWL_BODY_DIGITAL &&
      *cell (row, "buffer.bytes") == '\0' &&
      (*cell (row, "buffer.pre_percent") != '\0' || *cell (row, "buffer.write_mb_s") != '\0'))
    blame (row, drawl_draft_column (row->table, "buffer.bytes"),
           _ ("its size is needed, or nothing below"));
}

static gboolean
is_read_alone (DrawlDraftTable table)
{
  return table == DRAWL_DRAFT_SIZES || table == DRAWL_DRAFT_CODECS || table == DRAWL_DRAFT_CARDS ||
         table == DRAWL_DRAFT_MAGAZINES;
}

static void
check_table (DrawlBodyDraft *draft, DrawlDraftTable table)
{
  const GPtrArray *rows = draft->tables[table];

  if (!drawl_body_draft_has_table (draft, table))
    return;
  if (rows->len == 0 && drawl_draft_table_info (table)->required)
    draft->table_mistakes[table] = g_strdup (_ ("at least one row is needed"));
  for (guint i = 0; i < rows->len; i++) {
    check_cells (draft, rows->pdata[i]);
    if (table == DRAWL_DRAFT_CARDS)
      check_card (rows->pdata[i]);
    if (is_read_alone (table) && row_is_good (rows->pdata[i]))
      check_alone (draft, rows->pdata[i]);
  }
  check_ids (draft, table);
}

/* ---- Limits ---- */

/* What the rows said so far of a size, codec, licences and class: a text → DrawlBodyLimit. */
static void
check_promise (GHashTable *promises, DrawlDraftRow *row, const DrawlBodyLimit *limit)
{
  g_autofree char *key =
      g_strdup_printf ("%u %u %" G_GUINT64_FORMAT " %" G_GINT64_FORMAT, limit->size, limit->codec,
                       limit->licences, limit->card_bytes_s);
  const DrawlBodyLimit *former = g_hash_table_lookup (promises, key);
  char rates[2][DRAWL_RATIONAL_TEXT_SIZE];

  if (former == NULL) {
    g_hash_table_insert (promises, g_steal_pointer (&key), g_memdup2 (limit, sizeof *limit));
    return;
  }
  if (drawl_rational_equal (former->lowest, limit->lowest) &&
      drawl_rational_equal (former->highest, limit->highest))
    return;
  g_autofree char *message = g_strdup_printf (
      _ ("a row above says %s to %s for the same size and codec, with the same licences and cards"),
      drawl_rate_text (former->lowest, rates[0]), drawl_rate_text (former->highest, rates[1]));
  blame_row (row, message);
}

/* A row of one size and codec against the body; each kind of contradiction has a cell to blame. */
static void
check_limit (DrawlBodyDraft *draft, GHashTable *promises, DrawlDraftRow *row,
             const DrawlBodyLimit *limit)
{
  const DrawlBody *body = draft->but_limits;
  DrawlBodyLimit bare = *limit;
  g_autoptr (GError) rates = NULL;
  g_autoptr (GError) class = NULL;
  g_autoptr (GError) codec = NULL;

  bare.card_class = NULL;
  if (!drawl_body_check_limit (body, &bare, &rates))
    blame (row, drawl_draft_column (row->table, "highest_rate"), rates->message);
  else if (!drawl_body_check_limit (body, limit, &class))
    blame (row, drawl_draft_column (row->table, "card_classes"), class->message);
  if (!drawl_body_check_codec (body, limit, &codec))
    blame (row, drawl_draft_column (row->table, "codecs"), codec->message);
  check_promise (promises, row, limit);
}

static guint
index_of (DrawlBodyDraft *draft, DrawlDraftRow *target)
{
  guint index = 0;

  g_ptr_array_find (draft->tables[target->table], target, &index);
  return index;
}

/* What the slowest of its classes guarantees, as the reader takes it. */
static void
fill_class (const DrawlDraftRow *row, DrawlBodyLimit *limit)
{
  g_auto (GStrv) ids = g_strsplit (cell (row, "card_classes"), " ", -1);

  for (guint i = 0; ids[i] != NULL; i++) {
    const DrawlCardClass *found = drawl_card_class_find (ids[i]);
    if (found != NULL && (limit->card_class == NULL || found->bytes_s < limit->card_bytes_s)) {
      limit->card_class = found;
      limit->card_bytes_s = found->bytes_s;
    }
  }
}

static void
check_limit_row (DrawlBodyDraft *draft, GHashTable *promises, DrawlDraftRow *row)
{
  const GPtrArray *sizes = row->links[drawl_draft_column (row->table, "sizes")];
  const GPtrArray *codecs = row->links[drawl_draft_column (row->table, "codecs")];
  const GPtrArray *licences = row->links[drawl_draft_column (row->table, "licences")];
  gboolean film = draft->but_limits->kind == DRAWL_BODY_FILM;
  DrawlBodyLimit limit = {.codec = DRAWL_BODY_NO_CODEC};

  drawl_rate_parse (cell (row, "lowest_rate"), &limit.lowest, NULL);
  drawl_rate_parse (cell (row, "highest_rate"), &limit.highest, NULL);
  for (guint i = 0; i < licences->len; i++)
    limit.licences |= DRAWL_TIER_BIT (index_of (draft, licences->pdata[i]));
  if (!film)
    fill_class (row, &limit);
  for (guint i = 0; i < sizes->len; i++) {
    limit.size = index_of (draft, sizes->pdata[i]);
    if (film)
      check_limit (draft, promises, row, &limit);
    for (guint k = 0; k < codecs->len && !film; k++) {
      limit.codec = index_of (draft, codecs->pdata[k]);
      check_limit (draft, promises, row, &limit);
    }
  }
}

static void
check_limits (DrawlBodyDraft *draft)
{
  const GPtrArray *rows = draft->tables[DRAWL_DRAFT_LIMITS];
  g_autoptr (GHashTable) promises = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);

  for (guint i = 0; i < rows->len; i++)
    if (row_is_good (rows->pdata[i]))
      check_limit_row (draft, promises, rows->pdata[i]);
}

/* ---- All ---- */

static guint
count (DrawlBodyDraft *draft, DrawlDraftTable table)
{
  guint n = draft->table_mistakes[table] != NULL;

  for (guint i = 0; i < draft->tables[table]->len; i++) {
    const DrawlDraftRow *row = draft->tables[table]->pdata[i];
    for (guint column = 0; column <= drawl_draft_table_info (table)->n_columns; column++)
      n += row->mistakes[column] != NULL;
  }
  return drawl_body_draft_has_table (draft, table) ? n : 0;
}

static gboolean
is_good (DrawlBodyDraft *draft, gboolean limits)
{
  for (guint table = 0; table < DRAWL_N_DRAFT_TABLES; table++)
    if ((limits || table != DRAWL_DRAFT_LIMITS) && count (draft, table) > 0)
      return FALSE;
  return TRUE;
}

/* A mistake that no place could be found for is the profile's. */
static DrawlBody *
read_whole (DrawlBodyDraft *draft, gboolean limits)
{
  g_autoptr (JsonObject) profile = drawl_body_draft_to_json (draft, limits);
  g_autoptr (GError) error = NULL;
  const char *name = cell (draft->tables[DRAWL_DRAFT_ABOUT]->pdata[0], "name");
  DrawlBody *body = limits ? drawl_body_from_json (profile, name, &error)
                           : drawl_body_from_json_but_limits (profile, name, &error);

  if (body == NULL && draft->mistake == NULL)
    draft->mistake = g_strdup (error->message);
  return body;
}

void
drawl_body_draft_check (DrawlBodyDraft *draft)
{
  if (draft->checked)
    return;
  draft->checked = TRUE;
  forget (draft);
  for (guint table = 0; table < DRAWL_N_DRAFT_TABLES; table++)
    check_table (draft, table);
  check_buffer (draft);
  if (!is_good (draft, FALSE))
    return;
  draft->but_limits = read_whole (draft, FALSE);
  if (draft->but_limits == NULL)
    return;
  check_limits (draft);
  if (is_good (draft, TRUE))
    draft->body = read_whole (draft, TRUE);
}

const char *
drawl_body_draft_cell_mistake (DrawlBodyDraft *draft, DrawlDraftRow *row, guint column)
{
  drawl_body_draft_check (draft);
  return row->mistakes[column];
}

gboolean
drawl_body_draft_cell_is_missing (DrawlBodyDraft *draft, DrawlDraftRow *row, guint column)
{
  drawl_body_draft_check (draft);
  return row->missing[column];
}

const char *
drawl_body_draft_row_mistake (DrawlBodyDraft *draft, DrawlDraftRow *row)
{
  return drawl_body_draft_cell_mistake (draft, row, drawl_draft_table_info (row->table)->n_columns);
}

const char *
drawl_body_draft_table_mistake (DrawlBodyDraft *draft, DrawlDraftTable table)
{
  drawl_body_draft_check (draft);
  return draft->table_mistakes[table];
}

const char *
drawl_body_draft_mistake (DrawlBodyDraft *draft)
{
  drawl_body_draft_check (draft);
  return draft->mistake;
}

guint
drawl_body_draft_n_mistakes (DrawlBodyDraft *draft, DrawlDraftTable table)
{
  drawl_body_draft_check (draft);
  return count (draft, table);
}

DrawlBody *
drawl_body_draft_get_body (DrawlBodyDraft *draft)
{
  drawl_body_draft_check (draft);
  return draft->body;
}

DrawlBody *
drawl_body_draft_get_body_but_limits (DrawlBodyDraft *draft)
{
  drawl_body_draft_check (draft);
  return draft->but_limits;
}
