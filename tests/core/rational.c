/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Exact numbers: what is read and written, what is refused, and the laws of arithmetic. */

#include "core/error.h"
#include "core/rational.h"
#include "rows.h"

#include <string.h>

#define N_RANDOM 20000
#define LARGEST "9223372036854775807"

typedef struct {
  const char *name, *text;
  gint64 num, den;
} Read;

static const Read read_rows[] = {
    {"whole", "12", 12, 1},
    {"zero", "0", 0, 1},
    {"minus-zero", "-0", 0, 1},
    {"negative", "-3", -3, 1},
    {"decimal-point", "0.45", 9, 20},
    {"decimal-comma", "0,45", 9, 20},
    {"no-whole-part", ".5", 1, 2},
    {"negative-decimal", "-0.125", -1, 8},
    {"fraction", "1/3", 1, 3},
    {"fraction-reduces", "24000/1000", 24, 1},
    {"fraction-of-1001", "1001/240", 1001, 240},
    {"negative-fraction", "-7/14", -1, 2},
    {"zero-fraction", "0/5", 0, 1},
    {"space-around", " \t 25 \n", 25, 1},
    {"leading-zeros", "000000000000000000000000000024", 24, 1},
    {"trailing-zeros", "1.50000000000000000000000000000000000000000000000000", 3, 2},
    {"literal-23.976", "23.976", 2997, 125},
    {"comma-three-places", "23,976", 2997, 125},
    {"comma-below-one", "0,500", 1, 2},
    {"eighteen-places", "0.000000000000000001", 1, G_GINT64_CONSTANT (1000000000000000000)},
    {"largest", LARGEST, G_MAXINT64, 1},
    {"smallest", "-" LARGEST, -G_MAXINT64, 1},
    {"largest-over-largest", LARGEST "/" LARGEST, 1, 1},
    {"reduces-to-fit", "18446744073709551614/2", G_MAXINT64, 1},
};

static void
test_read (gconstpointer data)
{
  const Read *row = data;
  g_autoptr (GError) error = NULL;
  DrawlRational value;

  g_assert_true (drawl_rational_parse (row->text, &value, &error));
  g_assert_no_error (error);
  assert_rational (value, row->num, row->den);
}

typedef struct {
  const char *name, *text;
  DrawlCoreError code;
  const char *says;
} Refused;

static const Refused refused_rows[] = {
    {"empty", "", DRAWL_CORE_ERROR_SYNTAX, "nothing is written; a number such as 24"},
    {"blank", "  ", DRAWL_CORE_ERROR_SYNTAX, "nothing is written"},
    {"nan", "nan", DRAWL_CORE_ERROR_SYNTAX, "“nan” is not a number"},
    {"inf", "inf", DRAWL_CORE_ERROR_SYNTAX, "“inf” is not a number"},
    {"exponent", "1e400", DRAWL_CORE_ERROR_SYNTAX, "because of “e400”; a number such as 24"},
    {"letter-after", "24/1001x", DRAWL_CORE_ERROR_SYNTAX, "because of “x”; a number such as 24"},
    {"divides-by-zero", "1/0", DRAWL_CORE_ERROR_RANGE, "“1/0” divides by zero; a number above 0"},
    {"zero-by-zero", "0/0", DRAWL_CORE_ERROR_RANGE, "divides by zero"},
    {"point-alone", ".", DRAWL_CORE_ERROR_SYNTAX, "“.” ends too early"},
    {"sign-alone", "-", DRAWL_CORE_ERROR_SYNTAX, "“-” ends too early"},
    {"plus", "+3", DRAWL_CORE_ERROR_SYNTAX, "is not a number"},
    {"two-signs", "--3", DRAWL_CORE_ERROR_SYNTAX, "is not a number"},
    {"point-last", "24.", DRAWL_CORE_ERROR_SYNTAX, "ends too early"},
    {"stroke-last", "24/", DRAWL_CORE_ERROR_SYNTAX, "ends too early"},
    {"stroke-first", "/24", DRAWL_CORE_ERROR_SYNTAX, "is not a number"},
    {"two-points", "1.2.3", DRAWL_CORE_ERROR_SYNTAX, "because of “.3”"},
    {"two-strokes", "1/2/3", DRAWL_CORE_ERROR_SYNTAX, "because of “/3”"},
    {"decimal-over", "1.5/2", DRAWL_CORE_ERROR_SYNTAX, "because of “/2”"},
    {"negative-under", "1/-2", DRAWL_CORE_ERROR_SYNTAX, "is not a number"},
    {"space-within", "24 000", DRAWL_CORE_ERROR_SYNTAX, "because of “000”"},
    {"two-groups", "1,000,000", DRAWL_CORE_ERROR_SYNTAX, "because of “,000”"},
    {"one-group", "1,000", DRAWL_CORE_ERROR_SYNTAX, "could be thousands or a decimal"},
    {"one-group-of-hundreds", "2,500", DRAWL_CORE_ERROR_SYNTAX, "could be thousands or a decimal"},
    {"unit", "24 fps", DRAWL_CORE_ERROR_SYNTAX, "because of “fps”"},
    {"hexadecimal", "0x18", DRAWL_CORE_ERROR_SYNTAX, "because of “x18”"},
    {"one-too-large", "9223372036854775808", DRAWL_CORE_ERROR_OVERFLOW,
     "fewer are expected, and up to 18 always fit"},
    {"fifty-digits", "99999999999999999999999999999999999999999999999999",
     DRAWL_CORE_ERROR_OVERFLOW, "more digits than can be kept exactly"},
    {"nineteen-places", "0.0000000000000000003", DRAWL_CORE_ERROR_OVERFLOW, "more digits"},
    {"forty-places", "0.0000000000000000000000000000000000000001", DRAWL_CORE_ERROR_OVERFLOW,
     "more digits"},
    {"large-under", "1/99999999999999999999999999999999999999999999", DRAWL_CORE_ERROR_OVERFLOW,
     "more digits"},
    {"not-utf8", "24\xff", DRAWL_CORE_ERROR_SYNTAX, "because of “\xef\xbf\xbd”"},
};

