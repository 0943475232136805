/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Runs the program and keeps what it said. Nothing of the caller's environment that could change
 * its words is passed on. */

#include "run.h"

#include <string.h>

static char *
replace (char *taken, const char *mark, const char *text)
{
  g_auto (GStrv) parts = g_strsplit (taken, mark, -1);

  g_free (taken);
  return g_strjoinv (text, parts);
}

static GStrv
clean_environment (void)
{
  GStrv environment = g_get_environ ();

  environment = g_environ_unsetenv (environment, "LANGUAGE");
  environment = g_environ_unsetenv (environment, "DRAWL_LOCALE_DIR");
  environment = g_environ_setenv (environment, "LC_ALL", "C.UTF-8", TRUE);
  return environment;
}

static void
spawn (Run *run, char **args)
{
  g_auto (GStrv) environment = clean_environment ();
  g_autoptr (GError) error = NULL;
  int status = 0;

  g_spawn_sync (NULL, args, environment, G_SPAWN_DEFAULT, NULL, NULL, &run->out, &run->err, &status,
                &error);
  g_assert_no_error (error);
  g_spawn_check_wait_status (status, &error);
  g_assert_true (error == NULL || error->domain == G_SPAWN_EXIT_ERROR);
  run->rc = error != NULL ? error->code : 0;
}

void
run_init (Run *run, const char *command, const char *scratch)
{
  g_auto (GStrv) args = NULL;
  g_autoptr (GError) error = NULL;
  char *line = g_strdup_printf ("'%s' %s", g_getenv ("DRAWL_CLI"), command);

  line = replace (line, "@D", g_getenv ("DRAWL_TEST_DATA"));
  line = replace (line, "@T", scratch != NULL ? scratch : "/nonexistent");
  g_shell_parse_argv (line, NULL, &args, &error);
  g_assert_no_error (error);
  g_free (line);
  spawn (run, args);
}

void
run_shell_init (Run *run, const char *script)
{
  const char *args[] = {"/bin/sh", "-c", script, NULL};
  spawn (run, (char **)args);
}

void
run_clear (Run *run)
{
  g_clear_pointer (&run->out, g_free);
  g_clear_pointer (&run->err, g_free);
}

JsonObject *
run_json (const Run *run, int rc)
{
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GError) error = NULL;

  g_assert_cmpstr (run->err, ==, "");
  g_assert_cmpint (run->rc, ==, rc);
  json_parser_load_from_data (parser, run->out, -1, &error);
  g_assert_no_error (error);
  g_assert_true (JSON_NODE_HOLDS_OBJECT (json_parser_get_root (parser)));
  return json_object_ref (json_node_get_object (json_parser_get_root (parser)));
}

void
run_assert_refused (const Run *run, int rc, const char *part)
{
  g_test_message ("%s", run->err);
  g_assert_cmpint (run->rc, ==, rc);
  g_assert_cmpstr (run->out, ==, "");
  g_assert_true (g_str_has_prefix (run->err, "drawl-cli"));
  g_assert_true (g_str_has_suffix (run->err, "\n"));
  g_assert_true (strchr (run->err, '\n') == run->err + strlen (run->err) - 1);
  g_assert_true (g_utf8_validate (run->err, -1, NULL));
  g_assert_nonnull (strstr (run->err, part));
}
