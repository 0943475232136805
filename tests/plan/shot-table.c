/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Shots as a table: headings in many spellings, rows that are good and rows that are not, bodies
 * that come along, and that what is written is read back to the byte. */

#include "plan/shot-table.h"

#include "fixture.h"
#include "plan/data-dir.h"
#include "plan/table-map.h"

static DrawlShotTable *
read_into (DrawlPlan *plan, const char *text)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *before = drawl_plan_to_data (plan, NULL);
  DrawlShotTable *table = drawl_shot_table_read (plan, text, strlen (text), &error);
  g_autofree char *after = drawl_plan_to_data (plan, NULL);

  g_assert_no_error (error);
  g_assert_cmpstr (before, ==, after);
  return table;
}

static DrawlShotTable *
read_table (const char *text)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  return read_into (plan, text);
}

static const DrawlShotTableRow *
row_at (const DrawlShotTable *table, guint i)
{
  g_assert_cmpuint (i, <, table->rows->len);
  return table->rows->pdata[i];
}

/* ---- Good rows ---- */

typedef struct {
  const char *name;
  const char *text;
  const char *shown; /* each good row: line, slate, then the timing as C/P A→S F× r% */
} Row;

static const Row rows[] = {
    {"canonical", "slate,capture_rate,playback_rate,action_s\n9,240,24,0.45\n",
     "2 9: 240@24 0.45>4.5 10x 100%"},
    {"any-order", "action_s,slate,capture_rate\n0.45,9,240\n", "2 9: 240@24 0.45>4.5 10x 100%"},
    {"trade-words", "Shot No.;FPS;Project rate;Duration (s)\n9;100;25;8\n",
     "2 9: 100@25 2>8 4x 100%"},
    {"case-and-underscores", "SLATE,Capture-Rate,ACTION S\n9,48,1\n", "2 9: 48@24 1>2 2x 100%"},
    {"decimal-commas", "slate;capture rate;action time\n9;59,94;0,45\n",
     "2 9: 60000/1001@24 0.45>1125/1001 2500/1001x 100%"},
    {"customary-rates", "slate,capture_rate,playback_rate,action_s\n9,119.88,23.976,1\n",
     "2 9: 120000/1001@24000/1001 1>5 5x 100%"},
    {"units", "slate,fps,action (s),slow factor\n9,240 fps,0.45 s,10x\n",
     "2 9: 240@24 0.45>4.5 10x 100%"},
    {"all-six-agree",
     "slate,capture_rate,playback_rate,action_s,screen_s,slow_factor,post_speed_percent\n"
     "9,240,24,0.45,9,10,50\n",
     "2 9: 240@24 0.45>9 10x 50%"},
    {"rate-follows", "slate,playback_rate,action_s,screen_s\n9,24,0.5,5\n",
     "2 9: 240@24 0.5>5 10x 100%"},
    {"playback-follows", "slate,fps,slow factor,screen time\n9,250,10,5\n",
     "2 9: 250@25 0.5>5 10x 100%"},
    {"empty-cells-follow", "slate,fps,action_s,screen_s\n9,240,,4.5\n8,240,0.45,\n",
     "2 9: 240@24 0.45>4.5 10x 100%/3 8: 240@24 0.45>4.5 10x 100%"},
    {"only-slates", "slate\n9\n8\n",
     "2 9: 24@24 1>1 1x 100% assumed/3 8: 24@24 1>1 1x 100% assumed"},
    {"only-a-rate", "slate,fps\n9,96\n", "2 9: 96@24 1>4 4x 100% assumed"},
    {"only-a-factor", "slate,slower\n9,4\n", "2 9: 96@24 1>4 4x 100% assumed"},
    {"only-a-time", "slate,action time\n9,3\n", "2 9: 24@24 3>3 1x 100%"},
    {"only-a-length", "slate,length\n9,3\n", "2 9: 24@24 3>3 1x 100%"},
    {"only-a-playback-rate", "slate,timebase,length\n9,25,3\n", "2 9: 25@25 3>3 1x 100%"},
    {"no-headings", "9\t1\tThe glass breaks\t240\t24\t0.45\n", "1 9: 240@24 0.45>4.5 10x 100%"},
    {"verdict-is-not-read", "slate,verdict\n9,whatever\n", "2 9: 24@24 1>1 1x 100% assumed"},
    {"spaces-about-cells", "slate, fps ,action time\n 9 , 48 , 1\n", "2 9: 48@24 1>2 2x 100%"},
    {"trailing-empty-cells", "slate,fps,action_s\n9,48,1,,,\n", "2 9: 48@24 1>2 2x 100%"},
    {"the-id-before-a-trade-word", "fps,slate,capture_rate,action_s\n12,9,48,1\n",
     "2 9: 48@24 1>2 2x 100%"},
    {"nothing", "", ""},
    {"only-headings", "slate,fps\n", ""},
};

