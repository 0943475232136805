/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Files of a window: new, open, close. Nothing that a person made is given up unasked: before
 * another plan takes the last window that shows it, and before that window closes. Invariant:
 * `then` is set only while a question or a file chooser is open that leads to it. */

#include "app/message.h"
#include "app/recovery.h"
#include "app/window-private.h"
#include "core/text.h"
#include "plan/data-dir.h"
#include "plan/plan-file.h"

void
drawl_window_clear_then (DrawlWindow *window)
{
  window->then = NULL;
  g_clear_object (&window->then_document);
}

void
drawl_window_do_then (DrawlWindow *window)
{
  void (*then) (DrawlWindow *) = window->then;

  window->then = NULL;
  if (then != NULL)
    then (window);
}

/* ---- Windows on one document ---- */

/* Windows of the program that show @document, of DrawlWindow. */
static GList *
windows_on (GtkApplication *application, DrawlDocument *document)
{
  GList *found = NULL;

  if (application == NULL)
    return NULL;
  for (GList *l = gtk_application_get_windows (application); l != NULL; l = l->next)
    if (DRAWL_IS_WINDOW (l->data) && DRAWL_WINDOW (l->data)->document == document)
      found = g_list_prepend (found, l->data);
  return found;
}

static gboolean
is_last (DrawlWindow *self)
{
  g_autoptr (GList) windows =
      windows_on (gtk_window_get_application (GTK_WINDOW (self)), self->document);

  return windows == NULL || windows->next == NULL;
}

void
drawl_window_let_document_go (DrawlWindow *window)
{
  if (window->document != NULL && is_last (window))
    drawl_document_close (window->document);
}

void
drawl_window_put_everywhere (GtkApplication *application, DrawlDocument *former,
                             DrawlDocument *document)
{
  g_autoptr (GList) windows = windows_on (application, former);
  g_autoptr (DrawlDocument) kept = g_object_ref (former);

  for (GList *l = windows; l != NULL; l = l->next)
    drawl_window_set_document (l->data, document);
  drawl_document_close (kept);
}

/* ---- Asking first ---- */

static void
on_unsaved_answer (DrawlWindow *self, const char *response, GtkWindow *dialog)
{
  /* The dialog closes itself after this, when the window may be gone. */
  gtk_window_set_transient_for (dialog, NULL);
  if (g_str_equal (response, "save"))
    drawl_window_save (self);
  else if (g_str_equal (response, "discard"))
    drawl_window_do_then (self);
  else
    drawl_window_clear_then (self);
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

/* A plan that saves itself is not asked about, if it can be saved. */
static gboolean
must_ask (DrawlWindow *self)
{
  if (self->document == NULL)
    return FALSE;
  drawl_document_save_soon (self->document);
  return drawl_document_get_modified (self->document);
}

/* Asks about unsaved work even where other windows show it, too. */
static void
when_all_settled (DrawlWindow *self, void (*then) (DrawlWindow *window))
{
  drawl_window_take_entry (self);
  self->then = then;
  if (must_ask (self))
    ask_about_unsaved (self);
  else
    drawl_window_do_then (self);
}

/* One question at a time: the one that is open is answered first. */
static gboolean
is_asking (DrawlWindow *self)
{
  if (self->then == NULL)
    return FALSE;
  gtk_window_present (GTK_WINDOW (self));
  return TRUE;
}

void
drawl_window_when_settled (DrawlWindow *window, void (*then) (DrawlWindow *window))
{
  if (is_asking (window))
    return;
  if (window->document == NULL || is_last (window)) {
    when_all_settled (window, then);
    return;
  }
  drawl_window_take_entry (window);
  then (window);
}

static void
close_all (DrawlWindow *self)
{
  g_autoptr (GList) windows =
      windows_on (gtk_window_get_application (GTK_WINDOW (self)), self->document);

  for (GList *l = windows; l != NULL; l = l->next)
    if (l->data != self)
      drawl_window_close_now (l->data);
  drawl_window_close_now (self);
}

void
drawl_window_close_document (DrawlWindow *window)
{
  g_autoptr (GList) windows =
      windows_on (gtk_window_get_application (GTK_WINDOW (window)), window->document);

  for (GList *l = windows; l != NULL; l = l->next) {
    if (is_asking (l->data))
      return;
    drawl_window_take_entry (l->data);
  }
  when_all_settled (window, close_all);
}

/* ---- New and open ---- */

static void
take_waiting_document (DrawlWindow *self)
{
  g_autoptr (DrawlDocument) document = g_steal_pointer (&self->then_document);
  GFile *file = drawl_document_get_file (document);

  drawl_window_let_document_go (self);
  drawl_window_set_document (self, document);
  if (file == NULL)
    return;
  drawl_window_remember (self, file);
  drawl_recovery_look_for (gtk_window_get_application (GTK_WINDOW (self)), file);
}

/* Takes over @document. */
static void
put_in_place (DrawlWindow *self, DrawlDocument *document)
{
  if (is_asking (self)) {
    g_object_unref (document);
    return;
  }
  g_clear_object (&self->then_document);
  self->then_document = document;
  drawl_window_when_settled (self, take_waiting_document);
}

static gboolean
has_open (GtkWindow *window, GFile *file)
{
  DrawlDocument *document = DRAWL_IS_WINDOW (window) ? DRAWL_WINDOW (window)->document : NULL;

  return document != NULL && drawl_document_is_of (document, file);
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

  drawl_window_choose (data, chooser, G_CALLBACK (on_open_chosen));
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

/* The same plan once more, at the same shot; from there each window goes its own way. */
static void
on_new_window (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (self));
  DrawlWindow *other = drawl_window_new (DRAWL_APPLICATION (application));
  DrawlShot *shot = drawl_window_get_shot (self);

  drawl_window_set_document (other, self->document);
  if (shot != NULL && drawl_window_get_list (other) != NULL)
    drawl_shot_list_select (drawl_window_get_list (other), shot);
  gtk_window_present (GTK_WINDOW (other));
}

void
drawl_window_add_file_actions (DrawlWindow *window)
{
  static const GActionEntry entries[] = {
      {"new", on_new},
      {"new-window", on_new_window},
      {"open", on_open},
      {"open-recent", on_open_recent, "s"},
      {"open-demo", on_open_demo},
  };

  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
}

void
drawl_window_forget_files (DrawlWindow *window)
{
  drawl_window_clear_then (window);
  g_clear_object (&window->chooser);
  g_clear_object (&window->save_target);
}
