/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The page of a hired body. Every control edits a copy of the hired body's fields and hands it to
 * the plan; what is shown comes back from there. Invariant: while `setting` is on, controls are
 * being filled and hand over nothing. */

#include "app/hired-body-page.h"

#include <adwaita.h>

#include "app/body-editor.h"
#include "app/body-limits.h"
#include "app/limits-view.h"
#include "app/message.h"
#include "app/tier-group.h"
#include "core/text.h"
#include "plan/figure.h"

struct _DrawlHiredBodyPage {
  GtkWidget parent_instance;
  DrawlPlan *plan;
  DrawlHiredBody *hired;
  DrawlBody *body; /* the one that the static parts show */
  gboolean setting;
  GPtrArray *notes; /* the rows of the lists to check, with their parents */
  GtkWidget *scrolled, *name_label, *what_label, *count_label, *card_row, *cards_row, *cards_spin,
      *days_spin, *price_row, *fits_row, *pickups_row, *returns_row, *buffer_row, *power_row,
      *source_row, *picture;
  DrawlTierGroup *tier_group;
  DrawlBodyLimits *limits;
};

G_DEFINE_FINAL_TYPE (DrawlHiredBodyPage, drawl_hired_body_page, GTK_TYPE_WIDGET)

/* ---- Edits ---- */

static void
hand_over (DrawlHiredBodyPage *self, const DrawlHiredFields *fields, const char *label)
{
  g_autoptr (GError) error = NULL;

  if (!drawl_plan_set_body (self->plan, self->hired, fields, label, &error))
    drawl_message_show (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))),
                        _ ("The body could not be changed"), error);
}

static DrawlHiredFields *
copy_fields (DrawlHiredBodyPage *self)
{
  return drawl_hired_fields_copy (drawl_hired_body_get_fields (self->hired));
}

static void
on_tier_chosen (DrawlHiredBodyPage *self, guint64 tier)
{
  g_autoptr (DrawlHiredFields) fields = copy_fields (self);

  fields->tier = tier;
  hand_over (self, fields, _ ("Change Tier"));
}

static void
on_card_selected (DrawlHiredBodyPage *self)
{
  if (self->setting || self->hired == NULL)
    return;
  g_autoptr (DrawlHiredFields) fields = copy_fields (self);

  /* The first entry is "the fastest", no card in particular. */
  fields->card = (int)adw_combo_row_get_selected (ADW_COMBO_ROW (self->card_row)) - 1;
  hand_over (self, fields, _ ("Change Card"));
}

static void
on_cards_changed (DrawlHiredBodyPage *self)
{
  if (self->setting || self->hired == NULL)
    return;
  g_autoptr (DrawlHiredFields) fields = copy_fields (self);

  fields->cards = (guint)gtk_spin_button_get_value_as_int (GTK_SPIN_BUTTON (self->cards_spin));
  hand_over (self, fields, _ ("Change Number of Cards"));
}

static void
on_days_changed (DrawlHiredBodyPage *self)
{
  if (self->setting || self->hired == NULL)
    return;
  g_autoptr (DrawlHiredFields) fields = copy_fields (self);

  fields->days = (guint)gtk_spin_button_get_value_as_int (GTK_SPIN_BUTTON (self->days_spin));
  hand_over (self, fields, _ ("Change Days of Hire"));
}

static void
on_edit (DrawlHiredBodyPage *self)
{
  GtkWindow *window = GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self)));

  gtk_window_present (GTK_WINDOW (drawl_body_editor_new (window, self->plan, self->hired)));
}

/* ---- What follows the hired body ---- */

