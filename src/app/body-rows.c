/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A table of a draft. Invariant: `lines` are the rows of the draft in its order, each with its
 * widgets; a row that comes or goes leaves the others alone, and the focus with them. */

#include "app/body-rows.h"

#include "app/body-cell-row.h"
#include "app/body-remove-button.h"
#include "app/focus.h"
#include "app/message.h"
#include "core/text.h"
#include "plan/figure.h"

typedef struct {
  DrawlDraftRow *row;
  GtkWidget *expander;
  GPtrArray *cells; /* of DrawlBodyCellRow */
} Line;

struct _DrawlBodyRows {
  AdwPreferencesGroup parent_instance;
  DrawlBodyDraft *draft;
  DrawlDraftTable table;
  GPtrArray *lines; /* of Line */
  GtkWidget *add_button, *none_label;
  gboolean strict;
};

G_DEFINE_FINAL_TYPE (DrawlBodyRows, drawl_body_rows, ADW_TYPE_PREFERENCES_GROUP)

static void
line_free (gpointer data)
{
  Line *line = data;

  g_ptr_array_unref (line->cells);
  g_free (line);
}

/* ---- What a row says while it is closed ---- */

static const char *
text_at (DrawlBodyRows *self, DrawlDraftRow *row, const char *key)
{
  return drawl_body_draft_get (self->draft, row, drawl_draft_column (self->table, key));
}

static char *
size_text (DrawlBodyRows *self, DrawlDraftRow *row)
{
  if (drawl_body_draft_get_kind (self->draft) == DRAWL_BODY_FILM)
    return g_strdup (text_at (self, row, "gauge"));
  /* Translators: width and height in pixels. */
  return g_strdup_printf (_ ("%s × %s pixels"), text_at (self, row, "width"),
                          text_at (self, row, "height"));
}

static char *
card_text (DrawlBodyRows *self, DrawlDraftRow *row)
{
  const char *class = text_at (self, row, "class");

  if (*class != '\0')
    return g_strdup_printf (_ ("%s GB, %s"), text_at (self, row, "bytes"), class);
  return g_strdup_printf (_ ("%s GB, %s MB/s"), text_at (self, row, "bytes"),
                          text_at (self, row, "write_mb_s"));
}

static char *
summary (DrawlBodyRows *self, DrawlDraftRow *row)
{
  switch (self->table) {
  case DRAWL_DRAFT_SIZES:
    return size_text (self, row);
  case DRAWL_DRAFT_CODECS:
    return drawl_body_draft_codec_example (self->draft, row);
  case DRAWL_DRAFT_CARDS:
    return card_text (self, row);
  case DRAWL_DRAFT_MAGAZINES:
    return g_strdup_printf (_ ("%s feet"), text_at (self, row, "feet"));
  case DRAWL_DRAFT_LICENCES:
    return g_strdup (text_at (self, row, "what"));
  default:
    return g_strdup (text_at (self, row, "why"));
  }
}

/* Of the row as a whole, or that there are some within. */
static char *
mistake_text (DrawlBodyRows *self, const Line *line)
{
  const char *mistake = drawl_body_draft_row_mistake (self->draft, line->row);
  guint n = 0;

  if (mistake != NULL)
    return drawl_message_sentence (&(GError){.message = (char *)mistake});
  for (guint i = 0; i < line->cells->len; i++)
    n += drawl_body_cell_row_is_wrong (line->cells->pdata[i]);
  if (n == 0)
    return NULL;
  g_autofree char *count = drawl_figure_count (n);
  return g_strdup_printf (
      ngettext_ ("%s entry has to be mended", "%s entries have to be mended", n), count);
}

static void
refresh_line (DrawlBodyRows *self, const Line *line)
{
  const char *name = drawl_body_draft_get (self->draft, line->row, 0);

  for (guint i = 0; i < line->cells->len; i++)
    drawl_body_cell_row_refresh (line->cells->pdata[i], self->strict);
  g_autofree char *mistake = mistake_text (self, line);
  g_autofree char *words = summary (self, line->row);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (line->expander),
                                 *name != '\0' ? name : _ ("Unnamed"));
  adw_expander_row_set_subtitle (ADW_EXPANDER_ROW (line->expander), mistake != NULL ? mistake
                                                                    : words != NULL ? words
                                                                                    : "");
  if (mistake != NULL)
    gtk_widget_add_css_class (line->expander, "mistaken");
  else
    gtk_widget_remove_css_class (line->expander, "mistaken");
}

void
drawl_body_rows_refresh (DrawlBodyRows *rows, gboolean strict)
{
  const char *mistake = drawl_body_draft_table_mistake (rows->draft, rows->table);
  g_autofree char *reason =
      mistake != NULL ? drawl_message_sentence (&(GError){.message = (char *)mistake}) : NULL;

  rows->strict = strict;
  gtk_widget_set_visible (GTK_WIDGET (rows), drawl_body_draft_has_table (rows->draft, rows->table));
  for (guint i = 0; i < rows->lines->len; i++)
    refresh_line (rows, rows->lines->pdata[i]);
  gtk_label_set_text (GTK_LABEL (rows->none_label), reason != NULL ? reason : _ ("None yet"));
  gtk_widget_set_visible (rows->none_label, rows->lines->len == 0);
  if (reason != NULL)
    gtk_widget_add_css_class (rows->none_label, "error");
  else
    gtk_widget_remove_css_class (rows->none_label, "error");
}

