/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Cards in rows. Invariant: every card lies inside the picture, above the lines of text at its
 * foot, and no two overlap. Lengths in points. */

#include "draw/cardstrip.h"

#include <math.h>

#define FOOT_GAP 1.4 /* from the cards to the text below, in lines */
#define LEADING 1.6  /* from line to line there */
#define FOOT_MARGIN 0.6
#define EDGE 3.0        /* kept free above at least */
#define MOST_LINES 4.5  /* a card grows no higher */
#define LEAST_LINES 1.2 /* lower cards go without labels, to be higher */
#define LONGEST 10.0    /* width ÷ height of a card that is still good to look at */
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

/* The number of columns that gives the cards the greatest area, in which what makes one longer than
 * LONGEST does not count. */
static guint
best_columns (const Room *room, guint cards)
{
  guint best = 1;
  double best_area = 0;

  for (guint columns = 1; columns <= cards; columns++) {
    double width, height = card_height (room, cards, columns, &width);

    double area = height * MIN (width, LONGEST * height);

    if (height > 0 && width > 0 && area > best_area) {
      best = columns;
      best_area = area;
    }
  }
  return best;
}

/* Height that so many lines of text take below the cards. */
static double
foot_height (guint lines, double line)
{
  double text = lines > 0 ? FOOT_GAP + 1 + LEADING * (lines - 1) : 0;

  return (FOOT_MARGIN + text) * line;
}

/* Chooses columns; cards that would be too low get on without labels and with less between them. */
static guint
settle (Room *room, guint cards, double *card_width, double *height)
{
  guint columns = best_columns (room, cards);

  if (card_height (room, cards, columns, card_width) < LEAST_LINES * room->line) {
    room->label = 0;
    room->gap = floor (MIN (room->gap, room->height / (2 * cards)));
    columns = best_columns (room, cards);
  }
  *height = floor (MAX (card_height (room, cards, columns, card_width), 0));
  return columns;
}

void
drawl_cardstrip_layout (gint64 cards, double width, double height, double label_height,
                        gboolean rtl, DrawlCardStripLayout *layout)
{
  double margin = drawl_style_margin (width);
  double top = CLAMP (0.06 * height, MIN (EDGE, height / 8), 0.8 * label_height);
  guint lines = height >= 9 * label_height ? 2 : height >= 6 * label_height ? 1 : 0;
  guint n = (guint)CLAMP (cards, 1, DRAWL_CARDSTRIP_CARDS_MAX);
  Room room = {
      .width = width - 2 * margin,
      .height = height - top - foot_height (lines, label_height),
      .gap = floor (MIN (0.8 * label_height, width / (4 * n))),
      .label = ceil (1.3 * label_height),
      .line = label_height,
  };
  double card_width, high;
  guint columns = settle (&room, n, &card_width, &high), rows = (n + columns - 1) / columns;
  double cards_height = rows * (high + room.label) + (rows - 1) * room.gap;
  double y = floor (top + (room.height - cards_height) / 2);

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
      .foot_y = y + cards_height + FOOT_GAP * label_height,
      .foot_lines = lines,
      .leading = LEADING * label_height,
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
