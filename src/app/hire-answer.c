/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The answer about hire. Its lists are made anew whenever the plan changes; a button in them hands
 * one edit to the plan, which then changes. The first thing that would help is always in sight: the
 * cheapest set of licences, or else a way to shoot it without. */

#include "app/hire-answer.h"

#include "app/message.h"
#include "app/shot-edit.h"
#include "app/verdict-mark.h"
#include "core/text.h"

struct _DrawlHireAnswer {
  DrawlAnswerCard parent_instance;
  GtkWidget *mark;
  GtkWidget *price;       /* figure button: the cheapest set */
  GtkWidget *remedy;      /* box: the first thing that would help */
  GtkWidget *reasons;     /* box */
  GtkWidget *other_sets;  /* box */
  GtkWidget *fallbacks;   /* box */
  GtkWidget *hired_with;  /* label */
  GtkWidget *error_label; /* why a button did nothing */
};

#define LINE_CHARS 26 /* in which words like to be set */

G_DEFINE_FINAL_TYPE (DrawlHireAnswer, drawl_hire_answer, DRAWL_TYPE_ANSWER_CARD)

/* ---- What the buttons do ---- */

static void
finish (DrawlHireAnswer *self, const GError *error)
{
  g_autofree char *words = error != NULL ? drawl_message_sentence (error) : NULL;

  gtk_label_set_text (GTK_LABEL (self->error_label), words != NULL ? words : "");
  gtk_widget_set_visible (self->error_label, words != NULL);
  /* The button is gone if it did its work; the keyboard goes on from the card. */
  if (error == NULL)
    gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_FORWARD);
}

static void
on_hire (DrawlHireAnswer *self, GtkButton *button)
{
  DrawlAnswerCard *card = DRAWL_ANSWER_CARD (self);
  DrawlTier *add = g_object_get_data (G_OBJECT (button), "add");
  g_autoptr (GError) error = NULL;

  drawl_shot_edit_hire (drawl_answer_card_get_plan (card), drawl_answer_card_get_shot (card), *add,
                        &error);
  finish (self, error);
}

static void
on_fall_back (DrawlHireAnswer *self, GtkButton *button)
{
  DrawlAnswerCard *card = DRAWL_ANSWER_CARD (self);
  DrawlFallback *fallback = g_object_get_data (G_OBJECT (button), "fallback");
  g_autoptr (GError) error = NULL;

  drawl_shot_edit_fallback (drawl_answer_card_get_plan (card), drawl_answer_card_get_shot (card),
                            fallback, &error);
  finish (self, error);
}

/* ---- Parts ---- */

static GtkWidget *
make_label (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_max_width_chars (GTK_LABEL (label), LINE_CHARS);
  return label;
}

/* Words with a button at their end; @button may be NULL. */
static GtkWidget *
make_row (const char *text, GtkWidget *button)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *label = make_label (text);

  gtk_widget_set_hexpand (label, TRUE);
  gtk_box_append (GTK_BOX (row), label);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (row), button);
  return row;
}

/* A heading over a box, which both hide while there is nothing to say. */
static GtkWidget *
add_section (DrawlHireAnswer *self, const char *title)
{
  GtkWidget *section = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *heading = make_label (title);

  gtk_widget_add_css_class (heading, "caption-heading");
  gtk_widget_add_css_class (heading, "dim");
  gtk_box_append (GTK_BOX (section), heading);
  gtk_box_append (GTK_BOX (section), box);
  drawl_answer_card_add_detail (DRAWL_ANSWER_CARD (self), section);
  return box;
}

static void
empty_box (GtkWidget *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (box)) != NULL)
    gtk_box_remove (GTK_BOX (box), child);
}

static void
show_section (GtkWidget *box)
{
  gtk_widget_set_visible (gtk_widget_get_parent (box), gtk_widget_get_first_child (box) != NULL);
}

