/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Pictures as files: the three types, equal bytes for equal plans, and what stands in the way. */

#include "draw/picture.h"

#include <glib/gstdio.h>
#include <math.h>

#include "plan/fixture.h"
#include "rows.h"

#define SHOTS                                                                                      \
  "{\"slate\":\"12A\",\"action\":\"The glass leaves the bench & breaks, "                          \
  "\\\"surface12\\\"\",\"capture_rate\":\"48\",\"playback_rate\":\"24\",\"action_s\":\"2\","       \
  "\"body\":\"A\",\"size\":\"hd\",\"codec\":\"fixed\",\"takes\":12},"                              \
  "{\"slate\":\"13\",\"body\":\"F\",\"size\":\"s16\"},{\"slate\":\"14\"}"

typedef struct {
  char *folder;
  DrawlPlan *plan;
  const DrawlPicture *timeline;
} Fixture;

static void
set_up (Fixture *self, gconstpointer data)
{
  self->folder = g_dir_make_tmp ("drawl-picture-XXXXXX", NULL);
  self->plan = plan_of (PLAN (SHOTS));
  self->timeline = drawl_picture_find ("timeline");
}

static void
tear_down (Fixture *self, gconstpointer data)
{
  g_autoptr (GDir) folder = g_dir_open (self->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (folder)) != NULL) {
    g_autofree char *path = g_build_filename (self->folder, name, NULL);
    g_remove (path);
  }
  g_rmdir (self->folder);
  g_free (self->folder);
  g_object_unref (self->plan);
}

static GBytes *
save (Fixture *self, const DrawlPicture *picture, const char *slate, const char *name)
{
  g_autofree char *path = g_build_filename (self->folder, name, NULL);
  g_autoptr (GError) error = NULL;
  char *data;
  gsize length;

  drawl_picture_save (picture, self->plan, drawl_plan_find_shot (self->plan, slate),
                      &drawl_style_light, path, &error);
  g_assert_no_error (error);
  g_file_get_contents (path, &data, &length, &error);
  g_assert_no_error (error);
  return g_bytes_new_take (data, length);
}