static void
test_refused (gconstpointer data)
{
  const Refused *row = data;
  g_autoptr (GError) error = NULL;
  DrawlRational value = {7, 5};

  g_assert_false (drawl_rational_parse (row->text, &value, &error));
  assert_says (error, row->code, row->says);
  assert_rational (value, 7, 5);
}

static void
test_long_text (void)
{
  g_autofree char *text = g_strnfill (1000000, '9');
  g_autoptr (GError) error = NULL;
  DrawlRational value;

  g_assert_false (drawl_rational_parse (text, &value, &error));
  assert_says (error, DRAWL_CORE_ERROR_OVERFLOW, "…”");
  g_assert_cmpuint (strlen (error->message), <, 200);
}

static void
test_unit (void)
{
  const char *const units[] = {"fps", "×", NULL};
  const char *const taken[] = {"24", "24fps", "24 FPS ", " 24 ×"};
  const char *const refused[] = {"24 f", "24 fps fps", "24 fpsx", "fps"};
  DrawlRational value;

  for (gsize i = 0; i < G_N_ELEMENTS (taken); i++) {
    g_assert_true (drawl_rational_parse_unit (taken[i], units, &value, NULL));
    assert_rational (value, 24, 1);
  }
  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++)
    g_assert_false (drawl_rational_parse_unit (refused[i], units, &value, NULL));
}

typedef struct {
  const char *name;
  gint64 num, den;
  const char *text;
} Written;

static const Written written_rows[] = {
    {"whole", 24, 1, "24"},
    {"negative", -24, 1, "-24"},
    {"half", 1, 2, "0.5"},
    {"negative-half", -1, 2, "-0.5"},
    {"nine-places", 1, 1000000000, "0.000000001"},
    {"ten-places", 1, G_GINT64_CONSTANT (10000000000), "1/10000000000"},
    {"inner-zeros", 1001, 1000, "1.001"},
    {"never-ends", 24000, 1001, "24000/1001"},
    {"third", -1, 3, "-1/3"},
    {"longest", -G_MAXINT64, G_MAXINT64 - 1, "-" LARGEST "/9223372036854775806"},
};

static void
test_written (gconstpointer data)
{
  const Written *row = data;
  char text[DRAWL_RATIONAL_TEXT_SIZE];

  g_assert_cmpstr (drawl_rational_text (DRAWL_RATIONAL_INIT (row->num, row->den), text), ==,
                   row->text);
  assert_same (exact (row->text), DRAWL_RATIONAL_INIT (row->num, row->den));
}

typedef gboolean (*Operation) (DrawlRational a, DrawlRational b, DrawlRational *out);

typedef struct {
  const char *name;
  Operation operation;
  const char *a, *b;
  const char *result; /* NULL: refused */
} Sum;

