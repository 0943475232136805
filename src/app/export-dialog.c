/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A plan as a file for other programs. Each format is a row of the table. What cannot be written is
 * told before a file is asked for; a file is replaced by a whole one or not at all. */

#include "app/export-dialog.h"

#include <locale.h>

#include "app/message.h"
#include "app/sheet-choice.h"
#include "core/text.h"
#include "export/format.h"
#include "export/sheet-pdf.h"
#include "plan/json-file.h"
#include "plan/shot-table.h"

enum { DELIMITER = 1 << 0, SHEET = 1 << 1 };

typedef struct {
  const char *id;
  const char *ending;
  const char *name;    /* marked for translation, with a mnemonic */
  const char *meaning; /* marked for translation */
  guint options;       /* bits */
} Format;

static const Format formats[] = {
    {"csv", ".csv", N_ ("Shot _Table"),
     N_ ("CSV, for spreadsheets. Drawl reads it back unchanged."), DELIMITER},
    {"otio", ".otio", N_ ("T_imeline for the Edit"),
     N_ ("OpenTimelineIO: the shots end to end, slowed as planned."), 0},
    {"edl", ".edl", N_ ("Edit _Decision List"),
     N_ ("EDL: the shots end to end, with a motion line where one is slowed."), 0},
    {"pdf", ".pdf", N_ ("S_heet"), N_ ("PDF, to be sent or printed elsewhere."), SHEET},
};

#define N_FORMATS G_N_ELEMENTS (formats)

static const char delimiters[] = {',', ';', '\t'};

struct _DrawlExportDialog {
  AdwWindow parent_instance;
  DrawlPlan *plan;
  char *name;
  GtkFileChooserNative *chooser;
  GtkWidget *format_group, *checks[N_FORMATS], *option_group, *delimiter_row, *sheet_row,
      *paper_row;
};

static guint written_signal;

G_DEFINE_FINAL_TYPE (DrawlExportDialog, drawl_export_dialog, ADW_TYPE_WINDOW)

/* ---- The choice ---- */

static const Format *
chosen (DrawlExportDialog *self)
{
  for (gsize i = 0; i < N_FORMATS; i++)
    if (gtk_check_button_get_active (GTK_CHECK_BUTTON (self->checks[i])))
      return &formats[i];
  return &formats[0];
}

static guint
place_in (GtkWidget *row)
{
  return adw_combo_row_get_selected (ADW_COMBO_ROW (row));
}

static void
refresh_options (DrawlExportDialog *self)
{
  guint options = chosen (self)->options;

  gtk_widget_set_visible (self->option_group, options != 0);
  gtk_widget_set_visible (self->delimiter_row, (options & DELIMITER) != 0);
  gtk_widget_set_visible (self->sheet_row, (options & SHEET) != 0);
  gtk_widget_set_visible (self->paper_row, (options & SHEET) != 0);
}

void
drawl_export_dialog_choose (DrawlExportDialog *dialog, const char *format)
{
  for (gsize i = 0; i < N_FORMATS; i++)
    if (g_str_equal (formats[i].id, format))
      gtk_check_button_set_active (GTK_CHECK_BUTTON (dialog->checks[i]), TRUE);
}

/* ---- What is written ---- */

static DrawlSheet *
make_sheet (DrawlExportDialog *self)
{
  return drawl_sheet_choice_make (self->plan, place_in (self->sheet_row),
                                  place_in (self->paper_row));
}

/* NULL for a sheet, and on an error. */
static char *
make_text (DrawlExportDialog *self, GPtrArray *warnings, GError **error)
{
  const Format *format = chosen (self);

  if ((format->options & SHEET) != 0)
    return NULL;
  if ((format->options & DELIMITER) != 0)
    return drawl_shot_table_text (self->plan, NULL, 0, delimiters[place_in (self->delimiter_row)]);
  return drawl_export_find (format->id)->text (self->plan, warnings, error);
}

static gboolean
write_to (DrawlExportDialog *self, GFile *file, GPtrArray *warnings, GError **error)
{
  if ((chosen (self)->options & SHEET) != 0) {
    g_autoptr (DrawlSheet) sheet = make_sheet (self);
    return drawl_sheet_pdf_save (sheet, file, error);
  }
  g_autofree char *text = make_text (self, warnings, error);
  return text != NULL && drawl_json_save (file, text, strlen (text), FALSE, NULL, error);
}

gboolean
drawl_export_dialog_write (DrawlExportDialog *dialog, GFile *file)
{
  g_autoptr (GPtrArray) warnings = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;

  if (!write_to (dialog, file, warnings, &error)) {
    drawl_message_show (GTK_WINDOW (dialog), _ ("The File Could Not Be Written"), error);
    return FALSE;
  }
  g_signal_emit (dialog, written_signal, 0, file, warnings);
  gtk_window_close (GTK_WINDOW (dialog));
  return TRUE;
}

/* ---- Where to ---- */

