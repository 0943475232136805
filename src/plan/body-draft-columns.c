/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The columns of a body profile. Bounds are those of the reader of profiles; what a cell means is
 * written as the reader takes it. */

#include "plan/body-draft-columns.h"

#include "core/card-class.h"
#include "core/codec-law.h"
#include "core/codec-level.h"
#include "core/footage.h"
#include "core/text.h"
#include "plan/body-reader.h"

/* ---- Choices ---- */

static gboolean
choice_in (const DrawlDraftChoice *choices, guint n, guint index, DrawlDraftChoice *out)
{
  if (index >= n)
    return FALSE;
  *out = (DrawlDraftChoice){choices[index].id, _ (choices[index].name)};
  return TRUE;
}

static gboolean
body_kind (guint index, DrawlDraftChoice *out)
{
  static const DrawlDraftChoice choices[] = {{"digital", N_ ("Digital")}, {"film", N_ ("Film")}};
  return choice_in (choices, G_N_ELEMENTS (choices), index, out);
}

static gboolean
payload_kind (guint index, DrawlDraftChoice *out)
{
  static const DrawlDraftChoice choices[] = {
      {"uncompressed", N_ ("From pixels and bits")},
      {"fixed", N_ ("The same bytes every frame")},
      {"scaling", N_ ("A data rate that grows with the rate")},
      {"constant", N_ ("A data rate that stays the same")},
  };
  return choice_in (choices, G_N_ELEMENTS (choices), index, out);
}

static gboolean
sampling (guint index, DrawlDraftChoice *out)
{
  static const DrawlDraftChoice choices[] = {
      {"mosaic", N_ ("Mosaic: 1 sample a pixel")},
      {"420", N_ ("4:2:0: 1.5 samples a pixel")},
      {"422", N_ ("4:2:2: 2 samples a pixel")},
      {"444", N_ ("4:4:4: 3 samples a pixel")},
  };
  return choice_in (choices, G_N_ELEMENTS (choices), index, out);
}

/* The first choice is a law of the codec's own. */
static gboolean
codec_law (guint index, DrawlDraftChoice *out)
{
  guint n;
  const DrawlCodecLaw *laws = drawl_codec_laws (&n);

  if (index == 0)
    *out = (DrawlDraftChoice){"", _ ("Its own")};
  else if (index <= n)
    *out = (DrawlDraftChoice){laws[index - 1].id, _ (laws[index - 1].name)};
  return index <= n;
}

/* The first choice is none. */
static gboolean
codec_level (guint index, DrawlDraftChoice *out)
{
  guint n;
  const DrawlCodecLevel *levels = drawl_codec_levels (&n);

  if (index == 0)
    *out = (DrawlDraftChoice){"", _ ("None")};
  else if (index <= n)
    *out = (DrawlDraftChoice){levels[index - 1].id, levels[index - 1].name};
  return index <= n;
}

static gboolean
gauge (guint index, DrawlDraftChoice *out)
{
  guint n;
  const DrawlGauge *gauges = drawl_gauges (&n);

  if (index < n)
    *out = (DrawlDraftChoice){gauges[index].id, _ (gauges[index].name)};
  return index < n;
}

static gboolean
card_class (guint index, DrawlDraftChoice *out)
{
  guint n;
  const DrawlCardClass *classes = drawl_card_classes (&n);

  if (index < n)
    *out = (DrawlDraftChoice){classes[index].id, classes[index].id};
  return index < n;
}

static gboolean
card_class_or_none (guint index, DrawlDraftChoice *out)
{
  if (index > 0)
    return card_class (index - 1, out);
  *out = (DrawlDraftChoice){"", _ ("None")};
  return TRUE;
}

/* ---- Columns ---- */

#define BOTH .on = DRAWL_DRAFT_ON_BOTH
#define DIGITAL .on = DRAWL_DRAFT_ON_DIGITAL
#define FILM .on = DRAWL_DRAFT_ON_FILM
#define NEEDED .required = TRUE
#define KIND(name) .kind = DRAWL_DRAFT_##name
#define RANGE(from, to) .lowest = (from), .highest = (to)
#define NAME                                                                                       \
  {                                                                                                \
    "name", N_ ("_Name"), NULL, KIND (TEXT), BOTH, NEEDED                                          \
  }
