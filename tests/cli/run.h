/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* One run of the built drawl-cli ($DRAWL_CLI), in English and UTF-8 whatever the tester's locale.
 */

#include <json-glib/json-glib.h>

typedef struct {
  int rc;
  char *out;
  char *err;
} Run;

/* @command as a shell would split it, without the program's name: "time --play 24". @D stands for
 * the folder of test files, @T for @scratch (may be NULL). */
void run_init (Run *run, const char *command, const char *scratch);
/* The same for a line of shell, to which the program is $DRAWL_CLI. */
void run_shell_init (Run *run, const char *script);
void run_clear (Run *run);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Run, run_clear)

/* The output as one JSON object, with which the exit code and the silence of stderr are asserted.
 */
JsonObject *run_json (const Run *run, int rc);

/* Asserts a refusal: the exit code, nothing on stdout, and on stderr one line that says @part. */
void run_assert_refused (const Run *run, int rc, const char *part);
