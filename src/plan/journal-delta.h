/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlJournalDelta: what is new in a plan against the last journalled state of it, as one record.
 * It is made in two steps, so that the window never waits: what may change is copied at once, and
 * another thread makes the text of it. */

#include "plan/plan.h"

/* A state of a plan, in so far as it takes to tell what is new: the stamps of the shots, and copies
 * of what is small. For the plan's own thread. */
typedef struct _DrawlJournalBasis DrawlJournalBasis;

DrawlJournalBasis *drawl_journal_basis_new (DrawlPlan *plan);
void drawl_journal_basis_free (DrawlJournalBasis *basis);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (DrawlJournalBasis, drawl_journal_basis_free)

typedef struct _DrawlJournalDelta DrawlJournalDelta;

/* From @before (NULL: from nothing, so all of the plan is new) to @after, which must be the plan's
 * present state. */
DrawlJournalDelta *drawl_journal_delta_new (DrawlPlan *plan, const DrawlJournalBasis *before,
                                            const DrawlJournalBasis *after);
/* In any thread. New string. */
char *drawl_journal_delta_text (const DrawlJournalDelta *delta, gint64 edited_us, gint64 edits,
                                gsize *length);
void drawl_journal_delta_free (DrawlJournalDelta *delta);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (DrawlJournalDelta, drawl_journal_delta_free)
