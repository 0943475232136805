/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The tables of a body profile that stand on their own: sizes, codecs, licences, cards, magazines,
 * rates and notes. A function a row; ids are entered as they come, so that a later table can refer
 * to an earlier one. */

#include "plan/body-reader.h"

#include "core/error.h"
#include "core/text.h"
#include "plan/error.h"
#include "plan/json-file.h"

static gboolean
read_name (GHashTable *ids, JsonObject *object, char **id, char **name, guint index,
           const char *where, GError **error)
{
  return drawl_body_need_text (object, "id", where, id, error) &&
         drawl_body_need_text (object, "name", where, name, error) &&
         drawl_body_enter_id (ids, *id, index, where, error);
}

/* FALSE with an error when a key that only the other kind of body has is there. */
static gboolean
refuse (JsonObject *object, const char *key, const char *where, const char *message, GError **error)
{
  if (!json_object_has_member (object, key))
    return TRUE;
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE, _ ("%s: “%s” is here, but %s"),
               where, key, message);
  return FALSE;
}

/* ---- Sizes ---- */

static gboolean
read_pixels (JsonObject *object, DrawlBodySize *size, const char *where, GError **error)
{
  const char *expected = _ ("a number of pixels");

  return drawl_body_need (object, "width", where, expected, error) &&
         drawl_body_need (object, "height", where, expected, error) &&
         drawl_body_read_count (object, "width", where, 1, DRAWL_BODY_PIXELS_MAX, &size->width,
                                error) &&
         drawl_body_read_count (object, "height", where, 1, DRAWL_BODY_PIXELS_MAX, &size->height,
                                error);
}

static gboolean
read_gauge (JsonObject *object, DrawlBodySize *size, const char *where, GError **error)
{
  g_autofree char *id = NULL;

  if (!drawl_body_need_text (object, "gauge", where, &id, error))
    return FALSE;
  size->gauge = drawl_gauge_find (id);
  if (size->gauge != NULL)
    return TRUE;
  g_autofree char *quote = drawl_core_quote (id);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_UNKNOWN,
               _ ("%s: there is no gauge “%s”; one like “16” or “35-4” is expected"), where, quote);
  return FALSE;
}

static gboolean
read_size (DrawlBodyReader *reader, JsonObject *object, gpointer row, guint index,
           const char *where, GError **error)
{
  DrawlBodySize *size = row;
  gboolean film = reader->body->kind == DRAWL_BODY_FILM;

  size->window_w_mm = size->window_h_mm = size->readout_ms = drawl_rational_whole (0);
  return read_name (reader->sizes, object, &size->id, &size->name, index, where, error) &&
         (film ? read_gauge (object, size, where, error)
               : read_pixels (object, size, where, error)) &&
         drawl_body_read_number (object, "window_width_mm", where, 0, DRAWL_BODY_MM_MAX,
                                 &size->window_w_mm, error) &&
         drawl_body_read_number (object, "window_height_mm", where, 0, DRAWL_BODY_MM_MAX,
                                 &size->window_h_mm, error) &&
         drawl_body_read_number (object, "readout_ms", where, 0, DRAWL_BODY_READOUT_MS_MAX,
                                 &size->readout_ms, error);
}

/* ---- Codecs ---- */

static const struct {
  const char *id;
  DrawlPayloadKind kind;
  const char *required[3]; /* keys without which the law says nothing */
} payload_kinds[] = {
    {"uncompressed", DRAWL_PAYLOAD_UNCOMPRESSED, {"sampling", "stored_bits"}},
    {"fixed", DRAWL_PAYLOAD_FIXED, {"frame_bytes"}},
    {"scaling", DRAWL_PAYLOAD_SCALING, {"mbps", "at"}},
    {"constant", DRAWL_PAYLOAD_CONSTANT, {"mbps"}},
};

static gboolean
read_payload_kind (JsonObject *object, DrawlPayloadKind *kind, const char *where, GError **error)
{
  g_autofree char *id = NULL;

  if (!drawl_body_need_text (object, "kind", where, &id, error))
    return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (payload_kinds); i++) {
    if (!g_str_equal (payload_kinds[i].id, id))
      continue;
    *kind = payload_kinds[i].kind;
    for (const char *const *key = payload_kinds[i].required; *key != NULL; key++)
      if (!drawl_body_need (object, *key, where, _ ("a value"), error))
        return FALSE;
    return TRUE;
  }
  return drawl_json_fail (json_object_get_member (object, "kind"), "kind", where,
                          _ ("“uncompressed”, “fixed”, “scaling” or “constant”"), error);
}

