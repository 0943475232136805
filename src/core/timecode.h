/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Timecode: the count of frames written as HH:MM:SS:FF. SMPTE ST 12-1 (24, 25, 30 and their
 * 1000/1001 kin; drop counting at 30000/1001), ST 12-3 for higher rates (drop at 60000/1001). A
 * second of code counts the nominal whole rate; three frame digits stand where the nominal rate is
 * above 100. Frame 0 is 00:00:00:00; codes wrap at 24 h of code. Drop codes have `;` before the
 * frames. */

#include "core/rate.h"

#define DRAWL_TIMECODE_SIZE 20 /* "HH:MM:SS:FFFFFFF" and its end */

/* FALSE with DRAWL_CORE_ERROR_RANGE when the rate has no timecode, _NO_DROP when @drop and the rate
 * has no drop counting (only 30000/1001 and 60000/1001 have). */
gboolean drawl_timecode_check (DrawlRate rate, gboolean drop, GError **error);

/* Number of frames in 24 h of code: where it wraps. 0 for a rate without timecode. */
gint64 drawl_timecode_day_frames (DrawlRate rate, gboolean drop);

/* The code of frame @frame ≥ 0, wrapped at 24 h. Errors: as drawl_timecode_check(); _RANGE for a
 * negative frame. */
gboolean drawl_timecode_format (DrawlRate rate, gboolean drop, gint64 frame,
                                char code[DRAWL_TIMECODE_SIZE], GError **error);

/* The frame of a code. Accepts `:` or `;` (also `.` and `,`) before the frames; with @drop FALSE a
 * `;` or `,` is refused, so that a drop code is never read as non-drop; with @drop TRUE both are
 * read as drop. Errors: DRAWL_CORE_ERROR_SYNTAX, _NO_CODE (dropped, or a field out of range), and
 * as drawl_timecode_check(). */
gboolean drawl_timecode_parse (DrawlRate rate, gboolean drop, const char *code, gint64 *frame,
                               GError **error);

/* Length of @frames at @rate in seconds, exactly. FALSE when it does not fit. */
gboolean drawl_timecode_seconds (DrawlRate rate, gint64 frames, DrawlRational *seconds);
