/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A camera body. Nothing in it changes after it was read, so it is shared by reference. Its rows
 * (limits) are sorted by size, then codec: all rows of a pair stand together. Rates it can be set
 * to are the multiples of a step, those listed, or both; with neither, any. */

#include "plan/body.h"

#include <string.h>

#include "core/error.h"
#include "core/text.h"
#include "plan/error.h"

G_DEFINE_BOXED_TYPE (DrawlBody, drawl_body, drawl_body_ref, drawl_body_unref)

DrawlBody *
drawl_body_new (void)
{
  DrawlBody *body = g_atomic_rc_box_new0 (DrawlBody);

  body->rate_step = drawl_rational_whole (0);
  body->buffer_pre_percent = drawl_rational_whole (0);
  body->watts = drawl_rational_whole (0);
  return body;
}

DrawlBody *
drawl_body_ref (DrawlBody *body)
{
  return g_atomic_rc_box_acquire (body);
}

static void
free_notes (DrawlBodyNote *notes, guint n_notes)
{
  for (guint i = 0; i < n_notes; i++) {
    g_free (notes[i].what);
    g_free (notes[i].why);
  }
  g_free (notes);
}

static void
free_tables (DrawlBody *body)
{
  for (guint i = 0; i < body->n_sizes; i++) {
    g_free (body->sizes[i].id);
    g_free (body->sizes[i].name);
  }
  for (guint i = 0; i < body->n_codecs; i++) {
    g_free (body->codecs[i].id);
    g_free (body->codecs[i].name);
  }
  for (guint i = 0; i < body->n_licences; i++)
    drawl_licence_clear (&body->licences[i]);
  for (guint i = 0; i < body->n_cards; i++) {
    g_free (body->cards[i].id);
    g_free (body->cards[i].name);
  }
  for (guint i = 0; i < body->n_magazines; i++) {
    g_free (body->magazines[i].id);
    g_free (body->magazines[i].name);
  }
  g_free (body->sizes);
  g_free (body->codecs);
  g_free (body->licences);
  g_free (body->limits);
  g_free (body->cards);
  g_free (body->magazines);
  g_free (body->rates);
}

static void
body_clear (gpointer data)
{
  DrawlBody *body = data;

  free_tables (body);
  free_notes (body->fits, body->n_fits);
  free_notes (body->pickups, body->n_pickups);
  free_notes (body->returns, body->n_returns);
  g_free (body->id);
  g_free (body->name);
  g_free (body->maker);
  g_free (body->what);
  g_free (body->source_document);
  g_free (body->source_date);
  g_free (body->currency);
  g_clear_pointer (&body->json, json_object_unref);
}

void
drawl_body_unref (DrawlBody *body)
{
  g_atomic_rc_box_release_full (body, body_clear);
}

/* ---- Tables ---- */

/* Index of the row whose id, the first member of each row, is @id. */
static int
find_id (const void *rows, gsize row_bytes, guint n_rows, const char *id)
{
  const char *row = rows;

  for (guint i = 0; i < n_rows; i++, row += row_bytes)
    if (strcmp (*(char *const *)row, id) == 0)
      return (int)i;
  return -1;
}

#define FIND_ID(rows, n_rows, id) find_id ((rows), sizeof *(rows), (n_rows), (id))

G_STATIC_ASSERT (G_STRUCT_OFFSET (DrawlBodySize, id) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (DrawlBodyCodec, id) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (DrawlLicence, id) == 0);
G_STATIC_ASSERT (G_STRUCT_OFFSET (DrawlBodyCard, id) == 0);

int
drawl_body_size_index (const DrawlBody *body, const char *id)
{
  return FIND_ID (body->sizes, body->n_sizes, id);
}

int
drawl_body_codec_index (const DrawlBody *body, const char *id)
{
  return FIND_ID (body->codecs, body->n_codecs, id);
}

int
drawl_body_licence_index (const DrawlBody *body, const char *id)
{
  return FIND_ID (body->licences, body->n_licences, id);
}

int
drawl_body_card_index (const DrawlBody *body, const char *id)
{
  return FIND_ID (body->cards, body->n_cards, id);
}