static const Sum sum_rows[] = {
    {"add", drawl_rational_add, "1/6", "1/10", "4/15"},
    {"add-cancels", drawl_rational_add, "1/3", "-1/3", "0"},
    {"add-largest-denominators", drawl_rational_add, "1/" LARGEST, "1/" LARGEST, "2/" LARGEST},
    {"add-too-large", drawl_rational_add, LARGEST, "1", NULL},
    {"add-too-fine", drawl_rational_add, "1/" LARGEST, "1/9223372036854775806", NULL},
    {"add-extremes-cancel", drawl_rational_add, LARGEST, "-" LARGEST, "0"},
    {"sub", drawl_rational_sub, "1/2", "1/3", "1/6"},
    {"sub-too-low", drawl_rational_sub, "-" LARGEST, "1", NULL},
    {"mul", drawl_rational_mul, "24000/1001", "1001/240", "100"},
    {"mul-by-zero", drawl_rational_mul, LARGEST, "0", "0"},
    {"mul-reduces-to-fit", drawl_rational_mul, LARGEST, "1/" LARGEST, "1"},
    {"mul-too-large", drawl_rational_mul, LARGEST, "2", NULL},
    {"mul-too-fine", drawl_rational_mul, "1/" LARGEST, "1/2", NULL},
    {"div", drawl_rational_div, "120", "24000/1001", "1001/200"},
    {"div-by-negative", drawl_rational_div, "1", "-1/3", "-3"},
    {"div-by-zero", drawl_rational_div, "1", "0", NULL},
    {"div-zero", drawl_rational_div, "0", "-5", "0"},
    {"div-too-large", drawl_rational_div, LARGEST, "1/2", NULL},
};

static void
test_sum (gconstpointer data)
{
  const Sum *row = data;
  DrawlRational a = exact (row->a), result = {7, 5};

  g_assert_cmpint (row->operation (a, exact (row->b), &result), ==, row->result != NULL);
  assert_same (result, row->result == NULL ? DRAWL_RATIONAL_INIT (7, 5) : exact (row->result));

  /* The result may stand in an operand. */
  row->operation (a, exact (row->b), &a);
  assert_same (a, row->result == NULL ? exact (row->a) : exact (row->result));
}

typedef struct {
  const char *name, *value;
  gint64 floor, ceil, round;
} Rounding;

static const Rounding rounding_rows[] = {
    {"whole", "3", 3, 3, 3},
    {"third", "10/3", 3, 4, 3},
    {"half", "7/2", 3, 4, 4},
    {"two-thirds", "11/3", 3, 4, 4},
    {"negative-third", "-10/3", -4, -3, -3},
    {"negative-half", "-7/2", -4, -3, -4},
    {"small", "1/" LARGEST, 0, 1, 0},
    {"large", LARGEST, G_MAXINT64, G_MAXINT64, G_MAXINT64},
    {"large-half", LARGEST "/2", G_MAXINT64 / 2, G_MAXINT64 / 2 + 1, G_MAXINT64 / 2 + 1},
};

static void
test_rounding (gconstpointer data)
{
  const Rounding *row = data;

  g_assert_cmpint (drawl_rational_floor (exact (row->value)), ==, row->floor);
  g_assert_cmpint (drawl_rational_ceil (exact (row->value)), ==, row->ceil);
  g_assert_cmpint (drawl_rational_round (exact (row->value)), ==, row->round);
}

static void
test_make (void)
{
  DrawlRational value;

  g_assert_true (drawl_rational_make (-6, -4, &value));
  assert_rational (value, 3, 2);
  g_assert_true (drawl_rational_make (6, -4, &value));
  assert_rational (value, -3, 2);
  g_assert_true (drawl_rational_make (G_MININT64, 2, &value));
  assert_rational (value, G_MININT64 / 2, 1);
  g_assert_true (drawl_rational_make (G_MININT64, G_MININT64, &value));
  assert_rational (value, 1, 1);
  g_assert_false (drawl_rational_make (G_MININT64, 1, &value));
  g_assert_false (drawl_rational_make (1, G_MININT64, &value));
  g_assert_false (drawl_rational_make (1, 0, &value));
}

static DrawlRational
random_rational (guint bits)
{
  DrawlRational value;
  gint64 num = random_whole (bits);

  g_assert_true (
      drawl_rational_make (g_test_rand_bit () ? -num : num, random_whole (bits) + 1, &value));
  return value;
}

