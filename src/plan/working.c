/* SPDX-License-Identifier: GPL-3.0-or-later */

/* How a figure came about. Every figure has a name for people and a word for programs; how it is
 * reckoned stands in the rows of working-rows.c, what the words in them mean in working-words.c. */

#include "plan/working-private.h"

#include "core/text.h"
#include "plan/shot-load.h"

static const struct {
  const char *id;
  const char *name;
} figures[DRAWL_N_FIGURES] = {
    [DRAWL_FIGURE_CAPTURE] = {"capture_rate", N_ ("Capture rate")},
    [DRAWL_FIGURE_ACTION] = {"action_s", N_ ("Action time")},
    [DRAWL_FIGURE_SCREEN] = {"screen_s", N_ ("Screen time")},
    [DRAWL_FIGURE_FACTOR] = {"slow_factor", N_ ("Slow factor")},
    [DRAWL_FIGURE_SPEED_PERCENT] = {"speed_percent", N_ ("Speed of the picture")},
    [DRAWL_FIGURE_FRAMES] = {"frames", N_ ("Frames of the action")},
    [DRAWL_FIGURE_SCREEN_TIMECODE] = {"screen_timecode", N_ ("Screen time as timecode")},
    [DRAWL_FIGURE_TAKE_FRAMES] = {"take_frames", N_ ("Frames of a take")},
    [DRAWL_FIGURE_LICENCES] = {"licences", N_ ("Licences")},
    [DRAWL_FIGURE_FRAME_BYTES] = {"frame_bytes", N_ ("Bytes of a frame")},
    [DRAWL_FIGURE_DATA_RATE] = {"data_rate", N_ ("Data rate")},
    [DRAWL_FIGURE_CARD_TIME] = {"card_s", N_ ("Time on a card")},
    [DRAWL_FIGURE_CARDS] = {"cards", N_ ("Cards")},
    [DRAWL_FIGURE_BUFFER] = {"buffer_s", N_ ("Time in the ring buffer")},
    [DRAWL_FIGURE_BUFFER_EMPTY] = {"buffer_empty_s", N_ ("Time to write the ring buffer out")},
    [DRAWL_FIGURE_FOOTAGE] = {"take_feet", N_ ("Footage of a take")},
    [DRAWL_FIGURE_MAGAZINE] = {"magazine_s", N_ ("Time on a magazine")},
    [DRAWL_FIGURE_MAGAZINES] = {"magazines", N_ ("Magazines")},
};

const char *
drawl_figure_id (DrawlFigure figure)
{
  g_return_val_if_fail (figure < DRAWL_N_FIGURES, NULL);
  return figures[figure].id;
}

static DrawlWorkingShot
look_at (DrawlPlan *plan, DrawlShot *shot)
{
  const DrawlCheckQuestion *question = drawl_shot_get_question (shot);
  const DrawlCheck *check = drawl_shot_get_check (shot);
  const DrawlBody *body = question->body;
  gboolean digital = body != NULL && body->kind == DRAWL_BODY_DIGITAL;

  return (DrawlWorkingShot){
      .fields = drawl_shot_get_fields (shot),
      .timing = drawl_shot_get_timing (shot),
      .load = drawl_shot_get_load (shot),
      .check = check,
      .question = question,
      .size = body != NULL && question->size >= 0 ? &body->sizes[question->size] : NULL,
      .codec = digital && question->codec >= 0 ? &body->codecs[question->codec] : NULL,
      .card = digital && check->card >= 0 ? &body->cards[check->card] : NULL,
      .magazine = body != NULL && !digital ? drawl_body_longest_magazine (body) : NULL,
      .takes_span = drawl_plan_get_settings (plan)->takes_span,
      .unit = drawl_plan_get_length_unit (plan),
  };
}

DrawlWorking *
drawl_working_new (DrawlPlan *plan, DrawlShot *shot, DrawlFigure figure)
{
  DrawlWorkingShot looked_at = look_at (plan, shot);
  const DrawlWorkingRow *row = drawl_working_find_row (&looked_at, figure);

  if (row == NULL)
    return NULL;
  DrawlWorking *working = g_new0 (DrawlWorking, 1);
  working->name = g_strdup (_ (figures[figure].name));
  working->value = drawl_working_fill_in (_ (row->value), &looked_at);
  working->formula = drawl_working_fill_in (_ (row->formula), &looked_at);
  working->numbers = drawl_working_fill_in (_ (row->numbers), &looked_at);
  working->source = drawl_working_fill_in (_ (row->source), &looked_at);
  return working;
}

void
drawl_working_free (DrawlWorking *working)
{
  if (working == NULL)
    return;
  g_free (working->name);
  g_free (working->value);
  g_free (working->formula);
  g_free (working->numbers);
  g_free (working->source);
  g_free (working);
}
