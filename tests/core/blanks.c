/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The sentence under edit: scripts of edits and what they leave, and random walks that keep the
 * invariant. */

#include "core/blanks.h"
#include "core/error.h"
#include "rows.h"

#include <string.h>

#define N_STEPS 20000

static DrawlTimingTerm
find_term (const char *key)
{
  guint term = 0;

  while (!g_str_equal (drawl_timing_term_key (term), key))
    g_assert_cmpuint (++term, <, DRAWL_TIMING_N_TERMS);
  return (DrawlTimingTerm)term;
}

/* One step: "+action_s" holds, "-action_s" lets go, "action_s=0.45" edits. */
static gboolean
take_step (DrawlBlanks *blanks, const char *step, GError **error)
{
  if (*step == '+' || *step == '-') {
    drawl_blanks_hold (blanks, find_term (step + 1), *step == '+');
    return TRUE;
  }
  g_auto (GStrv) parts = g_strsplit (step, "=", 2);
  return drawl_blanks_edit (blanks, find_term (parts[0]), exact (parts[1]), error);
}

static void
assert_values (const DrawlBlanks *blanks, const char *expected)
{
  g_auto (GStrv) words = g_strsplit (expected, " ", -1);

  for (gsize i = 0; words[i] != NULL; i++) {
    g_auto (GStrv) parts = g_strsplit (words[i], "=", 2);
    assert_same (blanks->value[find_term (parts[0])], exact (parts[1]));
  }
}

typedef struct {
  const char *name, *steps;
  const char *left;    /* values after the last step */
  const char *refusal; /* what the last step's error says; NULL: it is taken */
} Script;

/* Each begins with a new sentence at 24: playback and post speed held, one second of real time. */
static const Script script_rows[] = {
    {"new", "",
     "capture_rate=24 playback_rate=24 action_s=1 screen_s=1 slow_factor=1 "
     "post_speed_percent=100"},
    {"rate", "capture_rate=240", "action_s=1 screen_s=10 slow_factor=10"},
    {"rate-then-action", "capture_rate=240 action_s=0.45", "screen_s=4.5 slow_factor=10"},
    {"first-screen-moves-action", "screen_s=4", "capture_rate=24 action_s=4 slow_factor=1"},
    {"screen-moves-older-rate", "capture_rate=240 action_s=0.45 screen_s=9",
     "capture_rate=480 action_s=0.45 slow_factor=20"},
    {"screen-moves-older-action", "action_s=0.45 capture_rate=240 screen_s=9",
     "capture_rate=240 action_s=0.9 slow_factor=10"},
    {"held-rate-stays", "capture_rate=240 action_s=0.45 +capture_rate screen_s=9",
     "capture_rate=240 action_s=0.9 slow_factor=10"},
    {"held-screen-stays", "screen_s=4 +screen_s capture_rate=48",
     "capture_rate=48 action_s=2 screen_s=4"},
    {"factor-moves-rate", "slow_factor=10", "capture_rate=240 playback_rate=24 screen_s=10"},
    {"held-rate-factor-moves-playback",
     "capture_rate=240 +capture_rate -playback_rate slow_factor=5",
     "capture_rate=240 playback_rate=48 screen_s=5"},
    {"playback-edited-though-held", "capture_rate=100 playback_rate=25",
     "capture_rate=100 playback_rate=25 slow_factor=4"},
    {"post-speed-edited-though-held", "capture_rate=240 post_speed_percent=50",
     "screen_s=20 slow_factor=10"},
    {"post-speed-follows-when-let-go",
     "capture_rate=240 action_s=1 +capture_rate +action_s -post_speed_percent screen_s=20",
     "post_speed_percent=50 capture_rate=240 action_s=1"},
    {"held-but-determined-keeps-its-value",
     "capture_rate=240 +capture_rate +slow_factor action_s=2",
     "capture_rate=240 slow_factor=10 playback_rate=24 screen_s=20"},
    {"same-value-under-holds", "capture_rate=240 +capture_rate slow_factor=10", "screen_s=10"},
    {"let-go-again", "capture_rate=240 +capture_rate -capture_rate slow_factor=5",
     "capture_rate=120 screen_s=5"},
    {"holds-leave-no-room", "capture_rate=240 +capture_rate slow_factor=5",
     "capture_rate=240 slow_factor=10",
     "slow factor cannot change while these are held: capture rate and playback rate; let go of "
     "one of "
     "them"},
    {"three-holds-leave-no-room", "capture_rate=240 +capture_rate +action_s screen_s=5",
     "screen_s=10 action_s=1",
     "these are held: capture rate and playback rate and action time and post speed"},
    {"only-those-that-matter", "capture_rate=240 +capture_rate +action_s slow_factor=5",
     "slow_factor=10", "these are held: capture rate and playback rate; let"},
    {"zero", "capture_rate=0", "capture_rate=24", "capture rate cannot be 0 fps"},
    {"negative", "action_s=-1", "action_s=1", "action time cannot be -1 s"},
    {"follower-out-of-range", "slow_factor=1000000", "slow_factor=1 capture_rate=24",
     "capture rate cannot be 24000000 fps"},
};

