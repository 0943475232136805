/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The least window that the toolkit gives: header bar and a label. What Drawl's is measured by. */

#include "first-frame.h"

static void
on_activate (GtkApplication *application)
{
  GtkWidget *window = adw_application_window_new (application);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_box_append (GTK_BOX (box), adw_header_bar_new ());
  gtk_box_append (GTK_BOX (box), gtk_label_new ("Bare"));
  adw_application_window_set_content (ADW_APPLICATION_WINDOW (window), box);
  gtk_window_set_default_size (GTK_WINDOW (window), 1200, 800);
  gtk_window_present (GTK_WINDOW (window));
}

int
main (int argc, char **argv)
{
  g_autoptr (AdwApplication) application =
      adw_application_new ("org.drawl.Bare", G_APPLICATION_DEFAULT_FLAGS);

  g_signal_connect (application, "window-added", G_CALLBACK (on_window_added), NULL);
  g_signal_connect (application, "activate", G_CALLBACK (on_activate), NULL);
  return g_application_run (G_APPLICATION (application), argc, argv);
}
