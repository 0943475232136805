/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Body profiles: what a sound one amounts to, and what is said about each that is not. A row of the
 * broken ones changes one thing in a sound profile. */

#include "plan/body-file.h"

#include <glib/gstdio.h>
#include <string.h>

#include "bodies.h"
#include "plan/body-reader.h"
#include "plan/error.h"
#include "rows.h"

static void
test_sound (void)
{
  g_autoptr (DrawlBody) body = sound_body (DIGITAL_BODY);

  g_assert_cmpstr (body->id, ==, "tern");
  g_assert_cmpstr (body->maker, ==, "Kittiwake");
  g_assert_cmpstr (body->source_date, ==, "2026-05-04");
  g_assert_cmpint (body->price, ==, 18000);
  g_assert_cmpuint (body->n_sizes, ==, 3);
  assert_same (body->sizes[0].window_h_mm, exact ("14.85"));
  assert_same (body->sizes[0].readout_ms, exact ("7.5"));
  assert_same (body->sizes[1].readout_ms, exact ("0"));
  g_assert_cmpstr (body->codecs[3].law->id, ==, "vc3-1237");
  g_assert_cmpint (body->codecs[3].payload.frame_bytes, ==, 606208);
  assert_same (body->codecs[0].payload.mbps, exact ("600"));
  g_assert_null (body->codecs[0].level);
  g_assert_cmpstr (body->codecs[1].level->id, ==, "h265-5.1");
  g_assert_cmpuint (body->licences[1].requires, ==, DRAWL_TIER_BIT (0));
  g_assert_cmpuint (body->licences[3].replaces, ==, 7);
  g_assert_cmpint (body->cards[0].write_bytes_s, ==, 60000000);
  g_assert_cmpint (body->cards[2].write_bytes_s, ==, 800000000);
  g_assert_cmpuint (body->audio_tracks, ==, 2);
  assert_same (body->watts, exact ("32.5"));
  g_assert_cmpstr (body->fits[0].why, ==, "It ships without");
  g_assert_cmpstr (body->returns[0].why, ==, "");
}

/* Every row stands once a size and codec, sorted, and none was lost. */
static void
test_limits_expanded (void)
{
  g_autoptr (DrawlBody) body = sound_body (DIGITAL_BODY);
  guint n_rows, seen = 0;

  g_assert_cmpuint (body->n_limits, ==, 11);
  for (guint size = 0; size < body->n_sizes; size++)
    for (guint codec = 0; codec < body->n_codecs; codec++) {
      const DrawlBodyLimit *rows = drawl_body_limits_of (body, size, codec, &n_rows);
      for (guint i = 0; i < n_rows; i++)
        g_assert_cmpint (drawl_body_limit_compare (&rows[i], size, codec), ==, 0);
      seen += n_rows;
    }
  g_assert_cmpuint (seen, ==, body->n_limits);
  drawl_body_limits_of_size (body, 1, &n_rows);
  g_assert_cmpuint (n_rows, ==, 5);

  const DrawlBodyLimit *fast = drawl_body_limits_of (body, 1, 0, &n_rows);
  g_assert_cmpuint (n_rows, ==, 2);
  g_assert_cmpstr (fast[1].card_class->id, ==, "V90"); /* the slower of the two that will do */
  g_assert_cmpint (fast[1].card_bytes_s, ==, 90000000);
}

static void
test_rates_sorted (void)
{
  g_autoptr (DrawlBody) body = make_body (DIGITAL_BODY, "['24000/1001',29.97,'60000/1001']",
                                          "['59.94',25,'30000/1001',29.97,'25',23.976]", NULL);

  g_assert_cmpuint (body->n_rates, ==, 4);
  assert_same (body->rates[0], exact ("24000/1001"));
  assert_same (body->rates[1], exact ("25"));
  assert_same (body->rates[2], exact ("30000/1001"));
  assert_same (body->rates[3], exact ("60000/1001"));
}

static void
test_unknown_keys_kept (void)
{
  g_autoptr (DrawlBody) body = sound_body (DIGITAL_BODY);
  JsonObject *own = json_object_get_object_member (body->json, "own_key");

  g_assert_true (json_object_get_boolean_member (own, "kept"));
}

