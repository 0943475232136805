/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The limits as a table. Invariant: `lines` are the rows of the draft in its order; the cells of a
 * column are of one width. What is wrong with a row stands beneath it. */

#include "app/body-limit-rows.h"

#include <string.h>

#include "app/body-cell.h"
#include "app/body-remove-button.h"
#include "app/focus.h"
#include "app/message.h"
#include "core/text.h"
#include "plan/json-file.h"

#define GAP 6

typedef struct {
  DrawlDraftRow *row;
  GtkWidget *box;   /* cells, and the reason beneath */
  GPtrArray *cells; /* of DrawlBodyCell */
  GtkWidget *reason;
} Line;

struct _DrawlBodyLimitRows {
  AdwPreferencesGroup parent_instance;
  DrawlBodyDraft *draft;
  GPtrArray *lines;  /* of Line */
  GPtrArray *widths; /* of GtkSizeGroup, a column each */
  GPtrArray *headings;
  GtkSizeGroup *buttons; /* those that remove a row, and the corner above them */
  GtkWidget *corner;
  GtkWidget *table, *none_label, *add_button;
  GtkFileChooserNative *native;
};

G_DEFINE_FINAL_TYPE (DrawlBodyLimitRows, drawl_body_limit_rows, ADW_TYPE_PREFERENCES_GROUP)

static void
line_free (gpointer data)
{
  Line *line = data;

  g_ptr_array_unref (line->cells);
  g_free (line);
}

static guint
n_columns (void)
{
  return drawl_draft_table_info (DRAWL_DRAFT_LIMITS)->n_columns;
}

/* Names take the room that numbers leave. */
static gboolean
is_wide (guint column)
{
  return drawl_draft_table_info (DRAWL_DRAFT_LIMITS)->columns[column].kind == DRAWL_DRAFT_ROWS;
}

/* ---- What is shown ---- */

/* The row's own mistake, or the first of its cells. */
static char *
reason_of (DrawlBodyLimitRows *self, const Line *line)
{
  const char *mistake = drawl_body_draft_row_mistake (self->draft, line->row);

  for (guint i = 0; i < line->cells->len; i++) {
    const char *reason = drawl_body_cell_get_reason (line->cells->pdata[i]);
    if (reason == NULL || !gtk_widget_get_visible (line->cells->pdata[i]))
      continue;
    g_autofree char *title =
        drawl_body_cell_title (&drawl_draft_table_info (DRAWL_DRAFT_LIMITS)->columns[i]);
    /* Translators: the heading of a column, what is wrong there. */
    return g_strdup_printf (_ ("%s: %s"), title, reason);
  }
  return mistake != NULL ? drawl_message_sentence (&(GError){.message = (char *)mistake}) : NULL;
}

static void
refresh_line (DrawlBodyLimitRows *self, const Line *line, gboolean strict)
{
  for (guint i = 0; i < line->cells->len; i++) {
    gtk_widget_set_visible (line->cells->pdata[i],
                            drawl_body_draft_has_cell (self->draft, line->row, i));
    drawl_body_cell_refresh (line->cells->pdata[i], strict);
  }
  g_autofree char *reason = reason_of (self, line);
  gtk_label_set_text (GTK_LABEL (line->reason), reason != NULL ? reason : "");
  gtk_widget_set_visible (line->reason, reason != NULL);
}

void
drawl_body_limit_rows_refresh (DrawlBodyLimitRows *rows, gboolean strict)
{
  const char *mistake = drawl_body_draft_table_mistake (rows->draft, DRAWL_DRAFT_LIMITS);
  gboolean film = drawl_body_draft_get_kind (rows->draft) == DRAWL_BODY_FILM;

  for (guint i = 0; i < rows->lines->len; i++)
    refresh_line (rows, rows->lines->pdata[i], strict);
  for (guint i = 0; i < n_columns (); i++)
    gtk_widget_set_visible (rows->headings->pdata[i],
                            !film || (drawl_draft_table_info (DRAWL_DRAFT_LIMITS)->columns[i].on &
                                      DRAWL_DRAFT_ON_FILM) != 0);
  gtk_widget_set_visible (rows->none_label, mistake != NULL);
  gtk_widget_set_visible (rows->table, mistake == NULL);
}

