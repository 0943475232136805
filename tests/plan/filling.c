/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Cards and magazines filling, shot by shot: on which each shot begins, which it ends on, and what
 * is left there. The card "tiny" holds 7.2 GB of "intra", which is 1 MB a frame: 300 s at 24 fps; a
 * magazine holds 400 ft. */

#include "fixture.h"

#include "plan/filling.h"

#define DIGITAL(slate, seconds, more)                                                              \
  "{\"slate\":\"" slate "\",\"body\":\"A\",\"size\":\"uhd\",\"codec\":\"intra\","                  \
  "\"capture_rate\":24,\"action_s\":" seconds more "}"
#define FILM(slate, seconds, more)                                                                 \
  "{\"slate\":\"" slate "\",\"body\":\"F\",\"size\":\"s16\",\"capture_rate\":24,"                  \
  "\"action_s\":" seconds more "}"

typedef struct {
  const char *name;
  gboolean span;
  const char *shots;
  gint64 first, last; /* of the last shot */
  const char *left_s; /* NULL: it goes onto none */
} Row;

static const Row rows[] = {
    {"one", FALSE, DIGITAL ("1", "100", ""), 1, 1, "200"},
    {"takes-fill-it", FALSE, DIGITAL ("1", "100", ",\"takes\":3"), 1, 1, "0"},
    {"takes-reach-the-second", FALSE, DIGITAL ("1", "200", ",\"takes\":2"), 1, 2, "100"},
    {"behind-another", FALSE, DIGITAL ("1", "100", "") "," DIGITAL ("2", "150", ""), 1, 1, "50"},
    {"begins-the-next", FALSE, DIGITAL ("1", "200", "") "," DIGITAL ("2", "150", ""), 2, 2, "150"},
    {"runs-on", TRUE, DIGITAL ("1", "200", "") "," DIGITAL ("2", "150", ""), 1, 2, "250"},
    {"runs-on-from-a-full-one", TRUE, DIGITAL ("1", "300", "") "," DIGITAL ("2", "150", ""), 2, 2,
     "150"},
    {"too-long", FALSE, DIGITAL ("1", "100", "") "," DIGITAL ("2", "301", ""), 2, 1, NULL},
    {"other-rate", FALSE,
     DIGITAL ("1", "100", "") ",{\"slate\":\"2\",\"body\":\"A\",\"size\":\"uhd\","
                              "\"codec\":\"intra\",\"capture_rate\":48,\"action_s\":10}",
     1, 1, "90"},
    {"no-codec", FALSE, "{\"slate\":\"1\",\"body\":\"A\",\"size\":\"uhd\"}", 1, 0, NULL},
    /* 100 s at 24 fps are 60 ft */
    {"magazine", FALSE, FILM ("1", "100", ",\"takes\":2"), 1, 1, "1400/3"},
    {"magazine-behind", FALSE, FILM ("1", "600", "") "," FILM ("2", "50", ""), 1, 1, "50/3"},
    {"magazine-next", FALSE, FILM ("1", "600", "") "," FILM ("2", "100", ",\"takes\":7"), 2, 3,
     "1700/3"},
    {"magazine-too-short", FALSE, FILM ("1", "700", ""), 1, 0, NULL},
};

static DrawlPlan *
plan_for (const Row *row)
{
  g_autofree char *text = g_strdup_printf (
      PLAN_HEAD "\"reserve_percent\":\"10\",\"takes_span\":%s,\"bodies\":["
                "{\"id\":\"A\",\"tier\":[],\"card\":\"tiny\",\"profile\":" DIGITAL_PROFILE
                "}," BODY_F "],\"shots\":[%s]}",
      row->span ? "true" : "false", row->shots);

  return plan_of (text);
}

static void
test_row (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (DrawlPlan) plan = plan_for (row);
  guint last = drawl_plan_n_shots (plan) - 1;
  DrawlShot *shot = drawl_plan_get_shot (plan, last);
  DrawlRational left;
  DrawlFilling filling;

  drawl_filling_init (&filling);
  for (guint i = 0; i < last; i++)
    drawl_filling_add (&filling, drawl_plan_get_shot (plan, i), row->span);
  g_assert_cmpint (drawl_filling_next (&filling, shot, row->span), ==, row->first);
  g_assert_cmpint (drawl_filling_add (&filling, shot, row->span), ==, row->left_s != NULL);
  g_assert_cmpint (filling.begun, ==, row->last);
  if (row->left_s == NULL)
    return;
  g_assert_true (drawl_filling_left (&filling, shot, &left));
  assert_same (left, exact (row->left_s));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/filling", rows, test_row);
  return g_test_run ();
}
