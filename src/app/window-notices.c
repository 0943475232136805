/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What a window tells of its document unasked. What lasts stands in a bar above the pages, the
 * first row of the table that holds; it can be put away until it happens anew. What was and is over
 * is a toast. */

#include "app/message.h"
#include "app/window-private.h"
#include "core/text.h"

typedef struct {
  const char *property; /* of the document: notified when it happens anew */
  gboolean (*holds) (DrawlDocument *document);
  char *(*text) (DrawlDocument *document);
  const char *button;
  const char *action;
} Notice;

static char *
changed_text (DrawlDocument *document)
{
  g_autofree char *name = drawl_document_dup_name (document);

  return g_strdup_printf (_ ("Another program has changed “%s”."), name);
}

static gboolean
is_at_risk (DrawlDocument *document)
{
  return drawl_document_get_problem (document) != NULL && drawl_document_get_modified (document);
}

static char *
problem_text (DrawlDocument *document)
{
  g_autoptr (GError) error =
      g_error_new_literal (G_IO_ERROR, G_IO_ERROR_FAILED, drawl_document_get_problem (document));

  return drawl_message_sentence (error);
}

static const Notice notices[] = {
    {"changed", drawl_document_get_changed, changed_text, N_ ("_Read Again"), "win.reload"},
    {"problem", is_at_risk, problem_text, N_ ("_Save"), "win.save"},
};

static const Notice *
first_notice (DrawlWindow *self)
{
  for (guint i = 0; self->document != NULL && i < G_N_ELEMENTS (notices); i++)
    if ((self->put_away & (1u << i)) == 0 && notices[i].holds (self->document))
      return &notices[i];
  return NULL;
}

static void
refresh (DrawlWindow *self)
{
  const Notice *notice = first_notice (self);
  GAction *reload = g_action_map_lookup_action (G_ACTION_MAP (self), "reload");

  g_simple_action_set_enabled (G_SIMPLE_ACTION (reload),
                               self->document != NULL &&
                                   drawl_document_get_changed (self->document));
  if (notice != NULL) {
    g_autofree char *text = notice->text (self->document);
    gtk_label_set_text (GTK_LABEL (self->notice_label), text);
    gtk_button_set_label (GTK_BUTTON (self->notice_button), _ (notice->button));
    gtk_actionable_set_action_name (GTK_ACTIONABLE (self->notice_button), notice->action);
  }
  gtk_info_bar_set_revealed (GTK_INFO_BAR (self->notice_bar), notice != NULL);
}

static void
on_document_notify (DrawlWindow *self, GParamSpec *pspec)
{
  for (guint i = 0; i < G_N_ELEMENTS (notices); i++)
    if (g_str_equal (pspec->name, notices[i].property))
      self->put_away &= ~(1u << i);
  refresh (self);
}

void
drawl_window_put_notice_away (DrawlWindow *window)
{
  const Notice *notice = first_notice (window);

  if (notice != NULL)
    window->put_away |= 1u << (guint)(notice - notices);
  refresh (window);
  drawl_window_focus_page (window);
}

static void
on_save_failed (DrawlWindow *self, const GError *error)
{
  g_autofree char *reason = drawl_message_sentence (error);
  g_autofree char *text = g_markup_escape_text (reason, -1);
  AdwToast *toast = adw_toast_new (text);

  adw_toast_set_button_label (toast, _ ("_Save…"));
  adw_toast_set_action_name (toast, "win.save");
  adw_toast_overlay_add_toast (ADW_TOAST_OVERLAY (self->toasts), toast);
}

void
drawl_window_follow_file (DrawlWindow *window)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (window));

  window->put_away = 0;
  refresh (window);
  if (window->document == NULL)
    return;
  g_signal_connect_object (window->document, "notify", G_CALLBACK (on_document_notify), window,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (window->document, "save-failed", G_CALLBACK (on_save_failed), window,
                           G_CONNECT_SWAPPED);
  if (application != NULL)
    g_settings_bind (drawl_application_get_settings (DRAWL_APPLICATION (application)),
                     "save-by-itself", window->document, "saves-itself", G_SETTINGS_BIND_GET);
}

/* To look elsewhere is a good moment to save; to come back, one to see what happened meanwhile. */
void
drawl_window_on_is_active (DrawlWindow *window)
{
  if (window->document == NULL)
    return;
  if (gtk_window_is_active (GTK_WINDOW (window)))
    drawl_document_look_at_file (window->document);
  else
    drawl_document_save_soon (window->document);
}
