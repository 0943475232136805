/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Shots through the clipboard: as text and HTML for other programs, whole from window to window,
 * and tables from elsewhere into the list. */

#include "rows.h"
#include "plan/shot-bundle.h"
#include "transfer.h"

static GdkClipboard *
clipboard (DrawlWindow *window)
{
  return gtk_widget_get_clipboard (GTK_WIDGET (window));
}

typedef struct {
  GInputStream *stream;
  gboolean done;
} Reading;

static void
on_read (GObject *source, GAsyncResult *result, gpointer data)
{
  Reading *reading = data;

  reading->stream = gdk_clipboard_read_finish (GDK_CLIPBOARD (source), result, NULL, NULL);
  reading->done = TRUE;
}

static void
on_spliced (GObject *source, GAsyncResult *result, gpointer data)
{
  *(gboolean *)data = TRUE;
}

/* What the clipboard holds as @type, or NULL. */
static char *
held_as (DrawlWindow *window, const char *type)
{
  const char *types[] = {type, NULL};
  Reading reading = {0};
  gboolean done = FALSE;

  gdk_clipboard_read_async (clipboard (window), types, G_PRIORITY_DEFAULT, NULL, on_read, &reading);
  wait_until (reading.done);
  if (reading.stream == NULL)
    return NULL;
  g_autoptr (GOutputStream) memory = g_memory_output_stream_new_resizable ();
  g_output_stream_splice_async (memory, reading.stream, G_OUTPUT_STREAM_SPLICE_CLOSE_TARGET,
                                G_PRIORITY_DEFAULT, NULL, on_spliced, &done);
  wait_until (done);
  g_object_unref (reading.stream);
  return g_strndup (g_memory_output_stream_get_data (G_MEMORY_OUTPUT_STREAM (memory)),
                    g_memory_output_stream_get_data_size (G_MEMORY_OUTPUT_STREAM (memory)));
}

/* The toast that is shown says @part. */
static gboolean
is_told (DrawlWindow *window, const char *part)
{
  return is_said (by_id (window, "toasts"), part);
}

static void
test_copied_as (void)
{
  DrawlWindow *window = window_on_demo ();

  select_shot (window, "4A");
  act (window, "copy");
  g_autofree char *text = held_as (window, "text/plain;charset=utf-8");
  g_autofree char *html = held_as (window, "text/html");
  g_autofree char *whole = held_as (window, DRAWL_SHOT_BUNDLE_MIME_TYPE);
  g_assert_true (g_str_has_prefix (text, "slate\tscene\taction\tcapture_rate\t"));
  g_assert_nonnull (strstr (text, "\r\n4A\t"));
  g_assert_nonnull (strstr (html, "<tr><td>4A</td><td>"));
  g_assert_nonnull (strstr (whole, "\"drawl-plan\""));
  g_assert_cmpuint (n_shots (window), ==, 16);
  g_assert_true (is_told (window, "1 shot copied"));
  g_assert_false (drawl_document_get_modified (drawl_window_get_document (window)));
  drop_window (window);
}

/* Another window gets the shot with all that it says and its body. */
static void
test_between_windows (void)
{
  DrawlWindow *from = window_on_demo (), *to = window_on (NULL);

  act (to, "new");
  select_shot (from, "4A");
  act (from, "copy");
  act (to, "paste");
  wait_until (n_shots (to) == 1);
  const DrawlShotFields *a = drawl_shot_get_fields (shot_of (from, "4A"));
  const DrawlShotFields *b = drawl_shot_get_fields (shot_of (to, "4A"));
  g_assert_true (drawl_shot_fields_equal (a, b));
  g_assert_cmpuint (g_list_model_get_n_items (drawl_plan_get_bodies (drawl_window_get_plan (to))),
                    ==, 1);
  wait_until (is_told (to, "1 shot brought in"));
  act (to, "undo");
  g_assert_cmpuint (n_shots (to), ==, 0);
  g_assert_cmpuint (g_list_model_get_n_items (drawl_plan_get_bodies (drawl_window_get_plan (to))),
                    ==, 0);
  drop_window (from);
  drop_window (to);
}

/* In the same plan the copy gets the next free slate, behind the shot in hand. */
static void
test_in_the_same_plan (void)
{
  DrawlWindow *window = window_on_demo ();
  DrawlPlan *plan = drawl_window_get_plan (window);

  select_shot (window, "1A");
  act (window, "copy");
  act (window, "paste");
  wait_until (n_shots (window) == 17);
  g_assert_cmpint (drawl_plan_shot_position (plan, shot_of (window, "1D")), ==, 1);
  g_assert_cmpstr (selected_slate (window), ==, "1D");
  drop_window (window);
}

