/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Frame numbers written as HH:MM:SS:FF. A second of code counts the nominal whole rate; drop
 * counting (30000/1001, 60000/1001) leaves out the first two or four codes of each minute but every
 * tenth, which drops codes and never frames. Frame 0 is 00:00:00:00 and the count wraps after 24 h
 * of code. SMPTE ST 12-1; ST 12-3 for the higher rates, whose frames are here counted plainly. */

#include "core/timecode.h"

#include "core/error.h"
#include "core/text.h"

#include <string.h>

#define DAY_HOURS 24
#define DAY_MINUTES (DAY_HOURS * 60)
#define DAY_SECONDS (DAY_MINUTES * 60)
#define N_FIELDS 4
#define FIELD_DIGITS_MAX 7 /* of the highest rate */

/* How a rate counts. */
typedef struct {
  gint64 second;   /* codes a second: the nominal rate */
  gint64 drop;     /* codes left out of a minute, 0 when none are */
  gint64 minute;   /* frames in a minute that leaves codes out */
  gint64 ten;      /* frames in ten minutes */
  gint64 day;      /* frames in 24 h of code */
  int frame_width; /* digits of the frames field */
} Count;

/* The rates that have drop counting, and the codes that a minute leaves out. */
static const struct {
  DrawlRate rate;
  gint64 drop;
} drop_rates[] = {
    {{30000, 1001}, 2},
    {{60000, 1001}, 4},
};

static gint64
find_drop (DrawlRate rate)
{
  for (gsize i = 0; i < G_N_ELEMENTS (drop_rates); i++)
    if (drawl_rational_equal (rate, drop_rates[i].rate))
      return drop_rates[i].drop;
  return 0;
}

/* FALSE when the rate has no such count. */
static gboolean
count_init (Count *count, DrawlRate rate, gboolean drop)
{
  count->second = drawl_rate_nominal (rate);
  count->drop = drop ? find_drop (rate) : 0;
  if (count->second == 0 || (drop && count->drop == 0))
    return FALSE;

  count->minute = count->second * 60 - count->drop;
  count->ten = count->second * 600 - count->drop * 9;
  count->day = count->ten * (DAY_MINUTES / 10);
  count->frame_width = 2;
  for (gint64 most = (count->second - 1) / 100; most > 0; most /= 10)
    count->frame_width++;
  return TRUE;
}

gboolean
drawl_timecode_check (DrawlRate rate, gboolean drop, GError **error)
{
  Count count;
  if (count_init (&count, rate, drop))
    return TRUE;

  char text[DRAWL_RATIONAL_TEXT_SIZE];
  drawl_rate_text (rate, text);
  if (drawl_rate_nominal (rate) == 0)
    g_set_error (
        error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_RANGE,
        _ ("a rate of %s has no timecode; a whole rate, or one times 1000/1001, is expected"),
        text);
  else
    g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_NO_DROP,
                 _ ("a rate of %s has no drop counting; 30000/1001 or 60000/1001 is expected"),
                 text);
  return FALSE;
}

gint64
drawl_timecode_day_frames (DrawlRate rate, gboolean drop)
{
  Count count;
  return count_init (&count, rate, drop) ? count.day : 0;
}

/* The number that a frame's code has when no code is left out. */
static gint64
code_number (const Count *count, gint64 frame)
{
  gint64 tens = frame / count->ten, rest = frame % count->ten;
  gint64 minutes = rest < count->drop ? 0 : (rest - count->drop) / count->minute;

  return frame + count->drop * (9 * tens + minutes);
}

gboolean
drawl_timecode_format (DrawlRate rate, gboolean drop, gint64 frame, char code[DRAWL_TIMECODE_SIZE],
                       GError **error)
{
  Count count;

  if (!drawl_timecode_check (rate, drop, error))
    return FALSE;
  if (frame < 0) {
    g_autofree char *number = g_strdup_printf ("%" G_GINT64_FORMAT, frame);
    g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_RANGE,
                 _ ("frame %s has no code; frame 0 is the first"), number);
    return FALSE;
  }

  count_init (&count, rate, drop);
  gint64 number = code_number (&count, frame % count.day), seconds = number / count.second;
  g_snprintf (code, DRAWL_TIMECODE_SIZE, "%02d:%02d:%02d%c%0*d", (int)(seconds / 3600),
              (int)(seconds / 60 % 60), (int)(seconds % 60), drop ? ';' : ':', count.frame_width,
              (int)(number % count.second));
  return TRUE;
}

