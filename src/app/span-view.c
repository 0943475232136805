/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The span picture, live. Invariant: while an end is dragged, a step of undo is open, the layout is
 * the one of the drag's beginning, and every move starts from the sentence as it was then. */

#include "app/span-view.h"

#include "app/message.h"
#include "app/shot-edit.h"
#include "app/span-drag.h"
#include "app/term.h"
#include "app/theme.h"
#include "core/text.h"
#include "draw/text.h"

#define REACH 10.0 /* pixels about an end in which it can be grasped */
#define LABEL_LINES 11
#define MIN_WIDTH 220
#define FAR_STEP 10

struct _DrawlSpanView {
  GtkWidget parent_instance;
  DrawlPlan *plan;
  DrawlShot *shot;
  gulong changed_handler;
  DrawlTimelineData data;
  DrawlTimelineGrip active; /* under the pointer's button or the keys; always one of the ends */
  gboolean dragging;
  DrawlTimelineLayout fixed; /* while dragging */
  DrawlShotFields *before;   /* while dragging */
  double offset;             /* from the pointer to the end that it holds */
  char *error;
};

enum { PROP_ERROR = 1, N_PROPS };

static GParamSpec *props[N_PROPS];

G_DEFINE_FINAL_TYPE (DrawlSpanView, drawl_span_view, GTK_TYPE_WIDGET)

/* The term that an end stands for, and the rate of its frames. */
static DrawlTimingTerm
term_of (DrawlTimelineGrip grip)
{
  return grip == DRAWL_TIMELINE_ACTION_END ? DRAWL_TIMING_ACTION : DRAWL_TIMING_SCREEN;
}

static DrawlRate
rate_of (const DrawlBlanks *blanks, DrawlTimelineGrip grip)
{
  return blanks
      ->value[grip == DRAWL_TIMELINE_ACTION_END ? DRAWL_TIMING_CAPTURE : DRAWL_TIMING_PLAYBACK];
}

static void
take_error (DrawlSpanView *self, const GError *error)
{
  g_autofree char *words = error != NULL ? drawl_message_sentence (error) : NULL;

  if (g_strcmp0 (self->error, words) == 0)
    return;
  g_free (self->error);
  self->error = g_steal_pointer (&words);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_ERROR]);
}

/* ---- The picture ---- */

static double
label_height (DrawlSpanView *self, DrawlStyle *style)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);

  drawl_theme_style (GTK_WIDGET (self), style);
  double height = drawl_text_height (cr, style);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return height;
}

void
drawl_span_view_layout (DrawlSpanView *view, DrawlTimelineLayout *layout)
{
  DrawlStyle style;
  double line = label_height (view, &style);

  drawl_timeline_layout (&view->data, gtk_widget_get_width (GTK_WIDGET (view)),
                         gtk_widget_get_height (GTK_WIDGET (view)), line, style.rtl, layout);
}

static void
refresh (DrawlSpanView *self)
{
  drawl_timeline_data_clear (&self->data);
  drawl_timeline_data_from_shot (&self->data, self->shot);
  g_autofree char *words = drawl_timeline_text (&self->data);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words,
                                  -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
drawl_span_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  DrawlSpanView *self = DRAWL_SPAN_VIEW (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  gboolean grasped = self->dragging || gtk_widget_has_visible_focus (widget);
  DrawlStyle style;

  if (self->shot == NULL)
    return;
  cairo_t *cr =
      gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  drawl_theme_style (widget, &style);
  drawl_timeline_draw (cr, &self->data, &style, width, height,
                       grasped ? self->active : DRAWL_TIMELINE_NOTHING, -1,
                       self->dragging ? &self->fixed : NULL);
  cairo_destroy (cr);
}

static void
drawl_span_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                         int *natural, int *minimum_baseline, int *natural_baseline)
{
  DrawlStyle style;

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *minimum = *natural = MIN_WIDTH;
  else
    *minimum = *natural = (int)(LABEL_LINES * label_height (DRAWL_SPAN_VIEW (widget), &style));
}

/* ---- Dragging ---- */

static double
end_x (const DrawlTimelineLayout *layout, DrawlTimelineGrip grip)
{
  const cairo_rectangle_t *span =
      grip == DRAWL_TIMELINE_ACTION_END ? &layout->real : &layout->screen;

  return layout->rtl ? span->x : span->x + span->width;
}

