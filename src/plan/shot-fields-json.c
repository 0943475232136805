/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A shot in a plan file. Each key is a row of one table, in the order in which keys are written.
 * Only the driving terms of the sentence are written, as exact text, and nothing that reading would
 * assume by itself; so a shot stays small. Keys that no row knows are kept. */

#include "plan/shot-fields.h"

#include "core/text.h"
#include "plan/error.h"
#include "plan/extra.h"
#include "plan/json-file.h"
#include "plan/json-walk.h"
#include "plan/sentence.h"

#include <string.h>

typedef struct {
  DrawlShotFields *fields;
  DrawlSentence sentence;
  const char *where;
} Reading;

typedef struct _Row Row;
struct _Row {
  const char *key;
  gboolean (*read) (Reading *reading, const Row *row, DrawlJsonSpan value, GError **error);
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

/* What is not written in the plainest way is read, or refused, as a member of an object. */
static JsonObject *
as_member (const Row *row, DrawlJsonSpan value)
{
  JsonObject *object = json_object_new ();
  json_object_set_member (object, row->key, drawl_json_span_node (value));
  return object;
}

static gboolean
read_string (Reading *reading, const Row *row, DrawlJsonSpan value, GError **error)
{
  char **member = &G_STRUCT_MEMBER (char *, reading->fields, row->offset);

  if (!drawl_json_span_is_text (value)) {
    g_autoptr (JsonObject) object = as_member (row, value);
    const char *text;
    return drawl_json_get_string (object, row->key, reading->where, &text, error);
  }
  g_free (*member);
  *member = drawl_json_span_string (value);
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
read_truth (Reading *reading, const Row *row, DrawlJsonSpan value, GError **error)
{
  gboolean *member = &G_STRUCT_MEMBER (gboolean, reading->fields, row->offset);

  if (*value.at == 't' || *value.at == 'f') {
    *member = *value.at == 't';
    return TRUE;
  }
  g_autoptr (JsonObject) object = as_member (row, value);
  return drawl_json_get_bool (object, row->key, reading->where, member, error);
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
read_count (Reading *reading, const Row *row, DrawlJsonSpan value, GError **error)
{
  guint *member = &G_STRUCT_MEMBER (guint, reading->fields, row->offset);
  gint64 count = row->least - 1;

  if (value.length == 1 && g_ascii_isdigit (*value.at))
    count = *value.at - '0';
  if (count < row->least) {
    g_autoptr (JsonObject) object = as_member (row, value);
    if (!drawl_json_get_int (object, row->key, reading->where, row->least, row->most, &count,
                             error))
      return FALSE;
  }
  *member = (guint)count;
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
read_time (Reading *reading, const Row *row, DrawlJsonSpan value, GError **error)
{
  DrawlRational *member = &G_STRUCT_MEMBER (DrawlRational, reading->fields, row->offset);
  g_autofree char *text = drawl_json_span_string (value);

  if (text != NULL && drawl_json_number_is_plain (text) &&
      drawl_rational_parse (text, member, NULL))
    return TRUE;
  g_autoptr (JsonObject) object = as_member (row, value);
  return drawl_json_get_rational (object, row->key, reading->where, member, error);
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

/* A term's value: the text of a number, or one. */
static gboolean
read_term (Reading *reading, const Row *row, DrawlJsonSpan value, GError **error)
{
  g_autofree char *text = drawl_json_span_string (value);
  g_autoptr (GError) reason = NULL;

  if (text == NULL) {
    g_autoptr (JsonNode) node = drawl_json_span_node (value);
    text = drawl_json_number_text (node);
    if (text == NULL)
      return drawl_json_fail (node, row->key, reading->where, _ ("a number"), error);
  }
  if (!drawl_timing_term_parse (row->term, text, &reading->sentence.value[row->term], &reason))
    return refuse (reading, row->key, reason->message, error);
  if (!drawl_json_number_is_plain (text))
    return drawl_json_fail_number (text, row->key, reading->where, error);
  reading->sentence.present |= DRAWL_TIMING_BIT (row->term);
  return TRUE;
}

static void
write_term (const Row *row, const DrawlShotFields *fields, const DrawlSentence *sentence,
            JsonObject *object)
{
  char text[DRAWL_RATIONAL_TEXT_SIZE];
  DrawlRational value = sentence->value[row->term];

  if ((sentence->present & DRAWL_TIMING_BIT (row->term)) == 0)
    return;
  /* Never a rate as a decimal: 2997/125 would be written as 23.976, which means 24000/1001. */
  if (row->term == DRAWL_TIMING_CAPTURE || row->term == DRAWL_TIMING_PLAYBACK)
    json_object_set_string_member (object, row->key, drawl_rate_text (value, text));
  else
    write_exact (object, row->key, value);
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
read_terms (Reading *reading, const Row *row, DrawlJsonSpan value, GError **error)
{
  DrawlTerms *terms = &G_STRUCT_MEMBER (DrawlTerms, &reading->sentence, row->offset);
  DrawlJsonWalk walk = drawl_json_walk (value.at);
  DrawlJsonSpan element;
  DrawlTimingTerm term;

  *terms = (DrawlTerms){.present = TRUE};
  if (!drawl_json_span_is_list (value)) {
    g_autoptr (JsonNode) node = drawl_json_span_node (value);
    return drawl_json_fail (node, row->key, reading->where, _ ("a list"), error);
  }
  while (drawl_json_walk_element (&walk, &element)) {
    g_autofree char *key = drawl_json_span_string (element);
    if (!find_term (key, &term) || drawl_terms_have (terms, term))
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
find_row (const char *key, gsize length, gsize *next)
{
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    gsize at = (*next + i) % G_N_ELEMENTS (rows);
    if (strncmp (rows[at].key, key, length) == 0 && rows[at].key[length] == '\0') {
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

/* A key is compared as it stands, unless it is written with escapes. */
static const Row *
find_row_of (DrawlJsonSpan key, gsize *next)
{
  if (memchr (key.at, '\\', key.length) == NULL)
    return find_row (key.at + 1, key.length - 2, next);
  g_autofree char *name = drawl_json_span_string (key);
  return find_row (name, strlen (name), next);
}

static void
keep (DrawlShotFields *fields, DrawlJsonSpan key, DrawlJsonSpan value)
{
  g_autofree char *name = drawl_json_span_string (key);
  g_autoptr (JsonNode) node = drawl_json_span_node (value);

  drawl_extra_keep (&fields->extra, name, node);
}

static gboolean
read_members (Reading *reading, const char **text, GError **error)
{
  DrawlJsonWalk walk = drawl_json_walk (*text);
  DrawlJsonSpan key, value;
  gsize next = 0;

  while (drawl_json_walk_member (&walk, &key, &value)) {
    const Row *row = find_row_of (key, &next);
    if (row == NULL)
      keep (reading->fields, key, value);
    else if (!row->read (reading, row, value, error))
      return FALSE;
  }
  *text = walk.at + 1;
  return TRUE;
}

DrawlShotFields *
drawl_shot_fields_from_json (const char **text, DrawlRate default_playback, const char *where,
                             GError **error)
{
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_new ("", default_playback);
  g_autoptr (GError) reason = NULL;
  Reading reading = {.fields = fields, .where = where};
  DrawlSentence *sentence = &reading.sentence;
  const char *end = *text;

  sentence->value[DRAWL_TIMING_PLAYBACK] = default_playback;
  sentence->value[DRAWL_TIMING_POST_SPEED] = drawl_rational_whole (100);
  if (!read_members (&reading, &end, error) || !check_given (&reading, error))
    return NULL;
  if (!drawl_shot_slate_check (fields->slate, &reason)) {
    refuse (&reading, "slate", reason->message, error);
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
  *text = end;
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
