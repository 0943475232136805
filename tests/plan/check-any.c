/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What must hold for the check of any shot, over thousands of random ones on the small bodies. */

#include "plan/check.h"

#include <string.h>

#include "bodies.h"
#include "rows.h"

#define N_RANDOM 1500

/* A whole number or a listed rate, now and then one that is not offered. */
static DrawlRate
random_rate (const DrawlBody *body)
{
  DrawlRate rate;

  if (body->n_rates > 0 && g_test_rand_int_range (0, 5) == 0)
    return body->rates[g_test_rand_int_range (0, (gint32)body->n_rates)];
  drawl_rational_make (g_test_rand_int_range (1, 3000), g_test_rand_int_range (0, 9) == 0 ? 7 : 1,
                       &rate);
  return g_test_rand_bit () ? rate : drawl_rational_whole (g_test_rand_int_range (1, 130));
}

static DrawlCheckQuestion
random_question (const DrawlBody *body)
{
  DrawlCheckQuestion question = {
      .body = body,
      .tier = (DrawlTier)g_test_rand_int_range (0, 1 << body->n_licences),
      .card = g_test_rand_int_range (-1, (gint32)body->n_cards),
      .size = g_test_rand_int_range (-1, (gint32)body->n_sizes),
      .codec = g_test_rand_int_range (-1, (gint32)body->n_codecs),
      .rate = random_rate (body),
      .take_s = {g_test_rand_int_range (1, g_test_rand_bit () ? 10 : 2000), 1},
      .audio_tracks = (guint)g_test_rand_int_range (0, 5),
      .reserve_percent = {g_test_rand_int_range (0, 20), 1},
  };

  question.take_frames = take_frames (question.take_s, question.rate);
  return question;
}

static DrawlVerdict
verdict_of (const DrawlCheckQuestion *question)
{
  g_auto (DrawlCheck) check = {0};

  drawl_check_run (question, &check);
  return check.verdict;
}

static void
assert_licences_help (const DrawlCheckQuestion *question, const DrawlCheck *check)
{
  g_assert_cmpint (check->sets != NULL, ==, check->verdict == DRAWL_VERDICT_NEEDS_LICENCE);
  for (guint i = 0; check->sets != NULL && i < check->sets->len; i++) {
    DrawlCheckQuestion with = *question;
    with.tier |= g_array_index (check->sets, DrawlLicenceSet, i).add;
    g_assert_cmpint (verdict_of (&with), ==, DRAWL_VERDICT_AS_HIRED);
  }
}

/* Hiring one more licence never makes it worse. */
static void
assert_more_is_no_worse (const DrawlCheckQuestion *question, const DrawlCheck *check)
{
  for (guint i = 0; i < question->body->n_licences; i++) {
    DrawlCheckQuestion with = *question;
    with.tier |= DRAWL_TIER_BIT (i);
    g_assert_cmpint (verdict_of (&with), <=, check->verdict);
  }
}

static DrawlCheckQuestion
at (const DrawlCheckQuestion *question, guint size, guint codec, DrawlRate rate)
{
  DrawlCheckQuestion other = *question;

  other.size = (int)size;
  other.codec = codec == DRAWL_BODY_NO_CODEC ? -1 : (int)codec;
  if (!drawl_rational_equal (rate, question->rate)) {
    other.rate = rate;
    other.take_frames = take_frames (other.take_s, rate);
  }
  return other;
}

static void
assert_fallback_is_as_hired (const DrawlCheckQuestion *question, const DrawlFallback *fallback)
{
  if (!fallback->found)
    return;
  DrawlCheckQuestion other = at (question, fallback->size, fallback->codec, fallback->rate);
  g_assert_cmpint (verdict_of (&other), ==, DRAWL_VERDICT_AS_HIRED);
}

typedef void (*AnyShot) (const DrawlCheckQuestion *question, const DrawlCheck *check);

static void
for_any_shot (const char *text, guint n, AnyShot test)
{
  g_autoptr (DrawlBody) body = sound_body (text);
  g_auto (DrawlCheck) check = {0};

  for (guint i = 0; i < n; i++) {
    DrawlCheckQuestion question = random_question (body);
    drawl_check_run (&question, &check);
    test (&question, &check);
  }
}

