/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlBodyEditor: the window in which a body profile is made or edited. Signal "applied"
 * (DrawlBody): there is a new profile; one that is on a plan has it already. */

#include <adwaita.h>

#include "plan/body-draft.h"
#include "plan/plan.h"

#define DRAWL_TYPE_BODY_EDITOR (drawl_body_editor_get_type ())
G_DECLARE_FINAL_TYPE (DrawlBodyEditor, drawl_body_editor, DRAWL, BODY_EDITOR, AdwWindow)

/* Edits a body of a plan, which takes the new one when it is applied. */
DrawlBodyEditor *drawl_body_editor_new (GtkWindow *parent, DrawlPlan *plan, DrawlHiredBody *hired);
/* Makes one from nothing, for whoever listens to "applied". */
DrawlBodyEditor *drawl_body_editor_new_from_nothing (GtkWindow *parent);

DrawlBodyDraft *drawl_body_editor_get_draft (DrawlBodyEditor *editor);
/* FALSE when something has to be mended first: it is marked, and the first of it has the focus. */
gboolean drawl_body_editor_apply (DrawlBodyEditor *editor);
