/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Texts are compared piece by piece: a run of digits against a run of digits by worth, anything
 * else letter by letter. Texts that differ in zeros or capitals alone are put in the order of their
 * bytes, so that the order is whole. */

#include "plan/slate-order.h"

#include <string.h>

static gsize
digits_at (const char *text)
{
  gsize n = 0;

  while (g_ascii_isdigit (text[n]))
    n++;
  return n;
}

/* Of any length: zeros in front do not count, then the longer one is worth more. */
static int
compare_numbers (const char **a, const char **b)
{
  gsize length_a, length_b;

  while (**a == '0')
    (*a)++;
  while (**b == '0')
    (*b)++;
  length_a = digits_at (*a);
  length_b = digits_at (*b);
  int order = length_a != length_b ? (length_a < length_b ? -1 : 1) : strncmp (*a, *b, length_a);
  *a += length_a;
  *b += length_b;
  return order;
}

/* Behind a number one or two letters count on as well: 12Z, then 12AA. How many there are; 0 for
 * words. */
static gsize
counting_letters (const char *start, const char *at)
{
  gsize n = 0;

  if (at == start || !g_ascii_isdigit (at[-1]))
    return 0;
  while (g_ascii_isalpha (at[n]))
    n++;
  return n <= 2 ? n : 0;
}

static int
compare_letters (const char **a, const char **b)
{
  gunichar letter_a = g_unichar_tolower (g_utf8_get_char (*a));
  gunichar letter_b = g_unichar_tolower (g_utf8_get_char (*b));

  *a = g_utf8_next_char (*a);
  *b = g_utf8_next_char (*b);
  return letter_a < letter_b ? -1 : letter_a > letter_b;
}

int
drawl_slate_compare (const char *a, const char *b)
{
  const char *at_a = a, *at_b = b;
  int order = 0;

  while (order == 0 && *at_a != '\0' && *at_b != '\0') {
    gsize letters_a = counting_letters (a, at_a), letters_b = counting_letters (b, at_b);
    if (letters_a != letters_b && letters_a > 0 && letters_b > 0)
      return letters_a < letters_b ? -1 : 1;
    order = g_ascii_isdigit (*at_a) && g_ascii_isdigit (*at_b) ? compare_numbers (&at_a, &at_b)
                                                               : compare_letters (&at_a, &at_b);
  }
  if (order == 0)
    order = (*at_a != '\0') - (*at_b != '\0');
  return order != 0 ? order : strcmp (a, b);
}
