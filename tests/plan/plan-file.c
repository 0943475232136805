/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Plan files: what is refused, with which code and words; what is assumed; that nothing in a file
 * is lost by loading and saving it. */

#define _XOPEN_SOURCE 700

#include "fixture.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <unistd.h>

/* ---- Bad files ---- */

typedef struct {
  const char *name;
  const char *text;
  int code;
  const char *says;
} Bad;

#define TIMED(keys) PLAN ("{\"slate\":\"7\"," keys "}")
#define VALUE DRAWL_PLAN_ERROR_VALUE
#define ODD_SHOT "shot number 1 (slate 7)"

static const Bad bad_files[] = {
    {"empty", "", DRAWL_PLAN_ERROR_SYNTAX, "line 1"},
    {"not-json", "Dear crew, here is the list", DRAWL_PLAN_ERROR_SYNTAX, "line 1"},
    {"truncated", PLAN_HEAD "\"shots\":[{\"slate\":\"1", DRAWL_PLAN_ERROR_SYNTAX, "ends at line 1"},
    {"a-list", "[1,2]", DRAWL_PLAN_ERROR_SYNTAX, "“{” is expected"},
    {"no-format", "{}", DRAWL_PLAN_ERROR_FORMAT, "drawl-plan"},
    {"a-body", DIGITAL_PROFILE, DRAWL_PLAN_ERROR_FORMAT, "drawl-plan"},
    {"no-version", "{\"format\":\"drawl-plan\"}", DRAWL_PLAN_ERROR_FORMAT, "version"},
    {"newer", "{\"format\":\"drawl-plan\",\"version\":2}", DRAWL_PLAN_ERROR_VERSION, "newer Drawl"},
    {"version-text", "{\"format\":\"drawl-plan\",\"version\":\"1\"}", VALUE,
     "“version” is \"1\"; a whole number from 1"},
    {"title-twice", PLAN_HEAD "\"title\":\"a\",\"title\":\"a\"}", DRAWL_PLAN_ERROR_SYNTAX,
     "the key “title” stands in this object a second time"},
    {"shots-twice", PLAN_HEAD "\"shots\":[{\"slate\":\"1\"}],\"shots\":[]}",
     DRAWL_PLAN_ERROR_SYNTAX, "the key “shots”"},
    {"slate-space-at-the-end", PLAN ("{\"slate\":\"1 \"}"), VALUE,
     "shot number 1 (slate 1 ): “slate”: the slate “1 ” has a control character in it or a space "
     "at an end"},
    {"slate-space-at-the-start", PLAN ("{\"slate\":\"\u00a01\"}"), VALUE, "a space at an end"},
    {"slate-two-lines", PLAN ("{\"slate\":\"1\\nA\"}"), VALUE, "a control character"},
    {"slate-escape", PLAN ("{\"slate\":\"1\\u001bA\"}"), VALUE, "a control character"},
    {"takes-text", TIMED ("\"takes\":\"2\""), VALUE, ODD_SHOT ": “takes” is \"2\"; a whole number"},
    {"action-comma", TIMED ("\"action_s\":\"0,5\""), VALUE,
     ODD_SHOT ": “action_s” is \"0,5\"; a number with a decimal point"},
    {"action-unit", TIMED ("\"action_s\":\"5 s\""), VALUE, ODD_SHOT ": “action_s” is \"5 s\""},
    {"action-spaces", TIMED ("\"action_s\":\" 0.5 \""), VALUE, ODD_SHOT ": “action_s” is"},
    {"rate-unit", TIMED ("\"capture_rate\":\"240 fps\""), VALUE, ODD_SHOT ": “capture_rate” is"},
    {"handle-comma", TIMED ("\"handle_before_s\":\"0,5\""), VALUE,
     ODD_SHOT ": “handle_before_s” is"},
    {"playback-comma", PLAN_HEAD "\"playback_rate\":\"23,976\"}", VALUE,
     "“playback_rate” is \"23,976\""},
    {"version-0", "{\"format\":\"drawl-plan\",\"version\":0}", VALUE, "version"},
    {"title-number", PLAN_HEAD "\"title\":5}", VALUE, "“title”"},
    {"day-words", PLAN_HEAD "\"day\":\"next Friday\"}", VALUE, "“day”"},
    {"day-none", PLAN_HEAD "\"day\":\"2027-02-30\"}", VALUE, "“day”"},
    {"day-and-more", PLAN_HEAD "\"day\":\"2027-02-03 and on\"}", VALUE, "“day”"},
    {"mains-55", PLAN_HEAD "\"mains_hz\":55}", VALUE, "“mains_hz”"},
    {"mains-400", PLAN_HEAD "\"mains_hz\":400}", VALUE, "“mains_hz”"},
    {"reserve-100", PLAN_HEAD "\"reserve_percent\":\"100\"}", VALUE, "“reserve_percent”"},
    {"reserve-below-0", PLAN_HEAD "\"reserve_percent\":-1}", VALUE, "“reserve_percent”"},
    {"playback-0", PLAN_HEAD "\"playback_rate\":\"0\"}", VALUE, "“playback_rate”"},
    {"playback-word", PLAN_HEAD "\"playback_rate\":\"film\"}", VALUE, "“playback_rate”"},
    {"span-word", PLAN_HEAD "\"takes_span\":\"yes\"}", VALUE, "“takes_span”"},
    {"bodies-object", PLAN_HEAD "\"bodies\":{}}", VALUE, "“bodies”"},
    {"body-number", PLAN_HEAD "\"bodies\":[7]}", VALUE, "“bodies”"},
    {"body-no-id", PLAN_HEAD "\"bodies\":[{\"profile\":" FILM_PROFILE "}]}", VALUE, "“id”"},
    {"body-no-profile", PLAN_HEAD "\"bodies\":[{\"id\":\"A\"}]}", VALUE, "“profile”"},
    {"body-bad-profile", PLAN_HEAD "\"bodies\":[{\"id\":\"A\",\"profile\":{}}]}",
     DRAWL_PLAN_ERROR_FORMAT, "body A, profile"},
    {"body-tier",
     PLAN_HEAD "\"bodies\":[{\"id\":\"A\",\"tier\":[\"x\"],\"profile\":" FILM_PROFILE "}]}",
     DRAWL_PLAN_ERROR_UNKNOWN, "body A"},
    {"body-tier-number",
     PLAN_HEAD "\"bodies\":[{\"id\":\"A\",\"tier\":[1],\"profile\":" FILM_PROFILE "}]}", VALUE,
     "“tier”"},
    {"body-card",
     PLAN_HEAD "\"bodies\":[{\"id\":\"A\",\"card\":\"x\",\"profile\":" DIGITAL_PROFILE "}]}",
     DRAWL_PLAN_ERROR_UNKNOWN, "“card”"},
    {"body-days", PLAN_HEAD "\"bodies\":[{\"id\":\"A\",\"days\":-1,\"profile\":" FILM_PROFILE "}]}",
     VALUE, "“days”"},
    {"two-bodies-of-one-id", PLAN_HEAD "\"bodies\":[" BODY_F "," BODY_F "]}",
     DRAWL_PLAN_ERROR_DUPLICATE, "body number 2"},
    {"shots-word", PLAN_HEAD "\"shots\":\"all\"}", VALUE, "“shots”"},
    {"shot-number", PLAN ("3"), VALUE, "“shots”"},
    {"no-slate", PLAN ("{\"slate\":\"1\"},{\"action\":\"x\"}"), VALUE, "shot number 2: “slate”"},
    {"slate-empty", PLAN ("{\"slate\":\"\"}"), VALUE, "shot number 1: “slate”"},
    {"slate-number", PLAN ("{\"slate\":1}"), VALUE, "“slate”"},
    {"two-of-one-slate", PLAN ("{\"slate\":\"1\"},{\"slate\":\"2\"},{\"slate\":\"1\"}"),
     DRAWL_PLAN_ERROR_DUPLICATE, "shot number 3: another shot already has the slate “1”"},
    {"body-missing", TIMED ("\"body\":\"Z\""), DRAWL_PLAN_ERROR_UNKNOWN, "no body “Z”"},
    {"rate-0", TIMED ("\"capture_rate\":\"0\""), VALUE, ODD_SHOT ": “capture_rate”"},
    {"rate-0-number", TIMED ("\"capture_rate\":0"), VALUE, ODD_SHOT ": “capture_rate”"},
    {"rate-below-0", TIMED ("\"capture_rate\":\"-24\""), VALUE, ODD_SHOT ": “capture_rate”"},
    {"rate-by-0", TIMED ("\"capture_rate\":\"1/0\""), VALUE, ODD_SHOT ": “capture_rate”"},
    {"rate-nan", TIMED ("\"capture_rate\":\"nan\""), VALUE, ODD_SHOT ": “capture_rate”"},
    {"rate-tail", TIMED ("\"capture_rate\":\"24/1001x\""), VALUE, ODD_SHOT ": “capture_rate”"},
    {"rate-empty", TIMED ("\"capture_rate\":\"\""), VALUE, ODD_SHOT ": “capture_rate”"},
    {"rate-null", TIMED ("\"capture_rate\":null"), VALUE, ODD_SHOT ": “capture_rate”"},
    {"rate-list", TIMED ("\"capture_rate\":[24]"), VALUE, ODD_SHOT ": “capture_rate”"},
    {"rate-1e400", TIMED ("\"capture_rate\":1e400"), VALUE, "capture_rate"},
    {"rate-1e400-text", TIMED ("\"capture_rate\":\"1e400\""), VALUE, ODD_SHOT ": “capture_rate”"},
    {"rate-too-high", TIMED ("\"capture_rate\":\"10000001\""), VALUE, ODD_SHOT ": “capture_rate”"},
    {"action-0", TIMED ("\"action_s\":0"), VALUE, ODD_SHOT ": “action_s”"},
    {"screen-words", TIMED ("\"screen_s\":\"long\""), VALUE, ODD_SHOT ": “screen_s”"},
    {"factor-0", TIMED ("\"slow_factor\":\"0\""), VALUE, ODD_SHOT ": “slow_factor”"},
    {"post-0", TIMED ("\"post_speed_percent\":0"), VALUE, ODD_SHOT ": “post_speed_percent”"},
    {"too-little", TIMED ("\"capture_rate\":\"240\""), VALUE, "missing"},
    {"disagree",
     TIMED ("\"capture_rate\":\"240\",\"playback_rate\":24,\"action_s\":1,\"screen_s\":9"), VALUE,
     "disagree"},
    {"given-no-value", TIMED ("\"given\":[\"capture_rate\"]"), VALUE, "“capture_rate”"},
    {"given-unknown", TIMED ("\"given\":[\"speed\"]"), VALUE, "“given”"},
    {"given-twice",
     TIMED ("\"action_s\":1,\"capture_rate\":24,\"given\":[\"action_s\",\"action_s\"]"), VALUE,
     "“given”"},
    {"held-word", TIMED ("\"held\":\"playback_rate\""), VALUE, "“held”"},
    {"order-short", TIMED ("\"order\":[\"playback_rate\"]"), VALUE, "“order”"},
    {"drop-at-24", TIMED ("\"playback_rate\":\"24\",\"drop\":true"), VALUE, "shot 7: “drop”"},
    {"drop-at-23.976",
     TIMED ("\"playback_rate\":\"23.976\",\"drop\":true,\"slow_factor\":1,\"action_s\":1"), VALUE,
     ODD_SHOT},
    {"drop-word", TIMED ("\"drop\":\"yes\""), VALUE, "“drop”"},
    {"takes-0", TIMED ("\"takes\":0"), VALUE, "“takes”"},
    {"takes-half", TIMED ("\"takes\":2.5"), VALUE, "“takes”"},
    {"takes-10001", TIMED ("\"takes\":10001"), VALUE, "“takes”"},
    {"takes-word", TIMED ("\"takes\":\"many\""), VALUE, "“takes”"},
    {"audio-65", TIMED ("\"audio_tracks\":65"), VALUE, "“audio_tracks”"},
    {"handle-below-0", TIMED ("\"handle_before_s\":\"-1\""), VALUE, "“handle_before_s”"},
    {"handle-word", TIMED ("\"handle_after_s\":\"some\""), VALUE, "“handle_after_s”"},
    {"handle-ten-years", TIMED ("\"handle_after_s\":315360001"), VALUE, "“handle_after_s”"},
    {"handle-uncountable",
     TIMED ("\"handle_before_s\":\"1/9223372036854775783\",\"handle_after_s\":\"1/"
            "9223372036854775643\""),
     VALUE, "exactly"},
    {"must-1", TIMED ("\"must\":1"), VALUE, "“must”"},
};

