/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What a journal says. The first record tells whose the journal is; each one after it either gives
 * what is new in the plan against the record before, or announces a save. A list that is new says
 * for each stretch of it where in the former list it stood, [from, count], or gives the object
 * itself. Invariant: the state is that of the last record that could be taken whole. */

#include "plan/journal-state.h"

#include <string.h>

#include "core/text.h"
#include "plan/error.h"
#include "plan/journal-frame.h"
#include "plan/json-file.h"
#include "plan/json-walk.h"
#include "plan/plan.h"

/* A journal is begun anew long before it has this many records. */
#define RECORDS_MAX 20000
#define INDEX_DIGITS_MAX 7

void
drawl_journal_state_free (DrawlJournalState *state)
{
  if (state == NULL)
    return;
  g_free (state->uri);
  g_free (state->etag);
  g_free (state->head);
  g_clear_pointer (&state->bodies, g_ptr_array_unref);
  g_clear_pointer (&state->shots, g_ptr_array_unref);
  g_free (state->saving_uri);
  g_free (state->saving_digest);
  g_free (state->problem);
  g_free (state);
}

static GPtrArray *
pieces_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify)g_ref_string_release);
}

/* ---- Lists ---- */

static gboolean
read_index (DrawlJsonSpan span, guint *index)
{
  *index = 0;
  for (gsize i = 0; i < span.length; i++) {
    if (i == INDEX_DIGITS_MAX || !g_ascii_isdigit (span.at[i]))
      return FALSE;
    *index = *index * 10 + (guint)(span.at[i] - '0');
  }
  return span.length > 0;
}

/* [from, count]: that many pieces of the former list. */
static gboolean
take_stretch (GPtrArray *list, const GPtrArray *former, const char *stretch, guint most)
{
  DrawlJsonWalk walk = drawl_json_walk (stretch);
  DrawlJsonSpan value;
  guint from, count;

  if (!drawl_json_walk_element (&walk, &value) || !read_index (value, &from) ||
      !drawl_json_walk_element (&walk, &value) || !read_index (value, &count) ||
      drawl_json_walk_element (&walk, &value))
    return FALSE;
  if (from > former->len || count > former->len - from || count > most - list->len)
    return FALSE;
  for (guint i = from; i < from + count; i++)
    g_ptr_array_add (list, g_ref_string_acquire (former->pdata[i]));
  return TRUE;
}

/* The list at @text, made of what it gives and of @former; NULL when that cannot be. */
static GPtrArray *
take_list (const GPtrArray *former, DrawlJsonSpan text, guint most)
{
  g_autoptr (GPtrArray) list = pieces_new ();
  DrawlJsonWalk walk = drawl_json_walk (text.at);
  DrawlJsonSpan value;

  if (!drawl_json_span_is_list (text))
    return NULL;
  while (drawl_json_walk_element (&walk, &value)) {
    if (*value.at == '{' && list->len < most)
      g_ptr_array_add (list, g_ref_string_new_len (value.at, (gssize)value.length));
    else if (*value.at != '[' || !take_stretch (list, former, value.at, most))
      return NULL;
  }
  return g_steal_pointer (&list);
}

/* ---- Records ---- */

/* The members of one record, none of which must be there. */
typedef struct {
  char *file;
  char *etag;
  char *saving;
  char *plan;
  gint64 time_us;
  gint64 edits;
  DrawlJsonSpan bodies;
  DrawlJsonSpan shots;
} Record;

static void
record_clear (Record *record)
{
  g_free (record->file);
  g_free (record->etag);
  g_free (record->saving);
  g_free (record->plan);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Record, record_clear)

static gint64
whole_number (DrawlJsonSpan value)
{
  g_autofree char *digits = drawl_json_span_string (value);
  gint64 number = 0;

  if (digits == NULL || !g_ascii_string_to_signed (digits, 10, 0, G_MAXINT64, &number, NULL))
    return 0;
  return number;
}

static void
take_member (Record *record, const char *key, DrawlJsonSpan value)
{
  const struct {
    const char *key;
    char **text;
    gint64 *number;
    DrawlJsonSpan *span;
  } rows[] = {
      {"file", &record->file},
      {"etag", &record->etag},
      {"saving", &record->saving},
      {"plan", &record->plan},
      {"time_us", NULL, &record->time_us},
      {"edits", NULL, &record->edits},
      {"bodies", NULL, NULL, &record->bodies},
      {"shots", NULL, NULL, &record->shots},
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    if (!g_str_equal (rows[i].key, key))
      continue;
    if (rows[i].text != NULL) {
      g_free (*rows[i].text);
      *rows[i].text = drawl_json_span_string (value);
    } else if (rows[i].number != NULL)
      *rows[i].number = whole_number (value);
    else
      *rows[i].span = value;
  }
}

/* @text must be kept as long as @record. */
static gboolean
read_record (const char *text, gsize length, Record *record)
{
  DrawlJsonWalk walk;
  DrawlJsonSpan key, value;

  if (!drawl_json_guard (&text, &length, "", NULL))
    return FALSE;
  walk = drawl_json_walk (drawl_json_span (text).at);
  while (drawl_json_walk_member (&walk, &key, &value)) {
    g_autofree char *name = drawl_json_span_string (key);
    take_member (record, name, value);
  }
  return TRUE;
}

