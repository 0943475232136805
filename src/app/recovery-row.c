/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A row of the unsaved work. Invariant: what is wrong stands in words in the row, one line for each
 * thing; only what can be recovered has the button for it. */

#include "app/recovery-row.h"

#include "app/message.h"
#include "app/tooltip.h"
#include "core/text.h"

enum { PROP_DISCARDED = 1, N_PROPS };

static GParamSpec *props[N_PROPS];
static guint recover_signal;

struct _DrawlRecoveryRow {
  GtkListBoxRow parent_instance;
  DrawlJournalEntry *entry;
  gboolean discarded;
  GtkWidget *words, *title_label, *file_label, *edits_label, *trouble_box, *trouble_label,
      *discarded_label, *discard_button, *recover_button;
};

G_DEFINE_FINAL_TYPE (DrawlRecoveryRow, drawl_recovery_row, GTK_TYPE_LIST_BOX_ROW)

static void
on_recover (DrawlRecoveryRow *self)
{
  g_signal_emit (self, recover_signal, 0);
}

static char *
dup_title (DrawlRecoveryRow *self)
{
  const char *title = drawl_journal_entry_get_title (self->entry);

  if (!drawl_journal_entry_can_recover (self->entry))
    return g_strdup (_ ("Unreadable"));
  return g_strdup (*title != '\0' ? title : _ ("Untitled Plan"));
}

static void
name_button (GtkWidget *button, const char *label, const char *name)
{
  gtk_button_set_label (GTK_BUTTON (button), label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void
refresh_discarded (DrawlRecoveryRow *self)
{
  g_autofree char *title = dup_title (self);
  g_autofree char *name =
      g_strdup_printf (self->discarded ? _ ("Keep “%s” after all") : _ ("Discard “%s”"), title);

  gtk_widget_set_opacity (self->words, self->discarded ? 0.5 : 1);
  gtk_widget_set_visible (self->discarded_label, self->discarded);
  gtk_widget_set_visible (self->recover_button,
                          !self->discarded && drawl_journal_entry_can_recover (self->entry));
  name_button (self->discard_button, self->discarded ? _ ("_Keep After All") : _ ("_Discard"),
               name);
}

static void
on_discard (DrawlRecoveryRow *self)
{
  self->discarded = !self->discarded;
  refresh_discarded (self);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_DISCARDED]);
}

/* ---- Words ---- */

/* Of what cannot be read, the journal itself. */
static void
show_file (DrawlRecoveryRow *self)
{
  GFile *file = drawl_journal_entry_get_file (self->entry);
  g_autofree char *name = file != NULL ? g_file_get_parse_name (file) : NULL;

  if (!drawl_journal_entry_can_recover (self->entry)) {
    g_free (name);
    name = g_filename_display_name (drawl_journal_entry_get_path (self->entry));
  }

  gtk_label_set_text (GTK_LABEL (self->file_label), name != NULL ? name : _ ("Not saved yet"));
  drawl_tooltip_set (self->file_label, name);
}

static void
show_edits (DrawlRecoveryRow *self)
{
  gint64 edits = drawl_journal_entry_get_edits (self->entry);
  GDateTime *time = drawl_journal_entry_get_time (self->entry);
  g_autofree char *when = time != NULL ? g_date_time_format (time, "%x %H:%M") : NULL;
  g_autofree char *count = g_strdup_printf ("%" G_GINT64_FORMAT, edits);
  g_autofree char *text =
      when != NULL
          /* Translators: how many edits; day and time of the last one. */
          ? g_strdup_printf (
                ngettext_ ("%s edit, on %s", "%s edits, the last on %s", (gulong)edits), count,
                when)
          : g_strdup ("");

  gtk_label_set_text (GTK_LABEL (self->edits_label), text);
  gtk_widget_set_visible (self->edits_label, when != NULL);
}

/* What has become of the file meanwhile, in words, or NULL; only of files that are at hand. */
static const char *
find_file_trouble (DrawlRecoveryRow *self)
{
  GFile *file = drawl_journal_entry_get_file (self->entry);
  const char *etag = drawl_journal_entry_get_etag (self->entry);

  if (file == NULL || !g_file_is_native (file))
    return NULL;
  g_autoptr (GFileInfo) info =
      g_file_query_info (file, G_FILE_ATTRIBUTE_ETAG_VALUE, G_FILE_QUERY_INFO_NONE, NULL, NULL);
  if (info == NULL)
    return _ ("The file is no longer there; saving puts it back.");
  if (etag != NULL && g_strcmp0 (g_file_info_get_etag (info), etag) != 0)
    return _ ("The file has been changed since. Saving will ask before it writes over that.");
  return NULL;
}

