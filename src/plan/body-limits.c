/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The limits of a body: the maker's rows, expanded to one a size and codec, sorted, and held
 * against each other and against the rest of the profile. What cannot hold together is refused, so
 * the check never has to choose between two figures. */

#include "plan/body-reader.h"

#include "core/error.h"
#include "core/text.h"
#include "plan/error.h"
#include "plan/figure.h"
#include "plan/json-file.h"

G_GNUC_PRINTF (2, 3)
static gboolean
contradict (GError **error, const char *format, ...)
{
  va_list values;

  va_start (values, format);
  g_autofree char *message = g_strdup_vprintf (format, values);
  va_end (values);
  g_set_error_literal (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_CONTRADICTION, message);
  return FALSE;
}

static gboolean
check_rates (const DrawlBody *body, const DrawlBodyLimit *row, GError **error)
{
  char lowest[DRAWL_RATIONAL_TEXT_SIZE], highest[DRAWL_RATIONAL_TEXT_SIZE];
  DrawlRate offered;

  drawl_rate_text (row->lowest, lowest);
  drawl_rate_text (row->highest, highest);
  if (drawl_rational_compare (row->lowest, row->highest) > 0)
    return contradict (error, _ ("the lowest rate, %s, is above the highest, %s"), lowest, highest);
  return drawl_body_nearest_rate (body, row->highest, row->lowest, row->highest, &offered) ||
         contradict (error, _ ("this body offers no rate from %s to %s"), lowest, highest);
}

static gboolean
check_card_class (const DrawlBody *body, const DrawlBodyLimit *row, GError **error)
{
  gint64 fastest = 0;

  for (guint i = 0; i < body->n_cards; i++)
    fastest = MAX (fastest, body->cards[i].write_bytes_s);
  return row->card_class == NULL || fastest >= row->card_bytes_s ||
         contradict (error, _ ("no card of this body reaches the class %s"), row->card_class->id);
}

gboolean
drawl_body_check_limit (const DrawlBody *body, const DrawlBodyLimit *row, GError **error)
{
  return check_rates (body, row, error) && check_card_class (body, row, error);
}

/* The slowest of the classes that the row allows. */
static gboolean
read_card_classes (JsonObject *object, DrawlBodyLimit *row, const char *where, GError **error)
{
  g_auto (GStrv) ids = drawl_body_read_ids (object, "card_classes", where, error);

  if (ids == NULL)
    return FALSE;
  for (guint i = 0; ids[i] != NULL; i++) {
    const DrawlCardClass *found = drawl_card_class_find (ids[i]);
    if (found == NULL) {
      g_autofree char *quote = drawl_core_quote (ids[i]);
      g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_UNKNOWN,
                   _ ("%s: there is no card class “%s”; one like “V60” is expected"), where, quote);
      return FALSE;
    }
    if (row->card_class == NULL || found->bytes_s < row->card_class->bytes_s)
      row->card_class = found;
  }
  if (row->card_class != NULL)
    row->card_bytes_s = row->card_class->bytes_s;
  return TRUE;
}

static gboolean
read_rates (JsonObject *object, DrawlBodyLimit *row, const char *where, GError **error)
{
  const char *expected = _ ("a rate");

  return drawl_body_need (object, "lowest_rate", where, expected, error) &&
         drawl_body_need (object, "highest_rate", where, expected, error) &&
         drawl_json_get_rate (object, "lowest_rate", where, &row->lowest, error) &&
         drawl_json_get_rate (object, "highest_rate", where, &row->highest, error);
}

static gboolean
check_law (const DrawlBodyCodec *codec, const DrawlBodySize *at, GError **error)
{
  const DrawlPayload *payload = &codec->payload;

  if (payload->kind != DRAWL_PAYLOAD_FIXED || payload->width == 0 ||
      (payload->width == at->width && payload->height == at->height))
    return TRUE;
  g_autofree char *size_id = drawl_core_quote (at->id);
  g_autofree char *codec_id = drawl_core_quote (codec->id);
  return contradict (error,
                     _ ("the codec “%s” is made for %u × %u pixels, but the size “%s” has %u × %u"),
                     codec_id, payload->width, payload->height, size_id, at->width, at->height);
}

