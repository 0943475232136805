/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The offer of unsaved work. Nothing is deleted before the dialog closes, so that until then every
 * choice can be taken back. */

#include "app/recovery-dialog.h"

#include "app/application.h"
#include "app/message.h"
#include "app/recovery-row.h"
#include "app/window.h"
#include "core/text.h"

struct _DrawlRecoveryDialog {
  AdwWindow parent_instance;
  GtkWidget *list_box, *close_button;
};

G_DEFINE_FINAL_TYPE (DrawlRecoveryDialog, drawl_recovery_dialog, ADW_TYPE_WINDOW)

static DrawlRecoveryRow *
row_at (DrawlRecoveryDialog *self, int position)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list_box), position);

  return row != NULL ? DRAWL_RECOVERY_ROW (row) : NULL;
}

/* What is left to decide is decided later. */
static void
refresh_button (DrawlRecoveryDialog *self)
{
  gboolean left = FALSE;
  DrawlRecoveryRow *row;

  for (int i = 0; (row = row_at (self, i)) != NULL; i++)
    left = left || !drawl_recovery_row_get_discarded (row);
  const char *label = left ? _ ("Decide _Later") : _ ("_Done");
  gtk_button_set_label (GTK_BUTTON (self->close_button), label);
}

/* ---- What becomes of a row ---- */

static void
on_recover (DrawlRecoveryDialog *self, DrawlRecoveryRow *row)
{
  GtkWindow *parent = gtk_window_get_transient_for (GTK_WINDOW (self));
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (self));
  g_autoptr (GError) error = NULL;
  g_autoptr (DrawlDocument) document =
      drawl_document_recover (drawl_recovery_row_get_entry (row), &error);

  if (document == NULL) {
    drawl_recovery_row_refuse (row, error);
    return;
  }
  gtk_list_box_remove (GTK_LIST_BOX (self->list_box), GTK_WIDGET (row));
  refresh_button (self);
  GtkWindow *window =
      GTK_WINDOW (drawl_application_show_document (DRAWL_APPLICATION (application), document));
  if (row_at (self, 0) == NULL)
    gtk_window_close (GTK_WINDOW (self));
  else if (window != parent)
    gtk_window_present (GTK_WINDOW (self));
  else
    drawl_recovery_row_focus (row_at (self, 0));
}

static void
discard (DrawlRecoveryDialog *self, DrawlRecoveryRow *row)
{
  g_autoptr (GError) error = NULL;

  if (!drawl_journal_entry_discard (drawl_recovery_row_get_entry (row), &error))
    drawl_message_show (gtk_window_get_transient_for (GTK_WINDOW (self)),
                        _ ("The Unsaved Work Could Not Be Deleted"), error);
}

static gboolean
drawl_recovery_dialog_close_request (GtkWindow *window)
{
  DrawlRecoveryDialog *self = DRAWL_RECOVERY_DIALOG (window);
  DrawlRecoveryRow *row;

  for (int i = 0; (row = row_at (self, i)) != NULL; i++)
    if (drawl_recovery_row_get_discarded (row))
      discard (self, row);
  return GTK_WINDOW_CLASS (drawl_recovery_dialog_parent_class)->close_request (window);
}

/* ---- The type ---- */

static void
drawl_recovery_dialog_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), DRAWL_TYPE_RECOVERY_DIALOG);
  G_OBJECT_CLASS (drawl_recovery_dialog_parent_class)->dispose (object);
}

static void
drawl_recovery_dialog_class_init (DrawlRecoveryDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = drawl_recovery_dialog_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = drawl_recovery_dialog_close_request;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/drawl/Drawl/ui/recovery-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlRecoveryDialog, list_box);
  gtk_widget_class_bind_template_child (widget_class, DrawlRecoveryDialog, close_button);
}

static void
drawl_recovery_dialog_init (DrawlRecoveryDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

DrawlRecoveryDialog *
drawl_recovery_dialog_new (GtkWindow *parent)
{
  return g_object_new (DRAWL_TYPE_RECOVERY_DIALOG, "transient-for", parent, "application",
                       gtk_window_get_application (parent), NULL);
}

void
drawl_recovery_dialog_add (DrawlRecoveryDialog *dialog, GPtrArray *entries)
{
  for (guint i = 0; i < entries->len; i++) {
    DrawlRecoveryRow *row = drawl_recovery_row_new (entries->pdata[i]);
    g_signal_connect_object (row, "recover", G_CALLBACK (on_recover), dialog, G_CONNECT_SWAPPED);
    g_signal_connect_object (row, "notify::discarded", G_CALLBACK (refresh_button), dialog,
                             G_CONNECT_SWAPPED);
    gtk_list_box_append (GTK_LIST_BOX (dialog->list_box), GTK_WIDGET (row));
  }
  refresh_button (dialog);
  if (row_at (dialog, 0) != NULL)
    drawl_recovery_row_focus (row_at (dialog, 0));
}