static char *
show_row (const DrawlShotTableRow *row)
{
  static const DrawlTimingTerm terms[] = {
      DRAWL_TIMING_CAPTURE, DRAWL_TIMING_PLAYBACK, DRAWL_TIMING_ACTION,
      DRAWL_TIMING_SCREEN,  DRAWL_TIMING_FACTOR,   DRAWL_TIMING_POST_SPEED,
  };
  char text[G_N_ELEMENTS (terms)][DRAWL_RATIONAL_TEXT_SIZE];

  for (gsize i = 0; i < G_N_ELEMENTS (terms); i++) {
    DrawlRational value = row->fields->blanks.value[terms[i]];
    if (i < 2)
      drawl_rate_text (value, text[i]);
    else
      drawl_rational_text (value, text[i]);
  }
  return g_strdup_printf ("%u %s: %s@%s %s>%s %sx %s%%%s", row->line, row->fields->slate, text[0],
                          text[1], text[2], text[3], text[4], text[5],
                          row->action_assumed ? " assumed" : "");
}

static void
test_read (gconstpointer data)
{
  const Row *expected = data;
  g_autoptr (DrawlShotTable) table = read_table (expected->text);
  g_autoptr (GString) shown = g_string_new (NULL);

  for (guint i = 0; i < table->rows->len; i++) {
    const DrawlShotTableRow *row = row_at (table, i);
    if (row->reason != NULL)
      g_error ("line %u: %s", row->line, row->reason);
    g_autofree char *text = show_row (row);
    g_string_append_printf (shown, "%s%s", i > 0 ? "/" : "", text);
  }
  g_assert_cmpstr (shown->str, ==, expected->shown);
  g_assert_cmpuint (table->n_good, ==, table->rows->len);
}

static void
test_all_fields (void)
{
  g_autoptr (DrawlShotTable) table = read_table (
      "Scene;Slate;Description;FPS;Camera;Resolution;Codec;Takes;Pre-roll;Post-roll;Audio;Drop;"
      "Base rate;Held;Must;Notes\r\n"
      "\"4\";\" 9 \";\"The glass leaves,\r\nand breaks\";120;A;uhd;intra;3;0,5 s;1/3;2;x;29,97;"
      "capture_rate, screen_s;no;\"said \"\"now\"\"\"\r\n");
  const DrawlShotFields *fields = row_at (table, 0)->fields;

  g_assert_nonnull (fields);
  g_assert_cmpstr (fields->slate, ==, "9");
  g_assert_cmpstr (fields->scene, ==, "4");
  g_assert_cmpstr (fields->action, ==, "The glass leaves,\r\nand breaks");
  g_assert_cmpstr (fields->body, ==, "A");
  g_assert_cmpstr (fields->size, ==, "uhd");
  g_assert_cmpstr (fields->codec, ==, "intra");
  g_assert_cmpuint (fields->takes, ==, 3);
  assert_rational (fields->handle_before_s, 1, 2);
  assert_rational (fields->handle_after_s, 1, 3);
  g_assert_cmpuint (fields->audio_tracks, ==, 2);
  g_assert_true (fields->drop);
  g_assert_false (fields->must);
  g_assert_cmpuint (fields->blanks.held, ==,
                    DRAWL_TIMING_BIT (DRAWL_TIMING_CAPTURE) |
                        DRAWL_TIMING_BIT (DRAWL_TIMING_SCREEN));
  g_assert_cmpstr (fields->notes, ==, "said \"now\"");
  g_assert_cmpint (table->delimiter, ==, ';');
}

