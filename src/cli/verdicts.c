/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The check of a whole plan, printed: as JSON an object a shot, as text a line a shot with its
 * reasons, licences and fallbacks indented below. A shot that is as hired takes one line and few
 * instructions: a plan may have very many. */

#include "cli/verdicts.h"

#include "core/text.h"

#define GAP 2
#define INDENT "    "

/* ---- JSON ---- */

static void
write_ids (DrawlJsonWriter *writer, const char *key, const DrawlBody *body, DrawlTier tier)
{
  drawl_json_writer_begin_array (writer, key);
  for (guint i = 0; body != NULL && i < body->n_licences; i++)
    if ((tier & DRAWL_TIER_BIT (i)) != 0)
      drawl_json_writer_string (writer, NULL, body->licences[i].id);
  drawl_json_writer_end_array (writer);
}

static void
write_sets (DrawlJsonWriter *writer, const DrawlCheck *check, const DrawlBody *body)
{
  const GArray *sets = check->sets;
  const DrawlLicenceSet *cheapest =
      sets != NULL && sets->len > 0 ? &g_array_index (sets, DrawlLicenceSet, 0) : NULL;

  write_ids (writer, "licences", body, cheapest != NULL ? cheapest->add : 0);
  drawl_json_writer_begin_array (writer, "licence_sets");
  for (guint i = 0; cheapest != NULL && i < sets->len; i++) {
    const DrawlLicenceSet *set = &g_array_index (sets, DrawlLicenceSet, i);
    drawl_json_writer_begin_object (writer, NULL);
    write_ids (writer, "licences", body, set->add);
    drawl_json_writer_double (writer, "price_per_day", (double)set->price / 100);
    drawl_json_writer_string (writer, "currency", body->currency);
    drawl_json_writer_end_object (writer);
  }
  drawl_json_writer_end_array (writer);
}

static void
write_reasons (DrawlJsonWriter *writer, const DrawlCheck *check, const DrawlCheckQuestion *question)
{
  drawl_json_writer_begin_array (writer, "reasons");
  for (guint i = 0; i < check->n_reasons; i++) {
    g_autofree char *text = drawl_output_plain (drawl_reason_text (&check->reasons[i], question));
    drawl_json_writer_begin_object (writer, NULL);
    drawl_json_writer_string (writer, "reason", drawl_reason_id (check->reasons[i].kind));
    drawl_json_writer_string (writer, "text", text);
    drawl_json_writer_end_object (writer);
  }
  drawl_json_writer_end_array (writer);
}

static void
write_rate (DrawlJsonWriter *writer, DrawlRate rate)
{
  char text[DRAWL_RATIONAL_TEXT_SIZE];
  drawl_json_writer_string (writer, "capture_rate", drawl_rate_text (rate, text));
}

static void
write_fallback (DrawlJsonWriter *writer, const char *key, const DrawlFallback *fallback,
                const DrawlBody *body)
{
  if (!fallback->found) {
    drawl_json_writer_null (writer, key);
    return;
  }
  drawl_json_writer_begin_object (writer, key);
  drawl_json_writer_string (writer, "size", body->sizes[fallback->size].id);
  if (fallback->codec == DRAWL_BODY_NO_CODEC)
    drawl_json_writer_null (writer, "codec");
  else
    drawl_json_writer_string (writer, "codec", body->codecs[fallback->codec].id);
  write_rate (writer, fallback->rate);
  drawl_json_writer_end_object (writer);
}

/* The fallbacks of a shot in words, the same way only once: "A; or B". NULL when there is none. */
static char *
describe_fallbacks (const DrawlCheck *check, const DrawlBody *body)
{
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < DRAWL_N_KEEPS; i++) {
    const DrawlFallback *way = &check->fallbacks[i];
    char *text = way->found ? drawl_output_plain (drawl_fallback_text (way, body)) : NULL;
    if (text == NULL || g_ptr_array_find_with_equal_func (texts, text, g_str_equal, NULL))
      g_free (text);
    else
      g_ptr_array_add (texts, text);
  }
  if (texts->len == 0)
    return NULL;
  g_ptr_array_add (texts, NULL);
  return g_strjoinv (_ ("; or "), (char **)texts->pdata);
}

