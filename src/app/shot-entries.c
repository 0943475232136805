/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What can be typed about a shot outside its sentence. Handles in seconds, post speed in per cent.
 */

#include "app/shot-entries.h"

#include "app/term.h"
#include "core/text.h"
#include "plan/error.h"
#include "plan/figure.h"

/* ---- Words ---- */

static char *
show_slate (const DrawlShotFields *fields)
{
  return g_strdup (fields->slate);
}

static gboolean
take_slate (DrawlShotFields *fields, const char *text, GError **error)
{
  g_autofree char *slate = drawl_shot_slate_strip (text);

  if (*slate == '\0') {
    g_set_error_literal (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE,
                         _ ("a shot needs a slate"));
    return FALSE;
  }
  drawl_shot_fields_set (&fields->slate, slate);
  return TRUE;
}

static char *
show_scene (const DrawlShotFields *fields)
{
  return g_strdup (fields->scene);
}

static gboolean
take_scene (DrawlShotFields *fields, const char *text, GError **error)
{
  drawl_shot_fields_set (&fields->scene, text);
  return TRUE;
}

/* ---- Whole numbers ---- */

static gboolean
read_whole (const char *text, guint least, guint most, guint *number, GError **error)
{
  DrawlRational value;

  if (drawl_rational_parse (text, &value, NULL) && value.den == 1 && value.num >= least &&
      value.num <= most) {
    *number = (guint)value.num;
    return TRUE;
  }
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE,
               _ ("“%s” cannot be used here; a whole number from %u to %u is expected"), text,
               least, most);
  return FALSE;
}

static char *
show_takes (const DrawlShotFields *fields)
{
  return g_strdup_printf ("%u", fields->takes);
}

static gboolean
take_takes (DrawlShotFields *fields, const char *text, GError **error)
{
  return read_whole (text, 1, DRAWL_SHOT_TAKES_MAX, &fields->takes, error);
}

static char *
show_audio (const DrawlShotFields *fields)
{
  return g_strdup_printf ("%u", fields->audio_tracks);
}

static gboolean
take_audio (DrawlShotFields *fields, const char *text, GError **error)
{
  return read_whole (text, 0, DRAWL_SHOT_AUDIO_MAX, &fields->audio_tracks, error);
}

/* ---- Times ---- */

static gboolean
read_handle (const char *text, DrawlRational *seconds, GError **error)
{
  static const char *const units[] = {"s", NULL};
  DrawlRational value;

  if (!drawl_rational_parse_unit (text, units, &value, error))
    return FALSE;
  if (value.num >= 0 &&
      drawl_rational_compare (value, drawl_rational_whole (DRAWL_TIMING_MAX_S)) <= 0) {
    *seconds = value;
    return TRUE;
  }
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE,
               _ ("a handle cannot be %s; 0 s or more is expected"), text);
  return FALSE;
}

static char *
show_before (const DrawlShotFields *fields)
{
  return drawl_figure_seconds_number (fields->handle_before_s);
}

static gboolean
take_before (DrawlShotFields *fields, const char *text, GError **error)
{
  return read_handle (text, &fields->handle_before_s, error);
}

static char *
show_after (const DrawlShotFields *fields)
{
  return drawl_figure_seconds_number (fields->handle_after_s);
}

static gboolean
take_after (DrawlShotFields *fields, const char *text, GError **error)
{
  return read_handle (text, &fields->handle_after_s, error);
}

/* ---- Post speed ---- */

static char *
show_post (const DrawlShotFields *fields)
{
  return drawl_term_number (DRAWL_TIMING_POST_SPEED, fields->blanks.value[DRAWL_TIMING_POST_SPEED]);
}

static gboolean
take_post (DrawlShotFields *fields, const char *text, GError **error)
{
  DrawlRational value;

  return drawl_timing_term_parse (DRAWL_TIMING_POST_SPEED, text, &value, error) &&
         drawl_blanks_edit (&fields->blanks, DRAWL_TIMING_POST_SPEED, value, error);
}

const DrawlShotEntry drawl_shot_entries[DRAWL_N_SHOT_ENTRIES] = {
    {"slate_row", DRAWL_ENTRIES_SHOT, N_ ("Change slate"), show_slate, take_slate},
    {"scene_row", DRAWL_ENTRIES_SHOT, N_ ("Change scene"), show_scene, take_scene},
    {"audio_row", DRAWL_ENTRIES_CAMERA, N_ ("Change audio tracks"), show_audio, take_audio},
    {"takes_row", DRAWL_ENTRIES_TAKE, N_ ("Change takes"), show_takes, take_takes},
    {"before_row", DRAWL_ENTRIES_TAKE, N_ ("Change handle before"), show_before, take_before},
    {"after_row", DRAWL_ENTRIES_TAKE, N_ ("Change handle after"), show_after, take_after},
    {"post_row", DRAWL_ENTRIES_TAKE, N_ ("Change post speed"), show_post, take_post},
};
