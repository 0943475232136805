/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Files of a window: new, open, save, close. Nothing that a person made is given up unasked: before
 * another plan takes the window, before it closes, and before a file is overwritten that someone
 * else has changed. Invariant: `then` is set only while a question or a file chooser is open that
 * leads to it. */

#include "app/message.h"
#include "app/window-private.h"
#include "core/text.h"
#include "plan/data-dir.h"
#include "plan/plan-file.h"

static void save (DrawlWindow *self);
static void choose_where (DrawlWindow *self);

static void
clear_then (DrawlWindow *self)
{
  self->then = NULL;
  g_clear_object (&self->then_document);
}

static void
do_then (DrawlWindow *self)
{
  void (*then) (DrawlWindow *) = self->then;

  self->then = NULL;
  if (then != NULL)
    then (self);
}

static void
remember (DrawlWindow *self, GFile *file)
{
  g_autofree char *uri = g_file_get_uri (file);
  GtkRecentData data = {
      .mime_type = (char *)DRAWL_PLAN_MIME_TYPE,
      .app_name = (char *)"drawl",
      .app_exec = (char *)"drawl %u",
  };

  gtk_recent_manager_add_full (gtk_recent_manager_get_default (), uri, &data);
}

/* ---- Saving ---- */

static gboolean
finish_save (DrawlWindow *self, gboolean saved, GError *error)
{
  if (!saved) {
    clear_then (self);
    drawl_message_show (GTK_WINDOW (self), _ ("The Plan Could Not Be Saved"), error);
    return FALSE;
  }
  remember (self, drawl_document_get_file (self->document));
  do_then (self);
  return TRUE;
}

gboolean
drawl_window_save_to (DrawlWindow *window, GFile *file)
{
  g_autoptr (GError) error = NULL;
  gboolean saved = drawl_document_save_as (window->document, file, &error);

  return finish_save (window, saved, error);
}

static void
on_save_chosen (DrawlWindow *self, int response)
{
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (self->chooser));
  g_clear_object (&self->chooser);
  if (file != NULL)
    drawl_window_save_to (self, file);
  else
    clear_then (self);
}

static void
add_filter (GtkFileChooser *chooser)
{
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, _ ("Drawl plans"));
  gtk_file_filter_add_pattern (filter, "*" DRAWL_PLAN_SUFFIX);
  gtk_file_filter_add_mime_type (filter, DRAWL_PLAN_MIME_TYPE);
  gtk_file_chooser_add_filter (chooser, filter);
}

static void
show_chooser (DrawlWindow *self, GtkFileChooserNative *chooser, GCallback on_response)
{
  g_set_object (&self->chooser, chooser);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  add_filter (GTK_FILE_CHOOSER (chooser));
  g_signal_connect_object (chooser, "response", on_response, self, G_CONNECT_SWAPPED);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

/* A title may hold what no file name can. */
char *
drawl_window_dup_file_name (DrawlWindow *window)
{
  return g_strdelimit (drawl_document_dup_title (window->document), "/\\:*?\"<>|\n\t", '-');
}

static char *
suggested_name (DrawlWindow *self)
{
  g_autofree char *name = drawl_window_dup_file_name (self);

  return g_strconcat (name, DRAWL_PLAN_SUFFIX, NULL);
}

static void
choose_where (DrawlWindow *self)
{
  g_autoptr (GtkFileChooserNative) chooser = gtk_file_chooser_native_new (
      _ ("Save the Plan"), GTK_WINDOW (self), GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), NULL);
  GFile *file = drawl_document_get_file (self->document);
  g_autofree char *name = suggested_name (self);

  if (file != NULL)
    gtk_file_chooser_set_file (GTK_FILE_CHOOSER (chooser), file, NULL);
  else
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  show_chooser (self, chooser, G_CALLBACK (on_save_chosen));
}

static void
on_conflict_answer (DrawlWindow *self, const char *response)
{
  if (g_str_equal (response, "overwrite")) {
    g_autoptr (GError) error = NULL;
    gboolean saved = drawl_document_save (self->document, TRUE, &error);
    finish_save (self, saved, error);
  } else if (g_str_equal (response, "save-as"))
    choose_where (self);
  else
    clear_then (self);
}