static void
test_script (gconstpointer data)
{
  const Script *row = data;
  g_auto (GStrv) steps = g_strsplit (row->steps, " ", -1);
  g_autoptr (GError) error = NULL;
  DrawlBlanks blanks, before;

  drawl_blanks_init (&blanks, drawl_rational_whole (24));
  for (gsize i = 0; steps[i] != NULL && *steps[i] != '\0'; i++) {
    gboolean refused = row->refusal != NULL && steps[i + 1] == NULL;
    before = blanks;
    g_assert_cmpint (take_step (&blanks, steps[i], &error), ==, !refused);
  }
  if (row->refusal != NULL) {
    g_assert_nonnull (strstr (error->message, row->refusal));
    g_assert_true (drawl_blanks_equal (&blanks, &before));
  }
  assert_values (&blanks, row->left);
}

typedef struct {
  const char *name;
  const char *given; /* oldest first */
  const char *held;
  const char *left;
  DrawlCoreError code;
  const char *refusal;
} FromFile;

static const FromFile from_file_rows[] = {
    {"usual", "playback_rate=24 capture_rate=240 action_s=0.45", "playback_rate",
     "screen_s=4.5 slow_factor=10 post_speed_percent=100"},
    {"with-post-speed", "post_speed_percent=50 playback_rate=24 capture_rate=240 action_s=1", "",
     "screen_s=20"},
    {"all-six",
     "playback_rate=24 post_speed_percent=100 capture_rate=240 action_s=1 screen_s=10 "
     "slow_factor=10",
     "playback_rate capture_rate slow_factor", "screen_s=10"},
    {"too-few", "playback_rate=24 action_s=1", "", "", DRAWL_CORE_ERROR_MISSING, "is missing"},
    {"disagree", "playback_rate=24 capture_rate=240 slow_factor=5 action_s=1", "", "",
     DRAWL_CORE_ERROR_CONFLICT, "would have to be 10×"},
    {"out-of-range", "playback_rate=24 capture_rate=0 action_s=1", "", "", DRAWL_CORE_ERROR_RANGE,
     "above 0"},
    {"held-terms-too-long-to-drive",
     "screen_s=18368171/74704 playback_rate=25815/11389151 capture_rate=398567/1697502",
     "capture_rate playback_rate action_s slow_factor post_speed_percent", "",
     DRAWL_CORE_ERROR_OVERFLOW, "fewer digits"},
};

static void
test_from_file (gconstpointer data)
{
  const FromFile *row = data;
  g_auto (GStrv) words = g_strsplit (row->given, " ", -1), holds = g_strsplit (row->held, " ", -1);
  DrawlTimingTerm given[DRAWL_TIMING_N_TERMS];
  DrawlRational value[DRAWL_TIMING_N_TERMS];
  g_autoptr (GError) error = NULL;
  DrawlBlanks blanks, before;
  guint n_given = 0, held = 0;

  for (; words[n_given] != NULL; n_given++) {
    g_auto (GStrv) parts = g_strsplit (words[n_given], "=", 2);
    given[n_given] = find_term (parts[0]);
    value[given[n_given]] = exact (parts[1]);
  }
  for (gsize i = 0; holds[i] != NULL; i++)
    held |= DRAWL_TIMING_BIT (find_term (holds[i]));

  drawl_blanks_init (&blanks, drawl_rational_whole (24));
  before = blanks;
  g_assert_cmpint (drawl_blanks_set (&blanks, given, n_given, value, held, &error), ==,
                   row->refusal == NULL);
  if (row->refusal != NULL) {
    assert_says (error, row->code, row->refusal);
    g_assert_true (drawl_blanks_equal (&blanks, &before));
    return;
  }
  assert_values (&blanks, row->given);
  assert_values (&blanks, row->left);
  g_assert_cmpuint (blanks.held & held, ==, held);
  g_assert_cmpuint (blanks.order[DRAWL_TIMING_N_TERMS - 1], ==, given[n_given - 1]);
}

