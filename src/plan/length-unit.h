/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Lengths of film as a person reads them: in feet, as footage counters go by, or in metres. They
 * are reckoned in counting feet either way; a foot is 0.3048 m exactly. */

#include "core/rate.h"

typedef enum { DRAWL_LENGTH_FEET, DRAWL_LENGTH_METRIC, DRAWL_N_LENGTHS } DrawlLengthUnit;

/* The word of files and settings: "feet", "metric". FALSE, and @unit as it is, for any other. */
const char *drawl_length_unit_id (DrawlLengthUnit unit);
gboolean drawl_length_unit_find (const char *id, DrawlLengthUnit *unit);

/* "400 ft"; "121.9 m". New string. */
char *drawl_length_film (DrawlRational feet, DrawlLengthUnit unit);
/* The same rounded down, to whole feet or tenths of a metre: what is left is never more than it
 * says. New string. */
char *drawl_length_film_left (DrawlRational feet, DrawlLengthUnit unit);
