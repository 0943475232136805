/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Distance between words: the least number of letters to add, leave out or change (Levenshtein). A
 * name is near when no more than half of the typed letters have to change. */

#include "cli/nearest.h"

#include <string.h>

#define LETTERS_MAX 32 /* longer words are near to nothing */

static guint
distance (const char *a, const char *b)
{
  guint row[LETTERS_MAX + 1];
  gsize length = strlen (b);

  for (guint j = 0; j <= length; j++)
    row[j] = j;
  for (guint i = 0; a[i] != '\0'; i++) {
    guint corner = row[0];
    row[0] = i + 1;
    for (gsize j = 0; j < length; j++) {
      guint changed = corner + (a[i] != b[j]);
      corner = row[j + 1];
      row[j + 1] = MIN (changed, MIN (corner, row[j]) + 1);
    }
  }
  return row[length];
}

void
drawl_nearest_init (DrawlNearest *nearest, const char *typed)
{
  *nearest = (DrawlNearest){.typed = typed, .distance = (guint)strlen (typed) / 2 + 1};
}

void
drawl_nearest_offer (DrawlNearest *nearest, const char *name)
{
  if (strlen (nearest->typed) > LETTERS_MAX || strlen (name) > LETTERS_MAX)
    return;

  guint between = distance (nearest->typed, name);
  if (between < nearest->distance) {
    nearest->distance = between;
    nearest->name = name;
  }
}
