/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A body profile while it is edited. Invariant: a reference is to a row that is in its table, so an
 * id can change, or be empty for a while, and nothing that refers to it is lost. */

#include "plan/body-draft-private.h"

#include <string.h>

enum { CHANGED, ROWS_CHANGED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (DrawlBodyDraft, drawl_body_draft, G_TYPE_OBJECT)

static guint
n_columns (DrawlDraftTable table)
{
  return drawl_draft_table_info (table)->n_columns;
}

const DrawlDraftColumn *
drawl_draft_row_column (DrawlDraftRow *row, guint column)
{
  return &drawl_draft_table_info (row->table)->columns[column];
}

/* ---- Rows ---- */

DrawlDraftRow *
drawl_draft_row_new (DrawlDraftTable table)
{
  DrawlDraftRow *row = g_new0 (DrawlDraftRow, 1);
  guint n = n_columns (table);

  row->table = table;
  row->texts = g_new0 (char *, n);
  row->loaded = g_new0 (char *, n);
  row->links = g_new0 (GPtrArray *, n);
  row->mistakes = g_new0 (char *, n + 1);
  row->missing = g_new0 (gboolean, n);
  for (guint i = 0; i < n; i++) {
    row->texts[i] = g_strdup ("");
    if (drawl_draft_row_column (row, i)->kind == DRAWL_DRAFT_ROWS)
      row->links[i] = g_ptr_array_new ();
  }
  return row;
}

static void
row_free (gpointer data)
{
  DrawlDraftRow *row = data;

  for (guint i = 0; i < n_columns (row->table); i++) {
    g_free (row->texts[i]);
    g_free (row->loaded[i]);
    g_clear_pointer (&row->links[i], g_ptr_array_unref);
    g_free (row->mistakes[i]);
  }
  g_free (row->mistakes[n_columns (row->table)]);
  g_free (row->texts);
  g_free (row->loaded);
  g_free (row->links);
  g_free (row->mistakes);
  g_free (row->missing);
  g_free (row->origin);
  g_clear_pointer (&row->json, json_object_unref);
  g_free (row);
}

DrawlDraftTable
drawl_draft_row_get_table (DrawlDraftRow *row)
{
  return row->table;
}

guint
drawl_body_draft_n_rows (DrawlBodyDraft *draft, DrawlDraftTable table)
{
  return draft->tables[table]->len;
}

DrawlDraftRow *
drawl_body_draft_get_row (DrawlBodyDraft *draft, DrawlDraftTable table, guint index)
{
  return draft->tables[table]->pdata[index];
}

static void
tell (DrawlBodyDraft *draft)
{
  draft->changed = TRUE;
  draft->checked = FALSE;
  g_signal_emit (draft, signals[CHANGED], 0);
}

static void
tell_rows (DrawlBodyDraft *draft, DrawlDraftTable table)
{
  draft->checked = FALSE;
  g_signal_emit (draft, signals[ROWS_CHANGED], 0, (guint)table);
  tell (draft);
}

static DrawlDraftRow *
append (DrawlBodyDraft *draft, DrawlDraftTable table)
{
  DrawlDraftRow *row = drawl_draft_row_new (table);

  g_ptr_array_add (draft->tables[table], row);
  return row;
}

gboolean
drawl_body_draft_has_row (DrawlBodyDraft *draft, DrawlDraftTable table, const DrawlDraftRow *row)
{
  for (guint i = 0; i < drawl_body_draft_n_rows (draft, table); i++)
    if (drawl_body_draft_get_row (draft, table, i) == row)
      return TRUE;
  return FALSE;
}

DrawlDraftRow *
drawl_body_draft_add_row (DrawlBodyDraft *draft, DrawlDraftTable table)
{
  DrawlDraftRow *row = append (draft, table);

  tell_rows (draft, table);
  return row;
}

void
drawl_body_draft_add_rows (DrawlBodyDraft *draft, DrawlDraftTable table, JsonArray *rows)
{
  for (guint i = 0; i < json_array_get_length (rows); i++) {
    DrawlDraftRow *row = append (draft, table);
    drawl_draft_row_load (draft, row, json_array_get_object_element (rows, i));
  }
  tell_rows (draft, table);
}

/* No row refers to @gone any longer. */
static void
unlink_row (DrawlBodyDraft *draft, DrawlDraftRow *gone)
{
  for (guint table = 0; table < DRAWL_N_DRAFT_TABLES; table++)
    for (guint i = 0; i < draft->tables[table]->len; i++) {
      DrawlDraftRow *row = draft->tables[table]->pdata[i];
      for (guint column = 0; column < n_columns (table); column++)
        if (row->links[column] != NULL)
          g_ptr_array_remove (row->links[column], gone);
    }
}

void
drawl_body_draft_remove_row (DrawlBodyDraft *draft, DrawlDraftRow *row)
{
  DrawlDraftTable table = row->table;

  unlink_row (draft, row);
  g_ptr_array_remove (draft->tables[table], row);
  tell_rows (draft, table);
}

void
drawl_body_draft_clear_rows (DrawlBodyDraft *draft, DrawlDraftTable table)
{
  for (guint i = 0; i < draft->tables[table]->len; i++)
    unlink_row (draft, draft->tables[table]->pdata[i]);
  g_ptr_array_set_size (draft->tables[table], 0);
  tell_rows (draft, table);
}

/* ---- Cells ---- */

static char *
join_ids (const GPtrArray *rows)
{
  GString *ids = g_string_new (NULL);

  for (guint i = 0; i < rows->len; i++) {
    DrawlDraftRow *row = rows->pdata[i];
    const char *id = row->texts[drawl_draft_column (row->table, "id")];
    g_string_append_printf (ids, "%s%s", i > 0 ? ", " : "", id);
  }
  return g_string_free (ids, FALSE);
}

const char *
drawl_body_draft_get (DrawlBodyDraft *draft, DrawlDraftRow *row, guint column)
{
  if (row->links[column] != NULL) {
    g_free (row->texts[column]);
    row->texts[column] = join_ids (row->links[column]);
  }
  return row->texts[column];
}

static gboolean
id_is_taken (DrawlBodyDraft *draft, const DrawlDraftRow *row, guint column, const char *id)
{
  const GPtrArray *rows = draft->tables[row->table];

  for (guint i = 0; i < rows->len; i++) {
    const DrawlDraftRow *other = rows->pdata[i];
    if (other != row && g_str_equal (other->texts[column], id))
      return TRUE;
  }
  return FALSE;
}

/* "4096 × 2160, Open Gate" → "4096x2160-open-gate". */
static char *
make_id (const char *name)
{
  g_autofree char *lower = g_utf8_strdown (name, -1);
  GString *id = g_string_new (NULL);
  gboolean gap = FALSE, crossed = FALSE;

  for (const char *at = lower; *at != '\0'; at = g_utf8_next_char (at)) {
    gunichar c = g_utf8_get_char (at);
    gboolean cross = c == 0x00d7;
    if (!cross && !g_unichar_isalnum (c)) {
      gap = TRUE;
      continue;
    }
    if (gap && id->len > 0 && !cross && !crossed)
      g_string_append_c (id, '-');
    g_string_append_unichar (id, cross ? 'x' : c);
    gap = FALSE;
    crossed = cross;
  }
  return g_string_free (id, FALSE);
}

static void
follow_name (DrawlBodyDraft *draft, DrawlDraftRow *row, const char *name)
{
  guint column = drawl_draft_column (row->table, "id");
  char *id = make_id (name);

  for (guint n = 2; *id != '\0' && id_is_taken (draft, row, column, id); n++) {
    g_free (id);
    g_autofree char *stem = make_id (name);
    id = g_strdup_printf ("%s-%u", stem, n);
  }
  g_free (row->texts[column]);
  row->texts[column] = id;
}

void
drawl_body_draft_set (DrawlBodyDraft *draft, DrawlDraftRow *row, guint column, const char *text)
{
  const DrawlDraftColumn *is = drawl_draft_row_column (row, column);
  g_autofree char *stripped = g_strstrip (g_strdup (text));

  if (g_str_equal (row->texts[column], stripped))
    return;
  g_free (row->texts[column]);
  row->texts[column] = g_steal_pointer (&stripped);
  if (is->kind == DRAWL_DRAFT_ID)
    row->own_id = *row->texts[column] != '\0';
  if (g_str_equal (is->key, "name") && !row->own_id)
    follow_name (draft, row, row->texts[column]);
  tell (draft);
}

gboolean
drawl_body_draft_refers (DrawlDraftRow *row, guint column, DrawlDraftRow *target)
{
  return g_ptr_array_find (row->links[column], target, NULL);
}

void
drawl_body_draft_refer (DrawlBodyDraft *draft, DrawlDraftRow *row, guint column,
                        DrawlDraftRow *target, gboolean refers)
{
  if (refers == drawl_body_draft_refers (row, column, target))
    return;
  if (refers)
    g_ptr_array_add (row->links[column], target);
  else
    g_ptr_array_remove (row->links[column], target);
  tell (draft);
}

/* ---- Kinds ---- */

DrawlBodyKind
drawl_body_draft_get_kind (DrawlBodyDraft *draft)
{
  DrawlDraftRow *row = draft->tables[DRAWL_DRAFT_ABOUT]->pdata[0];
  const char *kind = row->texts[drawl_draft_column (DRAWL_DRAFT_ABOUT, "kind")];

  return g_str_equal (kind, "film") ? DRAWL_BODY_FILM : DRAWL_BODY_DIGITAL;
}

static DrawlDraftOn
kind_bit (DrawlBodyDraft *draft)
{
  return drawl_body_draft_get_kind (draft) == DRAWL_BODY_FILM ? DRAWL_DRAFT_ON_FILM
                                                              : DRAWL_DRAFT_ON_DIGITAL;
}

gboolean
drawl_body_draft_has_table (DrawlBodyDraft *draft, DrawlDraftTable table)
{
  return (drawl_draft_table_info (table)->on & kind_bit (draft)) != 0;
}

/* A cell of a payload law: only of its own, and of its kind. */
static gboolean
own_law_has (DrawlDraftRow *row, const char *kinds)
{
  const char *law = row->texts[drawl_draft_column (row->table, "law")];
  const char *kind = row->texts[drawl_draft_column (row->table, "payload.kind")];
  g_auto (GStrv) all = g_strsplit (kinds, " ", -1);

  return *law == '\0' && g_strv_contains ((const char *const *)all, kind);
}

gboolean
drawl_body_draft_has_cell (DrawlBodyDraft *draft, DrawlDraftRow *row, guint column)
{
  const DrawlDraftColumn *is = drawl_draft_row_column (row, column);

  return drawl_body_draft_has_table (draft, row->table) && (is->on & kind_bit (draft)) != 0 &&
         (is->own_kinds == NULL || own_law_has (row, is->own_kinds));
}

gboolean
drawl_body_draft_get_changed (DrawlBodyDraft *draft)
{
  return draft->changed;
}

char *
drawl_body_draft_follow_id (DrawlBodyDraft *draft, DrawlDraftTable table, const char *id)
{
  for (guint i = 0; i < draft->tables[table]->len; i++) {
    DrawlDraftRow *row = draft->tables[table]->pdata[i];
    if (g_strcmp0 (row->origin, id) == 0)
      return g_strdup (row->texts[drawl_draft_column (table, "id")]);
  }
  return NULL;
}

/* ---- The type ---- */

static void
drawl_body_draft_finalize (GObject *object)
{
  DrawlBodyDraft *draft = DRAWL_BODY_DRAFT (object);

  for (guint table = 0; table < DRAWL_N_DRAFT_TABLES; table++) {
    g_ptr_array_unref (draft->tables[table]);
    g_free (draft->table_mistakes[table]);
  }
  g_free (draft->mistake);
  g_clear_pointer (&draft->body, drawl_body_unref);
  g_clear_pointer (&draft->but_limits, drawl_body_unref);
  G_OBJECT_CLASS (drawl_body_draft_parent_class)->finalize (object);
}

static void
drawl_body_draft_class_init (DrawlBodyDraftClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = drawl_body_draft_finalize;
  signals[CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
  signals[ROWS_CHANGED] =
      g_signal_new ("rows-changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                    NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
}

static void
drawl_body_draft_init (DrawlBodyDraft *draft)
{
  for (guint table = 0; table < DRAWL_N_DRAFT_TABLES; table++)
    draft->tables[table] = g_ptr_array_new_with_free_func (row_free);
  append (draft, DRAWL_DRAFT_ABOUT);
}

static void
set_first (DrawlBodyDraft *draft, DrawlDraftTable table, const char *key, const char *text)
{
  drawl_body_draft_set (draft, draft->tables[table]->pdata[0], drawl_draft_column (table, key),
                        text);
}

DrawlBodyDraft *
drawl_body_draft_new (void)
{
  DrawlBodyDraft *draft = g_object_new (DRAWL_TYPE_BODY_DRAFT, NULL);
  DrawlDraftRow *size = append (draft, DRAWL_DRAFT_SIZES);
  DrawlDraftRow *codec = append (draft, DRAWL_DRAFT_CODECS);
  DrawlDraftRow *limit = append (draft, DRAWL_DRAFT_LIMITS);

  set_first (draft, DRAWL_DRAFT_ABOUT, "kind", "digital");
  set_first (draft, DRAWL_DRAFT_CODECS, "payload.kind", "scaling");
  drawl_body_draft_refer (draft, limit, drawl_draft_column (DRAWL_DRAFT_LIMITS, "sizes"), size,
                          TRUE);
  drawl_body_draft_refer (draft, limit, drawl_draft_column (DRAWL_DRAFT_LIMITS, "codecs"), codec,
                          TRUE);
  draft->changed = FALSE;
  return draft;
}

/* Tables are read in their order: limits come behind what they refer to; licences refer to each
 * other, so their rows are all there before the first is filled. */
static void
load_table (DrawlBodyDraft *draft, DrawlDraftTable table, JsonObject *profile)
{
  const char *key = drawl_draft_table_info (table)->key;

  if (!json_object_has_member (profile, key))
    return;
  JsonArray *array = json_object_get_array_member (profile, key);
  gboolean has_ids = drawl_draft_table_info (table)->columns[1].kind == DRAWL_DRAFT_ID;
  for (guint i = 0; i < json_array_get_length (array); i++) {
    DrawlDraftRow *row = append (draft, table);
    JsonObject *object = json_array_get_object_element (array, i);
    if (!has_ids)
      continue;
    g_free (row->texts[1]);
    row->texts[1] = g_strdup (json_object_get_string_member (object, "id"));
  }
  for (guint i = 0; i < json_array_get_length (array); i++)
    drawl_draft_row_load (draft, draft->tables[table]->pdata[i],
                          json_array_get_object_element (array, i));
}

DrawlBodyDraft *
drawl_body_draft_new_from_body (const DrawlBody *body)
{
  DrawlBodyDraft *draft = g_object_new (DRAWL_TYPE_BODY_DRAFT, NULL);

  drawl_draft_row_load (draft, draft->tables[DRAWL_DRAFT_ABOUT]->pdata[0], body->json);
  for (guint table = DRAWL_DRAFT_SIZES; table < DRAWL_N_DRAFT_TABLES; table++)
    load_table (draft, table, body->json);
  return draft;
}
