/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Published check values: film by length. Each row is named by its id, and its source says where
 * the value stands and how it was obtained from there. All go by the counting foot, but for the
 * physical lengths, which go by the step from frame to frame. */

#include "core/footage.h"
#include "rows.h"

#define FOOT_TABLES "foot-count tables; read in de.zxc.wiki \"Filmfuss\" and a diginova.se page"
#define FOOT_PAGE "read in de.zxc.wiki \"Filmfuss\""
#define GLOSSARY "ISO 491; read in the film glossary of brianpritchard.com, in mm"
#define STEP_TABLE "read in de.zxc.wiki \"Filmschritt\""
#define SUPER_8 "SMPTE 149-2004, table 1; read in a preview"
#define OF_PITCHES "derived from the pitch rows above"
#define LENGTH_TABLE "film-length table; read in diginova.se \"filmlangd\""

/* Exact. */
typedef struct {
  const char *name, *gauge, *foot_frames;
  const char *source;
} Foot;

static const Foot foot_rows[] = {
    {"FF01", "s8", "72", FOOT_TABLES},
    {"FF02", "8", "80", FOOT_TABLES},
    {"FF03", "16", "40", FOOT_TABLES},
    {"FF04", "35-4", "16", FOOT_TABLES},
};

static void
test_foot (gconstpointer data)
{
  const Foot *row = data;
  const DrawlGauge *gauge = drawl_gauge_find (row->gauge);
  gint64 frames;

  assert_same (gauge->foot_frames, exact (row->foot_frames));
  g_assert_true (drawl_footage_frames_on_feet (gauge, drawl_rational_whole (1), &frames));
  assert_same (drawl_rational_whole (frames), exact (row->foot_frames));
}

typedef struct {
  const char *name, *gauge, *feet, *metres;
  const char *source;
} Metric;

/* Exact. */
static const Metric metric_rows[] = {
    {"FF18", "35-4", "1000", "304.8", "international foot; units 2.22 run: 1000 ft = 304.8 m"},
};

static void
test_metric (gconstpointer data)
{
  const Metric *row = data;
  const DrawlGauge *gauge = drawl_gauge_find (row->gauge);
  gint64 on_feet, on_metres;
  DrawlRational metres;

  g_assert_true (drawl_footage_frames_on_feet (gauge, exact (row->feet), &on_feet));
  g_assert_true (drawl_footage_frames_on_metres (gauge, exact (row->metres), &on_metres));
  g_assert_cmpint (on_feet, ==, on_metres);
  g_assert_true (drawl_footage_metres (gauge, on_feet, &metres));
  assert_same (metres, exact (row->metres));
}

typedef struct {
  const char *name, *gauge, *metres, *feet;
  int rate;
  double run_s, tolerance_s;
  const char *source;
} Run;

static const Run run_rows[] = {
    {"FF50", "s8", "15", NULL, 18, 3 * 60 + 17, 1, LENGTH_TABLE},
    {"FF51", "s8", "60", NULL, 18, 13 * 60 + 7, 1, LENGTH_TABLE},
    {"FF52", "s8", "90", NULL, 18, 19 * 60 + 41, 1, LENGTH_TABLE},
    {"FF53", "s8", "120", NULL, 18, 26 * 60 + 15, 1, LENGTH_TABLE},
    {"FF54", "8", "15", NULL, 16, 4 * 60 + 6, 1, LENGTH_TABLE},
    {"FF55", "8", "60", NULL, 16, 16 * 60 + 24, 1, LENGTH_TABLE},
    {"FF56", "8", "90", NULL, 16, 24 * 60 + 37, 1, LENGTH_TABLE},
    {"FF57", "8", "120", NULL, 16, 32 * 60 + 49, 1, LENGTH_TABLE},
    {"FF64", "16", NULL, "100", 24, 166.667, 0.01,
     "counting foot; a popular page read says 2.5 min, which is wrong, and is kept as a warning"},
};

static void
test_run (gconstpointer data)
{
  const Run *row = data;
  const DrawlGauge *gauge = drawl_gauge_find (row->gauge);
  gint64 frames;

  g_assert_true (row->metres != NULL
                     ? drawl_footage_frames_on_metres (gauge, exact (row->metres), &frames)
                     : drawl_footage_frames_on_feet (gauge, exact (row->feet), &frames));
  g_assert_cmpfloat_with_epsilon ((double)frames / row->rate, row->run_s, row->tolerance_s);
}

/* Exact. */
typedef struct {
  const char *name, *gauge;
  gint64 seconds, rate;
  const char *feet;
  const char *source;
} Take;

static const Take take_rows[] = {
    {"FF58", "35-4", 60, 24, "90", "feet a minute; " FOOT_PAGE},
    {"FF59", "16", 60, 24, "36", "feet a minute; " FOOT_PAGE},
    {"FF63-35", "35-4", 100 * 60, 24, "9000", "100 minutes; " FOOT_PAGE},
    {"FF63-16", "16", 100 * 60, 24, "3600", "100 minutes; " FOOT_PAGE},
};

static void
test_take (gconstpointer data)
{
  const Take *row = data;
  DrawlRational feet;

  g_assert_true (
      drawl_footage_feet (drawl_gauge_find (row->gauge), row->seconds * row->rate, &feet));
  assert_same (feet, exact (row->feet));
}

