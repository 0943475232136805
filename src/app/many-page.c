/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The page of many shots. It is filled anew once after a change, when the loop is idle. Invariant:
 * what a choice offers changes only with the shots that it is about, not by the choice itself. */

#include "app/many-page.h"

#include <adwaita.h>

#include "app/bulk-edit.h"
#include "app/choice-row.h"
#include "app/edit.h"
#include "app/message.h"
#include "app/verdict-mark.h"
#include "core/text.h"
#include "plan/day.h"
#include "plan/error.h"
#include "plan/figure.h"

#define N_CHOICES (DRAWL_N_BULK_FIELDS - DRAWL_N_BULK_ENTRIES)

/* One row of the page. */
typedef struct {
  DrawlManyPage *page;
  DrawlBulkFieldId field;
  DrawlEdit *edit;     /* of an entry; owned by its row */
  GtkWidget *several;  /* of an entry: the word for it */
  GStrv values;        /* of a choice: what each of its words stands for */
  gboolean differs;    /* among the shots */
  gboolean had_differ; /* since the shots are shown: a choice goes on offering the word */
} Field;

struct _DrawlManyPage {
  GtkWidget parent_instance;
  DrawlPlan *plan;
  GPtrArray *shots; /* of DrawlShot, or NULL */
  guint idle_id;
  GtkWidget *rows[DRAWL_N_BULK_FIELDS];
  Field fields[DRAWL_N_BULK_FIELDS];
  GtkWidget *content, *title_label, *rolled_label, *action_label, *screen_label, *error_label;
  GtkWidget *verdict_box;
  GtkWidget *verdict_counts[DRAWL_N_VERDICTS];
};

G_DEFINE_FINAL_TYPE (DrawlManyPage, drawl_many_page, GTK_TYPE_WIDGET)

/* ---- Changes ---- */

static void
apply (DrawlManyPage *self, const DrawlBulkEdit *edit)
{
  g_autoptr (GError) error = NULL;

  if (!drawl_bulk_edit_apply (edit, self->plan, &error))
    drawl_message_show (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))),
                        _ ("The Shots Could Not Be Changed"), error);
}

/* The question lives longer than what it is about only as far as that is still there. */
typedef struct {
  GWeakRef page;
  DrawlBulkEdit *edit;
} Question;

static void
question_free (gpointer data, GClosure *closure)
{
  Question *question = data;

  g_weak_ref_clear (&question->page);
  drawl_bulk_edit_free (question->edit);
  g_free (question);
}

static void
on_answer (AdwMessageDialog *dialog, const char *response, Question *question)
{
  g_autoptr (DrawlManyPage) self = g_weak_ref_get (&question->page);

  if (self != NULL && self->plan != NULL && g_str_equal (response, "others"))
    apply (self, question->edit);
}