static void
ask_about_conflict (DrawlWindow *self, GError *error)
{
  g_autofree char *body = drawl_message_sentence (error);
  AdwMessageDialog *dialog = ADW_MESSAGE_DIALOG (
      adw_message_dialog_new (GTK_WINDOW (self), _ ("Overwrite What Someone Else Wrote?"), body));

  adw_message_dialog_add_responses (dialog, "cancel", _ ("_Cancel"), "save-as", _ ("Save _As…"),
                                    "overwrite", _ ("_Save Anyway"), NULL);
  adw_message_dialog_set_response_appearance (dialog, "overwrite", ADW_RESPONSE_DESTRUCTIVE);
  adw_message_dialog_set_default_response (dialog, "save-as");
  adw_message_dialog_set_close_response (dialog, "cancel");
  g_signal_connect_object (dialog, "response", G_CALLBACK (on_conflict_answer), self,
                           G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

/* Goes on with `then`, if any, once the plan is on disk. */
static void
save (DrawlWindow *self)
{
  g_autoptr (GError) error = NULL;

  drawl_window_take_entry (self);
  if (drawl_document_get_file (self->document) == NULL) {
    choose_where (self);
    return;
  }
  gboolean saved = drawl_document_save (self->document, FALSE, &error);
  if (g_error_matches (error, DRAWL_DOCUMENT_ERROR, DRAWL_DOCUMENT_ERROR_CHANGED))
    ask_about_conflict (self, error);
  else
    finish_save (self, saved, error);
}

/* ---- Asking first ---- */

static void
on_unsaved_answer (DrawlWindow *self, const char *response)
{
  if (g_str_equal (response, "save"))
    save (self);
  else if (g_str_equal (response, "discard"))
    do_then (self);
  else
    clear_then (self);
}

static void
ask_about_unsaved (DrawlWindow *self)
{
  g_autofree char *title = drawl_document_dup_title (self->document);
  AdwMessageDialog *dialog = ADW_MESSAGE_DIALOG (
      adw_message_dialog_new (GTK_WINDOW (self), _ ("Save the Plan First?"), NULL));

  adw_message_dialog_format_body (
      dialog, _ ("“%s” has changes that are not saved. They are lost if they are discarded."),
      title);
  adw_message_dialog_add_responses (dialog, "keep", _ ("_Keep Working"), "discard", _ ("_Discard"),
                                    "save", _ ("_Save"), NULL);
  adw_message_dialog_set_response_appearance (dialog, "discard", ADW_RESPONSE_DESTRUCTIVE);
  adw_message_dialog_set_response_appearance (dialog, "save", ADW_RESPONSE_SUGGESTED);
  adw_message_dialog_set_default_response (dialog, "save");
  adw_message_dialog_set_close_response (dialog, "keep");
  g_signal_connect_object (dialog, "response", G_CALLBACK (on_unsaved_answer), self,
                           G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

void
drawl_window_when_settled (DrawlWindow *window, void (*then) (DrawlWindow *window))
{
  drawl_window_take_entry (window);
  window->then = then;
  if (window->document != NULL && drawl_document_get_modified (window->document))
    ask_about_unsaved (window);
  else
    do_then (window);
}

/* ---- New and open ---- */

static void
take_waiting_document (DrawlWindow *self)
{
  g_autoptr (DrawlDocument) document = g_steal_pointer (&self->then_document);
  GFile *file = drawl_document_get_file (document);

  drawl_window_set_document (self, document);
  if (file != NULL)
    remember (self, file);
}

/* Takes over @document. */
static void
put_in_place (DrawlWindow *self, DrawlDocument *document)
{
  g_clear_object (&self->then_document);
  self->then_document = document;
  drawl_window_when_settled (self, take_waiting_document);
}

static gboolean
has_open (GtkWindow *window, GFile *file)
{
  DrawlDocument *document = DRAWL_IS_WINDOW (window) ? DRAWL_WINDOW (window)->document : NULL;
  GFile *own = document != NULL ? drawl_document_get_file (document) : NULL;

  return own != NULL && g_file_equal (own, file);
}

DrawlWindow *
drawl_window_find (GtkApplication *application, GFile *file)
{
  for (GList *l = gtk_application_get_windows (application); l != NULL; l = l->next)
    if (has_open (l->data, file))
      return l->data;
  return NULL;
}

void
drawl_window_open (DrawlWindow *window, GFile *file)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (window));
  DrawlWindow *other = application != NULL ? drawl_window_find (application, file) : NULL;
  g_autoptr (GError) error = NULL;

  if (other != NULL) {
    gtk_window_present (GTK_WINDOW (other));
    return;
  }
  DrawlDocument *document = drawl_document_open (file, &error);
  if (document != NULL)
    put_in_place (window, document);
  else
    drawl_message_show (GTK_WINDOW (window), _ ("The Plan Could Not Be Opened"), error);
}

static void
on_open_chosen (DrawlWindow *self, int response)
{
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (self->chooser));
  g_clear_object (&self->chooser);
  if (file != NULL)
    drawl_window_open (self, file);
}

static void
on_new (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (self));
  GSettings *settings = drawl_application_get_settings (DRAWL_APPLICATION (application));

  put_in_place (self, drawl_document_new (g_settings_get_int (settings, "mains-hz")));
}

static void
on_open (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  g_autoptr (GtkFileChooserNative) chooser = gtk_file_chooser_native_new (
      _ ("Open a Plan"), data, GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Open"), NULL);

  show_chooser (data, chooser, G_CALLBACK (on_open_chosen));
}

static void
on_open_recent (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  g_autoptr (GFile) file = g_file_new_for_uri (g_variant_get_string (parameter, NULL));

  drawl_window_open (data, file);
}

/* The demo ships where nobody can write: it opens as a plan that is not saved yet. */
static void
on_open_demo (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  g_autofree char *path = drawl_data_file ("demo", "glass.drawl", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  DrawlDocument *document = drawl_document_open_copy (file, &error);

  if (document != NULL)
    put_in_place (data, document);
  else
    drawl_message_show (data, _ ("The Demo Could Not Be Opened"), error);
}

static void
on_save (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  save (data);
}

static void
on_save_as (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  drawl_window_take_entry (data);
  choose_where (data);
}

void
drawl_window_add_file_actions (DrawlWindow *window)
{
  static const GActionEntry entries[] = {
      {"new", on_new},   {"open", on_open},       {"open-recent", on_open_recent, "s"},
      {"save", on_save}, {"save-as", on_save_as}, {"open-demo", on_open_demo},
  };

  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
}

void
drawl_window_forget_files (DrawlWindow *window)
{
  clear_then (window);
  g_clear_object (&window->chooser);
}
