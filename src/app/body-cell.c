/* SPDX-License-Identifier: GPL-3.0-or-later */

/* One cell of a draft. Invariant: while `filling` is on, the editor is being filled and hands over
 * nothing. */

#include "app/body-cell.h"

#include "app/body-picker.h"
#include "app/message.h"
#include "core/text.h"

#define NUMBER_CHARS 8
#define DAY_CHARS 11
#define TEXT_CHARS 12
#define TEXT_CHARS_MAX 36

struct _DrawlBodyCell {
  GtkWidget parent_instance;
  DrawlBodyDraft *draft;
  DrawlDraftRow *row;
  guint column;
  GtkWidget *editor;
  char *reason;
  gboolean filling;
};

G_DEFINE_FINAL_TYPE (DrawlBodyCell, drawl_body_cell, GTK_TYPE_WIDGET)

static const DrawlDraftColumn *
column_of (DrawlBodyCell *self)
{
  return &drawl_draft_table_info (drawl_draft_row_get_table (self->row))->columns[self->column];
}

/* ---- From the editor ---- */

static void
on_typed (DrawlBodyCell *self, GtkEditable *editable)
{
  if (!self->filling)
    drawl_body_draft_set (self->draft, self->row, self->column, gtk_editable_get_text (editable));
}

static void
on_selected (DrawlBodyCell *self)
{
  guint selected = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->editor));
  DrawlDraftChoice choice;

  if (!self->filling && column_of (self)->choice (selected, &choice))
    drawl_body_draft_set (self->draft, self->row, self->column, choice.id);
}

/* ---- To the editor ---- */

static guint
position_of (const DrawlDraftColumn *column, const char *id)
{
  DrawlDraftChoice choice;

  for (guint i = 0; column->choice (i, &choice); i++)
    if (g_str_equal (choice.id, id))
      return i;
  return GTK_INVALID_LIST_POSITION;
}

static void
show_value (DrawlBodyCell *self)
{
  const char *text = drawl_body_draft_get (self->draft, self->row, self->column);

  self->filling = TRUE;
  if (GTK_IS_DROP_DOWN (self->editor)) {
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->editor), position_of (column_of (self), text));
  } else if (DRAWL_IS_BODY_PICKER (self->editor)) {
    drawl_body_picker_refresh (DRAWL_BODY_PICKER (self->editor));
  } else {
    g_autofree char *typed =
        g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->editor))));
    if (!g_str_equal (typed, text))
      gtk_editable_set_text (GTK_EDITABLE (self->editor), text);
  }
  self->filling = FALSE;
}

static void
mark (DrawlBodyCell *self)
{
  GtkAccessible *accessible = GTK_ACCESSIBLE (self->editor);

  if (self->reason != NULL) {
    gtk_widget_add_css_class (self->editor, "error");
    gtk_accessible_update_state (accessible, GTK_ACCESSIBLE_STATE_INVALID,
                                 GTK_ACCESSIBLE_INVALID_TRUE, -1);
    gtk_accessible_update_property (accessible, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, self->reason,
                                    -1);
  } else {
    gtk_widget_remove_css_class (self->editor, "error");
    gtk_accessible_reset_state (accessible, GTK_ACCESSIBLE_STATE_INVALID);
    gtk_accessible_reset_property (accessible, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
  }
}

void
drawl_body_cell_refresh (DrawlBodyCell *cell, gboolean strict)
{
  const char *mistake = drawl_body_draft_cell_mistake (cell->draft, cell->row, cell->column);

  show_value (cell);
  if (!strict && drawl_body_draft_cell_is_missing (cell->draft, cell->row, cell->column))
    mistake = NULL;
  g_clear_pointer (&cell->reason, g_free);
  if (mistake != NULL) {
    GError error = {.message = (char *)mistake};
    cell->reason = drawl_message_sentence (&error);
  }
  mark (cell);
}

const char *
drawl_body_cell_get_reason (DrawlBodyCell *cell)
{
  return cell->reason;
}

char *
drawl_body_cell_title (const DrawlDraftColumn *column)
{
  g_auto (GStrv) parts = g_strsplit (_ (column->title), "_", -1);
  return g_strjoinv ("", parts);
}

/* ---- Editors ---- */

static GtkWidget *
new_choice (DrawlBodyCell *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  DrawlDraftChoice choice;

  for (guint i = 0; column_of (self)->choice (i, &choice); i++)
    gtk_string_list_append (names, choice.name);
  GtkWidget *drop_down = gtk_drop_down_new (G_LIST_MODEL (g_steal_pointer (&names)), NULL);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (drop_down), GTK_INVALID_LIST_POSITION);
  g_signal_connect_object (drop_down, "notify::selected", G_CALLBACK (on_selected), self,
                           G_CONNECT_SWAPPED);
  return drop_down;
}