static void
test_latin_1 (void)
{
  g_autoptr (DrawlShotTable) table = read_table ("slate,action\n9,Gr\xfc\xdf"
                                                 "e\n");

  g_assert_true (table->latin_1);
  g_assert_cmpstr (row_at (table, 0)->fields->action, ==, "Grüße");
}

/* ---- Headings ---- */

static void
test_headings (void)
{
  g_autoptr (DrawlShotTable) table =
      read_table ("Slate,Lens,FPS,capture rate,Action,Action (s),,Crane?\n9,50,1,48,Falls,2,,no\n");
  g_autoptr (GString) shown = g_string_new (NULL);

  for (guint i = 0; i < table->recognised->len; i++) {
    const DrawlTableHeading *heading = table->recognised->pdata[i];
    g_string_append_printf (shown, "%s>%s ", heading->heading, heading->field);
  }
  for (guint i = 0; i < table->ignored->len; i++)
    g_string_append_printf (shown, "-%s ", (const char *)table->ignored->pdata[i]);
  g_assert_cmpstr (shown->str, ==,
                   "Slate>slate capture rate>capture_rate Action>action Action (s)>action_s "
                   "-Lens -FPS -Crane? ");
  g_assert_true (table->has_headings);
  g_assert_cmpstr (row_at (table, 0)->fields->action, ==, "Falls");
}

static void
test_no_headings (void)
{
  g_autoptr (DrawlShotTable) table = read_table ("9,1,,24\n8,1\n");

  g_assert_false (table->has_headings);
  g_assert_cmpuint (table->recognised->len + table->ignored->len, ==, 0);
  g_assert_cmpuint (table->n_good, ==, 2);
  g_assert_cmpstr (row_at (table, 1)->fields->scene, ==, "1");
}

/* Every column is known by its id and by each of its words. */
static void
test_every_column (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));

  for (guint column = 0; column < drawl_shot_table_n_columns (); column++) {
    g_autoptr (DrawlShotTable) table = read_into (plan, drawl_shot_table_column_id (column));
    g_assert_cmpuint (table->recognised->len, ==, 1);
    const DrawlTableHeading *heading = table->recognised->pdata[0];
    g_assert_cmpstr (heading->field, ==, drawl_shot_table_column_id (column));
  }
}

/* ---- Rejected rows ---- */

typedef struct {
  const char *name;
  const char *text;
  guint line;
  const char *heading; /* NULL: the row as a whole */
  const char *says;
} Rejected;