static void
test_bad (gconstpointer data)
{
  const Bad *row = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (DrawlPlan) plan = drawl_plan_from_data (row->text, strlen (row->text), "test", &error);

  g_assert_null (plan);
  assert_refused (error, row->code, row->says);
  g_assert_true (g_str_has_prefix (error->message, "test"));
  g_assert_false (g_str_has_suffix (error->message, "."));
}

static void
test_levels (void)
{
  g_autoptr (GString) text = g_string_new (PLAN_HEAD "\"shots\":");
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < 100000; i++)
    g_string_append_c (text, '[');
  g_assert_null (drawl_plan_from_data (text->str, text->len, "test", &error));
  assert_refused (error, DRAWL_PLAN_ERROR_TOO_LARGE, "levels");
}

static void
test_too_many_shots (void)
{
  g_autoptr (GString) text = g_string_new (PLAN_HEAD "\"shots\":[");
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i <= DRAWL_PLAN_SHOTS_MAX; i++)
    g_string_append_printf (text, "%s{\"slate\":\"%u\"}", i > 0 ? "," : "", i);
  g_string_append (text, "]}");
  g_assert_null (drawl_plan_from_data (text->str, text->len, "test", &error));
  assert_refused (error, DRAWL_PLAN_ERROR_TOO_LARGE, "200000 shots");
}