/* Terms that are too long to drive can be held all the same; others go on driving. */
static void
test_hold_too_long (void)
{
  static const DrawlTimingTerm given[] = {DRAWL_TIMING_SCREEN, DRAWL_TIMING_PLAYBACK,
                                          DRAWL_TIMING_CAPTURE};
  static const DrawlTimingTerm holds[] = {DRAWL_TIMING_ACTION, DRAWL_TIMING_FACTOR,
                                          DRAWL_TIMING_POST_SPEED, DRAWL_TIMING_PLAYBACK};
  DrawlRational value[DRAWL_TIMING_N_TERMS];
  DrawlBlanks blanks;
  DrawlTiming timing;

  value[DRAWL_TIMING_SCREEN] = exact ("18368171/74704");
  value[DRAWL_TIMING_PLAYBACK] = exact ("25815/11389151");
  value[DRAWL_TIMING_CAPTURE] = exact ("398567/1697502");
  g_assert_true (drawl_blanks_set (&blanks, given, G_N_ELEMENTS (given), value, 0, NULL));
  for (gsize i = 0; i < G_N_ELEMENTS (holds); i++) {
    drawl_blanks_hold (&blanks, holds[i], TRUE);
    g_assert_true (blanks.held & DRAWL_TIMING_BIT (holds[i]));
    g_assert_true (drawl_blanks_timing (&blanks, &timing, NULL));
    assert_same (timing.value[DRAWL_TIMING_SCREEN], value[DRAWL_TIMING_SCREEN]);
  }
}

/* ---- Random walks ---- */

static guint
count_bits (guint bits)
{
  guint n = 0;

  for (; bits != 0; bits &= bits - 1)
    n++;
  return n;
}

static void
assert_order (const DrawlBlanks *blanks)
{
  guint seen = 0;

  for (guint i = 0; i < DRAWL_TIMING_N_TERMS; i++)
    seen |= DRAWL_TIMING_BIT (blanks->order[i]);
  g_assert_cmpuint (seen, ==, DRAWL_TIMING_ALL);
}

static void
assert_ties (const DrawlBlanks *blanks)
{
  DrawlRational left, right;
  const DrawlRational *value = blanks->value;

  g_assert_true (
      drawl_rational_mul (value[DRAWL_TIMING_FACTOR], value[DRAWL_TIMING_PLAYBACK], &left));
  assert_same (left, value[DRAWL_TIMING_CAPTURE]);
  g_assert_true (
      drawl_rational_mul (value[DRAWL_TIMING_SCREEN], value[DRAWL_TIMING_POST_SPEED], &left));
  g_assert_true (
      drawl_rational_mul (value[DRAWL_TIMING_ACTION], value[DRAWL_TIMING_FACTOR], &right));
  g_assert_true (drawl_rational_mul (right, drawl_rational_whole (100), &right));
  assert_same (left, right);
}

static void
assert_invariant (const DrawlBlanks *blanks)
{
  DrawlTiming timing;

  assert_order (blanks);
  assert_ties (blanks);
  g_assert_cmpuint (count_bits (blanks->given), ==, 4);
  g_assert_cmpuint (drawl_timing_closure (blanks->given), ==, DRAWL_TIMING_ALL);
  for (guint term = 0; term < DRAWL_TIMING_N_TERMS; term++) {
    guint bit = DRAWL_TIMING_BIT (term);
    if ((blanks->held & bit) != 0 && (blanks->given & bit) == 0)
      g_assert_cmpuint (drawl_timing_closure (blanks->held & ~bit) & bit, ==, bit);
  }

  g_assert_true (drawl_blanks_timing (blanks, &timing, NULL));
  g_assert_cmpuint (timing.followed, ==, DRAWL_TIMING_ALL & ~blanks->given);
  for (guint term = 0; term < DRAWL_TIMING_N_TERMS; term++)
    assert_same (timing.value[term], blanks->value[term]);
}

/* What followed is what the edited term, the held ones, and the free ones newer than it determine.
 */
static void
assert_oldest_followed (const DrawlBlanks *blanks, DrawlTimingTerm edited)
{
  guint newer = DRAWL_TIMING_BIT (edited) | blanks->held;

  for (guint i = DRAWL_TIMING_N_TERMS; i-- > 0;) {
    guint bit = DRAWL_TIMING_BIT (blanks->order[i]);
    if (((blanks->held | DRAWL_TIMING_BIT (edited)) & bit) == 0)
      g_assert_cmpint ((blanks->given & bit) == 0, ==, (drawl_timing_closure (newer) & bit) != 0);
    newer |= bit;
  }
}

static DrawlRational
random_value (DrawlTimingTerm term)
{
  static const char *const rates[] = {"24000/1001", "24", "25", "50", "60000/1001", "240", "1000"};
  static const char *const others[] = {"0.5", "1", "2", "4", "10", "25", "100", "1/3"};
  gboolean is_rate = term == DRAWL_TIMING_CAPTURE || term == DRAWL_TIMING_PLAYBACK;

  return is_rate ? exact (rates[g_test_rand_int_range (0, G_N_ELEMENTS (rates))])
                 : exact (others[g_test_rand_int_range (0, G_N_ELEMENTS (others))]);
}