static gboolean
check_level (const DrawlBodyCodec *codec, const DrawlBodySize *at, DrawlRate highest,
             GError **error)
{
  char text[DRAWL_RATIONAL_TEXT_SIZE];
  DrawlRate most;

  if (codec->level == NULL)
    return TRUE;
  g_autofree char *size_id = drawl_core_quote (at->id);
  g_autofree char *codec_id = drawl_core_quote (codec->id);
  if (!drawl_codec_level_highest_rate (codec->level, at->width, at->height, &most))
    return contradict (error, _ ("the codec “%s” is %s, which has no room for the size “%s”"),
                       codec_id, codec->level->name, size_id);
  if (drawl_rational_compare (highest, most) <= 0)
    return TRUE;
  g_autofree char *reached = drawl_figure_number (most, 3);
  return contradict (
      error, _ ("the codec “%s” is %s, which reaches %s fps at the size “%s”, not %s"), codec_id,
      codec->level->name, reached, size_id, drawl_rate_text (highest, text));
}

gboolean
drawl_body_check_codec (const DrawlBody *body, const DrawlBodyLimit *row, GError **error)
{
  if (row->codec == DRAWL_BODY_NO_CODEC)
    return TRUE;
  const DrawlBodyCodec *codec = &body->codecs[row->codec];
  const DrawlBodySize *at = &body->sizes[row->size];

  return check_law (codec, at, error) && check_level (codec, at, row->highest, error);
}

static gboolean
append_row (GArray *limits, const DrawlBodyLimit *row, const char *where, GError **error)
{
  if (limits->len < DRAWL_BODY_LIMITS_MAX) {
    g_array_append_val (limits, *row);
    return TRUE;
  }
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_TOO_LARGE,
               _ ("%s: the limits come to more than %d rows of one size and codec"), where,
               DRAWL_BODY_LIMITS_MAX);
  return FALSE;
}