static gboolean
read_sampling (JsonObject *object, DrawlSampling *sampling, const char *where, GError **error)
{
  g_autofree char *id = NULL;

  if (!json_object_has_member (object, "sampling"))
    return TRUE;
  if (!drawl_body_need_text (object, "sampling", where, &id, error))
    return FALSE;
  return drawl_sampling_parse (id, sampling) ||
         drawl_json_fail (json_object_get_member (object, "sampling"), "sampling", where,
                          _ ("“420”, “422”, “444” or “mosaic”"), error);
}

static gboolean
read_payload (JsonObject *object, DrawlPayload *payload, const char *where, GError **error)
{
  g_autoptr (GError) local = NULL;

  payload->stored_bits = payload->mbps = drawl_rational_whole (0);
  payload->at = drawl_rational_whole (0);
  if (!read_payload_kind (object, &payload->kind, where, error) ||
      !read_sampling (object, &payload->sampling, where, error) ||
      !drawl_body_read_number (object, "stored_bits", where, 1, 64, &payload->stored_bits, error) ||
      !drawl_body_read_count (object, "row_align", where, 0, G_MAXUINT16, &payload->row_align,
                              error) ||
      !drawl_json_get_int (object, "frame_bytes", where, 1, DRAWL_BODY_BYTES_MAX,
                           &payload->frame_bytes, error) ||
      !drawl_body_read_count (object, "width", where, 0, DRAWL_BODY_PIXELS_MAX, &payload->width,
                              error) ||
      !drawl_body_read_count (object, "height", where, 0, DRAWL_BODY_PIXELS_MAX, &payload->height,
                              error) ||
      !drawl_body_read_number (object, "mbps", where, 0, 8 * DRAWL_BODY_MB_S_MAX, &payload->mbps,
                               error) ||
      !drawl_json_get_rate (object, "at", where, &payload->at, error) ||
      !drawl_body_read_count (object, "overhead_bytes", where, 0, G_MAXINT32,
                              &payload->overhead_bytes, error))
    return FALSE;
  if (drawl_payload_check (payload, &local))
    return TRUE;
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE, _ ("%s: “payload”: %s"), where,
               local->message);
  return FALSE;
}

static gboolean
read_law (JsonObject *object, DrawlBodyCodec *codec, const char *where, GError **error)
{
  g_autofree char *id = NULL;

  if (!drawl_body_need_text (object, "law", where, &id, error))
    return FALSE;
  codec->law = drawl_codec_law_find (id);
  if (codec->law != NULL) {
    codec->payload = codec->law->law;
    return TRUE;
  }
  g_autofree char *quote = drawl_core_quote (id);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_UNKNOWN,
               _ ("%s: there is no codec law “%s”; drawl-body(5) lists them"), where, quote);
  return FALSE;
}

static gboolean
read_level (JsonObject *object, DrawlBodyCodec *codec, const char *where, GError **error)
{
  g_autofree char *id = NULL;

  if (!json_object_has_member (object, "level"))
    return TRUE;
  if (!drawl_body_need_text (object, "level", where, &id, error))
    return FALSE;
  codec->level = drawl_codec_level_find (id);
  if (codec->level != NULL)
    return TRUE;
  g_autofree char *quote = drawl_core_quote (id);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_UNKNOWN,
               _ ("%s: there is no codec level “%s”; drawl-body(5) lists them"), where, quote);
  return FALSE;
}

static gboolean
read_codec (DrawlBodyReader *reader, JsonObject *object, gpointer row, guint index,
            const char *where, GError **error)
{
  DrawlBodyCodec *codec = row;
  JsonObject *payload = NULL;

  if (!read_name (reader->codecs, object, &codec->id, &codec->name, index, where, error) ||
      !drawl_json_get_object (object, "payload", where, &payload, error))
    return FALSE;
  if (payload == NULL)
    return read_law (object, codec, where, error) &&
           refuse (object, "level", where, _ ("an open law has none"), error);
  return refuse (object, "law", where, _ ("“payload” is too; one of the two is expected"), error) &&
         read_payload (payload, &codec->payload, where, error) &&
         read_level (object, codec, where, error);
}

