/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Footage: film counted in feet. The counting foot goes by perforations (64 a foot on 35 and 65
 * mm), as footage counters and tables do. Measured along the film, those are 304 mm, 0.26 % short
 * of a foot. A gauge is a row of the table in footage.c. */

#include "core/rate.h"

/* Perforations stand a little closer on film that is made for cameras. */
typedef enum { DRAWL_PITCH_LONG, DRAWL_PITCH_SHORT, DRAWL_N_PITCHES } DrawlPitch;

typedef struct {
  const char *id;                         /* "35-3": the word of files and of the command line */
  const char *name;                       /* marked for translation: "35 mm, 3 perforations" */
  DrawlRational foot_frames;              /* frames a counting foot: 64/3 */
  const char *source;                     /* where the figure was read */
  DrawlRational step_mm[DRAWL_N_PITCHES]; /* from frame to frame, along the film; 0: not known */
  const char *step_source;
} DrawlGauge;

const DrawlGauge *drawl_gauges (guint *n_gauges);
const DrawlGauge *drawl_gauge_find (const char *id); /* NULL when there is none */

/* Whole frames that lie on @feet (or @metres; a foot is 0.3048 m exactly). FALSE when negative or
 * too long. */
gboolean drawl_footage_frames_on_feet (const DrawlGauge *gauge, DrawlRational feet, gint64 *frames);
gboolean drawl_footage_frames_on_metres (const DrawlGauge *gauge, DrawlRational metres,
                                         gint64 *frames);

/* Length of @frames ≥ 0 in feet, in metres, and as the counter shows it ("90+00": whole feet, then
 * the frames that begin after the last foot mark, in two digits). FALSE or NULL when negative or
 * too long. */
gboolean drawl_footage_feet (const DrawlGauge *gauge, gint64 frames, DrawlRational *feet);
gboolean drawl_footage_metres (const DrawlGauge *gauge, gint64 frames, DrawlRational *metres);
char *drawl_footage_feet_frames (const DrawlGauge *gauge, gint64 frames);

/* What @frames, which need not be whole, measure along the film. FALSE when negative or too long,
 * or when the step is not known. */
gboolean drawl_footage_physical_metres (const DrawlGauge *gauge, DrawlPitch pitch,
                                        DrawlRational frames, DrawlRational *metres);