static const Rejected rejected[] = {
    {"no-slate", "slate,fps\n,24\n", 2, "slate", "a shot must have a slate"},
    {"no-slate-column", "fps\n24\n", 2, NULL, "no column holds the slate"},
    {"slate-on-the-plan", "slate\n2\n", 2, "slate", "the plan has the slate “2” already"},
    {"slate-of-two-lines", "slate\n\"9\nA\"\n", 2, "slate", "has a control character in it"},
    {"slate-twice-but-for-spaces", "slate\n9\n\"9 \"\n", 3, "slate", "line 2 has the slate “9”"},
    {"slate-twice", "slate\n9\n\n9\n", 4, "slate", "line 2 has the slate “9” already"},
    {"rate-0", "slate,Fps\n9,0\n", 2, "Fps", "a rate of 0 is too low"},
    {"rate-word", "slate,Fps\n9,fast\n", 2, "Fps", "“fast” is not a number"},
    {"thousands", "slate;fps\n9;1,500\n", 2, "fps", "could be thousands or a decimal"},
    {"action-negative", "slate,action_s\n9,-1\n", 2, "action_s", "action time cannot be -1 s"},
    {"timecode-for-a-time", "slate,length\n9,00:00:04\n", 2, "length", "is not a number"},
    {"disagreeing", "slate,fps,action_s,screen_s\n9,240,0.45,5\n", 2, NULL,
     "screen time 5 s and action time 0.45 s disagree"},
    {"disagreeing-factor", "slate,fps,playback_rate,slow_factor\n9,240,24,5\n", 2, NULL,
     "slow factor 5× and capture rate 240 fps disagree"},
    {"takes-0", "slate,takes\n9,0\n", 2, "takes",
     "“0” stands there; a whole number from 1 to 10000"},
    {"takes-half", "slate,takes\n9,2.5\n", 2, "takes", "a whole number"},
    {"tracks", "slate,Sound\n9,65\n", 2, "Sound", "a whole number from 0 to 64"},
    {"handle-negative", "slate,pre-roll\n9,-1\n", 2, "pre-roll", "a time of 0 s or more"},
    {"must", "slate,must\n9,maybe\n", 2, "must", "“maybe” stands there; yes or no"},
    {"drop-at-24", "slate,drop\n9,yes\n", 2, NULL, "a rate of 24 has no drop counting"},
    {"held", "slate,held\n9,rate\n", 2, "held", "“rate” stands there"},
    {"body-unknown", "slate,camera\n9,C\n", 2, "camera",
     "there is no body “C” on the plan; A, F, or"},
    {"profile-unknown", "slate,body,profile\n9,C,nothing\n", 2, "profile",
     "there is no profile “nothing”"},
    {"too-many-cells", "slate,notes\n9,falls, and breaks\n", 2, NULL,
     "goes on after its 2 columns"},
    {"line-numbers", "slate,notes\n9,\"a\nb\"\n9,c\n", 4, "slate", "line 2 has the slate"},
};

static void
test_rejected (gconstpointer data)
{
  const Rejected *expected = data;
  g_autoptr (DrawlShotTable) table = read_table (expected->text);
  const DrawlShotTableRow *row = row_at (table, table->rows->len - 1);

  g_assert_null (row->fields);
  g_assert_nonnull (row->reason);
  g_test_message ("%s", row->reason);
  g_assert_cmpuint (row->line, ==, expected->line);
  g_assert_cmpstr (row->heading, ==, expected->heading);
  g_assert_nonnull (strstr (row->reason, expected->says));
  g_assert_false (g_str_has_suffix (row->reason, "."));
  g_assert_cmpuint (table->n_good, ==, table->rows->len - 1);
  g_assert_cmpuint (table->hires->len, ==, 0);

  g_autofree char *text = drawl_shot_table_row_text (row);
  g_assert_true (g_str_has_suffix (text, row->reason));
}

static void
test_no_table (void)
{
  g_autoptr (DrawlPlan) plan = drawl_plan_new ();
  g_autoptr (GError) error = NULL;

  g_assert_null (drawl_shot_table_read (plan, "slate\n\"9", 8, &error));
  assert_refused (error, DRAWL_PLAN_ERROR_SYNTAX, "line 2: a quote is opened");
}

/* ---- Bodies ---- */

typedef struct {
  const char *name;
  const char *text;
  const char *shown; /* bodies of the good rows; then those to hire, with their profiles */
} Bodies;

static const Bodies bodies[] = {
    {"on-the-plan", "slate,body\n9,A\n8,F\n7,\n", "A F - ;"},
    {"on-the-plan-with-profile", "slate,body,profile\n9,A,lathe\n8,F,pelt\n", "A F ;"},
    {"another-id-of-a-profile-on-the-plan", "slate,body,profile\n9,B,lathe\n8,B,lathe\n",
     "B B ; B=lathe"},
    {"a-shipped-profile", "slate,body,profile\n9,B,ferrule\n8,C,ferrule\n7,B,ferrule\n",
     "B C B ; B=ferrule C=ferrule"},
    {"a-profile-alone", "slate,profile\n9,pelt\n", "F ;"},
    {"a-shipped-profile-alone", "slate,profile\n9,ferrule\n8,ferrule\n", "B B ; B=ferrule"},
    {"the-id-of-another-body", "slate,body,profile\n9,A,pelt\n", "F ;"},
    {"the-id-of-another-shipped-body", "slate,body,profile\n9,A,ferrule\n8,A,lathe\n7,A,ferrule\n",
     "B A B ; B=ferrule"},
    {"known-only-by-a-row-before", "slate,body,profile\n9,B,ferrule\n8,B,\n", "B B ; B=ferrule"},
    {"rejected-rows-hire-nobody", "slate,body,profile,takes\n9,B,ferrule,0\n1,C,ferrule,1\n",
     "- - ;"},
};

