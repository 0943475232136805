/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The layout of a sentence: measures the children as bits, lets the flow set them, and places them.
 * A clause that is wider than a line is broken into lines itself. */

#include "app/sentence-layout.h"

#include "app/clause.h"
#include "app/sentence-flow.h"

struct _DrawlSentenceLayout {
  GtkLayoutManager parent_instance;
};

#define DRAWL_TYPE_SENTENCE_SEAT (drawl_sentence_seat_get_type ())
G_DECLARE_FINAL_TYPE (DrawlSentenceSeat, drawl_sentence_seat, DRAWL, SENTENCE_SEAT, GtkLayoutChild)

struct _DrawlSentenceSeat {
  GtkLayoutChild parent_instance;
  gboolean joined;
  gboolean spaced;
};

G_DEFINE_FINAL_TYPE (DrawlSentenceSeat, drawl_sentence_seat, GTK_TYPE_LAYOUT_CHILD)
G_DEFINE_FINAL_TYPE (DrawlSentenceLayout, drawl_sentence_layout, GTK_TYPE_LAYOUT_MANAGER)

#define LEADING_PART 4 /* of the height of a line lies between two of them */

/* A run of bits with the widgets they stand for. */
typedef struct {
  GArray *bits; /* of DrawlSentenceBit */
  GPtrArray *children;
  int gap;
  int leading;
} Setting;

static void
drawl_sentence_seat_class_init (DrawlSentenceSeatClass *klass)
{
}

static void
drawl_sentence_seat_init (DrawlSentenceSeat *self)
{
  self->spaced = TRUE;
}

/* ---- Measuring ---- */

static void
measure_space (GtkWidget *widget, int *width, int *height)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (widget, " ");

  pango_layout_get_pixel_size (layout, width, height);
}

int
drawl_sentence_layout_gap (GtkWidget *widget)
{
  int width, height;

  measure_space (widget, &width, &height);
  return MAX (width, 1);
}

int
drawl_sentence_layout_leading (GtkWidget *widget)
{
  int width, height;

  measure_space (widget, &width, &height);
  return height / LEADING_PART;
}

static DrawlSentenceBit
measure_child (GtkLayoutManager *manager, GtkWidget *child)
{
  DrawlSentenceSeat *place =
      DRAWL_SENTENCE_SEAT (gtk_layout_manager_get_layout_child (manager, child));
  DrawlSentenceBit bit = {.joined = place->joined, .spaced = place->spaced};
  int height, baseline;

  gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &bit.least, &bit.width, NULL, NULL);
  gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, bit.width, NULL, &height, NULL, &baseline);
  bit.ascent = baseline >= 0 ? baseline : height;
  bit.descent = height - bit.ascent;
  return bit;
}

static void
measure_children (GtkLayoutManager *manager, GtkWidget *widget, Setting *setting)
{
  setting->bits = g_array_new (FALSE, FALSE, sizeof (DrawlSentenceBit));
  setting->children = g_ptr_array_new ();
  setting->gap = drawl_sentence_layout_gap (widget);
  setting->leading = drawl_sentence_layout_leading (widget);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    if (!gtk_widget_should_layout (child))
      continue;
    DrawlSentenceBit bit = measure_child (manager, child);
    bit.joined = bit.joined && setting->bits->len > 0;
    g_array_append_val (setting->bits, bit);
    g_ptr_array_add (setting->children, child);
  }
}

static void
setting_clear (Setting *setting)
{
  g_array_unref (setting->bits);
  g_ptr_array_unref (setting->children);
}

static DrawlSentenceBit *
bit_at (const Setting *setting, guint i)
{
  return &g_array_index (setting->bits, DrawlSentenceBit, i);
}

/* The width of what stands against bit @i, which must share its last line. */
static int
followers_width (const Setting *setting, guint i)
{
  int width = 0;

  for (guint next = i + 1; next < setting->bits->len && bit_at (setting, next)->joined; next++)
    width += bit_at (setting, next)->width;
  return width;
}