/* Appends @row for one size and each of the codecs; on film for the size alone. */
static gboolean
expand_codecs (const DrawlBodyReader *reader, DrawlBodyLimit row, GStrv codecs, GArray *limits,
               const char *where, GError **error)
{
  if (reader->body->kind == DRAWL_BODY_FILM) {
    row.codec = DRAWL_BODY_NO_CODEC;
    return append_row (limits, &row, where, error);
  }
  for (guint i = 0; codecs[i] != NULL; i++) {
    int codec = drawl_body_find_id (reader->codecs, codecs[i], _ ("codec"), where, error);
    if (codec < 0)
      return FALSE;
    row.codec = (guint)codec;
    if (!drawl_body_check_codec (reader->body, &row, error)) {
      g_prefix_error (error, "%s: ", where);
      return FALSE;
    }
    if (!append_row (limits, &row, where, error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
expand (const DrawlBodyReader *reader, JsonObject *object, DrawlBodyLimit row, GArray *limits,
        const char *where, GError **error)
{
  g_auto (GStrv) sizes = drawl_body_read_ids (object, "sizes", where, error);
  g_auto (GStrv) codecs =
      sizes == NULL ? NULL : drawl_body_read_ids (object, "codecs", where, error);
  gboolean film = reader->body->kind == DRAWL_BODY_FILM;

  if (sizes == NULL || codecs == NULL)
    return FALSE;
  if (sizes[0] == NULL)
    return drawl_json_fail (json_object_get_member (object, "sizes"), "sizes", where,
                            _ ("at least one size"), error);
  if (film != (codecs[0] == NULL))
    return drawl_json_fail (json_object_get_member (object, "codecs"), "codecs", where,
                            film ? _ ("nothing, on a film body,") : _ ("at least one codec"),
                            error);
  for (guint i = 0; sizes[i] != NULL; i++) {
    int size = drawl_body_find_id (reader->sizes, sizes[i], _ ("size"), where, error);
    if (size < 0)
      return FALSE;
    row.size = (guint)size;
    if (!expand_codecs (reader, row, codecs, limits, where, error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
read_row (const DrawlBodyReader *reader, JsonObject *object, GArray *limits, const char *where,
          GError **error)
{
  DrawlBodyLimit row = {0};

  if (!read_rates (object, &row, where, error) ||
      !drawl_body_read_tier (reader, object, "licences", where, &row.licences, error) ||
      !read_card_classes (object, &row, where, error))
    return FALSE;
  if (!drawl_body_check_limit (reader->body, &row, error)) {
    g_prefix_error (error, "%s: ", where);
    return FALSE;
  }
  return expand (reader, object, row, limits, where, error);
}

static int
compare_numbers (guint64 a, guint64 b)
{
  return a < b ? -1 : a > b ? 1 : 0;
}

/* Size, codec, then licences and card class: rows that make the same promise stand together. */
static int
compare_rows (gconstpointer a, gconstpointer b)
{
  const DrawlBodyLimit *first = a, *second = b;
  int order = drawl_body_limit_compare (first, second->size, second->codec);

  if (order == 0)
    order = compare_numbers (first->licences, second->licences);
  if (order == 0)
    order = compare_numbers ((guint64)first->card_bytes_s, (guint64)second->card_bytes_s);
  return order;
}

static char *
describe_pair (const DrawlBody *body, const DrawlBodyLimit *row)
{
  if (row->codec == DRAWL_BODY_NO_CODEC)
    return drawl_core_quote (body->sizes[row->size].id);
  g_autofree char *size = drawl_core_quote (body->sizes[row->size].id);
  g_autofree char *codec = drawl_core_quote (body->codecs[row->codec].id);
  return g_strdup_printf (_ ("%s in %s"), size, codec);
}

static gboolean
check_neighbours (const DrawlBodyReader *reader, const DrawlBodyLimit *a, const DrawlBodyLimit *b,
                  GError **error)
{
  char rates[4][DRAWL_RATIONAL_TEXT_SIZE];

  if (compare_rows (a, b) != 0 || (drawl_rational_equal (a->lowest, b->lowest) &&
                                   drawl_rational_equal (a->highest, b->highest)))
    return TRUE;
  g_autofree char *pair = describe_pair (reader->body, a);
  contradict (
      error,
      _ ("two rows of “limits” for %s, with the same licences and cards, differ: %s to %s, and "
         "%s to %s"),
      pair, drawl_rate_text (a->lowest, rates[0]), drawl_rate_text (a->highest, rates[1]),
      drawl_rate_text (b->lowest, rates[2]), drawl_rate_text (b->highest, rates[3]));
  g_prefix_error (error, "%s: ", reader->where);
  return FALSE;
}

/* Rows that say the same twice are harmless; rows that say two things are not. */
static gboolean
check_rows (const DrawlBodyReader *reader, GArray *limits, GError **error)
{
  const DrawlBodyLimit *rows = (const DrawlBodyLimit *)(gpointer)limits->data;

  for (guint i = 1, of_pair = 1; i < limits->len; i++) {
    gboolean same_pair =
        drawl_body_limit_compare (&rows[i], rows[i - 1].size, rows[i - 1].codec) == 0;
    of_pair = same_pair ? of_pair + 1 : 1;
    if (of_pair > DRAWL_BODY_PAIR_ROWS_MAX) {
      g_autofree char *pair = describe_pair (reader->body, &rows[i]);
      g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_TOO_LARGE,
                   _ ("%s: there are more than %d rows of “limits” for %s"), reader->where,
                   DRAWL_BODY_PAIR_ROWS_MAX, pair);
      return FALSE;
    }
    if (!check_neighbours (reader, &rows[i - 1], &rows[i], error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
read_all (const DrawlBodyReader *reader, JsonArray *array, GArray *limits, GError **error)
{
  for (guint i = 0; i < json_array_get_length (array); i++) {
    g_autofree char *where =
        g_strdup_printf (_ ("%s: “%s”, row %u"), reader->where, "limits", i + 1);
    JsonNode *element = json_array_get_element (array, i);
    if (!JSON_NODE_HOLDS_OBJECT (element))
      return drawl_json_fail (element, "limits", where, _ ("a list of objects"), error);
    if (!read_row (reader, json_node_get_object (element), limits, where, error))
      return FALSE;
  }
  return TRUE;
}

gboolean
drawl_body_read_limits (DrawlBodyReader *reader, JsonObject *object, GError **error)
{
  g_autoptr (GArray) limits = g_array_new (FALSE, FALSE, sizeof (DrawlBodyLimit));
  JsonArray *array = NULL;

  if (!drawl_json_get_array (object, "limits", reader->where, DRAWL_BODY_LIMITS_MAX, &array, error))
    return FALSE;
  if (array == NULL || json_array_get_length (array) == 0)
    return drawl_json_fail (json_object_get_member (object, "limits"), "limits", reader->where,
                            _ ("at least one row"), error);
  if (!read_all (reader, array, limits, error))
    return FALSE;
  g_array_sort (limits, compare_rows);
  if (!check_rows (reader, limits, error))
    return FALSE;
  reader->body->n_limits = limits->len;
  reader->body->limits =
      (DrawlBodyLimit *)(gpointer)g_array_free (g_steal_pointer (&limits), FALSE);
  return TRUE;
}
