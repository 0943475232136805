/* SPDX-License-Identifier: GPL-3.0-or-later */

/* `drawl-cli export`: a plan as a file for another program. What the format cannot hold is refused;
 * what it had to decide is said. */

#include <string.h>

#include "cli/call.h"
#include "cli/error.h"
#include "cli/file-argument.h"
#include "cli/plan-argument.h"
#include "core/error.h"
#include "core/text.h"
#include "export/format.h"
#include "plan/json-file.h"

enum { OUTPUT, AS, N_OPTIONS };

static const DrawlOption options[N_OPTIONS] = {
    [OUTPUT] = {"output", 'o', "FILE", N_ ("Where to")},
    [AS] = {"as", 0, "FORMAT", N_ ("otio, edl or csv; otherwise as the name of FILE ends")},
};

static gboolean
refuse_format (const DrawlCall *call, const char *id, GError **error)
{
  g_autoptr (GString) ids = g_string_new (NULL);
  g_autofree char *quoted = drawl_core_quote (id);
  g_autofree char *message = NULL;
  guint n_exports;
  const DrawlExport *exports = drawl_exports (&n_exports);

  for (guint i = 0; i < n_exports; i++)
    g_string_append_printf (ids, "%s%s", i > 0 ? ", " : "", exports[i].id);
  message = g_strdup_printf (_ ("“%s” is no format; one of %s is expected"), quoted, ids->str);
  return drawl_call_refuse (call, AS, message, error);
}

static const DrawlExport *
read_format (const DrawlCall *call, const char *path, GError **error)
{
  const DrawlExport *found;

  if (!drawl_call_has (call, AS)) {
    found = drawl_export_find_ending (path);
    if (found == NULL)
      drawl_call_refuse (call, AS,
                         _ ("is missing, and the name of the file does not tell; otio, edl or csv "
                            "is expected"),
                         error);
    return found;
  }
  found = drawl_export_find (call->values[AS]);
  if (found == NULL)
    refuse_format (call, call->values[AS], error);
  return found;
}

static gboolean
save (const char *path, const char *text, GError **error)
{
  g_autoptr (GFile) file = drawl_file_argument (path);
  GError *reason = NULL;

  return drawl_json_save (file, text, strlen (text), FALSE, NULL, &reason) ||
         drawl_cli_refuse_file (error, reason);
}

static gboolean
run_export (const DrawlCall *call, DrawlOutput *output, GError **error)
{
  g_autoptr (GPtrArray) warnings = g_ptr_array_new_with_free_func (g_free);
  GError *reason = NULL;
  const char *path;

  if (!drawl_file_argument_output (call, OUTPUT, &path, error))
    return FALSE;
  const DrawlExport *format = read_format (call, path, error);
  if (format == NULL)
    return FALSE;
  g_autoptr (DrawlPlan) plan = drawl_plan_argument_load (call, error);
  if (plan == NULL)
    return FALSE;
  g_autofree char *text = format->text (plan, warnings, &reason);
  if (text == NULL)
    return drawl_call_refuse_for (call, AS, reason, error);
  if (!save (path, text, error))
    return FALSE;

  g_autofree char *shown = g_filename_display_name (path);
  drawl_output_text (output, "file", _ ("file"), shown);
  drawl_output_text (output, "as", _ ("format"),
                     output->writer != NULL ? format->id : _ (format->name));
  drawl_output_count (output, "shots", _ ("shots"), drawl_plan_n_shots (plan), "");
  drawl_output_texts (output, "warnings", _ ("warning"), warnings);
  return TRUE;
}

const DrawlCommand drawl_command_export = {
    .name = "export",
    .summary = N_ ("A plan for the cutting room, or as a table"),
    .help = N_ (
        "otio writes an OpenTimelineIO timeline, edl an edit decision list of the CMX 3600 kind:\n"
        "the shots end to end, in the order of the list, from 01:00:00:00 on, at the plan's\n"
        "playback rate. Each is as long as its screen time, in whole frames. The media is taken\n"
        "to run in real time as it was shot, and the file says how fast it plays: a "
        "LinearTimeWarp\n"
        "of 0.2, or an M2 line of 004.8 at 24, slow it to 20 %.\n"
        "\n"
        "csv writes the shot table, which `drawl-cli import` reads back unchanged.\n"
        "\n"
        "Example:\n"
        "  drawl-cli export glass.drawl --as edl -o glass.edl"),
    .file = "PLAN",
    .options = options,
    .n_options = N_OPTIONS,
    .run = run_export,
};
