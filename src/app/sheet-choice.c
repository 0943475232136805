/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The choice of a sheet and its paper. The usual paper is the locale's own, if sheets are made for
 * it. */

#include "app/sheet-choice.h"

#include "core/text.h"
#include "export/sheet-pdf.h"

GListModel *
drawl_sheet_choice_kinds (void)
{
  GtkStringList *list = gtk_string_list_new (NULL);
  guint n;
  const DrawlSheetKind *kinds = drawl_sheet_kinds (&n);

  for (guint i = 0; i < n; i++)
    gtk_string_list_append (list, _ (kinds[i].name));
  return G_LIST_MODEL (list);
}

GListModel *
drawl_sheet_choice_papers (void)
{
  GtkStringList *list = gtk_string_list_new (NULL);
  guint n;
  const DrawlPaper *papers = drawl_papers (&n);

  for (guint i = 0; i < n; i++)
    gtk_string_list_append (list, _ (papers[i].name));
  return G_LIST_MODEL (list);
}

/* As printers call them. */
static const struct {
  const char *id, *name;
} printer_papers[] = {
    {"a4", GTK_PAPER_NAME_A4},
    {"letter", GTK_PAPER_NAME_LETTER},
};

static GtkPaperSize *
paper_size (const DrawlPaper *paper)
{
  for (gsize i = 0; i < G_N_ELEMENTS (printer_papers); i++)
    if (g_str_equal (printer_papers[i].id, paper->id))
      return gtk_paper_size_new (printer_papers[i].name);
  return gtk_paper_size_new_custom (paper->id, _ (paper->name), paper->width, paper->height,
                                    GTK_UNIT_POINTS);
}

guint
drawl_sheet_choice_usual_paper (void)
{
  g_autoptr (GtkPaperSize) usual = gtk_paper_size_new (gtk_paper_size_get_default ());
  guint n;
  const DrawlPaper *papers = drawl_papers (&n);

  for (guint i = 0; i < n; i++) {
    g_autoptr (GtkPaperSize) size = paper_size (&papers[i]);
    if (gtk_paper_size_is_equal (size, usual))
      return i;
  }
  return 0;
}

GtkPageSetup *
drawl_sheet_choice_page_setup (guint paper, const DrawlSheet *sheet)
{
  GtkPageSetup *setup = gtk_page_setup_new ();
  guint n;
  const DrawlPaper *papers = drawl_papers (&n);
  g_autoptr (GtkPaperSize) size = paper_size (&papers[MIN (paper, n - 1)]);
  double width, height;

  drawl_sheet_page_size (sheet, &width, &height);
  gtk_page_setup_set_paper_size (setup, size);
  gtk_page_setup_set_orientation (setup, width > height ? GTK_PAGE_ORIENTATION_LANDSCAPE
                                                        : GTK_PAGE_ORIENTATION_PORTRAIT);
  return setup;
}

DrawlSheet *
drawl_sheet_choice_make (DrawlPlan *plan, guint kind, guint paper)
{
  g_autoptr (GDateTime) date = drawl_sheet_pdf_date ();
  guint n_kinds, n_papers;
  const DrawlSheetKind *kinds = drawl_sheet_kinds (&n_kinds);
  const DrawlPaper *papers = drawl_papers (&n_papers);
  const DrawlSheetKind *chosen = &kinds[MIN (kind, n_kinds - 1)];
  DrawlSheetSetup setup = {
      .paper = &papers[MIN (paper, n_papers - 1)],
      .printed = date,
      .rtl = drawl_sheet_reads_rtl (chosen),
  };

  return drawl_sheet_new (chosen, plan, &setup);
}
