/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The span picture without a brush: layout, mirror, scale, what is under the pointer, and words.
 * Times run from a millisecond to ten hours, factors from 0.01 to 10,000, widths from 200 to 3840.
 */

#include "draw/timeline.h"
#include "plan/fixture.h"
#include "rows.h"

#include <math.h>

#define N_RANDOM 20000
#define REACH 8.0
#define LINE 17.0

typedef struct {
  DrawlTimelineData data;
  double width, height;
  gboolean rtl;
  DrawlTimelineLayout layout;
} Case;

static double
random_power (double low, double high)
{
  return pow (10, g_test_rand_double_range (low, high));
}

static void
make_case (Case *self)
{
  double action = random_power (-3, log10 (36000)), factor = random_power (-2, 4);
  double playback = random_power (0, 2.1);

  *self = (Case){
      .data = {.action_s = action,
               .screen_s = action * factor,
               .before_s = g_test_rand_bit () ? random_power (-2, 2) : 0,
               .after_s = g_test_rand_bit () ? random_power (-2, 2) : 0,
               .capture_fps = playback * factor,
               .playback_fps = playback,
               .frames = 1},
      .width = g_test_rand_double_range (200, 3840),
      .height = g_test_rand_double_range (20, 1000),
      .rtl = g_test_rand_bit (),
  };
  drawl_timeline_layout (&self->data, self->width, self->height, LINE, self->rtl, &self->layout);
}

static double
far_end (const DrawlTimelineLayout *layout, const cairo_rectangle_t *span)
{
  return layout->rtl ? span->x : span->x + span->width;
}

static double
near_end (const DrawlTimelineLayout *layout, const cairo_rectangle_t *span)
{
  return layout->rtl ? span->x + span->width : span->x;
}

static void
assert_inside (const Case *self, const cairo_rectangle_t *box)
{
  g_assert_cmpfloat (box->x, >=, 0);
  g_assert_cmpfloat (box->y, >=, 0);
  g_assert_cmpfloat (box->width, >=, 0);
  g_assert_cmpfloat (box->height, >=, 0);
  g_assert_cmpfloat (box->x + box->width, <=, self->width + 1e-6);
  g_assert_cmpfloat (box->y + box->height, <=, self->height + 1e-6);
}

static void
test_inside (void)
{
  for (int i = 0; i < N_RANDOM; i++) {
    Case self;

    make_case (&self);
    assert_inside (&self, &self.layout.real);
    assert_inside (&self, &self.layout.before);
    assert_inside (&self, &self.layout.after);
    assert_inside (&self, &self.layout.screen);
    assert_inside (&self, &self.layout.axis);
    g_assert_cmpfloat (self.layout.real.height, >, 0);
    g_assert_cmpfloat (self.layout.screen.height, >, 0);
  }
}

/* From top to bottom: real time, screen time, axis; none over the other. */
static void
test_order (void)
{
  for (int i = 0; i < N_RANDOM; i++) {
    Case self;

    make_case (&self);
    const DrawlTimelineLayout *at = &self.layout;
    g_assert_cmpfloat (at->real.y + at->real.height, <, at->screen.y);
    g_assert_cmpfloat (at->screen.y + at->screen.height, <=, at->axis.y + 1e-9);
    g_assert_cmpfloat_with_epsilon (at->before.y, at->real.y, 1e-9);
    g_assert_cmpfloat_with_epsilon (at->after.height, at->real.height, 1e-9);
  }
}

/* Both spans begin at zero, and their ends and handles lie where the scale says. */
static void
test_scale (void)
{
  for (int i = 0; i < N_RANDOM; i++) {
    Case self;

    make_case (&self);
    const DrawlTimelineLayout *at = &self.layout;
    const DrawlTimelineData *data = &self.data;
    g_assert_cmpfloat_with_epsilon (near_end (at, &at->real), at->zero_x, 1e-6);
    g_assert_cmpfloat_with_epsilon (near_end (at, &at->screen), at->zero_x, 1e-6);
    g_assert_cmpfloat_with_epsilon (far_end (at, &at->real),
                                    drawl_timeline_x_of (at, data->action_s), 1e-6);
    g_assert_cmpfloat_with_epsilon (far_end (at, &at->screen),
                                    drawl_timeline_x_of (at, data->screen_s), 1e-6);
    g_assert_cmpfloat_with_epsilon (near_end (at, &at->before),
                                    drawl_timeline_x_of (at, -data->before_s), 1e-6);
    g_assert_cmpfloat_with_epsilon (far_end (at, &at->after),
                                    drawl_timeline_x_of (at, data->action_s + data->after_s), 1e-6);
  }
}

