/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Payload laws of open standards: packings of uncompressed samples (width · height · samples · bits
 * ÷ 8), DPX files, and the VC-3 compressions, whose frames are all of one length. Bytes a frame. */

#include "core/codec-law.h"

#include "core/text.h"

#define PACKED(sampled, bits)                                                                      \
  {                                                                                                \
    .kind = DRAWL_PAYLOAD_UNCOMPRESSED, .sampling = sampled, .stored_bits = { bits, 1 }            \
  }

/* File header: 2048 bytes. Ten-bit samples stand three to a 32-bit word. */
#define DPX(num, den)                                                                              \
  {                                                                                                \
    .kind = DRAWL_PAYLOAD_UNCOMPRESSED, .sampling = DRAWL_SAMPLING_444, .stored_bits = {num, den}, \
    .overhead_bytes = 2048                                                                         \
  }

#define VC3(columns, rows, bytes)                                                                  \
  {                                                                                                \
    .kind = DRAWL_PAYLOAD_FIXED, .frame_bytes = bytes, .width = columns, .height = rows            \
  }

#define ARITHMETIC "width · height · samples · bits ÷ 8"
#define RAW_FILE ARITHMETIC "; the same as a raw file written by FFmpeg 5.1"
#define DPX_FILE                                                                                   \
  "SMPTE ST 268, filled words; the same as a file written by FFmpeg 5.1, less its header; header " \
  "split from memory"
#define VC3_TABLE "SMPTE ST 2019-1, table of compression IDs; read in FFmpeg libavcodec/dnxhddata.c"

static const DrawlCodecLaw laws[] = {
    {"packed-420-8", N_ ("Uncompressed 4:2:0, 8 bit"), PACKED (DRAWL_SAMPLING_420, 8), RAW_FILE},
    {"packed-422-8", N_ ("Uncompressed 4:2:2, 8 bit"), PACKED (DRAWL_SAMPLING_422, 8), RAW_FILE},
    {"packed-422-10", N_ ("Uncompressed 4:2:2, 10 bit"), PACKED (DRAWL_SAMPLING_422, 10),
     ARITHMETIC},
    {"words-422-10", N_ ("Uncompressed 4:2:2, 10 bit in 16-bit words"),
     PACKED (DRAWL_SAMPLING_422, 16), RAW_FILE},
    {"packed-444-8", N_ ("Uncompressed 4:4:4, 8 bit"), PACKED (DRAWL_SAMPLING_444, 8), RAW_FILE},
    {"packed-444-10", N_ ("Uncompressed 4:4:4, 10 bit"), PACKED (DRAWL_SAMPLING_444, 10),
     ARITHMETIC},
    {"packed-444-12", N_ ("Uncompressed 4:4:4, 12 bit"), PACKED (DRAWL_SAMPLING_444, 12),
     ARITHMETIC},
    {"packed-444-16", N_ ("Uncompressed 4:4:4, 16 bit"), PACKED (DRAWL_SAMPLING_444, 16), RAW_FILE},
    {"mosaic-10", N_ ("Mosaic, 10 bit"), PACKED (DRAWL_SAMPLING_MOSAIC, 10), ARITHMETIC},
    {"mosaic-12", N_ ("Mosaic, 12 bit"), PACKED (DRAWL_SAMPLING_MOSAIC, 12), ARITHMETIC},
    {"mosaic-14", N_ ("Mosaic, 14 bit"), PACKED (DRAWL_SAMPLING_MOSAIC, 14), ARITHMETIC},
    {"mosaic-16", N_ ("Mosaic, 16 bit"), PACKED (DRAWL_SAMPLING_MOSAIC, 16), RAW_FILE},
    {"dpx-444-10", N_ ("DPX 4:4:4, 10 bit"), DPX (32, 3), DPX_FILE},
    {"dpx-444-16", N_ ("DPX 4:4:4, 16 bit"), DPX (16, 1), DPX_FILE},
    {"vc3-1235", N_ ("VC-3, compression 1235, 10 bit"), VC3 (1920, 1080, 917504), VC3_TABLE},
    {"vc3-1237", N_ ("VC-3, compression 1237, 8 bit"), VC3 (1920, 1080, 606208), VC3_TABLE},
    {"vc3-1238", N_ ("VC-3, compression 1238, 8 bit"), VC3 (1920, 1080, 917504), VC3_TABLE},
    {"vc3-1241", N_ ("VC-3, compression 1241, interlaced, 10 bit"), VC3 (1920, 1080, 917504),
     VC3_TABLE},
    {"vc3-1242", N_ ("VC-3, compression 1242, interlaced, 8 bit"), VC3 (1920, 1080, 606208),
     VC3_TABLE},
    {"vc3-1243", N_ ("VC-3, compression 1243, interlaced, 8 bit"), VC3 (1920, 1080, 917504),
     VC3_TABLE},
    {"vc3-1250", N_ ("VC-3, compression 1250, 10 bit"), VC3 (1280, 720, 458752), VC3_TABLE},
    {"vc3-1251", N_ ("VC-3, compression 1251, 8 bit"), VC3 (1280, 720, 458752), VC3_TABLE},
    {"vc3-1252", N_ ("VC-3, compression 1252, 8 bit"), VC3 (1280, 720, 303104), VC3_TABLE},
    {"vc3-1253", N_ ("VC-3, compression 1253, 8 bit"), VC3 (1920, 1080, 188416), VC3_TABLE},
};

const DrawlCodecLaw *
drawl_codec_laws (guint *n_laws)
{
  *n_laws = G_N_ELEMENTS (laws);
  return laws;
}

const DrawlCodecLaw *
drawl_codec_law_find (const char *id)
{
  for (gsize i = 0; i < G_N_ELEMENTS (laws); i++)
    if (g_str_equal (laws[i].id, id))
      return &laws[i];
  return NULL;
}
