/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The sentence as a whole: which words it takes, what happens, and how it is set. */

#include "page.h"

/* The words and numbers that can be seen, in their order, parted by spaces. */
static char *
read_sentence (const Page *page)
{
  GtkWidget *sentence = find_first (page->page, DRAWL_TYPE_SHOT_SENTENCE);
  GString *out = g_string_new (NULL);

  for (GtkWidget *child = gtk_widget_get_first_child (sentence); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    if (!gtk_widget_get_visible (child))
      continue;
    const char *text =
        GTK_IS_LABEL (child)
            ? gtk_label_get_text (GTK_LABEL (child))
            : gtk_editable_get_text (GTK_EDITABLE (find_first (child, GTK_TYPE_ENTRY)));
    g_string_append_printf (out, "%s%s", out->len > 0 ? " " : "", text);
  }
  return g_string_free (out, FALSE);
}

static void
edit_term (const Page *page, DrawlTimingTerm term, const char *text)
{
  g_assert_true (drawl_edit_type (drawl_blank_get_edit (blank_of (page, term)), text));
  settle (page);
}

typedef struct {
  const char *name;
  const char *capture, *post;
  const char *reads;
} Row;

static const Row rows[] = {
    {"slower", "240", "100",
     "The glass breaks : 0.45 of action, shot at 240 , plays at 24 for 4.5 , 10 slower."},
    {"real-time", "24", "100",
     "The glass breaks : 0.45 of action, shot at 24 , plays at 24 for 0.45 , in real time ( 1 )."},
    {"faster", "12", "100",
     "The glass breaks : 0.45 of action, shot at 12 , plays at 24 for 0.225 , 2 faster."},
    {"slower-still-in-post", "240", "50",
     "The glass breaks : 0.45 of action, shot at 240 , plays at 24 , 10 slower, and run at 50 in "
     "the cutting room lasts 9 ."},
};

static void
test_words (gconstpointer data)
{
  const Row *row = data;
  Page page;

  open_page (&page, "1");
  edit_term (&page, DRAWL_TIMING_CAPTURE, "120");
  edit_term (&page, DRAWL_TIMING_CAPTURE, row->capture);
  if (!g_str_equal (row->post, "100"))
    edit_term (&page, DRAWL_TIMING_POST_SPEED, row->post);
  g_autofree char *read = read_sentence (&page);
  g_assert_cmpstr (read, ==, row->reads);
  close_page (&page);
}

/* A faster shot's factor is typed as it reads. */
static void
test_faster_factor (void)
{
  Page page;

  open_page (&page, "1");
  edit_term (&page, DRAWL_TIMING_CAPTURE, "12");
  edit_term (&page, DRAWL_TIMING_FACTOR, "4");
  assert_value (&page, "1", DRAWL_TIMING_FACTOR, "1/4");
  close_page (&page);
}

static void
test_action (void)
{
  Page page;

  open_page (&page, "1");
  DrawlShotSentence *sentence =
      DRAWL_SHOT_SENTENCE (find_first (page.page, DRAWL_TYPE_SHOT_SENTENCE));
  DrawlEdit *edit = drawl_clause_get_edit (drawl_shot_sentence_get_clause (sentence));
  g_assert_true (drawl_edit_type (edit, "The glass falls"));
  g_assert_cmpstr (drawl_shot_get_fields (shot_of (&page, "1"))->action, ==, "The glass falls");
  drawl_plan_undo (page.plan);
  g_assert_cmpstr (drawl_edit_get_value (edit), ==, "The glass breaks");
  close_page (&page);
}

/* Whether every piece lies within the sentence, whose height has room for all its lines. */
static void
assert_nothing_cut (GtkWidget *sentence)
{
  int width = gtk_widget_get_width (sentence), height = gtk_widget_get_height (sentence);

  for (GtkWidget *child = gtk_widget_get_first_child (sentence); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    graphene_rect_t box;
    if (!gtk_widget_get_visible (child))
      continue;
    g_assert_true (gtk_widget_compute_bounds (child, sentence, &box));
    g_assert_cmpfloat (box.origin.x, >=, 0);
    g_assert_cmpfloat (box.origin.y, >=, 0);
    g_assert_cmpfloat (box.origin.x + box.size.width, <=, width);
    g_assert_cmpfloat (box.origin.y + box.size.height, <=, height);
  }
}

typedef struct {
  const char *name;
  int width;
  GtkTextDirection direction;
} LayoutRow;

static const LayoutRow layouts[] = {
    {"wide", 1000, GTK_TEXT_DIR_LTR},
    {"narrow", 360, GTK_TEXT_DIR_LTR},
    {"wide-mirrored", 1000, GTK_TEXT_DIR_RTL},
    {"narrow-mirrored", 360, GTK_TEXT_DIR_RTL},
};

