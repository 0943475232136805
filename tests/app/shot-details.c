/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The details of a shot: entries, choices, switches, notes. */

#include "app/shot-details.h"

#include "app/shot-entries.h"

#include "page.h"

static void
open_details (Page *page, const char *slate)
{
  open_page (page, slate);
  open_all (GTK_WIDGET (page->page));
  settle (page);
}

static const DrawlShotFields *
fields_of (const Page *page, const char *slate)
{
  return drawl_shot_get_fields (shot_of (page, slate));
}

static GtkEditable *
row_titled (const Page *page, const char *title)
{
  GtkWidget *details = find_first (page->page, DRAWL_TYPE_SHOT_DETAILS), *row;

  for (guint skip = 0, i = 0; (skip = i, row = find_widget (details, ADW_TYPE_ENTRY_ROW, &skip));
       i++)
    if (g_str_equal (adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row)), title))
      return GTK_EDITABLE (row);
  g_error ("no row is called %s", title);
}

static AdwComboRow *
combo_titled (const Page *page, const char *title)
{
  GtkWidget *details = find_first (page->page, DRAWL_TYPE_SHOT_DETAILS), *row;

  for (guint skip = 0, i = 0; (skip = i, row = find_widget (details, ADW_TYPE_COMBO_ROW, &skip));
       i++)
    if (g_str_equal (adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row)), title))
      return ADW_COMBO_ROW (row);
  g_error ("no choice is called %s", title);
}

static void
type_in (const Page *page, GtkEditable *row, const char *text)
{
  gtk_editable_set_text (row, text);
  g_signal_emit_by_name (gtk_editable_get_delegate (row), "activate");
  settle (page);
}

/* ---- Entries ---- */

typedef struct {
  const char *name;
  const char *title;
  const char *typed;
  const char *shown; /* after it was taken; NULL: refused */
  const char *says;  /* when refused */
} EntryRow;

static const EntryRow entries[] = {
    {"slate", "Slate", " 12B ", "12B", NULL},
    {"slate-taken", "Slate", "2", NULL, "2"},
    {"slate-empty", "Slate", "  ", NULL, "needs a slate"},
    {"scene", "Scene", "7", "7", NULL},
    {"audio", "Audio tracks", "4", "4", NULL},
    {"audio-too-many", "Audio tracks", "65", NULL, "0 to 64"},
    {"takes", "Takes", "12", "12", NULL},
    {"takes-none", "Takes", "0", NULL, "1 to 10000"},
    {"takes-broken", "Takes", "2.5", NULL, "whole number"},
    {"takes-huge", "Takes", "99999999999999999999", NULL, "whole number"},
    {"before", "Handle before, s", "1,25", "1.25", NULL},
    {"before-negative", "Handle before, s", "-1", NULL, "0 s or more"},
    {"after", "Handle after, s", "3 s", "3", NULL},
    {"after-words", "Handle after, s", "long", NULL, "long"},
    {"post", "Post speed, %", "50 %", "50", NULL},
    {"post-zero", "Post speed, %", "0", NULL, "above 0"},
};

static void
test_entry (gconstpointer data)
{
  const EntryRow *row = data;
  Page page;

  open_details (&page, "1");
  GtkEditable *entry = row_titled (&page, row->title);
  g_autofree char *before = g_strdup (gtk_editable_get_text (entry));
  type_in (&page, entry, row->typed);
  g_assert_cmpstr (gtk_editable_get_text (entry), ==, row->shown != NULL ? row->shown : row->typed);
  g_assert_cmpint (drawl_plan_get_modified (page.plan), ==, row->shown != NULL);
  g_assert_cmpint (gtk_widget_has_css_class (GTK_WIDGET (entry), "error"), ==, row->shown == NULL);
  if (row->shown == NULL)
    g_assert_true (is_said (find_first (page.page, DRAWL_TYPE_SHOT_DETAILS), row->says));
  else
    drawl_plan_undo (page.plan);
  show_shot (&page, "2");
  show_shot (&page, "1");
  /* What was refused waits for its shot. */
  g_assert_cmpstr (gtk_editable_get_text (entry), ==, row->shown == NULL ? row->typed : before);
  g_assert_cmpint (gtk_widget_has_css_class (GTK_WIDGET (entry), "error"), ==, row->shown == NULL);
  close_page (&page);
}