gboolean
drawl_span_view_drag_begin (DrawlSpanView *view, double x, double y)
{
  if (view->shot == NULL || view->dragging)
    return FALSE;
  drawl_span_view_layout (view, &view->fixed);
  DrawlTimelineGrip grip = drawl_timeline_hit (&view->fixed, x, y, REACH);
  if (grip == DRAWL_TIMELINE_NOTHING)
    return FALSE;

  view->active = grip;
  view->offset = end_x (&view->fixed, grip) - x;
  view->before = drawl_shot_fields_copy (drawl_shot_get_fields (view->shot));
  view->dragging = TRUE;
  drawl_plan_begin_step (view->plan, _ (drawl_term_words[term_of (grip)].change));
  gtk_widget_queue_draw (GTK_WIDGET (view));
  return TRUE;
}

void
drawl_span_view_drag_to (DrawlSpanView *view, double x)
{
  g_autoptr (GError) error = NULL;

  if (!view->dragging)
    return;
  const DrawlBlanks *from = &view->before->blanks;
  double seconds = drawl_timeline_seconds_at (&view->fixed, x + view->offset);
  DrawlRational to =
      drawl_span_snap (seconds, view->fixed.seconds_per_px, rate_of (from, view->active));
  drawl_shot_edit_term (view->plan, view->shot, from, term_of (view->active), to, &error);
  take_error (view, error);
}

void
drawl_span_view_drag_end (DrawlSpanView *view)
{
  if (!view->dragging)
    return;
  view->dragging = FALSE;
  g_clear_pointer (&view->before, drawl_shot_fields_free);
  drawl_plan_end_step (view->plan);
  take_error (view, NULL);
  gtk_widget_queue_draw (GTK_WIDGET (view));
}

void
drawl_span_view_drag_cancel (DrawlSpanView *view)
{
  if (!view->dragging)
    return;
  drawl_plan_set_shot (view->plan, view->shot, view->before,
                       _ (drawl_term_words[term_of (view->active)].change), NULL);
  drawl_span_view_drag_end (view);
}

static void
on_drag_begin (DrawlSpanView *self, double x, double y, GtkGesture *gesture)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
  gtk_gesture_set_state (gesture, drawl_span_view_drag_begin (self, x, y)
                                      ? GTK_EVENT_SEQUENCE_CLAIMED
                                      : GTK_EVENT_SEQUENCE_DENIED);
}

static void
on_drag_update (DrawlSpanView *self, double dx, double dy, GtkGestureDrag *gesture)
{
  double x, y;

  if (gtk_gesture_drag_get_start_point (gesture, &x, &y))
    drawl_span_view_drag_to (self, x + dx);
}

static void
on_motion (DrawlSpanView *self, double x, double y)
{
  DrawlTimelineLayout layout;

  if (self->shot == NULL || self->dragging)
    return;
  drawl_span_view_layout (self, &layout);
  gboolean at_end = drawl_timeline_hit (&layout, x, y, REACH) != DRAWL_TIMELINE_NOTHING;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), at_end ? "ew-resize" : NULL);
}

/* ---- Keys ---- */

