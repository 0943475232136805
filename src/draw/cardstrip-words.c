/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Words of the card picture. */

#include "draw/cardstrip-words.h"

#include "core/text.h"
#include "plan/figure.h"

#include <math.h>

char *
drawl_cardstrip_takes_words (const DrawlCardStripData *data)
{
  g_autofree char *count = drawl_figure_count (data->takes);

  return g_strdup_printf (ngettext_ ("%s take", "%s takes", data->takes), count);
}

char *
drawl_cardstrip_cards_words (const DrawlCardStripData *data, gint64 cards)
{
  g_autofree char *count = drawl_figure_count (cards);
  gulong n = (gulong)cards;

  /* Translators: a number and what one holds: "3 cards of 256 GB", "2 magazines of 400 ft". */
  return g_strdup_printf (data->film ? ngettext_ ("%s magazine of %s", "%s magazines of %s", n)
                                     : ngettext_ ("%s card of %s", "%s cards of %s", n),
                          count, data->capacity);
}

char *
drawl_cardstrip_others_words (const DrawlCardStripData *data)
{
  g_autofree char *count = drawl_figure_count (data->cards);
  gulong n = (gulong)data->cards;
  g_autofree char *all = g_strdup_printf (data->film ? ngettext_ ("%s magazine", "%s magazines", n)
                                                     : ngettext_ ("%s card", "%s cards", n),
                                          count);

  if (data->cards <= DRAWL_CARDSTRIP_CARDS_MAX)
    /* Translators: "7 cards", "1 magazine". */
    return g_strdup_printf (_ ("other shots, %s in all"), all);
  return g_strdup_printf (_ ("other shots, %s in all, the first %d drawn"), all,
                          DRAWL_CARDSTRIP_CARDS_MAX);
}

static char *
reserve_percent (const DrawlCardStripData *data)
{
  DrawlRational percent;

  drawl_rational_make (llround (data->reserve * 1e6), 10000, &percent);
  return drawl_figure_percent (percent);
}

char *
drawl_cardstrip_reserve_words (const DrawlCardStripData *data)
{
  if (data->reserve < 1e-6)
    return NULL;
  g_autofree char *percent = reserve_percent (data);
  return g_strdup_printf (_ ("%s kept empty"), percent);
}

char *
drawl_cardstrip_card_words (const DrawlCardStripData *data, guint card)
{
  g_autofree char *number = drawl_figure_count ((gint64)card + 1);

  return g_strdup_printf (data->film ? _ ("Magazine %s") : _ ("Card %s"), number);
}

char *
drawl_cardstrip_text (const DrawlCardStripData *data)
{
  if (data->problem != NULL)
    return g_strdup (data->problem);

  g_autofree char *takes = drawl_cardstrip_takes_words (data);
  g_autofree char *cards = drawl_cardstrip_cards_words (data, data->marked_cards);
  g_autofree char *all = drawl_cardstrip_cards_words (data, data->cards);
  g_autofree char *first = drawl_figure_count (data->marked_first + 1);
  GString *text = g_string_new (NULL);

  /* Translators: slate, "12 takes", "3 cards of 256 GB", number of the first of them. */
  g_string_append_printf (text,
                          data->film ? _ ("Shot %s: %s on %s, beginning on magazine %s.")
                                     : _ ("Shot %s: %s on %s, beginning on card %s."),
                          data->slate, takes, cards, first);
  if (data->left != NULL) {
    g_string_append_c (text, ' ');
    /* Translators: "4 min 10 s left on the last at 240 fps". */
    g_string_append_printf (text, _ ("There is %s."), data->left);
  }
  g_string_append_c (text, ' ');
  g_string_append_printf (text, _ ("All shots on this body fill %s."), all);
  if (data->reserve >= 1e-6) {
    g_autofree char *percent = reserve_percent (data);

    g_string_append_c (text, ' ');
    g_string_append_printf (text, _ ("%s of each card is kept empty."), percent);
  }
  return g_string_free (text, FALSE);
}
