/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlPictureType: a type of file that a picture can be written as, found by the ending of the
 * name. Equal pictures make equal bytes (PDF: when SOURCE_DATE_EPOCH sets its date). */

#include <gio/gio.h>

#include <cairo.h>

/* The picture as it is set on its page. */
typedef struct {
  double width, height; /* points */
  const char *title;    /* for the file's own description */
  const char *words;    /* the picture in words */
  void (*draw) (cairo_t *cr, gconstpointer picture);
  gconstpointer picture;
} DrawlPicturePage;

typedef struct {
  const char *ending; /* ".png" */
  /* FALSE with an error of the system's when memory or Cairo gave out. */
  gboolean (*make) (const DrawlPicturePage *page, GByteArray *bytes, GError **error);
} DrawlPictureType;

/* NULL when the name ends in none of the types. Upper or lower case. */
const DrawlPictureType *drawl_picture_type_find (const char *path);
