/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What a person enters about a shot. Strings are never NULL, times are seconds of real time. The
 * kept keys of a file are shared between copies and never changed. */

#include "plan/shot-fields.h"

#include "core/error.h"
#include "core/text.h"
#include "core/timecode.h"
#include "plan/error.h"
#include "plan/extra.h"

#include <string.h>

G_DEFINE_BOXED_TYPE (DrawlShotFields, drawl_shot_fields, drawl_shot_fields_copy,
                     drawl_shot_fields_free)

/* The strings of a shot, for all that is done to each of them. */
static const gsize strings[] = {
    G_STRUCT_OFFSET (DrawlShotFields, slate),  G_STRUCT_OFFSET (DrawlShotFields, scene),
    G_STRUCT_OFFSET (DrawlShotFields, action), G_STRUCT_OFFSET (DrawlShotFields, body),
    G_STRUCT_OFFSET (DrawlShotFields, size),   G_STRUCT_OFFSET (DrawlShotFields, codec),
    G_STRUCT_OFFSET (DrawlShotFields, notes),
};

static char **
string_at (const DrawlShotFields *fields, gsize index)
{
  return &G_STRUCT_MEMBER (char *, fields, strings[index]);
}

DrawlShotFields *
drawl_shot_fields_new (const char *slate, DrawlRate playback)
{
  DrawlShotFields *fields = g_new0 (DrawlShotFields, 1);

  for (gsize i = 0; i < G_N_ELEMENTS (strings); i++)
    *string_at (fields, i) = g_strdup ("");
  drawl_shot_fields_set (&fields->slate, slate);
  drawl_blanks_init (&fields->blanks, playback);
  fields->takes = 1;
  fields->handle_before_s = fields->handle_after_s = drawl_rational_whole (0);
  fields->must = TRUE;
  return fields;
}

DrawlShotFields *
drawl_shot_fields_copy (const DrawlShotFields *fields)
{
  DrawlShotFields *copy = g_memdup2 (fields, sizeof *fields);

  for (gsize i = 0; i < G_N_ELEMENTS (strings); i++)
    *string_at (copy, i) = g_strdup (*string_at (fields, i));
  copy->extra = drawl_extra_ref (fields->extra);
  return copy;
}

void
drawl_shot_fields_free (DrawlShotFields *fields)
{
  if (fields == NULL)
    return;
  for (gsize i = 0; i < G_N_ELEMENTS (strings); i++)
    g_free (*string_at (fields, i));
  g_clear_pointer (&fields->extra, json_object_unref);
  g_free (fields);
}

gboolean
drawl_shot_fields_equal (const DrawlShotFields *a, const DrawlShotFields *b)
{
  for (gsize i = 0; i < G_N_ELEMENTS (strings); i++)
    if (!g_str_equal (*string_at (a, i), *string_at (b, i)))
      return FALSE;
  return drawl_blanks_equal (&a->blanks, &b->blanks) && a->drop == b->drop &&
         a->takes == b->takes && drawl_rational_equal (a->handle_before_s, b->handle_before_s) &&
         drawl_rational_equal (a->handle_after_s, b->handle_after_s) &&
         a->audio_tracks == b->audio_tracks && a->must == b->must &&
         drawl_extra_equal (a->extra, b->extra);
}

void
drawl_shot_fields_set (char **member, const char *value)
{
  char *copy = g_strdup (value != NULL ? value : "");

  g_free (*member);
  *member = copy;
}

gboolean
drawl_shot_fields_take (const DrawlShotFields *fields, DrawlRational *take_s, gint64 *take_frames)
{
  DrawlRational frames;

  if (!drawl_rational_add (fields->handle_before_s, fields->blanks.value[DRAWL_TIMING_ACTION],
                           take_s) ||
      !drawl_rational_add (*take_s, fields->handle_after_s, take_s) ||
      !drawl_rational_mul (*take_s, fields->blanks.value[DRAWL_TIMING_CAPTURE], &frames))
    return FALSE;
  *take_frames = drawl_rational_ceil (frames);
  return TRUE;
}

static gboolean
refuse (const DrawlShotFields *fields, const char *key, const char *message, GError **error)
{
  g_autofree char *slate = drawl_core_quote (fields->slate);
  /* Translators: slate of a shot, key, what is wrong. */
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE, _ ("shot %s: “%s”: %s"), slate, key,
               message);
  return FALSE;
}

static gboolean
check_handle (const DrawlShotFields *fields, const char *key, DrawlRational seconds, GError **error)
{
  if (seconds.num >= 0 && seconds.den > 0 &&
      drawl_rational_compare (seconds, drawl_rational_whole (DRAWL_TIMING_MAX_S)) <= 0)
    return TRUE;
  return refuse (fields, key, _ ("a time of 0 s or more is expected"), error);
}

static gboolean
check_counts (const DrawlShotFields *fields, GError **error)
{
  if (fields->takes < 1 || fields->takes > DRAWL_SHOT_TAKES_MAX)
    return refuse (fields, "takes", _ ("1 to 10000 takes are expected"), error);
  if (fields->audio_tracks > DRAWL_SHOT_AUDIO_MAX)
    return refuse (fields, "audio_tracks", _ ("at most 64 tracks are expected"), error);
  return TRUE;
}

char *
drawl_shot_slate_strip (const char *text)
{
  const char *end = text + strlen (text);

  while (g_unichar_isspace (g_utf8_get_char (text)))
    text = g_utf8_next_char (text);
  while (end > text && g_unichar_isspace (g_utf8_get_char (g_utf8_prev_char (end))))
    end = g_utf8_prev_char (end);
  return g_strndup (text, (gsize)(end - text));
}

/* A slate is what people call out and look for: one line, and nothing that cannot be seen. */
static gboolean
slate_is_plain (const char *slate)
{
  const char *last = slate;

  for (const char *at = slate; *at != '\0'; at = g_utf8_next_char (at)) {
    if (g_unichar_iscntrl (g_utf8_get_char (at)))
      return FALSE;
    last = at;
  }
  return !g_unichar_isspace (g_utf8_get_char (slate)) &&
         !g_unichar_isspace (g_utf8_get_char (last));
}

gboolean
drawl_shot_slate_check (const char *slate, GError **error)
{
  if (slate[0] == '\0') {
    g_set_error_literal (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE,
                         _ ("a shot must have a slate"));
    return FALSE;
  }
  if (slate_is_plain (slate))
    return TRUE;
  g_autofree char *quote = drawl_core_quote (slate);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE,
               _ ("the slate “%s” has a control character in it or a space at an end; one line "
                  "without is expected"),
               quote);
  return FALSE;
}

gboolean
drawl_shot_fields_check (const DrawlShotFields *fields, GError **error)
{
  g_autoptr (GError) reason = NULL;
  DrawlRational take_s;
  gint64 take_frames;

  if (!drawl_shot_slate_check (fields->slate, error))
    return FALSE;
  if (fields->drop &&
      !drawl_timecode_check (fields->blanks.value[DRAWL_TIMING_PLAYBACK], TRUE, &reason))
    return refuse (fields, "drop", reason->message, error);
  if (!check_counts (fields, error) ||
      !check_handle (fields, "handle_before_s", fields->handle_before_s, error) ||
      !check_handle (fields, "handle_after_s", fields->handle_after_s, error))
    return FALSE;
  if (!drawl_shot_fields_take (fields, &take_s, &take_frames))
    return refuse (fields, "handle_before_s",
                   _ ("the take cannot be counted exactly; times of fewer digits are expected"),
                   error);
  return TRUE;
}
