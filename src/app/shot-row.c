/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A row of the list. Recycled by the list view: it follows whatever shot it is given. The list item
 * around it bears the accessible name, for that is what holds the focus. */

#include "app/shot-row.h"

#include "app/theme.h"
#include "app/verdict-mark.h"
#include "core/text.h"
#include "draw/timeline.h"
#include "plan/figure.h"

#define SLATE_CHARS_MIN 3
#define SLATE_CHARS_MAX 8

enum { PROP_SHOT = 1, PROP_LONGEST, N_PROPS };

static GParamSpec *props[N_PROPS];
static guint menu_signal, clicked_signal;

struct _DrawlShotRow {
  GtkWidget parent_instance;
  DrawlShot *shot;
  gulong changed_id;
  double longest_s;
  char *heading; /* or NULL */
  GtkWidget *heading_label, *body_box, *slate_label, *action_label, *summary_label, *bar_area,
      *verdict_mark;
};

G_DEFINE_FINAL_TYPE (DrawlShotRow, drawl_shot_row, GTK_TYPE_WIDGET)

static void
draw_bar (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  DrawlShotRow *self = DRAWL_SHOT_ROW (data);
  DrawlStyle style;

  if (self->shot == NULL)
    return;
  const DrawlRational *value = drawl_shot_get_timing (self->shot)->value;
  drawl_theme_style (GTK_WIDGET (area), &style);
  drawl_timeline_draw_bar (cr, drawl_rational_to_double (value[DRAWL_TIMING_ACTION]),
                           drawl_rational_to_double (value[DRAWL_TIMING_SCREEN]), self->longest_s,
                           &style, width, height);
}

static void
name_list_item (DrawlShotRow *self, const char *action, const char *summary)
{
  GtkWidget *item = gtk_widget_get_parent (GTK_WIDGET (self));

  if (item == NULL)
    return;
  /* Translators: a row of the list, read aloud: slate, what happens, figures, verdict. */
  g_autofree char *name =
      g_strdup_printf (_ ("%s, %s, %s, %s"), drawl_shot_get_slate (self->shot), action, summary,
                       drawl_verdict_name (drawl_shot_get_verdict (self->shot)));
  /* The first row of a scene says which. */
  g_autofree char *whole =
      self->heading != NULL ? g_strdup_printf ("%s: %s", self->heading, name) : NULL;
  gtk_accessible_update_property (GTK_ACCESSIBLE (item), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  whole != NULL ? whole : name, -1);
}

/* An inscription is as wide as it is told to be, so that another text asks for no new layout. */
static void
show_slate (DrawlShotRow *self, const char *slate)
{
  guint chars = (guint)CLAMP (g_utf8_strlen (slate, -1), SLATE_CHARS_MIN, SLATE_CHARS_MAX);

  gtk_inscription_set_text (GTK_INSCRIPTION (self->slate_label), slate);
  gtk_inscription_set_min_chars (GTK_INSCRIPTION (self->slate_label), chars);
  gtk_inscription_set_nat_chars (GTK_INSCRIPTION (self->slate_label), chars);
}

static void
refresh (DrawlShotRow *self)
{
  const char *action = drawl_shot_get_fields (self->shot)->action;
  g_autofree char *summary = drawl_shot_dup_summary (self->shot);
  gboolean named = *action != '\0';

  if (!named)
    action = _ ("No action yet");
  show_slate (self, drawl_shot_get_slate (self->shot));
  gtk_inscription_set_text (GTK_INSCRIPTION (self->action_label), action);
  if (named)
    gtk_widget_remove_css_class (self->action_label, "dim-label");
  else
    gtk_widget_add_css_class (self->action_label, "dim-label");
  gtk_inscription_set_text (GTK_INSCRIPTION (self->summary_label), summary);
  drawl_verdict_mark_set_verdict (DRAWL_VERDICT_MARK (self->verdict_mark),
                                  drawl_shot_get_verdict (self->shot));
  gtk_widget_queue_draw (self->bar_area);
  name_list_item (self, action, summary);
}

void
drawl_shot_row_set_shot (DrawlShotRow *row, DrawlShot *shot)
{
  if (shot == row->shot)
    return;
  if (row->shot != NULL)
    g_clear_signal_handler (&row->changed_id, row->shot);
  g_set_object (&row->shot, shot);
  if (shot != NULL) {
    row->changed_id = g_signal_connect_swapped (shot, "changed", G_CALLBACK (refresh), row);
    refresh (row);
  }
  g_object_notify_by_pspec (G_OBJECT (row), props[PROP_SHOT]);
}

DrawlShot *
drawl_shot_row_get_shot (DrawlShotRow *row)
{
  return row->shot;
}

void
drawl_shot_row_set_longest (DrawlShotRow *row, double longest_s)
{
  row->longest_s = longest_s;
  gtk_widget_queue_draw (row->bar_area);
}

void
drawl_shot_row_mark_drop (DrawlShotRow *row, gboolean before, gboolean after)
{
  (before ? gtk_widget_add_css_class : gtk_widget_remove_css_class) (row->body_box, "drop-before");
  (after ? gtk_widget_add_css_class : gtk_widget_remove_css_class) (row->body_box, "drop-after");
}

