/* SPDX-License-Identifier: GPL-3.0-or-later */

/* How each figure comes about, a row each way; the first row of a figure that applies to the shot
 * counts. To add a figure, add its name in working.c and its rows here. Words in braces stand for
 * numbers of the shot and must be kept as they are in a translation. */

#include "plan/working-private.h"

#include "core/text.h"
#include "core/timecode.h"

/* ---- When a row applies ---- */

static gboolean
follows (const DrawlWorkingShot *shot, DrawlTimingTerm term)
{
  return (shot->timing->followed & DRAWL_TIMING_BIT (term)) != 0;
}

static gboolean
capture_follows (const DrawlWorkingShot *shot)
{
  return follows (shot, DRAWL_TIMING_CAPTURE);
}

static gboolean
action_follows (const DrawlWorkingShot *shot)
{
  return follows (shot, DRAWL_TIMING_ACTION);
}

static gboolean
screen_follows (const DrawlWorkingShot *shot)
{
  return follows (shot, DRAWL_TIMING_SCREEN);
}

static gboolean
factor_follows_rates (const DrawlWorkingShot *shot)
{
  return follows (shot, DRAWL_TIMING_FACTOR) && !follows (shot, DRAWL_TIMING_CAPTURE) &&
         !follows (shot, DRAWL_TIMING_PLAYBACK);
}

static gboolean
factor_follows_times (const DrawlWorkingShot *shot)
{
  return follows (shot, DRAWL_TIMING_FACTOR);
}

static gboolean
always (const DrawlWorkingShot *shot)
{
  return TRUE;
}

static gboolean
has_timecode (const DrawlWorkingShot *shot)
{
  return drawl_timecode_check (shot->timing->value[DRAWL_TIMING_PLAYBACK], shot->fields->drop,
                               NULL);
}

static gboolean
has_sets (const DrawlWorkingShot *shot)
{
  return shot->check->sets != NULL && shot->check->sets->len > 0;
}

static gboolean
is_digital (const DrawlWorkingShot *shot)
{
  return shot->load->known && shot->codec != NULL;
}

static gboolean
is_kind (const DrawlWorkingShot *shot, DrawlPayloadKind kind)
{
  return is_digital (shot) && shot->codec->payload.kind == kind;
}

static gboolean
is_packed (const DrawlWorkingShot *shot)
{
  return is_kind (shot, DRAWL_PAYLOAD_UNCOMPRESSED) && shot->codec->payload.row_align == 0;
}

static gboolean
is_aligned (const DrawlWorkingShot *shot)
{
  return is_kind (shot, DRAWL_PAYLOAD_UNCOMPRESSED) && shot->codec->payload.row_align > 0;
}

static gboolean
is_fixed (const DrawlWorkingShot *shot)
{
  return is_kind (shot, DRAWL_PAYLOAD_FIXED);
}

static gboolean
is_scaling (const DrawlWorkingShot *shot)
{
  return is_kind (shot, DRAWL_PAYLOAD_SCALING);
}

static gboolean
is_constant (const DrawlWorkingShot *shot)
{
  return is_kind (shot, DRAWL_PAYLOAD_CONSTANT);
}

static gboolean
has_card (const DrawlWorkingShot *shot)
{
  return is_digital (shot) && shot->card != NULL && shot->load->card_frames > 0;
}

static gboolean
fills_whole (const DrawlWorkingShot *shot)
{
  return has_card (shot) && shot->load->cards > 0 && !shot->takes_span;
}

static gboolean
fills_spanning (const DrawlWorkingShot *shot)
{
  return has_card (shot) && shot->load->cards > 0 && shot->takes_span;
}

static gboolean
has_buffer (const DrawlWorkingShot *shot)
{
  return is_digital (shot) && shot->load->buffer.frames > 0;
}

static gboolean
empties_buffer (const DrawlWorkingShot *shot)
{
  return has_buffer (shot) && shot->load->buffer.empty_s.num > 0;
}

static gboolean
is_film (const DrawlWorkingShot *shot)
{
  return shot->load->known && shot->size != NULL && shot->size->gauge != NULL;
}

/* 35 and 65 mm share their perforations. */
static gboolean
is_wide_film (const DrawlWorkingShot *shot)
{
  return is_film (shot) && (g_str_has_prefix (shot->size->gauge->id, "35-") ||
                            g_str_has_prefix (shot->size->gauge->id, "65-"));
}

static gboolean
is_metric_wide_film (const DrawlWorkingShot *shot)
{
  return is_wide_film (shot) && shot->unit == DRAWL_LENGTH_METRIC;
}

