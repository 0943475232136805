/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What is asked of a body that was read: the rates it can be set to, and its licences by name. */

#include "plan/body.h"

#include <string.h>

#include "bodies.h"
#include "plan/error.h"
#include "rows.h"

/* ---- Rates ---- */

typedef struct {
  const char *name;
  const char *rates; /* of the profile */
  const char *rate, *lowest, *highest;
  const char *nearest; /* NULL: none */
} Nearest;

static const Nearest nearest_rows[] = {
    {"itself", "{'step':1}", "50", "1", "60", "50"},
    {"below", "{'step':1}", "47.952", "1", "60", "48"},
    {"lower-of-two", "{'step':1}", "24.5", "1", "60", "24"},
    {"above-the-row", "{'step':1}", "240", "1", "60", "60"},
    {"below-the-row", "{'step':1}", "2", "8", "60", "8"},
    {"end-off-step", "{'step':10}", "240", "1", "95", "90"},
    {"start-off-step", "{'step':10}", "2", "15", "95", "20"},
    {"listed-nearer", "{'step':10,'also':[23.976]}", "24", "1", "60", "24000/1001"},
    {"only-listed", "{'also':[24,25,50]}", "30", "1", "60", "25"},
    {"only-listed-outside", "{'also':[24,25,50]}", "30", "26", "49", NULL},
    {"no-step-within", "{'step':100}", "30", "10", "90", NULL},
    {"fractional-step", "{'step':'0.25'}", "24.3", "1", "60", "24.25"},
    {"any", "{}", "24000/1001", "1", "60", "24000/1001"},
    {"any-above", "{}", "75", "1", "59.94", "60000/1001"},
};

static DrawlBody *
body_with_rates (const char *rates)
{
  g_autofree char *replace = g_strconcat ("'rates':", rates, NULL);
  g_autoptr (GString) text = g_string_new (DIGITAL_BODY);
  const char *from = strstr (text->str, "'limits':["), *to = strstr (text->str, "'audio_tracks'");

  g_string_erase (text, from - text->str, to - from);
  g_string_replace (text, "'kind':'digital',",
                    "'kind':'digital','limits':[{'sizes':'hd','codecs':'intra','lowest_rate':1,"
                    "'highest_rate':1000}],",
                    1);
  return make_body (text->str, "'rates':{'step':1,'also':['24000/1001',29.97,'60000/1001']}",
                    replace, NULL);
}

static void
test_nearest (gconstpointer data)
{
  const Nearest *row = data;
  g_autoptr (DrawlBody) body = body_with_rates (row->rates);
  DrawlRate nearest, lowest = exact (row->lowest), highest;
  g_autoptr (GError) error = NULL;

  g_assert_nonnull (body);
  g_assert_true (drawl_rate_parse (row->highest, &highest, &error));
  DrawlRate rate;
  g_assert_true (drawl_rate_parse (row->rate, &rate, &error));
  gboolean found = drawl_body_nearest_rate (body, rate, lowest, highest, &nearest);
  g_assert_cmpint (found, ==, row->nearest != NULL);
  if (!found)
    return;
  assert_same (nearest, exact (row->nearest));
  g_assert_true (drawl_body_offers_rate (body, nearest));
}

/* Nothing that is offered within the bounds lies nearer. */
static void
test_nearest_is_nearest (void)
{
  g_autoptr (DrawlBody) body = body_with_rates ("{'step':7,'also':[23.976,25,30,59.94,119.88]}");

  for (guint i = 0; i < 2000; i++) {
    DrawlRate rate, lowest, highest, nearest = {0, 1}, best = {0, 1};
    drawl_rational_make (g_test_rand_int_range (1, 20000), 100, &rate);
    drawl_rational_make (g_test_rand_int_range (1, 100), 1, &lowest);
    drawl_rational_make (lowest.num + g_test_rand_int_range (0, 60), 1, &highest);
    double least = G_MAXDOUBLE, at = drawl_rational_to_double (rate);
    for (gint64 k = 1; k < 40; k++) {
      DrawlRate offered = k < 35 ? drawl_rational_whole (7 * k) : body->rates[k - 35];
      double away = ABS (drawl_rational_to_double (offered) - at);
      if (drawl_rational_compare (offered, lowest) >= 0 &&
          drawl_rational_compare (offered, highest) <= 0 && away < least - 1e-9) {
        least = away;
        best = offered;
      }
    }
    gboolean found = drawl_body_nearest_rate (body, rate, lowest, highest, &nearest);
    g_assert_cmpint (found, ==, best.num > 0);
    if (found)
      g_assert_cmpfloat_with_epsilon (ABS (drawl_rational_to_double (nearest) - at), least, 1e-9);
  }
}

