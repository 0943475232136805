/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Paper. A4 is 210 × 297 mm (ISO 216), Letter 8.5 × 11 inches; a point is 1/72 inch. */

#include "draw/paper.h"

#include "core/text.h"

#define MM(mm) ((mm)*72 / 25.4)

static const DrawlPaper papers[] = {
    {"a4", N_ ("A4"), MM (210), MM (297)},
    {"letter", N_ ("US Letter"), 612, 792},
};

const DrawlPaper *
drawl_papers (guint *n_papers)
{
  *n_papers = G_N_ELEMENTS (papers);
  return papers;
}

const DrawlPaper *
drawl_paper_find (const char *id)
{
  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    if (g_str_equal (papers[i].id, id))
      return &papers[i];
  return NULL;
}