static void
show_trouble (DrawlRecoveryRow *self, const char *problem)
{
  const char *file_trouble = find_file_trouble (self);
  g_autofree char *text =
      g_strjoin (problem != NULL && file_trouble != NULL ? "\n" : "",
                 problem != NULL ? problem : "", file_trouble != NULL ? file_trouble : "", NULL);

  gtk_label_set_text (GTK_LABEL (self->trouble_label), text);
  gtk_widget_set_visible (self->trouble_box, *text != '\0');
}

static char *
dup_problem (DrawlRecoveryRow *self)
{
  const char *problem = drawl_journal_entry_get_problem (self->entry);

  if (problem == NULL)
    return NULL;
  g_autoptr (GError) error = g_error_new_literal (G_IO_ERROR, G_IO_ERROR_FAILED, problem);
  return drawl_message_sentence (error);
}

static void
fill (DrawlRecoveryRow *self)
{
  g_autofree char *title = dup_title (self);
  g_autofree char *recover = g_strdup_printf (_ ("Recover “%s”"), title);
  g_autofree char *problem = dup_problem (self);

  gtk_label_set_text (GTK_LABEL (self->title_label), title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  name_button (self->recover_button, _ ("_Recover"), recover);
  show_file (self);
  show_edits (self);
  show_trouble (self, problem);
  refresh_discarded (self);
}

/* ---- The type ---- */

static void
drawl_recovery_row_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  if (prop_id == PROP_DISCARDED)
    g_value_set_boolean (value, DRAWL_RECOVERY_ROW (object)->discarded);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static void
drawl_recovery_row_dispose (GObject *object)
{
  g_clear_object (&DRAWL_RECOVERY_ROW (object)->entry);
  gtk_widget_dispose_template (GTK_WIDGET (object), DRAWL_TYPE_RECOVERY_ROW);
  G_OBJECT_CLASS (drawl_recovery_row_parent_class)->dispose (object);
}

static void
drawl_recovery_row_class_init (DrawlRecoveryRowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = drawl_recovery_row_get_property;
  object_class->dispose = drawl_recovery_row_dispose;
  props[PROP_DISCARDED] =
      g_param_spec_boolean ("discarded", NULL, NULL, FALSE,
                            G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, props);
  recover_signal = g_signal_new ("recover", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource (widget_class, "/org/drawl/Drawl/ui/recovery-row.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlRecoveryRow, words);
  gtk_widget_class_bind_template_child (widget_class, DrawlRecoveryRow, title_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlRecoveryRow, file_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlRecoveryRow, edits_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlRecoveryRow, trouble_box);
  gtk_widget_class_bind_template_child (widget_class, DrawlRecoveryRow, trouble_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlRecoveryRow, discarded_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlRecoveryRow, discard_button);
  gtk_widget_class_bind_template_child (widget_class, DrawlRecoveryRow, recover_button);
  gtk_widget_class_bind_template_callback (widget_class, on_recover);
  gtk_widget_class_bind_template_callback (widget_class, on_discard);
}

static void
drawl_recovery_row_init (DrawlRecoveryRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

DrawlRecoveryRow *
drawl_recovery_row_new (DrawlJournalEntry *entry)
{
  DrawlRecoveryRow *self = g_object_new (DRAWL_TYPE_RECOVERY_ROW, NULL);

  self->entry = g_object_ref (entry);
  fill (self);
  return self;
}

void
drawl_recovery_row_focus (DrawlRecoveryRow *row)
{
  gtk_widget_grab_focus (gtk_widget_get_visible (row->recover_button) ? row->recover_button
                                                                      : row->discard_button);
}

DrawlJournalEntry *
drawl_recovery_row_get_entry (DrawlRecoveryRow *row)
{
  return row->entry;
}

gboolean
drawl_recovery_row_get_discarded (DrawlRecoveryRow *row)
{
  return row->discarded;
}

void
drawl_recovery_row_refuse (DrawlRecoveryRow *row, const GError *error)
{
  g_autofree char *problem = drawl_message_sentence (error);

  show_trouble (row, problem);
  gtk_widget_set_sensitive (row->recover_button, FALSE);
}
