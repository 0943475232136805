/* SPDX-License-Identifier: GPL-3.0-or-later */

/* `drawl-cli sheet`: a plan on paper, as a PDF file. */

#include <string.h>

#include "cli/call.h"
#include "cli/error.h"
#include "cli/file-argument.h"
#include "cli/plan-argument.h"
#include "core/error.h"
#include "core/text.h"
#include "export/sheet-pdf.h"

#define ENDING ".pdf"

enum { OUTPUT, FOR, PAPER, N_OPTIONS };

static const DrawlOption options[N_OPTIONS] = {
    [OUTPUT] = {"output", 'o', "FILE", N_ ("Where to: a name that ends in .pdf")},
    [FOR] = {"for", 0, "SHEET", N_ ("set (unless given), hire or cut")},
    [PAPER] = {"paper", 0, "PAPER", N_ ("a4 (unless given) or letter")},
};

/* ---- Options ---- */

static const DrawlSheetKind *
read_kind (const DrawlCall *call, GError **error)
{
  g_autoptr (GString) ids = g_string_new (NULL);
  guint n;
  const DrawlSheetKind *kinds = drawl_sheet_kinds (&n);
  const DrawlSheetKind *kind =
      drawl_call_has (call, FOR) ? drawl_sheet_kind_find (call->values[FOR]) : kinds;

  for (guint i = 0; i < n; i++)
    g_string_append_printf (ids, "%s%s", i > 0 ? ", " : "", kinds[i].id);
  if (kind == NULL) {
    g_autofree char *quoted = drawl_core_quote (call->values[FOR]);
    g_autofree char *message =
        g_strdup_printf (_ ("“%s” is no sheet; one of %s is expected"), quoted, ids->str);
    drawl_call_refuse (call, FOR, message, error);
  }
  return kind;
}

static const DrawlPaper *
read_paper (const DrawlCall *call, GError **error)
{
  g_autoptr (GString) ids = g_string_new (NULL);
  guint n;
  const DrawlPaper *papers = drawl_papers (&n);
  const DrawlPaper *paper =
      drawl_call_has (call, PAPER) ? drawl_paper_find (call->values[PAPER]) : papers;

  for (guint i = 0; i < n; i++)
    g_string_append_printf (ids, "%s%s", i > 0 ? ", " : "", papers[i].id);
  if (paper == NULL) {
    g_autofree char *quoted = drawl_core_quote (call->values[PAPER]);
    g_autofree char *message =
        g_strdup_printf (_ ("“%s” is no paper; one of %s is expected"), quoted, ids->str);
    drawl_call_refuse (call, PAPER, message, error);
  }
  return paper;
}

static gboolean
read_path (const DrawlCall *call, const char **path, GError **error)
{
  if (!drawl_file_argument_output (call, OUTPUT, path, error))
    return FALSE;
  gsize length = strlen (*path);
  if (length > strlen (ENDING) &&
      g_ascii_strcasecmp (*path + length - strlen (ENDING), ENDING) == 0)
    return TRUE;
  g_autofree char *name = g_filename_display_basename (*path);
  g_autofree char *message = g_strdup_printf (
      _ ("no sheet can be written as “%s”; a name that ends in .pdf is expected"), name);
  return drawl_call_refuse (call, OUTPUT, message, error);
}

/* ---- The sheet ---- */

static DrawlSheet *
make_sheet (const DrawlSheetKind *kind, const DrawlPaper *paper, DrawlPlan *plan)
{
  g_autoptr (GDateTime) date = drawl_sheet_pdf_date ();
  DrawlSheetSetup setup = {
      .paper = paper,
      .printed = date,
      .rtl = drawl_sheet_reads_rtl (kind),
  };

  return drawl_sheet_new (kind, plan, &setup);
}

static gboolean
run_sheet (const DrawlCall *call, DrawlOutput *output, GError **error)
{
  const char *path;
  const DrawlSheetKind *kind = read_kind (call, error);
  const DrawlPaper *paper = kind != NULL ? read_paper (call, error) : NULL;
  GError *reason = NULL;

  if (paper == NULL || !read_path (call, &path, error))
    return FALSE;
  g_autoptr (DrawlPlan) plan = drawl_plan_argument_load (call, error);
  if (plan == NULL)
    return FALSE;
  g_autoptr (DrawlSheet) sheet = make_sheet (kind, paper, plan);
  g_autoptr (GFile) file = drawl_file_argument (path);
  if (!drawl_sheet_pdf_save (sheet, file, &reason))
    return drawl_cli_refuse_file (error, reason);

  g_autofree char *shown = g_filename_display_name (path);
  gboolean json = output->writer != NULL;
  drawl_output_text (output, "file", _ ("file"), shown);
  drawl_output_text (output, "for", _ ("sheet"), json ? kind->id : _ (kind->name));
  drawl_output_text (output, "paper", _ ("paper"), json ? paper->id : _ (paper->name));
  drawl_output_count (output, "pages", _ ("pages"), drawl_sheet_n_pages (sheet), "");
  return TRUE;
}

const DrawlCommand drawl_command_sheet = {
    .name = "sheet",
    .summary = N_ ("A plan on paper, as PDF"),
    .help = N_ (
        "set: a shot a band, with its sentence, span picture, figures, verdict, what is left on\n"
        "the card after it, and notes. hire: what is to be hired, what it does not cover, and\n"
        "for each body what must be fitted and looked at, to be ticked. cut: a table for the\n"
        "cutting room.\n"
        "\n"
        "The pages bear date and time, and a revision that is the same for equal plans.\n"
        "\n"
        "Example:\n"
        "  drawl-cli sheet glass.drawl --for hire --paper letter -o hire.pdf"),
    .file = "PLAN",
    .options = options,
    .n_options = N_OPTIONS,
    .run = run_sheet,
};
