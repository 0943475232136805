/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The program. Keys that work everywhere in a window are rows of the table below; those of the list
 * alone stand in ui/shot-list.ui. */

#include "app/application.h"

#include <glib-unix.h>

#include "app/recovery.h"
#include "app/window.h"
#include "core/text.h"

struct _DrawlApplication {
  AdwApplication parent_instance;
  GSettings *settings;
  gboolean looked; /* for unsaved work */
};

G_DEFINE_FINAL_TYPE (DrawlApplication, drawl_application, ADW_TYPE_APPLICATION)

typedef struct {
  const char *action;
  const char *keys[3];
} Keys;

static const Keys keys[] = {
    {"app.quit", {"<Control>q"}},
    {"window.close", {"<Control>w"}},
    {"win.new", {"<Control>n"}},
    {"win.new-window", {"<Control><Shift>n"}},
    {"win.open", {"<Control>o"}},
    {"win.save", {"<Control>s"}},
    {"win.save-as", {"<Control><Shift>s"}},
    {"win.import", {"<Control>i"}},
    {"win.export", {"<Control>e"}},
    {"win.print", {"<Control>p"}},
    {"win.undo", {"<Control>z"}},
    {"win.redo", {"<Control><Shift>z", "<Control>y"}},
    {"win.find", {"<Control>f"}},
    {"win.add-shot", {"<Control>Return"}},
    {"win.duplicate-shot", {"<Control>d"}},
    {"win.previous-shot", {"<Control>Page_Up"}},
    {"win.next-shot", {"<Control>Page_Down"}},
    {"win.page('shots')", {"<Alt>1"}},
    {"win.page('bodies')", {"<Alt>2"}},
    {"win.back", {"<Alt>Left"}},
    {"win.plan-settings", {"<Control>comma"}},
    {"win.shortcuts", {"<Control>question"}},
};

/* Plans without unsaved work close; the others ask, each once, however many windows show it. The
 * program ends with the last of them. */
static void
on_quit (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  g_autoptr (GHashTable) asked = g_hash_table_new (NULL, NULL);
  g_autolist (GtkWindow) windows = g_list_copy_deep (gtk_application_get_windows (data),
                                                     (GCopyFunc)(gpointer)g_object_ref, NULL);

  for (GList *l = windows; l != NULL; l = l->next) {
    DrawlDocument *document =
        DRAWL_IS_WINDOW (l->data) ? drawl_window_get_document (l->data) : NULL;
    if (document != NULL && g_hash_table_add (asked, document))
      drawl_window_close_document (l->data);
    else if (document == NULL && DRAWL_IS_WINDOW (l->data))
      gtk_window_close (l->data);
  }
}

/* ---- The end of a session ---- */

static void
flush_all (DrawlApplication *self)
{
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (self)); l != NULL; l = l->next) {
    DrawlDocument *document =
        DRAWL_IS_WINDOW (l->data) ? drawl_window_get_document (l->data) : NULL;
    if (document != NULL)
      drawl_document_flush (document);
  }
}

/* Told to end, without a word to the person: unsaved work is offered at the next start. */
static gboolean
on_told_to_end (gpointer data)
{
  flush_all (data);
  g_application_quit (data);
  return G_SOURCE_CONTINUE;
}

static void
prepare_for_the_end (DrawlApplication *self)
{
  static const int signals[] = {SIGHUP, SIGINT, SIGTERM};

  for (gsize i = 0; i < G_N_ELEMENTS (signals); i++)
    g_unix_signal_add (signals[i], on_told_to_end, self);
  g_signal_connect (self, "query-end", G_CALLBACK (flush_all), NULL);
}

static void
drawl_application_startup (GApplication *application)
{
  static const GActionEntry entries[] = {{"quit", on_quit}};

  G_APPLICATION_CLASS (drawl_application_parent_class)->startup (application);
  g_action_map_add_action_entries (G_ACTION_MAP (application), entries, G_N_ELEMENTS (entries),
                                   application);
  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_application_set_accels_for_action (GTK_APPLICATION (application), keys[i].action,
                                           (const char *const *)keys[i].keys);
  g_autoptr (GAction) by_itself =
      g_settings_create_action (DRAWL_APPLICATION (application)->settings, "save-by-itself");
  g_action_map_add_action (G_ACTION_MAP (application), by_itself);
  prepare_for_the_end (DRAWL_APPLICATION (application));
}