/* ---- Licences ---- */

static gboolean
read_licence (DrawlBodyReader *reader, JsonObject *object, gpointer row, guint index,
              const char *where, GError **error)
{
  DrawlLicence *licence = row;

  return read_name (reader->licences, object, &licence->id, &licence->name, index, where, error) &&
         drawl_body_read_text (object, "what", where, &licence->what, error) &&
         drawl_json_get_money (object, "price_day", where, &licence->price, error);
}

/* A licence may name one that stands below it, so this comes when all ids are known. */
static gboolean
read_licence_links (DrawlBodyReader *reader, JsonObject *object, GError **error)
{
  DrawlBody *body = reader->body;
  JsonArray *array = NULL;

  if (!drawl_json_get_array (object, "licences", reader->where, DRAWL_LICENCES_MAX, &array, error))
    return FALSE;
  for (guint i = 0; i < body->n_licences; i++) {
    JsonObject *row = json_array_get_object_element (array, i);
    g_autofree char *where =
        g_strdup_printf (_ ("%s: “%s”, row %u"), reader->where, "licences", i + 1);
    if (!drawl_body_read_tier (reader, row, "requires", where, &body->licences[i].requires,
                               error) ||
        !drawl_body_read_tier (reader, row, "replaces", where, &body->licences[i].replaces, error))
      return FALSE;
  }
  return TRUE;
}

/* Everything that licence @from leads to by requiring or by replacing others. */
static DrawlTier
reach (const DrawlBody *body, guint from, gboolean requiring)
{
  DrawlTier reached = 0, waiting = DRAWL_TIER_BIT (from);

  while (waiting != 0) {
    guint i = (guint)__builtin_ctzll (waiting);
    DrawlTier links = requiring ? body->licences[i].requires : body->licences[i].replaces;
    waiting = (waiting & (waiting - 1)) | (links & ~reached);
    reached |= links;
  }
  return reached;
}

static gboolean
check_circles (const DrawlBodyReader *reader, GError **error)
{
  const DrawlBody *body = reader->body;

  for (guint i = 0; i < body->n_licences; i++) {
    gboolean requires = (reach (body, i, TRUE) & DRAWL_TIER_BIT (i)) != 0;
    gboolean replaces = (reach (body, i, FALSE) & DRAWL_TIER_BIT (i)) != 0;
    if (!requires && !replaces)
      continue;
    g_autofree char *quote = drawl_core_quote (body->licences[i].id);
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_CONTRADICTION,
                 requires ? _ ("%s: the licence “%s” requires itself in a circle")
                          : _ ("%s: the licence “%s” replaces itself in a circle"),
                 reader->where, quote);
    return FALSE;
  }
  return TRUE;
}

/* ---- Cards and magazines ---- */

static gboolean
read_card_class (JsonObject *object, DrawlBodyCard *card, const char *where, GError **error)
{
  g_autofree char *id = NULL;

  if (!json_object_has_member (object, "class"))
    return TRUE;
  if (!drawl_body_need_text (object, "class", where, &id, error))
    return FALSE;
  card->card_class = drawl_card_class_find (id);
  if (card->card_class != NULL) {
    card->write_bytes_s = card->card_class->bytes_s;
    return TRUE;
  }
  g_autofree char *quote = drawl_core_quote (id);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_UNKNOWN,
               _ ("%s: there is no card class “%s”; one like “V60” is expected"), where, quote);
  return FALSE;
}

static gboolean
read_card_speed (JsonObject *object, DrawlBodyCard *card, const char *where, GError **error)
{
  if (card->card_class == NULL &&
      !drawl_body_need (object, "write_mb_s", where, _ ("this, or “class”,"), error))
    return FALSE;
  if (!drawl_body_read_speed (object, "write_mb_s", where, &card->write_bytes_s, error))
    return FALSE;
  if (card->card_class == NULL || card->write_bytes_s >= card->card_class->bytes_s)
    return TRUE;
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_CONTRADICTION,
               _ ("%s: “write_mb_s” is below what the class %s guarantees"), where,
               card->card_class->id);
  return FALSE;
}

/* What is printed on an SD card cannot be more than there is of them. */
static gboolean
check_card_size (const DrawlBodyCard *card, const char *where, GError **error)
{
  if (card->card_class == NULL || !card->card_class->sd || drawl_sd_kind (card->bytes) != NULL)
    return TRUE;
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_CONTRADICTION,
               _ ("%s: “bytes” is more than the 128 TB that an SD card (class %s) holds at most"),
               where, card->card_class->id);
  return FALSE;
}

