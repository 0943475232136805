/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The check: verdict, reasons, licences and fallbacks of single shots on small bodies, and what
 * must hold for any shot. */

#include "plan/check.h"

#include <string.h>

#include "asking.h"
#include "rows.h"

/* ---- Words for what was found ---- */

static char *
reasons_words (const DrawlCheck *check)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < check->n_reasons; i++) {
    const DrawlReason *reason = &check->reasons[i];
    char limit[DRAWL_RATIONAL_TEXT_SIZE];
    g_string_append_printf (text, "%s%s", i == 0 ? "" : " ", drawl_reason_id (reason->kind));
    if (reason->limit.num != 0)
      g_string_append_printf (text, "(%s)", drawl_rational_text (reason->limit, limit));
  }
  return g_string_free (text, FALSE);
}

static char *
sets_words (const DrawlCheck *check, const DrawlBody *body)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; check->sets != NULL && i < check->sets->len; i++) {
    const DrawlLicenceSet *set = &g_array_index (check->sets, DrawlLicenceSet, i);
    g_auto (GStrv) ids = drawl_body_tier_ids (body, set->add);
    g_autofree char *joined = g_strjoinv ("+", ids);
    g_string_append_printf (text, "%s%s=%" G_GINT64_FORMAT, i == 0 ? "" : " ", joined,
                            set->price / 100);
  }
  return g_string_free (text, FALSE);
}

/* "60 uhd intra", or "" where nothing was found. */
static char *
fallback_words (const DrawlFallback *fallback, const DrawlBody *body)
{
  char rate[DRAWL_RATIONAL_TEXT_SIZE];

  if (!fallback->found)
    return g_strdup ("");
  drawl_rational_text (fallback->rate, rate);
  const char *size = body->sizes[fallback->size].id;
  if (fallback->codec == DRAWL_BODY_NO_CODEC)
    return g_strdup_printf ("%s %s", rate, size);
  return g_strdup_printf ("%s %s %s", rate, size, body->codecs[fallback->codec].id);
}

/* ---- Single shots ---- */

typedef struct {
  const char *name; /* begins with the body */
  Asked asked;
  const char *verdict, *reasons, *sets;
  const char *keeps[DRAWL_N_KEEPS];
} Shot;

#define AS_HIRED                                                                                   \
  "as-hired", "", "",                                                                              \
  {                                                                                                \
    "", "", "", ""                                                                                 \
  }
#define NEEDS "needs-licence"
#define NOT "not-on-this-body"

