/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Bytes of a frame under each kind of law, what is refused, and the tables of laws and card
 * classes. */

#include "core/card-class.h"
#include "core/codec-law.h"
#include "core/error.h"
#include "core/payload.h"
#include "rows.h"

#include <string.h>

#define N_RANDOM 5000

#define UNCOMPRESSED(sampled, ...)                                                                 \
  {                                                                                                \
    .kind = DRAWL_PAYLOAD_UNCOMPRESSED, .sampling = DRAWL_SAMPLING_##sampled,                      \
    .stored_bits = __VA_ARGS__                                                                     \
  }

typedef struct {
  const char *name;
  DrawlPayload law;
  guint width, height;
  const char *rate, *bytes;
} Frame;

static const Frame frame_rows[] = {
    {"420-8", UNCOMPRESSED (420, {8, 1}), 1920, 1080, "24", "3110400"},
    {"422-10", UNCOMPRESSED (422, {10, 1}), 1920, 1080, "24", "5184000"},
    {"444-12", UNCOMPRESSED (444, {12, 1}), 1920, 1080, "24", "9331200"},
    {"mosaic-12", UNCOMPRESSED (MOSAIC, {12, 1}), 4096, 2160, "24", "13271040"},
    {"three-in-32-bits", UNCOMPRESSED (444, {32, 3}), 2048, 1556, "24", "12746752"},
    {"rounded-up", UNCOMPRESSED (MOSAIC, {10, 1}), 3, 1, "24", "4"},
    {"rounded-up-once-a-frame", UNCOMPRESSED (MOSAIC, {10, 1}), 3, 4, "24", "15"},
    {"rows-of-whole-bytes", UNCOMPRESSED (MOSAIC, {10, 1}, .row_align = 1), 3, 4, "24", "16"},
    {"rows-of-64-bytes", UNCOMPRESSED (MOSAIC, {10, 1}, .row_align = 64), 1920, 2, "24", "4864"},
    {"rows-aligned-already", UNCOMPRESSED (MOSAIC, {12, 1}, .row_align = 32), 1920, 2, "24",
     "5760"},
    {"overhead", UNCOMPRESSED (420, {8, 1}, .overhead_bytes = 2048), 2, 2, "24", "2054"},
    {"fixed", {.kind = DRAWL_PAYLOAD_FIXED, .frame_bytes = 606208}, 17, 19, "24", "606208"},
    {"fixed-of-one-size",
     {.kind = DRAWL_PAYLOAD_FIXED, .frame_bytes = 606208, .width = 1920, .height = 1080},
     1920,
     1080,
     "24",
     "606208"},
    {"scaling",
     {.kind = DRAWL_PAYLOAD_SCALING, .mbps = {100, 1}, .at = {25, 1}},
     1920,
     1080,
     "100",
     "500000"},
    {"scaling-exact",
     {.kind = DRAWL_PAYLOAD_SCALING, .mbps = {176, 1}, .at = {24000, 1001}},
     1920,
     1080,
     "24",
     "2752750/3"},
    {"constant", {.kind = DRAWL_PAYLOAD_CONSTANT, .mbps = {100, 1}}, 1920, 1080, "100", "125000"},
    {"constant-exact",
     {.kind = DRAWL_PAYLOAD_CONSTANT, .mbps = {100, 1}},
     1920,
     1080,
     "60000/1001",
     "625625/3"},
    {"constant-overhead",
     {.kind = DRAWL_PAYLOAD_CONSTANT, .mbps = {8, 1}, .overhead_bytes = 10},
     1,
     1,
     "100",
     "10010"},
};

static void
test_frame (gconstpointer data)
{
  const Frame *row = data;
  g_autoptr (GError) error = NULL;
  DrawlRational bytes, rate_bytes, expected;
  DrawlRate rate = exact (row->rate);

  g_assert_true (
      drawl_payload_frame_bytes (&row->law, row->width, row->height, rate, &bytes, &error));
  g_assert_no_error (error);
  assert_same (bytes, exact (row->bytes));

  g_assert_true (
      drawl_payload_data_rate (&row->law, row->width, row->height, rate, 2, &rate_bytes, &error));
  g_assert_true (drawl_rational_mul (bytes, rate, &expected));
  g_assert_true (drawl_rational_add (expected, drawl_rational_whole (288000), &expected));
  assert_same (rate_bytes, expected);
}

typedef struct {
  const char *name;
  DrawlPayload law;
  guint width, height;
  const char *rate;
  DrawlCoreError code;
  const char *says;
} Refused;

