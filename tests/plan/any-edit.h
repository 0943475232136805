/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* One edit of a plan, any of those there are, at random; some are refused. */

#include "fixture.h"

static inline void
set_at_random (DrawlPlan *plan)
{
  static const char *const rates[] = {"24", "48", "120", "240", "1000", "24000/1001"};
  static const char *const sizes[] = {"uhd", "hd", "s16", "s35", ""};
  static const char *const codecs[] = {"intra", "packed", "rows", "fixed", "even", ""};
  static const char *const bodies[] = {"A", "F", "B", ""};
  guint n = drawl_plan_n_shots (plan);

  if (n == 0)
    return;
  DrawlShot *shot = drawl_plan_get_shot (plan, (guint)g_test_rand_int_range (0, (gint32)n));
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (drawl_shot_get_fields (shot));
  g_autofree char *slate = g_strdup_printf ("%d", g_test_rand_int_range (1, 60));
  switch (g_test_rand_int_range (0, 6)) {
  case 0:
    drawl_shot_fields_set (&fields->slate, slate);
    break;
  case 1:
    drawl_shot_fields_set (&fields->body, bodies[g_test_rand_int_range (0, 4)]);
    break;
  case 2:
    drawl_shot_fields_set (&fields->size, sizes[g_test_rand_int_range (0, 5)]);
    drawl_shot_fields_set (&fields->codec, codecs[g_test_rand_int_range (0, 6)]);
    break;
  case 3:
    drawl_blanks_edit (&fields->blanks, DRAWL_TIMING_CAPTURE,
                       exact (rates[g_test_rand_int_range (0, 6)]), NULL);
    break;
  case 4:
    drawl_blanks_hold (&fields->blanks,
                       (DrawlTimingTerm)g_test_rand_int_range (0, DRAWL_TIMING_N_TERMS),
                       g_test_rand_bit ());
    break;
  default:
    fields->takes = (guint)g_test_rand_int_range (0, 9);
  }
  drawl_plan_set_shot (plan, shot, fields, "Set", NULL);
}

static inline void
list_at_random (DrawlPlan *plan)
{
  guint n = drawl_plan_n_shots (plan);
  guint from = n > 0 ? (guint)g_test_rand_int_range (0, (gint32)n) : 0;
  guint to = n > 0 ? (guint)g_test_rand_int_range (0, (gint32)n) : 0;
  g_autofree char *slate = g_strdup_printf ("%d", g_test_rand_int_range (1, 60));
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_new (slate, exact ("25"));

  switch (g_test_rand_int_range (0, 4)) {
  case 0:
    if (n > 0)
      drawl_plan_move_shot (plan, from, to, "Move");
    break;
  case 1:
    if (n > 0)
      drawl_plan_remove_shot (plan, from, "Remove");
    break;
  default:
    drawl_plan_insert_shot (plan, from, fields, "Insert", NULL);
  }
}

/* Some of the shots, each as likely as not. */
static inline void
many_at_random (DrawlPlan *plan)
{
  g_autoptr (GPtrArray) shots = g_ptr_array_new (), none = g_ptr_array_new ();
  g_autoptr (GPtrArray) fields =
      g_ptr_array_new_with_free_func ((GDestroyNotify)drawl_shot_fields_free);
  guint n = drawl_plan_n_shots (plan), takes = (guint)g_test_rand_int_range (0, 9);

  for (guint i = 0; i < n; i++) {
    DrawlShot *shot = drawl_plan_get_shot (plan, i);
    if (g_test_rand_bit ())
      continue;
    g_ptr_array_add (shots, shot);
    g_ptr_array_add (fields, drawl_shot_fields_copy (drawl_shot_get_fields (shot)));
    ((DrawlShotFields *)fields->pdata[fields->len - 1])->takes = takes;
  }
  switch (g_test_rand_int_range (0, 4)) {
  case 0:
    drawl_plan_set_all (plan, shots, fields, "Set many", NULL);
    break;
  case 1:
    drawl_plan_remove_all (plan, shots, "Remove many");
    break;
  case 2: {
    g_autoptr (DrawlShotFields) one = drawl_shot_fields_new ("60", exact ("25"));
    g_autoptr (DrawlShotFields) two = drawl_shot_fields_new ("61", exact ("25"));
    g_ptr_array_set_size (fields, 0);
    g_ptr_array_add (fields, g_steal_pointer (&one));
    g_ptr_array_add (fields, g_steal_pointer (&two));
    drawl_plan_insert_all (plan, n / 2, none, fields, "Insert many", NULL);
    break;
  }
  default:
    drawl_plan_move_all (plan, shots, (guint)g_test_rand_int_range (0, (gint32)n + 1), "Move many");
  }
}

static inline void
body_at_random (DrawlPlan *plan, DrawlBody *profile)
{
  static const char *const ids[] = {"A", "B", "F", "Q"};
  GListModel *bodies = drawl_plan_get_bodies (plan);
  guint n = g_list_model_get_n_items (bodies);
  const char *id = ids[g_test_rand_int_range (0, 4)];
  DrawlHiredBody *hired = drawl_plan_find_body (plan, id);
  g_autoptr (DrawlHiredFields) fields =
      hired != NULL ? drawl_hired_fields_copy (drawl_hired_body_get_fields (hired))
                    : drawl_hired_fields_new (id, profile);

  if (hired == NULL) {
    drawl_plan_insert_body (plan, n, fields, "Insert body", NULL);
  } else if (g_test_rand_int_range (0, 4) == 0) {
    drawl_plan_remove_body (plan, hired, "Remove body");
  } else {
    fields->tier = (DrawlTier)g_test_rand_int_range (0, 3);
    fields->card = g_test_rand_int_range (-1, 3);
    g_free (fields->id);
    fields->id = g_strdup (ids[g_test_rand_int_range (0, 4)]);
    drawl_plan_set_body (plan, hired, fields, "Set body", NULL);
  }
}

static inline void
settings_at_random (DrawlPlan *plan)
{
  g_autoptr (DrawlPlanSettings) settings =
      drawl_plan_settings_copy (drawl_plan_get_settings (plan));

  settings->reserve_percent = drawl_rational_whole (g_test_rand_int_range (0, 30));
  settings->takes_span = g_test_rand_bit ();
  drawl_plan_set_settings (plan, settings, "Settings", NULL);
}

static inline void
edit_at_random (DrawlPlan *plan, DrawlBody *profile, guint depth)
{
  int which = g_test_rand_int_range (0, 13);

  if (which < 6) {
    set_at_random (plan);
  } else if (which < 9) {
    list_at_random (plan);
  } else if (which == 9) {
    body_at_random (plan, profile);
  } else if (which == 10) {
    many_at_random (plan);
  } else if (which == 11) {
    settings_at_random (plan);
  } else if (depth < 2) {
    drawl_plan_begin_step (plan, "Many");
    for (int i = g_test_rand_int_range (0, 6); i > 0; i--)
      edit_at_random (plan, profile, depth + 1);
    drawl_plan_end_step (plan);
  }
}
