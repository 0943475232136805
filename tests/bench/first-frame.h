/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* What both windows that are compared do alike: paint once, say when and with how much memory, and
 * end. The time runs from DRAWL_BENCH_T0 (monotonic microseconds), when the process was started. */

#include <sys/resource.h>

#include <adwaita.h>

static inline void
report_first_frame (GdkFrameClock *clock, gpointer window)
{
  gint64 start = g_ascii_strtoll (g_getenv ("DRAWL_BENCH_T0"), NULL, 10);
  struct rusage usage;

  getrusage (RUSAGE_SELF, &usage);
  g_print ("%.1f %ld\n", (double)(g_get_monotonic_time () - start) / 1000, usage.ru_maxrss);
  g_signal_handlers_disconnect_by_func (clock, report_first_frame, window);
  g_application_quit (g_application_get_default ());
}

static inline void
watch_first_frame (GtkWidget *window)
{
  g_signal_connect (gtk_widget_get_frame_clock (window), "after-paint",
                    G_CALLBACK (report_first_frame), window);
}

/* For "window-added" of the program. */
static inline void
on_window_added (GtkApplication *application, GtkWindow *window)
{
  g_signal_connect (window, "realize", G_CALLBACK (watch_first_frame), NULL);
}
