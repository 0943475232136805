/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What the program refuses: each with its exit code, nothing on stdout, and one line that names the
 * place and what was expected. */

#include <glib/gstdio.h>
#include <stdio.h>

#include "rows.h"
#include "run.h"

typedef struct {
  const char *name;
  const char *command;
  int rc;
  const char *says;
} Row;

#define TIME "time --play 24 --action 1 --capture "

static const Row rows[] = {
    /* commands and options */
    {"no-command", "", 2, "no command is given; one of time, code"},
    {"unknown-command", "tiem", 2, "tiem: no such command, the nearest is time; one of time, code"},
    {"far-command", "xylophone", 2, "xylophone: no such command; one of time, code"},
    {"option-before-command", "--json time", 2, "--json: no such command"},
    {"unknown-option", "time --captur 240 --play 24", 2,
     "time: --captur: no such option, the nearest is --capture; one of --play"},
    {"unknown-letter", "time -x", 2, "time: -x: no such option; one of --play"},
    {"option-of-another-command", "code --rate 25 --frames 1 --gauge 16", 2,
     "code: --gauge: no such option"},
    {"nothing-after-option", "time --play 24 --capture", 2,
     "time: --capture: nothing stands after it; its value is expected"},
    {"nothing-after-letter", "draw @D/list.drawl --shot 1 -o", 2, "draw: -o: nothing stands after"},
    {"switch-with-value", "code --rate 29.97 --frames 1 --drop=no", 2,
     "code: --drop: takes no value"},
    {"stray-word", "time 240", 2, "time: 240: only options are expected here"},
    {"two-plans", "check @D/list.drawl @D/all-well.drawl", 2, "one file was given already"},
    {"no-plan", "check", 2, "check: PLAN: no file is given"},
    /* rates */
    {"rate-zero", TIME "0", 2, "--capture: a rate of 0 is too low; a rate above 0 is expected"},
    {"rate-negative", TIME "-5", 2, "--capture: a rate of -5 is too low"},
    {"rate-negative-equals", "time --play 24 --action 1 --capture=-5", 2,
     "--capture: a rate of -5 is too low"},
    {"rate-by-zero", TIME "1/0", 2, "--capture: “1/0” divides by zero"},
    {"rate-nan", TIME "nan", 2, "--capture: “nan” is not a number"},
    {"rate-inf", TIME "inf", 2, "--capture: “inf” is not a number"},
    {"rate-exponent", TIME "1e400", 2, "--capture: “1e400” is not a number"},
    {"rate-trailing", TIME "24/1001x", 2, "--capture: “24/1001x” is not a number, because of “x”"},
    {"rate-empty", TIME "''", 2, "--capture: nothing is written; a number such as 24"},
    {"rate-blank", TIME "' '", 2, "--capture: nothing is written"},
    {"rate-too-high", TIME "10000001", 2, "--capture: a rate of 10000001 is too high"},
    {"rate-too-long", TIME "123456789012345678901234567890123456789012345", 2,
     "--capture: “1234567"},
    {"rate-two-lines", TIME "\"2\n4\"", 2, "--capture: “2 4” is not a number"},
    {"rate-not-utf8", TIME "\xff", 2, "--capture: "},
    {"rate-missing", "code --frames 1", 2, "--rate: is missing; a rate such as 25"},
    /* time */
    {"time-nothing", "time", 2, "time: options: too little is given"},
    {"time-too-little", "time --play 24 --capture 240", 2, "time: --play, --capture: "},
    {"time-without-play", "time --capture 240 --action 1", 2, "is missing"},
    {"time-disagrees", "time --play 24 --capture 240 --action 1 --screen 3", 2,
     "screen time would have to be 10 s"},
    {"time-factor-disagrees", "time --play 24 --capture 240 --slow 5 --action 1", 2, "disagree"},
    {"time-action-zero", "time --play 24 --capture 240 --action 0", 2,
     "--action: action time cannot be 0 s"},
    {"time-screen-negative", "time --play 24 --capture 240 --screen -1", 2,
     "--screen: screen time cannot be -1 s"},
    {"time-too-long", "time --play 24 --capture 240 --action 400000000", 2,
     "--action: action time cannot be"},
    {"time-post-speed-zero", "time --play 24 --capture 240 --action 1 --post-speed 0", 2,
     "--post-speed: "},
    {"time-drop-at-24", "time --play 24 --capture 240 --action 1 --drop", 2,
     "--drop: a rate of 24 has no drop counting"},
    {"time-thousands", "time --play 24 --capture 1,500 --action 1", 2,
     "--capture: “1,500” could be thousands or a decimal"},
    /* code */
    {"code-drop-at-24", "code --rate 24 --drop --frames 1", 2,
     "--drop: a rate of 24 has no drop counting; 30000/1001 or 60000/1001 is expected"},
    {"TC54-dropped", "code --rate 29.97 --drop --code '00:01:00;00'", 2,
     "--code: 00:01:00;00 does not exist, drop code leaves it out"},
    {"TC56-dropped", "code --rate 59.94 --drop --code '00:01:00;03'", 2,
     "00:01:00;03 does not exist"},
    {"TC57-drop-at-23.976", "code --rate 23.976 --drop --frames 1", 2,
     "--drop: a rate of 24000/1001"},
    {"code-drop-not-asked-for", "code --rate 29.97 --code '00:01:00;02'", 2,
     "--code: “;” before the frames"},
    {"code-frame-30", "code --rate 29.97 --code 00:00:00:30", 2, "--code: there is no frame 30"},
    {"code-hour-24", "code --rate 25 --code 24:00:00:00", 2, "--code: there is no hour 24"},
    {"code-no-code", "code --rate 25 --code 1:2:3", 2, "--code: “1:2:3” is not a timecode"},
    {"code-frames-negative", "code --rate 25 --frames -5", 2,
     "--frames: “-5” cannot be; a whole number from 0"},
    {"code-frames-of-an-option", "code --rate 25 --frames -h", 2,
     "--frames: its value is missing: the option -h stands after it"},
    {"option-for-a-value", "time --play --capture 48 --action 1", 2,
     "--play: its value is missing: the option --capture stands after it"},
    {"end-for-a-value", "time --capture 48 --action 1 --play --", 2,
     "--play: its value is missing: the option -- stands after it"},
    {"option-twice", TIME "48 --capture 48", 2, "--capture: is given twice; once is expected"},
    {"letter-twice", "draw @D/list.drawl --shot 1 -o @T/x.svg --output=@T/x.svg", 2,
     "--output: is given twice"},
    {"switch-twice", "check @D/list.drawl --json --json", 2, "--json: is given twice"},
    {"json-with-value", TIME "48 --json=1", 2, "--json: takes no value"},
    {"help-with-value", TIME "48 --help=1", 2, "--help: takes no value"},
    {"word-after-end", "time -- --play", 2, "--play: only options are expected here"},
    {"end-before-unknown-command", "-- tiem", 2, "tiem: no such command"},
    {"end-alone", "--", 2, "no command is given"},
    {"letter-with-unknown-ending", "draw @D/list.drawl --shot 1 -o@T/q.gif", 2, "“q.gif”"},
    {"letter-of-a-switch-with-more", "time -hx", 2, "-hx: no such option"},
    {"body-named-as-given", "check @D/../data/list.drawl --body @D/list.drawl", 3,
     "data/list.drawl: “format” is \"drawl-plan\"; \"drawl-body\" is expected"},
    {"plan-named-as-given", "check @T/../no/such.drawl", 3, "/../no/such.drawl could not be read"},
    {"code-frames-half", "code --rate 25 --frames 1.5", 2, "--frames: “1.5” cannot be"},
    {"code-frames-huge", "code --rate 25 --frames 9223372036854775808", 2, "--frames: "},
    {"code-frames-unexact", "code --rate 29.97 --frames 9223372036854775807", 2,
     "--frames: too many"},
    {"code-both", "code --rate 25 --frames 1 --code 00:00:00:01", 2,
     "--frames, --code: given together; exactly one of --frames, --code is expected"},
    {"code-neither", "code --rate 25", 2, "--frames, --code: none of them is given"},
    {"code-no-timecode-rate", "code --rate 12.5 --frames 1", 2,
     "--rate: a rate of 25/2 has no timecode"},
    /* film */
    {"film-no-gauge", "film --rate 24 --feet 100", 2, "--gauge: is missing; one of 8, s8, 16"},
    {"film-unknown-gauge", "film --gauge 9.5 --rate 24 --feet 100", 2,
     "--gauge: “9.5” is no gauge; one of 8,"},
    {"film-no-length", "film --gauge 16 --rate 24", 2,
     "--feet, --metres, --frames, --seconds: none"},
    {"film-two-lengths", "film --gauge 16 --rate 24 --feet 1 --metres 1", 2,
     "--feet, --metres: given together"},
    {"film-negative-feet", "film --gauge 16 --rate 24 --feet -1", 2, "--feet: is below 0"},
    {"film-negative-frames", "film --gauge 16 --rate 24 --frames=-1", 2,
     "--frames: “-1” cannot be"},
    {"film-too-long", "film --gauge 16 --rate 24 --feet 999999999999999999", 2, "--feet: too long"},
    {"film-too-many-frames", "film --gauge s8 --rate 24 --metres 9223372036854775807", 2,
     "--metres: too long"},
    /* store */
    {"store-no-picture", "store --rate 24", 2, "picture: nothing is given; one form of picture"},
    {"store-two-pictures", "store --rate 24 --frame-bytes 1 --mbps 1 --at 24", 2,
     "--frame-bytes, --mbps, --at: "},
    {"store-size-alone", "store --rate 24 --width 1920 --height 1080", 2,
     "--width, --height: not one form"},
    {"store-part-of-a-picture", "store --rate 24 --width 1920 --bits 10 --sampling 422", 2,
     "--height: is missing"},
    {"store-no-at", "store --rate 24 --mbps 100", 2, "--at: is missing; a rate"},
    {"store-unknown-sampling", "store --rate 24 --width 2 --height 2 --bits 8 --sampling 411", 2,
     "--sampling: “411” is no sampling; 420, 422, 444 or mosaic"},
    {"store-no-bits", "store --rate 24 --width 2 --height 2 --bits 0 --sampling 422", 2,
     "--bits: “0” cannot be"},
    {"store-no-width", "store --rate 24 --width 0 --height 2 --bits 8 --sampling 422", 2,
     "--width: “0” cannot"},
    {"store-no-bytes", "store --rate 24 --frame-bytes 0", 2, "--frame-bytes: “0” cannot be"},
    {"store-no-mbps", "store --rate 24 --constant-mbps 0", 2,
     "--constant-mbps: is 0; a data rate above 0"},
    {"store-unknown-law", "store --rate 24 --law vc3-1", 2,
     "--law: “vc3-1” is no codec law; one of packed-420-8"},
    {"store-law-of-one-size", "store --rate 24 --law vc3-1235 --width 1280 --height 720", 2,
     "--law: this codec knows the size 1920 × 1080 only"},
    {"store-law-without-size", "store --rate 24 --law dpx-444-10", 2, "--width: is missing"},
    {"store-card-of-nothing", "store --rate 24 --frame-bytes 1 --card-bytes 0", 2,
     "--card-bytes: “0” cannot be"},
    {"store-card-in-inches", "store --rate 24 --frame-bytes 1 --card-bytes 3in", 2,
     "--card-bytes: “3in” is no number"},
    {"store-card-half-byte", "store --rate 24 --frame-bytes 1 --card-bytes 0.0005kB", 2,
     "--card-bytes: “0.0005kB”"},
    {"store-card-too-large", "store --rate 24 --frame-bytes 1 --card-bytes 99999999999TB", 2,
     "more than can be"},
    {"store-reserve-of-all", "store --rate 24 --frame-bytes 1 --card-bytes 1GB --reserve 100", 2,
     "--reserve: "},
    {"store-reserve-of-no-card", "store --rate 24 --frame-bytes 1 --reserve 10", 2,
     "--reserve: of no card"},
    {"store-tracks", "store --rate 24 --frame-bytes 1 --audio-tracks 65", 2,
     "--audio-tracks: “65” cannot be"},
    {"store-no-frame-fits", "store --rate 24 --frame-bytes 10 --card-bytes 5 --seconds 1", 2,
     "--card-bytes: "},
    /* check and draw */
    {"plan-missing", "check @D/missing.drawl", 3, "missing.drawl could not be read"},
    {"plan-folder", "check @D", 3, "could not be read"},
    {"plan-not-json", "check @D/not-json.drawl", 3, "not-json.drawl: line 1, column 1: "},
    {"plan-empty", "check /dev/null", 3, "null: "},
    {"plan-truncated", "check @D/truncated.drawl", 3, "truncated.drawl: the text ends at line "},
    {"plan-newer", "check @D/newer.drawl", 3,
     "newer.drawl: version 2 was written by a newer Drawl"},
    {"plan-twins", "check @D/twins.drawl", 3,
     "shot number 3: another shot already has the slate “7”"},
    {"plan-bad-rate", "check @D/bad-rate.drawl", 3, "bad-rate.drawl, shot number 1 (slate 7)"},
    {"plan-is-a-body", "check @D/other-body.json", 3,
     "other-body.json: “format” is \"drawl-body\"; \"drawl-plan\" is expected"},
    {"plan-newer-json", "check @D/newer.drawl --json", 3, "newer.drawl: version 2"},
    {"body-missing", "check @D/list.drawl --body @D/missing.json", 3,
     "missing.json could not be read"},
    {"body-is-a-plan", "check @D/list.drawl --body @D/list.drawl", 3,
     "list.drawl: “format” is \"drawl-plan\"; \"drawl-body\" is expected"},
    {"tier-unknown", "check @D/list.drawl --tier rate,sizes", 2,
     "--tier: no body has a licence “sizes”; some of rate, size, all are expected"},
    {"tier-of-no-body", "check @D/all-well.drawl --tier rate", 2,
     "--tier: no body has a licence “rate”, or any"},
    {"draw-no-shot", "draw @D/list.drawl -o @T/x.png", 2, "--shot: is missing"},
    {"draw-no-file", "draw @D/list.drawl --shot 1", 2, "--output: is missing"},
    {"draw-unknown-shot", "draw @D/list.drawl --shot 2C -o @T/x.png", 2,
     "--shot: the plan has no slate “2C”, the nearest is “2A”; a slate of the plan is expected"},
    {"draw-unknown-picture", "draw @D/list.drawl --shot 1 --picture lamp -o @T/x.png", 2,
     "--picture: “lamp” is no picture; one of timeline, cards is expected"},
    {"draw-unknown-ending", "draw @D/list.drawl --shot 1 -o @T/x.gif", 2, "--output: "},
    {"draw-no-folder", "draw @D/list.drawl --shot 1 -o @T/no/folder/x.png", 3, "no/folder/x.png"},
    {"draw-where-nothing-is-written", "draw @D/list.drawl --shot 1 -o /proc/x.png", 3,
     "/proc/x.png"},
    {"draw-plan-missing", "draw @D/missing.drawl --shot 1 -o @T/x.png", 3,
     "missing.drawl could not be read"},
    /* sheet */
    {"sheet-no-file", "sheet @D/list.drawl", 2, "--output: is missing"},
    {"sheet-unknown", "sheet @D/list.drawl --for day -o @T/x.pdf", 2,
     "--for: “day” is no sheet; one of set, hire, cut is expected"},
    {"sheet-unknown-paper", "sheet @D/list.drawl --paper a5 -o @T/x.pdf", 2,
     "--paper: “a5” is no paper; one of a4, letter is expected"},
    {"sheet-unknown-ending", "sheet @D/list.drawl -o @T/x.png", 2,
     "--output: no sheet can be written as “x.png”; a name that ends in .pdf"},
    {"sheet-ending-alone", "sheet @D/list.drawl -o .pdf", 2, "--output: no sheet can be written"},
    {"sheet-no-plan", "sheet -o @T/x.pdf", 2, "sheet: PLAN: no file is given"},
    {"sheet-plan-missing", "sheet @D/missing.drawl -o @T/x.pdf", 3,
     "missing.drawl could not be read"},
    {"sheet-no-folder", "sheet @D/list.drawl -o @T/no/x.pdf", 3, "no/x.pdf could not be"},
    /* export and import */
    {"export-no-file", "export @D/list.drawl --as edl", 2, "--output: is missing"},
    {"export-no-format", "export @D/list.drawl -o @T/x.txt", 2,
     "--as: is missing, and the name of the file does not tell; otio, edl or csv"},
    {"export-unknown-format", "export @D/list.drawl --as aaf -o @T/x", 2,
     "--as: “aaf” is no format; one of otio, edl, csv is expected"},
    {"export-plan-missing", "export @D/missing.drawl --as edl -o @T/x", 3,
     "missing.drawl could not be read"},
    {"export-no-folder", "export @D/list.drawl --as edl -o @T/no/x", 3, "no/x could not be"},
    {"import-no-file", "import", 2, "import: FILE: no file is given"},
    {"import-no-plan", "import @D/shots.csv", 2, "--output: is missing"},
    {"import-table-missing", "import @D/missing.csv -o @T/x.drawl", 3,
     "missing.csv could not be read"},
    {"import-into-missing", "import @D/shots.csv --into @D/missing.drawl -o @T/x.drawl", 3,
     "missing.drawl could not be read"},
    {"import-no-folder", "import @D/shots.csv -o @T/no/x.drawl", 3, "no/x.drawl could not be"},
};

