/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The editor of bodies. The draft holds everything; each edit of it makes the whole window look
 * again, once, when the program is idle. What is only missing is not marked before it was tried to
 * apply the body. */

#include "app/body-editor.h"

#include "app/body-cell-row.h"
#include "app/body-limit-rows.h"
#include "app/body-rows.h"
#include "app/focus.h"
#include "app/limits-view.h"
#include "app/message.h"
#include "core/text.h"
#include "plan/body-draft-apply.h"

struct _DrawlBodyEditor {
  AdwWindow parent_instance;
  DrawlBodyDraft *draft;
  DrawlPlan *plan;       /* NULL: the body is made from nothing */
  DrawlHiredBody *hired; /* on it */
  GPtrArray *cells;      /* of DrawlBodyCellRow: of the profile itself */
  GPtrArray *tables;     /* of DrawlBodyRows */
  DrawlBodyLimitRows *limits;
  GtkWidget *pages, *about_page, *sizes_page, *limits_page, *hire_page, *checks_page, *picture,
      *own_switch, *reason_revealer, *reason_label;
  gboolean strict;
  guint idle;
};

static guint applied_signal;

G_DEFINE_FINAL_TYPE (DrawlBodyEditor, drawl_body_editor, ADW_TYPE_WINDOW)

/* ---- What follows the draft ---- */

static GtkWidget *
page_of (DrawlBodyEditor *self, DrawlDraftTable table)
{
  GtkWidget *boxes[DRAWL_N_DRAFT_TABLES] = {
      [DRAWL_DRAFT_ABOUT] = self->about_page,    [DRAWL_DRAFT_SIZES] = self->sizes_page,
      [DRAWL_DRAFT_CODECS] = self->sizes_page,   [DRAWL_DRAFT_LICENCES] = self->hire_page,
      [DRAWL_DRAFT_LIMITS] = self->limits_page,  [DRAWL_DRAFT_CARDS] = self->hire_page,
      [DRAWL_DRAFT_MAGAZINES] = self->hire_page, [DRAWL_DRAFT_FITS] = self->checks_page,
      [DRAWL_DRAFT_PICKUPS] = self->checks_page, [DRAWL_DRAFT_RETURNS] = self->checks_page,
  };

  return boxes[table];
}

/* The page of the stack that holds one of the boxes. */
static AdwViewStackPage *
stack_page_of (DrawlBodyEditor *self, GtkWidget *box)
{
  GtkWidget *child = box;

  while (gtk_widget_get_parent (child) != self->pages)
    child = gtk_widget_get_parent (child);
  return adw_view_stack_get_page (ADW_VIEW_STACK (self->pages), child);
}

static void
mark_pages (DrawlBodyEditor *self)
{
  for (guint i = 0; i < DRAWL_N_DRAFT_TABLES; i++)
    adw_view_stack_page_set_needs_attention (stack_page_of (self, page_of (self, i)), FALSE);
  for (guint i = 0; i < DRAWL_N_DRAFT_TABLES; i++)
    if (drawl_body_draft_n_mistakes (self->draft, i) > 0)
      adw_view_stack_page_set_needs_attention (stack_page_of (self, page_of (self, i)), TRUE);
}

/* The picture stays as it was while something is wrong. */
static void
show_whole (DrawlBodyEditor *self)
{
  const char *mistake = drawl_body_draft_mistake (self->draft);
  DrawlBody *body = drawl_body_draft_get_body (self->draft);

  if (mistake != NULL) {
    g_autofree char *reason = drawl_message_sentence (&(GError){.message = (char *)mistake});
    gtk_label_set_text (GTK_LABEL (self->reason_label), reason);
  }
  gtk_revealer_set_reveal_child (GTK_REVEALER (self->reason_revealer), mistake != NULL);
  if (body != NULL)
    drawl_limits_view_set_body (DRAWL_LIMITS_VIEW (self->picture), body);
}

