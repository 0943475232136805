/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What a person does to the plan from the window: undo, add and remove bodies, settings. Each is an
 * action of the window, one row of the table; what cannot be done now is not enabled. Those of the
 * shots stand in window-shots.c. */

#include "app/body-chooser.h"
#include "app/message.h"
#include "app/plan-dialog.h"
#include "app/shot-edit.h"
#include "app/tooltip.h"
#include "app/window-private.h"
#include "core/text.h"

void
drawl_window_enable (DrawlWindow *window, const char *name, gboolean enabled)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (window), name);

  g_simple_action_set_enabled (G_SIMPLE_ACTION (action), enabled);
}

/* "Undo: Change Rate (Ctrl+Z)". */
static void
name_step (GtkWidget *button, const char *verb, const char *step, const char *keys)
{
  g_autofree char *name = step != NULL ? g_strdup_printf ("%s: %s", verb, step) : g_strdup (verb);
  g_autofree char *tooltip = g_strdup_printf ("%s (%s)", name, keys);

  drawl_tooltip_set (button, tooltip);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void
refresh_undo (DrawlWindow *self, DrawlPlan *plan)
{
  drawl_window_enable (self, "undo", plan != NULL && drawl_plan_can_undo (plan));
  drawl_window_enable (self, "redo", plan != NULL && drawl_plan_can_redo (plan));
  name_step (self->undo_button, _ ("Undo"), plan != NULL ? drawl_plan_undo_label (plan) : NULL,
             _ ("Ctrl+Z"));
  name_step (self->redo_button, _ ("Redo"), plan != NULL ? drawl_plan_redo_label (plan) : NULL,
             _ ("Ctrl+Shift+Z"));
}

void
drawl_window_refresh_actions (DrawlWindow *window)
{
  DrawlPlan *plan = drawl_window_get_plan (window);
  static const char *const of_plan[] = {"save",          "save-as",  "new-window",
                                        "plan-settings", "add-body", "page"};

  for (gsize i = 0; i < G_N_ELEMENTS (of_plan); i++)
    drawl_window_enable (window, of_plan[i], plan != NULL);
  drawl_window_enable (window, "remove-body",
                       plan != NULL && g_list_model_get_n_items (drawl_plan_get_bodies (plan)) > 0);
  refresh_undo (window, plan);
  drawl_window_refresh_shot_actions (window);
  drawl_window_refresh_transfer (window);
}

/* ---- Undo ---- */

static void
on_undo (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  drawl_plan_undo (drawl_window_get_plan (data));
}

static void
on_redo (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  drawl_plan_redo (drawl_window_get_plan (data));
}

/* ---- Bodies ---- */

/* Shots that waited for a body take the new one along, in the same step. */
static void
give_to_waiting_shots (DrawlPlan *plan, DrawlHiredBody *hired)
{
  for (guint i = 0; i < drawl_plan_n_shots (plan); i++) {
    DrawlShot *shot = drawl_plan_get_shot (plan, i);
    if (drawl_shot_get_fields (shot)->body[0] != '\0')
      continue;
    g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (drawl_shot_get_fields (shot));
    drawl_shot_edit_give_body (fields, hired);
    drawl_plan_set_shot (plan, shot, fields, _ ("Add Body"), NULL);
  }
}

static void
on_body_chosen (DrawlWindow *self, DrawlBody *body)
{
  DrawlPlan *plan = drawl_window_get_plan (self);
  g_autofree char *id = drawl_plan_next_body_id (plan);
  g_autoptr (DrawlHiredFields) fields = drawl_hired_fields_new (id, body);
  guint position = g_list_model_get_n_items (drawl_plan_get_bodies (plan));
  g_autoptr (GError) error = NULL;

  drawl_plan_begin_step (plan, _ ("Add Body"));
  gboolean done = drawl_plan_insert_body (plan, position, fields, _ ("Add Body"), &error);
  if (done)
    give_to_waiting_shots (plan, drawl_plan_find_body (plan, id));
  drawl_plan_end_step (plan);
  if (!done) {
    drawl_message_show (GTK_WINDOW (self), _ ("The Body Could Not Be Added"), error);
    return;
  }
  if (self->bodies != NULL)
    drawl_bodies_page_select (self->bodies, drawl_plan_find_body (plan, id));
  g_autofree char *text = g_strdup_printf (_ ("%s added as body %s"), body->name, id);
  drawl_window_tell_undoable (self, text);
}

static void
on_add_body (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;
  DrawlBodyChooser *chooser = drawl_body_chooser_new (GTK_WINDOW (self));

  g_signal_connect_object (chooser, "chosen", G_CALLBACK (on_body_chosen), self, G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (chooser));
}

static void
on_remove_body (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;
  DrawlHiredBody *hired =
      self->bodies != NULL ? drawl_bodies_page_get_selected (self->bodies) : NULL;

  if (hired == NULL)
    return;
  g_autofree char *name = drawl_hired_body_dup_name (hired);
  g_autofree char *text = g_strdup_printf (_ ("%s removed"), name);
  drawl_plan_remove_body (drawl_window_get_plan (self), hired, _ ("Remove Body"));
  drawl_window_tell_undoable (self, text);
}

/* ---- The rest ---- */

/* The mains and the unit of this plan are those of the next one, too. */
static void
on_settings_applied (DrawlWindow *self)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (self));
  GSettings *settings = drawl_application_get_settings (DRAWL_APPLICATION (application));
  DrawlPlan *plan = drawl_window_get_plan (self);

  g_settings_set_int (settings, "mains-hz", (int)drawl_plan_get_settings (plan)->mains_hz);
  g_settings_set_string (settings, "length-unit",
                         drawl_length_unit_id (drawl_plan_get_length_unit (plan)));
}

