/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What the picture of limits shows, and the same in words. Invariant: the first tier is the body as
 * hired; every other opens a higher rate than that at one size at least. */

#include "draw/limits-picture.h"

#include <stdlib.h>
#include <string.h>

#include "core/text.h"
#include "plan/figure.h"

typedef struct {
  guint index;
  guint64 pixels;
} Size;

static int
compare_sizes (gconstpointer a, gconstpointer b)
{
  const Size *first = a, *second = b;

  if (first->pixels != second->pixels)
    return first->pixels > second->pixels ? -1 : 1;
  return first->index < second->index ? -1 : 1;
}

/* The order of the rows; those of film have no pixels and stay as they are. */
static Size *
order_sizes (const DrawlBody *body)
{
  Size *order = g_new (Size, MAX (body->n_sizes, 1));

  for (guint i = 0; i < body->n_sizes; i++)
    order[i] = (Size){i, (guint64)body->sizes[i].width * body->sizes[i].height};
  qsort (order, body->n_sizes, sizeof *order, compare_sizes);
  return order;
}

/* ---- Tiers ---- */

static DrawlRate
highest_of (const DrawlBody *body, guint size, DrawlTier held)
{
  guint n;
  const DrawlBodyLimit *rows = drawl_body_limits_of_size (body, size, &n);
  DrawlRate highest = drawl_rational_whole (0);

  for (guint i = 0; i < n; i++)
    if ((rows[i].licences & ~held) == 0 && drawl_rational_compare (rows[i].highest, highest) > 0)
      highest = rows[i].highest;
  return highest;
}

static DrawlLimitsTier
tier_of (const DrawlBody *body, const Size *order, const char *name, DrawlTier licences)
{
  DrawlTier held = drawl_tier_effective (body->licences, body->n_licences, licences);
  DrawlLimitsTier tier = {g_strdup (name), licences, g_new (DrawlRate, MAX (body->n_sizes, 1))};

  for (guint i = 0; i < body->n_sizes; i++)
    tier.highest[i] = highest_of (body, order[i].index, held);
  return tier;
}

static void
tier_clear (DrawlLimitsTier *tier)
{
  g_free (tier->name);
  g_free (tier->highest);
}

/* At how many sizes @tier goes beyond @other. */
static guint
n_beyond (const DrawlLimitsTier *tier, const DrawlLimitsTier *other, guint n_sizes)
{
  guint n = 0;

  for (guint i = 0; i < n_sizes; i++)
    n += drawl_rational_compare (tier->highest[i], other->highest[i]) > 0;
  return n;
}

static DrawlTier
with_required (const DrawlBody *body, DrawlTier tier)
{
  DrawlTier before;

  do {
    before = tier;
    for (guint i = 0; i < body->n_licences; i++)
      if ((tier & DRAWL_TIER_BIT (i)) != 0)
    tier |= body->licences[i].requires;
  } while (tier != before);
  return tier;
}

/* Lets go of the licence that opens least; the later of two. */
static void
drop_least (DrawlLimitsData *data)
{
  guint least = 1;

  for (guint i = 2; i < data->n_tiers; i++)
    if (n_beyond (&data->tiers[i], &data->tiers[0], data->n_sizes) <=
        n_beyond (&data->tiers[least], &data->tiers[0], data->n_sizes))
      least = i;
  tier_clear (&data->tiers[least]);
  data->n_tiers--;
  memmove (&data->tiers[least], &data->tiers[least + 1],
           (data->n_tiers - least) * sizeof *data->tiers);
}

/* Everything is told of where no single tier amounts to it. */
static gboolean
is_news (const DrawlLimitsData *data, const DrawlLimitsTier *everything)
{
  for (guint i = 0; i < data->n_tiers; i++)
    if (n_beyond (everything, &data->tiers[i], data->n_sizes) == 0)
      return FALSE;
  return TRUE;
}

static void
find_tiers (DrawlLimitsData *data, const DrawlBody *body, const Size *order)
{
  DrawlTier all = 0;

  data->tiers = g_new0 (DrawlLimitsTier, body->n_licences + 2);
  data->tiers[data->n_tiers++] = tier_of (body, order, _ ("As hired"), 0);
  for (guint i = 0; i < body->n_licences; i++) {
    all |= DRAWL_TIER_BIT (i);
    DrawlLimitsTier tier =
        tier_of (body, order, body->licences[i].name, with_required (body, DRAWL_TIER_BIT (i)));
    if (n_beyond (&tier, &data->tiers[0], data->n_sizes) > 0)
      data->tiers[data->n_tiers++] = tier;
    else
      tier_clear (&tier);
  }
  while (data->n_tiers > DRAWL_LIMITS_LICENCES_MAX + 1)
    drop_least (data);
  DrawlLimitsTier everything = tier_of (body, order, _ ("With everything"), all);
  everything.everything = TRUE;
  if (is_news (data, &everything))
    data->tiers[data->n_tiers++] = everything;
  else
    tier_clear (&everything);
}

void
drawl_limits_data_from_body (DrawlLimitsData *data, const DrawlBody *body)
{
  g_autofree Size *order = order_sizes (body);

  *data = (DrawlLimitsData){.n_sizes = body->n_sizes, .lowest = drawl_rational_whole (1)};
  data->sizes = g_new0 (char *, body->n_sizes + 1);
  for (guint i = 0; i < body->n_sizes; i++)
    data->sizes[i] = g_strdup (body->sizes[order[i].index].name);
  for (guint i = 0; i < body->n_limits; i++)
    if (i == 0 || drawl_rational_compare (body->limits[i].lowest, data->lowest) < 0)
      data->lowest = body->limits[i].lowest;
  find_tiers (data, body, order);
}

void
drawl_limits_data_clear (DrawlLimitsData *data)
{
  for (guint i = 0; i < data->n_tiers; i++)
    tier_clear (&data->tiers[i]);
  g_clear_pointer (&data->tiers, g_free);
  g_clear_pointer (&data->sizes, g_strfreev);
  *data = (DrawlLimitsData){0};
}

/* ---- Words ---- */

static void
append_tier (GString *text, const DrawlLimitsTier *tier, guint size)
{
  g_autofree char *rate = drawl_figure_rate (tier->highest[size]);

  /* Translators: a rate, the name of a licence. */
  g_string_append_printf (text, _ (", %s with “%s”"), rate, tier->name);
}

static void
append_size (GString *text, const DrawlLimitsData *data, guint size)
{
  const DrawlLimitsTier *hired = &data->tiers[0];
  g_autofree char *rate = drawl_figure_rate (hired->highest[size]);

  if (hired->highest[size].num > 0)
    /* Translators: the name of a size, a rate. */
    g_string_append_printf (text, _ ("%s: up to %s as hired"), data->sizes[size], rate);
  else
    g_string_append_printf (text, _ ("%s: not as hired"), data->sizes[size]);
  for (guint i = 1; i < data->n_tiers; i++)
    if (drawl_rational_compare (data->tiers[i].highest[size], hired->highest[size]) > 0)
      append_tier (text, &data->tiers[i], size);
  g_string_append_c (text, '.');
}

char *
drawl_limits_text (const DrawlLimitsData *data)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < data->n_sizes; i++) {
    if (i > 0)
      g_string_append_c (text, ' ');
    append_size (text, data, i);
  }
  return g_string_free (text, FALSE);
}