/* Takes @edit. */
static void
ask (DrawlManyPage *self, DrawlBulkEdit *edit)
{
  GtkWindow *parent = GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self)));
  guint n = edit->refusals->len, n_others = edit->shots->len;
  g_autofree char *count = drawl_figure_count (n), *others = drawl_figure_count (n_others);
  g_autofree char *heading = g_strdup_printf (
      ngettext_ ("%s Shot Cannot Take This", "%s Shots Cannot Take This", n), count);
  g_autofree char *change = g_strdup_printf (
      ngettext_ ("Change the _Other %s", "Change the _Other %s", n_others), others);
  g_autofree char *lines = drawl_bulk_edit_refusals_text (edit);
  g_autofree char *body = g_strconcat (_ ("Nothing has been changed yet."), "\n\n", lines, NULL);
  GtkWidget *dialog = adw_message_dialog_new (parent, heading, body);
  Question *question = g_new0 (Question, 1);

  adw_message_dialog_add_response (ADW_MESSAGE_DIALOG (dialog), "cancel", _ ("Change _None"));
  if (n_others > 0)
    adw_message_dialog_add_response (ADW_MESSAGE_DIALOG (dialog), "others", change);
  adw_message_dialog_set_default_response (ADW_MESSAGE_DIALOG (dialog), "cancel");
  adw_message_dialog_set_close_response (ADW_MESSAGE_DIALOG (dialog), "cancel");
  g_weak_ref_init (&question->page, self);
  question->edit = edit;
  g_signal_connect_data (dialog, "response", G_CALLBACK (on_answer), question, question_free, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

/* FALSE, with a sentence in @why, when no shot can take it and all for the same reason. */
static gboolean
change (Field *field, const char *text, char **why)
{
  DrawlManyPage *self = field->page;
  g_autoptr (DrawlBulkEdit) edit =
      drawl_bulk_edit_new (self->plan, self->shots, field->field, text);
  const char *reason = drawl_bulk_edit_common_reason (edit);

  if (reason != NULL && why != NULL) {
    g_autoptr (GError) error = g_error_new_literal (DRAWL_PLAN_ERROR, 0, reason);
    *why = drawl_message_sentence (error);
    return FALSE;
  }
  if (edit->refusals->len > 0)
    ask (self, g_steal_pointer (&edit));
  else
    apply (self, edit);
  return TRUE;
}

static void
on_typed (Field *field, const char *text, DrawlEdit *edit)
{
  g_autofree char *why = NULL;

  if (field->page->shots != NULL && !change (field, text, &why))
    drawl_edit_refuse (edit, why);
}

static void
on_error (DrawlManyPage *self)
{
  const char *error = NULL;

  for (guint i = 0; i < DRAWL_N_BULK_ENTRIES && error == NULL; i++)
    error = drawl_edit_get_error (self->fields[i].edit);
  gtk_label_set_text (GTK_LABEL (self->error_label), error != NULL ? error : "");
  gtk_widget_set_visible (self->error_label, error != NULL);
}

/* The word for several changes nothing. */
static void
on_chosen (gpointer data, int index)
{
  Field *field = data;

  if (field->page->shots == NULL)
    return;
  if (index < 0)
    change (field, "", NULL);
  else if ((guint)index < g_strv_length (field->values))
    change (field, field->values[index], NULL);
  drawl_many_page_set_shots (field->page, field->page->plan, field->page->shots);
}

/* ---- What the shots say ---- */

static gboolean
differs (DrawlManyPage *self, DrawlBulkFieldId id)
{
  const DrawlShotFields *first = drawl_shot_get_fields (self->shots->pdata[0]);

  for (guint i = 1; i < self->shots->len; i++)
    if (!drawl_bulk_fields[id].same (first, drawl_shot_get_fields (self->shots->pdata[i])))
      return TRUE;
  return FALSE;
}

static void
fill_entry (DrawlManyPage *self, Field *field)
{
  const DrawlShotFields *first = drawl_shot_get_fields (self->shots->pdata[0]);
  g_autofree char *value =
      field->differs ? g_strdup ("") : drawl_bulk_fields[field->field].show (first);

  drawl_edit_set_value (field->edit, value);
  drawl_edit_set_description (field->edit, field->differs ? _ ("The shots differ in this") : NULL);
  gtk_widget_set_visible (field->several, field->differs);
}

/* @names and @values: of what there is to choose, in one order. */
static void
fill_choice (DrawlManyPage *self, DrawlBulkFieldId id, GPtrArray *names, GPtrArray *values)
{
  Field *field = &self->fields[id];
  g_autofree char *value =
      drawl_bulk_fields[id].show (drawl_shot_get_fields (self->shots->pdata[0]));
  int selected = -1;

  for (guint i = 0; i < values->len; i++)
    if (g_str_equal (values->pdata[i], value))
      selected = (int)i;
  if (field->had_differ) {
    if (field->differs)
      selected = (int)names->len;
    g_ptr_array_add (names, g_strdup (_ ("Several")));
  }
  g_strfreev (field->values);
  g_ptr_array_add (values, NULL);
  field->values = g_strdupv ((char **)values->pdata);
  drawl_choice_row_fill (ADW_COMBO_ROW (self->rows[id]), names, selected);
}

static void
add_choice (GPtrArray *names, GPtrArray *values, const char *name, const char *value)
{
  g_ptr_array_add (names, g_strdup (name));
  g_ptr_array_add (values, (gpointer)value);
}

static void
fill_bodies (DrawlManyPage *self)
{
  GListModel *bodies = drawl_plan_get_bodies (self->plan);
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) values = g_ptr_array_new ();

  for (guint i = 0; i < g_list_model_get_n_items (bodies); i++) {
    g_autoptr (DrawlHiredBody) hired = g_list_model_get_item (bodies, i);
    g_autofree char *name = drawl_hired_body_dup_name (hired);
    add_choice (names, values, name, drawl_hired_body_get_id (hired));
  }
  fill_choice (self, DRAWL_BULK_BODY, names, values);
}

