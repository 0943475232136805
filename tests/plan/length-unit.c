/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Film in feet and in metres: the words, and which of the two a plan is shown in. */

#include "plan/length-unit.h"

#include "fixture.h"
#include "plan/working.h"

typedef struct {
  const char *name;
  const char *feet;
  DrawlLengthUnit unit;
  const char *text;
  const char *left;
} Row;

static const Row rows[] = {
    {"feet", "400", DRAWL_LENGTH_FEET, "400 ft", "400 ft"},
    {"feet-rounded", "99.9", DRAWL_LENGTH_FEET, "100 ft", "99 ft"},
    {"metres", "400", DRAWL_LENGTH_METRIC, "121.9 m", "121.9 m"},
    {"metres-rounded", "1", DRAWL_LENGTH_METRIC, "0.3 m", "0.3 m"},
    {"metres-less", "0.6", DRAWL_LENGTH_METRIC, "0.2 m", "0.1 m"},
    {"nothing", "0", DRAWL_LENGTH_METRIC, "0 m", "0 m"},
};

static void
test_words (gconstpointer data)
{
  const Row *row = data;
  g_autofree char *text = drawl_length_film (exact (row->feet), row->unit);
  g_autofree char *left = drawl_length_film_left (exact (row->feet), row->unit);
  GString *spaced = g_string_new (text), *spaced_left = g_string_new (left);

  g_string_replace (spaced, "\u00a0", " ", 0);
  g_string_replace (spaced_left, "\u00a0", " ", 0);
  g_assert_cmpstr (spaced->str, ==, row->text);
  g_assert_cmpstr (spaced_left->str, ==, row->left);
  g_string_free (spaced, TRUE);
  g_string_free (spaced_left, TRUE);
}

static void
test_ids (void)
{
  for (guint i = 0; i < DRAWL_N_LENGTHS; i++) {
    DrawlLengthUnit unit = DRAWL_N_LENGTHS;
    g_assert_true (drawl_length_unit_find (drawl_length_unit_id ((DrawlLengthUnit)i), &unit));
    g_assert_cmpuint (unit, ==, i);
  }
  DrawlLengthUnit unit = DRAWL_LENGTH_METRIC;
  g_assert_false (drawl_length_unit_find ("cubits", &unit));
  g_assert_cmpuint (unit, ==, DRAWL_LENGTH_METRIC);
}

typedef struct {
  const char *name;
  const char *key;                        /* in the file */
  DrawlLengthUnit with_feet, with_metric; /* shown, by the default */
  const char *written;
} PlanRow;

static const PlanRow plan_rows[] = {
    {"absent", "", DRAWL_LENGTH_FEET, DRAWL_LENGTH_METRIC, NULL},
    {"feet", ",\"length_unit\":\"feet\"", DRAWL_LENGTH_FEET, DRAWL_LENGTH_FEET,
     "\"length_unit\": \"feet\""},
    {"metric", ",\"length_unit\":\"metric\"", DRAWL_LENGTH_METRIC, DRAWL_LENGTH_METRIC,
     "\"length_unit\": \"metric\""},
    {"unknown-is-kept", ",\"length_unit\":\"cubits\"", DRAWL_LENGTH_FEET, DRAWL_LENGTH_METRIC,
     "\"length_unit\": \"cubits\""},
};

static void
test_plan (gconstpointer data)
{
  const PlanRow *row = data;
  g_autofree char *file = g_strdup_printf (PLAN_HEAD "\"title\":\"T\"%s}", row->key);
  g_autoptr (DrawlPlan) plan = plan_of (file);

  g_assert_cmpuint (drawl_plan_get_length_unit (plan), ==, row->with_feet);
  drawl_plan_set_default_length_unit (plan, DRAWL_LENGTH_METRIC);
  g_assert_cmpuint (drawl_plan_get_length_unit (plan), ==, row->with_metric);
  g_assert_false (drawl_plan_get_modified (plan));
  g_autofree char *text = drawl_plan_to_data (plan, NULL);
  g_assert_true ((strstr (text, "length_unit") != NULL) == (row->written != NULL));
  g_assert_true (row->written == NULL || strstr (text, row->written) != NULL);
}

static void
test_undo (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN_HEAD "\"title\":\"T\"}");
  g_autoptr (DrawlPlanSettings) settings =
      drawl_plan_settings_copy (drawl_plan_get_settings (plan));

  drawl_shot_fields_set (&settings->length_unit, "metric");
  g_assert_true (drawl_plan_set_settings (plan, settings, "Unit", NULL));
  g_assert_cmpuint (drawl_plan_get_length_unit (plan), ==, DRAWL_LENGTH_METRIC);
  g_assert_true (drawl_plan_get_modified (plan));
  drawl_plan_undo (plan);
  g_assert_cmpuint (drawl_plan_get_length_unit (plan), ==, DRAWL_LENGTH_FEET);
}

/* 2424 frames are 60.6 counting feet of 16 mm film, 2400 frames 112.5 of 35 mm: 18.5 m, 34.3 m. */
static void
test_working (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (
      PLAN_HEAD "\"length_unit\":\"metric\",\"bodies\":[" BODY_F
                "],\"shots\":[{\"slate\":\"1\",\"body\":\"F\",\"size\":\"s16\",\"capture_rate\":24,"
                "\"action_s\":101},{\"slate\":\"2\",\"body\":\"F\",\"size\":\"s35\","
                "\"capture_rate\":24,\"action_s\":100}]}");
  static const char *const values[] = {"18.5\u00a0m", "34.3\u00a0m"};
  static const char *const counters[] = {"60+24", "112+10"};

  for (guint i = 0; i < G_N_ELEMENTS (values); i++) {
    DrawlWorking *working =
        drawl_working_new (plan, drawl_plan_get_shot (plan, i), DRAWL_FIGURE_FOOTAGE);
    g_assert_nonnull (working);
    g_assert_cmpstr (working->value, ==, values[i]);
    g_assert_nonnull (strstr (working->numbers, counters[i]));
    drawl_working_free (working);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/length-unit/words", rows, test_words);
  g_test_add_func ("/length-unit/ids", test_ids);
  add_rows ("/length-unit/plan", plan_rows, test_plan);
  g_test_add_func ("/length-unit/undo", test_undo);
  g_test_add_func ("/length-unit/working", test_working);
  return g_test_run ();
}