/* The size is looked at before a byte is read. */
static void
test_200_mb (void)
{
  g_autofree char *path = NULL;
  g_autoptr (GError) error = NULL;
  int fd = g_file_open_tmp ("drawl-XXXXXX.drawl", &path, &error);

  g_assert_no_error (error);
  g_assert_cmpint (ftruncate (fd, 200 * 1000 * 1000), ==, 0);
  close (fd);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_assert_null (drawl_plan_load (file, NULL, &error));
  assert_refused (error, DRAWL_PLAN_ERROR_TOO_LARGE, "200000000");
  g_unlink (path);
}

static void
test_no_file (void)
{
  g_autoptr (GFile) file = g_file_new_for_path ("/nonexistent/plan.drawl");
  g_autoptr (GError) error = NULL;
  g_autofree char *etag = NULL;

  g_assert_null (drawl_plan_load (file, &etag, &error));
  assert_refused (error, DRAWL_PLAN_ERROR_READ, "plan.drawl");
  g_assert_null (etag);
}

/* ---- What a file may leave out ---- */

static void
test_smallest (void)
{
  g_autoptr (DrawlPlan) plan = plan_of ("{\"format\":\"drawl-plan\",\"version\":1}");
  const DrawlPlanSettings *settings = drawl_plan_get_settings (plan);

  g_assert_cmpuint (drawl_plan_n_shots (plan), ==, 0);
  g_assert_cmpstr (settings->title, ==, "");
  assert_rational (settings->playback, 24, 1);
  g_assert_cmpint (settings->mains_hz, ==, 50);
  assert_rational (settings->reserve_percent, 10, 1);
  g_assert_false (drawl_plan_get_modified (plan));
}