static void
write_without (DrawlJsonWriter *writer, const DrawlCheck *check, const DrawlBody *body)
{
  g_autofree char *text = describe_fallbacks (check, body);

  if (text == NULL) {
    drawl_json_writer_null (writer, "without");
    return;
  }
  drawl_json_writer_begin_object (writer, "without");
  for (guint i = 0; i < DRAWL_N_KEEPS; i++)
    write_fallback (writer, drawl_keep_id ((DrawlKeep)i), &check->fallbacks[i], body);
  drawl_json_writer_string (writer, "text", text);
  drawl_json_writer_end_object (writer);
}

/* A name that a shot may leave empty. */
static void
write_name (DrawlJsonWriter *writer, const char *key, const char *name)
{
  if (*name != '\0')
    drawl_json_writer_string (writer, key, name);
  else
    drawl_json_writer_null (writer, key);
}

static void
write_shot (DrawlJsonWriter *writer, DrawlShot *shot)
{
  const DrawlShotFields *fields = drawl_shot_get_fields (shot);
  const DrawlCheckQuestion *question = drawl_shot_get_question (shot);
  const DrawlCheck *check = drawl_shot_get_check (shot);

  drawl_json_writer_begin_object (writer, NULL);
  drawl_json_writer_string (writer, "slate", fields->slate);
  drawl_json_writer_string (writer, "verdict", drawl_verdict_id (check->verdict));
  write_sets (writer, check, question->body);
  write_reasons (writer, check, question);
  write_without (writer, check, question->body);
  write_name (writer, "body", fields->body);
  write_name (writer, "size", fields->size);
  write_name (writer, "codec", fields->codec);
  write_rate (writer, question->rate);
  drawl_json_writer_end_object (writer);
}

/* ---- Text ---- */

enum {
  COLUMN_SLATE,
  COLUMN_VERDICT,
  COLUMN_RATE,
  COLUMN_BODY,
  COLUMN_SIZE,
  COLUMN_CODEC,
  N_COLUMNS
};

/* One mark a verdict, of its own shape. */
static const char *const marks[DRAWL_N_VERDICTS] = {
    [DRAWL_VERDICT_AS_HIRED] = "✓",
    [DRAWL_VERDICT_NEEDS_LICENCE] = "+",
    [DRAWL_VERDICT_NOT_ON_THIS_BODY] = "✗",
};

/* The lines of a plan's shots, and what they have in common. */
typedef struct {
  GString *out;
  guint widths[N_COLUMNS];
  const char *names[DRAWL_N_VERDICTS]; /* translated, once */
} Table;

/* The cells of a shot's line; @rate is a buffer. */
static void
list_cells (const Table *table, DrawlShot *shot, const char *cells[N_COLUMNS],
            char rate[DRAWL_RATIONAL_TEXT_SIZE])
{
  const DrawlShotFields *fields = drawl_shot_get_fields (shot);

  cells[COLUMN_SLATE] = fields->slate;
  cells[COLUMN_VERDICT] = table->names[drawl_shot_get_verdict (shot)];
  cells[COLUMN_RATE] = drawl_rate_text (drawl_shot_get_question (shot)->rate, rate);
  cells[COLUMN_BODY] = fields->body;
  cells[COLUMN_SIZE] = fields->size;
  cells[COLUMN_CODEC] = fields->codec;
}

static void
measure_columns (Table *table, DrawlPlan *plan)
{
  char rate[DRAWL_RATIONAL_TEXT_SIZE];
  const char *cells[N_COLUMNS];

  for (guint i = 0; i < drawl_plan_n_shots (plan); i++) {
    list_cells (table, drawl_plan_get_shot (plan, i), cells, rate);
    for (guint j = 0; j < N_COLUMNS; j++)
      table->widths[j] = MAX (table->widths[j], drawl_output_columns (cells[j]));
  }
}

static void
append_note (GString *out, const char *label, const char *text)
{
  g_string_append (out, INDENT);
  drawl_output_append_cell (out, label, 0);
  drawl_output_append_cell (out, text, 0);
  g_string_append_c (out, '\n');
}