/* The longest of the two fills the picture between its margins. */
static void
test_fills (void)
{
  for (int i = 0; i < N_RANDOM; i++) {
    Case self;

    make_case (&self);
    double margin = drawl_style_margin (self.width);
    double left = MIN (MIN (self.layout.before.x, self.layout.after.x), self.layout.screen.x);
    double right = MAX (MAX (self.layout.before.x + self.layout.before.width,
                             self.layout.after.x + self.layout.after.width),
                        self.layout.screen.x + self.layout.screen.width);
    g_assert_cmpfloat_with_epsilon (left, margin, 1e-6);
    g_assert_cmpfloat_with_epsilon (right, self.width - margin, 1e-6);
  }
}

static void
test_seconds_there_and_back (void)
{
  for (int i = 0; i < N_RANDOM; i++) {
    Case self;

    make_case (&self);
    double seconds = self.data.screen_s * g_test_rand_double ();
    double x = drawl_timeline_x_of (&self.layout, seconds);
    g_assert_cmpfloat_with_epsilon (drawl_timeline_seconds_at (&self.layout, x), seconds,
                                    1e-9 * self.layout.seconds_per_px * self.width);
  }
}

static void
test_seconds_never_negative (void)
{
  for (int i = 0; i < N_RANDOM; i++) {
    Case self;

    make_case (&self);
    double before_zero = self.layout.zero_x + (self.rtl ? 1 : -1) * random_power (0, 4);
    g_assert_cmpfloat_with_epsilon (drawl_timeline_seconds_at (&self.layout, before_zero), 0, 1e-9);
  }
}

static void
assert_mirror (double width, const cairo_rectangle_t *a, const cairo_rectangle_t *b)
{
  g_assert_cmpfloat_with_epsilon (a->x, width - b->x - b->width, 1e-6);
  g_assert_cmpfloat_with_epsilon (a->width, b->width, 1e-6);
  g_assert_cmpfloat_with_epsilon (a->y, b->y, 1e-9);
  g_assert_cmpfloat_with_epsilon (a->height, b->height, 1e-9);
}

static void
test_mirror (void)
{
  for (int i = 0; i < N_RANDOM; i++) {
    Case self;
    DrawlTimelineLayout other;

    make_case (&self);
    drawl_timeline_layout (&self.data, self.width, self.height, LINE, !self.rtl, &other);
    assert_mirror (self.width, &self.layout.real, &other.real);
    assert_mirror (self.width, &self.layout.before, &other.before);
    assert_mirror (self.width, &self.layout.after, &other.after);
    assert_mirror (self.width, &self.layout.screen, &other.screen);
    assert_mirror (self.width, &self.layout.axis, &other.axis);
    g_assert_cmpfloat_with_epsilon (self.layout.zero_x, self.width - other.zero_x, 1e-6);
    g_assert_true (other.rtl != self.rtl);
  }
}

/* A frame is ticked only where it is 4 px wide or more. */
static void
test_frames_wide_enough (void)
{
  guint ticked = 0;

  for (int i = 0; i < N_RANDOM; i++) {
    Case self;

    make_case (&self);
    double real_px = 1 / self.data.capture_fps / self.layout.seconds_per_px;
    double screen_px = 1 / self.data.playback_fps / self.layout.seconds_per_px;
    g_assert_true (self.layout.real_frames == (real_px >= 4));
    g_assert_true (self.layout.screen_frames == (screen_px >= 4));
    ticked += self.layout.real_frames + self.layout.screen_frames;
  }
  g_assert_cmpuint (ticked, >, 0);
}

/* In mid-drag the scale stays, and the end lies under the pointer. */
static void
test_drag_keeps_scale (void)
{
  for (int i = 0; i < N_RANDOM; i++) {
    Case self;

    make_case (&self);
    DrawlTimelineLayout dragged = self.layout;
    double x = g_test_rand_double_range (-100, self.width + 100);
    self.data.screen_s = drawl_timeline_seconds_at (&dragged, x);
    drawl_timeline_layout_update (&dragged, &self.data);
    g_assert_cmpfloat_with_epsilon (dragged.seconds_per_px, self.layout.seconds_per_px, 1e-9);
    g_assert_cmpfloat_with_epsilon (dragged.zero_x, self.layout.zero_x, 1e-9);
    g_assert_cmpfloat_with_epsilon (dragged.screen.y, self.layout.screen.y, 1e-9);
    double end = self.rtl ? MIN (x, dragged.zero_x) : MAX (x, dragged.zero_x);
    g_assert_cmpfloat_with_epsilon (far_end (&dragged, &dragged.screen), end, 1e-6);
  }
}

/* ---- Hits ---- */

