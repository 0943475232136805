/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Files as a command line names them: messages name them as they were given, and what is to be
 * written is never what is read. */

#include <gio/gio.h>

#include "cli/call.h"

/* A file of the name that was given. New. */
GFile *drawl_file_argument (const char *given);

/* The name of the file that is to be written, the value of @option. Refused when it is missing,
 * empty, a folder's, or when it is the file that the command reads, by whatever name. */
gboolean drawl_file_argument_output (const DrawlCall *call, guint option, const char **path,
                                     GError **error);
/* The name of a file that is to be read, which may not be empty. */
gboolean drawl_file_argument_input (const DrawlCall *call, guint option, const char **path,
                                    GError **error);
