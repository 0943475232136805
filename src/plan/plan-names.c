/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Names for what is new on a plan: the slate after the last one, the next free id of a body. */

#include "plan/plan-private.h"

#include <string.h>

/* Longer endings of letters are words, not a count. */
#define COUNTING_LETTERS_MAX 2

/* A row of signs that count, in which the last is followed by the first with a carry. */
typedef struct {
  char first;
  char last;
  char carry; /* what stands in front when all have overflowed: "9" → "10", "Z" → "AA" */
} Signs;

static const Signs all_signs[] = {{'0', '9', '1'}, {'A', 'Z', 'A'}, {'a', 'z', 'a'}};

static const Signs *
find_signs (char c)
{
  for (gsize i = 0; i < G_N_ELEMENTS (all_signs); i++)
    if (c >= all_signs[i].first && c <= all_signs[i].last)
      return &all_signs[i];
  return NULL;
}

/* Where the counting end of @name begins; its length when it has none: "12A" → 2. */
static gsize
counting_start (const char *name, const Signs *signs)
{
  gsize length = strlen (name), start = length;

  while (start > 0 && find_signs (name[start - 1]) == signs)
    start--;
  if (signs->first == '0')
    return start;
  gboolean after_digit = start > 0 && g_ascii_isdigit (name[start - 1]);
  return length - start <= COUNTING_LETTERS_MAX && (start == 0 || after_digit) ? start : length;
}

/* "12" → "13", "12A" → "12B", "9" → "10", "12Z" → "12AA"; a name that does not count: "Intro" →
 * "Intro 2". */
static char *
next_name (const char *name)
{
  gsize length = strlen (name);
  const Signs *signs = length > 0 ? find_signs (name[length - 1]) : NULL;
  gsize start = signs != NULL ? counting_start (name, signs) : length;

  if (start == length)
    return length > 0 ? g_strdup_printf ("%s 2", name) : g_strdup ("1");

  GString *next = g_string_new (name);
  gsize at = length;
  while (at > start && next->str[at - 1] == signs->last)
    next->str[--at] = signs->first;
  if (at > start)
    next->str[at - 1]++;
  else
    g_string_insert_c (next, (gssize)start, signs->carry);
  return g_string_free (next, FALSE);
}

char *
drawl_plan_next_slate (DrawlPlan *plan)
{
  guint n = plan->shots->len;
  char *slate = next_name (n > 0 ? drawl_shot_get_slate (plan->shots->pdata[n - 1]) : "");

  while (drawl_plan_find_shot (plan, slate) != NULL) {
    g_autofree char *taken = slate;
    slate = next_name (taken);
  }
  return slate;
}

/* The name that counts on from @name until it is none of the plan's and none in @given. @ahead
 * remembers where a walk ended, so that many walks over the same stretch take one step each. */
static char *
free_slate (DrawlPlan *plan, const char *name, GHashTable *given, GHashTable *ahead)
{
  g_autoptr (GPtrArray) walked = g_ptr_array_new_with_free_func (g_free);
  char *at = g_strdup (name);

  while (drawl_plan_find_shot (plan, at) != NULL || g_hash_table_contains (given, at)) {
    const char *known = g_hash_table_lookup (ahead, at);
    char *next = known != NULL ? g_strdup (known) : next_name (at);
    g_ptr_array_add (walked, at);
    at = next;
  }
  for (guint i = 0; i < walked->len; i++)
    g_hash_table_insert (ahead, g_strdup (walked->pdata[i]), g_strdup (at));
  return at;
}

void
drawl_plan_free_slates (DrawlPlan *plan, const GPtrArray *shot_fields)
{
  g_autoptr (GHashTable) given = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GHashTable) ahead = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (GPtrArray) waiting = g_ptr_array_new ();

  for (guint i = 0; i < shot_fields->len; i++) {
    DrawlShotFields *fields = shot_fields->pdata[i];
    if (drawl_plan_find_shot (plan, fields->slate) != NULL ||
        !g_hash_table_add (given, g_strdup (fields->slate)))
      g_ptr_array_add (waiting, fields);
  }
  for (guint i = 0; i < waiting->len; i++) {
    DrawlShotFields *fields = waiting->pdata[i];
    char *slate = free_slate (plan, fields->slate, given, ahead);
    g_free (fields->slate);
    fields->slate = slate;
    g_hash_table_add (given, g_strdup (slate));
  }
}

char *
drawl_plan_free_body_id (DrawlPlan *plan, const char *wanted, GHashTable *given)
{
  char *id = g_strdup (wanted);

  while (drawl_plan_find_body (plan, id) != NULL ||
         (given != NULL && g_hash_table_contains (given, id))) {
    g_autofree char *taken = id;
    id = next_name (taken);
  }
  return id;
}

char *
drawl_plan_next_body_id (DrawlPlan *plan)
{
  return drawl_plan_free_body_id (plan, "A", NULL);
}
