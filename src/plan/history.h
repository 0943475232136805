/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* History: the steps that undo and redo walk through. A change knows how to turn itself over: once
 * applied, it holds what takes it back. So a step is undone by turning its changes over from last
 * to first, and redone from first to last. Knows nothing of how changes are applied. */

#include "plan/hired-body.h"
#include "plan/plan.h"

typedef enum {
  DRAWL_CHANGE_SHOT_SET,    /* shot, shot_fields: what it gets */
  DRAWL_CHANGE_SHOT_INSERT, /* shot, position */
  DRAWL_CHANGE_SHOT_REMOVE, /* shot, position */
  DRAWL_CHANGE_SHOT_MOVE,   /* position, to */
  DRAWL_CHANGE_SHOTS,       /* shots: the list to be, coming, going */
  DRAWL_CHANGE_BODY_SET,    /* hired, hired_fields: what it gets */
  DRAWL_CHANGE_BODY_INSERT, /* hired, position */
  DRAWL_CHANGE_BODY_REMOVE, /* hired, position */
  DRAWL_CHANGE_SETTINGS,    /* settings: what the plan gets */
} DrawlChangeKind;

typedef struct {
  DrawlChangeKind kind;
  guint position;
  guint to;
  DrawlShot *shot;
  GPtrArray *shots;  /* of DrawlShot, with references, as the plan has it */
  GPtrArray *coming; /* of DrawlShot, with references: those that are new in `shots` */
  GPtrArray *going;  /* those that are no longer in it */
  DrawlHiredBody *hired;
  DrawlShotFields *shot_fields;
  DrawlHiredFields *hired_fields;
  DrawlPlanSettings *settings;
} DrawlChange;

void drawl_change_clear (DrawlChange *change);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (DrawlChange, drawl_change_clear)

typedef struct {
  char *label;
  GArray *changes; /* of DrawlChange */
} DrawlStep;

typedef struct _DrawlHistory DrawlHistory;

DrawlHistory *drawl_history_new (void);
void drawl_history_free (DrawlHistory *history);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (DrawlHistory, drawl_history_free)

/* Opens a step, or goes one deeper into the open one, whose label stays. */
void drawl_history_begin (DrawlHistory *history, const char *label);
/* TRUE when the outermost step is closed; then it stands in the history, unless it is empty. */
gboolean drawl_history_end (DrawlHistory *history);
gboolean drawl_history_is_open (const DrawlHistory *history);
/* Whether the open step has any change yet. */
gboolean drawl_history_has_news (const DrawlHistory *history);

/* Adds an applied change to the open step, and takes all it holds. A second change of the same
 * fields in a row adds nothing, since the first already holds what takes both back. */
void drawl_history_add (DrawlHistory *history, DrawlChange *change);
/* Forgets the open step's changes: what they led to is where they began. */
void drawl_history_drop_news (DrawlHistory *history);
/* The only change of the open step, if it has but one; else NULL. */
const DrawlChange *drawl_history_only_news (const DrawlHistory *history);

/* The step that undo or redo would turn over, or NULL; none while a step is open. */
const DrawlStep *drawl_history_next_undo (const DrawlHistory *history);
const DrawlStep *drawl_history_next_redo (const DrawlHistory *history);
/* Walks over one step; the caller turns the changes over. There must be one. */
DrawlStep *drawl_history_back (DrawlHistory *history);
DrawlStep *drawl_history_forth (DrawlHistory *history);

/* The mark of what was saved: where the history stands now; and whether it stands elsewhere. */
void drawl_history_mark (DrawlHistory *history);
/* No walk leads to what was saved. */
void drawl_history_unmark (DrawlHistory *history);
gboolean drawl_history_off_mark (const DrawlHistory *history);
