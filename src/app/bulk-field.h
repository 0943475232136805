/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* What can be changed in many shots at once, a row each: how a field is shown, when two shots have
 * the same in it, and how what was entered goes into a shot. Values are text: what was typed, the
 * id of a body, size or codec, "must" or "wished". Pure: no widgets. */

#include "plan/plan.h"

typedef enum {
  DRAWL_BULK_CAPTURE,
  DRAWL_BULK_PLAYBACK,
  DRAWL_BULK_TAKES,
  DRAWL_BULK_BEFORE,
  DRAWL_BULK_AFTER,
  DRAWL_BULK_AUDIO,
  DRAWL_BULK_SCENE,
  DRAWL_BULK_MUST, /* from here on one is chosen, none is typed */
  DRAWL_BULK_BODY,
  DRAWL_BULK_SIZE,
  DRAWL_BULK_CODEC,
} DrawlBulkFieldId;

#define DRAWL_N_BULK_FIELDS (DRAWL_BULK_CODEC + 1)
#define DRAWL_N_BULK_ENTRIES DRAWL_BULK_MUST

typedef struct {
  const char *row; /* its id in the template */
  gboolean (*same) (const DrawlShotFields *a, const DrawlShotFields *b);
  char *(*show) (const DrawlShotFields *fields);
  /* FALSE with an error in words. */
  gboolean (*take) (DrawlShotFields *fields, DrawlPlan *plan, const char *text, GError **error);
  const char *(*label) (gulong n); /* of the step of undo, with one place for the number */
} DrawlBulkField;

extern const DrawlBulkField drawl_bulk_fields[DRAWL_N_BULK_FIELDS];