gboolean
drawl_body_limit_rows_focus_mistake (DrawlBodyLimitRows *rows)
{
  for (guint i = 0; i < rows->lines->len; i++) {
    const Line *line = rows->lines->pdata[i];
    for (guint k = 0; k < line->cells->len; k++)
      if (drawl_body_cell_get_reason (line->cells->pdata[k]) != NULL &&
          gtk_widget_get_visible (line->cells->pdata[k])) {
        drawl_focus_when_ready (line->cells->pdata[k]);
        return TRUE;
      }
    if (!gtk_widget_get_visible (line->reason))
      continue;
    drawl_focus_when_ready (line->cells->pdata[0]);
    return TRUE;
  }
  if (rows->lines->len > 0)
    return FALSE;
  drawl_focus_when_ready (rows->add_button);
  return TRUE;
}

/* ---- Rows that come and go ---- */

static GtkWidget *
new_reason (void)
{
  GtkWidget *reason = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (reason), 0);
  gtk_label_set_wrap (GTK_LABEL (reason), TRUE);
  gtk_widget_add_css_class (reason, "error");
  gtk_widget_add_css_class (reason, "caption");
  return reason;
}

static void
add_line (DrawlBodyLimitRows *self, DrawlDraftRow *row)
{
  GtkWidget *cells = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, GAP);
  Line *line = g_new0 (Line, 1);

  *line = (Line){row, gtk_box_new (GTK_ORIENTATION_VERTICAL, 3), g_ptr_array_new (), new_reason ()};
  for (guint i = 0; i < n_columns (); i++) {
    g_autofree char *title =
        drawl_body_cell_title (&drawl_draft_table_info (DRAWL_DRAFT_LIMITS)->columns[i]);
    GtkWidget *cell = drawl_body_cell_new (self->draft, row, i, title);
    gtk_widget_set_hexpand (cell, is_wide (i));
    gtk_size_group_add_widget (self->widths->pdata[i], cell);
    gtk_box_append (GTK_BOX (cells), cell);
    g_ptr_array_add (line->cells, cell);
  }
  GtkWidget *remove = drawl_body_remove_button_new (self->draft, row, self->add_button);
  gtk_size_group_add_widget (self->buttons, remove);
  gtk_box_append (GTK_BOX (cells), remove);
  gtk_box_append (GTK_BOX (line->box), cells);
  gtk_box_append (GTK_BOX (line->box), line->reason);
  gtk_box_append (GTK_BOX (self->table), line->box);
  g_ptr_array_add (self->lines, line);
}

static void
on_rows_changed (DrawlBodyLimitRows *self, guint table)
{
  if (table != DRAWL_DRAFT_LIMITS)
    return;
  for (guint i = self->lines->len; i-- > 0;) {
    Line *line = self->lines->pdata[i];
    if (drawl_body_draft_has_row (self->draft, DRAWL_DRAFT_LIMITS, line->row))
      continue;
    gtk_box_remove (GTK_BOX (self->table), line->box);
    g_ptr_array_remove_index (self->lines, i);
  }
  for (guint i = self->lines->len; i < drawl_body_draft_n_rows (self->draft, DRAWL_DRAFT_LIMITS);
       i++)
    add_line (self, drawl_body_draft_get_row (self->draft, DRAWL_DRAFT_LIMITS, i));
}

static void
on_add (DrawlBodyLimitRows *self)
{
  drawl_body_draft_add_row (self->draft, DRAWL_DRAFT_LIMITS);
  const Line *line = self->lines->pdata[self->lines->len - 1];
  drawl_focus_when_ready (line->cells->pdata[0]);
}

/* ---- Rows from elsewhere ---- */

static GtkWindow *
window_of (DrawlBodyLimitRows *self)
{
  return GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self)));
}

static void
on_pasted (GObject *clipboard, GAsyncResult *result, gpointer data)
{
  g_autoptr (DrawlBodyLimitRows) self = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *text =
      gdk_clipboard_read_text_finish (GDK_CLIPBOARD (clipboard), result, &error);

  if (window_of (self) == NULL)
    return;
  if (text != NULL)
    drawl_body_limit_import (self->draft, window_of (self), text, strlen (text));
  else if (error != NULL)
    drawl_message_show (window_of (self), _ ("There Is Nothing to Paste"), error);
}

static void
on_paste (DrawlBodyLimitRows *self)
{
  gdk_clipboard_read_text_async (gtk_widget_get_clipboard (GTK_WIDGET (self)), NULL, on_pasted,
                                 g_object_ref (self));
}

