/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Combo rows of the details. The row is filled anew only when its words have changed, so that an
 * open list does not close under the pointer. */

#include "app/choice-row.h"

#include "core/text.h"

typedef struct {
  AdwComboRow *row;
  DrawlChosen chosen;
  gpointer data;
  gboolean filling;
} Choice;

static Choice *
choice_of (AdwComboRow *row)
{
  return g_object_get_data (G_OBJECT (row), "drawl-choice");
}

static void
on_selected (Choice *choice)
{
  guint selected = adw_combo_row_get_selected (choice->row);

  if (!choice->filling && selected != GTK_INVALID_LIST_POSITION)
    choice->chosen (choice->data, (int)selected - 1);
}

void
drawl_choice_row_watch (AdwComboRow *row, DrawlChosen chosen, gpointer data)
{
  Choice *choice = g_new0 (Choice, 1);

  choice->row = row;
  choice->chosen = chosen;
  choice->data = data;
  g_object_set_data_full (G_OBJECT (row), "drawl-choice", choice, g_free);
  g_signal_connect_swapped (row, "notify::selected", G_CALLBACK (on_selected), choice);
}

static gboolean
shows (AdwComboRow *row, GPtrArray *words)
{
  GListModel *model = adw_combo_row_get_model (row);

  if (model == NULL || g_list_model_get_n_items (model) != words->len)
    return FALSE;
  for (guint i = 0; i < words->len; i++)
    if (g_strcmp0 (gtk_string_list_get_string (GTK_STRING_LIST (model), i), words->pdata[i]) != 0)
      return FALSE;
  return TRUE;
}

static void
set_words (AdwComboRow *row, GPtrArray *words)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);

  for (guint i = 0; i < words->len; i++)
    gtk_string_list_append (list, words->pdata[i]);
  adw_combo_row_set_model (row, G_LIST_MODEL (list));
}

void
drawl_choice_row_fill (AdwComboRow *row, GPtrArray *names, int selected)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  Choice *choice = choice_of (row);

  g_ptr_array_add (words, (gpointer)_ ("None yet"));
  for (guint i = 0; i < names->len; i++)
    g_ptr_array_add (words, names->pdata[i]);

  choice->filling = TRUE;
  if (!shows (row, words))
    set_words (row, words);
  adw_combo_row_set_selected (row, (guint)(selected + 1));
  choice->filling = FALSE;
}
