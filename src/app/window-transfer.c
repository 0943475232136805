/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Tables of shots into the plan of a window, from a file or from elsewhere; the plan to files of
 * other programs and to paper. Invariant: nothing comes in unseen but what is good to the last row,
 * and all that comes in is one step of undo. */

#include "app/export-dialog.h"
#include "app/import-dialog.h"
#include "app/message.h"
#include "app/print-dialog.h"
#include "app/window-private.h"
#include "core/text.h"
#include "plan/figure.h"
#include "plan/json-file.h"

guint
drawl_window_insert_position (DrawlWindow *window)
{
  DrawlPlan *plan = drawl_window_get_plan (window);
  DrawlShotList *list = drawl_window_get_list (window);
  int last = -1;

  if (list != NULL) {
    g_autoptr (GPtrArray) shots = drawl_shot_list_dup_selection (list);
    if (shots->len > 0)
      last = drawl_plan_shot_position (plan, shots->pdata[shots->len - 1]);
  }
  return last >= 0 ? (guint)last + 1 : drawl_plan_n_shots (plan);
}

void
drawl_window_show_brought_in (DrawlWindow *window, guint position, guint n)
{
  DrawlPlan *plan = drawl_window_get_plan (window);
  g_autoptr (GPtrArray) shots = g_ptr_array_new ();
  g_autofree char *count = drawl_figure_count (n);
  g_autofree char *text =
      g_strdup_printf (ngettext_ ("%s shot brought in", "%s shots brought in", n), count);

  drawl_window_show_page (window, "shots");
  for (guint i = position; i < MIN (position + n, drawl_plan_n_shots (plan)); i++)
    g_ptr_array_add (shots, drawl_plan_get_shot (plan, i));
  if (shots->len > 0)
    drawl_shot_list_select_many (drawl_window_get_list (window), shots);
  drawl_shots_page_go_back (window->shots);
  drawl_window_tell_undoable (window, text);
}