static void
test_bodies (gconstpointer data)
{
  const Bodies *expected = data;
  g_autoptr (DrawlShotTable) table = read_table (expected->text);
  g_autoptr (GString) shown = g_string_new (NULL);

  for (guint i = 0; i < table->rows->len; i++) {
    const DrawlShotTableRow *row = row_at (table, i);
    gboolean has_body = row->fields != NULL && row->fields->body[0] != '\0';
    g_string_append_printf (shown, "%s ", has_body ? row->fields->body : "-");
  }
  g_string_append_c (shown, ';');
  for (guint i = 0; i < table->hires->len; i++) {
    const DrawlHiredFields *hired = table->hires->pdata[i];
    g_string_append_printf (shown, " %s=%s", hired->id, hired->body->id);
  }
  g_assert_cmpstr (shown->str, ==, expected->shown);
}

/* ---- Into the plan ---- */

static void
test_insert (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  g_autofree char *before = all_of (plan);
  g_autoptr (DrawlShotTable) table = read_into (
      plan, "slate,body,profile,size,codec\n9,B,ferrule,hd,raw-12\n2,A,,,\n8,A,,uhd,intra\n");
  g_autoptr (GError) error = NULL;

  g_assert_true (drawl_shot_table_insert (plan, table, 1, "Insert", &error));
  g_assert_no_error (error);
  g_assert_cmpuint (drawl_plan_n_shots (plan), ==, 5);
  g_assert_cmpstr (drawl_shot_get_slate (drawl_plan_get_shot (plan, 1)), ==, "9");
  g_assert_cmpstr (drawl_shot_get_slate (drawl_plan_get_shot (plan, 2)), ==, "8");
  g_assert_nonnull (drawl_plan_find_body (plan, "B"));
  g_assert_cmpint (drawl_shot_get_verdict (drawl_plan_get_shot (plan, 1)), ==,
                   DRAWL_VERDICT_AS_HIRED);

  g_autofree char *after = all_of (plan);
  g_assert_cmpstr (drawl_plan_undo_label (plan), ==, "Insert");
  drawl_plan_undo (plan);
  g_assert_false (drawl_plan_can_undo (plan));
  g_autofree char *undone = all_of (plan);
  g_assert_cmpstr (undone, ==, before);
  drawl_plan_redo (plan);
  g_autofree char *redone = all_of (plan);
  g_assert_cmpstr (redone, ==, after);
}

/* A plan that has changed since the table was read takes all rows or none. */
static void
test_insert_too_late (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  g_autoptr (DrawlShotTable) table = read_into (plan, "slate,body,profile\n9,B,ferrule\n8,,\n");
  g_autoptr (DrawlShotFields) eight = drawl_shot_fields_new ("8", exact ("24"));
  g_autoptr (GError) error = NULL;

  g_assert_true (drawl_plan_insert_shot (plan, 0, eight, "Add", NULL));
  g_autofree char *before = all_of (plan);
  g_assert_false (drawl_shot_table_insert (plan, table, 0, "Insert", &error));
  assert_refused (error, DRAWL_PLAN_ERROR_DUPLICATE, "already has the slate “8”");
  g_autofree char *after = all_of (plan);
  g_assert_cmpstr (after, ==, before);
}

static void
count (gpointer object, gpointer data)
{
  ++*(guint *)data;
}