static void
test_film (void)
{
  g_autoptr (DrawlBody) body = sound_body (FILM_BODY);

  g_assert_cmpint (body->kind, ==, DRAWL_BODY_FILM);
  g_assert_cmpstr (body->sizes[0].gauge->id, ==, "16");
  g_assert_cmpuint (body->n_limits, ==, 3);
  g_assert_cmpuint (body->limits[0].codec, ==, DRAWL_BODY_NO_CODEC);
  assert_same (body->magazines[1].feet, exact ("400"));
}

static void
test_shared (void)
{
  DrawlBody *body = sound_body (BUFFER_BODY);
  DrawlBody *copy = g_boxed_copy (DRAWL_TYPE_BODY, body);

  g_assert_true (copy == body);
  drawl_body_unref (body);
  g_assert_cmpstr (copy->name, ==, "Swift 2");
  g_boxed_free (DRAWL_TYPE_BODY, copy);
}

/* ---- Broken ones ---- */

typedef struct {
  const char *name;
  const char *find; /* in DIGITAL_BODY, or in FILM_BODY where the name begins with "film" */
  const char *replace;
  int code;
  const char *says;
} Broken;

static const Broken broken[] = {
    /* Head */
    {"not-a-body", "'drawl-body'", "'drawl-plan'", DRAWL_PLAN_ERROR_FORMAT, "drawl-body"},
    {"newer", "'version':1", "'version':2", DRAWL_PLAN_ERROR_VERSION, "newer Drawl"},
    {"no-id", "'id':'tern',", "", DRAWL_PLAN_ERROR_VALUE, "tern.json: “id” is missing"},
    {"id-empty", "'id':'tern'", "'id':''", DRAWL_PLAN_ERROR_VALUE, "not empty"},
    {"id-null", "'id':'tern'", "'id':null", DRAWL_PLAN_ERROR_VALUE, "“id” is null; a text"},
    {"name-a-number", "'name':'Tern 4'", "'name':4", DRAWL_PLAN_ERROR_VALUE, "“name” is 4"},
    {"maker-a-list", "'maker':'Kittiwake'", "'maker':[]", DRAWL_PLAN_ERROR_VALUE, "a list"},
    {"no-kind", "'kind':'digital',", "", DRAWL_PLAN_ERROR_VALUE, "“kind” is missing"},
    {"kind-unknown", "'kind':'digital'", "'kind':'tape'", DRAWL_PLAN_ERROR_VALUE,
     "“digital” or “film”"},
    {"source-a-text", "'source':{'document':'Tern 4 data sheet','date':'2026-05-04'}",
     "'source':'sheet'", DRAWL_PLAN_ERROR_VALUE, "an object is expected"},
    {"day-impossible", "2026-05-04", "2026-02-30", DRAWL_PLAN_ERROR_VALUE, "“date” is"},
    {"day-in-words", "2026-05-04", "4 May 2026", DRAWL_PLAN_ERROR_VALUE, "a day like"},
    {"day-of-a-week", "2026-05-04", "2026-W19-1", DRAWL_PLAN_ERROR_VALUE, "a day like"},
    {"price-negative", "'price_day':'180.00'", "'price_day':-1", DRAWL_PLAN_ERROR_VALUE,
     "an amount of money"},
    {"price-three-places", "'180.00'", "'180.001'", DRAWL_PLAN_ERROR_VALUE, "an amount of money"},
    {"price-endless", "'180.00'", "1e400", DRAWL_PLAN_ERROR_VALUE, "too large"},
    {"step-negative", "'step':1", "'step':-1", DRAWL_PLAN_ERROR_VALUE, "“step” is -1"},
    {"rates-a-list", "'rates':{'step':1,'also':['24000/1001',29.97,'60000/1001']}", "'rates':[24]",
     DRAWL_PLAN_ERROR_VALUE, "“rates” is a list"},
    {"rate-zero", "29.97", "0", DRAWL_PLAN_ERROR_VALUE, "“rates”: “also”"},
    {"rate-null", "29.97", "null", DRAWL_PLAN_ERROR_VALUE, "a rate is expected"},
    {"rate-with-a-tail", "'24000/1001'", "'24/1001x'", DRAWL_PLAN_ERROR_VALUE, "24/1001x"},
    {"audio-negative", "'audio_tracks':2", "'audio_tracks':-2", DRAWL_PLAN_ERROR_VALUE,
     "from 0 to 64"},
    {"audio-half", "'audio_tracks':2", "'audio_tracks':2.5", DRAWL_PLAN_ERROR_VALUE, "whole"},
    {"watts-endless", "32.5", "1e999", DRAWL_PLAN_ERROR_VALUE, "“power”: “watts”"},
    {"magazines-on-digital", "'cards':", "'magazines':[],'cards':", DRAWL_PLAN_ERROR_VALUE,
     "only a film body has them"},
    /* Tables */
    {"sizes-missing", "'sizes':[", "'other':[", DRAWL_PLAN_ERROR_UNKNOWN, "size “uhd”"},
    {"size-a-text", "{'id':'hd','name':'1920 × 1080','width':1920,'height':1080}", "'hd'",
     DRAWL_PLAN_ERROR_VALUE, "“sizes”, row 2"},
    {"size-null", "{'id':'hd','name':'1920 × 1080','width':1920,'height':1080}", "null",
     DRAWL_PLAN_ERROR_VALUE, "a list of objects"},
    {"width-missing", "'width':1920,", "", DRAWL_PLAN_ERROR_VALUE, "“width” is missing"},
    {"width-zero", "'width':1920", "'width':0", DRAWL_PLAN_ERROR_VALUE, "from 1 to 100000"},
    {"width-huge", "'width':1920", "'width':100001", DRAWL_PLAN_ERROR_VALUE, "100001"},
    {"width-wraps", "'width':1920", "'width':4294967297", DRAWL_PLAN_ERROR_VALUE, "4294967297"},
    {"height-endless", "'height':1080", "'height':1e400", DRAWL_PLAN_ERROR_VALUE, "too large"},
    {"window-negative", "'26.4'", "'-26.4'", DRAWL_PLAN_ERROR_VALUE, "window_width_mm"},
    {"size-twice", "'id':'hd'", "'id':'uhd'", DRAWL_PLAN_ERROR_DUPLICATE, "“uhd” stands twice"},
    {"codec-twice", "{'id':'long'", "{'id':'intra'", DRAWL_PLAN_ERROR_DUPLICATE, "“codecs”, row 2"},
    {"licence-twice", "{'id':'wide','name':'Wide u", "{'id':'rate','name':'Wide u",
     DRAWL_PLAN_ERROR_DUPLICATE, "“rate” stands twice"},
    {"card-twice", "'id':'v90'", "'id':'v60'", DRAWL_PLAN_ERROR_DUPLICATE, "“cards”, row 2"},
    {"law-unknown", "vc3-1237", "vc3-9", DRAWL_PLAN_ERROR_UNKNOWN, "codec law “vc3-9”"},
    {"law-and-payload", "'law':'vc3-1237'", "'law':'vc3-1237','payload':{}", DRAWL_PLAN_ERROR_VALUE,
     "one of the two"},
    {"level-of-a-law", "'law':'vc3-1237'", "'law':'vc3-1237','level':'h264-5.1'",
     DRAWL_PLAN_ERROR_VALUE, "“level” is here, but an open law has none"},
    {"level-unknown", "h265-5.1", "h264-7", DRAWL_PLAN_ERROR_UNKNOWN, "codec level “h264-7”"},
    {"level-a-number", "'h265-5.1'", "5.1", DRAWL_PLAN_ERROR_VALUE, "“level” is"},
    {"no-law", ",'law':'vc3-1237'", "", DRAWL_PLAN_ERROR_VALUE, "“law” is missing"},
    {"payload-kind", "'scaling'", "'growing'", DRAWL_PLAN_ERROR_VALUE, "“kind” is"},
    {"payload-no-rate", ",'at':60", "", DRAWL_PLAN_ERROR_VALUE, "“at” is missing"},
    {"payload-rate-zero", "'at':60", "'at':0", DRAWL_PLAN_ERROR_VALUE, "“at”"},
    {"payload-mbps-zero", "'mbps':600", "'mbps':0", DRAWL_PLAN_ERROR_VALUE, "“payload”"},
    {"payload-mbps-huge", "'mbps':600", "'mbps':1e15", DRAWL_PLAN_ERROR_VALUE, "“mbps” is"},
    {"payload-bits", "'stored_bits':12", "'stored_bits':0", DRAWL_PLAN_ERROR_VALUE, "stored_bits"},
    {"payload-sampling", "'mosaic'", "'411'", DRAWL_PLAN_ERROR_VALUE, "“sampling” is"},
    {"requires-unknown", "'requires':['rate']", "'requires':['speed']", DRAWL_PLAN_ERROR_UNKNOWN,
     "licence “speed”"},
    {"requires-a-number", "'requires':['rate']", "'requires':[1]", DRAWL_PLAN_ERROR_VALUE,
     "a list of ids"},
    {"card-no-bytes", "'bytes':64000000000,", "", DRAWL_PLAN_ERROR_VALUE, "“bytes” is missing"},
    {"card-bytes-huge", "64000000000", "1e16", DRAWL_PLAN_ERROR_VALUE, "“bytes” is"},
    {"card-no-speed", ",'write_mb_s':800", "", DRAWL_PLAN_ERROR_VALUE, "“write_mb_s” is missing"},
    {"card-speed-zero", "'write_mb_s':800", "'write_mb_s':0", DRAWL_PLAN_ERROR_VALUE, "above 0"},
    {"card-class-unknown", "'class':'V90'", "'class':'V95'", DRAWL_PLAN_ERROR_UNKNOWN, "“V95”"},
    {"note-empty", "'what':'Dead pixels'", "'what':''", DRAWL_PLAN_ERROR_VALUE, "“pick_up”, row 1"},
    /* Limits */
    {"limits-missing", "'limits':[", "'other':[", DRAWL_PLAN_ERROR_VALUE, "“limits” is missing"},
    {"limits-a-text", "'limits':[", "'limits':'none','other':[", DRAWL_PLAN_ERROR_VALUE, "a list"},
    {"row-null", "'limits':[", "'limits':[null,", DRAWL_PLAN_ERROR_VALUE, "“limits”, row 1"},
    {"row-no-sizes", "'sizes':'wide','codecs':'long'", "'codecs':'long'", DRAWL_PLAN_ERROR_VALUE,
     "at least one size"},
    {"row-no-codecs", "'sizes':'wide','codecs':'long'", "'sizes':'wide'", DRAWL_PLAN_ERROR_VALUE,
     "at least one codec"},
    {"row-size-unknown", "'sizes':'wide','codecs':'long'", "'sizes':'8k','codecs':'long'",
     DRAWL_PLAN_ERROR_UNKNOWN, "row 5: there is no size “8k”"},
    {"row-codec-unknown", "'sizes':'wide','codecs':'long'", "'sizes':'wide','codecs':'jpg'",
     DRAWL_PLAN_ERROR_UNKNOWN, "codec “jpg”"},
    {"row-licence-unknown", "'licences':['wide']", "'licences':['vast']", DRAWL_PLAN_ERROR_UNKNOWN,
     "licence “vast”"},
    {"row-class-unknown", "'VPG-400'", "'VPG-4'", DRAWL_PLAN_ERROR_UNKNOWN, "card class “VPG-4”"},
    {"row-no-lowest", "'lowest_rate':1,'highest_rate':240", "'highest_rate':240",
     DRAWL_PLAN_ERROR_VALUE, "“lowest_rate” is missing"},
    {"row-rate-nan", "'highest_rate':240", "'highest_rate':'nan'", DRAWL_PLAN_ERROR_VALUE, "nan"},
    {"row-rate-endless", "'highest_rate':240", "'highest_rate':1e400", DRAWL_PLAN_ERROR_VALUE,
     "too large"},
    /* Contradictions */
    {"lowest-above-highest", "'lowest_rate':1,'highest_rate':240",
     "'lowest_rate':241,'highest_rate':240", DRAWL_PLAN_ERROR_CONTRADICTION,
     "row 3: the lowest rate, 241, is above the highest, 240"},
    {"nothing-offered", "'rates':{'step':1,'also':['24000/1001',29.97,'60000/1001']}",
     "'rates':{'step':500}", DRAWL_PLAN_ERROR_CONTRADICTION,
     "row 1: this body offers no rate from 1 to 60"},
    {"two-rows-differ",
     "'sizes':'uhd','codecs':'intra','lowest_rate':1,'highest_rate':120,'licences':"
     "['rate']",
     "'sizes':['uhd','hd'],'codecs':'intra','lowest_rate':1,'highest_rate':120",
     DRAWL_PLAN_ERROR_CONTRADICTION, "differ: 1 to 60, and 1 to 120"},
    {"no-card-of-the-class", "['V90','VPG-400']", "['VPG-1600']", DRAWL_PLAN_ERROR_CONTRADICTION,
     "no card of this body reaches the class VPG-1600"},
    {"card-below-its-class", "'class':'V90'", "'class':'V90','write_mb_s':60",
     DRAWL_PLAN_ERROR_CONTRADICTION, "below what the class V90"},
    {"law-of-another-size", "'sizes':'hd','codecs':'vc3'", "'sizes':['hd','uhd'],'codecs':'vc3'",
     DRAWL_PLAN_ERROR_CONTRADICTION, "made for 1920 × 1080 pixels, but the size “uhd”"},
    {"size-beyond-the-level", "h265-5.1", "h264-4.2", DRAWL_PLAN_ERROR_CONTRADICTION,
     "row 1: the codec “long” is H.264, level 4.2, which has no room for the size “uhd”"},
    {"rate-beyond-the-level", "h265-5.1", "h264-5.1", DRAWL_PLAN_ERROR_CONTRADICTION,
     "reaches 30.341 fps at the size “uhd”, not 60"},
    {"sd-card-too-large", "'bytes':64000000000,'class':'V90'",
     "'bytes':128000000000001,'class':'V90'", DRAWL_PLAN_ERROR_CONTRADICTION,
     "“bytes” is more than the 128 TB that an SD card (class V90)"},
    {"requires-itself", "'requires':['rate']", "'requires':['raw']", DRAWL_PLAN_ERROR_CONTRADICTION,
     "“raw” requires itself"},
    {"requires-in-a-circle", "'what':'To 240 fps'", "'requires':['raw']",
     DRAWL_PLAN_ERROR_CONTRADICTION, "in a circle"},
    {"replaces-in-a-circle", "'what':'To 240 fps'", "'replaces':['all']",
     DRAWL_PLAN_ERROR_CONTRADICTION, "replaces itself"},
    /* Film */
    {"film-no-gauge", "'gauge':'16',", "", DRAWL_PLAN_ERROR_VALUE, "“gauge” is missing"},
    {"film-gauge-unknown", "'gauge':'16'", "'gauge':'17'", DRAWL_PLAN_ERROR_UNKNOWN, "gauge “17”"},
    {"film-codecs", "'magazines'", "'codecs':[],'magazines'", DRAWL_PLAN_ERROR_VALUE,
     "a film body has none"},
    {"film-buffer", "'magazines'", "'buffer':{'bytes':1},'magazines'", DRAWL_PLAN_ERROR_VALUE,
     "“buffer” is here"},
    {"film-row-codec", "'sizes':'n16'", "'sizes':'n16','codecs':'raw'", DRAWL_PLAN_ERROR_VALUE,
     "on a film body"},
    {"film-feet-zero", "'feet':100", "'feet':0", DRAWL_PLAN_ERROR_VALUE, "“feet” is 0"},
    {"film-two-rows-differ", "'licences':['hs']", "'licences':[]", DRAWL_PLAN_ERROR_CONTRADICTION,
     "for n16"},
};

