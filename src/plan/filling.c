/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Takes going onto cards (bytes) or magazines (feet). Invariant: what is left belongs to the card
 * or magazine begun last; a body whose card changes begins anew. */

#include "plan/filling.h"

#include "plan/shot-load.h"

void
drawl_filling_init (DrawlFilling *filling)
{
  *filling = (DrawlFilling){.card = -1, .left_feet = drawl_rational_whole (0)};
}

/* ---- Cards ---- */

/* Another card in the same body begins anew. */
static gboolean
choose_card (DrawlFilling *filling, const DrawlCheckQuestion *question, int card)
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

static gboolean
fill_cards (DrawlFilling *filling, DrawlShot *shot, gboolean takes_span)
{
  gint64 bytes = drawl_shot_get_load (shot)->take_bytes;
  guint takes = drawl_shot_get_fields (shot)->takes;

  if (!choose_card (filling, drawl_shot_get_question (shot), drawl_shot_get_check (shot)->card))
    return FALSE;
  gint64 before = filling->cards.cards;
  gboolean added = takes_span ? drawl_card_fill_add_spanning (&filling->cards, bytes, takes, NULL)
                              : drawl_card_fill_add (&filling->cards, bytes, takes, NULL);
  filling->begun += filling->cards.cards - before;
  return added;
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

static gboolean
fill_magazines (DrawlFilling *filling, DrawlShot *shot)
{
  const DrawlBodyMagazine *magazine =
      drawl_body_longest_magazine (drawl_shot_get_question (shot)->body);
  DrawlRational take = drawl_shot_get_load (shot)->take_feet;
  gint64 left = drawl_shot_get_fields (shot)->takes;

  if (magazine == NULL || take.num == 0 || takes_on (magazine->feet, take) == 0)
    return FALSE;

  gint64 on_each = takes_on (magazine->feet, take);
  gint64 here = MIN (left, takes_on (filling->left_feet, take));
  left -= here;
  take_off (&filling->left_feet, take, here);
  if (left == 0)
    return TRUE;
  gint64 more = (left + on_each - 1) / on_each;
  filling->begun += more;
  filling->left_feet = magazine->feet;
  take_off (&filling->left_feet, take, left - (more - 1) * on_each);
  return TRUE;
}

/* ---- Both ---- */

static gboolean
is_film (DrawlShot *shot)
{
  return drawl_shot_get_question (shot)->body->kind == DRAWL_BODY_FILM;
}

gboolean
drawl_filling_add (DrawlFilling *filling, DrawlShot *shot, gboolean takes_span)
{
  if (!drawl_shot_get_load (shot)->known)
    return FALSE;
  return is_film (shot) ? fill_magazines (filling, shot) : fill_cards (filling, shot, takes_span);
}

gint64
drawl_filling_next (const DrawlFilling *filling, DrawlShot *shot, gboolean takes_span)
{
  const DrawlShotLoad *load = drawl_shot_get_load (shot);
  gboolean fits;

  if (filling->begun == 0 || !load->known)
    return filling->begun + 1;
  if (is_film (shot))
    fits = drawl_rational_compare (load->take_feet, filling->left_feet) <= 0;
  else
    fits = filling->card == drawl_shot_get_check (shot)->card &&
           filling->cards.left_bytes >= (takes_span ? 1 : load->take_bytes);
  return fits ? filling->begun : filling->begun + 1;
}

/* So many takes of the shot as would go onto what is left, in parts of a take, times its length. */
gboolean
drawl_filling_left (const DrawlFilling *filling, DrawlShot *shot, DrawlRational *seconds)
{
  const DrawlShotLoad *load = drawl_shot_get_load (shot);
  DrawlRate capture = drawl_shot_get_timing (shot)->value[DRAWL_TIMING_CAPTURE];
  DrawlRational takes;

  if (!load->known ||
      !(is_film (shot) ? drawl_rational_div (filling->left_feet, load->take_feet, &takes)
                       : drawl_rational_make (filling->cards.left_bytes, load->take_bytes, &takes)))
    return FALSE;
  return drawl_rational_mul (takes, drawl_rational_whole (load->take_frames), seconds) &&
         drawl_rational_div (*seconds, capture, seconds);
}
