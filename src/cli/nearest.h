/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The name that was probably meant. */

#include <glib.h>

/* Keeps the best of the names shown to it. Start with drawl_nearest_init(). */
typedef struct {
  const char *typed;
  const char *name; /* the nearest so far, or NULL: none is near */
  guint distance;   /* single letters added, left out, or changed between the two */
} DrawlNearest;

void drawl_nearest_init (DrawlNearest *nearest, const char *typed);
void drawl_nearest_offer (DrawlNearest *nearest, const char *name);
