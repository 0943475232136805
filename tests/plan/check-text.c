/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What the check says, sentence by sentence. */

#include "plan/check.h"

#include <string.h>

#include "asking.h"
#include "rows.h"

typedef struct {
  const char *name;
  Asked asked;
  guint reason;
  const char *text; /* with plain spaces */
} Said;

static const Said said[] = {
    {"digital/rate-not-licensed",
     {"", NULL, "uhd", "intra", "120", "5"},
     0,
     "120 fps is over the 60 fps that this size and codec allow as hired"},
    {"digital/rate-over",
     {"", NULL, "uhd", "intra", "240", "5"},
     0,
     "240 fps is over the 120 fps that this size and codec reach with every licence"},
    {"digital/rate-below",
     {"all", NULL, "hd", "raw", "4", "5"},
     0,
     "4 fps is below 8 fps, the lowest rate of this size on this body"},
    {"digital/rate-not-offered",
     {"", NULL, "uhd", "intra", "23.5", "5"},
     0,
     "Tern 4 cannot be set to 23.5 fps; the nearest rate is 23.976 fps"},
    {"digital/size",
     {"", NULL, "wide", "raw", "25", "5"},
     0,
     "4096 × 2160 is not open as hired; it takes a licence"},
    {"digital/codec",
     {"", NULL, "wide", "raw", "25", "5"},
     1,
     "Raw 12-bit at 4096 × 2160 is not open as hired; it takes a licence"},
    {"digital/pair",
     {"", NULL, "uhd", "vc3", "25", "5"},
     0,
     "Tern 4 does not record 3840 × 2160 in VC-3"},
    {"digital/no-size",
     {"", NULL, "8k", "jpg", "25", "5"},
     0,
     "Tern 4 does not have the picture size of this shot"},
    {"digital/no-codec",
     {"", NULL, "8k", "jpg", "25", "5"},
     1,
     "Tern 4 does not have the codec of this shot"},
    {"digital/another-card-would-do",
     {"", "v60", "uhd", "intra", "60", "5"},
     0,
     "75 MB/s must be written, but the card V60 128 GB guarantees 60 MB/s; the card V90 64 GB "
     "would "
     "do"},
    {"digital/no-card-would-do",
     {"all", NULL, "uhd", "raw", "70", "5"},
     1,
     "871 MB/s must be written, but the card Carrier 1 TB guarantees 800 MB/s, and no card of this "
     "body would do"},
    {"digital/larger-card-would-do",
     {"", "v90", "uhd", "intra", "60", "2000"},
     0,
     "A take of 33 min 20 s does not fit on the card V90 64 GB, which holds 14 min 13 s; the card "
     "Carrier 1 TB would do"},
    {"buffer/too-short",
     {"", NULL, "hd", "raw", "1000", "6"},
     0,
     "A take of 6 s is longer than the 5.144 s that the ring buffer holds"},
    {"film/rate-not-licensed",
     {"", NULL, "n16", "", "100", "5"},
     0,
     "100 fps is over the 75 fps that this size allows as hired"},
    {"film/rate-over",
     {"", NULL, "s16", "", "100", "5"},
     0,
     "100 fps is over the 75 fps that this size reaches on this body"},
    {"film/magazine",
     {"", NULL, "n16", "", "24", "700"},
     0,
     "A take of 11 min 40 s is longer than the 11 min 07 s that the longest magazine runs"},
};

static char *
with_plain_spaces (char *text)
{
  GString *plain = g_string_new (text);

  g_free (text);
  g_string_replace (plain, "\u00a0", " ", 0);
  return g_string_free (plain, FALSE);
}

static void
test_said (gconstpointer data)
{
  const Said *row = data;
  g_autoptr (DrawlBody) body = body_of (row->name);
  DrawlCheckQuestion question = ask (body, &row->asked);
  g_auto (DrawlCheck) check = {0};

  drawl_check_run (&question, &check);
  g_assert_cmpuint (check.n_reasons, >, row->reason);
  g_autofree char *text =
      with_plain_spaces (drawl_reason_text (&check.reasons[row->reason], &question));
  g_assert_cmpstr (text, ==, row->text);
}

static void
test_other_words (void)
{
  g_autoptr (DrawlBody) digital = sound_body (DIGITAL_BODY);
  g_autoptr (DrawlBody) film = sound_body (FILM_BODY);
  DrawlFallback none = {0}, picture = {TRUE, 0, 1, {60, 1}};
  DrawlFallback window = {TRUE, 0, DRAWL_BODY_NO_CODEC, {24000, 1001}};
  DrawlLicenceSet set = {3, 10500};

  g_assert_null (drawl_fallback_text (&none, digital));
  g_autofree char *on_card = with_plain_spaces (drawl_fallback_text (&picture, digital));
  g_autofree char *on_film = with_plain_spaces (drawl_fallback_text (&window, film));
  g_autofree char *licences = with_plain_spaces (drawl_licence_set_text (&set, digital));
  g_assert_cmpstr (on_card, ==, "60 fps at 3840 × 2160 in Long");
  g_assert_cmpstr (on_film, ==, "23.976 fps at Super 16");
  g_assert_cmpstr (licences, ==, "Rate upgrade and Raw upgrade (105.00 EUR a day)");
  g_assert_cmpstr (drawl_verdict_name (DRAWL_VERDICT_NEEDS_LICENCE), ==, "needs a licence");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/check-text/reason", said, test_said);
  g_test_add_func ("/check-text/other-words", test_other_words);
  return g_test_run ();
}
