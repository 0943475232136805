/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What the commands print, held against published rows; the source stands beside each. A row that
 * is arithmetic alone says so. */

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "rows.h"
#include "run.h"

typedef struct {
  const char *name;
  const char *command;
  const char *figures; /* key=value, in the order in which they are printed */
  double tolerance;    /* of numbers; 0: as near as doubles are */
  const char *source;
} Row;

#define DEFINITION "derived from the definition"
#define DROP_COUNT "SMPTE ST 12-1; run with libavutil 57"
#define FOOT_TABLE "counting foot, 64 perforations; derived"
#define FILM_TABLE "film-length table, diginova.se"
#define FOOT_PAGE "de.zxc.wiki, Filmfuss"
#define RAW_FILE "raw file written by FFmpeg 5.1"
#define VC3_TABLE "SMPTE ST 2019-1; read in FFmpeg libavcodec/dnxhddata.c"

static const Row rows[] = {
    /* time */
    {"ST04", "time --play 24 --capture 240 --action 1",
     "slow_factor=10 speed_percent=10 screen_s=10 frames=240", 0, DEFINITION},
    {"ST05", "time --play 24 --capture 1000 --action 1",
     "slow_factor=41.6667 screen_s=41.6667 frames=1000", 1e-4, DEFINITION},
    {"ST10", "time --play 25 --capture 2500 --action 1",
     "slow_factor=100 screen_s=100 frames=2500 screen_timecode=00:01:40:00", 0, DEFINITION},
    {"ST14", "time --play 24000/1001 --capture 120 --action 1",
     "capture_rate=120 playback_rate=24000/1001 slow_factor=5.005 slow_factor_exact=1001/200", 0,
     DEFINITION},
    {"ST15", "time --play 23.976 --capture 59.94 --action 1",
     "capture_rate=60000/1001 playback_rate=24000/1001 slow_factor=2.5 slow_factor_exact=5/2", 0,
     DEFINITION},
    {"ST16", "time --play 24 --capture 60000/1001 --action 1",
     "slow_factor=2.497502 slow_factor_exact=2500/1001", 1e-6, DEFINITION},
    {"ST17", "time --play 24000/1001 --capture 120 --action 4",
     "screen_s=20.02 screen_exact_s=1001/50 frames=480 screen_timecode=00:00:20:00", 1e-6,
     "ffprobe of a clip of 480 frames: 20.020000"},
    {"ST18", "time --play 29.97 --capture 29.97 --screen 60.06 --drop",
     "frames=1800 screen_timecode=00:01:00;02", 1e-6,
     "ffprobe of 1800 frames: 60.060000; the code as TC16"},
    {"ST19", "time --play 24 --capture 120 --screen 10",
     "action_s=2 frames=240 followed=action_s,"
     "slow_factor",
     0, DEFINITION},
    {"ST20", "time --play 25 --capture 1000 --screen 8", "action_s=0.2 frames=200", 0, DEFINITION},
    {"ST21", "time --play 24 --capture 12 --action 1", "slow_factor=0.5 speed_percent=200", 0,
     DEFINITION},
    {"ST22", "time --play 24 --capture 1/5 --action 3600",
     "capture_rate=1/5 speed_percent=12000 screen_s=30 frames=720", 0, DEFINITION},
    {"ST23", "time --play 24 --capture 120 --action 1", "speed_percent=20", 0, DEFINITION},
    {"ST24", "time --play 24 --capture 96 --action 1", "screen_s=4", 0,
     "worked example of modelshipsinthecinema.com"},
    {"post-speed", "time --play 24 --capture 48 --action 3 --post-speed 50",
     "slow_factor=2 speed_percent=25 post_speed_percent=50 action_s=3 screen_s=12 frames=144 "
     "screen_timecode=00:00:12:00",
     0, DEFINITION},
    {"as-asked", "time --play 24 --capture 240 --action 0.451",
     "action_s=0.451 action_exact_s=451/1000 screen_s=4.51 frames=109 screen_timecode=00:00:04:13",
     0, "contract: times stay as asked, frames cover them"},
    {"no-timecode", "time --play 12.5 --capture 25 --action 1",
     "playback_rate=25/2 screen_timecode=null", 0, "a rate of no timecode family"},
    {"decimal-comma", "time --play 23,976 --capture 240,0 --action 0,45",
     "capture_rate=240 playback_rate=24000/1001 action_s=0.45 frames=108", 0,
     "a comma reads as a point"},
    {"equals-sign", "time --play=24 --capture=240 --action=0.45", "screen_s=4.5", 0, DEFINITION},
    {"units", "time --play '24 fps' --slow 10x --action '0.45 s' --post-speed 100%",
     "capture_rate=240 screen_s=4.5 followed=capture_rate,screen_s", 0, DEFINITION},
    /* code */
    {"TC07", "code --rate 29.97 --drop --frames 107892",
     "code=01:00:00;00 seconds_exact=8999991/2500 seconds_s=3599.9964", 0, DEFINITION},
    {"TC16", "code --rate 29.97 --drop --frames 1800",
     "frames=1800 code=00:01:00;02 seconds_exact=3003/50 seconds_s=60.06", 0,
     DROP_COUNT ", GStreamer 1.22, libltc 1.3.2"},
    {"TC16-back", "code --rate 29.97 --drop --code '00:01:00;02'", "frames=1800", 0, DROP_COUNT},
    {"TC16-point", "code --rate 29.97 --drop --code 00:01:00:02", "frames=1800 code=00:01:00;02", 0,
     DROP_COUNT},
    {"TC30", "code --rate 30000/1001 --drop --frames 1000000", "code=09:16:06;22", 0, DROP_COUNT},
    {"TC32", "code --rate 29.97 --drop --frames 2589408", "frames=2589408 code=00:00:00;00", 0,
     "GStreamer 1.22 and libavutil 57"},
    {"TC34", "code --rate 59.94 --drop --frames 3600", "code=00:01:00;04", 0,
     "SMPTE ST 12-3; libavutil 57 and GStreamer 1.22"},
    {"TC43", "code --rate 29.97 --frames 107892", "code=00:59:56:12", 0, "libavutil 57"},
    {"TC48", "code --rate 23.976 --code 01:00:00:00", "frames=86400 seconds_s=3603.6", 0,
     "libavutil 57"},
    {"TC53", "code --rate 120 --frames 432000", "code=01:00:00:000", 0, "libavutil 57"},
    {"one-frame", "code --rate 29.97 --frames 1", "seconds_exact=1001/30000", 0, DEFINITION},
    /* film */
    {"FF33", "film --gauge 35-4 --rate 24 --feet 400",
     "gauge=35-4 rate=24 frames=6400 feet=400 feet_frames=400+00 metres=121.92 "
     "physical_metres=121.6 physical_metres_short=121.344 run_s=266.667",
     0.01, FOOT_TABLE},
    {"FF40", "film --gauge 35-3 --rate 24 --feet 400",
     "frames=8533 feet=400 feet_frames=400+00 physical_metres=121.6 run_s=355.556", 1e-3,
     FOOT_TABLE},
    {"FF42", "film --gauge 35-3 --rate 120 --feet '1000 ft'", "feet=1000 run_s=177.778", 0.01,
     FOOT_TABLE},
    {"FF44", "film --gauge 35-2 --rate 24 --feet 1000", "run_s=1333.333", 0.01, FOOT_TABLE},
    {"FF46", "film --gauge 65-5 --rate 60 --feet 1000", "run_s=213.333", 0.01, FOOT_TABLE},
    {"FF50", "film --gauge s8 --rate 18 --metres 15", "metres=15 run_s=197", 1, FILM_TABLE},
    {"FF53", "film --gauge s8 --rate 18 --metres 120", "metres=120 run_s=1575", 1, FILM_TABLE},
    {"FF54", "film --gauge 8 --rate 16 --metres 15", "run_s=246", 1, FILM_TABLE},
    {"FF57", "film --gauge 8 --rate 16 --metres 120", "run_s=1969", 1, FILM_TABLE},
    {"FF58", "film --gauge 35-4 --rate 24 --seconds 60",
     "frames=1440 feet=90 feet_frames=90+00 metres=27.432 run_s=60", 0, FOOT_PAGE},
    {"FF59", "film --gauge 16 --rate 24 --seconds 60", "frames=1440 feet=36", 0, FOOT_PAGE},
    {"FF61", "film --gauge 65-5 --rate 24 --seconds 60", "feet=112.5 feet_frames=112+06", 0,
     FOOT_TABLE},
    {"FF63", "film --gauge 35-4 --rate 24 --seconds 6000", "feet=9000", 0, FOOT_PAGE},
    {"frames", "film --gauge 35-4 --rate 24 --frames 17",
     "frames=17 feet=1.0625 feet_frames=1+01 metres=0.32385 run_s=0.7083333333333334", 1e-15,
     FOOT_TABLE},
    {"65-15", "film --gauge 65-15 --rate 24 --feet 1",
     "frames=4 feet=1 feet_frames=1+00 physical_metres_short=null", 0, FOOT_TABLE},
    {"cover", "film --gauge 16 --rate 24 --seconds 0.01", "frames=1 feet=0.025 run_s=0.01", 0,
     "contract: the least whole number that covers the time"},
    /* store */
    {"DA01", "store --width 1920 --height 1080 --bits 8 --sampling 420 --rate 24",
     "frame_bytes=3110400", 0, RAW_FILE},
    {"DA02", "store --width 1920 --height 1080 --bits 8 --sampling 422 --rate 24",
     "frame_bytes=4147200", 0, RAW_FILE},
    {"DA03", "store --width 1920 --height 1080 --bits 10 --sampling 422 --rate 24",
     "frame_bytes=5184000", 0, DEFINITION},
    {"DA08", "store --width 1920 --height 1080 --bits 16 --sampling 444 --rate 24",
     "frame_bytes=12441600", 0, RAW_FILE},
    {"DA12", "store --width 4096 --height 2160 --bits 12 --sampling mosaic --rate 24",
     "frame_bytes=13271040 data_rate_mb_s=318.505", 1e-3, DEFINITION},
    {"DA18", "store --width 1920 --height 1080 --bits 8 --sampling 422 --rate 25",
     "data_rate_mbps=829.44 data_rate_mb_s=103.68 picture_rate_mbps=829.44", 0, DEFINITION},
    {"DA19", "store --width 1920 --height 1080 --bits 10 --sampling 422 --rate 59.94",
     "data_rate_mbps=2485.83 data_rate_mb_s=310.7293", 5e-3, DEFINITION},
    {"DA22", "store --width 1920 --height 1080 --bits 12 --sampling mosaic --rate 1000",
     "data_rate_mbps=24883.2 data_rate_mb_s=3110.4", 0, DEFINITION},
    {"DA25", "store --constant-mbps 800 --rate 25 --card-bytes 128GB",
     "frame_bytes=4000000 data_rate_mb_s=100 card_bytes=128000000000 card_frames=32000 card_s=1280",
     0, DEFINITION},
    {"DA26", "store --frame-bytes 1000 --rate 25 --card-bytes 128GiB", "card_bytes=137438953472", 0,
     "units 2.22: 128 GiB = 137.43895 GB"},
    {"DA35", "store --law vc3-1235 --rate 59.94", "frame_bytes=917504 data_rate_mbps=439.962", 1e-4,
     VC3_TABLE},
    {"DA36", "store --law vc3-1237 --rate 25 --width 1920 --height 1080",
     "frame_bytes=606208 data_rate_mbps=121.2416", 1e-4, VC3_TABLE},
    {"DA43", "store --law vc3-1252 --rate 60", "frame_bytes=303104 data_rate_mbps=145.4899", 1e-4,
     VC3_TABLE},
    {"DA51", "store --law dpx-444-10 --width 1920 --height 1080 --rate 24", "frame_bytes=8296448",
     0, "SMPTE ST 268: 8294400 in a file of FFmpeg 5.1, header of 2048"},
    {"grows-with-rate", "store --mbps 100 --at 24 --rate 240",
     "frame_bytes=520833.3333333333 data_rate_mbps=1000", 0, DEFINITION},
    {"does-not-grow", "store --constant-mbps 100 --rate 240",
     "frame_bytes=52083.333333333336 data_rate_mbps=100", 0, DEFINITION},
    {"sound", "store --frame-bytes 1000000 --rate 25 --audio-tracks 2",
     "frame_bytes=1000000 data_rate_mbps=202.304 data_rate_mb_s=25.288 picture_rate_mbps=200", 0,
     "48 kHz × 24 bit a track; derived"},
    {"take-and-cards",
     "store --frame-bytes 1000000 --rate 25 --card-bytes 1GB --reserve 10 --seconds 60.01",
     "frames=1501 take_bytes=1501000000 card_bytes=1000000000 card_usable_bytes=900000000 "
     "card_frames=900 card_s=36 cards=2",
     0, DEFINITION},
    {"take-without-card", "store --frame-bytes 1000 --rate 24 --seconds 1 --audio-tracks 1",
     "frames=24 take_bytes=168000", 0, DEFINITION},
};

