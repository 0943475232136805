/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The preview of a table of shots. Invariant: the plan is touched by "Bring In" alone; the lists
 * show the rows of `table`, which lives as long as the window does. */

#include "app/import-dialog.h"

#include "app/import-row.h"
#include "app/message.h"
#include "core/text.h"
#include "plan/figure.h"
#include "plan/table-map.h"

struct _DrawlImportDialog {
  AdwWindow parent_instance;
  DrawlPlan *plan;
  DrawlShotTable *table;
  guint position;
  char *label;
  GtkWidget *title, *bring_button, *summary_label, *warnings_box, *details_label, *switcher, *stack,
      *good_view, *bad_view;
};

static guint brought_in_signal;

G_DEFINE_FINAL_TYPE (DrawlImportDialog, drawl_import_dialog, ADW_TYPE_WINDOW)

static guint
n_bad (const DrawlShotTable *table)
{
  return table->rows->len - table->n_good;
}

static guint
n_assumed (const DrawlShotTable *table)
{
  guint n = 0;

  for (guint i = 0; i < table->rows->len; i++) {
    const DrawlShotTableRow *row = table->rows->pdata[i];
    n += row->fields != NULL && row->action_assumed ? 1 : 0;
  }
  return n;
}

gboolean
drawl_import_is_doubtful (const DrawlShotTable *table)
{
  return table->n_good == 0 || n_bad (table) > 0 || table->latin_1 || !table->has_headings ||
         table->ignored->len > 0 || n_assumed (table) > 0;
}

/* ---- What is said ---- */

static char *
summary_words (const DrawlShotTable *table)
{
  guint bad = n_bad (table);
  g_autofree char *good_count = drawl_figure_count (table->n_good);
  g_autofree char *bad_count = drawl_figure_count (bad);
  g_autofree char *in = g_strdup_printf (
      ngettext_ ("%s shot can come in.", "%s shots can come in.", table->n_good), good_count);
  g_autofree char *out =
      g_strdup_printf (ngettext_ ("%s row cannot.", "%s rows cannot.", bad), bad_count);

  if (table->rows->len == 0)
    return g_strdup (_ ("There is no row in this table."));
  if (table->n_good == 0)
    return g_strdup (
        _ ("No row can come in. Why is said below, line by line; nothing is changed."));
  return bad == 0 ? g_steal_pointer (&in) : g_strdup_printf ("%s %s", in, out);
}

static void
add_warning (DrawlImportDialog *self, const char *text, gboolean grave)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 9);
  GtkWidget *icon = gtk_image_new_from_icon_name (grave ? "dialog-warning-symbolic"
                                                        : "dialog-information-symbolic");
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_valign (icon, GTK_ALIGN_START);
  gtk_widget_set_hexpand (label, TRUE);
  if (grave)
    gtk_widget_add_css_class (icon, "warning");
  gtk_box_append (GTK_BOX (box), icon);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (self->warnings_box), box);
}

/* "Lens, Weather". */
static char *
ignored_words (const DrawlShotTable *table)
{
  GString *list = g_string_new (NULL);

  for (guint i = 0; i < table->ignored->len; i++)
    g_string_append_printf (list, "%s“%s”", i > 0 ? ", " : "",
                            (const char *)table->ignored->pdata[i]);
  return g_string_free (list, FALSE);
}

static char *
hires_words (const DrawlShotTable *table)
{
  GString *list = g_string_new (NULL);

  for (guint i = 0; i < table->hires->len; i++) {
    const DrawlHiredFields *hired = table->hires->pdata[i];
    g_string_append_printf (list, "%s%s (%s)", i > 0 ? ", " : "", hired->id, hired->body->name);
  }
  return g_string_free (list, FALSE);
}

/* What was guessed, first; then what else there is to know. */
static void
fill_warnings (DrawlImportDialog *self)
{
  const DrawlShotTable *table = self->table;
  guint assumed = n_assumed (table);

  if (table->latin_1)
    add_warning (self,
                 _ ("The text is not UTF-8. It was read as Latin-1: look whether the accents are "
                    "right before you bring it in."),
                 TRUE);
  if (!table->has_headings && table->rows->len > 0)
    add_warning (self,
                 _ ("The first row has no heading that is known. The columns are read in the order "
                    "in which Drawl writes them: slate, scene, action, capture rate …"),
                 TRUE);
  if (assumed > 0) {
    g_autofree char *count = drawl_figure_count (assumed);
    g_autofree char *text =
        g_strdup_printf (ngettext_ ("%s shot tells neither action time nor screen time: 1 s of "
                                    "action is assumed.",
                                    "%s shots tell neither action time nor screen time: 1 s of "
                                    "action is assumed.",
                                    assumed),
                         count);
    add_warning (self, text, TRUE);
  }
  if (table->ignored->len > 0) {
    g_autofree char *list = ignored_words (table);
    g_autofree char *text = g_strdup_printf (_ ("Columns left aside: %s"), list);
    add_warning (self, text, FALSE);
  }
  if (table->hires->len > 0) {
    g_autofree char *list = hires_words (table);
    g_autofree char *text = g_strdup_printf (_ ("Bodies that come along: %s"), list);
    add_warning (self, text, FALSE);
  }
}

