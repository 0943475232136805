/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The span picture under the pointer and the keys. */

#include "app/span-view.h"

#include "page.h"

static DrawlSpanView *
view_of (const Page *page)
{
  return DRAWL_SPAN_VIEW (find_first (page->page, DRAWL_TYPE_SPAN_VIEW));
}

/* Where an end lies. */
static void
find_end (DrawlSpanView *view, DrawlTimelineGrip grip, double *x, double *y)
{
  DrawlTimelineLayout layout;

  drawl_span_view_layout (view, &layout);
  const cairo_rectangle_t *span = grip == DRAWL_TIMELINE_ACTION_END ? &layout.real : &layout.screen;
  *x = layout.rtl ? span->x : span->x + span->width;
  *y = span->y + span->height / 2;
}

/* The x of a time on the scale as it is now. */
static double
x_of (DrawlSpanView *view, double seconds)
{
  DrawlTimelineLayout layout;

  drawl_span_view_layout (view, &layout);
  return drawl_timeline_x_of (&layout, seconds);
}

static void
grasp (const Page *page, DrawlTimelineGrip grip)
{
  double x, y;

  find_end (view_of (page), grip, &x, &y);
  g_assert_true (drawl_span_view_drag_begin (view_of (page), x, y));
}

typedef struct {
  const char *name;
  DrawlTimelineGrip grip;
  DrawlTimingTerm term;
  double to_s;
  const char *least, *most; /* exact; a pixel is a hundredth of a second or less */
  GtkTextDirection direction;
} DragRow;

static const DragRow drags[] = {
    {"action", DRAWL_TIMELINE_ACTION_END, DRAWL_TIMING_ACTION, 1.2, "1.19", "1.21",
     GTK_TEXT_DIR_LTR},
    {"screen", DRAWL_TIMELINE_SCREEN_END, DRAWL_TIMING_SCREEN, 3, "2.95", "3.05", GTK_TEXT_DIR_LTR},
    {"action-mirrored", DRAWL_TIMELINE_ACTION_END, DRAWL_TIMING_ACTION, 1.2, "1.19", "1.21",
     GTK_TEXT_DIR_RTL},
};

static void
test_drag (gconstpointer data)
{
  const DragRow *row = data;
  Page page;

  gtk_widget_set_default_direction (row->direction);
  open_page (&page, "1");
  DrawlSpanView *view = view_of (&page);
  double x = x_of (view, row->to_s);
  grasp (&page, row->grip);
  drawl_span_view_drag_to (view, x_of (view, 2));
  drawl_span_view_drag_to (view, x);
  DrawlRational value = value_of (&page, "1", row->term);
  g_assert_cmpint (drawl_rational_compare (value, exact (row->least)), >=, 0);
  g_assert_cmpint (drawl_rational_compare (value, exact (row->most)), <=, 0);
  g_assert_false (drawl_plan_can_undo (page.plan));
  drawl_span_view_drag_end (view);
  g_assert_true (drawl_plan_can_undo (page.plan));
  drawl_plan_undo (page.plan);
  assert_value (&page, "1", DRAWL_TIMING_ACTION, "0.45");
  g_assert_false (drawl_plan_get_modified (page.plan));
  close_page (&page);
  gtk_widget_set_default_direction (GTK_TEXT_DIR_LTR);
}

static void
test_drag_cancelled (void)
{
  Page page;

  open_page (&page, "1");
  DrawlSpanView *view = view_of (&page);
  grasp (&page, DRAWL_TIMELINE_ACTION_END);
  drawl_span_view_drag_to (view, x_of (view, 2));
  g_assert_false (
      drawl_rational_equal (value_of (&page, "1", DRAWL_TIMING_ACTION), exact ("0.45")));
  drawl_span_view_drag_cancel (view);
  assert_value (&page, "1", DRAWL_TIMING_ACTION, "0.45");
  g_assert_false (drawl_plan_get_modified (page.plan));
  drawl_span_view_drag_to (view, x_of (view, 2));
  assert_value (&page, "1", DRAWL_TIMING_ACTION, "0.45");
  close_page (&page);
}

/* Beside the ends there is nothing to drag, and below zero there is no time. */
static void
test_drag_bounds (void)
{
  double x, y;
  Page page;

  open_page (&page, "1");
  DrawlSpanView *view = view_of (&page);
  find_end (view, DRAWL_TIMELINE_SCREEN_END, &x, &y);
  g_assert_false (drawl_span_view_drag_begin (view, x / 2, y));
  grasp (&page, DRAWL_TIMELINE_SCREEN_END);
  drawl_span_view_drag_to (view, -1000);
  DrawlRational least = value_of (&page, "1", DRAWL_TIMING_SCREEN);
  g_assert_cmpint (least.num, >, 0);
  g_assert_cmpint (drawl_rational_compare (least, exact ("0.1")), <=, 0);
  drawl_span_view_drag_end (view);
  close_page (&page);
}

