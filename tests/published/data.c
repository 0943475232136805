/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Published check values: bytes of a frame, data rates, sizes and write speeds of cards. Each row
 * is named by its id, and its source says where the value stands and how it was obtained from
 * there. All values are exact. */

#include "core/byte-size.h"
#include "core/card-class.h"
#include "core/codec-law.h"
#include "rows.h"

#define RAW_FILE "width · height · bits ÷ 8; FFmpeg 5.1 run, raw file of "
#define VC3_READ "SMPTE ST 2019-1, table of compression IDs; read in FFmpeg libavcodec/dnxhddata.c"
#define VC3_RAN VC3_READ "; FFmpeg 5.1 run, packets of that size"
#define DPX_RAN                                                                                    \
  "SMPTE ST 268, 10-bit method A and 16-bit; FFmpeg 5.1 run, file less its data offset of 1664"
#define SDI_PAGES "read in two encyclopedia pages; 10-bit 4:2:2 on the whole raster"
#define SD_SIZES "SD Association; read in a gist"
#define SPEED_CLASS "SD Association; read in its speed class page"
#define VIDEO_CLASS "SD Association, Physical Layer; read in a support page and a gist"
#define EXPRESS_CLASS "SD Association; name read in its speed class page, figure as the name says"
#define VPG "CompactFlash Association, VPG specification; "

typedef struct {
  const char *name, *law;
  guint width, height;
  gint64 bytes; /* without file headers */
  const char *source;
} Frame;

static const Frame frame_rows[] = {
    {"DA01", "packed-420-8", 1920, 1080, 3110400, RAW_FILE "yuv420p"},
    {"DA02", "packed-422-8", 1920, 1080, 4147200, RAW_FILE "uyvy422"},
    {"DA04", "words-422-10", 1920, 1080, 8294400, RAW_FILE "yuv422p10le"},
    {"DA05", "packed-444-8", 1920, 1080, 6220800, RAW_FILE "rgb24"},
    {"DA08", "packed-444-16", 1920, 1080, 12441600, RAW_FILE "rgb48le"},
    {"DA14", "mosaic-16", 1920, 1080, 4147200, RAW_FILE "gray16le"},
    {"DA35", "vc3-1235", 1920, 1080, 917504, VC3_RAN},
    {"DA36", "vc3-1237", 1920, 1080, 606208, VC3_RAN},
    {"DA37", "vc3-1238", 1920, 1080, 917504, VC3_RAN},
    {"DA38", "vc3-1241", 1920, 1080, 917504, VC3_READ},
    {"DA39", "vc3-1242", 1920, 1080, 606208, VC3_READ},
    {"DA40", "vc3-1243", 1920, 1080, 917504, VC3_READ},
    {"DA41", "vc3-1250", 1280, 720, 458752, VC3_RAN},
    {"DA42", "vc3-1251", 1280, 720, 458752, VC3_RAN},
    {"DA43", "vc3-1252", 1280, 720, 303104, VC3_RAN},
    {"DA44", "vc3-1253", 1920, 1080, 188416, VC3_RAN},
    {"DA51", "dpx-444-10", 1920, 1080, 8294400, DPX_RAN},
    {"DA52", "dpx-444-10", 2048, 1556, 12746752, DPX_RAN},
    {"DA53", "dpx-444-16", 1920, 1080, 12441600, DPX_RAN},
};

static void
test_frame (gconstpointer data)
{
  const Frame *row = data;
  const DrawlCodecLaw *law = drawl_codec_law_find (row->law);
  DrawlRational bytes;

  g_assert_nonnull (law);
  g_assert_true (drawl_payload_frame_bytes (&law->law, row->width, row->height,
                                            drawl_rational_whole (24), &bytes, NULL));
  assert_rational (bytes, row->bytes + law->law.overhead_bytes, 1);
}

/* A serial link carries 10-bit 4:2:2 of the whole raster, blanking and all. */
typedef struct {
  const char *name;
  guint width, height;
  const char *rate, *bits_s;
  const char *source;
} Link;

static const Link link_rows[] = {
    {"DA29", 864, 625, "25", "270000000", "SMPTE ST 259, level C; " SDI_PAGES},
    {"DA30", 2200, 1125, "30", "1485000000", "SMPTE ST 292-1; " SDI_PAGES},
    {"DA30-over-1001", 2200, 1125, "30000/1001", "1485000000000/1001",
     "SMPTE ST 292-1; " SDI_PAGES},
    {"DA32", 2200, 1125, "60", "2970000000", "SMPTE ST 424; " SDI_PAGES},
    {"DA32-over-1001", 2200, 1125, "60000/1001", "2970000000000/1001", "SMPTE ST 424; " SDI_PAGES},
};