static const char *
delimiter_words (char delimiter)
{
  return delimiter == '\t'  ? _ ("Tabs stand between the columns")
         : delimiter == ';' ? _ ("Semicolons stand between the columns")
                            : _ ("Commas stand between the columns");
}

/* How the table was read, to the last column. */
static char *
details_words (const DrawlShotTable *table)
{
  GString *text = g_string_new (delimiter_words (table->delimiter));

  g_string_append_printf (text, " · %s", table->latin_1 ? "Latin-1" : "UTF-8");
  for (guint i = 0; i < table->recognised->len; i++) {
    const DrawlTableHeading *heading = table->recognised->pdata[i];
    g_string_append_c (text, '\n');
    /* Translators: a heading as the table has it, the column that it was taken for. */
    g_string_append_printf (text, _ ("“%s” is %s"), heading->heading, heading->field);
  }
  for (guint i = 0; i < table->ignored->len; i++) {
    g_string_append_c (text, '\n');
    g_string_append_printf (text, _ ("“%s” is left aside"), (const char *)table->ignored->pdata[i]);
  }
  return g_string_free (text, FALSE);
}

static void
name_button (DrawlImportDialog *self)
{
  guint n = self->table->n_good;
  g_autofree char *count = drawl_figure_count (n);
  g_autofree char *label =
      g_strdup_printf (ngettext_ ("_Bring In %s Shot", "_Bring In %s Shots", n), count);
  g_autofree char *name =
      g_strdup_printf (ngettext_ ("Bring in %s shot", "Bring in %s shots", n), count);

  gtk_button_set_label (GTK_BUTTON (self->bring_button), label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->bring_button),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_widget_set_visible (self->bring_button, n > 0);
}

/* ---- The lists ---- */

static void
on_setup (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  const DrawlImportColumn *column = data;
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), column->number ? 1 : 0);
  gtk_label_set_wrap (GTK_LABEL (label), column->wrap);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (!column->wrap && column->width > 0) {
    gtk_label_set_single_line_mode (GTK_LABEL (label), TRUE);
    gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  }
  gtk_widget_set_size_request (label, column->width, -1);
  if (column->number)
    gtk_widget_add_css_class (label, "figure");
  gtk_list_item_set_activatable (item, FALSE);
  gtk_list_item_set_child (item, label);
}

static void
on_bind (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  g_autofree char *text = drawl_import_row_text (gtk_list_item_get_item (item), data);

  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)), text);
}

static void
add_columns (GtkWidget *view, const DrawlImportColumn *columns, guint n_columns)
{
  for (guint i = 0; i < n_columns; i++) {
    GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
    g_signal_connect (factory, "setup", G_CALLBACK (on_setup), (gpointer)&columns[i]);
    g_signal_connect (factory, "bind", G_CALLBACK (on_bind), (gpointer)&columns[i]);
    g_autoptr (GtkColumnViewColumn) column =
        gtk_column_view_column_new (_ (columns[i].title), factory);
    gtk_column_view_column_set_expand (column, columns[i].expand);
    gtk_column_view_column_set_resizable (column, !columns[i].wrap);
    gtk_column_view_append_column (GTK_COLUMN_VIEW (view), column);
  }
}

/* Rows are objects of a few bytes; the widgets are made for those in sight alone. */
static void
fill_view (DrawlImportDialog *self, GtkWidget *view, gboolean good)
{
  g_autoptr (GListStore) store = g_list_store_new (DRAWL_TYPE_IMPORT_ROW);
  g_autoptr (GPtrArray) rows = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < self->table->rows->len; i++) {
    const DrawlShotTableRow *row = self->table->rows->pdata[i];
    if ((row->fields != NULL) == good)
      g_ptr_array_add (rows, drawl_import_row_new (row));
  }
  g_list_store_splice (store, 0, 0, rows->pdata, rows->len);
  GtkSelectionModel *model =
      GTK_SELECTION_MODEL (gtk_no_selection_new (G_LIST_MODEL (g_steal_pointer (&store))));
  gtk_column_view_set_model (GTK_COLUMN_VIEW (view), model);
  g_object_unref (model);
}

static void
name_page (DrawlImportDialog *self, const char *name, const char *title, guint n)
{
  GtkStack *stack = GTK_STACK (self->stack);
  GtkStackPage *page = gtk_stack_get_page (stack, gtk_stack_get_child_by_name (stack, name));
  g_autofree char *count = drawl_figure_count (n);
  g_autofree char *text = g_strdup_printf ("%s (%s)", title, count);

  gtk_stack_page_set_title (page, text);
}

