/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The sums of a plan. A take that fits on no card or magazine is counted among the shots and on
 * none. Bytes stop at the most that can be counted. */

#include "plan/day.h"

#include "plan/figure.h"
#include "plan/filling.h"

typedef struct {
  DrawlDay *day;
  GArray *fillings; /* of DrawlFilling, one a body of the day */
  gboolean takes_span;
} Reckoning;

static gint64
add_bytes (gint64 sum, gint64 bytes, guint count)
{
  guint64 more, all;

  if (!g_uint64_checked_mul (&more, (guint64)bytes, count) ||
      !g_uint64_checked_add (&all, (guint64)sum, more) || all > G_MAXINT64)
    return G_MAXINT64;
  return (gint64)all;
}

/* ---- Sums ---- */

static void
add_bodies (Reckoning *reckoning, DrawlPlan *plan)
{
  GListModel *bodies = drawl_plan_get_bodies (plan);

  for (guint i = 0; i < g_list_model_get_n_items (bodies); i++) {
    g_autoptr (DrawlHiredBody) hired = g_list_model_get_item (bodies, i);
    DrawlDayBody body = {.hired = hired};
    DrawlFilling filling;

    drawl_filling_init (&filling);
    g_array_append_val (reckoning->day->bodies, body);
    g_array_append_val (reckoning->fillings, filling);
  }
}

/* A shot of that body whose load is known. */
static void
add_load (const Reckoning *reckoning, DrawlDayBody *body, DrawlFilling *filling, DrawlShot *shot)
{
  const DrawlShotLoad *load = drawl_shot_get_load (shot);
  guint takes = drawl_shot_get_fields (shot)->takes;

  drawl_filling_add (filling, shot, reckoning->takes_span);
  if (drawl_hired_body_get_body (body->hired)->kind == DRAWL_BODY_FILM) {
    body->feet += drawl_rational_to_double (load->take_feet) * takes;
    body->magazines = filling->begun;
  } else {
    body->bytes = add_bytes (body->bytes, load->take_bytes, takes);
    body->cards = filling->begun;
  }
}

static void
add_to_body (const Reckoning *reckoning, DrawlShot *shot)
{
  const char *id = drawl_shot_get_fields (shot)->body;

  for (guint i = 0; i < reckoning->day->bodies->len; i++) {
    DrawlDayBody *body = &g_array_index (reckoning->day->bodies, DrawlDayBody, i);
    if (!g_str_equal (drawl_hired_body_get_id (body->hired), id))
      continue;
    body->shots++;
    if (drawl_shot_get_load (shot)->known)
      add_load (reckoning, body, &g_array_index (reckoning->fillings, DrawlFilling, i), shot);
    return;
  }
}

static void
add_shot (DrawlDay *day, DrawlShot *shot)
{
  const DrawlTiming *timing = drawl_shot_get_timing (shot);
  double take_s = drawl_rational_to_double (drawl_shot_get_load (shot)->take_s);

  day->shots++;
  day->by_verdict[drawl_shot_get_verdict (shot)]++;
  day->real_s += take_s * drawl_shot_get_fields (shot)->takes;
  day->action_s += drawl_rational_to_double (timing->value[DRAWL_TIMING_ACTION]);
  day->screen_s += drawl_rational_to_double (timing->value[DRAWL_TIMING_SCREEN]);
}

void
drawl_day_reckon (DrawlPlan *plan, DrawlDay *day)
{
  g_autoptr (GArray) fillings = g_array_new (FALSE, FALSE, sizeof (DrawlFilling));
  Reckoning reckoning = {
      .day = day,
      .fillings = fillings,
      .takes_span = drawl_plan_get_settings (plan)->takes_span,
  };

  drawl_day_clear (day);
  day->bodies = g_array_new (FALSE, FALSE, sizeof (DrawlDayBody));
  add_bodies (&reckoning, plan);
  for (guint i = 0; i < drawl_plan_n_shots (plan); i++) {
    add_shot (day, drawl_plan_get_shot (plan, i));
    add_to_body (&reckoning, drawl_plan_get_shot (plan, i));
  }
  for (guint i = 0; i < day->bodies->len; i++) {
    const DrawlDayBody *body = &g_array_index (day->bodies, DrawlDayBody, i);
    day->bytes = add_bytes (day->bytes, body->bytes, 1);
    day->cards += body->cards;
    day->magazines += body->magazines;
  }
}

void
drawl_day_reckon_shots (const GPtrArray *shots, DrawlDay *day)
{
  drawl_day_clear (day);
  for (guint i = 0; i < shots->len; i++)
    add_shot (day, shots->pdata[i]);
}

char *
drawl_day_time_text (double seconds)
{
  DrawlRational value;

  if (seconds > (double)DRAWL_TIMING_MAX_S * 1000 ||
      !drawl_rational_make ((gint64)(seconds * 1000 + 0.5), 1000, &value))
    return g_strdup ("∞");
  return drawl_figure_time (value);
}

void
drawl_day_clear (DrawlDay *day)
{
  g_clear_pointer (&day->bodies, g_array_unref);
  *day = (DrawlDay){0};
}
