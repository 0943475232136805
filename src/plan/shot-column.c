/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The columns of the shot table, one row each. A cell is written so that reading it gives the same
 * value again; times are seconds, rates frames a second, post speed per cent. */

#include "plan/shot-column.h"

#include "core/error.h"
#include "core/text.h"
#include "plan/error.h"

#include <string.h>

static const char *const second_units[] = {"s", NULL};

G_GNUC_PRINTF (3, 4)
static gboolean
refuse (GError **error, const char *cell, const char *format, ...)
{
  g_autofree char *quote = drawl_core_quote (cell);
  g_autofree char *expected = NULL;
  va_list values;

  va_start (values, format);
  expected = g_strdup_vprintf (format, values);
  va_end (values);
  /* Translators: what a cell of a table says, what was expected in its place. */
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_VALUE,
               _ ("“%s” stands there; %s is expected"), quote, expected);
  return FALSE;
}

static const DrawlShotFields *
fields_of (DrawlShot *shot)
{
  return drawl_shot_get_fields (shot);
}

/* ---- Texts ---- */

static char *
write_string (const DrawlShotColumn *column, DrawlPlan *plan, DrawlShot *shot)
{
  return g_strdup (G_STRUCT_MEMBER (char *, fields_of (shot), column->offset));
}

static gboolean
read_string (const DrawlShotColumn *column, const char *cell, DrawlShotReading *reading,
             GError **error)
{
  drawl_shot_fields_set (&G_STRUCT_MEMBER (char *, reading->fields, column->offset), cell);
  return TRUE;
}

/* Also from between quotation marks, where other texts keep their spaces. */
static gboolean
read_slate (const DrawlShotColumn *column, const char *cell, DrawlShotReading *reading,
            GError **error)
{
  g_autofree char *slate = drawl_shot_slate_strip (cell);
  return read_string (column, slate, reading, error);
}

static char *
write_profile (const DrawlShotColumn *column, DrawlPlan *plan, DrawlShot *shot)
{
  DrawlHiredBody *hired = drawl_plan_find_body (plan, fields_of (shot)->body);
  return g_strdup (hired != NULL ? drawl_hired_body_get_body (hired)->id : "");
}

static gboolean
read_profile (const DrawlShotColumn *column, const char *cell, DrawlShotReading *reading,
              GError **error)
{
  reading->profile = g_strdup (cell);
  return TRUE;
}

static char *
write_verdict (const DrawlShotColumn *column, DrawlPlan *plan, DrawlShot *shot)
{
  return g_strdup (drawl_verdict_id (drawl_shot_get_verdict (shot)));
}

/* ---- Truths ---- */

/* The first of each is written; all are read, and the translated ones. */
static const char *const truths[] = {N_ ("no|n|false|0|-|wished|non-drop|ndf"),
                                     N_ ("yes|y|true|1|x|must|drop|df")};

static char *
write_truth (const DrawlShotColumn *column, DrawlPlan *plan, DrawlShot *shot)
{
  const char *words = truths[G_STRUCT_MEMBER (gboolean, fields_of (shot), column->offset)];
  return g_strndup (words, strcspn (words, "|"));
}

static gboolean
has_word (const char *words, const char *folded)
{
  g_auto (GStrv) list = g_strsplit (words, "|", -1);

  for (guint i = 0; list[i] != NULL; i++) {
    g_autofree char *word = g_utf8_casefold (list[i], -1);
    if (g_str_equal (word, folded))
      return TRUE;
  }
  return FALSE;
}

static gboolean
read_truth (const DrawlShotColumn *column, const char *cell, DrawlShotReading *reading,
            GError **error)
{
  g_autofree char *folded = g_utf8_casefold (cell, -1);

  for (guint truth = 0; truth < G_N_ELEMENTS (truths); truth++)
    if (has_word (truths[truth], folded) || has_word (_ (truths[truth]), folded)) {
      G_STRUCT_MEMBER (gboolean, reading->fields, column->offset) = (gboolean)truth;
      return TRUE;
    }
  return refuse (error, cell, _ ("yes or no"));
}

