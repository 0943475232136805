/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlPaper: the sizes of paper that sheets are made for, upright. The first is taken unless
 * another is asked for. */

#include <glib.h>

typedef struct {
  const char *id;       /* "a4": the word of the command line */
  const char *name;     /* marked for translation */
  double width, height; /* points */
} DrawlPaper;

const DrawlPaper *drawl_papers (guint *n_papers);
const DrawlPaper *drawl_paper_find (const char *id); /* NULL when there is none */
