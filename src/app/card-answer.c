/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The answer about cards and magazines. Each figure of the details is a row of a table; those that
 * have no meaning for the shot hide. */

#include "app/card-answer.h"

#include "app/theme.h"
#include "core/text.h"
#include "draw/cardstrip.h"
#include "plan/figure.h"

#define STRIP_HEIGHT 96

/* In the order of the details. */
static const DrawlFigure figures[] = {
    DRAWL_FIGURE_CARDS,       DRAWL_FIGURE_MAGAZINES,    DRAWL_FIGURE_FOOTAGE,
    DRAWL_FIGURE_TAKE_FRAMES, DRAWL_FIGURE_FRAME_BYTES,  DRAWL_FIGURE_DATA_RATE,
    DRAWL_FIGURE_BUFFER,      DRAWL_FIGURE_BUFFER_EMPTY,
};

#define N_ROWS G_N_ELEMENTS (figures)

struct _DrawlCardAnswer {
  DrawlAnswerCard parent_instance;
  GtkWidget *mark;
  GtkWidget *card_time, *magazine_time; /* figure buttons of the headline */
  GtkWidget *names[N_ROWS], *values[N_ROWS];
  GtkWidget *guarantee_name, *guarantee;
  GtkWidget *strip, *strip_words;
  DrawlCardStripData strip_data;
};

G_DEFINE_FINAL_TYPE (DrawlCardAnswer, drawl_card_answer, DRAWL_TYPE_ANSWER_CARD)

static gboolean
is_film (DrawlShot *shot)
{
  const DrawlBody *body = drawl_shot_get_question (shot)->body;

  return body != NULL && body->kind == DRAWL_BODY_FILM;
}

/* The first reason of the check that is about cards or magazines, or NULL. */
static const DrawlReason *
find_reason (const DrawlCheck *check)
{
  for (guint i = 0; i < check->n_reasons; i++)
    switch (check->reasons[i].kind) {
    case DRAWL_REASON_CARD_TOO_SLOW:
    case DRAWL_REASON_BUFFER_TOO_SHORT:
    case DRAWL_REASON_CARD_TOO_SMALL:
    case DRAWL_REASON_MAGAZINE_TOO_SHORT:
      return &check->reasons[i];
    default:
      break;
    }
  return NULL;
}

/* ---- The line ---- */

static char *
dup_card_line (DrawlShot *shot)
{
  const DrawlShotLoad *load = drawl_shot_get_load (shot);
  const DrawlBody *body = drawl_shot_get_question (shot)->body;
  int card = drawl_shot_get_check (shot)->card;

  if (load->cards == 0 || card < 0)
    return g_strdup (_ ("How many cards it takes cannot be said yet."));
  gint64 takes = load->card_frames / MAX (load->take_frames, 1);
  g_autofree char *take_count = drawl_figure_count (takes);
  g_autofree char *card_count = drawl_figure_count (load->cards);
  /* Translators: number of takes, name of the card. */
  g_autofree char *holds = g_strdup_printf (
      ngettext_ ("%s take fits on one card (%s).", "%s takes fit on one card (%s).", (gulong)takes),
      take_count, body->cards[card].name);
  g_autofree char *needs = g_strdup_printf (
      ngettext_ ("The shot needs %s card.", "The shot needs %s cards.", (gulong)load->cards),
      card_count);
  return g_strconcat (holds, " ", needs, NULL);
}

static char *
dup_magazine_line (DrawlShot *shot)
{
  const DrawlShotLoad *load = drawl_shot_get_load (shot);
  DrawlRational fit;

  if (load->magazines == 0 || !drawl_rational_div (load->magazine_s, load->take_s, &fit))
    return g_strdup (_ ("How many magazines it takes cannot be said yet."));
  gint64 takes = drawl_rational_floor (fit);
  g_autofree char *take_count = drawl_figure_count (takes);
  g_autofree char *magazine_count = drawl_figure_count (load->magazines);
  g_autofree char *holds = g_strdup_printf (
      ngettext_ ("%s take fits in one magazine.", "%s takes fit in one magazine.", (gulong)takes),
      take_count);
  g_autofree char *needs =
      g_strdup_printf (ngettext_ ("The shot needs %s magazine.", "The shot needs %s magazines.",
                                  (gulong)load->magazines),
                       magazine_count);
  return g_strconcat (holds, " ", needs, NULL);
}

