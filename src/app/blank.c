/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A number in a sentence. It shows and asks; what a number means to a shot is the sentence's
 * business. A term that follows is lighter than one that drives, and says from what it follows. */

#include "app/blank.h"

#include "app/sentence-layout.h"
#include "core/text.h"

#include <string.h>

struct _DrawlBlank {
  GtkWidget parent_instance;
  DrawlTimingTerm term;
  GtkWidget *entry;
  GtkWidget *unit;
  GtkWidget *hold;
  DrawlEdit *edit;
  gboolean unit_apart; /* a gap stands between number and unit */
  gboolean follows;
  gboolean filling; /* the toggle moves by itself, nobody presses it */
};

enum { STEP, HOLD, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (DrawlBlank, drawl_blank, GTK_TYPE_WIDGET)

#define NO_BREAK_SPACE "\u00a0"
#define LARGE_STEP 10
#define LONGEST 60 /* characters that it is as wide as */

static void
show_hold (DrawlBlank *self, gboolean held)
{
  const DrawlTermWords *words = &drawl_term_words[self->term];

  self->filling = TRUE;
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->hold), held);
  self->filling = FALSE;
  gtk_button_set_icon_name (GTK_BUTTON (self->hold),
                            held ? "drawl-held-symbolic" : "drawl-hold-symbolic");
  gtk_widget_set_tooltip_text (self->hold, held ? _ (words->let_go) : _ (words->hold));
}

static void
on_toggled (DrawlBlank *self)
{
  gboolean held = gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->hold));

  if (!self->filling)
    g_signal_emit (self, signals[HOLD], 0, held);
}

static void
toggle_hold (GtkWidget *widget, const char *action, GVariant *parameter)
{
  DrawlBlank *self = DRAWL_BLANK (widget);
  GtkToggleButton *hold = GTK_TOGGLE_BUTTON (self->hold);

  gtk_toggle_button_set_active (hold, !gtk_toggle_button_get_active (hold));
}

static void
step (GtkWidget *widget, const char *action, GVariant *parameter)
{
  g_signal_emit (widget, signals[STEP], 0, g_variant_get_int32 (parameter));
}

/* ---- Layout: number and unit on one baseline, the toggle raised beside them ---- */

/* How high the middle of the toggle stands, as a share of the ascent. */
#define HOLD_RISE 0.78

typedef struct {
  int least, width, ascent, descent;
} Extent;

static Extent
measure_child (GtkWidget *child)
{
  Extent extent;
  int height, baseline;

  gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &extent.least, &extent.width, NULL,
                      NULL);
  gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, -1, NULL, &height, NULL, &baseline);
  extent.ascent = baseline >= 0 ? baseline : height;
  extent.descent = height - extent.ascent;
  return extent;
}

/* The gap is not part of the unit's text, where it would end up on the wrong side of a unit that
 * reads against the sentence ("24 fps" in Hebrew). */
static int
unit_gap (DrawlBlank *self)
{
  return self->unit_apart ? drawl_sentence_layout_gap (GTK_WIDGET (self)) : 0;
}

static void
drawl_blank_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                     int *natural, int *minimum_baseline, int *natural_baseline)
{
  DrawlBlank *self = DRAWL_BLANK (widget);
  Extent entry = measure_child (self->entry), unit = measure_child (self->unit);
  Extent hold = measure_child (self->hold);

  if (orientation == GTK_ORIENTATION_HORIZONTAL) {
    *minimum = entry.least + unit_gap (self) + unit.width + hold.width;
    *natural = entry.width + unit_gap (self) + unit.width + hold.width;
  } else {
    int ascent = MAX (entry.ascent, unit.ascent);
    *minimum = *natural = ascent + MAX (entry.descent, unit.descent);
    *minimum_baseline = *natural_baseline = ascent;
  }
}

static void
place (GtkWidget *child, const GtkAllocation *at, int full_width, int baseline)
{
  GtkAllocation allocation = *at;

  if (gtk_widget_get_direction (child) == GTK_TEXT_DIR_RTL)
    allocation.x = full_width - at->x - at->width;
  gtk_widget_size_allocate (child, &allocation, baseline);
}

static void
drawl_blank_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  DrawlBlank *self = DRAWL_BLANK (widget);
  Extent entry = measure_child (self->entry), unit = measure_child (self->unit);
  Extent hold = measure_child (self->hold);
  int ascent = baseline >= 0 ? baseline : MAX (entry.ascent, unit.ascent);
  int gap = unit_gap (self);
  int number = MAX (width - gap - unit.width - hold.width, entry.least);
  int hold_height = hold.ascent + hold.descent;
  GtkAllocation at = {0, ascent - entry.ascent, number, entry.ascent + entry.descent};

  place (self->entry, &at, width, entry.ascent);
  at = (GtkAllocation){number + gap, ascent - unit.ascent, unit.width, unit.ascent + unit.descent};
  place (self->unit, &at, width, unit.ascent);
  at = (GtkAllocation){number + gap + unit.width, (int)(ascent * (1 - HOLD_RISE)) - hold_height / 2,
                       hold.width, hold_height};
  place (self->hold, &at, width, -1);
}

static gboolean
drawl_blank_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (DRAWL_BLANK (widget)->entry);
}

