/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The draft of a body: profiles go through it unchanged, each mistake is found where it is and
 * mended there, what refers to a row follows it, and a plan takes the whole in one step. */

#include "plan/body-draft-apply.h"

#include <glib/gstdio.h>

#include "plan/body-file.h"
#include "plan/data-dir.h"
#include "plan/plan-file.h"
#include "rows.h"
#include "tree.h"

static DrawlBody *
load (const char *name)
{
  g_autofree char *path = drawl_data_file ("bodies", name, NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  DrawlBody *body = drawl_body_load (file, &error);

  g_assert_no_error (error);
  return body;
}

static DrawlDraftRow *
row_at (DrawlBodyDraft *draft, DrawlDraftTable table, guint index)
{
  return drawl_body_draft_get_row (draft, table, index);
}

static void
type (DrawlBodyDraft *draft, DrawlDraftTable table, guint index, const char *key, const char *text)
{
  drawl_body_draft_set (draft, row_at (draft, table, index), drawl_draft_column (table, key), text);
}

static const char *
text (DrawlBodyDraft *draft, DrawlDraftTable table, guint index, const char *key)
{
  return drawl_body_draft_get (draft, row_at (draft, table, index),
                               drawl_draft_column (table, key));
}

static const char *
mistake (DrawlBodyDraft *draft, DrawlDraftTable table, guint index, const char *key)
{
  return drawl_body_draft_cell_mistake (draft, row_at (draft, table, index),
                                        drawl_draft_column (table, key));
}

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
fill (DrawlBodyDraft *draft)
{
  type (draft, DRAWL_DRAFT_ABOUT, 0, "name", "Spindle 3");
  type (draft, DRAWL_DRAFT_SIZES, 0, "name", "3840 × 2160, Open Gate");
  type (draft, DRAWL_DRAFT_SIZES, 0, "width", "3840");
  type (draft, DRAWL_DRAFT_SIZES, 0, "height", "2160");
  type (draft, DRAWL_DRAFT_CODECS, 0, "name", "Intra");
  type (draft, DRAWL_DRAFT_CODECS, 0, "payload.mbps", "240,5");
  type (draft, DRAWL_DRAFT_CODECS, 0, "payload.at", "23.976");
  type (draft, DRAWL_DRAFT_LIMITS, 0, "lowest_rate", "1");
  type (draft, DRAWL_DRAFT_LIMITS, 0, "highest_rate", "119.88");
}

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

/* ---- Ids that change ---- */

static void
test_rename (void)
{
  g_autoptr (DrawlBody) body = load ("mullion-8.json");
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new_from_body (body);

  /* By way of an empty id, as it is typed. */
  type (draft, DRAWL_DRAFT_SIZES, 0, "id", "");
  type (draft, DRAWL_DRAFT_SIZES, 0, "id", "gate");
  type (draft, DRAWL_DRAFT_LICENCES, 0, "id", "gate-licence");
  g_assert_cmpstr (text (draft, DRAWL_DRAFT_LIMITS, 0, "sizes"), ==, "gate");
  DrawlBody *after = drawl_body_draft_get_body (draft);
  g_assert_nonnull (after);
  g_assert_cmpuint (after->n_limits, ==, body->n_limits);
  g_assert_cmpint (drawl_body_size_index (after, "gate"), ==, 0);
  g_assert_cmphex (after->limits[0].licences, ==, body->limits[0].licences);
}

static void
test_remove (void)
{
  g_autoptr (DrawlBody) body = load ("mullion-8.json");
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new_from_body (body);

  drawl_body_draft_remove_row (draft, row_at (draft, DRAWL_DRAFT_SIZES, 0));
  g_assert_nonnull (mistake (draft, DRAWL_DRAFT_LIMITS, 0, "sizes"));
  g_assert_nonnull (mistake (draft, DRAWL_DRAFT_LIMITS, 1, "sizes"));
  g_assert_null (mistake (draft, DRAWL_DRAFT_LIMITS, 2, "sizes"));
}

static DrawlPlan *
demo (void)
{
  g_autofree char *path = drawl_data_file ("demo", "glass.drawl", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  DrawlPlan *plan = drawl_plan_load (file, NULL, &error);

  g_assert_no_error (error);
  return plan;
}

static void
apply (DrawlBodyDraft *draft, DrawlPlan *plan, DrawlHiredBody *hired)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (drawl_body_draft_apply (draft, plan, hired, &error));
  g_assert_no_error (error);
}

/* Sizes, codecs, the tier and the card go along; verdicts are the same; one step. */
static void
test_apply_renamed (void)
{
  g_autoptr (DrawlPlan) plan = demo ();
  DrawlHiredBody *hired = drawl_plan_find_body (plan, "A");
  g_autoptr (DrawlHiredFields) before =
      drawl_hired_fields_copy (drawl_hired_body_get_fields (hired));
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new_from_body (before->body);
  DrawlShot *shot = drawl_plan_get_shot (plan, 0);
  DrawlVerdict verdict = drawl_shot_get_verdict (shot);
  g_autofree char *size = g_strdup (drawl_shot_get_fields (shot)->size);
  guint index = (guint)drawl_body_size_index (before->body, size);

  g_assert_cmpstr (drawl_shot_get_fields (shot)->body, ==, "A");
  type (draft, DRAWL_DRAFT_SIZES, index, "id", "renamed");
  type (draft, DRAWL_DRAFT_CARDS, (guint)before->card, "id", "renamed-card");
  apply (draft, plan, hired);
  g_assert_cmpstr (drawl_shot_get_fields (shot)->size, ==, "renamed");
  g_assert_cmpint ((int)drawl_shot_get_verdict (shot), ==, (int)verdict);
  g_assert_cmpint (drawl_hired_body_get_fields (hired)->card, ==, before->card);
  drawl_plan_undo (plan);
  g_assert_cmpstr (drawl_shot_get_fields (shot)->size, ==, size);
  g_assert_true (drawl_hired_fields_equal (drawl_hired_body_get_fields (hired), before));
  g_assert_false (drawl_plan_can_undo (plan));
}

static void
test_apply_without_a_licence (void)
{
  g_autoptr (DrawlPlan) plan = demo ();
  DrawlHiredBody *hired = drawl_plan_find_body (plan, "A");
  g_autoptr (DrawlHiredFields) fields =
      drawl_hired_fields_copy (drawl_hired_body_get_fields (hired));
  guint n = fields->body->n_licences;

  fields->tier = DRAWL_TIER_BIT (0) | DRAWL_TIER_BIT (n - 1);
  g_assert_true (drawl_plan_set_body (plan, hired, fields, "Tier", NULL));
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new_from_body (fields->body);
  drawl_body_draft_clear_rows (draft, DRAWL_DRAFT_LIMITS);
  drawl_body_draft_add_row (draft, DRAWL_DRAFT_LIMITS);
  DrawlDraftRow *limit = row_at (draft, DRAWL_DRAFT_LIMITS, 0);
  drawl_body_draft_refer (draft, limit, 0, row_at (draft, DRAWL_DRAFT_SIZES, 0), TRUE);
  drawl_body_draft_refer (draft, limit, 1, row_at (draft, DRAWL_DRAFT_CODECS, 0), TRUE);
  type (draft, DRAWL_DRAFT_LIMITS, 0, "lowest_rate", "1");
  type (draft, DRAWL_DRAFT_LIMITS, 0, "highest_rate", "50");
  drawl_body_draft_remove_row (draft, row_at (draft, DRAWL_DRAFT_LICENCES, 0));
  apply (draft, plan, hired);
  g_assert_cmphex (drawl_hired_body_get_tier (hired), ==, DRAWL_TIER_BIT (n - 2));
}

static void
test_apply_with_mistakes (void)
{
  g_autoptr (DrawlPlan) plan = demo ();
  DrawlHiredBody *hired = drawl_plan_find_body (plan, "A");
  DrawlBody *before = drawl_hired_body_get_body (hired);
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new ();
  g_autoptr (GError) error = NULL;

  g_assert_false (drawl_body_draft_apply (draft, plan, hired, &error));
  g_assert_nonnull (error);
  g_assert_true (drawl_hired_body_get_body (hired) == before);
  g_assert_false (drawl_plan_can_undo (plan));
}

static void
test_save_own (void)
{
  g_autoptr (DrawlBodyDraft) draft = drawl_body_draft_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *path =
      g_build_filename (g_get_user_data_dir (), "drawl", "bodies", "--up.json", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);

  fill (draft);
  type (draft, DRAWL_DRAFT_ABOUT, 0, "id", "./up");
  g_assert_true (drawl_body_save_own (drawl_body_draft_get_body (draft), &error));
  g_assert_no_error (error);
  g_autoptr (DrawlBody) again = drawl_body_load (file, &error);
  g_assert_no_error (error);
  g_assert_true (json_object_equal (again->json, drawl_body_draft_get_body (draft)->json));
  g_unlink (path);
}

/* A home for the one test that saves; nothing may have asked for the folder before. */
static char *data_folder;

static void
own_data_folder (void)
{
  data_folder = g_dir_make_tmp ("drawl-data-XXXXXX", NULL);
  g_assert_nonnull (data_folder);
  g_setenv ("XDG_DATA_HOME", data_folder, TRUE);
}

static void
remove_data_folder (void)
{
  remove_tree (data_folder);
  g_free (data_folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  own_data_folder ();
  add_rows ("/body-draft/unchanged", shipped, test_unchanged);
  add_rows ("/body-draft/typed-again", shipped, test_typed_again);
  add_rows ("/body-draft/wrong", wrong, test_wrong);
  add_rows ("/body-draft/example", laws, test_example);
  g_test_add_func ("/body-draft/example-of-its-own", test_example_of_its_own);
  g_test_add_func ("/body-draft/unknown-keys-stay", test_unknown_keys_stay);
  g_test_add_func ("/body-draft/limits-against-the-rest", test_limits_against_the_rest);
  g_test_add_func ("/body-draft/rows-that-differ", test_rows_that_differ);
  g_test_add_func ("/body-draft/circle", test_circle);
  g_test_add_func ("/body-draft/from-nothing", test_from_nothing);
  g_test_add_func ("/body-draft/ids-from-names", test_ids_from_names);
  g_test_add_func ("/body-draft/film", test_film);
  g_test_add_func ("/body-draft/nothing-left", test_nothing_left);
  g_test_add_func ("/body-draft/rename", test_rename);
  g_test_add_func ("/body-draft/remove", test_remove);
  g_test_add_func ("/body-draft/apply-renamed", test_apply_renamed);
  g_test_add_func ("/body-draft/apply-without-a-licence", test_apply_without_a_licence);
  g_test_add_func ("/body-draft/apply-with-mistakes", test_apply_with_mistakes);
  g_test_add_func ("/body-draft/save-own", test_save_own);
  int result = g_test_run ();
  remove_data_folder ();
  return result;
}