static const Shot shots[] = {
    {"digital/as-hired", {"", NULL, "uhd", "intra", "60", "5"}, AS_HIRED},
    {"digital/customary-rate", {"", NULL, "uhd", "intra", "23.976", "5"}, AS_HIRED},
    {"digital/licence-hired", {"rate", NULL, "uhd", "intra", "120", "5"}, AS_HIRED},
    {"digital/bundle-hired", {"all", NULL, "uhd", "raw", "60", "5"}, AS_HIRED},
    {"digital/card-just-fast-enough", {"", "v60", "uhd", "intra", "48", "5"}, AS_HIRED},
    {"digital/rate-not-licensed",
     {"", NULL, "uhd", "intra", "120", "5"},
     NEEDS,
     "rate-not-licensed(60)",
     "rate=60 all=120",
     {"60 uhd intra", "", "", ""}},
    {"digital/rate-over",
     {"", NULL, "uhd", "intra", "240", "5"},
     NOT,
     "rate-over(120)",
     "",
     {"60 uhd intra", "", "", ""}},
    {"digital/rate-over-with-licence",
     {"rate", NULL, "uhd", "intra", "240", "5"},
     NOT,
     "rate-over(120)",
     "",
     {"120 uhd intra", "240 hd intra", "", ""}},
    {"digital/rate-below",
     {"all", NULL, "hd", "raw", "4", "5"},
     NOT,
     "rate-below(8)",
     "",
     {"8 hd raw", "4 wide long", "4 hd intra", ""}},
    {"digital/rate-not-offered",
     {"", NULL, "uhd", "intra", "23.5", "5"},
     NOT,
     "rate-not-offered(24000/1001)",
     "",
     {"24000/1001 uhd intra", "", "", ""}},
    {"digital/codec-not-licensed",
     {"", NULL, "uhd", "raw", "24", "5"},
     NEEDS,
     "codec-not-licensed",
     "rate+raw=105 all=120",
     {"24 uhd intra", "24 hd intra", "24 uhd intra", ""}},
    {"digital/codec-half-licensed",
     {"rate", NULL, "uhd", "raw", "24", "5"},
     NEEDS,
     "codec-not-licensed",
     "raw=45 all=120",
     {"24 uhd intra", "24 hd intra", "24 uhd intra", ""}},
    {"digital/size-not-licensed",
     {"", NULL, "wide", "long", "25", "5"},
     NEEDS,
     "size-not-licensed",
     "wide=30 all=120",
     {"", "25 uhd long", "", ""}},
    {"digital/neither-licensed",
     {"", NULL, "wide", "raw", "25", "5"},
     NEEDS,
     "size-not-licensed codec-not-licensed",
     "all=120 rate+raw+wide=135",
     {"", "25 uhd intra", "", ""}},
    {"digital/neither-size-nor-rate-left",
     {"", NULL, "wide", "long", "120", "5"},
     NOT,
     "size-not-licensed rate-over(30)",
     "",
     {"", "", "", "60 uhd long"}},
    {"digital/no-pair",
     {"", NULL, "uhd", "vc3", "25", "5"},
     NOT,
     "no-pair",
     "",
     {"25 uhd intra", "25 hd vc3", "25 uhd intra", ""}},
    {"digital/no-size",
     {"", NULL, "8k", "intra", "25", "5"},
     NOT,
     "no-size",
     "",
     {"", "25 uhd intra", "", ""}},
    {"digital/no-codec",
     {"", NULL, "hd", "jpg", "25", "5"},
     NOT,
     "no-codec",
     "",
     {"25 hd intra", "25 uhd intra", "25 hd intra", ""}},
    {"digital/neither",
     {"", NULL, "8k", "jpg", "25", "5"},
     NOT,
     "no-size no-codec",
     "",
     {"", "25 uhd intra", "", ""}},
    {"digital/card-too-slow",
     {"", "v60", "uhd", "intra", "60", "5"},
     NOT,
     "card-too-slow(60000000)",
     "",
     {"48 uhd intra", "60 hd long", "60 uhd long", ""}},
    {"digital/card-too-slow-and-rate",
     {"", "v60", "uhd", "intra", "120", "5"},
     NOT,
     "rate-not-licensed(60) card-too-slow(60000000)",
     "",
     {"48 uhd intra", "", "", ""}},
    {"digital/card-too-small",
     {"", "v90", "uhd", "intra", "60", "2000"},
     NOT,
     "card-too-small(2560/3)",
     "",
     {"25 uhd intra", "60 hd long", "60 uhd long", ""}},
    {"digital/take-too-long-at-any-rate",
     {"", "v90", "uhd", "intra", "60", "100000"},
     NOT,
     "card-too-small(2560/3)",
     "",
     {"", "", "", ""}},
    {"buffer/as-hired-however-slow-the-card", {"", NULL, "hd", "raw", "1000", "5"}, AS_HIRED},
    {"buffer/filled-to-the-last-frame", {"", NULL, "hd", "raw", "1000", "5.144"}, AS_HIRED},
    {"buffer/one-frame-too-many",
     {"", NULL, "hd", "raw", "1000", "5.145"},
     NOT,
     "buffer-too-short(5.144)",
     "",
     {"990 hd raw", "1000 sd raw", "", ""}},
    {"buffer/too-short",
     {"", NULL, "hd", "raw", "1000", "6"},
     NOT,
     "buffer-too-short(5.144)",
     "",
     {"850 hd raw", "1000 sd raw", "", ""}},
    {"buffer/needs-licence",
     {"", NULL, "hd", "raw", "1500", "1"},
     NEEDS,
     "rate-not-licensed(1000)",
     "fast=200",
     {"1000 hd raw", "1500 sd raw", "", ""}},
    {"buffer/licence-would-not-help",
     {"", NULL, "hd", "raw", "2000", "5"},
     NOT,
     "rate-not-licensed(1000) buffer-too-short(2.572)",
     "",
     {"1000 hd raw", "2000 sd raw", "", ""}},
    {"film/as-hired", {"", NULL, "s16", "", "75", "5"}, AS_HIRED},
    {"film/any-rate", {"", NULL, "s16", "", "23.976", "5"}, AS_HIRED},
    {"film/rate-over",
     {"", NULL, "s16", "", "100", "5"},
     NOT,
     "rate-over(75)",
     "",
     {"75 s16", "", "", ""}},
    {"film/rate-over-with-licence",
     {"hs", NULL, "s16", "", "100", "5"},
     NOT,
     "rate-over(75)",
     "",
     {"75 s16", "100 n16", "", ""}},
    {"film/needs-licence",
     {"", NULL, "n16", "", "100", "5"},
     NEEDS,
     "rate-not-licensed(75)",
     "hs=70",
     {"75 n16", "", "", ""}},
    {"film/magazine-full", {"", NULL, "n16", "", "25", "640"}, AS_HIRED},
    {"film/magazine-too-short",
     {"", NULL, "n16", "", "24", "700"},
     NOT,
     "magazine-too-short(2000/3)",
     "",
     {"22 n16", "", "", ""}},
    {"film/no-size", {"", NULL, "s8", "", "24", "5"}, NOT, "no-size", "", {"", "24 s16", "", ""}},
};

