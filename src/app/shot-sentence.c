/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A shot as a sentence. Its blanks last as long as it does; the words between them are set anew
 * when another template fits better. The place of a blank in a template is its term; what happens
 * has a place of its own after the terms. */

#include "app/shot-sentence.h"

#include "app/kept-texts.h"
#include "app/sentence-layout.h"
#include "app/sentence-template.h"
#include "app/shot-edit.h"
#include "core/text.h"
#include "plan/sentence-text.h"

#define PLACE_WHAT DRAWL_TIMING_N_TERMS
#define N_PLACES (DRAWL_TIMING_N_TERMS + 1)

struct _DrawlShotSentence {
  GtkWidget parent_instance;
  DrawlPlan *plan;
  DrawlShot *shot;
  gulong changed_handler;
  DrawlKeptTexts *kept;
  GtkWidget *places[N_PLACES]; /* blanks by term, then the clause */
  GPtrArray *words;            /* labels between them */
  const char *template;        /* that the words were set from */
  const char *error;           /* of the first edit that has one; that edit's */
};

enum { PROP_ERROR = 1, N_PROPS };

static GParamSpec *props[N_PROPS];

G_DEFINE_FINAL_TYPE (DrawlShotSentence, drawl_shot_sentence, GTK_TYPE_WIDGET)

/* ---- The edits of all places ---- */

static DrawlEdit *
edit_at (DrawlShotSentence *self, guint place)
{
  return place == PLACE_WHAT ? drawl_clause_get_edit (DRAWL_CLAUSE (self->places[place]))
                             : drawl_blank_get_edit (DRAWL_BLANK (self->places[place]));
}

/* While something is wrong, the figures that follow stay as they were, and are greyed. */
static void
show_stale (DrawlShotSentence *self)
{
  for (guint term = 0; term < DRAWL_TIMING_N_TERMS; term++) {
    DrawlBlank *blank = DRAWL_BLANK (self->places[term]);
    gboolean well = drawl_edit_get_error (drawl_blank_get_edit (blank)) == NULL;
    drawl_blank_set_stale (blank, self->error != NULL && well && drawl_blank_get_follows (blank));
  }
}

static void
gather_errors (DrawlShotSentence *self)
{
  const char *error = NULL;

  for (guint place = 0; place < N_PLACES && error == NULL; place++)
    error = drawl_edit_get_error (edit_at (self, place));
  self->error = error;
  show_stale (self);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_ERROR]);
}

static void
commit_all (DrawlShotSentence *self)
{
  for (guint place = 0; place < N_PLACES; place++)
    drawl_edit_commit (edit_at (self, place));
}

/* Another shot comes: what can be taken is taken now, the rest waits until this one is back. */
static void
keep_typed (DrawlShotSentence *self)
{
  commit_all (self);
  for (guint place = 0; place < N_PLACES; place++)
    drawl_kept_texts_put (self->kept, self->shot, edit_at (self, place));
}

void
drawl_shot_sentence_restore (DrawlShotSentence *sentence)
{
  for (guint place = 0; place < N_PLACES; place++)
    drawl_edit_restore (edit_at (sentence, place));
}

/* ---- Words ---- */

static guint
wanted_places (gboolean with_post)
{
  guint all = (1u << N_PLACES) - 1;
  return with_post ? all : all & ~DRAWL_TIMING_BIT (DRAWL_TIMING_POST_SPEED);
}

static void
place_names (const char *names[N_PLACES])
{
  for (guint term = 0; term < DRAWL_TIMING_N_TERMS; term++)
    names[term] = drawl_term_words[term].place;
  names[PLACE_WHAT] = "what";
}

/* A translation that lost a place is not used: the blanks stand there without words. */
static GArray *
split_template (const char *template, gboolean with_post)
{
  const char *names[N_PLACES];
  const char *bare = with_post ? "{what}: {action} {capture} {playback} {factor} {post} {screen}"
                               : "{what}: {action} {capture} {playback} {screen} {factor}";
  GArray *pieces = NULL;

  place_names (names);
  if (!drawl_sentence_split (template, names, N_PLACES, wanted_places (with_post), &pieces))
    drawl_sentence_split (bare, names, N_PLACES, wanted_places (with_post), &pieces);
  return pieces;
}

static GtkWidget *
add_word (DrawlShotSentence *self, const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  g_ptr_array_add (self->words, label);
  return label;
}

