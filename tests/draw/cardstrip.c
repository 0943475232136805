/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Cards filling: which take lies where, how many cards that makes, how they are laid out, and what
 * is said. The body "A" of the fixture has a card of 8 GB; a frame of its codec "fixed" has 500,000
 * bytes, so with 10 % kept empty 14,400 frames fit, ten minutes at 24 fps. */

#include "draw/cardstrip.h"
#include "plan/day.h"
#include "plan/fixture.h"
#include "rows.h"

#include <math.h>

#define SLACK 1e-9

#define SHOT(slate, body, size, rate, action, takes)                                               \
  "{\"slate\":\"" slate "\",\"capture_rate\":\"" rate                                              \
  "\",\"playback_rate\":\"24\",\"action_s\":\"" action "\",\"body\":\"" body "\",\"size\":\"" size \
  "\",\"codec\":\"fixed\",\"audio_tracks\":0,\"handle_before_s\":\"0\",\"handle_after_s\":\"0\","  \
  "\"takes\":" #takes "}"
#define TINY_CARD_BODY                                                                             \
  "{\"id\":\"A\",\"tier\":[],\"card\":\"tiny\",\"profile\":" DIGITAL_PROFILE "}"
#define CARD_PLAN(settings, shots)                                                                 \
  PLAN_HEAD settings "\"reserve_percent\":\"10\",\"bodies\":[" TINY_CARD_BODY "," BODY_F "],"      \
                     "\"shots\":[" shots "]}"

static const char whole[] = CARD_PLAN (
    "\"takes_span\":false,",
    SHOT ("1", "A", "hd", "24", "240", 2) "," SHOT ("2", "F", "s16", "24", "100", 5) "," SHOT (
        "3", "A", "hd", "48", "100", 4) "," SHOT ("4", "A", "hd", "24", "30", 1));
static const char spanning[] =
    CARD_PLAN ("\"takes_span\":true,",
               SHOT ("1", "A", "hd", "24", "240", 2) "," SHOT (
                   "3", "A", "hd", "48", "100", 4) "," SHOT ("4", "A", "hd", "24", "1500", 1));

static DrawlPlan *
fill (DrawlCardStripData *data, const char *text, const char *slate)
{
  DrawlPlan *plan = plan_of (text);

  drawl_cardstrip_data_from_plan (data, plan, drawl_plan_find_shot (plan, slate));
  return plan;
}

static const DrawlCardBlock *
block (const DrawlCardStripData *data, guint i)
{
  g_assert_cmpuint (i, <, data->blocks->len);
  return &g_array_index (data->blocks, DrawlCardBlock, i);
}

static void
assert_block (const DrawlCardStripData *data, guint i, guint card, double from, double to,
              guint shot, gboolean marked)
{
  const DrawlCardBlock *b = block (data, i);

  g_assert_cmpuint (b->card, ==, card);
  g_assert_cmpfloat_with_epsilon (b->from, from, SLACK);
  g_assert_cmpfloat_with_epsilon (b->to, to, SLACK);
  g_assert_cmpuint (b->shot, ==, shot);
  g_assert_true (b->marked == marked);
}

/* A card holds 14,400 frames in 0.9 of it. */
#define SHARE(frames) (0.9 * (frames) / 14400)

static void
test_whole (void)
{
  DrawlCardStripData data;
  g_autoptr (DrawlPlan) plan = fill (&data, whole, "3");

  g_assert_null (data.problem);
  g_assert_cmpuint (data.blocks->len, ==, 7);
  assert_block (&data, 0, 0, 0, SHARE (5760), 0, FALSE);
  assert_block (&data, 1, 0, SHARE (5760), SHARE (11520), 0, FALSE);
  assert_block (&data, 2, 1, 0, SHARE (4800), 2, TRUE);
  assert_block (&data, 3, 1, SHARE (4800), SHARE (9600), 2, TRUE);
  assert_block (&data, 4, 1, SHARE (9600), SHARE (14400), 2, TRUE);
  assert_block (&data, 5, 2, 0, SHARE (4800), 2, TRUE);
  assert_block (&data, 6, 2, SHARE (4800), SHARE (5520), 3, FALSE);
  g_assert_cmpint (data.cards, ==, 3);
  g_assert_cmpint (data.marked_first, ==, 1);
  g_assert_cmpint (data.marked_cards, ==, 2);
  g_assert_cmpfloat_with_epsilon (data.reserve, 0.1, SLACK);
  g_assert_cmpstr (data.left, ==, "3\u00a0min\u00a020\u00a0s left on the last at 48\u00a0fps");
  g_assert_cmpstr (data.capacity, ==, "8\u00a0GB");
  g_assert_cmpstr (data.card_name, ==, "8 GB");
  g_assert_cmpstr (data.slate, ==, "3");
  g_assert_cmpuint (data.takes, ==, 4);
  drawl_cardstrip_data_clear (&data);
}