/* Sizes and codecs are those of one body; on several there are none that all have. */
static void
fill_sizes_and_codecs (DrawlManyPage *self)
{
  const DrawlBody *body = self->fields[DRAWL_BULK_BODY].differs
                              ? NULL
                              : drawl_shot_get_question (self->shots->pdata[0])->body;
  g_autoptr (GPtrArray) sizes = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) size_ids = g_ptr_array_new ();
  g_autoptr (GPtrArray) codecs = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) codec_ids = g_ptr_array_new ();

  for (guint i = 0; body != NULL && i < body->n_sizes; i++)
    add_choice (sizes, size_ids, body->sizes[i].name, body->sizes[i].id);
  for (guint i = 0; body != NULL && i < body->n_codecs; i++)
    add_choice (codecs, codec_ids, body->codecs[i].name, body->codecs[i].id);
  gtk_widget_set_visible (self->rows[DRAWL_BULK_SIZE], sizes->len > 0);
  gtk_widget_set_visible (self->rows[DRAWL_BULK_CODEC], codecs->len > 0);
  fill_choice (self, DRAWL_BULK_SIZE, sizes, size_ids);
  fill_choice (self, DRAWL_BULK_CODEC, codecs, codec_ids);
}

static void
fill_must (DrawlManyPage *self)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) values = g_ptr_array_new ();

  add_choice (names, values, _ ("Must be"), "must");
  add_choice (names, values, _ ("Wished for"), "wished");
  fill_choice (self, DRAWL_BULK_MUST, names, values);
}

static void
fill_sums (DrawlManyPage *self)
{
  g_auto (DrawlDay) day = {0};

  drawl_day_reckon_shots (self->shots, &day);
  g_autofree char *count = drawl_figure_count (day.shots);
  g_autofree char *title =
      g_strdup_printf (ngettext_ ("%s shot selected", "%s shots selected", day.shots), count);
  g_autofree char *rolled = drawl_day_time_text (day.real_s);
  g_autofree char *action = drawl_day_time_text (day.action_s);
  g_autofree char *screen = drawl_day_time_text (day.screen_s);
  gtk_label_set_text (GTK_LABEL (self->title_label), title);
  gtk_label_set_text (GTK_LABEL (self->rolled_label), rolled);
  gtk_label_set_text (GTK_LABEL (self->action_label), action);
  gtk_label_set_text (GTK_LABEL (self->screen_label), screen);
  for (guint i = 0; i < DRAWL_N_VERDICTS; i++) {
    g_autofree char *number = drawl_figure_count (day.by_verdict[i]);
    gtk_label_set_text (GTK_LABEL (self->verdict_counts[i]), number);
    gtk_widget_set_visible (gtk_widget_get_parent (self->verdict_counts[i]), day.by_verdict[i] > 0);
  }
}

static void
refresh (DrawlManyPage *self)
{
  for (guint i = 0; i < DRAWL_N_BULK_FIELDS; i++) {
    Field *field = &self->fields[i];
    field->differs = differs (self, (DrawlBulkFieldId)i);
    field->had_differ = field->had_differ || field->differs;
    if (i < DRAWL_N_BULK_ENTRIES)
      fill_entry (self, field);
  }
  fill_must (self);
  fill_bodies (self);
  fill_sizes_and_codecs (self);
  fill_sums (self);
}

static gboolean
on_idle (gpointer data)
{
  DrawlManyPage *self = data;

  self->idle_id = 0;
  if (self->shots != NULL)
    refresh (self);
  return G_SOURCE_REMOVE;
}

static void
on_plan_changed (DrawlManyPage *self)
{
  if (self->idle_id == 0)
    self->idle_id = g_idle_add (on_idle, self);
}

/* ---- Plan and shots ---- */

static gboolean
same_shots (const GPtrArray *a, const GPtrArray *b)
{
  gboolean same = a != NULL && b != NULL && a->len == b->len;

  for (guint i = 0; same && i < a->len; i++)
    same = a->pdata[i] == b->pdata[i];
  return same;
}

/* What was typed for the former shots and not taken goes to them. */
static void
leave (DrawlManyPage *self)
{
  for (guint i = 0; i < DRAWL_N_BULK_FIELDS; i++) {
    if (i < DRAWL_N_BULK_ENTRIES) {
      drawl_edit_commit (self->fields[i].edit);
      drawl_edit_restore (self->fields[i].edit);
    }
    self->fields[i].had_differ = FALSE;
  }
  if (self->plan != NULL)
    g_signal_handlers_disconnect_by_data (self->plan, self);
  g_clear_object (&self->plan);
  g_clear_pointer (&self->shots, g_ptr_array_unref);
}

