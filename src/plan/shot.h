/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlShot: one shot of a plan: its fields, and what follows from them (timing, load, check). Only
 * the plan changes a shot (drawl_plan_set_shot()), so that every change can be undone and every
 * view hears of it. */

#include "core/blanks.h"
#include "core/storage.h"
#include "plan/check.h"
#include "plan/shot-fields.h"

#define DRAWL_TYPE_SHOT (drawl_shot_get_type ())
G_DECLARE_FINAL_TYPE (DrawlShot, drawl_shot, DRAWL, SHOT, GObject)

/* Properties, read-only, each notified when it changes: "slate", "scene", "action", "summary" (the
 * sentence in short, in words), "verdict" (DrawlVerdict), "must" (boolean). Signal "changed": any
 * field or figure is new. */

DrawlShot *drawl_shot_new (const DrawlShotFields *fields);

const DrawlShotFields *drawl_shot_get_fields (DrawlShot *shot);

/* A number that no other shot has and that is new whenever the fields are, so that who kept it
 * knows whether they still are as they were. */
guint64 drawl_shot_get_stamp (DrawlShot *shot);

/* What follows from the fields: never NULL. */
const DrawlTiming *drawl_shot_get_timing (DrawlShot *shot);
const DrawlCheck *drawl_shot_get_check (DrawlShot *shot);
/* The question that the check answered: body, tier, card, indices. */
const DrawlCheckQuestion *drawl_shot_get_question (DrawlShot *shot);

/* What one take puts on a card or through the gate; worked out with the check. */
typedef struct {
  DrawlRational take_s; /* real time of a take, handles included */
  gint64 take_frames;
  gboolean known;            /* FALSE: no body, size or codec, so nothing below is set */
  DrawlRational frame_bytes; /* digital */
  DrawlRational bytes_s;     /* digital: with sound */
  gint64 take_bytes;         /* digital */
  gint64 card_frames;        /* digital: on one card, reserve kept; 0 without a card */
  DrawlRational card_s;
  gint64 cards; /* digital: for all takes of this shot alone, whole or spanning as the plan says; 0
                   if not to be done */
  DrawlRingBuffer buffer;   /* digital with a ring buffer, else frames 0 */
  DrawlRational take_feet;  /* film */
  DrawlRational magazine_s; /* film: run time of the longest magazine */
  gint64 magazines;         /* film: for all takes of this shot alone, whole takes */
} DrawlShotLoad;

const DrawlShotLoad *drawl_shot_get_load (DrawlShot *shot);

const char *drawl_shot_get_slate (DrawlShot *shot);
DrawlVerdict drawl_shot_get_verdict (DrawlShot *shot);
/* New string: "0.45 s at 240 fps, 4.5 s on screen, 10× slower". */
char *drawl_shot_dup_summary (DrawlShot *shot);

/* For the plan alone: a shot that owns @fields, with nothing worked out yet; takes new fields; and
 * works everything out again against a hired body. */
struct _DrawlHiredBody;
DrawlShot *drawl_shot_new_bare (DrawlShotFields *fields);
void drawl_shot_take_fields (DrawlShot *shot, const DrawlShotFields *fields);
void drawl_shot_recompute (DrawlShot *shot, struct _DrawlHiredBody *hired,
                           DrawlRational reserve_percent, gboolean takes_span);
