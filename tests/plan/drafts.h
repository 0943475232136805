/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Drafts of shipped bodies and of a new one, filled in as one types. */

#include "plan/body-draft.h"
#include "plan/body-file.h"
#include "plan/data-dir.h"

static inline DrawlBody *
load (const char *name)
{
  g_autofree char *path = drawl_data_file ("bodies", name, NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  DrawlBody *body = drawl_body_load (file, &error);

  g_assert_no_error (error);
  return body;
}

static inline DrawlDraftRow *
row_at (DrawlBodyDraft *draft, DrawlDraftTable table, guint index)
{
  return drawl_body_draft_get_row (draft, table, index);
}

static inline void
type (DrawlBodyDraft *draft, DrawlDraftTable table, guint index, const char *key, const char *text)
{
  drawl_body_draft_set (draft, row_at (draft, table, index), drawl_draft_column (table, key), text);
}

static inline const char *
text (DrawlBodyDraft *draft, DrawlDraftTable table, guint index, const char *key)
{
  return drawl_body_draft_get (draft, row_at (draft, table, index),
                               drawl_draft_column (table, key));
}

static inline const char *
mistake (DrawlBodyDraft *draft, DrawlDraftTable table, guint index, const char *key)
{
  return drawl_body_draft_cell_mistake (draft, row_at (draft, table, index),
                                        drawl_draft_column (table, key));
}

/* A body from nothing, with just what is needed. */
static inline void
fill (DrawlBodyDraft *draft)
{
  type (draft, DRAWL_DRAFT_ABOUT, 0, "name", "Spindle 3");
  type (draft, DRAWL_DRAFT_SIZES, 0, "name", "3840 × 2160, Open Gate");
  type (draft, DRAWL_DRAFT_SIZES, 0, "width", "3840");
  type (draft, DRAWL_DRAFT_SIZES, 0, "height", "2160");
  type (draft, DRAWL_DRAFT_CODECS, 0, "name", "Intra");
  type (draft, DRAWL_DRAFT_CODECS, 0, "payload.mbps", "240,5");
  type (draft, DRAWL_DRAFT_CODECS, 0, "payload.at", "23.976");
  type (draft, DRAWL_DRAFT_LIMITS, 0, "lowest_rate", "1");
  type (draft, DRAWL_DRAFT_LIMITS, 0, "highest_rate", "119.88");
}
