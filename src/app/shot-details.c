/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The details of a shot. Entries are rows of a table (shot-entries.c); the rest are choices,
 * switches and notes. Invariant: while `filling`, switches move by themselves and nothing is asked
 * of the plan. */

#include "app/shot-details.h"

#include <adwaita.h>

#include "app/choice-row.h"
#include "app/figure-button.h"
#include "app/kept-texts.h"
#include "app/shot-edit.h"
#include "app/shot-entries.h"
#include "core/text.h"
#include "core/timecode.h"

static const DrawlFigure figures[] = {
    DRAWL_FIGURE_SCREEN_TIMECODE,
    DRAWL_FIGURE_FRAMES,
    DRAWL_FIGURE_TAKE_FRAMES,
    DRAWL_FIGURE_SPEED_PERCENT,
};

#define N_FIGURES G_N_ELEMENTS (figures)
#define N_GROUPS (DRAWL_ENTRIES_TAKE + 1)

struct _DrawlShotDetails {
  GtkWidget parent_instance;
  DrawlPlan *plan;
  DrawlShot *shot;
  gulong changed_handler;
  gboolean filling;
  GtkWidget *entries[DRAWL_N_SHOT_ENTRIES];
  DrawlEdit *edits[DRAWL_N_SHOT_ENTRIES];
  DrawlKeptTexts *kept;
  GtkWidget *content;
  GtkWidget *shot_error, *camera_error, *take_error;
  GtkWidget *must_switch, *drop_row, *drop_switch;
  GtkWidget *body_row, *size_row, *codec_row;
  GtkWidget *notes_view;
  char *shown_notes; /* the notes of the shot as the view was last given them */
  GtkWidget *figures_group;
  GtkWidget *figure_rows[N_FIGURES], *figure_buttons[N_FIGURES];
};

G_DEFINE_FINAL_TYPE (DrawlShotDetails, drawl_shot_details, GTK_TYPE_WIDGET)

/* ---- Edits ---- */

static DrawlShotFields *
copy_fields (DrawlShotDetails *self)
{
  return drawl_shot_fields_copy (drawl_shot_get_fields (self->shot));
}

static void
set_fields (DrawlShotDetails *self, const DrawlShotFields *fields, const char *label)
{
  drawl_plan_set_shot (self->plan, self->shot, fields, label, NULL);
}

static void
on_typed (DrawlShotDetails *self, const char *text, DrawlEdit *edit)
{
  const DrawlShotEntry *entry = g_object_get_data (G_OBJECT (edit), "entry");
  g_autoptr (DrawlShotFields) fields = NULL;
  g_autoptr (GError) error = NULL;

  if (self->shot == NULL)
    return;
  fields = copy_fields (self);
  if (!entry->take (fields, text, &error) ||
      !drawl_plan_set_shot (self->plan, self->shot, fields, _ (entry->change), &error))
    drawl_edit_refuse_error (edit, error);
}

static void
on_must (DrawlShotDetails *self)
{
  g_autoptr (DrawlShotFields) fields = NULL;

  if (self->filling || self->shot == NULL)
    return;
  fields = copy_fields (self);
  fields->must = gtk_switch_get_active (GTK_SWITCH (self->must_switch));
  set_fields (self, fields, fields->must ? _ ("Make the shot a must") : _ ("Make the shot a wish"));
}

static void
on_drop (DrawlShotDetails *self)
{
  g_autoptr (DrawlShotFields) fields = NULL;

  if (self->filling || self->shot == NULL)
    return;
  fields = copy_fields (self);
  fields->drop = gtk_switch_get_active (GTK_SWITCH (self->drop_switch));
  set_fields (self, fields, _ ("Change timecode counting"));
}

static char *
dup_notes (DrawlShotDetails *self)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (self->notes_view));
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds (buffer, &start, &end);
  return gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
}

static void
show_notes (DrawlShotDetails *self, const char *notes)
{
  g_free (self->shown_notes);
  self->shown_notes = g_strdup (notes);
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (GTK_TEXT_VIEW (self->notes_view)), notes, -1);
}

static void
commit_notes (DrawlShotDetails *self)
{
  g_autoptr (DrawlShotFields) fields = NULL;
  g_autofree char *notes = dup_notes (self);

  if (self->shot == NULL || g_str_equal (notes, drawl_shot_get_fields (self->shot)->notes))
    return;
  fields = copy_fields (self);
  drawl_shot_fields_set (&fields->notes, notes);
  g_free (self->shown_notes);
  self->shown_notes = g_steal_pointer (&notes);
  set_fields (self, fields, _ ("Change notes"));
}

/* ---- Choices ---- */

static void
on_body_chosen (gpointer data, int index)
{
  DrawlShotDetails *self = data;
  g_autoptr (DrawlHiredBody) hired = NULL;

  if (self->shot == NULL)
    return;
  if (index >= 0)
    hired = g_list_model_get_item (drawl_plan_get_bodies (self->plan), (guint)index);
  drawl_shot_edit_body (self->plan, self->shot,
                        hired != NULL ? drawl_hired_body_get_id (hired) : "", NULL);
}