static void
test_link (gconstpointer data)
{
  const Link *row = data;
  const DrawlCodecLaw *law = drawl_codec_law_find ("packed-422-10");
  DrawlRational bytes_s, bits_s;

  g_assert_true (drawl_payload_data_rate (&law->law, row->width, row->height, exact (row->rate), 0,
                                          &bytes_s, NULL));
  g_assert_true (drawl_rational_mul (bytes_s, drawl_rational_whole (8), &bits_s));
  assert_same (bits_s, exact (row->bits_s));
}

typedef struct {
  const char *name, *text;
  gint64 bytes;
  const char *source;
} Size;

static const Size size_rows[] = {
    {"DA26", "128 GiB", G_GINT64_CONSTANT (137438953472),
     "IEC 80000-13; units 2.22 run, \"128 GiB\" = 137.43895 GB"},
};

static void
test_size (gconstpointer data)
{
  const Size *row = data;
  gint64 bytes = 0;

  g_assert_true (drawl_byte_size_parse (row->text, &bytes, NULL));
  g_assert_cmpint (bytes, ==, row->bytes);
}

/* The kinds of SD card: the largest that still is one, and what a byte more is. */
typedef struct {
  const char *name, *most, *kind, *above;
  const char *source;
} SdSize;

static const SdSize sd_rows[] = {
    {"DA103-to-2-GB", "2 GB", "SD", "SDHC", SD_SIZES},
    {"DA103-to-32-GB", "32 GB", "SDHC", "SDXC", SD_SIZES},
    {"DA103-to-2-TB", "2 TB", "SDXC", "SDUC", SD_SIZES},
    {"DA103-to-128-TB", "128 TB", "SDUC", NULL, SD_SIZES},
};

static void
test_sd_size (gconstpointer data)
{
  const SdSize *row = data;
  gint64 bytes = 0;

  g_assert_true (drawl_byte_size_parse (row->most, &bytes, NULL));
  g_assert_cmpstr (drawl_sd_kind (bytes), ==, row->kind);
  g_assert_cmpstr (drawl_sd_kind (bytes + 1), ==, row->above);
}

typedef struct {
  const char *name, *id;
  gint64 mb_s;
  const char *source;
} Class;

static const Class class_rows[] = {
    {"DA88", "V6", 6, VIDEO_CLASS},
    {"DA89", "V10", 10, VIDEO_CLASS},
    {"DA90", "V30", 30, VIDEO_CLASS},
    {"DA91", "V60", 60, VIDEO_CLASS},
    {"DA92", "V90", 90, VIDEO_CLASS},
    {"DA93", "C2", 2, SPEED_CLASS},
    {"DA94", "C4", 4, SPEED_CLASS},
    {"DA95", "C6", 6, SPEED_CLASS},
    {"DA96", "C10", 10, SPEED_CLASS},
    {"DA97", "U1", 10, SPEED_CLASS},
    {"DA98", "U3", 30, SPEED_CLASS},
    {"DA99", "E150", 150, EXPRESS_CLASS},
    {"DA100", "E300", 300, EXPRESS_CLASS},
    {"DA101", "E450", 450, EXPRESS_CLASS},
    {"DA102", "E600", 600, EXPRESS_CLASS},
    {"DA105", "VPG-65", 65, VPG "name read in web pages, figure as the name says"},
    {"DA107", "VPG-200", 200, VPG "name read in a news page, figure as the name says"},
    {"DA108", "VPG-400", 400, VPG "read in a news page, gigazine.net 2024"},
    {"DA109", "VPG-800", 800, VPG "read in a news page, phototrend.fr 2025"},
    {"DA110", "VPG-1600", 1600, VPG "read in a news page, phototrend.fr 2025"},
};

static void
test_class (gconstpointer data)
{
  const Class *row = data;
  const DrawlCardClass *class = drawl_card_class_find (row->id);

  g_assert_nonnull (class);
  g_assert_cmpint (class->bytes_s, ==, row->mb_s * 1000000);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/published/data", frame_rows, test_frame);
  add_rows ("/published/data", link_rows, test_link);
  add_rows ("/published/data", size_rows, test_size);
  add_rows ("/published/data", sd_rows, test_sd_size);
  add_rows ("/published/data", class_rows, test_class);
  return g_test_run ();
}
