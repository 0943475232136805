/* SPDX-License-Identifier: GPL-3.0-or-later */

/* How a document is written to its file and read from it again: when asked to, and by itself. All
 * ways go through the journal, which writes over nothing that it does not know. */

#include "app/document-private.h"
#include "core/text.h"
#include "plan/error.h"
#include "plan/plan-file.h"
#include "plan/plan-replace.h"

static gboolean
write_to (DrawlDocument *self, GFile *file, const char *expected_etag, gboolean backup,
          GError **error)
{
  g_autofree char *etag = NULL;

  if (!drawl_journal_save (self->journal, file, expected_etag, backup, &etag, error))
    return FALSE;
  g_clear_handle_id (&self->save_timer, g_source_remove);
  g_free (self->etag);
  self->etag = g_steal_pointer (&etag);
  self->backed_up = TRUE;
  self->failed = FALSE;
  gboolean other = g_set_object (&self->file, file);
  drawl_document_start_watch (self);
  if (other)
    g_object_notify (G_OBJECT (self), "name");
  return TRUE;
}

gboolean
drawl_document_save (DrawlDocument *document, gboolean force, GError **error)
{
  g_autoptr (GFile) file = g_object_ref (document->file);
  g_autofree char *expected = force ? NULL : g_strdup (document->etag);
  g_autoptr (GError) local = NULL;

  if (write_to (document, file, expected, force || !document->backed_up, &local))
    return TRUE;
  if (g_error_matches (local, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_CHANGED))
    drawl_document_set_changed (document, TRUE);
  g_propagate_error (error, g_steal_pointer (&local));
  return FALSE;
}

gboolean
drawl_document_save_as (DrawlDocument *document, GFile *file, GError **error)
{
  return write_to (document, file, NULL, TRUE, error);
}

gboolean
drawl_document_reload (DrawlDocument *document, gboolean *news, GError **error)
{
  g_autofree char *etag = NULL;
  g_autoptr (DrawlPlan) theirs = drawl_plan_load (document->file, &etag, error);

  if (theirs == NULL)
    return FALSE;
  *news = drawl_plan_replace (document->plan, theirs, _ ("Read Again from Disk"));
  drawl_plan_mark_saved (document->plan);
  g_free (document->etag);
  document->etag = g_steal_pointer (&etag);
  document->backed_up = FALSE;
  /* It says in which state of the file the edits to come begin. */
  drawl_journal_close (document->journal);
  g_clear_object (&document->journal);
  drawl_document_open_journal (document, NULL);
  drawl_document_start_watch (document);
  return TRUE;
}

/* ---- By itself ---- */

/* A file that has gone may have been moved: to put it back is for a person to decide. */
static gboolean
save_by_itself (DrawlDocument *self, GError **error)
{
  if (g_file_query_exists (self->file, NULL))
    return drawl_document_save (self, FALSE, error);
  g_autofree char *name = drawl_document_dup_name (self);
  g_set_error (error, DRAWL_PLAN_ERROR, DRAWL_PLAN_ERROR_NO_FOLDER,
               _ ("“%s” is no longer where it was"), name);
  return FALSE;
}

void
drawl_document_save_soon (DrawlDocument *document)
{
  g_autoptr (GError) error = NULL;

  g_clear_handle_id (&document->save_timer, g_source_remove);
  if (!document->saves_itself || document->journal == NULL || document->file == NULL ||
      document->changed || !drawl_document_get_modified (document) ||
      save_by_itself (document, &error))
    return;
  gboolean told = document->failed;
  document->failed = TRUE;
  if (!told)
    g_signal_emit_by_name (document, "save-failed", error);
}

static gboolean
on_save_timer (gpointer data)
{
  DrawlDocument *self = data;

  self->save_timer = 0;
  drawl_document_save_soon (self);
  return G_SOURCE_REMOVE;
}

void
drawl_document_save_later (DrawlDocument *document)
{
  g_clear_handle_id (&document->save_timer, g_source_remove);
  if (document->saves_itself && document->file != NULL)
    document->save_timer = g_timeout_add (document->save_delay_ms, on_save_timer, document);
}

void
drawl_document_set_save_delay (DrawlDocument *document, guint delay_ms)
{
  document->save_delay_ms = delay_ms;
}
