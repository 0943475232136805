/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlShotFields: what a person enters about a shot, and nothing that follows from it. A boxed
 * value: undo keeps copies, edits start from a copy. Strings are never NULL. */

#include <json-glib/json-glib.h>

#include "core/blanks.h"

#define DRAWL_SHOT_TAKES_MAX 10000
#define DRAWL_SHOT_AUDIO_MAX 64

typedef struct {
  char *slate;  /* unique within the plan, not empty */
  char *scene;  /* may be empty */
  char *action; /* what happens, as a clause: "The glass leaves the bench and breaks" */
  DrawlBlanks blanks;
  gboolean drop; /* screen timecode counts drop-frame (29.97 and 59.94 only) */
  char *body;    /* id of a hired body of the plan; empty: none yet */
  char *size;    /* ids within that body's profile */
  char *codec;
  guint takes;                   /* 1 … DRAWL_SHOT_TAKES_MAX */
  DrawlRational handle_before_s; /* rolled before and after the action, real time */
  DrawlRational handle_after_s;
  guint audio_tracks;
  gboolean must; /* TRUE: the shot must be; FALSE: it is wished for */
  char *notes;
  JsonObject *extra; /* keys of the file that this version does not know; kept; NULL when none */
} DrawlShotFields;

#define DRAWL_TYPE_SHOT_FIELDS (drawl_shot_fields_get_type ())
GType drawl_shot_fields_get_type (void);

/* A shot at real time with nothing entered. */
DrawlShotFields *drawl_shot_fields_new (const char *slate, DrawlRate playback);
DrawlShotFields *drawl_shot_fields_copy (const DrawlShotFields *fields);
void drawl_shot_fields_free (DrawlShotFields *fields);
gboolean drawl_shot_fields_equal (const DrawlShotFields *a, const DrawlShotFields *b);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (DrawlShotFields, drawl_shot_fields_free)

/* Sets a string member, freeing what was there: drawl_shot_fields_set (&fields->slate, "12A"). */
void drawl_shot_fields_set (char **member, const char *value);

/* A slate as a person typed it, without white space at its ends. New string. */
char *drawl_shot_slate_strip (const char *text);
/* FALSE with DRAWL_PLAN_ERROR_VALUE when it is empty or no plain line. */
gboolean drawl_shot_slate_check (const char *slate, GError **error);

/* FALSE with DRAWL_PLAN_ERROR_VALUE, naming the shot and key, when a plan cannot hold such a shot:
 * no slate or one that is no plain line, drop counting at a rate that has none, a number out of its
 * range. */
gboolean drawl_shot_fields_check (const DrawlShotFields *fields, GError **error);

/* Real time and whole frames of one take, handles included. FALSE when they cannot be counted
 * exactly; never for fields that passed the check. */
gboolean drawl_shot_fields_take (const DrawlShotFields *fields, DrawlRational *take_s,
                                 gint64 *take_frames);

/* One shot of a plan file, both ways. Its object opens at *@text, in text that was scanned
 * (json-walk.h); *@text is moved behind it. @where names the shot in messages. Errors:
 * DRAWL_PLAN_ERROR_VALUE, naming the key; *@text has not moved then. */
DrawlShotFields *drawl_shot_fields_from_json (const char **text, DrawlRate default_playback,
                                              const char *where, GError **error);
JsonObject *drawl_shot_fields_to_json (const DrawlShotFields *fields);
