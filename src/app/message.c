/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Error messages are sentences without a beginning and an end, so that each caller can put a place
 * before them; here they become whole ones. */

#include "app/message.h"

#include <adwaita.h>

#include "core/text.h"

char *
drawl_message_sentence (const GError *error)
{
  const char *message = error->message;
  char head[8] = {0};

  if (!g_utf8_validate (message, -1, NULL) || *message == '\0')
    return g_strdup (_ ("Something went wrong."));
  g_unichar_to_utf8 (g_unichar_toupper (g_utf8_get_char (message)), head);
  gboolean ended = g_str_has_suffix (message, ".") || g_str_has_suffix (message, "?") ||
                   g_str_has_suffix (message, "…");
  return g_strconcat (head, g_utf8_next_char (message), ended ? "" : ".", NULL);
}

void
drawl_message_show (GtkWindow *parent, const char *heading, const GError *error)
{
  g_autofree char *body = drawl_message_sentence (error);
  GtkWidget *dialog = adw_message_dialog_new (parent, heading, body);

  adw_message_dialog_add_response (ADW_MESSAGE_DIALOG (dialog), "close", _ ("_Close"));
  adw_message_dialog_set_default_response (ADW_MESSAGE_DIALOG (dialog), "close");
  gtk_window_present (GTK_WINDOW (dialog));
}