static void
test_broken (gconstpointer data)
{
  const Broken *row = data;
  gboolean film = g_str_has_prefix (row->name, "film");
  g_autoptr (GError) error = NULL;
  DrawlBody *body = make_body (film ? FILM_BODY : DIGITAL_BODY, row->find, row->replace, &error);

  g_assert_null (body);
  g_assert_error (error, DRAWL_PLAN_ERROR, row->code);
  g_assert_true (g_str_has_prefix (error->message, "tern.json: "));
  if (strstr (error->message, row->says) == NULL)
    g_error ("\"%s\" does not say \"%s\"", error->message, row->says);
}

/* What only looks wrong: the profile is taken. */
static const Broken odd[] = {
    {"same-row-twice", "'limits':[",
     "'limits':[{'sizes':'hd','codecs':'long','lowest_rate':1,'highest_rate':60},", 0, NULL},
    {"rate-of-another-card", "'limits':[",
     "'limits':[{'sizes':'hd','codecs':'long','lowest_rate':1,'highest_rate':90,"
     "'card_classes':'V90'},",
     0, NULL},
    {"level-not-stated", ",'level':'h265-5.1'", "", 0, NULL},
    {"largest-sd-card", "'bytes':64000000000,'class':'V90'",
     "'bytes':128000000000000,'class':'V90'", 0, NULL},
    {"larger-than-sd", "'bytes':1000000000000,'write", "'bytes':128000000000001,'write", 0, NULL},
    {"codec-faster-than-any-card", "'mbps':600", "'mbps':60000", 0, NULL},
    {"requires-what-it-replaces", "'replaces':['rate','raw','wide']",
     "'requires':['rate'],'replaces':['rate','raw','wide']", 0, NULL},
    {"licence-twice-in-a-row", "'licences':['wide','raw']", "'licences':['wide','raw','raw']", 0,
     NULL},
    {"no-cards", "'cards':[", "'other':[", 0, NULL},
    {"one-pixel", "'width':4096", "'width':1", 0, NULL},
};