/* Only a page that is seen counts; the count is made good when it is shown again. */
static void
count_shots (DrawlHiredBodyPage *self)
{
  guint by_verdict[DRAWL_N_VERDICTS] = {0}, n = 0;

  if (self->hired == NULL || !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  const char *id = drawl_hired_body_get_id (self->hired);
  for (guint i = 0; i < drawl_plan_n_shots (self->plan); i++) {
    DrawlShot *shot = drawl_plan_get_shot (self->plan, i);
    if (!g_str_equal (drawl_shot_get_fields (shot)->body, id))
      continue;
    by_verdict[drawl_shot_get_verdict (shot)]++;
    n++;
  }
  g_autofree char *all = drawl_figure_count (n);
  g_autofree char *hired = drawl_figure_count (by_verdict[DRAWL_VERDICT_AS_HIRED]);
  g_autofree char *needs = drawl_figure_count (by_verdict[DRAWL_VERDICT_NEEDS_LICENCE]);
  g_autofree char *never = drawl_figure_count (by_verdict[DRAWL_VERDICT_NOT_ON_THIS_BODY]);
  /* Translators: of the shots of one body: as hired, all, needs a licence, not on this body. */
  g_autofree char *text =
      n == 0
          ? g_strdup (_ ("No shot is on this body yet"))
          : g_strdup_printf (_ ("%s of %s shots as hired, %s need a licence, %s not on this body"),
                             hired, all, needs, never);

  gtk_label_set_text (GTK_LABEL (self->count_label), text);
}

static char *
price_text (DrawlHiredBodyPage *self)
{
  const DrawlHiredFields *fields = drawl_hired_body_get_fields (self->hired);
  gint64 licences = 0;

  for (guint i = 0; i < self->body->n_licences; i++)
    if ((fields->tier & DRAWL_TIER_BIT (i)) != 0)
      licences += self->body->licences[i].price;
  g_autofree char *body_price = drawl_figure_money (self->body->price, self->body->currency);
  if (licences == 0)
    return g_steal_pointer (&body_price);
  g_autofree char *licence_price = drawl_figure_money (licences, self->body->currency);
  g_autofree char *sum = drawl_figure_money (self->body->price + licences, self->body->currency);
  /* Translators: a sum of money: total, the body's share, the licences' share. */
  return g_strdup_printf (_ ("%s: body %s, licences %s"), sum, body_price, licence_price);
}

static void show_body (DrawlHiredBodyPage *self, DrawlBody *body);

static void
refresh (DrawlHiredBodyPage *self)
{
  show_body (self, drawl_hired_body_get_body (self->hired));
  const DrawlHiredFields *fields = drawl_hired_body_get_fields (self->hired);
  g_autofree char *name = drawl_hired_body_dup_name (self->hired);
  g_autofree char *price = price_text (self);

  self->setting = TRUE;
  gtk_label_set_text (GTK_LABEL (self->name_label), name);
  adw_combo_row_set_selected (ADW_COMBO_ROW (self->card_row), (guint)(fields->card + 1));
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (self->cards_spin), fields->cards);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (self->days_spin), fields->days);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (self->price_row), price);
  drawl_tier_group_set_tier (self->tier_group, fields->tier);
  drawl_body_limits_set_tier (self->limits, fields->tier);
  self->setting = FALSE;
  count_shots (self);
}

/* ---- What follows the body's profile ---- */

static void
add_note (DrawlHiredBodyPage *self, GtkWidget *list, const DrawlBodyNote *note)
{
  GtkWidget *row = adw_action_row_new ();

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), note->what);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), note->why != NULL ? note->why : "");
  adw_action_row_set_title_lines (ADW_ACTION_ROW (row), 0);
  adw_action_row_set_subtitle_lines (ADW_ACTION_ROW (row), 0);
  adw_expander_row_add_row (ADW_EXPANDER_ROW (list), row);
  g_ptr_array_add (self->notes, list);
  g_ptr_array_add (self->notes, row);
}

static void
show_notes (DrawlHiredBodyPage *self, GtkWidget *list, const DrawlBodyNote *notes, guint n)
{
  g_autofree char *count = drawl_figure_count (n);

  for (guint i = 0; i < n; i++)
    add_note (self, list, &notes[i]);
  g_autofree char *text = g_strdup_printf (ngettext_ ("%s point", "%s points", n), count);
  adw_expander_row_set_subtitle (ADW_EXPANDER_ROW (list), text);
  gtk_widget_set_visible (list, n > 0);
}

static void
show_cards (DrawlHiredBodyPage *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  gtk_string_list_append (names, _ ("The fastest of its cards"));
  for (guint i = 0; i < self->body->n_cards; i++)
    gtk_string_list_append (names, self->body->cards[i].name);
  adw_combo_row_set_model (ADW_COMBO_ROW (self->card_row), G_LIST_MODEL (names));
  gtk_widget_set_visible (self->card_row, self->body->n_cards > 0);
  gtk_widget_set_visible (self->cards_row, self->body->n_cards > 0);
}

static void
show_about (DrawlHiredBodyPage *self)
{
  const DrawlBody *body = self->body;
  g_autofree char *buffer = drawl_figure_bytes (drawl_rational_whole (body->buffer_bytes));
  g_autofree char *percent = drawl_figure_percent (body->buffer_pre_percent);
  g_autofree char *buffer_text =
      g_strdup_printf (_ ("%s, %s of it before the trigger"), buffer, percent);
  g_autofree char *watts = drawl_figure_number (body->watts, 1);
  g_autofree char *power_text =
      g_strdup_printf (_ ("%s W. Rules for carrying batteries change: ask the carrier."), watts);
  g_autofree char *source_text =
      g_strdup_printf ("%s, %s", body->source_document, body->source_date);

  adw_action_row_set_subtitle (ADW_ACTION_ROW (self->buffer_row), buffer_text);
  gtk_widget_set_visible (self->buffer_row, body->buffer_bytes > 0);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (self->power_row), power_text);
  gtk_widget_set_visible (self->power_row, body->watts.num > 0);
  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (self->source_row), FALSE);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (self->source_row), source_text);
}