static double
middle_of (const cairo_rectangle_t *span)
{
  return span->y + span->height / 2;
}

/* Each end is found at its own bar, wherever the other one lies. */
static void
test_hit_both (void)
{
  for (int i = 0; i < N_RANDOM; i++) {
    Case self;

    make_case (&self);
    const DrawlTimelineLayout *at = &self.layout;
    double off = g_test_rand_double_range (-REACH, REACH) * 0.99;
    g_assert_cmpint (
        drawl_timeline_hit (at, far_end (at, &at->real) + off, middle_of (&at->real), REACH), ==,
        DRAWL_TIMELINE_ACTION_END);
    g_assert_cmpint (
        drawl_timeline_hit (at, far_end (at, &at->screen) + off, middle_of (&at->screen), REACH),
        ==, DRAWL_TIMELINE_SCREEN_END);
  }
}

typedef struct {
  const char *name;
  double x, y; /* from the end of the action, and as a share of the way from bar to bar: 0 the
                  middle of the upper bar, 1 that of the lower */
  DrawlTimelineGrip grip;
} Hit;

/* Real time: the two ends lie one above the other. */
static const Hit hit_rows[] = {
    {"above", 0, 0, DRAWL_TIMELINE_ACTION_END},
    {"below", 0, 1, DRAWL_TIMELINE_SCREEN_END},
    {"above-left-edge", -REACH + 0.1, 0, DRAWL_TIMELINE_ACTION_END},
    {"above-right-edge", REACH - 0.1, 0, DRAWL_TIMELINE_ACTION_END},
    {"beside", REACH + 0.1, 0, DRAWL_TIMELINE_NOTHING},
    {"beside-below", -REACH - 0.1, 1, DRAWL_TIMELINE_NOTHING},
    {"between", 0, 0.5, DRAWL_TIMELINE_NOTHING},
    {"far-above", 0, -2, DRAWL_TIMELINE_NOTHING},
    {"far-below", 0, 3, DRAWL_TIMELINE_NOTHING},
};

static void
test_hit_overlapping (gconstpointer data)
{
  const Hit *row = data;
  DrawlTimelineData same = {.action_s = 4, .screen_s = 4, .capture_fps = 25, .playback_fps = 25};

  for (guint rtl = 0; rtl < 2; rtl++) {
    DrawlTimelineLayout at;

    drawl_timeline_layout (&same, 800, 260, LINE, rtl, &at);
    double y = middle_of (&at.real) + row->y * (middle_of (&at.screen) - middle_of (&at.real));
    g_assert_cmpint (drawl_timeline_hit (&at, far_end (&at, &at.real) + row->x, y, REACH), ==,
                     row->grip);
  }
}

/* ---- Data and words ---- */

typedef struct {
  const char *name;
  double width, height;
  gboolean axis;
} Room;

static const Room room_rows[] = {
    {"window", 760, 260, TRUE}, {"low", 760, 90, FALSE},     {"very-low", 760, 20, FALSE},
    {"narrow", 200, 200, TRUE}, {"large", 3840, 1000, TRUE},
};

static void
test_room (gconstpointer data)
{
  const Room *row = data;
  DrawlTimelineData shot = {
      .action_s = 0.45, .screen_s = 4.5, .capture_fps = 240, .playback_fps = 24};
  DrawlTimelineLayout at;

  drawl_timeline_layout (&shot, row->width, row->height, LINE, FALSE, &at);
  g_assert_true ((at.axis.height > 0) == row->axis);
  g_assert_cmpfloat (at.real.height, <=, 1.9 * LINE);
}

static void
test_no_times_at_all (void)
{
  DrawlTimelineData nothing = {.action_s = NAN, .screen_s = 0, .before_s = -1};
  DrawlTimelineLayout at;

  drawl_timeline_layout (&nothing, 400, 200, LINE, FALSE, &at);
  g_assert_cmpfloat (at.seconds_per_px, >, 0);
  g_assert_cmpfloat_with_epsilon (at.real.width, 0, 1e-9);
  g_assert_cmpfloat_with_epsilon (at.before.width, 0, 1e-9);
  g_assert_false (at.real_frames);
}

