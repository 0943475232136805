/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What is new in a plan. Shots are told apart by their stamps, so that no shot is compared: what
 * the two lists have in common at their beginnings and ends is passed over, and what lies between
 * is looked up. JSON objects are counted without locks, so what has some of them (unknown keys,
 * bodies) is made into text at once; all else is copied, and made into text by the other thread. */

#include "plan/journal-delta.h"

#include "plan/json-text.h"
#include "plan/plan-private.h"

struct _DrawlJournalBasis {
  DrawlPlanSettings *settings;
  GPtrArray *hired; /* of DrawlHiredFields */
  guint n_shots;
  guint64 *stamps;
};

/* A stretch of the former list, or one that is new: as fields, or as text already. */
typedef struct {
  guint from;
  guint count;
  DrawlShotFields *fields;
  char *text;
} Piece;

struct _DrawlJournalDelta {
  char *head;     /* NULL: as before, as are the lists */
  GArray *bodies; /* of Piece */
  GArray *shots;
};

/* ---- Basis ---- */

DrawlJournalBasis *
drawl_journal_basis_new (DrawlPlan *plan)
{
  DrawlJournalBasis *basis = g_new0 (DrawlJournalBasis, 1);
  DrawlHiredBody *hired;

  basis->settings = drawl_plan_settings_copy (plan->settings);
  basis->hired = g_ptr_array_new_with_free_func ((GDestroyNotify)drawl_hired_fields_free);
  for (guint i = 0; (hired = drawl_plan_body_at (plan, i)) != NULL; i++)
    g_ptr_array_add (basis->hired, drawl_hired_fields_copy (drawl_hired_body_get_fields (hired)));
  basis->n_shots = plan->shots->len;
  basis->stamps = g_new (guint64, basis->n_shots);
  for (guint i = 0; i < basis->n_shots; i++)
    basis->stamps[i] = drawl_shot_get_stamp (plan->shots->pdata[i]);
  return basis;
}

void
drawl_journal_basis_free (DrawlJournalBasis *basis)
{
  if (basis == NULL)
    return;
  drawl_plan_settings_free (basis->settings);
  g_ptr_array_unref (basis->hired);
  g_free (basis->stamps);
  g_free (basis);
}

/* ---- Pieces ---- */

static void
piece_clear (Piece *piece)
{
  drawl_shot_fields_free (piece->fields);
  g_free (piece->text);
}

static GArray *
pieces_new (void)
{
  GArray *pieces = g_array_new (FALSE, FALSE, sizeof (Piece));

  g_array_set_clear_func (pieces, (GDestroyNotify)piece_clear);
  return pieces;
}

/* A stretch that goes on where the last one ended makes that one longer. */
static void
add_stretch (GArray *pieces, guint from, guint count)
{
  Piece piece = {.from = from, .count = count};
  Piece *last = pieces->len > 0 ? &g_array_index (pieces, Piece, pieces->len - 1) : NULL;

  if (count == 0)
    return;
  if (last != NULL && last->count > 0 && last->from + last->count == from)
    last->count += count;
  else
    g_array_append_val (pieces, piece);
}

/* Takes @object over. */
static char *
object_text (JsonObject *object)
{
  g_autoptr (JsonNode) node = json_node_new (JSON_NODE_OBJECT);
  GString *text = g_string_new (NULL);

  json_node_take_object (node, object);
  drawl_json_append (text, node, 0);
  return g_string_free (text, FALSE);
}

static void
add_shot (GArray *pieces, const DrawlShotFields *fields)
{
  Piece piece = {0};

  if (fields->extra != NULL)
    piece.text = object_text (drawl_shot_fields_to_json (fields));
  else
    piece.fields = drawl_shot_fields_copy (fields);
  g_array_append_val (pieces, piece);
}

/* ---- Lists ---- */

/* Where each stamp of a stretch of @basis stands, plus one. */
static GHashTable *
look_up (const DrawlJournalBasis *basis, guint from, guint to)
{
  GHashTable *places = g_hash_table_new (g_int64_hash, g_int64_equal);

  for (guint i = from; i < to; i++)
    g_hash_table_insert (places, &basis->stamps[i], GUINT_TO_POINTER (i + 1));
  return places;
}