/* A value as the rows write it. */
static char *
plain_text (JsonNode *node)
{
  if (JSON_NODE_HOLDS_NULL (node))
    return g_strdup ("null");
  if (!JSON_NODE_HOLDS_ARRAY (node))
    return json_node_dup_string (node);

  JsonArray *array = json_node_get_array (node);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  for (guint i = 0; i < json_array_get_length (array); i++)
    g_strv_builder_add (builder, json_array_get_string_element (array, i));
  g_auto (GStrv) elements = g_strv_builder_end (builder);
  return g_strjoinv (",", elements);
}

static void
assert_figure (JsonNode *node, const char *expected, double tolerance)
{
  g_autofree char *text = plain_text (node);

  if (text != NULL) {
    g_assert_cmpstr (text, ==, expected);
    return;
  }
  double value = json_node_get_double (node), wanted = g_ascii_strtod (expected, NULL);
  g_assert_cmpfloat_with_epsilon (value, wanted,
                                  tolerance > 0 ? tolerance : fabs (wanted) * 1e-15 + 1e-300);
}

static void
test_figures (gconstpointer data)
{
  const Row *row = data;
  g_autofree char *command = g_strconcat (row->command, " --json", NULL);
  g_auto (GStrv) figures = g_strsplit (row->figures, " ", -1);
  g_auto (Run) run = {0};

  g_test_message ("source: %s", row->source);
  run_init (&run, command, NULL);
  g_autoptr (JsonObject) object = run_json (&run, 0);
  g_autoptr (GList) keys = json_object_get_members (object);
  const GList *at = keys;
  for (char **figure = figures; *figure != NULL; figure++) {
    char *value = strchr (*figure, '=');
    g_assert_nonnull (value);
    *value++ = '\0';
    at = g_list_find_custom ((GList *)at, *figure, (GCompareFunc)strcmp);
    g_assert_nonnull (at);
    assert_figure (json_object_get_member (object, *figure), value, row->tolerance);
  }
}

