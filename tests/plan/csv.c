/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Tables of text: what RFC 4180 says, what spreadsheets make of it, what is refused and in which
 * line, and that all that is written is read back. */

#include "plan/csv.h"

#include <string.h>

#include "plan/error.h"
#include "rows.h"

/* ---- Reading ---- */

typedef struct {
  const char *name;
  const char *text;
  const char *shown; /* each row "line:field|field" and a slash */
  char delimiter;
} Row;

static const Row rows[] = {
    /* RFC 4180, section 2, by its numbers */
    {"rfc-1-crlf", "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", "1:aaa|bbb|ccc/2:zzz|yyy|xxx/", ','},
    {"rfc-2-no-last-line-end", "aaa,bbb\r\nzzz,yyy", "1:aaa|bbb/2:zzz|yyy/", ','},
    {"rfc-4-spaces-are-kept", " aaa , bbb\r\n", "1: aaa | bbb/", ','},
    {"rfc-5-quoted", "\"aaa\",\"bbb\",ccc\r\n", "1:aaa|bbb|ccc/", ','},
    {"rfc-6-line-end-in-quotes", "\"aaa\",\"b\r\nbb\"\r\nzzz,yyy\r\n", "1:aaa|b\r\nbb/3:zzz|yyy/",
     ','},
    {"rfc-6-delimiter-in-quotes", "\"a,b\",c\r\n", "1:a,b|c/", ','},
    {"rfc-7-quote-in-quotes", "\"aaa\",\"b\"\"bb\"\r\n", "1:aaa|b\"bb/", ','},
    /* What else there is */
    {"nothing", "", "", ','},
    {"only-line-ends", "\r\n\n\r", "", ','},
    {"lf", "a,b\nc,d\n", "1:a|b/2:c|d/", ','},
    {"cr", "a,b\rc,d\r", "1:a|b/2:c|d/", ','},
    {"mixed-line-ends", "a\r\nb\nc\rd", "1:a/2:b/3:c/4:d/", ','},
    {"byte-order-mark", "\xef\xbb\xbfh\xc3\xa9,b", "1:h\xc3\xa9|b/", ','},
    {"byte-order-mark-before-quote", "\xef\xbb\xbf\"a,b\"", "1:a,b/", ','},
    {"semicolons", "a;b\nc;0,45", "1:a|b/2:c|0,45/", ';'},
    {"semicolons-and-decimal-commas", "12;0,45;4,5", "1:12|0,45|4,5/", ';'},
    {"tabs", "a\tb\nc\td,e;f", "1:a|b/2:c|d,e;f/", '\t'},
    {"tabs-before-commas", "12\tThe glass leaves, leans, breaks",
     "1:12|The glass leaves, leans, breaks/", '\t'},
    {"commas-before-quoted-semicolons", "\"a;b;c\",d", "1:a;b;c|d/", ','},
    {"empty-fields", ",a,,\n", "1:|a||/", ','},
    {"rows-of-nothing-are-left-out", "a,b\n,\n\n\"\",\nc,d", "1:a|b/5:c|d/", ','},
    {"rows-of-unequal-length", "a,b,c\nd\ne,f", "1:a|b|c/2:d/3:e|f/", ','},
    {"quote-within-a-plain-field", "a,5\" lens,b", "1:a|5\" lens|b/", ','},
    {"empty-quotes", "\"\",a", "1:|a/", ','},
    {"only-quotes", "\"\"\"\"", "1:\"/", ','},
    {"line-numbers-go-on-in-quotes", "\"a\nb\rc\r\nd\"\ne", "1:a\nb\rc\r\nd/5:e/", ','},
};

static char *
show (const DrawlCsv *csv)
{
  GString *shown = g_string_new (NULL);

  for (guint i = 0; i < csv->rows->len; i++) {
    const DrawlCsvRow *row = csv->rows->pdata[i];
    g_string_append_printf (shown, "%u:", row->line);
    for (guint column = 0; column < row->fields->len; column++)
      g_string_append_printf (shown, "%s%s", column > 0 ? "|" : "", drawl_csv_field (row, column));
    g_string_append_c (shown, '/');
  }
  return g_string_free (shown, FALSE);
}

