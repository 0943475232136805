/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The settings of a plan. Each entry that can be wrong is a row of the table of checks: what is
 * typed is read at every change; the first that is wrong says why at the foot of the window. */

#include "app/plan-dialog.h"

#include "app/message.h"
#include "core/error.h"
#include "core/rate.h"
#include "core/text.h"
#include "plan/figure.h"

#define DAY_FORMAT "%Y-%m-%d"

struct _DrawlPlanDialog {
  AdwWindow parent_instance;
  DrawlPlan *plan;
  gboolean filling;
  GtkWidget *title_row, *production_row, *day_row, *calendar_popover, *calendar, *playback_row,
      *mains_row, *length_row, *reserve_row, *span_switch, *notes_view, *error_revealer,
      *error_label;
};

static guint applied_signal;

G_DEFINE_FINAL_TYPE (DrawlPlanDialog, drawl_plan_dialog, ADW_TYPE_WINDOW)

/* ---- What is typed ---- */

static gboolean
read_day (const char *text, DrawlPlanSettings *settings, GError **error)
{
  g_autofree char *day = g_strstrip (g_strdup (text));
  g_autofree char *noon = g_strconcat (day, "T12:00:00Z", NULL);
  g_autoptr (GDateTime) date = g_date_time_new_from_iso8601 (noon, NULL);

  if (*day != '\0' && (date == NULL || strlen (day) != strlen ("2026-03-14"))) {
    g_set_error_literal (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_SYNTAX,
                         _ ("a day such as 2026-03-14 is expected"));
    return FALSE;
  }
  g_free (settings->day);
  settings->day = g_steal_pointer (&day);
  return TRUE;
}

static gboolean
read_playback (const char *text, DrawlPlanSettings *settings, GError **error)
{
  return drawl_rate_parse (text, &settings->playback, error);
}

static gboolean
read_reserve (const char *text, DrawlPlanSettings *settings, GError **error)
{
  static const char *const units[] = {"%", NULL};
  DrawlRational percent;

  if (!drawl_rational_parse_unit (text, units, &percent, error))
    return FALSE;
  if (percent.num < 0 || drawl_rational_compare (percent, drawl_rational_whole (100)) >= 0) {
    g_set_error_literal (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_RANGE,
                         _ ("a reserve of at least 0 and below 100 per cent is expected"));
    return FALSE;
  }
  settings->reserve_percent = percent;
  return TRUE;
}

typedef struct {
  gsize row; /* where in the dialog the entry stands */
  gboolean (*read) (const char *text, DrawlPlanSettings *settings, GError **error);
} Check;

static const Check checks[] = {
    {G_STRUCT_OFFSET (DrawlPlanDialog, day_row), read_day},
    {G_STRUCT_OFFSET (DrawlPlanDialog, playback_row), read_playback},
    {G_STRUCT_OFFSET (DrawlPlanDialog, reserve_row), read_reserve},
};

static void
mark (GtkWidget *row, gboolean wrong, const char *why)
{
  GtkAccessible *accessible = GTK_ACCESSIBLE (row);

  if (wrong) {
    gtk_widget_add_css_class (row, "error");
    gtk_accessible_update_state (accessible, GTK_ACCESSIBLE_STATE_INVALID,
                                 GTK_ACCESSIBLE_INVALID_TRUE, -1);
    gtk_accessible_update_property (accessible, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, why, -1);
  } else {
    gtk_widget_remove_css_class (row, "error");
    gtk_accessible_reset_state (accessible, GTK_ACCESSIBLE_STATE_INVALID);
    gtk_accessible_reset_property (accessible, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
  }
}

/* What was shown and left alone is kept to the last digit, however it was rounded to be shown. */
static gboolean
read_entry (const Check *check, GtkWidget *row, DrawlPlanSettings *settings, GError **error)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (row));

  return g_strcmp0 (text, g_object_get_data (G_OBJECT (row), "shown")) == 0 ||
         check->read (text, settings, error);
}

static void
show (GtkWidget *row, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (row), text);
  g_object_set_data_full (G_OBJECT (row), "shown", g_strdup (text), g_free);
}

/* Reads what can be wrong into @settings, marks what is, and returns the first wrong entry. */
static GtkWidget *
read_entries (DrawlPlanDialog *self, DrawlPlanSettings *settings)
{
  GtkWidget *first = NULL;

  for (gsize i = 0; i < G_N_ELEMENTS (checks); i++) {
    GtkWidget *row = G_STRUCT_MEMBER (GtkWidget *, self, checks[i].row);
    g_autoptr (GError) error = NULL;
    gboolean good = read_entry (&checks[i], row, settings, &error);
    g_autofree char *why = good ? NULL : drawl_message_sentence (error);
    mark (row, !good, why);
    if (!good && first == NULL) {
      first = row;
      gtk_label_set_text (GTK_LABEL (self->error_label), why);
    }
  }
  gtk_revealer_set_reveal_child (GTK_REVEALER (self->error_revealer), first != NULL);
  return first;
}

static void
on_typed (DrawlPlanDialog *self)
{
  if (self->filling)
    return;
  g_autoptr (DrawlPlanSettings) unused =
      drawl_plan_settings_copy (drawl_plan_get_settings (self->plan));

  read_entries (self, unused);
}

/* ---- All of it ---- */

static void
take_text (char **member, GtkWidget *row)
{
  g_free (*member);
  *member = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (row))));
}

/* A plan that does not tell its unit goes on not telling it, until another one is chosen. */
static void
take_length_unit (DrawlPlanDialog *self, DrawlPlanSettings *settings)
{
  guint chosen = adw_combo_row_get_selected (ADW_COMBO_ROW (self->length_row));

  if (chosen == drawl_plan_get_length_unit (self->plan))
    return;
  g_free (settings->length_unit);
  settings->length_unit = g_strdup (drawl_length_unit_id ((DrawlLengthUnit)chosen));
}