#define ID(hint_text)                                                                              \
  {                                                                                                \
    "id", N_ ("I_d"), hint_text, KIND (ID), BOTH, NEEDED                                           \
  }
#define PRICE                                                                                      \
  {                                                                                                \
    "price_day", N_ ("_Price a Day"), NULL, KIND (MONEY), BOTH                                     \
  }

static const DrawlDraftColumn about[] = {
    {"name", N_ ("_Name"), N_ ("As on the hire list"), KIND (TEXT), BOTH, NEEDED},
    ID (N_ ("What files call it; made from the name")),
    {"maker", N_ ("_Maker"), NULL, KIND (TEXT), BOTH},
    {"what", N_ ("_What It Is"), N_ ("One line about it"), KIND (TEXT), BOTH},
    {"kind", N_ ("_Kind"), N_ ("Film has gauges and magazines in place of codecs and cards"),
     KIND (CHOICE), BOTH, NEEDED, .choice = body_kind},
    {"source.document", N_ ("D_ocument"),
     N_ ("The maker's published table, manual or letter: without it nobody can check the figures"),
     KIND (TEXT), BOTH},
    {"source.date", N_ ("D_ate"), N_ ("The day it was taken from there, like 2026-11-25"),
     KIND (DAY), BOTH},
    {"currency", N_ ("_Currency"), N_ ("Of all prices here, like EUR"), KIND (TEXT), BOTH},
    PRICE,
    {"rates.step", N_ ("_Step of Rates in fps"),
     N_ ("Every multiple of it can be set; empty, with no rates below: any rate"), KIND (NUMBER),
     BOTH, RANGE (0, DRAWL_RATE_MAX)},
    {"rates.also", N_ ("Ra_tes Beside the Steps in fps"), N_ ("Like 23.976 29.97"), KIND (RATES),
     BOTH},
    {"audio_tracks", N_ ("So_und Tracks"), NULL, KIND (COUNT), BOTH,
     RANGE (0, DRAWL_BODY_AUDIO_MAX)},
    {"buffer.bytes", N_ ("Ring _Buffer in GB"), N_ ("Empty: it has none"), KIND (GIGABYTES),
     DIGITAL, RANGE (1, DRAWL_BODY_BYTES_MAX)},
    {"buffer.pre_percent", N_ ("Part Before the Tri_gger in %"), NULL, KIND (NUMBER), DIGITAL,
     RANGE (0, 100)},
    {"buffer.write_mb_s", N_ ("Written O_ut at MB/s"), N_ ("Empty: as fast as the card"),
     KIND (NUMBER), DIGITAL, RANGE (0, DRAWL_BODY_MB_S_MAX)},
    {"power.watts", N_ ("Po_wer Draw in W"), N_ ("While it records"), KIND (NUMBER), BOTH,
     RANGE (0, DRAWL_BODY_WATTS_MAX)},
};

static const DrawlDraftColumn sizes[] = {
    NAME,
    ID (N_ ("What limits and shots call it; shots go along when it changes")),
    {"width", N_ ("_Width in Pixels"), NULL, KIND (COUNT), DIGITAL, NEEDED,
     RANGE (1, DRAWL_BODY_PIXELS_MAX)},
    {"height", N_ ("_Height in Pixels"), NULL, KIND (COUNT), DIGITAL, NEEDED,
     RANGE (1, DRAWL_BODY_PIXELS_MAX)},
    {"gauge", N_ ("_Gauge"), NULL, KIND (CHOICE), FILM, NEEDED, .choice = gauge},
    {"window_width_mm", N_ ("Window W_idth in mm"), N_ ("Of the sensor or the gate"), KIND (NUMBER),
     BOTH, RANGE (0, DRAWL_BODY_MM_MAX)},
    {"window_height_mm", N_ ("Window H_eight in mm"), NULL, KIND (NUMBER), BOTH,
     RANGE (0, DRAWL_BODY_MM_MAX)},
    {"readout_ms", N_ ("_Readout in ms"), N_ ("From top to bottom; empty: not known"),
     KIND (NUMBER), DIGITAL, RANGE (0, DRAWL_BODY_READOUT_MS_MAX)},
};