/* One stop for Tab: the hold beside the number has a key of its own there. */
static gboolean
drawl_blank_focus (GtkWidget *widget, GtkDirectionType direction)
{
  if (direction != GTK_DIR_TAB_FORWARD && direction != GTK_DIR_TAB_BACKWARD)
    return GTK_WIDGET_CLASS (drawl_blank_parent_class)->focus (widget, direction);
  return gtk_widget_get_focus_child (widget) == NULL && drawl_blank_grab_focus (widget);
}

static void
drawl_blank_dispose (GObject *object)
{
  DrawlBlank *self = DRAWL_BLANK (object);

  g_clear_pointer (&self->entry, gtk_widget_unparent);
  g_clear_pointer (&self->unit, gtk_widget_unparent);
  g_clear_pointer (&self->hold, gtk_widget_unparent);
  G_OBJECT_CLASS (drawl_blank_parent_class)->dispose (object);
}

static void
add_keys (GtkWidgetClass *widget_class)
{
  static const struct {
    guint key, keypad;
    int steps;
  } rows[] = {
      {GDK_KEY_Up, GDK_KEY_KP_Up, 1},
      {GDK_KEY_Down, GDK_KEY_KP_Down, -1},
      {GDK_KEY_Page_Up, GDK_KEY_KP_Page_Up, LARGE_STEP},
      {GDK_KEY_Page_Down, GDK_KEY_KP_Page_Down, -LARGE_STEP},
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    gtk_widget_class_add_binding_action (widget_class, rows[i].key, 0, "blank.step", "i",
                                         rows[i].steps);
    gtk_widget_class_add_binding_action (widget_class, rows[i].keypad, 0, "blank.step", "i",
                                         rows[i].steps);
  }
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_l, GDK_CONTROL_MASK, "blank.hold",
                                       NULL);
}

static void
drawl_blank_class_init (DrawlBlankClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = drawl_blank_dispose;
  widget_class->measure = drawl_blank_measure;
  widget_class->size_allocate = drawl_blank_size_allocate;
  widget_class->focus = drawl_blank_focus;
  widget_class->grab_focus = drawl_blank_grab_focus;
  gtk_widget_class_set_css_name (widget_class, "blank");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_install_action (widget_class, "blank.step", "i", step);
  gtk_widget_class_install_action (widget_class, "blank.hold", NULL, toggle_hold);
  add_keys (widget_class);

  signals[STEP] = g_signal_new ("step", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 1, G_TYPE_INT);
  signals[HOLD] = g_signal_new ("hold", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 1, G_TYPE_BOOLEAN);
}

static void
drawl_blank_init (DrawlBlank *self)
{
  GtkWidget *widget = GTK_WIDGET (self);

  self->entry = gtk_entry_new ();
  self->unit = gtk_label_new (NULL);
  self->hold = gtk_toggle_button_new ();
  gtk_widget_add_css_class (self->entry, "figure");
  gtk_widget_add_css_class (self->hold, "flat");
  gtk_widget_add_css_class (self->hold, "hold");
  gtk_text_set_propagate_text_width (
      GTK_TEXT (gtk_editable_get_delegate (GTK_EDITABLE (self->entry))), TRUE);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), LONGEST);
  gtk_widget_set_parent (self->entry, widget);
  gtk_widget_set_parent (self->unit, widget);
  gtk_widget_set_parent (self->hold, widget);
  self->edit = drawl_edit_new (GTK_EDITABLE (self->entry));
  g_signal_connect_swapped (self->hold, "toggled", G_CALLBACK (on_toggled), self);
}

GtkWidget *
drawl_blank_new (DrawlTimingTerm term)
{
  DrawlBlank *self = g_object_new (DRAWL_TYPE_BLANK, NULL);
  const DrawlTermWords *words = &drawl_term_words[term];

  self->term = term;
  const char *unit = _ (words->unit);
  self->unit_apart = g_str_has_prefix (unit, NO_BREAK_SPACE);
  gtk_label_set_text (GTK_LABEL (self->unit),
                      self->unit_apart ? unit + strlen (NO_BREAK_SPACE) : unit);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ (words->label), -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->hold), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ (words->hold), -1);
  show_hold (self, FALSE);
  return GTK_WIDGET (self);
}

DrawlTimingTerm
drawl_blank_get_term (DrawlBlank *blank)
{
  return blank->term;
}

DrawlEdit *
drawl_blank_get_edit (DrawlBlank *blank)
{
  return blank->edit;
}

static void
set_css_class (GtkWidget *widget, const char *name, gboolean set)
{
  if (set)
    gtk_widget_add_css_class (widget, name);
  else
    gtk_widget_remove_css_class (widget, name);
}

void
drawl_blank_show (DrawlBlank *blank, const char *number, gboolean held, const char *follows)
{
  blank->follows = follows != NULL;
  set_css_class (GTK_WIDGET (blank), "follows", blank->follows);
  gtk_widget_set_tooltip_text (blank->entry, follows);
  drawl_edit_set_description (blank->edit, follows);
  drawl_edit_set_value (blank->edit, number);
  show_hold (blank, held);
}

void
drawl_blank_set_stale (DrawlBlank *blank, gboolean stale)
{
  set_css_class (GTK_WIDGET (blank), "stale", stale);
}

gboolean
drawl_blank_get_follows (DrawlBlank *blank)
{
  return blank->follows;
}
