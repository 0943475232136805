/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Rows of a table as a list shows them: a shot as it will be, or why there will be none. Each
 * column is a row of a table below. */

#include "app/import-row.h"

#include "app/message.h"
#include "core/text.h"
#include "plan/figure.h"

struct _DrawlImportRow {
  GObject parent_instance;
  const DrawlShotTableRow *row;
};

G_DEFINE_FINAL_TYPE (DrawlImportRow, drawl_import_row, G_TYPE_OBJECT)

static void
drawl_import_row_class_init (DrawlImportRowClass *klass)
{
}

static void
drawl_import_row_init (DrawlImportRow *self)
{
}

DrawlImportRow *
drawl_import_row_new (const DrawlShotTableRow *row)
{
  DrawlImportRow *self = g_object_new (DRAWL_TYPE_IMPORT_ROW, NULL);

  self->row = row;
  return self;
}

char *
drawl_import_row_text (DrawlImportRow *row, const DrawlImportColumn *column)
{
  return column->text (row->row);
}

/* ---- What is shown ---- */

static char *
line_text (const DrawlShotTableRow *row)
{
  return drawl_figure_count (row->line);
}

static char *
slate_text (const DrawlShotTableRow *row)
{
  return g_strdup (row->fields->slate);
}

static char *
action_text (const DrawlShotTableRow *row)
{
  return g_strdup (row->fields->action);
}

static DrawlRational
value_of (const DrawlShotTableRow *row, DrawlTimingTerm term)
{
  return row->fields->blanks.value[term];
}

static char *
capture_text (const DrawlShotTableRow *row)
{
  return drawl_figure_rate (value_of (row, DRAWL_TIMING_CAPTURE));
}

static char *
playback_text (const DrawlShotTableRow *row)
{
  return drawl_figure_rate (value_of (row, DRAWL_TIMING_PLAYBACK));
}

static char *
action_time_text (const DrawlShotTableRow *row)
{
  g_autofree char *time = drawl_figure_time (value_of (row, DRAWL_TIMING_ACTION));

  /* Translators: a time that the table does not tell. */
  return row->action_assumed ? g_strdup_printf (_ ("%s, assumed"), time) : g_steal_pointer (&time);
}

static char *
screen_time_text (const DrawlShotTableRow *row)
{
  return drawl_figure_time (value_of (row, DRAWL_TIMING_SCREEN));
}

static char *
factor_text (const DrawlShotTableRow *row)
{
  return drawl_figure_factor (value_of (row, DRAWL_TIMING_FACTOR));
}

static char *
body_text (const DrawlShotTableRow *row)
{
  return g_strdup (row->fields->body);
}

static char *
size_text (const DrawlShotTableRow *row)
{
  return g_strdup (row->fields->size);
}

static char *
codec_text (const DrawlShotTableRow *row)
{
  return g_strdup (row->fields->codec);
}

static char *
takes_text (const DrawlShotTableRow *row)
{
  return drawl_figure_count (row->fields->takes);
}

static char *
notes_text (const DrawlShotTableRow *row)
{
  return g_strdup (row->fields->notes);
}

static char *
heading_text (const DrawlShotTableRow *row)
{
  return g_strdup (row->heading != NULL ? row->heading : "");
}

static char *
reason_text (const DrawlShotTableRow *row)
{
  g_autoptr (GError) error = g_error_new_literal (G_IO_ERROR, G_IO_ERROR_FAILED, row->reason);

  return drawl_message_sentence (error);
}

/* ---- The columns ---- */

static const DrawlImportColumn good[] = {
    {"line", N_ ("Line"), 0, TRUE, FALSE, FALSE, line_text},
    {"slate", N_ ("Slate"), 0, FALSE, FALSE, FALSE, slate_text},
    {"action", N_ ("Action"), 180, FALSE, TRUE, FALSE, action_text},
    {"capture", N_ ("Capture Rate"), 0, TRUE, FALSE, FALSE, capture_text},
    {"playback", N_ ("Playback Rate"), 0, TRUE, FALSE, FALSE, playback_text},
    {"action-time", N_ ("Action Time"), 0, TRUE, FALSE, FALSE, action_time_text},
    {"screen-time", N_ ("Screen Time"), 0, TRUE, FALSE, FALSE, screen_time_text},
    {"factor", N_ ("Slower"), 0, TRUE, FALSE, FALSE, factor_text},
    {"body", N_ ("Body"), 0, FALSE, FALSE, FALSE, body_text},
    {"size", N_ ("Size"), 0, FALSE, FALSE, FALSE, size_text},
    {"codec", N_ ("Codec"), 0, FALSE, FALSE, FALSE, codec_text},
    {"takes", N_ ("Takes"), 0, TRUE, FALSE, FALSE, takes_text},
    {"notes", N_ ("Notes"), 140, FALSE, FALSE, FALSE, notes_text},
};

static const DrawlImportColumn bad[] = {
    {"line", N_ ("Line"), 0, TRUE, FALSE, FALSE, line_text},
    {"column", N_ ("Column"), 0, FALSE, FALSE, FALSE, heading_text},
    {"reason", N_ ("Why Not"), 180, FALSE, TRUE, TRUE, reason_text},
};

const DrawlImportColumn *
drawl_import_columns_good (guint *n_columns)
{
  *n_columns = G_N_ELEMENTS (good);
  return good;
}

const DrawlImportColumn *
drawl_import_columns_bad (guint *n_columns)
{
  *n_columns = G_N_ELEMENTS (bad);
  return bad;
}
