/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Licences: what a tier amounts to, and the minimal sets that open something, against a search that
 * tries every subset. */

#include "plan/licence.h"

#include "rows.h"

#define N_GRAPHS 400
#define N_SMALL 8 /* licences of a random graph; 2⁸ subsets are tried */

/* Licences as text, one a letter: "a:10 b:20>a c:30=ab" is a for 10, b for 20 that requires a, and
 * c for 30 that replaces a and b. */
static guint
parse_licences (const char *text, DrawlLicence *licences)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);
  guint n = 0;

  for (; words[n] != NULL; n++) {
    DrawlTier *links = NULL;
    char *rest;

    licences[n] = (DrawlLicence){.price = g_ascii_strtoll (words[n] + 2, &rest, 10)};
    for (; *rest != '\0'; rest++)
      if (*rest == '>')
    links = &licences[n].requires;
    else if (*rest == '=') links = &licences[n].replaces;
    else *links |= DRAWL_TIER_BIT (*rest - 'a');
  }
  return n;
}

static DrawlTier
parse_tier (const char *letters)
{
  DrawlTier tier = 0;
  for (; *letters != '\0'; letters++)
    tier |= DRAWL_TIER_BIT (*letters - 'a');
  return tier;
}

static char *
tier_text (DrawlTier tier)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < DRAWL_LICENCES_MAX; i++)
    if ((tier & DRAWL_TIER_BIT (i)) != 0)
      g_string_append_c (text, (char)('a' + i));
  return g_string_free (text, FALSE);
}

/* ---- Effective ---- */

typedef struct {
  const char *name, *licences, *tier, *effective;
} Effective;

static const Effective effective_rows[] = {
    {"nothing", "a:1 b:1", "", ""},
    {"itself", "a:1 b:1", "b", "b"},
    {"replaces", "a:1 b:1=a", "b", "ab"},
    {"replaces-through-another", "a:1 b:1=a c:1=b", "c", "abc"},
    {"requires-met", "a:1 b:1>a", "ab", "ab"},
    {"requires-not-met", "a:1 b:1>a", "b", ""},
    {"requires-met-by-a-replaced-one", "a:1 b:1>a c:1=a", "bc", "abc"},
    {"requires-through-another", "a:1 b:1>a c:1>b", "bc", ""},
    {"idle-one-replaces-nothing", "a:1 b:1 c:1>a=b", "c", ""},
    {"replaced-one-lacks-its-own", "a:1 b:1>a c:1=b", "c", "c"},
    {"replaces-what-it-requires", "a:1 b:1>a=a", "b", ""},
    {"replace-each-other", "a:1=b b:1=a", "a", "ab"},
    {"require-each-other", "a:1>b b:1>a", "ab", ""},
    {"none-of-the-table", "a:1", "ac", "a"},
};

static void
test_effective (gconstpointer data)
{
  const Effective *row = data;
  DrawlLicence licences[DRAWL_LICENCES_MAX];
  guint n = parse_licences (row->licences, licences);
  g_autofree char *found = tier_text (drawl_tier_effective (licences, n, parse_tier (row->tier)));

  g_assert_cmpstr (found, ==, row->effective);
}

/* ---- Minimal sets ---- */

typedef struct {
  const char *name, *licences, *tier;
  const char *needs; /* between commas; "-" is the need of nothing */
  const char *sets;  /* in order, with their prices */
} Minimal;

static const Minimal minimal_rows[] = {
    {"the-one", "a:10 b:20", "", "a", "a=10"},
    {"held-already", "a:10 b:20", "a", "a", "=0"},
    {"nothing-needed", "a:10", "", "-", "=0"},
    {"no-needs", "a:10", "", "", ""},
    {"two-together", "a:10 b:20", "", "ab", "ab=30"},
    {"the-other-half", "a:10 b:20", "a", "ab", "b=20"},
    {"requires", "a:10 b:20>a", "", "b", "ab=30"},
    {"requires-a-chain", "a:10 b:20>a c:5>b", "", "c", "abc=35"},
    {"or-what-replaces-it", "a:10 b:20=a", "", "a", "a=10 b=20"},
    {"cheaper-replaces", "a:10 b:5=a", "", "a", "b=5 a=10"},
    {"through-another", "a:10 b:20=a c:30=b", "", "a", "a=10 b=20 c=30"},
    {"bundle", "a:60 b:45 c:90=ab", "", "ab", "c=90 ab=105"},
    {"bundle-with-one-held", "a:60 b:45 c:90=ab", "a", "ab", "b=45 c=90"},
    {"either-row", "a:60 b:45 c:90", "", "a,bc", "a=60 bc=135"},
    {"row-within-a-row", "a:60 b:45", "", "a,ab", "a=60"},
    {"same-price-fewest-first", "a:10 b:10 c:20", "", "ab,c", "c=20 ab=20"},
    {"same-price-table-order", "a:10 b:10", "", "b,a", "a=10 b=10"},
    {"free-ones", "a:0 b:0>a", "", "b", "ab=0"},
    {"not-a-licence-of-the-body", "a:10", "", "c", ""},
    {"require-each-other", "a:10>b b:10>a", "", "a", ""},
    {"held-one-lacks-its-own", "a:10 b:20>a", "b", "b", "a=10"},
    {"held-bundle-lacks-its-own", "a:10 b:20>a=c c:50", "b", "c", "a=10 c=50"},
    {"bundle-requires-what-it-replaces", "a:10 b:20>a=a", "", "b", "ab=30"},
    {"three-ways", "a:10 b:10 c:25=ab d:12=b", "", "ab", "ab=20 ad=22 c=25"},
    {"six-of-three", "a:1 b:1=a c:1=a d:1 e:1=d f:1=d", "", "ad",
     "ad=2 ae=2 af=2 bd=2 be=2 bf=2 cd=2 ce=2 cf=2"},
};