static void
refresh (DrawlBodyEditor *self)
{
  for (guint i = 0; i < self->cells->len; i++)
    drawl_body_cell_row_refresh (self->cells->pdata[i], self->strict);
  for (guint i = 0; i < self->tables->len; i++)
    drawl_body_rows_refresh (self->tables->pdata[i], self->strict);
  drawl_body_limit_rows_refresh (self->limits, self->strict);
  mark_pages (self);
  show_whole (self);
}

static gboolean
on_idle (gpointer data)
{
  DrawlBodyEditor *self = data;

  self->idle = 0;
  refresh (self);
  return G_SOURCE_REMOVE;
}

static void
on_changed (DrawlBodyEditor *self)
{
  if (self->idle == 0)
    self->idle = g_idle_add (on_idle, self);
}

/* ---- Applying ---- */

static void
show_page (DrawlBodyEditor *self, GtkWidget *box)
{
  adw_view_stack_set_visible_child (ADW_VIEW_STACK (self->pages),
                                    adw_view_stack_page_get_child (stack_page_of (self, box)));
}

static gboolean
focus_cell (DrawlBodyEditor *self)
{
  for (guint i = 0; i < self->cells->len; i++)
    if (drawl_body_cell_row_is_wrong (self->cells->pdata[i])) {
      GtkWidget *cell = self->cells->pdata[i];
      gboolean hire = gtk_widget_is_ancestor (cell, self->hire_page);
      show_page (self, hire ? self->hire_page : self->about_page);
      drawl_focus_when_ready (cell);
      return TRUE;
    }
  return FALSE;
}

static void
focus_mistake (DrawlBodyEditor *self)
{
  if (focus_cell (self))
    return;
  for (guint i = 0; i < self->tables->len; i++)
    if (drawl_body_rows_focus_mistake (self->tables->pdata[i])) {
      GtkWidget *box = gtk_widget_get_parent (self->tables->pdata[i]);
      show_page (self, box);
      return;
    }
  if (drawl_body_draft_n_mistakes (self->draft, DRAWL_DRAFT_LIMITS) == 0)
    return;
  show_page (self, self->limits_page);
  drawl_body_limit_rows_focus_mistake (self->limits);
}

static gboolean
save_own (DrawlBodyEditor *self, GError **error)
{
  return !gtk_switch_get_active (GTK_SWITCH (self->own_switch)) ||
         drawl_body_save_own (drawl_body_draft_get_body (self->draft), error);
}

/* Saved first: a body that could not be saved is not applied as though it were. */
gboolean
drawl_body_editor_apply (DrawlBodyEditor *editor)
{
  DrawlBody *body = drawl_body_draft_get_body (editor->draft);
  g_autoptr (GError) error = NULL;

  if (body == NULL) {
    editor->strict = TRUE;
    refresh (editor);
    focus_mistake (editor);
    return FALSE;
  }
  if (!save_own (editor, &error) ||
      (editor->plan != NULL &&
       !drawl_body_draft_apply (editor->draft, editor->plan, editor->hired, &error))) {
    drawl_message_show (GTK_WINDOW (editor), _ ("The Body Could Not Be Applied"), error);
    return FALSE;
  }
  g_signal_emit (editor, applied_signal, 0, body);
  gtk_window_destroy (GTK_WINDOW (editor));
  return TRUE;
}

static void
on_apply (DrawlBodyEditor *self)
{
  drawl_body_editor_apply (self);
}

/* ---- Leaving ---- */

/* The dialog goes after this: it must not hold on to a window that went before it. */
static void
on_leave_response (DrawlBodyEditor *self, const char *response, GtkWindow *dialog)
{
  gtk_window_set_transient_for (dialog, NULL);
  if (g_str_equal (response, "discard"))
    gtk_window_destroy (GTK_WINDOW (self));
  else if (g_str_equal (response, "apply"))
    drawl_body_editor_apply (self);
}