/* A button that carries what it does; its name says it in full to those who do not see the row. */
static GtkWidget *
make_button (DrawlHireAnswer *self, const char *label, const char *what, const char *key,
             gpointer data, GCallback clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);
  /* Translators: a button read aloud: what it does, and for what. */
  g_autofree char *spoken = g_strdup_printf (_ ("%s: %s"), label, what);

  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken,
                                  -1);
  g_object_set_data_full (G_OBJECT (button), key, data, g_free);
  g_signal_connect_object (button, "clicked", clicked, self, G_CONNECT_SWAPPED);
  return button;
}

/* ---- Filling ---- */

static void
fill_reasons (DrawlHireAnswer *self, const DrawlCheck *check, const DrawlCheckQuestion *question)
{
  empty_box (self->reasons);
  for (guint i = 0; i < check->n_reasons; i++) {
    g_autofree char *text = drawl_reason_text (&check->reasons[i], question);
    /* The first stands on the card already. */
    if (i > 0)
      gtk_box_append (GTK_BOX (self->reasons), make_label (text));
  }
  show_section (self->reasons);
}

static GtkWidget *
make_set_button (DrawlHireAnswer *self, const DrawlLicenceSet *set, const char *text)
{
  return make_button (self, _ ("Hire It"), text, "add", g_memdup2 (&set->add, sizeof set->add),
                      G_CALLBACK (on_hire));
}

/* The headline has named the set already. */
static void
add_remedy (DrawlHireAnswer *self, GtkWidget *button)
{
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (self->remedy), button);
}

static void
fill_sets (DrawlHireAnswer *self, const DrawlCheck *check, const DrawlBody *body)
{
  empty_box (self->other_sets);
  for (guint i = 0; check->sets != NULL && i < check->sets->len; i++) {
    const DrawlLicenceSet *set = &g_array_index (check->sets, DrawlLicenceSet, i);
    g_autofree char *text = drawl_licence_set_text (set, body);
    GtkWidget *button = make_set_button (self, set, text);
    if (i == 0)
      add_remedy (self, button);
    else
      gtk_box_append (GTK_BOX (self->other_sets), make_row (text, button));
  }
  show_section (self->other_sets);
}

static void
add_fallback (DrawlHireAnswer *self, const DrawlFallback *fallback, const DrawlBody *body,
              const char *what)
{
  g_autofree char *setting = drawl_fallback_text (fallback, body);

  if (setting == NULL)
    return;
  /* Translators: what is kept, and how it is then shot: "Same size: 120 fps at 3840 × 2160 in …".
   */
  g_autofree char *text = g_strdup_printf (_ ("%s: %s"), what, setting);
  GtkWidget *button =
      make_button (self, _ ("Shoot It So"), text, "fallback",
                   g_memdup2 (fallback, sizeof *fallback), G_CALLBACK (on_fall_back));
  gboolean first = gtk_widget_get_first_child (self->remedy) == NULL;
  gtk_box_append (GTK_BOX (first ? self->remedy : self->fallbacks), make_row (text, button));
}

static void
fill_fallbacks (DrawlHireAnswer *self, const DrawlCheck *check, const DrawlBody *body)
{
  static const char *const kept[DRAWL_N_KEEPS] = {N_ ("Same size"), N_ ("Same rate"),
                                                  N_ ("Same size and rate"), N_ ("Nearest")};

  empty_box (self->fallbacks);
  if (check->verdict != DRAWL_VERDICT_AS_HIRED && body != NULL) {
    for (guint i = 0; i < DRAWL_N_KEEPS; i++)
      add_fallback (self, &check->fallbacks[i], body, _ (kept[i]));
  }
  show_section (self->fallbacks);
}

static void
fill_hired_with (DrawlHireAnswer *self, const DrawlCheckQuestion *question)
{
  const DrawlBody *body = question->body;
  gboolean any = body != NULL && body->n_licences > 0;

  gtk_widget_set_visible (gtk_widget_get_parent (self->hired_with), any);
  if (!any)
    return;
  g_autofree char *names =
      question->tier != 0 ? drawl_body_tier_names (body, question->tier) : NULL;
  gtk_label_set_text (GTK_LABEL (self->hired_with),
                      names != NULL ? names : _ ("The body alone, without a licence"));
}