static void
test_assumed (void)
{
  g_autoptr (DrawlPlan) plan =
      plan_of (PLAN_HEAD "\"playback_rate\":25,\"shots\":[{\"slate\":\"1\"}]}");
  const DrawlShotFields *fields = drawl_shot_get_fields (drawl_plan_get_shot (plan, 0));

  assert_rational (fields->blanks.value[DRAWL_TIMING_PLAYBACK], 25, 1);
  assert_rational (fields->blanks.value[DRAWL_TIMING_CAPTURE], 25, 1);
  g_assert_cmpuint (fields->takes, ==, 1);
  g_assert_true (fields->must);
  g_assert_false (fields->drop);
  g_assert_null (fields->extra);
}

/* A size and a codec that the body does not have are for the check to tell. */
static void
test_unknown_size (void)
{
  g_autoptr (DrawlPlan) plan =
      plan_of (TIMED ("\"body\":\"A\",\"size\":\"8k\",\"codec\":\"intra\""));
  const DrawlCheck *check = drawl_shot_get_check (drawl_plan_get_shot (plan, 0));

  g_assert_cmpint (check->verdict, ==, DRAWL_VERDICT_NOT_ON_THIS_BODY);
  g_assert_cmpint (check->reasons[0].kind, ==, DRAWL_REASON_NO_SIZE);
}

/* ---- Nothing is lost ---- */

static void
test_extra (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (
      PLAN_HEAD
      "\"weather\":{\"sky\":[\"grey\",{\"deep\":{\"er\":[0.1,1e999,-3,true,null]}}]},"
      "\"bodies\":[{\"id\":\"F\",\"label\":\"spare\",\"profile\":" FILM_PROFILE "}],"
      "\"shots\":[{\"slate\":\"1\",\"lamp\":\"spot \\\"3\\\"\\u0001\\n\",\"ramp\":[0.25,2.0]}]}");
  g_autofree char *text = drawl_plan_to_data (plan, NULL);
  g_autoptr (DrawlPlan) again = plan_of (text);

  g_assert_nonnull (strstr (text, "\"er\": [0.1, 1e999, -3, true, null]"));
  g_assert_nonnull (strstr (text, "\"label\": \"spare\""));
  g_assert_nonnull (strstr (text, "\"lamp\": \"spot \\\"3\\\"\\u0001\\n\""));
  g_assert_nonnull (strstr (text, "\"ramp\": [0.25, 2.0]"));
  assert_plans_equal (plan, again);
  g_assert_true (
      drawl_plan_settings_equal (drawl_plan_get_settings (plan), drawl_plan_get_settings (again)));
  g_assert_true (drawl_shot_fields_equal (drawl_shot_get_fields (drawl_plan_get_shot (plan, 0)),
                                          drawl_shot_get_fields (drawl_plan_get_shot (again, 0))));
}

