/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Drawl's own window, on the welcome or on the plan that is given, up to its first frame. */

#include "app/application.h"
#include "first-frame.h"

int
main (int argc, char **argv)
{
  g_autoptr (DrawlApplication) application = drawl_application_new ();

  g_signal_connect (application, "window-added", G_CALLBACK (on_window_added), NULL);
  return g_application_run (G_APPLICATION (application), argc, argv);
}