static void
test_insert_tells_once (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  g_autoptr (DrawlShotTable) table = read_into (plan, "slate\n9\n8\n7\n");
  guint n_changes = 0;

  g_signal_connect (plan, "changed", G_CALLBACK (count), &n_changes);
  g_assert_true (drawl_shot_table_insert (plan, table, 3, "Insert", NULL));
  g_assert_cmpuint (n_changes, ==, 1);
}

static void
test_insert_nothing (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (THREE_SHOTS));
  g_autoptr (DrawlShotTable) table = read_into (plan, "slate\n1\n");

  g_assert_true (drawl_shot_table_insert (plan, table, 3, "Insert", NULL));
  g_assert_false (drawl_plan_can_undo (plan));
}

/* ---- Writing ---- */

#define HEADINGS                                                                                   \
  "slate,scene,action,capture_rate,playback_rate,action_s,screen_s,slow_factor,"                   \
  "post_speed_percent,held,drop,body,profile,size,codec,takes,handle_before_s,handle_after_s,"     \
  "audio_tracks,must,notes,verdict\r\n"

static void
test_text (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (
      PLAN (THREE_SHOTS
            ",{\"slate\":\"4\",\"action\":\"Falls, \\\"slowly\\\"\",\"capture_rate\":"
            "\"60000/1001\",\"playback_rate\":\"30000/1001\",\"action_s\":\"1/3\",\"drop\":true,"
            "\"held\":[],\"must\":false,\"handle_after_s\":\"0.5\"}"));
  static const guint positions[] = {3, 1};
  g_autofree char *text = drawl_shot_table_text (plan, positions, 2, ',');
  g_autofree char *all = drawl_shot_table_text (plan, NULL, 0, '\t');

  g_assert_cmpstr (
      text, ==,
      HEADINGS "4,,\"Falls, \"\"slowly\"\"\",60000/1001,30000/1001,1/3,2/3,2,100,none,yes,,,,,1,0,"
               "0.5,0,no,,not-on-this-body\r\n"
               "2,,,120,24,1,5,5,100,playback_rate post_speed_percent,no,A,lathe,hd,packed,1,0,0,0,"
               "yes,,needs-licence\r\n");
  g_assert_true (g_str_has_prefix (all, "slate\tscene\taction\t"));
  g_assert_nonnull (strstr (all, "\r\n3\t\t\t24\t24\t1\t"));
}

static void
test_html (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (
      PLAN ("{\"slate\":\"<1>\",\"action\":\"A & B\",\"notes\":\"\\\"one\\\"\\ntwo\\r\\nthree\"}"));
  g_autofree char *html = drawl_shot_table_html (plan, NULL, 0);

  g_assert_true (g_str_has_prefix (
      html, "<meta charset=\"utf-8\">\n<table>\n<tr><th>slate</th><th>scene</th>"));
  g_assert_nonnull (strstr (html, "<tr><td>&lt;1&gt;</td><td></td><td>A &amp; B</td><td>24</td>"));
  g_assert_nonnull (strstr (html, "<td>&quot;one&quot;<br>two<br>three</td>"));
  g_assert_true (g_str_has_suffix (html, "</tr>\n</table>\n"));
}

/* ---- There and back ---- */

static char *
random_text (void)
{
  static const char *const signs[] = {"a",  "Ü",    "\"", ",", ";", "\t",
                                      "\n", "\r\n", " ",  "7", "=", "'"};
  GString *text = g_string_new (NULL);

  for (gint32 n = g_test_rand_int_range (0, 8); n > 0; n--)
    g_string_append (text, signs[g_test_rand_int_range (0, G_N_ELEMENTS (signs))]);
  return g_string_free (text, FALSE);
}

#define pick(list) (list)[g_test_rand_int_range (0, G_N_ELEMENTS (list))]