static const Refused refused_rows[] = {
    {"no-width", UNCOMPRESSED (420, {8, 1}), 0, 1080, "24", DRAWL_CORE_ERROR_RANGE,
     "a width and a height are expected"},
    {"no-height", UNCOMPRESSED (420, {8, 1}), 1920, 0, "24", DRAWL_CORE_ERROR_RANGE,
     "a width and a height are expected"},
    {"no-bits", UNCOMPRESSED (420, {0, 1}), 1920, 1080, "24", DRAWL_CORE_ERROR_RANGE,
     "bits a sample"},
    {"negative-bits", UNCOMPRESSED (420, {-8, 1}), 2, 2, "24", DRAWL_CORE_ERROR_RANGE,
     "bits a sample"},
    {"too-many-bits", UNCOMPRESSED (420, {65, 1}), 2, 2, "24", DRAWL_CORE_ERROR_RANGE,
     "at most 64"},
    {"wide-alignment", UNCOMPRESSED (420, {8, 1}, .row_align = 65537), 2, 2, "24",
     DRAWL_CORE_ERROR_RANGE, "at most 65536 bytes"},
    {"no-such-sampling",
     {.kind = DRAWL_PAYLOAD_UNCOMPRESSED, .sampling = (DrawlSampling)9, .stored_bits = {8, 1}},
     2,
     2,
     "24",
     DRAWL_CORE_ERROR_RANGE,
     "420, 422, 444 or mosaic is expected"},
    {"no-such-kind", {.kind = (DrawlPayloadKind)9}, 2, 2, "24", DRAWL_CORE_ERROR_RANGE, "unknown"},
    {"huge", UNCOMPRESSED (444, {64, 1}), G_MAXUINT, G_MAXUINT, "24", DRAWL_CORE_ERROR_OVERFLOW,
     "cannot be counted exactly"},
    {"other-size",
     {.kind = DRAWL_PAYLOAD_FIXED, .frame_bytes = 606208, .width = 1920, .height = 1080},
     1280,
     720,
     "24",
     DRAWL_CORE_ERROR_UNFIT,
     "the size 1920 × 1080 only, not 1280 × 720"},
    {"fixed-at-nothing",
     {.kind = DRAWL_PAYLOAD_FIXED},
     2,
     2,
     "24",
     DRAWL_CORE_ERROR_RANGE,
     "bytes of a frame must be above 0"},
    {"half-a-size",
     {.kind = DRAWL_PAYLOAD_FIXED, .frame_bytes = 1, .width = 2},
     2,
     2,
     "24",
     DRAWL_CORE_ERROR_RANGE,
     "both its width and its height"},
    {"scaling-from-nothing",
     {.kind = DRAWL_PAYLOAD_SCALING, .mbps = {0, 1}, .at = {25, 1}},
     2,
     2,
     "24",
     DRAWL_CORE_ERROR_RANGE,
     "data rate must be above 0"},
    {"scaling-at-no-rate",
     {.kind = DRAWL_PAYLOAD_SCALING, .mbps = {1, 1}, .at = {0, 1}},
     2,
     2,
     "24",
     DRAWL_CORE_ERROR_RANGE,
     "rate at which the data rate is stated"},
    {"constant-negative",
     {.kind = DRAWL_PAYLOAD_CONSTANT, .mbps = {-1, 1}},
     2,
     2,
     "24",
     DRAWL_CORE_ERROR_RANGE,
     "data rate must be above 0"},
    {"constant-at-no-rate",
     {.kind = DRAWL_PAYLOAD_CONSTANT, .mbps = {1, 1}},
     2,
     2,
     "0",
     DRAWL_CORE_ERROR_RANGE,
     "without a rate above 0"},
};

static void
test_refused (gconstpointer data)
{
  const Refused *row = data;
  g_autoptr (GError) error = NULL, rate_error = NULL;
  DrawlRational bytes = {7, 5};

  g_assert_false (drawl_payload_frame_bytes (&row->law, row->width, row->height, exact (row->rate),
                                             &bytes, &error));
  assert_says (error, row->code, row->says);
  assert_rational (bytes, 7, 5);
  g_assert_false (drawl_payload_data_rate (&row->law, row->width, row->height, exact (row->rate), 0,
                                           &bytes, &rate_error));
  g_assert_nonnull (rate_error);
}

