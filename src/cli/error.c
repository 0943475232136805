/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Refusals of the command line: the place (an option, a file) before the reason that a lower layer
 * gives, and one of two kinds, which is the exit code. */

#include "cli/error.h"

GQuark
drawl_cli_error_quark (void)
{
  return g_quark_from_static_string ("drawl-cli-error-quark");
}

gboolean
drawl_cli_refuse (GError **error, DrawlCliError code, const char *place, const char *message)
{
  g_set_error (error, DRAWL_CLI_ERROR, (int)code, "%s: %s", place, message);
  return FALSE;
}

gboolean
drawl_cli_refuse_for (GError **error, DrawlCliError code, const char *place, GError *reason)
{
  drawl_cli_refuse (error, code, place, reason->message);
  g_error_free (reason);
  return FALSE;
}

gboolean
drawl_cli_refuse_file (GError **error, GError *reason)
{
  g_set_error_literal (error, DRAWL_CLI_ERROR, DRAWL_CLI_ERROR_FILE, reason->message);
  g_error_free (reason);
  return FALSE;
}
