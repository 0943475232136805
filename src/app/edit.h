/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlEdit: what makes an entry part of a plan. It shows a value until something is typed; Enter
 * or leaving the entry offers what was typed ("commit"); Esc brings the value back. What is refused
 * stays as typed, marked as an error that says why. */

#include <gtk/gtk.h>

#define DRAWL_TYPE_EDIT (drawl_edit_get_type ())
G_DECLARE_FINAL_TYPE (DrawlEdit, drawl_edit, DRAWL, EDIT, GObject)

/* Properties, read-only, notified: "error" (string or NULL).
 * Signal "commit" (text): take it, or call drawl_edit_refuse(). */

/* Watches @editable (an entry, an entry row), which keeps it alive; no reference is handed out. */
DrawlEdit *drawl_edit_new (GtkEditable *editable);

/* The value as it now is. What was typed and not taken yet stays. */
void drawl_edit_set_value (DrawlEdit *edit, const char *value);
const char *drawl_edit_get_value (DrawlEdit *edit);
/* Spoken beside the entry while nothing is wrong with it; may be NULL. */
void drawl_edit_set_description (DrawlEdit *edit, const char *description);

/* Offers what was typed, if anything was. TRUE when nothing is left untaken. */
gboolean drawl_edit_commit (DrawlEdit *edit);
/* Offers @text as if it had been typed. */
gboolean drawl_edit_type (DrawlEdit *edit, const char *text);
/* Back to the value. */
void drawl_edit_restore (DrawlEdit *edit);

/* From a handler of "commit": @why is a sentence. */
void drawl_edit_refuse (DrawlEdit *edit, const char *why);
void drawl_edit_refuse_error (DrawlEdit *edit, const GError *error);

/* What was typed before and refused because of @why, again. */
void drawl_edit_bring_back (DrawlEdit *edit, const char *text, const char *why);

const char *drawl_edit_get_text (DrawlEdit *edit); /* as it stands there */
gboolean drawl_edit_is_pending (DrawlEdit *edit);
const char *drawl_edit_get_error (DrawlEdit *edit); /* or NULL */
