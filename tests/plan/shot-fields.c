/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The fields of a shot, and their way to a file and back: which keys are written, which value
 * drives and which follows, and that the memory of the edits survives. */

#include "fixture.h"

/* ---- Sentences from a file ---- */

typedef struct {
  const char *name;
  const char *keys; /* of the shot, behind its slate */
  const char *capture, *playback, *action, *screen, *factor, *post;
  const char *written; /* the whole shot as it is written again */
} Sentence;

static const Sentence sentences[] = {
    {"nothing", "", "24", "24", "1", "1", "1", "100",
     "{\"slate\":\"1\",\"capture_rate\":\"24\",\"playback_rate\":\"24\",\"action_s\":\"1\"}"},
    {"capture-action", ",\"capture_rate\":\"240\",\"action_s\":\"0.45\"", "240", "24", "0.45",
     "4.5", "10", "100", NULL},
    {"numbers", ",\"capture_rate\":240,\"playback_rate\":24,\"action_s\":0.45", "240", "24", "0.45",
     "4.5", "10", "100", NULL},
    {"exponent", ",\"capture_rate\":2.4e2,\"action_s\":45e-2", "240", "24", "0.45", "4.5", "10",
     "100", NULL},
    {"customary", ",\"capture_rate\":\"59.94\",\"playback_rate\":23.976,\"action_s\":\"2\"",
     "60000/1001", "24000/1001", "2", "5", "2.5", "100",
     "{\"slate\":\"1\",\"capture_rate\":\"60000/1001\",\"playback_rate\":\"24000/1001\","
     "\"action_s\":\"2\"}"},
    {"near-a-customary-rate",
     ",\"capture_rate\":\"2997/125\",\"playback_rate\":24,\"action_s\":\"1\"", "2997/125", "24",
     "1", "0.999", "0.999", "100", NULL},
    {"playback-alone", ",\"playback_rate\":\"25\"", "25", "25", "1", "1", "1", "100", NULL},
    {"screen-factor", ",\"screen_s\":\"5\",\"slow_factor\":\"10\"", "240", "24", "0.5", "5", "10",
     "100", NULL},
    {"post-speed", ",\"capture_rate\":240,\"action_s\":1,\"post_speed_percent\":50", "240", "24",
     "1", "20", "10", "50", NULL},
    {"playback-follows", ",\"capture_rate\":240,\"slow_factor\":10,\"action_s\":1", "240", "24",
     "1", "10", "10", "100", NULL},
    {"playback-from-times", ",\"capture_rate\":250,\"screen_s\":10,\"action_s\":1", "250", "25",
     "1", "10", "10", "100", NULL},
    {"post-follows",
     ",\"capture_rate\":240,\"playback_rate\":24,\"action_s\":1,\"screen_s\":20,\"held\":[],"
     "\"given\":[\"playback_rate\",\"capture_rate\",\"action_s\",\"screen_s\"]",
     "240", "24", "1", "20", "10", "50", NULL},
    {"one-too-many-given",
     ",\"capture_rate\":240,\"playback_rate\":24,\"action_s\":1,\"screen_s\":20,"
     "\"post_speed_percent\":50,"
     "\"given\":[\"playback_rate\",\"capture_rate\",\"action_s\",\"screen_s\"]",
     "240", "24", "1", "20", "10", "50", NULL},
    {"redundant", ",\"capture_rate\":240,\"playback_rate\":24,\"action_s\":1,\"screen_s\":10",
     "240", "24", "1", "10", "10", "100", NULL},
};

static const char *
strip (char *text)
{
  char *to = text;
  for (const char *at = text; *at != '\0'; at++)
    if (*at != ' ')
      *to++ = *at;
  *to = '\0';
  return text;
}

static char *
shot_text (const DrawlShotFields *fields)
{
  g_autoptr (JsonNode) node = json_node_new (JSON_NODE_OBJECT);
  json_node_take_object (node, drawl_shot_fields_to_json (fields));
  return json_to_string (node, FALSE);
}

static DrawlShotFields *
read_fields (const char *text, const char *playback)
{
  g_autoptr (GError) error = NULL;
  const char *at = text;
  DrawlShotFields *fields = drawl_shot_fields_from_json (&at, exact (playback), "test", &error);

  g_assert_no_error (error);
  g_assert_cmpstr (at, ==, "");
  return fields;
}

static void
test_sentence (gconstpointer data)
{
  const Sentence *row = data;
  g_autofree char *text = g_strdup_printf ("{\"slate\":\"1\"%s}", row->keys);
  g_autoptr (DrawlShotFields) fields = read_fields (text, "24");
  const DrawlRational *value = fields->blanks.value;

  assert_same (value[DRAWL_TIMING_CAPTURE], exact (row->capture));
  assert_same (value[DRAWL_TIMING_PLAYBACK], exact (row->playback));
  assert_same (value[DRAWL_TIMING_ACTION], exact (row->action));
  assert_same (value[DRAWL_TIMING_SCREEN], exact (row->screen));
  assert_same (value[DRAWL_TIMING_FACTOR], exact (row->factor));
  assert_same (value[DRAWL_TIMING_POST_SPEED], exact (row->post));

  /* Another default playback rate must not change a shot that was written. */
  g_autofree char *written = shot_text (fields);
  g_autoptr (DrawlShotFields) again = read_fields (written, "50");
  g_assert_true (drawl_shot_fields_equal (fields, again));
  if (row->written != NULL)
    g_assert_cmpstr (strip (written), ==, row->written);
}

