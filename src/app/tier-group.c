/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Licences as switches. Invariant: rows stand in the order of the body's licence table; while the
 * rows are being set, their switches ask for nothing. */

#include "app/tier-group.h"

#include <adwaita.h>

#include "core/text.h"
#include "plan/figure.h"

typedef struct {
  GtkWidget *row;
  GtkWidget *button; /* the switch */
} LicenceRow;

struct _DrawlTierGroup {
  GtkWidget parent_instance;
  DrawlBody *body;
  DrawlTier tier;
  GArray *rows; /* of LicenceRow */
  gboolean setting;
  GtkWidget *group;
};

static guint chosen_signal;

G_DEFINE_FINAL_TYPE (DrawlTierGroup, drawl_tier_group, GTK_TYPE_WIDGET)

/* A requirement is met by the licence itself or by one that replaces it. */
static DrawlTier
add_required (const DrawlBody *body, DrawlTier tier, guint licence)
{
  DrawlTier lacking = body->licences[licence].requires &
                      ~drawl_tier_effective (body->licences, body->n_licences, tier);

  tier |= DRAWL_TIER_BIT (licence);
  for (guint i = 0; i < body->n_licences; i++)
    if ((lacking & DRAWL_TIER_BIT (i)) != 0 && (tier & DRAWL_TIER_BIT (i)) == 0)
      tier = add_required (body, tier, i);
  return tier;
}

static DrawlTier
drop_dependent (const DrawlBody *body, DrawlTier tier)
{
  DrawlTier before;

  do {
    before = tier;
    DrawlTier effective = drawl_tier_effective (body->licences, body->n_licences, tier);
    for (guint i = 0; i < body->n_licences; i++)
      if ((body->licences[i].requires & ~effective) != 0)
        tier &= ~DRAWL_TIER_BIT (i);
  } while (tier != before);
  return tier;
}

DrawlTier
drawl_tier_with (const DrawlBody *body, DrawlTier tier, guint licence, gboolean held)
{
  return held ? add_required (body, tier, licence)
              : drop_dependent (body, tier & ~DRAWL_TIER_BIT (licence));
}

static void
on_switched (DrawlTierGroup *self, GParamSpec *pspec, GtkSwitch *button)
{
  if (self->setting)
    return;
  guint licence = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "licence"));
  DrawlTier tier =
      drawl_tier_with (self->body, self->tier, licence, gtk_switch_get_active (button));

  g_signal_emit (self, chosen_signal, 0, tier);
}

/* The licence in hand that makes this one needless, or -1. */
static int
replaced_by (DrawlTierGroup *self, guint licence)
{
  for (guint i = 0; i < self->body->n_licences; i++)
    if (i != licence && (self->tier & DRAWL_TIER_BIT (i)) != 0 &&
        (self->body->licences[i].replaces & DRAWL_TIER_BIT (licence)) != 0)
      return (int)i;
  return -1;
}

