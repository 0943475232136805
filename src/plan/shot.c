/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A shot: its fields and what follows from them. Invariant: between calls from the plan, timing,
 * question, check and load all belong to the fields and to the hired body that the plan worked them
 * out against. Views hear of new fields only once the figures are new as well. */

#include "plan/shot.h"

#include "core/text.h"
#include "plan/figure.h"
#include "plan/hired-body.h"
#include "plan/shot-load.h"

enum { PROP_SLATE = 1, PROP_SCENE, PROP_ACTION, PROP_SUMMARY, PROP_VERDICT, PROP_MUST, N_PROPS };

static GParamSpec *props[N_PROPS];
static guint changed_signal;

struct _DrawlShot {
  GObject parent_instance;
  DrawlShotFields *fields;
  guint64 stamp;      /* of the fields */
  DrawlTiming timing; /* follows from the fields alone, as do the next two */
  DrawlRational take_s;
  gint64 take_frames;
  DrawlCheckQuestion question;
  DrawlBody *body; /* of the question, kept alive */
  DrawlCheck check;
  DrawlShotLoad load;
  guint news; /* bits of the properties to be notified once all is worked out */
};

G_DEFINE_FINAL_TYPE (DrawlShot, drawl_shot, G_TYPE_OBJECT)

static void
drawl_shot_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  DrawlShot *self = DRAWL_SHOT (object);

  switch (prop_id) {
  case PROP_SLATE:
    g_value_set_string (value, self->fields->slate);
    break;
  case PROP_SCENE:
    g_value_set_string (value, self->fields->scene);
    break;
  case PROP_ACTION:
    g_value_set_string (value, self->fields->action);
    break;
  case PROP_SUMMARY:
    g_value_take_string (value, drawl_shot_dup_summary (self));
    break;
  case PROP_VERDICT:
    g_value_set_enum (value, self->check.verdict);
    break;
  case PROP_MUST:
    g_value_set_boolean (value, self->fields->must);
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
  }
}

static void
drawl_shot_finalize (GObject *object)
{
  DrawlShot *self = DRAWL_SHOT (object);

  drawl_check_clear (&self->check);
  g_clear_pointer (&self->body, drawl_body_unref);
  drawl_shot_fields_free (self->fields);
  G_OBJECT_CLASS (drawl_shot_parent_class)->finalize (object);
}

