/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The button that removes a row of a draft. Invariant: it does not outlive its row. */

#include "app/body-remove-button.h"

#include "app/focus.h"
#include "core/text.h"

static void
on_clicked (DrawlBodyDraft *draft, GtkWidget *button)
{
  DrawlDraftRow *row = g_object_get_data (G_OBJECT (button), "row");

  drawl_focus_when_ready (g_object_get_data (G_OBJECT (button), "next"));
  drawl_body_draft_remove_row (draft, row);
}

GtkWidget *
drawl_body_remove_button_new (DrawlBodyDraft *draft, DrawlDraftRow *row, GtkWidget *next)
{
  GtkWidget *button = gtk_button_new_from_icon_name ("user-trash-symbolic");

  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_tooltip_text (button, _ ("Remove"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Remove"), -1);
  g_object_set_data (G_OBJECT (button), "row", row);
  g_object_set_data (G_OBJECT (button), "next", next);
  g_signal_connect_object (button, "clicked", G_CALLBACK (on_clicked), draft, G_CONNECT_SWAPPED);
  return button;
}