static void
on_size_chosen (gpointer data, int index)
{
  DrawlShotDetails *self = data;

  if (self->shot == NULL)
    return;
  const DrawlBody *body = drawl_shot_get_question (self->shot)->body;
  drawl_shot_edit_size (self->plan, self->shot, index >= 0 ? body->sizes[index].id : "", NULL);
}

static void
on_codec_chosen (gpointer data, int index)
{
  DrawlShotDetails *self = data;
  g_autoptr (DrawlShotFields) fields = NULL;

  if (self->shot == NULL)
    return;
  const DrawlBody *body = drawl_shot_get_question (self->shot)->body;
  fields = copy_fields (self);
  drawl_shot_fields_set (&fields->codec, index >= 0 ? body->codecs[index].id : "");
  set_fields (self, fields, _ ("Change codec"));
}

static void
fill_bodies (DrawlShotDetails *self)
{
  GListModel *bodies = drawl_plan_get_bodies (self->plan);
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  const char *id = drawl_shot_get_fields (self->shot)->body;
  int selected = -1;

  for (guint i = 0; i < g_list_model_get_n_items (bodies); i++) {
    g_autoptr (DrawlHiredBody) hired = g_list_model_get_item (bodies, i);
    g_ptr_array_add (names, drawl_hired_body_dup_name (hired));
    if (g_str_equal (drawl_hired_body_get_id (hired), id))
      selected = (int)i;
  }
  drawl_choice_row_fill (ADW_COMBO_ROW (self->body_row), names, selected);
}

/* A size or codec that the body does not have shows as none; it stays until another is chosen. */
static void
fill_choice (GtkWidget *row, GPtrArray *names, int selected)
{
  gtk_widget_set_visible (row, names->len > 0);
  drawl_choice_row_fill (ADW_COMBO_ROW (row), names, selected);
}

static void
fill_sizes_and_codecs (DrawlShotDetails *self)
{
  const DrawlCheckQuestion *question = drawl_shot_get_question (self->shot);
  const DrawlBody *body = question->body;
  g_autoptr (GPtrArray) sizes = g_ptr_array_new ();
  g_autoptr (GPtrArray) codecs = g_ptr_array_new ();

  for (guint i = 0; body != NULL && i < body->n_sizes; i++)
    g_ptr_array_add (sizes, body->sizes[i].name);
  for (guint i = 0; body != NULL && i < body->n_codecs; i++)
    g_ptr_array_add (codecs, body->codecs[i].name);
  fill_choice (self->size_row, sizes, question->size);
  fill_choice (self->codec_row, codecs, question->codec);
}

/* ---- What the shot says ---- */

static void
fill_switches (DrawlShotDetails *self, const DrawlShotFields *fields)
{
  DrawlRate playback = fields->blanks.value[DRAWL_TIMING_PLAYBACK];

  self->filling = TRUE;
  gtk_switch_set_active (GTK_SWITCH (self->must_switch), fields->must);
  gtk_switch_set_active (GTK_SWITCH (self->drop_switch), fields->drop);
  self->filling = FALSE;
  gtk_widget_set_sensitive (self->drop_row, drawl_timecode_check (playback, TRUE, NULL));
}

/* Notes that are being typed stay. */
static void
fill_notes (DrawlShotDetails *self, const DrawlShotFields *fields)
{
  g_autofree char *notes = dup_notes (self);

  if (g_strcmp0 (notes, self->shown_notes) != 0 || g_str_equal (notes, fields->notes))
    return;
  show_notes (self, fields->notes);
}

static void
fill_figures (DrawlShotDetails *self)
{
  for (guint i = 0; i < N_FIGURES; i++) {
    DrawlFigureButton *button = DRAWL_FIGURE_BUTTON (self->figure_buttons[i]);
    gboolean known = drawl_figure_button_set_shot (button, self->plan, self->shot);
    gtk_widget_set_visible (self->figure_rows[i], known);
    if (known)
      adw_preferences_row_set_title (ADW_PREFERENCES_ROW (self->figure_rows[i]),
                                     drawl_figure_button_get_name (button));
  }
}

static void
refresh (DrawlShotDetails *self)
{
  const DrawlShotFields *fields = drawl_shot_get_fields (self->shot);

  for (guint i = 0; i < DRAWL_N_SHOT_ENTRIES; i++) {
    g_autofree char *text = drawl_shot_entries[i].show (fields);
    drawl_edit_set_value (self->edits[i], text);
  }
  fill_bodies (self);
  fill_sizes_and_codecs (self);
  fill_switches (self, fields);
  fill_notes (self, fields);
  fill_figures (self);
}

/* Each group says what is wrong with the first of its entries that has something. */
static void
show_errors (DrawlShotDetails *self)
{
  GtkWidget *labels[N_GROUPS] = {self->shot_error, self->camera_error, self->take_error};
  const char *errors[N_GROUPS] = {NULL};

  for (guint i = DRAWL_N_SHOT_ENTRIES; i-- > 0;) {
    const char *error = drawl_edit_get_error (self->edits[i]);
    if (error != NULL)
      errors[drawl_shot_entries[i].group] = error;
  }
  for (guint i = 0; i < N_GROUPS; i++) {
    gtk_label_set_text (GTK_LABEL (labels[i]), errors[i] != NULL ? errors[i] : "");
    gtk_widget_set_visible (labels[i], errors[i] != NULL);
  }
}

