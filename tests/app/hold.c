/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Another program that has copied something: hold TYPE FILE keeps the file on the clipboard as that
 * MIME type until it is ended. Says so in a line once it is there. */

#include <gtk/gtk.h>

int
main (int argc, char **argv)
{
  g_autofree char *data = NULL;
  gsize length;

  if (argc != 3 || !gtk_init_check () || !g_file_get_contents (argv[2], &data, &length, NULL))
    return 1;
  g_autoptr (GBytes) bytes = g_bytes_new (data, length);
  g_autoptr (GdkContentProvider) provider = gdk_content_provider_new_for_bytes (argv[1], bytes);
  GdkDisplay *display = gdk_display_get_default ();
  gdk_clipboard_set_content (gdk_display_get_clipboard (display), provider);
  gdk_display_sync (display);
  g_print ("held\n");
  while (TRUE)
    g_main_context_iteration (NULL, TRUE);
}