static void
time_at_random (DrawlShotFields *fields)
{
  static const char *const rates[] = {"24",         "25",   "120",        "240",
                                      "1000",       "12.5", "24000/1001", "30000/1001",
                                      "60000/1001", "1/5",  "2997/125"};
  static const char *const times[] = {"1", "0.45", "1/3", "40", "0.025", "7/11", "12"};
  static const char *const factors[] = {"10", "0.5", "5.005", "7/3"};
  static const char *const speeds[] = {"50", "200", "62.5"};

  drawl_blanks_init (&fields->blanks, exact (pick (rates)));
  drawl_blanks_edit (&fields->blanks, DRAWL_TIMING_CAPTURE, exact (pick (rates)), NULL);
  if (g_test_rand_bit ())
    drawl_blanks_edit (&fields->blanks, DRAWL_TIMING_FACTOR, exact (pick (factors)), NULL);
  if (g_test_rand_bit ())
    drawl_blanks_edit (&fields->blanks, DRAWL_TIMING_POST_SPEED, exact (pick (speeds)), NULL);
  drawl_blanks_edit (&fields->blanks,
                     g_test_rand_bit () ? DRAWL_TIMING_ACTION : DRAWL_TIMING_SCREEN,
                     exact (pick (times)), NULL);
  for (guint term = 0; term < DRAWL_TIMING_N_TERMS; term++)
    if (g_test_rand_bit ())
      drawl_blanks_hold (&fields->blanks, term, g_test_rand_bit ());
  fields->drop = g_test_rand_bit () && fields->blanks.value[DRAWL_TIMING_PLAYBACK].num % 30000 == 0;
}

static DrawlShotFields *
random_fields (guint number)
{
  static const char *const ids[] = {"A", "F", ""}, *const sizes[] = {"uhd", "s16", "no such", ""};
  static const char *const seconds[] = {"0", "0.5", "1/3", "26"};
  g_autofree char *end = random_text ();
  g_autofree char *slate = g_strdup_printf ("%u/%s.", number, g_strdelimit (end, "\t\r\n", '-'));
  DrawlShotFields *fields = drawl_shot_fields_new (slate, exact ("24"));
  char **texts[] = {&fields->scene, &fields->action, &fields->notes, &fields->codec};

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++) {
    g_free (*texts[i]);
    *texts[i] = random_text ();
  }
  time_at_random (fields);
  drawl_shot_fields_set (&fields->body, pick (ids));
  drawl_shot_fields_set (&fields->size, pick (sizes));
  fields->takes = (guint)g_test_rand_int_range (1, 20);
  fields->handle_before_s = exact (pick (seconds));
  fields->handle_after_s = exact (pick (seconds));
  fields->audio_tracks = (guint)g_test_rand_int_range (0, 9);
  fields->must = g_test_rand_bit ();
  return fields;
}

/* Written, read into a plan of the same bodies, and written again: the same bytes. */
static void
test_round_trip (void)
{
  static const char delimiters[] = {',', ';', '\t'};

  for (guint round = 0; round < 200; round++) {
    g_autoptr (DrawlPlan) plan = plan_of (PLAN ("")), other = plan_of (PLAN (""));
    g_autoptr (GError) error = NULL;
    char delimiter = pick (delimiters);
    for (guint i = 0; i < 20; i++) {
      g_autoptr (DrawlShotFields) fields = random_fields (i);
      drawl_plan_insert_shot (plan, i, fields, "Add", &error);
      g_assert_no_error (error);
    }
    g_autofree char *text = drawl_shot_table_text (plan, NULL, 0, delimiter);
    g_autoptr (DrawlShotTable) table = read_into (other, text);
    for (guint i = 0; i < table->rows->len; i++)
      if (row_at (table, i)->reason != NULL)
        g_error ("%s: %s", row_at (table, i)->reason, text);
    g_assert_true (drawl_shot_table_insert (other, table, 0, "Insert", &error));
    g_autofree char *again = drawl_shot_table_text (other, NULL, 0, delimiter);
    g_assert_cmpstr (again, ==, text);
  }
}