static void
set_words (DrawlShotSentence *self, const char *template, gboolean with_post)
{
  g_autoptr (GArray) pieces = split_template (template, with_post);
  GtkWidget *parent = GTK_WIDGET (self), *before = NULL;

  g_ptr_array_set_size (self->words, 0);
  gtk_widget_set_visible (self->places[DRAWL_TIMING_POST_SPEED], with_post);
  for (guint i = 0; i < pieces->len; i++) {
    const DrawlSentencePiece *piece = &g_array_index (pieces, DrawlSentencePiece, i);
    GtkWidget *child =
        piece->place >= 0 ? self->places[piece->place] : add_word (self, piece->word);
    gtk_widget_insert_after (child, parent, before);
    drawl_sentence_layout_join (child, piece->joined, piece->spaced);
    before = child;
  }
  self->template = template;
}

static void
choose_words (DrawlShotSentence *self, const DrawlBlanks *blanks)
{
  gboolean with_post =
      !drawl_rational_equal (blanks->value[DRAWL_TIMING_POST_SPEED], drawl_rational_whole (100));
  const char *template = drawl_sentence_template (blanks->value);

  if (g_strcmp0 (template, self->template) != 0)
    set_words (self, template, with_post);
}

/* ---- What the shot says ---- */

static void
show_term (DrawlShotSentence *self, const DrawlBlanks *blanks, DrawlTimingTerm term)
{
  g_autofree char *number = drawl_term_number (term, blanks->value[term]);
  gboolean held = (blanks->held & DRAWL_TIMING_BIT (term)) != 0;
  gboolean drives = held || (blanks->given & DRAWL_TIMING_BIT (term)) != 0;
  g_autofree char *follows = drives ? NULL : drawl_term_follows_text (term, blanks->given);

  drawl_blank_show (DRAWL_BLANK (self->places[term]), number, held, follows);
}

static void
refresh (DrawlShotSentence *self)
{
  const DrawlShotFields *fields = drawl_shot_get_fields (self->shot);
  g_autofree char *summary = drawl_shot_dup_summary (self->shot);

  choose_words (self, &fields->blanks);
  for (guint term = 0; term < DRAWL_TIMING_N_TERMS; term++)
    show_term (self, &fields->blanks, term);
  drawl_edit_set_value (edit_at (self, PLACE_WHAT), fields->action);
  show_stale (self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  summary, -1);
}

/* ---- What is asked of the shot ---- */

static void
on_typed (DrawlShotSentence *self, const char *text, DrawlEdit *edit)
{
  DrawlBlank *blank = g_object_get_data (G_OBJECT (edit), "blank");
  DrawlTimingTerm term = drawl_blank_get_term (blank);
  g_autoptr (GError) error = NULL;
  DrawlRational present, value;

  if (self->shot == NULL)
    return;
  present = drawl_shot_get_fields (self->shot)->blanks.value[term];
  if (!drawl_term_read (term, present, text, &value, &error) ||
      !drawl_shot_edit_term (self->plan, self->shot, NULL, term, value, &error))
    drawl_edit_refuse_error (edit, error);
}

static void
on_step (DrawlShotSentence *self, int steps, DrawlBlank *blank)
{
  DrawlEdit *edit = drawl_blank_get_edit (blank);
  DrawlTimingTerm term = drawl_blank_get_term (blank);
  g_autoptr (GError) error = NULL;
  DrawlRational next;

  if (self->shot == NULL || !drawl_edit_commit (edit))
    return;
  if (!drawl_term_step (term, drawl_shot_get_fields (self->shot)->blanks.value[term],
                        drawl_shot_get_question (self->shot), steps, &next))
    return;
  if (!drawl_shot_edit_term (self->plan, self->shot, NULL, term, next, &error))
    drawl_edit_refuse_error (edit, error);
}

/* What was refused because of a hold may be taken once that is let go of. */
static void
on_hold (DrawlShotSentence *self, gboolean held, DrawlBlank *blank)
{
  if (self->shot == NULL)
    return;
  drawl_shot_edit_hold (self->plan, self->shot, drawl_blank_get_term (blank), held);
  commit_all (self);
}

static void
on_action_typed (DrawlShotSentence *self, const char *text, DrawlEdit *edit)
{
  g_autoptr (DrawlShotFields) fields = NULL;
  g_autoptr (GError) error = NULL;

  if (self->shot == NULL)
    return;
  fields = drawl_shot_fields_copy (drawl_shot_get_fields (self->shot));
  drawl_shot_fields_set (&fields->action, text);
  if (!drawl_plan_set_shot (self->plan, self->shot, fields, _ ("Change what happens"), &error))
    drawl_edit_refuse_error (edit, error);
}

/* ---- The widget ---- */

static void
drawl_shot_sentence_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  g_value_set_string (value, DRAWL_SHOT_SENTENCE (object)->error);
}

static void
leave_shot (DrawlShotSentence *self)
{
  g_clear_signal_handler (&self->changed_handler, self->shot);
  g_clear_object (&self->shot);
  g_clear_object (&self->plan);
}