/* What was typed goes to the shot in which it was typed. */
static void
test_shot_switch (void)
{
  Page page;

  open_details (&page, "1");
  gtk_editable_set_text (row_titled (&page, "Takes"), "9");
  show_shot (&page, "2");
  g_assert_cmpuint (fields_of (&page, "1")->takes, ==, 9);
  g_assert_cmpuint (fields_of (&page, "2")->takes, ==, 1);
  close_page (&page);
}

/* ---- Choices ---- */

static void
test_body (void)
{
  Page page;

  open_details (&page, "1");
  AdwComboRow *body = combo_titled (&page, "Body");
  g_assert_cmpuint (adw_combo_row_get_selected (body), ==, 1);
  adw_combo_row_set_selected (body, 2);
  g_assert_cmpstr (fields_of (&page, "1")->body, ==, "F");
  g_assert_cmpstr (fields_of (&page, "1")->size, ==, "s16");
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (combo_titled (&page, "Codec"))));
  adw_combo_row_set_selected (body, 0);
  g_assert_cmpstr (fields_of (&page, "1")->body, ==, "");
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (combo_titled (&page, "Size"))));
  drawl_plan_undo (page.plan);
  drawl_plan_undo (page.plan);
  g_assert_cmpstr (fields_of (&page, "1")->body, ==, "A");
  g_assert_cmpstr (fields_of (&page, "1")->size, ==, "hd");
  g_assert_false (drawl_plan_get_modified (page.plan));
  close_page (&page);
}

/* The wide size is not in intra: the codec goes to one that it has, open to the tier or not. */
static void
test_size_takes_its_codec (void)
{
  Page page;

  open_details (&page, "1");
  AdwComboRow *size = combo_titled (&page, "Size");
  adw_combo_row_set_selected (size, 1);
  g_assert_cmpstr (fields_of (&page, "1")->size, ==, "uhd");
  g_assert_cmpstr (fields_of (&page, "1")->codec, ==, "intra");
  adw_combo_row_set_selected (size, 3);
  g_assert_cmpstr (fields_of (&page, "1")->size, ==, "wide");
  g_assert_cmpstr (fields_of (&page, "1")->codec, ==, "long");
  close_page (&page);
}

static void
test_codec (void)
{
  Page page;

  open_details (&page, "1");
  adw_combo_row_set_selected (combo_titled (&page, "Codec"), 2);
  g_assert_cmpstr (fields_of (&page, "1")->codec, ==, "long");
  g_assert_cmpstr (drawl_plan_undo_label (page.plan), ==, "Change codec");
  close_page (&page);
}

/* A size that the body does not have shows as none, and stays until one is chosen. */
static void
test_unknown_size (void)
{
  Page page;

  open_details (&page, "1");
  DrawlShot *shot = shot_of (&page, "1");
  g_autoptr (DrawlShotFields) fields = drawl_shot_fields_copy (drawl_shot_get_fields (shot));
  drawl_shot_fields_set (&fields->size, "gone");
  g_assert_true (drawl_plan_set_shot (page.plan, shot, fields, "Edit", NULL));
  AdwComboRow *size = combo_titled (&page, "Size");
  g_assert_cmpuint (g_list_model_get_n_items (adw_combo_row_get_model (size)), ==, 4);
  g_assert_cmpuint (adw_combo_row_get_selected (size), ==, 0);
  g_assert_cmpstr (fields_of (&page, "1")->size, ==, "gone");
  adw_combo_row_set_selected (size, 2);
  g_assert_cmpstr (fields_of (&page, "1")->size, ==, "hd");
  adw_combo_row_set_selected (size, 0);
  g_assert_cmpstr (fields_of (&page, "1")->size, ==, "");
  close_page (&page);
}

