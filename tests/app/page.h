/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* A plan with a shot of each verdict, the page of a shot in a window, and ways to find one's way in
 * it. Shots: "1" needs a licence, "2" is as hired, "3" is not on its body, "4" is on film. */

#include <adwaita.h>

#include "app/shot-page.h"
#include "app/shot-sentence.h"
#include "plan/bodies.h"
#include "plan/plan.h"
#include "rows.h"

typedef struct {
  DrawlPlan *plan;
  GtkWidget *window;
  DrawlShotPage *page;
} Page;

static inline void
count_paint (int *paints)
{
  (*paints)++;
}

/* Lets everything that is due happen in @window: what waits in the main loop, and two frames, so
 * that what was made to change is measured, placed and painted. */
static inline void
settle_window (GtkWidget *window)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (window);
  int paints = 0;

  while (g_main_context_iteration (NULL, FALSE))
    continue;
  gulong handler =
      g_signal_connect_swapped (clock, "after-paint", G_CALLBACK (count_paint), &paints);
  for (int wanted = 1; wanted <= 2; wanted++)
    while (paints < wanted) {
      gdk_frame_clock_request_phase (clock, GDK_FRAME_CLOCK_PHASE_PAINT);
      g_main_context_iteration (NULL, TRUE);
    }
  g_signal_handler_disconnect (clock, handler);
  while (g_main_context_iteration (NULL, FALSE))
    continue;
}

/* The widget of @type under @widget that comes as number @skip, counted from 0; or NULL. */
static inline GtkWidget *
find_widget (GtkWidget *widget, GType type, guint *skip)
{
  if (G_TYPE_CHECK_INSTANCE_TYPE (widget, type) && (*skip)-- == 0)
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    GtkWidget *found = find_widget (child, type, skip);
    if (found != NULL)
      return found;
  }
  return NULL;
}

static inline GtkWidget *
find_first (gpointer widget, GType type)
{
  guint skip = 0;
  GtkWidget *found = find_widget (GTK_WIDGET (widget), type, &skip);

  g_assert_nonnull (found);
  return found;
}

/* The first button with that label that can be seen, or NULL. */
static inline GtkWidget *
find_button (gpointer in, const char *label)
{
  GtkWidget *widget = GTK_WIDGET (in);

  if (!gtk_widget_get_visible (widget))
    return NULL;
  if (GTK_IS_BUTTON (widget) && g_strcmp0 (gtk_button_get_label (GTK_BUTTON (widget)), label) == 0)
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    GtkWidget *found = find_button (child, label);
    if (found != NULL)
      return found;
  }
  return NULL;
}

static inline GtkWidget *
find_named (gpointer in, const char *name)
{
  GtkWidget *widget = GTK_WIDGET (in);

  if (g_str_equal (gtk_widget_get_name (widget), name))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    GtkWidget *found = find_named (child, name);
    if (found != NULL)
      return found;
  }
  return NULL;
}

/* Whether a label that can be seen says @part. */
static inline gboolean
is_said (gpointer in, const char *part)
{
  GtkWidget *widget = GTK_WIDGET (in);

  if (!gtk_widget_get_visible (widget))
    return FALSE;
  if (GTK_IS_LABEL (widget) && strstr (gtk_label_get_text (GTK_LABEL (widget)), part) != NULL)
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (is_said (child, part))
      return TRUE;
  return FALSE;
}

/* What is behind an expander is in the tree only while it is open. */
static inline void
open_all (GtkWidget *widget)
{
  if (GTK_IS_EXPANDER (widget))
    gtk_expander_set_expanded (GTK_EXPANDER (widget), TRUE);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    open_all (child);
}

/* ---- The plan ---- */

static inline void
add_body (DrawlPlan *plan, const char *id, const char *profile)
{
  g_autoptr (DrawlBody) body = sound_body (profile);
  g_autoptr (DrawlHiredFields) fields = drawl_hired_fields_new (id, body);
  g_autoptr (GError) error = NULL;

  drawl_plan_insert_body (plan, G_MAXUINT, fields, "Add", &error);
  g_assert_no_error (error);
}