static void
test_from_shot (void)
{
  g_autoptr (DrawlPlan) plan = plan_of (
      PLAN ("{\"slate\":\"12A\",\"capture_rate\":\"240\",\"playback_rate\":\"24\","
            "\"action_s\":\"0.45\",\"handle_before_s\":\"2\",\"handle_after_s\":\"1.5\"}"));
  DrawlTimelineData data;

  drawl_timeline_data_from_shot (&data, drawl_plan_get_shot (plan, 0));
  g_assert_cmpfloat_with_epsilon (data.action_s, 0.45, 1e-12);
  g_assert_cmpfloat_with_epsilon (data.screen_s, 4.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (data.before_s, 2, 1e-12);
  g_assert_cmpfloat_with_epsilon (data.after_s, 1.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (data.capture_fps, 240, 1e-12);
  g_assert_cmpfloat_with_epsilon (data.playback_fps, 24, 1e-12);
  g_assert_cmpint (data.frames, ==, 108);
  g_assert_cmpstr (data.screen_code, ==, "00:00:04:12");
  drawl_timeline_data_clear (&data);
}

typedef struct {
  const char *name;
  DrawlTimelineData data;
  const char *text; /* spaces stand for no-break spaces, too */
} Words;

static const Words words_rows[] = {
    {"slower",
     {0.45, 4.5, 0, 0, 240, 24, 108, NULL},
     "The action takes 0.45 s, 108 frames at 240 fps, and plays for 4.5 s at 24 fps: 10× slower."},
    {"faster",
     {48, 12, 0, 0, 6, 24, 288, NULL},
     "The action takes 48 s, 288 frames at 6 fps, and plays for 12 s at 24 fps: 4× faster."},
    {"real-time",
     {4, 4, 0, 0, 25, 25, 100, NULL},
     "The action takes 4 s, 100 frames at 25 fps, and plays in real time: 4 s at 25 fps."},
    {"rates-of-1001",
     {1, 10.01, 0, 0, 240, 24000 / 1001.0, 240, NULL},
     "The action takes 1 s, 240 frames at 240 fps, and plays for 10.01 s at 23.976 fps: 10.01× "
     "slower."},
    {"one-frame",
     {0.001, 0.041666666666, 0, 0, 1000, 24, 1, NULL},
     "The action takes 0.001 s, 1 frame at 1000 fps, and plays for 0.0417 s at 24 fps: 41.667× "
     "slower."},
    {"hours",
     {36000, 360, 0, 0, 0.24, 24, 8640, NULL},
     "The action takes 10 h 00 min, 8640 frames at 0.24 fps, and plays for 6 min 00 s at 24 fps: "
     "100× faster."},
    {"no-action",
     {0, 0, 0, 0, 25, 25, 1, NULL},
     "The action takes 0 s, 1 frame at 25 fps, and plays in real time: 0 s at 25 fps."},
    {"both-handles",
     {4, 4, 2, 1.5, 25, 25, 100, NULL},
     "The action takes 4 s, 100 frames at 25 fps, and plays in real time: 4 s at 25 fps. The "
     "handles are 2 s before and 1.5 s after the action."},
    {"handle-before",
     {4, 4, 2, 0, 25, 25, 100, NULL},
     "The action takes 4 s, 100 frames at 25 fps, and plays in real time: 4 s at 25 fps. The "
     "handle is 2 s before the action."},
    {"handle-after-and-code",
     {4, 4, 0, 2, 25, 25, 100, (char *)"00:00:04:00"},
     "The action takes 4 s, 100 frames at 25 fps, and plays in real time: 4 s at 25 fps. The "
     "handle is 2 s after the action. Its length on screen is 00:00:04:00 as timecode."},
};

static void
test_words (gconstpointer data)
{
  const Words *row = data;
  g_autofree char *text = drawl_timeline_text (&row->data);
  g_auto (GStrv) parts = g_strsplit (text, "\u00a0", -1);
  g_autofree char *plain = g_strjoinv (" ", parts);

  g_assert_cmpstr (plain, ==, row->text);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/timeline/layout/inside", test_inside);
  g_test_add_func ("/timeline/layout/order", test_order);
  g_test_add_func ("/timeline/layout/scale", test_scale);
  g_test_add_func ("/timeline/layout/fills", test_fills);
  g_test_add_func ("/timeline/layout/mirror", test_mirror);
  g_test_add_func ("/timeline/layout/frames-wide-enough", test_frames_wide_enough);
  g_test_add_func ("/timeline/layout/no-times-at-all", test_no_times_at_all);
  g_test_add_func ("/timeline/layout/drag-keeps-scale", test_drag_keeps_scale);
  add_rows ("/timeline/layout/room", room_rows, test_room);
  g_test_add_func ("/timeline/seconds/there-and-back", test_seconds_there_and_back);
  g_test_add_func ("/timeline/seconds/never-negative", test_seconds_never_negative);
  g_test_add_func ("/timeline/hit/both", test_hit_both);
  add_rows ("/timeline/hit/overlapping", hit_rows, test_hit_overlapping);
  g_test_add_func ("/timeline/data/from-shot", test_from_shot);
  add_rows ("/timeline/words", words_rows, test_words);
  return g_test_run ();
}
