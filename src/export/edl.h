/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* An edit decision list of the CMX 3600 kind: an event a shot, cuts only, one video track, an M2
 * line where the shot does not run in real time. Codes count at the plan's playback rate; the list
 * begins at 01:00:00:00, each source at 00:00:00:00 with the handle before the action. */

#include "plan/plan.h"

/* The text, in lines that end in CR LF. @warnings takes char *. Errors:
 * DRAWL_EXPORT_ERROR_NO_TIMECODE (or more than two digits of frames), _TOO_LONG, _INEXACT. */
char *drawl_edl_text (DrawlPlan *plan, GPtrArray *warnings, GError **error);

/* The speed of an M2 line, frames of the source a second: "004.8", "-012.0". One decimal, and more
 * only where one would be off by over half a per cent; never 0. New string. */
char *drawl_edl_speed_text (DrawlRational frames_s);

/* Frames of the source that @frames of the list show at @speed, the nearest whole number, at least
 * 1; 0 when they cannot be counted. */
gint64 drawl_edl_source_frames (gint64 frames, DrawlRational speed);