static void
test_odd (gconstpointer data)
{
  const Broken *row = data;
  gboolean no_class = g_str_equal (row->name, "no-cards");
  g_autoptr (GError) error = NULL;
  g_autoptr (GString) text = g_string_new (DIGITAL_BODY);

  if (no_class) /* without cards no class can be asked for */
    g_string_replace (text, "'card_classes':['V90','VPG-400']", "'x':1", 1);
  g_autoptr (DrawlBody) body = make_body (text->str, row->find, row->replace, &error);
  g_assert_no_error (error);
  g_assert_nonnull (body);
}

/* ---- Limits of size ---- */

/* @n times @format, which takes a number twice, between commas. */
static char *
repeat (const char *before, const char *middle, const char *after, guint n)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    g_string_append_printf (text, "%s%s%u%s%u%s", i == 0 ? "" : ",", before, i, middle, i, after);
  return g_string_free (text, FALSE);
}

static void
assert_too_large (const char *text, const char *find, const char *replace)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (make_body (text, find, replace, &error));
  g_assert_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_TOO_LARGE);
}

static void
test_too_many_rows (void)
{
  g_autofree char *licences = repeat ("{'id':'x", "','name':'x", "'}", 65);
  g_autofree char *listed = g_strconcat ("'licences':[", licences, ",", NULL);
  g_autofree char *sizes = repeat ("{'id':'x", "','name':'x", "','width':1,'height':1}", 1001);
  g_autofree char *more_sizes = g_strconcat ("'sizes':[", sizes, ",", NULL);
  g_autofree char *long_name = g_strnfill (DRAWL_BODY_TEXT_MAX + 1, 'a');
  g_autofree char *named = g_strconcat ("'name':'", long_name, "'", NULL);

  assert_too_large (DIGITAL_BODY, "'licences':[", listed);
  assert_too_large (DIGITAL_BODY, "'sizes':[", more_sizes);
  assert_too_large (DIGITAL_BODY, "'name':'Tern 4'", named);
}

