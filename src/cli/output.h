/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlOutput: what a command answers, kept back until all of it is known, so that a command that
 * fails prints nothing. Numbers have a decimal point in every locale; text is UTF-8.
 *
 * Figures are added one by one and come out as lines of aligned text, or as the members of one JSON
 * object in the same order. A figure without a label is printed in JSON only. A command with more
 * to say than a list of figures writes `text` or `json` itself. */

#include "cli/json-writer.h"
#include "core/rate.h"

typedef struct {
  GString *text;
  DrawlJsonWriter *writer; /* into `text`; NULL: plain text is wanted */
  GPtrArray *labels;       /* plain text: of the figures so far */
  GPtrArray *values;
  gboolean some_shot_fails; /* the exit code is 1 */
} DrawlOutput;

void drawl_output_init (DrawlOutput *output, gboolean json);
void drawl_output_clear (DrawlOutput *output);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (DrawlOutput, drawl_output_clear)

/* Ends the output; nothing may be added after it. Returns all of it, owned by @output. */
const GString *drawl_output_end (DrawlOutput *output);

/* Figures. @unit, translated, follows the number in text ("fps", "s"); "" for none. */
void drawl_output_text (DrawlOutput *output, const char *key, const char *label, const char *value);
/* Any number of them: a list in JSON, a line each in text. @values takes char *. */
void drawl_output_texts (DrawlOutput *output, const char *key, const char *label,
                         const GPtrArray *values);
void drawl_output_null (DrawlOutput *output, const char *key, const char *label, const char *why);
void drawl_output_count (DrawlOutput *output, const char *key, const char *label, gint64 value,
                         const char *unit);
void drawl_output_double (DrawlOutput *output, const char *key, const char *label, double value,
                          const char *unit);
/* A number: as a double in JSON, exactly in text where it ends within nine places. */
void drawl_output_number (DrawlOutput *output, const char *key, const char *label,
                          DrawlRational value, const char *unit);
/* The same, but a whole number without a decimal point in JSON. */
void drawl_output_amount (DrawlOutput *output, const char *key, const char *label,
                          DrawlRational value, const char *unit);
/* Reduced text in both: "24000/1001". */
void drawl_output_fraction (DrawlOutput *output, const char *key, const char *label,
                            DrawlRational value, const char *unit);

/* @text itself, with plain spaces in place of those that do not break; for sentences that are made
 * for a page. May be NULL. */
char *drawl_output_plain (char *text);
/* @text with spaces up to @width columns after it; control characters come out as spaces. */
void drawl_output_append_cell (GString *out, const char *text, guint width);
/* Columns that @text takes in a terminal. */
guint drawl_output_columns (const char *text);
