/* SPDX-License-Identifier: GPL-3.0-or-later */

/* drawl-cli: finds the command, lets it answer, and prints the answer whole or not at all. Exit
 * codes: 0 done, 1 done and some shot fails, 2 the question was wrong, 3 a file could not be read
 * or written. On 2 and 3 nothing is printed but one line on the error output. Numbers are never
 * written in a locale's style, and JSON says the same in every language. */

#include <errno.h>
#include <libintl.h>
#include <locale.h>
#include <signal.h>
#include <stdio.h>
#include <string.h>

#include "cli/call.h"
#include "cli/commands.h"
#include "cli/error.h"
#include "core/error.h"
#include "core/text.h"

#define EXIT_ALL_WELL 0
#define EXIT_SOME_SHOT_FAILS 1

static void
set_language (void)
{
  const char *folder = g_getenv ("DRAWL_LOCALE_DIR");

  setlocale (LC_CTYPE, "");
  setlocale (LC_MESSAGES, "");
  bindtextdomain (DRAWL_TEXT_DOMAIN, folder != NULL ? folder : DRAWL_LOCALEDIR);
  bind_textdomain_codeset (DRAWL_TEXT_DOMAIN, "UTF-8");
}

/* Prints @text, all of it. */
static gboolean
print (const char *text, gsize length, GError **error)
{
  if (fwrite (text, 1, length, stdout) == length && fflush (stdout) == 0)
    return TRUE;

  g_autofree char *message =
      g_strdup_printf (_ ("%s; an output that can be written to is expected"), g_strerror (errno));
  return drawl_cli_refuse (error, DRAWL_CLI_ERROR_FILE, _ ("standard output"), message);
}

static gboolean
print_text (char *text, GError **error)
{
  g_autofree char *owned = text;
  return print (owned, strlen (owned), error);
}

static gboolean
answer (const DrawlCall *call, int *exit_code, GError **error)
{
  g_auto (DrawlOutput) output = {0};

  if (call->json)
    setlocale (LC_MESSAGES, "C");
  drawl_output_init (&output, call->json);
  if (!call->command->run (call, &output, error))
    return FALSE;

  *exit_code = output.some_shot_fails ? EXIT_SOME_SHOT_FAILS : EXIT_ALL_WELL;
  const GString *text = drawl_output_end (&output);
  return print (text->str, text->len, error);
}

static gboolean
run_command (const DrawlCommand *command, const char *const *args, int *exit_code, GError **error)
{
  g_auto (DrawlCall) call = {0};

  if (!drawl_call_init (&call, command, args, error))
    return FALSE;
  if (call.help)
    return print_text (drawl_call_help (command), error);
  return answer (&call, exit_code, error);
}

/* One line, whatever the message holds. */
static int
refuse (const DrawlCommand *command, GError *error)
{
  gboolean is_ours = error->domain == DRAWL_CLI_ERROR;
  int exit_code = is_ours ? error->code : DRAWL_CLI_ERROR_QUESTION;

  for (char *at = error->message; *at != '\0'; at++)
    if (g_ascii_iscntrl (*at))
      *at = ' ';
  fprintf (stderr, "drawl-cli%s%s: %s\n", command != NULL ? " " : "",
           command != NULL ? command->name : "", error->message);
  g_error_free (error);
  return exit_code;
}

int
main (int argc, char **argv)
{
  int at = argc > 1 && g_str_equal (argv[1], "--") ? 2 : 1; /* no option of our own takes a value */
  const char *first = at < argc ? argv[at] : NULL;
  const DrawlCommand *command = first != NULL ? drawl_command_find (first) : NULL;
  int exit_code = EXIT_ALL_WELL;
  GError *error = NULL;
  gboolean done;

  signal (SIGXFSZ, SIG_IGN); /* a file too large is an error like another, and said */
  g_set_prgname ("drawl-cli");
  set_language ();
  if (command != NULL)
    done = run_command (command, (const char *const *)argv + at + 1, &exit_code, &error);
  else if (g_strcmp0 (first, "--help") == 0 || g_strcmp0 (first, "-h") == 0)
    done = print_text (drawl_commands_help (), &error);
  else if (g_strcmp0 (first, "--version") == 0)
    done = print_text (g_strdup ("drawl-cli " DRAWL_VERSION "\n"), &error);
  else
    done = drawl_commands_refuse (first, &error);
  return done ? exit_code : refuse (command, error);
}
