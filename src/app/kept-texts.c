/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Texts that wait for their shot. Invariant: all shots are of one plan, and a shot has an entry
 * only while another one is shown. A shot that was removed is kept, since undo brings the same one
 * back.
 */

#include "app/kept-texts.h"

typedef struct {
  DrawlEdit *edit; /* lives as long as who has the texts */
  char *text;
  char *error;
} Text;

struct _DrawlKeptTexts {
  DrawlPlan *plan;
  GHashTable *by_shot; /* DrawlShot → GPtrArray of Text */
};

static void
text_free (Text *text)
{
  g_free (text->text);
  g_free (text->error);
  g_free (text);
}

DrawlKeptTexts *
drawl_kept_texts_new (void)
{
  DrawlKeptTexts *kept = g_new0 (DrawlKeptTexts, 1);

  kept->by_shot =
      g_hash_table_new_full (NULL, NULL, g_object_unref, (GDestroyNotify)g_ptr_array_unref);
  return kept;
}

void
drawl_kept_texts_free (DrawlKeptTexts *kept)
{
  g_hash_table_unref (kept->by_shot);
  g_clear_object (&kept->plan);
  g_free (kept);
}

static GPtrArray *
texts_of (DrawlKeptTexts *kept, DrawlShot *shot)
{
  GPtrArray *texts = g_hash_table_lookup (kept->by_shot, shot);

  if (texts == NULL) {
    texts = g_ptr_array_new_with_free_func ((GDestroyNotify)text_free);
    g_hash_table_insert (kept->by_shot, g_object_ref (shot), texts);
  }
  return texts;
}

void
drawl_kept_texts_put (DrawlKeptTexts *kept, DrawlShot *shot, DrawlEdit *edit)
{
  if (drawl_edit_get_error (edit) != NULL) {
    Text *text = g_new0 (Text, 1);
    text->edit = edit;
    text->text = g_strdup (drawl_edit_get_text (edit));
    text->error = g_strdup (drawl_edit_get_error (edit));
    g_ptr_array_add (texts_of (kept, shot), text);
  }
  drawl_edit_restore (edit);
}

void
drawl_kept_texts_bring_back (DrawlKeptTexts *kept, DrawlPlan *plan, DrawlShot *shot)
{
  if (g_set_object (&kept->plan, plan))
    g_hash_table_remove_all (kept->by_shot);
  GPtrArray *texts = g_hash_table_lookup (kept->by_shot, shot);

  for (guint i = 0; texts != NULL && i < texts->len; i++) {
    const Text *text = texts->pdata[i];
    drawl_edit_bring_back (text->edit, text->text, text->error);
  }
  g_hash_table_remove (kept->by_shot, shot);
}
