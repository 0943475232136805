/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Shots to the clipboard and from it: as a table of text and of HTML for other programs, whole for
 * other windows. What is read may be anything of any size: it is read no further than a table may
 * be long, and a text that is no table changes nothing. */

#include "app/message.h"
#include "app/window-private.h"
#include "core/text.h"
#include "plan/csv.h"
#include "plan/figure.h"
#include "plan/error.h"
#include "plan/shot-bundle.h"
#include "plan/shot-table.h"

#define HTML_TYPE "text/html"
#define READ_AT_A_TIME (64 * 1024)

/* ---- Copying ---- */

/* Where @shots, which are in the order of @plan, stand in it. */
static guint *
positions_of (DrawlPlan *plan, GPtrArray *shots)
{
  guint *positions = g_new0 (guint, shots->len);

  for (guint i = 0, at = 0; i < drawl_plan_n_shots (plan) && at < shots->len; i++)
    if (drawl_plan_get_shot (plan, i) == shots->pdata[at])
      positions[at++] = i;
  return positions;
}

/* Takes over @text. */
static GdkContentProvider *
provide (const char *type, char *text, gsize length)
{
  g_autoptr (GBytes) bytes = g_bytes_new_take (text, length);

  return gdk_content_provider_new_for_bytes (type, bytes);
}

static void
put (DrawlWindow *self, GPtrArray *shots)
{
  DrawlPlan *plan = drawl_window_get_plan (self);
  g_autofree guint *positions = positions_of (plan, shots);
  g_autoptr (DrawlShotBundle) bundle = drawl_shot_bundle_new (plan, shots);
  gsize length;
  char *whole = drawl_shot_bundle_to_text (bundle, &length);
  char *html = drawl_shot_table_html (plan, positions, shots->len);
  g_autofree char *text = drawl_shot_table_text (plan, positions, shots->len, '\t');
  GdkContentProvider *providers[] = {
      provide (DRAWL_SHOT_BUNDLE_MIME_TYPE, whole, length),
      provide (HTML_TYPE, html, strlen (html)),
      gdk_content_provider_new_typed (G_TYPE_STRING, text),
  };
  g_autoptr (GdkContentProvider) all =
      gdk_content_provider_new_union (providers, G_N_ELEMENTS (providers));

  gdk_clipboard_set_content (gtk_widget_get_clipboard (GTK_WIDGET (self)), all);
}

/* Puts the selected shots on the clipboard and returns them, in the order of the plan; NULL when
 * there is none. */
static GPtrArray *
put_selection (DrawlWindow *self)
{
  DrawlShotList *list = drawl_window_get_list (self);
  g_autoptr (GPtrArray) shots = list != NULL ? drawl_shot_list_dup_selection (list) : NULL;

  if (shots == NULL || shots->len == 0)
    return NULL;
  drawl_window_take_entry (self);
  put (self, shots);
  return g_steal_pointer (&shots);
}

static void
on_copy (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;
  g_autoptr (GPtrArray) shots = put_selection (self);

  if (shots == NULL)
    return;
  g_autofree char *count = drawl_figure_count (shots->len);
  g_autofree char *text =
      g_strdup_printf (ngettext_ ("%s shot copied", "%s shots copied", shots->len), count);
  drawl_window_tell (self, text);
}

static void
on_cut (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  DrawlWindow *self = data;
  g_autoptr (GPtrArray) shots = put_selection (self);

  if (shots == NULL)
    return;
  drawl_plan_remove_all (drawl_window_get_plan (self), shots, _ ("Cut Shots"));
  g_autofree char *count = drawl_figure_count (shots->len);
  g_autofree char *text =
      g_strdup_printf (ngettext_ ("%s shot cut", "%s shots cut", shots->len), count);
  drawl_window_tell_undoable (self, text);
}

/* ---- Pasting ---- */

typedef struct {
  DrawlWindow *window;
  DrawlPlan *plan; /* that it was asked for */
  GByteArray *bytes;
  gboolean whole; /* shots as another window gave them; else a table of text */
} Paste;

static void
paste_free (Paste *paste)
{
  g_object_unref (paste->window);
  g_object_unref (paste->plan);
  g_byte_array_unref (paste->bytes);
  g_free (paste);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Paste, paste_free)

static void
refuse (const Paste *paste, const GError *error)
{
  drawl_message_show (GTK_WINDOW (paste->window), _ ("The Clipboard Could Not Be Read"), error);
}