static void
test_refusal (gconstpointer data)
{
  const Row *row = data;
  g_auto (Run) run = {0};
  g_autoptr (GError) error = NULL;
  g_autofree char *scratch = g_dir_make_tmp ("drawl-cli-XXXXXX", &error);

  g_assert_no_error (error);
  run_init (&run, row->command, scratch);
  run_assert_refused (&run, row->rc, row->says);
  g_assert_cmpint (g_rmdir (scratch), ==, 0); /* nothing was written into it */
}

/* ---- Plans that are too much ---- */

static void
assert_too_much (const char *scratch, const char *path, const char *says)
{
  g_auto (Run) run = {0};

  run_init (&run, "check @T/much.drawl", scratch);
  run_assert_refused (&run, 3, says);
  g_assert_cmpint (g_unlink (path), ==, 0);
  g_assert_cmpint (g_rmdir (scratch), ==, 0);
}

/* 200 MB, none of which is on the disk. */
static void
test_too_large (void)
{
  g_autofree char *scratch = g_dir_make_tmp ("drawl-cli-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (scratch, "much.drawl", NULL);

  FILE *file = g_fopen (path, "w");
  g_assert_cmpint (fseek (file, 200000000 - 1, SEEK_SET), ==, 0);
  g_assert_cmpint (fputc ('}', file), ==, '}');
  g_assert_cmpint (fclose (file), ==, 0);
  assert_too_much (scratch, path, "much.drawl: the file is too large (200000000 bytes)");
}

static void
test_too_deep (void)
{
  g_autofree char *scratch = g_dir_make_tmp ("drawl-cli-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (scratch, "much.drawl", NULL);
  g_autofree char *levels = g_strnfill (100000, '[');
  g_autofree char *text = g_strconcat ("{\"shots\": ", levels, NULL);

  g_assert_true (g_file_set_contents (path, text, -1, NULL));
  assert_too_much (scratch, path, "levels deep");
}

/* ---- An output that cannot be written ---- */

typedef struct {
  const char *name;
  const char *command;
} Full;

static const Full fulls[] = {
    {"time", TIME "240"},
    {"time-json", TIME "240 --json"},
    {"check", "check \"$DRAWL_TEST_DATA/list.drawl\""},
    {"help", "store --help"},
    {"all-help", "--help"},
    {"version", "--version"},
};

static void
test_full (gconstpointer data)
{
  const Full *full = data;
  g_autofree char *script = g_strdup_printf ("\"$DRAWL_CLI\" %s >/dev/full", full->command);
  g_auto (Run) run = {0};

  run_shell_init (&run, script);
  run_assert_refused (&run, 3, "standard output: ");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/cli/refusals", rows, test_refusal);
  g_test_add_func ("/cli/refusals/plan-too-large", test_too_large);
  g_test_add_func ("/cli/refusals/plan-too-deep", test_too_deep);
  add_rows ("/cli/full", fulls, test_full);
  return g_test_run ();
}
