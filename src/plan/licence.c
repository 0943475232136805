/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What a set of licences amounts to, and the smallest sets that open something.
 *
 * A licence is active when it is held, or replaced by an active one, and all that it requires is
 * active. That is the least set with this property, so it grows with what is held and never
 * shrinks: adding a licence takes nothing away.
 *
 * The search decides licence by licence, held or not, cheapest set first, always for one that could
 * still be of use: one that must be active, or that replaces one. Every minimal set is found,
 * unless a profile made to that end needs more than STATES_MAX steps; then the dearest are missing.
 */

#include "plan/licence.h"

#include <stdlib.h>

#define STATES_MAX 4096

/* A set on its way: what was added so far, what was decided against. */
typedef struct {
  DrawlTier add;
  DrawlTier banned;
  DrawlTier need;
  gint64 price;
} State;

typedef struct {
  const DrawlLicence *licences;
  DrawlTier all;
  DrawlTier tier;
  DrawlTier replacers[DRAWL_LICENCES_MAX]; /* of each licence, directly or through others */
} Search;

void
drawl_licence_clear (DrawlLicence *licence)
{
  g_clear_pointer (&licence->id, g_free);
  g_clear_pointer (&licence->name, g_free);
  g_clear_pointer (&licence->what, g_free);
}

/* The lowest licence of a set that is not empty, and the set without it. */
static guint
take_first (DrawlTier *set)
{
  guint index = (guint)__builtin_ctzll (*set);
  *set &= *set - 1;
  return index;
}

static DrawlTier
all_of (guint n_licences)
{
  return n_licences >= DRAWL_LICENCES_MAX ? ~(DrawlTier)0 : DRAWL_TIER_BIT (n_licences) - 1;
}

DrawlTier
drawl_tier_effective (const DrawlLicence *licences, guint n_licences, DrawlTier tier)
{
  DrawlTier all = all_of (n_licences), held = tier & all, active = 0, before;

  do {
    before = active;
    for (DrawlTier waiting = held & ~active; waiting != 0;) {
      guint i = take_first (&waiting);
      if ((licences[i].requires & ~active) != 0)
        continue;
      active |= DRAWL_TIER_BIT (i);
      held |= licences[i].replaces & all;
    }
  } while (active != before);
  return active;
}

static DrawlTier
effective (const Search *search, DrawlTier held)
{
  guint n_licences = (guint)__builtin_popcountll (search->all);
  return drawl_tier_effective (search->licences, n_licences, held);
}

static void
find_replacers (Search *search)
{
  gboolean changed;

  for (DrawlTier all = search->all; all != 0;) {
    guint by = take_first (&all);
    for (DrawlTier replaced = search->licences[by].replaces & search->all; replaced != 0;)
      search->replacers[take_first (&replaced)] |= DRAWL_TIER_BIT (by);
  }
  do {
    changed = FALSE;
    for (DrawlTier all = search->all; all != 0;) {
      guint i = take_first (&all);
      DrawlTier found = search->replacers[i];
      for (DrawlTier through = found; through != 0;)
        found |= search->replacers[take_first (&through)];
      changed |= found != search->replacers[i];
      search->replacers[i] = found;
    }
  } while (changed);
}

/* All that must be active at the end: what is needed, what was added (it would be useless
 * otherwise), and what these require. */
static DrawlTier
find_goals (const Search *search, const State *state)
{
  DrawlTier goals = 0, waiting = state->need | state->add;

  while (waiting != 0) {
    guint i = take_first (&waiting);
    goals |= DRAWL_TIER_BIT (i);
    waiting |= search->licences[i].requires & search->all & ~goals;
  }
  return goals;
}

/* Everything that could help to make one of @goals active, near or far. */
static DrawlTier
find_helpers (const Search *search, DrawlTier goals, DrawlTier active)
{
  DrawlTier helpers = 0;

  for (DrawlTier waiting = goals & ~active; waiting != 0;) {
    guint i = take_first (&waiting);
    helpers |= DRAWL_TIER_BIT (i);
    waiting |= (search->licences[i].requires | search->replacers[i]) & search->all;
    waiting &= ~helpers & ~active;
  }
  return helpers;
}

/* The licences of which one must be added next: a goal, or one that replaces it. Where a licence
 * that is there already could still come to replace it, none of them must: then 0. */
static DrawlTier
find_choice (const Search *search, const State *state, DrawlTier goals, DrawlTier active)
{
  DrawlTier held = search->tier | state->add;

  for (DrawlTier waiting = goals & ~active & ~held; waiting != 0;) {
    guint i = take_first (&waiting);
    if ((search->replacers[i] & held) == 0)
      return (DRAWL_TIER_BIT (i) | search->replacers[i]) & ~state->banned;
  }
  return 0;
}

