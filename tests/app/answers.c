/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The answers about hire and cards: what they say of each verdict, and what their buttons do. */

#include "app/answers.h"

#include "app/card-answer.h"
#include "app/hire-answer.h"
#include "app/verdict-mark.h"

#include "page.h"

static GtkWidget *
hire_of (const Page *page)
{
  return find_first (page->page, DRAWL_TYPE_HIRE_ANSWER);
}

static GtkWidget *
card_of (const Page *page)
{
  return find_first (page->page, DRAWL_TYPE_CARD_ANSWER);
}

static DrawlVerdict
verdict_of (const Page *page)
{
  return drawl_verdict_mark_get_verdict (
      DRAWL_VERDICT_MARK (find_first (hire_of (page), DRAWL_TYPE_VERDICT_MARK)));
}

static void
press (const Page *page, GtkWidget *button)
{
  g_assert_nonnull (button);
  g_signal_emit_by_name (button, "clicked");
  settle (page);
}

typedef struct {
  const char *name;
  const char *slate;
  DrawlVerdict verdict;
  gboolean attention, hire, fall_back;
  const char *says;
} VerdictRow;

static const VerdictRow verdicts[] = {
    {"needs-a-licence", "1", DRAWL_VERDICT_NEEDS_LICENCE, TRUE, TRUE, FALSE, "Rate upgrade"},
    {"as-hired", "2", DRAWL_VERDICT_AS_HIRED, FALSE, FALSE, FALSE, "does it as it is hired"},
    {"not-on-this-body", "3", DRAWL_VERDICT_NOT_ON_THIS_BODY, TRUE, FALSE, TRUE, "500"},
    {"film", "4", DRAWL_VERDICT_AS_HIRED, FALSE, FALSE, FALSE, "Puffin 16"},
};

static void
test_verdict (gconstpointer data)
{
  const VerdictRow *row = data;
  Page page;

  open_page (&page, row->slate);
  GtkWidget *hire = hire_of (&page);
  g_assert_cmpint (verdict_of (&page), ==, row->verdict);
  g_assert_cmpint (drawl_answer_card_get_attention (DRAWL_ANSWER_CARD (hire)), ==, row->attention);
  g_assert_cmpint (find_button (hire, "Hire It") != NULL, ==, row->hire);
  g_assert_true (is_said (hire, row->says));
  g_assert_true (is_said (hire, drawl_verdict_name (row->verdict)));
  if (row->fall_back)
    g_assert_nonnull (find_button (hire, "Shoot It So"));
  close_page (&page);
}

static void
test_hire (void)
{
  Page page;

  open_page (&page, "1");
  DrawlHiredBody *hired = drawl_plan_find_body (page.plan, "A");
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (find_button (hire_of (&page), "Hire It")),
                                       GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "Hire It: Rate upgrade (60.00\u00a0EUR a day)");
  press (&page, find_button (hire_of (&page), "Hire It"));
  g_assert_cmpuint (drawl_hired_body_get_tier (hired), !=, 0);
  g_assert_cmpint (verdict_of (&page), ==, DRAWL_VERDICT_AS_HIRED);
  g_assert_null (find_button (hire_of (&page), "Hire It"));
  drawl_plan_undo (page.plan);
  g_assert_cmpint (verdict_of (&page), ==, DRAWL_VERDICT_NEEDS_LICENCE);
  g_assert_false (drawl_plan_get_modified (page.plan));
  close_page (&page);
}

static void
open_details (const Page *page, GtkWidget *card)
{
  gtk_expander_set_expanded (GTK_EXPANDER (find_first (card, GTK_TYPE_EXPANDER)), TRUE);
  settle (page);
}

static void
test_fall_back (void)
{
  Page page;

  open_page (&page, "1");
  open_details (&page, hire_of (&page));
  press (&page, find_button (hire_of (&page), "Shoot It So"));
  assert_value (&page, "1", DRAWL_TIMING_CAPTURE, "60");
  g_assert_cmpint (verdict_of (&page), ==, DRAWL_VERDICT_AS_HIRED);
  drawl_plan_undo (page.plan);
  assert_value (&page, "1", DRAWL_TIMING_CAPTURE, "240");
  close_page (&page);
}

/* A rate that holds leave no room for is not taken, and the card says why. */
static void
test_fall_back_held (void)
{
  Page page;

  open_page (&page, "1");
  gtk_widget_activate_action (GTK_WIDGET (blank_of (&page, DRAWL_TIMING_FACTOR)), "blank.hold",
                              NULL);
  settle (&page);
  open_details (&page, hire_of (&page));
  press (&page, find_button (hire_of (&page), "Shoot It So"));
  assert_value (&page, "1", DRAWL_TIMING_CAPTURE, "240");
  g_assert_true (is_said (hire_of (&page), "let go of one of them"));
  close_page (&page);
}