static const DrawlDraftColumn codecs[] = {
    NAME,
    ID (N_ ("What limits and shots call it; shots go along when it changes")),
    {"law", N_ ("Payload _Law"), N_ ("How many bytes a frame takes"), KIND (CHOICE), BOTH,
     .choice = codec_law},
    {"payload.kind", N_ ("_Kind of Law"), NULL, KIND (CHOICE), BOTH, NEEDED,
     .own_kinds = "uncompressed fixed scaling constant", .choice = payload_kind},
    {"payload.sampling", N_ ("_Sampling"), NULL, KIND (CHOICE), BOTH, NEEDED,
     .own_kinds = "uncompressed", .choice = sampling},
    {"payload.stored_bits", N_ ("Stored _Bits a Sample"),
     N_ ("On the card: 12 bits squeezed 4:1 are 3"), KIND (NUMBER), BOTH, NEEDED, RANGE (1, 64),
     .own_kinds = "uncompressed"},
    {"payload.row_align", N_ ("_Rows Filled to Bytes"), N_ ("Empty: the frame is packed"),
     KIND (COUNT), BOTH, RANGE (0, G_MAXUINT16), .own_kinds = "uncompressed"},
    {"payload.frame_bytes", N_ ("_Bytes a Frame"), NULL, KIND (COUNT), BOTH, NEEDED,
     RANGE (1, DRAWL_BODY_BYTES_MAX), .own_kinds = "fixed"},
    {"payload.width", N_ ("Only for a _Width of Pixels"), N_ ("Empty: for any"), KIND (COUNT), BOTH,
     RANGE (0, DRAWL_BODY_PIXELS_MAX), .own_kinds = "fixed"},
    {"payload.height", N_ ("Only for a _Height of Pixels"), N_ ("Empty: for any"), KIND (COUNT),
     BOTH, RANGE (0, DRAWL_BODY_PIXELS_MAX), .own_kinds = "fixed"},
    {"payload.mbps", N_ ("_Data Rate in Mbit/s"), NULL, KIND (NUMBER), BOTH, NEEDED,
     RANGE (0, 8 * DRAWL_BODY_MB_S_MAX), .own_kinds = "scaling constant"},
    {"payload.at", N_ ("Stated _at fps"), NULL, KIND (RATE), BOTH, NEEDED, .own_kinds = "scaling"},
    {"payload.overhead_bytes", N_ ("Header B_ytes a Frame"), NULL, KIND (COUNT), BOTH,
     RANGE (0, G_MAXINT32), .own_kinds = "uncompressed fixed scaling constant"},
    {"level", N_ ("Le_vel"), N_ ("Of its coding standard; it bounds sizes and rates"),
     KIND (CHOICE), BOTH, .own_kinds = "uncompressed fixed scaling constant",
     .choice = codec_level},
};

static const DrawlDraftColumn licences[] = {
    NAME,
    ID (N_ ("What limits and tiers call it")),
    {"what", N_ ("_What It Opens"), NULL, KIND (TEXT), BOTH},
    PRICE,
    {"requires", N_ ("_Requires"), N_ ("Must be hired with it"), KIND (ROWS), BOTH,
     .target = DRAWL_DRAFT_LICENCES},
    {"replaces", N_ ("Re_places"), N_ ("Count as hired with it"), KIND (ROWS), BOTH,
     .target = DRAWL_DRAFT_LICENCES},
};

