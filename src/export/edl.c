/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Edit decision lists. An event's record codes follow each other without a gap; its source codes
 * count real time at the rate of the list, so that source frames = record frames · speed, and the
 * M2 line says list rate · speed, in frames a second. */

#include "export/edl.h"

#include <string.h>

#include "core/error.h"
#include "core/text.h"
#include "core/timecode.h"
#include "export/cut-list.h"
#include "export/error.h"
#include "export/reel.h"

#define LINE_END "\r\n"
#define TITLE "Plan" /* of a plan that has none */
#define TWO_DIGITS 100
#define EVENTS_MAX 999 /* three digits: more than that not every program reads */
#define PLACES_MAX 6
#define SPEED_COLUMNS 20  /* so that the code behind it stands in one column */
#define SPEED_CUSTOMARY 7 /* "004.8" to "000.576": longer than that not every program reads */
#define PRECISION 200     /* a figure may be off by one part in so many */

/* ---- Speeds ---- */

/* TRUE when @rounded is near enough to @scaled. */
static gboolean
is_near (DrawlRational scaled, gint64 rounded)
{
  DrawlRational off, times;

  if (rounded == 0 || !drawl_rational_sub (scaled, drawl_rational_whole (rounded), &off) ||
      !drawl_rational_mul (off, drawl_rational_whole (PRECISION), &times))
    return FALSE;
  times.num = ABS (times.num);
  scaled.num = ABS (scaled.num);
  return drawl_rational_compare (times, scaled) <= 0;
}

char *
drawl_edl_speed_text (DrawlRational frames_s)
{
  gboolean negative = frames_s.num < 0;
  DrawlRational scaled = frames_s, next;
  gint64 scale = 1, rounded = 0;
  int places = 0;

  while (places < PLACES_MAX && !(places > 0 && is_near (scaled, rounded)) &&
         drawl_rational_mul (scaled, drawl_rational_whole (10), &next)) {
    scaled = next;
    scale *= 10;
    places++;
    rounded = drawl_rational_round (scaled);
  }
  rounded = MAX (ABS (rounded), 1);
  return g_strdup_printf ("%s%03" G_GINT64_FORMAT ".%0*" G_GINT64_FORMAT, negative ? "-" : "",
                          rounded / scale, places, rounded % scale);
}

gint64
drawl_edl_source_frames (gint64 frames, DrawlRational speed)
{
  DrawlRational exact;

  if (!drawl_rational_mul (drawl_rational_whole (frames), speed, &exact))
    return 0;
  return MAX (drawl_rational_round (exact), 1);
}

/* ---- Events ---- */

typedef struct {
  const DrawlCutList *list;
  gint64 start; /* frame of the first record code */
  gint64 day;   /* frames until the code begins again */
  DrawlReels reels;
  GString *text;
  guint n_wide; /* speeds that are longer than is customary */
} Writer;

static gboolean
refuse_shot (const DrawlCut *cut, DrawlExportError code, const char *message, GError **error)
{
  g_autofree char *slate = drawl_core_quote (drawl_shot_get_slate (cut->shot));
  g_set_error (error, DRAWL_EXPORT_ERROR, (int)code, _ ("shot %s: %s"), slate, message);
  return FALSE;
}

/* First and last source frame, the last not included. */
static gboolean
find_source (const Writer *writer, const DrawlCut *cut, gint64 *in, gint64 *out, GError **error)
{
  DrawlRational before = drawl_shot_get_fields (cut->shot)->handle_before_s, frames;
  gint64 span = drawl_edl_source_frames (cut->frames, cut->speed);

  if (span == 0 || !drawl_rational_mul (before, writer->list->rate, &frames))
    return refuse_shot (cut, DRAWL_EXPORT_ERROR_INEXACT,
                        _ ("its frames cannot be counted exactly; times of fewer digits are "
                           "expected"),
                        error);
  *in = drawl_rational_floor (frames);
  if (span >= writer->day || *in >= writer->day - span)
    return refuse_shot (cut, DRAWL_EXPORT_ERROR_TOO_LONG,
                        _ ("it is longer than the 24 hours that a timecode counts"), error);
  *out = *in + span;
  return TRUE;
}

/* One line of plain text: control characters come out as spaces. */
static void
append_line (GString *text, const char *words, const char *rest)
{
  gsize start = text->len;

  g_string_append (text, words);
  g_string_append (text, rest);
  for (gsize i = start; i < text->len; i++)
    if (g_ascii_iscntrl (text->str[i]))
      text->str[i] = ' ';
  g_string_append (text, LINE_END);
}