static void
drawl_shot_sentence_dispose (GObject *object)
{
  DrawlShotSentence *self = DRAWL_SHOT_SENTENCE (object);
  GtkWidget *child;

  leave_shot (self);
  g_clear_pointer (&self->kept, drawl_kept_texts_free);
  g_clear_pointer (&self->words, g_ptr_array_unref);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (drawl_shot_sentence_parent_class)->dispose (object);
}

/* It begins with what happens, wherever the template of the language puts that. */
static gboolean
drawl_shot_sentence_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (DRAWL_SHOT_SENTENCE (widget)->places[PLACE_WHAT]);
}

/* In reading order: by where they stand, which is the way otherwise, a blank that is set a little
 * lower than its neighbours would come after the rest of its line. */
static gboolean
drawl_shot_sentence_focus (GtkWidget *widget, GtkDirectionType direction)
{
  gboolean on = direction == GTK_DIR_TAB_FORWARD;
  GtkWidget *child = gtk_widget_get_focus_child (widget);

  if (!on && direction != GTK_DIR_TAB_BACKWARD)
    return GTK_WIDGET_CLASS (drawl_shot_sentence_parent_class)->focus (widget, direction);
  if (child == NULL)
    child = on ? gtk_widget_get_first_child (widget) : gtk_widget_get_last_child (widget);
  while (child != NULL && !gtk_widget_child_focus (child, direction))
    child = on ? gtk_widget_get_next_sibling (child) : gtk_widget_get_prev_sibling (child);
  return child != NULL;
}

static void
drawl_shot_sentence_class_init (DrawlShotSentenceClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = drawl_shot_sentence_get_property;
  object_class->dispose = drawl_shot_sentence_dispose;
  widget_class->grab_focus = drawl_shot_sentence_grab_focus;
  widget_class->focus = drawl_shot_sentence_focus;
  gtk_widget_class_set_css_name (widget_class, "sentence");
  gtk_widget_class_set_layout_manager_type (widget_class, DRAWL_TYPE_SENTENCE_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);

  props[PROP_ERROR] =
      g_param_spec_string ("error", NULL, NULL, NULL,
                           G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
add_place (DrawlShotSentence *self, guint place, GtkWidget *child)
{
  self->places[place] = child;
  gtk_widget_set_parent (child, GTK_WIDGET (self));
  g_signal_connect_object (edit_at (self, place), "notify::error", G_CALLBACK (gather_errors), self,
                           G_CONNECT_SWAPPED);
}

static void
add_blank (DrawlShotSentence *self, DrawlTimingTerm term)
{
  GtkWidget *blank = drawl_blank_new (term);
  DrawlEdit *edit = drawl_blank_get_edit (DRAWL_BLANK (blank));

  add_place (self, term, blank);
  g_object_set_data (G_OBJECT (edit), "blank", blank);
  g_signal_connect_object (edit, "commit", G_CALLBACK (on_typed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (blank, "step", G_CALLBACK (on_step), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (blank, "hold", G_CALLBACK (on_hold), self, G_CONNECT_SWAPPED);
}

static void
drawl_shot_sentence_init (DrawlShotSentence *self)
{
  self->words = g_ptr_array_new_with_free_func ((GDestroyNotify)gtk_widget_unparent);
  self->kept = drawl_kept_texts_new ();
  add_place (self, PLACE_WHAT, drawl_clause_new ());
  g_signal_connect_object (edit_at (self, PLACE_WHAT), "commit", G_CALLBACK (on_action_typed), self,
                           G_CONNECT_SWAPPED);
  for (guint term = 0; term < DRAWL_TIMING_N_TERMS; term++)
    add_blank (self, term);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Sentence"), -1);
}

void
drawl_shot_sentence_set_shot (DrawlShotSentence *sentence, DrawlPlan *plan, DrawlShot *shot)
{
  if (sentence->shot == shot && sentence->plan == plan)
    return;
  if (sentence->shot != NULL)
    keep_typed (sentence);
  leave_shot (sentence);
  if (shot == NULL)
    return;
  sentence->plan = g_object_ref (plan);
  sentence->shot = g_object_ref (shot);
  sentence->changed_handler =
      g_signal_connect_swapped (shot, "changed", G_CALLBACK (refresh), sentence);
  refresh (sentence);
  drawl_kept_texts_bring_back (sentence->kept, plan, shot);
}

const char *
drawl_shot_sentence_get_error (DrawlShotSentence *sentence)
{
  return sentence->error;
}

DrawlBlank *
drawl_shot_sentence_get_blank (DrawlShotSentence *sentence, DrawlTimingTerm term)
{
  return DRAWL_BLANK (sentence->places[term]);
}

DrawlClause *
drawl_shot_sentence_get_clause (DrawlShotSentence *sentence)
{
  return DRAWL_CLAUSE (sentence->places[PLACE_WHAT]);
}