static void
set_active (DrawlSpanView *self, DrawlTimelineGrip grip)
{
  self->active = grip;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static DrawlTimelineGrip
other_end (DrawlTimelineGrip grip)
{
  return grip == DRAWL_TIMELINE_ACTION_END ? DRAWL_TIMELINE_SCREEN_END : DRAWL_TIMELINE_ACTION_END;
}

static void
move_end (GtkWidget *widget, const char *action, GVariant *parameter)
{
  DrawlSpanView *self = DRAWL_SPAN_VIEW (widget);
  gboolean rtl = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  int frames = rtl ? -g_variant_get_int32 (parameter) : g_variant_get_int32 (parameter);
  g_autoptr (GError) error = NULL;
  DrawlRational moved;

  if (self->shot == NULL || self->dragging)
    return;
  const DrawlBlanks *blanks = &drawl_shot_get_fields (self->shot)->blanks;
  DrawlTimingTerm term = term_of (self->active);
  if (!drawl_span_nudge (blanks->value[term], frames, rate_of (blanks, self->active), &moved))
    return;
  drawl_shot_edit_term (self->plan, self->shot, NULL, term, moved, &error);
  take_error (self, error);
}

static void
change_end (GtkWidget *widget, const char *action, GVariant *parameter)
{
  DrawlSpanView *self = DRAWL_SPAN_VIEW (widget);

  if (!self->dragging)
    set_active (self, other_end (self->active));
}

static gboolean
cancel_drag (GtkWidget *widget, GVariant *arguments, gpointer data)
{
  DrawlSpanView *self = DRAWL_SPAN_VIEW (widget);

  if (!self->dragging)
    return FALSE;
  drawl_span_view_drag_cancel (self);
  return TRUE;
}

/* Tab goes from one end to the other before it leaves. */
static gboolean
drawl_span_view_focus (GtkWidget *widget, GtkDirectionType direction)
{
  DrawlSpanView *self = DRAWL_SPAN_VIEW (widget);
  DrawlTimelineGrip first =
      direction == GTK_DIR_TAB_BACKWARD ? DRAWL_TIMELINE_SCREEN_END : DRAWL_TIMELINE_ACTION_END;
  gboolean tab = direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD;

  if (!gtk_widget_is_focus (widget)) {
    if (tab)
      set_active (self, first);
    return gtk_widget_grab_focus (widget);
  }
  if (!tab || self->dragging || self->active != first)
    return FALSE;
  set_active (self, other_end (first));
  return TRUE;
}

static void
add_keys (GtkWidgetClass *widget_class)
{
  static const struct {
    guint key;
    GdkModifierType modifiers;
    int frames;
  } rows[] = {
      {GDK_KEY_Left, 0, -1},
      {GDK_KEY_Right, 0, 1},
      {GDK_KEY_Left, GDK_SHIFT_MASK, -FAR_STEP},
      {GDK_KEY_Right, GDK_SHIFT_MASK, FAR_STEP},
      {GDK_KEY_KP_Left, 0, -1},
      {GDK_KEY_KP_Right, 0, 1},
  };

  gtk_widget_class_install_action (widget_class, "span.move", "i", move_end);
  gtk_widget_class_install_action (widget_class, "span.change-end", NULL, change_end);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    gtk_widget_class_add_binding_action (widget_class, rows[i].key, rows[i].modifiers, "span.move",
                                         "i", rows[i].frames);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_space, 0, "span.change-end", NULL);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Escape, 0, cancel_drag, NULL);
}

/* ---- The widget ---- */

static void
leave_shot (DrawlSpanView *self)
{
  drawl_span_view_drag_end (self);
  g_clear_signal_handler (&self->changed_handler, self->shot);
  g_clear_object (&self->shot);
  g_clear_object (&self->plan);
  take_error (self, NULL);
}

static void
drawl_span_view_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  g_value_set_string (value, DRAWL_SPAN_VIEW (object)->error);
}

static void
drawl_span_view_dispose (GObject *object)
{
  leave_shot (DRAWL_SPAN_VIEW (object));
  G_OBJECT_CLASS (drawl_span_view_parent_class)->dispose (object);
}

static void
drawl_span_view_finalize (GObject *object)
{
  drawl_timeline_data_clear (&DRAWL_SPAN_VIEW (object)->data);
  G_OBJECT_CLASS (drawl_span_view_parent_class)->finalize (object);
}

static void
drawl_span_view_class_init (DrawlSpanViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = drawl_span_view_get_property;
  object_class->dispose = drawl_span_view_dispose;
  object_class->finalize = drawl_span_view_finalize;
  widget_class->snapshot = drawl_span_view_snapshot;
  widget_class->measure = drawl_span_view_measure;
  widget_class->focus = drawl_span_view_focus;
  gtk_widget_class_set_css_name (widget_class, "spanview");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  add_keys (widget_class);

  props[PROP_ERROR] =
      g_param_spec_string ("error", NULL, NULL, NULL,
                           G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
drawl_span_view_init (DrawlSpanView *self)
{
  GtkGesture *drag = gtk_gesture_drag_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();

  self->active = DRAWL_TIMELINE_ACTION_END;
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Real time and screen time"), -1);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (on_drag_begin), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (on_drag_update), self);
  g_signal_connect_swapped (drag, "drag-end", G_CALLBACK (drawl_span_view_drag_end), self);
  g_signal_connect_swapped (drag, "cancel", G_CALLBACK (drawl_span_view_drag_cancel), self);
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (on_motion), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
}

void
drawl_span_view_set_shot (DrawlSpanView *view, DrawlPlan *plan, DrawlShot *shot)
{
  if (view->shot == shot && view->plan == plan)
    return;
  leave_shot (view);
  gtk_widget_queue_draw (GTK_WIDGET (view));
  if (shot == NULL)
    return;
  view->plan = g_object_ref (plan);
  view->shot = g_object_ref (shot);
  view->changed_handler = g_signal_connect_swapped (shot, "changed", G_CALLBACK (refresh), view);
  refresh (view);
}

DrawlTimelineGrip
drawl_span_view_get_active (DrawlSpanView *view)
{
  return view->active;
}
