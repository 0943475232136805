/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The draft of a body: profiles go through it unchanged, each mistake is found where it is and
 * mended there. */

#include "plan/body-draft.h"

#include "drafts.h"
#include "rows.h"

/* ---- Unchanged ---- */

typedef struct {
  const char *name;
} Shipped;

static const Shipped shipped[] = {
    {"cruet-2.json"},  {"ferrule.json"},  {"mullion-8.json"},
    {"quern-35.json"}, {"skein-16.json"}, {"treadle-4.json"},
};

static void
test_unchanged (gconstpointer data)
{
  g_autoptr (DrawlBody) body = load (((const Shipped *)data)->name);
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new_from_body (body);

  g_assert_null (drawl_body_draft_mistake (draft));
  for (guint table = 0; table < DRAWL_N_DRAFT_TABLES; table++)
    g_assert_cmpuint (drawl_body_draft_n_mistakes (draft, table), ==, 0);
  DrawlBody *again = drawl_body_draft_get_body (draft);
  g_assert_nonnull (again);
  g_assert_true (json_object_equal (again->json, body->json));
  g_assert_false (drawl_body_draft_get_changed (draft));
}

/* Every cell typed as it is shown means what it meant. */
static void
test_typed_again (gconstpointer data)
{
  g_autoptr (DrawlBody) body = load (((const Shipped *)data)->name);
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new_from_body (body);

  for (guint table = 0; table < DRAWL_N_DRAFT_TABLES; table++)
    for (guint i = 0; i < drawl_body_draft_n_rows (draft, table); i++)
      for (guint column = 0; column < drawl_draft_table_info (table)->n_columns; column++) {
        DrawlDraftRow *row = row_at (draft, table, i);
        const DrawlDraftColumn *is = &drawl_draft_table_info (table)->columns[column];
        g_autofree char *shown = g_strdup (drawl_body_draft_get (draft, row, column));
        if (*shown == '\0' || is->kind == DRAWL_DRAFT_ROWS)
          continue;
        g_autoptr (JsonNode) before = drawl_draft_cell_read (is, shown, NULL);
        g_assert_nonnull (before);
        g_autofree char *after = drawl_draft_cell_text (is, before);
        g_assert_cmpstr (after, ==, shown);
      }
}

static void
test_unknown_keys_stay (void)
{
  g_autoptr (DrawlBody) body = load ("cruet-2.json");
  JsonObject *size =
      json_array_get_object_element (json_object_get_array_member (body->json, "sizes"), 0);

  json_object_set_string_member (size, "colour", "blue");
  json_object_set_string_member (body->json, "serial", "77");
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new_from_body (body);
  type (draft, DRAWL_DRAFT_ABOUT, 0, "name", "Another");
  type (draft, DRAWL_DRAFT_SIZES, 0, "readout_ms", "3,5");
  JsonObject *json = drawl_body_draft_get_body (draft)->json;
  size = json_array_get_object_element (json_object_get_array_member (json, "sizes"), 0);
  g_assert_cmpstr (json_object_get_string_member (json, "serial"), ==, "77");
  g_assert_cmpstr (json_object_get_string_member (size, "colour"), ==, "blue");
  g_assert_cmpstr (json_object_get_string_member (size, "readout_ms"), ==, "3.5");
}

/* ---- Mistakes ---- */

typedef struct {
  const char *name;
  DrawlDraftTable table;
  guint row;
  const char *key;
  const char *typed;
  const char *says;
} Wrong;

