/* SPDX-License-Identifier: GPL-3.0-or-later */

/* JSON without a tree in between: ten thousand shots cost little more than their bytes, and a
 * double takes the fewest digits that read back as the same one (json-glib writes 0.1 as
 * 0.10000000000000001). Invariant: brackets are opened and closed in pairs by the caller; `depth`
 * counts the open ones. */

#include "cli/json-writer.h"

#include <math.h>
#include <string.h>

#define LINE_DEPTH 2 /* members down to this depth begin a line */

void
drawl_json_writer_init (DrawlJsonWriter *writer, GString *out)
{
  *writer = (DrawlJsonWriter){.out = out, .empty = TRUE};
}

static void
begin_line (DrawlJsonWriter *writer)
{
  g_string_append_c (writer->out, '\n');
  for (guint i = 0; i < writer->depth; i++)
    g_string_append (writer->out, "  ");
}

static void
append_escaped (GString *out, const char *value)
{
  g_string_append_c (out, '"');
  while (*value != '\0') {
    gsize plain = 0;
    while ((guchar)value[plain] >= ' ' && value[plain] != '"' && value[plain] != '\\')
      plain++;
    g_string_append_len (out, value, (gssize)plain);
    value += plain;
    if (*value == '"' || *value == '\\')
      g_string_append_printf (out, "\\%c", *value++);
    else if (*value != '\0')
      g_string_append_printf (out, "\\u%04x", (guint)*value++);
  }
  g_string_append_c (out, '"');
}

/* What stands before a value: comma, line, key. */
static void
begin_value (DrawlJsonWriter *writer, const char *key)
{
  if (!writer->empty)
    g_string_append_c (writer->out, ',');
  if (writer->depth > 0 && writer->depth <= LINE_DEPTH)
    begin_line (writer);
  else if (!writer->empty)
    g_string_append_c (writer->out, ' ');
  writer->empty = FALSE;
  if (key != NULL) {
    append_escaped (writer->out, key);
    g_string_append (writer->out, ": ");
  }
}

static void
begin_bracket (DrawlJsonWriter *writer, const char *key, char bracket)
{
  begin_value (writer, key);
  g_string_append_c (writer->out, bracket);
  writer->depth++;
  writer->empty = TRUE;
}

static void
end_bracket (DrawlJsonWriter *writer, char bracket)
{
  gboolean on_lines = writer->depth <= LINE_DEPTH && !writer->empty;

  writer->depth--;
  if (on_lines)
    begin_line (writer);
  g_string_append_c (writer->out, bracket);
  writer->empty = FALSE;
}

void
drawl_json_writer_begin_object (DrawlJsonWriter *writer, const char *key)
{
  begin_bracket (writer, key, '{');
}

void
drawl_json_writer_end_object (DrawlJsonWriter *writer)
{
  end_bracket (writer, '}');
}

void
drawl_json_writer_begin_array (DrawlJsonWriter *writer, const char *key)
{
  begin_bracket (writer, key, '[');
}

void
drawl_json_writer_end_array (DrawlJsonWriter *writer)
{
  end_bracket (writer, ']');
}

void
drawl_json_writer_string (DrawlJsonWriter *writer, const char *key, const char *value)
{
  begin_value (writer, key);
  append_escaped (writer->out, value);
}

void
drawl_json_writer_int (DrawlJsonWriter *writer, const char *key, gint64 value)
{
  begin_value (writer, key);
  g_string_append_printf (writer->out, "%" G_GINT64_FORMAT, value);
}

/* Same bits, so that 0.1 is told from its neighbours. */
static gboolean
same_double (double a, double b)
{
  return memcmp (&a, &b, sizeof a) == 0;
}

void
drawl_json_writer_double (DrawlJsonWriter *writer, const char *key, double value)
{
  static const char *const formats[] = {"%.15g", "%.16g", "%.17g"};
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  g_assert (isfinite (value));
  for (gsize i = 0; i < G_N_ELEMENTS (formats); i++) {
    g_ascii_formatd (text, sizeof text, formats[i], value);
    if (same_double (g_ascii_strtod (text, NULL), value))
      break;
  }

  begin_value (writer, key);
  gsize digits = strcspn (text, "e");
  g_string_append_len (writer->out, text, (gssize)digits);
  if (memchr (text, '.', digits) == NULL)
    g_string_append (writer->out, ".0");
  g_string_append (writer->out, text + digits);
}

void
drawl_json_writer_null (DrawlJsonWriter *writer, const char *key)
{
  begin_value (writer, key);
  g_string_append (writer->out, "null");
}
