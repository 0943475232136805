/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Figures of edit decision lists against published rows, reel names, and what a list cannot hold.
 */

#include "export/edl.h"

#include <string.h>

#include "core/error.h"
#include "export/error.h"
#include "export/format.h"
#include "export/reel.h"
#include "plan/plan-file.h"
#include "rows.h"

#define DEFINITION "speed = list rate ÷ slow factor; derived from the definition"

/* ---- Speeds of M2 lines ---- */

typedef struct {
  const char *name;
  const char *rate;  /* of the list */
  const char *speed; /* against real time */
  const char *text;
  const char *source;
} Speed;

static const Speed speeds[] = {
    {"IC02", "24", "1/5", "004.8", DEFINITION},
    {"IC03", "24", "1", "024.0", "24.0 is 100 %; derived from the definition"},
    {"IC05", "30", "2", "060.0", "read in public code that writes such lists"},
    {"IC06", "24", "-1/2", "-012.0", "negative is reverse; derived from the definition"},
    {"five-times-at-23.976", "24000/1001", "200/1001", "004.8", DEFINITION},
    {"10x", "24", "1/10", "002.4", DEFINITION},
    {"one-decimal-would-be-4-per-cent-off", "24", "24/1000", "000.576", DEFINITION},
    {"never-a-freeze", "24", "1/100000000", "000.000001", "000.0 would be a still frame (IC01)"},
    {"time-lapse", "24", "120", "2880.0", DEFINITION},
    {"a-whisker-slower", "25", "24/25", "024.0", DEFINITION},
};

static void
test_speed (gconstpointer data)
{
  const Speed *row = data;
  DrawlRational frames_s;

  g_assert_true (drawl_rational_mul (exact (row->rate), exact (row->speed), &frames_s));
  g_autofree char *text = drawl_edl_speed_text (frames_s);
  g_assert_cmpstr (text, ==, row->text);
}

/* ---- Frames of the source ---- */

typedef struct {
  const char *name;
  gint64 frames; /* of the record */
  const char *speed;
  gint64 source_frames;
  const char *source;
} Span;

static const Span spans[] = {
    {"IC04", 100, "26.4/24", 110,
     "OpenTimelineIO issue 1458: M2 026.4 in a list of 24, 100 record frames use 110 of the "
     "source"},
    {"IC08", 240, "1/5", 48, "derived from the definition"},
    {"real-time", 240, "1", 240, "derived from the definition"},
    {"nearest", 100, "1/3", 33, "derived from the definition"},
    {"at-least-1", 1, "1/1000", 1, "an event shows something"},
};

/* @text as one number divided by another, each with decimals. */
static DrawlRational
ratio (const char *text)
{
  g_auto (GStrv) parts = g_strsplit (text, "/", 2);
  DrawlRational value = exact (parts[0]);

  if (parts[1] != NULL)
    g_assert_true (drawl_rational_div (value, exact (parts[1]), &value));
  return value;
}

static void
test_span (gconstpointer data)
{
  const Span *row = data;
  g_assert_cmpint (drawl_edl_source_frames (row->frames, ratio (row->speed)), ==,
                   row->source_frames);
}

/* ---- Reels ---- */

typedef struct {
  const char *name;
  const char *slates; /* "|" between them */
  const char *reels;
} Reels;

static const Reels reels[] = {
    {"as-it-is", "12A|12B", "12A|12B"},
    {"capitals", "12a", "12A"},
    {"case-alone", "12A|12a|12a ", "12A|12A_2|12A_3"},
    {"signs", "12-A/3 (b)", "12_A_3_B"},
    {"eight-signs", "GLASSBREAK", "GLASSBRE"},
    {"eight-signs-twice", "GLASSBREAK|GLASSBREATH|GLASSBREAD", "GLASSBRE|GLASSB_2|GLASSB_3"},
    {"number-that-is-taken", "12A_2|12A|12A!", "12A_2|12A|12A_3"},
    {"accents", "Größe 4", "GROSSE_4"},
    {"no-sign-left", "Ж|!", "SHOT|SHOT_2"},
    {"reserved", "AX|BL", "AX_2|BL_2"},
};

static void
test_reels (gconstpointer data)
{
  const Reels *row = data;
  g_auto (GStrv) slates = g_strsplit (row->slates, "|", -1),
                 expected = g_strsplit (row->reels, "|", -1);
  g_auto (DrawlReels) given = {0};

  drawl_reels_init (&given);
  for (guint i = 0; slates[i] != NULL; i++)
    g_assert_cmpstr (drawl_reels_add (&given, slates[i]), ==, expected[i]);
}