/* What stands below the line of a shot that is not as hired. */
static void
append_notes (GString *out, const DrawlCheck *check, const DrawlCheckQuestion *question)
{
  const DrawlBody *body = question->body;
  g_autofree char *without = describe_fallbacks (check, body);

  for (guint i = 0; i < check->n_reasons; i++) {
    g_autofree char *text = drawl_output_plain (drawl_reason_text (&check->reasons[i], question));
    append_note (out, "", text);
  }
  for (guint i = 0; check->sets != NULL && i < check->sets->len; i++) {
    g_autofree char *text = drawl_output_plain (
        drawl_licence_set_text (&g_array_index (check->sets, DrawlLicenceSet, i), body));
    append_note (out, i == 0 ? _ ("with: ") : _ ("or with: "), text);
  }
  if (without != NULL)
    append_note (out, _ ("without: "), without);
}

static void
append_shot (const Table *table, DrawlShot *shot)
{
  const DrawlCheck *check = drawl_shot_get_check (shot);
  GString *out = table->out;
  char rate[DRAWL_RATIONAL_TEXT_SIZE];
  const char *cells[N_COLUMNS];

  list_cells (table, shot, cells, rate);
  g_string_append (out, marks[check->verdict]);
  g_string_append_c (out, ' ');
  for (guint i = 0; i < N_COLUMNS; i++)
    drawl_output_append_cell (out, cells[i], table->widths[i] + GAP);
  drawl_output_append_cell (out, drawl_shot_get_fields (shot)->action, 0);
  while (out->str[out->len - 1] == ' ')
    g_string_truncate (out, out->len - 1);
  g_string_append_c (out, '\n');
  if (check->verdict != DRAWL_VERDICT_AS_HIRED)
    append_notes (out, check, drawl_shot_get_question (shot));
}

/* ---- The plan ---- */

static const char *const total_keys[DRAWL_N_VERDICTS] = {
    [DRAWL_VERDICT_AS_HIRED] = "as_hired",
    [DRAWL_VERDICT_NEEDS_LICENCE] = "needs_licence",
    [DRAWL_VERDICT_NOT_ON_THIS_BODY] = "not_on_this_body",
};

static void
write_plan (DrawlPlan *plan, DrawlJsonWriter *writer, const guint totals[DRAWL_N_VERDICTS])
{
  guint n_shots = drawl_plan_n_shots (plan);

  drawl_json_writer_begin_array (writer, "shots");
  for (guint i = 0; i < n_shots; i++)
    write_shot (writer, drawl_plan_get_shot (plan, i));
  drawl_json_writer_end_array (writer);

  drawl_json_writer_begin_object (writer, "totals");
  drawl_json_writer_int (writer, "shots", n_shots);
  for (guint i = 0; i < DRAWL_N_VERDICTS; i++)
    drawl_json_writer_int (writer, total_keys[i], totals[i]);
  drawl_json_writer_end_object (writer);
}

static void
append_plan (DrawlPlan *plan, GString *out, const guint totals[DRAWL_N_VERDICTS])
{
  guint n_shots = drawl_plan_n_shots (plan);
  Table table = {.out = out};

  for (guint i = 0; i < DRAWL_N_VERDICTS; i++)
    table.names[i] = drawl_verdict_name (i);
  measure_columns (&table, plan);
  for (guint i = 0; i < n_shots; i++)
    append_shot (&table, drawl_plan_get_shot (plan, i));

  g_string_append_printf (out, ngettext_ ("%u shot", "%u shots", n_shots), n_shots);
  for (guint i = 0; i < DRAWL_N_VERDICTS; i++)
    g_string_append_printf (out, "%s %s %s %u", i == 0 ? ":" : ",", marks[i], table.names[i],
                            totals[i]);
  g_string_append_c (out, '\n');
}

void
drawl_verdicts_print (DrawlPlan *plan, DrawlOutput *output)
{
  guint n_shots = drawl_plan_n_shots (plan), totals[DRAWL_N_VERDICTS] = {0};

  for (guint i = 0; i < n_shots; i++)
    totals[drawl_shot_get_verdict (drawl_plan_get_shot (plan, i))]++;
  output->some_shot_fails = totals[DRAWL_VERDICT_AS_HIRED] < n_shots;

  if (output->writer != NULL)
    write_plan (plan, output->writer, totals);
  else
    append_plan (plan, output->text, totals);
}
