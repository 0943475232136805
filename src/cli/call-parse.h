/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The words of a command line, one by one, into a call. */

#include "cli/call.h"

/* Sets the values, switches and files of @call from @args (NULL-terminated). `--name value`,
 * `--name=value`, `-o value` and `-ovalue` are one; `--` ends the options. Refused: what is no
 * option, a value that is missing or not wanted, an option given twice. */
gboolean drawl_call_parse (DrawlCall *call, const char *const *args, GError **error);
