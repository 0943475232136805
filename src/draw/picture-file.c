/* SPDX-License-Identifier: GPL-3.0-or-later */

/* The bytes of a picture file: PNG at twice the points, SVG and PDF in points. Invariant: nothing
 * but the page goes into them: no counter of the library and, for PDF where SOURCE_DATE_EPOCH is
 * set, no clock. */

#include "draw/picture-file.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <math.h>

#define PNG_SCALE 2

static cairo_status_t
append (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static gboolean
check (cairo_status_t status, GError **error)
{
  if (status == CAIRO_STATUS_SUCCESS)
    return TRUE;
  g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_FAILED, cairo_status_to_string (status));
  return FALSE;
}

/* Draws on @surface, which is finished then, and let go of. */
static gboolean
draw_on (cairo_surface_t *surface, const DrawlPicturePage *page, GError **error)
{
  cairo_t *cr = cairo_create (surface);

  page->draw (cr, page->picture);
  cairo_show_page (cr);
  cairo_status_t status = cairo_status (cr);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  return check (status, error);
}

static gboolean
make_png (const DrawlPicturePage *page, GByteArray *bytes, GError **error)
{
  cairo_surface_t *surface =
      cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)ceil (page->width * PNG_SCALE),
                                  (int)ceil (page->height * PNG_SCALE));

  cairo_surface_set_device_scale (surface, PNG_SCALE, PNG_SCALE);
  cairo_t *cr = cairo_create (surface);
  page->draw (cr, page->picture);
  cairo_status_t status = cairo_status (cr);
  cairo_destroy (cr);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_write_to_png_stream (surface, append, bytes);
  cairo_surface_destroy (surface);
  return check (status, error);
}

/* ---- SVG ---- */

typedef struct {
  GHashTable *numbers; /* as the library counted → as this file counts */
} Renumber;

static gboolean
renumber (const GMatchInfo *match, GString *result, gpointer data)
{
  Renumber *names = data;
  char *number = g_match_info_fetch (match, 2);
  g_autofree char *what = g_match_info_fetch (match, 1);
  guint n = GPOINTER_TO_UINT (g_hash_table_lookup (names->numbers, number));

  if (n == 0) {
    n = g_hash_table_size (names->numbers) + 1;
    g_hash_table_insert (names->numbers, number, GUINT_TO_POINTER (n));
  } else {
    g_free (number);
  }
  g_string_append_printf (result, "%s%u", what, n);
  return FALSE;
}

/* The library numbers surfaces through the life of the program; a file counts its own. Then the
 * description goes in after the root element begins. */
static gboolean
finish_svg (const DrawlPicturePage *page, GByteArray *bytes, GError **error)
{
  g_autoptr (GRegex) pattern = g_regex_new ("((?:id=\"|#)surface)([0-9]+)", 0, 0, NULL);
  g_autoptr (GHashTable) numbers = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  Renumber names = {numbers};
  g_autofree char *text = g_regex_replace_eval (pattern, (const char *)bytes->data, bytes->len, 0,
                                                0, renumber, &names, error);

  if (text == NULL)
    return FALSE;
  const char *root = strstr (text, "<svg");
  const char *end = root != NULL ? strchr (root, '>') : NULL;
  if (end == NULL)
    return check (CAIRO_STATUS_WRITE_ERROR, error);
  g_autofree char *description =
      g_markup_printf_escaped ("\n<title>%s</title>\n<desc>%s</desc>", page->title, page->words);
  g_byte_array_set_size (bytes, 0);
  g_byte_array_append (bytes, (const guint8 *)text, (guint)(end + 1 - text));
  g_byte_array_append (bytes, (const guint8 *)description, (guint)strlen (description));
  g_byte_array_append (bytes, (const guint8 *)end + 1, (guint)strlen (end + 1));
  return TRUE;
}

static gboolean
make_svg (const DrawlPicturePage *page, GByteArray *bytes, GError **error)
{
  cairo_surface_t *surface =
      cairo_svg_surface_create_for_stream (append, bytes, page->width, page->height);

  return draw_on (surface, page, error) && finish_svg (page, bytes, error);
}

/* ---- PDF ---- */

/* The date that builds which must be reproduced ask for; else the library takes today's. */
static void
set_date (cairo_surface_t *surface)
{
  const char *epoch = g_getenv ("SOURCE_DATE_EPOCH");
  guint64 seconds;

  if (epoch == NULL || !g_ascii_string_to_unsigned (epoch, 10, 0, G_MAXINT32, &seconds, NULL))
    return;
  g_autoptr (GDateTime) date = g_date_time_new_from_unix_utc ((gint64)seconds);
  g_autofree char *text = g_date_time_format (date, "%Y-%m-%dT%H:%M:%SZ");
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, text);
}

static gboolean
make_pdf (const DrawlPicturePage *page, GByteArray *bytes, GError **error)
{
  cairo_surface_t *surface =
      cairo_pdf_surface_create_for_stream (append, bytes, page->width, page->height);

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, page->title);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_SUBJECT, page->words);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Drawl");
  set_date (surface);
  return draw_on (surface, page, error);
}

/* ---- The table ---- */

static const DrawlPictureType types[] = {
    {".png", make_png},
    {".svg", make_svg},
    {".pdf", make_pdf},
};

const DrawlPictureType *
drawl_picture_type_find (const char *path)
{
  g_autofree char *name = g_path_get_basename (path);
  gsize length = strlen (name);

  for (guint i = 0; i < G_N_ELEMENTS (types); i++) {
    gsize ending = strlen (types[i].ending);

    if (length > ending && g_ascii_strcasecmp (name + length - ending, types[i].ending) == 0)
      return &types[i];
  }
  return NULL;
}
