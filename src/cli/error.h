/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* What a command may be refused for. The values are the exit codes of the program. */

#include <glib.h>

#define DRAWL_CLI_ERROR (drawl_cli_error_quark ())

typedef enum {
  DRAWL_CLI_ERROR_QUESTION = 2, /* the question was wrong */
  DRAWL_CLI_ERROR_FILE = 3,     /* a file could not be read or written */
} DrawlCliError;

GQuark drawl_cli_error_quark (void);

/* Refuses: "@place: @message". Always returns FALSE. */
gboolean drawl_cli_refuse (GError **error, DrawlCliError code, const char *place,
                           const char *message);

/* The same with the message of @reason, which is freed. */
gboolean drawl_cli_refuse_for (GError **error, DrawlCliError code, const char *place,
                               GError *reason);

/* Refuses a file with @reason, whose message names the file already; @reason is freed. */
gboolean drawl_cli_refuse_file (GError **error, GError *reason);
