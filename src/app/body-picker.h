/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlBodyPicker: a cell of a body draft that takes several of some choices: rows of another
 * table, or classes of cards. A button that names what is chosen, and opens the list to choose
 * from. */

#include <gtk/gtk.h>

#include "plan/body-draft.h"

#define DRAWL_TYPE_BODY_PICKER (drawl_body_picker_get_type ())
G_DECLARE_FINAL_TYPE (DrawlBodyPicker, drawl_body_picker, DRAWL, BODY_PICKER, GtkWidget)

GtkWidget *drawl_body_picker_new (DrawlBodyDraft *draft, DrawlDraftRow *row, guint column,
                                  const char *label);
/* Names what the draft has now. */
void drawl_body_picker_refresh (DrawlBodyPicker *picker);