static void
test_body_renamed (void)
{
  Page page;

  open_details (&page, "1");
  DrawlHiredBody *hired = drawl_plan_find_body (page.plan, "A");
  g_autoptr (DrawlHiredFields) fields =
      drawl_hired_fields_copy (drawl_hired_body_get_fields (hired));
  drawl_shot_fields_set (&fields->id, "Z");
  g_assert_true (drawl_plan_set_body (page.plan, hired, fields, "Rename", NULL));
  AdwComboRow *body = combo_titled (&page, "Body");
  g_assert_cmpuint (adw_combo_row_get_selected (body), ==, 1);
  g_assert_cmpstr (gtk_string_list_get_string (GTK_STRING_LIST (adw_combo_row_get_model (body)), 1),
                   ==, "Z · Tern 4");
  close_page (&page);
}

/* ---- Switches and notes ---- */

static GtkSwitch *
switch_of (const Page *page, guint at)
{
  GtkWidget *found =
      find_widget (find_first (page->page, DRAWL_TYPE_SHOT_DETAILS), GTK_TYPE_SWITCH, &at);

  g_assert_nonnull (found);
  return GTK_SWITCH (found);
}

static void
test_must (void)
{
  Page page;

  open_details (&page, "1");
  GtkSwitch *must = switch_of (&page, 0);
  g_assert_true (gtk_switch_get_active (must));
  gtk_switch_set_active (must, FALSE);
  g_assert_false (fields_of (&page, "1")->must);
  drawl_plan_undo (page.plan);
  g_assert_true (gtk_switch_get_active (must));
  g_assert_false (drawl_plan_get_modified (page.plan));
  close_page (&page);
}

/* Drop counting goes away with the rate that has it. */
static void
test_drop (void)
{
  Page page;

  open_details (&page, "1");
  GtkSwitch *drop = switch_of (&page, 1);
  DrawlEdit *playback = drawl_blank_get_edit (blank_of (&page, DRAWL_TIMING_PLAYBACK));
  g_assert_false (gtk_widget_is_sensitive (GTK_WIDGET (drop)));
  g_assert_true (drawl_edit_type (playback, "29.97"));
  g_assert_true (gtk_widget_is_sensitive (GTK_WIDGET (drop)));
  gtk_switch_set_active (drop, TRUE);
  g_assert_true (fields_of (&page, "1")->drop);
  g_assert_true (drawl_edit_type (playback, "25"));
  g_assert_false (fields_of (&page, "1")->drop);
  g_assert_false (gtk_switch_get_active (drop));
  drawl_plan_undo (page.plan);
  g_assert_true (gtk_switch_get_active (drop));
  close_page (&page);
}

static void
test_notes (void)
{
  Page page;

  open_details (&page, "1");
  GtkWidget *details = find_first (page.page, DRAWL_TYPE_SHOT_DETAILS);
  GtkTextBuffer *buffer =
      gtk_text_view_get_buffer (GTK_TEXT_VIEW (find_first (details, GTK_TYPE_TEXT_VIEW)));
  gtk_text_buffer_set_text (buffer, "Mind the floor", -1);
  show_shot (&page, "2");
  g_assert_cmpstr (fields_of (&page, "1")->notes, ==, "Mind the floor");
  g_assert_cmpstr (fields_of (&page, "2")->notes, ==, "");
  g_assert_cmpint (gtk_text_buffer_get_char_count (buffer), ==, 0);
  show_shot (&page, "1");
  g_assert_cmpint (gtk_text_buffer_get_char_count (buffer), ==, 14);
  drawl_plan_undo (page.plan);
  g_assert_cmpint (gtk_text_buffer_get_char_count (buffer), ==, 0);
  close_page (&page);
}

int
main (int argc, char **argv)
{
  if (!start_tests (&argc, &argv))
    return 0;
  add_rows ("/shot-details/entry", entries, test_entry);
  g_test_add_func ("/shot-details/shot-switch", test_shot_switch);
  g_test_add_func ("/shot-details/body", test_body);
  g_test_add_func ("/shot-details/size-takes-its-codec", test_size_takes_its_codec);
  g_test_add_func ("/shot-details/codec", test_codec);
  g_test_add_func ("/shot-details/unknown-size", test_unknown_size);
  g_test_add_func ("/shot-details/body-renamed", test_body_renamed);
  g_test_add_func ("/shot-details/must", test_must);
  g_test_add_func ("/shot-details/drop", test_drop);
  g_test_add_func ("/shot-details/notes", test_notes);
  return g_test_run ();
}