/* Whatever the slates, every reel is 1 to 8 signs and given once. */
static void
test_any_reels (void)
{
  static const char *const signs[] = {"A", "b", "1", "_", " ", "é", "Ж", "/"};
  g_auto (DrawlReels) given = {0};
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  drawl_reels_init (&given);
  for (guint i = 0; i < 5000; i++) {
    g_autoptr (GString) slate = g_string_new (NULL);
    for (gint32 n = g_test_rand_int_range (0, 12); n > 0; n--)
      g_string_append (slate, signs[g_test_rand_int_range (0, G_N_ELEMENTS (signs))]);
    const char *reel = drawl_reels_add (&given, slate->str);
    gsize length = strlen (reel);
    g_assert_cmpuint (length, >, 0);
    g_assert_cmpuint (length, <=, DRAWL_REEL_LENGTH);
    g_assert_cmpuint (strspn (reel, "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_"), ==, length);
    g_assert_true (g_hash_table_add (seen, (gpointer)reel));
  }
}

/* ---- Lists ---- */

static DrawlPlan *
plan_of (const char *members)
{
  g_autofree char *text = g_strdup_printf ("{\"format\":\"drawl-plan\",\"version\":1,%s}", members);
  g_autoptr (GError) error = NULL;
  DrawlPlan *plan = drawl_plan_from_data (text, strlen (text), "test", &error);

  g_assert_no_error (error);
  return plan;
}