static void
test_cut (void)
{
  DrawlWindow *window = window_on_demo ();

  select_shot (window, "2A");
  g_autoptr (DrawlShotFields) cut =
      drawl_shot_fields_copy (drawl_shot_get_fields (shot_of (window, "2A")));
  act (window, "cut");
  g_assert_cmpuint (n_shots (window), ==, 15);
  g_assert_true (is_told (window, "1 shot cut"));
  act (window, "paste");
  wait_until (n_shots (window) == 16);
  g_assert_true (drawl_shot_fields_equal (drawl_shot_get_fields (shot_of (window, "2A")), cut));
  act (window, "undo");
  act (window, "undo");
  g_assert_false (can (window, "undo"));
  g_assert_cmpuint (n_shots (window), ==, 16);
  drop_window (window);
}

/* ---- Text ---- */

static void
put_text (DrawlWindow *window, const char *text)
{
  gdk_clipboard_set_text (clipboard (window), text);
  act (window, "paste");
}

static void
test_block_at_once (void)
{
  DrawlWindow *window = window_on_demo ();

  select_shot (window, "1A");
  put_text (window, "Shot\tFPS\tAction time\r\n90\t240\t0,5\r\n91\t1000\t0,02\r\n");
  wait_until (n_shots (window) == 18);
  g_assert_null (import_over (window));
  g_assert_cmpint (
      drawl_plan_shot_position (drawl_window_get_plan (window), shot_of (window, "91")), ==, 2);
  g_assert_cmpstr (drawl_plan_undo_label (drawl_window_get_plan (window)), ==, "Paste Shots");
  wait_until (is_told (window, "2 shots brought in"));
  act (window, "undo");
  g_assert_cmpuint (n_shots (window), ==, 16);
  drop_window (window);
}

static void
test_doubtful_block (void)
{
  DrawlWindow *window = window_on_demo ();

  put_text (window, "Shot\tFPS\r\n90\t240\r\n1A\t48\r\n");
  wait_until (import_over (window) != NULL);
  g_assert_cmpuint (n_shots (window), ==, 16);
  g_assert_true (drawl_import_dialog_bring_in (import_over (window)));
  settle ();
  g_assert_cmpuint (n_shots (window), ==, 17);
  drop_window (window);
}

typedef struct {
  const char *name;
  const char *text;
  const char *told;
} Rubbish;

static const Rubbish rubbish[] = {
    {"word", "hello", "no table of shots"},
    {"prose", "The glass breaks.\nThen it is swept up.\n", "no table of shots"},
    {"empty", "", "no table of shots"},
    {"blank", "\n\n", "no table of shots"},
};

static void
test_rubbish (gconstpointer data)
{
  const Rubbish *row = data;
  DrawlWindow *window = window_on_demo ();

  put_text (window, row->text);
  wait_until (is_told (window, row->told));
  g_assert_null (import_over (window));
  g_assert_cmpuint (n_shots (window), ==, 16);
  g_assert_false (can (window, "undo"));
  drop_window (window);
}

/* What calls itself shots and is none is told of, and nothing comes in. */
static void
test_broken_shots (void)
{
  DrawlWindow *window = window_on_demo ();
  g_autoptr (GBytes) bytes = g_bytes_new_static ("{\"format\": 1", 12);
  g_autoptr (GdkContentProvider) provider =
      gdk_content_provider_new_for_bytes (DRAWL_SHOT_BUNDLE_MIME_TYPE, bytes);

  gdk_clipboard_set_content (clipboard (window), provider);
  act (window, "paste");
  wait_until (message_over (window) != NULL);
  g_assert_cmpuint (n_shots (window), ==, 16);
  answer_with (window, "close");
  drop_window (window);
}

static void
test_picture (void)
{
  DrawlWindow *window = window_on_demo ();
  g_autoptr (GBytes) bytes = g_bytes_new_static ("x", 1);
  g_autoptr (GdkContentProvider) provider = gdk_content_provider_new_for_bytes ("image/png", bytes);

  gdk_clipboard_set_content (clipboard (window), provider);
  act (window, "paste");
  wait_until (is_told (window, "no table of shots"));
  drop_window (window);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/clipboard/copied-as", test_copied_as);
  g_test_add_func ("/clipboard/between-windows", test_between_windows);
  g_test_add_func ("/clipboard/in-the-same-plan", test_in_the_same_plan);
  g_test_add_func ("/clipboard/cut", test_cut);
  g_test_add_func ("/clipboard/block-at-once", test_block_at_once);
  g_test_add_func ("/clipboard/doubtful-block", test_doubtful_block);
  add_rows ("/clipboard/rubbish", rubbish, test_rubbish);
  g_test_add_func ("/clipboard/broken-shots", test_broken_shots);
  g_test_add_func ("/clipboard/picture", test_picture);
  return run_window_tests ();
}