int
drawl_body_limit_compare (const DrawlBodyLimit *limit, guint size, guint codec)
{
  if (limit->size != size)
    return limit->size < size ? -1 : 1;
  return limit->codec < codec ? -1 : limit->codec > codec ? 1 : 0;
}

/* The first row that is not below size and codec. */
static guint
lower_bound (const DrawlBody *body, guint size, guint codec)
{
  guint from = 0, to = body->n_limits;

  while (from < to) {
    guint middle = from + (to - from) / 2;
    if (drawl_body_limit_compare (&body->limits[middle], size, codec) < 0)
      from = middle + 1;
    else
      to = middle;
  }
  return from;
}

const DrawlBodyLimit *
drawl_body_limits_of (const DrawlBody *body, guint size, guint codec, guint *n)
{
  guint from = lower_bound (body, size, codec), to = from;

  while (to < body->n_limits && drawl_body_limit_compare (&body->limits[to], size, codec) == 0)
    to++;
  *n = to - from;
  return body->limits + from;
}

const DrawlBodyLimit *
drawl_body_limits_of_size (const DrawlBody *body, guint size, guint *n)
{
  guint from = lower_bound (body, size, 0), to = from;

  while (to < body->n_limits && body->limits[to].size == size)
    to++;
  *n = to - from;
  return body->limits + from;
}

/* ---- Rates ---- */

static gboolean
offers_any_rate (const DrawlBody *body)
{
  return body->rate_step.num == 0 && body->n_rates == 0;
}

gboolean
drawl_body_offers_rate (const DrawlBody *body, DrawlRate rate)
{
  DrawlRational steps;

  if (offers_any_rate (body))
    return TRUE;
  if (body->rate_step.num != 0 && drawl_rational_div (rate, body->rate_step, &steps) &&
      steps.den == 1)
    return TRUE;
  for (guint i = 0; i < body->n_rates; i++)
    if (drawl_rational_equal (body->rates[i], rate))
      return TRUE;
  return FALSE;
}

/* The multiple of @step at or beside @rate, on the side of @direction; beyond it when @beyond. */
static gboolean
step_beside (DrawlRational step, DrawlRate rate, int direction, gboolean beyond, DrawlRate *out)
{
  DrawlRational steps;

  if (!drawl_rational_div (rate, step, &steps))
    return FALSE;
  gint64 k = direction > 0 ? drawl_rational_ceil (steps) : drawl_rational_floor (steps);
  if (beyond && steps.den == 1)
    k += direction > 0 ? 1 : -1;
  return k > 0 && drawl_rational_mul (step, drawl_rational_whole (k), out) &&
         drawl_rate_valid (*out);
}

/* Takes @candidate for @best if it lies nearer on the side of @direction, or is the first. */
static void
take_nearer (DrawlRate candidate, int direction, gboolean *found, DrawlRate *best)
{
  if (!*found || drawl_rational_compare (candidate, *best) * direction < 0)
    *best = candidate;
  *found = TRUE;
}

gboolean
drawl_body_rate_beside (const DrawlBody *body, DrawlRate rate, int direction, gboolean beyond,
                        DrawlRate *out)
{
  gboolean found = FALSE;
  DrawlRate candidate;

  if (offers_any_rate (body) && !beyond) {
    *out = rate;
    return TRUE;
  }
  DrawlRational step = offers_any_rate (body) ? drawl_rational_whole (1) : body->rate_step;
  if (step.num != 0 && step_beside (step, rate, direction, beyond, &candidate))
    take_nearer (candidate, direction, &found, out);
  for (guint i = 0; i < body->n_rates; i++) {
    int side = drawl_rational_compare (body->rates[i], rate) * direction;
    if (side > 0 || (side == 0 && !beyond))
      take_nearer (body->rates[i], direction, &found, out);
  }
  return found;
}

/* TRUE when @above is strictly nearer to @rate than @below; below ≤ rate ≤ above, or both on one
 * side of it. */
static gboolean
above_is_nearer (DrawlRate below, DrawlRate above, DrawlRate rate)
{
  DrawlRational sum, twice;

  return drawl_rational_add (below, above, &sum) && drawl_rational_add (rate, rate, &twice) &&
         drawl_rational_compare (twice, sum) > 0;
}

