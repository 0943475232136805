/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlCommand: one command of the program: its name, its words of help, its options, and the
 * function that answers it. Each is the one public symbol of its file; commands.c lists them. */

#include "cli/output.h"

typedef struct {
  const char *name;        /* without dashes: "capture" */
  char letter;             /* "o" of -o; 0: none */
  const char *argument;    /* what its value stands for: "R"; NULL: a switch */
  const char *description; /* marked for translation; says the unit */
} DrawlOption;

typedef struct _DrawlCall DrawlCall;

typedef struct {
  const char *name;
  const char *summary; /* one line, marked for translation */
  const char *help;    /* what it answers, with an example; marked for translation */
  const char *file;    /* what its one argument is called: "PLAN"; NULL: it takes none */
  const DrawlOption *options;
  guint n_options;
  /* Answers @call into @output. On FALSE nothing of @output is printed. */
  gboolean (*run) (const DrawlCall *call, DrawlOutput *output, GError **error);
} DrawlCommand;

extern const DrawlCommand drawl_command_time;
extern const DrawlCommand drawl_command_code;
extern const DrawlCommand drawl_command_film;
extern const DrawlCommand drawl_command_store;
extern const DrawlCommand drawl_command_check;
extern const DrawlCommand drawl_command_draw;
extern const DrawlCommand drawl_command_sheet;
extern const DrawlCommand drawl_command_export;
extern const DrawlCommand drawl_command_import;
