/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The steps of undo by themselves: what is a step, where the mark of the saved state stands. */

#include "plan/history.h"

/* A change of the settings of the plan; each one by itself, so that none is merged. */
static void
add_move (DrawlHistory *history, guint from)
{
  DrawlChange change = {.kind = DRAWL_CHANGE_SHOT_MOVE, .position = from, .to = from + 1};
  drawl_history_add (history, &change);
}

static void
step (DrawlHistory *history, const char *label)
{
  drawl_history_begin (history, label);
  add_move (history, 0);
  drawl_history_end (history);
}

static const char *
label_of (const DrawlStep *of)
{
  return of != NULL ? of->label : "none";
}

#define assert_next(history, undo, redo)                                                           \
  G_STMT_START                                                                                     \
  {                                                                                                \
    g_assert_cmpstr (label_of (drawl_history_next_undo (history)), ==, (undo));                    \
    g_assert_cmpstr (label_of (drawl_history_next_redo (history)), ==, (redo));                    \
  }                                                                                                \
  G_STMT_END

static void
test_walk (void)
{
  g_autoptr (DrawlHistory) history = drawl_history_new ();

  assert_next (history, "none", "none");
  step (history, "one");
  step (history, "two");
  assert_next (history, "two", "none");
  g_assert_cmpstr (label_of (drawl_history_back (history)), ==, "two");
  assert_next (history, "one", "two");
  g_assert_cmpstr (label_of (drawl_history_back (history)), ==, "one");
  assert_next (history, "none", "one");
  g_assert_cmpstr (label_of (drawl_history_forth (history)), ==, "one");
  assert_next (history, "one", "two");
  step (history, "three");
  assert_next (history, "three", "none");
}

static void
test_nested (void)
{
  g_autoptr (DrawlHistory) history = drawl_history_new ();

  drawl_history_begin (history, "outer");
  step (history, "inner");
  step (history, "other");
  assert_next (history, "none", "none"); /* not while it is open */
  g_assert_true (drawl_history_is_open (history));
  g_assert_true (drawl_history_end (history));
  assert_next (history, "outer", "none");
  g_assert_cmpuint (drawl_history_next_undo (history)->changes->len, ==, 2);
}

static void
test_empty (void)
{
  g_autoptr (DrawlHistory) history = drawl_history_new ();

  step (history, "one");
  drawl_history_back (history);
  drawl_history_begin (history, "nothing");
  g_assert_true (drawl_history_end (history));
  assert_next (history, "none", "one"); /* what was undone can still be redone */
}

static void
add_settings (DrawlHistory *history)
{
  DrawlChange change = {.kind = DRAWL_CHANGE_SETTINGS, .settings = g_new0 (DrawlPlanSettings, 1)};
  drawl_history_add (history, &change);
  g_assert_null (change.settings); /* it was taken either way */
}

static void
test_merge (void)
{
  g_autoptr (DrawlHistory) history = drawl_history_new ();

  drawl_history_begin (history, "drag");
  add_settings (history);
  const DrawlPlanSettings *first = drawl_history_only_news (history)->settings;
  add_settings (history);
  add_settings (history);
  g_assert_true (drawl_history_only_news (history)->settings == first);
  add_move (history, 0);
  add_move (history, 0);
  add_settings (history);
  g_assert_null (drawl_history_only_news (history));
  drawl_history_end (history);
  g_assert_cmpuint (drawl_history_next_undo (history)->changes->len, ==, 4);
}

static void
test_dropped (void)
{
  g_autoptr (DrawlHistory) history = drawl_history_new ();

  drawl_history_begin (history, "drag");
  add_settings (history);
  g_assert_true (drawl_history_off_mark (history));
  drawl_history_drop_news (history);
  g_assert_false (drawl_history_has_news (history));
  drawl_history_end (history);
  assert_next (history, "none", "none");
  g_assert_false (drawl_history_off_mark (history));
}

static void
test_mark (void)
{
  g_autoptr (DrawlHistory) history = drawl_history_new ();

  g_assert_false (drawl_history_off_mark (history));
  step (history, "one");
  g_assert_true (drawl_history_off_mark (history));
  drawl_history_mark (history);
  g_assert_false (drawl_history_off_mark (history));
  step (history, "two");
  drawl_history_back (history);
  g_assert_false (drawl_history_off_mark (history));
  drawl_history_back (history);
  g_assert_true (drawl_history_off_mark (history));
  drawl_history_forth (history);
  g_assert_false (drawl_history_off_mark (history));
}

/* Back past the mark and then elsewhere: as many steps as at the mark, but not the same ones. */
static void
test_mark_lost (void)
{
  g_autoptr (DrawlHistory) history = drawl_history_new ();

  step (history, "one");
  drawl_history_mark (history);
  drawl_history_back (history);
  step (history, "other");
  g_assert_true (drawl_history_off_mark (history));
  drawl_history_back (history);
  g_assert_true (drawl_history_off_mark (history));
  drawl_history_mark (history);
  g_assert_false (drawl_history_off_mark (history));
}

/* Saved in mid-drag: no number of steps leads back there. */
static void
test_mark_in_step (void)
{
  g_autoptr (DrawlHistory) history = drawl_history_new ();

  drawl_history_begin (history, "drag");
  add_settings (history);
  drawl_history_mark (history);
  add_move (history, 0);
  drawl_history_end (history);
  g_assert_true (drawl_history_off_mark (history));
  drawl_history_back (history);
  g_assert_true (drawl_history_off_mark (history));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/history/walk", test_walk);
  g_test_add_func ("/history/nested", test_nested);
  g_test_add_func ("/history/empty", test_empty);
  g_test_add_func ("/history/merge", test_merge);
  g_test_add_func ("/history/dropped", test_dropped);
  g_test_add_func ("/history/mark", test_mark);
  g_test_add_func ("/history/mark-lost", test_mark_lost);
  g_test_add_func ("/history/mark-in-step", test_mark_in_step);

  return g_test_run ();
}