/* ---- Edits survive the file ---- */

static void
edit_at_random (DrawlBlanks *blanks)
{
  static const char *const values[] = {"24", "25", "240", "1", "0.45", "10", "50", "100", "7/3"};
  DrawlTimingTerm term = (DrawlTimingTerm)g_test_rand_int_range (0, DRAWL_TIMING_N_TERMS);

  if (g_test_rand_int_range (0, 3) == 0)
    drawl_blanks_hold (blanks, term, g_test_rand_bit ());
  else
    drawl_blanks_edit (blanks, term,
                       exact (values[g_test_rand_int_range (0, G_N_ELEMENTS (values))]), NULL);
}

static void
test_memory (void)
{
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_new ("1", exact ("24"));

  for (guint i = 0; i < 3000; i++) {
    edit_at_random (&fields->blanks);
    g_autofree char *text = shot_text (fields);
    g_autoptr (DrawlShotFields) again = read_fields (text, "30");
    if (!drawl_blanks_equal (&fields->blanks, &again->blanks))
      g_error ("edit %u is not read back from %s", i, text);
  }
}

/* ---- The value type ---- */

/* Every field is copied, compared, written and read back. */
static void
test_every_field (void)
{
  static const char *const whole =
      "{\"slate\":\"12A\",\"scene\":\"3\",\"action\":\"Glass breaks\",\"capture_rate\":\"240\","
      "\"playback_rate\":\"30000/1001\",\"action_s\":\"1\",\"drop\":true,\"body\":\"A\","
      "\"size\":\"uhd\",\"codec\":\"intra\",\"takes\":3,\"handle_before_s\":\"2\","
      "\"handle_after_s\":\"1.5\",\"audio_tracks\":2,\"must\":false,\"notes\":\"Mind the floor\","
      "\"lamp\":\"none\"}";
  static const char *const others[] = {
      "\"slate\":\"12B\"",
      "\"scene\":\"4\"",
      "\"action\":\"\"",
      "\"capture_rate\":\"239\"",
      "\"drop\":false",
      "\"body\":\"B\"",
      "\"size\":\"hd\"",
      "\"codec\":\"packed\"",
      "\"takes\":4",
      "\"handle_before_s\":0",
      "\"handle_after_s\":\"2\"",
      "\"audio_tracks\":0",
      "\"must\":true",
      "\"notes\":\"\"",
      "\"lamp\":\"one\"",
  };
  g_autoptr (DrawlShotFields) fields = read_fields (whole, "24");
  g_autoptr (DrawlShotFields) copy = drawl_shot_fields_copy (fields);
  g_autofree char *text = shot_text (copy);
  g_autoptr (DrawlShotFields) again = read_fields (text, "24");

  g_assert_true (drawl_shot_fields_equal (fields, copy));
  g_assert_true (drawl_shot_fields_equal (fields, again));
  for (guint i = 0; i < G_N_ELEMENTS (others); i++) {
    g_autofree char *head = g_strndup (whole, strlen (whole) - 1);
    g_autofree char *changed =
        g_strdup_printf ("%s,%s}", head, others[i]); /* the last one counts */
    g_autoptr (DrawlShotFields) other = read_fields (changed, "24");
    if (drawl_shot_fields_equal (fields, other))
      g_error ("%s makes no difference", others[i]);
  }
}

static void
test_set (void)
{
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_new ("1", exact ("24"));

  drawl_shot_fields_set (&fields->notes, "x");
  drawl_shot_fields_set (&fields->notes, fields->notes);
  g_assert_cmpstr (fields->notes, ==, "x");
  drawl_shot_fields_set (&fields->notes, NULL);
  g_assert_cmpstr (fields->notes, ==, "");
}

static void
test_take (void)
{
  g_autoptr (DrawlShotFields) fields =
      read_fields ("{\"slate\":\"1\",\"capture_rate\":\"24000/"
                   "1001\",\"action_s\":\"1\",\"handle_before_s\":\"2\","
                   "\"handle_after_s\":\"0.5\"}",
                   "24");
  DrawlRational take_s;
  gint64 take_frames;

  g_assert_true (drawl_shot_fields_take (fields, &take_s, &take_frames));
  assert_rational (take_s, 7, 2);
  g_assert_cmpint (take_frames, ==, 84); /* 83.916 */
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/shot-fields/sentence", sentences, test_sentence);
  g_test_add_func ("/shot-fields/memory", test_memory);
  g_test_add_func ("/shot-fields/every-field", test_every_field);
  g_test_add_func ("/shot-fields/set", test_set);
  g_test_add_func ("/shot-fields/take", test_take);

  return g_test_run ();
}