static void
on_file_response (DrawlBodyLimitRows *self, int response)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (self->native));
  g_clear_object (&self->native);
  if (file == NULL)
    return;
  g_autoptr (GBytes) bytes = drawl_json_read (file, NULL, &error);
  if (bytes == NULL)
    drawl_message_show (window_of (self), _ ("The File Could Not Be Read"), error);
  else
    drawl_body_limit_import (self->draft, window_of (self), g_bytes_get_data (bytes, NULL),
                             g_bytes_get_size (bytes));
}

static void
on_import (DrawlBodyLimitRows *self)
{
  g_clear_object (&self->native);
  self->native = gtk_file_chooser_native_new (_ ("Read a Table of Limits"), window_of (self),
                                              GTK_FILE_CHOOSER_ACTION_OPEN, _ ("_Read"), NULL);
  g_signal_connect_swapped (self->native, "response", G_CALLBACK (on_file_response), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->native));
}

/* ---- The type ---- */

static void
drawl_body_limit_rows_dispose (GObject *object)
{
  DrawlBodyLimitRows *self = DRAWL_BODY_LIMIT_ROWS (object);

  g_clear_object (&self->native);
  g_clear_object (&self->buttons);
  g_clear_object (&self->draft);
  G_OBJECT_CLASS (drawl_body_limit_rows_parent_class)->dispose (object);
}

static void
drawl_body_limit_rows_finalize (GObject *object)
{
  DrawlBodyLimitRows *self = DRAWL_BODY_LIMIT_ROWS (object);

  g_ptr_array_unref (self->lines);
  g_ptr_array_unref (self->widths);
  g_ptr_array_unref (self->headings);
  G_OBJECT_CLASS (drawl_body_limit_rows_parent_class)->finalize (object);
}

static void
drawl_body_limit_rows_class_init (DrawlBodyLimitRowsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = drawl_body_limit_rows_dispose;
  G_OBJECT_CLASS (klass)->finalize = drawl_body_limit_rows_finalize;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/drawl/Drawl/ui/body-limit-rows.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlBodyLimitRows, table);
  gtk_widget_class_bind_template_child (widget_class, DrawlBodyLimitRows, none_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlBodyLimitRows, add_button);
  gtk_widget_class_bind_template_callback (widget_class, on_add);
  gtk_widget_class_bind_template_callback (widget_class, on_paste);
  gtk_widget_class_bind_template_callback (widget_class, on_import);
}

static void
add_headings (DrawlBodyLimitRows *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, GAP);

  for (guint i = 0; i < n_columns (); i++) {
    g_autofree char *title =
        drawl_body_cell_title (&drawl_draft_table_info (DRAWL_DRAFT_LIMITS)->columns[i]);
    GtkSizeGroup *width = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
    GtkWidget *heading = gtk_label_new (title);
    gtk_label_set_xalign (GTK_LABEL (heading), 0);
    gtk_widget_add_css_class (heading, "dim-label");
    gtk_widget_add_css_class (heading, "caption");
    gtk_widget_set_hexpand (heading, is_wide (i));
    gtk_size_group_add_widget (width, heading);
    gtk_box_append (GTK_BOX (box), heading);
    g_ptr_array_add (self->widths, width);
    g_ptr_array_add (self->headings, heading);
  }
  gtk_box_append (GTK_BOX (box), self->corner);
  gtk_box_append (GTK_BOX (self->table), box);
}

static void
drawl_body_limit_rows_init (DrawlBodyLimitRows *self)
{
  self->lines = g_ptr_array_new_with_free_func (line_free);
  self->widths = g_ptr_array_new_with_free_func (g_object_unref);
  self->headings = g_ptr_array_new ();
  self->buttons = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  self->corner = gtk_label_new (NULL);
  gtk_size_group_add_widget (self->buttons, self->corner);
  gtk_widget_init_template (GTK_WIDGET (self));
  add_headings (self);
}

GtkWidget *
drawl_body_limit_rows_new (DrawlBodyDraft *draft)
{
  DrawlBodyLimitRows *self = g_object_new (DRAWL_TYPE_BODY_LIMIT_ROWS, NULL);

  self->draft = g_object_ref (draft);
  g_signal_connect_object (draft, "rows-changed", G_CALLBACK (on_rows_changed), self,
                           G_CONNECT_SWAPPED);
  on_rows_changed (self, DRAWL_DRAFT_LIMITS);
  drawl_body_limit_rows_refresh (self, FALSE);
  return GTK_WIDGET (self);
}
