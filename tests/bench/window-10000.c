/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The window on 10,000 shots: how long it is busy after a key of the search, a filter, an edit, a
 * switch of the tier, a step in the list. Each figure is the median of several. */

#include "app/fixture.h"

#define ROUNDS 7

static DrawlWindow *window;

static void
search (guint round)
{
  gtk_editable_set_text (GTK_EDITABLE (by_id (drawl_window_get_list (window), "search_entry")),
                         round % 2 == 0 ? "12" : "");
  g_signal_emit_by_name (by_id (drawl_window_get_list (window), "search_entry"), "search-changed");
}

static void
filter (guint round)
{
  drawl_shot_list_set_filter (drawl_window_get_list (window),
                              round % 2 == 0 ? "needs-licence" : "all");
}

static void
edit (guint round)
{
  DrawlShot *shot = drawl_window_get_shot (window);
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (drawl_shot_get_fields (shot));

  drawl_blanks_edit (&fields->blanks, DRAWL_TIMING_CAPTURE, drawl_rational_whole (25 + round),
                     NULL);
  drawl_plan_set_shot (drawl_window_get_plan (window), shot, fields, "Rate", NULL);
}

static void
tier (guint round)
{
  DrawlPlan *plan = drawl_window_get_plan (window);
  g_autoptr (DrawlHiredBody) hired = g_list_model_get_item (drawl_plan_get_bodies (plan), 0);
  g_autoptr (DrawlHiredFields) fields =
      drawl_hired_fields_copy (drawl_hired_body_get_fields (hired));

  fields->tier ^= 1;
  drawl_plan_set_body (plan, hired, fields, "Tier", NULL);
}

static void
step (guint round)
{
  drawl_shot_list_step (drawl_window_get_list (window), 1);
}

static const struct {
  const char *name;
  void (*act) (guint round);
} rows[] = {
    {"search", search},           {"filter", filter},         {"edit of a shot", edit},
    {"switch of the tier", tier}, {"step in the list", step},
};

static int
compare (gconstpointer a, gconstpointer b)
{
  gint64 left = *(const gint64 *)a, right = *(const gint64 *)b;

  return left < right ? -1 : left > right;
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  adw_init ();
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (argv[1]);
  window = window_on (file);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    gint64 times[ROUNDS];
    for (guint round = 0; round < ROUNDS; round++) {
      gint64 start = g_get_monotonic_time ();
      rows[i].act (round);
      settle ();
      times[round] = g_get_monotonic_time () - start;
    }
    qsort (times, ROUNDS, sizeof times[0], compare);
    g_print ("%-20s%8.1f ms\n", rows[i].name, (double)times[ROUNDS / 2] / 1000);
  }
  drop_window (window);
  return 0;
}
