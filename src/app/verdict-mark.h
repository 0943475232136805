/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlVerdictMark: the mark of a verdict: a shape of its own, and its word beside it if wanted;
 * never colour alone. Properties: "verdict" (DrawlVerdict), "show-name" (boolean, FALSE). */

#include <gtk/gtk.h>

#include "plan/check.h"

#define DRAWL_TYPE_VERDICT_MARK (drawl_verdict_mark_get_type ())
G_DECLARE_FINAL_TYPE (DrawlVerdictMark, drawl_verdict_mark, DRAWL, VERDICT_MARK, GtkWidget)

GtkWidget *drawl_verdict_mark_new (void);

DrawlVerdict drawl_verdict_mark_get_verdict (DrawlVerdictMark *mark);
void drawl_verdict_mark_set_verdict (DrawlVerdictMark *mark, DrawlVerdict verdict);
gboolean drawl_verdict_mark_get_show_name (DrawlVerdictMark *mark);
void drawl_verdict_mark_set_show_name (DrawlVerdictMark *mark, gboolean show_name);