static guint
n_files (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

/* ---- Types ---- */

static guint32
big_endian (const guint8 *at)
{
  return (guint32)at[0] << 24 | (guint32)at[1] << 16 | (guint32)at[2] << 8 | at[3];
}

/* PNG (ISO/IEC 15948): signature, then the IHDR chunk with width and height. */
static void
test_png (Fixture *self, gconstpointer data)
{
  g_autoptr (GBytes) bytes = save (self, self->timeline, "12A", "a.png");
  const guint8 *png = g_bytes_get_data (bytes, NULL);

  g_assert_cmpmem (png, 8, "\x89PNG\r\n\x1a\n", 8);
  g_assert_cmpmem (png + 12, 4, "IHDR", 4);
  g_assert_cmpuint (big_endian (png + 16), ==, (guint32)lround (2 * self->timeline->width));
  g_assert_cmpuint (big_endian (png + 20), ==, (guint32)lround (2 * self->timeline->height));
}

static void
assert_contains (GBytes *bytes, const char *part)
{
  gsize length, of_part = strlen (part);
  const char *data = g_bytes_get_data (bytes, &length);

  for (gsize i = 0; i + of_part <= length; i++)
    if (memcmp (data + i, part, of_part) == 0)
      return;
  g_error ("%s is missing", part);
}

/* The names in a title are text: what looks like a mark-up or like a number of the library's stays
 * as it is. */
static void
test_svg (Fixture *self, gconstpointer data)
{
  g_autoptr (GBytes) bytes = save (self, self->timeline, "12A", "a.SVG");

  assert_contains (bytes, "width=\"720pt\" height=\"380pt\"");
  assert_contains (bytes, "<title>12A · The glass leaves the bench &amp; breaks, "
                          "&quot;surface12&quot;</title>");
  assert_contains (bytes, "<desc>The action takes 2");
  assert_contains (bytes, "</svg>");
}

static void
test_pdf (Fixture *self, gconstpointer data)
{
  g_autoptr (GBytes) bytes = save (self, self->timeline, "13", "a.pdf");

  g_assert_cmpmem (g_bytes_get_data (bytes, NULL), 5, "%PDF-", 5);
  assert_contains (bytes, "/Title (13)");
  assert_contains (bytes, "/MediaBox [ 0 0 720 380 ]");
  assert_contains (bytes, "%%EOF");
}

/* ---- The same again ---- */

typedef struct {
  const char *name, *picture, *file;
} Same;

static const Same same_rows[] = {
    {"timeline-png", "timeline", "a.png"}, {"timeline-svg", "timeline", "a.svg"},
    {"timeline-pdf", "timeline", "a.pdf"}, {"cards-png", "cards", "a.png"},
    {"cards-svg", "cards", "a.svg"},       {"cards-pdf", "cards", "a.pdf"},
};

/* Another picture in between moves the counters of the library. */
static void
test_same (Fixture *self, gconstpointer data)
{
  const Same *row = data;
  const DrawlPicture *picture = drawl_picture_find (row->picture);

  g_autoptr (GBytes) one = save (self, picture, "12A", row->file);
  g_autoptr (GBytes) between = save (self, picture, "13", "between.svg");
  g_autoptr (GBytes) two = save (self, picture, "12A", row->file);
  g_assert_true (g_bytes_equal (one, two));
  g_assert_false (g_bytes_equal (one, between));
}

static void
test_date (Fixture *self, gconstpointer data)
{
  g_autoptr (GBytes) bytes = save (self, self->timeline, "12A", "a.pdf");
  assert_contains (bytes, "20270115080000");
}

/* Each picture of each shot, with a body or without, in all types and both directions. */
static void
test_every (Fixture *self, gconstpointer data)
{
  static const char *const names[] = {"a.png", "a.svg", "a.pdf"};
  DrawlStyle style = drawl_style_dark;
  guint n_pictures;
  const DrawlPicture *pictures = drawl_pictures (&n_pictures);

  for (guint i = 0; i < n_pictures * G_N_ELEMENTS (names) * 2 * 3; i++) {
    DrawlShot *shot = drawl_plan_get_shot (self->plan, i % 3);
    const DrawlPicture *picture = &pictures[i / 3 % n_pictures];
    g_autofree char *path = g_build_filename (self->folder, names[i / 3 / n_pictures % 3], NULL);
    g_autofree char *words = picture->text (self->plan, shot);
    g_autoptr (GError) error = NULL;

    style.rtl = i / 9 / n_pictures;
    g_assert_true (drawl_picture_save (picture, self->plan, shot, &style, path, &error));
    g_assert_no_error (error);
    g_assert_true (g_str_has_suffix (words, "."));
  }
  g_assert_cmpuint (n_files (self->folder), ==, 3);
}

static void
test_empty_plan (Fixture *self, gconstpointer data)
{
  g_autoptr (DrawlPlan) empty = drawl_plan_new ();
  g_autofree char *path = g_build_filename (self->folder, "a.svg", NULL);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;

  g_assert_true (
      drawl_picture_save (self->timeline, empty, NULL, &drawl_style_light, path, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_assert_nonnull (strstr (text, "<desc>This plan has no shots yet.</desc>"));
}

static void
test_three_hundred_shots (Fixture *self, gconstpointer data)
{
  GString *shots = g_string_new (NULL);

  for (int i = 0; i < 300; i++)
    g_string_append_printf (
        shots,
        "%s{\"slate\":\"%d\",\"capture_rate\":\"60\",\"playback_rate\":\"24\","
        "\"action_s\":\"40\",\"body\":\"A\",\"size\":\"hd\",\"codec\":\"fixed\","
        "\"takes\":10}",
        i > 0 ? "," : "", i + 1);
  g_autofree char *text = g_strdup_printf (PLAN ("%s"), shots->str);
  g_string_free (shots, TRUE);
  g_object_unref (self->plan);
  self->plan = plan_of (text);
  g_autoptr (GBytes) bytes = save (self, drawl_picture_find ("cards"), "20", "a.svg");
  assert_contains (bytes, "<desc>Shot 20: 10 takes on 2 cards of 64\u00a0GB, beginning on card 4.");
}

/* ---- What stands in the way ---- */

typedef struct {
  const char *name, *file;
  DrawlPictureError code;
  const char *says;
} Refusal;

static const Refusal refusal_rows[] = {
    {"no-ending", "picture", DRAWL_PICTURE_ERROR_TYPE, ".png, .svg or .pdf is expected"},
    {"other-ending", "picture.jpeg", DRAWL_PICTURE_ERROR_TYPE, "“picture.jpeg”"},
    {"ending-alone", ".png", DRAWL_PICTURE_ERROR_TYPE, "“.png”"},
    {"ending-within", "picture.png.txt", DRAWL_PICTURE_ERROR_TYPE, "“picture.png.txt”"},
    {"no-such-folder", "not/there.png", DRAWL_PICTURE_ERROR_WRITE, "there.png"},
    {"a-folder-of-that-name", "folder.pdf", DRAWL_PICTURE_ERROR_WRITE, "folder.pdf"},
    {"below-a-file", "file.svg/a.svg", DRAWL_PICTURE_ERROR_WRITE, "a.svg"},
};

static void
test_refusal (Fixture *self, gconstpointer data)
{
  const Refusal *row = data;
  g_autofree char *path = g_build_filename (self->folder, row->file, NULL);
  g_autofree char *folder = g_build_filename (self->folder, "folder.pdf", NULL);
  g_autofree char *file = g_build_filename (self->folder, "file.svg", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (g_mkdir (folder, 0700), ==, 0);
  g_assert_true (g_file_set_contents (file, "as it was", -1, NULL));
  g_assert_false (drawl_picture_save (self->timeline, self->plan,
                                      drawl_plan_get_shot (self->plan, 0), &drawl_style_light, path,
                                      &error));
  g_assert_error (error, DRAWL_PICTURE_ERROR, (int)row->code);
  g_assert_nonnull (strstr (error->message, row->says));
  g_assert_false (g_str_has_suffix (error->message, "."));
  g_assert_cmpuint (n_files (self->folder), ==, 2);
}

/* A folder that may not be written in; as root everything may. */
static void
test_read_only_folder (Fixture *self, gconstpointer data)
{
  g_autofree char *path = g_build_filename (self->folder, "a.png", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (g_chmod (self->folder, 0500), ==, 0);
  if (g_access (self->folder, 2) == 0) {
    g_test_skip ("this user may write everywhere");
    g_chmod (self->folder, 0700);
    return;
  }
  g_assert_false (drawl_picture_save (self->timeline, self->plan,
                                      drawl_plan_get_shot (self->plan, 0), &drawl_style_light, path,
                                      &error));
  g_assert_error (error, DRAWL_PICTURE_ERROR, DRAWL_PICTURE_ERROR_WRITE);
  g_assert_cmpint (g_chmod (self->folder, 0700), ==, 0);
  g_assert_cmpuint (n_files (self->folder), ==, 0);
}

/* ---- The table ---- */

static void
test_table (void)
{
  guint n_pictures;
  const DrawlPicture *pictures = drawl_pictures (&n_pictures);

  g_assert_cmpuint (n_pictures, ==, 2);
  for (guint i = 0; i < n_pictures; i++)
    g_assert_true (drawl_picture_find (pictures[i].id) == &pictures[i]);
  g_assert_null (drawl_picture_find ("ramps"));
  g_assert_null (drawl_picture_find (""));
}

#define add(path, row, test) g_test_add ("/picture/" path, Fixture, row, set_up, test, tear_down)
#define add_fixture_rows(group, rows, test)                                                        \
  for (gsize row_ = 0; row_ < G_N_ELEMENTS (rows); row_++) {                                       \
    g_autofree char *path_ = g_strconcat ("/picture/" group "/", (rows)[row_].name, NULL);         \
    g_test_add (path_, Fixture, &(rows)[row_], set_up, test, tear_down);                           \
  }

int
main (int argc, char **argv)
{
  g_setenv ("SOURCE_DATE_EPOCH", "1800000000", TRUE);
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/picture/table", test_table);
  add ("png", NULL, test_png);
  add ("svg", NULL, test_svg);
  add ("pdf", NULL, test_pdf);
  add_fixture_rows ("same", same_rows, test_same);
  add ("date", NULL, test_date);
  add ("every", NULL, test_every);
  add ("empty-plan", NULL, test_empty_plan);
  add ("three-hundred-shots", NULL, test_three_hundred_shots);
  add_fixture_rows ("refusal", refusal_rows, test_refusal);
  add ("read-only-folder", NULL, test_read_only_folder);
  return g_test_run ();
}
