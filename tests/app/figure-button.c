/* SPDX-License-Identifier: GPL-3.0-or-later */

/* A figure that opens to its working; every figure of the page has one. */

#include "app/figure-button.h"

#include "app/working-popover.h"

#include "page.h"

static DrawlFigureButton *
button_of (const Page *page, DrawlFigure figure)
{
  return DRAWL_FIGURE_BUTTON (find_named (page->page, drawl_figure_id (figure)));
}

static void
test_working (void)
{
  Page page;

  open_page (&page, "1");
  DrawlFigureButton *button = button_of (&page, DRAWL_FIGURE_CARD_TIME);
  g_autoptr (DrawlWorking) working =
      drawl_working_new (page.plan, shot_of (&page, "1"), DRAWL_FIGURE_CARD_TIME);
  g_assert_null (drawl_figure_button_get_popover (button));
  g_signal_emit_by_name (button, "clicked");
  settle (&page);
  GtkWidget *popover = drawl_figure_button_get_popover (button);
  g_assert_nonnull (popover);
  g_assert_true (gtk_widget_get_visible (popover));
  g_assert_true (is_said (popover, working->name));
  g_assert_true (is_said (popover, working->value));
  g_assert_true (is_said (popover, working->formula));
  g_assert_true (is_said (popover, working->numbers));
  g_assert_true (is_said (popover, working->source));

  g_autofree char *spoken = g_strdup_printf ("%s: %s", working->name, working->value);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       spoken);
  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_STATE_EXPANDED, TRUE);
  gtk_popover_popdown (GTK_POPOVER (popover));
  settle (&page);
  gtk_test_accessible_assert_state (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_STATE_EXPANDED, FALSE);
  close_page (&page);
}

static void
test_copy (void)
{
  Page page;

  open_page (&page, "1");
  DrawlFigureButton *button = button_of (&page, DRAWL_FIGURE_LICENCES);
  g_signal_emit_by_name (button, "clicked");
  settle (&page);
  g_autofree char *text = drawl_working_popover_dup_text (
      DRAWL_WORKING_POPOVER (drawl_figure_button_get_popover (button)));
  g_assert_true (g_str_has_prefix (text, "Licences: Rate upgrade (60.00\u00a0EUR a day)\n= "));
  g_signal_emit_by_name (find_first (drawl_figure_button_get_popover (button), GTK_TYPE_BUTTON),
                         "clicked");
  GdkContentProvider *copied =
      gdk_clipboard_get_content (gtk_widget_get_clipboard (GTK_WIDGET (button)));
  g_auto (GValue) value = G_VALUE_INIT;
  g_value_init (&value, G_TYPE_STRING);
  g_assert_true (gdk_content_provider_get_value (copied, &value, NULL));
  g_assert_cmpstr (g_value_get_string (&value), ==, text);
  close_page (&page);
}

/* An open working follows the figure, and closes with it. */
static void
test_follows (void)
{
  Page page;

  open_page (&page, "1");
  DrawlFigureButton *button = button_of (&page, DRAWL_FIGURE_CARD_TIME);
  g_signal_emit_by_name (button, "clicked");
  settle (&page);
  drawl_edit_type (drawl_blank_get_edit (blank_of (&page, DRAWL_TIMING_CAPTURE)), "60");
  settle (&page);
  g_autoptr (DrawlWorking) working =
      drawl_working_new (page.plan, shot_of (&page, "1"), DRAWL_FIGURE_CARD_TIME);
  g_assert_true (is_said (drawl_figure_button_get_popover (button), working->value));
  show_shot (&page, "4");
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (button)));
  g_assert_null (drawl_figure_button_get_name (button));
  close_page (&page);
}

int
main (int argc, char **argv)
{
  if (!start_tests (&argc, &argv))
    return 0;
  g_test_add_func ("/figure-button/working", test_working);
  g_test_add_func ("/figure-button/copy", test_copy);
  g_test_add_func ("/figure-button/follows", test_follows);
  return g_test_run ();
}