static inline void
add_shot (DrawlPlan *plan, const char *slate, const char *capture, const char *body,
          const char *size, const char *codec)
{
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_new (slate, exact ("24"));
  g_autoptr (GError) error = NULL;

  drawl_shot_fields_set (&fields->action, "The glass breaks");
  drawl_shot_fields_set (&fields->body, body);
  drawl_shot_fields_set (&fields->size, size);
  drawl_shot_fields_set (&fields->codec, codec);
  drawl_blanks_edit (&fields->blanks, DRAWL_TIMING_ACTION, exact ("0.45"), &error);
  g_assert_no_error (error);
  drawl_blanks_edit (&fields->blanks, DRAWL_TIMING_CAPTURE, exact (capture), &error);
  g_assert_no_error (error);
  drawl_plan_insert_shot (plan, G_MAXUINT, fields, "Add", &error);
  g_assert_no_error (error);
}

static inline DrawlPlan *
plan_of_four (void)
{
  DrawlPlan *plan = drawl_plan_new ();

  add_body (plan, "A", DIGITAL_BODY);
  add_body (plan, "F", FILM_BODY);
  add_shot (plan, "1", "240", "A", "hd", "intra");
  add_shot (plan, "2", "24", "A", "uhd", "long");
  add_shot (plan, "3", "500", "A", "hd", "intra");
  add_shot (plan, "4", "48", "F", "s16", "");
  drawl_plan_mark_saved (plan);
  return plan;
}

/* ---- The page ---- */

static inline void
settle (const Page *page)
{
  settle_window (page->window);
}

static inline DrawlShot *
shot_of (const Page *page, const char *slate)
{
  DrawlShot *shot = drawl_plan_find_shot (page->plan, slate);

  g_assert_nonnull (shot);
  return shot;
}

static inline void
show_shot (const Page *page, const char *slate)
{
  drawl_shot_page_set_shot (page->page, shot_of (page, slate));
  settle (page);
}

/* Opens the page on shot @slate. */
static inline void
open_page (Page *page, const char *slate)
{
  page->plan = plan_of_four ();
  page->window = gtk_window_new ();
  page->page = DRAWL_SHOT_PAGE (drawl_shot_page_new ());
  gtk_window_set_default_size (GTK_WINDOW (page->window), 900, 1200);
  gtk_window_set_child (GTK_WINDOW (page->window), GTK_WIDGET (page->page));
  drawl_shot_page_set_plan (page->page, page->plan);
  gtk_window_present (GTK_WINDOW (page->window));
  show_shot (page, slate);
}

/* Everything must be gone: what is left behind would still hear of changes. */
static inline void
close_page (Page *page)
{
  gpointer plan = page->plan;

  gtk_window_destroy (GTK_WINDOW (page->window));
  while (g_main_context_iteration (NULL, FALSE))
    continue;
  g_object_add_weak_pointer (G_OBJECT (plan), &plan);
  g_object_unref (page->plan);
  g_assert_null (plan);
}

static inline DrawlBlank *
blank_of (const Page *page, DrawlTimingTerm term)
{
  return drawl_shot_sentence_get_blank (
      DRAWL_SHOT_SENTENCE (find_first (page->page, DRAWL_TYPE_SHOT_SENTENCE)), term);
}

static inline GtkEditable *
entry_of (const Page *page, DrawlTimingTerm term)
{
  return GTK_EDITABLE (find_first (blank_of (page, term), GTK_TYPE_ENTRY));
}

static inline DrawlRational
value_of (const Page *page, const char *slate, DrawlTimingTerm term)
{
  return drawl_shot_get_timing (shot_of (page, slate))->value[term];
}

#define assert_value(page, slate, term, text)                                                      \
  assert_same (value_of ((page), (slate), (term)), exact (text))

#define assert_shown(page, term, text)                                                             \
  g_assert_cmpstr (gtk_editable_get_text (entry_of ((page), (term))), ==, (text))

/* Starts the test program, in the window's own style, for sizes are part of what is tested. FALSE
 * without a display: there is nothing to test. */
static inline gboolean
start_tests (int *argc, char ***argv)
{
  g_test_init (argc, argv, NULL);
  if (!gtk_init_check ()) {
    g_print ("1..0 # SKIP no display\n");
    return FALSE;
  }
  adw_init ();
  GdkDisplay *display = gdk_display_get_default ();
  g_autoptr (GtkCssProvider) style = gtk_css_provider_new ();
  gtk_css_provider_load_from_resource (style, "/org/drawl/Drawl/style.css");
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (style),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  gtk_icon_theme_add_resource_path (gtk_icon_theme_get_for_display (display),
                                    "/org/drawl/Drawl/icons");
  return TRUE;
}
