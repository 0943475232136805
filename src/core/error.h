/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The one error domain of src/core. Every message is a whole sentence without a full stop that says
 * what was wrong, and what was expected; the caller adds the place (file, option, blank). */

#include <glib.h>

#define DRAWL_CORE_ERROR (drawl_core_error_quark ())

typedef enum {
  DRAWL_CORE_ERROR_SYNTAX,   /* the text is no number, rate, code … at all */
  DRAWL_CORE_ERROR_RANGE,    /* a number, but outside what the quantity can be */
  DRAWL_CORE_ERROR_OVERFLOW, /* an exact result does not fit in 64 bits */
  DRAWL_CORE_ERROR_MISSING,  /* too few values are given; the message names what is missing */
  DRAWL_CORE_ERROR_CONFLICT, /* values given together disagree; the message names the two */
  DRAWL_CORE_ERROR_NO_CODE,  /* a well-formed code that does not exist: dropped, or out of range */
  DRAWL_CORE_ERROR_NO_DROP,  /* drop counting asked for at a rate that has none */
  DRAWL_CORE_ERROR_UNFIT,    /* values, each right, that do not fit together: a take and a card */
} DrawlCoreError;

GQuark drawl_core_error_quark (void);

/* @text as a message may quote it: one line of valid UTF-8, cut after 40 characters. Free with
 * g_free(). */
char *drawl_core_quote (const char *text);
