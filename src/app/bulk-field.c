/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The fields of many shots. Rates go through the solver of each shot, so that what is held there
 * stays, or is what stands in the way. */

#include "app/bulk-field.h"

#include "app/shot-edit.h"
#include "app/shot-entries.h"
#include "app/term.h"
#include "core/text.h"

/* ---- Rates ---- */

static gboolean
same_capture (const DrawlShotFields *a, const DrawlShotFields *b)
{
  return drawl_rational_equal (a->blanks.value[DRAWL_TIMING_CAPTURE],
                               b->blanks.value[DRAWL_TIMING_CAPTURE]);
}

static char *
show_capture (const DrawlShotFields *fields)
{
  return drawl_term_number (DRAWL_TIMING_CAPTURE, fields->blanks.value[DRAWL_TIMING_CAPTURE]);
}

static gboolean
take_term (DrawlShotFields *fields, DrawlTimingTerm term, const char *text, GError **error)
{
  DrawlRational value;

  return drawl_timing_term_parse (term, text, &value, error) &&
         drawl_shot_edit_set_term (fields, term, value, error);
}

static gboolean
take_capture (DrawlShotFields *fields, DrawlPlan *plan, const char *text, GError **error)
{
  return take_term (fields, DRAWL_TIMING_CAPTURE, text, error);
}

static const char *
label_capture (gulong n)
{
  return ngettext_ ("Change Capture Rate of %s Shot", "Change Capture Rate of %s Shots", n);
}

static gboolean
same_playback (const DrawlShotFields *a, const DrawlShotFields *b)
{
  return drawl_rational_equal (a->blanks.value[DRAWL_TIMING_PLAYBACK],
                               b->blanks.value[DRAWL_TIMING_PLAYBACK]);
}

static char *
show_playback (const DrawlShotFields *fields)
{
  return drawl_term_number (DRAWL_TIMING_PLAYBACK, fields->blanks.value[DRAWL_TIMING_PLAYBACK]);
}

static gboolean
take_playback (DrawlShotFields *fields, DrawlPlan *plan, const char *text, GError **error)
{
  return take_term (fields, DRAWL_TIMING_PLAYBACK, text, error);
}

static const char *
label_playback (gulong n)
{
  return ngettext_ ("Change Playback Rate of %s Shot", "Change Playback Rate of %s Shots", n);
}

/* ---- What the details of a shot can be given as well ---- */

static const DrawlShotEntry *
entry_of (const char *id)
{
  guint i = 0;

  while (!g_str_equal (drawl_shot_entries[i].id, id))
    i++;
  return &drawl_shot_entries[i];
}

static gboolean
same_takes (const DrawlShotFields *a, const DrawlShotFields *b)
{
  return a->takes == b->takes;
}

static char *
show_takes (const DrawlShotFields *fields)
{
  return entry_of ("takes_row")->show (fields);
}

static gboolean
take_takes (DrawlShotFields *fields, DrawlPlan *plan, const char *text, GError **error)
{
  return entry_of ("takes_row")->take (fields, text, error);
}

static const char *
label_takes (gulong n)
{
  return ngettext_ ("Change Takes of %s Shot", "Change Takes of %s Shots", n);
}

static gboolean
same_before (const DrawlShotFields *a, const DrawlShotFields *b)
{
  return drawl_rational_equal (a->handle_before_s, b->handle_before_s);
}

static char *
show_before (const DrawlShotFields *fields)
{
  return entry_of ("before_row")->show (fields);
}

static gboolean
take_before (DrawlShotFields *fields, DrawlPlan *plan, const char *text, GError **error)
{
  return entry_of ("before_row")->take (fields, text, error);
}

static const char *
label_before (gulong n)
{
  return ngettext_ ("Change Handle Before of %s Shot", "Change Handle Before of %s Shots", n);
}

static gboolean
same_after (const DrawlShotFields *a, const DrawlShotFields *b)
{
  return drawl_rational_equal (a->handle_after_s, b->handle_after_s);
}

static char *
show_after (const DrawlShotFields *fields)
{
  return entry_of ("after_row")->show (fields);
}

static gboolean
take_after (DrawlShotFields *fields, DrawlPlan *plan, const char *text, GError **error)
{
  return entry_of ("after_row")->take (fields, text, error);
}

static const char *
label_after (gulong n)
{
  return ngettext_ ("Change Handle After of %s Shot", "Change Handle After of %s Shots", n);
}