gboolean
drawl_body_rows_focus_mistake (DrawlBodyRows *rows)
{
  if (!gtk_widget_get_visible (GTK_WIDGET (rows)))
    return FALSE;
  for (guint i = 0; i < rows->lines->len; i++) {
    const Line *line = rows->lines->pdata[i];
    if (!gtk_widget_has_css_class (line->expander, "mistaken"))
      continue;
    adw_expander_row_set_expanded (ADW_EXPANDER_ROW (line->expander), TRUE);
    for (guint k = 0; k < line->cells->len; k++)
      if (drawl_body_cell_row_is_wrong (line->cells->pdata[k])) {
        drawl_focus_when_ready (line->cells->pdata[k]);
        return TRUE;
      }
    drawl_focus_when_ready (line->cells->pdata[0]);
    return TRUE;
  }
  if (rows->lines->len > 0 || drawl_body_draft_table_mistake (rows->draft, rows->table) == NULL)
    return FALSE;
  drawl_focus_when_ready (rows->add_button);
  return TRUE;
}

/* ---- Rows that come and go ---- */

static Line *
add_line (DrawlBodyRows *self, DrawlDraftRow *row)
{
  Line *line = g_new0 (Line, 1);

  *line = (Line){row, adw_expander_row_new (), g_ptr_array_new ()};
  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (line->expander), FALSE);
  GtkWidget *remove = drawl_body_remove_button_new (self->draft, row, self->add_button);
  gtk_widget_set_valign (remove, GTK_ALIGN_CENTER);
  adw_expander_row_add_action (ADW_EXPANDER_ROW (line->expander), remove);
  gtk_widget_add_css_class (line->expander, "figure");
  for (guint i = 0; i < drawl_draft_table_info (self->table)->n_columns; i++) {
    GtkWidget *cell = drawl_body_cell_row_new (self->draft, row, i);
    adw_expander_row_add_row (ADW_EXPANDER_ROW (line->expander), cell);
    g_ptr_array_add (line->cells, cell);
  }
  adw_preferences_group_add (ADW_PREFERENCES_GROUP (self), line->expander);
  g_ptr_array_add (self->lines, line);
  return line;
}

/* Rows are added behind the others only. */
static void
on_rows_changed (DrawlBodyRows *self, guint table)
{
  if (table != self->table)
    return;
  for (guint i = self->lines->len; i-- > 0;) {
    Line *line = self->lines->pdata[i];
    if (drawl_body_draft_has_row (self->draft, self->table, line->row))
      continue;
    adw_preferences_group_remove (ADW_PREFERENCES_GROUP (self), line->expander);
    g_ptr_array_remove_index (self->lines, i);
  }
  for (guint i = self->lines->len; i < drawl_body_draft_n_rows (self->draft, self->table); i++)
    add_line (self, drawl_body_draft_get_row (self->draft, self->table, i));
}

static void
on_add (DrawlBodyRows *self)
{
  drawl_body_draft_add_row (self->draft, self->table);
  const Line *line = self->lines->pdata[self->lines->len - 1];
  adw_expander_row_set_expanded (ADW_EXPANDER_ROW (line->expander), TRUE);
  drawl_focus_when_ready (line->cells->pdata[0]);
}

/* ---- The type ---- */

static void
drawl_body_rows_dispose (GObject *object)
{
  g_clear_object (&DRAWL_BODY_ROWS (object)->draft);
  G_OBJECT_CLASS (drawl_body_rows_parent_class)->dispose (object);
}

static void
drawl_body_rows_finalize (GObject *object)
{
  g_ptr_array_unref (DRAWL_BODY_ROWS (object)->lines);
  G_OBJECT_CLASS (drawl_body_rows_parent_class)->finalize (object);
}

static void
drawl_body_rows_class_init (DrawlBodyRowsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = drawl_body_rows_dispose;
  G_OBJECT_CLASS (klass)->finalize = drawl_body_rows_finalize;
}

static void
drawl_body_rows_init (DrawlBodyRows *self)
{
  self->lines = g_ptr_array_new_with_free_func (line_free);
  self->none_label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->none_label), 0);
  gtk_widget_add_css_class (self->none_label, "dim-label");
  adw_preferences_group_add (ADW_PREFERENCES_GROUP (self), self->none_label);
  self->add_button = gtk_button_new ();
  gtk_button_set_use_underline (GTK_BUTTON (self->add_button), TRUE);
  gtk_widget_add_css_class (self->add_button, "flat");
  gtk_widget_set_valign (self->add_button, GTK_ALIGN_CENTER);
  g_signal_connect_object (self->add_button, "clicked", G_CALLBACK (on_add), self,
                           G_CONNECT_SWAPPED);
  adw_preferences_group_set_header_suffix (ADW_PREFERENCES_GROUP (self), self->add_button);
}

GtkWidget *
drawl_body_rows_new (DrawlBodyDraft *draft, DrawlDraftTable table, const char *title,
                     const char *add)
{
  DrawlBodyRows *self = g_object_new (DRAWL_TYPE_BODY_ROWS, "title", title, NULL);
  g_auto (GStrv) parts = g_strsplit (add, "_", -1);
  g_autofree char *plain = g_strjoinv ("", parts);

  self->draft = g_object_ref (draft);
  self->table = table;
  gtk_button_set_label (GTK_BUTTON (self->add_button), add);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->add_button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  plain, -1);
  g_signal_connect_object (draft, "rows-changed", G_CALLBACK (on_rows_changed), self,
                           G_CONNECT_SWAPPED);
  on_rows_changed (self, table);
  drawl_body_rows_refresh (self, FALSE);
  return GTK_WIDGET (self);
}