static GtkWidget *
new_entry (DrawlBodyCell *self)
{
  DrawlDraftKind kind = column_of (self)->kind;
  gboolean words = kind == DRAWL_DRAFT_TEXT || kind == DRAWL_DRAFT_ID || kind == DRAWL_DRAFT_RATES;
  int chars = words ? TEXT_CHARS : kind == DRAWL_DRAFT_DAY ? DAY_CHARS : NUMBER_CHARS;
  GtkWidget *entry = gtk_entry_new ();

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), chars);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), words ? TEXT_CHARS_MAX : chars);
  gtk_editable_set_alignment (GTK_EDITABLE (entry), words ? 0 : 1);
  gtk_widget_set_hexpand (GTK_WIDGET (self), words);
  gtk_widget_add_css_class (entry, "figure");
  g_signal_connect_object (entry, "changed", G_CALLBACK (on_typed), self, G_CONNECT_SWAPPED);
  return entry;
}

static GtkWidget *
new_editor (DrawlBodyCell *self, const char *label)
{
  switch (column_of (self)->kind) {
  case DRAWL_DRAFT_CHOICE:
    return new_choice (self);
  case DRAWL_DRAFT_CHOICES:
  case DRAWL_DRAFT_ROWS:
    return drawl_body_picker_new (self->draft, self->row, self->column, label);
  default:
    return new_entry (self);
  }
}

/* ---- The type ---- */

static void
drawl_body_cell_dispose (GObject *object)
{
  DrawlBodyCell *self = DRAWL_BODY_CELL (object);

  g_clear_pointer (&self->editor, gtk_widget_unparent);
  g_clear_object (&self->draft);
  G_OBJECT_CLASS (drawl_body_cell_parent_class)->dispose (object);
}

static void
drawl_body_cell_finalize (GObject *object)
{
  g_free (DRAWL_BODY_CELL (object)->reason);
  G_OBJECT_CLASS (drawl_body_cell_parent_class)->finalize (object);
}

static gboolean
drawl_body_cell_grab_focus (GtkWidget *widget)
{
  GtkWidget *editor = DRAWL_BODY_CELL (widget)->editor;

  return gtk_widget_grab_focus (editor) || gtk_widget_child_focus (editor, GTK_DIR_TAB_FORWARD);
}

static void
drawl_body_cell_class_init (DrawlBodyCellClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = drawl_body_cell_dispose;
  G_OBJECT_CLASS (klass)->finalize = drawl_body_cell_finalize;
  widget_class->grab_focus = drawl_body_cell_grab_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
drawl_body_cell_init (DrawlBodyCell *self)
{
}

GtkWidget *
drawl_body_cell_new (DrawlBodyDraft *draft, DrawlDraftRow *row, guint column, const char *label)
{
  DrawlBodyCell *self = g_object_new (DRAWL_TYPE_BODY_CELL, NULL);

  self->draft = g_object_ref (draft);
  self->row = row;
  self->column = column;
  self->editor = new_editor (self, label);
  gtk_widget_set_parent (self->editor, GTK_WIDGET (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->editor), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  label, -1);
  drawl_body_cell_refresh (self, FALSE);
  return GTK_WIDGET (self);
}