/* Breaks the clauses that are wider than a line. */
static void
break_clauses (const Setting *setting, int width)
{
  for (guint i = 0; i < setting->bits->len; i++) {
    GtkWidget *child = setting->children->pdata[i];
    DrawlSentenceBit *bit = bit_at (setting, i);
    int room = MAX (width - followers_width (setting, i), bit->least);
    DrawlClauseLines lines;

    if (!DRAWL_IS_CLAUSE (child) || bit->width <= room ||
        !drawl_clause_break (DRAWL_CLAUSE (child), room, &lines))
      continue;
    bit->width = room;
    bit->ascent = lines.ascent;
    bit->descent = lines.descent;
    bit->drop = lines.drop;
    bit->tail = lines.tail;
  }
}

static int
flow (const Setting *setting, int width)
{
  break_clauses (setting, width);
  return drawl_sentence_flow ((DrawlSentenceBit *)(gpointer)setting->bits->data, setting->bits->len,
                              width, setting->gap, setting->leading);
}

/* Least: the widest run that cannot be parted; natural: all on one line. */
static void
measure_width (const Setting *setting, int *minimum, int *natural)
{
  int run = 0;

  *minimum = *natural = 0;
  for (guint i = 0; i < setting->bits->len; i++) {
    const DrawlSentenceBit *bit = bit_at (setting, i);
    run = (bit->joined ? run : 0) + bit->least;
    *minimum = MAX (*minimum, run);
    *natural += bit->width + (bit->spaced && !bit->joined ? setting->gap : 0);
  }
}

static GtkSizeRequestMode
drawl_sentence_layout_get_request_mode (GtkLayoutManager *manager, GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
drawl_sentence_layout_measure (GtkLayoutManager *manager, GtkWidget *widget,
                               GtkOrientation orientation, int for_size, int *minimum, int *natural,
                               int *minimum_baseline, int *natural_baseline)
{
  Setting setting;

  measure_children (manager, widget, &setting);
  measure_width (&setting, minimum, natural);
  if (orientation == GTK_ORIENTATION_VERTICAL) {
    *minimum = flow (&setting, for_size >= 0 ? for_size : *minimum);
    *natural = *minimum;
  }
  setting_clear (&setting);
}

/* ---- Placing ---- */

static void
place (GtkWidget *child, const DrawlSentenceBit *bit, int width, gboolean rtl)
{
  GtkAllocation allocation = {
      .x = rtl ? width - bit->x - bit->granted : bit->x,
      .y = bit->y,
      .width = bit->granted,
      .height = bit->ascent + bit->drop + bit->descent,
  };

  gtk_widget_size_allocate (child, &allocation, bit->ascent);
}

static void
drawl_sentence_layout_allocate (GtkLayoutManager *manager, GtkWidget *widget, int width, int height,
                                int baseline)
{
  gboolean rtl = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  Setting setting;

  measure_children (manager, widget, &setting);
  flow (&setting, width);
  for (guint i = 0; i < setting.bits->len; i++)
    place (setting.children->pdata[i], bit_at (&setting, i), width, rtl);
  setting_clear (&setting);
}

static void
drawl_sentence_layout_class_init (DrawlSentenceLayoutClass *klass)
{
  GtkLayoutManagerClass *layout_class = GTK_LAYOUT_MANAGER_CLASS (klass);

  layout_class->get_request_mode = drawl_sentence_layout_get_request_mode;
  layout_class->measure = drawl_sentence_layout_measure;
  layout_class->allocate = drawl_sentence_layout_allocate;
  layout_class->layout_child_type = DRAWL_TYPE_SENTENCE_SEAT;
}

static void
drawl_sentence_layout_init (DrawlSentenceLayout *self)
{
}

GtkLayoutManager *
drawl_sentence_layout_new (void)
{
  return g_object_new (DRAWL_TYPE_SENTENCE_LAYOUT, NULL);
}

void
drawl_sentence_layout_join (GtkWidget *child, gboolean joined, gboolean spaced)
{
  GtkLayoutManager *manager = gtk_widget_get_layout_manager (gtk_widget_get_parent (child));
  DrawlSentenceSeat *self =
      DRAWL_SENTENCE_SEAT (gtk_layout_manager_get_layout_child (manager, child));

  self->joined = joined;
  self->spaced = spaced;
  gtk_layout_manager_layout_changed (manager);
}
