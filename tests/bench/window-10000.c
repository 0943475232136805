/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The window on 10,000 shots: how long it is busy after a key of the search, a filter, an edit, a
 * switch of the tier, a step in the list, and with many shots at once. Each figure is the median of
 * several. What is undone is measured as well, as a round of its own. */

#include "app/bulk-edit.h"
#include "app/fixture.h"

#define ROUNDS 8

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

static void
search_on (guint round)
{
  static const char *const texts[] = {"g", "gl", "gla", "glas", "glass", "glass b", ""};
  GtkWidget *entry = by_id (drawl_window_get_list (window), "search_entry");

  gtk_editable_set_text (GTK_EDITABLE (entry), texts[round % G_N_ELEMENTS (texts)]);
  g_signal_emit_by_name (entry, "search-changed");
}

static void
filter_body (guint round)
{
  drawl_shot_list_set_body_filter (drawl_window_get_list (window), round % 2 == 0 ? "B" : "");
}

static void
put_in_order (DrawlShotOrderKey key, gboolean grouped)
{
  DrawlShotOrder order = {.key = key, .grouped = grouped};

  drawl_shot_list_set_order (drawl_window_get_list (window), &order);
}

static void
sort_slates (guint round)
{
  put_in_order (round % 2 == 0 ? DRAWL_SHOT_ORDER_SLATE : DRAWL_SHOT_ORDER_SCREEN, FALSE);
}

static void
sort_rates (guint round)
{
  put_in_order (round % 2 == 0 ? DRAWL_SHOT_ORDER_CAPTURE : DRAWL_SHOT_ORDER_PLAN, FALSE);
}

static void
group (guint round)
{
  put_in_order (DRAWL_SHOT_ORDER_PLAN, round % 2 == 0);
}

/* The shots from the first on. */
static GPtrArray *
first_shots (guint n)
{
  GPtrArray *shots = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < n; i++)
    g_ptr_array_add (shots, g_object_ref (drawl_plan_get_shot (drawl_window_get_plan (window), i)));
  return shots;
}

static void
select_first (guint n)
{
  g_autoptr (GPtrArray) shots = first_shots (n);

  drawl_shot_list_select_many (drawl_window_get_list (window), shots);
}

static void
select_all (guint round)
{
  if (round % 2 == 0)
    drawl_shot_list_select_all (drawl_window_get_list (window));
  else
    select_first (1);
}

static void
bulk_edit (guint round, guint n)
{
  DrawlPlan *plan = drawl_window_get_plan (window);

  if (round % 2 == 1) {
    drawl_plan_undo (plan);
    return;
  }
  g_autoptr (GPtrArray) shots = first_shots (n);
  g_autoptr (DrawlBulkEdit) change = drawl_bulk_edit_new (plan, shots, DRAWL_BULK_CAPTURE, "111");
  drawl_bulk_edit_apply (change, plan, NULL);
}

static void
select_20 (void)
{
  select_first (20);
}

static void
bulk_edit_20 (guint round)
{
  bulk_edit (round, 20);
}

static void
select_10000 (void)
{
  drawl_shot_list_select_all (drawl_window_get_list (window));
}

static void
bulk_edit_10000 (guint round)
{
  bulk_edit (round, 10000);
}

static void
select_1000 (void)
{
  select_first (1000);
}

static void
do_and_undo (guint round, const char *action)
{
  g_action_group_activate_action (G_ACTION_GROUP (window), round % 2 == 0 ? action : "undo", NULL);
}

static void
duplicate (guint round)
{
  do_and_undo (round, "duplicate-shot");
}

static void
remove_many (guint round)
{
  do_and_undo (round, "remove-shot");
}

static void
move_many (guint round)
{
  do_and_undo (round, "move-shot-down");
}

static void
scroll (guint round)
{
  gtk_widget_activate_action (by_id (drawl_window_get_list (window), "list_view"),
                              "list.scroll-to-item", "u", (round * 3701) % 10000);
}

static const struct {
  const char *name;
  void (*act) (guint round);
  void (*before) (void); /* each round, not measured */
  double target_ms;
} rows[] = {
    {"search, from nothing", search, NULL, 33},
    {"search, key after key", search_on, NULL, 33},
    {"filter by verdict", filter, NULL, 33},
    {"filter by body", filter_body, NULL, 33},
    {"sort by slate", sort_slates, NULL, 100},
    {"sort by capture rate", sort_rates, NULL, 100},
    {"group by scene", group, NULL, 100},
    {"edit of a shot", edit, NULL, 33},
    {"switch of the tier", tier, NULL, 100},
    {"step in the list", step, NULL, 16},
    {"far scroll", scroll, NULL, 33},
    {"all selected", select_all, NULL, 33},
    {"bulk edit of 20", bulk_edit_20, select_20, 33},
    {"bulk edit of 10,000", bulk_edit_10000, select_10000, 250},
    {"1,000 duplicated", duplicate, select_1000, 33},
    {"1,000 removed", remove_many, select_1000, 33},
    {"1,000 moved", move_many, select_1000, 33},
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
      if (rows[i].before != NULL && round % 2 == 0) {
        rows[i].before ();
        settle ();
      }
      gint64 start = g_get_monotonic_time ();
      rows[i].act (round);
      settle ();
      times[round] = g_get_monotonic_time () - start;
    }
    qsort (times, ROUNDS, sizeof times[0], compare);
    g_print ("%-24s%8.1f ms   (target: %.0f ms)\n", rows[i].name, (double)times[ROUNDS / 2] / 1000,
             rows[i].target_ms);
  }
  drop_window (window);
  return 0;
}