/* Length of @frames along the film. Pitches of 35 mm are those of a perforation. */
typedef struct {
  const char *name, *gauge;
  DrawlPitch pitch;
  gint64 frames;
  double mm, tolerance_mm;
  const char *source;
} Physical;

static const Physical physical_rows[] = {
    {"FF10-4-perforations", "35-4", DRAWL_PITCH_LONG, 1, 4 * 4.750, 4 * 0.01, GLOSSARY},
    {"FF10-3-perforations", "35-3", DRAWL_PITCH_LONG, 1, 3 * 4.750, 3 * 0.01, GLOSSARY},
    {"FF10-2-perforations", "35-2", DRAWL_PITCH_LONG, 1, 2 * 4.750, 2 * 0.01, GLOSSARY},
    {"FF11-4-perforations", "35-4", DRAWL_PITCH_SHORT, 1, 4 * 4.740, 4 * 0.001, GLOSSARY},
    {"FF11-3-perforations", "35-3", DRAWL_PITCH_SHORT, 1, 3 * 4.740, 3 * 0.001, GLOSSARY},
    {"FF11-2-perforations", "35-2", DRAWL_PITCH_SHORT, 1, 2 * 4.740, 2 * 0.001, GLOSSARY},
    {"FF12", "16", DRAWL_PITCH_LONG, 1, 7.620, 0.01, "ISO 69; " STEP_TABLE},
    {"FF12-hundred-frames", "16", DRAWL_PITCH_LONG, 100, 762, 1, "ISO 69; " STEP_TABLE},
    {"FF13", "16", DRAWL_PITCH_SHORT, 1, 7.605, 0.01,
     "ISO 69; figure from memory, \"about 2 per mille shorter\" " STEP_TABLE},
    {"FF14-long", "s8", DRAWL_PITCH_LONG, 1, 4.234, 0.010, SUPER_8},
    {"FF14-short", "s8", DRAWL_PITCH_SHORT, 1, 4.227, 0.010, SUPER_8},
    {"FF15-long", "s8", DRAWL_PITCH_LONG, 100, 16.670 * 25.4, 0.017 * 25.4, SUPER_8},
    {"FF15-short", "s8", DRAWL_PITCH_SHORT, 100, 16.640 * 25.4, 0.017 * 25.4, SUPER_8},
    {"FF16", "65-5", DRAWL_PITCH_LONG, 1, 23.750, 0.01, "ISO 3023; " STEP_TABLE},
    {"FF16-ten-frames", "65-5", DRAWL_PITCH_LONG, 10, 237.50, 0.1, "ISO 3023; " STEP_TABLE},
    {"FF17", "35-4", DRAWL_PITCH_LONG, 1, 19.000, 0.01, "ISO 491; " STEP_TABLE},
    {"FF17-ten-frames", "35-4", DRAWL_PITCH_LONG, 10, 190.00, 0.1, "ISO 491; " STEP_TABLE},
};

static double
physical_mm (const char *gauge, DrawlPitch pitch, gint64 frames)
{
  DrawlRational metres;

  g_assert_true (drawl_footage_physical_metres (drawl_gauge_find (gauge), pitch,
                                                drawl_rational_whole (frames), &metres));
  return drawl_rational_to_double (metres) * 1000;
}

static void
test_physical (gconstpointer data)
{
  const Physical *row = data;

  g_assert_cmpfloat_with_epsilon (physical_mm (row->gauge, row->pitch, row->frames), row->mm,
                                  row->tolerance_mm);
}

/* Frames on 304.8 mm of film. */
typedef struct {
  const char *name, *gauge;
  DrawlPitch pitch;
  double frames;
  const char *source;
} PhysicalFoot;

static const PhysicalFoot physical_foot_rows[] = {
    {"FF19", "35-4", DRAWL_PITCH_LONG, 16.0421, OF_PITCHES},
    {"FF20", "35-4", DRAWL_PITCH_SHORT, 16.0759, OF_PITCHES},
    {"FF21", "35-3", DRAWL_PITCH_SHORT, 21.4346, OF_PITCHES},
    {"FF22", "16", DRAWL_PITCH_LONG, 40.0000, OF_PITCHES},
    {"FF23", "16", DRAWL_PITCH_SHORT, 40.0789, OF_PITCHES},
    {"FF24", "s8", DRAWL_PITCH_LONG, 71.9887, OF_PITCHES},
    {"FF25", "65-5", DRAWL_PITCH_LONG, 12.8337, OF_PITCHES},
};

static void
test_physical_foot (gconstpointer data)
{
  const PhysicalFoot *row = data;

  g_assert_cmpfloat_with_epsilon (304.8 / physical_mm (row->gauge, row->pitch, 1), row->frames,
                                  1e-3);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/published/footage", foot_rows, test_foot);
  add_rows ("/published/footage", metric_rows, test_metric);
  add_rows ("/published/footage", run_rows, test_run);
  add_rows ("/published/footage", take_rows, test_take);
  add_rows ("/published/footage", physical_rows, test_physical);
  add_rows ("/published/footage", physical_foot_rows, test_physical_foot);
  return g_test_run ();
}