/* ---- Reading ---- */

static gboolean
refuse_code (GError **error, const char *code)
{
  g_autofree char *quoted = drawl_core_quote (code);

  g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_SYNTAX,
               _ ("“%s” is not a timecode; hours, minutes, seconds and frames such as 01:02:03:04 "
                  "are expected"),
               quoted);
  return FALSE;
}

/* Reads up to @most digits. FALSE when there is none, or one too many. */
static gboolean
read_field (const char **at, guint most, gint64 *field)
{
  guint n_digits = 0;

  for (*field = 0; g_ascii_isdigit (**at) && n_digits <= most; ++*at, n_digits++)
    *field = *field * 10 + (**at - '0');
  return n_digits > 0 && n_digits <= most;
}

static gboolean
read_fields (const char *code, gint64 field[N_FIELDS], char *separator)
{
  const char *at = code;

  while (g_ascii_isspace (*at))
    at++;
  for (guint i = 0; i < N_FIELDS; i++) {
    gboolean last = i == N_FIELDS - 1;
    if (last)
      *separator = *at;
    if (i > 0 && (*at == '\0' || strchr (last ? ":;.," : ":", *at++) == NULL))
      return FALSE;
    if (!read_field (&at, last ? FIELD_DIGITS_MAX : 2, &field[i]))
      return FALSE;
  }
  while (g_ascii_isspace (*at))
    at++;
  return *at == '\0';
}

static gboolean
check_fields (const Count *count, const gint64 field[N_FIELDS], GError **error)
{
  const struct {
    const char *name;
    gint64 n_values;
  } fields[N_FIELDS] = {
      {N_ ("hour"), DAY_HOURS},
      {N_ ("minute"), 60},
      {N_ ("second"), 60},
      {N_ ("frame"), count->second},
  };

  for (guint i = 0; i < N_FIELDS; i++)
    if (field[i] >= fields[i].n_values) {
      g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_NO_CODE,
                   /* Translators: "hour", "minute", "second" or "frame"; its number. */
                   _ ("there is no %s %d in a code at this rate; 0 to %d are expected"),
                   _ (fields[i].name), (int)field[i], (int)fields[i].n_values - 1);
      return FALSE;
    }
  return TRUE;
}

static gboolean
check_dropped (const Count *count, const gint64 field[N_FIELDS], GError **error)
{
  if (field[1] % 10 == 0 || field[2] != 0 || field[3] >= count->drop)
    return TRUE;

  g_set_error (error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_NO_CODE,
               _ ("%02d:%02d:00;%02d does not exist, drop code leaves it out; the minute begins at "
                  "%02d:%02d:00;%02d"),
               (int)field[0], (int)field[1], (int)field[3], (int)field[0], (int)field[1],
               (int)count->drop);
  return FALSE;
}

static gint64
frame_of (const Count *count, const gint64 field[N_FIELDS])
{
  gint64 minutes = field[0] * 60 + field[1];
  gint64 number = (minutes * 60 + field[2]) * count->second + field[3];

  return number - count->drop * (minutes - minutes / 10);
}

gboolean
drawl_timecode_parse (DrawlRate rate, gboolean drop, const char *code, gint64 *frame,
                      GError **error)
{
  gint64 field[N_FIELDS];
  char separator = '\0';
  Count count;

  if (!drawl_timecode_check (rate, drop, error))
    return FALSE;
  if (!read_fields (code, field, &separator))
    return refuse_code (error, code);
  if (!drop && (separator == ';' || separator == ',')) {
    g_set_error (
        error, DRAWL_CORE_ERROR, DRAWL_CORE_ERROR_SYNTAX,
        _ ("“%c” before the frames marks drop code; “:” is expected where no code is dropped"),
        separator);
    return FALSE;
  }

  count_init (&count, rate, drop);
  if (!check_fields (&count, field, error) || !check_dropped (&count, field, error))
    return FALSE;
  *frame = frame_of (&count, field);
  return TRUE;
}

gboolean
drawl_timecode_seconds (DrawlRate rate, gint64 frames, DrawlRational *seconds)
{
  return drawl_rate_valid (rate) && frames > G_MININT64 &&
         drawl_rational_div (drawl_rational_whole (frames), rate, seconds);
}