/* The keys of a profile that no part of the program knows stay in the plan that carries it. */
static void
test_profile_whole (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (PLAN (""));
  g_autofree char *text = drawl_plan_to_data (plan, NULL);
  g_autoptr (DrawlPlan) again = plan_of (text);
  DrawlHiredBody *a = drawl_plan_find_body (plan, "A"), *b = drawl_plan_find_body (again, "A");

  g_assert_nonnull (strstr (text, "\"my_own_key\": [1, 2.5, null]"));
  g_assert_true (
      drawl_hired_fields_equal (drawl_hired_body_get_fields (a), drawl_hired_body_get_fields (b)));
}

/* An escaped key is the key that it spells. */
static void
test_escaped_key (void)
{
  g_autoptr (DrawlPlan) plan =
      plan_of (PLAN ("{\"sl\\u0061te\":\"9\",\"notes\":\"\\u00e4\\ud83d\\ude00\"}"));
  const DrawlShotFields *fields = drawl_shot_get_fields (drawl_plan_get_shot (plan, 0));

  g_assert_cmpstr (fields->slate, ==, "9");
  g_assert_cmpstr (fields->notes, ==, "ä😀");
  g_assert_null (fields->extra);
}

static void
test_save (void)
{
  g_autofree char *folder = g_dir_make_tmp ("drawl-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "x.drawl", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (DrawlPlan) plan = plan_of (PLAN ("{\"slate\":\"1\"}"));
  g_autoptr (GError) error = NULL;
  g_autofree char *saved_etag = NULL, *loaded_etag = NULL;

  edit_shot (plan, drawl_plan_get_shot (plan, 0), "Edit", fields->takes = 4);
  g_assert_true (drawl_plan_get_modified (plan));
  drawl_plan_save (plan, file, FALSE, &saved_etag, &error);
  g_assert_no_error (error);
  g_assert_false (drawl_plan_get_modified (plan));
  g_autoptr (DrawlPlan) again = drawl_plan_load (file, &loaded_etag, &error);
  g_assert_no_error (error);
  assert_plans_equal (plan, again);
  g_assert_cmpstr (saved_etag, ==, loaded_etag);
  g_unlink (path);
  g_rmdir (folder);
}

static void
test_save_refused (void)
{
  g_autoptr (GFile) file = g_file_new_for_path ("/nonexistent/x.drawl");
  g_autoptr (DrawlPlan) plan = plan_of (PLAN ("{\"slate\":\"1\"}"));
  g_autoptr (GError) error = NULL;

  edit_shot (plan, drawl_plan_get_shot (plan, 0), "Edit", fields->takes = 4);
  g_assert_false (drawl_plan_save (plan, file, FALSE, NULL, &error));
  assert_refused (error, DRAWL_PLAN_ERROR_NO_FOLDER, "x.drawl");
  g_assert_true (drawl_plan_get_modified (plan));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/plan-file/bad", bad_files, test_bad);
  g_test_add_func ("/plan-file/bad/100000-levels", test_levels);
  g_test_add_func ("/plan-file/bad/too-many-shots", test_too_many_shots);
  g_test_add_func ("/plan-file/bad/200-mb", test_200_mb);
  g_test_add_func ("/plan-file/bad/no-file", test_no_file);
  g_test_add_func ("/plan-file/smallest", test_smallest);
  g_test_add_func ("/plan-file/assumed", test_assumed);
  g_test_add_func ("/plan-file/unknown-size", test_unknown_size);
  g_test_add_func ("/plan-file/extra", test_extra);
  g_test_add_func ("/plan-file/profile-whole", test_profile_whole);
  g_test_add_func ("/plan-file/escaped-key", test_escaped_key);
  g_test_add_func ("/plan-file/save", test_save);
  g_test_add_func ("/plan-file/save-refused", test_save_refused);

  return g_test_run ();
}
