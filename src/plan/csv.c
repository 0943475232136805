/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Tables of text: RFC 4180, and what spreadsheets make of it. The reader is a walk over the bytes
 * of UTF-8 (all of its signs are ASCII, so no sequence can be cut); what it does not understand is
 * refused with its line, never guessed. */

#include "plan/csv.h"

#include "core/text.h"
#include "plan/error.h"

#include <string.h>

#define BYTE_ORDER_MARK "\xef\xbb\xbf"

#define TELLING "sep="

/* A walk over the text. */
typedef struct {
  const char *at;
  const char *end;
  guint line;
  char delimiter;
  guint n_fields; /* so far */
} Reader;

static void
field_clear (gpointer data)
{
  DrawlCsvField *field = data;
  g_free (field->text);
}

static void
row_free (gpointer data)
{
  DrawlCsvRow *row = data;
  g_array_unref (row->fields);
  g_free (row);
}

static DrawlCsvRow *
row_new (guint line)
{
  DrawlCsvRow *row = g_new0 (DrawlCsvRow, 1);
  row->fields = g_array_new (FALSE, FALSE, sizeof (DrawlCsvField));
  g_array_set_clear_func (row->fields, field_clear);
  row->line = line;
  return row;
}

void
drawl_csv_free (DrawlCsv *csv)
{
  g_ptr_array_unref (csv->rows);
  g_free (csv);
}

const char *
drawl_csv_field (const DrawlCsvRow *row, guint column)
{
  return column < row->fields->len ? g_array_index (row->fields, DrawlCsvField, column).text : "";
}

char *
drawl_csv_field_stripped (const DrawlCsvRow *row, guint column)
{
  char *text = g_strdup (drawl_csv_field (row, column));
  gboolean quoted =
      column < row->fields->len && g_array_index (row->fields, DrawlCsvField, column).quoted;

  return quoted ? text : g_strstrip (text);
}

/* ---- Reading ---- */

/* A tab if the first line has one outside of quotes, since tables keep tabs out of their fields;
 * else the more frequent of semicolon and comma. As many of both are numbers with a decimal comma
 * between semicolons. */
static char
find_delimiter (const char *at, const char *end)
{
  guint tabs = 0, semicolons = 0, commas = 0;
  gboolean quoted = FALSE;

  for (; at < end && (quoted || (*at != '\n' && *at != '\r')); at++) {
    quoted ^= *at == '"';
    if (quoted)
      continue;
    tabs += *at == '\t';
    semicolons += *at == ';';
    commas += *at == ',';
  }
  if (tabs > 0)
    return '\t';
  return semicolons > 0 && semicolons >= commas ? ';' : ',';
}

/* The delimiter that a first line such as "sep=;" tells, as spreadsheets write it; else '\0'. */
static char
told_delimiter (const char *at, const char *end)
{
  gsize length = strlen (TELLING);

  if ((gsize)(end - at) <= length || g_ascii_strncasecmp (at, TELLING, length) != 0)
    return '\0';
  char told = at[length];
  gboolean alone = at + length + 1 == end || at[length + 1] == '\n' || at[length + 1] == '\r';
  return alone && (told == '\t' || g_ascii_ispunct (told)) && told != '"' ? told : '\0';
}

/* Steps over one line end: LF, CR or CR LF. */
static gboolean
skip_line_end (Reader *reader)
{
  if (reader->at == reader->end || (*reader->at != '\n' && *reader->at != '\r'))
    return FALSE;
  if (*reader->at == '\r' && reader->at + 1 < reader->end && reader->at[1] == '\n')
    reader->at++;
  reader->at++;
  reader->line++;
  return TRUE;
}

static gboolean
at_field_end (const Reader *reader)
{
  return reader->at == reader->end || *reader->at == reader->delimiter || *reader->at == '\n' ||
         *reader->at == '\r';
}

static char *
read_plain (Reader *reader)
{
  const char *start = reader->at;

  while (!at_field_end (reader))
    reader->at++;
  return g_strndup (start, (gsize)(reader->at - start));
}

/* Reads the inside of quotes up to and over the closing one. FALSE when there is none. */
static gboolean
read_inside (Reader *reader, GString *field)
{
  while (reader->at < reader->end) {
    if (*reader->at == '"') {
      reader->at++;
      if (reader->at == reader->end || *reader->at != '"')
        return TRUE;
    }
    const char *before = reader->at;
    if (!skip_line_end (reader))
      reader->at++;
    g_string_append_len (field, before, reader->at - before);
  }
  return FALSE;
}

static char *
read_quoted (Reader *reader, GError **error)
{
  g_autoptr (GString) field = g_string_new (NULL);
  guint line = reader->line;

  reader->at++;
  if (!read_inside (reader, field)) {
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_SYNTAX,
                 _ ("line %u: a quote is opened and never closed"), line);
    return NULL;
  }
  if (!at_field_end (reader)) {
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_SYNTAX,
                 _ ("line %u: text stands behind a closing quote; a delimiter is expected"),
                 reader->line);
    return NULL;
  }
  return g_string_free (g_steal_pointer (&field), FALSE);
}

