/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Reading a command line. Values are kept as the bytes that were typed and read as quantities only
 * when a command asks for them, by the same functions as everywhere; so a decimal comma, a unit or
 * a minus sign is understood or refused in one way. */

#include "cli/call.h"

#include <string.h>

#include "cli/call-parse.h"
#include "cli/error.h"
#include "core/error.h"
#include "core/text.h"

/* ---- Refusals ---- */

char *
drawl_call_option_names (const DrawlCall *call, guint bits)
{
  GString *names = g_string_new (NULL);

  for (guint i = 0; i < call->command->n_options; i++)
    if ((bits & (1u << i)) != 0)
      g_string_append_printf (names, "%s--%s", names->len > 0 ? ", " : "",
                              call->command->options[i].name);
  return g_string_free (names, FALSE);
}

gboolean
drawl_call_refuse (const DrawlCall *call, guint option, const char *message, GError **error)
{
  g_autofree char *name = drawl_call_option_names (call, 1u << option);
  return drawl_cli_refuse (error, DRAWL_CLI_ERROR_QUESTION, name, message);
}

gboolean
drawl_call_refuse_for (const DrawlCall *call, guint option, GError *reason, GError **error)
{
  g_autofree char *name = drawl_call_option_names (call, 1u << option);
  return drawl_cli_refuse_for (error, DRAWL_CLI_ERROR_QUESTION, name, reason);
}

static gboolean
check_files (const DrawlCall *call, GError **error)
{
  const char *file = call->command->file;
  guint n_files = call->files != NULL ? g_strv_length (call->files) : 0;
  guint n_expected = file != NULL ? 1 : 0;

  if (n_files == n_expected)
    return n_files == 0 || call->files[0][0] != '\0' ||
           drawl_cli_refuse (error, DRAWL_CLI_ERROR_QUESTION, file,
                             _ ("is empty; the name of a file is expected"));
  if (n_files == 0)
    return drawl_cli_refuse (error, DRAWL_CLI_ERROR_QUESTION, file,
                             _ ("no file is given; the name of one is expected"));

  g_autofree char *quoted = drawl_core_quote (call->files[n_expected]);
  return drawl_cli_refuse (error, DRAWL_CLI_ERROR_QUESTION, quoted,
                           file != NULL ? _ ("one file was given already; one is expected")
                                        : _ ("only options are expected here"));
}

/* ---- Reading the command line ---- */

static void
call_make (DrawlCall *call, const DrawlCommand *command)
{
  *call = (DrawlCall){
      .command = command,
      .values = g_new0 (char *, command->n_options),
      .switches = g_new0 (gboolean, command->n_options),
  };
}

gboolean
drawl_call_init (DrawlCall *call, const DrawlCommand *command, const char *const *args,
                 GError **error)
{
  call_make (call, command);
  return drawl_call_parse (call, args, error) && (call->help || check_files (call, error));
}

void
drawl_call_clear (DrawlCall *call)
{
  if (call->command == NULL)
    return;
  for (guint i = 0; i < call->command->n_options; i++)
    g_free (call->values[i]);
  g_free (call->values);
  g_free (call->switches);
  g_strfreev (call->files);
  *call = (DrawlCall){0};
}

/* ---- Help ---- */

static GOptionEntry
entry_of (const DrawlOption *option)
{
  return (GOptionEntry){
      .long_name = option->name,
      .short_name = option->letter,
      .arg = option->argument != NULL ? G_OPTION_ARG_FILENAME : G_OPTION_ARG_NONE,
      .description = _ (option->description),
      .arg_description = option->argument,
  };
}

/* GOptionContext lays the options out; it never reads any. */
char *
drawl_call_help (const DrawlCommand *command)
{
  GOptionEntry common[] = {
      {"json", 0, 0, G_OPTION_ARG_NONE, NULL, _ ("Print one JSON object"), NULL},
      {"help", 'h', 0, G_OPTION_ARG_NONE, NULL, _ ("Show this help"), NULL},
      {G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, NULL, NULL, command->file},
      {NULL},
  };
  g_autoptr (GOptionContext) context = g_option_context_new (NULL);
  g_autofree char *name = g_strconcat ("drawl-cli ", command->name, NULL);

  g_option_context_set_help_enabled (context, FALSE);
  g_option_context_set_summary (context, _ (command->summary));
  g_option_context_set_description (context, _ (command->help));
  for (guint i = 0; i < command->n_options; i++) {
    GOptionEntry entries[] = {entry_of (&command->options[i]), {NULL}};
    g_option_context_add_main_entries (context, entries, NULL);
  }
  g_option_context_add_main_entries (context, common, NULL);
  g_set_prgname (name);
  return g_option_context_get_help (context, TRUE, NULL);
}