static void
drawl_shot_class_init (DrawlShotClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GParamFlags flags = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;

  object_class->get_property = drawl_shot_get_property;
  object_class->finalize = drawl_shot_finalize;

  props[PROP_SLATE] = g_param_spec_string ("slate", NULL, NULL, NULL, flags);
  props[PROP_SCENE] = g_param_spec_string ("scene", NULL, NULL, NULL, flags);
  props[PROP_ACTION] = g_param_spec_string ("action", NULL, NULL, NULL, flags);
  props[PROP_SUMMARY] = g_param_spec_string ("summary", NULL, NULL, NULL, flags);
  props[PROP_VERDICT] = g_param_spec_enum ("verdict", NULL, NULL, DRAWL_TYPE_VERDICT,
                                           DRAWL_VERDICT_NOT_ON_THIS_BODY, flags);
  props[PROP_MUST] = g_param_spec_boolean ("must", NULL, NULL, TRUE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
}

static void
drawl_shot_init (DrawlShot *self)
{
}

/* Plans may be read in several threads at once. */
static guint64
next_stamp (void)
{
  static GMutex lock;
  static guint64 last;

  g_mutex_lock (&lock);
  guint64 stamp = ++last;
  g_mutex_unlock (&lock);
  return stamp;
}

static void
own_fields (DrawlShot *shot, DrawlShotFields *fields)
{
  shot->fields = fields;
  shot->stamp = next_stamp ();
  drawl_blanks_timing (&fields->blanks, &shot->timing, NULL);
  drawl_shot_fields_take (fields, &shot->take_s, &shot->take_frames);
}

DrawlShot *
drawl_shot_new (const DrawlShotFields *fields)
{
  DrawlShot *self = drawl_shot_new_bare (drawl_shot_fields_copy (fields));

  drawl_shot_recompute (self, NULL, drawl_rational_whole (0), FALSE);
  return self;
}

DrawlShot *
drawl_shot_new_bare (DrawlShotFields *fields)
{
  DrawlShot *self = g_object_new (DRAWL_TYPE_SHOT, NULL);

  own_fields (self, fields);
  return self;
}

const DrawlShotFields *
drawl_shot_get_fields (DrawlShot *shot)
{
  return shot->fields;
}

guint64
drawl_shot_get_stamp (DrawlShot *shot)
{
  return shot->stamp;
}

const DrawlTiming *
drawl_shot_get_timing (DrawlShot *shot)
{
  return &shot->timing;
}

const DrawlCheck *
drawl_shot_get_check (DrawlShot *shot)
{
  return &shot->check;
}

const DrawlCheckQuestion *
drawl_shot_get_question (DrawlShot *shot)
{
  return &shot->question;
}

const DrawlShotLoad *
drawl_shot_get_load (DrawlShot *shot)
{
  return &shot->load;
}

const char *
drawl_shot_get_slate (DrawlShot *shot)
{
  return shot->fields->slate;
}

DrawlVerdict
drawl_shot_get_verdict (DrawlShot *shot)
{
  return shot->check.verdict;
}

/* "10× slower", "2× faster", "real time": screen time against action time, post speed and all. */
static char *
dup_slowness (const DrawlTiming *timing)
{
  DrawlRational action = timing->value[DRAWL_TIMING_ACTION];
  DrawlRational screen = timing->value[DRAWL_TIMING_SCREEN];
  int order = drawl_rational_compare (screen, action);
  DrawlRational ratio;

  if (order == 0 ||
      !drawl_rational_div (order > 0 ? screen : action, order > 0 ? action : screen, &ratio))
    return g_strdup (_ ("real time"));
  g_autofree char *factor = drawl_figure_factor (ratio);
  return g_strdup_printf (order > 0 ? _ ("%s slower") : _ ("%s faster"), factor);
}

char *
drawl_shot_dup_summary (DrawlShot *shot)
{
  const DrawlRational *value = shot->timing.value;
  g_autofree char *action = drawl_figure_time (value[DRAWL_TIMING_ACTION]);
  g_autofree char *rate = drawl_figure_rate (value[DRAWL_TIMING_CAPTURE]);
  g_autofree char *screen = drawl_figure_time (value[DRAWL_TIMING_SCREEN]);
  g_autofree char *slowness = dup_slowness (&shot->timing);

  /* Translators: action time, capture rate, screen time, "10× slower". */
  return g_strdup_printf (_ ("%s at %s, %s on screen, %s"), action, rate, screen, slowness);
}

static guint
news_of (const DrawlShotFields *old, const DrawlShotFields *fields)
{
  guint news = 0;

  if (!g_str_equal (old->slate, fields->slate))
    news |= 1u << PROP_SLATE;
  if (!g_str_equal (old->scene, fields->scene))
    news |= 1u << PROP_SCENE;
  if (!g_str_equal (old->action, fields->action))
    news |= 1u << PROP_ACTION;
  if (!drawl_blanks_equal (&old->blanks, &fields->blanks))
    news |= 1u << PROP_SUMMARY;
  if (old->must != fields->must)
    news |= 1u << PROP_MUST;
  return news;
}

void
drawl_shot_take_fields (DrawlShot *shot, const DrawlShotFields *fields)
{
  g_autoptr (DrawlShotFields) old = g_steal_pointer (&shot->fields);

  own_fields (shot, drawl_shot_fields_copy (fields));
  shot->news |= news_of (old, fields);
}

static void
ask (DrawlShot *shot, DrawlHiredBody *hired, DrawlRational reserve_percent)
{
  const DrawlHiredFields *as_hired = hired != NULL ? drawl_hired_body_get_fields (hired) : NULL;
  DrawlBody *body = hired != NULL ? as_hired->body : NULL;

  shot->question = (DrawlCheckQuestion){
      .body = body,
      .tier = hired != NULL ? as_hired->tier : 0,
      .card = hired != NULL ? as_hired->card : -1,
      .size = hired != NULL ? drawl_body_size_index (body, shot->fields->size) : -1,
      .codec = hired != NULL ? drawl_body_codec_index (body, shot->fields->codec) : -1,
      .rate = shot->fields->blanks.value[DRAWL_TIMING_CAPTURE],
      .take_s = shot->take_s,
      .take_frames = shot->take_frames,
      .audio_tracks = shot->fields->audio_tracks,
      .reserve_percent = reserve_percent,
  };
  if (shot->body != body) {
    g_clear_pointer (&shot->body, drawl_body_unref);
    shot->body = hired != NULL ? drawl_body_ref (body) : NULL;
  }
}

static void
tell (DrawlShot *shot)
{
  guint news = shot->news;

  shot->news = 0;
  if (news != 0) {
    g_object_freeze_notify (G_OBJECT (shot));
    for (guint prop = 1; prop < N_PROPS; prop++)
      if ((news & (1u << prop)) != 0)
        g_object_notify_by_pspec (G_OBJECT (shot), props[prop]);
    g_object_thaw_notify (G_OBJECT (shot));
  }
  g_signal_emit (shot, changed_signal, 0);
}

void
drawl_shot_recompute (DrawlShot *shot, DrawlHiredBody *hired, DrawlRational reserve_percent,
                      gboolean takes_span)
{
  DrawlVerdict before = shot->check.verdict;

  ask (shot, hired, reserve_percent);
  drawl_check_run (&shot->question, &shot->check);
  drawl_shot_load_reckon (&shot->load, &shot->question, &shot->check, shot->fields->takes,
                          takes_span);
  if (shot->check.verdict != before)
    shot->news |= 1u << PROP_VERDICT;
  tell (shot);
}
