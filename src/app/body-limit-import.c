/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A table of limits on its way into a draft. Nothing is taken before it was said what comes in and
 * what does not. */

#include "app/body-limit-rows.h"
#include "app/message.h"
#include "core/text.h"
#include "plan/figure.h"
#include "plan/limit-table.h"

#define REASONS_MAX 8

typedef struct {
  DrawlBodyDraft *draft;
  JsonArray *limits;
} Import;

static void
import_free (gpointer data, GClosure *closure)
{
  Import *import = data;

  g_object_unref (import->draft);
  json_array_unref (import->limits);
  g_free (import);
}

static void
on_response (GtkWidget *dialog, const char *response, Import *import)
{
  if (g_str_equal (response, "replace"))
    drawl_body_draft_clear_rows (import->draft, DRAWL_DRAFT_LIMITS);
  if (!g_str_equal (response, "cancel"))
    drawl_body_draft_add_rows (import->draft, DRAWL_DRAFT_LIMITS, import->limits);
}

static void
append_reasons (GString *text, const DrawlLimitTable *table)
{
  guint told = 0, bad = table->rows->len - table->n_good;

  for (guint i = 0; i < table->rows->len && told < REASONS_MAX; i++) {
    const DrawlLimitTableRow *row = table->rows->pdata[i];
    if (row->reason == NULL)
      continue;
    g_string_append_c (text, '\n');
    if (row->heading != NULL)
      /* Translators: number of a line, name of a column, what is wrong. */
      g_string_append_printf (text, _ ("Line %u, %s: %s"), row->line, row->heading, row->reason);
    else
      g_string_append_printf (text, _ ("Line %u: %s"), row->line, row->reason);
    told++;
  }
  if (told < bad) {
    g_autofree char *rest = drawl_figure_count (bad - told);
    g_string_append_c (text, '\n');
    g_string_append_printf (text, ngettext_ ("And %s more", "And %s more", bad - told), rest);
  }
}

static char *
describe (const DrawlLimitTable *table)
{
  g_autofree char *good = drawl_figure_count (table->n_good);
  g_autofree char *bad = drawl_figure_count (table->rows->len - table->n_good);
  GString *text = g_string_new (NULL);

  g_string_append_printf (
      text, ngettext_ ("%s row can be taken.", "%s rows can be taken.", table->n_good), good);
  if (table->latin_1)
    g_string_append_printf (text, " %s", _ ("The text is not UTF-8, and was read as Latin-1."));
  if (!table->has_headings)
    g_string_append_printf (text, " %s",
                            _ ("There are no headings: the columns are read as size, codec, lowest "
                               "rate, highest rate, licences, card class."));
  if (table->n_good < table->rows->len) {
    guint n = table->rows->len - table->n_good;
    g_string_append_c (text, '\n');
    g_string_append_printf (text, ngettext_ ("%s row cannot:", "%s rows cannot:", n), bad);
    append_reasons (text, table);
  }
  return g_string_free (text, FALSE);
}

static void
ask (DrawlBodyDraft *draft, GtkWindow *parent, const DrawlLimitTable *table)
{
  g_autofree char *body = describe (table);
  GtkWidget *dialog = adw_message_dialog_new (parent, _ ("Rows for the Limits"), body);
  AdwMessageDialog *message = ADW_MESSAGE_DIALOG (dialog);
  Import *import = g_new0 (Import, 1);

  *import = (Import){g_object_ref (draft), drawl_limit_table_to_json (table)};
  adw_message_dialog_add_response (message, "cancel", _ ("_Cancel"));
  if (table->n_good > 0) {
    adw_message_dialog_add_response (message, "replace", _ ("_Replace"));
    adw_message_dialog_add_response (message, "add", _ ("_Add"));
    adw_message_dialog_set_response_appearance (message, "replace", ADW_RESPONSE_DESTRUCTIVE);
    adw_message_dialog_set_response_appearance (message, "add", ADW_RESPONSE_SUGGESTED);
    adw_message_dialog_set_default_response (message, "add");
  }
  adw_message_dialog_set_close_response (message, "cancel");
  g_signal_connect_data (dialog, "response", G_CALLBACK (on_response), import, import_free, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

void
drawl_body_limit_import (DrawlBodyDraft *draft, GtkWindow *parent, const char *data, gsize length)
{
  DrawlBody *body = drawl_body_draft_get_body_but_limits (draft);
  g_autoptr (GError) error = NULL;

  if (body == NULL) {
    g_set_error_literal (&error, G_IO_ERROR, G_IO_ERROR_FAILED,
                         _ ("limits name sizes, codecs and licences: mend what is marked there "
                            "first"));
    drawl_message_show (parent, _ ("The Rows Cannot Be Read Yet"), error);
    return;
  }
  g_autoptr (DrawlLimitTable) table = drawl_limit_table_read (body, data, length, &error);
  if (table == NULL)
    drawl_message_show (parent, _ ("The Rows Could Not Be Read"), error);
  else
    ask (draft, parent, table);
}