/* ---- Values ---- */

gboolean
drawl_call_has (const DrawlCall *call, guint option)
{
  return call->values[option] != NULL || call->switches[option];
}

guint
drawl_call_given (const DrawlCall *call, guint bits)
{
  guint given = 0;

  for (guint i = 0; i < call->command->n_options; i++)
    if ((bits & (1u << i)) != 0 && drawl_call_has (call, i))
      given |= 1u << i;
  return given;
}

gboolean
drawl_call_text (const DrawlCall *call, guint option, const char **text, GError **error)
{
  if (call->values[option] == NULL)
    return drawl_call_refuse (call, option, _ ("is missing; a value is expected"), error);
  *text = call->values[option];
  return TRUE;
}

gboolean
drawl_call_rate (const DrawlCall *call, guint option, DrawlRate *rate, GError **error)
{
  GError *reason = NULL;

  if (call->values[option] == NULL)
    return drawl_call_refuse (call, option,
                              _ ("is missing; a rate such as 25 or 24000/1001 is expected"), error);
  return drawl_rate_parse (call->values[option], rate, &reason) ||
         drawl_call_refuse_for (call, option, reason, error);
}

gboolean
drawl_call_quantity (const DrawlCall *call, guint option, const char *const *units,
                     DrawlRational *quantity, GError **error)
{
  GError *reason = NULL;

  if (call->values[option] == NULL)
    return drawl_call_refuse (call, option,
                              _ ("is missing; a number such as 12 or 0.45 is expected"), error);
  if (!drawl_rational_parse_unit (call->values[option], units, quantity, &reason))
    return drawl_call_refuse_for (call, option, reason, error);
  return quantity->num >= 0 ||
         drawl_call_refuse (call, option, _ ("is below 0; a number of 0 or more is expected"),
                            error);
}

gboolean
drawl_call_whole (const DrawlCall *call, guint option, gint64 least, gint64 most, gint64 *whole,
                  GError **error)
{
  g_autofree char *lowest = g_strdup_printf ("%" G_GINT64_FORMAT, least);
  g_autofree char *highest = g_strdup_printf ("%" G_GINT64_FORMAT, most);
  g_autofree char *expected =
      g_strdup_printf (_ ("a whole number from %s to %s is expected"), lowest, highest);
  g_autofree char *message = NULL;
  DrawlRational number;
  GError *reason = NULL;

  if (call->values[option] == NULL) {
    message = g_strdup_printf (_ ("is missing; %s"), expected);
  } else if (!drawl_rational_parse (call->values[option], &number, &reason)) {
    return drawl_call_refuse_for (call, option, reason, error);
  } else if (number.den != 1 || number.num < least || number.num > most) {
    g_autofree char *quoted = drawl_core_quote (call->values[option]);
    message = g_strdup_printf (_ ("“%s” cannot be; %s"), quoted, expected);
  } else {
    *whole = number.num;
    return TRUE;
  }
  return drawl_call_refuse (call, option, message, error);
}

gboolean
drawl_call_only (const DrawlCall *call, guint bits, guint *option, GError **error)
{
  guint given = drawl_call_given (call, bits);

  if (given != 0 && (given & (given - 1)) == 0) {
    *option = (guint)g_bit_nth_lsf (given, -1);
    return TRUE;
  }

  g_autofree char *names = drawl_call_option_names (call, given != 0 ? given : bits);
  g_autofree char *all = drawl_call_option_names (call, bits);
  g_autofree char *message =
      given == 0 ? g_strdup (_ ("none of them is given; exactly one is expected"))
                 : g_strdup_printf (_ ("given together; exactly one of %s is expected"), all);
  return drawl_cli_refuse (error, DRAWL_CLI_ERROR_QUESTION, names, message);
}
