/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The words of the span picture in their places. Invariant: no text stands over another, and none
 * leaves the picture; what has no room is said in fewer words, and cut only at last. Lengths in
 * points. */

#include "draw/text.h"
#include "draw/timeline-scene.h"
#include "draw/timeline-words.h"

#include "core/text.h"

static const DrawlTextStyle plain = {0}, strong = {.bold = TRUE};

/* ---- Lines ---- */

static double
width_of (const DrawlTimelineScene *scene, const DrawlTextStyle *text_style, const char *text)
{
  double width, height;

  drawl_text_measure (scene->cr, scene->style, text_style, text, &width, &height);
  return width;
}

static void
write_at (const DrawlTimelineScene *scene, const DrawlTextStyle *text_style, DrawlColour colour,
          double x, double y, const char *text)
{
  drawl_style_set_colour (scene->cr, colour);
  drawl_text_draw (scene->cr, scene->style, text_style, scene->style->rtl ? scene->at.width - x : x,
                   y, text);
}

/* ---- Captions ---- */

/* A row of figures: what it is, the figures, and something more, of which the middle stays
 * longest. */
typedef struct {
  const char *lead;
  const char *figures;
  const char *brief; /* in place of the figures where they have no room */
  const char *more;  /* or NULL */
} Caption;

/* What of the caption fits into @room; returns its width. */
static double
fit_caption (const DrawlTimelineScene *scene, Caption *caption, double room)
{
  double gap = 0.7 * scene->line, width = width_of (scene, &strong, caption->figures);
  double lead = width_of (scene, &plain, caption->lead) + gap;
  double more = caption->more != NULL ? width_of (scene, &plain, caption->more) + gap : 0;

  if (lead + width + more <= room)
    return lead + width + more;
  caption->more = NULL;
  if (lead + width <= room)
    return lead + width;
  caption->lead = NULL;
  if (width <= room)
    return width;
  caption->figures = caption->brief;
  return MIN (width_of (scene, &strong, caption->figures), room);
}

/* What was fitted into @room. */
static void
write_caption (const DrawlTimelineScene *scene, const Caption *caption, double room, double x,
               double y)
{
  const DrawlStyle *style = scene->style;
  double gap = 0.7 * scene->line;
  DrawlTextStyle figures = {.bold = TRUE, .max_width = room};

  if (caption->lead != NULL) {
    write_at (scene, &plain, style->dim, x, y, caption->lead);
    x += width_of (scene, &plain, caption->lead) + gap;
  }
  write_at (scene, &figures, style->ink, x, y, caption->figures);
  if (caption->more != NULL)
    write_at (scene, &plain, style->dim, x + width_of (scene, &strong, caption->figures) + gap, y,
              caption->more);
}

/* In a row of its own: at the zero of the spans, or as near as it fits. */
static void
draw_caption (const DrawlTimelineScene *scene, Caption caption, double y)
{
  double room = scene->at.width - 2 * DRAWL_TIMELINE_EDGE;
  double width = fit_caption (scene, &caption, room);
  double x = MIN (scene->at.zero_x, DRAWL_TIMELINE_EDGE + room - width);

  write_caption (scene, &caption, room, x, y);
}

/* Beside a span, @end being the end of all that is drawn of it; FALSE when there is no room. */
static gboolean
draw_caption_beside (const DrawlTimelineScene *scene, Caption caption,
                     const cairo_rectangle_t *span, double end)
{
  double x = MAX (end, drawl_timeline_end (span) + DRAWL_TIMELINE_KNOB) + 0.7 * scene->line;
  double room = scene->at.width - DRAWL_TIMELINE_EDGE - x;
  Caption fitted = caption;

  if (span->height < scene->line || fit_caption (scene, &fitted, room) > room ||
      fitted.figures != caption.figures)
    return FALSE;
  write_caption (scene, &fitted, room, x, span->y + (span->height - scene->line) / 2);
  return TRUE;
}

/* In its own row @y, if there is one; beside a span that is but a mark. */
static void
place_caption (const DrawlTimelineScene *scene, Caption caption, const cairo_rectangle_t *span,
               double end, double y, gboolean row)
{
  if ((span->width < DRAWL_TIMELINE_MARK || !row) &&
      draw_caption_beside (scene, caption, span, end))
    return;
  if (row)
    draw_caption (scene, caption, y);
}

static void
draw_real_caption (const DrawlTimelineScene *scene)
{
  const DrawlTimelineLayout *at = &scene->at;
  g_autofree char *figures = drawl_timeline_real_words (scene->data);
  g_autofree char *brief = drawl_timeline_real_words_short (scene->data);
  Caption caption = {_ ("Real time"), figures, brief, NULL};
  double y = at->real.y - 1.35 * scene->line;

  place_caption (scene, caption, &at->real, drawl_timeline_end (&at->after), y, y >= 0);
}

static void
draw_screen_caption (const DrawlTimelineScene *scene)
{
  const DrawlTimelineLayout *at = &scene->at;
  g_autofree char *figures = drawl_timeline_screen_words (scene->data);
  g_autofree char *brief = drawl_timeline_screen_words_short (scene->data);
  Caption caption = {_ ("On screen"), figures, brief, scene->data->screen_code};
  double y = drawl_timeline_bottom (&at->screen) + 0.35 * scene->line;

  place_caption (scene, caption, &at->screen, drawl_timeline_end (&at->screen), y,
                 y + scene->line <= MIN (at->axis.y, at->height));
}

/* ---- The stretch ---- */

