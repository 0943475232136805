/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Undo and redo. Invariant: the first `done` steps are applied, those behind them are undone; the
 * mark is the number of steps that were done when the plan was saved, or NO_MARK when no walk leads
 * back there. */

#include "plan/history.h"

#include <string.h>

#define NO_MARK G_MAXUINT

struct _DrawlHistory {
  GPtrArray *steps; /* of DrawlStep */
  guint done;
  guint mark;
  DrawlStep *open; /* or NULL */
  guint depth;     /* of begins without end */
};

void
drawl_change_clear (DrawlChange *change)
{
  g_clear_object (&change->shot);
  g_clear_pointer (&change->shots, g_ptr_array_unref);
  g_clear_pointer (&change->coming, g_ptr_array_unref);
  g_clear_pointer (&change->going, g_ptr_array_unref);
  g_clear_object (&change->hired);
  g_clear_pointer (&change->shot_fields, drawl_shot_fields_free);
  g_clear_pointer (&change->hired_fields, drawl_hired_fields_free);
  g_clear_pointer (&change->settings, drawl_plan_settings_free);
}

static DrawlStep *
step_new (const char *label)
{
  DrawlStep *step = g_new0 (DrawlStep, 1);

  step->label = g_strdup (label);
  step->changes = g_array_new (FALSE, FALSE, sizeof (DrawlChange));
  g_array_set_clear_func (step->changes, (GDestroyNotify)drawl_change_clear);
  return step;
}

static void
step_free (DrawlStep *step)
{
  g_free (step->label);
  g_array_unref (step->changes);
  g_free (step);
}

DrawlHistory *
drawl_history_new (void)
{
  DrawlHistory *history = g_new0 (DrawlHistory, 1);

  history->steps = g_ptr_array_new_with_free_func ((GDestroyNotify)step_free);
  return history;
}

void
drawl_history_free (DrawlHistory *history)
{
  g_ptr_array_unref (history->steps);
  g_clear_pointer (&history->open, step_free);
  g_free (history);
}

/* ---- The open step ---- */

void
drawl_history_begin (DrawlHistory *history, const char *label)
{
  if (history->depth++ == 0)
    history->open = step_new (label);
}

/* Puts the open step behind the done ones; the undone ones are gone for good. */
static void
commit (DrawlHistory *history)
{
  if (history->mark != NO_MARK && history->mark > history->done)
    history->mark = NO_MARK;
  g_ptr_array_set_size (history->steps, (int)history->done);
  g_ptr_array_add (history->steps, g_steal_pointer (&history->open));
  history->done++;
}

gboolean
drawl_history_end (DrawlHistory *history)
{
  g_return_val_if_fail (history->depth > 0, FALSE);

  if (--history->depth > 0)
    return FALSE;
  if (history->open->changes->len > 0)
    commit (history);
  g_clear_pointer (&history->open, step_free);
  return TRUE;
}

gboolean
drawl_history_is_open (const DrawlHistory *history)
{
  return history->open != NULL;
}

gboolean
drawl_history_has_news (const DrawlHistory *history)
{
  return history->open != NULL && history->open->changes->len > 0;
}

static gboolean
same_fields (const DrawlChange *a, const DrawlChange *b)
{
  if (a->kind != b->kind)
    return FALSE;
  switch (a->kind) {
  case DRAWL_CHANGE_SHOT_SET:
    return a->shot == b->shot;
  case DRAWL_CHANGE_BODY_SET:
    return a->hired == b->hired;
  default:
    return a->kind == DRAWL_CHANGE_SETTINGS;
  }
}

void
drawl_history_add (DrawlHistory *history, DrawlChange *change)
{
  GArray *changes = history->open->changes;

  if (changes->len > 0 &&
      same_fields (&g_array_index (changes, DrawlChange, changes->len - 1), change)) {
    drawl_change_clear (change);
    return;
  }
  g_array_append_vals (changes, change, 1);
  memset (change, 0, sizeof *change);
}

void
drawl_history_drop_news (DrawlHistory *history)
{
  g_array_set_size (history->open->changes, 0);
}

const DrawlChange *
drawl_history_only_news (const DrawlHistory *history)
{
  return drawl_history_has_news (history) && history->open->changes->len == 1
             ? &g_array_index (history->open->changes, DrawlChange, 0)
             : NULL;
}

/* ---- Walking ---- */

const DrawlStep *
drawl_history_next_undo (const DrawlHistory *history)
{
  if (history->open != NULL || history->done == 0)
    return NULL;
  return g_ptr_array_index (history->steps, history->done - 1);
}

const DrawlStep *
drawl_history_next_redo (const DrawlHistory *history)
{
  if (history->open != NULL || history->done == history->steps->len)
    return NULL;
  return g_ptr_array_index (history->steps, history->done);
}

DrawlStep *
drawl_history_back (DrawlHistory *history)
{
  return g_ptr_array_index (history->steps, --history->done);
}

DrawlStep *
drawl_history_forth (DrawlHistory *history)
{
  return g_ptr_array_index (history->steps, history->done++);
}

/* ---- The mark ---- */

void
drawl_history_mark (DrawlHistory *history)
{
  history->mark = drawl_history_has_news (history) ? NO_MARK : history->done;
}

void
drawl_history_unmark (DrawlHistory *history)
{
  history->mark = NO_MARK;
}

gboolean
drawl_history_off_mark (const DrawlHistory *history)
{
  return history->mark != history->done || drawl_history_has_news (history);
}