static gboolean
drawl_body_editor_close_request (GtkWindow *window)
{
  DrawlBodyEditor *self = DRAWL_BODY_EDITOR (window);

  if (!drawl_body_draft_get_changed (self->draft))
    return GTK_WINDOW_CLASS (drawl_body_editor_parent_class)->close_request (window);
  GtkWidget *dialog = adw_message_dialog_new (window, _ ("Apply the Changes?"),
                                              _ ("What was edited here is lost otherwise."));
  AdwMessageDialog *message = ADW_MESSAGE_DIALOG (dialog);
  adw_message_dialog_add_responses (message, "cancel", _ ("_Go On Editing"), "discard",
                                    _ ("_Discard"), "apply", _ ("_Apply"), NULL);
  adw_message_dialog_set_response_appearance (message, "discard", ADW_RESPONSE_DESTRUCTIVE);
  adw_message_dialog_set_response_appearance (message, "apply", ADW_RESPONSE_SUGGESTED);
  adw_message_dialog_set_default_response (message, "apply");
  adw_message_dialog_set_close_response (message, "cancel");
  g_signal_connect_object (dialog, "response", G_CALLBACK (on_leave_response), self,
                           G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
  return GDK_EVENT_STOP;
}

/* ---- Building ---- */

static void
add_cells (DrawlBodyEditor *self, GtkWidget *page, const char *title, const char *const *keys)
{
  GtkWidget *group = adw_preferences_group_new ();
  DrawlDraftRow *row = drawl_body_draft_get_row (self->draft, DRAWL_DRAFT_ABOUT, 0);

  adw_preferences_group_set_title (ADW_PREFERENCES_GROUP (group), title);
  for (; *keys != NULL; keys++) {
    GtkWidget *cell =
        drawl_body_cell_row_new (self->draft, row, drawl_draft_column (DRAWL_DRAFT_ABOUT, *keys));
    adw_preferences_group_add (ADW_PREFERENCES_GROUP (group), cell);
    g_ptr_array_add (self->cells, cell);
  }
  gtk_box_append (GTK_BOX (page), group);
}

#define KEYS(...) ((const char *const[]){__VA_ARGS__, NULL})

static void
build_about (DrawlBodyEditor *self)
{
  add_cells (self, self->about_page, "", KEYS ("name", "maker", "what", "kind", "id"));
  add_cells (self, self->about_page, _ ("Where the Figures Come From"),
             KEYS ("source.document", "source.date"));
  add_cells (self, self->about_page, _ ("Rates and Sound"),
             KEYS ("rates.step", "rates.also", "audio_tracks"));
  add_cells (self, self->about_page, _ ("Buffer and Power"),
             KEYS ("buffer.bytes", "buffer.pre_percent", "buffer.write_mb_s", "power.watts"));
}

static const struct {
  DrawlDraftTable table;
  const char *title;
  const char *add;
} table_groups[] = {
    {DRAWL_DRAFT_SIZES, N_ ("Sizes"), N_ ("Add a _Size")},
    {DRAWL_DRAFT_CODECS, N_ ("Codecs"), N_ ("Add a Co_dec")},
    {DRAWL_DRAFT_LICENCES, N_ ("Licences"), N_ ("Add a _Licence")},
    {DRAWL_DRAFT_CARDS, N_ ("Cards"), N_ ("Add a Ca_rd")},
    {DRAWL_DRAFT_MAGAZINES, N_ ("Magazines"), N_ ("Add a _Magazine")},
    {DRAWL_DRAFT_FITS, N_ ("Must Be Fitted Before It Runs"), N_ ("Add a _Part")},
    {DRAWL_DRAFT_PICKUPS, N_ ("To Check at Pick-up"), N_ ("Add a _Check")},
    {DRAWL_DRAFT_RETURNS, N_ ("To Check on Return"), N_ ("Add a C_heck")},
};

static void
build (DrawlBodyEditor *self)
{
  build_about (self);
  add_cells (self, self->hire_page, _ ("Price"), KEYS ("currency", "price_day"));
  for (guint i = 0; i < G_N_ELEMENTS (table_groups); i++) {
    GtkWidget *rows = drawl_body_rows_new (self->draft, table_groups[i].table,
                                           _ (table_groups[i].title), _ (table_groups[i].add));
    gtk_box_append (GTK_BOX (page_of (self, table_groups[i].table)), rows);
    g_ptr_array_add (self->tables, rows);
  }
  self->limits = DRAWL_BODY_LIMIT_ROWS (drawl_body_limit_rows_new (self->draft));
  gtk_box_append (GTK_BOX (self->limits_page), GTK_WIDGET (self->limits));
  g_signal_connect_object (self->draft, "changed", G_CALLBACK (on_changed), self,
                           G_CONNECT_SWAPPED);
  refresh (self);
  drawl_focus_when_ready (self->cells->pdata[0]);
}

/* ---- The type ---- */

DrawlBodyDraft *
drawl_body_editor_get_draft (DrawlBodyEditor *editor)
{
  return editor->draft;
}

static void
drawl_body_editor_dispose (GObject *object)
{
  DrawlBodyEditor *self = DRAWL_BODY_EDITOR (object);

  g_clear_handle_id (&self->idle, g_source_remove);
  gtk_widget_dispose_template (GTK_WIDGET (self), DRAWL_TYPE_BODY_EDITOR);
  g_clear_object (&self->hired);
  g_clear_object (&self->plan);
  G_OBJECT_CLASS (drawl_body_editor_parent_class)->dispose (object);
}

static void
drawl_body_editor_finalize (GObject *object)
{
  DrawlBodyEditor *self = DRAWL_BODY_EDITOR (object);

  g_ptr_array_unref (self->cells);
  g_ptr_array_unref (self->tables);
  g_clear_object (&self->draft);
  G_OBJECT_CLASS (drawl_body_editor_parent_class)->finalize (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class, "/org/drawl/Drawl/ui/body-editor.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlBodyEditor, pages);
  gtk_widget_class_bind_template_child (widget_class, DrawlBodyEditor, about_page);
  gtk_widget_class_bind_template_child (widget_class, DrawlBodyEditor, sizes_page);
  gtk_widget_class_bind_template_child (widget_class, DrawlBodyEditor, limits_page);
  gtk_widget_class_bind_template_child (widget_class, DrawlBodyEditor, hire_page);
  gtk_widget_class_bind_template_child (widget_class, DrawlBodyEditor, checks_page);
  gtk_widget_class_bind_template_child (widget_class, DrawlBodyEditor, picture);
  gtk_widget_class_bind_template_child (widget_class, DrawlBodyEditor, own_switch);
  gtk_widget_class_bind_template_child (widget_class, DrawlBodyEditor, reason_revealer);
  gtk_widget_class_bind_template_child (widget_class, DrawlBodyEditor, reason_label);
  gtk_widget_class_bind_template_callback (widget_class, on_apply);
}

static void
drawl_body_editor_class_init (DrawlBodyEditorClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = drawl_body_editor_dispose;
  G_OBJECT_CLASS (klass)->finalize = drawl_body_editor_finalize;
  GTK_WINDOW_CLASS (klass)->close_request = drawl_body_editor_close_request;
  applied_signal = g_signal_new ("applied", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 1, DRAWL_TYPE_BODY);
  g_type_ensure (DRAWL_TYPE_LIMITS_VIEW);
  bind_template (GTK_WIDGET_CLASS (klass));
}

static void
drawl_body_editor_init (DrawlBodyEditor *self)
{
  self->cells = g_ptr_array_new ();
  self->tables = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}

DrawlBodyEditor *
drawl_body_editor_new (GtkWindow *parent, DrawlPlan *plan, DrawlHiredBody *hired)
{
  DrawlBodyEditor *self = g_object_new (DRAWL_TYPE_BODY_EDITOR, "transient-for", parent, "title",
                                        _ ("Edit Body"), NULL);

  self->plan = g_object_ref (plan);
  self->hired = g_object_ref (hired);
  self->draft = drawl_body_draft_new_from_body (drawl_hired_body_get_body (hired));
  build (self);
  return self;
}

DrawlBodyEditor *
drawl_body_editor_new_from_nothing (GtkWindow *parent)
{
  DrawlBodyEditor *self =
      g_object_new (DRAWL_TYPE_BODY_EDITOR, "transient-for", parent, "title", _ ("New Body"), NULL);

  self->draft = drawl_body_draft_new ();
  gtk_switch_set_active (GTK_SWITCH (self->own_switch), TRUE);
  build (self);
  return self;
}