static void
on_chosen (DrawlExportDialog *self, int response)
{
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (self->chooser));
  g_clear_object (&self->chooser);
  if (file != NULL)
    drawl_export_dialog_write (self, file);
}

static void
on_export (DrawlExportDialog *self)
{
  g_autoptr (GPtrArray) unused = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = make_text (self, unused, &error);
  g_autofree char *name = g_strconcat (self->name, chosen (self)->ending, NULL);

  if (error != NULL) {
    drawl_message_show (GTK_WINDOW (self), _ ("The Plan Cannot Be Written Like This"), error);
    return;
  }
  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (_ ("Export the Plan"), GTK_WINDOW (self),
                                               GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Export"), NULL);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (self->chooser), name);
  g_signal_connect_object (self->chooser, "response", G_CALLBACK (on_chosen), self,
                           G_CONNECT_SWAPPED);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

/* ---- The type ---- */

static void
drawl_export_dialog_dispose (GObject *object)
{
  DrawlExportDialog *self = DRAWL_EXPORT_DIALOG (object);

  g_clear_object (&self->chooser);
  g_clear_object (&self->plan);
  gtk_widget_dispose_template (GTK_WIDGET (self), DRAWL_TYPE_EXPORT_DIALOG);
  G_OBJECT_CLASS (drawl_export_dialog_parent_class)->dispose (object);
}

static void
drawl_export_dialog_finalize (GObject *object)
{
  g_free (DRAWL_EXPORT_DIALOG (object)->name);
  G_OBJECT_CLASS (drawl_export_dialog_parent_class)->finalize (object);
}

static void
drawl_export_dialog_class_init (DrawlExportDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = drawl_export_dialog_dispose;
  G_OBJECT_CLASS (klass)->finalize = drawl_export_dialog_finalize;
  written_signal = g_signal_new ("written", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 2, G_TYPE_FILE, G_TYPE_PTR_ARRAY);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/drawl/Drawl/ui/export-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlExportDialog, format_group);
  gtk_widget_class_bind_template_child (widget_class, DrawlExportDialog, option_group);
  gtk_widget_class_bind_template_child (widget_class, DrawlExportDialog, delimiter_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlExportDialog, sheet_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlExportDialog, paper_row);
  gtk_widget_class_bind_template_callback (widget_class, on_export);
}

static void
add_format (DrawlExportDialog *self, gsize i)
{
  GtkWidget *row = adw_action_row_new (), *check = gtk_check_button_new ();
  g_auto (GStrv) parts = g_strsplit (_ (formats[i].name), "_", -1);
  g_autofree char *name = g_strjoinv ("", parts);

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), _ (formats[i].name));
  adw_preferences_row_set_use_underline (ADW_PREFERENCES_ROW (row), TRUE);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), _ (formats[i].meaning));
  adw_action_row_add_prefix (ADW_ACTION_ROW (row), check);
  adw_action_row_set_activatable_widget (ADW_ACTION_ROW (row), check);
  gtk_widget_set_valign (check, GTK_ALIGN_CENTER);
  gtk_accessible_update_property (GTK_ACCESSIBLE (check), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  self->checks[i] = check;
  if (i > 0)
    gtk_check_button_set_group (GTK_CHECK_BUTTON (check), GTK_CHECK_BUTTON (self->checks[0]));
  adw_preferences_group_add (ADW_PREFERENCES_GROUP (self->format_group), row);
}

static void
drawl_export_dialog_init (DrawlExportDialog *self)
{
  g_autoptr (GListModel) kinds = drawl_sheet_choice_kinds ();
  g_autoptr (GListModel) papers = drawl_sheet_choice_papers ();
  gboolean comma = g_str_equal (localeconv ()->decimal_point, ",");

  gtk_widget_init_template (GTK_WIDGET (self));
  for (gsize i = 0; i < N_FORMATS; i++)
    add_format (self, i);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->checks[0]), TRUE);
  for (gsize i = 0; i < N_FORMATS; i++)
    g_signal_connect_object (self->checks[i], "toggled", G_CALLBACK (refresh_options), self,
                             G_CONNECT_SWAPPED);
  adw_combo_row_set_model (ADW_COMBO_ROW (self->sheet_row), kinds);
  adw_combo_row_set_model (ADW_COMBO_ROW (self->paper_row), papers);
  adw_combo_row_set_selected (ADW_COMBO_ROW (self->paper_row), drawl_sheet_choice_usual_paper ());
  /* As the spreadsheets of the locale expect it. */
  adw_combo_row_set_selected (ADW_COMBO_ROW (self->delimiter_row), comma ? 1 : 0);
  refresh_options (self);
  gtk_window_set_focus (GTK_WINDOW (self), self->checks[0]);
}

DrawlExportDialog *
drawl_export_dialog_new (GtkWindow *parent, DrawlPlan *plan, const char *name)
{
  DrawlExportDialog *self = g_object_new (DRAWL_TYPE_EXPORT_DIALOG, "transient-for", parent, NULL);

  self->plan = g_object_ref (plan);
  self->name = g_strdup (name);
  return self;
}
