/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A shot in a plan file. Each key is a row of one table, in the order in which keys are written.
 * Only the driving terms of the sentence are written, as exact text, and nothing that reading would
 * assume by itself; so a shot stays small. Keys that no row knows are kept. */

#include "plan/shot-fields.h"

#include "core/text.h"
#include "plan/error.h"
#include "plan/extra.h"
#include "plan/json-file.h"
#include "plan/sentence.h"

#include <string.h>

typedef struct {
  DrawlShotFields *fields;
  DrawlSentence sentence;
  JsonObject *object;
  const char *where;
} Reading;

typedef struct _Row Row;
struct _Row {
  const char *key;
  gboolean (*read) (Reading *reading, const Row *row, GError **error);
  void (*write) (const Row *row, const DrawlShotFields *fields, const DrawlSentence *sentence,
                 JsonObject *object);
  gsize offset;         /* in the fields, or in the sentence for terms and lists of terms */
  gint64 assumed;       /* written only when different; whole numbers and truths */
  gint64 least, most;   /* whole numbers */
  DrawlTimingTerm term; /* of a value */
};

static gboolean
refuse (const Reading *reading, const char *key, const char *message, GError **error)
{
  /* Translators: place in a file, key, what is wrong. */
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE, _ ("%s: “%s”: %s"), reading->where,
               key, message);
  return FALSE;
}

/* ---- Kinds of key ---- */

static gboolean
read_string (Reading *reading, const Row *row, GError **error)
{
  const char *text = NULL;

  if (!drawl_json_get_string (reading->object, row->key, reading->where, &text, error))
    return FALSE;
  drawl_shot_fields_set (&G_STRUCT_MEMBER (char *, reading->fields, row->offset), text);
  return TRUE;
}

static void
write_string (const Row *row, const DrawlShotFields *fields, const DrawlSentence *sentence,
              JsonObject *object)
{
  const char *text = G_STRUCT_MEMBER (char *, fields, row->offset);
  if (text[0] != '\0')
    json_object_set_string_member (object, row->key, text);
}

static gboolean
read_truth (Reading *reading, const Row *row, GError **error)
{
  return drawl_json_get_bool (reading->object, row->key, reading->where,
                              &G_STRUCT_MEMBER (gboolean, reading->fields, row->offset), error);
}

static void
write_truth (const Row *row, const DrawlShotFields *fields, const DrawlSentence *sentence,
             JsonObject *object)
{
  gboolean truth = G_STRUCT_MEMBER (gboolean, fields, row->offset);
  if (truth != row->assumed)
    json_object_set_boolean_member (object, row->key, truth);
}

static gboolean
read_count (Reading *reading, const Row *row, GError **error)
{
  gint64 count = row->assumed;

  if (!drawl_json_get_int (reading->object, row->key, reading->where, row->least, row->most, &count,
                           error))
    return FALSE;
  G_STRUCT_MEMBER (guint, reading->fields, row->offset) = (guint)count;
  return TRUE;
}

static void
write_count (const Row *row, const DrawlShotFields *fields, const DrawlSentence *sentence,
             JsonObject *object)
{
  guint count = G_STRUCT_MEMBER (guint, fields, row->offset);
  if (count != row->assumed)
    json_object_set_int_member (object, row->key, count);
}

static gboolean
read_time (Reading *reading, const Row *row, GError **error)
{
  return drawl_json_get_rational (reading->object, row->key, reading->where,
                                  &G_STRUCT_MEMBER (DrawlRational, reading->fields, row->offset),
                                  error);
}

static void
write_exact (JsonObject *object, const char *key, DrawlRational value)
{
  char text[DRAWL_RATIONAL_TEXT_SIZE];
  json_object_set_string_member (object, key, drawl_rational_text (value, text));
}

static void
write_time (const Row *row, const DrawlShotFields *fields, const DrawlSentence *sentence,
            JsonObject *object)
{
  DrawlRational seconds = G_STRUCT_MEMBER (DrawlRational, fields, row->offset);
  if (seconds.num != 0)
    write_exact (object, row->key, seconds);
}

