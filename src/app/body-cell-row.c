/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A row about one cell of a draft. */

#include "app/body-cell-row.h"

#include "app/body-cell.h"
#include "core/text.h"

struct _DrawlBodyCellRow {
  AdwActionRow parent_instance;
  DrawlBodyDraft *draft;
  DrawlDraftRow *row;
  guint column;
  GtkWidget *cell;
};

G_DEFINE_FINAL_TYPE (DrawlBodyCellRow, drawl_body_cell_row, ADW_TYPE_ACTION_ROW)

gboolean
drawl_body_cell_row_is_wrong (DrawlBodyCellRow *row)
{
  return gtk_widget_get_visible (GTK_WIDGET (row)) &&
         drawl_body_cell_get_reason (DRAWL_BODY_CELL (row->cell)) != NULL;
}

void
drawl_body_cell_row_refresh (DrawlBodyCellRow *row, gboolean strict)
{
  DrawlDraftTable table = drawl_draft_row_get_table (row->row);
  const DrawlDraftColumn *column = &drawl_draft_table_info (table)->columns[row->column];
  const char *hint = column->hint != NULL ? _ (column->hint) : "";

  gtk_widget_set_visible (GTK_WIDGET (row),
                          drawl_body_draft_has_cell (row->draft, row->row, row->column));
  drawl_body_cell_refresh (DRAWL_BODY_CELL (row->cell), strict);
  const char *reason = drawl_body_cell_get_reason (DRAWL_BODY_CELL (row->cell));
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), reason != NULL ? reason : hint);
  if (reason != NULL)
    gtk_widget_add_css_class (GTK_WIDGET (row), "mistaken");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (row), "mistaken");
}

static gboolean
drawl_body_cell_row_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (DRAWL_BODY_CELL_ROW (widget)->cell);
}

static void
drawl_body_cell_row_dispose (GObject *object)
{
  g_clear_object (&DRAWL_BODY_CELL_ROW (object)->draft);
  G_OBJECT_CLASS (drawl_body_cell_row_parent_class)->dispose (object);
}

static void
drawl_body_cell_row_class_init (DrawlBodyCellRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = drawl_body_cell_row_dispose;
  GTK_WIDGET_CLASS (klass)->grab_focus = drawl_body_cell_row_grab_focus;
}

static void
drawl_body_cell_row_init (DrawlBodyCellRow *self)
{
  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (self), FALSE);
  adw_preferences_row_set_use_underline (ADW_PREFERENCES_ROW (self), TRUE);
  adw_action_row_set_title_lines (ADW_ACTION_ROW (self), 0);
  adw_action_row_set_subtitle_lines (ADW_ACTION_ROW (self), 0);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (self), FALSE);
  gtk_widget_set_focusable (GTK_WIDGET (self), FALSE);
}

GtkWidget *
drawl_body_cell_row_new (DrawlBodyDraft *draft, DrawlDraftRow *row, guint column)
{
  DrawlBodyCellRow *self = g_object_new (DRAWL_TYPE_BODY_CELL_ROW, NULL);
  const DrawlDraftColumn *is =
      &drawl_draft_table_info (drawl_draft_row_get_table (row))->columns[column];
  g_autofree char *title = drawl_body_cell_title (is);

  self->draft = g_object_ref (draft);
  self->row = row;
  self->column = column;
  self->cell = drawl_body_cell_new (draft, row, column, title);
  gtk_widget_set_valign (self->cell, GTK_ALIGN_CENTER);
  gtk_widget_set_hexpand (self->cell, FALSE); /* entries of one width stand in line */
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (self), _ (is->title));
  adw_action_row_add_suffix (ADW_ACTION_ROW (self), self->cell);
  adw_action_row_set_activatable_widget (ADW_ACTION_ROW (self), self->cell);
  drawl_body_cell_row_refresh (self, FALSE);
  return GTK_WIDGET (self);
}
