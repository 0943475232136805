/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The sums of the plan. Reckoned once after a change, when the loop is idle, however many edits
 * came in between. */

#include "app/day-strip.h"

#include <math.h>

#include "app/day-figure.h"
#include "app/sentence-layout.h"
#include "app/tooltip.h"
#include "app/verdict-mark.h"
#include "core/text.h"
#include "plan/day.h"
#include "plan/figure.h"

enum { PROP_PLAN = 1, N_PROPS };

static GParamSpec *props[N_PROPS];

struct _DrawlDayStrip {
  GtkWidget parent_instance;
  DrawlPlan *plan;
  guint idle_id;
  GtkWidget *as_hired_button, *needs_licence_button, *not_on_this_body_button;
  GtkWidget *as_hired_label, *needs_licence_label, *not_on_this_body_label;
  DrawlDayFigure *rolled_figure, *screen_figure, *cards_figure, *magazines_figure;
};

G_DEFINE_FINAL_TYPE (DrawlDayStrip, drawl_day_strip, GTK_TYPE_WIDGET)

static void
show_verdict (GtkWidget *button, GtkWidget *label, DrawlVerdict verdict, guint n)
{
  g_autofree char *count = drawl_figure_count (n);
  /* Translators: number of shots, then the verdict: "4 shots: needs a licence". */
  g_autofree char *words = g_strdup_printf (ngettext_ ("%s shot: %s", "%s shots: %s", n), count,
                                            drawl_verdict_name (verdict));
  g_autofree char *tooltip = g_strdup_printf (_ ("%s. Show only these, or all again."), words);

  gtk_label_set_text (GTK_LABEL (label), count);
  drawl_tooltip_set (button, tooltip);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, words,
                                  -1);
}

static void
show_verdicts (DrawlDayStrip *self, const DrawlDay *day)
{
  show_verdict (self->as_hired_button, self->as_hired_label, DRAWL_VERDICT_AS_HIRED,
                day->by_verdict[DRAWL_VERDICT_AS_HIRED]);
  show_verdict (self->needs_licence_button, self->needs_licence_label, DRAWL_VERDICT_NEEDS_LICENCE,
                day->by_verdict[DRAWL_VERDICT_NEEDS_LICENCE]);
  show_verdict (self->not_on_this_body_button, self->not_on_this_body_label,
                DRAWL_VERDICT_NOT_ON_THIS_BODY, day->by_verdict[DRAWL_VERDICT_NOT_ON_THIS_BODY]);
}

static void
show_times (DrawlDayStrip *self, const DrawlDay *day)
{
  g_autofree char *rolled = drawl_day_time_text (day->real_s);
  g_autofree char *action = drawl_day_time_text (day->action_s);
  g_autofree char *screen = drawl_day_time_text (day->screen_s);
  g_autofree char *rolled_working = g_strdup_printf (
      _ ("Real time on cards and film: every take of every shot with its handles.\nThe actions "
         "alone, one take each: %s."),
      action);
  g_autofree char *screen_working = g_strdup_printf (
      _ ("Screen time of every shot, one take each.\nThe actions behind it last %s."), action);

  drawl_day_figure_set (self->rolled_figure, rolled, rolled_working);
  drawl_day_figure_set (self->screen_figure, screen, screen_working);
}

/* "A · Lark D4: 3 cards, 1.2 TB". */
static char *
body_line (const DrawlDayBody *body, DrawlLengthUnit unit)
{
  g_autofree char *name = drawl_hired_body_dup_name (body->hired);

  if (drawl_hired_body_get_body (body->hired)->kind == DRAWL_BODY_FILM) {
    g_autofree char *magazines = drawl_figure_count (body->magazines);
    g_autofree char *length = drawl_length_film (drawl_rational_whole (llround (body->feet)), unit);
    return g_strdup_printf (
        ngettext_ ("%s: %s magazine, %s", "%s: %s magazines, %s", (gulong)body->magazines), name,
        magazines, length);
  }
  g_autofree char *cards = drawl_figure_count (body->cards);
  g_autofree char *bytes = drawl_figure_bytes (drawl_rational_whole (body->bytes));
  return g_strdup_printf (ngettext_ ("%s: %s card, %s", "%s: %s cards, %s", (gulong)body->cards),
                          name, cards, bytes);
}