/* Adds a field to the row, unless it is one too many. */
static gboolean
take_field (Reader *reader, DrawlCsvRow *row, DrawlCsvField field, GError **error)
{
  if (field.text == NULL)
    return FALSE;
  g_array_append_val (row->fields, field);
  if (row->fields->len > DRAWL_CSV_MAX_FIELDS) {
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_TOO_LARGE,
                 _ ("line %u: more than %d fields"), row->line, DRAWL_CSV_MAX_FIELDS);
    return FALSE;
  }
  if (++reader->n_fields > DRAWL_CSV_MAX_FIELDS_IN_ALL) {
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_TOO_LARGE,
                 _ ("line %u: more than %d fields in all"), row->line, DRAWL_CSV_MAX_FIELDS_IN_ALL);
    return FALSE;
  }
  return TRUE;
}

/* Reads one row and its line end. NULL on an error. */
static DrawlCsvRow *
read_row (Reader *reader, GError **error)
{
  DrawlCsvRow *row = row_new (reader->line);
  gboolean more = TRUE;

  while (more) {
    DrawlCsvField field = {.quoted = reader->at < reader->end && *reader->at == '"'};
    field.text = field.quoted ? read_quoted (reader, error) : read_plain (reader);
    if (!take_field (reader, row, field, error)) {
      row_free (row);
      return NULL;
    }
    more = reader->at < reader->end && *reader->at == reader->delimiter;
    reader->at += more;
  }
  skip_line_end (reader);
  return row;
}

static gboolean
row_is_empty (const DrawlCsvRow *row)
{
  for (guint i = 0; i < row->fields->len; i++)
    if (*drawl_csv_field (row, i) != '\0')
      return FALSE;
  return TRUE;
}

static gboolean
check_bytes (const char *data, gsize length, GError **error)
{
  const char *nul;

  if (length > DRAWL_CSV_MAX_BYTES) {
    g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_TOO_LARGE,
                 _ ("the table has more than %d MiB"), DRAWL_CSV_MAX_BYTES / (1024 * 1024));
    return FALSE;
  }
  nul = length > 0 ? memchr (data, '\0', length) : NULL;
  if (nul == NULL)
    return TRUE;

  Reader before = {.at = data, .end = nul, .line = 1};
  while (before.at < nul)
    if (!skip_line_end (&before))
      before.at++;
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_SYNTAX,
               _ ("line %u: a NUL byte; a table of text is expected"), before.line);
  return FALSE;
}

static gboolean
read_rows (Reader *reader, GPtrArray *rows, GError **error)
{
  while (reader->at < reader->end) {
    DrawlCsvRow *row = read_row (reader, error);
    if (row == NULL)
      return FALSE;
    if (row_is_empty (row))
      row_free (row);
    else
      g_ptr_array_add (rows, row);
  }
  return TRUE;
}

DrawlCsv *
drawl_csv_read (const char *data, gsize length, GError **error)
{
  g_autoptr (DrawlCsv) csv = g_new0 (DrawlCsv, 1);
  g_autofree char *converted = NULL;

  csv->rows = g_ptr_array_new_with_free_func (row_free);
  if (!check_bytes (data, length, error))
    return NULL;
  if (length >= strlen (BYTE_ORDER_MARK) &&
      memcmp (data, BYTE_ORDER_MARK, strlen (BYTE_ORDER_MARK)) == 0) {
    data += strlen (BYTE_ORDER_MARK);
    length -= strlen (BYTE_ORDER_MARK);
  }
  csv->latin_1 = length > 0 && !g_utf8_validate (data, (gssize)length, NULL);
  if (csv->latin_1) {
    converted = g_convert (data, (gssize)length, "UTF-8", "ISO-8859-1", NULL, &length, error);
    if (converted == NULL)
      return NULL;
    data = converted;
  }

  Reader reader = {.at = data, .end = data + length, .line = 1};
  csv->delimiter = told_delimiter (reader.at, reader.end);
  if (csv->delimiter != '\0') {
    reader.at += strlen (TELLING) + 1;
    skip_line_end (&reader);
  } else {
    csv->delimiter = find_delimiter (reader.at, reader.end);
  }
  reader.delimiter = csv->delimiter;
  return read_rows (&reader, csv->rows, error) ? g_steal_pointer (&csv) : NULL;
}

/* ---- Writing ---- */

/* Whatever could be read as something else, be it only by a reader that takes another delimiter. */
static gboolean
wants_quotes (const char *field)
{
  gsize length = strlen (field);

  return strpbrk (field, "\",;\t\r\n") != NULL || g_str_has_prefix (field, BYTE_ORDER_MARK) ||
         g_ascii_strncasecmp (field, TELLING, strlen (TELLING)) == 0 ||
         (length > 0 && (g_ascii_isspace (field[0]) || g_ascii_isspace (field[length - 1])));
}

static void
append_field (GString *text, const char *field)
{
  if (!wants_quotes (field)) {
    g_string_append (text, field);
    return;
  }
  g_string_append_c (text, '"');
  for (; *field != '\0'; field++) {
    if (*field == '"')
      g_string_append_c (text, '"');
    g_string_append_c (text, *field);
  }
  g_string_append_c (text, '"');
}

void
drawl_csv_append_row (GString *text, const char *const *fields, guint n_fields, char delimiter)
{
  for (guint i = 0; i < n_fields; i++) {
    if (i > 0)
      g_string_append_c (text, delimiter);
    append_field (text, fields[i]);
  }
  g_string_append (text, "\r\n");
}
