/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Why a plan cannot be written for another program. Messages say what and which shot. */

#include <glib.h>

#define DRAWL_EXPORT_ERROR (drawl_export_error_quark ())

typedef enum {
  DRAWL_EXPORT_ERROR_NO_TIMECODE, /* the plan's playback rate has no code that the format can hold
                                   */
  DRAWL_EXPORT_ERROR_TOO_LONG,    /* more frames than a day of code has */
  DRAWL_EXPORT_ERROR_INEXACT,     /* a shot's frames cannot be counted exactly */
} DrawlExportError;

GQuark drawl_export_error_quark (void);