static GArray *
find_sets (const DrawlLicence *licences, guint n, DrawlTier tier, const char *needs)
{
  GArray *sets = g_array_new (FALSE, FALSE, sizeof (DrawlLicenceSet));
  g_auto (GStrv) words = g_strsplit (needs, ",", -1);
  DrawlTier masks[16];
  guint n_needs = g_strv_length (words);

  for (guint i = 0; i < n_needs; i++)
    masks[i] = parse_tier (*words[i] == '-' ? "" : words[i]);
  drawl_licence_minimal_sets (licences, n, tier, masks, n_needs, sets);
  return sets;
}

static char *
sets_text (GArray *sets)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < sets->len; i++) {
    const DrawlLicenceSet *set = &g_array_index (sets, DrawlLicenceSet, i);
    g_autofree char *letters = tier_text (set->add);
    g_string_append_printf (text, "%s%s=%" G_GINT64_FORMAT, i == 0 ? "" : " ", letters, set->price);
  }
  return g_string_free (text, FALSE);
}

static void
test_minimal (gconstpointer data)
{
  const Minimal *row = data;
  DrawlLicence licences[DRAWL_LICENCES_MAX];
  guint n = parse_licences (row->licences, licences);
  g_autoptr (GArray) sets = find_sets (licences, n, parse_tier (row->tier), row->needs);
  g_autofree char *found = sets_text (sets);

  g_assert_cmpstr (found, ==, row->sets);
}

/* What stands in the array before stays. */
static void
test_appends (void)
{
  DrawlLicence licences[DRAWL_LICENCES_MAX];
  guint n = parse_licences ("a:10 b:5", licences);
  g_autoptr (GArray) sets = find_sets (licences, n, 0, "a");
  DrawlTier need = 2;

  drawl_licence_minimal_sets (licences, n, 0, &need, 1, sets);
  g_autofree char *found = sets_text (sets);
  g_assert_cmpstr (found, ==, "a=10 b=5");
}

/* ---- Against every subset ---- */

static DrawlTier
random_links (guint n, int one_in)
{
  DrawlTier links = 0;
  for (guint i = 0; i < n; i++)
    if (g_test_rand_int_range (0, one_in) == 0)
      links |= DRAWL_TIER_BIT (i);
  return links;
}

static void
make_random (DrawlLicence *licences, guint n)
{
  for (guint i = 0; i < n; i++)
    licences[i] = (DrawlLicence){
        .price = g_test_rand_int_range (0, 6) * 10,
        .requires = random_links (n, 8) & ~DRAWL_TIER_BIT (i),
        .replaces = random_links (n, 6) & ~DRAWL_TIER_BIT (i),
    };
}

static gboolean
opens (const DrawlLicence *licences, guint n, DrawlTier tier, const DrawlTier *needs, guint n_needs)
{
  DrawlTier effective = drawl_tier_effective (licences, n, tier);
  for (guint i = 0; i < n_needs; i++)
    if ((needs[i] & ~effective) == 0)
      return TRUE;
  return FALSE;
}

/* TRUE when @add opens a need and no set with one licence less does; that is enough, for less opens
 * less. */
static gboolean
is_minimal (const DrawlLicence *licences, guint n, DrawlTier tier, DrawlTier add,
            const DrawlTier *needs, guint n_needs)
{
  if (!opens (licences, n, tier | add, needs, n_needs))
    return FALSE;
  for (guint i = 0; i < n; i++)
    if ((add & DRAWL_TIER_BIT (i)) != 0 &&
        opens (licences, n, tier | (add & ~DRAWL_TIER_BIT (i)), needs, n_needs))
      return FALSE;
  return TRUE;
}

static gint64
price_of (const DrawlLicence *licences, guint n, DrawlTier set)
{
  gint64 price = 0;
  for (guint i = 0; i < n; i++)
    if ((set & DRAWL_TIER_BIT (i)) != 0)
      price += licences[i].price;
  return price;
}