static const Wrong wrong[] = {
    {"no-name", DRAWL_DRAFT_ABOUT, 0, "name", "", "needed"},
    {"no-id", DRAWL_DRAFT_ABOUT, 0, "id", " ", "needed"},
    {"day", DRAWL_DRAFT_ABOUT, 0, "source.date", "25.11.2026", "2026-11-25"},
    {"day-absent", DRAWL_DRAFT_ABOUT, 0, "source.date", "2026-02-30", "2026-11-25"},
    {"price", DRAWL_DRAFT_ABOUT, 0, "price_day", "1.005", "two decimals"},
    {"price-negative", DRAWL_DRAFT_ABOUT, 0, "price_day", "-5", "two decimals"},
    {"step", DRAWL_DRAFT_ABOUT, 0, "rates.step", "one", "number"},
    {"also", DRAWL_DRAFT_ABOUT, 0, "rates.also", "23.976 x", "x"},
    {"tracks", DRAWL_DRAFT_ABOUT, 0, "audio_tracks", "65", "from 0 to 64"},
    {"tracks-part", DRAWL_DRAFT_ABOUT, 0, "audio_tracks", "1.5", "whole"},
    {"percent", DRAWL_DRAFT_ABOUT, 0, "buffer.pre_percent", "101", "from 0 to 100"},
    {"buffer-without-size", DRAWL_DRAFT_ABOUT, 0, "buffer.bytes", "", "size"},
    {"watts", DRAWL_DRAFT_ABOUT, 0, "power.watts", "-1", "from 0"},
    {"size-id-twice", DRAWL_DRAFT_SIZES, 1, "id", "4096x2304", "another row"},
    {"pixels", DRAWL_DRAFT_SIZES, 0, "width", "0", "from 1"},
    {"pixels-none", DRAWL_DRAFT_SIZES, 0, "height", "", "needed"},
    {"ambiguous-comma", DRAWL_DRAFT_SIZES, 0, "readout_ms", "1,500", "1,500"},
    {"card-bytes", DRAWL_DRAFT_CARDS, 0, "bytes", "0", "above 0"},
    {"card-nothing-known", DRAWL_DRAFT_CARDS, 0, "write_mb_s", "", "class"},
    {"lowest", DRAWL_DRAFT_LIMITS, 0, "lowest_rate", "0", "0"},
    {"highest-none", DRAWL_DRAFT_LIMITS, 0, "highest_rate", "", "needed"},
    {"note", DRAWL_DRAFT_FITS, 0, "what", "", "needed"},
};

/* Marked where it is and nowhere else, no body meanwhile; mended, all is well. */
static void
test_wrong (gconstpointer data)
{
  const Wrong *row = data;
  g_autoptr (DrawlBody) body = load ("ferrule.json");
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new_from_body (body);
  g_autofree char *before = g_strdup (text (draft, row->table, row->row, row->key));
  guint n = 0;

  type (draft, row->table, row->row, row->key, row->typed);
  g_assert_nonnull (mistake (draft, row->table, row->row, row->key));
  g_assert_nonnull (strstr (mistake (draft, row->table, row->row, row->key), row->says));
  for (guint table = 0; table < DRAWL_N_DRAFT_TABLES; table++)
    n += drawl_body_draft_n_mistakes (draft, table);
  g_assert_cmpuint (n, ==, 1);
  g_assert_null (drawl_body_draft_get_body (draft));
  type (draft, row->table, row->row, row->key, before);
  g_assert_null (mistake (draft, row->table, row->row, row->key));
  g_assert_nonnull (drawl_body_draft_get_body (draft));
}

static void
test_limits_against_the_rest (void)
{
  g_autoptr (DrawlBody) body = load ("mullion-8.json");
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new_from_body (body);

  type (draft, DRAWL_DRAFT_LIMITS, 2, "lowest_rate", "60");
  g_assert_nonnull (strstr (mistake (draft, DRAWL_DRAFT_LIMITS, 2, "highest_rate"), "above"));
  type (draft, DRAWL_DRAFT_LIMITS, 2, "lowest_rate", "1");
  type (draft, DRAWL_DRAFT_LIMITS, 2, "card_classes", "VPG-1600");
  g_assert_nonnull (strstr (mistake (draft, DRAWL_DRAFT_LIMITS, 2, "card_classes"), "VPG-1600"));
  type (draft, DRAWL_DRAFT_LIMITS, 2, "card_classes", "VPG-400");
  type (draft, DRAWL_DRAFT_CODECS, 1, "law", "vc3-1235");
  g_assert_nonnull (strstr (mistake (draft, DRAWL_DRAFT_LIMITS, 2, "codecs"), "1920 × 1080"));
  type (draft, DRAWL_DRAFT_CODECS, 1, "law", "mosaic-12");
  g_assert_nonnull (drawl_body_draft_get_body (draft));
}

/* A level is held against the limits; a law by name has none. */
static void
test_level (void)
{
  g_autoptr (DrawlBody) body = load ("treadle-4.json");
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new_from_body (body);

  g_assert_cmpstr (text (draft, DRAWL_DRAFT_CODECS, 0, "level"), ==, "h265-6.1");
  type (draft, DRAWL_DRAFT_CODECS, 0, "level", "h265-6");
  g_assert_nonnull (strstr (mistake (draft, DRAWL_DRAFT_LIMITS, 6, "codecs"), "level 6, which"));
  g_assert_null (drawl_body_draft_get_body (draft));
  type (draft, DRAWL_DRAFT_CODECS, 0, "level", "");
  g_assert_null (drawl_body_draft_get_body (draft)->codecs[0].level);
  type (draft, DRAWL_DRAFT_CODECS, 0, "level", "h265-6.2");
  g_assert_nonnull (drawl_body_draft_get_body (draft)->codecs[0].level);
  type (draft, DRAWL_DRAFT_CODECS, 0, "law", "mosaic-12");
  g_assert_nonnull (drawl_body_draft_get_body (draft));
  g_assert_null (drawl_body_draft_get_body (draft)->codecs[0].level);
}