static void
assert_holds (const DrawlCheckQuestion *question, const DrawlCheck *check)
{
  gboolean as_hired = check->verdict == DRAWL_VERDICT_AS_HIRED;

  g_assert_cmpint (check->n_reasons == 0, ==, as_hired);
  g_assert_false (as_hired && (check->fallbacks[DRAWL_KEEP_SIZE].found ||
                               check->fallbacks[DRAWL_KEEP_RATE].found));
  assert_licences_help (question, check);
  assert_more_is_no_worse (question, check);
  for (guint i = 0; i < DRAWL_N_KEEPS; i++)
    assert_fallback_is_as_hired (question, &check->fallbacks[i]);
  for (guint i = 0; i < check->n_reasons; i++) {
    g_autofree char *reason = drawl_reason_text (&check->reasons[i], question);
    g_assert_cmpuint (strlen (reason), >, 0);
    for (guint j = 0; j < i; j++)
      g_assert_cmpint (check->reasons[i].kind, !=, check->reasons[j].kind);
  }
}

static double
distance (DrawlRate a, DrawlRate b)
{
  return ABS (drawl_rational_to_double (a) - drawl_rational_to_double (b));
}

/* The least distance to a rate at which it is as hired, over all that are offered. */
static double
least_distance (const DrawlCheckQuestion *question, guint codec)
{
  const DrawlBody *body = question->body;
  double least = G_MAXDOUBLE;
  DrawlRate rate = {1, 1000000};

  while (drawl_body_rate_beside (body, rate, 1, TRUE, &rate) && rate.num / rate.den <= 4000) {
    DrawlCheckQuestion other = at (question, (guint)question->size, codec, rate);
    if (distance (rate, question->rate) < least && verdict_of (&other) == DRAWL_VERDICT_AS_HIRED)
      least = distance (rate, question->rate);
  }
  return least;
}

/* No rate that is as hired lies nearer than the fallback: first in the wanted codec, then in any.
 */
static void
assert_nearest (const DrawlCheckQuestion *question, const DrawlCheck *check)
{
  const DrawlFallback *found = &check->fallbacks[DRAWL_KEEP_SIZE];
  gboolean has_codec = question->codec >= 0;

  if (check->verdict == DRAWL_VERDICT_AS_HIRED || question->size < 0)
    return;
  double least = has_codec ? least_distance (question, (guint)question->codec) : G_MAXDOUBLE;
  gboolean in_codec = least < G_MAXDOUBLE;
  for (guint codec = 0; codec < question->body->n_codecs && !in_codec; codec++)
    least = MIN (least, least_distance (question, codec));
  g_assert_cmpint (found->found, ==, least < G_MAXDOUBLE);
  if (!found->found)
    return;
  g_assert_cmpint (in_codec, ==, (int)found->codec == question->codec);
  g_assert_cmpfloat_with_epsilon (distance (found->rate, question->rate), least, 1e-9);
}

/* No other size that keeps the rate is larger. */
static void
assert_largest (const DrawlCheckQuestion *question, const DrawlCheck *check)
{
  const DrawlBody *body = question->body;
  const DrawlFallback *found = &check->fallbacks[DRAWL_KEEP_RATE];
  guint64 largest = 0;

  if (check->verdict == DRAWL_VERDICT_AS_HIRED)
    return;
  for (guint size = 0; size < body->n_sizes; size++)
    for (guint codec = 0; codec < body->n_codecs; codec++) {
      DrawlCheckQuestion other = at (question, size, codec, question->rate);
      guint64 area = (guint64)body->sizes[size].width * body->sizes[size].height;
      if ((int)size != question->size && area > largest &&
          verdict_of (&other) == DRAWL_VERDICT_AS_HIRED)
        largest = area;
    }
  g_assert_cmpint (found->found, ==, largest > 0);
  if (found->found)
    g_assert_cmpuint ((guint64)body->sizes[found->size].width * body->sizes[found->size].height, ==,
                      largest);
}

typedef struct {
  const char *name, *body;
  guint n;
  AnyShot test;
} Any;

static const Any anys[] = {
    {"digital/holds-together", DIGITAL_BODY, N_RANDOM, assert_holds},
    {"buffer/holds-together", BUFFER_BODY, N_RANDOM, assert_holds},
    {"film/holds-together", FILM_BODY, N_RANDOM, assert_holds},
    {"digital/no-rate-is-nearer", DIGITAL_BODY, 60, assert_nearest},
    {"buffer/no-rate-is-nearer", BUFFER_BODY, 60, assert_nearest},
    {"digital/no-size-is-larger", DIGITAL_BODY, N_RANDOM, assert_largest},
    {"buffer/no-size-is-larger", BUFFER_BODY, N_RANDOM, assert_largest},
};

static void
test_any (gconstpointer data)
{
  const Any *row = data;
  for_any_shot (row->body, row->n, row->test);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/check/any", anys, test_any);
  return g_test_run ();
}
