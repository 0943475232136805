/* SPDX-License-Identifier: GPL-3.0-or-later */

/* When unsaved work is looked for, and what is offered. The looking waits until the window has been
 * drawn. An entry that is offered holds its lock, so that no other look finds it. */

#include "app/recovery.h"

#include "app/message.h"
#include "app/recovery-dialog.h"
#include "app/same-file.h"
#include "app/window.h"
#include "core/text.h"
#include "plan/journal-entry.h"

/* What a look that is still to come is for. */
typedef struct {
  GtkApplication *application;
  GFile *file; /* or NULL: everything */
} Look;

static void
look_free (Look *look)
{
  g_clear_object (&look->application);
  g_clear_object (&look->file);
  g_free (look);
}

static gboolean
is_wanted (DrawlJournalEntry *entry, GFile *file)
{
  GFile *own = drawl_journal_entry_get_file (entry);

  return file == NULL || (own != NULL && drawl_same_file (own, file));
}

/* The first of the program's windows of that type, the last used first; or NULL. */
static gpointer
find_window (GtkApplication *application, GType type)
{
  for (GList *l = gtk_application_get_windows (application); l != NULL; l = l->next)
    if (g_type_is_a (G_OBJECT_TYPE (l->data), type))
      return l->data;
  return NULL;
}

/* In the dialog that is open already, if one is: one start may look twice. */
static void
offer (GtkApplication *application, DrawlWindow *parent, GPtrArray *entries)
{
  DrawlRecoveryDialog *dialog = find_window (application, DRAWL_TYPE_RECOVERY_DIALOG);

  if (dialog == NULL)
    dialog = drawl_recovery_dialog_new (GTK_WINDOW (parent));
  drawl_recovery_dialog_add (dialog, entries);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
look (Look *look)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) entries = drawl_journal_list (&error);
  DrawlWindow *parent = find_window (look->application, DRAWL_TYPE_WINDOW);

  if (parent == NULL)
    return;
  if (entries == NULL) {
    if (look->file == NULL) /* once a start */
      drawl_message_show (GTK_WINDOW (parent), _ ("Unsaved Work Could Not Be Looked For"), error);
    return;
  }
  for (guint i = entries->len; i-- > 0;)
    if (!is_wanted (entries->pdata[i], look->file))
      g_ptr_array_remove_index (entries, i);
  if (entries->len > 0)
    offer (look->application, parent, entries);
}

static gboolean
on_idle (gpointer data)
{
  look (data);
  return G_SOURCE_REMOVE;
}

static void
look_soon (GtkApplication *application, GFile *file)
{
  Look *look = g_new0 (Look, 1);

  look->application = g_object_ref (application);
  g_set_object (&look->file, file);
  g_idle_add_full (G_PRIORITY_LOW, on_idle, look, (GDestroyNotify)look_free);
}

void
drawl_recovery_look (GtkApplication *application)
{
  look_soon (application, NULL);
}

void
drawl_recovery_look_for (GtkApplication *application, GFile *file)
{
  if (application != NULL)
    look_soon (application, file);
}
