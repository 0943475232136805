/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* What the sources of the document share. */

#include "app/document.h"
#include "app/file-watch.h"

struct _DrawlDocument {
  GObject parent_instance;
  DrawlPlan *plan;
  GFile *file;
  char *etag;
  gboolean backed_up;
  DrawlJournal *journal; /* NULL once the document is closed */
  DrawlFileWatch *watch; /* NULL without a file */
  gboolean changed;
  gboolean saves_itself;
  guint save_delay_ms;
  guint save_timer;
  gboolean failed; /* to save by itself, and told so */
};

void drawl_document_set_changed (DrawlDocument *document, gboolean changed);
/* The file is as it should be now, or is about to be looked at. */
void drawl_document_start_watch (DrawlDocument *document);
void drawl_document_open_journal (DrawlDocument *document, DrawlJournalEntry *entry);
/* Saves by itself once the last edit is some seconds old. */
void drawl_document_save_later (DrawlDocument *document);