static char *
subtitle_of (DrawlTierGroup *self, guint index)
{
  const DrawlLicence *licence = &self->body->licences[index];
  int replacing = replaced_by (self, index);
  g_autofree char *price = drawl_figure_money (licence->price, self->body->currency);
  g_autoptr (GString) text = g_string_new (NULL);

  /* Translators: a price of hire. */
  g_string_append_printf (text, _ ("%s a day"), price);
  if (licence->what != NULL && *licence->what != '\0')
    g_string_append_printf (text, "\n%s", licence->what);
  if (licence->requires != 0) {
    g_autofree char *names = drawl_body_tier_names (self->body, licence->requires);
    g_string_append_c (text, '\n');
    g_string_append_printf (text, _ ("Needs %s"), names);
  }
  if (replacing >= 0) {
    g_string_append_c (text, '\n');
    g_string_append_printf (text, _ ("Included in %s"), self->body->licences[replacing].name);
  }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
refresh (DrawlTierGroup *self)
{
  self->setting = TRUE;
  for (guint i = 0; i < self->rows->len; i++) {
    const LicenceRow *row = &g_array_index (self->rows, LicenceRow, i);
    g_autofree char *subtitle = subtitle_of (self, i);
    adw_action_row_set_subtitle (ADW_ACTION_ROW (row->row), subtitle);
    gtk_switch_set_active (GTK_SWITCH (row->button), (self->tier & DRAWL_TIER_BIT (i)) != 0);
  }
  self->setting = FALSE;
}

static void
add_row (DrawlTierGroup *self, guint index)
{
  LicenceRow made = {adw_action_row_new (), gtk_switch_new ()};
  const char *name = self->body->licences[index].name;

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (made.row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (made.row), name);
  adw_action_row_set_subtitle_lines (ADW_ACTION_ROW (made.row), 0);
  adw_action_row_set_title_lines (ADW_ACTION_ROW (made.row), 0);
  gtk_widget_set_valign (made.button, GTK_ALIGN_CENTER);
  gtk_accessible_update_property (GTK_ACCESSIBLE (made.button), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  -1);
  g_object_set_data (G_OBJECT (made.button), "licence", GUINT_TO_POINTER (index));
  g_signal_connect_object (made.button, "notify::active", G_CALLBACK (on_switched), self,
                           G_CONNECT_SWAPPED);
  adw_action_row_add_suffix (ADW_ACTION_ROW (made.row), made.button);
  adw_action_row_set_activatable_widget (ADW_ACTION_ROW (made.row), made.button);
  adw_preferences_group_add (ADW_PREFERENCES_GROUP (self->group), made.row);
  g_array_append_val (self->rows, made);
}

void
drawl_tier_group_set_body (DrawlTierGroup *group, DrawlBody *body)
{
  if (body == group->body)
    return;
  for (guint i = 0; i < group->rows->len; i++)
    adw_preferences_group_remove (ADW_PREFERENCES_GROUP (group->group),
                                  g_array_index (group->rows, LicenceRow, i).row);
  g_array_set_size (group->rows, 0);
  g_clear_pointer (&group->body, drawl_body_unref);
  group->tier = 0;
  if (body != NULL) {
    group->body = drawl_body_ref (body);
    for (guint i = 0; i < body->n_licences; i++)
      add_row (group, i);
    refresh (group);
  }
  gtk_widget_set_visible (GTK_WIDGET (group), body != NULL && body->n_licences > 0);
}

void
drawl_tier_group_set_tier (DrawlTierGroup *group, DrawlTier tier)
{
  group->tier = tier;
  refresh (group);
}

static void
drawl_tier_group_dispose (GObject *object)
{
  DrawlTierGroup *self = DRAWL_TIER_GROUP (object);

  g_array_set_size (self->rows, 0);
  gtk_widget_dispose_template (GTK_WIDGET (self), DRAWL_TYPE_TIER_GROUP);
  G_OBJECT_CLASS (drawl_tier_group_parent_class)->dispose (object);
}

static void
drawl_tier_group_finalize (GObject *object)
{
  DrawlTierGroup *self = DRAWL_TIER_GROUP (object);

  g_array_unref (self->rows);
  g_clear_pointer (&self->body, drawl_body_unref);
  G_OBJECT_CLASS (drawl_tier_group_parent_class)->finalize (object);
}

static void
drawl_tier_group_class_init (DrawlTierGroupClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = drawl_tier_group_dispose;
  object_class->finalize = drawl_tier_group_finalize;
  chosen_signal = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                NULL, NULL, G_TYPE_NONE, 1, G_TYPE_UINT64);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/drawl/Drawl/ui/tier-group.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlTierGroup, group);
}

static void
drawl_tier_group_init (DrawlTierGroup *self)
{
  self->rows = g_array_new (FALSE, FALSE, sizeof (LicenceRow));
  gtk_widget_init_template (GTK_WIDGET (self));
}
