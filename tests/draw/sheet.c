/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Sheets of plans: how many pages, and that no ink leaves the margins on any of them, whatever the
 * plan holds, on both papers, in both directions, in more than one type. And the marks. */

#include "draw/mark.h"
#include "draw/sheet.h"

#include "plan/fixture.h"

#include <math.h>

#define SLACK 2.0 /* ink comes in whole points, and a glyph may lean over the end of its line */

/* ---- Plans ---- */

static void
append_shot (GString *shots, guint n)
{
  static const char *const more[] = {
      ",\"body\":\"A\",\"size\":\"uhd\",\"codec\":\"intra\",\"capture_rate\":\"120\"",
      ",\"body\":\"A\",\"size\":\"hd\",\"codec\":\"packed\",\"capture_rate\":\"48\",\"post_speed_"
      "percent\":50",
      ",\"body\":\"F\",\"size\":\"s16\",\"capture_rate\":\"12\",\"takes\":5,\"handle_before_s\":2",
      ",\"body\":\"F\",\"size\":\"s35\",\"capture_rate\":\"200\",\"must\":false",
      ",\"capture_rate\":\"24\"",
      ",\"body\":\"A\",\"size\":\"uhd\",\"codec\":\"even\",\"capture_rate\":\"6\",\"takes\":300",
  };

  g_string_append_printf (shots,
                          "%s{\"slate\":\"S%03u\",\"scene\":\"Scene %u\",\"action\":\"The glass "
                          "leaves the bench and breaks\",\"action_s\":\"3.5\"%s}",
                          n > 0 ? "," : "", n, n / 7, more[n % G_N_ELEMENTS (more)]);
}

static DrawlPlan *
plan_with (guint n_shots)
{
  g_autoptr (GString) shots = g_string_new (NULL);

  for (guint i = 0; i < n_shots; i++)
    append_shot (shots, i);
  g_autofree char *text = g_strdup_printf (
      PLAN_HEAD "\"title\":\"Before It Cools\",\"day\":\"2027-03-09\",\"bodies\":[" BODY_A
                "," BODY_F "],\"shots\":[%s]}",
      shots->str);
  return plan_of (text);
}

static char *
repeat (const char *piece, guint n)
{
  GString *text = g_string_new (NULL);

  while (n-- > 0)
    g_string_append (text, piece);
  return g_string_free (text, FALSE);
}

static void
set_all (char **const *members, guint n, const char *text)
{
  for (guint i = 0; i < n; i++)
    drawl_shot_fields_set (members[i], text);
}

/* A slate is one line. */
static void
make_slate_plain (DrawlShotFields *fields)
{
  g_autofree char *slate = drawl_shot_slate_strip (fields->slate);
  drawl_shot_fields_set (&fields->slate, g_strdelimit (slate, "\t\n\001\002\033\177", '.'));
}

/* The notes of a plan and of a shot are @text; and unless @notes_only, every other text. */
static DrawlPlan *
plan_of_text (const char *text, gboolean notes_only)
{
  g_autoptr (DrawlPlan) plan = plan_with (6);
  g_autoptr (DrawlPlanSettings) settings =
      drawl_plan_settings_copy (drawl_plan_get_settings (plan));
  DrawlShot *shot = drawl_plan_get_shot (plan, 2);
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (drawl_shot_get_fields (shot));
  g_autoptr (GError) error = NULL;
  char **of_plan[] = {&settings->notes, &settings->title, &settings->production};
  char **of_shot[] = {&fields->notes, &fields->slate, &fields->scene, &fields->action};

  set_all (of_plan, notes_only ? 1 : G_N_ELEMENTS (of_plan), text);
  set_all (of_shot, notes_only ? 1 : G_N_ELEMENTS (of_shot), text);
  make_slate_plain (fields);
  drawl_plan_set_settings (plan, settings, "label", &error);
  g_assert_no_error (error);
  drawl_plan_set_shot (plan, shot, fields, "label", &error);
  g_assert_no_error (error);
  return g_steal_pointer (&plan);
}

/* ---- Ink ---- */

static cairo_rectangle_t
ink_of (const DrawlSheet *sheet, guint page)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  cairo_rectangle_t ink;

  drawl_sheet_draw_page (sheet, cr, page);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  g_assert_cmpint (cairo_surface_status (surface), ==, CAIRO_STATUS_SUCCESS);
  cairo_recording_surface_ink_extents (surface, &ink.x, &ink.y, &ink.width, &ink.height);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return ink;
}