/* The line of plain words: why not, or that all is well. */
static char *
dup_line (DrawlPlan *plan, DrawlShot *shot)
{
  const DrawlCheck *check = drawl_shot_get_check (shot);
  DrawlHiredBody *hired = drawl_plan_find_body (plan, drawl_shot_get_fields (shot)->body);

  if (check->n_reasons > 0) {
    g_autofree char *reason =
        drawl_reason_text (&check->reasons[0], drawl_shot_get_question (shot));
    return g_strdup_printf (C_ ("a reason as a sentence", "%s."), reason);
  }
  if (hired == NULL)
    return g_strdup ("");
  g_autofree char *name = drawl_hired_body_dup_name (hired);
  return g_strdup_printf (_ ("%s does it as it is hired."), name);
}

static void
drawl_hire_answer_refresh (DrawlAnswerCard *card, DrawlPlan *plan, DrawlShot *shot)
{
  DrawlHireAnswer *self = DRAWL_HIRE_ANSWER (card);
  const DrawlCheck *check = drawl_shot_get_check (shot);
  const DrawlCheckQuestion *question = drawl_shot_get_question (shot);
  g_autofree char *line = dup_line (plan, shot);
  gboolean priced = drawl_figure_button_set_shot (DRAWL_FIGURE_BUTTON (self->price), plan, shot);
  static const char *const headlines[DRAWL_N_VERDICTS] = {
      [DRAWL_VERDICT_AS_HIRED] = N_ ("As hired"),
      [DRAWL_VERDICT_NEEDS_LICENCE] = N_ ("Needs a licence"),
      [DRAWL_VERDICT_NOT_ON_THIS_BODY] = N_ ("Not on this body"),
  };

  drawl_verdict_mark_set_verdict (DRAWL_VERDICT_MARK (self->mark), check->verdict);
  drawl_answer_card_set_headline (card, priced ? NULL : _ (headlines[check->verdict]));
  drawl_answer_card_set_line (card, line);
  gtk_widget_set_visible (self->error_label, FALSE);
  empty_box (self->remedy);
  fill_reasons (self, check, question);
  fill_sets (self, check, question->body);
  fill_fallbacks (self, check, question->body);
  fill_hired_with (self, question);
  drawl_answer_card_set_attention (card, check->verdict != DRAWL_VERDICT_AS_HIRED);
}

static void
drawl_hire_answer_class_init (DrawlHireAnswerClass *klass)
{
  DRAWL_ANSWER_CARD_CLASS (klass)->refresh = drawl_hire_answer_refresh;
}

static void
drawl_hire_answer_init (DrawlHireAnswer *self)
{
  DrawlAnswerCard *card = DRAWL_ANSWER_CARD (self);

  drawl_answer_card_set_title (card, _ ("Hire"));
  self->mark = drawl_verdict_mark_new ();
  drawl_verdict_mark_set_show_name (DRAWL_VERDICT_MARK (self->mark), TRUE);
  drawl_answer_card_add_mark (card, self->mark);
  self->price = drawl_figure_button_new (DRAWL_FIGURE_LICENCES);
  drawl_answer_card_add_headline_figure (card, self->price);

  self->remedy = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_widget_set_margin_top (self->remedy, 6);
  drawl_answer_card_add_action (card, self->remedy);
  self->error_label = make_label (NULL);
  gtk_widget_add_css_class (self->error_label, "error");
  drawl_answer_card_add_action (card, self->error_label);

  self->reasons = add_section (self, _ ("And"));
  self->other_sets = add_section (self, _ ("Or hire"));
  self->fallbacks = add_section (self, _ ("Without it"));
  self->hired_with = make_label (NULL);
  gtk_box_append (GTK_BOX (add_section (self, _ ("Hired with"))), self->hired_with);
}

GtkWidget *
drawl_hire_answer_new (void)
{
  return g_object_new (DRAWL_TYPE_HIRE_ANSWER, NULL);
}