/* A term's value: text as a person types it, or a number. */
static gboolean
read_term (Reading *reading, const Row *row, GError **error)
{
  JsonNode *node = json_object_get_member (reading->object, row->key);
  g_autofree char *text = drawl_json_number_text (node);
  g_autoptr (GError) reason = NULL;

  if (text == NULL)
    return drawl_json_fail (node, row->key, reading->where, _ ("a number"), error);
  if (!drawl_timing_term_parse (row->term, text, &reading->sentence.value[row->term], &reason))
    return refuse (reading, row->key, reason->message, error);
  reading->sentence.present |= DRAWL_TIMING_BIT (row->term);
  return TRUE;
}

static void
write_term (const Row *row, const DrawlShotFields *fields, const DrawlSentence *sentence,
            JsonObject *object)
{
  if ((sentence->present & DRAWL_TIMING_BIT (row->term)) != 0)
    write_exact (object, row->key, sentence->value[row->term]);
}

static gboolean
find_term (const char *key, DrawlTimingTerm *term)
{
  for (guint i = 0; key != NULL && i < DRAWL_TIMING_N_TERMS; i++)
    if (g_str_equal (key, drawl_timing_term_key (i))) {
      *term = i;
      return TRUE;
    }
  return FALSE;
}

static gboolean
read_terms (Reading *reading, const Row *row, GError **error)
{
  DrawlTerms *terms = &G_STRUCT_MEMBER (DrawlTerms, &reading->sentence, row->offset);
  JsonArray *array = NULL;
  DrawlTimingTerm term;

  if (!drawl_json_get_array (reading->object, row->key, reading->where, DRAWL_TIMING_N_TERMS,
                             &array, error))
    return FALSE;
  terms->present = TRUE;
  for (guint i = 0; i < json_array_get_length (array); i++) {
    JsonNode *node = json_array_get_element (array, i);
    gboolean is_text =
        JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_STRING;
    if (!is_text || !find_term (json_node_get_string (node), &term) ||
        drawl_terms_have (terms, term))
      return refuse (reading, row->key,
                     _ ("keys of the sentence are expected, such as \"capture_rate\", each once"),
                     error);
    terms->term[terms->n++] = term;
  }
  return TRUE;
}

static void
write_terms (const Row *row, const DrawlShotFields *fields, const DrawlSentence *sentence,
             JsonObject *object)
{
  const DrawlTerms *terms = &G_STRUCT_MEMBER (const DrawlTerms, sentence, row->offset);

  if (!terms->present)
    return;
  JsonArray *array = json_array_sized_new (terms->n);
  for (guint i = 0; i < terms->n; i++)
    json_array_add_string_element (array, drawl_timing_term_key (terms->term[i]));
  json_object_set_array_member (object, row->key, array);
}

/* ---- Keys ---- */

#define STRING(name)                                                                               \
  {                                                                                                \
#name, read_string, write_string, G_STRUCT_OFFSET(DrawlShotFields, name)                       \
  }
#define TIME(name)                                                                                 \
  {                                                                                                \
#name, read_time, write_time, G_STRUCT_OFFSET(DrawlShotFields, name)                           \
  }
#define TRUTH(name, assumed)                                                                       \
  {                                                                                                \
#name, read_truth, write_truth, G_STRUCT_OFFSET(DrawlShotFields, name), assumed                \
  }
#define COUNT(name, assumed, least, most)                                                          \
  {                                                                                                \
#name, read_count, write_count, G_STRUCT_OFFSET(DrawlShotFields, name), assumed, least, most   \
  }
#define TERM(name, term)                                                                           \
  {                                                                                                \
    name, read_term, write_term, 0, 0, 0, 0, term                                                  \
  }
#define TERMS(name)                                                                                \
  {                                                                                                \
#name, read_terms, write_terms, G_STRUCT_OFFSET(DrawlSentence, name)                           \
  }