static void
assert_within_margins (const DrawlSheet *sheet)
{
  cairo_rectangle_t area = drawl_sheet_page_area (sheet);
  double width, height;

  drawl_sheet_page_size (sheet, &width, &height);
  g_assert_cmpfloat (area.x, >=, 36); /* half an inch: what printers and pins leave */
  g_assert_cmpfloat (area.y, >=, 36);
  g_assert_cmpfloat (area.x + area.width, <=, width - 36);
  g_assert_cmpfloat (area.y + area.height, <=, height - 36);
  for (guint page = 0; page < drawl_sheet_n_pages (sheet); page++) {
    cairo_rectangle_t ink = ink_of (sheet, page);

    g_assert_cmpfloat (ink.width, >, 0);
    g_assert_cmpfloat (ink.x, >=, area.x - SLACK);
    g_assert_cmpfloat (ink.y, >=, area.y - SLACK);
    g_assert_cmpfloat (ink.x + ink.width, <=, area.x + area.width + SLACK);
    g_assert_cmpfloat (ink.y + ink.height, <=, area.y + area.height + SLACK);
  }
}

/* All sheets of a plan, on both papers, in both directions. Returns the pages of the first. */
static guint
check_all (DrawlPlan *plan, const char *font)
{
  g_autoptr (GDateTime) date = g_date_time_new_from_unix_utc (1795600000);
  guint n_kinds, n_papers, pages = 0;
  const DrawlSheetKind *kinds = drawl_sheet_kinds (&n_kinds);
  const DrawlPaper *papers = drawl_papers (&n_papers);

  for (guint i = 0; i < n_kinds * n_papers * 2; i++) {
    DrawlSheetSetup setup = {&papers[i / 2 % n_papers], date, i % 2 == 1, font};
    g_autoptr (DrawlSheet) sheet = drawl_sheet_new (&kinds[i / 2 / n_papers], plan, &setup);

    g_test_message ("%s, %s, %s", kinds[i / 2 / n_papers].id, setup.paper->id,
                    setup.rtl ? "right to left" : "left to right");
    assert_within_margins (sheet);
    pages = i == 0 ? drawl_sheet_n_pages (sheet) : pages;
  }
  return pages;
}

typedef struct {
  const char *name;
  guint n_shots;
  guint least, most; /* pages of the first sheet, on the first paper */
} Count;

static const Count counts[] = {
    {"no-shots", 0, 1, 1},
    {"one-shot", 1, 1, 1},
    {"twelve-shots", 12, 3, 6},
    {"three-hundred-shots", 300, 75, 150},
};

static void
test_count (gconstpointer data)
{
  const Count *row = data;
  g_autoptr (DrawlPlan) plan = plan_with (row->n_shots);
  guint pages = check_all (plan, NULL);

  g_assert_cmpint (pages, >=, row->least);
  g_assert_cmpint (pages, <=, row->most);
}

typedef struct {
  const char *name;
  const char *piece;
  guint n;
  const char *font;
  gboolean notes_only;
} Text;

static const Text texts[] = {
    {"five-thousand-characters", "ten chars ", 500, NULL},
    {"fifty-thousand-characters", "ten chars ", 5000, NULL, TRUE},
    {"two-hundred-without-space", "W", 200, NULL},
    {"wide-type", "Wide words ", 30, "DejaVu Sans"},
    {"mono-type", "mono ", 30, "DejaVu Sans Mono"},
    {"right-to-left", "זכוכית, 240 (חמה) ", 40, NULL},
    {"both-ways", "glass זכוכית ", 40, NULL},
    {"lines", "one\ntwo\n\n\tthree\n", 30, NULL},
    {"markup", "<b>&amp; </b>\"'", 30, NULL},
    {"controls", "\001\002\033\177", 10, NULL},
    {"wide-signs", "硝子", 200, NULL},
};

static void
test_text (gconstpointer data)
{
  const Text *row = data;
  g_autofree char *text = repeat (row->piece, row->n);
  g_autoptr (DrawlPlan) plan = plan_of_text (text, row->notes_only);

  check_all (plan, row->font);
}

/* ---- The rest of it ---- */

static DrawlSheet *
sheet_of (DrawlPlan *plan, const char *kind, const char *paper)
{
  g_autoptr (GDateTime) date = g_date_time_new_from_unix_utc (1795600000);
  DrawlSheetSetup setup = {drawl_paper_find (paper), date, FALSE, NULL};

  return drawl_sheet_new (drawl_sheet_kind_find (kind), plan, &setup);
}