static void
test_read (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (DrawlCsv) csv = drawl_csv_read (row->text, strlen (row->text), &error);

  g_assert_no_error (error);
  g_autofree char *shown = show (csv);
  g_assert_cmpstr (shown, ==, row->shown);
  g_assert_cmpint (csv->delimiter, ==, row->delimiter);
  g_assert_false (csv->latin_1);
}

static void
test_latin_1 (void)
{
  static const char text[] = "Gr\xf6\xdf"
                             "e,\"5 \xb5m\"\nb\xe9,c";
  g_autoptr (GError) error = NULL;
  g_autoptr (DrawlCsv) csv = drawl_csv_read (text, strlen (text), &error);

  g_assert_no_error (error);
  g_autofree char *shown = show (csv);
  g_assert_cmpstr (shown, ==, "1:Größe|5 µm/2:bé|c/");
  g_assert_true (csv->latin_1);
}

static void
assert_stripped (const DrawlCsvRow *row, guint column, const char *expected)
{
  g_autofree char *stripped = drawl_csv_field_stripped (row, column);
  g_assert_cmpstr (stripped, ==, expected);
}

static void
test_stripped (void)
{
  static const char text[] = " a ,\" b \",";
  g_autoptr (DrawlCsv) csv = drawl_csv_read (text, strlen (text), NULL);
  const DrawlCsvRow *row = csv->rows->pdata[0];

  assert_stripped (row, 0, "a");
  assert_stripped (row, 1, " b ");
  assert_stripped (row, 2, "");
  assert_stripped (row, 3, "");
  g_assert_cmpstr (drawl_csv_field (row, 3), ==, "");
}

/* ---- Refusing ---- */

typedef struct {
  const char *name;
  const char *text;
  gssize length; /* -1: up to the NUL */
  DrawlPlanError code;
  const char *says;
} Broken;

static const Broken broken[] = {
    {"open-quote", "a,b\nc,\"d\ne\nf", -1, DRAWL_PLAN_ERROR_SYNTAX, "line 2: a quote is opened"},
    {"open-quote-at-end", "\"", -1, DRAWL_PLAN_ERROR_SYNTAX, "line 1: a quote is opened"},
    {"odd-quotes", "\"\"\"", -1, DRAWL_PLAN_ERROR_SYNTAX, "line 1: a quote is opened"},
    {"text-behind-quote", "a\n\"b\"c,d", -1, DRAWL_PLAN_ERROR_SYNTAX,
     "line 2: text stands behind a closing quote"},
    {"text-behind-quote-of-lines", "a\n\"b\nb\" ,d", -1, DRAWL_PLAN_ERROR_SYNTAX,
     "line 3: text stands behind a closing quote"},
    {"nul", "a\nb\0c", 5, DRAWL_PLAN_ERROR_SYNTAX, "line 2: a NUL byte"},
    {"nul-after-cr", "a\rb\r\n\0", 6, DRAWL_PLAN_ERROR_SYNTAX, "line 3: a NUL byte"},
    {"two-byte-characters",
     "\xff\xfe"
     "a\0b\0",
     6, DRAWL_PLAN_ERROR_SYNTAX, "line 1: a NUL byte"},
};

static void
test_broken (gconstpointer data)
{
  const Broken *row = data;
  gsize length = row->length < 0 ? strlen (row->text) : (gsize)row->length;
  g_autoptr (GError) error = NULL;

  g_assert_null (drawl_csv_read (row->text, length, &error));
  g_assert_error (error, DRAWL_PLAN_ERROR, (int)row->code);
  g_test_message ("%s", error->message);
  g_assert_true (g_str_has_prefix (error->message, row->says));
}

static void
assert_too_large (const char *text, gsize length, const char *says)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (drawl_csv_read (text, length, &error));
  g_assert_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_TOO_LARGE);
  g_assert_nonnull (strstr (error->message, says));
}

