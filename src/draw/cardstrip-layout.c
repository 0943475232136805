/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Cards in rows. Invariant: every card lies inside the picture, above the lines of text at its
 * foot, and no two overlap. Lengths in points. */

#include "draw/cardstrip.h"

#define FOOT_LINES 4.6  /* kept free below for two lines of text */
#define MOST_LINES 4.5  /* a card grows no higher */
#define LEAST_LINES 1.2 /* lower cards go without labels, to be higher */
#define SLIMMEST 0.45   /* height ÷ width of a card at most */

typedef struct {
  double width, height; /* for the cards and their labels */
  double gap;
  double label; /* height above each card */
  double line;
} Room;

/* Height of a card when there are so many columns; 0 or less when they have no room. */
static double
card_height (const Room *room, guint cards, guint columns, double *card_width)
{
  guint rows = (cards + columns - 1) / columns;
  double height = (room->height - (rows - 1) * room->gap) / rows - room->label;

  *card_width = (room->width - (columns - 1) * room->gap) / columns;
  return MIN (MIN (height, *card_width * SLIMMEST), MOST_LINES * room->line);
}

/* The number of columns that gives the cards the greatest area. */
static guint
best_columns (const Room *room, guint cards)
{
  guint best = 1;
  double best_area = 0;

  for (guint columns = 1; columns <= cards; columns++) {
    double width, height = card_height (room, cards, columns, &width);

    if (height > 0 && width > 0 && width * height > best_area) {
      best = columns;
      best_area = width * height;
    }
  }
  return best;
}

void
drawl_cardstrip_layout (gint64 cards, double width, double height, double label_height,
                        gboolean rtl, DrawlCardStripLayout *layout)
{
  double margin = drawl_style_margin (width);
  double top = MIN (0.8 * label_height, 0.06 * height);
  double foot = MIN (FOOT_LINES * label_height, height / 2);
  guint n = (guint)CLAMP (cards, 1, DRAWL_CARDSTRIP_CARDS_MAX);
  Room room = {width - 2 * margin, height - top - foot, MIN (0.8 * label_height, width / (4 * n)),
               1.3 * label_height, label_height};
  double card_width, high;
  guint columns = best_columns (&room, n);

  if (card_height (&room, n, columns, &card_width) < LEAST_LINES * label_height) {
    room.label = 0;
    room.gap = MIN (room.gap, room.height / (2 * n));
    columns = best_columns (&room, n);
  }
  high = MAX (card_height (&room, n, columns, &card_width), 0);
  guint rows = (n + columns - 1) / columns;
  double cards_height = rows * (high + room.label) + (rows - 1) * room.gap;
  double y = top + (room.height - cards_height) / 2;

  *layout = (DrawlCardStripLayout){
      .cards = n,
      .columns = columns,
      .width = width,
      .x = margin,
      .y = y + room.label,
      .card_width = card_width,
      .card_height = high,
      .step_x = card_width + room.gap,
      .step_y = high + room.label + room.gap,
      .foot_y = y + cards_height + 1.4 * label_height,
      .labels = room.label > 0,
      .rtl = rtl,
  };
}

cairo_rectangle_t
drawl_cardstrip_card (const DrawlCardStripLayout *layout, guint card)
{
  double x = layout->x + (card % layout->columns) * layout->step_x;

  return (cairo_rectangle_t){
      layout->rtl ? layout->width - x - layout->card_width : x,
      layout->y + (card / layout->columns) * layout->step_y,
      layout->card_width,
      layout->card_height,
  };
}
