/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The figures of the span picture as short phrases, and as the sentences of drawl_timeline_text().
 * All return new strings. */

#include "draw/timeline.h"

/* "0.45 s, 108 frames at 240 fps"; and less of it, where room is short. */
char *drawl_timeline_real_words (const DrawlTimelineData *data);
char *drawl_timeline_real_words_short (const DrawlTimelineData *data);
/* "4.5 s at 24 fps"; and only the time. */
char *drawl_timeline_screen_words (const DrawlTimelineData *data);
char *drawl_timeline_screen_words_short (const DrawlTimelineData *data);
/* "2 s", of a handle. */
char *drawl_timeline_handle_words (double seconds);
/* "10× slower", "2× faster", "real time": screen time against action time; and only the factor. */
char *drawl_timeline_stretch_words (const DrawlTimelineData *data);
char *drawl_timeline_stretch_words_short (const DrawlTimelineData *data);