static void
test_shot (gconstpointer data)
{
  const Shot *row = data;
  g_autoptr (DrawlBody) body = body_of (row->name);
  DrawlCheckQuestion question = ask (body, &row->asked);
  g_auto (DrawlCheck) check = {0};

  drawl_check_run (&question, &check);
  g_autofree char *reasons = reasons_words (&check), *sets = sets_words (&check, body);
  g_assert_cmpstr (drawl_verdict_id (check.verdict), ==, row->verdict);
  g_assert_cmpstr (reasons, ==, row->reasons);
  g_assert_cmpstr (sets, ==, row->sets);
  g_assert_cmpint (check.sets != NULL, ==, *row->sets != '\0');
  for (guint i = 0; i < DRAWL_N_KEEPS; i++) {
    g_autofree char *words = fallback_words (&check.fallbacks[i], body);
    g_assert_cmpstr (words, ==, row->keeps[i]);
  }
}

static void
test_no_body (void)
{
  DrawlCheckQuestion question = {.size = -1, .codec = -1, .card = -1, .rate = {25, 1}};
  g_auto (DrawlCheck) check = {0};

  drawl_check_run (&question, &check);
  g_assert_cmpint (check.verdict, ==, DRAWL_VERDICT_NOT_ON_THIS_BODY);
  g_assert_cmpuint (check.n_reasons, ==, 1);
  g_assert_cmpint (check.reasons[0].kind, ==, DRAWL_REASON_NO_BODY);
  g_autofree char *text = drawl_reason_text (&check.reasons[0], &question);
  g_assert_cmpstr (text, ==, "No body of this plan is chosen for the shot");
}

/* ---- Bodies with something of their own ---- */

typedef struct {
  const char *name;
  const char *find, *replace; /* in the digital body */
  Asked asked;
  const char *verdict, *reasons, *sets, *keep_size;
} Own;

static const Own owns[] = {
    {"class-above-the-data-rate",
     "['V90','VPG-400']",
     "'VPG-400'",
     {"rate", "v90", "hd", "intra", "70", "5"},
     NOT,
     "card-too-slow(90000000)",
     "",
     "60 hd intra"},
    {"class-of-an-open-row-only",
     "['V90','VPG-400']",
     "'VPG-400'",
     {"rate", "v90", "hd", "intra", "60", "5"},
     "as-hired",
     "",
     "",
     ""},
    {"class-within-what-the-licence-opens",
     "['V90','VPG-400']",
     "'VPG-400'",
     {"", "v90", "hd", "intra", "70", "5"},
     NOT,
     "rate-not-licensed(60) card-too-slow(90000000)",
     "",
     "60 hd intra"},
    {"class-that-only-a-licence-lifts",
     "'limits':[",
     "'limits':[{'sizes':'wide','codecs':'intra','lowest_rate':1,'highest_rate':30,"
     "'card_classes':'V90'},{'sizes':'wide','codecs':'intra','lowest_rate':1,'highest_rate':30,"
     "'licences':['wide']},",
     {"", "v60", "wide", "intra", "25", "5"},
     NEEDS,
     "card-too-slow(60000000)",
     "wide=30 all=120",
     ""},
    {"any-card-without-cards",
     "'cards':[",
     "'card_classes':'none','other':[",
     {"", NULL, "uhd", "intra", "60", "50000"},
     "as-hired",
     "",
     "",
     ""},
    {"between-two-rows",
     "'limits':[",
     "'limits':[{'sizes':'wide','codecs':'intra','lowest_rate':1,'highest_rate':30},"
     "{'sizes':'wide','codecs':'intra','lowest_rate':50,'highest_rate':60,'licences':['wide']},",
     {"wide", NULL, "wide", "intra", "42", "5"},
     NOT,
     "rate-over(30)",
     "",
     "50 wide intra"},
    {"below-what-is-hired",
     "'limits':[",
     "'limits':[{'sizes':'wide','codecs':'intra','lowest_rate':48,'highest_rate':60},"
     "{'sizes':'wide','codecs':'intra','lowest_rate':1,'highest_rate':60,'licences':['wide']},",
     {"", NULL, "wide", "intra", "24", "5"},
     NEEDS,
     "rate-not-licensed(48)",
     "wide=30 all=120",
     "48 wide intra"},
    {"more-than-can-be-counted",
     "'mbps':600,'at':60",
     "'mbps':8000000,'at':'1/1000000000'",
     {"", NULL, "uhd", "intra", "60", "5"},
     NOT,
     "card-too-slow(800000000)",
     "",
     "60 uhd long"},
};

