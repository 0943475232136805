/* SPDX-License-Identifier: GPL-3.0-or-later */

/* What a plan says about itself. Strings are never NULL; the reserve is in per cent of a card. */

#include "plan/plan-private.h"

#include "core/text.h"
#include "plan/error.h"
#include "plan/extra.h"

DrawlPlanSettings *
drawl_plan_settings_new (void)
{
  DrawlPlanSettings *settings = g_new0 (DrawlPlanSettings, 1);

  settings->title = g_strdup ("");
  settings->production = g_strdup ("");
  settings->day = g_strdup ("");
  settings->notes = g_strdup ("");
  settings->length_unit = g_strdup ("");
  settings->playback = drawl_rational_whole (24);
  settings->mains_hz = 50;
  settings->reserve_percent = drawl_rational_whole (10);
  return settings;
}

DrawlPlanSettings *
drawl_plan_settings_copy (const DrawlPlanSettings *settings)
{
  DrawlPlanSettings *copy = g_memdup2 (settings, sizeof *settings);

  copy->title = g_strdup (settings->title);
  copy->production = g_strdup (settings->production);
  copy->day = g_strdup (settings->day);
  copy->notes = g_strdup (settings->notes);
  copy->length_unit = g_strdup (settings->length_unit);
  copy->extra = drawl_extra_ref (settings->extra);
  return copy;
}

void
drawl_plan_settings_free (DrawlPlanSettings *settings)
{
  if (settings == NULL)
    return;
  g_free (settings->title);
  g_free (settings->production);
  g_free (settings->day);
  g_free (settings->notes);
  g_free (settings->length_unit);
  g_clear_pointer (&settings->extra, json_object_unref);
  g_free (settings);
}

gboolean
drawl_plan_settings_equal (const DrawlPlanSettings *a, const DrawlPlanSettings *b)
{
  return g_str_equal (a->title, b->title) && g_str_equal (a->production, b->production) &&
         g_str_equal (a->day, b->day) && g_str_equal (a->notes, b->notes) &&
         drawl_rational_equal (a->playback, b->playback) && a->mains_hz == b->mains_hz &&
         drawl_rational_equal (a->reserve_percent, b->reserve_percent) &&
         a->takes_span == b->takes_span && g_str_equal (a->length_unit, b->length_unit) &&
         drawl_extra_equal (a->extra, b->extra);
}

static gboolean
refuse (const char *key, const char *message, GError **error)
{
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE, _ ("“%s”: %s"), key, message);
  return FALSE;
}

/* "2026-03-14" and nothing else. */
static gboolean
is_day (const char *text)
{
  static const char shape[] = "dddd-dd-dd";
  GDate date;

  for (gsize i = 0; i < sizeof shape; i++)
    if (shape[i] == 'd' ? !g_ascii_isdigit (text[i]) : text[i] != shape[i])
      return FALSE;
  g_date_clear (&date, 1);
  g_date_set_parse (&date, text);
  return g_date_valid (&date);
}

gboolean
drawl_plan_settings_check (const DrawlPlanSettings *settings, GError **error)
{
  DrawlRational reserve = settings->reserve_percent;

  if (settings->day[0] != '\0' && !is_day (settings->day))
    return refuse ("day", _ ("a day such as 2026-03-14 is expected"), error);
  if (!drawl_rate_valid (settings->playback))
    return refuse ("playback_rate", _ ("a rate above 0 is expected"), error);
  if (settings->mains_hz != 50 && settings->mains_hz != 60)
    return refuse ("mains_hz", _ ("50 or 60 is expected"), error);
  if (reserve.num < 0 || drawl_rational_compare (reserve, drawl_rational_whole (100)) >= 0)
    return refuse ("reserve_percent", _ ("at least 0 and below 100 is expected"), error);
  return TRUE;
}

/* ---- What a plan takes from them ---- */

DrawlLengthUnit
drawl_plan_get_length_unit (DrawlPlan *plan)
{
  DrawlLengthUnit unit = plan->default_length_unit;

  drawl_length_unit_find (plan->settings->length_unit, &unit);
  return unit;
}

void
drawl_plan_set_default_length_unit (DrawlPlan *plan, DrawlLengthUnit unit)
{
  plan->default_length_unit = unit;
}