static const Row rows[] = {
    STRING (slate),
    STRING (scene),
    STRING (action),
    TERM ("capture_rate", DRAWL_TIMING_CAPTURE),
    TERM ("playback_rate", DRAWL_TIMING_PLAYBACK),
    TERM ("action_s", DRAWL_TIMING_ACTION),
    TERM ("screen_s", DRAWL_TIMING_SCREEN),
    TERM ("slow_factor", DRAWL_TIMING_FACTOR),
    TERM ("post_speed_percent", DRAWL_TIMING_POST_SPEED),
    TERMS (given),
    TERMS (order),
    TERMS (held),
    TRUTH (drop, FALSE),
    STRING (body),
    STRING (size),
    STRING (codec),
    COUNT (takes, 1, 1, DRAWL_SHOT_TAKES_MAX),
    TIME (handle_before_s),
    TIME (handle_after_s),
    COUNT (audio_tracks, 0, 0, DRAWL_SHOT_AUDIO_MAX),
    TRUTH (must, TRUE),
    STRING (notes),
};

/* Keys mostly come in the order of the table, so the search begins after the last one found. */
static const Row *
find_row (const char *key, gsize *next)
{
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    gsize at = (*next + i) % G_N_ELEMENTS (rows);
    if (strcmp (rows[at].key, key) == 0) {
      *next = at + 1;
      return &rows[at];
    }
  }
  return NULL;
}

/* ---- Reading ---- */

/* Every listed term needs its value. */
static gboolean
check_given (const Reading *reading, GError **error)
{
  const DrawlSentence *sentence = &reading->sentence;
  guint known = sentence->present | DRAWL_SENTENCE_ASSUMED;

  for (guint i = 0; i < sentence->given.n; i++)
    if ((known & DRAWL_TIMING_BIT (sentence->given.term[i])) == 0)
      return refuse (reading, drawl_timing_term_key (sentence->given.term[i]),
                     _ ("it is listed as given, but has no value"), error);
  if (sentence->order.present && sentence->order.n != DRAWL_TIMING_N_TERMS)
    return refuse (reading, "order", _ ("all six keys of the sentence are expected"), error);
  return TRUE;
}

static gboolean
read_members (Reading *reading, GError **error)
{
  JsonObjectIter iter;
  const char *key;
  JsonNode *node;
  gsize next = 0;

  json_object_iter_init_ordered (&iter, reading->object);
  while (json_object_iter_next_ordered (&iter, &key, &node)) {
    const Row *row = find_row (key, &next);
    if (row == NULL)
      drawl_extra_keep (&reading->fields->extra, key, node);
    else if (!row->read (reading, row, error))
      return FALSE;
  }
  return TRUE;
}

DrawlShotFields *
drawl_shot_fields_from_json (JsonObject *object, DrawlRational default_playback, const char *where,
                             GError **error)
{
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_new ("", default_playback);
  g_autoptr (GError) reason = NULL;
  Reading reading = {.fields = fields, .object = object, .where = where};
  DrawlSentence *sentence = &reading.sentence;

  sentence->value[DRAWL_TIMING_PLAYBACK] = default_playback;
  sentence->value[DRAWL_TIMING_POST_SPEED] = drawl_rational_whole (100);
  if (!read_members (&reading, error) || !check_given (&reading, error))
    return NULL;
  if (fields->slate[0] == '\0') {
    refuse (&reading, "slate", _ ("a shot must have a slate"), error);
    return NULL;
  }
  if (!drawl_sentence_settle (*sentence, default_playback, &fields->blanks, &reason)) {
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE, "%s: %s", where, reason->message);
    return NULL;
  }
  if (!drawl_shot_fields_check (fields, &reason)) {
    g_propagate_prefixed_error (error, g_steal_pointer (&reason), "%s: ", where);
    return NULL;
  }
  return g_steal_pointer (&fields);
}

/* ---- Writing ---- */

JsonObject *
drawl_shot_fields_to_json (const DrawlShotFields *fields)
{
  JsonObject *object = json_object_new ();
  DrawlSentence sentence = {0};

  drawl_sentence_describe (&fields->blanks, &sentence);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    rows[i].write (&rows[i], fields, &sentence, object);
  drawl_extra_restore (fields->extra, object);
  return object;
}
