/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Steps of an axis of seconds. Invariant: major and minor are above 0, minor divides major, and
 * ticks of either stand MINOR_PX or more apart. */

#include "draw/axis.h"

#include <math.h>

#define MINOR_PX 4.0
#define DECIMALS_MAX 9
#define SLACK 1e-9 /* of a step: a tick that rounding moved just past the end still counts */
#define MINUTE 60.0
#define HOUR 3600.0
#define DAY 86400.0

typedef struct {
  double major, minor;
} Step;

/* Times a power of ten: below a minute, and in days above one. */
static const Step decade[] = {{1, 0.2}, {2, 0.5}, {5, 1}};

/* As clocks count. */
static const Step clock_steps[] = {
    {MINUTE, 10},        {2 * MINUTE, 30},          {5 * MINUTE, MINUTE},
    {10 * MINUTE, 120},  {15 * MINUTE, 5 * MINUTE}, {30 * MINUTE, 5 * MINUTE},
    {HOUR, 10 * MINUTE}, {2 * HOUR, 30 * MINUTE},   {3 * HOUR, HOUR},
    {6 * HOUR, HOUR},    {12 * HOUR, 3 * HOUR},     {DAY, 6 * HOUR},
};

/* The least 1, 2 or 5 · 10^k that is @least or more. */
static Step
decimal_step (double least, int *exponent)
{
  *exponent = (int)floor (log10 (least) + SLACK);
  for (;; (*exponent)++) {
    double scale = *exponent < 0 ? 1 / pow (10, -*exponent) : pow (10, *exponent);

    for (guint i = 0; i < G_N_ELEMENTS (decade); i++)
      if (decade[i].major * scale >= least * (1 - SLACK))
        return (Step){decade[i].major * scale, decade[i].minor * scale};
  }
}

static Step
step_of_at_least (double least, int *decimals)
{
  int exponent;
  Step step = decimal_step (least, &exponent);

  *decimals = CLAMP (-exponent, 0, DECIMALS_MAX);
  if (step.major <= MINUTE / 3)
    return step;
  *decimals = 0;
  for (guint i = 0; i < G_N_ELEMENTS (clock_steps); i++)
    if (clock_steps[i].major >= least * (1 - SLACK))
      return clock_steps[i];
  step = decimal_step (least / DAY, &exponent);
  return (Step){step.major * DAY, step.minor * DAY};
}

DrawlAxis
drawl_axis_make (double from, double to, double px, double label_px)
{
  DrawlAxis axis = {.from = from, .to = to};

  if (!isfinite (from) || !isfinite (to) || to <= from) {
    axis.from = 0;
    axis.to = 1;
  }
  double seconds_per_px = (axis.to - axis.from) / MAX (px, 1);
  Step step = step_of_at_least (MAX (label_px, MINOR_PX) * seconds_per_px, &axis.decimals);

  axis.major = step.major;
  axis.minor = step.minor >= MINOR_PX * seconds_per_px ? step.minor : step.major;
  return axis;
}

void
drawl_axis_range (const DrawlAxis *axis, double step, gint64 *first, gint64 *last)
{
  *first = (gint64)ceil (axis->from / step - SLACK);
  *last = (gint64)floor (axis->to / step + SLACK);
}

char *
drawl_axis_label (const DrawlAxis *axis, double seconds)
{
  double longest = MAX (fabs (axis->from), fabs (axis->to));
  gint64 scale = (gint64)pow (10, axis->decimals);
  gint64 units = llround (fabs (seconds) * (double)scale);
  const char *sign = seconds < 0 && units > 0 ? "−" : "";
  double rest = (double)(units % (60 * scale)) / (double)scale;
  int places = axis->decimals, digits = places > 0 ? places + 3 : 2;
  gint64 minutes = units / scale / 60;

  if (units == 0)
    return g_strdup ("0");
  if (longest < MINUTE)
    return g_strdup_printf ("%s%.*f", sign, places, (double)units / (double)scale);
  if (longest < HOUR)
    return g_strdup_printf ("%s%" G_GINT64_FORMAT ":%0*.*f", sign, minutes, digits, places, rest);
  return g_strdup_printf ("%s%" G_GINT64_FORMAT ":%02d:%0*.*f", sign, minutes / 60,
                          (int)(minutes % 60), digits, places, rest);
}