/* -1, 0, 1: cheapest first, then fewest, then in table order. */
static int
compare_sets (DrawlTier a, gint64 a_price, DrawlTier b, gint64 b_price)
{
  int a_count = __builtin_popcountll (a), b_count = __builtin_popcountll (b);
  DrawlTier differ = a ^ b;

  if (a_price != b_price)
    return a_price < b_price ? -1 : 1;
  if (a_count != b_count)
    return a_count < b_count ? -1 : 1;
  return differ == 0 ? 0 : (a & differ & -differ) != 0 ? -1 : 1;
}

static int
compare_results (gconstpointer a, gconstpointer b)
{
  const DrawlLicenceSet *first = a, *second = b;
  return compare_sets (first->add, first->price, second->add, second->price);
}

/* TRUE when a set found before is within this one. Cheaper sets come first, so one that is within
 * another is always found before it. */
static gboolean
dominated (const GArray *sets, guint first, DrawlTier add)
{
  for (guint i = first; i < sets->len; i++)
    if ((g_array_index (sets, DrawlLicenceSet, i).add & ~add) == 0)
      return TRUE;
  return FALSE;
}

/* TRUE when one of the licences added is active without being added: no minimal set holds these
 * together, for it would amount to the same without that one. */
static gboolean
is_redundant (const Search *search, DrawlTier add)
{
  for (DrawlTier rest = add; rest != 0;) {
    DrawlTier bit = DRAWL_TIER_BIT (take_first (&rest));
    if ((effective (search, search->tier | (add & ~bit)) & bit) != 0)
      return TRUE;
  }
  return FALSE;
}

/* Keeps a state that can still lead to a minimal set. The states lie cheapest last. */
static void
push (const Search *search, const State *state, GArray *states)
{
  DrawlTier most = effective (search, search->all & ~state->banned);
  guint from = 0, to = states->len;

  if ((find_goals (search, state) & ~most) != 0 || is_redundant (search, state->add))
    return;
  while (from < to) {
    guint middle = from + (to - from) / 2;
    const State *other = &g_array_index (states, State, middle);
    if (compare_sets (other->add, other->price, state->add, state->price) > 0)
      from = middle + 1;
    else
      to = middle;
  }
  g_array_insert_val (states, from, *state);
}

static void
push_with (const Search *search, State state, guint licence, GArray *states)
{
  state.add |= DRAWL_TIER_BIT (licence);
  state.price += search->licences[licence].price;
  push (search, &state, states);
}

/* Decides on one licence after the other: with the first; without it, but with the second; … The
 * order only saves steps: whichever is decided on, no set is lost. */
static void
branch (const Search *search, State state, DrawlTier active, GArray *states)
{
  DrawlTier goals = find_goals (search, &state);
  DrawlTier choice = find_choice (search, &state, goals, active);
  DrawlTier decided = search->tier | state.add | state.banned;

  if (choice != 0) {
    while (choice != 0) {
      guint i = take_first (&choice);
      push_with (search, state, i, states);
      state.banned |= DRAWL_TIER_BIT (i);
    }
    return;
  }
  choice = find_helpers (search, goals, active) & ~decided;
  if (choice == 0)
    return;
  guint i = take_first (&choice);
  push_with (search, state, i, states);
  state.banned |= DRAWL_TIER_BIT (i);
  push (search, &state, states);
}

void
drawl_licence_minimal_sets (const DrawlLicence *licences, guint n_licences, DrawlTier tier,
                            const DrawlTier *needs, guint n_needs, GArray *sets)
{
  Search search = {licences, all_of (n_licences), tier & all_of (n_licences), {0}};
  g_autoptr (GArray) states = g_array_new (FALSE, FALSE, sizeof (State));
  guint first = sets->len, n_states = 0;

  find_replacers (&search);
  for (guint i = 0; i < n_needs; i++)
    if ((needs[i] & ~search.all) == 0)
      push (&search, &(State){.need = needs[i]}, states);
  for (; states->len > 0 && n_states < STATES_MAX; n_states++) {
    State state = g_array_index (states, State, states->len - 1);
    g_array_set_size (states, states->len - 1);
    if (dominated (sets, first, state.add))
      continue;
    DrawlTier active = effective (&search, search.tier | state.add);
    DrawlLicenceSet found = {state.add, state.price};
    if ((state.need & ~active) == 0)
      g_array_append_val (sets, found);
    else
      branch (&search, state, active, states);
  }
  if (sets->len > first)
    qsort (&g_array_index (sets, DrawlLicenceSet, first), sets->len - first,
           sizeof (DrawlLicenceSet), compare_results);
}
