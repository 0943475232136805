/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What a shot falls back to without more licences. Each fallback passes the whole check itself: the
 * tier opens it, the body can be set to it, and a take of the same real time fits. What limits a
 * take (card, buffer, magazine) limits it the more the higher the rate, so the highest rate that
 * fits is found by halving. */

#include "plan/check-private.h"

#define HALVINGS_MAX 64

/* Frames of a take at @rate: as asked at the rate that was asked for. */
static gboolean
find_take_frames (const DrawlCheckQuestion *question, DrawlRate rate, gint64 *frames)
{
  DrawlRational exact;

  if (drawl_rational_equal (rate, question->rate)) {
    *frames = question->take_frames;
    return TRUE;
  }
  if (!drawl_rational_mul (question->take_s, rate, &exact))
    return FALSE;
  *frames = drawl_rational_ceil (exact);
  return TRUE;
}

static gboolean
take_fits (const DrawlCheckContext *context, const DrawlBodyLimit *row, DrawlRate rate)
{
  DrawlMedium medium;
  gint64 frames;

  return find_take_frames (context->question, rate, &frames) &&
         drawl_check_medium (context, row->size, row->codec, rate, frames, &medium);
}

/* An offered rate between two, near their middle; FALSE when there is none. */
static gboolean
find_between (const DrawlBody *body, DrawlRate low, DrawlRate high, DrawlRate *between)
{
  DrawlRational sum, middle;
  gboolean any = body->rate_step.num == 0 && body->n_rates == 0;

  if (!drawl_rational_add (low, high, &sum) ||
      !drawl_rational_div (sum, drawl_rational_whole (2), &middle))
    return FALSE;
  if (any)
    middle = drawl_rational_whole (drawl_rational_floor (middle));
  if (!drawl_body_rate_beside (body, middle, -1, FALSE, between) ||
      drawl_rational_compare (*between, low) <= 0)
    return drawl_body_rate_beside (body, low, 1, TRUE, between) &&
           drawl_rational_compare (*between, high) < 0;
  return TRUE;
}

/* The highest rate of @row below @high, where a take is too long, at which it fits. */
static gboolean
find_lower_rate (const DrawlCheckContext *context, const DrawlBodyLimit *row, DrawlRate high,
                 DrawlRate *rate)
{
  DrawlRate low, between;

  if (!drawl_body_rate_beside (context->body, row->lowest, 1, FALSE, &low) ||
      drawl_rational_compare (low, high) >= 0 || !take_fits (context, row, low))
    return FALSE;
  for (guint i = 0; i < HALVINGS_MAX && find_between (context->body, low, high, &between); i++)
    if (take_fits (context, row, between))
      low = between;
    else
      high = between;
  *rate = low;
  return TRUE;
}

/* The rate that @row as hired has nearest to the wanted one, however long a take may be. */
static gboolean
find_nearest (const DrawlCheckContext *context, const DrawlBodyLimit *row, DrawlRate *rate)
{
  return drawl_check_row_open (context, row) && drawl_check_row_card (context, row) &&
         drawl_body_nearest_rate (context->body, context->question->rate, row->lowest, row->highest,
                                  rate);
}

/* The rate of @row nearest to the wanted one at which everything is as hired. */
static gboolean
find_rate_in_row (const DrawlCheckContext *context, const DrawlBodyLimit *row, DrawlRate *rate)
{
  return find_nearest (context, row, rate) &&
         (take_fits (context, row, *rate) || find_lower_rate (context, row, *rate, rate));
}

/* TRUE when @a lies nearer to @wanted than @b does. */
static gboolean
is_nearer (DrawlRate a, DrawlRate b, DrawlRate wanted)
{
  DrawlRational from_a, from_b;

  if (!drawl_rational_sub (a, wanted, &from_a) || !drawl_rational_sub (b, wanted, &from_b))
    return FALSE;
  from_a.num = ABS (from_a.num);
  from_b.num = ABS (from_b.num);
  return drawl_rational_compare (from_a, from_b) < 0;
}

/* The nearest rate over the rows of the wanted codec (@wanted_codec), or over all others. */
static void
find_keep_size (const DrawlCheckContext *context, guint codec, gboolean wanted_codec,
                DrawlFallback *best)
{
  guint n_rows;
  const DrawlBodyLimit *rows =
      drawl_body_limits_of_size (context->body, (guint)context->question->size, &n_rows);
  DrawlRate rate;

  for (guint i = 0; i < n_rows; i++)
    if ((rows[i].codec == codec) == wanted_codec && find_rate_in_row (context, &rows[i], &rate) &&
        (!best->found || is_nearer (rate, best->rate, context->question->rate)))
      *best = (DrawlFallback){TRUE, rows[i].size, rows[i].codec, rate};
}

