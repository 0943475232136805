/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The window: its title, its pages, and which of them shows what. Invariant: whatever is shown
 * belongs to the document's plan; without a document the welcome is shown and no page exists that
 * was not needed before. */

#include "app/window.h"

#include "app/focus.h"
#include "app/window-private.h"
#include "core/text.h"

enum { PROP_DOCUMENT = 1, N_PROPS };

static GParamSpec *props[N_PROPS];

G_DEFINE_FINAL_TYPE (DrawlWindow, drawl_window, ADW_TYPE_APPLICATION_WINDOW)

static GSettings *
settings_of (DrawlWindow *self)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (self));

  return application != NULL ? drawl_application_get_settings (DRAWL_APPLICATION (application))
                             : NULL;
}

/* ---- Titles ---- */

static void
refresh_title (DrawlWindow *self)
{
  gboolean modified = self->document != NULL && drawl_document_get_modified (self->document);
  g_autofree char *title =
      self->document != NULL ? drawl_document_dup_title (self->document) : g_strdup (_ ("Drawl"));
  g_autofree char *name =
      self->document != NULL ? drawl_document_dup_name (self->document) : g_strdup ("");
  g_autofree char *marked = modified ? g_strdup_printf ("• %s", title) : g_strdup (title);

  gtk_window_set_title (GTK_WINDOW (self), marked);
  drawl_header_title_set (self->header_title, marked, name,
                          modified ? _ ("There is unsaved work") : NULL);
}

static void
refresh_switchers (DrawlWindow *self)
{
  gboolean narrow = drawl_header_title_get_narrow (self->header_title);

  gtk_widget_set_visible (self->undo_button, self->document != NULL);
  gtk_widget_set_visible (self->redo_button, self->document != NULL);
  adw_view_switcher_bar_set_reveal (ADW_VIEW_SWITCHER_BAR (self->switcher_bar), narrow);
}

/* ---- Pages ---- */

static void
refresh_back (DrawlWindow *self)
{
  GtkWidget *shown = adw_view_stack_get_visible_child (ADW_VIEW_STACK (self->pages));
  GtkWidget *page = shown != NULL ? adw_bin_get_child (ADW_BIN (shown)) : NULL;
  gboolean covered = FALSE;

  if (page != NULL)
    g_object_get (page, "covered", &covered, NULL);
  gtk_widget_set_visible (self->back_button, covered);
  /* Where a shot has the window to itself, the whole plan is a step back. */
  gtk_widget_set_visible (self->day_bin, !covered);
  g_simple_action_set_enabled (
      G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self), "back")), covered);
}

static void
make_shots (DrawlWindow *self)
{
  self->shots = DRAWL_SHOTS_PAGE (drawl_shots_page_new ());
  adw_bin_set_child (ADW_BIN (self->shots_bin), GTK_WIDGET (self->shots));
  g_signal_connect_object (self->shots, "notify::covered", G_CALLBACK (refresh_back), self,
                           G_CONNECT_SWAPPED);
  drawl_window_listen_to_list (self, drawl_shots_page_get_list (self->shots));
  drawl_shots_page_set_plan (self->shots, drawl_window_get_plan (self));
}

static void
make_bodies (DrawlWindow *self)
{
  self->bodies = DRAWL_BODIES_PAGE (drawl_bodies_page_new ());
  adw_bin_set_child (ADW_BIN (self->bodies_bin), GTK_WIDGET (self->bodies));
  g_signal_connect_object (self->bodies, "notify::covered", G_CALLBACK (refresh_back), self,
                           G_CONNECT_SWAPPED);
  drawl_bodies_page_set_plan (self->bodies, drawl_window_get_plan (self));
}

static const char *
shown_page (DrawlWindow *self)
{
  return adw_view_stack_get_visible_child_name (ADW_VIEW_STACK (self->pages));
}

