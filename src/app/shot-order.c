/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Orders of the list, a row of the table each. Rates and times are compared exactly. */

#include "app/shot-order.h"

#include "core/text.h"
#include "plan/slate-order.h"

typedef struct {
  DrawlShot *shot;
  guint index; /* in the plan's order */
  guint group; /* of its scene */
} Entry;

static int
compare_slates (DrawlShot *a, DrawlShot *b)
{
  return drawl_slate_compare (drawl_shot_get_slate (a), drawl_shot_get_slate (b));
}

static int
compare_scenes (DrawlShot *a, DrawlShot *b)
{
  return drawl_slate_compare (drawl_shot_get_fields (a)->scene, drawl_shot_get_fields (b)->scene);
}

static int
compare_verdicts (DrawlShot *a, DrawlShot *b)
{
  return (int)drawl_shot_get_verdict (a) - (int)drawl_shot_get_verdict (b);
}

static int
compare_terms (DrawlShot *a, DrawlShot *b, DrawlTimingTerm term)
{
  return drawl_rational_compare (drawl_shot_get_timing (a)->value[term],
                                 drawl_shot_get_timing (b)->value[term]);
}

static int
compare_captures (DrawlShot *a, DrawlShot *b)
{
  return compare_terms (a, b, DRAWL_TIMING_CAPTURE);
}

static int
compare_actions (DrawlShot *a, DrawlShot *b)
{
  return compare_terms (a, b, DRAWL_TIMING_ACTION);
}

static int
compare_screens (DrawlShot *a, DrawlShot *b)
{
  return compare_terms (a, b, DRAWL_TIMING_SCREEN);
}

static const struct {
  const char *id;
  const char *words;
  int (*compare) (DrawlShot *a, DrawlShot *b);
} keys[DRAWL_N_SHOT_ORDER_KEYS] = {
    [DRAWL_SHOT_ORDER_PLAN] = {"plan", NULL, NULL},
    [DRAWL_SHOT_ORDER_SLATE] = {"slate", N_ ("Sorted by slate"), compare_slates},
    [DRAWL_SHOT_ORDER_SCENE] = {"scene", N_ ("Sorted by scene"), compare_scenes},
    [DRAWL_SHOT_ORDER_VERDICT] = {"verdict", N_ ("Sorted by verdict"), compare_verdicts},
    [DRAWL_SHOT_ORDER_CAPTURE] = {"capture", N_ ("Sorted by capture rate"), compare_captures},
    [DRAWL_SHOT_ORDER_ACTION] = {"action", N_ ("Sorted by action time"), compare_actions},
    [DRAWL_SHOT_ORDER_SCREEN] = {"screen", N_ ("Sorted by screen time"), compare_screens},
};

const char *
drawl_shot_order_id (DrawlShotOrderKey key)
{
  return keys[key].id;
}

DrawlShotOrderKey
drawl_shot_order_from_id (const char *id)
{
  for (guint key = 0; key < DRAWL_N_SHOT_ORDER_KEYS; key++)
    if (g_str_equal (keys[key].id, id))
      return (DrawlShotOrderKey)key;
  return DRAWL_SHOT_ORDER_PLAN;
}

const char *
drawl_shot_order_words (DrawlShotOrderKey key)
{
  return keys[key].words != NULL ? _ (keys[key].words) : NULL;
}

gboolean
drawl_shot_order_is_plain (const DrawlShotOrder *order)
{
  return order->key == DRAWL_SHOT_ORDER_PLAN && !order->descending && !order->grouped;
}

static int
compare_entries (gconstpointer a, gconstpointer b, gpointer data)
{
  const DrawlShotOrder *order = data;
  const Entry *left = a, *right = b;
  int (*compare) (DrawlShot *, DrawlShot *) = keys[order->key].compare;

  if (left->group != right->group)
    return left->group < right->group ? -1 : 1;
  int by_index = left->index < right->index ? -1 : left->index > right->index;
  int result = compare != NULL ? compare (left->shot, right->shot) : by_index;
  if (order->descending)
    result = -result;
  return result != 0 ? result : by_index;
}

/* Scenes are numbered as they come; sorted by scene, the sorting itself brings them together. */
static void
number_groups (Entry *entries, guint n)
{
  g_autoptr (GHashTable) numbers = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < n; i++) {
    char *scene = drawl_shot_get_fields (entries[i].shot)->scene;
    guint number = GPOINTER_TO_UINT (g_hash_table_lookup (numbers, scene));
    if (number == 0) {
      number = g_hash_table_size (numbers) + 1;
      g_hash_table_insert (numbers, scene, GUINT_TO_POINTER (number));
    }
    entries[i].group = number;
  }
}

gboolean
drawl_shot_order_sort (const DrawlShotOrder *order, GPtrArray *shots)
{
  g_autofree Entry *entries = NULL;
  gboolean same = TRUE;

  if (drawl_shot_order_is_plain (order) || shots->len == 0)
    return TRUE;
  entries = g_new0 (Entry, shots->len);
  for (guint i = 0; i < shots->len; i++)
    entries[i] = (Entry){.shot = shots->pdata[i], .index = i};
  if (order->grouped && order->key != DRAWL_SHOT_ORDER_SCENE)
    number_groups (entries, shots->len);
  g_qsort_with_data (entries, (int)shots->len, sizeof *entries, compare_entries, (gpointer)order);
  for (guint i = 0; i < shots->len; i++) {
    same = same && entries[i].index == i;
    shots->pdata[i] = entries[i].shot;
  }
  return same;
}
