/* SPDX-License-Identifier: GPL-3.0-or-later */

/* drawl, the window. */

#include <libintl.h>
#include <locale.h>
#include <signal.h>

#include "app/application.h"
#include "core/text.h"

int
main (int argc, char **argv)
{
  const char *locale_dir = g_getenv ("DRAWL_LOCALE_DIR");

  signal (SIGXFSZ, SIG_IGN); /* a file too large is an error like another, and said */
  setlocale (LC_ALL, "");
  bindtextdomain (DRAWL_TEXT_DOMAIN, locale_dir != NULL ? locale_dir : DRAWL_LOCALEDIR);
  bind_textdomain_codeset (DRAWL_TEXT_DOMAIN, "UTF-8");
  g_autoptr (DrawlApplication) application = drawl_application_new ();
  return g_application_run (G_APPLICATION (application), argc, argv);
}
