/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The error domain of src/plan. Messages say what, where (line, shot, key) and what was expected.
 */

#include <glib.h>

#define DRAWL_PLAN_ERROR (drawl_plan_error_quark ())

typedef enum {
  DRAWL_PLAN_ERROR_SYNTAX,    /* not JSON, cut short, not UTF-8, or a value of the wrong type */
  DRAWL_PLAN_ERROR_FORMAT,    /* JSON, but neither a plan nor a body */
  DRAWL_PLAN_ERROR_VERSION,   /* written by a newer Drawl */
  DRAWL_PLAN_ERROR_TOO_LARGE, /* more bytes, levels, shots or rows than any real plan has */
  DRAWL_PLAN_ERROR_VALUE,     /* a key holds something that the quantity cannot be */
  DRAWL_PLAN_ERROR_DUPLICATE, /* two of one name: slates, ids */
  DRAWL_PLAN_ERROR_UNKNOWN,   /* a name that nothing answers to: body, size, codec, licence, card */
  DRAWL_PLAN_ERROR_CONTRADICTION, /* limits of a body that cannot hold together */
  DRAWL_PLAN_ERROR_READ,          /* the file could not be read */
  /* The file could not be written; what stood there is unharmed. Each of these asks for another
   * remedy; WRITE is what none of the others says. */
  DRAWL_PLAN_ERROR_WRITE,
  DRAWL_PLAN_ERROR_NO_SPACE,      /* on the disk, in the quota, or under the limit of a file */
  DRAWL_PLAN_ERROR_NO_PERMISSION, /* the file or its folder is not the saver's to write */
  DRAWL_PLAN_ERROR_READ_ONLY,     /* the disk can only be read */
  DRAWL_PLAN_ERROR_NO_FOLDER,     /* the folder is not there, or no longer */
  DRAWL_PLAN_ERROR_CHANGED,       /* another program has written the file meanwhile */
} DrawlPlanError;

GQuark drawl_plan_error_quark (void);