/* ---- Numbers ---- */

static char *
write_count (const DrawlShotColumn *column, DrawlPlan *plan, DrawlShot *shot)
{
  return g_strdup_printf ("%u", G_STRUCT_MEMBER (guint, fields_of (shot), column->offset));
}

static gboolean
read_count (const DrawlShotColumn *column, const char *cell, DrawlShotReading *reading,
            GError **error)
{
  DrawlRational number;

  if (!drawl_rational_parse (cell, &number, NULL) || number.den != 1 ||
      number.num < column->least || number.num > column->most)
    return refuse (error, cell, _ ("a whole number from %d to %d"), column->least, column->most);
  G_STRUCT_MEMBER (guint, reading->fields, column->offset) = (guint)number.num;
  return TRUE;
}

static char *
exact_text (DrawlRational value)
{
  char text[DRAWL_RATIONAL_TEXT_SIZE];
  return g_strdup (drawl_rational_text (value, text));
}

static char *
write_time (const DrawlShotColumn *column, DrawlPlan *plan, DrawlShot *shot)
{
  return exact_text (G_STRUCT_MEMBER (DrawlRational, fields_of (shot), column->offset));
}

static gboolean
read_time (const DrawlShotColumn *column, const char *cell, DrawlShotReading *reading,
           GError **error)
{
  DrawlRational seconds;

  if (!drawl_rational_parse_unit (cell, second_units, &seconds, error))
    return FALSE;
  if (seconds.num < 0 ||
      drawl_rational_compare (seconds, drawl_rational_whole (DRAWL_TIMING_MAX_S)) > 0)
    return refuse (error, cell, _ ("a time of 0 s or more"));
  G_STRUCT_MEMBER (DrawlRational, reading->fields, column->offset) = seconds;
  return TRUE;
}

/* ---- Terms ---- */

/* Rates never as decimals: 23.976 would be read as 24000/1001. */
static char *
write_term (const DrawlShotColumn *column, DrawlPlan *plan, DrawlShot *shot)
{
  DrawlRational value = fields_of (shot)->blanks.value[column->term];
  char text[DRAWL_RATIONAL_TEXT_SIZE];

  if (column->term == DRAWL_TIMING_CAPTURE || column->term == DRAWL_TIMING_PLAYBACK)
    return g_strdup (drawl_rate_text (value, text));
  return exact_text (value);
}

static gboolean
read_term (const DrawlShotColumn *column, const char *cell, DrawlShotReading *reading,
           GError **error)
{
  if (!drawl_timing_term_parse (column->term, cell, &reading->value[column->term], error))
    return FALSE;
  reading->present |= DRAWL_TIMING_BIT (column->term);
  return TRUE;
}

/* ---- What is held ---- */

#define NOTHING_HELD "none"

static char *
write_held (const DrawlShotColumn *column, DrawlPlan *plan, DrawlShot *shot)
{
  guint held = fields_of (shot)->blanks.held;
  GString *keys = g_string_new (NULL);

  for (guint term = 0; term < DRAWL_TIMING_N_TERMS; term++)
    if ((held & DRAWL_TIMING_BIT (term)) != 0)
      g_string_append_printf (keys, "%s%s", keys->len > 0 ? " " : "", drawl_timing_term_key (term));
  if (keys->len == 0)
    g_string_append (keys, NOTHING_HELD);
  return g_string_free (keys, FALSE);
}

static guint
find_term (const char *key)
{
  guint term = 0;

  while (term < DRAWL_TIMING_N_TERMS && g_ascii_strcasecmp (key, drawl_timing_term_key (term)) != 0)
    term++;
  return term;
}

static gboolean
read_held (const DrawlShotColumn *column, const char *cell, DrawlShotReading *reading,
           GError **error)
{
  g_auto (GStrv) keys = g_strsplit_set (cell, " ,;+", -1);
  guint held = 0;

  for (guint i = 0; keys[i] != NULL; i++) {
    guint term = find_term (keys[i]);
    if (keys[i][0] == '\0' || g_ascii_strcasecmp (keys[i], NOTHING_HELD) == 0)
      continue;
    if (term == DRAWL_TIMING_N_TERMS)
      return refuse (error, keys[i], _ ("“none”, or a list such as “playback_rate screen_s”"));
    held |= DRAWL_TIMING_BIT (term);
  }
  reading->held = held;
  return TRUE;
}

