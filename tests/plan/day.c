/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The sums of a day: against figures worked out by hand, and against a plain recount of long plans,
 * card by card and take by take. */

#include "fixture.h"

#include "plan/day.h"

/* ---- By hand ---- */

typedef struct {
  const char *name;
  gboolean span;
  const char *shots;
  guint as_hired, needs, not_possible;
  double real_s, action_s, screen_s;
  gint64 bytes, cards, magazines;
  double feet;
} Day;

/* "intra" is 24 MB/s at 24 fps, so 1 MB a frame; "tiny" holds 7.2 GB of it: 300 s at 24 fps. */
#define DIGITAL ",\"body\":\"A\",\"size\":\"uhd\",\"codec\":\"intra\",\"capture_rate\":24,"
#define FILM ",\"body\":\"F\",\"size\":\"s16\",\"capture_rate\":24,"

static const Day days[] = {
    {"empty", FALSE, "", 0, 0, 0, 0, 0, 0, 0, 0, 0, 0},
    {"no-body", FALSE, "{\"slate\":\"1\",\"takes\":3}", 0, 0, 1, 3, 1, 1, 0, 0, 0, 0},
    {"one", FALSE, "{\"slate\":\"1\"" DIGITAL "\"action_s\":10}", 1, 0, 0, 10, 10, 10, 240000000, 1,
     0, 0},
    {"handles", FALSE,
     "{\"slate\":\"1\"" DIGITAL "\"action_s\":10,\"takes\":2,\"handle_before_s\":2,"
     "\"handle_after_s\":3}",
     1, 0, 0, 30, 10, 10, 720000000, 1, 0, 0},
    {"whole-takes", FALSE, "{\"slate\":\"1\"" DIGITAL "\"action_s\":200,\"takes\":3}", 1, 0, 0, 600,
     200, 200, G_GINT64_CONSTANT (14400000000), 3, 0, 0},
    {"spanning", TRUE, "{\"slate\":\"1\"" DIGITAL "\"action_s\":200,\"takes\":3}", 1, 0, 0, 600,
     200, 200, G_GINT64_CONSTANT (14400000000), 2, 0, 0},
    {"next-fit", FALSE, /* 200 | 100 fits behind it | 150, 120 | 50 does not fit any more */
     "{\"slate\":\"1\"" DIGITAL "\"action_s\":200},{\"slate\":\"2\"" DIGITAL "\"action_s\":100},"
     "{\"slate\":\"3\"" DIGITAL "\"action_s\":150},{\"slate\":\"4\"" DIGITAL "\"action_s\":120},"
     "{\"slate\":\"5\"" DIGITAL "\"action_s\":50}",
     5, 0, 0, 620, 620, 620, G_GINT64_CONSTANT (14880000000), 3, 0, 0},
    {"too-large", FALSE, "{\"slate\":\"1\"" DIGITAL "\"action_s\":301}", 0, 0, 1, 301, 301, 301,
     G_GINT64_CONSTANT (7224000000), 0, 0, 0},
    {"slow", FALSE,
     "{\"slate\":\"1\",\"body\":\"A\",\"size\":\"uhd\",\"codec\":\"intra\",\"capture_rate\":48,"
     "\"action_s\":10}",
     1, 0, 0, 10, 10, 20, 480000000, 1, 0, 0},
    {"licence", FALSE,
     "{\"slate\":\"1\",\"body\":\"A\",\"size\":\"uhd\",\"codec\":\"even\",\"capture_rate\":120,"
     "\"action_s\":8}",
     0, 1, 0, 8, 8, 40, 100000000, 1, 0, 0},
    {"film", FALSE, /* 100 s at 24 fps: 60 ft, so six takes in a magazine of 400 ft */
     "{\"slate\":\"1\"" FILM "\"action_s\":100,\"takes\":7}", 1, 0, 0, 700, 100, 100, 0, 0, 2, 420},
    {"two-gauges", FALSE, /* 360 ft of 16 mm, then 45 ft of 35 mm: not behind it */
     "{\"slate\":\"1\"" FILM "\"action_s\":600},"
     "{\"slate\":\"2\",\"body\":\"F\",\"size\":\"s35\",\"capture_rate\":24,\"action_s\":40}",
     2, 0, 0, 640, 640, 640, 0, 0, 2, 405},
    {"magazine-too-short", FALSE, "{\"slate\":\"1\"" FILM "\"action_s\":700}", 0, 0, 1, 700, 700,
     700, 0, 0, 0, 420},
};

static DrawlPlan *
day_plan (const char *shots, gboolean span)
{
  g_autofree char *text = g_strdup_printf (
      PLAN_HEAD
      "\"takes_span\":%s,\"bodies\":[{\"id\":\"A\",\"card\":\"tiny\",\"profile\":" DIGITAL_PROFILE
      "}," BODY_F "],\"shots\":[%s]}",
      span ? "true" : "false", shots);
  return plan_of (text);
}