static void
test_list (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (
      "\"title\":\"Glass\\nworks\",\"playback_rate\":\"24\",\"shots\":["
      "{\"slate\":\"1\",\"capture_rate\":\"120\",\"action_s\":\"2\",\"handle_before_s\":\"0.5\","
      "\"notes\":\"Mind the glass\\r\\n\\r\\nTwice\"},"
      "{\"slate\":\"2 b\",\"capture_rate\":\"24\",\"action_s\":\"1\"}]");
  g_autoptr (GPtrArray) warnings = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = drawl_edl_text (plan, warnings, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (warnings->len, ==, 0);
  g_assert_cmpstr (
      text, ==,
      "TITLE: Glass works\r\n"
      "FCM: NON-DROP FRAME\r\n"
      "\r\n"
      "001  1        V     C        00:00:00:12 00:00:02:12 01:00:00:00 01:00:10:00\r\n"
      "M2   1          004.8                00:00:00:12\r\n"
      "* FROM CLIP NAME: 1\r\n"
      "* COMMENT: Mind the glass\r\n"
      "* COMMENT: Twice\r\n"
      "002  2_B      V     C        00:00:00:00 00:00:01:00 01:00:10:00 01:00:11:00\r\n"
      "* FROM CLIP NAME: 2 b\r\n");
}

/* However long a speed is, the code behind it stands where it always does. */
static void
test_speed_columns (void)
{
  g_autoptr (DrawlPlan) plan =
      plan_of ("\"playback_rate\":\"24\",\"shots\":["
               "{\"slate\":\"1\",\"capture_rate\":\"120\",\"action_s\":\"1\"},"
               "{\"slate\":\"2\",\"capture_rate\":\"1000\",\"action_s\":\"1\"},"
               "{\"slate\":\"3\",\"capture_rate\":\"1000000\",\"action_s\":\"0.01\"}]");
  g_autoptr (GPtrArray) warnings = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *text = drawl_edl_text (plan, warnings, NULL);

  g_assert_nonnull (strstr (text, "\r\nM2   1          004.8                00:00:00:00\r\n"));
  g_assert_nonnull (strstr (text, "\r\nM2   2          000.576              00:00:00:00\r\n"));
  g_assert_nonnull (strstr (text, "\r\nM2   3          000.000576           00:00:00:00\r\n"));
  g_assert_cmpuint (warnings->len, ==, 1);
  g_assert_nonnull (strstr (warnings->pdata[0], "1 shot has a speed of so many digits"));
}

typedef struct {
  const char *name;
  const char *members;
  const char *fcm;  /* the line; "" when the list is refused */
  const char *says; /* a warning, or why it is refused; "" for no warning */
  DrawlExportError code;
} Counting;

#define SHOT(slate, rate, more)                                                                    \
  "{\"slate\":\"" slate "\",\"playback_rate\":\"" rate "\",\"capture_rate\":\"60\",\"action_s\":"  \
  "\"1\"" more "}"
#define DROP ",\"drop\":true"

static const Counting countings[] = {
    {"24", "\"playback_rate\":\"24\",\"shots\":[" SHOT ("1", "24", "") "]", "FCM: NON-DROP FRAME",
     ""},
    {"29.97-drop", "\"playback_rate\":\"29.97\",\"shots\":[" SHOT ("1", "29.97", DROP) "]",
     "FCM: DROP FRAME", ""},
    {"59.94-drop", "\"playback_rate\":\"59.94\",\"shots\":[" SHOT ("1", "59.94", DROP) "]",
     "FCM: DROP FRAME", ""},
    {"29.97-non-drop", "\"playback_rate\":\"29.97\",\"shots\":[" SHOT ("1", "29.97", "") "]",
     "FCM: NON-DROP FRAME", ""},
    {"29.97-mixed",
     "\"playback_rate\":\"29.97\",\"shots\":[" SHOT ("1", "29.97", DROP) "," SHOT ("2", "29.97",
                                                                                   "") "]",
     "FCM: NON-DROP FRAME", "some shots count drop-frame and some do not"},
    {"drop-shots-of-another-rate",
     "\"playback_rate\":\"24\",\"shots\":[" SHOT ("1", "29.97", DROP) "," SHOT ("2", "24", "") "]",
     "FCM: NON-DROP FRAME", "1 shot is to play at another rate than the plan's 24"},
    {"no-shots", "\"playback_rate\":\"29.97\"", "FCM: NON-DROP FRAME", ""},
    {"no-timecode", "\"playback_rate\":\"12.5\"", "", "25/2 has no timecode",
     DRAWL_EXPORT_ERROR_NO_TIMECODE},
    {"three-digits", "\"playback_rate\":\"120\"", "", "needs three digits",
     DRAWL_EXPORT_ERROR_NO_TIMECODE},
    {"longer-than-23-hours",
     "\"shots\":[{\"slate\":\"1\",\"screen_s\":\"82800\",\"capture_rate\":\"24\"}]", "",
     "longer than the 23 hours", DRAWL_EXPORT_ERROR_TOO_LONG},
    {"source-longer-than-a-day",
     "\"shots\":[{\"slate\":\"1\",\"screen_s\":\"30\",\"action_s\":\"90000\"}]", "",
     "shot 1: it is longer than the 24 hours", DRAWL_EXPORT_ERROR_TOO_LONG},
};

static void
test_counting (gconstpointer data)
{
  const Counting *row = data;
  g_autoptr (DrawlPlan) plan = plan_of (row->members);
  g_autoptr (GPtrArray) warnings = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = drawl_edl_text (plan, warnings, &error);

  if (row->fcm[0] == '\0') {
    g_assert_null (text);
    g_assert_error (error, DRAWL_EXPORT_ERROR, (int)row->code);
    g_assert_nonnull (strstr (error->message, row->says));
    return;
  }
  g_assert_no_error (error);
  g_assert_nonnull (strstr (text, row->fcm));
  g_assert_cmpuint (warnings->len, ==, row->says[0] != '\0');
  if (warnings->len > 0)
    g_assert_nonnull (strstr (warnings->pdata[0], row->says));
}

static void
test_many_events (void)
{
  g_autoptr (DrawlPlan) plan = plan_of ("\"title\":\"\"");
  g_autoptr (GPtrArray) warnings = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) shots =
      g_ptr_array_new_with_free_func ((GDestroyNotify)drawl_shot_fields_free);
  g_autoptr (GPtrArray) none = g_ptr_array_new ();

  for (guint i = 0; i < 1000; i++) {
    g_autofree char *slate = g_strdup_printf ("%u", i);
    g_ptr_array_add (shots, drawl_shot_fields_new (slate, exact ("24")));
  }
  g_assert_true (drawl_plan_insert_all (plan, 0, none, shots, "Add", NULL));
  g_autofree char *text = drawl_edl_text (plan, warnings, NULL);
  g_assert_true (g_str_has_prefix (text, "TITLE: Plan\r\n"));
  g_assert_nonnull (strstr (text, "\r\n1000  999      V     C "));
  g_assert_cmpuint (warnings->len, ==, 1);
  g_assert_nonnull (strstr (warnings->pdata[0], "1000 events"));
}

/* ---- Formats ---- */

static void
test_formats (void)
{
  guint n_exports;
  const DrawlExport *exports = drawl_exports (&n_exports);

  for (guint i = 0; i < n_exports; i++) {
    g_autofree char *upper = g_ascii_strup (exports[i].ending, -1);
    g_autofree char *file = g_strconcat ("a.b", upper, NULL);
    g_assert_true (drawl_export_find (exports[i].id) == &exports[i]);
    g_assert_true (drawl_export_find_ending (file) == &exports[i]);
  }
  g_assert_null (drawl_export_find ("pdf"));
  g_assert_null (drawl_export_find_ending ("otio"));
  g_assert_null (drawl_export_find_ending ("a.pdf"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/edl/speed", speeds, test_speed);
  add_rows ("/edl/source-frames", spans, test_span);
  add_rows ("/edl/reels", reels, test_reels);
  g_test_add_func ("/edl/any-reels", test_any_reels);
  g_test_add_func ("/edl/list", test_list);
  g_test_add_func ("/edl/speed-columns", test_speed_columns);
  add_rows ("/edl/counting", countings, test_counting);
  g_test_add_func ("/edl/many-events", test_many_events);
  g_test_add_func ("/edl/formats", test_formats);

  return g_test_run ();
}
