/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* OpenTimelineIO JSON: a timeline of one video track, a clip a shot in the order of the list, its
 * media missing. The media runs in real time at the capture rate (available_range: one take,
 * handles included); a LinearTimeWarp says how fast it is played (time_scalar = post speed ÷ slow
 * factor, 0.2 is slowed to 20 %; none in real time). source_range counts at the plan's playback
 * rate: it starts behind the handle and lasts as long as the clip does on the track. Notes are
 * markers; all of a shot's columns are in metadata under "drawl". */

#include "plan/plan.h"

/* The text. @warnings takes char *. Errors: DRAWL_EXPORT_ERROR_INEXACT. */
char *drawl_otio_text (DrawlPlan *plan, GPtrArray *warnings, GError **error);