/* ---- The columns ---- */

#define OF(member) .offset = G_STRUCT_OFFSET (DrawlShotFields, member)
#define TEXT .write = write_string, .read = read_string
#define COUNT .write = write_count, .read = read_count, .number = TRUE
#define TIME .write = write_time, .read = read_time, .number = TRUE
#define TERM(name)                                                                                 \
  .write = write_term, .read = read_term, .number = TRUE, .term = DRAWL_TIMING_##name

static const DrawlShotColumn columns[] = {
    {{"slate", N_ ("slate|slate no|slate number|shot|shot no|shot number|shot #|setup|#")},
     .write = write_string,
     .read = read_slate,
     OF (slate)},
    {{"scene", N_ ("scene|scene no|scene number|sc|sequence")}, TEXT, OF (scene)},
    {{"action", N_ ("action|what happens|description|shot description")}, TEXT, OF (action)},
    {{"capture_rate", N_ ("capture rate|capture|fps|frame rate|rate|camera rate|camera fps|capture "
                          "fps|shooting rate")},
     TERM (CAPTURE)},
    {{"playback_rate",
      N_ ("playback rate|playback|play|play rate|play fps|playback fps|project rate|project "
          "fps|base rate|timebase")},
     TERM (PLAYBACK)},
    {{"action_s", N_ ("action time|action(s)|action(sec)|action duration|real time|event time")},
     TERM (ACTION)},
    {{"screen_s", N_ ("screen time|screen|on screen|screen duration|duration|length|screen(s)")},
     TERM (SCREEN)},
    {{"slow_factor", N_ ("slow factor|factor|slow|slower|slowdown|slow motion|slow-mo")},
     TERM (FACTOR)},
    {{"post_speed_percent", N_ ("post speed|post speed %|post|speed in post")}, TERM (POST_SPEED)},
    {{"held", N_ ("held|hold")}, .write = write_held, .read = read_held},
    {{"drop", N_ ("drop|drop frame|df")}, .write = write_truth, .read = read_truth, OF (drop)},
    {{"body", N_ ("body|camera|cam")}, TEXT, OF (body)},
    {{"profile", N_ ("profile|body profile|camera profile|camera model")},
     .write = write_profile,
     .read = read_profile},
    {{"size", N_ ("size|picture size|frame size|resolution")}, TEXT, OF (size)},
    {{"codec", N_ ("codec|recording codec|compression")}, TEXT, OF (codec)},
    {{"takes", N_ ("takes|number of takes|no of takes|takes planned")},
     COUNT,
     OF (takes),
     .least = 1,
     .most = DRAWL_SHOT_TAKES_MAX},
    {{"handle_before_s", N_ ("handle before|handle in|head handle|pre-roll")},
     TIME,
     OF (handle_before_s)},
    {{"handle_after_s", N_ ("handle after|handle out|tail handle|post-roll")},
     TIME,
     OF (handle_after_s)},
    {{"audio_tracks", N_ ("audio tracks|audio|sound|sound tracks|tracks")},
     COUNT,
     OF (audio_tracks),
     .most = DRAWL_SHOT_AUDIO_MAX},
    {{"must", N_ ("must|must have|must be|essential")},
     .write = write_truth,
     .read = read_truth,
     OF (must)},
    {{"notes", N_ ("notes|note|remarks|remark|comments|comment")}, TEXT, OF (notes)},
    {{"verdict", N_ ("verdict")}, .write = write_verdict},
};

const DrawlShotColumn *
drawl_shot_columns (guint *n_columns)
{
  *n_columns = G_N_ELEMENTS (columns);
  return columns;
}

guint
drawl_shot_column_find (const char *id)
{
  guint column = 0;

  while (!g_str_equal (columns[column].field.id, id))
    column++;
  return column;
}