static gboolean
read_card (DrawlBodyReader *reader, JsonObject *object, gpointer row, guint index,
           const char *where, GError **error)
{
  DrawlBodyCard *card = row;

  return read_name (reader->cards, object, &card->id, &card->name, index, where, error) &&
         drawl_body_need (object, "bytes", where, _ ("a number of bytes"), error) &&
         drawl_json_get_int (object, "bytes", where, 1, DRAWL_BODY_BYTES_MAX, &card->bytes,
                             error) &&
         read_card_class (object, card, where, error) && check_card_size (card, where, error) &&
         read_card_speed (object, card, where, error) &&
         drawl_json_get_money (object, "price_day", where, &card->price, error);
}

static gboolean
read_magazine (DrawlBodyReader *reader, JsonObject *object, gpointer row, guint index,
               const char *where, GError **error)
{
  DrawlBodyMagazine *magazine = row;

  magazine->feet = drawl_rational_whole (0);
  return read_name (reader->magazines, object, &magazine->id, &magazine->name, index, where,
                    error) &&
         drawl_body_need (object, "feet", where, _ ("a number of feet"), error) &&
         drawl_body_read_number (object, "feet", where, 1, DRAWL_BODY_FEET_MAX, &magazine->feet,
                                 error) &&
         drawl_json_get_money (object, "price_day", where, &magazine->price, error);
}

/* ---- Notes ---- */

static gboolean
read_note (DrawlBodyReader *reader, JsonObject *object, gpointer row, guint index,
           const char *where, GError **error)
{
  DrawlBodyNote *note = row;

  return drawl_body_need_text (object, "what", where, &note->what, error) &&
         drawl_body_read_text (object, "why", where, &note->why, error);
}

/* ---- All ---- */

#define TABLE(key, most, type, read, rows, count)                                                  \
  {                                                                                                \
    key, most, sizeof (type), read, G_STRUCT_OFFSET (DrawlBody, rows),                             \
        G_STRUCT_OFFSET (DrawlBody, count)                                                         \
  }

static const DrawlBodyTable tables[] = {
    TABLE ("sizes", DRAWL_BODY_ROWS_MAX, DrawlBodySize, read_size, sizes, n_sizes),
    TABLE ("codecs", DRAWL_BODY_ROWS_MAX, DrawlBodyCodec, read_codec, codecs, n_codecs),
    TABLE ("licences", DRAWL_LICENCES_MAX, DrawlLicence, read_licence, licences, n_licences),
    TABLE ("cards", DRAWL_BODY_ROWS_MAX, DrawlBodyCard, read_card, cards, n_cards),
    TABLE ("magazines", DRAWL_BODY_ROWS_MAX, DrawlBodyMagazine, read_magazine, magazines,
           n_magazines),
    TABLE ("fit", DRAWL_BODY_ROWS_MAX, DrawlBodyNote, read_note, fits, n_fits),
    TABLE ("pick_up", DRAWL_BODY_ROWS_MAX, DrawlBodyNote, read_note, pickups, n_pickups),
    TABLE ("return", DRAWL_BODY_ROWS_MAX, DrawlBodyNote, read_note, returns, n_returns),
};

/* What only the other kind of body has. */
static gboolean
refuse_foreign (const DrawlBodyReader *reader, JsonObject *object, GError **error)
{
  static const char *const of_film[] = {"magazines", NULL};
  static const char *const of_digital[] = {"codecs", "cards", "buffer", NULL};
  gboolean film = reader->body->kind == DRAWL_BODY_FILM;

  for (const char *const *key = film ? of_digital : of_film; *key != NULL; key++)
    if (!refuse (object, *key, reader->where,
                 film ? _ ("a film body has none") : _ ("only a film body has them"), error))
      return FALSE;
  return TRUE;
}

gboolean
drawl_body_read_tables (DrawlBodyReader *reader, JsonObject *object, GError **error)
{
  if (!refuse_foreign (reader, object, error))
    return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (tables); i++)
    if (!drawl_body_read_table (reader, object, &tables[i], error))
      return FALSE;
  return read_licence_links (reader, object, error) && check_circles (reader, error);
}