/* ---- The widget ---- */

static void
leave_shot (DrawlShotDetails *self)
{
  g_clear_signal_handler (&self->changed_handler, self->plan);
  g_clear_object (&self->shot);
  g_clear_object (&self->plan);
}

static void
drawl_shot_details_dispose (GObject *object)
{
  leave_shot (DRAWL_SHOT_DETAILS (object));
  g_clear_pointer (&DRAWL_SHOT_DETAILS (object)->shown_notes, g_free);
  g_clear_pointer (&DRAWL_SHOT_DETAILS (object)->kept, drawl_kept_texts_free);
  gtk_widget_dispose_template (GTK_WIDGET (object), DRAWL_TYPE_SHOT_DETAILS);
  G_OBJECT_CLASS (drawl_shot_details_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  for (guint i = 0; i < DRAWL_N_SHOT_ENTRIES; i++)
    gtk_widget_class_bind_template_child_full (widget_class, drawl_shot_entries[i].id, FALSE,
                                               G_STRUCT_OFFSET (DrawlShotDetails, entries) +
                                                   (gssize)(i * sizeof (GtkWidget *)));
  gtk_widget_class_bind_template_child (widget_class, DrawlShotDetails, content);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotDetails, shot_error);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotDetails, camera_error);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotDetails, take_error);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotDetails, must_switch);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotDetails, drop_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotDetails, drop_switch);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotDetails, body_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotDetails, size_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotDetails, codec_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotDetails, notes_view);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotDetails, figures_group);
  gtk_widget_class_bind_template_callback (widget_class, on_must);
  gtk_widget_class_bind_template_callback (widget_class, on_drop);
}

static void
drawl_shot_details_class_init (DrawlShotDetailsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = drawl_shot_details_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/drawl/Drawl/ui/shot-details.ui");
  bind_children (widget_class);
}

static void
add_figure (DrawlShotDetails *self, guint i)
{
  self->figure_rows[i] = adw_action_row_new ();
  self->figure_buttons[i] = drawl_figure_button_new (figures[i]);
  gtk_widget_set_valign (self->figure_buttons[i], GTK_ALIGN_CENTER);
  adw_action_row_add_suffix (ADW_ACTION_ROW (self->figure_rows[i]), self->figure_buttons[i]);
  adw_preferences_group_add (ADW_PREFERENCES_GROUP (self->figures_group), self->figure_rows[i]);
}

static void
drawl_shot_details_init (DrawlShotDetails *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  self->kept = drawl_kept_texts_new ();
  for (guint i = 0; i < DRAWL_N_SHOT_ENTRIES; i++) {
    self->edits[i] = drawl_edit_new (GTK_EDITABLE (self->entries[i]));
    g_object_set_data (G_OBJECT (self->edits[i]), "entry", (gpointer)&drawl_shot_entries[i]);
    g_signal_connect_object (self->edits[i], "commit", G_CALLBACK (on_typed), self,
                             G_CONNECT_SWAPPED);
    g_signal_connect_object (self->edits[i], "notify::error", G_CALLBACK (show_errors), self,
                             G_CONNECT_SWAPPED);
  }
  drawl_choice_row_watch (ADW_COMBO_ROW (self->body_row), on_body_chosen, self);
  drawl_choice_row_watch (ADW_COMBO_ROW (self->size_row), on_size_chosen, self);
  drawl_choice_row_watch (ADW_COMBO_ROW (self->codec_row), on_codec_chosen, self);
  for (guint i = 0; i < N_FIGURES; i++)
    add_figure (self, i);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (commit_notes), self);
  gtk_widget_add_controller (self->notes_view, focus);
}

/* The plan's "changed" rather than the shot's: bodies come, go and are renamed. */
void
drawl_shot_details_set_shot (DrawlShotDetails *details, DrawlPlan *plan, DrawlShot *shot)
{
  if (details->shot == shot && details->plan == plan)
    return;
  for (guint i = 0; details->shot != NULL && i < DRAWL_N_SHOT_ENTRIES; i++) {
    drawl_edit_commit (details->edits[i]);
    drawl_kept_texts_put (details->kept, details->shot, details->edits[i]);
  }
  commit_notes (details);
  leave_shot (details);
  if (shot == NULL)
    return;
  details->plan = g_object_ref (plan);
  details->shot = g_object_ref (shot);
  details->changed_handler =
      g_signal_connect_swapped (plan, "changed", G_CALLBACK (refresh), details);
  show_notes (details, drawl_shot_get_fields (shot)->notes);
  refresh (details);
  drawl_kept_texts_bring_back (details->kept, plan, shot);
}

void
drawl_shot_details_set_stale (DrawlShotDetails *details, gboolean stale)
{
  if (stale)
    gtk_widget_add_css_class (details->figures_group, "stale");
  else
    gtk_widget_remove_css_class (details->figures_group, "stale");
}