/* Stepping up from below passes every offered rate once and ends; down again gives the same. */
static void
test_steps (void)
{
  g_autoptr (DrawlBody) body = sound_body (DIGITAL_BODY);
  g_autoptr (GArray) up = g_array_new (FALSE, FALSE, sizeof (DrawlRate));
  DrawlRate rate = {1, 1000};

  while (drawl_body_step_rate (body, 0, 0, rate, 1, &rate))
    g_array_append_val (up, rate);
  g_assert_cmpuint (up->len, ==, 120 + 3);
  assert_same (rate, exact ("120"));
  for (guint i = 1; i < up->len; i++) {
    g_assert_true (drawl_body_step_rate (body, 0, 0, rate, -1, &rate));
    assert_same (rate, g_array_index (up, DrawlRate, up->len - 1 - i));
  }
  g_assert_false (drawl_body_step_rate (body, 0, 0, rate, -1, &rate));
  g_assert_false (drawl_body_step_rate (body, 2, 0, rate, 1, &rate)); /* no such pair */
}

static void
test_steps_of_any_rate (void)
{
  g_autoptr (DrawlBody) body =
      make_body (FILM_BODY, "'highest_rate':75", "'highest_rate':'75.5'", NULL);
  DrawlRate rate = {149, 2};
  const char *wanted[] = {"75", "151/2"};

  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++) {
    g_assert_true (drawl_body_step_rate (body, 0, DRAWL_BODY_NO_CODEC, rate, 1, &rate));
    assert_same (rate, exact (wanted[i]));
  }
  g_assert_false (drawl_body_step_rate (body, 0, DRAWL_BODY_NO_CODEC, rate, 1, &rate));
}

/* ---- Tiers ---- */

static void
test_tier_words (void)
{
  g_autoptr (DrawlBody) body = sound_body (DIGITAL_BODY);
  const char *ids[] = {"wide", "rate", NULL}, *wrong[] = {"rate", "none", NULL};
  g_autoptr (GError) error = NULL;
  DrawlTier tier = 0;

  g_assert_true (drawl_body_tier_from_ids (body, ids, &tier, NULL));
  g_assert_cmpuint (tier, ==, 5);
  g_auto (GStrv) back = drawl_body_tier_ids (body, tier);
  g_assert_cmpstr (back[0], ==, "rate");
  g_assert_cmpstr (back[1], ==, "wide");
  g_assert_null (back[2]);
  g_autofree char *none = drawl_body_tier_names (body, 0), *one = drawl_body_tier_names (body, 1);
  g_autofree char *two = drawl_body_tier_names (body, 5), *four = drawl_body_tier_names (body, 15);
  g_assert_cmpstr (none, ==, "");
  g_assert_cmpstr (one, ==, "Rate upgrade");
  g_assert_cmpstr (two, ==, "Rate upgrade and Wide upgrade");
  g_assert_cmpstr (four, ==, "Rate upgrade, Raw upgrade, Wide upgrade and Everything");
  g_assert_false (drawl_body_tier_from_ids (body, wrong, &tier, &error));
  g_assert_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_UNKNOWN);
  g_assert_nonnull (strstr (error->message, "Tern 4 has no licence “none”"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/body/nearest", nearest_rows, test_nearest);
  g_test_add_func ("/body/nearest-is-nearest", test_nearest_is_nearest);
  g_test_add_func ("/body/steps", test_steps);
  g_test_add_func ("/body/steps-of-any-rate", test_steps_of_any_rate);
  g_test_add_func ("/body/tier-words", test_tier_words);
  return g_test_run ();
}
