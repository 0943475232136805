/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What a person does to the plan from the window: add, remove and move shots and bodies, undo. Each
 * is an action of the window, one row of the table; what cannot be done now is not enabled. */

#include "app/body-chooser.h"
#include "app/message.h"
#include "app/plan-dialog.h"
#include "app/tooltip.h"
#include "app/window-private.h"
#include "core/text.h"

static void
enable (DrawlWindow *self, const char *name, gboolean enabled)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), name);

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
  enable (self, "undo", plan != NULL && drawl_plan_can_undo (plan));
  enable (self, "redo", plan != NULL && drawl_plan_can_redo (plan));
  name_step (self->undo_button, _ ("Undo"), plan != NULL ? drawl_plan_undo_label (plan) : NULL,
             _ ("Ctrl+Z"));
  name_step (self->redo_button, _ ("Redo"), plan != NULL ? drawl_plan_redo_label (plan) : NULL,
             _ ("Ctrl+Shift+Z"));
}

static void
refresh_filter (DrawlWindow *self)
{
  DrawlShotList *list = drawl_window_get_list (self);
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), "filter");
  const char *filter = list != NULL ? drawl_shot_list_get_filter (list) : "all";

  g_simple_action_set_state (G_SIMPLE_ACTION (action), g_variant_new_string (filter));
}

