/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Published check values: bytes of a frame, and write speeds of card classes. Each row is named by
 * its id, and its source says where the value stands and how it was obtained from there. All values
 * are exact. */

#include "core/card-class.h"
#include "core/codec-law.h"
#include "rows.h"

#define RAW_FILE "width · height · bits ÷ 8; FFmpeg 5.1 run, raw file of "
#define VC3_READ "SMPTE ST 2019-1, table of compression IDs; read in FFmpeg libavcodec/dnxhddata.c"
#define VC3_RAN VC3_READ "; FFmpeg 5.1 run, packets of that size"
#define DPX_RAN                                                                                    \
  "SMPTE ST 268, 10-bit method A and 16-bit; FFmpeg 5.1 run, file less its data offset of 1664"
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
  add_rows ("/published/data", class_rows, test_class);
  return g_test_run ();
}