static void
tell_there_is_nothing (const Paste *paste)
{
  drawl_window_tell (paste->window, _ ("The clipboard holds no table of shots"));
}

static void
take_table (const Paste *paste)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (DrawlShotTable) table = drawl_shot_table_read (
      paste->plan, (const char *)paste->bytes->data, paste->bytes->len, &error);

  /* What is no table at all is prose, not a list of shots. */
  if (g_error_matches (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_FORMAT) ||
      (table != NULL && table->rows->len == 0))
    tell_there_is_nothing (paste);
  else if (table == NULL)
    refuse (paste, error);
  else
    drawl_window_take_table (paste->window, g_steal_pointer (&table), _ ("From the clipboard"),
                             _ ("Paste Shots"), TRUE);
}

static void
take_whole (const Paste *paste)
{
  guint position = drawl_window_insert_position (paste->window);
  g_autoptr (GError) error = NULL;
  g_autoptr (DrawlShotBundle) bundle = drawl_shot_bundle_from_text (
      (const char *)paste->bytes->data, paste->bytes->len, _ ("clipboard"), &error);

  if (bundle != NULL &&
      drawl_shot_bundle_insert (bundle, paste->plan, position, _ ("Paste Shots"), &error))
    drawl_window_show_brought_in (paste->window, position, drawl_shot_bundle_n_shots (bundle));
  else
    refuse (paste, error);
}

static void
take (const Paste *paste)
{
  if (paste->bytes->len == 0)
    tell_there_is_nothing (paste);
  else if (paste->whole)
    take_whole (paste);
  else
    take_table (paste);
}

static void
on_bytes (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (Paste) paste = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes =
      g_input_stream_read_bytes_finish (G_INPUT_STREAM (source), result, &error);
  gsize length = bytes != NULL ? g_bytes_get_size (bytes) : 0;

  if (drawl_window_get_plan (paste->window) != paste->plan)
    return;
  if (bytes == NULL) {
    refuse (paste, error);
    return;
  }
  g_byte_array_append (paste->bytes, g_bytes_get_data (bytes, NULL), (guint)length);
  /* One byte more than a table may have is enough to refuse it. */
  if (length == 0 || paste->bytes->len > DRAWL_CSV_MAX_BYTES)
    take (paste);
  else
    g_input_stream_read_bytes_async (G_INPUT_STREAM (source), READ_AT_A_TIME, G_PRIORITY_DEFAULT,
                                     NULL, on_bytes, g_steal_pointer (&paste));
}

static void
on_stream (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (Paste) paste = data;
  const char *type = NULL;
  g_autoptr (GInputStream) stream =
      gdk_clipboard_read_finish (GDK_CLIPBOARD (source), result, &type, NULL);

  if (drawl_window_get_plan (paste->window) != paste->plan)
    return;
  paste->whole = g_strcmp0 (type, DRAWL_SHOT_BUNDLE_MIME_TYPE) == 0;
  if (stream == NULL)
    tell_there_is_nothing (paste);
  else
    g_input_stream_read_bytes_async (stream, READ_AT_A_TIME, G_PRIORITY_DEFAULT, NULL, on_bytes,
                                     g_steal_pointer (&paste));
}

static void
on_paste (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  /* The first that the clipboard has is taken. */
  static const char *types[] = {
      DRAWL_SHOT_BUNDLE_MIME_TYPE, "text/csv",   "text/tab-separated-values",
      "text/plain;charset=utf-8",  "text/plain", NULL};
  DrawlWindow *self = data;
  Paste *paste = g_new0 (Paste, 1);

  drawl_window_take_entry (self);
  *paste = (Paste){g_object_ref (self), g_object_ref (drawl_window_get_plan (self)),
                   g_byte_array_new (), FALSE};
  gdk_clipboard_read_async (gtk_widget_get_clipboard (GTK_WIDGET (self)), types, G_PRIORITY_DEFAULT,
                            NULL, on_stream, paste);
}

void
drawl_window_add_clipboard_actions (DrawlWindow *window)
{
  static const GActionEntry entries[] = {{"cut", on_cut}, {"copy", on_copy}, {"paste", on_paste}};

  g_action_map_add_action_entries (G_ACTION_MAP (window), entries, G_N_ELEMENTS (entries), window);
}