static void
on_page_shown (DrawlWindow *self)
{
  const char *page = shown_page (self);
  GSettings *settings = settings_of (self);

  if (self->document == NULL || page == NULL)
    return;
  if (g_str_equal (page, "shots") && self->shots == NULL)
    make_shots (self);
  if (g_str_equal (page, "bodies") && self->bodies == NULL)
    make_bodies (self);
  if (settings != NULL)
    g_settings_set_string (settings, "page", page);
  refresh_back (self);
  drawl_window_refresh_actions (self);
}

void
drawl_window_focus_page (DrawlWindow *window)
{
  if (g_strcmp0 (shown_page (window), "bodies") == 0)
    drawl_bodies_page_focus (window->bodies);
  else
    drawl_shots_page_focus (window->shots);
}

void
drawl_window_show_page (DrawlWindow *window, const char *name)
{
  adw_view_stack_set_visible_child_name (ADW_VIEW_STACK (window->pages), name);
}

DrawlPlan *
drawl_window_get_plan (DrawlWindow *window)
{
  return window->document != NULL ? drawl_document_get_plan (window->document) : NULL;
}

DrawlShotList *
drawl_window_get_list (DrawlWindow *window)
{
  return window->shots != NULL ? drawl_shots_page_get_list (window->shots) : NULL;
}

DrawlShot *
drawl_window_get_shot (DrawlWindow *window)
{
  DrawlShotList *list = drawl_window_get_list (window);

  return list != NULL ? drawl_shot_list_get_selected (list) : NULL;
}

void
drawl_window_take_entry (DrawlWindow *window)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (window));

  if (!GTK_IS_EDITABLE (focus))
    return;
  g_object_ref (focus);
  gtk_window_set_focus (GTK_WINDOW (window), NULL);
  if (gtk_widget_get_mapped (focus))
    gtk_window_set_focus (GTK_WINDOW (window), focus);
  g_object_unref (focus);
}

/* ---- Toasts ---- */

static void
on_toast_dismissed (DrawlWindow *self)
{
  self->toast = NULL;
}

static void
dismiss_toast (DrawlWindow *self)
{
  if (self->toast != NULL)
    adw_toast_dismiss (self->toast);
}

static void
show_toast (DrawlWindow *window, const char *text, gboolean undoable)
{
  g_autofree char *markup = g_markup_escape_text (text, -1);
  AdwToast *toast = adw_toast_new (markup);

  dismiss_toast (window);
  if (undoable) {
    adw_toast_set_button_label (toast, _ ("_Undo"));
    adw_toast_set_action_name (toast, "win.undo");
  }
  g_signal_connect_object (toast, "dismissed", G_CALLBACK (on_toast_dismissed), window,
                           G_CONNECT_SWAPPED);
  window->toast = toast;
  adw_toast_overlay_add_toast (ADW_TOAST_OVERLAY (window->toasts), toast);
}

void
drawl_window_tell (DrawlWindow *window, const char *text)
{
  show_toast (window, text, FALSE);
}

void
drawl_window_tell_undoable (DrawlWindow *window, const char *text)
{
  show_toast (window, text, TRUE);
}

/* ---- The document ---- */

/* What a toast offers to take back is the last step only. */
static void
on_plan_changed (DrawlWindow *self)
{
  dismiss_toast (self);
  drawl_window_refresh_actions (self);
}

static void
let_go_of_document (DrawlWindow *self)
{
  if (self->document == NULL)
    return;
  g_signal_handlers_disconnect_by_data (drawl_document_get_plan (self->document), self);
  g_signal_handlers_disconnect_by_data (self->document, self);
}

/* For plans that do not tell their own. */
static void
give_length_unit (DrawlWindow *self, DrawlPlan *plan)
{
  GSettings *settings = settings_of (self);
  DrawlLengthUnit unit = DRAWL_LENGTH_FEET;

  if (settings == NULL)
    return;
  g_autofree char *id = g_settings_get_string (settings, "length-unit");
  drawl_length_unit_find (id, &unit);
  drawl_plan_set_default_length_unit (plan, unit);
}