static void
assert_lowest_terms (DrawlRational value)
{
  gint64 a = ABS (value.num), b = value.den;

  g_assert_cmpint (value.den, >, 0);
  while (b != 0) {
    gint64 rest = a % b;
    a = b;
    b = rest;
  }
  g_assert_cmpint (a, ==, 1);
}

static void
test_text_round_trip (void)
{
  for (guint i = 0; i < N_RANDOM; i++) {
    char text[DRAWL_RATIONAL_TEXT_SIZE];
    DrawlRational value = random_rational (62);
    assert_same (exact (drawl_rational_text (value, text)), value);
  }
}

/* Small operands, so that the cross products can be formed here in 64 bits. */
static void
test_against_cross_products (void)
{
  for (guint i = 0; i < N_RANDOM; i++) {
    DrawlRational a = random_rational (20), b = random_rational (20), result, expected;

    g_assert_true (drawl_rational_add (a, b, &result));
    g_assert_true (drawl_rational_make (a.num * b.den + b.num * a.den, a.den * b.den, &expected));
    assert_same (result, expected);
    g_assert_true (drawl_rational_mul (a, b, &result));
    g_assert_true (drawl_rational_make (a.num * b.num, a.den * b.den, &expected));
    assert_same (result, expected);
    gint64 left = a.num * b.den, right = b.num * a.den;
    g_assert_cmpint (drawl_rational_compare (a, b), ==, (left > right) - (left < right));
  }
}

static void
test_laws (void)
{
  guint n_fit = 0;

  for (guint i = 0; i < N_RANDOM; i++) {
    DrawlRational a = random_rational (62), b = random_rational (62), there, back;

    if (drawl_rational_add (a, b, &there)) {
      n_fit++;
      assert_lowest_terms (there);
      g_assert_true (drawl_rational_sub (there, b, &back));
      assert_same (back, a);
    }
    if (b.num != 0 && drawl_rational_mul (a, b, &there)) {
      n_fit++;
      assert_lowest_terms (there);
      g_assert_true (drawl_rational_div (there, b, &back));
      assert_same (back, a);
    }
    g_assert_cmpint (drawl_rational_compare (a, b), ==, -drawl_rational_compare (b, a));
    g_assert_cmpint (drawl_rational_compare (a, a), ==, 0);
  }
  g_assert_cmpuint (n_fit, >, N_RANDOM / 10);
}

static void
test_rounding_brackets (void)
{
  for (guint i = 0; i < N_RANDOM; i++) {
    DrawlRational a = random_rational (61);
    gint64 floor = drawl_rational_floor (a), ceil = drawl_rational_ceil (a);

    g_assert_cmpint (drawl_rational_compare (drawl_rational_whole (floor), a), <=, 0);
    g_assert_cmpint (drawl_rational_compare (drawl_rational_whole (ceil), a), >=, 0);
    g_assert_cmpint (ceil - floor, ==, a.den == 1 ? 0 : 1);
    gint64 round = drawl_rational_round (a);
    g_assert_true (round == floor || round == ceil);
  }
}

/* Up to 53 bits the division is the only rounding, so it cannot leave the whole numbers around it.
 */
static void
test_double (void)
{
  for (guint i = 0; i < N_RANDOM; i++) {
    DrawlRational a = random_rational (52);
    g_assert_cmpfloat (drawl_rational_to_double (a), >=, (double)drawl_rational_floor (a));
    g_assert_cmpfloat (drawl_rational_to_double (a), <=, (double)drawl_rational_ceil (a));
  }
  g_assert_cmpfloat_with_epsilon (drawl_rational_to_double (exact ("24000/1001")), 23.976023976,
                                  1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/rational/read", read_rows, test_read);
  add_rows ("/rational/refused", refused_rows, test_refused);
  g_test_add_func ("/rational/refused/a-million-digits", test_long_text);
  g_test_add_func ("/rational/unit", test_unit);
  add_rows ("/rational/written", written_rows, test_written);
  add_rows ("/rational/sum", sum_rows, test_sum);
  add_rows ("/rational/rounding", rounding_rows, test_rounding);
  g_test_add_func ("/rational/make", test_make);
  g_test_add_func ("/rational/property/text-round-trip", test_text_round_trip);
  g_test_add_func ("/rational/property/cross-products", test_against_cross_products);
  g_test_add_func ("/rational/property/laws", test_laws);
  g_test_add_func ("/rational/property/rounding-brackets", test_rounding_brackets);
  g_test_add_func ("/rational/property/double", test_double);
  return g_test_run ();
}