static gboolean
same_audio (const DrawlShotFields *a, const DrawlShotFields *b)
{
  return a->audio_tracks == b->audio_tracks;
}

static char *
show_audio (const DrawlShotFields *fields)
{
  return entry_of ("audio_row")->show (fields);
}

static gboolean
take_audio (DrawlShotFields *fields, DrawlPlan *plan, const char *text, GError **error)
{
  return entry_of ("audio_row")->take (fields, text, error);
}

static const char *
label_audio (gulong n)
{
  return ngettext_ ("Change Audio Tracks of %s Shot", "Change Audio Tracks of %s Shots", n);
}

static gboolean
same_scene (const DrawlShotFields *a, const DrawlShotFields *b)
{
  return g_str_equal (a->scene, b->scene);
}

static char *
show_scene (const DrawlShotFields *fields)
{
  return g_strdup (fields->scene);
}

static gboolean
take_scene (DrawlShotFields *fields, DrawlPlan *plan, const char *text, GError **error)
{
  return entry_of ("scene_row")->take (fields, text, error);
}

static const char *
label_scene (gulong n)
{
  return ngettext_ ("Change Scene of %s Shot", "Change Scene of %s Shots", n);
}

/* ---- What is chosen ---- */

static gboolean
same_must (const DrawlShotFields *a, const DrawlShotFields *b)
{
  return a->must == b->must;
}

static char *
show_must (const DrawlShotFields *fields)
{
  return g_strdup (fields->must ? "must" : "wished");
}

static gboolean
take_must (DrawlShotFields *fields, DrawlPlan *plan, const char *text, GError **error)
{
  fields->must = g_str_equal (text, "must");
  return TRUE;
}

static const char *
label_must (gulong n)
{
  return ngettext_ ("Change Must or Wish of %s Shot", "Change Must or Wish of %s Shots", n);
}

static gboolean
same_body (const DrawlShotFields *a, const DrawlShotFields *b)
{
  return g_str_equal (a->body, b->body);
}

static char *
show_body (const DrawlShotFields *fields)
{
  return g_strdup (fields->body);
}

static gboolean
take_body (DrawlShotFields *fields, DrawlPlan *plan, const char *text, GError **error)
{
  drawl_shot_edit_set_body (fields, plan, text);
  return TRUE;
}

static const char *
label_body (gulong n)
{
  return ngettext_ ("Change Body of %s Shot", "Change Body of %s Shots", n);
}

static gboolean
same_size (const DrawlShotFields *a, const DrawlShotFields *b)
{
  return g_str_equal (a->size, b->size);
}

static char *
show_size (const DrawlShotFields *fields)
{
  return g_strdup (fields->size);
}

static gboolean
take_size (DrawlShotFields *fields, DrawlPlan *plan, const char *text, GError **error)
{
  drawl_shot_edit_set_size (fields, plan, text);
  return TRUE;
}

static const char *
label_size (gulong n)
{
  return ngettext_ ("Change Size of %s Shot", "Change Size of %s Shots", n);
}

static gboolean
same_codec (const DrawlShotFields *a, const DrawlShotFields *b)
{
  return g_str_equal (a->codec, b->codec);
}

static char *
show_codec (const DrawlShotFields *fields)
{
  return g_strdup (fields->codec);
}

static gboolean
take_codec (DrawlShotFields *fields, DrawlPlan *plan, const char *text, GError **error)
{
  drawl_shot_fields_set (&fields->codec, text);
  return TRUE;
}

static const char *
label_codec (gulong n)
{
  return ngettext_ ("Change Codec of %s Shot", "Change Codec of %s Shots", n);
}

#define ROW(id, name) [id] = {#name "_row", same_##name, show_##name, take_##name, label_##name}

const DrawlBulkField drawl_bulk_fields[DRAWL_N_BULK_FIELDS] = {
    ROW (DRAWL_BULK_CAPTURE, capture), ROW (DRAWL_BULK_PLAYBACK, playback),
    ROW (DRAWL_BULK_TAKES, takes),     ROW (DRAWL_BULK_BEFORE, before),
    ROW (DRAWL_BULK_AFTER, after),     ROW (DRAWL_BULK_AUDIO, audio),
    ROW (DRAWL_BULK_SCENE, scene),     ROW (DRAWL_BULK_MUST, must),
    ROW (DRAWL_BULK_BODY, body),       ROW (DRAWL_BULK_SIZE, size),
    ROW (DRAWL_BULK_CODEC, codec),
};
