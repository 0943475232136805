/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The choice of several. The list is made when it opens, of what the draft has then. */

#include "app/body-picker.h"

#include <string.h>

#include "core/text.h"

#define LIST_MAX_HEIGHT 320
#define LABEL_CHARS 9

struct _DrawlBodyPicker {
  GtkWidget parent_instance;
  DrawlBodyDraft *draft;
  DrawlDraftRow *row;
  guint column;
  GtkWidget *button, *label;
};

G_DEFINE_FINAL_TYPE (DrawlBodyPicker, drawl_body_picker, GTK_TYPE_WIDGET)

static const DrawlDraftColumn *
column_of (DrawlBodyPicker *self)
{
  return &drawl_draft_table_info (drawl_draft_row_get_table (self->row))->columns[self->column];
}

/* What a row is called where it is chosen: its name, or its id while it has none. */
static const char *
name_of (DrawlBodyPicker *self, DrawlDraftRow *row)
{
  DrawlDraftTable table = drawl_draft_row_get_table (row);
  const char *name = drawl_body_draft_get (self->draft, row, drawl_draft_column (table, "name"));

  return *name != '\0' ? name : _ ("Unnamed");
}

/* ---- The button ---- */

static char *
names_of_rows (DrawlBodyPicker *self)
{
  DrawlDraftTable target = column_of (self)->target;
  g_autoptr (GString) names = g_string_new (NULL);
  guint n = drawl_body_draft_n_rows (self->draft, target);
  guint chosen = 0;

  for (guint i = 0; i < n; i++) {
    DrawlDraftRow *row = drawl_body_draft_get_row (self->draft, target, i);
    if (!drawl_body_draft_refers (self->row, self->column, row))
      continue;
    g_string_append_printf (names, "%s%s", chosen > 0 ? ", " : "", name_of (self, row));
    chosen++;
  }
  if (chosen == n && n > 1)
    return g_strdup (_ ("All"));
  return g_string_free (g_steal_pointer (&names), FALSE);
}

void
drawl_body_picker_refresh (DrawlBodyPicker *picker)
{
  g_autofree char *names =
      column_of (picker)->kind == DRAWL_DRAFT_ROWS
          ? names_of_rows (picker)
          : g_strdup (drawl_body_draft_get (picker->draft, picker->row, picker->column));

  gtk_label_set_text (GTK_LABEL (picker->label), *names != '\0' ? names : "—");
  gtk_widget_set_tooltip_text (picker->button, *names != '\0' ? names : NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (picker->button),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  *names != '\0' ? names : _ ("None"), -1);
}

/* ---- The list ---- */

static void
on_row_toggled (DrawlBodyPicker *self, GtkCheckButton *check)
{
  drawl_body_draft_refer (self->draft, self->row, self->column,
                          g_object_get_data (G_OBJECT (check), "row"),
                          gtk_check_button_get_active (check));
}

static gboolean
has_word (const char *words, const char *word)
{
  g_auto (GStrv) all = g_strsplit (words, " ", -1);
  return g_strv_contains ((const char *const *)all, word);
}

/* The chosen ones in the order of the choices. */
static void
on_choice_toggled (DrawlBodyPicker *self, GtkCheckButton *check)
{
  const char *id = g_object_get_data (G_OBJECT (check), "id");
  g_autofree char *before = g_strdup (drawl_body_draft_get (self->draft, self->row, self->column));
  g_autoptr (GString) after = g_string_new (NULL);
  DrawlDraftChoice choice;

  for (guint i = 0; column_of (self)->choice (i, &choice); i++) {
    gboolean chosen = g_str_equal (choice.id, id) ? gtk_check_button_get_active (check)
                                                  : has_word (before, choice.id);
    if (chosen)
      g_string_append_printf (after, "%s%s", after->len > 0 ? " " : "", choice.id);
  }
  drawl_body_draft_set (self->draft, self->row, self->column, after->str);
}

static GtkWidget *
append_check (DrawlBodyPicker *self, GtkWidget *box, const char *name, gboolean active,
              const char *key, gpointer value, GCallback toggled)
{
  GtkWidget *check = gtk_check_button_new_with_label (name);

  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), active);
  g_object_set_data (G_OBJECT (check), key, value);
  g_signal_connect_object (check, "toggled", toggled, self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (box), check);
  return check;
}

static void
append_rows (DrawlBodyPicker *self, GtkWidget *box)
{
  DrawlDraftTable target = column_of (self)->target;

  for (guint i = 0; i < drawl_body_draft_n_rows (self->draft, target); i++) {
    DrawlDraftRow *row = drawl_body_draft_get_row (self->draft, target, i);
    if (row != self->row)
      append_check (self, box, name_of (self, row),
                    drawl_body_draft_refers (self->row, self->column, row), "row", row,
                    G_CALLBACK (on_row_toggled));
  }
}

static void
append_choices (DrawlBodyPicker *self, GtkWidget *box)
{
  const char *chosen = drawl_body_draft_get (self->draft, self->row, self->column);
  DrawlDraftChoice choice;

  for (guint i = 0; column_of (self)->choice (i, &choice); i++)
    append_check (self, box, choice.name, has_word (chosen, choice.id), "id", (gpointer)choice.id,
                  G_CALLBACK (on_choice_toggled));
}

static void
make_popover (GtkMenuButton *button, gpointer data)
{
  DrawlBodyPicker *self = data;
  GtkWidget *popover = gtk_popover_new (), *scrolled = gtk_scrolled_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);

  if (column_of (self)->kind == DRAWL_DRAFT_ROWS)
    append_rows (self, box);
  else
    append_choices (self, box);
  if (gtk_widget_get_first_child (box) == NULL)
    gtk_box_append (GTK_BOX (box), gtk_label_new (_ ("There is nothing to choose from yet")));
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled), LIST_MAX_HEIGHT);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), box);
  gtk_popover_set_child (GTK_POPOVER (popover), scrolled);
  gtk_menu_button_set_popover (button, popover);
}

/* ---- The type ---- */

static void
drawl_body_picker_dispose (GObject *object)
{
  DrawlBodyPicker *self = DRAWL_BODY_PICKER (object);

  g_clear_pointer (&self->button, gtk_widget_unparent);
  g_clear_object (&self->draft);
  G_OBJECT_CLASS (drawl_body_picker_parent_class)->dispose (object);
}

static void
drawl_body_picker_class_init (DrawlBodyPickerClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = drawl_body_picker_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
drawl_body_picker_init (DrawlBodyPicker *self)
{
  self->button = gtk_menu_button_new ();
  self->label = gtk_label_new (NULL);
  gtk_label_set_ellipsize (GTK_LABEL (self->label), PANGO_ELLIPSIZE_END);
  gtk_label_set_xalign (GTK_LABEL (self->label), 0);
  gtk_label_set_width_chars (GTK_LABEL (self->label), LABEL_CHARS);
  gtk_menu_button_set_child (GTK_MENU_BUTTON (self->button), self->label);
  gtk_menu_button_set_always_show_arrow (GTK_MENU_BUTTON (self->button), TRUE);
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (self->button), make_popover, self, NULL);
  gtk_widget_set_parent (self->button, GTK_WIDGET (self));
}

GtkWidget *
drawl_body_picker_new (DrawlBodyDraft *draft, DrawlDraftRow *row, guint column, const char *label)
{
  DrawlBodyPicker *self = g_object_new (DRAWL_TYPE_BODY_PICKER, NULL);

  self->draft = g_object_ref (draft);
  self->row = row;
  self->column = column;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  label, -1);
  drawl_body_picker_refresh (self);
  return GTK_WIDGET (self);
}
