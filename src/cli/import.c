/* SPDX-License-Identifier: GPL-3.0-or-later */

/* `drawl-cli import`: a table of shots into a plan. Rows that cannot be taken in are listed with
 * their reasons; the others are, each whole. Where there are none, nothing is written: what stands
 * at the output is worth more than a plan without a shot. */

#include "cli/call.h"
#include "cli/error.h"
#include "cli/file-argument.h"
#include "cli/plan-argument.h"
#include "core/text.h"
#include "plan/json-file.h"
#include "plan/plan-file.h"
#include "plan/shot-table.h"
#include "plan/table-map.h"

enum { OUTPUT, INTO, N_OPTIONS };

static const DrawlOption options[N_OPTIONS] = {
    [OUTPUT] = {"output", 'o', "PLAN", N_ ("Where to: the plan with the shots in it")},
    [INTO] = {"into", 0, "PLAN2",
              N_ ("A plan to begin with: its settings, bodies and shots; otherwise an empty one")},
};

static DrawlPlan *
load_plan (const DrawlCall *call, GError **error)
{
  const char *path;
  GError *reason = NULL;

  if (!drawl_call_has (call, INTO))
    return drawl_plan_new ();
  if (!drawl_file_argument_input (call, INTO, &path, error))
    return NULL;
  g_autoptr (GFile) file = drawl_file_argument (path);
  DrawlPlan *plan = drawl_plan_load (file, NULL, &reason);
  if (plan == NULL)
    drawl_cli_refuse_file (error, reason);
  return plan;
}

static DrawlShotTable *
load_table (const DrawlCall *call, DrawlPlan *plan, GError **error)
{
  g_autoptr (GFile) file = drawl_file_argument (call->files[0]);
  g_autofree char *where = drawl_json_file_name (file);
  GError *reason = NULL;
  g_autoptr (GBytes) bytes = drawl_json_read (file, NULL, &reason);
  DrawlShotTable *table = NULL;
  gsize length;

  if (bytes == NULL) {
    drawl_cli_refuse_file (error, reason);
    return NULL;
  }
  const char *data = g_bytes_get_data (bytes, &length);
  table = drawl_shot_table_read (plan, data != NULL ? data : "", length, &reason);
  if (table == NULL)
    drawl_cli_refuse_for (error, DRAWL_CLI_ERROR_FILE, where, reason);
  return table;
}

static gboolean
save (const char *path, DrawlPlan *plan, GError **error)
{
  g_autoptr (GFile) file = drawl_file_argument (path);
  GError *reason = NULL;

  return drawl_plan_save (plan, file, TRUE, NULL, &reason) || drawl_cli_refuse_file (error, reason);
}

/* ---- What is said ---- */

static guint
count_assumed (const DrawlShotTable *table)
{
  guint n = 0;

  for (guint i = 0; i < table->rows->len; i++) {
    const DrawlShotTableRow *row = table->rows->pdata[i];
    n += row->fields != NULL && row->action_assumed;
  }
  return n;
}

static GPtrArray *
list_warnings (const DrawlShotTable *table)
{
  GPtrArray *warnings = g_ptr_array_new_with_free_func (g_free);
  guint n_assumed = count_assumed (table);

  if (table->latin_1)
    g_ptr_array_add (warnings, g_strdup (_ ("the table is not UTF-8; it was read as Latin-1")));
  if (!table->has_headings && table->rows->len > 0)
    g_ptr_array_add (warnings, g_strdup (_ ("the first row has no known heading; the columns were "
                                            "read in the order in which they are written")));
  if (table->n_good == 0)
    g_ptr_array_add (warnings, g_strdup (_ ("no row could be taken in, so nothing was written")));
  if (n_assumed > 0)
    g_ptr_array_add (warnings,
                     g_strdup_printf (ngettext_ ("%u shot tells neither action nor screen time; "
                                                 "1 s of action is assumed",
                                                 "%u shots tell neither action nor screen time; "
                                                 "1 s of action is assumed",
                                                 n_assumed),
                                      n_assumed));
  return warnings;
}

/* Two words that belong together, in a list of JSON. */
static void
write_pair (DrawlJsonWriter *writer, const char *first_key, const char *first,
            const char *second_key, const char *second)
{
  drawl_json_writer_begin_object (writer, NULL);
  drawl_json_writer_string (writer, first_key, first);
  drawl_json_writer_string (writer, second_key, second);
  drawl_json_writer_end_object (writer);
}