static void
assert_all_minimal (const DrawlLicence *licences, guint n, DrawlTier tier, const DrawlTier *needs,
                    guint n_needs, GArray *sets)
{
  guint n_minimal = 0;

  for (DrawlTier add = 0; add < DRAWL_TIER_BIT (n); add++)
    if ((add & tier) == 0 && is_minimal (licences, n, tier, add, needs, n_needs))
      n_minimal++;
  g_assert_cmpuint (sets->len, ==, n_minimal);
  for (guint i = 0; i < sets->len; i++) {
    const DrawlLicenceSet *set = &g_array_index (sets, DrawlLicenceSet, i);
    g_assert_cmpuint (set->add & tier, ==, 0);
    g_assert_true (is_minimal (licences, n, tier, set->add, needs, n_needs));
    g_assert_cmpint (set->price, ==, price_of (licences, n, set->add));
    if (i > 0) {
      g_assert_cmpuint (set->add, !=, set[-1].add);
      g_assert_cmpint (set->price, >=, set[-1].price);
    }
  }
}

static void
test_against_every_subset (void)
{
  for (guint graph = 0; graph < N_GRAPHS; graph++) {
    DrawlLicence licences[N_SMALL];
    g_autoptr (GArray) sets = g_array_new (FALSE, FALSE, sizeof (DrawlLicenceSet));
    guint n_needs = (guint)g_test_rand_int_range (1, 4);
    DrawlTier tier = random_links (N_SMALL, 5), needs[3];

    make_random (licences, N_SMALL);
    for (guint i = 0; i < n_needs; i++)
      needs[i] = random_links (N_SMALL, 3);
    drawl_licence_minimal_sets (licences, N_SMALL, tier, needs, n_needs, sets);
    assert_all_minimal (licences, N_SMALL, tier, needs, n_needs, sets);
  }
}

static void
test_more_opens_more (void)
{
  for (guint graph = 0; graph < N_GRAPHS; graph++) {
    DrawlLicence licences[N_SMALL];

    make_random (licences, N_SMALL);
    DrawlTier tier = random_links (N_SMALL, 3), more = tier | random_links (N_SMALL, 3);
    DrawlTier less_open = drawl_tier_effective (licences, N_SMALL, tier);
    g_assert_cmpuint (less_open & ~drawl_tier_effective (licences, N_SMALL, more), ==, 0);
  }
}

/* ---- Many licences ---- */

/* 24 licences as a real price list might have them: eight upgrades that build on each other in
 * pairs, each also in a bundle or two. */
static void
test_price_list (void)
{
  DrawlLicence licences[24] = {0};
  g_autoptr (GArray) sets = g_array_new (FALSE, FALSE, sizeof (DrawlLicenceSet));
  DrawlTier need = 0x2a; /* the upper one of three pairs */

  for (guint i = 0; i < 24; i++) {
    licences[i].price = 1000 + 10 * i;
    if (i < 8 && i % 2 == 1)
    licences[i].requires = DRAWL_TIER_BIT (i - 1);
    if (i >= 8 && i < 16)
      licences[i].replaces = DRAWL_TIER_BIT (i - 8);
    if (i >= 16)
      licences[i].replaces = G_GUINT64_CONSTANT (3) << (i % 4 * 2);
  }
  drawl_licence_minimal_sets (licences, 24, 0, &need, 1, sets);
  /* Each pair: two ways to each half, or one of two bundles. */
  g_assert_cmpuint (sets->len, ==, 6 * 6 * 6);
  g_assert_cmpuint (g_array_index (sets, DrawlLicenceSet, 0).add, ==, 0x70000);
}

/* 64 licences made to have more minimal sets than can be listed: it ends, and what is listed is the
 * cheapest. */
static void
test_made_to_explode (void)
{
  DrawlLicence licences[DRAWL_LICENCES_MAX] = {0};
  g_autoptr (GArray) sets = g_array_new (FALSE, FALSE, sizeof (DrawlLicenceSet));
  DrawlTier need = 0;

  for (guint i = 0; i < DRAWL_LICENCES_MAX; i++) {
    licences[i].price = i % 4 == 0 ? 1 : 1000;
    licences[i].replaces = i % 4 == 0 ? 0 : DRAWL_TIER_BIT (i - i % 4);
    if (i % 4 == 0)
      need |= DRAWL_TIER_BIT (i);
  }
  drawl_licence_minimal_sets (licences, DRAWL_LICENCES_MAX, 0, &need, 1, sets);
  g_assert_cmpuint (sets->len, >, 0);
  g_assert_cmpuint (g_array_index (sets, DrawlLicenceSet, 0).add, ==, need);
  g_assert_cmpint (g_array_index (sets, DrawlLicenceSet, 0).price, ==, 16);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/licence/effective", effective_rows, test_effective);
  add_rows ("/licence/minimal", minimal_rows, test_minimal);
  g_test_add_func ("/licence/appends", test_appends);
  g_test_add_func ("/licence/against-every-subset", test_against_every_subset);
  g_test_add_func ("/licence/more-opens-more", test_more_opens_more);
  g_test_add_func ("/licence/price-list", test_price_list);
  g_test_add_func ("/licence/made-to-explode", test_made_to_explode);
  return g_test_run ();
}
