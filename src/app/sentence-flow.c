/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Breaking a sentence into lines. Runs of joined bits are never parted. Invariant while setting:
 * the bits from `line` on stand on the line in hand, x known, y still counted from its baseline. */

#include "app/sentence-flow.h"

typedef struct {
  DrawlSentenceBit *bits;
  guint line; /* the first bit of the line in hand */
  int pen;    /* where the next bit would begin */
  int top;    /* of the line in hand */
  int ascent; /* of the line in hand */
  int descent;
  gboolean begun; /* something stands on the line, if only the tail of a broken bit */
} Pen;

/* The first bit after @first that does not stand against the one before it. */
static guint
run_end (const DrawlSentenceBit *bits, guint n, guint first)
{
  guint end = first + 1;

  while (end < n && bits[end].joined)
    end++;
  return end;
}

/* Grants each bit of a run its width, narrowed from the first on until the run fits. */
static int
grant (DrawlSentenceBit *bits, guint first, guint end, int room)
{
  int total = 0;

  for (guint i = first; i < end; i++) {
    bits[i].granted = bits[i].width;
    total += bits[i].width;
  }
  for (guint i = first; i < end && total > room; i++) {
    int cut = MIN (total - room, bits[i].width - bits[i].least);
    bits[i].granted -= cut;
    total -= cut;
  }
  return total;
}

/* Sets the line in hand on its baseline, and begins the next. */
static void
end_line (Pen *pen, guint next, int leading)
{
  int baseline = pen->top + pen->ascent;

  for (guint i = pen->line; i < next; i++)
    pen->bits[i].y = baseline - pen->bits[i].ascent;
  pen->top = baseline + pen->descent + leading;
  pen->line = next;
  pen->pen = pen->ascent = pen->descent = 0;
  pen->begun = FALSE;
}

static void
set_bit (Pen *pen, guint i)
{
  DrawlSentenceBit *bit = &pen->bits[i];

  bit->x = pen->pen;
  pen->pen += bit->granted;
  pen->ascent = MAX (pen->ascent, bit->ascent);
  pen->descent = MAX (pen->descent, bit->descent);
  pen->begun = TRUE;
}

/* A broken bit takes whole lines; its last one is the line in hand from then on. */
static void
set_broken (Pen *pen, guint i)
{
  DrawlSentenceBit *bit = &pen->bits[i];

  bit->x = 0;
  bit->y = pen->top;
  pen->top += bit->drop;
  pen->ascent = bit->ascent;
  pen->descent = bit->descent;
  pen->pen = bit->tail;
  pen->line = i + 1;
  pen->begun = TRUE;
}

int
drawl_sentence_flow (DrawlSentenceBit *bits, guint n, int width, int gap, int leading)
{
  Pen pen = {.bits = bits};

  for (guint first = 0; first < n;) {
    guint end = run_end (bits, n, first);
    int needed = grant (bits, first, end, width);
    int before = pen.begun && bits[first].spaced ? gap : 0;

    if (pen.begun && (bits[first].drop > 0 || pen.pen + before + needed > width)) {
      end_line (&pen, first, leading);
      before = 0;
    }
    pen.pen += before;
    for (guint i = first; i < end; i++)
      if (bits[i].drop > 0)
        set_broken (&pen, i);
      else
        set_bit (&pen, i);
    first = end;
  }
  end_line (&pen, n, leading);
  return pen.top - leading;
}