/* The first answer in sight. */
static GtkWidget *
first_answer (const Page *page)
{
  return gtk_widget_get_first_child (find_first (page->page, DRAWL_TYPE_ANSWERS));
}

static void
edit_takes (const Page *page, const char *slate, const char *handle_s)
{
  DrawlShot *shot = shot_of (page, slate);
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (drawl_shot_get_fields (shot));
  g_autoptr (GError) error = NULL;

  fields->handle_before_s = exact (handle_s);
  drawl_plan_set_shot (page->plan, shot, fields, "Edit", &error);
  g_assert_no_error (error);
  settle (page);
}

/* A take too long for any magazine: the card about it comes first, and goes back after undo. */
static void
test_order (void)
{
  Page page;

  open_page (&page, "4");
  g_assert_true (first_answer (&page) == hire_of (&page));
  g_assert_false (drawl_answer_card_get_attention (DRAWL_ANSWER_CARD (card_of (&page))));
  edit_takes (&page, "4", "3000");
  g_assert_true (drawl_answer_card_get_attention (DRAWL_ANSWER_CARD (card_of (&page))));
  g_assert_true (is_said (card_of (&page), "magazine"));
  drawl_plan_undo (page.plan);
  settle (&page);
  g_assert_false (drawl_answer_card_get_attention (DRAWL_ANSWER_CARD (card_of (&page))));
  g_assert_true (first_answer (&page) == hire_of (&page));
  close_page (&page);
}

/* A licence that is hired leaves the card that needs attention in front. */
static void
test_attention_first (void)
{
  DrawlHiredFields *fields;
  g_autoptr (GError) error = NULL;
  Page page;

  open_page (&page, "2");
  DrawlHiredBody *hired = drawl_plan_find_body (page.plan, "A");
  fields = drawl_hired_fields_copy (drawl_hired_body_get_fields (hired));
  fields->card = 1;
  drawl_plan_set_body (page.plan, hired, fields, "Edit", &error);
  drawl_hired_fields_free (fields);
  g_assert_no_error (error);
  edit_takes (&page, "2", "100000");
  g_assert_true (drawl_answer_card_get_attention (DRAWL_ANSWER_CARD (card_of (&page))));
  g_assert_true (is_said (card_of (&page), "does not fit on the card"));
  close_page (&page);
}

static void
test_card_figures (void)
{
  Page page;

  open_page (&page, "2");
  open_details (&page, card_of (&page));
  static const char *const shown[] = {"cards", "data_rate", "frame_bytes", "take_frames"};
  for (guint i = 0; i < G_N_ELEMENTS (shown); i++)
    g_assert_true (gtk_widget_get_visible (find_named (card_of (&page), shown[i])));
  g_assert_false (gtk_widget_get_visible (find_named (card_of (&page), "take_feet")));
  g_assert_false (gtk_widget_get_visible (find_named (card_of (&page), "buffer_s")));
  gtk_test_accessible_assert_role (
      GTK_ACCESSIBLE (find_first (card_of (&page), GTK_TYPE_DRAWING_AREA)),
      GTK_ACCESSIBLE_ROLE_IMG);
  show_shot (&page, "4");
  open_details (&page, card_of (&page));
  g_assert_true (gtk_widget_get_visible (find_named (card_of (&page), "take_feet")));
  g_assert_false (gtk_widget_get_visible (find_named (card_of (&page), "data_rate")));
  g_assert_true (is_said (card_of (&page), "Magazine"));
  close_page (&page);
}

static void
test_without_body (void)
{
  Page page;

  open_page (&page, "1");
  drawl_plan_remove_body (page.plan, drawl_plan_find_body (page.plan, "A"), "Remove");
  settle (&page);
  g_assert_cmpint (verdict_of (&page), ==, DRAWL_VERDICT_NOT_ON_THIS_BODY);
  g_assert_true (is_said (hire_of (&page), "No body"));
  g_assert_true (is_said (card_of (&page), "Not known yet"));
  drawl_plan_undo (page.plan);
  settle (&page);
  g_assert_cmpint (verdict_of (&page), ==, DRAWL_VERDICT_NEEDS_LICENCE);
  close_page (&page);
}

int
main (int argc, char **argv)
{
  if (!start_tests (&argc, &argv))
    return 0;
  add_rows ("/answers/verdict", verdicts, test_verdict);
  g_test_add_func ("/answers/hire", test_hire);
  g_test_add_func ("/answers/fall-back", test_fall_back);
  g_test_add_func ("/answers/fall-back-held", test_fall_back_held);
  g_test_add_func ("/answers/order", test_order);
  g_test_add_func ("/answers/attention-first", test_attention_first);
  g_test_add_func ("/answers/card-figures", test_card_figures);
  g_test_add_func ("/answers/without-body", test_without_body);
  return g_test_run ();
}