static gboolean
is_metric_film (const DrawlWorkingShot *shot)
{
  return is_film (shot) && shot->unit == DRAWL_LENGTH_METRIC;
}

static gboolean
has_magazine (const DrawlWorkingShot *shot)
{
  return is_film (shot) && shot->magazine != NULL && shot->load->magazine_s.num > 0;
}

static gboolean
fills_magazines (const DrawlWorkingShot *shot)
{
  return has_magazine (shot) && shot->load->magazines > 0;
}

/* ---- Rows ---- */

#define DEFINITION N_ ("Definition")
#define ENTERED N_ ("Entered in the sentence")
#define FRAME_COUNT "= {frame_exact} B"
#define COUNTING_FOOT                                                                              \
  /* xgettext:no-c-format */                                                                       \
  N_ ("Counting foot: 64 perforations (35 and 65 mm), as footage counters and tables go by. The "  \
      "physical length is {film_m} m, because the counting foot is 304 mm, 0.26 % short of a "     \
      "foot ({step_source})")

/* clang-format off */
static const DrawlWorkingRow rows[] = {
  {DRAWL_FIGURE_CAPTURE, capture_follows, "{capture}",
   N_ ("slow factor × playback rate"), "{factor} × {playback}", DEFINITION},
  {DRAWL_FIGURE_CAPTURE, always, "{capture}", N_ ("as entered"), "{capture}", ENTERED},

  {DRAWL_FIGURE_ACTION, action_follows, "{action}",
   N_ ("screen time × post speed ÷ slow factor"), "{screen_s} × {post} ÷ {ratio}", DEFINITION},
  {DRAWL_FIGURE_ACTION, always, "{action}", N_ ("as entered"), "{action}", ENTERED},

  {DRAWL_FIGURE_SCREEN, screen_follows, "{screen}",
   N_ ("action time × slow factor ÷ post speed"), "{action_s} × {ratio} ÷ {post}", DEFINITION},
  {DRAWL_FIGURE_SCREEN, always, "{screen}", N_ ("as entered"), "{screen}", ENTERED},

  {DRAWL_FIGURE_FACTOR, factor_follows_rates, "{factor}",
   N_ ("capture rate ÷ playback rate"), "{capture} ÷ {playback}", DEFINITION},
  {DRAWL_FIGURE_FACTOR, factor_follows_times, "{factor}",
   N_ ("screen time × post speed ÷ action time"), "{screen_s} × {post} ÷ {action_s}", DEFINITION},
  {DRAWL_FIGURE_FACTOR, always, "{factor}", N_ ("as entered"), "{factor}", ENTERED},

  {DRAWL_FIGURE_SPEED_PERCENT, always, "{speed}",
   N_ ("post speed ÷ slow factor"), "{post} ÷ {ratio}", DEFINITION},

  {DRAWL_FIGURE_FRAMES, always, "{frames}",
   N_ ("action time × capture rate, rounded up to whole frames"), "{action_s} × {capture}",
   DEFINITION},

  {DRAWL_FIGURE_SCREEN_TIMECODE, has_timecode, "{screen_code}",
   N_ ("screen time × playback rate, rounded up to whole frames, counted as timecode"),
   N_ ("{screen_s} × {playback} = {screen_frames} frames"), "{code_source}"},

  {DRAWL_FIGURE_TAKE_FRAMES, always, "{take_frames}",
   N_ ("(handle before + action time + handle after) × capture rate, rounded up to whole frames"),
   "({before} + {action_s} + {after}) × {capture}", DEFINITION},

  {DRAWL_FIGURE_LICENCES, has_sets, "{cheapest}",
   N_ ("the cheapest of all smallest sets of licences that allow the shot"), "{sets}",
   "{document}"},

  {DRAWL_FIGURE_FRAME_BYTES, is_packed, "{frame}",
   N_ ("width × height × samples a pixel × bits a sample ÷ 8, rounded up, + header"),
   "{width} × {height} × {samples} × {bits} ÷ 8 + {header} " FRAME_COUNT, "{law_source}"},
  {DRAWL_FIGURE_FRAME_BYTES, is_aligned, "{frame}",
   N_ ("width × samples a pixel × bits a sample ÷ 8, rounded up to whole groups of {align} bytes, "
       "× height, + header"),
   "{width} × {samples} × {bits} ÷ 8 (↑ {align}) × {height} + {header} " FRAME_COUNT,
   "{law_source}"},
  {DRAWL_FIGURE_FRAME_BYTES, is_fixed, "{frame}",
   N_ ("the same for every frame, + header"), "{fixed} + {header} " FRAME_COUNT, "{law_source}"},
  {DRAWL_FIGURE_FRAME_BYTES, is_scaling, "{frame}",
   N_ ("stated data rate ÷ 8 ÷ the rate at which it is stated, + header"),
   "{mbps} Mbit/s ÷ 8 ÷ {at} + {header} " FRAME_COUNT, "{law_source}"},
  {DRAWL_FIGURE_FRAME_BYTES, is_constant, "{frame}",
   N_ ("data rate ÷ 8 ÷ capture rate, + header"),
   "{mbps} Mbit/s ÷ 8 ÷ {capture} + {header} " FRAME_COUNT, "{law_source}"},

  {DRAWL_FIGURE_DATA_RATE, is_digital, "{data_rate}",
   N_ ("bytes of a frame × capture rate + audio tracks × 48 kHz × 24 bit ÷ 8"),
   "{frame_exact} B × {capture} + {audio} × {track} = {data_rate_exact} B/s",
   N_ ("Definition; bytes of a frame: {law_source}")},

  {DRAWL_FIGURE_CARD_TIME, has_card, "{card_s}",
   N_ ("card less reserve ÷ bytes of a frame with its sound, whole frames, ÷ capture rate"),
   N_ ("{card} × (100 % − {reserve}) ÷ {loaded_frame} = {card_frames} frames; ÷ {capture}"),
   N_ ("Definition; the card holds what is printed on it, in decimal gigabytes")},

  {DRAWL_FIGURE_CARDS, fills_whole, "{cards}",
   N_ ("takes ÷ whole takes that fit on a card, rounded up"), "{takes} ÷ {takes_on_card}",
   N_ ("Definition; takes are kept whole")},
  {DRAWL_FIGURE_CARDS, fills_spanning, "{cards}",
   N_ ("takes × bytes of a take ÷ card less reserve, rounded up"),
   "{takes} × {take_bytes} ÷ ({card} × (100 % − {reserve}))",
   N_ ("Definition; takes run on from card to card")},

  {DRAWL_FIGURE_BUFFER, has_buffer, "{held_s}",
   N_ ("ring buffer ÷ bytes of a frame, whole frames, ÷ capture rate"),
   N_ ("{buffer} ÷ {frame} = {buffer_frames} frames; ÷ {capture}"),
   N_ ("Definition; size of the buffer: {document}")},
  {DRAWL_FIGURE_BUFFER_EMPTY, empties_buffer, "{empty_s}",
   N_ ("frames held × bytes of a frame ÷ write speed"),
   "{buffer_frames} × {frame} ÷ {write_speed}", N_ ("Definition; write speed: {document}")},

  {DRAWL_FIGURE_FOOTAGE, is_metric_wide_film, "{metres}",
   N_ ("frames of the take ÷ frames a foot × 0.3048 m"),
   N_ ("{take_frames} ÷ {foot_frames} × 0.3048 m = {metres}; on the counter {feet_frames}"),
   COUNTING_FOOT},
  {DRAWL_FIGURE_FOOTAGE, is_metric_film, "{metres}",
   N_ ("frames of the take ÷ frames a foot × 0.3048 m"),
   N_ ("{take_frames} ÷ {foot_frames} × 0.3048 m = {metres}; on the counter {feet_frames}"),
   N_ ("Foot-count tables: {foot_frames} frames a foot. The physical length is {film_m} m "
       "({step_source})")},
  {DRAWL_FIGURE_FOOTAGE, is_wide_film, "{feet_frames}",
   N_ ("frames of the take ÷ frames a foot; whole feet + frames"),
   "{take_frames} ÷ {foot_frames}", COUNTING_FOOT},
  {DRAWL_FIGURE_FOOTAGE, is_film, "{feet_frames}",
   N_ ("frames of the take ÷ frames a foot; whole feet + frames"),
   "{take_frames} ÷ {foot_frames}",
   N_ ("Foot-count tables: {foot_frames} frames a foot. The physical length is {film_m} m "
       "({step_source})")},
  {DRAWL_FIGURE_MAGAZINE, has_magazine, "{magazine_s}",
   N_ ("length of the magazine × frames a foot ÷ capture rate"),
   "{magazine_feet} ft × {foot_frames} ÷ {capture}", N_ ("Definition; longest magazine of the body")},
  {DRAWL_FIGURE_MAGAZINES, fills_magazines, "{magazines}",
   N_ ("takes ÷ whole takes that fit in a magazine, rounded up"), "{takes} ÷ {takes_on_magazine}",
   N_ ("Definition; takes are kept whole")},
};
/* clang-format on */

const DrawlWorkingRow *
drawl_working_find_row (const DrawlWorkingShot *shot, DrawlFigure figure)
{
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    if (rows[i].figure == figure && rows[i].applies (shot))
      return &rows[i];
  return NULL;
}