static gboolean
walk_edit (DrawlBlanks *blanks)
{
  DrawlTimingTerm term = (DrawlTimingTerm)g_test_rand_int_range (0, DRAWL_TIMING_N_TERMS);
  DrawlRational value = random_value (term);
  DrawlBlanks before = *blanks;

  if (!drawl_blanks_edit (blanks, term, value, NULL)) {
    g_assert_true (drawl_blanks_equal (blanks, &before));
    return FALSE;
  }
  assert_same (blanks->value[term], value);
  g_assert_cmpuint (blanks->order[DRAWL_TIMING_N_TERMS - 1], ==, term);
  g_assert_cmpuint (blanks->held, ==, before.held);
  for (guint i = 0; i < DRAWL_TIMING_N_TERMS; i++)
    if (i != term && (before.held & DRAWL_TIMING_BIT (i)) != 0)
      assert_same (blanks->value[i], before.value[i]);
  assert_oldest_followed (blanks, term);
  return TRUE;
}

static void
walk_hold (DrawlBlanks *blanks)
{
  DrawlTimingTerm term = (DrawlTimingTerm)g_test_rand_int_range (0, DRAWL_TIMING_N_TERMS);
  /* Let go more often than hold, so that edits find room. */
  gboolean hold = g_test_rand_int_range (0, 3) == 0;
  DrawlBlanks before = *blanks;

  drawl_blanks_hold (blanks, term, hold);
  g_assert_cmpint ((blanks->held & DRAWL_TIMING_BIT (term)) != 0, ==, hold);
  for (guint i = 0; i < DRAWL_TIMING_N_TERMS; i++)
    assert_same (blanks->value[i], before.value[i]);
}

static void
test_walk (void)
{
  DrawlBlanks blanks;
  guint n_taken = 0;

  drawl_blanks_init (&blanks, DRAWL_RATIONAL_INIT (24000, 1001));
  assert_invariant (&blanks);
  for (guint i = 0; i < N_STEPS; i++) {
    if (g_test_rand_int_range (0, 3) == 0)
      walk_hold (&blanks);
    else
      n_taken += walk_edit (&blanks);
    assert_invariant (&blanks);
  }
  g_assert_cmpuint (n_taken, >, N_STEPS / 10);
}

/* A sentence written to a file as its given terms, oldest first, and read back is the same. */
static void
test_through_a_file (void)
{
  DrawlBlanks blanks;

  drawl_blanks_init (&blanks, drawl_rational_whole (25));
  for (guint i = 0; i < N_STEPS / 10; i++) {
    DrawlTimingTerm given[DRAWL_TIMING_N_TERMS];
    g_autoptr (GError) error = NULL;
    DrawlBlanks back;
    guint n_given = 0;

    walk_edit (&blanks);
    for (guint at = 0; at < DRAWL_TIMING_N_TERMS; at++)
      if ((blanks.given & DRAWL_TIMING_BIT (blanks.order[at])) != 0)
        given[n_given++] = blanks.order[at];
    g_assert_true (drawl_blanks_set (&back, given, n_given, blanks.value, blanks.held, &error));
    g_assert_no_error (error);
    for (guint term = 0; term < DRAWL_TIMING_N_TERMS; term++)
      assert_same (back.value[term], blanks.value[term]);
    g_assert_cmpuint (back.given, ==, blanks.given);
    g_assert_cmpuint (back.held, ==, blanks.held);
  }
}

static void
test_equal (void)
{
  DrawlBlanks a, b;

  drawl_blanks_init (&a, drawl_rational_whole (24));
  b = a;
  g_assert_true (drawl_blanks_equal (&a, &b));
  drawl_blanks_hold (&b, DRAWL_TIMING_ACTION, TRUE);
  g_assert_false (drawl_blanks_equal (&a, &b));
  b = a;
  g_assert_true (drawl_blanks_edit (&b, DRAWL_TIMING_ACTION, drawl_rational_whole (1), NULL));
  g_assert_false (drawl_blanks_equal (&a, &b));
  drawl_blanks_init (&b, drawl_rational_whole (25));
  g_assert_false (drawl_blanks_equal (&a, &b));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/blanks/script", script_rows, test_script);
  add_rows ("/blanks/from-file", from_file_rows, test_from_file);
  g_test_add_func ("/blanks/hold-too-long", test_hold_too_long);
  g_test_add_func ("/blanks/equal", test_equal);
  g_test_add_func ("/blanks/property/walk", test_walk);
  g_test_add_func ("/blanks/property/through-a-file", test_through_a_file);
  return g_test_run ();
}
