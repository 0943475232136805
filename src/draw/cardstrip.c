/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Which take lies where on which card, and what is said about it. Invariant: blocks stand in the
 * order of card and place, none over another, and none within the reserve. Cards are reckoned in
 * bytes; magazines in FOOT_PARTS of a foot, in which a frame of every gauge is whole. */

#include "draw/cardstrip.h"

#include "core/text.h"
#include "plan/figure.h"
#include "plan/filling.h"
#include "plan/shot-load.h"

#define FOOT_PARTS G_GINT64_CONSTANT (2880)
#define LEAST_BLOCK 0.001 /* takes narrower than this share of a card make one block together */

typedef struct {
  DrawlCardStripData *data;
  DrawlPlan *plan;
  DrawlShot *marked;
  gint64 capacity, usable; /* of a card, in bytes or parts of a foot */
  gboolean spans;
  DrawlFilling sum;
} Filling;

/* ---- Blocks ---- */

static void
add_block (Filling *filling, gint64 card, gint64 from, gint64 to, guint position, gboolean marked)
{
  DrawlCardBlock block = {
      .card = (guint)card,
      .from = (double)from / (double)filling->capacity,
      .to = (double)to / (double)filling->capacity,
      .shot = position,
      .marked = marked,
  };

  g_array_append_val (filling->data->blocks, block);
}

static void
add_takes (Filling *filling, gint64 card, gint64 from, gint64 units, gint64 takes,
           const DrawlCardBlock *of)
{
  gboolean together = (double)units / (double)filling->capacity < LEAST_BLOCK;
  gint64 step = together ? takes * units : units;

  for (gint64 at = from; at < from + takes * units; at += step)
    add_block (filling, card, at, at + step, of->shot, of->marked);
}

/* Walks over the cards from @card on, of which @left is left, as long as they are drawn. */
static void
place_takes (Filling *filling, gint64 card, gint64 left, gint64 units, const DrawlCardBlock *of,
             gint64 takes)
{
  gint64 usable = filling->usable, rest_of_take = 0;

  while (takes > 0 && card < DRAWL_CARDSTRIP_CARDS_MAX) {
    gint64 whole = MIN (left / units, takes);

    if (left == 0) {
      card++;
      left = usable;
    } else if (rest_of_take > 0) {
      gint64 piece = MIN (rest_of_take, left);
      add_block (filling, card, usable - left, usable - left + piece, of->shot, of->marked);
      rest_of_take -= piece;
      left -= piece;
      takes -= rest_of_take == 0 ? 1 : 0;
    } else if (whole > 0) {
      add_takes (filling, card, usable - left, units, whole, of);
      takes -= whole;
      left -= whole * units;
    } else if (filling->spans) {
      rest_of_take = units;
    } else {
      left = 0;
    }
  }
}

static gint64
foot_parts (DrawlRational feet)
{
  DrawlRational parts;

  return drawl_rational_mul (feet, drawl_rational_whole (FOOT_PARTS), &parts)
             ? drawl_rational_ceil (parts)
             : 0;
}

static gboolean
add_shot (Filling *filling, DrawlShot *shot, guint position)
{
  const DrawlShotLoad *load = drawl_shot_get_load (shot);
  DrawlCardBlock of = {.shot = position, .marked = shot == filling->marked};
  DrawlFilling before = filling->sum;
  gboolean film = filling->data->film;
  gint64 units = film ? foot_parts (load->take_feet) : load->take_bytes;
  gint64 left = film ? foot_parts (before.left_feet) : before.cards.left_bytes;

  if (units <= 0 || !drawl_filling_add (&filling->sum, shot, filling->spans))
    return FALSE;
  place_takes (filling, before.begun - 1, left, units, &of, drawl_shot_get_fields (shot)->takes);
  if (of.marked) {
    filling->data->marked_first = drawl_filling_next (&before, shot, filling->spans) - 1;
    filling->data->marked_cards = filling->sum.begun - filling->data->marked_first;
  }
  return TRUE;
}

/* ---- Words that come with them ---- */

static char *
left_words (const Filling *filling)
{
  DrawlRate capture = drawl_shot_get_timing (filling->marked)->value[DRAWL_TIMING_CAPTURE];
  DrawlRational seconds;

  if (!drawl_filling_left (&filling->sum, filling->marked, &seconds))
    return NULL;
  g_autofree char *time = drawl_figure_time_left (seconds);
  g_autofree char *rate = drawl_figure_rate (capture);
  if (!filling->data->film)
    return g_strdup_printf (_ ("%s left on the last at %s"), time, rate);
  g_autofree char *length =
      drawl_length_film_left (filling->sum.left_feet, drawl_plan_get_length_unit (filling->plan));
  /* Translators: length of film, time, capture rate. */
  return g_strdup_printf (_ ("%s left on the last, %s at %s"), length, time, rate);
}