static void
test_spanning (void)
{
  DrawlCardStripData data;
  g_autoptr (DrawlPlan) plan = fill (&data, spanning, "3");

  g_assert_cmpuint (data.blocks->len, ==, 11);
  assert_block (&data, 2, 0, SHARE (11520), SHARE (14400), 1, TRUE);
  assert_block (&data, 3, 1, 0, SHARE (1920), 1, TRUE);
  assert_block (&data, 4, 1, SHARE (1920), SHARE (6720), 1, TRUE);
  assert_block (&data, 5, 1, SHARE (6720), SHARE (11520), 1, TRUE);
  assert_block (&data, 6, 1, SHARE (11520), SHARE (14400), 1, TRUE);
  assert_block (&data, 7, 2, 0, SHARE (1920), 1, TRUE);
  assert_block (&data, 8, 2, SHARE (1920), SHARE (14400), 2, FALSE);
  assert_block (&data, 9, 3, 0, SHARE (14400), 2, FALSE);
  assert_block (&data, 10, 4, 0, SHARE (36000 - 12480 - 14400), 2, FALSE);
  g_assert_cmpint (data.cards, ==, 5);
  g_assert_cmpint (data.marked_first, ==, 0);
  g_assert_cmpint (data.marked_cards, ==, 3);
  drawl_cardstrip_data_clear (&data);
}

/* A take of 100 s at 24 fps on 16 mm is 60 ft; six go onto 400 ft. */
static void
test_film (void)
{
  DrawlCardStripData data;
  g_autoptr (DrawlPlan) plan = fill (&data, whole, "2");

  g_assert_true (data.film);
  g_assert_cmpuint (data.blocks->len, ==, 5);
  assert_block (&data, 4, 0, 0.6, 0.75, 1, TRUE);
  g_assert_cmpfloat_with_epsilon (data.reserve, 0, SLACK);
  g_assert_cmpstr (data.capacity, ==, "400\u00a0ft");
  g_assert_cmpstr (data.left, ==,
                   "100\u00a0ft left on the last, 2\u00a0min\u00a046\u00a0s at 24\u00a0fps");
  drawl_cardstrip_data_clear (&data);
}

/* ---- Against the day's sums, and in general ---- */

static char *
random_plan (gboolean span, guint shots)
{
  GString *text = g_string_new (PLAN_HEAD);

  g_string_append_printf (text,
                          "\"takes_span\":%s,\"reserve_percent\":\"%d\",\"bodies\":["
                          "%s,%s],\"shots\":[",
                          span ? "true" : "false", g_test_rand_int_range (0, 50), TINY_CARD_BODY,
                          BODY_F);
  for (guint i = 0; i < shots; i++)
    g_string_append_printf (
        text,
        "%s{\"slate\":\"%u\",\"capture_rate\":\"%d\",\"playback_rate\":\"24\",\"action_s\":\"%d/"
        "%d\",\"body\":\"%s\",\"size\":\"%s\",\"codec\":\"%s\",\"takes\":%d}",
        i == 0 ? "" : ",", i, g_test_rand_int_range (1, 240), g_test_rand_int_range (1, 500),
        g_test_rand_int_range (1, 20), i % 3 == 0 ? "F" : "A",
        i % 3 == 0 ? (i % 2 == 0 ? "s16" : "s35") : "hd", i % 2 == 0 ? "fixed" : "intra",
        g_test_rand_int_range (1, 12));
  g_string_append (text, "]}");
  return g_string_free (text, FALSE);
}

/* Blocks follow each other, none over another, and none in the reserve. */
static void
assert_blocks_sound (const DrawlCardStripData *data)
{
  guint card = 0;
  double end = 0;

  for (guint i = 0; i < data->blocks->len; i++) {
    const DrawlCardBlock *b = block (data, i);

    if (b->card != card) {
      g_assert_cmpuint (b->card, ==, card + 1);
      end = 0;
    }
    card = b->card;
    g_assert_cmpuint (b->card, <, MIN (data->cards, DRAWL_CARDSTRIP_CARDS_MAX));
    g_assert_cmpfloat_with_epsilon (b->from, end, SLACK);
    g_assert_cmpfloat (b->to, >, b->from);
    g_assert_cmpfloat (b->to, <=, 1 - data->reserve + SLACK);
    end = b->to;
  }
}

