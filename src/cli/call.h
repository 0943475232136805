/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlCall: a command with the options and the file that were given to it, and their values as
 * quantities. Options are named by their index in the command's table. Every refusal names the
 * option and says what was expected (DRAWL_CLI_ERROR_QUESTION). */

#include "cli/command.h"
#include "core/rate.h"

struct _DrawlCall {
  const DrawlCommand *command;
  char **values;      /* by option; NULL: not given */
  gboolean *switches; /* by option */
  char **files;       /* what stood there beside options, or NULL */
  gboolean json;
  gboolean help;
};

/* Reads @args (NULL-terminated, without the names of program and command) into @call, which is to
 * be cleared in either case. */
gboolean drawl_call_init (DrawlCall *call, const DrawlCommand *command, const char *const *args,
                          GError **error);
void drawl_call_clear (DrawlCall *call);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (DrawlCall, drawl_call_clear)

/* Usage, options, example. New string. */
char *drawl_call_help (const DrawlCommand *command);

gboolean drawl_call_has (const DrawlCall *call, guint option);

/* "--name" of an option. */
const char *drawl_call_option_name (const DrawlCall *call, guint option);
/* "--feet, --metres, --frames" of the options whose bit is set. New string. */
char *drawl_call_option_names (const DrawlCall *call, guint bits);
/* Bits of those options of @bits that were given. */
guint drawl_call_given (const DrawlCall *call, guint bits);

/* Refuses the value of @option. Always returns FALSE; frees @reason. */
gboolean drawl_call_refuse (const DrawlCall *call, guint option, const char *message,
                            GError **error);
gboolean drawl_call_refuse_for (const DrawlCall *call, guint option, GError *reason,
                                GError **error);

/* The value of an option, which is refused when it is missing, cannot be read or is out of range.
 * A quantity is 0 or more; @units may follow it. */
gboolean drawl_call_text (const DrawlCall *call, guint option, const char **text, GError **error);
gboolean drawl_call_rate (const DrawlCall *call, guint option, DrawlRate *rate, GError **error);
gboolean drawl_call_quantity (const DrawlCall *call, guint option, const char *const *units,
                              DrawlRational *quantity, GError **error);
gboolean drawl_call_whole (const DrawlCall *call, guint option, gint64 least, gint64 most,
                           gint64 *whole, GError **error);

/* The one option of @bits that was given; refused when none or several were. */
gboolean drawl_call_only (const DrawlCall *call, guint bits, guint *option, GError **error);