static void
show_storage (DrawlDayStrip *self, DrawlDayFigure *figure, const DrawlDay *day, DrawlBodyKind kind,
              gint64 n, const char *rule)
{
  DrawlLengthUnit unit = drawl_plan_get_length_unit (self->plan);
  g_autofree char *count = drawl_figure_count (n);
  g_autoptr (GString) working = g_string_new (rule);
  gboolean any = FALSE;

  for (guint i = 0; i < day->bodies->len; i++) {
    const DrawlDayBody *body = &g_array_index (day->bodies, DrawlDayBody, i);
    if (body->shots == 0 || drawl_hired_body_get_body (body->hired)->kind != kind)
      continue;
    g_autofree char *line = body_line (body, unit);
    g_string_append_printf (working, "\n%s", line);
    any = TRUE;
  }
  gtk_widget_set_visible (GTK_WIDGET (figure), any);
  drawl_day_figure_set (figure, count, working->str);
}

static gboolean
reckon (gpointer data)
{
  DrawlDayStrip *self = data;
  g_auto (DrawlDay) day = {0};

  self->idle_id = 0;
  drawl_day_reckon (self->plan, &day);
  show_verdicts (self, &day);
  show_times (self, &day);
  show_storage (self, self->cards_figure, &day, DRAWL_BODY_DIGITAL, day.cards,
                drawl_plan_get_settings (self->plan)->takes_span
                    ? _ ("All takes in the order of the list; takes may run on from card to card.")
                    : _ ("All takes in the order of the list; each take stays whole on one card."));
  show_storage (self, self->magazines_figure, &day, DRAWL_BODY_FILM, day.magazines,
                _ ("All takes in the order of the list; each take stays whole in one magazine."));
  gtk_widget_set_visible (GTK_WIDGET (self), day.shots > 0);
  return G_SOURCE_REMOVE;
}

static void
on_plan_changed (DrawlDayStrip *self)
{
  if (self->idle_id == 0)
    self->idle_id = g_idle_add (reckon, self);
}

void
drawl_day_strip_set_plan (DrawlDayStrip *strip, DrawlPlan *plan)
{
  if (plan == strip->plan)
    return;
  g_clear_handle_id (&strip->idle_id, g_source_remove);
  if (strip->plan != NULL)
    g_signal_handlers_disconnect_by_data (strip->plan, strip);
  g_set_object (&strip->plan, plan);
  if (plan != NULL) {
    g_signal_connect_swapped (plan, "changed", G_CALLBACK (on_plan_changed), strip);
    reckon (strip);
  }
  g_object_notify_by_pspec (G_OBJECT (strip), props[PROP_PLAN]);
}

static void
drawl_day_strip_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  if (prop_id == PROP_PLAN)
    g_value_set_object (value, DRAWL_DAY_STRIP (object)->plan);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static void
drawl_day_strip_set_property (GObject *object, guint prop_id, const GValue *value,
                              GParamSpec *pspec)
{
  if (prop_id == PROP_PLAN)
    drawl_day_strip_set_plan (DRAWL_DAY_STRIP (object), g_value_get_object (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static void
drawl_day_strip_dispose (GObject *object)
{
  drawl_day_strip_set_plan (DRAWL_DAY_STRIP (object), NULL);
  gtk_widget_dispose_template (GTK_WIDGET (object), DRAWL_TYPE_DAY_STRIP);
  G_OBJECT_CLASS (drawl_day_strip_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class, "/org/drawl/Drawl/ui/day-strip.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlDayStrip, as_hired_button);
  gtk_widget_class_bind_template_child (widget_class, DrawlDayStrip, needs_licence_button);
  gtk_widget_class_bind_template_child (widget_class, DrawlDayStrip, not_on_this_body_button);
  gtk_widget_class_bind_template_child (widget_class, DrawlDayStrip, as_hired_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlDayStrip, needs_licence_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlDayStrip, not_on_this_body_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlDayStrip, rolled_figure);
  gtk_widget_class_bind_template_child (widget_class, DrawlDayStrip, screen_figure);
  gtk_widget_class_bind_template_child (widget_class, DrawlDayStrip, cards_figure);
  gtk_widget_class_bind_template_child (widget_class, DrawlDayStrip, magazines_figure);
}

static void
drawl_day_strip_class_init (DrawlDayStripClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = drawl_day_strip_get_property;
  object_class->set_property = drawl_day_strip_set_property;
  object_class->dispose = drawl_day_strip_dispose;

  props[PROP_PLAN] =
      g_param_spec_object ("plan", NULL, NULL, DRAWL_TYPE_PLAN,
                           G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, props);

  g_type_ensure (DRAWL_TYPE_SENTENCE_LAYOUT);
  g_type_ensure (DRAWL_TYPE_VERDICT_MARK);
  g_type_ensure (DRAWL_TYPE_DAY_FIGURE);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  bind_template (widget_class);
}

static void
drawl_day_strip_init (DrawlDayStrip *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