static void
assert_as_day (const DrawlCardStripData *data, DrawlPlan *plan)
{
  g_auto (DrawlDay) day = {0};
  guint i = data->film ? 1 : 0;

  drawl_day_reckon (plan, &day);
  const DrawlDayBody *body = &g_array_index (day.bodies, DrawlDayBody, i);
  g_assert_cmpint (data->cards, ==, data->film ? body->magazines : body->cards);
}

static void
test_random (void)
{
  for (guint i = 0; i < 60; i++) {
    g_autofree char *text = random_plan (i % 2 == 0, 12);
    g_autoptr (DrawlPlan) plan = plan_of (text);

    for (guint shot = 0; shot < drawl_plan_n_shots (plan); shot++) {
      DrawlCardStripData data;

      drawl_cardstrip_data_from_plan (&data, plan, drawl_plan_get_shot (plan, shot));
      if (data.problem == NULL) {
        assert_blocks_sound (&data);
        assert_as_day (&data, plan);
        g_assert_cmpint (data.marked_first + data.marked_cards, <=, data.cards);
      }
      drawl_cardstrip_data_clear (&data);
    }
  }
}

/* Cards beyond those that are drawn are counted; takes too narrow to be seen stand together. */
static void
test_many (void)
{
  static const char text[] = CARD_PLAN (
      "\"takes_span\":false,",
      SHOT ("1", "A", "hd", "24", "1/24", 10000) "," SHOT ("2", "A", "hd", "24", "600", 10000));
  DrawlCardStripData data;
  g_autoptr (DrawlPlan) plan = fill (&data, text, "2");

  g_assert_cmpuint (data.blocks->len, ==, DRAWL_CARDSTRIP_CARDS_MAX);
  assert_block (&data, 0, 0, 0, SHARE (10000), 0, FALSE);
  assert_block (&data, 63, 63, 0, 0.9, 1, TRUE);
  g_assert_cmpint (data.cards, ==, 10001);
  g_assert_cmpint (data.marked_cards, ==, 10000);
  drawl_cardstrip_data_clear (&data);
}

/* A take of 100 s at 48 fps is a third of a card. */
static void
test_three_hundred_shots (void)
{
  GString *shots = g_string_new (NULL);
  DrawlCardStripData data;

  for (int i = 0; i < 300; i++)
    g_string_append_printf (shots,
                            "%s{\"slate\":\"%d\",\"capture_rate\":\"48\",\"action_s\":\"100\","
                            "\"body\":\"A\",\"size\":\"hd\",\"codec\":\"fixed\","
                            "\"audio_tracks\":0,\"takes\":2}",
                            i > 0 ? "," : "", i + 1);
  g_autofree char *text = g_strdup_printf (CARD_PLAN ("\"takes_span\":false,", "%s"), shots->str);
  g_autoptr (DrawlPlan) plan = fill (&data, text, "300");
  g_assert_null (data.problem);
  assert_blocks_sound (&data);
  g_assert_cmpuint (data.blocks->len, ==, 3 * DRAWL_CARDSTRIP_CARDS_MAX);
  g_assert_cmpint (data.cards, ==, 200);
  g_assert_cmpint (data.marked_first, ==, 199);
  g_string_free (shots, TRUE);
  drawl_cardstrip_data_clear (&data);
}

/* ---- What cannot be drawn ---- */

typedef struct {
  const char *name, *shot, *problem;
} Problem;

static const Problem problem_rows[] = {
    {"no-body", "{\"slate\":\"1\"}", "This shot has no body yet."},
    {"no-size", "{\"slate\":\"1\",\"body\":\"A\"}", "This shot has no size or no codec yet."},
    {"no-codec", "{\"slate\":\"1\",\"body\":\"A\",\"size\":\"hd\"}",
     "This shot has no size or no codec yet."},
    {"no-gauge", "{\"slate\":\"1\",\"body\":\"F\"}", "This shot has no size yet."},
    {"long-take", SHOT ("1", "A", "hd", "24", "601", 1), "One take is longer than a card holds."},
    {"long-roll", SHOT ("1", "F", "s16", "24", "667", 1),
     "One take is longer than a magazine holds."},
};

