/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The check and the pictures of a small list of shots: each verdict as JSON, the whole as text,
 * other bodies and tiers, exit codes, and files that are what their names say. */

#include <glib/gstdio.h>
#include <string.h>

#include "rows.h"
#include "run.h"

/* ---- One shot as JSON ---- */

typedef struct {
  const char *name;
  const char *options; /* after `check list.drawl --json` */
  guint shot;          /* position */
  const char *shown;   /* verdict; cheapest set; all sets with prices; reasons; fallbacks */
} Row;

static const Row rows[] = {
    {"as-hired", "", 0, "1: as-hired; ; ; ; -"},
    {"needs-rate", "", 1,
     "2A: needs-licence; rate; rate 60 EUR, all 120 EUR; rate-not-licensed; "
     "size hd long 60"},
    {"needs-two", "", 2,
     "2B: needs-licence; rate size; rate size 105.5 EUR, all 120 EUR; size-not-licensed "
     "rate-takes-more; neither hd long 60"},
    {"not-on-this-body", "", 3,
     "3: not-on-this-body; ; ; rate-over card-too-slow; size hd long 60"},
    {"no-body", "", 4, "Größe \"4\": not-on-this-body; ; ; no-body; -"},
    {"29.97", "", 5, "5: as-hired; ; ; ; -"},
    {"tier-rate", "--tier rate", 1, "2A: as-hired; ; ; ; -"},
    {"tier-rate-leaves-size", "--tier rate", 2,
     "2B: needs-licence; size; size 45.5 EUR, all 120 EUR; size-not-licensed; rate hd long 120"},
    {"tier-two", "--tier 'size, rate'", 2, "2B: as-hired; ; ; ; -"},
    {"tier-replaces", "--tier=all", 2, "2B: as-hired; ; ; ; -"},
    {"tier-empty", "--tier ''", 1,
     "2A: needs-licence; rate; rate 60 EUR, all 120 EUR; rate-not-licensed; size hd long 60"},
    {"body", "--body @D/other-body.json", 1, "2A: as-hired; ; ; ; -"},
    {"body-without-size", "--body @D/other-body.json", 2,
     "2B: not-on-this-body; ; ; no-size; rate hd long 120"},
    {"body-licence", "--body @D/other-body.json", 3,
     "3: needs-licence; rate; rate 10 ; rate-not-licensed; size hd long 300"},
    {"body-and-tier", "--body @D/other-body.json --tier rate", 3, "3: as-hired; ; ; ; -"},
};

static void
append_ids (GString *out, JsonObject *object)
{
  JsonArray *ids = json_object_get_array_member (object, "licences");

  for (guint i = 0; i < json_array_get_length (ids); i++)
    g_string_append_printf (out, "%s%s", i > 0 ? " " : "", json_array_get_string_element (ids, i));
}

static void
append_sets (GString *out, JsonObject *shot)
{
  JsonArray *sets = json_object_get_array_member (shot, "licence_sets");

  for (guint i = 0; i < json_array_get_length (sets); i++) {
    JsonObject *set = json_array_get_object_element (sets, i);
    g_string_append (out, i > 0 ? ", " : "");
    append_ids (out, set);
    g_string_append_printf (out, " %g %s", json_object_get_double_member (set, "price_per_day"),
                            json_object_get_string_member (set, "currency"));
  }
}

static void
append_reasons (GString *out, JsonObject *shot)
{
  JsonArray *reasons = json_object_get_array_member (shot, "reasons");

  for (guint i = 0; i < json_array_get_length (reasons); i++) {
    JsonObject *reason = json_array_get_object_element (reasons, i);
    const char *text = json_object_get_string_member (reason, "text");
    g_assert_cmpstr (text, !=, "");
    g_assert_null (strstr (text, "\u00a0"));
    g_string_append_printf (out, "%s%s", i > 0 ? " " : "",
                            json_object_get_string_member (reason, "reason"));
  }
}

static void
append_without (GString *out, JsonObject *shot)
{
  static const char *const keys[] = {"size", "rate", "both", "neither"};
  gboolean first = TRUE;

  if (json_object_get_null_member (shot, "without")) {
    g_string_append (out, "-");
    return;
  }
  JsonObject *without = json_object_get_object_member (shot, "without");
  g_assert_cmpstr (json_object_get_string_member (without, "text"), !=, "");
  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++) {
    g_autofree char *key = g_strconcat ("keep_", keys[i], NULL);
    g_assert_true (json_object_has_member (without, key));
    if (json_object_get_null_member (without, key))
      continue;
    JsonObject *way = json_object_get_object_member (without, key);
    g_string_append_printf (out, "%s%s %s %s %s", first ? "" : ", ", keys[i],
                            json_object_get_string_member (way, "size"),
                            json_object_get_string_member (way, "codec"),
                            json_object_get_string_member (way, "capture_rate"));
    first = FALSE;
  }
}

