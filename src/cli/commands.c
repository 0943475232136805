/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The table of commands. To add one, write its file, declare it in command.h and list it here. */

#include "cli/commands.h"

#include "cli/error.h"
#include "cli/nearest.h"
#include "core/error.h"
#include "core/text.h"

static const DrawlCommand *const commands[] = {
    &drawl_command_time,  &drawl_command_code,   &drawl_command_film,
    &drawl_command_store, &drawl_command_check,  &drawl_command_draw,
    &drawl_command_sheet, &drawl_command_export, &drawl_command_import,
};

const DrawlCommand *
drawl_command_find (const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    if (g_str_equal (commands[i]->name, name))
      return commands[i];
  return NULL;
}

char *
drawl_commands_help (void)
{
  GString *help = g_string_new (NULL);

  g_string_append_printf (
      help, "%s\n  drawl-cli %s\n\n%s\n\n%s\n", _ ("Usage:"), _ ("COMMAND [OPTION…] [PLAN]"),
      _ ("Plans slow motion: rates, times, cards and licences."), _ ("Commands:"));
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    g_string_append_printf (help, "  %-8s%s\n", commands[i]->name, _ (commands[i]->summary));
  g_string_append (
      help,
      _ ("\n"
         "drawl-cli COMMAND --help explains a command. Each prints aligned text, or with\n"
         "--json one JSON object.\n"
         "\n"
         "Exit status: 0 done, all well; 1 done, and some shot is not as hired or some row was\n"
         "rejected; 2 the question was wrong; 3 a file could not be read or written.\n"
         "\n"
         "Options:\n"
         "  -h, --help    Show this help\n"
         "  --version     Show the version\n"));
  return g_string_free (help, FALSE);
}

/* "time, code, film" */
static char *
list_names (void)
{
  GString *names = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    g_string_append_printf (names, "%s%s", i > 0 ? ", " : "", commands[i]->name);
  return g_string_free (names, FALSE);
}

gboolean
drawl_commands_refuse (const char *name, GError **error)
{
  g_autofree char *names = list_names ();

  if (name == NULL) {
    g_set_error (error, DRAWL_CLI_ERROR, DRAWL_CLI_ERROR_QUESTION,
                 _ ("no command is given; one of %s is expected"), names);
    return FALSE;
  }

  g_autofree char *quoted = drawl_core_quote (name);
  DrawlNearest nearest;
  drawl_nearest_init (&nearest, name);
  for (gsize i = 0; i < G_N_ELEMENTS (commands); i++)
    drawl_nearest_offer (&nearest, commands[i]->name);

  if (nearest.name != NULL)
    g_set_error (error, DRAWL_CLI_ERROR, DRAWL_CLI_ERROR_QUESTION,
                 _ ("%s: no such command, the nearest is %s; one of %s is expected"), quoted,
                 nearest.name, names);
  else
    g_set_error (error, DRAWL_CLI_ERROR, DRAWL_CLI_ERROR_QUESTION,
                 _ ("%s: no such command; one of %s is expected"), quoted, names);
  return FALSE;
}
