/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What a text is taken for before its rows are: a table at all, with or without headings, with
 * decimal points or commas. */

#include "plan/shot-table-shape.h"

#include "fixture.h"
#include "plan/shot-table.h"

typedef struct {
  const char *name;
  const char *text;
  const char *shown; /* each row: its line, then slate@capture rate×action time, or why not */
} Row;

#define THOUSANDS "could be thousands or a decimal"

static const Row rows[] = {
    /* decimal commas */
    {"comma-tells", "slate;capture_rate;action_s\n8;48;2,500\n9;24;0,5\n", "2 8@48×2.5 3 9@24×0.5"},
    {"comma-tells-rate", "slate;fps;action_s\n8;29,970;1\n9;23,976;1\n",
     "2 8@30000/1001×1 3 9@24000/1001×1"},
    {"comma-tells-between-tabs", "slate\tfps\taction_s\n8\t29,970\t0,5\n", "2 8@30000/1001×0.5"},
    {"comma-tells-with-unit", "slate;fps;action_s\n8;48 fps;2,500 s\n9;24;0,5 s\n",
     "2 8@48×2.5 3 9@24×0.5"},
    {"point-is-of-thousands", "slate;fps;action_s\n8;1.000;0,5\n", "2 “fps”: “1.000” " THOUSANDS},
    {"point-is-a-decimal", "slate;fps;action_s\n8;59.94;0,5\n", "2 8@60000/1001×0.5"},
    {"nothing-tells", "slate;fps;action_s\n8;1.000;1\n9;1,500;1\n",
     "2 8@1×1 3 “fps”: “1,500” " THOUSANDS},
    {"zero-is-no-thousand", "slate;fps;action_s\n8;1,500;0,250\n", "2 8@3/2×0.25"},
    {"commas-in-texts-tell-nothing", "slate;fps;notes\n8;1,500;0,5\n",
     "2 “fps”: “1,500” " THOUSANDS},
    {"commas-between-fields", "slate,fps,action_s\n8,\"1,500\",\"0,5\"\n",
     "2 “fps”: “1,500” " THOUSANDS},
    /* the delimiter told */
    {"told", "sep=;\nslate;fps;action_s\n8;48;1\n", "3 8@48×1"},
    {"told-any", "SEP=|\r\nslate|fps|action_s\r\n8|48|1\r\n", "3 8@48×1"},
    {"told-against-looks", "sep=,\nslate,fps;rate,action_s\n8,48,1\n", "3 8@24×1"},
    {"told-nothing-after", "sep=;", ""},
    /* headings or not */
    {"known-word-among-numbers", "7,1,Camera,240,24,0.45\n8,2,Glass,120,24,1\n",
     "1 7@240×0.45 2 8@120×1"},
    {"slate-among-numbers", "slate,240,fps\n8,x,48\n", "2 8@48×1"},
    {"no-slate-but-words", "fps,action_s\n24,1\n", "2 no column holds the slate"},
    {"play-and-screen", "slate,fps,play,screen\n8,48,24,2\n", "2 8@48×1"},
    {"speed-is-unknown", "slate,fps,speed\n8,48,24\n", "2 8@48×1"},
    /* no table of shots */
    {"words-alone", "Einstellung;Bildrate\n7A;48\n", "! no heading is known, and no number stands"},
    {"no-delimiter", "slate|fps\n7A|48\n", "! headings such as slate, capture_rate"},
    {"plan", "{\"format\": \"drawl-plan\"}\n", "! this is JSON, not a table"},
    {"plan-with-mark", "\xef\xbb\xbf \n{\"shots\": [1, 2]}", "! this is JSON"},
    {"list", "[[\"slate\", \"fps\"], [1, 2]]", "! this is JSON"},
    {"nearly-json", "{slate},fps,action_s\n[8],48,1\n", "2 no column holds the slate"},
    {"bracket-slate", "slate,fps,action_s\n[8],48,1\n", "2 [8]@48×1"},
};

static char *
show (const DrawlShotTableRow *row)
{
  char rate[DRAWL_RATIONAL_TEXT_SIZE], time[DRAWL_RATIONAL_TEXT_SIZE];

  if (row->fields == NULL) {
    g_autofree char *why = drawl_shot_table_row_text (row);
    return g_strdup_printf ("%u %s", row->line, why);
  }
  const DrawlRational *value = row->fields->blanks.value;
  return g_strdup_printf ("%u %s@%s×%s", row->line, row->fields->slate,
                          drawl_rate_text (value[DRAWL_TIMING_CAPTURE], rate),
                          drawl_rational_text (value[DRAWL_TIMING_ACTION], time));
}

static void
test_shape (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (DrawlPlan) plan = drawl_plan_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (DrawlShotTable) table =
      drawl_shot_table_read (plan, row->text, strlen (row->text), &error);
  g_autoptr (GString) shown = g_string_new (NULL);

  if (row->shown[0] == '!') {
    g_assert_null (table);
    assert_refused (error, DRAWL_PLAN_ERROR_FORMAT, row->shown + 2);
    return;
  }
  g_assert_no_error (error);
  for (guint i = 0; i < table->rows->len; i++) {
    g_autofree char *text = show (table->rows->pdata[i]);
    g_string_append_printf (shown, "%s%s", i > 0 ? " " : "", text);
  }
  g_test_message ("%s", shown->str);
  g_assert_true (row->shown[0] != '\0' || shown->len == 0);
  g_assert_true (g_str_has_prefix (shown->str, row->shown));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/shot-table/shape", rows, test_shape);
  return g_test_run ();
}
