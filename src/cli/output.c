/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The answer of a command in one of two forms. Plain text is aligned in columns as a terminal
 * counts them; labels and values are collected first, since the longest label decides. */

#include "cli/output.h"

#include <string.h>

#define GAP 2 /* columns between label and value */
#define NO_BREAK_SPACE "\u00a0"

void
drawl_output_init (DrawlOutput *output, gboolean json)
{
  *output = (DrawlOutput){
      .text = g_string_new (NULL),
      .labels = g_ptr_array_new_with_free_func (g_free),
      .values = g_ptr_array_new_with_free_func (g_free),
  };
  if (json) {
    output->writer = g_new (DrawlJsonWriter, 1);
    drawl_json_writer_init (output->writer, output->text);
    drawl_json_writer_begin_object (output->writer, NULL);
  }
}

void
drawl_output_clear (DrawlOutput *output)
{
  if (output->text == NULL)
    return;
  g_string_free (output->text, TRUE);
  g_free (output->writer);
  g_ptr_array_unref (output->labels);
  g_ptr_array_unref (output->values);
  *output = (DrawlOutput){0};
}

/* ---- Columns ---- */

char *
drawl_output_plain (char *text)
{
  char *to = text;

  if (text == NULL)
    return NULL;
  for (const char *from = text; *from != '\0';) {
    gboolean fixed = from[0] == NO_BREAK_SPACE[0] && from[1] == NO_BREAK_SPACE[1];
    *to++ = fixed ? ' ' : *from;
    from += fixed ? 2 : 1;
  }
  *to = '\0';
  return text;
}

guint
drawl_output_columns (const char *text)
{
  guint columns = 0;

  for (const char *at = text; *at != '\0'; at = g_utf8_next_char (at)) {
    gunichar c = g_utf8_get_char (at);
    columns += c < 0x80 ? 1 : g_unichar_iszerowidth (c) ? 0 : g_unichar_iswide (c) ? 2 : 1;
  }
  return columns;
}

void
drawl_output_append_cell (GString *out, const char *text, guint width)
{
  gsize start = out->len;

  g_string_append (out, text);
  for (gsize i = start; i < out->len; i++)
    if (g_ascii_iscntrl (out->str[i]))
      out->str[i] = ' ';
  if (width > 0)
    for (guint columns = drawl_output_columns (text); columns < width; columns++)
      g_string_append_c (out, ' ');
}

static void
append_figures (DrawlOutput *output)
{
  guint width = 0;

  for (guint i = 0; i < output->labels->len; i++)
    width = MAX (width, drawl_output_columns (output->labels->pdata[i]));
  for (guint i = 0; i < output->labels->len; i++) {
    drawl_output_append_cell (output->text, output->labels->pdata[i], width + GAP);
    drawl_output_append_cell (output->text, output->values->pdata[i], 0);
    g_string_append_c (output->text, '\n');
  }
}

const GString *
drawl_output_end (DrawlOutput *output)
{
  if (output->writer != NULL) {
    drawl_json_writer_end_object (output->writer);
    g_string_append_c (output->text, '\n');
  } else {
    append_figures (output);
  }
  return output->text;
}

/* ---- Figures ---- */

/* A line of plain text; takes @value. Without a label there is none. */
static void
add_line (DrawlOutput *output, const char *label, char *value)
{
  if (label == NULL) {
    g_free (value);
    return;
  }
  g_ptr_array_add (output->labels, g_strdup (label));
  g_ptr_array_add (output->values, value);
}

/* "4.5 s", "10×", "12" */
static char *
with_unit (const char *number, const char *unit)
{
  gboolean touches = *unit == '\0' || g_str_equal (unit, "×");
  return g_strconcat (number, touches ? "" : " ", unit, NULL);
}

void
drawl_output_text (DrawlOutput *output, const char *key, const char *label, const char *value)
{
  if (output->writer != NULL)
    drawl_json_writer_string (output->writer, key, value);
  else
    add_line (output, label, g_strdup (value));
}

void
drawl_output_texts (DrawlOutput *output, const char *key, const char *label,
                    const GPtrArray *values)
{
  if (output->writer != NULL)
    drawl_json_writer_begin_array (output->writer, key);
  for (guint i = 0; i < values->len; i++)
    drawl_output_text (output, NULL, label, values->pdata[i]);
  if (output->writer != NULL)
    drawl_json_writer_end_array (output->writer);
}

void
drawl_output_null (DrawlOutput *output, const char *key, const char *label, const char *why)
{
  if (output->writer != NULL)
    drawl_json_writer_null (output->writer, key);
  else
    add_line (output, label, g_strdup (why));
}

void
drawl_output_count (DrawlOutput *output, const char *key, const char *label, gint64 value,
                    const char *unit)
{
  if (output->writer != NULL) {
    drawl_json_writer_int (output->writer, key, value);
  } else {
    char number[DRAWL_RATIONAL_TEXT_SIZE];
    g_snprintf (number, sizeof number, "%" G_GINT64_FORMAT, value);
    add_line (output, label, with_unit (number, unit));
  }
}

void
drawl_output_double (DrawlOutput *output, const char *key, const char *label, double value,
                     const char *unit)
{
  if (output->writer != NULL) {
    drawl_json_writer_double (output->writer, key, value);
  } else {
    char number[G_ASCII_DTOSTR_BUF_SIZE];
    g_ascii_formatd (number, sizeof number, "%.9g", value);
    add_line (output, label, with_unit (number, unit));
  }
}

void
drawl_output_number (DrawlOutput *output, const char *key, const char *label, DrawlRational value,
                     const char *unit)
{
  char number[DRAWL_RATIONAL_TEXT_SIZE];

  drawl_rational_text (value, number);
  if (output->writer != NULL || strchr (number, '/') != NULL)
    drawl_output_double (output, key, label, drawl_rational_to_double (value), unit);
  else
    add_line (output, label, with_unit (number, unit));
}

void
drawl_output_amount (DrawlOutput *output, const char *key, const char *label, DrawlRational value,
                     const char *unit)
{
  if (value.den == 1)
    drawl_output_count (output, key, label, value.num, unit);
  else
    drawl_output_number (output, key, label, value, unit);
}

void
drawl_output_fraction (DrawlOutput *output, const char *key, const char *label, DrawlRational value,
                       const char *unit)
{
  char text[DRAWL_RATIONAL_TEXT_SIZE];

  drawl_rate_text (value, text);
  if (output->writer != NULL)
    drawl_json_writer_string (output->writer, key, text);
  else
    add_line (output, label, with_unit (text, unit));
}
