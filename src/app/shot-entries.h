/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The entries of a shot's details, a row each: how a field is written into its entry, and how what
 * was typed is read back. Pure: no widgets. */

#include "plan/shot-fields.h"

/* Groups of entries that share one line for what is wrong. */
typedef enum { DRAWL_ENTRIES_SHOT, DRAWL_ENTRIES_CAMERA, DRAWL_ENTRIES_TAKE } DrawlEntryGroup;

typedef struct {
  const char *id; /* of its row in the template */
  DrawlEntryGroup group;
  const char *change; /* of the step of undo; marked for translation */
  char *(*show) (const DrawlShotFields *fields);
  /* FALSE with an error in words; @fields is left alone then. */
  gboolean (*take) (DrawlShotFields *fields, const char *text, GError **error);
} DrawlShotEntry;

#define DRAWL_N_SHOT_ENTRIES 7
extern const DrawlShotEntry drawl_shot_entries[DRAWL_N_SHOT_ENTRIES];
