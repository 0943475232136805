/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Limits from a table: names and ids, rows that cannot hold, and that the body takes what comes
 * out. */

#include "plan/limit-table.h"

#include "bodies.h"
#include "plan/error.h"
#include "plan/json-text.h"
#include "rows.h"

static DrawlLimitTable *
read_table (const DrawlBody *body, const char *text)
{
  g_autoptr (GError) error = NULL;
  DrawlLimitTable *table = drawl_limit_table_read (body, text, strlen (text), &error);

  g_assert_no_error (error);
  return table;
}

/* ---- Good rows ---- */

typedef struct {
  const char *name;
  const char *body;
  const char *text;
  const char *json; /* with single quotes */
} Row;

static const Row rows[] = {
    {"ids", DIGITAL_BODY,
     "size,codec,lowest_rate,highest_rate,licences,card_class\nhd,intra,1,240,rate,V60\n",
     "[{'sizes': ['hd'], 'codecs': ['intra'], 'lowest_rate': '1', 'highest_rate': '240', "
     "'licences': ['rate'], "
     "'card_classes': ['V60']}]"},
    {"names", DIGITAL_BODY, "Resolution;Codec;Min;Max\n3840x2160;RAW 12-BIT;8;59,94\n",
     "[{'sizes': ['uhd'], 'codecs': ['raw'], 'lowest_rate': '8', 'highest_rate': '60000/1001'}]"},
    {"two-licences", DIGITAL_BODY,
     "size\tcodec\tlowest\thighest\tlicences\nwide\traw\t1\t30\twide raw\n",
     "[{'sizes': ['wide'], 'codecs': ['raw'], 'lowest_rate': '1', 'highest_rate': '30', "
     "'licences': ['raw', 'wide']}]"},
    {"no-headings", DIGITAL_BODY, "hd\tlong\t1\t60\n",
     "[{'sizes': ['hd'], 'codecs': ['long'], 'lowest_rate': '1', 'highest_rate': '60'}]"},
    {"said-twice", DIGITAL_BODY, "size,codec,from,to\nhd,long,1,60\n1920 × 1080,long,1,60\n",
     "[{'sizes': ['hd'], 'codecs': ['long'], 'lowest_rate': '1', 'highest_rate': '60'},"
     " {'sizes': ['hd'], 'codecs': ['long'], 'lowest_rate': '1', 'highest_rate': '60'}]"},
    {"film", FILM_BODY, "size,from,to,licences\ns16,1,75,\nRegular 16,1,150,hs\n",
     "[{'sizes': ['s16'], 'lowest_rate': '1', 'highest_rate': '75'},"
     " {'sizes': ['n16'], 'lowest_rate': '1', 'highest_rate': '150', 'licences': ['hs']}]"},
    {"nothing", DIGITAL_BODY, "", "[]"},
};

/* On one line. */
static char *
json_text (JsonArray *array)
{
  g_autoptr (GString) text = g_string_new ("[");

  for (guint i = 0; i < json_array_get_length (array); i++) {
    g_string_append (text, i > 0 ? ", " : "");
    drawl_json_append (text, json_array_get_element (array, i), 0);
  }
  g_string_append_c (text, ']');
  return g_strdup (text->str);
}

static void
test_read (gconstpointer data)
{
  const Row *expected = data;
  g_autoptr (DrawlBody) body = sound_body (expected->body);
  g_autoptr (DrawlLimitTable) table = read_table (body, expected->text);
  g_autoptr (JsonArray) limits = drawl_limit_table_to_json (table);
  g_autofree char *text = json_text (limits), *json = with_quotes (expected->json);

  for (guint i = 0; i < table->rows->len; i++)
    g_assert_cmpstr (((const DrawlLimitTableRow *)table->rows->pdata[i])->reason, ==, NULL);
  g_assert_cmpuint (table->n_good, ==, table->rows->len);
  g_assert_cmpstr (text, ==, json);
}

/* What comes out is what a profile may have. */
static void
test_taken_by_the_body (void)
{
  g_autoptr (DrawlBody) body = sound_body (DIGITAL_BODY);
  g_autoptr (DrawlLimitTable) table =
      read_table (body, "size,codec,lowest_rate,highest_rate,licences,card_class\n"
                        "hd,intra,1,60,,\nhd,intra,1,200,rate,V90\nuhd,raw,8,60,raw,\n");
  g_autoptr (JsonObject) profile = json_object_ref (body->json);
  g_autoptr (GError) error = NULL;

  json_object_set_array_member (profile, "limits", drawl_limit_table_to_json (table));
  g_autoptr (DrawlBody) other = drawl_body_from_json (profile, "other", &error);
  g_assert_no_error (error);
  g_assert_cmpuint (other->n_limits, ==, 3);
  assert_rational (other->limits[other->n_limits - 1].highest, 200, 1);
}

/* ---- Rejected rows ---- */

typedef struct {
  const char *name;
  const char *body;
  const char *text;
  guint line;
  const char *heading;
  const char *says;
} Rejected;

#define HEAD "size,codec,lowest_rate,Max FPS,licences,card class\n"