static const DrawlDraftColumn limits[] = {
    {"sizes", N_ ("Sizes"), NULL, KIND (ROWS), BOTH, NEEDED, .target = DRAWL_DRAFT_SIZES},
    {"codecs", N_ ("Codecs"), NULL, KIND (ROWS), DIGITAL, NEEDED, .target = DRAWL_DRAFT_CODECS},
    {"lowest_rate", N_ ("Lowest fps"), NULL, KIND (RATE), BOTH, NEEDED},
    {"highest_rate", N_ ("Highest fps"), NULL, KIND (RATE), BOTH, NEEDED},
    {"licences", N_ ("Licences"), NULL, KIND (ROWS), BOTH, .target = DRAWL_DRAFT_LICENCES},
    {"card_classes", N_ ("Card Class"), NULL, KIND (CHOICES), DIGITAL, .choice = card_class},
};

static const DrawlDraftColumn cards[] = {
    NAME,
    ID (N_ ("What hired bodies call it")),
    {"bytes", N_ ("_Capacity in GB"), N_ ("As printed on it: 1 GB is 10⁹ bytes"), KIND (GIGABYTES),
     BOTH, NEEDED, RANGE (1, DRAWL_BODY_BYTES_MAX)},
    {"class", N_ ("Card C_lass"), N_ ("It guarantees a speed"), KIND (CHOICE), BOTH,
     .choice = card_class_or_none},
    {"write_mb_s", N_ ("Guaranteed Write _Speed in MB/s"), N_ ("Needed where there is no class"),
     KIND (NUMBER), BOTH, RANGE (0, DRAWL_BODY_MB_S_MAX)},
    PRICE,
};

static const DrawlDraftColumn magazines[] = {
    NAME,
    ID (N_ ("What files call it")),
    {"feet", N_ ("_Length in Feet"), NULL, KIND (NUMBER), BOTH, NEEDED,
     RANGE (1, DRAWL_BODY_FEET_MAX)},
    PRICE,
};

static const DrawlDraftColumn notes[] = {
    {"what", N_ ("_What"), N_ ("The part, or the thing to do"), KIND (TEXT), BOTH, NEEDED},
    {"why", N_ ("Wh_y"), NULL, KIND (TEXT), BOTH},
};

#define COLUMNS(table) table, G_N_ELEMENTS (table)

static const DrawlDraftTableInfo tables[DRAWL_N_DRAFT_TABLES] = {
    [DRAWL_DRAFT_ABOUT] = {"", DRAWL_DRAFT_ON_BOTH, TRUE, COLUMNS (about)},
    [DRAWL_DRAFT_SIZES] = {"sizes", DRAWL_DRAFT_ON_BOTH, TRUE, COLUMNS (sizes)},
    [DRAWL_DRAFT_CODECS] = {"codecs", DRAWL_DRAFT_ON_DIGITAL, TRUE, COLUMNS (codecs)},
    [DRAWL_DRAFT_LICENCES] = {"licences", DRAWL_DRAFT_ON_BOTH, FALSE, COLUMNS (licences)},
    [DRAWL_DRAFT_LIMITS] = {"limits", DRAWL_DRAFT_ON_BOTH, TRUE, COLUMNS (limits)},
    [DRAWL_DRAFT_CARDS] = {"cards", DRAWL_DRAFT_ON_DIGITAL, FALSE, COLUMNS (cards)},
    [DRAWL_DRAFT_MAGAZINES] = {"magazines", DRAWL_DRAFT_ON_FILM, FALSE, COLUMNS (magazines)},
    [DRAWL_DRAFT_FITS] = {"fit", DRAWL_DRAFT_ON_BOTH, FALSE, COLUMNS (notes)},
    [DRAWL_DRAFT_PICKUPS] = {"pick_up", DRAWL_DRAFT_ON_BOTH, FALSE, COLUMNS (notes)},
    [DRAWL_DRAFT_RETURNS] = {"return", DRAWL_DRAFT_ON_BOTH, FALSE, COLUMNS (notes)},
};

const DrawlDraftTableInfo *
drawl_draft_table_info (DrawlDraftTable table)
{
  return &tables[table];
}

guint
drawl_draft_column (DrawlDraftTable table, const char *key)
{
  guint i = 0;

  while (i < tables[table].n_columns && !g_str_equal (tables[table].columns[i].key, key))
    i++;
  g_assert (i < tables[table].n_columns);
  return i;
}