static void
test_rows_that_differ (void)
{
  g_autoptr (DrawlBody) body = load ("mullion-8.json");
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new_from_body (body);
  guint n = drawl_body_draft_n_rows (draft, DRAWL_DRAFT_LIMITS);
  g_autoptr (JsonArray) again = json_array_new ();

  json_array_add_element (
      again, json_array_dup_element (json_object_get_array_member (body->json, "limits"), 2));
  drawl_body_draft_add_rows (draft, DRAWL_DRAFT_LIMITS, again);
  g_assert_nonnull (drawl_body_draft_get_body (draft));
  type (draft, DRAWL_DRAFT_LIMITS, n, "highest_rate", "54");
  g_assert_nonnull (
      strstr (drawl_body_draft_row_mistake (draft, row_at (draft, DRAWL_DRAFT_LIMITS, n)), "53"));
  g_assert_null (drawl_body_draft_get_body (draft));
  drawl_body_draft_remove_row (draft, row_at (draft, DRAWL_DRAFT_LIMITS, n));
  g_assert_nonnull (drawl_body_draft_get_body (draft));
}

static void
test_circle (void)
{
  g_autoptr (DrawlBody) body = load ("mullion-8.json");
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new_from_body (body);
  DrawlDraftRow *first = row_at (draft, DRAWL_DRAFT_LICENCES, 0);
  DrawlDraftRow *second = row_at (draft, DRAWL_DRAFT_LICENCES, 1);
  guint requires = drawl_draft_column (DRAWL_DRAFT_LICENCES, "requires");

  drawl_body_draft_refer (draft, first, requires, second, TRUE);
  g_assert_nonnull (drawl_body_draft_get_body (draft));
  drawl_body_draft_refer (draft, second, requires, first, TRUE);
  g_assert_nonnull (strstr (drawl_body_draft_mistake (draft), "circle"));
  g_assert_null (drawl_body_draft_get_body (draft));
}

/* ---- From nothing ---- */

static void
test_from_nothing (void)
{
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new ();

  g_assert_false (drawl_body_draft_get_changed (draft));
  g_assert_null (drawl_body_draft_get_body (draft));
  g_assert_true (drawl_body_draft_cell_is_missing (draft, row_at (draft, DRAWL_DRAFT_ABOUT, 0), 0));
  fill (draft);
  DrawlBody *body = drawl_body_draft_get_body (draft);
  g_assert_nonnull (body);
  g_assert_cmpstr (body->id, ==, "spindle-3");
  g_assert_cmpstr (body->sizes[0].id, ==, "3840x2160-open-gate");
  assert_rational (body->limits[0].highest, 120000, 1001);
  assert_rational (body->codecs[0].payload.mbps, 481, 2);
}

static void
test_ids_from_names (void)
{
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new ();

  fill (draft);
  drawl_body_draft_add_row (draft, DRAWL_DRAFT_SIZES);
  type (draft, DRAWL_DRAFT_SIZES, 1, "name", "3840 × 2160, open gate");
  g_assert_cmpstr (text (draft, DRAWL_DRAFT_SIZES, 1, "id"), ==, "3840x2160-open-gate-2");
  type (draft, DRAWL_DRAFT_SIZES, 1, "id", "gate");
  type (draft, DRAWL_DRAFT_SIZES, 1, "name", "Else");
  g_assert_cmpstr (text (draft, DRAWL_DRAFT_SIZES, 1, "id"), ==, "gate");
}