static void
show_body (DrawlHiredBodyPage *self, DrawlBody *body)
{
  if (body == self->body)
    return;
  for (guint i = 0; i < self->notes->len; i += 2)
    adw_expander_row_remove (self->notes->pdata[i], self->notes->pdata[i + 1]);
  g_ptr_array_set_size (self->notes, 0);
  g_clear_pointer (&self->body, drawl_body_unref);
  drawl_tier_group_set_body (self->tier_group, body);
  drawl_body_limits_set_body (self->limits, body);
  drawl_limits_view_set_body (DRAWL_LIMITS_VIEW (self->picture), body);
  if (body == NULL)
    return;
  self->body = drawl_body_ref (body);
  self->setting = TRUE;
  gtk_label_set_text (GTK_LABEL (self->what_label), body->what);
  show_cards (self);
  show_notes (self, self->fits_row, body->fits, body->n_fits);
  show_notes (self, self->pickups_row, body->pickups, body->n_pickups);
  show_notes (self, self->returns_row, body->returns, body->n_returns);
  show_about (self);
  self->setting = FALSE;
}

void
drawl_hired_body_page_show (DrawlHiredBodyPage *page, DrawlPlan *plan, DrawlHiredBody *hired)
{
  if (hired == page->hired)
    return;
  if (page->plan != NULL)
    g_signal_handlers_disconnect_by_data (page->plan, page);
  g_set_object (&page->plan, plan);
  g_set_object (&page->hired, hired);
  show_body (page, hired != NULL ? drawl_hired_body_get_body (hired) : NULL);
  if (hired == NULL)
    return;
  g_signal_connect_swapped (plan, "changed", G_CALLBACK (refresh), page);
  gtk_adjustment_set_value (
      gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (page->scrolled)), 0);
  refresh (page);
}

/* ---- The type ---- */

static void
drawl_hired_body_page_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (drawl_hired_body_page_parent_class)->map (widget);
  count_shots (DRAWL_HIRED_BODY_PAGE (widget));
}

static void
drawl_hired_body_page_dispose (GObject *object)
{
  DrawlHiredBodyPage *self = DRAWL_HIRED_BODY_PAGE (object);

  if (self->plan != NULL)
    g_signal_handlers_disconnect_by_data (self->plan, self);
  g_clear_object (&self->plan);
  g_clear_object (&self->hired);
  gtk_widget_dispose_template (GTK_WIDGET (self), DRAWL_TYPE_HIRED_BODY_PAGE);
  G_OBJECT_CLASS (drawl_hired_body_page_parent_class)->dispose (object);
}

static void
drawl_hired_body_page_finalize (GObject *object)
{
  DrawlHiredBodyPage *self = DRAWL_HIRED_BODY_PAGE (object);

  g_ptr_array_unref (self->notes);
  g_clear_pointer (&self->body, drawl_body_unref);
  G_OBJECT_CLASS (drawl_hired_body_page_parent_class)->finalize (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/drawl/Drawl/ui/hired-body-page.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlHiredBodyPage, scrolled);
  gtk_widget_class_bind_template_child (widget_class, DrawlHiredBodyPage, name_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlHiredBodyPage, what_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlHiredBodyPage, count_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlHiredBodyPage, card_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlHiredBodyPage, cards_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlHiredBodyPage, cards_spin);
  gtk_widget_class_bind_template_child (widget_class, DrawlHiredBodyPage, days_spin);
  gtk_widget_class_bind_template_child (widget_class, DrawlHiredBodyPage, price_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlHiredBodyPage, fits_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlHiredBodyPage, pickups_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlHiredBodyPage, returns_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlHiredBodyPage, buffer_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlHiredBodyPage, power_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlHiredBodyPage, source_row);
  gtk_widget_class_bind_template_child (widget_class, DrawlHiredBodyPage, picture);
  gtk_widget_class_bind_template_child (widget_class, DrawlHiredBodyPage, tier_group);
  gtk_widget_class_bind_template_child (widget_class, DrawlHiredBodyPage, limits);
  gtk_widget_class_bind_template_callback (widget_class, on_tier_chosen);
  gtk_widget_class_bind_template_callback (widget_class, on_card_selected);
  gtk_widget_class_bind_template_callback (widget_class, on_cards_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_days_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_edit);
}

static void
drawl_hired_body_page_class_init (DrawlHiredBodyPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = drawl_hired_body_page_dispose;
  object_class->finalize = drawl_hired_body_page_finalize;
  widget_class->map = drawl_hired_body_page_map;
  g_type_ensure (DRAWL_TYPE_TIER_GROUP);
  g_type_ensure (DRAWL_TYPE_BODY_LIMITS);
  g_type_ensure (DRAWL_TYPE_LIMITS_VIEW);
  bind_template (widget_class);
}

static void
drawl_hired_body_page_init (DrawlHiredBodyPage *self)
{
  self->notes = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
}
