/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The pictures that can be written to a file, one row each in picture.c: the word of the command
 * line, its size in points, how it is drawn and its text. PNG is written at twice that many pixels;
 * SVG and PDF in points. */

#include <gio/gio.h>

#include "draw/style.h"
#include "plan/plan.h"

#define DRAWL_PICTURE_ERROR (drawl_picture_error_quark ())
typedef enum {
  DRAWL_PICTURE_ERROR_TYPE,  /* the file name ends in none of .png, .svg, .pdf */
  DRAWL_PICTURE_ERROR_WRITE, /* it could not be written */
} DrawlPictureError;
GQuark drawl_picture_error_quark (void);

typedef struct {
  const char *id;       /* "timeline", "cards" */
  const char *name;     /* marked for translation */
  double width, height; /* points */
  void (*draw) (cairo_t *cr, DrawlPlan *plan, DrawlShot *shot, const DrawlStyle *style,
                double width, double height);
  char *(*text) (DrawlPlan *plan, DrawlShot *shot);
} DrawlPicture;

const DrawlPicture *drawl_pictures (guint *n_pictures);
const DrawlPicture *drawl_picture_find (const char *id); /* NULL when there is none */

/* Writes the picture of a shot (NULL: an empty plan, of which only its title is set); the type
 * follows from the ending of @path. Written aside and renamed: a failure leaves what was there.
 * Errors: DRAWL_PICTURE_ERROR_TYPE, _WRITE. */
gboolean drawl_picture_save (const DrawlPicture *picture, DrawlPlan *plan, DrawlShot *shot,
                             const DrawlStyle *style, const char *path, GError **error);