static void
test_problem (gconstpointer data)
{
  const Problem *row = data;
  g_autofree char *text =
      g_strdup_printf (PLAN_HEAD "\"reserve_percent\":\"10\",\"bodies\":[%s,%s],\"shots\":[%s]}",
                       TINY_CARD_BODY, BODY_F, row->shot);
  DrawlCardStripData strip;
  g_autoptr (DrawlPlan) plan = fill (&strip, text, "1");
  g_autofree char *said = drawl_cardstrip_text (&strip);

  g_assert_cmpstr (strip.problem, ==, row->problem);
  g_assert_cmpstr (said, ==, row->problem);
  g_assert_cmpuint (strip.blocks->len, ==, 0);
  drawl_cardstrip_data_clear (&strip);
}

/* ---- In words ---- */

typedef struct {
  const char *name, *plan, *slate, *text;
} Words;

static const Words words_rows[] = {
    {"cards", whole, "3",
     "Shot 3: 4 takes on 2 cards of 8 GB, beginning on card 2. There is 3 min 20 s left on the "
     "last at 48 fps. All shots on this body fill 3 cards of 8 GB. 10 % of each card is kept "
     "empty."},
    {"one-card", whole, "4",
     "Shot 4: 1 take on 1 card of 8 GB, beginning on card 3. There is 6 min 10 s left on the last "
     "at 24 fps. All shots on this body fill 3 cards of 8 GB. 10 % of each card is kept empty."},
    {"magazine", whole, "2",
     "Shot 2: 5 takes on 1 magazine of 400 ft, beginning on magazine 1. There is 100 ft left on "
     "the last, 2 min 46 s at 24 fps. All shots on this body fill 1 magazine of 400 ft."},
};

static void
test_words (gconstpointer data)
{
  const Words *row = data;
  DrawlCardStripData strip;
  g_autoptr (DrawlPlan) plan = fill (&strip, row->plan, row->slate);
  g_autofree char *text = drawl_cardstrip_text (&strip);
  g_auto (GStrv) parts = g_strsplit (text, "\u00a0", -1);
  g_autofree char *plain = g_strjoinv (" ", parts);

  g_assert_cmpstr (plain, ==, row->text);
  drawl_cardstrip_data_clear (&strip);
}

/* ---- Layout ---- */

/* Inside the picture, above the foot, in rows of one size, none over another; and the mirror. */
static void
test_layout (void)
{
  for (guint i = 0; i < 4000; i++) {
    gint64 cards = g_test_rand_int_range (1, 100);
    double width = g_test_rand_double_range (200, 3840);
    double height = g_test_rand_double_range (80, 1000), line = g_test_rand_double_range (10, 24);
    DrawlCardStripLayout at, mirror;

    drawl_cardstrip_layout (cards, width, height, line, FALSE, &at);
    drawl_cardstrip_layout (cards, width, height, line, TRUE, &mirror);
    g_assert_cmpuint (at.cards, ==, MIN (cards, DRAWL_CARDSTRIP_CARDS_MAX));
    g_assert_cmpfloat (at.step_x, >=, at.card_width);
    g_assert_cmpfloat (at.step_y, >=, at.card_height + (at.labels ? line : 0));
    for (guint card = 0; card < at.cards; card++) {
      cairo_rectangle_t box = drawl_cardstrip_card (&at, card);
      cairo_rectangle_t mirrored = drawl_cardstrip_card (&mirror, card);

      g_assert_cmpfloat (box.x, >=, 0);
      g_assert_cmpfloat (box.y - (at.labels ? line : 0), >=, 0);
      g_assert_cmpfloat (box.x + box.width, <=, width);
      g_assert_cmpfloat (box.y + box.height, <, at.foot_y);
      g_assert_cmpfloat (box.height, >, 0);
      g_assert_cmpfloat_with_epsilon (mirrored.x, width - box.x - box.width, 1e-6);
      g_assert_cmpfloat_with_epsilon (mirrored.y, box.y, 1e-6);
    }
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cardstrip/whole", test_whole);
  g_test_add_func ("/cardstrip/spanning", test_spanning);
  g_test_add_func ("/cardstrip/film", test_film);
  g_test_add_func ("/cardstrip/random", test_random);
  g_test_add_func ("/cardstrip/many", test_many);
  g_test_add_func ("/cardstrip/three-hundred-shots", test_three_hundred_shots);
  add_rows ("/cardstrip/problem", problem_rows, test_problem);
  add_rows ("/cardstrip/words", words_rows, test_words);
  g_test_add_func ("/cardstrip/layout", test_layout);
  return g_test_run ();
}