static const Rejected rejected[] = {
    {"size", DIGITAL_BODY, HEAD "8k,intra,1,60\n", 2, "size", "“8k”: the id or the name of a size"},
    {"no-size", DIGITAL_BODY, HEAD ",intra,1,60\n", 2, "size", "“”: the id or the name of a size"},
    {"codec", DIGITAL_BODY, HEAD "hd,none,1,60\n", 2, "codec",
     "“none”: the id or the name of a codec"},
    {"codec-on-film", FILM_BODY, HEAD "s16,intra,1,60\n", 2, "codec",
     "“intra”: nothing is expected"},
    {"no-lowest", DIGITAL_BODY, HEAD "hd,intra,,60\n", 2, "lowest_rate", "nothing is written"},
    {"highest-0", DIGITAL_BODY, HEAD "hd,intra,1,0\n", 2, "Max FPS", "a rate of 0 is too low"},
    {"lowest-above-highest", DIGITAL_BODY, HEAD "hd,intra,61,60\n", 2, NULL,
     "the lowest rate, 61, is above the highest, 60"},
    {"no-rate-between", DIGITAL_BODY, HEAD "hd,intra,60.1,60.2\n", 2, NULL, "offers no rate from"},
    {"licence", DIGITAL_BODY, HEAD "hd,intra,1,60,rate size\n", 2, "licences",
     "“size”: ids of licences"},
    {"class", DIGITAL_BODY, HEAD "hd,intra,1,60,,V61\n", 2, "card class",
     "“V61”: a card class like"},
    {"class-of-no-card", FILM_BODY, HEAD "s16,,1,60,,V60\n", 2, NULL,
     "no card of this body reaches the class V60"},
    {"law-of-another-size", DIGITAL_BODY, HEAD "uhd,vc3,1,60\n", 2, NULL,
     "is made for 1920 × 1080 pixels"},
    {"beyond-the-level", DIGITAL_BODY, HEAD "uhd,long,1,65\n", 2, NULL,
     "the codec “long” is H.265, level 5.1, which reaches 64.474 fps at the size “uhd”, not 65"},
    {"two-rates", DIGITAL_BODY, HEAD "hd,intra,1,60\nuhd,intra,1,60\n1920 x 1080,Intra,1,50\n", 4,
     NULL, "line 2 says 1 to 60 for this size and codec"},
    {"too-many-cells", DIGITAL_BODY, HEAD "hd,intra,1,60,rate,,V90\n", 2, NULL,
     "goes on after its 6 columns"},
};

static void
test_rejected (gconstpointer data)
{
  const Rejected *expected = data;
  g_autoptr (DrawlBody) body = sound_body (expected->body);
  g_autoptr (DrawlLimitTable) table = read_table (body, expected->text);
  const DrawlLimitTableRow *row = table->rows->pdata[table->rows->len - 1];

  g_assert_null (row->limit);
  g_assert_nonnull (row->reason);
  g_test_message ("%s", row->reason);
  g_assert_cmpuint (row->line, ==, expected->line);
  g_assert_cmpstr (row->heading, ==, expected->heading);
  g_assert_nonnull (strstr (row->reason, expected->says));
  g_assert_cmpuint (table->n_good, ==, table->rows->len - 1);
}

/* A profile takes 256 rows for a size and codec; what is over is rejected here and not there. */
static void
test_too_many (void)
{
  g_autoptr (DrawlBody) body = sound_body (DIGITAL_BODY);
  g_autoptr (GString) text = g_string_new ("size,codec,from,to\n");

  for (guint i = 0; i < 257; i++)
    g_string_append (text, "hd,long,1,60\n");
  g_autoptr (DrawlLimitTable) table = read_table (body, text->str);
  const DrawlLimitTableRow *last = table->rows->pdata[256];
  g_assert_cmpuint (table->n_good, ==, 256);
  g_assert_nonnull (strstr (last->reason, "at most 256 rows for one size and codec"));
}

static void
test_headings (void)
{
  g_autoptr (DrawlBody) body = sound_body (DIGITAL_BODY);
  g_autoptr (DrawlLimitTable) table = read_table (body, "Size,Codec,Crop,Min (fps),Max (fps)\n");

  g_assert_true (table->has_headings);
  g_assert_false (table->latin_1);
  g_assert_cmpuint (table->recognised->len, ==, 4);
  g_assert_cmpuint (table->ignored->len, ==, 1);
  g_assert_cmpstr (table->ignored->pdata[0], ==, "Crop");
}

static void
test_no_table (void)
{
  g_autoptr (DrawlBody) body = sound_body (DIGITAL_BODY);
  g_autoptr (GError) error = NULL;

  g_assert_null (drawl_limit_table_read (body, "\"", 1, &error));
  g_assert_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_SYNTAX);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/limit-table/read", rows, test_read);
  g_test_add_func ("/limit-table/taken-by-the-body", test_taken_by_the_body);
  add_rows ("/limit-table/rejected", rejected, test_rejected);
  g_test_add_func ("/limit-table/too-many", test_too_many);
  g_test_add_func ("/limit-table/headings", test_headings);
  g_test_add_func ("/limit-table/no-table", test_no_table);

  return g_test_run ();
}