static GArray *
new_shots (DrawlPlan *plan, const DrawlJournalBasis *before, const DrawlJournalBasis *after)
{
  const DrawlJournalBasis nothing = {0};
  const DrawlJournalBasis *old = before != NULL ? before : &nothing;
  guint shorter = MIN (old->n_shots, after->n_shots), head = 0, tail = 0;

  while (head < shorter && old->stamps[head] == after->stamps[head])
    head++;
  while (tail < shorter - head &&
         old->stamps[old->n_shots - 1 - tail] == after->stamps[after->n_shots - 1 - tail])
    tail++;
  if (before != NULL && head == old->n_shots && head == after->n_shots)
    return NULL;

  GArray *pieces = pieces_new ();
  g_autoptr (GHashTable) places = look_up (old, head, old->n_shots - tail);
  add_stretch (pieces, 0, head);
  for (guint i = head; i < after->n_shots - tail; i++) {
    guint place = GPOINTER_TO_UINT (g_hash_table_lookup (places, &after->stamps[i]));
    if (place > 0)
      add_stretch (pieces, place - 1, 1);
    else
      add_shot (pieces, drawl_shot_get_fields (plan->shots->pdata[i]));
  }
  add_stretch (pieces, old->n_shots - tail, tail);
  return pieces;
}

/* The place of a body of these fields, or -1. */
static int
find_hired (const GPtrArray *hired, const DrawlHiredFields *fields)
{
  for (guint i = 0; i < hired->len; i++)
    if (drawl_hired_fields_equal (hired->pdata[i], fields))
      return (int)i;
  return -1;
}

static gboolean
same_hired (const GPtrArray *a, const GPtrArray *b)
{
  gboolean same = a->len == b->len;

  for (guint i = 0; same && i < a->len; i++)
    same = drawl_hired_fields_equal (a->pdata[i], b->pdata[i]);
  return same;
}

static GArray *
new_bodies (const DrawlJournalBasis *before, const DrawlJournalBasis *after)
{
  if (before != NULL && same_hired (before->hired, after->hired))
    return NULL;

  GArray *pieces = pieces_new ();
  for (guint i = 0; i < after->hired->len; i++) {
    const DrawlHiredFields *fields = after->hired->pdata[i];
    int place = before != NULL ? find_hired (before->hired, fields) : -1;
    Piece piece = {0};
    if (place >= 0) {
      add_stretch (pieces, (guint)place, 1);
      continue;
    }
    piece.text = object_text (drawl_hired_fields_to_json (fields));
    g_array_append_val (pieces, piece);
  }
  return pieces;
}

/* ---- Delta ---- */

DrawlJournalDelta *
drawl_journal_delta_new (DrawlPlan *plan, const DrawlJournalBasis *before,
                         const DrawlJournalBasis *after)
{
  DrawlJournalDelta *delta = g_new0 (DrawlJournalDelta, 1);

  if (before == NULL || !drawl_plan_settings_equal (before->settings, after->settings))
    delta->head = object_text (drawl_plan_settings_to_json (after->settings, TRUE));
  delta->bodies = new_bodies (before, after);
  delta->shots = new_shots (plan, before, after);
  return delta;
}

void
drawl_journal_delta_free (DrawlJournalDelta *delta)
{
  if (delta == NULL)
    return;
  g_free (delta->head);
  g_clear_pointer (&delta->bodies, g_array_unref);
  g_clear_pointer (&delta->shots, g_array_unref);
  g_free (delta);
}

static void
append_piece (GString *text, const Piece *piece)
{
  if (piece->count > 0) {
    g_string_append_printf (text, "[%u, %u]", piece->from, piece->count);
  } else if (piece->text != NULL) {
    g_string_append (text, piece->text);
  } else {
    g_autofree char *shot = object_text (drawl_shot_fields_to_json (piece->fields));
    g_string_append (text, shot);
  }
}

static void
append_pieces (GString *text, const char *key, const GArray *pieces)
{
  if (pieces == NULL)
    return;
  g_string_append_printf (text, ", \"%s\": [", key);
  for (guint i = 0; i < pieces->len; i++) {
    g_string_append (text, i > 0 ? ", " : "");
    append_piece (text, &g_array_index (pieces, Piece, i));
  }
  g_string_append_c (text, ']');
}

char *
drawl_journal_delta_text (const DrawlJournalDelta *delta, gint64 edited_us, gint64 edits,
                          gsize *length)
{
  GString *text = g_string_new (NULL);

  g_string_printf (text, "{\"time_us\": %" G_GINT64_FORMAT ", \"edits\": %" G_GINT64_FORMAT,
                   edited_us, edits);
  if (delta->head != NULL) {
    g_string_append (text, ", \"plan\": ");
    drawl_json_append_string (text, delta->head);
  }
  append_pieces (text, "bodies", delta->bodies);
  append_pieces (text, "shots", delta->shots);
  g_string_append_c (text, '}');
  *length = text->len;
  return g_string_free (text, FALSE);
}