static void
test_day (gconstpointer data)
{
  const Day *row = data;
  g_autoptr (DrawlPlan) plan = day_plan (row->shots, row->span);
  g_auto (DrawlDay) day = {0};

  drawl_day_reckon (plan, &day);
  drawl_day_reckon (plan, &day); /* from an earlier call */
  g_assert_cmpuint (day.shots, ==, drawl_plan_n_shots (plan));
  g_assert_cmpuint (day.by_verdict[DRAWL_VERDICT_AS_HIRED], ==, row->as_hired);
  g_assert_cmpuint (day.by_verdict[DRAWL_VERDICT_NEEDS_LICENCE], ==, row->needs);
  g_assert_cmpuint (day.by_verdict[DRAWL_VERDICT_NOT_ON_THIS_BODY], ==, row->not_possible);
  g_assert_cmpfloat_with_epsilon (day.real_s, row->real_s, 1e-9);
  g_assert_cmpfloat_with_epsilon (day.action_s, row->action_s, 1e-9);
  g_assert_cmpfloat_with_epsilon (day.screen_s, row->screen_s, 1e-9);
  g_assert_cmpint (day.bytes, ==, row->bytes);
  g_assert_cmpint (day.cards, ==, row->cards);
  g_assert_cmpint (day.magazines, ==, row->magazines);
  g_assert_cmpuint (day.bodies->len, ==, 2);
  g_assert_cmpint (g_array_index (day.bodies, DrawlDayBody, 0).cards, ==, row->cards);
  g_assert_cmpfloat_with_epsilon (g_array_index (day.bodies, DrawlDayBody, 1).feet, row->feet,
                                  1e-9);
}

/* ---- By recount ---- */

static char *
random_shots (guint n, gboolean film)
{
  static const char *const codecs[] = {"intra", "packed", "rows", "fixed", "even"};
  GString *shots = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    g_string_append_printf (shots,
                            "%s{\"slate\":\"%u\",\"body\":\"%s\",\"size\":\"%s\",\"codec\":\"%s\","
                            "\"capture_rate\":%d,\"action_s\":%d,\"takes\":%d,\"audio_tracks\":%d}",
                            i > 0 ? "," : "", i, film ? "F" : "A", film ? "s16" : "hd",
                            codecs[g_test_rand_int_range (0, G_N_ELEMENTS (codecs))],
                            g_test_rand_int_range (1, 200), g_test_rand_int_range (1, 40),
                            g_test_rand_int_range (1, 9), g_test_rand_int_range (0, 3));
  return g_string_free (shots, FALSE);
}

/* @room: of one card or magazine, in whatever counts. */
static gint64
recount (DrawlPlan *plan, gint64 room, gboolean span, gint64 (*size_of) (DrawlShot *shot))
{
  gint64 begun = 0, left = 0;

  for (guint i = 0; i < drawl_plan_n_shots (plan); i++) {
    DrawlShot *shot = drawl_plan_get_shot (plan, i);
    gint64 size = size_of (shot);
    for (guint take = 0; take < drawl_shot_get_fields (shot)->takes; take++) {
      if (size > room && !span)
        continue;
      for (gint64 rest = size; rest > 0;) {
        if (left < (span ? 1 : rest)) {
          begun++;
          left = room;
        }
        gint64 part = MIN (left, rest);
        left -= part;
        rest -= part;
      }
    }
  }
  return begun;
}

static gint64
bytes_of (DrawlShot *shot)
{
  return drawl_shot_get_load (shot)->take_bytes;
}

static gint64
frames_of (DrawlShot *shot)
{
  return drawl_shot_get_load (shot)->take_frames;
}

static void
test_recount (gconstpointer data)
{
  gboolean span = GPOINTER_TO_INT (data);

  for (guint round = 0; round < 20; round++) {
    g_autofree char *shots = random_shots (60, FALSE);
    g_autoptr (DrawlPlan) plan = day_plan (shots, span);
    g_auto (DrawlDay) day = {0};

    drawl_day_reckon (plan, &day);
    g_assert_cmpint (day.cards, ==, recount (plan, G_GINT64_CONSTANT (7200000000), span, bytes_of));
    g_assert_cmpint (day.cards, >, 10);
  }
}

static void
test_recount_film (void)
{
  for (guint round = 0; round < 20; round++) {
    g_autofree char *shots = random_shots (60, TRUE);
    g_autoptr (DrawlPlan) plan = day_plan (shots, FALSE);
    g_auto (DrawlDay) day = {0};

    drawl_day_reckon (plan, &day);
    g_assert_cmpint (day.magazines, ==, recount (plan, 16000, FALSE, frames_of));
    g_assert_cmpint (day.magazines, >, 5);
  }
}

/* A sum that cannot be counted stays at the most that can. */
static void
test_enormous (void)
{
  g_autoptr (GString) shots = g_string_new (NULL);

  for (guint i = 0; i < 400; i++)
    g_string_append_printf (
        shots,
        "%s{\"slate\":\"%u\",\"body\":\"A\",\"size\":\"uhd\",\"codec\":\"intra\","
        "\"capture_rate\":240,\"action_s\":30000000,\"takes\":10000}",
        i > 0 ? "," : "", i);
  g_autoptr (DrawlPlan) plan = day_plan (shots->str, FALSE);
  g_auto (DrawlDay) day = {0};
  drawl_day_reckon (plan, &day);
  g_assert_cmpint (day.bytes, ==, G_MAXINT64);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/day", days, test_day);
  g_test_add_data_func ("/day/recount/whole", GINT_TO_POINTER (FALSE), test_recount);
  g_test_add_data_func ("/day/recount/spanning", GINT_TO_POINTER (TRUE), test_recount);
  g_test_add_func ("/day/recount/film", test_recount_film);
  g_test_add_func ("/day/enormous", test_enormous);

  return g_test_run ();
}
