/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlDay: the sums of a plan: shots by verdict, real and screen time, cards or magazines a body.
 * Made anew from the plan whenever it changes; 10,000 shots take about a millisecond. */

#include "plan/plan.h"

typedef struct {
  DrawlHiredBody *hired; /* no reference */
  guint shots;
  gint64 cards; /* all takes of its shots in list order; 0 on film or when nothing is known */
  gint64 bytes;
  gint64 magazines; /* film */
  double feet;      /* film */
} DrawlDayBody;

typedef struct {
  guint shots;
  guint by_verdict[DRAWL_N_VERDICTS];
  double real_s;   /* rolled: every take with its handles; display only */
  double action_s; /* the actions alone, one take each */
  double screen_s; /* on screen, one take each */
  gint64 bytes;
  gint64 cards;
  gint64 magazines;
  GArray *bodies; /* of DrawlDayBody, in the plan's order */
} DrawlDay;

void drawl_day_reckon (DrawlPlan *plan, DrawlDay *day); /* @day zeroed or from an earlier call */
/* The sums of some shots (of DrawlShot) alone: all but what a body has to carry. */
void drawl_day_reckon_shots (const GPtrArray *shots, DrawlDay *day);
/* A sum of seconds as a person reads it: "11 min 34 s". New string. */
char *drawl_day_time_text (double seconds);
void drawl_day_clear (DrawlDay *day);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (DrawlDay, drawl_day_clear)
