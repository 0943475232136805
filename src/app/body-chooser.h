/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlBodyChooser: a window of the bodies that ship and of the crew's own; or one read from a
 * file. */

#include <adwaita.h>

#include "plan/body.h"

#define DRAWL_TYPE_BODY_CHOOSER (drawl_body_chooser_get_type ())
G_DECLARE_FINAL_TYPE (DrawlBodyChooser, drawl_body_chooser, DRAWL, BODY_CHOOSER, AdwWindow)

/* Signal "chosen" (DrawlBody): that one; the window closes by itself. */

DrawlBodyChooser *drawl_body_chooser_new (GtkWindow *parent);

/* Takes a body from a profile file, or tells why not. */
void drawl_body_chooser_take_file (DrawlBodyChooser *chooser, GFile *file);
