/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Saving from a window. What someone else wrote is never overwritten unasked. A save that fails
 * leaves the plan as it is, and what was to come after it is forgotten. Invariant: `save_target` is
 * the file of the trouble that is being asked about. */

#include "app/message.h"
#include "app/save-trouble.h"
#include "app/window-private.h"
#include "core/text.h"
#include "plan/plan-file.h"

static void choose_where (DrawlWindow *self);

void
drawl_window_remember (DrawlWindow *window, GFile *file)
{
  g_autofree char *uri = g_file_get_uri (file);
  GtkRecentData data = {
      .mime_type = (char *)DRAWL_PLAN_MIME_TYPE,
      .app_name = (char *)"drawl",
      .app_exec = (char *)"drawl %u",
  };

  gtk_recent_manager_add_full (gtk_recent_manager_get_default (), uri, &data);
}

/* ---- Trouble ---- */

static void
save_over (DrawlWindow *self, gboolean force)
{
  g_autoptr (GFile) file = g_object_ref (drawl_document_get_file (self->document));
  g_autoptr (GError) error = NULL;

  if (drawl_document_save (self->document, force, &error)) {
    drawl_window_remember (self, file);
    drawl_window_do_then (self);
  } else
    drawl_window_tell_trouble (self, file, error);
}

static void
try_again (DrawlWindow *self)
{
  g_autoptr (GFile) target = g_steal_pointer (&self->save_target);
  GFile *own = drawl_document_get_file (self->document);

  if (own != NULL && g_file_equal (own, target))
    drawl_window_save (self);
  else
    drawl_window_save_to (self, target);
}

static void
make_folder (DrawlWindow *self)
{
  g_autoptr (GFile) folder = g_file_get_parent (self->save_target);
  g_autoptr (GError) error = NULL;

  if (g_file_make_directory_with_parents (folder, NULL, &error) ||
      g_error_matches (error, G_IO_ERROR, G_IO_ERROR_EXISTS)) {
    try_again (self);
    return;
  }
  g_autoptr (GFile) target = g_steal_pointer (&self->save_target);
  drawl_window_tell_trouble (self, target, error);
}

static void
overwrite (DrawlWindow *self)
{
  save_over (self, TRUE);
}

static void
on_trouble_answer (DrawlWindow *self, const char *response)
{
  static const struct {
    const char *id;
    void (*act) (DrawlWindow *self);
  } rows[] = {
      {"again", try_again},      {"make-folder", make_folder},
      {"overwrite", overwrite},  {"reload", drawl_window_reload},
      {"save-as", choose_where},
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    if (g_str_equal (rows[i].id, response))
      rows[i].act (self);
}

void
drawl_window_tell_trouble (DrawlWindow *window, GFile *file, const GError *error)
{
  AdwMessageDialog *dialog =
      drawl_save_trouble_new (GTK_WINDOW (window), window->document, file, error);

  drawl_window_clear_then (window);
  g_set_object (&window->save_target, file);
  g_signal_connect_object (dialog, "response", G_CALLBACK (on_trouble_answer), window,
                           G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

/* ---- Where to ---- */

/* Two plans that save to one file would take turns to overwrite each other. */
static gboolean
is_taken (DrawlWindow *self, GFile *file)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (self));
  DrawlWindow *other = application != NULL ? drawl_window_find (application, file) : NULL;

  return other != NULL && other->document != self->document;
}

static void
tell_taken (DrawlWindow *self)
{
  GtkWidget *dialog = adw_message_dialog_new (
      GTK_WINDOW (self), _ ("Another Plan Has This File"),
      _ ("It is open in another window. Close it there first, or save under another name."));

  drawl_window_clear_then (self);
  adw_message_dialog_add_response (ADW_MESSAGE_DIALOG (dialog), "close", _ ("_Close"));
  gtk_window_present (GTK_WINDOW (dialog));
}

gboolean
drawl_window_save_to (DrawlWindow *window, GFile *file)
{
  g_autoptr (GError) error = NULL;

  if (is_taken (window, file)) {
    tell_taken (window);
    return FALSE;
  }
  if (!drawl_document_save_as (window->document, file, &error)) {
    drawl_window_tell_trouble (window, file, error);
    return FALSE;
  }
  drawl_window_remember (window, file);
  drawl_window_do_then (window);
  return TRUE;
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
    drawl_window_clear_then (self);
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

void
drawl_window_choose (DrawlWindow *window, GtkFileChooserNative *chooser, GCallback on_response)
{
  g_set_object (&window->chooser, chooser);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  add_filter (GTK_FILE_CHOOSER (chooser));
  g_signal_connect_object (chooser, "response", on_response, window, G_CONNECT_SWAPPED);
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
  drawl_window_choose (self, chooser, G_CALLBACK (on_save_chosen));
}

/* ---- Actions ---- */

void
drawl_window_save (DrawlWindow *window)
{
  drawl_window_take_entry (window);
  if (drawl_document_get_file (window->document) == NULL)
    choose_where (window);
  else
    save_over (window, FALSE);
}

void
drawl_window_reload (DrawlWindow *window)
{
  DrawlShotList *list = drawl_window_get_list (window);
  g_autoptr (GError) error = NULL;
  gboolean news;

  drawl_window_take_entry (window);
  DrawlShot *shot = drawl_window_get_shot (window);
  g_autofree char *slate = shot != NULL ? g_strdup (drawl_shot_get_slate (shot)) : NULL;
  if (!drawl_document_reload (window->document, &news, &error)) {
    drawl_message_show (GTK_WINDOW (window), _ ("The File Could Not Be Read Again"), error);
    return;
  }
  shot = slate != NULL ? drawl_plan_find_shot (drawl_window_get_plan (window), slate) : NULL;
  if (shot != NULL)
    drawl_shot_list_select (list, shot);
  if (news)
    drawl_window_tell_undoable (window, _ ("Read again from disk"));
}

static void
on_save (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  drawl_window_save (data);
}

static void
on_save_as (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  drawl_window_take_entry (data);
  choose_where (data);
}

static void
on_reload (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  drawl_window_reload (data);
}

void
drawl_window_add_save_actions (DrawlWindow *window)
{
  static const GActionEntry entries[] = {
      {"save", on_save}, {"save-as", on_save_as}, {"reload", on_reload}};

  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
}