static void
test_sizes (void)
{
  static const struct {
    const char *kind, *paper;
    double width, height;
  } sizes[] = {
      {"set", "a4", 595.276, 841.890},
      {"hire", "letter", 612, 792},
      {"cut", "a4", 841.890, 595.276},
      {"cut", "letter", 792, 612},
  };
  g_autoptr (DrawlPlan) plan = plan_with (1);

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++) {
    g_autoptr (DrawlSheet) sheet = sheet_of (plan, sizes[i].kind, sizes[i].paper);
    double width, height;

    drawl_sheet_page_size (sheet, &width, &height);
    g_assert_cmpfloat_with_epsilon (width, sizes[i].width, 1e-3);
    g_assert_cmpfloat_with_epsilon (height, sizes[i].height, 1e-3);
  }
  g_assert_null (drawl_paper_find ("a5"));
  g_assert_null (drawl_sheet_kind_find ("day"));
}

/* A sheet shows the plan as it was, and outlives it. */
/* Page by page, from the first shot to the last: what those hear who cannot see it. */
static void
test_words (void)
{
  g_autoptr (DrawlPlan) plan = plan_with (20);
  g_autoptr (GDateTime) date = g_date_time_new_utc (2027, 3, 9, 8, 0, 0);
  const DrawlSheetSetup setup = {.paper = drawl_paper_find ("a4"), .printed = date};
  g_autoptr (DrawlSheet) set = drawl_sheet_new (drawl_sheet_kind_find ("set"), plan, &setup);
  g_autoptr (DrawlSheet) hire = drawl_sheet_new (drawl_sheet_kind_find ("hire"), plan, &setup);
  guint n = drawl_sheet_n_pages (set), n_hire = drawl_sheet_n_pages (hire);
  g_autofree char *begin = g_strdup_printf ("Set sheet, page 1 of %u: shot S000 to shot ", n);
  g_autofree char *begin_last = g_strdup_printf ("Set sheet, page %u of %u: shot ", n, n);
  g_autofree char *first = drawl_sheet_page_words (set, 0);
  g_autofree char *last = drawl_sheet_page_words (set, n - 1);
  g_autofree char *bodies = drawl_sheet_page_words (hire, n_hire - 1);

  g_assert_true (g_str_has_prefix (first, begin));
  g_assert_true (g_str_has_prefix (last, begin_last));
  g_assert_true (g_str_has_suffix (last, "shot S019"));
  g_assert_true (g_str_has_prefix (bodies, "Hire sheet, page "));
  g_assert_nonnull (strstr (bodies, ": "));
}

static void
test_outlives_plan (void)
{
  DrawlPlan *plan = plan_with (12);
  g_autoptr (DrawlSheet) sheet = sheet_of (plan, "set", "a4");
  cairo_rectangle_t before = ink_of (sheet, 1);

  while (drawl_plan_n_shots (plan) > 0)
    drawl_plan_remove_shot (plan, 0, "label");
  g_object_unref (plan);
  cairo_rectangle_t after = ink_of (sheet, 1);
  g_assert_cmpmem (&before, sizeof before, &after, sizeof after);
  g_assert_cmpstr (drawl_sheet_get_title (sheet), ==, "Before It Cools · Set sheet");
}

/* ---- Marks ---- */

static cairo_rectangle_t
mark_ink (DrawlMark mark)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  cairo_rectangle_t ink;

  drawl_mark_draw (cr, mark, 64);
  cairo_recording_surface_ink_extents (surface, &ink.x, &ink.y, &ink.width, &ink.height);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return ink;
}

static void
test_marks (void)
{
  for (guint mark = 0; mark < DRAWL_N_MARKS; mark++) {
    cairo_rectangle_t ink = mark_ink (mark);

    g_assert_cmpfloat (ink.width, >, 40);
    g_assert_cmpfloat (ink.height, >, 20);
    g_assert_cmpfloat (ink.x, >=, -0.01);
    g_assert_cmpfloat (ink.y, >=, -0.01);
    g_assert_cmpfloat (ink.x + ink.width, <=, 64.01);
    g_assert_cmpfloat (ink.y + ink.height, <=, 64.01);
  }
  for (guint verdict = 1; verdict < DRAWL_N_VERDICTS; verdict++)
    g_assert_cmpint (drawl_mark_of_verdict (verdict), !=, drawl_mark_of_verdict (verdict - 1));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_rows ("/sheet/pages", counts, test_count);
  add_rows ("/sheet/text", texts, test_text);
  g_test_add_func ("/sheet/sizes", test_sizes);
  g_test_add_func ("/sheet/words", test_words);
  g_test_add_func ("/sheet/outlives-plan", test_outlives_plan);
  g_test_add_func ("/sheet/marks", test_marks);
  return g_test_run ();
}