static void
write_hires (DrawlOutput *output, const DrawlShotTable *table)
{
  if (output->writer != NULL)
    drawl_json_writer_begin_array (output->writer, "bodies");
  for (guint i = 0; i < table->hires->len; i++) {
    const DrawlHiredFields *hired = table->hires->pdata[i];
    g_autofree char *text = g_strdup_printf ("%s (%s)", hired->id, hired->body->name);
    if (output->writer != NULL)
      write_pair (output->writer, "id", hired->id, "profile", hired->body->id);
    else
      drawl_output_text (output, NULL, _ ("body brought along"), text);
  }
  if (output->writer != NULL)
    drawl_json_writer_end_array (output->writer);
}

static void
write_columns (DrawlOutput *output, const DrawlShotTable *table)
{
  if (output->writer == NULL)
    return;
  drawl_json_writer_begin_array (output->writer, "columns");
  for (guint i = 0; i < table->recognised->len; i++) {
    const DrawlTableHeading *heading = table->recognised->pdata[i];
    write_pair (output->writer, "heading", heading->heading, "column", heading->field);
  }
  drawl_json_writer_end_array (output->writer);
}

static void
write_rejected (DrawlOutput *output, const DrawlShotTable *table)
{
  if (output->writer != NULL)
    drawl_json_writer_begin_array (output->writer, "rejected");
  for (guint i = 0; i < table->rows->len; i++) {
    const DrawlShotTableRow *row = table->rows->pdata[i];
    if (row->reason == NULL)
      continue;
    g_autofree char *reason = drawl_output_plain (drawl_shot_table_row_text (row));
    if (output->writer != NULL) {
      drawl_json_writer_begin_object (output->writer, NULL);
      drawl_json_writer_int (output->writer, "line", row->line);
      drawl_json_writer_string (output->writer, "reason", reason);
      drawl_json_writer_end_object (output->writer);
    } else {
      g_autofree char *label = g_strdup_printf (_ ("rejected, line %u"), row->line);
      drawl_output_text (output, NULL, label, reason);
    }
  }
  if (output->writer != NULL)
    drawl_json_writer_end_array (output->writer);
}

static void
say (const DrawlCall *call, const DrawlShotTable *table, DrawlOutput *output)
{
  g_autofree char *file = g_filename_display_name (call->values[OUTPUT]);
  g_autoptr (GPtrArray) warnings = list_warnings (table);

  if (table->n_good > 0)
    drawl_output_text (output, "file", _ ("file"), file);
  else
    drawl_output_null (output, "file", _ ("file"), _ ("none"));
  drawl_output_count (output, "shots", _ ("shots taken in"), table->n_good, "");
  write_rejected (output, table);
  write_hires (output, table);
  write_columns (output, table);
  drawl_output_texts (output, "ignored", _ ("heading not known"), table->ignored);
  drawl_output_texts (output, "warnings", _ ("warning"), warnings);
  output->some_shot_fails = table->n_good == 0 || table->n_good < table->rows->len;
}

static gboolean
run_import (const DrawlCall *call, DrawlOutput *output, GError **error)
{
  GError *reason = NULL;
  const char *path;

  if (!drawl_file_argument_output (call, OUTPUT, &path, error))
    return FALSE;
  g_autoptr (DrawlPlan) plan = load_plan (call, error);
  if (plan == NULL)
    return FALSE;
  g_autoptr (DrawlShotTable) table = load_table (call, plan, error);
  if (table == NULL)
    return FALSE;
  if (!drawl_shot_table_insert (plan, table, drawl_plan_n_shots (plan), "", &reason))
    return drawl_cli_refuse_file (error, reason);
  if (table->n_good > 0 && !save (path, plan, error))
    return FALSE;
  say (call, table, output);
  return TRUE;
}

const DrawlCommand drawl_command_import = {
    .name = "import",
    .summary = N_ ("A table of shots into a plan"),
    .help = N_ (
        "Reads a table of shots as CSV: commas, semicolons or tabs, headings in any order and in\n"
        "the trade's words, decimal points or commas. What a row tells of its timing must agree;\n"
        "what it leaves open follows, or is as in a new shot. A row is taken in whole or not at\n"
        "all: the others are listed with their reasons, and the exit status is then 1. Where\n"
        "none can be taken in, nothing is written.\n"
        "\n"
        "Example: a spreadsheet's shots behind those of a plan\n"
        "  drawl-cli import shots.csv --into glass.drawl -o glass-2.drawl"),
    .file = "FILE",
    .options = options,
    .n_options = N_OPTIONS,
    .run = run_import,
};
