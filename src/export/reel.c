/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Reel names. Signs that a list cannot hold become underscores, accents are dropped, and a name
 * that is taken gets a number at its end. */

#include "export/reel.h"

#include <string.h>

/* Names that mean something else in a list: an auxiliary source, and black. */
static const char *const reserved[] = {"AX", "BL"};

void
drawl_reels_init (DrawlReels *reels)
{
  reels->taken = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (reserved); i++)
    g_hash_table_insert (reels->taken, g_strdup (reserved[i]), GUINT_TO_POINTER (1));
}

void
drawl_reels_clear (DrawlReels *reels)
{
  g_clear_pointer (&reels->taken, g_hash_table_unref);
}

/* @slate in the signs of reel names; "SHOT" when none of its signs is left. */
static char *
simplify (const char *slate)
{
  g_autofree char *ascii = g_str_to_ascii (slate, "C");
  GString *name = g_string_new (NULL);

  for (const char *at = ascii; *at != '\0'; at++)
    if (g_ascii_isalnum (*at))
      g_string_append_c (name, g_ascii_toupper (*at));
    else if (*at != '?' && name->len > 0 && name->str[name->len - 1] != '_')
      g_string_append_c (name, '_');
  while (name->len > 0 && name->str[name->len - 1] == '_')
    g_string_truncate (name, name->len - 1);
  if (name->len == 0)
    g_string_assign (name, "SHOT");
  return g_string_free (name, FALSE);
}

/* @name, cut, with the next number behind it. New string. */
static char *
number (DrawlReels *reels, const char *name, const char *cut)
{
  guint n = GPOINTER_TO_UINT (g_hash_table_lookup (reels->taken, cut));
  char *reel = NULL;

  do {
    g_autofree char *end = g_strdup_printf ("_%u", ++n);
    g_free (reel);
    reel = g_strdup_printf ("%.*s%s", (int)(DRAWL_REEL_LENGTH - strlen (end)), name, end);
  } while (g_hash_table_contains (reels->taken, reel));
  g_hash_table_insert (reels->taken, g_strdup (cut), GUINT_TO_POINTER (n));
  return reel;
}

const char *
drawl_reels_add (DrawlReels *reels, const char *slate)
{
  g_autofree char *name = simplify (slate);
  char *reel = g_strndup (name, DRAWL_REEL_LENGTH);

  if (g_hash_table_contains (reels->taken, reel)) {
    g_autofree char *cut = reel;
    reel = number (reels, name, cut);
  }
  g_hash_table_insert (reels->taken, reel, GUINT_TO_POINTER (1));
  return reel;
}