static void
test_samplings (void)
{
  static const struct {
    const char *id;
    gint64 num, den;
  } rows[] = {{"420", 3, 2}, {"422", 2, 1}, {"444", 3, 1}, {"mosaic", 1, 1}};
  DrawlSampling sampling;

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_assert_true (drawl_sampling_parse (rows[i].id, &sampling));
    g_assert_cmpstr (drawl_sampling_id (sampling), ==, rows[i].id);
    assert_rational (drawl_sampling_samples (sampling), rows[i].num, rows[i].den);
  }
  g_assert_false (drawl_sampling_parse ("411", &sampling));
  g_assert_false (drawl_sampling_parse ("", &sampling));
}

static void
test_laws (void)
{
  guint n_laws;
  const DrawlCodecLaw *laws = drawl_codec_laws (&n_laws);

  g_assert_cmpuint (n_laws, >, 0);
  for (guint i = 0; i < n_laws; i++) {
    guint width = laws[i].law.width != 0 ? laws[i].law.width : 1920;
    guint height = laws[i].law.height != 0 ? laws[i].law.height : 1080;
    g_autoptr (GError) error = NULL;
    DrawlRational bytes;

    /* The first law of that name is this one, so names are told apart. */
    g_assert_true (drawl_codec_law_find (laws[i].id) == &laws[i]);
    g_assert_true (*laws[i].name != '\0' && *laws[i].source != '\0');
    g_assert_true (
        drawl_payload_frame_bytes (&laws[i].law, width, height, exact ("24"), &bytes, &error));
    g_assert_no_error (error);
    g_assert_cmpint (bytes.den, ==, 1);
  }
  g_assert_null (drawl_codec_law_find ("packed-422-11"));
}

static void
test_card_classes (void)
{
  guint n_classes;
  const DrawlCardClass *classes = drawl_card_classes (&n_classes);

  g_assert_cmpuint (n_classes, >, 0);
  for (guint i = 0; i < n_classes; i++) {
    g_assert_true (drawl_card_class_find (classes[i].id) == &classes[i]);
    g_assert_true (*classes[i].source != '\0');
    g_assert_cmpint (classes[i].bytes_s, >=, 2000000);
    g_assert_cmpint (classes[i].bytes_s % 1000000, ==, 0);
  }
  g_assert_null (drawl_card_class_find ("V99"));
  g_assert_null (drawl_card_class_find ("v60"));
  g_assert_true (drawl_card_class_find ("E150")->sd);
  g_assert_false (drawl_card_class_find ("VPG-400")->sd);
}

/* Aligned rows never take less than packed ones, more pixels never less than fewer, and what is
 * added stays below one byte a frame, or one step of alignment a row. */
static void
test_uncompressed (void)
{
  static const gint64 samples_of_2[] = {3, 4, 6,
                                        2}; /* of two pixels, in the order of the samplings */

  for (guint i = 0; i < N_RANDOM; i++) {
    DrawlPayload packed = UNCOMPRESSED (420, {1 + g_test_rand_int_range (0, 16), 1});
    guint width = (guint)g_test_rand_int_range (1, 5000),
          height = (guint)g_test_rand_int_range (1, 3000);
    gint64 bits;
    DrawlRational bytes, aligned_bytes, wider_bytes;

    packed.sampling = (DrawlSampling)g_test_rand_int_range (0, 4);
    DrawlPayload aligned = packed;
    aligned.row_align = (guint)g_test_rand_int_range (1, 513);
    g_assert_true (drawl_payload_frame_bytes (&packed, width, height, exact ("24"), &bytes, NULL));
    g_assert_true (
        drawl_payload_frame_bytes (&packed, width + 1, height, exact ("24"), &wider_bytes, NULL));
    g_assert_true (
        drawl_payload_frame_bytes (&aligned, width, height, exact ("24"), &aligned_bytes, NULL));

    bits = samples_of_2[packed.sampling] * packed.stored_bits.num * width * height;
    g_assert_cmpint (bytes.num * 16 - bits, >=, 0);
    g_assert_cmpint (bytes.num * 16 - bits, <, 16);
    g_assert_cmpint (wider_bytes.num, >=, bytes.num);
    g_assert_cmpint (aligned_bytes.num, >=, bytes.num);
    g_assert_cmpint (aligned_bytes.num, <=, bytes.num + (gint64)aligned.row_align * height);
    g_assert_cmpint (aligned_bytes.num % ((gint64)aligned.row_align * height), ==, 0);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/payload/frame", frame_rows, test_frame);
  add_rows ("/payload/refused", refused_rows, test_refused);
  g_test_add_func ("/payload/samplings", test_samplings);
  g_test_add_func ("/payload/codec-laws", test_laws);
  g_test_add_func ("/payload/card-classes", test_card_classes);
  g_test_add_func ("/payload/property/uncompressed", test_uncompressed);
  return g_test_run ();
}