/* ---- The exact bytes of both forms ---- */

typedef struct {
  const char *name;
  const char *command;
  const char *output;
} Whole;

static const Whole wholes[] = {
    {"time", "time --play 24 --capture 240 --action 0.45",
     "capture rate     240 fps\n"
     "playback rate    24 fps\n"
     "slow factor      10×\n"
     "speed on screen  10 %\n"
     "post speed       100 %\n"
     "action time      0.45 s\n"
     "screen time      4.5 s\n"
     "frames           108\n"
     "screen timecode  00:00:04:12\n"
     "worked out       screen time, slow factor\n"},
    {"time-all-given",
     "time --play 12.5 --capture 25 --action 1 --screen 2 --slow 2 --post-speed 100",
     "capture rate     25 fps\n"
     "playback rate    25/2 fps\n"
     "slow factor      2×\n"
     "speed on screen  50 %\n"
     "post speed       100 %\n"
     "action time      1 s\n"
     "screen time      2 s\n"
     "frames           25\n"
     "screen timecode  none at this playback rate\n"},
    {"time-json", "time --play 24000/1001 --capture 240 --action 0.1 --json",
     "{\n"
     "  \"capture_rate\": \"240\",\n"
     "  \"playback_rate\": \"24000/1001\",\n"
     "  \"slow_factor\": 10.01,\n"
     "  \"slow_factor_exact\": \"1001/100\",\n"
     "  \"speed_percent\": 9.99000999000999,\n"
     "  \"post_speed_percent\": 100.0,\n"
     "  \"action_s\": 0.1,\n"
     "  \"action_exact_s\": \"1/10\",\n"
     "  \"screen_s\": 1.001,\n"
     "  \"screen_exact_s\": \"1001/1000\",\n"
     "  \"frames\": 24,\n"
     "  \"screen_timecode\": \"00:00:01:00\",\n"
     "  \"followed\": [\n"
     "    \"screen_s\",\n"
     "    \"slow_factor\"\n"
     "  ]\n"
     "}\n"},
    {"code", "code --rate 29.97 --drop --frames 1800",
     "frames    1800\n"
     "timecode  00:01:00;02\n"
     "exactly   3003/50 s\n"
     "seconds   60.06 s\n"},
    {"code-json", "code --rate 29.97 --code 00:00:01:00 --json",
     "{\n"
     "  \"frames\": 30,\n"
     "  \"code\": \"00:00:01:00\",\n"
     "  \"seconds_exact\": \"1001/1000\",\n"
     "  \"seconds_s\": 1.001\n"
     "}\n"},
    {"film", "film --gauge 16 --rate 24000/1001 --frames 41",
     "gauge         16 mm\n"
     "capture rate  24000/1001 fps\n"
     "frames        41\n"
     "feet          1.025 ft\n"
     "feet+frames   1+01\n"
     "metres        0.31242 m\n"
     "long pitch    0.31242 m\n"
     "short pitch   0.311805 m\n"
     "run time      1.71004167 s\n"},
    {"store",
     "store --frame-bytes 1000000 --rate 25 --card-bytes 1GB --audio-tracks 2 --seconds 60",
     "a frame             1000000 bytes\n"
     "data rate           202.304 Mbit/s\n"
     "                    25.288 MB/s\n"
     "picture alone       200 Mbit/s\n"
     "frames of the take  1500\n"
     "the take            1517280000 bytes\n"
     "card                1000000000 bytes\n"
     "to be filled        1000000000 bytes\n"
     "frames on it        988\n"
     "real time on it     39.52 s\n"
     "cards for the take  2\n"},
    {"store-json", "store --mbps 100 --at 24 --rate 60 --json",
     "{\n"
     "  \"frame_bytes\": 520833.3333333333,\n"
     "  \"data_rate_mbps\": 250.0,\n"
     "  \"data_rate_mb_s\": 31.25,\n"
     "  \"picture_rate_mbps\": 250.0\n"
     "}\n"},
    {"version", "--version", "drawl-cli " DRAWL_VERSION "\n"},
};

static void
test_whole (gconstpointer data)
{
  const Whole *whole = data;
  g_auto (Run) run = {0};

  run_init (&run, whole->command, NULL);
  g_assert_cmpstr (run.err, ==, "");
  g_assert_cmpstr (run.out, ==, whole->output);
  g_assert_cmpint (run.rc, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/cli/figures", rows, test_figures);
  add_rows ("/cli/whole", wholes, test_whole);
  return g_test_run ();
}