static void
read_others (DrawlPlanDialog *self, DrawlPlanSettings *settings)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (self->notes_view));
  GtkTextIter start, end;

  take_text (&settings->title, self->title_row);
  take_text (&settings->production, self->production_row);
  settings->mains_hz = adw_combo_row_get_selected (ADW_COMBO_ROW (self->mains_row)) == 1 ? 60 : 50;
  settings->takes_span = gtk_switch_get_active (GTK_SWITCH (self->span_switch));
  take_length_unit (self, settings);
  gtk_text_buffer_get_bounds (buffer, &start, &end);
  g_free (settings->notes);
  settings->notes = gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
}

gboolean
drawl_plan_dialog_apply (DrawlPlanDialog *dialog)
{
  g_autoptr (DrawlPlanSettings) settings =
      drawl_plan_settings_copy (drawl_plan_get_settings (dialog->plan));
  g_autoptr (GError) error = NULL;
  GtkWidget *wrong = read_entries (dialog, settings);

  if (wrong != NULL) {
    gtk_widget_grab_focus (wrong);
    return FALSE;
  }
  read_others (dialog, settings);
  if (!drawl_plan_set_settings (dialog->plan, settings, _ ("Change Plan Settings"), &error)) {
    drawl_message_show (GTK_WINDOW (dialog), _ ("The Settings Could Not Be Taken"), error);
    return FALSE;
  }
  g_signal_emit (dialog, applied_signal, 0);
  gtk_window_close (GTK_WINDOW (dialog));
  return TRUE;
}

static void
on_day_selected (DrawlPlanDialog *self)
{
  if (self->filling)
    return;
  g_autoptr (GDateTime) date = gtk_calendar_get_date (GTK_CALENDAR (self->calendar));
  g_autofree char *day = g_date_time_format (date, DAY_FORMAT);

  gtk_editable_set_text (GTK_EDITABLE (self->day_row), day);
  gtk_popover_popdown (GTK_POPOVER (self->calendar_popover));
}

static void
fill (DrawlPlanDialog *self)
{
  const DrawlPlanSettings *settings = drawl_plan_get_settings (self->plan);
  g_autofree char *playback = drawl_figure_rate_number (settings->playback);
  g_autofree char *reserve = drawl_figure_number (settings->reserve_percent, 2);
  g_autofree char *noon = g_strconcat (settings->day, "T12:00:00Z", NULL);
  g_autoptr (GDateTime) date = g_date_time_new_from_iso8601 (noon, NULL);

  self->filling = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->title_row), settings->title);
  gtk_editable_set_text (GTK_EDITABLE (self->production_row), settings->production);
  show (self->day_row, settings->day);
  show (self->playback_row, playback);
  show (self->reserve_row, reserve);
  adw_combo_row_set_selected (ADW_COMBO_ROW (self->mains_row), settings->mains_hz == 60 ? 1 : 0);
  adw_combo_row_set_selected (ADW_COMBO_ROW (self->length_row),
                              drawl_plan_get_length_unit (self->plan));
  gtk_switch_set_active (GTK_SWITCH (self->span_switch), settings->takes_span);
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (GTK_TEXT_VIEW (self->notes_view)),
                            settings->notes, -1);
  if (date != NULL)
    gtk_calendar_select_day (GTK_CALENDAR (self->calendar), date);
  self->filling = FALSE;
}

static void
drawl_plan_dialog_dispose (GObject *object)
{
  DrawlPlanDialog *self = DRAWL_PLAN_DIALOG (object);

  g_clear_object (&self->plan);
  gtk_widget_dispose_template (GTK_WIDGET (self), DRAWL_TYPE_PLAN_DIALOG);
  G_OBJECT_CLASS (drawl_plan_dialog_parent_class)->dispose (object);
}

static void
drawl_plan_dialog_class_init (DrawlPlanDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = drawl_plan_dialog_dispose;
  applied_signal = g_signal_new ("applied", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/drawl/Drawl/ui/plan-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlPlanDialog, title_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlPlanDialog, production_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlPlanDialog, day_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlPlanDialog, calendar_popover);
  gtk_widget_class_bind_template_child (widget_class, DrawlPlanDialog, calendar);
  gtk_widget_class_bind_template_child (widget_class, DrawlPlanDialog, playback_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlPlanDialog, mains_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlPlanDialog, length_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlPlanDialog, reserve_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlPlanDialog, span_switch);
  gtk_widget_class_bind_template_child (widget_class, DrawlPlanDialog, notes_view);
  gtk_widget_class_bind_template_child (widget_class, DrawlPlanDialog, error_revealer);
  gtk_widget_class_bind_template_child (widget_class, DrawlPlanDialog, error_label);
  gtk_widget_class_bind_template_callback (widget_class, on_day_selected);
  gtk_widget_class_bind_template_callback (widget_class, drawl_plan_dialog_apply);
}

static void
drawl_plan_dialog_init (DrawlPlanDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  for (gsize i = 0; i < G_N_ELEMENTS (checks); i++)
    g_signal_connect_object (G_STRUCT_MEMBER (GtkWidget *, self, checks[i].row), "changed",
                             G_CALLBACK (on_typed), self, G_CONNECT_SWAPPED);
}

DrawlPlanDialog *
drawl_plan_dialog_new (GtkWindow *parent, DrawlPlan *plan)
{
  DrawlPlanDialog *self = g_object_new (DRAWL_TYPE_PLAN_DIALOG, "transient-for", parent, NULL);

  self->plan = g_object_ref (plan);
  fill (self);
  return self;
}