static void
test_own (gconstpointer data)
{
  const Own *row = data;
  g_autoptr (GString) text = g_string_new (DIGITAL_BODY);
  g_autoptr (GError) error = NULL;

  if (strstr (row->replace, "'other'") != NULL) /* without cards no class can be asked for */
    g_string_replace (text, "'card_classes':['V90','VPG-400']", "'x':1", 1);
  g_autoptr (DrawlBody) body = make_body (text->str, row->find, row->replace, &error);
  g_assert_no_error (error);
  DrawlCheckQuestion question = ask (body, &row->asked);
  g_auto (DrawlCheck) check = {0};
  drawl_check_run (&question, &check);
  g_autofree char *reasons = reasons_words (&check), *sets = sets_words (&check, body);
  g_autofree char *keep_size = fallback_words (&check.fallbacks[DRAWL_KEEP_SIZE], body);
  g_assert_cmpstr (drawl_verdict_id (check.verdict), ==, row->verdict);
  g_assert_cmpstr (reasons, ==, row->reasons);
  g_assert_cmpstr (sets, ==, row->sets);
  g_assert_cmpstr (keep_size, ==, row->keep_size);
}

/* ---- The card ---- */

static void
test_card_reckoned_with (void)
{
  g_autoptr (DrawlBody) body = sound_body (DIGITAL_BODY);
  Asked asked = {"", NULL, "uhd", "intra", "60", "5"};
  DrawlCheckQuestion question = ask (body, &asked);
  g_auto (DrawlCheck) check = {0};

  drawl_check_run (&question, &check);
  g_assert_cmpint (check.card, ==, 2); /* the fastest */
  question.card = 1;
  drawl_check_run (&question, &check);
  g_assert_cmpint (check.card, ==, 1);
  question.card = 99; /* not of this body: as if none were chosen */
  drawl_check_run (&question, &check);
  g_assert_cmpint (check.card, ==, 2);
}

/* Sound and reserve count: 48 fps just fits V60 without them. */
static void
test_sound_and_reserve (void)
{
  g_autoptr (DrawlBody) body = sound_body (DIGITAL_BODY);
  Asked asked = {"", "v60", "uhd", "intra", "48", "2100"};
  DrawlCheckQuestion question = ask (body, &asked);
  g_auto (DrawlCheck) check = {0};

  drawl_check_run (&question, &check); /* 2,100 s · 60 MB/s = 126 GB of 128 */
  g_assert_cmpint (check.verdict, ==, DRAWL_VERDICT_AS_HIRED);
  question.reserve_percent = exact ("2");
  drawl_check_run (&question, &check);
  g_assert_cmpint (check.reasons[0].kind, ==, DRAWL_REASON_CARD_TOO_SMALL);
  question.reserve_percent = exact ("0");
  question.audio_tracks = 1;
  drawl_check_run (&question, &check);
  g_assert_cmpint (check.reasons[0].kind, ==, DRAWL_REASON_CARD_TOO_SLOW);
}

/* Every value has its word, each word once. */
static void
test_every_id (void)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  GEnumClass *type = g_type_class_ref (DRAWL_TYPE_VERDICT);

  for (int i = 0; i < DRAWL_N_REASONS; i++)
    g_assert_true (g_hash_table_add (seen, (gpointer)drawl_reason_id ((DrawlReasonKind)i)));
  g_assert_cmpuint (type->n_values, ==, DRAWL_N_VERDICTS);
  for (int i = 0; i < DRAWL_N_VERDICTS; i++) {
    g_assert_true (g_hash_table_add (seen, (gpointer)drawl_verdict_id ((DrawlVerdict)i)));
    g_assert_cmpstr (g_enum_get_value (type, i)->value_nick, ==,
                     drawl_verdict_id ((DrawlVerdict)i));
  }
  g_type_class_unref (type);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/check/shot", shots, test_shot);
  g_test_add_func ("/check/no-body", test_no_body);
  add_rows ("/check/own", owns, test_own);
  g_test_add_func ("/check/card-reckoned-with", test_card_reckoned_with);
  g_test_add_func ("/check/sound-and-reserve", test_sound_and_reserve);
  g_test_add_func ("/check/every-id", test_every_id);
  return g_test_run ();
}