/* 101 rows over 1,000 sizes come to more than 100,000. */
static void
test_too_many_limits (void)
{
  g_autofree char *sizes = repeat ("{'id':'", "','name':'x", "','width':1,'height':1}", 1000);
  g_autofree char *ids = repeat ("'", "','", "'", 500); /* each id twice: 1,000 of them */
  GString *limits = g_string_new ("'limits':[");

  for (guint i = 0; i < 101; i++)
    g_string_append_printf (
        limits, "{'sizes':[%s],'codecs':'intra','lowest_rate':1,'highest_rate':%u},", ids, i + 1);
  g_autoptr (GString) text = g_string_new (DIGITAL_BODY);
  g_autofree char *more_sizes = g_strconcat ("'sizes':[", sizes, ",", NULL);
  g_string_replace (text, "'sizes':[", more_sizes, 1);
  assert_too_large (text->str, "'limits':[", limits->str);
  g_string_free (limits, TRUE);
}

static void
test_too_many_rows_of_a_pair (void)
{
  g_autofree char *rows = repeat ("{'x", "':1,'y",
                                  "':1,'sizes':'wide','codecs':'vc3',"
                                  "'lowest_rate':1,'highest_rate':2}",
                                  257);
  g_autoptr (GString) text = g_string_new (DIGITAL_BODY);
  g_autofree char *limits = g_strconcat ("'limits':[", rows, ",", NULL);

  g_string_replace (text, "'law':'vc3-1237'", "'payload':{'kind':'constant','mbps':1}", 1);
  assert_too_large (text->str, "'limits':[", limits);
}