static void
append_notes (GString *text, const char *notes)
{
  g_auto (GStrv) lines = g_strsplit_set (notes, "\r\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    if (*g_strstrip (lines[i]) != '\0')
      append_line (text, "* COMMENT: ", lines[i]);
}

/* Neither fails: the list's rate has a timecode, and no frame is below 0. */
static void
code_of (const Writer *writer, gint64 frame, char code[DRAWL_TIMECODE_SIZE])
{
  drawl_timecode_format (writer->list->rate, writer->list->drop, frame, code, NULL);
}

static gboolean
append_speed (Writer *writer, const DrawlCut *cut, const char *reel, const char *source_in,
              GError **error)
{
  DrawlRational frames_s;

  if (drawl_rational_equal (cut->speed, drawl_rational_whole (1)))
    return TRUE;
  if (!drawl_rational_mul (writer->list->rate, cut->speed, &frames_s))
    return refuse_shot (cut, DRAWL_EXPORT_ERROR_INEXACT,
                        _ ("its speed cannot be worked out exactly; values of fewer digits are "
                           "expected"),
                        error);
  g_autofree char *speed = drawl_edl_speed_text (frames_s);
  writer->n_wide += strlen (speed) > SPEED_CUSTOMARY;
  g_string_append_printf (writer->text, "M2   %-8s   %-*s %s" LINE_END, reel, SPEED_COLUMNS, speed,
                          source_in);
  return TRUE;
}

static gboolean
append_event (Writer *writer, guint number, const DrawlCut *cut, GError **error)
{
  const char *slate = drawl_shot_get_slate (cut->shot);
  char source[2][DRAWL_TIMECODE_SIZE], record[2][DRAWL_TIMECODE_SIZE];
  gint64 in = 0, out = 0;

  if (!find_source (writer, cut, &in, &out, error))
    return FALSE;
  const char *reel = drawl_reels_add (&writer->reels, slate);
  code_of (writer, in, source[0]);
  code_of (writer, out, source[1]);
  code_of (writer, writer->start + cut->in, record[0]);
  code_of (writer, writer->start + cut->in + cut->frames, record[1]);

  g_string_append_printf (writer->text, "%03u  %-8s V     C        %s %s %s %s" LINE_END, number,
                          reel, source[0], source[1], record[0], record[1]);
  if (!append_speed (writer, cut, reel, source[0], error))
    return FALSE;
  append_line (writer->text, "* FROM CLIP NAME: ", slate);
  append_notes (writer->text, drawl_shot_get_fields (cut->shot)->notes);
  return TRUE;
}

/* ---- The list ---- */

static gboolean
check_list (Writer *writer, GError **error)
{
  const DrawlCutList *list = writer->list;
  char rate[DRAWL_RATIONAL_TEXT_SIZE];

  drawl_rate_text (list->rate, rate);
  if (!drawl_cut_list_start (list, &writer->start)) {
    g_set_error (error, DRAWL_EXPORT_ERROR, DRAWL_EXPORT_ERROR_NO_TIMECODE,
                 _ ("the plan's playback rate of %s has no timecode; a whole rate, or one times "
                    "1000/1001, is expected"),
                 rate);
    return FALSE;
  }
  if (drawl_rate_nominal (list->rate) > TWO_DIGITS) {
    g_set_error (error, DRAWL_EXPORT_ERROR, DRAWL_EXPORT_ERROR_NO_TIMECODE,
                 _ ("the plan's playback rate of %s needs three digits for the frames; at most %d "
                    "is expected"),
                 rate, TWO_DIGITS);
    return FALSE;
  }
  writer->day = drawl_timecode_day_frames (list->rate, list->drop);
  if (list->frames < writer->day - writer->start)
    return TRUE;
  g_set_error (
      error, DRAWL_EXPORT_ERROR, DRAWL_EXPORT_ERROR_TOO_LONG,
      _ ("the shots are longer than the 23 hours that a list from 01:00:00:00 on can hold"));
  return FALSE;
}

static void
append_head (Writer *writer, DrawlPlan *plan)
{
  const char *title = drawl_plan_get_settings (plan)->title;

  append_line (writer->text, "TITLE: ", title[0] != '\0' ? title : TITLE);
  append_line (writer->text, "FCM: ", writer->list->drop ? "DROP FRAME" : "NON-DROP FRAME");
  append_line (writer->text, "", "");
}

static void
warn (const Writer *writer, GPtrArray *warnings)
{
  const DrawlCutList *list = writer->list;

  drawl_cut_list_warn (list, warnings);
  if (list->cuts->len > EVENTS_MAX)
    g_ptr_array_add (warnings, g_strdup_printf (_ ("%u events: not every program reads more than "
                                                   "%d in one list"),
                                                list->cuts->len, EVENTS_MAX));
  if (writer->n_wide > 0)
    g_ptr_array_add (
        warnings,
        g_strdup_printf (ngettext_ ("%u shot has a speed of so many digits that not every "
                                    "program reads its M2 line",
                                    "%u shots have speeds of so many digits that not "
                                    "every program reads their M2 lines",
                                    writer->n_wide),
                         writer->n_wide));
}

char *
drawl_edl_text (DrawlPlan *plan, GPtrArray *warnings, GError **error)
{
  g_autoptr (DrawlCutList) list = drawl_cut_list_new (plan, error);
  Writer writer = {.list = list};
  gboolean done = TRUE;

  if (list == NULL || !check_list (&writer, error))
    return NULL;
  writer.text = g_string_new (NULL);
  drawl_reels_init (&writer.reels);
  append_head (&writer, plan);
  for (guint i = 0; i < list->cuts->len && done; i++)
    done = append_event (&writer, i + 1, &g_array_index (list->cuts, DrawlCut, i), error);
  drawl_reels_clear (&writer.reels);
  if (done)
    warn (&writer, warnings);
  return g_string_free (writer.text, !done);
}
