/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlKeptTexts: what was typed into the entries of a shot and could not be taken, kept while the
 * entries show another shot. */

#include "app/edit.h"
#include "plan/plan.h"

typedef struct _DrawlKeptTexts DrawlKeptTexts;

DrawlKeptTexts *drawl_kept_texts_new (void);
void drawl_kept_texts_free (DrawlKeptTexts *kept);

/* @edit shows @shot and is about to show another one: what is typed there and not taken is kept,
 * and the edit goes back to its value. */
void drawl_kept_texts_put (DrawlKeptTexts *kept, DrawlShot *shot, DrawlEdit *edit);
/* The edits show @shot of @plan: what was kept for it stands there again, with what is wrong with
 * it. What was kept for another plan is forgotten. */
void drawl_kept_texts_bring_back (DrawlKeptTexts *kept, DrawlPlan *plan, DrawlShot *shot);