/* A shot that goes away under the pointer ends the drag as one step. */
static void
test_drag_shot_switch (void)
{
  Page page;

  open_page (&page, "1");
  DrawlSpanView *view = view_of (&page);
  grasp (&page, DRAWL_TIMELINE_ACTION_END);
  drawl_span_view_drag_to (view, x_of (view, 2));
  show_shot (&page, "2");
  assert_value (&page, "2", DRAWL_TIMING_ACTION, "0.45");
  g_assert_true (drawl_plan_can_undo (page.plan));
  drawl_plan_undo (page.plan);
  assert_value (&page, "1", DRAWL_TIMING_ACTION, "0.45");
  close_page (&page);
}

typedef struct {
  const char *name;
  gboolean other_end;
  int frames;
  DrawlTimingTerm term;
  const char *value;
  GtkTextDirection direction;
} KeyRow;

static const KeyRow keys[] = {
    {"action-a-frame", FALSE, 1, DRAWL_TIMING_ACTION, "109/240", GTK_TEXT_DIR_LTR},
    {"action-ten-back", FALSE, -10, DRAWL_TIMING_ACTION, "98/240", GTK_TEXT_DIR_LTR},
    {"screen-a-frame", TRUE, 1, DRAWL_TIMING_SCREEN, "109/24", GTK_TEXT_DIR_LTR},
    {"mirrored-key", FALSE, 1, DRAWL_TIMING_ACTION, "107/240", GTK_TEXT_DIR_RTL},
};

static void
test_keys (gconstpointer data)
{
  const KeyRow *row = data;
  Page page;

  gtk_widget_set_default_direction (row->direction);
  open_page (&page, "1");
  GtkWidget *view = GTK_WIDGET (view_of (&page));
  gtk_widget_grab_focus (view);
  if (row->other_end)
    g_assert_true (gtk_widget_activate_action (view, "span.change-end", NULL));
  g_assert_true (gtk_widget_activate_action (view, "span.move", "i", row->frames));
  assert_value (&page, "1", row->term, row->value);
  close_page (&page);
  gtk_widget_set_default_direction (GTK_TEXT_DIR_LTR);
}

/* Tab goes from one end to the other, then on; backwards the other way round. */
static void
test_tab (void)
{
  Page page;

  open_page (&page, "1");
  DrawlSpanView *view = view_of (&page);
  GtkWidget *widget = GTK_WIDGET (view);
  gtk_root_set_focus (GTK_ROOT (page.window), NULL);
  g_assert_true (gtk_widget_child_focus (widget, GTK_DIR_TAB_FORWARD));
  g_assert_cmpint (drawl_span_view_get_active (view), ==, DRAWL_TIMELINE_ACTION_END);
  g_assert_true (gtk_widget_child_focus (widget, GTK_DIR_TAB_FORWARD));
  g_assert_cmpint (drawl_span_view_get_active (view), ==, DRAWL_TIMELINE_SCREEN_END);
  g_assert_false (gtk_widget_child_focus (widget, GTK_DIR_TAB_FORWARD));
  g_assert_true (gtk_widget_child_focus (widget, GTK_DIR_TAB_BACKWARD));
  g_assert_cmpint (drawl_span_view_get_active (view), ==, DRAWL_TIMELINE_ACTION_END);
  g_assert_false (gtk_widget_child_focus (widget, GTK_DIR_TAB_BACKWARD));
  close_page (&page);
}

/* An end whose term is held fast does not move, and says why. */
static void
test_held_fast (void)
{
  Page page;

  open_page (&page, "1");
  for (guint term = 0; term < DRAWL_TIMING_N_TERMS; term++)
    if (term == DRAWL_TIMING_CAPTURE || term == DRAWL_TIMING_SCREEN)
      gtk_widget_activate_action (GTK_WIDGET (blank_of (&page, term)), "blank.hold", NULL);
  gtk_widget_activate_action (GTK_WIDGET (view_of (&page)), "span.move", "i", 1);
  assert_value (&page, "1", DRAWL_TIMING_ACTION, "0.45");
  g_assert_true (is_said (page.page, "let go of one of them"));
  close_page (&page);
}

static void
test_words (void)
{
  Page page;

  open_page (&page, "1");
  GtkAccessible *view = GTK_ACCESSIBLE (view_of (&page));
  DrawlTimelineData data;
  drawl_timeline_data_from_shot (&data, shot_of (&page, "1"));
  g_autofree char *words = drawl_timeline_text (&data);
  gtk_test_accessible_assert_role (view, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_test_accessible_assert_property (view, GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "Real time and screen time");
  gtk_test_accessible_assert_property (view, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words);
  drawl_timeline_data_clear (&data);
  close_page (&page);
}

int
main (int argc, char **argv)
{
  if (!start_tests (&argc, &argv))
    return 0;
  add_rows ("/span-view/drag", drags, test_drag);
  g_test_add_func ("/span-view/drag-cancelled", test_drag_cancelled);
  g_test_add_func ("/span-view/drag-bounds", test_drag_bounds);
  g_test_add_func ("/span-view/drag-shot-switch", test_drag_shot_switch);
  add_rows ("/span-view/keys", keys, test_keys);
  g_test_add_func ("/span-view/tab", test_tab);
  g_test_add_func ("/span-view/held-fast", test_held_fast);
  g_test_add_func ("/span-view/words", test_words);
  return g_test_run ();
}