gboolean
drawl_body_nearest_rate (const DrawlBody *body, DrawlRate rate, DrawlRate lowest, DrawlRate highest,
                         DrawlRate *nearest)
{
  DrawlRate inside = rate, below, above;

  if (drawl_rational_compare (lowest, highest) > 0)
    return FALSE;
  if (drawl_rational_compare (inside, lowest) < 0)
    inside = lowest;
  if (drawl_rational_compare (inside, highest) > 0)
    inside = highest;
  gboolean has_below = drawl_body_rate_beside (body, inside, -1, FALSE, &below) &&
                       drawl_rational_compare (below, lowest) >= 0;
  gboolean has_above = drawl_body_rate_beside (body, inside, 1, FALSE, &above) &&
                       drawl_rational_compare (above, highest) <= 0;
  if (!has_below && !has_above)
    return FALSE;
  *nearest = has_above && (!has_below || above_is_nearer (below, above, rate)) ? above : below;
  return TRUE;
}

/* The next rate within one row. The ends of a row are offered where any rate is. */
static gboolean
step_in_row (const DrawlBody *body, const DrawlBodyLimit *row, DrawlRate rate, int direction,
             DrawlRate *next)
{
  DrawlRate near_end = direction > 0 ? row->lowest : row->highest;
  DrawlRate far_end = direction > 0 ? row->highest : row->lowest;
  gboolean outside = drawl_rational_compare (rate, near_end) * direction < 0;

  if (drawl_rational_compare (rate, far_end) * direction >= 0)
    return FALSE;
  gboolean found =
      drawl_body_rate_beside (body, outside ? near_end : rate, direction, !outside, next);
  if (found && drawl_rational_compare (*next, far_end) * direction <= 0)
    return TRUE;
  *next = far_end;
  return offers_any_rate (body);
}

gboolean
drawl_body_step_rate (const DrawlBody *body, guint size, guint codec, DrawlRate rate, int direction,
                      DrawlRate *next)
{
  guint n_rows;
  const DrawlBodyLimit *rows = drawl_body_limits_of (body, size, codec, &n_rows);
  int side = direction > 0 ? 1 : -1;
  gboolean found = FALSE;
  DrawlRate candidate;

  for (guint i = 0; i < n_rows; i++)
    if (step_in_row (body, &rows[i], rate, side, &candidate))
      take_nearer (candidate, side, &found, next);
  return found;
}

/* ---- Tiers ---- */

gboolean
drawl_body_tier_from_ids (const DrawlBody *body, const char *const *ids, DrawlTier *tier,
                          GError **error)
{
  DrawlTier found = 0;

  for (; *ids != NULL; ids++) {
    int index = drawl_body_licence_index (body, *ids);
    if (index < 0) {
      g_autofree char *quote = drawl_core_quote (*ids);
      g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_UNKNOWN, _ ("%s has no licence “%s”"),
                   body->name, quote);
      return FALSE;
    }
    found |= DRAWL_TIER_BIT (index);
  }
  *tier = found;
  return TRUE;
}

GStrv
drawl_body_tier_ids (const DrawlBody *body, DrawlTier tier)
{
  g_autoptr (GStrvBuilder) ids = g_strv_builder_new ();

  for (guint i = 0; i < body->n_licences; i++)
    if ((tier & DRAWL_TIER_BIT (i)) != 0)
      g_strv_builder_add (ids, body->licences[i].id);
  return g_strv_builder_end (ids);
}

char *
drawl_body_tier_names (const DrawlBody *body, DrawlTier tier)
{
  char *names = g_strdup ("");

  for (guint i = 0; i < body->n_licences && tier != 0; i++) {
    DrawlTier rest = tier & ~DRAWL_TIER_BIT (i);
    if (rest == tier)
      continue;
    g_autofree char *before = names;
    if (*before == '\0')
      names = g_strdup (body->licences[i].name);
    else if (rest == 0)
      names = g_strdup_printf (_ ("%s and %s"), before, body->licences[i].name);
    else
      names = g_strdup_printf (_ ("%s, %s"), before, body->licences[i].name);
    tier = rest;
  }
  return names;
}