/* "Scene 2 · 5 shots". */
void
drawl_shot_row_set_heading (DrawlShotRow *row, const char *scene, guint n_shots)
{
  g_autofree char *text = NULL;

  if (scene != NULL) {
    g_autofree char *count = drawl_figure_count (n_shots);
    g_autofree char *shots = g_strdup_printf (ngettext_ ("%s shot", "%s shots", n_shots), count);
    /* A scene that is called by a number. */
    g_autofree char *name = g_ascii_isdigit (scene[0]) ? g_strdup_printf (_ ("Scene %s"), scene)
                            : scene[0] == '\0'         ? g_strdup (_ ("No scene"))
                                                       : g_strdup (scene);
    text = g_strdup_printf ("%s · %s", name, shots);
  }
  if (g_strcmp0 (text, row->heading) == 0)
    return;
  g_free (row->heading);
  row->heading = g_steal_pointer (&text);
  gtk_label_set_text (GTK_LABEL (row->heading_label), row->heading != NULL ? row->heading : "");
  gtk_widget_set_visible (row->heading_label, row->heading != NULL);
  if (row->shot != NULL)
    refresh (row);
}

static void
on_pressed (DrawlShotRow *self)
{
  g_signal_emit (self, menu_signal, 0);
}

/* With a key held it is about what is selected. */
static void
on_released (DrawlShotRow *self, int n_press, double x, double y, GtkGesture *gesture)
{
  GdkModifierType state =
      gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (gesture));

  if ((state & (GDK_CONTROL_MASK | GDK_SHIFT_MASK)) == 0)
    g_signal_emit (self, clicked_signal, 0);
}

/* What the row has no room for; made when it is asked for. */
static gboolean
on_query_tooltip (DrawlShotRow *self, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  if (self->shot == NULL)
    return FALSE;
  const DrawlShotFields *fields = drawl_shot_get_fields (self->shot);
  g_autofree char *count = drawl_figure_count (fields->takes);
  g_autofree char *before = drawl_figure_time (fields->handle_before_s);
  g_autofree char *after = drawl_figure_time (fields->handle_after_s);
  g_autofree char *takes =
      g_strdup_printf (ngettext_ ("%s take", "%s takes", fields->takes), count);
  g_autofree char *text =
      /* Translators: "3 takes, handles of 2 s and 1.5 s, must be". */
      g_strdup_printf (_ ("%s, handles of %s and %s, %s"), takes, before, after,
                       fields->must ? _ ("must be") : _ ("wished for"));
  g_autofree char *all =
      g_strconcat (text, fields->notes[0] != '\0' ? "\n" : NULL, fields->notes, NULL);

  gtk_tooltip_set_text (tooltip, all);
  return TRUE;
}

static void
drawl_shot_row_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  DrawlShotRow *self = DRAWL_SHOT_ROW (object);

  switch (prop_id) {
  case PROP_SHOT:
    g_value_set_object (value, self->shot);
    break;
  case PROP_LONGEST:
    g_value_set_double (value, self->longest_s);
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
  }
}

static void
drawl_shot_row_set_property (GObject *object, guint prop_id, const GValue *value, GParamSpec *pspec)
{
  DrawlShotRow *self = DRAWL_SHOT_ROW (object);

  switch (prop_id) {
  case PROP_SHOT:
    drawl_shot_row_set_shot (self, g_value_get_object (value));
    break;
  case PROP_LONGEST:
    drawl_shot_row_set_longest (self, g_value_get_double (value));
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
  }
}

static void
drawl_shot_row_dispose (GObject *object)
{
  drawl_shot_row_set_shot (DRAWL_SHOT_ROW (object), NULL);
  g_clear_pointer (&DRAWL_SHOT_ROW (object)->heading, g_free);
  gtk_widget_dispose_template (GTK_WIDGET (object), DRAWL_TYPE_SHOT_ROW);
  G_OBJECT_CLASS (drawl_shot_row_parent_class)->dispose (object);
}

static void
drawl_shot_row_class_init (DrawlShotRowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = drawl_shot_row_get_property;
  object_class->set_property = drawl_shot_row_set_property;
  object_class->dispose = drawl_shot_row_dispose;

  props[PROP_SHOT] =
      g_param_spec_object ("shot", NULL, NULL, DRAWL_TYPE_SHOT,
                           G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  props[PROP_LONGEST] = g_param_spec_double ("longest", NULL, NULL, 0, G_MAXDOUBLE, 0,
                                             G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  clicked_signal = g_signal_new ("clicked", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
  menu_signal = g_signal_new ("menu-wanted", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                              NULL, NULL, G_TYPE_NONE, 0);

  g_type_ensure (DRAWL_TYPE_VERDICT_MARK);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/drawl/Drawl/ui/shot-row.ui");
  gtk_widget_class_bind_template_child (widget_class, DrawlShotRow, heading_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotRow, body_box);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotRow, slate_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotRow, action_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotRow, summary_label);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotRow, bar_area);
  gtk_widget_class_bind_template_child (widget_class, DrawlShotRow, verdict_mark);
}

/* A click; for the menu the secondary button of a mouse, or a long press on a touch screen. */
static void
add_gestures (DrawlShotRow *self)
{
  GtkGesture *primary = gtk_gesture_click_new ();
  GtkGesture *click = gtk_gesture_click_new ();
  GtkGesture *press = gtk_gesture_long_press_new ();

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), GDK_BUTTON_SECONDARY);
  gtk_gesture_single_set_touch_only (GTK_GESTURE_SINGLE (press), TRUE);
  g_signal_connect_swapped (primary, "released", G_CALLBACK (on_released), self);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (on_pressed), self);
  g_signal_connect_swapped (press, "pressed", G_CALLBACK (on_pressed), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (primary));
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (press));
}

static void
drawl_shot_row_init (DrawlShotRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->bar_area), draw_bar, self, NULL);
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
  g_signal_connect (self, "query-tooltip", G_CALLBACK (on_query_tooltip), NULL);
  add_gestures (self);
}

GtkWidget *
drawl_shot_row_new (void)
{
  return g_object_new (DRAWL_TYPE_SHOT_ROW, NULL);
}
