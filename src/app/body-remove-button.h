/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The button that removes a row of a draft. */

#include <gtk/gtk.h>

#include "plan/body-draft.h"

/* The keyboard focus goes on to @next, since the button goes with its row. */
GtkWidget *drawl_body_remove_button_new (DrawlBodyDraft *draft, DrawlDraftRow *row,
                                         GtkWidget *next);