static void
fill_stack (DrawlImportDialog *self)
{
  const DrawlShotTable *table = self->table;
  guint bad = n_bad (table), n_columns;
  const DrawlImportColumn *columns = drawl_import_columns_good (&n_columns);

  add_columns (self->good_view, columns, n_columns);
  fill_view (self, self->good_view, TRUE);
  columns = drawl_import_columns_bad (&n_columns);
  add_columns (self->bad_view, columns, n_columns);
  fill_view (self, self->bad_view, FALSE);
  name_page (self, "good", _ ("Comes In"), table->n_good);
  name_page (self, "bad", _ ("Stays Out"), bad);
  gtk_widget_set_visible (self->switcher, table->n_good > 0 && bad > 0);
  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), table->n_good > 0      ? "good"
                                                             : table->rows->len > 0 ? "bad"
                                                                                    : "none");
}

static void
fill (DrawlImportDialog *self, const char *source_name)
{
  g_autofree char *summary = summary_words (self->table);
  g_autofree char *details = details_words (self->table);

  adw_window_title_set_subtitle (ADW_WINDOW_TITLE (self->title), source_name);
  gtk_label_set_text (GTK_LABEL (self->summary_label), summary);
  gtk_label_set_text (GTK_LABEL (self->details_label), details);
  fill_warnings (self);
  gtk_widget_set_visible (self->warnings_box,
                          gtk_widget_get_first_child (self->warnings_box) != NULL);
  name_button (self);
  fill_stack (self);
  gtk_window_set_focus (GTK_WINDOW (self),
                        self->table->n_good > 0 ? self->bring_button : self->bad_view);
}

/* ---- Bringing in ---- */

gboolean
drawl_import_dialog_bring_in (DrawlImportDialog *dialog)
{
  g_autoptr (GError) error = NULL;
  guint position = MIN (dialog->position, drawl_plan_n_shots (dialog->plan));

  if (!drawl_shot_table_insert (dialog->plan, dialog->table, position, dialog->label, &error)) {
    drawl_message_show (GTK_WINDOW (dialog), _ ("The Shots Could Not Be Brought In"), error);
    return FALSE;
  }
  g_signal_emit (dialog, brought_in_signal, 0, position, dialog->table->n_good);
  gtk_window_close (GTK_WINDOW (dialog));
  return TRUE;
}

/* ---- The type ---- */

static void
drawl_import_dialog_dispose (GObject *object)
{
  DrawlImportDialog *self = DRAWL_IMPORT_DIALOG (object);

  if (self->good_view != NULL) {
    gtk_column_view_set_model (GTK_COLUMN_VIEW (self->good_view), NULL);
    gtk_column_view_set_model (GTK_COLUMN_VIEW (self->bad_view), NULL);
  }
  g_clear_object (&self->plan);
  gtk_widget_dispose_template (GTK_WIDGET (self), DRAWL_TYPE_IMPORT_DIALOG);
  G_OBJECT_CLASS (drawl_import_dialog_parent_class)->dispose (object);
}

static void
drawl_import_dialog_finalize (GObject *object)
{
  DrawlImportDialog *self = DRAWL_IMPORT_DIALOG (object);

  g_clear_pointer (&self->table, drawl_shot_table_free);
  g_free (self->label);
  G_OBJECT_CLASS (drawl_import_dialog_parent_class)->finalize (object);
}

static void
drawl_import_dialog_class_init (DrawlImportDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = drawl_import_dialog_dispose;
  G_OBJECT_CLASS (klass)->finalize = drawl_import_dialog_finalize;
  brought_in_signal = g_signal_new ("brought-in", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                    NULL, NULL, NULL, G_TYPE_NONE, 2, G_TYPE_UINT, G_TYPE_UINT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/drawl/Drawl/ui/import-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlImportDialog, title);
  gtk_widget_class_bind_template_child (widget_class, DrawlImportDialog, bring_button);
  gtk_widget_class_bind_template_child (widget_class, DrawlImportDialog, summary_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlImportDialog, warnings_box);
  gtk_widget_class_bind_template_child (widget_class, DrawlImportDialog, details_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlImportDialog, switcher);
  gtk_widget_class_bind_template_child (widget_class, DrawlImportDialog, stack);
  gtk_widget_class_bind_template_child (widget_class, DrawlImportDialog, good_view);
  gtk_widget_class_bind_template_child (widget_class, DrawlImportDialog, bad_view);
  gtk_widget_class_bind_template_callback (widget_class, drawl_import_dialog_bring_in);
}

static void
drawl_import_dialog_init (DrawlImportDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

DrawlImportDialog *
drawl_import_dialog_new (GtkWindow *parent, DrawlPlan *plan, DrawlShotTable *table, guint position,
                         const char *source_name, const char *label)
{
  DrawlImportDialog *self = g_object_new (DRAWL_TYPE_IMPORT_DIALOG, "transient-for", parent, NULL);

  self->plan = g_object_ref (plan);
  self->table = table;
  self->position = position;
  self->label = g_strdup (label);
  fill (self, source_name);
  return self;
}
