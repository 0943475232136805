/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlExport: the files that a plan can be written as for other programs, one row each. To add
 * one, write its file and list it in format.c; the command line takes it from there. */

#include "plan/plan.h"

typedef struct {
  const char *id;     /* the word of the command line: "otio" */
  const char *ending; /* of file names: ".otio" */
  const char *name;   /* marked for translation */
  /* The whole file. @warnings takes char *, translated sentences of what was decided on the way.
   * Errors: DRAWL_EXPORT_ERROR. */
  char *(*text) (DrawlPlan *plan, GPtrArray *warnings, GError **error);
} DrawlExport;

const DrawlExport *drawl_exports (guint *n_exports);
const DrawlExport *drawl_export_find (const char *id); /* NULL when there is none */
/* The one that a file name's ending tells, upper or lower case; NULL when it tells none. */
const DrawlExport *drawl_export_find_ending (const char *file_name);