static void
test_too_many_fields (void)
{
  g_autofree char *most = g_strnfill (DRAWL_CSV_MAX_FIELDS - 1, ',');
  g_autofree char *more = g_strconcat ("a\n", most, ",", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (DrawlCsv) csv = drawl_csv_read (most, strlen (most), &error);

  g_assert_no_error (error);
  assert_too_large (more, strlen (more), "line 2: more than 1000 fields");
}

static void
test_too_many_bytes (void)
{
  gsize length = DRAWL_CSV_MAX_BYTES + 1;
  g_autofree char *text = g_strnfill (length, 'a');

  assert_too_large (text, length, "more than 64 MiB");
}

/* ---- Writing ---- */

typedef struct {
  const char *name;
  const char *fields[4]; /* NULL-terminated */
  char delimiter;
  const char *text;
} Written;

static const Written written[] = {
    {"plain", {"a", "b"}, ',', "a,b\r\n"},
    {"delimiter", {"a,b", "c"}, ',', "\"a,b\",c\r\n"},
    {"telling", {"sep=|"}, ',', "\"sep=|\"\r\n"},
    {"another-delimiter", {"a,b", "c"}, ';', "\"a,b\";c\r\n"},
    {"tab", {"a", "b c"}, '\t', "a\tb c\r\n"},
    {"quote", {"a \"b\"", "c"}, ',', "\"a \"\"b\"\"\",c\r\n"},
    {"line-ends", {"a\nb", "c\rd"}, ',', "\"a\nb\",\"c\rd\"\r\n"},
    {"space-at-an-end", {" a", "b "}, ',', "\" a\",\"b \"\r\n"},
    {"empty", {"", "b"}, ',', ",b\r\n"},
    {"byte-order-mark",
     {"\xef\xbb\xbf"
      "a"},
     ',',
     "\"\xef\xbb\xbf"
     "a\"\r\n"},
};

static void
test_write (gconstpointer data)
{
  const Written *row = data;
  g_autoptr (GString) text = g_string_new (NULL);

  drawl_csv_append_row (text, row->fields, g_strv_length ((char **)row->fields), row->delimiter);
  g_assert_cmpstr (text->str, ==, row->text);
}

/* Text of the signs that matter, and some that do not. */
static char *
random_field (void)
{
  static const char *const signs[] = {"a",  "ß", "\"",           ",", ";", "\t", "\r",
                                      "\n", " ", "\xef\xbb\xbf", "7"};
  GString *field = g_string_new (NULL);

  for (gint32 n = g_test_rand_int_range (0, 6); n > 0; n--)
    g_string_append (field, signs[g_test_rand_int_range (0, G_N_ELEMENTS (signs))]);
  return g_string_free (field, FALSE);
}

/* Any table that is written is read back, whatever the delimiter. */
static void
test_round_trip (void)
{
  static const char delimiters[] = {',', ';', '\t'};

  for (guint n = 0; n < 5000; n++) {
    char delimiter = delimiters[g_test_rand_int_range (0, 3)];
    guint n_fields = (guint)g_test_rand_int_range (1, 5),
          n_rows = (guint)g_test_rand_int_range (1, 4);
    g_autoptr (GString) text = g_string_new (NULL), again = g_string_new (NULL);
    for (guint i = 0; i < n_rows; i++) {
      g_auto (GStrv) fields = g_new0 (char *, n_fields + 1);
      for (guint column = 0; column < n_fields; column++)
        fields[column] = random_field ();
      g_autofree char *all = g_strjoinv ("", fields);
      if (all[0] != '\0')
        drawl_csv_append_row (text, (const char *const *)fields, n_fields, delimiter);
    }
    g_autoptr (GError) error = NULL;
    g_autoptr (DrawlCsv) csv = drawl_csv_read (text->str, text->len, &error);
    g_assert_no_error (error);
    for (guint i = 0; i < csv->rows->len; i++) {
      const DrawlCsvRow *row = csv->rows->pdata[i];
      g_assert_cmpuint (row->fields->len, ==, n_fields);
      const char *fields[4];
      for (guint column = 0; column < n_fields; column++)
        fields[column] = drawl_csv_field (row, column);
      drawl_csv_append_row (again, fields, n_fields, delimiter);
    }
    g_assert_cmpstr (again->str, ==, text->str);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  add_rows ("/csv/read", rows, test_read);
  add_rows ("/csv/broken", broken, test_broken);
  add_rows ("/csv/write", written, test_write);
  g_test_add_func ("/csv/latin-1", test_latin_1);
  g_test_add_func ("/csv/stripped", test_stripped);
  g_test_add_func ("/csv/too-many-fields", test_too_many_fields);
  g_test_add_func ("/csv/too-many-bytes", test_too_many_bytes);
  g_test_add_func ("/csv/round-trip", test_round_trip);

  return g_test_run ();
}
