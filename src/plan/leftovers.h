/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* Files that a save was writing aside when its program was killed. What was in them stands in the
 * journal or in the file that was saved. */

#include <glib.h>

/* What a save writes aside is named so, in the folder of the file. */
#define DRAWL_ASIDE_PREFIX ".drawl-"
#define DRAWL_ASIDE_TEMPLATE DRAWL_ASIDE_PREFIX "XXXXXX"

/* Deletes those beside @path that nobody can still be writing: they are our own, and an hour older
 * than the file at @path, which was just saved. What cannot be deleted stays. */
void drawl_leftovers_clear (const char *path);
