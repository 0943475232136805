/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The sums of a plan. Takes go onto the cards or magazines of their body in the order of the list:
 * whole takes, a take that does not fit on what is left begins the next; on cards they may run on
 * where the plan says so. A take that fits on none is counted among the shots and on no card. Bytes
 * stop at the most that can be counted. */

#include "plan/day.h"

#include "plan/shot-load.h"

/* What the takes of one body go onto. */
typedef struct {
  DrawlCardFill cards;
  int card;                /* of the body, that `cards` counts; -1: none yet */
  DrawlRational left_feet; /* on the magazine begun last */
} Filling;

typedef struct {
  DrawlDay *day;
  GArray *fillings; /* of Filling, one a body of the day */
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

/* ---- Cards ---- */

/* Another card in the same body begins anew. */
static gboolean
choose_card (Filling *filling, const DrawlCheckQuestion *question, int card)
{
  gint64 usable;

  if (card < 0)
    return FALSE;
  if (filling->card == card)
    return TRUE;
  if (!drawl_card_usable_bytes (question->body->cards[card].bytes, question->reserve_percent,
                                &usable, NULL))
    return FALSE;
  drawl_card_fill_init (&filling->cards, usable);
  filling->card = card;
  return TRUE;
}

static void
fill_cards (const Reckoning *reckoning, DrawlDayBody *body, Filling *filling, DrawlShot *shot)
{
  gint64 bytes = drawl_shot_get_load (shot)->take_bytes;
  guint takes = drawl_shot_get_fields (shot)->takes;

  body->bytes = add_bytes (body->bytes, bytes, takes);
  if (!choose_card (filling, drawl_shot_get_question (shot), drawl_shot_get_check (shot)->card))
    return;
  gint64 before = filling->cards.cards;
  if (reckoning->takes_span)
    drawl_card_fill_add_spanning (&filling->cards, bytes, takes, NULL);
  else
    drawl_card_fill_add (&filling->cards, bytes, takes, NULL);
  body->cards += filling->cards.cards - before;
}

/* ---- Magazines ---- */

/* Whole times that @take goes into @feet. */
static gint64
takes_on (DrawlRational feet, DrawlRational take)
{
  DrawlRational times;
  return drawl_rational_div (feet, take, &times) ? drawl_rational_floor (times) : 0;
}

static void
take_off (DrawlRational *feet, DrawlRational take, gint64 takes)
{
  DrawlRational used;

  if (!drawl_rational_mul (take, drawl_rational_whole (takes), &used) ||
      !drawl_rational_sub (*feet, used, feet))
    *feet = drawl_rational_whole (0);
}

static void
fill_magazines (DrawlDayBody *body, Filling *filling, DrawlShot *shot)
{
  const DrawlBodyMagazine *magazine =
      drawl_body_longest_magazine (drawl_shot_get_question (shot)->body);
  DrawlRational take = drawl_shot_get_load (shot)->take_feet;
  gint64 left = drawl_shot_get_fields (shot)->takes;

  body->feet += drawl_rational_to_double (take) * (double)left;
  if (magazine == NULL || take.num == 0 || takes_on (magazine->feet, take) == 0)
    return;

  gint64 on_each = takes_on (magazine->feet, take);
  gint64 here = MIN (left, takes_on (filling->left_feet, take));
  left -= here;
  take_off (&filling->left_feet, take, here);
  if (left == 0)
    return;
  gint64 begun = (left + on_each - 1) / on_each;
  body->magazines += begun;
  filling->left_feet = magazine->feet;
  take_off (&filling->left_feet, take, left - (begun - 1) * on_each);
}

/* ---- Sums ---- */

static void
add_bodies (Reckoning *reckoning, DrawlPlan *plan)
{
  GListModel *bodies = drawl_plan_get_bodies (plan);

  for (guint i = 0; i < g_list_model_get_n_items (bodies); i++) {
    g_autoptr (DrawlHiredBody) hired = g_list_model_get_item (bodies, i);
    DrawlDayBody body = {.hired = hired};
    Filling filling = {.card = -1, .left_feet = drawl_rational_whole (0)};
    g_array_append_val (reckoning->day->bodies, body);
    g_array_append_val (reckoning->fillings, filling);
  }
}

static void
add_to_body (const Reckoning *reckoning, DrawlShot *shot)
{
  const char *id = drawl_shot_get_fields (shot)->body;

  for (guint i = 0; i < reckoning->day->bodies->len; i++) {
    DrawlDayBody *body = &g_array_index (reckoning->day->bodies, DrawlDayBody, i);
    Filling *filling = &g_array_index (reckoning->fillings, Filling, i);
    if (!g_str_equal (drawl_hired_body_get_id (body->hired), id))
      continue;
    body->shots++;
    if (!drawl_shot_get_load (shot)->known)
      return;
    if (drawl_hired_body_get_body (body->hired)->kind == DRAWL_BODY_FILM)
      fill_magazines (body, filling, shot);
    else
      fill_cards (reckoning, body, filling, shot);
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
  g_autoptr (GArray) fillings = g_array_new (FALSE, FALSE, sizeof (Filling));
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
drawl_day_clear (DrawlDay *day)
{
  g_clear_pointer (&day->bodies, g_array_unref);
  *day = (DrawlDay){0};
}