/* Times of so many digits that not every four terms can be worked out from. */
static void
test_many_digits (void)
{
  static const char *const times[] = {"0.123456789012345", "1.23456789012345678",
                                      "123456789.123456789", "1/922337203685477",
                                      "7.000000000000001"};
  static const char *const rates[] = {"24", "24000/1001", "119.88", "1/7", "123.4567"};
  g_autoptr (DrawlPlan) plan = drawl_plan_new ();
  guint n_good = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (times); i++)
    for (gsize j = 0; j < G_N_ELEMENTS (rates); j++) {
      g_autofree char *text =
          g_strdup_printf ("slate,fps,playback_rate,%s\n9,%s,24000/1001,%s\n",
                           j % 2 == 0 ? "action_s" : "screen_s", rates[j], times[i]);
      g_autoptr (DrawlPlan) first = drawl_plan_new (), second = drawl_plan_new ();
      g_autoptr (DrawlShotTable) table = read_into (plan, text);
      n_good += table->n_good;
      g_assert_true (drawl_shot_table_insert (first, table, 0, "Insert", NULL));
      g_autofree char *written = drawl_shot_table_text (first, NULL, 0, ',');
      g_autoptr (DrawlShotTable) again = read_into (plan, written);
      g_assert_cmpuint (again->n_good, ==, table->n_good);
      g_assert_true (drawl_shot_table_insert (second, again, 0, "Insert", NULL));
      g_autofree char *rewritten = drawl_shot_table_text (second, NULL, 0, ',');
      g_assert_cmpstr (rewritten, ==, written);
    }
  g_assert_cmpuint (n_good, >, 5);
}

/* The demo goes to an empty plan and brings its bodies along. */
static void
test_demo (void)
{
  g_autofree char *path = drawl_data_file ("demo", "glass.drawl", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (DrawlPlan) plan = drawl_plan_load (file, NULL, &error), other = drawl_plan_new ();

  g_assert_no_error (error);
  g_autofree char *text = drawl_shot_table_text (plan, NULL, 0, ',');
  g_autoptr (DrawlShotTable) table = read_into (other, text);
  g_assert_cmpuint (table->n_good, ==, drawl_plan_n_shots (plan));
  g_assert_cmpuint (table->hires->len, ==, g_list_model_get_n_items (drawl_plan_get_bodies (plan)));
  g_assert_true (drawl_shot_table_insert (other, table, 0, "Insert", &error));
  for (guint i = 0; i < drawl_plan_n_shots (plan); i++) {
    const DrawlShotFields *a = drawl_shot_get_fields (drawl_plan_get_shot (plan, i));
    const DrawlShotFields *b = drawl_shot_get_fields (drawl_plan_get_shot (other, i));
    g_assert_cmpstr (a->slate, ==, b->slate);
    g_assert_cmpstr (a->body, ==, b->body);
    for (guint term = 0; term < DRAWL_TIMING_N_TERMS; term++)
      assert_same (a->blanks.value[term], b->blanks.value[term]);
    g_assert_cmpuint (a->blanks.held, ==, b->blanks.held);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/shot-table/read", rows, test_read);
  g_test_add_func ("/shot-table/all-fields", test_all_fields);
  g_test_add_func ("/shot-table/latin-1", test_latin_1);
  g_test_add_func ("/shot-table/headings", test_headings);
  g_test_add_func ("/shot-table/no-headings", test_no_headings);
  g_test_add_func ("/shot-table/every-column", test_every_column);
  add_rows ("/shot-table/rejected", rejected, test_rejected);
  g_test_add_func ("/shot-table/no-table", test_no_table);
  add_rows ("/shot-table/bodies", bodies, test_bodies);
  g_test_add_func ("/shot-table/insert", test_insert);
  g_test_add_func ("/shot-table/insert-too-late", test_insert_too_late);
  g_test_add_func ("/shot-table/insert-tells-once", test_insert_tells_once);
  g_test_add_func ("/shot-table/insert-nothing", test_insert_nothing);
  g_test_add_func ("/shot-table/text", test_text);
  g_test_add_func ("/shot-table/html", test_html);
  g_test_add_func ("/shot-table/round-trip", test_round_trip);
  g_test_add_func ("/shot-table/many-digits", test_many_digits);
  g_test_add_func ("/shot-table/demo", test_demo);

  return g_test_run ();
}