void
drawl_many_page_set_shots (DrawlManyPage *page, DrawlPlan *plan, GPtrArray *shots)
{
  if (plan == page->plan && same_shots (shots, page->shots)) {
    on_plan_changed (page);
    return;
  }
  leave (page);
  if (plan == NULL || shots == NULL || shots->len == 0)
    return;
  page->plan = g_object_ref (plan);
  page->shots = g_ptr_array_ref (shots);
  g_signal_connect_swapped (plan, "changed", G_CALLBACK (on_plan_changed), page);
  refresh (page);
}

/* ---- The widget ---- */

static void
drawl_many_page_dispose (GObject *object)
{
  DrawlManyPage *self = DRAWL_MANY_PAGE (object);

  g_clear_handle_id (&self->idle_id, g_source_remove);
  if (self->plan != NULL)
    g_signal_handlers_disconnect_by_data (self->plan, self);
  g_clear_object (&self->plan);
  g_clear_pointer (&self->shots, g_ptr_array_unref);
  for (guint i = 0; i < DRAWL_N_BULK_FIELDS; i++)
    g_clear_pointer (&self->fields[i].values, g_strfreev);
  gtk_widget_dispose_template (GTK_WIDGET (self), DRAWL_TYPE_MANY_PAGE);
  G_OBJECT_CLASS (drawl_many_page_parent_class)->dispose (object);
}

static void
drawl_many_page_class_init (DrawlManyPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = drawl_many_page_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/drawl/Drawl/ui/many-page.ui");
  for (guint i = 0; i < DRAWL_N_BULK_FIELDS; i++)
    gtk_widget_class_bind_template_child_full (widget_class, drawl_bulk_fields[i].row, FALSE,
                                               G_STRUCT_OFFSET (DrawlManyPage, rows) +
                                                   (gssize)(i * sizeof (GtkWidget *)));
  gtk_widget_class_bind_template_child (widget_class, DrawlManyPage, content);
  gtk_widget_class_bind_template_child (widget_class, DrawlManyPage, title_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlManyPage, verdict_box);
  gtk_widget_class_bind_template_child (widget_class, DrawlManyPage, rolled_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlManyPage, action_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlManyPage, screen_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlManyPage, error_label);
}

static void
add_entry (DrawlManyPage *self, Field *field, GtkWidget *row)
{
  field->edit = drawl_edit_new (GTK_EDITABLE (row));
  field->several = gtk_label_new (_ ("Several"));
  gtk_widget_add_css_class (field->several, "dim-label");
  gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_editable_get_delegate (GTK_EDITABLE (row))),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row)), -1);
  adw_entry_row_add_suffix (ADW_ENTRY_ROW (row), field->several);
  g_signal_connect_swapped (field->edit, "commit", G_CALLBACK (on_typed), field);
  g_signal_connect_object (field->edit, "notify::error", G_CALLBACK (on_error), self,
                           G_CONNECT_SWAPPED);
}

static void
add_verdict (DrawlManyPage *self, guint verdict)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *mark = drawl_verdict_mark_new ();

  self->verdict_counts[verdict] = gtk_label_new (NULL);
  gtk_widget_add_css_class (self->verdict_counts[verdict], "figure");
  drawl_verdict_mark_set_verdict (DRAWL_VERDICT_MARK (mark), (DrawlVerdict)verdict);
  drawl_verdict_mark_set_show_name (DRAWL_VERDICT_MARK (mark), TRUE);
  gtk_box_append (GTK_BOX (box), self->verdict_counts[verdict]);
  gtk_box_append (GTK_BOX (box), mark);
  gtk_box_append (GTK_BOX (self->verdict_box), box);
}

static void
drawl_many_page_init (DrawlManyPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < DRAWL_N_BULK_FIELDS; i++) {
    self->fields[i] = (Field){.page = self, .field = (DrawlBulkFieldId)i};
    if (i < DRAWL_N_BULK_ENTRIES)
      add_entry (self, &self->fields[i], self->rows[i]);
    else
      drawl_choice_row_watch (ADW_COMBO_ROW (self->rows[i]), on_chosen, &self->fields[i]);
  }
  for (guint i = 0; i < DRAWL_N_VERDICTS; i++)
    add_verdict (self, i);
}

GtkWidget *
drawl_many_page_new (void)
{
  return g_object_new (DRAWL_TYPE_MANY_PAGE, NULL);
}
