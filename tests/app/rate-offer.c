/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The offer of a rate that the body has. The body offers whole rates, and three broken ones. */

#include "app/rate-offer.h"

#include "page.h"

typedef struct {
  const char *name;
  const char *rate;
  const char *size;
  const char *nearest; /* NULL: nothing to offer */
} Row;

static const Row rows[] = {
    {"offered", "240", "hd", NULL},
    {"broken-and-offered", "24000/1001", "hd", NULL},
    {"between", "100.4", "hd", "100"},
    {"near-a-broken-one", "59.95", "hd", "60000/1001"},
    {"over-the-highest", "400.5", "hd", "240"},
    {"below-the-lowest", "0.4", "hd", "1"},
    {"no-such-size", "100.4", "none", NULL},
};

static void
test_find (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (DrawlBody) body = sound_body (DIGITAL_BODY);
  DrawlCheckQuestion question = {
      .body = body,
      .size = drawl_body_size_index (body, row->size),
      .codec = drawl_body_codec_index (body, "intra"),
      .rate = exact (row->rate),
  };
  DrawlRate nearest;
  gboolean found = drawl_rate_offer_find (&question, &nearest);

  g_assert_cmpint (found, ==, row->nearest != NULL);
  if (found)
    assert_same (nearest, exact (row->nearest));
}

/* A solved rate: 4.3 s on screen from 0.45 s of action. */
static void
test_taken (void)
{
  Page page;

  open_page (&page, "1");
  GtkWidget *offer = find_first (page.page, DRAWL_TYPE_RATE_OFFER);
  g_assert_false (gtk_widget_get_visible (offer));
  drawl_edit_type (drawl_blank_get_edit (blank_of (&page, DRAWL_TIMING_ACTION)), "0.45");
  gtk_widget_activate_action (GTK_WIDGET (blank_of (&page, DRAWL_TIMING_ACTION)), "blank.hold",
                              NULL);
  drawl_edit_type (drawl_blank_get_edit (blank_of (&page, DRAWL_TIMING_SCREEN)), "4.3");
  settle (&page);
  assert_value (&page, "1", DRAWL_TIMING_CAPTURE, "688/3");
  g_assert_true (gtk_widget_get_visible (offer));
  g_assert_true (
      is_said (offer, "Use 229\u00a0fps (nearest that this body offers, 0.1\u00a0% off)"));
  g_signal_emit_by_name (find_first (offer, GTK_TYPE_BUTTON), "clicked");
  settle (&page);
  assert_value (&page, "1", DRAWL_TIMING_CAPTURE, "229");
  assert_value (&page, "1", DRAWL_TIMING_ACTION, "0.45");
  g_assert_false (gtk_widget_get_visible (offer));
  close_page (&page);
}

int
main (int argc, char **argv)
{
  if (!start_tests (&argc, &argv))
    return 0;
  add_rows ("/rate-offer/find", rows, test_find);
  g_test_add_func ("/rate-offer/taken", test_taken);
  return g_test_run ();
}