static void
follow_document (DrawlWindow *self)
{
  DrawlPlan *plan = drawl_document_get_plan (self->document);

  give_length_unit (self, plan);

  g_signal_connect_object (self->document, "notify", G_CALLBACK (refresh_title), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (plan, "changed", G_CALLBACK (on_plan_changed), self, G_CONNECT_SWAPPED);
}

static void
show_plan (DrawlWindow *self)
{
  DrawlPlan *plan = drawl_window_get_plan (self);

  if (plan != NULL && self->day_strip == NULL) {
    self->day_strip = g_object_new (DRAWL_TYPE_DAY_STRIP, NULL);
    adw_bin_set_child (ADW_BIN (self->day_bin), GTK_WIDGET (self->day_strip));
  }
  drawl_header_title_set_stack (self->header_title,
                                plan != NULL ? ADW_VIEW_STACK (self->pages) : NULL);
  if (self->day_strip != NULL)
    drawl_day_strip_set_plan (self->day_strip, plan);
  if (self->shots != NULL)
    drawl_shots_page_set_plan (self->shots, plan);
  if (self->bodies != NULL)
    drawl_bodies_page_set_plan (self->bodies, plan);
  on_page_shown (self);
  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), plan != NULL ? "plan" : "welcome");
  if (plan != NULL)
    drawl_window_focus_page (self);
}

DrawlDocument *
drawl_window_get_document (DrawlWindow *window)
{
  return window->document;
}

void
drawl_window_set_document (DrawlWindow *window, DrawlDocument *document)
{
  if (document == window->document)
    return;
  dismiss_toast (window);
  let_go_of_document (window);
  g_set_object (&window->document, document);
  if (document != NULL)
    follow_document (window);
  drawl_window_follow_file (window);
  show_plan (window);
  refresh_title (window);
  refresh_switchers (window);
  drawl_window_refresh_actions (window);
  g_object_notify_by_pspec (G_OBJECT (window), props[PROP_DOCUMENT]);
}

/* ---- The type ---- */

static void
save_state (DrawlWindow *self)
{
  GSettings *settings = settings_of (self);
  gboolean maximized = gtk_window_is_maximized (GTK_WINDOW (self));
  int width, height;

  if (settings == NULL)
    return;
  gtk_window_get_default_size (GTK_WINDOW (self), &width, &height);
  g_settings_set_boolean (settings, "window-maximized", maximized);
  if (!maximized && width > 0 && height > 0) {
    g_settings_set_int (settings, "window-width", width);
    g_settings_set_int (settings, "window-height", height);
  }
}

static void
restore_state (DrawlWindow *self)
{
  GSettings *settings = settings_of (self);

  if (settings == NULL)
    return;
  g_autofree char *page = g_settings_get_string (settings, "page");
  gtk_window_set_default_size (GTK_WINDOW (self), g_settings_get_int (settings, "window-width"),
                               g_settings_get_int (settings, "window-height"));
  if (g_settings_get_boolean (settings, "window-maximized"))
    gtk_window_maximize (GTK_WINDOW (self));
  drawl_window_show_page (self, page);
}

void
drawl_window_close_now (DrawlWindow *window)
{
  save_state (window);
  drawl_window_let_document_go (window);
  gtk_window_destroy (GTK_WINDOW (window));
}

static gboolean
drawl_window_close_request (GtkWindow *window)
{
  DrawlWindow *self = DRAWL_WINDOW (window);

  drawl_window_when_settled (self, drawl_window_close_now);
  return GDK_EVENT_STOP;
}

static void
drawl_window_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  if (prop_id == PROP_DOCUMENT)
    g_value_set_object (value, DRAWL_WINDOW (object)->document);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static void
