/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Work on a plan and on its file, as the tests of files do it. */

#include "fixture.h"

static inline void
edit_title (DrawlWindow *window, const char *title)
{
  DrawlPlan *plan = drawl_window_get_plan (window);
  g_autoptr (DrawlPlanSettings) settings =
      drawl_plan_settings_copy (drawl_plan_get_settings (plan));

  g_free (settings->title);
  settings->title = g_strdup (title);
  g_assert_true (drawl_plan_set_settings (plan, settings, "Title", NULL));
  settle ();
}

static inline gboolean
is_modified (DrawlWindow *window)
{
  return drawl_document_get_modified (drawl_window_get_document (window));
}

static inline const char *
title_of (DrawlWindow *window)
{
  return drawl_plan_get_settings (drawl_window_get_plan (window))->title;
}

static inline char *
title_in (GFile *file)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (DrawlPlan) plan = drawl_plan_load (file, NULL, &error);

  g_assert_no_error (error);
  return g_strdup (drawl_plan_get_settings (plan)->title);
}

static inline void
assert_title_in (GFile *file, const char *expected)
{
  g_autofree char *title = title_in (file);
  g_assert_cmpstr (title, ==, expected);
}

/* Someone else writes the file, with another time stamp. */
static inline void
change_elsewhere (GFile *file)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (DrawlPlan) plan = drawl_plan_load (file, NULL, &error);
  g_autoptr (DrawlPlanSettings) settings = NULL;

  g_assert_no_error (error);
  settings = drawl_plan_settings_copy (drawl_plan_get_settings (plan));
  g_free (settings->title);
  settings->title = g_strdup ("Theirs");
  drawl_plan_set_settings (plan, settings, "Title", &error);
  drawl_plan_save (plan, file, FALSE, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (g_file_set_attribute_uint64 (file, G_FILE_ATTRIBUTE_TIME_MODIFIED, 1000000,
                                              G_FILE_QUERY_INFO_NONE, NULL, NULL));
}

/* The bar that tells of what lasts: its text, or NULL when there is none. */
static inline const char *
notice_of (DrawlWindow *window)
{
  return gtk_info_bar_get_revealed (GTK_INFO_BAR (window->notice_bar))
             ? gtk_label_get_text (GTK_LABEL (window->notice_label))
             : NULL;
}