/* ---- Folders ---- */

static const struct {
  const char *folder, *name, *text;
} profiles[] = {
    {"bodies", "tern.json", DIGITAL_BODY},
    {"bodies", "broken.json", "{'format':'drawl-body'"},
    {"bodies", "notes.txt", "not looked at"},
    {"drawl/bodies", "puffin.json", FILM_BODY},
};

static void
write_profiles (const char *top)
{
  for (guint i = 0; i < G_N_ELEMENTS (profiles); i++) {
    g_autofree char *folder = g_build_filename (top, profiles[i].folder, NULL);
    g_autofree char *path = g_build_filename (folder, profiles[i].name, NULL);
    g_autofree char *json = with_quotes (profiles[i].text);

    g_assert_cmpint (g_mkdir_with_parents (folder, 0755), ==, 0);
    g_assert_true (g_file_set_contents (path, json, -1, NULL));
  }
}

static void
remove_profiles (const char *top)
{
  static const char *const folders[] = {"drawl/bodies", "drawl", "bodies"};

  for (guint i = 0; i < G_N_ELEMENTS (profiles); i++) {
    g_autofree char *path = g_build_filename (top, profiles[i].folder, profiles[i].name, NULL);
    g_assert_cmpint (g_remove (path), ==, 0);
  }
  for (guint i = 0; i < G_N_ELEMENTS (folders); i++) {
    g_autofree char *path = g_build_filename (top, folders[i], NULL);
    g_assert_cmpint (g_rmdir (path), ==, 0);
  }
  g_assert_cmpint (g_rmdir (top), ==, 0);
}