drawl_window_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  if (prop_id == PROP_DOCUMENT)
    drawl_window_set_document (DRAWL_WINDOW (object), g_value_get_object (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

/* Pages that go tell of it, to a window that is going itself. */
static void
let_go_of_pages (DrawlWindow *self)
{
  if (self->shots != NULL)
    g_signal_handlers_disconnect_by_data (drawl_shots_page_get_list (self->shots), self);
  self->shots = NULL;
  self->bodies = NULL;
  self->day_strip = NULL;
}

static void
drawl_window_dispose (GObject *object)
{
  DrawlWindow *self = DRAWL_WINDOW (object);

  drawl_window_forget_files (self);
  let_go_of_document (self);
  let_go_of_pages (self);
  g_clear_object (&self->document);
  gtk_widget_dispose_template (GTK_WIDGET (self), DRAWL_TYPE_WINDOW);
  G_OBJECT_CLASS (drawl_window_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class, "/org/drawl/Drawl/ui/window.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlWindow, recent_menu);
  gtk_widget_class_bind_template_child (widget_class, DrawlWindow, toasts);
  gtk_widget_class_bind_template_child (widget_class, DrawlWindow, back_button);
  gtk_widget_class_bind_template_child (widget_class, DrawlWindow, undo_button);
  gtk_widget_class_bind_template_child (widget_class, DrawlWindow, redo_button);
  gtk_widget_class_bind_template_child (widget_class, DrawlWindow, header_title);
  gtk_widget_class_bind_template_child (widget_class, DrawlWindow, switcher_bar);
  gtk_widget_class_bind_template_child (widget_class, DrawlWindow, stack);
  gtk_widget_class_bind_template_child (widget_class, DrawlWindow, new_button);
  gtk_widget_class_bind_template_child (widget_class, DrawlWindow, pages);
  gtk_widget_class_bind_template_child (widget_class, DrawlWindow, shots_bin);
  gtk_widget_class_bind_template_child (widget_class, DrawlWindow, bodies_bin);
  gtk_widget_class_bind_template_child (widget_class, DrawlWindow, day_bin);
  gtk_widget_class_bind_template_child (widget_class, DrawlWindow, menu_button);
  gtk_widget_class_bind_template_child (widget_class, DrawlWindow, notice_bar);
  gtk_widget_class_bind_template_child (widget_class, DrawlWindow, notice_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlWindow, notice_button);
  gtk_widget_class_bind_template_callback (widget_class, drawl_window_put_notice_away);
  gtk_widget_class_bind_template_callback (widget_class, refresh_switchers);
  gtk_widget_class_bind_template_callback (widget_class, on_page_shown);
}

static void
drawl_window_class_init (DrawlWindowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = drawl_window_get_property;
  object_class->set_property = drawl_window_set_property;
  object_class->dispose = drawl_window_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = drawl_window_close_request;

  props[PROP_DOCUMENT] =
      g_param_spec_object ("document", NULL, NULL, DRAWL_TYPE_DOCUMENT,
                           G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, props);
  g_type_ensure (DRAWL_TYPE_HEADER_TITLE);
  bind_template (GTK_WIDGET_CLASS (klass));
}

static void
on_menu_opened (GtkMenuButton *button, gpointer data)
{
  drawl_window_fill_recent (data);
}

/* A window without a plan begins with its first button. */
static void
on_map (DrawlWindow *self)
{
  if (self->document == NULL)
    drawl_focus_when_ready (self->new_button);
}

static void
drawl_window_init (DrawlWindow *self)
{
  drawl_window_add_actions (self);
  drawl_window_add_file_actions (self);
  drawl_window_add_transfer_actions (self);
  drawl_window_add_clipboard_actions (self);
  drawl_window_add_save_actions (self);
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (self->menu_button), on_menu_opened, self,
                                         NULL);
  refresh_title (self);
  refresh_switchers (self);
  refresh_back (self);
  drawl_window_refresh_actions (self);
  g_signal_connect (self, "map", G_CALLBACK (on_map), NULL);
  drawl_window_follow_file (self);
  g_signal_connect (self, "notify::is-active", G_CALLBACK (drawl_window_on_is_active), NULL);
}

DrawlWindow *
drawl_window_new (DrawlApplication *application)
{
  DrawlWindow *self = g_object_new (DRAWL_TYPE_WINDOW, "application", application, NULL);

  restore_state (self);
  return self;
}