void
drawl_window_refresh_actions (DrawlWindow *window)
{
  DrawlPlan *plan = drawl_window_get_plan (window);
  DrawlShot *shot = drawl_window_get_shot (window);
  int at = plan != NULL && shot != NULL ? drawl_plan_shot_position (plan, shot) : -1;
  static const char *const of_plan[] = {"save",          "save-as",  "add-shot", "find",
                                        "plan-settings", "add-body", "page",     "filter"};
  static const char *const of_shot[] = {"duplicate-shot", "remove-shot", "previous-shot",
                                        "next-shot"};

  for (gsize i = 0; i < G_N_ELEMENTS (of_plan); i++)
    enable (window, of_plan[i], plan != NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (of_shot); i++)
    enable (window, of_shot[i], at >= 0);
  enable (window, "move-shot-up", at > 0);
  enable (window, "move-shot-down", at >= 0 && (guint)at + 1 < drawl_plan_n_shots (plan));
  enable (window, "remove-body",
          plan != NULL && g_list_model_get_n_items (drawl_plan_get_bodies (plan)) > 0);
  refresh_undo (window, plan);
  refresh_filter (window);
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

/* ---- Shots ---- */

/* The first size and codec that are open to the tier, so that a new shot can be done as hired. */
static void
give_body (DrawlShotFields *fields, DrawlHiredBody *hired)
{
  DrawlBody *body = drawl_hired_body_get_body (hired);
  DrawlTier held =
      drawl_tier_effective (body->licences, body->n_licences, drawl_hired_body_get_tier (hired));
  const DrawlBodyLimit *chosen = body->limits;

  drawl_shot_fields_set (&fields->body, drawl_hired_body_get_id (hired));
  fields->audio_tracks = MIN (body->audio_tracks, DRAWL_SHOT_AUDIO_MAX);
  if (body->n_limits == 0)
    return;
  for (guint i = 0; i < body->n_limits; i++)
    if ((body->limits[i].licences & ~held) == 0) {
      chosen = &body->limits[i];
      break;
    }
  drawl_shot_fields_set (&fields->size, body->sizes[chosen->size].id);
  drawl_shot_fields_set (
      &fields->codec, chosen->codec != DRAWL_BODY_NO_CODEC ? body->codecs[chosen->codec].id : "");
}

/* A new shot goes on with the body, size and codec of the one in hand. */
static DrawlShotFields *
new_fields (DrawlPlan *plan, DrawlShot *after)
{
  g_autofree char *slate = drawl_plan_next_slate (plan);
  DrawlShotFields *fields = drawl_shot_fields_new (slate, drawl_plan_get_settings (plan)->playback);
  const DrawlShotFields *former = after != NULL ? drawl_shot_get_fields (after) : NULL;
  g_autoptr (DrawlHiredBody) first = g_list_model_get_item (drawl_plan_get_bodies (plan), 0);

  if (former != NULL && former->body[0] != '\0') {
    drawl_shot_fields_set (&fields->body, former->body);
    drawl_shot_fields_set (&fields->size, former->size);
    drawl_shot_fields_set (&fields->codec, former->codec);
    fields->audio_tracks = former->audio_tracks;
  } else if (first != NULL)
    give_body (fields, first);
  return fields;
}

static void
insert_after (DrawlWindow *self, DrawlShot *after, const DrawlShotFields *fields, const char *label)
{
  DrawlPlan *plan = drawl_window_get_plan (self);
  int at = after != NULL ? drawl_plan_shot_position (plan, after) : -1;
  guint position = at >= 0 ? (guint)at + 1 : drawl_plan_n_shots (plan);
  g_autoptr (GError) error = NULL;

  drawl_window_show_page (self, "shots");
  if (!drawl_plan_insert_shot (plan, position, fields, label, &error)) {
    drawl_message_show (GTK_WINDOW (self), _ ("The Shot Could Not Be Added"), error);
    return;
  }
  drawl_shot_list_select (drawl_window_get_list (self), drawl_plan_get_shot (plan, position));
  drawl_shots_page_enter_shot (self->shots);
}

static void
on_add_shot (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;
  DrawlShot *after = drawl_window_get_shot (self);
  g_autoptr (DrawlShotFields) fields = new_fields (drawl_window_get_plan (self), after);

  insert_after (self, after, fields, _ ("Add Shot"));
}

static void
on_duplicate_shot (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;
  DrawlShot *shot = drawl_window_get_shot (self);
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (drawl_shot_get_fields (shot));
  g_autofree char *slate = drawl_plan_next_slate (drawl_window_get_plan (self));

  drawl_shot_fields_set (&fields->slate, slate);
  insert_after (self, shot, fields, _ ("Duplicate Shot"));
}

static void
on_remove_shot (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;
  DrawlPlan *plan = drawl_window_get_plan (self);
  DrawlShot *shot = drawl_window_get_shot (self);
  g_autofree char *text = g_strdup_printf (_ ("Shot %s removed"), drawl_shot_get_slate (shot));

  drawl_plan_remove_shot (plan, (guint)drawl_plan_shot_position (plan, shot), _ ("Remove Shot"));
  drawl_window_tell_undoable (self, text);
}

static void
move_by (DrawlWindow *self, int step)
{
  DrawlPlan *plan = drawl_window_get_plan (self);
  DrawlShot *shot = drawl_window_get_shot (self);
  int at = drawl_plan_shot_position (plan, shot);

  drawl_plan_move_shot (plan, (guint)at, (guint)(at + step), _ ("Move Shot"));
  drawl_shot_list_select (drawl_window_get_list (self), shot);
}

static void
on_move_up (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  move_by (data, -1);
}

static void
on_move_down (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  move_by (data, 1);
}

static void
on_previous_shot (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  drawl_shot_list_step (drawl_window_get_list (data), -1);
}

static void
on_next_shot (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  drawl_shot_list_step (drawl_window_get_list (data), 1);
}

static void
on_find (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;

  drawl_window_show_page (self, "shots");
  drawl_shots_page_go_back (self->shots);
  drawl_shot_list_search (drawl_window_get_list (self));
}

/* The verdict that is shown already: all of them again. */
static void
on_filter (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;
  const char *wanted = g_variant_get_string (parameter, NULL);

  drawl_window_show_page (self, "shots");
  DrawlShotList *list = drawl_window_get_list (self);
  gboolean again = g_str_equal (wanted, drawl_shot_list_get_filter (list));
  drawl_shot_list_set_filter (list, again ? "all" : wanted);
  refresh_filter (self);
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
    give_body (fields, hired);
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
      {"add-shot", on_add_shot},
      {"duplicate-shot", on_duplicate_shot},
      {"remove-shot", on_remove_shot},
      {"move-shot-up", on_move_up},
      {"move-shot-down", on_move_down},
      {"previous-shot", on_previous_shot},
      {"next-shot", on_next_shot},
      {"find", on_find},
      {"filter", on_filter, "s", "'all'"},
      {"add-body", on_add_body},
      {"remove-body", on_remove_body},
      {"plan-settings", on_plan_settings},
      {"back", on_back},
      {"page", on_page, "s"},
      {"shortcuts", on_shortcuts},
      {"about", on_about},
  };

  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
}
