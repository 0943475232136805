/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* DrawlReels: reel names for edit decision lists: 1 to 8 capital letters, digits and underscores,
 * made from slates, each given once. */

#include <glib.h>

#define DRAWL_REEL_LENGTH 8

typedef struct {
  GHashTable *taken; /* reel → the last number that was put behind it */
} DrawlReels;

void drawl_reels_init (DrawlReels *reels);
void drawl_reels_clear (DrawlReels *reels);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (DrawlReels, drawl_reels_clear)

/* A reel for the shot of @slate; owned by @reels. */
const char *drawl_reels_add (DrawlReels *reels, const char *slate);