/* A shot in the one line of the rows. */
static char *
show (JsonObject *shot)
{
  GString *out = g_string_new (NULL);

  g_string_append_printf (out, "%s: %s; ", json_object_get_string_member (shot, "slate"),
                          json_object_get_string_member (shot, "verdict"));
  append_ids (out, shot);
  g_string_append (out, "; ");
  append_sets (out, shot);
  g_string_append (out, "; ");
  append_reasons (out, shot);
  g_string_append (out, "; ");
  append_without (out, shot);
  return g_string_free (out, FALSE);
}

static void
test_shot (gconstpointer data)
{
  const Row *row = data;
  g_autofree char *command = g_strdup_printf ("check @D/list.drawl --json %s", row->options);
  g_auto (Run) run = {0};

  run_init (&run, command, NULL);
  g_autoptr (JsonObject) object = run_json (&run, 1);
  JsonArray *shots = json_object_get_array_member (object, "shots");
  g_assert_cmpuint (json_array_get_length (shots), ==, 6);
  g_autofree char *shown = show (json_array_get_object_element (shots, row->shot));
  g_assert_cmpstr (shown, ==, row->shown);
}

/* ---- The whole answer ---- */

static const char list_text[] =
    "✓ 1          as hired          24          A  hd   long  The oven door opens\n"
    "+ 2A         needs a licence   240         A  hd   long  The glass leaves the bench and "
    "breaks\n"
    "    240 fps is over the 60 fps that this size and codec allow as hired\n"
    "    with: Rate upgrade (60.00 EUR a day)\n"
    "    or with: Both upgrades (120.00 EUR a day)\n"
    "    without: 60 fps at 1920 × 1080 in Long 8-bit\n"
    "+ 2B         needs a licence   120         A  uhd  long  Sparks rise\n"
    "    3840 × 2160 is not open as hired; it takes a licence\n"
    "    120 fps takes a licence for the rate, too; once open, this goes up to 30 fps without it\n"
    "    with: Rate upgrade and Size upgrade (105.50 EUR a day)\n"
    "    or with: Both upgrades (120.00 EUR a day)\n"
    "    without: 60 fps at 1920 × 1080 in Long 8-bit\n"
    "✗ 3          not on this body  500         A  hd   long  A drop falls\n"
    "    500 fps is over the 240 fps that this size and codec reach with every licence\n"
    "    130 MB/s must be written, but the card Card of 64 GB guarantees 90 MB/s, and no card of "
    "this body would do\n"
    "    without: 60 fps at 1920 × 1080 in Long 8-bit\n"
    "✗ Größe \"4\"  not on this body  48                        A hand turns the pipe\n"
    "    No body of this plan is chosen for the shot\n"
    "✓ 5          as hired          60000/1001  A  hd   long  Steam\n"
    "6 shots: ✓ as hired 2, + needs a licence 2, ✗ not on this body 2\n";

static void
test_text (void)
{
  g_auto (Run) run = {0};

  run_init (&run, "check @D/list.drawl", NULL);
  g_assert_cmpstr (run.err, ==, "");
  g_assert_cmpstr (run.out, ==, list_text);
  g_assert_cmpint (run.rc, ==, 1);
}

static void
test_totals (void)
{
  g_auto (Run) run = {0};

  run_init (&run, "check @D/list.drawl --json", NULL);
  g_autoptr (JsonObject) object = run_json (&run, 1);
  JsonObject *totals = json_object_get_object_member (object, "totals");
  g_assert_cmpint (json_object_get_int_member (totals, "shots"), ==, 6);
  g_assert_cmpint (json_object_get_int_member (totals, "as_hired"), ==, 2);
  g_assert_cmpint (json_object_get_int_member (totals, "needs_licence"), ==, 2);
  g_assert_cmpint (json_object_get_int_member (totals, "not_on_this_body"), ==, 2);
}

