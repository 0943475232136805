/* SPDX-License-Identifier: GPL-3.0-or-later */

/* Sheets as PDF. Invariant: no clock but the time of printing goes into the file. */

#include "export/sheet-pdf.h"

#include <cairo-pdf.h>

#include "plan/json-file.h"

GDateTime *
drawl_sheet_pdf_date (void)
{
  const char *epoch = g_getenv ("SOURCE_DATE_EPOCH");
  guint64 seconds;

  if (epoch != NULL && g_ascii_string_to_unsigned (epoch, 10, 0, G_MAXINT32, &seconds, NULL))
    return g_date_time_new_from_unix_utc ((gint64)seconds);
  return g_date_time_new_now_local ();
}

static cairo_status_t
append (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static void
describe (cairo_surface_t *surface, const DrawlSheet *sheet)
{
  g_autoptr (GDateTime) utc = g_date_time_to_utc (drawl_sheet_get_printed (sheet));
  g_autofree char *date = g_date_time_format (utc, "%Y-%m-%dT%H:%M:%SZ");

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, drawl_sheet_get_title (sheet));
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Drawl");
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, date);
}

static cairo_status_t
draw_pages (cairo_surface_t *surface, const DrawlSheet *sheet)
{
  cairo_t *cr = cairo_create (surface);

  for (guint page = 0; page < drawl_sheet_n_pages (sheet); page++) {
    drawl_sheet_draw_page (sheet, cr, page);
    cairo_show_page (cr);
  }
  cairo_status_t status = cairo_status (cr);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  return status == CAIRO_STATUS_SUCCESS ? cairo_surface_status (surface) : status;
}

gboolean
drawl_sheet_pdf_save (const DrawlSheet *sheet, GFile *file, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  double width, height;

  drawl_sheet_page_size (sheet, &width, &height);
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (append, bytes, width, height);
  describe (surface, sheet);
  cairo_status_t status = draw_pages (surface, sheet);
  cairo_surface_destroy (surface);
  if (status != CAIRO_STATUS_SUCCESS) {
    g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_FAILED, cairo_status_to_string (status));
    return FALSE;
  }
  /* The way to write durably is the plan's: it takes any bytes. */
  return drawl_json_save (file, (const char *)bytes->data, bytes->len, FALSE, NULL, error);
}