static char *
dup_line (DrawlShot *shot, const DrawlReason *reason)
{
  if (reason != NULL) {
    g_autofree char *text = drawl_reason_text (reason, drawl_shot_get_question (shot));
    return g_strdup_printf (C_ ("a reason as a sentence", "%s."), text);
  }
  if (!drawl_shot_get_load (shot)->known)
    return g_strdup (_ ("Choose body, size and codec, and it shows here."));
  return is_film (shot) ? dup_magazine_line (shot) : dup_card_line (shot);
}

/* ---- Details ---- */

static void
fill_rows (DrawlCardAnswer *self, DrawlPlan *plan, DrawlShot *shot)
{
  for (guint i = 0; i < N_ROWS; i++) {
    DrawlFigureButton *value = DRAWL_FIGURE_BUTTON (self->values[i]);
    gboolean known = drawl_figure_button_set_shot (value, plan, shot);
    gtk_widget_set_visible (self->names[i], known);
    if (known)
      gtk_label_set_text (GTK_LABEL (self->names[i]), drawl_figure_button_get_name (value));
  }
}

static void
fill_guarantee (DrawlCardAnswer *self, DrawlShot *shot)
{
  const DrawlBody *body = drawl_shot_get_question (shot)->body;
  int card = drawl_shot_get_check (shot)->card;
  gboolean known = card >= 0 && drawl_shot_get_load (shot)->known && !is_film (shot) &&
                   body->cards[card].write_bytes_s > 0;

  gtk_widget_set_visible (self->guarantee_name, known);
  gtk_widget_set_visible (self->guarantee, known);
  if (!known)
    return;
  g_autofree char *rate =
      drawl_figure_bytes_rate (drawl_rational_whole (body->cards[card].write_bytes_s));
  gtk_label_set_text (GTK_LABEL (self->guarantee), rate);
}

static void
fill_strip (DrawlCardAnswer *self, DrawlPlan *plan, DrawlShot *shot)
{
  drawl_cardstrip_data_from_plan (&self->strip_data, plan, shot);
  g_autofree char *words = drawl_cardstrip_text (&self->strip_data);
  gboolean known = self->strip_data.problem == NULL;

  gtk_widget_set_visible (self->strip, known);
  gtk_widget_set_visible (self->strip_words, known);
  gtk_label_set_text (GTK_LABEL (self->strip_words), words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->strip), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  words, -1);
  gtk_widget_queue_draw (self->strip);
}

static void
draw_strip (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  DrawlCardAnswer *self = DRAWL_CARD_ANSWER (data);
  DrawlStyle style;

  if (drawl_answer_card_get_shot (DRAWL_ANSWER_CARD (self)) == NULL)
    return;
  drawl_theme_style (GTK_WIDGET (area), &style);
  drawl_cardstrip_draw (cr, &self->strip_data, &style, width, height);
}

static void
drawl_card_answer_refresh (DrawlAnswerCard *card, DrawlPlan *plan, DrawlShot *shot)
{
  DrawlCardAnswer *self = DRAWL_CARD_ANSWER (card);
  const DrawlReason *reason = find_reason (drawl_shot_get_check (shot));
  g_autofree char *line = dup_line (shot, reason);
  gboolean on_card =
      drawl_figure_button_set_shot (DRAWL_FIGURE_BUTTON (self->card_time), plan, shot);
  gboolean on_film =
      drawl_figure_button_set_shot (DRAWL_FIGURE_BUTTON (self->magazine_time), plan, shot);

  drawl_answer_card_set_title (card, is_film (shot) ? _ ("Magazine") : _ ("Card"));
  drawl_answer_card_set_headline (card, on_card || on_film ? NULL : _ ("Not known yet"));
  drawl_answer_card_set_line (card, line);
  gtk_widget_set_visible (self->mark, reason != NULL);
  fill_rows (self, plan, shot);
  fill_guarantee (self, shot);
  fill_strip (self, plan, shot);
  drawl_answer_card_set_attention (card, reason != NULL);
}