static void
drawl_application_shutdown (GApplication *application)
{
  flush_all (DRAWL_APPLICATION (application));
  G_APPLICATION_CLASS (drawl_application_parent_class)->shutdown (application);
}

/* Once: what is left behind later is a living program's. */
static void
look_for_unsaved_work (DrawlApplication *self)
{
  if (!self->looked)
    drawl_recovery_look (GTK_APPLICATION (self));
  self->looked = TRUE;
}

static void
drawl_application_activate (GApplication *application)
{
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (application));

  if (window == NULL)
    window = GTK_WINDOW (drawl_window_new (DRAWL_APPLICATION (application)));
  gtk_window_present (window);
  look_for_unsaved_work (DRAWL_APPLICATION (application));
}

/* A window that still shows the welcome, or NULL. */
static DrawlWindow *
idle_window (GtkApplication *application)
{
  for (GList *l = gtk_application_get_windows (application); l != NULL; l = l->next)
    if (DRAWL_IS_WINDOW (l->data) && drawl_window_get_document (l->data) == NULL)
      return l->data;
  return NULL;
}

void
drawl_application_show_file (DrawlApplication *application, GFile *file)
{
  DrawlWindow *window = drawl_window_find (GTK_APPLICATION (application), file);

  if (window == NULL) {
    window = idle_window (GTK_APPLICATION (application));
    if (window == NULL)
      window = drawl_window_new (application);
    drawl_window_open (window, file);
  }
  gtk_window_present (GTK_WINDOW (window));
}

/* Where the same file is shown with nothing unsaved in it, the document takes that place. */
DrawlWindow *
drawl_application_show_document (DrawlApplication *application, DrawlDocument *document)
{
  GFile *file = drawl_document_get_file (document);
  DrawlWindow *window =
      file != NULL ? drawl_window_find (GTK_APPLICATION (application), file) : NULL;
  DrawlDocument *former = window != NULL ? drawl_window_get_document (window) : NULL;

  if (former != NULL && !drawl_document_get_modified (former))
    drawl_window_put_everywhere (GTK_APPLICATION (application), former, document);
  else {
    window = idle_window (GTK_APPLICATION (application));
    if (window == NULL)
      window = drawl_window_new (application);
    drawl_window_set_document (window, document);
  }
  gtk_window_present (GTK_WINDOW (window));
  return window;
}

static void
drawl_application_open (GApplication *application, GFile **files, int n_files, const char *hint)
{
  for (int i = 0; i < n_files; i++)
    drawl_application_show_file (DRAWL_APPLICATION (application), files[i]);
  look_for_unsaved_work (DRAWL_APPLICATION (application));
}

static void
drawl_application_finalize (GObject *object)
{
  g_clear_object (&DRAWL_APPLICATION (object)->settings);
  G_OBJECT_CLASS (drawl_application_parent_class)->finalize (object);
}

static void
drawl_application_class_init (DrawlApplicationClass *klass)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);

  application_class->startup = drawl_application_startup;
  application_class->shutdown = drawl_application_shutdown;
  application_class->activate = drawl_application_activate;
  application_class->open = drawl_application_open;
  G_OBJECT_CLASS (klass)->finalize = drawl_application_finalize;
}

static void
drawl_application_init (DrawlApplication *self)
{
  self->settings = g_settings_new (DRAWL_APPLICATION_ID);
}

DrawlApplication *
drawl_application_new (void)
{
  return g_object_new (DRAWL_TYPE_APPLICATION, "application-id", DRAWL_APPLICATION_ID, "flags",
                       G_APPLICATION_HANDLES_OPEN, "register-session", TRUE, "resource-base-path",
                       "/org/drawl/Drawl", NULL);
}

GSettings *
drawl_application_get_settings (DrawlApplication *application)
{
  return application->settings;
}