/* The shipped and the user's, by name; the broken one is told of and left out. */
static void
test_shipped (void)
{
  const char *top = g_getenv ("DRAWL_DATA_DIR");
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func (g_free);

  write_profiles (top);
  g_autoptr (GPtrArray) bodies = drawl_body_load_shipped (problems);
  remove_profiles (top);
  g_assert_cmpuint (bodies->len, ==, 2);
  g_assert_cmpstr (((DrawlBody *)bodies->pdata[0])->name, ==, "Puffin 16");
  g_assert_cmpstr (((DrawlBody *)bodies->pdata[1])->name, ==, "Tern 4");
  g_assert_cmpuint (problems->len, ==, 1);
  g_assert_true (g_str_has_prefix (problems->pdata[0], "broken.json: "));
}

int
main (int argc, char **argv)
{
  g_autofree char *top = g_dir_make_tmp ("drawl-bodies-XXXXXX", NULL);

  /* Both folders of bodies lie in one of this test's own. */
  g_setenv ("DRAWL_DATA_DIR", top, TRUE);
  g_setenv ("XDG_DATA_HOME", top, TRUE);
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/body/sound", test_sound);
  g_test_add_func ("/body/limits-expanded", test_limits_expanded);
  g_test_add_func ("/body/rates-sorted", test_rates_sorted);
  g_test_add_func ("/body/unknown-keys-kept", test_unknown_keys_kept);
  g_test_add_func ("/body/film", test_film);
  g_test_add_func ("/body/shared", test_shared);
  add_rows ("/body/broken", broken, test_broken);
  add_rows ("/body/odd", odd, test_odd);
  g_test_add_func ("/body/too-many-rows", test_too_many_rows);
  g_test_add_func ("/body/too-many-limits", test_too_many_limits);
  g_test_add_func ("/body/too-many-rows-of-a-pair", test_too_many_rows_of_a_pair);
  g_test_add_func ("/body/shipped", test_shipped);
  return g_test_run ();
}