/* ---- The widget ---- */

static void
drawl_card_answer_dispose (GObject *object)
{
  drawl_cardstrip_data_clear (&DRAWL_CARD_ANSWER (object)->strip_data);
  G_OBJECT_CLASS (drawl_card_answer_parent_class)->dispose (object);
}

static void
drawl_card_answer_class_init (DrawlCardAnswerClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = drawl_card_answer_dispose;
  DRAWL_ANSWER_CARD_CLASS (klass)->refresh = drawl_card_answer_refresh;
}

static GtkWidget *
make_name (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (label, "dim");
  return label;
}

static GtkWidget *
make_grid (DrawlCardAnswer *self)
{
  GtkWidget *grid = gtk_grid_new ();
  int row = 0;

  gtk_grid_set_column_spacing (GTK_GRID (grid), 12);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 2);
  for (guint i = 0; i < N_ROWS; i++) {
    self->names[i] = make_name (NULL);
    self->values[i] = drawl_figure_button_new (figures[i]);
    gtk_widget_set_halign (self->values[i], GTK_ALIGN_END);
    gtk_grid_attach (GTK_GRID (grid), self->names[i], 0, row, 1, 1);
    gtk_grid_attach (GTK_GRID (grid), self->values[i], 1, row++, 1, 1);
    if (figures[i] != DRAWL_FIGURE_DATA_RATE)
      continue;
    self->guarantee_name = make_name (_ ("Guaranteed by the card"));
    self->guarantee = gtk_label_new (NULL);
    gtk_widget_add_css_class (self->guarantee, "figure");
    gtk_widget_set_halign (self->guarantee, GTK_ALIGN_END);
    gtk_grid_attach (GTK_GRID (grid), self->guarantee_name, 0, row, 1, 1);
    gtk_grid_attach (GTK_GRID (grid), self->guarantee, 1, row++, 1, 1);
  }
  return grid;
}

static void
add_strip (DrawlCardAnswer *self)
{
  self->strip = g_object_new (GTK_TYPE_DRAWING_AREA, "accessible-role", GTK_ACCESSIBLE_ROLE_IMG,
                              "content-height", STRIP_HEIGHT, NULL);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->strip), draw_strip, self, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->strip), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Cards filling up"), -1);
  self->strip_words = make_name (NULL);
  gtk_widget_add_css_class (self->strip_words, "caption");
  drawl_answer_card_add_detail (DRAWL_ANSWER_CARD (self), self->strip);
  drawl_answer_card_add_detail (DRAWL_ANSWER_CARD (self), self->strip_words);
}

static void
drawl_card_answer_init (DrawlCardAnswer *self)
{
  DrawlAnswerCard *card = DRAWL_ANSWER_CARD (self);

  self->mark = gtk_image_new_from_icon_name ("dialog-warning-symbolic");
  gtk_widget_add_css_class (self->mark, "warning");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->mark), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Needs attention"), -1);
  drawl_answer_card_add_mark (card, self->mark);
  self->card_time = drawl_figure_button_new (DRAWL_FIGURE_CARD_TIME);
  self->magazine_time = drawl_figure_button_new (DRAWL_FIGURE_MAGAZINE);
  drawl_answer_card_add_headline_figure (card, self->card_time);
  drawl_answer_card_add_headline_figure (card, self->magazine_time);
  drawl_answer_card_add_detail (card, make_grid (self));
  add_strip (self);
}

GtkWidget *
drawl_card_answer_new (void)
{
  return g_object_new (DRAWL_TYPE_CARD_ANSWER, NULL);
}