static void
test_layout (gconstpointer data)
{
  const LayoutRow *row = data;
  Page page;

  gtk_widget_set_default_direction (row->direction);
  open_page (&page, "1");
  gtk_window_set_default_size (GTK_WINDOW (page.window), row->width, 900);
  settle (&page);
  GtkWidget *sentence = find_first (page.page, DRAWL_TYPE_SHOT_SENTENCE);
  g_assert_cmpint (gtk_widget_get_width (GTK_WIDGET (page.page)), ==, row->width);
  assert_nothing_cut (sentence);

  graphene_rect_t first;
  GtkWidget *clause = gtk_widget_get_first_child (sentence);
  g_assert_true (gtk_widget_compute_bounds (clause, sentence, &first));
  float start = row->direction == GTK_TEXT_DIR_RTL
                    ? (float)gtk_widget_get_width (sentence) - first.size.width
                    : 0;
  g_assert_cmpfloat_with_epsilon (first.origin.x, start, 0.5);
  close_page (&page);
  gtk_widget_set_default_direction (GTK_TEXT_DIR_LTR);
}

/* A long clause is broken into lines while nobody types, and is one line while somebody does. */
static void
test_long_clause (void)
{
  Page page;

  open_page (&page, "1");
  gtk_window_set_default_size (GTK_WINDOW (page.window), 360, 900);
  GtkWidget *sentence = find_first (page.page, DRAWL_TYPE_SHOT_SENTENCE);
  GtkWidget *clause = GTK_WIDGET (drawl_shot_sentence_get_clause (DRAWL_SHOT_SENTENCE (sentence)));
  gtk_root_set_focus (GTK_ROOT (page.window), NULL);
  settle (&page);
  int line = gtk_widget_get_height (clause);
  drawl_edit_type (drawl_clause_get_edit (DRAWL_CLAUSE (clause)),
                   "The workshop wakes: shutters up, stools out, pipes into the warmer");
  settle (&page);
  g_assert_cmpint (gtk_widget_get_height (clause), >, line * 2);
  assert_nothing_cut (sentence);
  gtk_widget_grab_focus (clause);
  settle (&page);
  g_assert_cmpint (gtk_widget_get_height (clause), ==, line);
  assert_nothing_cut (sentence);
  close_page (&page);
}

/* ---- Tab ---- */

static void
assert_next_stop (const Page *page, GtkDirectionType direction, GtkWidget *stop)
{
  gtk_widget_child_focus (page->window, direction);
  GtkWidget *focus = gtk_root_get_focus (GTK_ROOT (page->window));
  g_assert_nonnull (focus);
  g_assert_true (gtk_widget_is_ancestor (focus, stop));
}

/* What happens and each number are a stop each, in the order in which they are read. */
static void
test_tab (void)
{
  static const DrawlTimingTerm order[] = {DRAWL_TIMING_ACTION, DRAWL_TIMING_CAPTURE,
                                          DRAWL_TIMING_PLAYBACK, DRAWL_TIMING_SCREEN,
                                          DRAWL_TIMING_FACTOR};
  Page page;

  open_page (&page, "1");
  GtkWidget *sentence = find_first (GTK_WIDGET (page.page), DRAWL_TYPE_SHOT_SENTENCE);
  GtkWidget *clause = GTK_WIDGET (drawl_shot_sentence_get_clause (DRAWL_SHOT_SENTENCE (sentence)));
  gtk_widget_grab_focus (GTK_WIDGET (page.page));
  g_assert_true (gtk_widget_is_ancestor (gtk_root_get_focus (GTK_ROOT (page.window)), clause));
  for (gsize i = 0; i < G_N_ELEMENTS (order); i++)
    assert_next_stop (&page, GTK_DIR_TAB_FORWARD, GTK_WIDGET (blank_of (&page, order[i])));
  for (gsize i = G_N_ELEMENTS (order) - 1; i-- > 0;)
    assert_next_stop (&page, GTK_DIR_TAB_BACKWARD, GTK_WIDGET (blank_of (&page, order[i])));
  assert_next_stop (&page, GTK_DIR_TAB_BACKWARD, clause);
  close_page (&page);
}

int
main (int argc, char **argv)
{
  if (!start_tests (&argc, &argv))
    return 0;
  add_rows ("/shot-sentence/words", rows, test_words);
  g_test_add_func ("/shot-sentence/faster-factor", test_faster_factor);
  g_test_add_func ("/shot-sentence/action", test_action);
  g_test_add_func ("/shot-sentence/tab", test_tab);
  add_rows ("/shot-sentence/layout", layouts, test_layout);
  g_test_add_func ("/shot-sentence/long-clause", test_long_clause);
  return g_test_run ();
}
