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

char *
drawl_plan_next_body_id (DrawlPlan *plan)
{
  char *id = g_strdup ("A");

  while (drawl_plan_find_body (plan, id) != NULL) {
    g_autofree char *taken = id;
    id = next_name (taken);
  }
  return id;
}