/* Right edge of the stretch at @y. */
static double
slant_at (const DrawlTimelineScene *scene, double y)
{
  const DrawlTimelineLayout *at = &scene->at;
  double top = drawl_timeline_bottom (&at->real), share = (y - top) / (at->screen.y - top);

  return at->zero_x + at->real.width + share * (at->screen.width - at->real.width);
}

/* Writes within the stretch (the playhead's line is interrupted there), or beside its slanted edge,
 * or before it; FALSE when it fits nowhere. */
static gboolean
write_in_stretch (const DrawlTimelineScene *scene, const DrawlTextStyle *text_style, double y,
                  const char *text)
{
  double width = width_of (scene, text_style, text), air = 0.6 * scene->line;
  double above = slant_at (scene, y), below = slant_at (scene, y + scene->line);
  double narrow = MIN (above, below), wide = MAX (above, below);
  double zero_x = scene->at.zero_x, right = scene->at.width - DRAWL_TIMELINE_EDGE;
  double x;

  if (width + 2 * air <= MIN (narrow, right) - zero_x)
    x = zero_x + (MIN (narrow, right) - zero_x - width) / 2;
  else if (wide + air + width <= right)
    x = wide + air;
  else if (zero_x - air - width >= DRAWL_TIMELINE_EDGE)
    x = zero_x - air - width;
  else
    return FALSE;
  if (scene->playing && x < narrow) {
    cairo_rectangle (scene->cr, scene->style->rtl ? scene->at.width - x - width - 4 : x - 4, y,
                     width + 8, scene->line);
    drawl_style_set_colour (scene->cr, scene->style->stretch);
    cairo_fill (scene->cr);
  }
  write_at (scene, text_style, scene->style->ink, x, y, text);
  return TRUE;
}

static void
draw_stretch_words (const DrawlTimelineScene *scene)
{
  const DrawlTimelineLayout *at = &scene->at;
  double top = drawl_timeline_bottom (&at->real), room = at->screen.y - top;
  double y = top + (room - scene->line) / 2;
  g_autofree char *words = drawl_timeline_stretch_words (scene->data);
  g_autofree char *brief = drawl_timeline_stretch_words_short (scene->data);
  DrawlTextStyle last = {.bold = TRUE, .max_width = at->width - 2 * DRAWL_TIMELINE_EDGE};

  if (room < 1.3 * scene->line)
    return;
  if (write_in_stretch (scene, &strong, y, words) || write_in_stretch (scene, &strong, y, brief))
    return;
  double width = MIN (width_of (scene, &strong, brief), last.max_width);
  write_at (scene, &last, scene->style->ink, (at->width - width) / 2, y, brief);
}

/* ---- The axis ---- */

static char *
tick_words (const DrawlTimelineScene *scene, double seconds, gboolean zero)
{
  const DrawlAxis *ticks = &scene->at.ticks;
  g_autofree char *label = drawl_axis_label (ticks, seconds);

  if (!zero)
    return g_steal_pointer (&label);
  /* Translators: the zero of an axis, with its unit. */
  return g_strdup_printf (MAX (ticks->to, -ticks->from) < 60     ? _ ("%s\u00a0s")
                          : MAX (ticks->to, -ticks->from) < 3600 ? _ ("%s\u00a0min")
                                                                 : _ ("%s\u00a0h"),
                          label);
}

/* Labels that would touch the one before them are left out. */
static void
draw_axis_words (const DrawlTimelineScene *scene)
{
  const DrawlTimelineLayout *at = &scene->at;
  double used = 0, y = at->axis.y + 7;
  gint64 first, last;

  if (at->axis.height <= 0)
    return;
  drawl_axis_range (&at->ticks, at->ticks.major, &first, &last);
  for (gint64 i = first; i <= last; i++) {
    double seconds = (double)i * at->ticks.major;
    g_autofree char *label = tick_words (scene, seconds, i == 0);
    double width = width_of (scene, &plain, label);
    double x = at->zero_x + seconds / at->seconds_per_px - width / 2;

    x = CLAMP (x, DRAWL_TIMELINE_EDGE, at->width - DRAWL_TIMELINE_EDGE - width);
    if (x < used)
      continue;
    write_at (scene, &plain, scene->style->dim, x, y, label);
    used = x + width + 0.5 * scene->line;
  }
}

/* ---- Handles ---- */

/* Within the part of a handle that is seen, clear of the grip at its end. */
static void
draw_handle_words (const DrawlTimelineScene *scene, const cairo_rectangle_t *handle, double seconds)
{
  g_autofree char *words = drawl_timeline_handle_words (seconds);
  double width = width_of (scene, &plain, words), air = DRAWL_TIMELINE_KNOB + 2;
  double left = MAX (handle->x, DRAWL_TIMELINE_EDGE);
  double right = MIN (drawl_timeline_end (handle), scene->at.width - DRAWL_TIMELINE_EDGE);

  if (seconds <= 0 || width + 2 * air > right - left || handle->height < 1.2 * scene->line)
    return;
  write_at (scene, &plain, scene->style->dim, (left + right - width) / 2,
            handle->y + (handle->height - scene->line) / 2, words);
}

void
drawl_timeline_captions (const DrawlTimelineScene *scene)
{
  draw_real_caption (scene);
  draw_handle_words (scene, &scene->at.before, scene->data->before_s);
  draw_handle_words (scene, &scene->at.after, scene->data->after_s);
  draw_stretch_words (scene);
  draw_screen_caption (scene);
  draw_axis_words (scene);
}