/* What a shot says about itself, one line a shot. */
static void
test_shot_line (void)
{
  g_auto (Run) run = {0};

  run_init (&run, "check @D/list.drawl --json", NULL);
  g_assert_nonnull (strstr (run.out, "\n    {\"slate\": \"2A\", \"verdict\": \"needs-licence\", "
                                     "\"licences\": [\"rate\"], "));
  g_assert_nonnull (strstr (run.out, "\"body\": \"A\", \"size\": \"hd\", \"codec\": \"long\", "
                                     "\"capture_rate\": \"60000/1001\"}\n"));
  g_assert_nonnull (strstr (run.out, "\"body\": null, \"size\": null, \"codec\": null, "));
}

static void
test_all_well (void)
{
  g_auto (Run) run = {0};

  run_init (&run, "check @D/all-well.drawl --json", NULL);
  g_autoptr (JsonObject) object = run_json (&run, 0);
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (object, "shots")), ==, 0);
}

/* The file is read, never written. */
static void
test_untouched (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("DRAWL_TEST_DATA"), "list.drawl", NULL);
  g_autofree char *before = NULL, *after = NULL;
  g_auto (Run) run = {0};

  g_assert_true (g_file_get_contents (path, &before, NULL, NULL));
  run_init (&run, "check @D/list.drawl --body @D/other-body.json --tier rate", NULL);
  g_assert_cmpint (run.rc, ==, 1);
  g_assert_true (g_file_get_contents (path, &after, NULL, NULL));
  g_assert_cmpstr (before, ==, after);
}

/* ---- Pictures ---- */

typedef struct {
  const char *name;
  const char *options;
  const char *file;
  const char *begins; /* the first bytes of such a file */
  const char *says;   /* in the words of the picture */
} Picture;

static const Picture pictures[] = {
    {"timeline-png", "--shot 2A", "x.png", "\x89PNG\r\n", "0.45"},
    {"timeline-svg", "--shot 2A --picture timeline --dark", "x.svg", "<?xml", "0.45"},
    {"timeline-pdf", "--shot 2A", "x.PDF", "%PDF-", "4.5"},
    {"cards-svg", "--shot 2A --picture=cards", "x.svg", "<?xml", "card"},
    {"cards-dark-png", "--dark --shot 5 --picture cards", "x.png", "\x89PNG\r\n", "card"},
    {"slate-with-quotes", "--shot 'Größe \"4\"'", "x.png", "\x89PNG\r\n", "2"},
};

static void
test_picture (gconstpointer data)
{
  const Picture *picture = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *scratch = g_dir_make_tmp ("drawl-cli-XXXXXX", &error);
  g_autofree char *path = g_build_filename (scratch, picture->file, NULL);
  g_autofree char *command =
      g_strdup_printf ("draw @D/list.drawl %s -o @T/%s --json", picture->options, picture->file);
  g_autofree char *content = NULL;
  g_auto (Run) run = {0};

  g_assert_no_error (error);
  run_init (&run, command, scratch);
  g_autoptr (JsonObject) object = run_json (&run, 0);
  g_assert_cmpstr (json_object_get_string_member (object, "file"), ==, path);
  g_assert_nonnull (strstr (json_object_get_string_member (object, "text"), picture->says));
  g_assert_true (g_file_get_contents (path, &content, NULL, NULL));
  g_assert_true (g_str_has_prefix (content, picture->begins));
  g_assert_cmpint (g_unlink (path), ==, 0);
  g_assert_cmpint (g_rmdir (scratch), ==, 0);
}

/* A picture that cannot be written leaves what was there. */
static void
test_picture_refused (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *scratch = g_dir_make_tmp ("drawl-cli-XXXXXX", &error);
  g_autofree char *path = g_build_filename (scratch, "kept.png", NULL);
  g_autofree char *inner = g_build_filename (path, "a", NULL);
  g_auto (Run) run = {0};

  g_assert_no_error (error);
  g_assert_cmpint (g_mkdir_with_parents (inner, 0700), ==, 0);
  run_init (&run, "draw @D/list.drawl --shot 1 -o @T/kept.png", scratch);
  run_assert_refused (&run, 3, "kept.png");
  g_assert_cmpint (g_rmdir (inner), ==, 0);
  g_assert_cmpint (g_rmdir (path), ==, 0);
  g_assert_cmpint (g_rmdir (scratch), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/cli/check", rows, test_shot);
  g_test_add_func ("/cli/check/text", test_text);
  g_test_add_func ("/cli/check/totals", test_totals);
  g_test_add_func ("/cli/check/shot-line", test_shot_line);
  g_test_add_func ("/cli/check/all-well", test_all_well);
  g_test_add_func ("/cli/check/untouched", test_untouched);
  add_rows ("/cli/draw", pictures, test_picture);
  g_test_add_func ("/cli/draw/refused", test_picture_refused);
  return g_test_run ();
}