/* ---- What is filled ---- */

static gboolean
find_card (Filling *filling, const DrawlBody *body)
{
  const DrawlCheckQuestion *question = drawl_shot_get_question (filling->marked);
  int index = drawl_shot_get_check (filling->marked)->card;

  if (index < 0 || !drawl_card_usable_bytes (body->cards[index].bytes, question->reserve_percent,
                                             &filling->usable, NULL))
    return FALSE;
  const DrawlBodyCard *card = &body->cards[index];
  filling->capacity = card->bytes;
  filling->data->reserve = 1 - (double)filling->usable / (double)card->bytes;
  filling->data->card_name = g_strdup (card->name);
  filling->data->capacity = drawl_figure_bytes (drawl_rational_whole (card->bytes));
  return TRUE;
}

static gboolean
find_magazine (Filling *filling, const DrawlBody *body)
{
  const DrawlBodyMagazine *magazine = drawl_body_longest_magazine (body);

  if (magazine == NULL)
    return FALSE;
  filling->capacity = filling->usable = foot_parts (magazine->feet);
  filling->spans = FALSE;
  filling->data->card_name = g_strdup (magazine->name);
  filling->data->capacity =
      drawl_length_film (magazine->feet, drawl_plan_get_length_unit (filling->plan));
  return filling->capacity > 0;
}

/* Whether there is anything to fill, and with what; else the sentence that says why not. */
static const char *
find_stock (Filling *filling)
{
  const DrawlBody *body = drawl_shot_get_question (filling->marked)->body;

  if (body == NULL)
    return N_ ("This shot has no body yet.");
  filling->data->film = body->kind == DRAWL_BODY_FILM;
  if (!drawl_shot_get_load (filling->marked)->known)
    return filling->data->film ? N_ ("This shot has no size yet.")
                               : N_ ("This shot has no size or no codec yet.");
  if (filling->data->film)
    return find_magazine (filling, body) ? NULL : N_ ("No magazine of this body is known.");
  return find_card (filling, body) ? NULL : N_ ("No card of this body is known.");
}

static gboolean
fill_with_shots (Filling *filling)
{
  const char *body = drawl_shot_get_fields (filling->marked)->body;
  int card = drawl_shot_get_check (filling->marked)->card;
  guint n_shots = drawl_plan_n_shots (filling->plan);
  gboolean fits = FALSE;

  for (guint i = 0; i < n_shots; i++) {
    DrawlShot *shot = drawl_plan_get_shot (filling->plan, i);

    if (!g_str_equal (drawl_shot_get_fields (shot)->body, body) ||
        drawl_shot_get_check (shot)->card != card)
      continue;
    gboolean added = add_shot (filling, shot, i);
    if (added && shot == filling->marked) {
      fits = TRUE;
      filling->data->left = left_words (filling);
    }
  }
  filling->data->cards = filling->sum.begun;
  return fits;
}

void
drawl_cardstrip_data_from_plan (DrawlCardStripData *data, DrawlPlan *plan, DrawlShot *shot)
{
  Filling filling = {
      .data = data,
      .plan = plan,
      .marked = shot,
      .spans = drawl_plan_get_settings (plan)->takes_span,
  };

  drawl_filling_init (&filling.sum);
  *data = (DrawlCardStripData){
      .blocks = g_array_new (FALSE, FALSE, sizeof (DrawlCardBlock)),
      .slate = g_strdup (drawl_shot_get_slate (shot)),
      .takes = drawl_shot_get_fields (shot)->takes,
  };
  const char *problem = find_stock (&filling);
  if (problem == NULL && !fill_with_shots (&filling))
    problem = data->film ? N_ ("One take is longer than a magazine holds.")
                         : N_ ("One take is longer than a card holds.");
  if (problem != NULL)
    data->problem = g_strdup (_ (problem));
}

void
drawl_cardstrip_data_clear (DrawlCardStripData *data)
{
  g_clear_pointer (&data->blocks, g_array_unref);
  g_clear_pointer (&data->card_name, g_free);
  g_clear_pointer (&data->capacity, g_free);
  g_clear_pointer (&data->slate, g_free);
  g_clear_pointer (&data->left, g_free);
  g_clear_pointer (&data->problem, g_free);
}