static void
test_film (void)
{
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new ();

  fill (draft);
  type (draft, DRAWL_DRAFT_ABOUT, 0, "kind", "film");
  g_assert_false (drawl_body_draft_has_table (draft, DRAWL_DRAFT_CODECS));
  g_assert_nonnull (mistake (draft, DRAWL_DRAFT_SIZES, 0, "gauge"));
  type (draft, DRAWL_DRAFT_SIZES, 0, "gauge", "35-4");
  drawl_body_draft_add_row (draft, DRAWL_DRAFT_MAGAZINES);
  type (draft, DRAWL_DRAFT_MAGAZINES, 0, "name", "400 ft");
  type (draft, DRAWL_DRAFT_MAGAZINES, 0, "feet", "400");
  DrawlBody *body = drawl_body_draft_get_body (draft);
  g_assert_nonnull (body);
  g_assert_cmpint ((int)body->kind, ==, DRAWL_BODY_FILM);
  g_assert_cmpuint (body->n_magazines, ==, 1);
  g_assert_cmpuint (body->n_codecs, ==, 0);
  g_assert_null (json_object_get_member (body->json, "codecs"));
}

static void
test_nothing_left (void)
{
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new ();

  fill (draft);
  drawl_body_draft_clear_rows (draft, DRAWL_DRAFT_LIMITS);
  g_assert_nonnull (drawl_body_draft_table_mistake (draft, DRAWL_DRAFT_LIMITS));
  g_assert_nonnull (drawl_body_draft_get_body_but_limits (draft));
  g_assert_null (drawl_body_draft_get_body (draft));
}

/* ---- The example of a law ---- */

typedef struct {
  const char *name;
  const char *law;
  const char *example;
} Law;

static const Law laws[] = {
    {"mosaic", "mosaic-12", "One frame at 1920 × 1080: 3.11 MB; 746 MB/s at 240 fps"},
    {"packed", "packed-422-8", "One frame at 1920 × 1080: 4.15 MB; 995 MB/s at 240 fps"},
    {"of-one-size", "vc3-1250", "One frame at 1280 × 720: 459 kB; 110 MB/s at 240 fps"},
};

static char *
plain_spaces (const char *text_with)
{
  g_auto (GStrv) parts = g_strsplit (text_with, "\u00a0", -1);
  return g_strjoinv (" ", parts);
}

static void
test_example (gconstpointer data)
{
  const Law *row = data;
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new ();

  type (draft, DRAWL_DRAFT_SIZES, 0, "width", "1920");
  type (draft, DRAWL_DRAFT_SIZES, 0, "height", "1080");
  type (draft, DRAWL_DRAFT_LIMITS, 0, "highest_rate", "240");
  type (draft, DRAWL_DRAFT_CODECS, 0, "law", row->law);
  g_autofree char *example =
      drawl_body_draft_codec_example (draft, row_at (draft, DRAWL_DRAFT_CODECS, 0));
  g_assert_nonnull (example);
  g_autofree char *plain = plain_spaces (example);
  g_assert_cmpstr (plain, ==, row->example);
}

static void
test_example_of_its_own (void)
{
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new ();

  g_assert_null (drawl_body_draft_codec_example (draft, row_at (draft, DRAWL_DRAFT_CODECS, 0)));
  type (draft, DRAWL_DRAFT_CODECS, 0, "payload.kind", "fixed");
  type (draft, DRAWL_DRAFT_CODECS, 0, "payload.frame_bytes", "1000000");
  g_autofree char *example =
      drawl_body_draft_codec_example (draft, row_at (draft, DRAWL_DRAFT_CODECS, 0));
  g_autofree char *plain = plain_spaces (example);
  g_assert_cmpstr (plain, ==, "One frame at 1920 × 1080: 1 MB; 24 MB/s at 24 fps");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/body-draft/unchanged", shipped, test_unchanged);
  add_rows ("/body-draft/typed-again", shipped, test_typed_again);
  add_rows ("/body-draft/wrong", wrong, test_wrong);
  add_rows ("/body-draft/example", laws, test_example);
  g_test_add_func ("/body-draft/example-of-its-own", test_example_of_its_own);
  g_test_add_func ("/body-draft/unknown-keys-stay", test_unknown_keys_stay);
  g_test_add_func ("/body-draft/limits-against-the-rest", test_limits_against_the_rest);
  g_test_add_func ("/body-draft/level", test_level);
  g_test_add_func ("/body-draft/rows-that-differ", test_rows_that_differ);
  g_test_add_func ("/body-draft/circle", test_circle);
  g_test_add_func ("/body-draft/from-nothing", test_from_nothing);
  g_test_add_func ("/body-draft/ids-from-names", test_ids_from_names);
  g_test_add_func ("/body-draft/film", test_film);
  g_test_add_func ("/body-draft/nothing-left", test_nothing_left);
  return g_test_run ();
}