/* TRUE when @row allows exactly the wanted rate as hired. */
static gboolean
row_keeps_rate (const DrawlCheckContext *context, const DrawlBodyLimit *row)
{
  DrawlRate rate = context->question->rate;

  return drawl_check_row_open (context, row) && drawl_check_row_spans (row, rate) &&
         drawl_check_row_card (context, row) && take_fits (context, row, rate);
}

static void
find_keep_both (const DrawlCheckContext *context, guint codec, DrawlFallback *found)
{
  guint n_rows;
  const DrawlBodyLimit *rows =
      drawl_body_limits_of_size (context->body, (guint)context->question->size, &n_rows);

  for (guint i = 0; i < n_rows && !found->found; i++)
    if (rows[i].codec != codec && row_keeps_rate (context, &rows[i]))
      *found = (DrawlFallback){TRUE, rows[i].size, rows[i].codec, context->question->rate};
}

/* -1, 0, 1 by area: of the picture in pixels, on film of the window. */
static int
compare_areas (const DrawlBody *body, guint a, guint b)
{
  const DrawlBodySize *first = &body->sizes[a], *second = &body->sizes[b];
  DrawlRational first_mm2, second_mm2;

  if (body->kind == DRAWL_BODY_FILM)
    return drawl_rational_mul (first->window_w_mm, first->window_h_mm, &first_mm2) &&
                   drawl_rational_mul (second->window_w_mm, second->window_h_mm, &second_mm2)
               ? drawl_rational_compare (first_mm2, second_mm2)
               : 0;
  guint64 first_px = (guint64)first->width * first->height;
  guint64 second_px = (guint64)second->width * second->height;
  return first_px < second_px ? -1 : first_px > second_px ? 1 : 0;
}

/* TRUE when @a is of more use than @b to who keeps neither size nor rate. */
static gboolean
is_better (const DrawlCheckContext *context, guint codec, const DrawlFallback *a,
           const DrawlFallback *b)
{
  DrawlRate wanted = context->question->rate;

  if (!b->found || is_nearer (a->rate, b->rate, wanted))
    return TRUE;
  if (is_nearer (b->rate, a->rate, wanted))
    return FALSE;
  int order = compare_areas (context->body, a->size, b->size);
  return order > 0 || (a->size == b->size && a->codec == codec && b->codec != codec);
}

/* Who gives up size and rate does not also go down to where a long take fits. */
static void
find_keep_neither (const DrawlCheckContext *context, guint codec, DrawlFallback *best)
{
  const DrawlBody *body = context->body;

  for (guint i = 0; i < body->n_limits; i++) {
    const DrawlBodyLimit *row = &body->limits[i];
    DrawlFallback found = {TRUE, row->size, row->codec, {0, 1}};
    if (find_nearest (context, row, &found.rate) && take_fits (context, row, found.rate) &&
        is_better (context, codec, &found, best))
      *best = found;
  }
}

/* The rows come by size, then codec, so of equal ones the first in the tables stays. */
static void
find_keep_rate (const DrawlCheckContext *context, guint codec, DrawlFallback *best)
{
  const DrawlBody *body = context->body;

  for (guint i = 0; i < body->n_limits; i++) {
    const DrawlBodyLimit *row = &body->limits[i];
    if ((int)row->size == context->question->size)
      continue;
    int order = best->found ? compare_areas (body, row->size, best->size) : 1;
    gboolean better_codec =
        best->found && row->size == best->size && row->codec == codec && best->codec != codec;
    if ((order > 0 || better_codec) && row_keeps_rate (context, row))
      *best = (DrawlFallback){TRUE, row->size, row->codec, context->question->rate};
  }
}

void
drawl_check_find_fallbacks (const DrawlCheckContext *context, DrawlCheck *check)
{
  const DrawlCheckQuestion *question = context->question;
  gboolean film = context->body->kind == DRAWL_BODY_FILM;
  guint codec = film || question->codec < 0 ? DRAWL_BODY_NO_CODEC : (guint)question->codec;
  gboolean offered = drawl_body_offers_rate (context->body, question->rate);

  DrawlFallback *found = check->fallbacks;

  if (question->size >= 0) {
    find_keep_size (context, codec, TRUE, &found[DRAWL_KEEP_SIZE]);
    if (!found[DRAWL_KEEP_SIZE].found)
      find_keep_size (context, codec, FALSE, &found[DRAWL_KEEP_SIZE]);
  }
  if (question->size >= 0 && offered)
    find_keep_both (context, codec, &found[DRAWL_KEEP_BOTH]);
  if (offered)
    find_keep_rate (context, codec, &found[DRAWL_KEEP_RATE]);
  if (!found[DRAWL_KEEP_SIZE].found && !found[DRAWL_KEEP_RATE].found)
    find_keep_neither (context, codec, &found[DRAWL_KEEP_NEITHER]);
}