static void
on_plan_settings (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;
  DrawlPlanDialog *dialog = drawl_plan_dialog_new (GTK_WINDOW (self), drawl_window_get_plan (self));

  g_signal_connect_object (dialog, "applied", G_CALLBACK (on_settings_applied), self,
                           G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
on_back (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;
  const char *page = adw_view_stack_get_visible_child_name (ADW_VIEW_STACK (self->pages));

  if (g_strcmp0 (page, "bodies") == 0)
    drawl_bodies_page_go_back (self->bodies);
  else
    drawl_shots_page_go_back (self->shots);
}

static void
on_page (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  drawl_window_show_page (data, g_variant_get_string (parameter, NULL));
  drawl_window_focus_page (data);
}

/* Made when first asked for; GTK finds the keys of its actions through the window. */
static void
on_shortcuts (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  GtkApplicationWindow *window = data;
  GtkShortcutsWindow *shortcuts = gtk_application_window_get_help_overlay (window);

  if (shortcuts == NULL) {
    g_autoptr (GtkBuilder) builder =
        gtk_builder_new_from_resource ("/org/drawl/Drawl/ui/shortcuts.ui");
    shortcuts = GTK_SHORTCUTS_WINDOW (gtk_builder_get_object (builder, "shortcuts"));
    gtk_application_window_set_help_overlay (window, shortcuts);
  }
  gtk_window_present (GTK_WINDOW (shortcuts));
}

static void
on_about (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  adw_show_about_window (
      data, "application-name", _ ("Drawl"), "application-icon", DRAWL_APPLICATION_ID, "version",
      DRAWL_VERSION, "license-type", GTK_LICENSE_GPL_3_0, "comments",
      _ ("Plans slow motion: what rate, how long, how many cards, and which licence to hire.\n\n"
         "Figures are plans: test on the day. Where light, heat, electricity, falling or breaking "
         "things are concerned, local codes and the people licensed for the work decide."),
      "developer-name", _ ("The Drawl makers"), NULL);
}

void
drawl_window_add_actions (DrawlWindow *window)
{
  static const GActionEntry entries[] = {
      {"undo", on_undo},
      {"redo", on_redo},
      {"add-body", on_add_body},
      {"remove-body", on_remove_body},
      {"plan-settings", on_plan_settings},
      {"back", on_back},
      {"page", on_page, "s"},
      {"shortcuts", on_shortcuts},
      {"about", on_about},
  };

  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
  drawl_window_add_shot_actions (window);
}