/* All of it or nothing. */
static gboolean
take_plan (DrawlJournalState *state, Record *record)
{
  g_autoptr (GPtrArray) bodies = NULL, shots = NULL;

  if (record->plan == NULL && state->head == NULL)
    return FALSE;
  if (record->bodies.at != NULL &&
      (bodies = take_list (state->bodies, record->bodies, DRAWL_PLAN_BODIES_MAX)) == NULL)
    return FALSE;
  if (record->shots.at != NULL &&
      (shots = take_list (state->shots, record->shots, DRAWL_PLAN_SHOTS_MAX)) == NULL)
    return FALSE;

  if (record->plan != NULL) {
    g_free (state->head);
    state->head = g_steal_pointer (&record->plan);
  }
  if (bodies != NULL) {
    g_ptr_array_unref (state->bodies);
    state->bodies = g_steal_pointer (&bodies);
  }
  if (shots != NULL) {
    g_ptr_array_unref (state->shots);
    state->shots = g_steal_pointer (&shots);
  }
  state->edited_us = record->time_us;
  state->edits = record->edits;
  return TRUE;
}

static gboolean
take_record (DrawlJournalState *state, guint number, const char *text, gsize length)
{
  g_autofree char *copy = g_strndup (text, length);
  g_auto (Record) record = {0};

  if (!read_record (copy, length, &record))
    return FALSE;
  if (number == 0) {
    state->uri = g_steal_pointer (&record.file);
    state->etag = g_steal_pointer (&record.etag);
    return TRUE;
  }
  /* A save is only at the end if nothing was edited after it. */
  g_clear_pointer (&state->saving_uri, g_free);
  g_clear_pointer (&state->saving_digest, g_free);
  if (record.saving == NULL)
    return take_plan (state, &record);
  state->saving_uri = g_steal_pointer (&record.file);
  state->saving_digest = g_steal_pointer (&record.saving);
  return TRUE;
}

/* ---- The whole ---- */

static void
read_records (DrawlJournalState *state, const char *at, const char *end)
{
  DrawlJournalFrame frame = DRAWL_JOURNAL_FRAME_WHOLE;
  DrawlJournalSeal seal = {{0}};
  const char *text;
  gsize length;
  guint number = 0;

  while (state->problem == NULL && frame == DRAWL_JOURNAL_FRAME_WHOLE) {
    frame = drawl_journal_frame_next (&at, end, &seal, &text, &length);
    if (frame == DRAWL_JOURNAL_FRAME_DAMAGED ||
        (frame == DRAWL_JOURNAL_FRAME_WHOLE &&
         (number == RECORDS_MAX || !take_record (state, number, text, length))))
      state->problem = g_strdup (
          state->head != NULL ? _ ("the journal is damaged; the last edits may be missing")
                              : _ ("the journal is damaged; nothing of the plan can be read"));
    number++;
  }
  if (state->problem == NULL && state->head == NULL)
    state->problem = g_strdup (_ ("the journal ends before the first edit"));
}

DrawlJournalState *
drawl_journal_state_read (const char *data, gsize length)
{
  DrawlJournalState *state = g_new0 (DrawlJournalState, 1);
  gsize magic = strlen (DRAWL_JOURNAL_MAGIC), word = strlen (DRAWL_JOURNAL_MAGIC_WORD);

  state->bodies = pieces_new ();
  state->shots = pieces_new ();
  if (length >= magic && memcmp (data, DRAWL_JOURNAL_MAGIC, magic) == 0)
    read_records (state, data + magic, data + length);
  else if (length > word && memcmp (data, DRAWL_JOURNAL_MAGIC_WORD, word) == 0)
    state->problem = g_strdup (_ ("the journal was written by another version of Drawl"));
  else
    state->problem = g_strdup (_ ("this is not a journal"));
  return state;
}

/* ---- What it makes ---- */

static void
append_list (GString *text, const char *key, const GPtrArray *pieces)
{
  g_string_append_printf (text, ", \"%s\": [", key);
  for (guint i = 0; i < pieces->len; i++) {
    g_string_append (text, i > 0 ? ",\n" : "\n");
    g_string_append_len (text, pieces->pdata[i], (gssize)g_ref_string_length (pieces->pdata[i]));
  }
  g_string_append_c (text, ']');
}

static guint64
bytes_of (const GPtrArray *pieces)
{
  guint64 bytes = 0;

  for (guint i = 0; i < pieces->len; i++)
    bytes += g_ref_string_length (pieces->pdata[i]);
  return bytes;
}

char *
drawl_journal_state_text (const DrawlJournalState *state, gsize *length, GError **error)
{
  const char *close = state->head != NULL ? strrchr (state->head, '}') : NULL;

  if (close == NULL) {
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_FORMAT, "%s",
                 state->problem != NULL ? state->problem : _ ("there is no plan in the journal"));
    return NULL;
  }
  /* A stretch may repeat what is long. */
  if (bytes_of (state->bodies) + bytes_of (state->shots) > DRAWL_JSON_MAX_BYTES) {
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_TOO_LARGE,
                 _ ("the plan in the journal is larger than %d bytes"), DRAWL_JSON_MAX_BYTES);
    return NULL;
  }
  GString *text = g_string_new_len (state->head, close - state->head);
  append_list (text, "bodies", state->bodies);
  append_list (text, "shots", state->shots);
  g_string_append_c (text, '}');
  *length = text->len;
  return g_string_free (text, FALSE);
}

char *
drawl_journal_state_title (const DrawlJournalState *state)
{
  g_autoptr (JsonObject) head = NULL;
  const char *title = "";

  if (state->head != NULL)
    head = drawl_json_parse (state->head, strlen (state->head), "", NULL);
  if (head != NULL)
    drawl_json_get_string (head, "title", "", &title, NULL);
  return g_strdup (title);
}
