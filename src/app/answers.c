/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The answers of a shot. A new kind of answer is a row of the table. All are equally wide; each is
 * as high as it needs, so that opening one leaves the others where they are. */

#include "app/answers.h"

#include "app/card-answer.h"
#include "app/hire-answer.h"
#include "core/text.h"

static GtkWidget *(*const kinds[]) (void) = {
    drawl_hire_answer_new,
    drawl_card_answer_new,
};

#define N_ANSWERS G_N_ELEMENTS (kinds)
#define MOST_COLUMNS 2
#define GAP 18
/* Digits that a column must have room for. */
#define COLUMN_DIGITS "00000000000000000000000000000000"

struct _DrawlAnswers {
  GtkWidget parent_instance;
  GtkWidget
      *cards[N_ANSWERS]; /* in the order of the table; their order in sight is the children's */
};

G_DEFINE_FINAL_TYPE (DrawlAnswers, drawl_answers, GTK_TYPE_WIDGET)

/* ---- Order ---- */

static void
sort_cards (DrawlAnswers *self)
{
  GtkWidget *before = NULL;

  for (int calm = 0; calm <= 1; calm++)
    for (guint i = 0; i < N_ANSWERS; i++) {
      if (drawl_answer_card_get_attention (DRAWL_ANSWER_CARD (self->cards[i])) == calm)
        continue;
      gtk_widget_insert_after (self->cards[i], GTK_WIDGET (self), before);
      before = self->cards[i];
    }
}

/* ---- Layout ---- */

static guint
columns_at (GtkWidget *widget, int width)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (widget, COLUMN_DIGITS);
  int column;

  pango_layout_get_pixel_size (layout, &column, NULL);
  return (guint)CLAMP ((width + GAP) / (column + GAP), 1, MOST_COLUMNS);
}

static int
column_width (int width, guint columns)
{
  return (width - (int)(columns - 1) * GAP) / (int)columns;
}

static int
height_of (GtkWidget *child, int width)
{
  int height;

  gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, width, NULL, &height, NULL, NULL);
  return height;
}

/* Sets each child at the end of its column, the columns in turn; returns the height of all. */
static int
set_cards (GtkWidget *widget, int width, gboolean place)
{
  guint columns = columns_at (widget, width), i = 0;
  int each = column_width (width, columns), tops[MOST_COLUMNS] = {0}, height = 0;
  gboolean rtl = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child), i++) {
    guint column = i % columns;
    int x = (int)column * (each + GAP);
    GtkAllocation at = {rtl ? width - x - each : x, tops[column], each, height_of (child, each)};
    if (place)
      gtk_widget_size_allocate (child, &at, -1);
    height = MAX (height, at.y + at.height);
    tops[column] = at.y + at.height + GAP;
  }
  return height;
}

static int
least_width (GtkWidget *widget)
{
  int least = 0;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    int minimum;
    gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, NULL, NULL, NULL);
    least = MAX (least, minimum);
  }
  return least;
}

static GtkSizeRequestMode
drawl_answers_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
drawl_answers_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                       int *natural, int *minimum_baseline, int *natural_baseline)
{
  int least = least_width (widget);

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *minimum = *natural = least;
  else
    *minimum = *natural = set_cards (widget, MAX (for_size, least), FALSE);
}

static void
drawl_answers_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  set_cards (widget, width, TRUE);
}

/* ---- The widget ---- */

static void
drawl_answers_dispose (GObject *object)
{
  DrawlAnswers *self = DRAWL_ANSWERS (object);

  for (guint i = 0; i < N_ANSWERS; i++)
    g_clear_pointer (&self->cards[i], gtk_widget_unparent);
  G_OBJECT_CLASS (drawl_answers_parent_class)->dispose (object);
}

static void
drawl_answers_class_init (DrawlAnswersClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = drawl_answers_dispose;
  widget_class->get_request_mode = drawl_answers_get_request_mode;
  widget_class->measure = drawl_answers_measure;
  widget_class->size_allocate = drawl_answers_size_allocate;
  gtk_widget_class_set_css_name (widget_class, "answers");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
drawl_answers_init (DrawlAnswers *self)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Answers"), -1);
  for (guint i = 0; i < N_ANSWERS; i++) {
    self->cards[i] = kinds[i]();
    gtk_widget_set_parent (self->cards[i], GTK_WIDGET (self));
    g_signal_connect_object (self->cards[i], "notify::attention", G_CALLBACK (sort_cards), self,
                             G_CONNECT_SWAPPED);
  }
}

void
drawl_answers_set_shot (DrawlAnswers *answers, DrawlPlan *plan, DrawlShot *shot)
{
  for (guint i = 0; i < N_ANSWERS; i++)
    drawl_answer_card_set_shot (DRAWL_ANSWER_CARD (answers->cards[i]), plan, shot);
}