/* Takes over @table. */
static void
show_first (DrawlWindow *self, DrawlShotTable *table, const char *source_name, const char *label)
{
  DrawlImportDialog *dialog =
      drawl_import_dialog_new (GTK_WINDOW (self), drawl_window_get_plan (self), table,
                               drawl_window_insert_position (self), source_name, label);

  g_signal_connect_object (dialog, "brought-in", G_CALLBACK (drawl_window_show_brought_in), self,
                           G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
insert_at_once (DrawlWindow *self, const DrawlShotTable *table, const char *label)
{
  guint position = drawl_window_insert_position (self);
  g_autoptr (GError) error = NULL;

  if (drawl_shot_table_insert (drawl_window_get_plan (self), table, position, label, &error))
    drawl_window_show_brought_in (self, position, table->n_good);
  else
    drawl_message_show (GTK_WINDOW (self), _ ("The Shots Could Not Be Brought In"), error);
}

void
drawl_window_take_table (DrawlWindow *window, DrawlShotTable *table, const char *source_name,
                         const char *label, gboolean at_once)
{
  if (!at_once || drawl_import_is_doubtful (table)) {
    show_first (window, table, source_name, label);
    return;
  }
  insert_at_once (window, table, label);
  drawl_shot_table_free (table);
}

/* ---- From a file ---- */

void
drawl_window_import (DrawlWindow *window, GFile *file)
{
  g_autofree char *name = drawl_json_file_name (file);
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = drawl_json_read (file, NULL, &error);
  DrawlShotTable *table = NULL;
  gsize length;

  if (bytes != NULL) {
    const char *data = g_bytes_get_data (bytes, &length);
    table = drawl_shot_table_read (drawl_window_get_plan (window), data != NULL ? data : "", length,
                                   &error);
  }
  if (table != NULL)
    drawl_window_take_table (window, table, name, _ ("Bring In Shots"), FALSE);
  else
    drawl_message_show (GTK_WINDOW (window), _ ("The Table Could Not Be Read"), error);
}

static void
on_import_chosen (DrawlWindow *self, int response)
{
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (self->chooser));
  g_clear_object (&self->chooser);
  if (file != NULL)
    drawl_window_import (self, file);
}

static void
add_filters (GtkFileChooser *chooser)
{
  g_autoptr (GtkFileFilter) tables = gtk_file_filter_new (), all = gtk_file_filter_new ();

  gtk_file_filter_set_name (tables, _ ("Tables of text (CSV)"));
  gtk_file_filter_add_suffix (tables, "csv");
  gtk_file_filter_add_suffix (tables, "tsv");
  gtk_file_filter_add_suffix (tables, "txt");
  gtk_file_filter_set_name (all, _ ("All files"));
  gtk_file_filter_add_pattern (all, "*");
  gtk_file_chooser_add_filter (chooser, tables);
  gtk_file_chooser_add_filter (chooser, all);
}

static void
on_import (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;
  g_autoptr (GtkFileChooserNative) chooser =
      gtk_file_chooser_native_new (_ ("Bring In Shots from a Table"), GTK_WINDOW (self),
                                   GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Read"), NULL);

  drawl_window_take_entry (self);
  g_set_object (&self->chooser, chooser);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  add_filters (GTK_FILE_CHOOSER (chooser));
  g_signal_connect_object (chooser, "response", G_CALLBACK (on_import_chosen), self,
                           G_CONNECT_SWAPPED);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

/* ---- To a file, to a printer ---- */

/* What a format could not hold as it is. */
static void
show_remarks (DrawlWindow *self, const char *name, const GPtrArray *warnings)
{
  g_autoptr (GString) body = g_string_new (NULL);

  for (guint i = 0; i < warnings->len; i++) {
    g_autoptr (GError) remark =
        g_error_new_literal (G_IO_ERROR, G_IO_ERROR_FAILED, warnings->pdata[i]);
    g_autofree char *sentence = drawl_message_sentence (remark);
    g_string_append_printf (body, "%s%s", i > 0 ? "\n\n" : "", sentence);
  }
  g_autofree char *heading = g_strdup_printf (_ ("What “%s” Could Not Hold"), name);
  GtkWidget *dialog = adw_message_dialog_new (GTK_WINDOW (self), heading, body->str);
  adw_message_dialog_add_response (ADW_MESSAGE_DIALOG (dialog), "close", _ ("_Close"));
  adw_message_dialog_set_default_response (ADW_MESSAGE_DIALOG (dialog), "close");
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
on_written (DrawlWindow *self, GFile *file, const GPtrArray *warnings)
{
  g_autofree char *name = drawl_json_file_name (file);
  g_autofree char *text = g_strdup_printf (_ ("%s written"), name);

  drawl_window_tell (self, text);
  if (warnings->len > 0)
    show_remarks (self, name, warnings);
}

static void
on_export (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;

  drawl_window_take_entry (self);
  g_autofree char *name = drawl_window_dup_file_name (self);
  DrawlExportDialog *dialog =
      drawl_export_dialog_new (GTK_WINDOW (self), drawl_window_get_plan (self), name);
  g_signal_connect_object (dialog, "written", G_CALLBACK (on_written), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
on_print (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;

  drawl_window_take_entry (self);
  gtk_window_present (
      GTK_WINDOW (drawl_print_dialog_new (GTK_WINDOW (self), drawl_window_get_plan (self))));
}

/* ---- The actions ---- */

void
drawl_window_refresh_transfer (DrawlWindow *window)
{
  gboolean plan = drawl_window_get_plan (window) != NULL;
  gboolean shot = drawl_window_get_shot (window) != NULL;

  drawl_window_enable (window, "import", plan);
  drawl_window_enable (window, "export", plan);
  drawl_window_enable (window, "print", plan);
  drawl_window_enable (window, "paste", plan);
  drawl_window_enable (window, "copy", shot);
  drawl_window_enable (window, "cut", shot);
}

void
drawl_window_add_transfer_actions (DrawlWindow *window)
{
  static const GActionEntry entries[] = {
      {"import", on_import},
      {"export", on_export},
      {"print", on_print},
  };

  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
}
